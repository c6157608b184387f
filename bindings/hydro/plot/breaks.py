"""Every outlet broken in turn: what each of the others then does."""

from __future__ import annotations

import numpy as np
from matplotlib.axes import Axes
from matplotlib.lines import Line2D
from matplotlib.transforms import ScaledTranslation

from hydro import Breaks, InvalidInput, OutletCondition, UnitSystem

from .arguments import units_asked_for
from .marks import MARKS, Mark
from .paper import GREY, font_size, new_axes, size_of, write

MOST_MARKS = 60
"""outlets across, so that shapes can be told apart"""
SHAPES = {
    OutletCondition.works: Mark("o", filled=True, size=3),  # the others are what is looked for
    OutletCondition.broken: MARKS["broken"],
    OutletCondition.dry: MARKS["dry"],
    OutletCondition.below_minimum: MARKS["below minimum"],
    OutletCondition.below_rated: MARKS["below rated"],
    OutletCondition.above_maximum: MARKS["above maximum"],
    OutletCondition.closed: MARKS["capped"],
}


def break_matrix(
    found: Breaks, *, units: UnitSystem | str | None = None, ax: Axes | None = None
) -> Axes:
    """A square of marks: a row for each outlet that is broken, a column for each outlet.

    In each place is the shape of what that outlet then does, a small disc for one that works. The
    first row is before any break. At the end of a row stand how many others that break puts out of
    work, and what more escapes. Outlets of lines that are shut are left out.

    units: "us" or "si", default the site's own.
    InvalidInput when only counts are kept, or for more than 60 outlets: see hydro.to_svg.

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
    >>> found = hydro.break_every_outlet(farm, fault=hydro.nozzle_missing("", 0))
    >>> [label.get_text() for label in hydro.plot.break_matrix(found).get_yticklabels()][:3]
    ['before', 'row 1, 1', 'row 1, 2']
    """
    if not isinstance(found, Breaks):
        kind = type(found).__name__
        raise TypeError(f"found: is a {kind}, not Breaks: write hydro.break_every_outlet(layout)")
    names = units_asked_for(found.before.layout, units)
    if found.conditions is None and found.breaks:
        raise InvalidInput("found: has counts only: break every outlet with keep='conditions'")
    before = np.array(found.conditions_before, dtype=object)
    rows = before[np.newaxis] if found.conditions is None else np.vstack([before, found.conditions])
    shown = np.array([not found.before.line(it.line).shut for it in found.outlets], dtype=bool)
    if shown.sum() > MOST_MARKS:
        raise InvalidInput(
            f"found: has {shown.sum()} outlets with water, and marks of at most {MOST_MARKS} "
            "can be told apart: write hydro.to_svg(found)"
        )
    columns = [it for it, is_shown in zip(found.outlets, shown) if is_shown]
    conditions = rows[:, shown]

    if ax is None:
        ax = new_axes(1.8 + 0.2 * len(conditions))
    for condition, mark in SHAPES.items():
        row, column = np.nonzero(conditions == condition)
        if len(row):
            ax.plot(column, row, label=condition.replace("_", " "), **mark.style(scale=0.75))
    ax.set_xlim(-0.6, len(columns) - 0.4)
    ax.set_ylim(len(conditions) - 0.4, -0.6)
    ax.axhline(0.5, color=GREY, linewidth=0.8)
    ax.set_xticks(range(len(columns)), [str(it.outlet) for it in columns], fontsize="small")
    labels = ["before", *(f"{it.line}, {it.outlet}" for it in found.breaks)]
    ax.set_yticks(range(len(labels)), labels, fontsize="small", parse_math=False)
    ax.tick_params(length=0)
    for side in ("top", "right", "bottom", "left"):
        ax.spines[side].set_visible(False)
    ax.xaxis.set_ticks_position("top")
    _name_lines(ax, [it.line for it in columns])
    edge = len(columns) - 0.4
    for right, words in ((44, "out of\nwork"), (106, f"{names.flow}\nmore escape")):
        write(ax, words, (edge, -0.6), (right, 14), ha="right")
    for row_number, it in enumerate(found.breaks, start=1):
        write(ax, str(it.more_out_of_work), (edge, row_number), (44, 0), ha="right")
        escaping = f"{it.escaping.to(names.flow):.1f}"
        write(ax, escaping, (edge, row_number), (106, 0), ha="right")
    _legend(ax)
    return ax


def _name_lines(ax: Axes, lines: list[str]) -> None:
    """Above the numbers of its outlets, and a stroke where the next line begins."""
    starts = [i for i, line in enumerate(lines) if i == 0 or line != lines[i - 1]]
    for start, end in zip(starts, [*starts[1:], len(lines)]):
        write(ax, lines[start], ((start + end - 1) / 2, -0.6), (0, 24), ha="center")
        if start:
            ax.axvline(start - 0.5, color=GREY, linewidth=0.8)


def _legend(ax: Axes) -> None:
    handles = [
        Line2D([], [], label=condition.replace("_", " "), **mark.style())
        for condition, mark in SHAPES.items()
        if condition.replace("_", " ") in {line.get_label() for line in ax.lines}
    ]
    below = ScaledTranslation(0, -font_size("medium") / 72, ax.figure.dpi_scale_trans)
    ax.legend(
        handles=handles,
        loc="upper left",
        bbox_to_anchor=(0, 0),
        bbox_transform=ax.transAxes + below,
        ncol=max(1, min(len(handles), int(size_of(ax)[0] / 95))),
        fontsize="small",
        frameon=False,
        borderaxespad=0,
    )
