"""Lines seen from above."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np
from matplotlib.axes import Axes

from hydro import InvalidInput, Layout, Length, Solution, UnitSystem

from .arguments import expect_solution, units_asked_for
from .course import Course, course_of
from .figures import Numbers
from .heading import draw_heading
from .labels import Labels
from .line import RANK, DrawnLine, drawn_lines
from .marks import OPENING, draw_legend, draw_marks
from .paper import GREY, HUE, new_axes

Tracks = Sequence[tuple[DrawnLine, Course]]


def plan_view(
    solution: Solution,
    courses: Mapping[str, Sequence[tuple[Length, Length]]],
    *,
    units: UnitSystem | str | None = None,
    ax: Axes | None = None,
) -> Axes:
    """Lines as they lie in the field, seen from above, and which outlets fall short.

    courses: for each line to be drawn, by its name, the points of its course from its inlet to its
        far end, two or more, each a pair of Lengths (x, y). An outlet stands at its distance along
        the course. A course that ends before the line does by no more than 1 % is taken for a
        slope seen from above, and its outlets are moved together; beyond the line's far end it is
        not drawn.
    units: "us" (ft, psi) or "si" (m, kPa); None: those of the site.
    ax: where it is drawn, with the same scale both ways; None: on a new figure.

    Returns the Axes, in the units drawn. InvalidInput for a line that is not there, a course that
    is too short or has too few points, and for units that are unknown. TypeError for what is no
    Solution, and for a point that is no pair of Lengths: bare numbers are never taken for
    quantities.

    >>> import hydro, hydro.plot
    >>> from hydro import ft, gpm, inch, psi
    >>> pipe = hydro.Pipe(inside_diameter=1.754 * inch, hazen_williams=150)
    >>> spray = hydro.Outlet(flow=1.2 * gpm, at=30 * psi, minimum=20 * psi)
    >>> row = hydro.Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> strip = hydro.solve(hydro.Layout(hydro.Supply(pressure=40 * psi), [row]))
    >>> bend = [(0 * ft, 0 * ft), (300 * ft, 0 * ft), (300 * ft, 180 * ft)]
    >>> ax = hydro.plot.plan_view(strip, {"row 1": bend}, units="us")
    >>> ax.get_xlabel(), ax.get_ylabel()
    ('x [ft]', 'y [ft]')
    """
    expect_solution("solution", solution)
    shown = units_asked_for(solution.layout, units)
    if not courses:
        raise InvalidInput("courses: is empty, must have one or more lines")
    layout = solution.layout
    drawn = drawn_lines(solution, courses, shown)
    lengths = [layout.line(line.name).whole_length() for line in drawn]
    tracks = [
        (line, course_of(line.name, courses[line.name], length, shown.length))
        for line, length in zip(drawn, lengths)
    ]
    ax = new_axes(height=6) if ax is None else ax
    ax.set_aspect("equal", adjustable="datalim")
    ax.set_xlabel(f"x [{shown.length}]")
    ax.set_ylabel(f"y [{shown.length}]")
    ax.spines[["top", "right"]].set_visible(False)
    for line, course in tracks:
        draw_track(ax, line, course)
    corners = np.vstack([course.pipe for _, course in tracks])
    room = 0.12 * np.ptp(corners, axis=0).max()  # for words beyond the ends
    ax.update_datalim([corners.min(axis=0) - room, corners.max(axis=0) + room])
    ax.autoscale_view()
    write_on_plan(ax, layout, tracks)
    draw_heading(ax, layout.site.name, drawn, shown)
    draw_legend(ax, drawn)
    return ax


def draw_track(ax: Axes, line: DrawnLine, course: Course) -> None:
    width = 1.2 if line.doing else 3
    ax.plot(*course.pipe.T, label=line.name, color=GREY, lw=width, zorder=1)
    draw_marks(ax, line, *course.at(line.distance).T)
    for opening in line.openings:
        label = f"{line.name}: {opening.kind}"
        ax.plot(*course.at([opening.distance]).T, label=label, zorder=3.5, **OPENING.style())


def write_on_plan(ax: Axes, layout: Layout, tracks: Tracks) -> None:
    """Supplies, openings and lines by name; of outlets the first and the last of each run."""
    marked = [
        course.at(line.distance[those])
        for line, course in tracks
        for those in line.marked().values()
    ]
    labels = Labels(ax, np.vstack([np.empty((0, 2)), *marked]))
    for name, start, away in starts_at_supplies(layout, tracks):
        labels.add(name, start, [away], GREY)
    for line, course in tracks:
        for opening in line.openings:
            labels.add(opening.kind, *course.beside(opening.distance), GREY)
        if line.doing:
            place, sides = course.beside(course.length)
            labels.add(line.name, place, [course.along(course.length), *sides], HUE)
        else:
            labels.add(line.name, *course.beside(course.length / 2), GREY)
    numbered = [
        (RANK[doing], number, line, course)
        for line, course in tracks
        for doing, first, last in line.runs()
        for number in sorted({first, last})
    ]
    for _, number, line, course in sorted(numbered, key=lambda it: it[:2]):
        labels.add(str(number), *course.beside(line.distance[number - 1]), "black")


def starts_at_supplies(layout: Layout, tracks: Tracks) -> list[tuple[str, Numbers, Numbers]]:
    """Where lines begin at which supply, and the direction away from all that begin there."""
    starts: dict[tuple[str, tuple[float, ...]], Numbers] = {}
    for line, course in tracks:
        if layout.feeder_of(line.index) is None:
            start = (layout.line(line.name).fed_by or "supply", tuple(course.pipe[0]))
            starts[start] = starts.get(start, np.zeros(2)) - course.along(0)
    return [
        (name, np.array(place), away / (np.abs(away).max() or 1.0))
        for (name, place), away in starts.items()
    ]
