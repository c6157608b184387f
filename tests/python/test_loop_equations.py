"""Rings against scipy, which solves the equations as they are written here."""

from dataclasses import dataclass
from typing import Any

import numpy as np
import pytest

optimize = pytest.importorskip("scipy.optimize")

import hydro
from hydro import Pa, kg_per_m3, m, m3_per_s

GRAVITY = 9.80665  # m/s2
DENSITY = 1000.0  # kg/m3
WEIGHT = DENSITY * GRAVITY
RINGS = 40
WATER = hydro.Water(density=DENSITY * kg_per_m3)


@dataclass(frozen=True)
class Row:
    """All in SI."""

    pressure: float  # held at its inlet
    bore: float
    coefficient: float
    count: int
    spacing: float
    beyond: float  # the last outlet, to the far end
    rise: float
    flow: float
    at: float
    exponent: float

    def length(self) -> float:
        return self.count * self.spacing + self.beyond


@dataclass(frozen=True)
class Ring:
    """Two rows, each on a supply of its own, and a pipe from the far end of one to the other's."""

    rows: tuple[Row, Row]
    bore: float
    coefficient: float
    length: float
    check_valve: bool


def random_row(dice: np.random.Generator, pressure: float) -> Row:
    """Friction, outlets and ground of like weight, so that none of them hides the others."""
    count = int(dice.integers(2, 31))
    flow = np.exp(dice.uniform(np.log(2e-6), np.log(2e-4)))
    return Row(
        pressure=pressure,
        bore=(count * flow / dice.uniform(0.7, 3) * 4 / np.pi) ** 0.5,
        coefficient=dice.uniform(90, 150),
        count=count,
        spacing=dice.uniform(0.3, 8),
        beyond=dice.uniform(0.1, 8),
        rise=dice.uniform(-5, 5),
        flow=flow,
        at=pressure * dice.uniform(0.4, 1),
        exponent=dice.uniform(0.4, 1),
    )


def random_ring(seed: int) -> Ring:
    """Every second one has the same pressure at both inlets, which is that of a ring main."""
    dice = np.random.default_rng(seed)
    pressure = dice.uniform(150e3, 500e3)
    other = pressure if seed % 2 == 0 else pressure * dice.uniform(0.8, 1.25)
    rows = (random_row(dice, pressure), random_row(dice, other))
    return Ring(
        rows=rows,
        bore=dice.uniform(0.5, 1.2) * min(row.bore for row in rows),
        coefficient=dice.uniform(90, 150),
        length=dice.uniform(1, 50),
        check_valve=seed % 4 < 2,
    )


@dataclass(frozen=True)
class Answer:
    """Of all outlets, those of the first row first, and of the far ends."""

    outlet_flow: Any  # m3/s
    outlet_head: Any  # in the line below it [m]
    end_head: Any  # of each row [m]
    cross_flow: float  # from the first row to the second [m3/s]


def friction(coefficient: float, bore: float, length: float) -> float:
    """h = loss Q^1.852 [m, m3/s]"""
    loss: float = 10.67 * length / (coefficient**1.852 * bore**4.8704)
    return loss


def solved_by_scipy(ring: Ring, is_open: bool = True) -> Answer:
    """is_open: whether water passes the cross pipe."""
    # A way is the reaches from a supply to an outlet, or from one supply round to the other; what
    # goes through a reach is what is let out at the ends of all ways that it is on.
    ways: list[Any] = []
    losses: list[float] = []
    lifts: list[float] = []
    for place, row in enumerate(ring.rows):
        reaches = [row.spacing] * row.count + [row.beyond]
        before = np.zeros((row.count, len(losses)))
        after = np.zeros((row.count, sum(it.count + 1 for it in ring.rows[place + 1 :]) + 1))
        own = np.tri(row.count, row.count + 1)
        ways += [np.hstack([before, own, after])]
        losses += [friction(row.coefficient, row.bore, length) for length in reaches]
        lifts += list(row.rise * row.spacing * np.arange(1, row.count + 1) / row.length())
    first, second = ring.rows
    round_all = np.concatenate([np.ones(first.count + 1), -np.ones(second.count + 1), [1.0]])
    way = np.vstack([*ways, round_all])
    loss = np.array([*losses, friction(ring.coefficient, ring.bore, ring.length)])
    heads = [row.pressure / WEIGHT for row in ring.rows]
    start = np.array([*np.repeat(heads, [row.count for row in ring.rows]), heads[0] - heads[1]])
    lift = np.array([*lifts, 0.0])

    def per_outlet(name: str) -> Any:
        return np.repeat([getattr(row, name) for row in ring.rows], [r.count for r in ring.rows])

    at, exponent = per_outlet("at") / WEIGHT, per_outlet("exponent")
    scale = np.array([*per_outlet("flow"), first.flow * first.count])

    # Unknown is the share u of the rated flow at each outlet, and of the scale in the cross pipe.
    def onward(share: Any) -> Any:
        return way.T @ (scale * share)

    def residual(share: Any) -> Any:
        flow = onward(share)
        left = start - lift - way @ (loss * np.sign(flow) * abs(flow) ** 1.852)
        outlets = share[:-1]
        left[:-1] -= at * np.sign(outlets) * abs(outlets) ** (1 / exponent)
        if not is_open:
            left[-1] = share[-1]
        return left / max(heads)

    def jacobian(share: Any) -> Any:
        steepness = 1.852 * loss * abs(onward(share)) ** 0.852
        slopes = -(way * steepness) @ way.T * scale
        outlets = abs(share[:-1])
        slopes[:-1, :-1] -= np.diag(at * outlets ** (1 / exponent - 1) / exponent)
        if not is_open:
            slopes[-1] = np.eye(len(share))[-1]
        return slopes / max(heads)

    begin = np.append(np.full(len(scale) - 1, 0.5), 0.0)
    found = optimize.root(residual, begin, jac=jacobian, method="hybr", options={"xtol": 1e-15})
    # hybr stops where its steps no longer help; what counts is that the equations are met.
    assert np.abs(residual(found.x)).max() < 1e-12, found.message
    flow = onward(found.x)
    fall = loss * np.sign(flow) * abs(flow) ** 1.852
    of_first = np.arange(len(fall)) < first.count + 1
    of_second = ~of_first & (np.arange(len(fall)) < len(fall) - 1)
    return Answer(
        outlet_flow=(scale * found.x)[:-1],
        outlet_head=(start - way @ fall)[:-1],
        end_head=[heads[0] - fall[of_first].sum(), heads[1] - fall[of_second].sum()],
        cross_flow=scale[-1] * found.x[-1],
    )


def line_of(name: str, row: Row, fed_by: str) -> hydro.Line:
    return hydro.Line(
        name=name,
        fed_by=fed_by,
        pipe=hydro.Pipe(inside_diameter=row.bore * m, hazen_williams=row.coefficient),
        outlet=hydro.Outlet(flow=row.flow * m3_per_s, at=row.at * Pa, exponent=row.exponent),
        count=row.count,
        spacing=row.spacing * m,
        length=row.length() * m,
        ground_rise=row.rise * m,
    )


def layout_of(ring: Ring) -> hydro.Layout:
    first, second = ring.rows
    one_supply = first.pressure == second.pressure
    further = [] if one_supply else [hydro.Supply(name="second", pressure=second.pressure * Pa)]
    lines = [
        line_of("row 1", first, fed_by=""),
        line_of("row 2", second, fed_by="" if one_supply else "second"),
        hydro.Line(
            name="cross pipe",
            fed_by="row 1",
            joins="row 2",
            pipe=hydro.Pipe(inside_diameter=ring.bore * m, hazen_williams=ring.coefficient),
            length=ring.length * m,
            check_valve=ring.check_valve,
        ),
    ]
    supply = hydro.Supply(pressure=first.pressure * Pa)
    return hydro.Layout(supply, lines, WATER, further_supplies=further)


@pytest.mark.parametrize("seed", range(RINGS))
def test_a_ring_is_solved_as_scipy_solves_its_equations(seed: int) -> None:
    ring = random_ring(seed)
    first, second = ring.rows
    solution = hydro.solve(layout_of(ring))
    row_1, row_2, cross = (solution.line(name) for name in ("row 1", "row 2", "cross pipe"))
    wanted = solved_by_scipy(ring)
    held_back = ring.check_valve and wanted.cross_flow < 0
    if held_back:
        wanted = solved_by_scipy(ring, is_open=False)
    assert cross.check_valve == (("shut" if held_back else "open") if ring.check_valve else None)
    assert wanted.outlet_flow.min() > 0  # the equations hold for outlets that let out water

    # To 1e-9 of the largest flow and of the larger supply's head.
    flow_1, flow_2 = np.split(wanted.outlet_flow, [first.count])
    largest = max(abs(wanted.cross_flow), flow_1.sum(), flow_2.sum())
    flows: list[tuple[Any, Any]] = [
        (row_1.flow, flow_1),
        (row_2.flow, flow_2),
        (row_1.inflow, flow_1.sum() + wanted.cross_flow),
        (row_2.inflow, flow_2.sum() - wanted.cross_flow),
        (row_1.end_flow, 0),  # it joins none: what leaves it is the cross pipe's inflow
        (cross.inflow, wanted.cross_flow),
        (cross.end_flow, wanted.cross_flow),
        (solution.inflow, wanted.outlet_flow.sum()),
    ]
    for is_, should in flows:
        assert is_.to(m3_per_s) == pytest.approx(should, rel=0, abs=1e-9 * largest)
    of_supplies = [solution.supply, *solution.further_supplies]
    if len(of_supplies) == 2:
        both = [point.flow.to(m3_per_s) for point in of_supplies]
        inflows = [row_1.inflow.to(m3_per_s), row_2.inflow.to(m3_per_s)]
        assert both == pytest.approx(inflows, rel=0, abs=1e-9 * largest)

    close = 1e-9 * max(first.pressure, second.pressure)
    head_1, head_2 = np.split(wanted.outlet_head, [first.count])
    for row, solved, head, end_head in (
        (first, row_1, head_1, wanted.end_head[0]),
        (second, row_2, head_2, wanted.end_head[1]),
    ):
        place = row.spacing * np.arange(1, row.count + 1)
        pressure = (head - row.rise * place / row.length()) * WEIGHT
        assert solved.line_pressure.to(Pa) == pytest.approx(pressure, rel=0, abs=close)
        end = (end_head - row.rise) * WEIGHT
        assert solved.end_pressure.to(Pa) == pytest.approx(end, rel=0, abs=close)
        # What arrives at an outlet, and which way.
        onward = np.cumsum(solved.flow.to(m3_per_s)[::-1])[::-1]
        onward += solved.inflow.to(m3_per_s) - onward[0]
        velocity = onward / (np.pi / 4 * row.bore**2)
        tight = 1e-9 * largest / (np.pi / 4 * row.bore**2)
        arriving = solved.velocity.to(hydro.m_per_s)
        assert arriving == pytest.approx(velocity, rel=0, abs=tight)
    if not held_back:
        assert cross.end_pressure.to(Pa) == pytest.approx(
            row_2.end_pressure.to(Pa), rel=0, abs=close
        )


def test_the_rings_are_of_every_kind() -> None:
    """In which either row helps the other, check valves hold and let pass, supplies take in."""
    kinds = set()
    for seed in range(RINGS):
        ring = random_ring(seed)
        solution = hydro.solve(layout_of(ring))
        cross = solution.line("cross pipe")
        way = "none" if cross.check_valve == "shut" else str(cross.inflow > 0 * m3_per_s)
        kinds.add((len(solution.further_supplies), str(cross.check_valve), way))
    assert kinds == {
        (supplies, valve, way)
        for supplies in (0, 1)
        for valve, way in (("None", "True"), ("None", "False"), ("open", "True"), ("shut", "none"))
    }


@pytest.mark.parametrize("far_supply", ["", "second"])
def test_a_row_that_is_fed_alike_from_both_ends_is_symmetric(far_supply: str) -> None:
    row = random_row(np.random.default_rng(3), 3e5)
    feed = hydro.Line(
        name="near",
        pipe=hydro.Pipe(inside_diameter=1.5 * row.bore * m, hazen_williams=140),
        length=20 * m,
        loss_coefficient=2,
    )
    half = row.spacing / 2 * m
    between = line_of("row", row, fed_by="near").replace(
        joins="far", ground_rise=None, first_at=half, length=row.count * row.spacing * m
    )
    supply = hydro.Supply(pressure=row.pressure * Pa)
    lines = [feed, feed.replace(name="far", fed_by=far_supply), between]
    further = [supply.replace(name=far_supply)] if far_supply else []
    solution = hydro.solve(hydro.Layout(supply, lines, WATER, further_supplies=further))
    solved, near, far = (solution.line(name) for name in ("row", "near", "far"))
    flow = solved.flow.to(m3_per_s)
    close = 1e-11 * flow.sum()  # each residual is at most 1e-12 of its scale
    assert flow == pytest.approx(flow[::-1], rel=0, abs=close)
    pressure = solved.pressure.to(Pa)
    assert pressure == pytest.approx(pressure[::-1], rel=0, abs=1e-11 * row.pressure)
    assert solved.inflow.to(m3_per_s) == pytest.approx(flow.sum() / 2, rel=0, abs=close)
    assert solved.end_flow.to(m3_per_s) == pytest.approx(-flow.sum() / 2, rel=0, abs=close)
    assert near.inflow.to(m3_per_s) == pytest.approx(far.inflow.to(m3_per_s), rel=0, abs=close)
    # What arrives at an outlet from the inlet leaves that on the other side towards the inlet.
    velocity = solved.velocity.to(hydro.m_per_s)
    area = np.pi / 4 * row.bore**2
    leaving = velocity - flow / area
    assert velocity == pytest.approx(-leaving[::-1], rel=0, abs=close / area)
    assert velocity[0] > 0 > velocity[-1]
