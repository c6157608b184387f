"""Supplies: pumps, tanks and what stands behind them; the answers about how they are set."""

import math
import pickle
from typing import TypeVar

import numpy as np
import pytest

import hydro
from hydro import *  # noqa: F403  what is printed is valid input after this
from hydro import ft, gpm, hp, kW, lph, m, mm, psi, rpm
from hydro.units import W, h, s

T = TypeVar("T")


def the(value: T | None) -> T:
    """What must be there."""
    assert value is not None
    return value


# The pump of Ouzel Bench (invented): 150 ft at rest less 0.0025 ft per gpm2 at 2,600 rpm.
PUMP = hydro.Pump(
    points=[
        hydro.PumpPoint(flow=0 * gpm, head=150 * ft),
        hydro.PumpPoint(flow=130 * gpm, head=(150 - 0.0025 * 130**2) * ft),
    ],
    curve_speed=2600 * rpm,
    speed=2210 * rpm,
    top_speed=2800 * rpm,
    least_flow=20 * gpm,
    most_flow=130 * gpm,
    npsh_required=[
        hydro.PumpPoint(flow=20 * gpm, head=(6 + 0.0009 * 20**2) * ft),
        hydro.PumpPoint(flow=130 * gpm, head=(6 + 0.0009 * 130**2) * ft),
    ],
    efficiency=0.6,
    power=10 * hp,
)
SUPPLY = hydro.Supply(
    pump=PUMP,
    suction=hydro.Suction(
        lift=6 * ft,
        pipe=hydro.Pipe(inside_diameter=3 * hydro.inch, hazen_williams=140),
        length=25 * ft,
        loss_coefficient=3,
    ),
    filter=hydro.Filter(loss=1.5 * psi, at=80 * gpm),
    gauge=hydro.Gauge(range=100 * psi),
)
HEAD = hydro.Outlet(flow=3.52 * gpm, at=25 * psi, minimum=18 * psi, body_bore=7 * mm)
ROW = hydro.Line(
    name="row 1",
    pipe=hydro.Pipe(inside_diameter=1.754 * hydro.inch, hazen_williams=150),
    outlet=HEAD,
    count=10,
    spacing=36 * ft,
    riser=hydro.Riser(height=4 * ft, inside_diameter=0.81 * hydro.inch, hazen_williams=150),
)
SETS = [
    hydro.WateringSet(name="rows 1+2", lines=["row 1", "row 2"]),
    hydro.WateringSet(name="rows 3+4", lines=["row 3", "row 4"]),
]
FARM = hydro.Layout(SUPPLY, [ROW.replace(name=f"row {n}") for n in (1, 2, 3, 4)], sets=SETS)


def test_rotational_speed_and_power_are_quantities() -> None:
    assert (60 * rpm).to(hydro.rps) == 1
    # 550 ft lbf/s, with the exact pound and foot.
    assert (1 * hp).to(W) == pytest.approx(550 * 0.3048 * 0.45359237 * 9.80665, rel=1e-15)
    assert (1 * kW).to(W) == 1000
    assert type((100 * hydro.kPa) * (1 * hydro.m3_per_s)) is hydro.Power
    assert repr(2210 * rpm) == "2210 * rpm" and repr(3.5 * hp) == "3.5 * hp"


def test_the_pump_follows_the_affinity_laws() -> None:
    for flow in (0, 40, 80, 130):
        head = 150 - 0.0025 * flow**2
        assert hydro.pump_head(PUMP, flow * gpm, 2600 * rpm).to(ft) == pytest.approx(head, 1e-12)
        at_half = hydro.pump_head(PUMP, flow / 2 * gpm, 1300 * rpm)
        assert at_half.to(ft) == pytest.approx(head / 4, rel=1e-12)
    assert hydro.fit_of(PUMP).head_at_rest.to(ft) == pytest.approx(150, rel=1e-12)


def test_the_operating_point_of_a_solution_is_that_of_its_supply() -> None:
    solved = hydro.solve(FARM.watering("rows 1+2"))
    point = solved.supply
    again = hydro.operating_point(SUPPLY, point.flow)
    assert point.flow == solved.inflow and point.pressure == solved.supply_pressure
    assert again.pressure.to(psi) == pytest.approx(point.pressure.to(psi), rel=1e-12)
    (duty,) = point.pumps
    assert duty.speed == 2210 * rpm and duty.range == "inside"
    assert duty.head.to(ft) == pytest.approx(hydro.pump_head(PUMP, point.flow).to(ft), rel=1e-12)
    # rho g Q H and the efficiency, by hand.
    weight = solved.water.density.to(hydro.kg_per_m3) * hydro.gravity
    power = weight * point.flow.to(hydro.m3_per_s) * duty.head.to(m)
    assert duty.water_power.to(W) == pytest.approx(power, rel=1e-12)
    assert the(duty.shaft_power).to(W) == pytest.approx(power / 0.6, rel=1e-12)
    # The filter takes its loss on the square of the flow; the gauge stands before it.
    loss = 1.5 * (point.flow.to(gpm) / 80) ** 2
    assert point.filter_loss.to(psi) == pytest.approx(loss, rel=1e-12)
    before_filter = point.pressure.to(psi) + loss
    assert the(point.gauge_reading).to(psi) == pytest.approx(before_filter, rel=1e-12)
    assert pickle.loads(pickle.dumps(solved)).supply.pumps[0].head == duty.head


def test_limits_are_told_by_words() -> None:
    fast = SUPPLY.replace(pump=PUMP.replace(speed=None, power=1 * hp))
    point = hydro.operating_point(fast, 80 * gpm)
    assert hydro.limits_passed(fast, point) == ["power"]
    assert hydro.limits_passed(SUPPLY, hydro.operating_point(SUPPLY, 5 * gpm)) == ["least_flow"]


def test_faults_of_the_supply_act_and_are_described() -> None:
    farm = FARM.watering("rows 1+2")
    sound = hydro.solve(farm)
    faults: list[tuple[hydro.Fault, str]] = [
        (hydro.pump_worn(0.15), "15 %"),
        (hydro.engine_slow(2000 * rpm), "2000 rpm"),
        (hydro.filter_dirty(12 * psi), "12 psi"),
    ]
    for fault, words in faults:
        broken = farm.with_fault(fault)
        assert hydro.solve(broken).supply_pressure < sound.supply_pressure
        assert broken.supply == SUPPLY != broken.supply_as_it_is
        assert broken.supply_as_it_is == hydro.with_faults(SUPPLY, [fault])
        assert words in hydro.describe(fault, broken, "us")
        assert hydro.describe(fault, ROW, "us") == hydro.describe(fault, broken, "us")
        assert hydro.problems(fault, SUPPLY) == []
        held = hydro.Supply(pressure=40 * psi)
        assert hydro.problems(fault, held) != []
        with pytest.raises(hydro.InvalidInput):
            broken.with_supply(held)
    left_open = farm.with_fault(hydro.valve_left_open("row 3"))
    assert hydro.solve(left_open).line("row 3").inflow > 10 * gpm
    assert hydro.solve(farm).line("row 3").state == 10 * ["closed"]


def test_a_regulator_says_what_it_does() -> None:
    line = ROW.replace(regulator=25 * psi)
    supply = hydro.Supply(pressure=45 * psi)
    (solved,) = hydro.solve(hydro.Layout(supply, [line])).lines
    assert the(solved.regulator).state == "holding"
    assert the(solved.regulator).pressure.to(psi) == pytest.approx(25, rel=1e-11)
    assert the(solved.regulator).drop.to(psi) == pytest.approx(20, rel=1e-11)
    stuck = hydro.Layout(supply, [line]).with_fault(hydro.regulator_stuck_open("row 1"))
    assert the(hydro.solve(stuck).line("row 1").regulator).state == hydro.RegulatorState.stuck_open
    low = hydro.solve(hydro.Layout(hydro.Supply(pressure=20 * psi), [line]))
    assert the(low.line("row 1").regulator).state == "open"
    assert hydro.solve(hydro.Layout(supply, [ROW])).line("row 1").regulator is None
    own = ROW.replace(outlet=HEAD.replace(regulator=15 * psi))
    pressures = hydro.solve(hydro.Layout(supply, [own])).line("row 1").pressure
    assert pressures.to(psi) == pytest.approx(np.full(10, 15.0), rel=1e-11)


def test_valves_by_their_words() -> None:
    half = hydro.Valve(kind="gate", opening="half closed")
    assert half.opening is hydro.ValveOpening.half_closed and str(half.opening) == "half closed"
    assert eval(repr(half)) == half
    coefficient = hydro.loss_coefficient(half)
    known = ROW.replace(valve=half)
    told = ROW.replace(loss_coefficient=coefficient)
    supply = hydro.Supply(pressure=40 * psi)
    flows = [hydro.solve(hydro.Layout(supply, [line])).inflow.to(gpm) for line in (known, told)]
    assert flows[0] == pytest.approx(flows[1], rel=1e-11)
    message = "opening: is 'ajar', must be one of \"open\", .*\"half closed\", .*\"shut\"$"
    with pytest.raises(ValueError, match=message):
        hydro.Valve(kind="gate", opening="ajar")
    with pytest.raises(hydro.InvalidInput):
        hydro.loss_coefficient(hydro.Valve(opening="shut"))


def test_readings_make_a_pump() -> None:
    readings = [
        hydro.PumpReading(gauge=50 * psi, flow=0 * gpm),
        hydro.PumpReading(gauge=42 * psi, flow=60 * gpm),
    ]
    curve = hydro.pump_from_readings(readings, gauge=hydro.Gauge(range=100 * psi), speed=2600 * rpm)
    assert [it.flow for it in curve.readings] == [0 * gpm, 60 * gpm]
    # GUM 4.3.7 of 3 % of 100 psi, as head.
    uncertainty = 3 / math.sqrt(3) * hydro.head(1 * psi, hydro.density_of_water(20 * hydro.degC))
    assert curve.head_at_rest.uncertainty.to(ft) == pytest.approx(uncertainty.to(ft), rel=1e-9)
    assert curve.head(60 * gpm).head < curve.head_at_rest.head
    assert curve.pump.curve_speed == 2600 * rpm and curve.largest_misfit == 0 * ft
    again = pickle.loads(pickle.dumps(curve))
    assert again.pump == curve.pump and again.readings == curve.readings
    assert again.head(30 * gpm).uncertainty == curve.head(30 * gpm).uncertainty
    assert hydro.solve(hydro.Layout(hydro.Supply(pump=curve.pump), [ROW])).inflow > 20 * gpm
    with pytest.raises(hydro.InvalidInput):
        hydro.pump_from_readings(readings[:1], gauge=hydro.Gauge(range=100 * psi))


# How a supply is set


def test_a_setting_is_solved_at_its_speed() -> None:
    farm = FARM.watering("rows 1+2")
    setting = hydro.set_for_gauge(farm, 45 * psi)
    assert setting.reached and setting.limits == []
    assert the(setting.solution.supply.gauge_reading).to(psi) == pytest.approx(45, rel=1e-9)
    assert the(setting.solution.layout.supply.pump).speed == setting.speed
    again = pickle.loads(pickle.dumps(setting))
    assert again.speed == setting.speed and str(again.solution) == str(setting.solution)
    weakest = hydro.set_for_weakest(farm, 20 * psi).solution
    least = min(line.pressure.min() for line in weakest.lines if not line.shut)
    assert least.to(psi) == pytest.approx(20, rel=1e-9)
    rated = hydro.set_for_rated(farm, 0.9)
    worst = the(hydro.weakest_outlet(rated.solution))
    assert worst.pressure / worst.rated == pytest.approx(0.9, rel=1e-9)
    assert not hydro.set_for_rated(FARM, 5).reached
    with pytest.raises(hydro.InvalidInput):
        hydro.set_for_gauge(farm.with_supply(hydro.Supply(tank=hydro.Tank(level=9 * m))), 9 * psi)


def test_throttling_up_brings_the_gauge_back() -> None:
    answer = hydro.throttle_up(FARM.watering("rows 1+2"), [hydro.head_off("row 2", 7)])
    assert the(answer.broken.supply.gauge_reading) < answer.reading
    reading = the(answer.throttled_up.solution.supply.gauge_reading)
    assert reading.to(psi) == pytest.approx(answer.reading.to(psi), rel=1e-9)
    assert the(answer.throttled_up.speed) > 2210 * rpm
    assert answer.sound.supply.gauge_reading == answer.reading
    short = answer.at_unchanged_speed.newly_below_minimum
    assert len(answer.after_throttling_up.newly_below_minimum) <= len(short)
    assert str(pickle.loads(pickle.dumps(answer)).broken) == str(answer.broken)


def test_sets_together() -> None:
    answers = hydro.sets_together(FARM)
    assert [it.sets for it in answers] == [["rows 1+2"], ["rows 3+4"], ["rows 1+2", "rows 3+4"]]
    alone = answers[0]
    assert alone.can_run() is (alone.reached and not alone.limits)
    assert alone.flow.to(gpm) == pytest.approx(answers[1].flow.to(gpm), rel=1e-9)
    assert "most_flow" in answers[2].limits and not answers[2].can_run()
    assert all(it.too_fast for it in hydro.sets_together(FARM, velocity=0.1 * hydro.ft_per_s))
    easier = hydro.sets_together(FARM, share=0.8)[0]
    assert the(easier.speed) < the(alone.speed)
    with pytest.raises(hydro.InvalidInput):
        hydro.sets_together(hydro.Layout(SUPPLY, [ROW]))


def test_a_pressure_budget_adds_up() -> None:
    solved = hydro.solve(FARM.watering("rows 1+2"))
    budget = hydro.pressure_budget(solved)
    worst = the(hydro.weakest_outlet(solved))
    assert (budget.line, budget.outlet) == (worst.line, worst.outlet)
    left = 0.0
    for entry in budget.entries:
        taken = entry.rise.to(psi) + entry.loss.to(psi) + entry.regulator.to(psi)
        left += entry.gain.to(psi) - taken
        assert left == pytest.approx(entry.left.to(psi), abs=1e-9)
    assert left == pytest.approx(worst.pressure.to(psi), abs=1e-9)
    assert hydro.pressure_budget(solved, "row 1", 3).left == solved.line("row 1").pressure[2]
    with pytest.raises(TypeError, match="^pressure_budget needs outlet beside line"):
        hydro.pressure_budget(solved, line="row 1")
    with pytest.raises(TypeError, match="^pressure_budget needs line beside outlet"):
        hydro.pressure_budget(solved, outlet=3)
    with pytest.raises(hydro.InvalidInput):
        hydro.pressure_budget(solved, "row 3", 1)


# Tanks


def test_a_drum_runs_out_of_a_hole_as_torricelli_says() -> None:
    drum, hole = hydro.Tank(level=0.6 * m, diameter=0.35 * m), hydro.Hole(diameter=2 * mm)
    area, mouth = math.pi / 4 * 0.35**2, math.pi / 4 * 0.002**2
    assert the(drum.surface()).to(hydro.m2) == pytest.approx(area, rel=1e-12)
    speed = math.sqrt(2 * hydro.gravity * 0.6)
    outflow = hydro.outflow(drum, hole)
    assert outflow.to(hydro.m3_per_s) == pytest.approx(0.62 * mouth * speed, rel=1e-12)
    seconds = area / (0.62 * mouth) * math.sqrt(2 * 0.6 / hydro.gravity)
    whole = hydro.time_to_fall(drum, hole)
    assert whole.to(s) == pytest.approx(seconds, rel=1e-12)
    # It falls with the square of the time that is left.
    assert hydro.level_after(drum, hole, whole * 0.5).to(m) == pytest.approx(0.15, rel=1e-9)
    half = hydro.time_to_fall(drum, hole, 0.3 * m)
    volume = 0.3 * area * hydro.m3
    assert hydro.time_to_run_out(drum, hole, volume).to(s) == pytest.approx(half.to(s), rel=1e-9)
    with pytest.raises(hydro.InvalidInput):
        hydro.time_to_fall(drum, hole, 0.7 * m)


def test_a_tank_drains_through_its_lines() -> None:
    beds = ROW.replace(
        outlet=hydro.Outlet(flow=8 * lph, at=1 * hydro.mH2O), riser=hydro.Riser(), spacing=1 * m
    )
    tank = hydro.Tank(level=1.2 * m, diameter=0.6 * m)
    layout = hydro.Layout(hydro.Supply(tank=tank), [beds])
    emptied = hydro.drain(layout, to_level=0.2 * m, levels=6)
    assert emptied.end is hydro.DrainEnd.level_reached and len(emptied.steps) == 6
    assert [step.level.to(m) for step in emptied.steps] == pytest.approx(np.linspace(1.2, 0.2, 6))
    assert emptied.steps[0].outflow.to(lph) == pytest.approx(hydro.solve(layout).inflow.to(lph))
    assert emptied.time() == emptied.steps[-1].time > 0.5 * h
    surface = the(tank.surface()).to(hydro.m2)
    assert emptied.steps[-1].run_out.to(hydro.m3) == pytest.approx(surface * 1.0, rel=1e-9)
    assert pickle.loads(pickle.dumps(emptied)).time() == emptied.time()
    with pytest.raises(hydro.InvalidInput):
        hydro.drain(FARM)
    with pytest.raises(hydro.NotDrained) as raised:
        raise hydro.NotDrained("not as well as asked for")
    again = pickle.loads(pickle.dumps(raised.value))
    assert type(again) is hydro.NotDrained and str(again) == "not as well as asked for"


def test_a_hydrant_by_its_two_readings() -> None:
    main = hydro.Hydrant(pressure_at_rest=60 * psi, residual_pressure=40 * psi, flow=500 * gpm)
    assert hydro.hydrant_pressure(main, 500 * gpm).to(psi) == pytest.approx(40, rel=1e-12)
    # NFPA 291: Q = Q_test (drop / drop of the test)^0.54
    assert hydro.hydrant_flow(main, 20 * psi).to(gpm) == pytest.approx(500 * 2**0.54, rel=1e-12)
    point = hydro.operating_point(hydro.Supply(hydrant=main), 500 * gpm)
    assert point.pressure.to(psi) == pytest.approx(40, rel=1e-12) and point.pumps == []
