"""Layouts that many tests share, and how the random ones run."""

import importlib.util
import tempfile
from collections.abc import Callable
from pathlib import Path

import pytest
from sample_line import LINE

import hydro

BENCH = Path(__file__).resolve().parents[2] / "examples" / "ouzel_strips.toml"

if importlib.util.find_spec("hypothesis"):
    from hypothesis import HealthCheck, Phase, settings
    from hypothesis.configuration import set_hypothesis_home_dir

    # The same cases in every run, on machines of any speed; nothing is left in the folder.
    settings.register_profile(
        "repeatable",
        deadline=None,
        derandomize=True,
        database=None,
        max_examples=30,
        phases=[Phase.explicit, Phase.generate],  # a smaller layout that fails takes minutes
        suppress_health_check=[HealthCheck.too_slow],
    )
    settings.load_profile("repeatable")
    set_hypothesis_home_dir(tempfile.gettempdir())  # type: ignore[no-untyped-call]


@pytest.fixture(scope="session")
def bench() -> hydro.Layout:
    return hydro.read_layout(BENCH)


@pytest.fixture(scope="session")
def before(bench: hydro.Layout) -> hydro.Solution:
    return hydro.solve(bench.without_faults())


@pytest.fixture(scope="session")
def after(bench: hydro.Layout) -> hydro.Solution:
    return hydro.solve(bench)


@pytest.fixture(scope="session")
def layout() -> Callable[..., hydro.Layout]:
    def make(
        pressure: str = "40 psi", count: int = 24, ground_rise: str = "0 ft"
    ) -> hydro.Layout:
        text = LINE.format(pressure=pressure, count=count, ground_rise=ground_rise)
        return hydro.read_layout_text(text)

    return make
