"""How likely the outlets of a line fall short."""

from __future__ import annotations

from matplotlib.axes import Axes

from hydro import Chances, InvalidInput

from .marks import MARKS
from .paper import GREY, HUE, new_axes

CURVES = {
    "below_rated": ("below rated", "solid"),
    "below_minimum": ("below minimum", "dashed"),
    "above_maximum": ("above maximum", "dotted"),
}


def chance_profile(found: Chances, line: str, *, ax: Axes | None = None) -> Axes:
    """The chance at each outlet of a line: below its rated pressure (rings), below the minimum at
    which it works (triangles down), above its maximum (triangles up).

    What no outlet of the line ever is, is not drawn. InvalidInput when there is no such line.

    >>> import hydro, hydro.plot
    >>> from hydro import ft, gpm, inch, psi
    >>> row = hydro.Line(
    ...     name="row 1",
    ...     pipe=hydro.Pipe(inside_diameter=1.754 * inch, hazen_williams=150),
    ...     outlet=hydro.Outlet(flow=1.2 * gpm, at=30 * psi, body_bore=0.3 * inch),
    ...     count=8,
    ...     spacing=20 * ft,
    ... )
    >>> farm = hydro.Layout(hydro.Supply(pressure=31 * psi), [row])
    >>> guess = hydro.Uncertainty(supply_pressure=2 * psi)
    >>> found = hydro.chances(farm, guess, realisations=100)
    >>> [curve.get_label() for curve in hydro.plot.chance_profile(found, "row 1").lines]
    ['below rated']
    """
    if not isinstance(found, Chances):
        kind = type(found).__name__
        raise TypeError(f"found: is a {kind}, not Chances: write hydro.chances(layout, ...)")
    named = {its.name: its for its in found.lines}
    if line not in named:
        raise InvalidInput(f"line: is {line!r}, must be one of {', '.join(map(repr, named))}")
    its = named[line]
    if ax is None:
        ax = new_axes(3.6)
    outlets = range(1, len(its.below_rated) + 1)
    for name, (words, linestyle) in CURVES.items():
        shares = [100 * share for share in getattr(its, name)]
        if not any(shares):
            continue
        mark = MARKS[words].style()
        ax.plot(outlets, shares, **{**mark, "linestyle": linestyle, "label": words, "color": HUE})
    ax.set_ylim(-3, 103)
    ax.set_xlim(0.4, max(len(outlets), 1) + 0.6)
    ax.set_xlabel("outlet, from the inlet on")
    ax.set_ylabel("chance, %")
    ax.set_title(f"{line}: of {found.realisations} cases", loc="left", parse_math=False)
    ax.xaxis.get_major_locator().set_params(integer=True)
    ax.grid(axis="y", color=GREY, linewidth=0.3)
    for side in ("top", "right"):
        ax.spines[side].set_visible(False)
    if ax.lines:
        ax.legend(frameon=False, fontsize="small")
    else:
        ax.text(0.5, 0.5, "none ever", transform=ax.transAxes, ha="center", color=GREY)
    return ax
