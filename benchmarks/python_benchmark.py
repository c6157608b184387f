"""What Python adds to a solve, and what general solvers of Python need for the same lateral.

    PYTHONPATH=BUILD/python python3 -P benchmarks/python_benchmark.py BUILD/benchmarks/solve_benchmark

Case      The level lateral of solve_benchmark.cpp without risers: Hazen-Williams, 20 % of the
          supply's head lost, outlets of exponent 0.5.
Peers     scipy.optimize.root, method hybr, with analytic derivatives: on the flow in every length
          and the head at every outlet, as the equations are written, and on the heads alone, the
          flows being summed up from the far end; and a Newton iteration written with numpy on
          flows and heads (scipy.linalg.solve_banded). All begin at rest and end at the same
          pressures, which is checked.
Ratios    Every figure is the median of several rounds in which all cases take turns.
"""

from __future__ import annotations

import compileall
import json
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray
from scipy.linalg import solve_banded
from scipy.optimize import root

import hydro
from hydro import kPa, lph, m

ROUNDS = 9
SUPPLY = 300 * kPa
SPACING = 12 * m
SPRINKLER = hydro.Outlet(flow=800 * lph, at=250 * kPa)
WEIGHT = hydro.properties(hydro.Water()).density.to(hydro.kg_per_m3) * hydro.gravity  # [N/m3]

Array = NDArray[np.float64]


def bore_for(count: int) -> float:
    """Loses about 20 % of the supply's head over the outlets [m]."""
    flow = count * SPRINKLER.flow.to(hydro.m3_per_s)
    loss = 0.2 * SUPPLY.to(hydro.Pa) / 9806.65
    length = count * SPACING.to(m)
    return float((0.36 * 10.67 * length * flow**1.852 / (150**1.852 * loss)) ** (1 / 4.8704))


def lateral(count: int) -> hydro.Layout:
    pipe = hydro.Pipe(inside_diameter=bore_for(count) * m, hazen_williams=150)
    line = hydro.Line(name="lateral", pipe=pipe, outlet=SPRINKLER, count=count, spacing=SPACING)
    return hydro.Layout(hydro.Supply(pressure=SUPPLY), [line])


class Equations:
    """The lateral as a Python user would write it, in heads [m] and flows [m3/s]."""

    def __init__(self, count: int) -> None:
        self.count = count
        self.supply = SUPPLY.to(hydro.Pa) / WEIGHT
        self.friction = 10.67 * SPACING.to(m) / (150**1.852 * bore_for(count) ** 4.8704)
        at = SPRINKLER.at.to(hydro.Pa) / WEIGHT
        self.outlet = SPRINKLER.flow.to(hydro.m3_per_s) / at**0.5
        self.most = count * self.outlet * self.supply**0.5  # flow, if nothing were lost

    def outlets(self, heads: Array) -> Array:
        flows: Array = self.outlet * np.sqrt(np.maximum(heads, 0))
        return flows

    def mismatch(self, heads: Array) -> Array:
        """Head lost in each length less what the flow beyond it takes."""
        flows = np.cumsum(self.outlets(heads)[::-1])[::-1]
        before = np.append(self.supply, heads[:-1])
        mismatch: Array = before - heads - self.friction * flows**1.852
        return mismatch

    def slopes(self, heads: Array) -> Array:
        outlets = self.outlets(heads)
        flows = np.cumsum(outlets[::-1])[::-1]
        steep = self.friction * 1.852 * flows**0.852
        each = outlets / (2 * np.maximum(heads, 1e-9))
        slopes = -np.triu(np.outer(steep, each))
        slopes -= np.eye(self.count)
        slopes += np.eye(self.count, k=-1)
        return slopes

    def by_hybr_on_heads(self) -> Array:
        found = root(self.mismatch, np.full(self.count, self.supply), jac=self.slopes, tol=1e-12)
        assert found.success, found.message
        heads: Array = found.x
        return heads

    def all_mismatches(self, unknowns: Array) -> Array:
        """Energy in every length, then mass at every outlet, as shares of the largest."""
        flows, heads = unknowns[: self.count] * self.most, unknowns[self.count :] * self.supply
        before = np.append(self.supply, heads[:-1])
        energy = before - heads - self.friction * np.sign(flows) * np.abs(flows) ** 1.852
        mass = flows - self.outlets(heads) - np.append(flows[1:], 0)
        return np.concatenate((energy / self.supply, mass / self.most))

    def all_slopes(self, unknowns: Array) -> Array:
        n = self.count
        flows, heads = unknowns[:n] * self.most, unknowns[n:] * self.supply
        slopes = np.zeros((2 * n, 2 * n))
        steep = self.friction * 1.852 * np.abs(flows) ** 0.852
        slopes[:n, :n] = -np.diag(steep * self.most / self.supply)
        slopes[:n, n:] = np.eye(n, k=-1) - np.eye(n)
        slopes[n:, :n] = np.eye(n) - np.eye(n, k=1)
        each = self.outlets(heads) / (2 * np.maximum(heads, 1e-9))
        slopes[n:, n:] = -np.diag(each * self.supply / self.most)
        return slopes

    def by_hybr(self) -> Array:
        flows = self.outlets(np.full(self.count, self.supply))[::-1].cumsum()[::-1]
        start = np.concatenate((flows / self.most, np.ones(self.count)))
        found = root(self.all_mismatches, start, jac=self.all_slopes, tol=1e-12)
        assert found.success, found.message
        heads: Array = found.x[self.count :] * self.supply
        return heads

    def by_numpy(self) -> Array:
        """Newton on the flow arriving at each outlet and the head there, in that order."""
        n = self.count
        heads = np.full(n, self.supply)
        flows = self.outlets(heads)[::-1].cumsum()[::-1]
        bands = np.zeros((5, 2 * n))  # row 2 + i - j, column j
        for _ in range(50):
            outlets = self.outlets(heads)
            lost = self.friction * flows**1.852
            rest = np.empty(2 * n)
            rest[0::2] = np.append(self.supply, heads[:-1]) - heads - lost
            rest[1::2] = flows - outlets - np.append(flows[1:], 0)
            scale = np.array([self.supply, flows[0]])
            if (np.abs(rest.reshape(n, 2)) <= 1e-12 * scale).all():
                return heads
            bands[2, 0::2] = -1.852 * lost / flows  # energy by its own flow
            bands[1, 1::2] = -1  # energy by its own head
            bands[3, 1:-2:2] = 1  # energy by the head before
            bands[3, 0::2] = 1  # mass by its own flow
            bands[2, 1::2] = -outlets / (2 * heads)  # mass by its own head
            bands[1, 2::2] = -1  # mass by the flow beyond
            step = solve_banded((2, 2), bands, -rest)
            flows = np.maximum(flows + step[0::2], 1e-12)
            heads = np.maximum(heads + step[1::2], 1e-9)
        raise RuntimeError("not solved")


def seconds(function: Callable[[], Any]) -> float:
    """For one call, timed over about 20 ms."""
    calls = 1
    while True:
        start = time.perf_counter()
        for _ in range(calls):
            function()
        spent = time.perf_counter() - start
        if spent > 0.02:
            return spent / calls
        calls = max(2 * calls, int(calls * 0.025 / max(spent, 1e-9)))


def seconds_in_cpp(program: str, counts: tuple[int, ...]) -> dict[int, float]:
    with tempfile.TemporaryDirectory() as folder:
        out = Path(folder) / "times.json"
        wanted = "|".join(str(count) for count in counts)
        subprocess.run(
            [program, f"--benchmark_filter=^whole, ({wanted})$", "--benchmark_min_time=0.02"]
            + [f"--benchmark_out={out}", "--benchmark_out_format=json"],
            check=True,
            capture_output=True,
        )
        runs = json.loads(out.read_text())["benchmarks"]
    return {int(run["name"].split(", ")[1]): run["real_time"] * 1e-9 for run in runs}


def seconds_to_import(module: str) -> float:
    code = f"import time; s = time.perf_counter(); import {module}; print(time.perf_counter() - s)"
    command = [sys.executable, "-P", "-c", code]
    return float(subprocess.run(command, check=True, capture_output=True, text=True).stdout)


def main(program: str) -> None:
    compileall.compile_dir(Path(hydro.__file__).parent, quiet=2)  # as installers do
    counts = (20, 50, 100)
    layouts = {count: lateral(count) for count in counts}
    equations = {count: Equations(count) for count in counts}
    for count in counts:
        ours = hydro.solve(layouts[count]).line("lateral").pressure.to(hydro.Pa) / WEIGHT
        by_peers = equations[count]
        for peer in (by_peers.by_hybr(), by_peers.by_hybr_on_heads(), by_peers.by_numpy()):
            np.testing.assert_allclose(peer, ours, rtol=1e-9)

    times: dict[str, list[float]] = {}

    def note(case: str, took: float) -> None:
        times.setdefault(case, []).append(took)

    for _ in range(ROUNDS):
        for count, took in seconds_in_cpp(program, counts).items():
            note(f"C++ {count}", took)
        for count in counts:
            note(f"Python {count}", seconds(lambda: hydro.solve(layouts[count])))
            note(f"hybr {count}", seconds(equations[count].by_hybr))
            note(f"heads {count}", seconds(equations[count].by_hybr_on_heads))
            note(f"numpy {count}", seconds(equations[count].by_numpy))
        note("quantity", seconds(lambda: 25 * hydro.psi))
        note("to", seconds(lambda: SUPPLY.to(kPa)))
        for module in ("hydro", "numpy"):
            note(f"import {module}", seconds_to_import(module))

    middle = {case: statistics.median(took) for case, took in times.items()}
    print("outlets       C++ us    Python us     added us   hybr x   on heads x   numpy x")
    for count in counts:
        cpp, python = middle[f"C++ {count}"], middle[f"Python {count}"]
        hybr, heads, banded = (middle[f"{peer} {count}"] for peer in ("hybr", "heads", "numpy"))
        print(
            f"{count:7}  {cpp * 1e6:11.2f}  {python * 1e6:11.2f}  {(python - cpp) * 1e6:11.2f}"
            f"  {hybr / python:7.0f}  {heads / python:11.0f}  {banded / python:8.0f}"
        )
    added = statistics.median(
        python - cpp for python, cpp in zip(times["Python 50"], times["C++ 50"])
    )
    print(f"added by Python / C++ solve of 50 outlets: {added / middle['C++ 50']:.2f}")
    print(f"25 * psi: {middle['quantity'] * 1e6:.2f} us, p.to(kPa): {middle['to'] * 1e6:.2f} us")
    print(
        f"import hydro {middle['import hydro'] * 1e3:.1f} ms, "
        f"numpy {middle['import numpy'] * 1e3:.1f} ms: "
        f"{middle['import hydro'] / middle['import numpy']:.2f}"
    )


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit(f"usage: {sys.argv[0]} BUILD/benchmarks/solve_benchmark")
    main(sys.argv[1])
