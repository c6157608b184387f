"""The arguments that every picture takes."""

from __future__ import annotations

import hydro
from hydro import InvalidInput, Layout, Solution, UnitSet, UnitSystem


def expect_solution(name: str, value: object) -> None:
    if not isinstance(value, Solution):
        kind = type(value).__name__
        raise TypeError(f"{name}: is a {kind}, not a Solution: write hydro.solve(layout)")


def units_asked_for(layout: Layout, units: UnitSystem | str | None) -> UnitSet:
    system = layout.units if units is None else units
    if system not in list(UnitSystem):
        raise InvalidInput(
            f"units: is {units!r}, must be 'us', 'si' or None, which is the site's own"
        )
    return hydro.unit_set(system)
