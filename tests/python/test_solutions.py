"""Solutions: the bench of examples/ouzel_strips.toml and small lines, in numbers and states."""

import math
import re
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest

import hydro
from hydro import *  # noqa: F403  what is printed is valid input after this
from hydro import ft, gpm, m_per_s, psi

Layouts = Callable[..., hydro.Layout]

ROOT = Path(__file__).resolve().parents[2]
REPORT = ROOT / "examples" / "expected" / "ouzel_strips.txt"


def test_the_bench_is_solved_as_its_report_says(
    before: hydro.Solution, after: hydro.Solution
) -> None:
    number = r" +([\d.]+)"
    row = rf"^ +(\d+){3 * number} +\S+ %?{number} "
    rows = re.findall(row, REPORT.read_text(), re.M)
    assert [int(row[0]) for row in rows] == 2 * list(range(1, 11))
    for name, table in (("row 1", rows[:10]), ("row 2", rows[10:])):
        place, pressure, pressure_before, flow = np.array(table, float).T[1:]
        line = after.line(name)
        assert np.abs(line.distance.to(ft) - place).max() <= 0.0500001
        assert np.abs(line.pressure.to(psi) - pressure).max() <= 0.0500001
        assert np.abs(before.line(name).pressure.to(psi) - pressure_before).max() <= 0.0500001
        assert np.abs(line.flow.to(gpm) - flow).max() <= 0.0500001
    assert after.inflow.to(gpm) == pytest.approx(111.8, abs=0.05)
    assert before.inflow.to(gpm) == pytest.approx(78.2, abs=0.05)
    assert after.supply_pressure.to(psi) == pytest.approx(43)
    assert after.line("row 1").name == "row 1"


def test_the_series_of_a_line_agree_with_each_other(before: hydro.Solution) -> None:
    line = before.line("row 2")
    pressure, flow = line.pressure.to(psi), line.flow.to(gpm)
    assert flow == pytest.approx(0.704 * np.sqrt(pressure), rel=1e-9)
    # The riser lifts by 4 ft and loses some more.
    lost = line.line_pressure.to(psi) - pressure
    assert np.all(lost > 4 * 0.4333 * 0.998) and np.all(lost < 2.1)
    # What goes past is what the outlets from there on let out.
    bore = 1.754 * 0.0254
    onward = np.cumsum(line.flow.to(hydro.m3_per_s)[::-1])[::-1]
    assert line.velocity.to(m_per_s) == pytest.approx(onward / (math.pi / 4 * bore**2), rel=1e-9)
    assert before.inflow.to(gpm) == pytest.approx(
        sum(before.line(row).flow.to(gpm).sum() for row in ("row 1", "row 2")), rel=1e-9
    )


def test_a_line_outlives_its_solution(bench: hydro.Layout) -> None:
    def line() -> hydro.LineSolution:
        return hydro.solve(bench).line("row 1")

    series = line().pressure
    first = line().flow[0]
    for _ in range(100):
        hydro.solve(bench)
    assert series.to(psi)[0] == hydro.solve(bench).line("row 1").pressure[0].to(psi)
    assert first == hydro.solve(bench).line("row 1").flow[0]


def test_states(layout: Layouts, after: hydro.Solution) -> None:
    assert after.line("row 1").state == 10 * ["works"]
    assert after.line("row 2").state == 4 * ["works"] + 2 * ["below_minimum"] + ["broken"] + 3 * [
        "below_minimum"
    ]
    assert after.line("main to tee 1").state == []
    assert set(hydro.solve(layout("90 psi", 2)).line("row 1").state) == {"above_maximum"}
    uphill = hydro.solve(layout("40 psi", 4, "200 ft")).line("row 1")
    assert uphill.state[-1] == "dry"
    assert uphill.flow[3] == 0 * gpm and uphill.pressure[3] == 0 * psi
    assert uphill.line_pressure[3] < 2 * 0.44 * psi


def test_residuals_and_notes(layout: Layouts, after: hydro.Solution) -> None:
    residuals = after.residuals
    for left in (residuals.mass, residuals.energy, residuals.outlet):
        assert 0 <= left <= 1e-12
    assert 0 < residuals.steps < 60 and residuals.last_resort is False
    assert after.notes == []
    (note,) = hydro.solve(layout("0.95 psi", 2)).notes
    assert "row 1" in note


def test_what_is_printed_of_results(bench: hydro.Layout, after: hydro.Solution) -> None:
    assert repr(bench) == "<hydro.Layout: lines 6, outlets 20, faults 1>"
    inflow = re.fullmatch("<hydro.Solution: lines 6, inflow (.*)>", repr(after))[1]
    assert eval(inflow) == after.inflow
    assert repr(after.line("row 1")) == "<hydro.LineSolution: row 1, outlets 10>"
    flow = after.line("row 1").flow
    assert np.array_equal(eval(repr(flow)).si, flow.si)
    assert repr(hydro.check(after).below_rated[0]).startswith(
        "<hydro.BelowRated: row 2, outlet 2, pressure "
    )
