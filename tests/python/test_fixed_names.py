"""What others may rely on, as it stands in the design: every line runs as it is printed."""

import shutil
from pathlib import Path

import numpy as np
import pytest

BENCH = Path(__file__).resolve().parents[2] / "examples" / "ouzel_strips.toml"

PRINTED = """
import hydro
from hydro import psi, gpm, ft, inch
farm   = hydro.read_layout("farm.toml")
before = hydro.solve(farm)
after  = hydro.solve(farm.with_fault(hydro.head_off("row 1", 7)))
after.line("row 1").pressure.to(psi)
after.line("row 1").line_pressure.to(psi)
after.line("row 1").flow.to(gpm)
after.inflow.to(gpm), after.supply_pressure.to(psi)
hydro.check(after).below_rated
hydro.clogged("row 1", 7, 0.6); hydro.worn("row 1", 7, 0.25); hydro.capped("row 1", 7)
hydro.riser_sheared("row 1", 7, stub=0.5*ft)
"""


def test_the_printed_lines_run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    shutil.copy(BENCH, tmp_path / "farm.toml")
    monkeypatch.chdir(tmp_path)
    names: dict[str, object] = {}
    exec(PRINTED, names)

    def value(expression: str) -> object:
        assert expression in PRINTED
        return eval(expression, names)

    for text in ("pressure.to(psi)", "line_pressure.to(psi)", "flow.to(gpm)"):
        numbers = value(f'after.line("row 1").{text}')
        assert isinstance(numbers, np.ndarray)
        assert numbers.shape == (10,) and numbers.dtype == np.float64
    assert isinstance(value("after.inflow.to(gpm)"), float)
    assert isinstance(value("after.supply_pressure.to(psi)"), float)
    found = value("hydro.check(after).below_rated")
    assert isinstance(found, list) and found
    assert eval("(25 * psi).to(hydro.kPa)", names) == pytest.approx(172.36893232920902, rel=1e-15)
    for below in found:
        assert below.line in ("row 1", "row 2") and 1 <= below.outlet <= 10
        assert below.pressure < below.rated
