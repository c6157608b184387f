"""A line as it is drawn: numbers in the units drawn, and what each of its outlets does."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

import numpy as np

import hydro
from hydro import Flow, LineSolution, Solution, UnitSet

from .figures import Numbers

WORST_FIRST = (
    "broken",
    "capped",
    "no water",
    "dry",
    "below minimum",
    "below rated",
    "above maximum",
    "shut",
    "works",
)
RANK = {doing: place for place, doing in enumerate(WORST_FIRST)}
MOST_MARKS = 50  # on one line
NO_FLOW = 1e-9  # of the largest velocity: what the residuals leave open


@dataclass(frozen=True)
class Opening:
    """Where the line itself is open; of one that is cut, both ends."""

    kind: str
    distance: float  # in the unit drawn
    flow: Flow


@dataclass(frozen=True, eq=False)
class DrawnLine:
    """Lists and arrays have one entry an outlet, from the inlet on."""

    name: str
    index: int  # in the layout
    distance: Numbers
    pressure: Numbers
    doing: list[str]  # words of WORST_FIRST
    escaping: Flow  # from all that are broken
    openings: list[Opening]
    meetings: list[int]  # indices of outlets to which water comes from both sides

    def badness(self) -> tuple[int, float]:
        """The lower, the worse its worst outlet."""
        return min(RANK[doing] for doing in self.doing), float(self.pressure.min())

    def on_curve(self) -> list[int]:
        """Indices of the outlets that say what the pressure along the line is."""
        silent = ("broken", "capped", "no water", "shut")
        return [i for i, doing in enumerate(self.doing) if doing not in silent]

    def stretches(self) -> list[list[int]]:
        """Those on the curve, parted where the line is cut, since no water passes there."""
        cuts = [opening.distance for opening in self.openings if opening.kind == "line cut"]
        those = self.on_curve()
        parts = np.searchsorted(self.distance[those], sorted(cuts), side="right")
        return [list(part) for part in np.split(those, parts) if len(part)]

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


def drawn_lines(solution: Solution, names: Iterable[str], units: UnitSet) -> list[DrawnLine]:
    layout = solution.layout
    all_solved = solution.lines
    all_told = solution.to_dict()["lines"]

    def drawn(name: str) -> DrawnLine:
        index = layout.index_of(name)
        solved, faults = all_solved[index], layout.faults_on(index)
        doing = [state.replace("_", " ") for state in all_told[index]["state"]]
        if solved.shut:
            doing = ["shut"] * len(doing)
        broken = [flow for flow, does in zip(solved.flow, doing) if does == "broken"]
        return DrawnLine(
            name=name,
            index=index,
            distance=solved.distance.to(units.length),
            pressure=solved.pressure.to(units.pressure),
            doing=doing,
            escaping=sum(broken, start=0 * units.flow),
            openings=openings_of(solved, faults, units),
            meetings=meetings_of(solved),
        )

    return [drawn(name) for name in names]


def openings_of(
    solved: LineSolution, faults: Sequence[hydro.Fault], units: UnitSet
) -> list[Opening]:
    found: dict[int, Opening] = {}
    for it in solved.openings:
        sofar = found[it.fault].flow if it.fault in found else 0 * units.flow
        kind, distance = hydro.kind_of(faults[it.fault]), it.distance.to(units.length)
        found[it.fault] = Opening(kind, distance, sofar + it.flow)
    return list(found.values())


def meetings_of(solved: LineSolution) -> list[int]:
    arriving = solved.velocity.to(hydro.m_per_s)
    if not len(arriving):
        return []
    leaving = np.append(arriving[1:], np.sign(solved.end_flow.to(hydro.m3_per_s)))
    least = NO_FLOW * np.abs(arriving).max()
    return [int(i) for i in np.flatnonzero((arriving > least) & (leaving < -least))]
