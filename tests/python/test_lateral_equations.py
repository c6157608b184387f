"""Laterals against scipy, which solves the equations as they are written here."""

from dataclasses import dataclass
from typing import Any

import numpy as np
import pytest

optimize = pytest.importorskip("scipy.optimize")

import hydro
from hydro import Pa, kg_per_m3, m, m3_per_s

GRAVITY = 9.80665  # m/s2
DENSITY = 1000.0  # kg/m3
LATERALS = 40


@dataclass(frozen=True)
class Lateral:
    """All in SI."""

    pressure: float
    bore: float
    coefficient: float
    count: int
    spacing: float
    rise: float
    riser: float
    flow: float
    at: float
    exponent: float


def random_lateral(seed: int) -> Lateral:
    """Friction, outlets and ground of like weight, so that none of them hides the others."""
    dice = np.random.default_rng(seed)
    pressure = dice.uniform(150e3, 500e3)
    count = int(dice.integers(2, 61))
    flow = np.exp(dice.uniform(np.log(2e-6), np.log(2e-4)))
    bore = (count * flow / dice.uniform(1, 3) * 4 / np.pi) ** 0.5
    return Lateral(
        pressure=pressure,
        bore=bore,
        coefficient=dice.uniform(90, 150),
        count=count,
        spacing=dice.uniform(0.3, 8),
        rise=dice.uniform(-5, 5),
        riser=dice.uniform(0, 1.5),
        flow=flow,
        at=pressure * dice.uniform(0.4, 1),
        exponent=dice.uniform(0.4, 1),
    )


def solved_by_scipy(lateral: Lateral) -> tuple[Any, Any]:
    """Flow of every outlet [m3/s] and head in the line below it, above the supply's ground [m]."""
    number = np.arange(1, lateral.count + 1)
    lifted = lateral.rise * number / lateral.count + lateral.riser
    head = lateral.pressure / (DENSITY * GRAVITY)
    loss = (
        10.67 * lateral.spacing / (lateral.coefficient**1.852 * lateral.bore**4.8704)
    )  # h = loss Q^1.852
    nearer = np.minimum.outer(number, number)

    # Unknown is the share u of the rated flow at each outlet, positive on the way too.
    def line_head(share: Any) -> tuple[Any, Any]:
        onward = np.cumsum((lateral.flow * share)[::-1])[::-1]
        return head - np.cumsum(loss * np.sign(onward) * abs(onward) ** 1.852), onward

    def residual(share: Any) -> Any:
        line, _ = line_head(share)
        outlet = lateral.at / (DENSITY * GRAVITY) * np.sign(share) * abs(share) ** (
            1 / lateral.exponent
        )
        return (line - lifted - outlet) / head

    def jacobian(share: Any) -> Any:
        _, onward = line_head(share)
        steepness = np.cumsum(loss * 1.852 * abs(onward) ** 0.852)
        rows = -lateral.flow * steepness[nearer - 1]
        slope = abs(share) ** (1 / lateral.exponent - 1) / lateral.exponent
        return (rows - np.diag(lateral.at / (DENSITY * GRAVITY) * slope)) / head

    start = np.full(lateral.count, 0.5)
    found = optimize.root(residual, start, jac=jacobian, method="hybr", options={"xtol": 1e-15})
    # hybr stops where its steps no longer help; what counts is that the equations are met.
    assert np.abs(residual(found.x)).max() < 1e-12, found.message
    return lateral.flow * found.x, line_head(found.x)[0]


@pytest.mark.parametrize("seed", range(LATERALS))
def test_a_lateral_is_solved_as_scipy_solves_its_equations(seed: int) -> None:
    lateral = random_lateral(seed)
    line = hydro.Line(
        name="lateral",
        pipe=hydro.Pipe(inside_diameter=lateral.bore * m, hazen_williams=lateral.coefficient),
        outlet=hydro.Outlet(
            flow=lateral.flow * m3_per_s, at=lateral.at * Pa, exponent=lateral.exponent
        ),
        count=lateral.count,
        spacing=lateral.spacing * m,
        ground_rise=lateral.rise * m,
        riser=hydro.Riser(height=lateral.riser * m),
    )
    water = hydro.Water(density=DENSITY * kg_per_m3)
    supply = hydro.Supply(pressure=lateral.pressure * Pa)
    solution = hydro.solve(hydro.Layout(supply, [line], water))
    solved = solution.lines[0]
    flow, head = solved_by_scipy(lateral)
    assert flow.min() > 0  # the equations above hold for outlets that let out water
    assert solved.flow.to(m3_per_s) == pytest.approx(flow, rel=0, abs=1e-9 * flow.max())
    ground = lateral.rise * np.arange(1, lateral.count + 1) / lateral.count
    line_pressure = (head - ground) * DENSITY * GRAVITY
    close = 1e-9 * lateral.pressure  # that is, of the supply's head
    assert solved.line_pressure.to(Pa) == pytest.approx(line_pressure, rel=0, abs=close)
    pressure = line_pressure - lateral.riser * DENSITY * GRAVITY
    assert solved.pressure.to(Pa) == pytest.approx(pressure, rel=0, abs=close)
    assert solution.inflow.to(m3_per_s) == pytest.approx(flow.sum(), rel=1e-9)
