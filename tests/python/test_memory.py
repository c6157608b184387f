"""Memory does not grow, however much is solved, made and thrown away."""

import gc
import os
import pickle
from collections.abc import Callable
from pathlib import Path

import pytest

import hydro
from hydro import ft, gpm, inch, psi

STATM = Path("/proc/self/statm")

# What may be kept of memory that is free: one arena of CPython's small objects (1 MiB), and what
# glibc keeps at the top of its heap (M_TRIM_THRESHOLD, 128 KiB), before and after.
ALLOWED = 1024 * 1024 + 2 * 128 * 1024
SMALLEST = 32  # block of malloc on 64 bits, and less than any object of Python that can be lost


def resident() -> int:
    """Memory that the process has in use [bytes]."""
    gc.collect()
    return int(STATM.read_text().split()[1]) * os.sysconf("SC_PAGE_SIZE")


def growth(work: Callable[[], object], times: int) -> int:
    """After a tenth of the times, which fill caches and stretch the heap."""
    for _ in range(times // 10):
        work()
    warm = resident()
    for _ in range(times - times // 10):
        work()
    return resident() - warm


def line(name: str = "row 1") -> hydro.Line:
    return hydro.Line(
        name=name,
        pipe=hydro.Pipe(inside_diameter=1 * inch, hazen_williams=150),
        outlet=hydro.Outlet(flow=1.2 * gpm, at=30 * psi),
        count=4,
        spacing=20 * ft,
        riser=hydro.Riser(height=2 * ft),
    )


LAYOUT = hydro.Layout(hydro.Supply(pressure=40 * psi), [line()])
LOST = hydro.nozzle_missing("", 0, bore=0.3 * inch)


def solve() -> None:
    solved = hydro.solve(LAYOUT).lines[0]
    solved.pressure.to(psi), solved.flow.si, solved.state


def solve_broken() -> None:
    hydro.solve(LAYOUT.with_fault(hydro.clogged("row 1", 2, 0.5)))


def make() -> None:
    line().replace(name="row 2")


def pickle_and_back() -> None:
    pickle.loads(pickle.dumps(LAYOUT))


def refuse() -> None:
    try:
        LAYOUT.line("row 2")
    except hydro.InvalidInput:
        pass


def solve_in_vain() -> None:
    try:
        hydro.solve(LAYOUT, newton_steps=0)
    except hydro.NotSolved:
        pass


def break_every_outlet() -> None:
    found = hydro.break_every_outlet(
        LAYOUT, fault=LOST, keep="profiles", threads=1, progress=lambda done, of: True
    )
    assert found.pressure is not None
    found.pressure.si, found.conditions, found.breaks[0].line


def break_and_stop() -> None:
    try:
        hydro.break_every_outlet(LAYOUT, fault=LOST, threads=1, progress=lambda done, of: False)
    except hydro.Stopped:
        pass


@pytest.mark.skipif(not STATM.exists(), reason="only Linux tells it so")
@pytest.mark.parametrize(
    "work, times",
    [
        (solve, 100_000),
        (solve_broken, 50_000),
        (make, 50_000),
        (pickle_and_back, 50_000),
        (refuse, 50_000),
        (solve_in_vain, 50_000),
        (break_every_outlet, 50_000),
        (break_and_stop, 50_000),
    ],
)
def test_memory_does_not_grow(work: Callable[[], object], times: int) -> None:
    assert SMALLEST * (times - times // 10) > ALLOWED  # one block lost each time would be seen
    assert growth(work, times) <= ALLOWED
