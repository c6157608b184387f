"""The pressure along lines."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

import numpy as np
from matplotlib.axes import Axes
from matplotlib.ticker import MaxNLocator

import hydro
from hydro import InvalidInput, Solution, UnitSet, UnitSystem

from .arguments import expect_solution, units_asked_for
from .figures import Numbers
from .heading import draw_heading
from .limits import draw_limits, limits_on, top_of
from .line import MOST_MARKS, DrawnLine, drawn_lines
from .marks import OPENING, draw_legend, draw_marks
from .paper import GREY, HUE, font_size, new_axes, offsets_apart, size_of, write

MOST_LINES = 12  # unless more are asked for
AFTER = {"label": "after", "color": HUE, "linewidth": 1.5, "zorder": 3}
BEFORE = {
    "label": "before",
    "color": GREY,
    "linewidth": 1.1,
    "linestyle": (0, (5, 3)),
    "marker": "|",
    "markersize": 5,
    "zorder": 2,
}


def pressure_profile(
    solution: Solution,
    lines: str | Iterable[str] | None = None,
    *,
    before: Solution | None = None,
    units: UnitSystem | str | None = None,
    ax: Axes | None = None,
) -> Axes:
    """Pressure at every outlet of one or several lines, over the distance from the line's inlet.

    The rated and the minimum pressure of the outlets, and the maximum where it is near, are drawn
    as labelled lines; of the first three kinds where there are more. The curve leaves out broken
    and capped outlets, whose pressure is not that of the line, and those that are cut off. On a
    line that is drawn alone and fed from both ends it is said where the waters meet.

    lines: a name, or several; None: all that have outlets and are not shut, of more than 12 those
        with the worst.
    before: the same lines without the faults, drawn dashed below `solution`, which is solid.
    units: "us" (ft, psi) or "si" (m, kPa); None: those of the site.
    ax: where it is drawn; None: on a new figure.

    Returns the Axes, in the units drawn. InvalidInput for a line that is not there or has no
    outlets, for units that are unknown, and when `before` does not have the same lines and outlets.
    TypeError for what is no Solution or no name.

    >>> import hydro, hydro.plot
    >>> from hydro import ft, gpm, inch, psi
    >>> pipe = hydro.Pipe(inside_diameter=1.754 * inch, hazen_williams=150)
    >>> spray = hydro.Outlet(flow=1.2 * gpm, at=30 * psi, minimum=20 * psi)
    >>> row = hydro.Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> strip = hydro.solve(hydro.Layout(hydro.Supply(pressure=40 * psi), [row]))
    >>> ax = hydro.plot.pressure_profile(strip, "row 1", units="us")
    >>> ax.get_xlabel(), ax.get_ylabel()
    ('distance from the inlet [ft]', 'pressure at the outlet [psi]')
    """
    expect_solution("solution", solution)
    if before is not None:
        expect_solution("before", before)
        hydro.compare(before, solution)  # refuses two that do not match
    shown = units_asked_for(solution.layout, units)
    drawn, title = chosen(solution, lines, shown)
    names = [line.name for line in drawn]
    ghosts = [] if before is None else drawn_lines(before, names, shown)
    limits = limits_on(solution, drawn, shown)

    ax = new_axes(height=4.5) if ax is None else ax
    highest = max(float(line.pressure.max()) for line in (*drawn, *ghosts))
    top = top_of(highest, limits)
    ax.set_ylim(-0.04 * top, 1.08 * top)  # what is dry or broken stands clear of the axis
    set_distances(ax, drawn, letters=max(map(len, names)) + (8 if ghosts else 0))
    ax.set_xlabel(f"distance from the inlet [{shown.length}]")
    ax.set_ylabel(f"pressure at the outlet [{shown.pressure}]")
    ax.spines[["top", "right"]].set_visible(False)
    for line in ghosts:
        draw_curve(ax, line, {**BEFORE, "label": f"{line.name}, before"})
    for line in drawn:
        draw_curve(ax, line, {**AFTER, "label": line.name})
        draw_marks(ax, line, line.distance, line.pressure)
        draw_openings(ax, line)
    draw_limits(ax, limits)
    if len(drawn) == 1:
        draw_meetings(ax, drawn[0])
    else:
        draw_names(ax, drawn, ghosts)
    draw_numbers(ax, drawn)
    draw_heading(ax, title, drawn, shown)
    draw_legend(ax, drawn, [AFTER, BEFORE] if ghosts else [])
    return ax


def chosen(
    solution: Solution, lines: str | Iterable[str] | None, units: UnitSet
) -> tuple[list[DrawnLine], str]:
    """The lines to be drawn, and a title for them."""
    with_outlets = [line.name for line in solution.lines if len(line.state)]
    if not with_outlets:
        raise InvalidInput("solution: has no line with outlets, so no pressure at them")
    if lines is None:
        open_ones = [line.name for line in solution.lines if len(line.state) and not line.shut]
        names = open_ones or with_outlets
    else:
        names = [lines] if isinstance(lines, str) else list(dict.fromkeys(lines))
    those = ", ".join(map(repr, with_outlets[:MOST_LINES]))
    if not names:
        raise InvalidInput(f"lines: is empty, must name one or more; with outlets are {those}")
    for name in names:
        if not isinstance(name, str):
            raise TypeError(f"lines: {name!r} is a {type(name).__name__}, not the name of a line")
        if not len(solution.line(name).state):
            raise InvalidInput(f"lines: {name!r} has no outlets; lines with outlets are {those}")
    drawn = drawn_lines(solution, names, units)
    title = solution.layout.site.name or "Pressure along the lines"
    if lines is None and len(drawn) > MOST_LINES:
        worst = sorted(drawn, key=DrawnLine.badness)[:MOST_LINES]
        drawn = [line for line in drawn if line in worst]
        title += f" (of {len(names)} lines the {MOST_LINES} worst)"
    return drawn, names[0] if len(names) == 1 else title


def set_distances(ax: Axes, drawn: Sequence[DrawnLine], letters: int) -> None:
    """Room for all distances and, beyond several curves, for names of so many letters."""
    openings = [opening.distance for line in drawn for opening in line.openings]
    farthest = max([line.distance[-1] for line in drawn] + openings)
    width = 0.8 * size_of(ax)[0]
    names = letters * 0.6 * font_size() / width if len(drawn) > 1 else 0
    ax.set_xlim(0, (farthest or 1.0) * 1.04 / (1 - min(0.4, names)))


def draw_curve(ax: Axes, line: DrawnLine, style: dict[str, Any]) -> None:
    parts: list[Numbers] = []
    for those in line.stretches():
        parts += [np.full((1, 2), np.nan)] if parts else []  # a gap
        parts.append(np.column_stack([line.distance[those], line.pressure[those]]))
    x, y = np.vstack([np.empty((0, 2)), *parts]).T
    ax.plot(x, y, markevery=max(1, len(x) // MOST_MARKS), **style)


def draw_openings(ax: Axes, line: DrawnLine) -> None:
    for opening in line.openings:
        x = opening.distance
        ax.axvline(x, color=HUE, linewidth=1.2, linestyle=":", zorder=1)
        label = f"{line.name}: {opening.kind}"
        ax.plot([x], [0], label=label, zorder=3.5, clip_on=False, **OPENING.style())
        write(ax, opening.kind, (x, 0), (-7, 9), ha="right")


def draw_meetings(ax: Axes, line: DrawnLine) -> None:
    """Where water comes from both sides, which is where the pressure in the line is lowest."""
    for i in line.meetings:
        place = (float(line.distance[i]), float(line.pressure[i]))
        write(ax, "waters meet", place, (0, -1.9 * font_size()), ha="center", color=GREY)


def draw_names(ax: Axes, drawn: Sequence[DrawnLine], ghosts: Sequence[DrawnLine]) -> None:
    """Where the curves end, so that lines are told apart without colour."""
    named = [(line, line.name, HUE) for line in drawn]
    named += [(line, f"{line.name}, before", GREY) for line in ghosts]
    ends = [(line.distance[-1], line.pressure[[0, *line.on_curve()][-1]]) for line, _, _ in named]
    offsets = offsets_apart(ax, [height for _, height in ends], 1.25 * font_size())
    leader = {"arrowstyle": "-", "color": GREY, "lw": 0.6, "shrinkA": 0, "relpos": (0, 0.5)}
    for (_, name, color), end, offset in zip(named, ends, offsets):
        write(
            ax,
            name,
            end,
            (14, offset),
            color=color,
            zorder=2.5,
            bbox={"facecolor": "white", "edgecolor": "none", "pad": 0.5},
            arrowprops=leader if abs(offset) > 3 else None,
        )


def draw_numbers(ax: Axes, drawn: Sequence[DrawnLine]) -> None:
    """The numbers of the outlets along the top, where they are the same for all lines."""
    places = drawn[0].distance
    if not all(np.array_equal(line.distance, places) for line in drawn):
        return
    round_ones = MaxNLocator(12, integer=True, steps=[1, 2, 5, 10]).tick_values(1, len(places))
    numbers = [1]
    for number in round_ones.astype(int):
        if 1 < number <= len(places):
            if places[number - 1] - places[numbers[-1] - 1] > 0.04 * ax.get_xlim()[1]:
                numbers.append(number)
    axis = ax.secondary_xaxis("top")
    axis.set_xticks(places[np.array(numbers) - 1], [str(number) for number in numbers])
    axis.tick_params(labelsize="small", length=2)
    axis.spines["top"].set_visible(False)
    axis.set_xlabel("outlet", fontsize="small", loc="left")
