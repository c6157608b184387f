"""The pressures that outlets ask for, as lines across a profile."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from matplotlib.axes import Axes

from hydro import Outlet, Pressure, Solution, UnitSet

from .figures import limit_in_words
from .line import DrawnLine
from .paper import GREY, font_size, offsets_apart, write

MOST_KINDS = 3  # of outlets, whose limits are drawn
DASHES = {"rated": "-", "minimum": (0, (9, 3, 2, 3)), "maximum": (0, (1, 3))}


@dataclass(frozen=True)
class Limit:
    word: str  # of DASHES
    value: float  # in the unit drawn
    label: str


def limits_on(solution: Solution, lines: Iterable[DrawnLine], units: UnitSet) -> list[Limit]:
    """Of the kinds of outlets on the lines, the first few."""
    kinds: list[Outlet] = []
    for line in lines:
        for number in range(1, len(line.doing) + 1):
            kind = solution.layout.outlet_at(line.index, number)
            if kind not in kinds and len(kinds) < MOST_KINDS:
                kinds.append(kind)
    askers: dict[tuple[str, Pressure], list[str]] = {}
    for kind in kinds:
        asked = (kind.rated_pressure(), kind.minimum, kind.maximum)
        for word, pressure in zip(DASHES, asked):
            if pressure is not None:
                askers.setdefault((word, pressure), []).append(kind.name)
    limits = []
    for (word, pressure), names in askers.items():
        whose = names if len(names) < len(kinds) else []
        words = [f"{word} {limit_in_words(pressure, units.pressure)}", *whose]
        limits.append(Limit(word, pressure.to(units.pressure), ", ".join(filter(None, words))))
    return limits


def top_of(highest: float, limits: Sequence[Limit]) -> float:
    """Of the pressures, of which this is the highest, and of the limits; of a maximum if it is
    near."""
    top = max([highest, *(limit.value for limit in limits if limit.word != "maximum")])
    near = (limit.value for limit in limits if limit.value <= 1.25 * top)
    return max([top, *near]) or 1.0


def draw_limits(ax: Axes, limits: Sequence[Limit]) -> None:
    """Each called by its name at the right."""
    shown = [limit for limit in limits if limit.value <= ax.get_ylim()[1]]
    offsets = offsets_apart(ax, [limit.value for limit in shown], 1.3 * font_size())
    for limit, offset in zip(shown, offsets):
        dashes = DASHES[limit.word]
        ax.axhline(limit.value, label=limit.label, color=GREY, lw=0.9, ls=dashes, zorder=1)
        beyond = ax.get_yaxis_transform()
        write(ax, limit.label, (1, limit.value), (6, offset), xycoords=beyond)
