"""Where a pump's curve meets what the lines take."""

from __future__ import annotations

import textwrap
from dataclasses import dataclass
from typing import Any

import numpy as np
from matplotlib.axes import Axes
from matplotlib.ticker import AutoMinorLocator

import hydro
from hydro import (
    Flow,
    InvalidInput,
    Layout,
    OperatingPoint,
    PumpArrangement,
    PumpRange,
    Solution,
    Supply,
    UnitSet,
    UnitSystem,
)

from .arguments import expect_solution, units_asked_for
from .figures import KEPT, Numbers, flow_in_words
from .marks import Mark
from .paper import GREY, HUE, font_size, new_axes, size_of, write

STEPS = 60  # of flow, along the pump's curve
HEADS = 24  # held, along the system's curve
AFTER: dict[str, Any] = {"color": HUE, "linewidth": 1.5, "linestyle": "-", "zorder": 3}
BEFORE: dict[str, Any] = {"color": GREY, "linewidth": 1.1, "linestyle": (0, (5, 3)), "zorder": 2}
MARKS = {
    PumpRange.inside: Mark("o", filled=True, size=8),
    PumpRange.unknown: Mark("o", filled=True, size=8),
    PumpRange.below_least_flow: Mark("v", size=9),
    PumpRange.above_most_flow: Mark("^", size=9),
}
RANGES = {
    PumpRange.inside: "inside the usable range",
    PumpRange.below_least_flow: "below the usable range",
    PumpRange.above_most_flow: "above the usable range",
}


def pump_curve(
    before: Solution,
    after: Solution | None = None,
    *,
    units: UnitSystem | str | None = None,
    ax: Axes | None = None,
) -> Axes:
    """Head of the pump against flow at its speed, and what suction, filter and lines ask of it.

    The pump runs where both curves meet: a filled disc there, a triangle that points down below
    its least and up above its most usable flow. The usable range is shaded; of two pumps, whose
    heads or flows are added, it is not. The lines' curve is solved with pressures held in place of
    the pump; further supplies give what they give at these.

    after: the same with a fault, at another speed or with other sets running; then `before` is
        dashed, and of two curves that are the same only one is drawn.
    units: "us" (gal/min, ft) or "si" (L/min, m); None: those of the site.
    ax: where it is drawn; None: on a new figure.

    Returns the Axes, in the units drawn. InvalidInput for a supply without a pump and for units
    that are unknown, NotSolved; TypeError for what is no Solution.

    >>> import hydro, hydro.plot
    >>> from hydro import ft, gpm, inch, psi, rpm
    >>> pump = hydro.Pump(
    ...     points=[
    ...         hydro.PumpPoint(flow=0 * gpm, head=150 * ft),
    ...         hydro.PumpPoint(flow=100 * gpm, head=125 * ft),
    ...     ],
    ...     curve_speed=2600 * rpm,
    ... )
    >>> pipe = hydro.Pipe(inside_diameter=1.754 * inch, hazen_williams=150)
    >>> spray = hydro.Outlet(flow=1.2 * gpm, at=30 * psi, minimum=20 * psi)
    >>> row = hydro.Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> strip = hydro.solve(hydro.Layout(hydro.Supply(pump=pump), [row]))
    >>> ax = hydro.plot.pump_curve(strip, units="us")
    >>> ax.get_xlabel(), ax.get_ylabel()
    ('flow of the supply [gal/min]', 'head of the pump [ft]')
    """
    solutions = {"before": before} if after is None else {"before": before, "after": after}
    for name, solution in solutions.items():
        expect_solution(name, solution)
        if solution.layout.supply.pump is None:
            raise InvalidInput(f"{name}: is fed by no pump, so there is no curve of one")
    last = before if after is None else after
    shown = units_asked_for(last.layout, units)
    most = most_flow(*solutions.values())
    curves = {name: curves_of(solution, most, shown) for name, solution in solutions.items()}

    ax = new_axes(height=4.8) if ax is None else ax
    highest = max(float(it.pump[1].max()) for it in curves.values())
    ax.set_xlim(0, most.to(shown.flow))
    ax.set_ylim(0, 1.12 * highest)
    ax.set_xlabel(f"flow of the supply [{shown.flow}]")
    ax.set_ylabel(f"head of the pump [{shown.length}]")
    ax.xaxis.set_minor_locator(AutoMinorLocator())
    ax.spines[["top", "right"]].set_visible(False)
    draw_usable_range(ax, last.supply, shown)
    draw_curves(ax, curves)
    draw_points(ax, {name: it.supply for name, it in solutions.items()}, curves)
    draw_heading(ax, solutions, shown)
    return ax


@dataclass(frozen=True, eq=False)
class Curves:
    """In the units drawn: flows, and heads of the pump at them."""

    pump: tuple[Numbers, Numbers]
    lines: tuple[Numbers, Numbers]
    point: tuple[float, float]
    speed: str


def curves_of(solution: Solution, most: Flow, units: UnitSet) -> Curves:
    layout = solution.layout
    supply = layout.supply_as_it_is

    def point_at(flow: Flow) -> OperatingPoint:
        return hydro.operating_point(supply, flow, layout.water, layout.site)

    flows = np.linspace(0, 1, STEPS + 1) * most.to(units.flow)
    heads = np.array([head_of(point_at(it * units.flow), supply, units) for it in flows])
    gives = heads >= 0  # beyond the end of its curve the water would drive it

    # What stands between pump and lines costs the same at the same flow, whatever the lines do.
    density = solution.water.density
    taken = []
    for held in held_solutions(solution):
        flow = held.supply.flow
        if flow < 0 * units.flow:  # other supplies push water back: the pump has a check valve
            continue
        point = point_at(flow)
        missing = hydro.head(held.supply_pressure, density) - hydro.head(point.pressure, density)
        head = head_of(point, supply, units) + missing.to(units.length)
        taken.append((flow.to(units.flow), head))
    at_rest = [head for flow, head in taken if flow == 0][-1:]
    running = [pair for pair in taken if pair[0] > 0]
    lines = np.reshape([(0.0, head) for head in at_rest] + running, (-1, 2)).T
    speeds = [duty.speed for duty in solution.supply.pumps]
    return Curves(
        pump=(flows[gives], heads[gives]),
        lines=(lines[0], lines[1]),
        point=(
            solution.supply.flow.to(units.flow),
            head_of(solution.supply, supply, units),
        ),
        speed=" and ".join(f"{it.to(hydro.rpm):.0f}{KEPT}rpm" for it in speeds if it is not None),
    )


def head_of(point: OperatingPoint, supply: Supply, units: UnitSet) -> float:
    """Of two pumps in series the sum; in parallel the stronger's, which may shut the other."""
    heads = [duty.head.to(units.length) for duty in point.pumps]
    return sum(heads) if supply.arrangement == PumpArrangement.series else max(heads)


def held_solutions(solution: Solution) -> list[Solution]:
    """With pressures held at the start of the lines, up to the one that the pump gives at rest."""
    layout = solution.layout
    supply = layout.supply_as_it_is
    at_rest = hydro.operating_point(supply, 0 * hydro.gpm, layout.water, layout.site).pressure
    if not at_rest > 0 * hydro.psi:
        return []
    # Squares of equal steps: about equal steps of flow.
    shares = {(k / HEADS) ** 2 for k in range(HEADS + 1)} | {solution.supply_pressure / at_rest}
    lines = without_supply_faults(layout)
    return [
        hydro.solve(
            lines.with_supply(Supply(pressure=share * at_rest, elevation=supply.elevation))
        )
        for share in sorted(shares)
        if share >= 0
    ]


def without_supply_faults(layout: Layout) -> Layout:
    """Those of further supplies stay."""
    return layout.without_faults().with_faults(
        [it for it in layout.faults if not hydro.is_of_first_supply(it)]
    )


def most_flow(*solutions: Solution) -> Flow:
    """As far as is drawn: beyond the points at which the pumps run, and their usable range."""
    wanted = [1.3 * solution.supply.flow for solution in solutions]
    for solution in solutions:
        if len(solution.supply.pumps) == 1 and solution.supply.pumps[0].most_flow is not None:
            wanted.append(1.08 * solution.supply.pumps[0].most_flow)
    most = max(wanted)
    return most if most > 0 * hydro.gpm else 1 * hydro.gpm


def draw_usable_range(ax: Axes, point: OperatingPoint, units: UnitSet) -> None:
    if len(point.pumps) != 1 or point.pumps[0].range == PumpRange.unknown:
        return
    duty = point.pumps[0]
    low = 0.0 if duty.least_flow is None else duty.least_flow.to(units.flow)
    high = ax.get_xlim()[1] if duty.most_flow is None else duty.most_flow.to(units.flow)
    ax.axvspan(low, high, label="usable range", color=GREY, alpha=0.08, lw=0, zorder=0)
    beyond = ax.get_xaxis_transform()
    write(ax, "usable range", (low, 0), (5, 8), xycoords=beyond)


def draw_curves(ax: Axes, curves: dict[str, Curves]) -> None:
    draw_pumps(ax, {name: (it.pump, it.speed) for name, it in curves.items()})
    lines = {name: it.lines for name, it in curves.items()}
    if len(lines) == 2 and same(*lines.values()):
        lines = dict([max(lines.items(), key=lambda it: float(it[1][0].max(initial=0)))])
    for name, (flows, heads) in lines.items():
        style = BEFORE if name != list(lines)[-1] else AFTER
        words = "the lines take" + (f", {name}" if len(lines) == 2 else "")
        ax.plot(flows, heads, label=words, **{**style, "linewidth": 0.7 * style["linewidth"]})
        name_lines(ax, words, flows, heads, style["color"])


def draw_pumps(ax: Axes, pumps: dict[str, tuple[tuple[Numbers, Numbers], str]]) -> None:
    if len(pumps) == 2 and same(*(curve for curve, _ in pumps.values())):
        del pumps["before"]
    weakest = min(pumps, key=lambda it: float(pumps[it][0][1][0]))
    for name, ((flows, heads), speed) in pumps.items():
        style = BEFORE if name != list(pumps)[-1] else AFTER
        words = "the pump" + (f" at {speed}" if speed else "")
        words += f", {name}" if len(pumps) == 2 else ""
        ax.plot(flows, heads, label=words, **style)
        below = len(pumps) == 2 and name == weakest
        beside = (6, (-1.8 if below else 0.9) * font_size())
        write(ax, words, (flows[0], heads[0]), beside, color=style["color"])


def same(one: tuple[Numbers, Numbers], other: tuple[Numbers, Numbers]) -> bool:
    """On paper, over the flows that both have."""
    if not len(one[0]) or not len(other[0]):
        return len(one[0]) == len(other[0])
    low, high = max(one[0][0], other[0][0]), min(one[0][-1], other[0][-1])
    flows = np.linspace(low, high, STEPS)
    heads, others = np.interp(flows, *one), np.interp(flows, *other)
    return bool(np.abs(heads - others).max() <= 0.01 * max(heads.max(), others.max()))


def name_lines(ax: Axes, words: str, flows: Numbers, heads: Numbers, color: str) -> None:
    """Beside the last place that is on the paper."""
    right, top = ax.get_xlim()[1], ax.get_ylim()[1]
    on_paper = np.flatnonzero((flows <= right) & (heads <= top))
    if len(on_paper):
        last = on_paper[-1]
        write(ax, words, (flows[last], heads[last]), (-6, 6), ha="right", color=color)


def draw_points(ax: Axes, points: dict[str, OperatingPoint], curves: dict[str, Curves]) -> None:
    for name, point in points.items():
        is_last = name == list(points)[-1]
        ranges = {duty.range for duty in point.pumps}
        worst = [it for it in MARKS if it in ranges][-1]
        style: dict[str, Any] = {**MARKS[worst].style(), "zorder": 5 if is_last else 4}
        if not is_last:
            style |= {"color": GREY}
            style["markerfacecolor"] = GREY if MARKS[worst].filled else "white"
        label = name if len(points) == 2 else "operating point"
        ax.plot(*([it] for it in curves[name].point), label=label, **style)
        if len(points) == 2:
            color = HUE if is_last else GREY
            write(ax, name, curves[name].point, (5, -13), color=color)


def draw_heading(ax: Axes, solutions: dict[str, Solution], units: UnitSet) -> None:
    name = next(iter(solutions.values())).layout.site.name
    rows = [name or "The pump and the lines"]
    for which, solution in solutions.items():
        words = point_in_words(solution, units)
        rows.append(f"{which}: {words}" if len(solutions) == 2 else words)
    # The middle title, moved to the left: the caller's own set_title takes its place.
    columns = max(20, int(size_of(ax)[0] / (0.52 * font_size("medium"))))
    wrapped = [line for row in rows for line in textwrap.wrap(row, columns)]
    text = "\n".join(wrapped).replace(KEPT, " ")
    ax.set_title(text, x=0, ha="left", fontsize="medium", parse_math=False)


def point_in_words(solution: Solution, units: UnitSet) -> str:
    """`78.2 gal/min at 112 ft, 43.0 psi at the start of the lines, inside the usable range`."""
    point = solution.supply
    head = head_of(point, solution.layout.supply_as_it_is, units)
    parts = [
        f"{flow_in_words(point.flow, units.flow)} at {head:.0f} {units.length}",
        f"{point.pressure.to(units.pressure):.1f} {units.pressure} at the start of the lines",
    ]
    powers = [duty.shaft_power for duty in point.pumps if duty.shaft_power is not None]
    if len(powers) == len(point.pumps):
        needed = sum(it.to(units.power) for it in powers)
        parts.append(f"{needed:.1f} {units.power} at the shaft")
    ranges = [RANGES[duty.range] for duty in point.pumps if duty.range in RANGES]
    parts += list(dict.fromkeys(ranges))
    parts += ["held shut by the other supplies"] if point.held_shut else []
    return ", ".join(parts)
