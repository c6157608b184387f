"""How likely the fault is at each place along the lines."""

from __future__ import annotations

from collections import defaultdict

from matplotlib.axes import Axes
from matplotlib.patches import Rectangle

from hydro import (
    CandidateKind,
    FoundFaults,
    Layout,
    Length,
    LengthUnit,
    UnitSystem,
    WalkKind,
    WalkTo,
    is_as_it_should_be,
)

from .arguments import units_asked_for
from .paper import GREY, HUE, new_axes, write

MOST_LINES = 24
"""one beneath the other, so that bars can be told apart"""
WORTH_A_BAR = 0.005
"""less is no whole per cent"""
MOST_NUMBERS = 20
"""of outlets, so that each can be read"""
HIGHEST = 0.45
"""bar, of the way from a line to the next"""
CLEAR = 0.5
"""less does not single out one place"""
SUPPLY = "supply"


def fault_strips(
    layout: Layout,
    found: FoundFaults,
    *,
    units: UnitSystem | str | None = None,
    ax: Axes | None = None,
) -> Axes:
    """Each line from its inlet on, and over its places bars as high as the fault is likely there.

    A valve and a regulator are at the inlet, an end left open at the far end; what is at the supply
    has a row of its own. Lines that have outlets are drawn, and others where the fault may be; of
    more than 24 the likeliest. At the right stands what each has in all, in per cent. Where to walk
    first is framed.

    layout: that find_fault was asked of. units: "us" or "si", default the site's own.

    >>> import hydro, hydro.plot
    >>> from hydro import ft, gpm, inch, psi
    >>> row = hydro.Line(
    ...     name="row 1",
    ...     pipe=hydro.Pipe(inside_diameter=1.754 * inch, hazen_williams=150),
    ...     outlet=hydro.Outlet(flow=1.2 * gpm, at=30 * psi, body_bore=0.3 * inch),
    ...     count=8,
    ...     spacing=20 * ft,
    ... )
    >>> farm = hydro.Layout(hydro.Supply(pressure=40 * psi), [row])
    >>> low = hydro.Reading(place="flush end", line="row 1", pressure=20 * psi)
    >>> ax = hydro.plot.fault_strips(farm, hydro.find_fault(farm, [low]))
    >>> [label.get_text() for label in ax.get_yticklabels()]
    ['supply', 'row 1']
    """
    if not isinstance(layout, Layout):
        raise TypeError(f"layout: is a {type(layout).__name__}, not a Layout")
    if not isinstance(found, FoundFaults):
        kind = type(found).__name__
        raise TypeError(f"found: is a {kind}, not FoundFaults: write hydro.find_fault(layout, ...)")
    unit = units_asked_for(layout, units).length
    bars = _bars(layout, found, unit)
    names = _lines_drawn(layout, bars)
    highest = max((share for of in bars.values() for share in of.values()), default=0) or 1
    lengths = {name: layout.line(name).whole_length().to(unit) for name in names}
    longest = max(lengths.values(), default=1)

    rows = [SUPPLY, *names]
    ax = new_axes(1.2 + 0.75 * len(rows)) if ax is None else ax
    for row, name in enumerate(rows):
        its = bars["" if row == 0 else name]
        if row > 0:
            ax.plot([0, lengths[name]], [row, row], color=GREY, linewidth=1.5, label=name)
            line = layout.line(name)
            at = [line.place_of(number).to(unit) for number in range(1, line.outlet_count() + 1)]
            ax.plot(at, [row] * len(at), "|", color=GREY, markersize=5)
            for index in range(0, len(at), -(-len(at) // MOST_NUMBERS) or 1):
                under = (at[index], row)
                write(ax, str(index + 1), under, (0, -8), ha="center", fontsize="x-small")
        heights = [HIGHEST * share / highest for share in its.values()]
        width = min(0.015 * longest, 0.7 * longest / max(1, len(its)))
        ax.bar(list(its), [-height for height in heights], width, bottom=row, color=HUE)
        for place, share, height in zip(its, its.values(), heights):
            if share >= WORTH_A_BAR:
                write(ax, f"{100 * share:.0f}", (place, row - height), (0, 6), ha="center")
        total = sum(its.values())
        words = _in_percent(total) if total >= WORTH_A_BAR else ""
        write(ax, words, (1.04 * longest, row), (0, 0), fontsize="medium", color="black")
    if found.explained and found.walk and not is_as_it_should_be(found):
        _frame(ax, layout, found.walk[0], rows, longest, unit)
    ax.set_xlim(-0.03 * longest, 1.12 * longest)
    ax.set_ylim(len(rows) - 0.6, -1)
    ax.set_yticks(range(len(rows)), rows, parse_math=False)
    ax.tick_params(axis="y", length=0)
    ax.set_xlabel(f"from the inlet [{unit}]")
    ax.set_title(_headline(found), loc="left", fontsize="medium", parse_math=False)
    ax.spines[["top", "right", "left"]].set_visible(False)
    return ax


def _outlet(layout: Layout, line: str, number: int, unit: LengthUnit) -> float:
    return layout.line(line).place_of(number).to(unit)


def _bars(
    layout: Layout, found: FoundFaults, unit: LengthUnit
) -> defaultdict[str, dict[float, float]]:
    """By line, "" for the supply: the probability by place."""
    bars: defaultdict[str, dict[float, float]] = defaultdict(dict)
    for fault in found.faults:
        candidate = fault.candidate
        if candidate.kind == CandidateKind.no_fault:
            continue
        place = 0.0
        if candidate.outlet is not None:
            place = _outlet(layout, candidate.line, candidate.outlet, unit)
        elif isinstance(candidate.place, Length):
            place = candidate.place.to(unit)
        elif candidate.kind == CandidateKind.end_open:
            place = layout.line(candidate.line).whole_length().to(unit)
        its = bars[candidate.line]
        its[place] = its.get(place, 0.0) + fault.probability
    return bars


def _lines_drawn(layout: Layout, bars: defaultdict[str, dict[float, float]]) -> list[str]:
    shares = {line.name: sum(bars[line.name].values()) for line in layout.lines}
    worth = [
        line.name
        for number, line in enumerate(layout.lines)
        if shares[line.name] >= WORTH_A_BAR
        or (line.outlet_count() > 0 and not layout.is_shut(number))
    ]
    likeliest = sorted(worth, key=lambda name: -shares[name])[:MOST_LINES]
    return [name for name in worth if name in likeliest]


def _frame(
    ax: Axes, layout: Layout, walk: WalkTo, rows: list[str], longest: float, unit: LengthUnit
) -> None:
    name = walk.line or SUPPLY
    if walk.kind == WalkKind.nothing or name not in rows:
        return
    start = end = 0.0
    if walk.first is not None and walk.last is not None:
        start, end = (_outlet(layout, name, number, unit) for number in (walk.first, walk.last))
    elif walk.kind == WalkKind.end_open:
        start = end = layout.line(name).whole_length().to(unit)
    margin = 0.02 * longest
    row = rows.index(name) if walk.line else 0
    corner = (start - margin, row - HIGHEST - 0.25)
    size = (end - start + 2 * margin, HIGHEST + 0.5)
    ax.add_patch(
        Rectangle(corner, *size, fill=False, edgecolor="black", linewidth=1.5, label="walk here")
    )


def _headline(found: FoundFaults) -> str:
    if not found.explained:
        return "No single fault explains these readings"
    if not found.walk or is_as_it_should_be(found):
        return "These readings are as they should be"
    first = found.walk[0]
    words = "nothing wrong" if first.kind == WalkKind.nothing else str(first.kind)
    if first.line:
        words += f" on {first.line}"
    if first.first is not None:
        is_one = first.first == first.last
        words += f", outlet {first.first}" if is_one else f", outlets {first.first} to {first.last}"
    words += f": {_in_percent(first.probability)}"
    if first.probability >= CLEAR:
        return words[0].upper() + words[1:]
    return f"No one place yet; likeliest {words}"


def _in_percent(probability: float) -> str:
    """Never surer than one is."""
    return ">99 %" if probability > 0.99 else f"{100 * probability:.0f} %"
