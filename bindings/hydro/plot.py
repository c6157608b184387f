"""Pictures of a solution: the pressure along lines, and lines seen from above.

    import hydro.plot                        # needs matplotlib, which nothing else here does
    ax = hydro.plot.pressure_profile(after, "row 2", before=before)
    ax.figure.savefig("row_2.png")

Each function draws on the Axes that it is given, or on those of a new figure, and returns them.
What an outlet does is told by the shape of its mark, so that a picture may be printed in black and
white:

    filled disc           works
    ring                  below its rated pressure
    triangle, point down  below the minimum at which it works
    triangle, point up    above its maximum
    diamond               dry: the pressure does not lift water to it
    bar                   no water: the line is cut or open before it
    square                capped
    cross                 broken
    star                  the line itself is open: a leak, a cut, an open end

Of a line with more than 50 outlets the worst of each stretch is marked.
"""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import Any

import numpy as np
import numpy.typing as npt

import hydro
from hydro import (
    Flow,
    FlowUnit,
    InvalidInput,
    Length,
    LengthUnit,
    Outlet,
    Pressure,
    PressureUnit,
    Solution,
    UnitSystem,
)

try:
    from matplotlib import pyplot
    from matplotlib.axes import Axes
    from matplotlib.font_manager import FontProperties
    from matplotlib.lines import Line2D
    from matplotlib.ticker import MaxNLocator
    from matplotlib.transforms import ScaledTranslation
except ModuleNotFoundError as missing:
    raise ModuleNotFoundError(
        "hydro.plot needs matplotlib: install the package python3-matplotlib, or matplotlib by pip",
        name=missing.name,
    ) from missing

__all__ = ["plan_view", "pressure_profile"]

Numbers = npt.NDArray[np.float64]

HUE = "#14558f"  # the only one, dark enough for black and white
GREY = "#555555"
MOST_MARKS = 50  # on one line
MOST_KINDS = 3  # of outlets, whose limits are drawn
MOST_LINES = 12  # on one picture, unless more are asked for
MOST_SENTENCES = 6  # above a picture
KEPT = "\N{NO-BREAK SPACE}"  # words on both sides stay in one row


# ---- units


@dataclass(frozen=True)
class _Figures:
    """Quantities in the units that the reader knows, nothing finer than a gauge shows."""

    length: LengthUnit
    pressure: PressureUnit
    flow: FlowUnit
    decimals: int  # of a pressure

    def of_limit(self, value: Pressure) -> str:
        number = f"{value.to(self.pressure):.{self.decimals}f}"
        return f"{number.removesuffix('.0')} {self.pressure.symbol}"

    def of_flow(self, value: Flow) -> str:
        return f"{value.to(self.flow):.1f}{KEPT}{self.flow.symbol}"

    def of_length(self, value: float) -> str:
        return f"{value:.1f}{KEPT}{self.length.symbol}"


def _figures(solution: Solution, units: UnitSystem | str | None) -> _Figures:
    wanted = solution.layout.units if units is None else units
    if wanted == "us":
        return _Figures(hydro.ft, hydro.psi, hydro.gpm, decimals=1)
    if wanted == "si":
        return _Figures(hydro.m, hydro.kPa, hydro.lpm, decimals=0)
    raise InvalidInput(f"units: is {units!r}, must be 'us', 'si' or None, which is the site's own")


# ---- what outlets do


@dataclass(frozen=True)
class _Mark:
    """The shape for something that an outlet does."""

    marker: str
    filled: bool = False
    size: float = 7  # [pt]

    def style(self, scale: float = 1) -> dict[str, Any]:
        """Arguments for Axes.plot and Line2D."""
        return {
            "linestyle": "none",
            "marker": self.marker,
            "markersize": scale * self.size,
            "color": HUE,
            "markerfacecolor": HUE if self.filled else "white",
            "markeredgewidth": {"x": 2, "_": 3.5}.get(self.marker, 1.3),
        }


MARKS = {  # the worst first
    "broken": _Mark("x", size=8),
    "capped": _Mark("s", size=6.5),
    "no water": _Mark("_", size=9),
    "dry": _Mark("D", size=6.5),
    "below minimum": _Mark("v", size=8),
    "below rated": _Mark("o"),
    "above maximum": _Mark("^", filled=True, size=8),
    "works": _Mark("o", filled=True),
}
OPENING = _Mark("*", filled=True, size=15)  # seen around an outlet at the same place
RANK = {doing: place for place, doing in enumerate(MARKS)}


@dataclass(frozen=True)
class _Opening:
    """Where the line itself is open."""

    kind: str
    distance: float  # in the unit drawn
    flow: Flow


class _Drawn:
    """A line as it is drawn: numbers in the units drawn, and what each outlet does."""

    def __init__(
        self, solution: Solution, name: str, below_rated: set[tuple[str, int]], figures: _Figures
    ) -> None:
        layout = solution.layout
        self.name = name
        self.index = layout.index_of(name)
        solved = solution.lines[self.index]
        self.distance: Numbers = solved.distance.to(figures.length)
        self.pressure: Numbers = solved.pressure.to(figures.pressure)
        faults = layout.faults_on(self.index)
        self.openings = [
            _Opening(hydro.kind_of(faults[it.fault]), it.distance.to(figures.length), it.flow)
            for it in solved.openings
        ]
        is_cut_off, end = layout.is_cut_off(self.index), layout.open_end_of(self.index)
        self.doing: list[str] = []  # words of MARKS
        for outlet, state in enumerate(solved.state, start=1):
            doing = "capped" if state == "closed" else str(state).replace("_", " ")
            if state == "works" and (name, outlet) in below_rated:
                doing = "below rated"
            if state == "dry":
                is_beyond = end is not None and (
                    solved.distance[outlet - 1] > end + hydro.same_place
                )
                doing = "no water" if is_cut_off or is_beyond else "dry"
            self.doing.append(doing)
        broken = [solved.flow[i] for i, doing in enumerate(self.doing) if doing == "broken"]
        self.escaping = sum(broken, start=0 * figures.flow)

    def badness(self) -> tuple[int, float]:
        """The lower, the worse its worst outlet."""
        return min(RANK[doing] for doing in self.doing), float(self.pressure.min())

    def on_curve(self) -> list[int]:
        """Indices of the outlets that say what the pressure along the line is."""
        silent = ("broken", "capped", "no water")
        return [i for i, doing in enumerate(self.doing) if doing not in silent]

    def runs(self) -> Iterator[tuple[str, int, int]]:
        """What neighbours do alike, with the numbers of the first and the last of them."""
        for doing, run in groupby(enumerate(self.doing, start=1), key=lambda it: it[1]):
            numbers = [outlet for outlet, _ in run]
            yield doing, numbers[0], numbers[-1]

    def marked(self) -> dict[str, list[int]]:
        """Indices of the outlets that have a mark, by what they do."""
        chosen: Iterable[int] = range(len(self.doing))
        if len(self.doing) > MOST_MARKS:
            stretches = np.array_split(np.arange(len(self.doing)), MOST_MARKS)
            chosen = [min(stretch, key=lambda i: RANK[self.doing[i]]) for stretch in stretches]
        found: dict[str, list[int]] = {}
        for i in chosen:
            found.setdefault(self.doing[i], []).append(i)
        return found

    def findings(self, figures: _Figures) -> str:
        """What is wrong, in words; empty when nothing is."""
        parts = []
        for doing in MARKS:
            runs = [(first, last) for what, first, last in self.runs() if what == doing]
            if runs and doing != "works":
                parts.append(f"{_numbers_in_words(runs)} {doing}")
            if runs and doing == "broken":
                parts[-1] += f" ({figures.of_flow(self.escaping)} escapes)"
        for opening in self.openings:
            place, flow = figures.of_length(opening.distance), figures.of_flow(opening.flow)
            parts.append(f"{opening.kind} at {place} ({flow} escapes)")
        return "; ".join(parts)


def _drawn(solution: Solution, names: Iterable[str], figures: _Figures) -> list[_Drawn]:
    below_rated = {(it.line, it.outlet) for it in hydro.check(solution).below_rated}
    return [_Drawn(solution, name, below_rated, figures) for name in names]


def _numbers_in_words(runs: Sequence[tuple[int, int]]) -> str:
    """`outlets 3 to 10, 12`; of very many the first."""
    parts: list[str] = []
    for first, last in runs:
        if last > first + 1:
            parts.append(f"{first}{KEPT}to{KEPT}{last}")
        else:
            parts += [str(number) for number in sorted({first, last})]
    if len(parts) > 6:
        parts[5:] = ["..."]
    return ("outlets " if runs[-1][1] > runs[0][0] else "outlet ") + ", ".join(parts)


# ---- on paper


def _new_axes(height: float) -> Axes:
    return pyplot.subplots(figsize=(8, height), layout="constrained")[1]


def _size(ax: Axes) -> tuple[float, float]:
    """Width and height [pt], before what stands around the Axes has been given room."""
    box = ax.get_window_extent()
    return box.width * 72 / ax.figure.dpi, box.height * 72 / ax.figure.dpi


def _font_size(name: str = "small") -> float:
    return float(FontProperties(size=name).get_size_in_points())


def _write(
    ax: Axes, words: str, place: Iterable[float], offset: Iterable[float], **style: Any
) -> None:
    """Words at an offset [pt] from a place. They are no formulas: a $ in a name is a dollar."""
    usual = {"fontsize": "small", "va": "center", "color": GREY, "parse_math": False}
    where = {"textcoords": "offset points", "annotation_clip": False}
    ax.annotate(words, tuple(place), tuple(offset), **{**where, **usual, **style})


def _apart(wanted: Sequence[float], gap: float) -> list[float]:
    """Heights as near to the wanted ones as may be, each at least a gap from the next."""
    order = np.argsort(wanted, kind="stable")
    gaps = gap * np.arange(len(wanted))
    # Heights less the gaps below them must not fall: those that would, share their mean.
    pools: list[list[float]] = []
    for height in np.asarray(wanted, dtype=float)[order] - gaps:
        pools.append([height])
        while len(pools) > 1 and np.mean(pools[-2]) > np.mean(pools[-1]):
            pools[-2:] = [pools[-2] + pools[-1]]
    apart = np.empty(len(wanted))
    apart[order] = [np.mean(pool) for pool in pools for _ in pool] + gaps
    return list(apart)


def _draw_marks(ax: Axes, line: _Drawn, x: Numbers, y: Numbers) -> None:
    for doing, those in line.marked().items():
        ax.plot(
            x[those],
            y[those],
            label=f"{line.name}: {doing}",
            zorder=5 - RANK[doing] / len(MARKS),  # the worst on top
            clip_on=False,
            **MARKS[doing].style(scale=1 if len(line.doing) <= 24 else 0.8),
        )


def _draw_heading(ax: Axes, title: str, lines: Sequence[_Drawn], figures: _Figures) -> None:
    found = [(line.name, findings) for line in lines if (findings := line.findings(figures))]
    sentences = [it if name == title else f"{name}: {it}" for name, it in found[:MOST_SENTENCES]]
    if len(found) > MOST_SENTENCES:
        sentences.append(f"and on {len(found) - MOST_SENTENCES} more")
    if not found and any(line.doing for line in lines):
        sentences.append("every outlet has its rated pressure")
    if any(len(line.doing) > MOST_MARKS for line in lines):
        sentences.append("(of each stretch of outlets the worst is marked)")
    columns = max(20, int(_size(ax)[0] / (0.52 * _font_size("medium"))))
    rows = [title, *(row for it in sentences for row in textwrap.wrap(it, columns))]
    words = "\n".join(filter(None, rows)).replace(KEPT, " ")
    # The middle title, moved to the left: the caller's own set_title takes its place.
    ax.set_title(words, x=0, ha="left", fontsize="medium", parse_math=False)


def _draw_legend(ax: Axes, lines: Sequence[_Drawn], curves: Sequence[dict[str, Any]] = ()) -> None:
    """Below the Axes: the shapes that occur, the good first, then from the worst on."""
    marked = {doing for line in lines for doing in line.marked()}
    styles = [
        {"label": doing, **MARKS[doing].style()}
        for doing in sorted(marked, key=lambda it: -1 if it == "works" else RANK[it])
    ]
    if any(line.openings for line in lines):
        styles.append({"label": "line open", **OPENING.style(scale=0.75)})
    handles = [Line2D([], [], **style) for style in (*styles, *curves)]
    if not handles:
        return
    below = ScaledTranslation(0, -(24 + 1.5 * _font_size("medium")) / 72, ax.figure.dpi_scale_trans)
    ax.legend(
        handles=handles,
        loc="upper left",
        bbox_to_anchor=(0, 0),
        bbox_transform=ax.transAxes + below,
        ncol=max(1, min(len(handles), int(_size(ax)[0] / 95))),
        fontsize="small",
        frameon=False,
        borderaxespad=0,
        borderpad=0,
        handletextpad=0.4,
        columnspacing=1.4,
    )


# ---- pressure along lines


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
    and capped outlets, whose pressure is not that of the line, and those that are cut off.

    lines: a name, or several; None: all that have outlets, of more than 12 those with the worst.
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
    _want_solutions(solution, before)
    figures = _figures(solution, units)
    names, title = _chosen(solution, lines, figures)
    if before is not None:
        hydro.compare(before, solution)  # refuses two that do not match
    drawn = _drawn(solution, names, figures)
    ghosts = [] if before is None else _drawn(before, names, figures)
    limits = _limits(solution, drawn, figures)
    ax = _new_axes(height=4.5) if ax is None else ax

    highest = max(float(line.pressure.max()) for line in (*drawn, *ghosts))
    top = _top(highest, limits)
    width, height = _size(ax)
    ax.set_ylim(-0.04 * top, 1.08 * top)  # what is dry or broken stands clear of the axis
    per_point = 1.12 * top / (0.75 * height)  # what stands around takes about a quarter
    letters = 0 if len(drawn) == 1 else max(map(len, names)) + (8 if ghosts else 0)
    room = letters * 0.6 * _font_size() / (0.8 * width)  # for names beyond the curves
    openings = [opening for line in drawn for opening in line.openings]
    farthest = max([line.distance[-1] for line in drawn] + [it.distance for it in openings])
    ax.set_xlim(0, (farthest or 1.0) * 1.04 / (1 - min(0.4, room)))
    ax.set_xlabel(f"distance from the inlet [{figures.length.symbol}]")
    ax.set_ylabel(f"pressure at the outlet [{figures.pressure.symbol}]")
    ax.spines[["top", "right"]].set_visible(False)

    for line in ghosts:
        _draw_curve(ax, line, {**BEFORE, "label": f"{line.name}, before"})
    for line in drawn:
        _draw_curve(ax, line, {**AFTER, "label": line.name})
        _draw_marks(ax, line, line.distance, line.pressure)
        _draw_openings(ax, line)
    _draw_limits(ax, limits, per_point)
    if len(drawn) > 1:
        _draw_names(ax, drawn, ghosts, per_point)
    _draw_numbers(ax, drawn)
    _draw_heading(ax, title, drawn, figures)
    _draw_legend(ax, drawn, [AFTER, BEFORE] if ghosts else [])
    return ax


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


def _want_solutions(solution: object, before: object = None) -> None:
    given = {"solution": solution} if before is None else {"solution": solution, "before": before}
    for name, it in given.items():
        if not isinstance(it, Solution):
            kind = type(it).__name__
            raise TypeError(f"{name}: is a {kind}, not a Solution: write hydro.solve(layout)")


def _chosen(
    solution: Solution, lines: str | Iterable[str] | None, figures: _Figures
) -> tuple[list[str], str]:
    """Names of the lines to be drawn, and a title for them."""
    with_outlets = [line.name for line in solution.lines if len(line.state)]
    title = solution.layout.site.name or "Pressure along the lines"
    if not with_outlets:
        raise InvalidInput("solution: has no line with outlets, so no pressure at them")
    if lines is None and len(with_outlets) > MOST_LINES:
        worst = sorted(_drawn(solution, with_outlets, figures), key=_Drawn.badness)[:MOST_LINES]
        names = [name for name in with_outlets if any(line.name == name for line in worst)]
        return names, f"{title} (of {len(with_outlets)} lines the {MOST_LINES} worst)"
    if lines is None:
        names = with_outlets
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
    return names, names[0] if len(names) == 1 else title


@dataclass(frozen=True)
class _Limit:
    """A pressure that outlets ask for."""

    word: str
    value: float  # in the unit drawn
    label: str


LIMIT_DASHES = {"rated": "-", "minimum": (0, (9, 3, 2, 3)), "maximum": (0, (1, 3))}


def _limits(solution: Solution, drawn: Iterable[_Drawn], figures: _Figures) -> list[_Limit]:
    """Of the kinds of outlets on the lines, the first few."""
    kinds: list[Outlet] = []
    for line in drawn:
        for number in range(1, len(line.doing) + 1):
            kind = solution.layout.outlet_at(line.index, number)
            if kind not in kinds and len(kinds) < MOST_KINDS:
                kinds.append(kind)
    askers: dict[tuple[str, Pressure], list[str]] = {}
    for kind in kinds:
        asked = (kind.rated_pressure(), kind.minimum, kind.maximum)
        for word, pressure in zip(LIMIT_DASHES, asked):
            if pressure is not None:
                askers.setdefault((word, pressure), []).append(kind.name)
    limits = []
    for (word, pressure), names in askers.items():
        whose = names if len(names) < len(kinds) else []
        label = ", ".join(filter(None, [f"{word} {figures.of_limit(pressure)}", *whose]))
        limits.append(_Limit(word, pressure.to(figures.pressure), label))
    return limits


def _top(highest: float, limits: Sequence[_Limit]) -> float:
    """Of the pressures and of the limits; of a maximum if it is near."""
    top = max([highest, *(limit.value for limit in limits if limit.word != "maximum")])
    near = (limit.value for limit in limits if limit.value <= 1.25 * top)
    return max([top, *near]) or 1.0


def _draw_curve(ax: Axes, line: _Drawn, style: dict[str, Any]) -> None:
    those = line.on_curve()
    every = max(1, len(those) // MOST_MARKS)
    ax.plot(line.distance[those], line.pressure[those], markevery=every, **style)


def _draw_openings(ax: Axes, line: _Drawn) -> None:
    for opening in line.openings:
        x = opening.distance
        ax.axvline(x, color=HUE, linewidth=1.2, linestyle=":", zorder=1)
        label = f"{line.name}: {opening.kind}"
        ax.plot([x], [0], label=label, zorder=3.5, clip_on=False, **OPENING.style())
        _write(ax, opening.kind, (x, 0), (-7, 9), ha="right")


def _draw_limits(ax: Axes, limits: Sequence[_Limit], per_point: float) -> None:
    """Each called by its name at the right."""
    shown = [limit for limit in limits if limit.value <= ax.get_ylim()[1]]
    heights = [limit.value / per_point for limit in shown]
    for limit, height, free in zip(shown, heights, _apart(heights, 1.3 * _font_size())):
        dashes = LIMIT_DASHES[limit.word]
        ax.axhline(limit.value, label=limit.label, color=GREY, lw=0.9, ls=dashes, zorder=1)
        beyond = ax.get_yaxis_transform()
        _write(ax, limit.label, (1, limit.value), (6, free - height), xycoords=beyond)


def _draw_names(
    ax: Axes, drawn: Sequence[_Drawn], ghosts: Sequence[_Drawn], per_point: float
) -> None:
    """Where the curves end, so that lines are told apart without colour."""
    named = [(line, line.name, HUE) for line in drawn]
    named += [(line, f"{line.name}, before", GREY) for line in ghosts]
    ends = [(line.distance[-1], line.pressure[[0, *line.on_curve()][-1]]) for line, _, _ in named]
    heights = [end / per_point for _, end in ends]
    leader = {"arrowstyle": "-", "color": GREY, "lw": 0.6, "shrinkA": 0, "relpos": (0, 0.5)}
    for (_, name, color), end, height, free in zip(
        named, ends, heights, _apart(heights, 1.25 * _font_size())
    ):
        _write(
            ax,
            name,
            end,
            (14, free - height),
            color=color,
            zorder=2.5,
            bbox={"facecolor": "white", "edgecolor": "none", "pad": 0.5},
            arrowprops=leader if abs(free - height) > 3 else None,
        )


def _draw_numbers(ax: Axes, drawn: Sequence[_Drawn]) -> None:
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


# ---- lines seen from above


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
    _want_solutions(solution)
    figures = _figures(solution, units)
    if not courses:
        raise InvalidInput("courses: is empty, must have one or more lines")
    tracks = [
        (line, _course(solution, line, courses[line.name], figures))
        for line in _drawn(solution, courses, figures)
    ]
    ax = _new_axes(height=6) if ax is None else ax
    ax.set_aspect("equal", adjustable="datalim")
    ax.set_xlabel(f"x [{figures.length.symbol}]")
    ax.set_ylabel(f"y [{figures.length.symbol}]")
    ax.spines[["top", "right"]].set_visible(False)
    for line, course in tracks:
        width = 1.2 if line.doing else 3
        ax.plot(*course.pipe.T, label=line.name, color=GREY, lw=width, zorder=1)
        _draw_marks(ax, line, *course.at(line.distance).T)
        for opening in line.openings:
            label = f"{line.name}: {opening.kind}"
            ax.plot(*course.at([opening.distance]).T, label=label, zorder=3.5, **OPENING.style())
    corners = np.vstack([course.pipe for _, course in tracks])
    room = 0.12 * np.ptp(corners, axis=0).max()  # for words beyond the ends
    ax.update_datalim([corners.min(axis=0) - room, corners.max(axis=0) + room])
    ax.autoscale_view()
    _write_on_plan(ax, solution, tracks)
    drawn = [line for line, _ in tracks]
    _draw_heading(ax, solution.layout.site.name, drawn, figures)
    _draw_legend(ax, drawn)
    return ax


class _Course:
    """Where a line lies, seen from above, in the unit drawn; places and directions are (x, y)."""

    def __init__(self, corners: Numbers, length: float) -> None:
        """A line of this length on a polyline that is at least about as long."""
        self.length = length
        self._corners = corners
        self._distances = _distances_along(corners)
        self._shrunk = min(1.0, self._distances[-1] / length)
        inside = self._distances < length * self._shrunk
        self.pipe = np.vstack([corners[inside], self.at([length])])

    def at(self, distances: npt.ArrayLike) -> Numbers:
        """Places, one a row, at these distances along the line."""
        along = np.asarray(distances) * self._shrunk
        x, y = self._corners.T
        return np.column_stack(
            [np.interp(along, self._distances, x), np.interp(along, self._distances, y)]
        )

    def along(self, distance: float) -> Numbers:
        """The direction in which the line runs there, the mean of both at a bend; its larger part
        is 1."""
        near = 1e-3 * self.length
        first, last = self.at(np.clip([distance - near, distance + near], 0, self.length))
        step: Numbers = last - first
        return step / (np.abs(step).max() or 1.0)

    def beside(self, distance: float) -> tuple[Numbers, list[Numbers]]:
        """The place, and the directions to the left and to the right of the line there."""
        x, y = self.along(distance)
        return self.at([distance])[0], [np.array([-y, x]), np.array([y, -x])]


def _distances_along(corners: Numbers) -> Numbers:
    steps = np.hypot(*np.diff(corners, axis=0).T)
    return np.concatenate([[0.0], np.cumsum(steps)])


def _course(
    solution: Solution, line: _Drawn, points: Sequence[tuple[Length, Length]], figures: _Figures
) -> _Course:
    corners = []
    where = f"courses[{line.name!r}]"
    for number, point in enumerate(points, start=1):
        pair = tuple(point) if isinstance(point, (tuple, list)) else (point,)
        if len(pair) != 2 or not all(isinstance(part, Length) for part in pair):
            raise TypeError(
                f"{where}: point {number} is {point!r}, not a pair of Lengths: "
                "write (120 * ft, 30 * ft)"
            )
        corners.append([part.to(figures.length) for part in pair])
        if not np.isfinite(corners[-1]).all():
            raise InvalidInput(f"{where}: point {number} is {point!r}, must be finite")
    if len(corners) < 2:
        raise InvalidInput(f"{where}: has {len(corners)} points, must have 2 or more")
    needed = solution.layout.lines[line.index].whole_length().to(figures.length)
    given = _distances_along(np.array(corners))[-1]
    if given < 0.99 * needed:
        raise InvalidInput(
            f"{where}: is {given:.1f} {figures.length.symbol} long, too short for the line: from "
            f"its inlet to its far end it is {needed:.1f} {figures.length.symbol}"
        )
    return _Course(np.array(corners), needed)


class _Words:
    """Words on a plan, none upon a mark or upon others; what finds no room is left out."""

    def __init__(self, ax: Axes, marks: Numbers) -> None:
        ax.apply_aspect()
        self._ax = ax
        self._marks = self._on_paper(marks)
        self._taken: list[tuple[Numbers, Numbers]] = []  # middles and half sizes [pt]

    def _on_paper(self, places: Numbers) -> Numbers:
        pixels: Numbers = self._ax.transData.transform(places)
        return pixels * (72 / float(self._ax.figure.dpi))

    def add(self, words: str, place: Numbers, directions: Iterable[Numbers], color: str) -> None:
        """In the first of these directions from the place in which there is room."""
        half = np.array([0.3 * len(words) + 0.2, 0.6]) * _font_size()
        for direction in directions:
            offset = direction * (7 + half)
            middle = self._on_paper(place) + offset
            on_mark = (np.abs(self._marks - middle) < half + 3).all(axis=1).any()
            on_words = any((np.abs(at - middle) < half + size).all() for at, size in self._taken)
            if not on_mark and not on_words:
                self._taken.append((middle, half))
                _write(self._ax, words, place, offset, ha="center", color=color)
                return


def _write_on_plan(
    ax: Axes, solution: Solution, tracks: Sequence[tuple[_Drawn, _Course]]
) -> None:
    """The supply, openings and lines by name; of outlets the first and the last of each run."""
    marked = [
        course.at(line.distance[those])
        for line, course in tracks
        for those in line.marked().values()
    ]
    words = _Words(ax, np.vstack([np.empty((0, 2)), *marked]))
    starts: dict[tuple[float, ...], Numbers] = {}
    for line, course in tracks:
        if not solution.layout.lines[line.index].fed_by:
            start = tuple(course.pipe[0])
            starts[start] = starts.get(start, np.zeros(2)) - course.along(0)
    for start, away in starts.items():
        words.add("supply", np.array(start), [away / (np.abs(away).max() or 1.0)], GREY)
    for line, course in tracks:
        for opening in line.openings:
            words.add(opening.kind, *course.beside(opening.distance), GREY)
        if line.doing:
            place, sides = course.beside(course.length)
            words.add(line.name, place, [course.along(course.length), *sides], HUE)
        else:
            words.add(line.name, *course.beside(course.length / 2), GREY)
    numbered = [
        (RANK[doing], number, line, course)
        for line, course in tracks
        for doing, first, last in line.runs()
        for number in sorted({first, last})
    ]
    for _, number, line, course in sorted(numbered, key=lambda it: it[:2]):
        words.add(str(number), *course.beside(line.distance[number - 1]), "black")
