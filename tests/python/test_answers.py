"""What a check and a report say of a solution."""

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

import hydro
from hydro import psi

Layouts = Callable[..., hydro.Layout]

ROOT = Path(__file__).resolve().parents[2]
REPORT = ROOT / "examples" / "expected" / "ouzel_strips.txt"


def outlets(findings: list[Any]) -> list[tuple[str, int]]:
    return [(found.line, found.outlet) for found in findings]


def without_residuals(report: str) -> str:
    return re.sub(r"Solved in [^.]*\.", "Solved.", report)


def test_check(layout: Layouts, after: hydro.Solution) -> None:
    found = hydro.check(after)
    assert outlets(found.below_rated) == [("row 2", outlet) for outlet in (2, 3, 4, 5, 6, 8, 9, 10)]
    assert outlets(found.below_minimum) == [("row 2", outlet) for outlet in (5, 6, 8, 9, 10)]
    assert found.above_maximum == [] and found.dry == []
    last = found.below_rated[-1]
    assert last.pressure == after.line("row 2").pressure[9]
    assert last.rated.to(psi) == pytest.approx(25)
    assert found.below_minimum[-1].pressure == last.pressure
    assert found.below_minimum[-1].minimum.to(psi) == pytest.approx(18)

    high = hydro.solve(layout("90 psi", 2))
    (first, _) = hydro.check(high).above_maximum
    assert (first.line, first.outlet) == ("row 1", 1)
    assert first.pressure == high.line("row 1").pressure[0]
    assert first.maximum.to(psi) == pytest.approx(50)

    uphill = hydro.solve(layout("40 psi", 4, "200 ft"))
    dry = hydro.check(uphill).dry
    assert outlets(dry)[-1] == ("row 1", 4)
    assert dry[-1].line_pressure == uphill.line("row 1").line_pressure[3]


def test_findings_outlive_their_check(after: hydro.Solution) -> None:
    last = hydro.check(after).below_rated[-1]
    rated = hydro.check(after).below_rated[-1].rated
    assert (last.line, last.outlet) == ("row 2", 10)
    assert rated.to(psi) == pytest.approx(25)


def test_report(before: hydro.Solution, after: hydro.Solution) -> None:
    assert without_residuals(hydro.report(before, after)) == without_residuals(REPORT.read_text())
    assert hydro.report(after).startswith("Ouzel Bench, seed-potato strips 1 and 2\n")
    assert "and what it does" not in hydro.report(after)


def test_a_report_compares_like_with_like(before: hydro.Solution, layout: Layouts) -> None:
    with pytest.raises(hydro.InvalidInput):
        hydro.report(before, hydro.solve(layout()))
