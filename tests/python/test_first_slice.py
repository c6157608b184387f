"""The Python module, on the bench of examples/ouzel_bench.toml and on small lines of its own."""

import math
import re
import sys
import threading
from pathlib import Path

import numpy as np
import pytest

import hydro
from hydro import *  # noqa: F403  what is printed of a quantity is valid input after this
from hydro import ft, gph, gpm, inch, kPa, lps, m, m_per_s, mm, psi

ROOT = Path(__file__).resolve().parents[2]
BENCH = ROOT / "examples" / "ouzel_bench.toml"
REPORT = ROOT / "examples" / "expected" / "ouzel_bench.txt"

LINE = """
[supply]
pressure = "{pressure}"
[pipe.lateral]
inside_diameter = "1.754 in"
hazen_williams = 150
[outlet.spray]
flow = "1.2 gpm"
at = "30 psi"
minimum = "20 psi"
maximum = "50 psi"
[[line]]
name = "row 1"
pipe = "lateral"
outlet = "spray"
count = {count}
spacing = "20 ft"
ground_rise = "{ground_rise}"
riser = {{ height = "2 ft", inside_diameter = "0.5 in", hazen_williams = 150 }}
"""


@pytest.fixture(scope="module")
def bench():
    return hydro.read_layout(BENCH)


@pytest.fixture(scope="module")
def before(bench):
    return hydro.solve(bench.without_faults())


@pytest.fixture(scope="module")
def after(bench):
    return hydro.solve(bench)


@pytest.fixture
def layout(tmp_path):
    def make(pressure="40 psi", count=24, ground_rise="0 ft"):
        file = tmp_path / "line.toml"
        file.write_text(LINE.format(pressure=pressure, count=count, ground_rise=ground_rise))
        return hydro.read_layout(str(file))

    return make


def outlets(findings):
    return [(found.line, found.outlet) for found in findings]


def without_residuals(report):
    return re.sub(r"Solved in [^.]*\.", "Solved.", report)


# Quantities


@pytest.mark.parametrize(
    "quantity, kind, unit, number",
    [
        (25 * psi, hydro.Pressure, kPa, 25 * 6.894757293168361),
        (psi * 25, hydro.Pressure, kPa, 25 * 6.894757293168361),
        (np.float64(25) * psi, hydro.Pressure, psi, 25),
        (100 * hydro.bar, hydro.Pressure, hydro.MPa, 10),
        (1 * hydro.kPa, hydro.Pressure, hydro.Pa, 1000),
        (1 * hydro.ftH2O, hydro.Pressure, hydro.mH2O, 0.3048),
        (1 * hydro.inHg, hydro.Pressure, hydro.Pa, 3386.389),
        (1 * gpm, hydro.Flow, gph, 60),
        (1 * gpm, hydro.Flow, lps, 0.0630901964),
        (1 * lps, hydro.Flow, hydro.lpm, 60),
        (1 * hydro.lpm, hydro.Flow, hydro.lph, 60),
        (1 * hydro.m3_per_s, hydro.Flow, hydro.m3_per_h, 3600),
        (1 * hydro.ft3_per_s, hydro.Flow, hydro.m3_per_s, 0.028316846592),
        (1 * ft, hydro.Length, inch, 12),
        (1 * inch, hydro.Length, mm, 25.4),
        (1 * hydro.km, hydro.Length, hydro.cm, 100000),
        (1 * m, hydro.Length, mm, 1000),
        (10 * hydro.ft_per_s, hydro.Velocity, m_per_s, 3.048),
    ],
)
def test_a_number_times_a_unit_is_a_quantity_and_reads_back(quantity, kind, unit, number):
    assert type(quantity) is kind
    assert type(quantity.to(unit)) is float
    assert quantity.to(unit) == pytest.approx(number, rel=1e-15)


@pytest.mark.parametrize(
    "quantity, text",
    [
        (25 * psi, "25 * psi"),
        (1.754 * inch, "1.754 * inch"),
        (36 * ft, "36 * ft"),
        (-3 * ft, "-3 * ft"),
        (16 * mm, "16 * mm"),
        (0.704 * gpm, "0.704 * gpm"),
        (5 * hydro.ft_per_s, "5 * ft_per_s"),
        (0 * psi, "0 * psi"),
        (math.inf * psi, "float('inf') * psi"),
        (psi, "psi"),
        (inch, "inch"),
        (m_per_s, "m_per_s"),
    ],
)
def test_what_is_printed_is_readable(quantity, text):
    assert repr(quantity) == text


@pytest.mark.parametrize("unit", [psi, kPa, hydro.bar, gpm, gph, hydro.lph, ft, inch, mm, m_per_s])
def test_what_is_printed_of_a_quantity_is_the_same_quantity(unit):
    for number in np.random.default_rng(7).uniform(-300, 300, 200):
        for quantity in (number * unit, round(number, 2) * unit, 1e-9 * number * unit):
            assert eval(repr(quantity)) == quantity
        text = repr(round(number, 2) * unit).split()[0]
        assert len(text) <= len(str(round(number, 2)))


def test_arithmetic_and_order():
    assert 25 * psi + 5 * psi == 30 * psi
    assert 25 * psi - 5 * psi == 20 * psi
    assert 2 * (25 * psi) == (25 * psi) * 2 == 50 * psi
    assert 12 * inch == 1 * ft and 25 * psi != 26 * psi
    assert hash(12 * inch) == hash(1 * ft)
    assert hydro.Pressure(25 * psi) == 25 * psi
    low, high = 25 * psi, 26 * psi
    assert low < high and low <= high and high > low and high >= low and low <= low and low >= low
    assert not (high < low or high <= low or low > high or low >= high or low < low or low > low)
    assert sorted([high, low]) == [low, high]
    assert low != 25 and low != 25 * ft


@pytest.mark.parametrize(
    "use, message",
    [
        (lambda: 25 * psi + 5, "5 is a bare number, not a Pressure: write 5 * psi"),
        (lambda: 5 + 25 * psi, "5 is a bare number, not a Pressure: write 5 * psi"),
        (lambda: 25 * psi - 5.5, "5.5 is a bare number, not a Pressure: write 5.5 * psi"),
        (lambda: 5 - 25 * psi, "5 is a bare number, not a Pressure: write 5 * psi"),
        (lambda: 25 * psi < 30, "30 is a bare number, not a Pressure: write 30 * psi"),
        (lambda: 30 >= 25 * psi, "30 is a bare number, not a Pressure: write 30 * psi"),
        (lambda: hydro.Flow(3), "3 is a bare number, not a Flow: write 3 * gpm"),
        (lambda: hydro.Velocity(3), "3 is a bare number, not a Velocity: write 3 * ft_per_s"),
        (
            lambda: hydro.riser_sheared("row 1", 7, stub=0.5),
            "0.5 is a bare number, not a Length: write 0.5 * ft",
        ),
        (
            lambda: hydro.riser_sheared("row 1", 7, stub=25 * psi),
            "25 * psi is a Pressure, not a Length: write a number times one of ft, inch, m, ",
        ),
        (
            lambda: hydro.riser_sheared("row 1", 7, stub="0.5 ft"),
            "this is of type str, not a Length: write a number times one of ft, ",
        ),
        (
            lambda: hydro.riser_sheared("row 1", 7, stub=ft),
            "ft is a LengthUnit, not a Length: write a number times one of ft, ",
        ),
        (lambda: 25 * psi + 3 * ft, "3 * ft is a Length, not a Pressure: write "),
        (lambda: 25 * psi < 3 * ft, "3 * ft is a Length, not a Pressure: write "),
        (lambda: (25 * psi).to(ft), "ft is a LengthUnit, not a PressureUnit: write one of psi, "),
        (lambda: (25 * psi).to(25), "25 is a bare number, not a PressureUnit: write one of psi, "),
        (lambda: (25 * psi).to("psi"), "this is of type str, not a PressureUnit: write one of "),
    ],
)
def test_what_is_no_such_quantity_is_refused_and_told_what_to_write(use, message):
    with pytest.raises(TypeError, match="^" + re.escape(message)):
        use()


@pytest.mark.parametrize(
    "use",
    [
        lambda: np.arange(3) * psi,
        lambda: np.arange(3) * (25 * psi),
        lambda: "25" * psi,
        lambda: psi * gpm,
        lambda: (25 * psi) * (25 * psi),
        lambda: float(25 * psi),
    ],
)
def test_other_products_are_refused(use):
    with pytest.raises(TypeError):
        use()


def test_a_quantity_cannot_be_changed():
    with pytest.raises(AttributeError):
        (25 * psi).value = 3


# Layouts and faults


@pytest.mark.parametrize(
    "fault, text",
    [
        (hydro.head_off("row 1", 7), "head_off('row 1', 7)"),
        (
            hydro.head_off("row 1", 7, loss_coefficient=1.5),
            "head_off('row 1', 7, loss_coefficient=1.5)",
        ),
        (hydro.riser_sheared("row 1", 7), "riser_sheared('row 1', 7)"),
        (
            hydro.riser_sheared("row 1", 7, stub=8 * inch, loss_coefficient=2),
            "riser_sheared('row 1', 7, stub=8 * inch, loss_coefficient=2)",
        ),
        (hydro.clogged("row 1", 7, 0.6), "clogged('row 1', 7, 0.6)"),
        (hydro.worn("row 1", outlet=7, share=0.25), "worn('row 1', 7, 0.25)"),
        (hydro.capped("it's", 7), 'capped("it\'s", 7)'),
    ],
)
def test_a_fault_says_itself_and_what_it_says_is_the_same_fault(fault, text):
    assert repr(fault) == text
    assert eval(text) == fault
    assert fault != hydro.capped("another", 1)
    assert fault.outlet == 7


def test_a_fault_tells_what_it_was_made_of():
    sheared = hydro.riser_sheared("row 1", 7, stub=0.5 * ft, loss_coefficient=1.5)
    assert (sheared.line, sheared.outlet) == ("row 1", 7)
    assert (sheared.stub, sheared.loss_coefficient) == (0.5 * ft, 1.5)
    assert hydro.riser_sheared("row 1", 7).stub is None
    assert hydro.head_off("row 1", 7, loss_coefficient=2).loss_coefficient == 2
    assert hydro.clogged("row 1", 7, 0.6).share == 0.6
    assert hydro.worn("row 1", 7, 0.25).share == 0.25


def test_faults_act_and_can_be_taken_away(layout):
    sound = layout()
    flow = hydro.solve(sound).line("row 1").flow[6].to(gpm)

    def outlet_7(fault):
        line = hydro.solve(sound.with_fault(fault)).line("row 1")
        return line.flow[6].to(gpm), line.pressure[6].to(psi), line.state[6]

    def spray(pressure):
        return 1.2 * math.sqrt(pressure / 30)

    clogged, pressure, state = outlet_7(hydro.clogged("row 1", 7, 0.6))
    assert clogged == pytest.approx(0.4 * spray(pressure), rel=1e-9) and state == "works"
    worn, pressure, state = outlet_7(hydro.worn("row 1", 7, 0.25))
    assert worn == pytest.approx(1.25 * spray(pressure), rel=1e-9) and state == "works"
    capped, pressure, state = outlet_7(hydro.capped("row 1", 7))
    assert capped == 0 and pressure > 0 and state == "closed"
    off, pressure, state = outlet_7(hydro.head_off("row 1", 7))
    assert off > 5 * flow and pressure == 0 and state == "broken"
    sheared, pressure, state = outlet_7(hydro.riser_sheared("row 1", 7, stub=0.5 * ft))
    assert sheared > off and pressure == 0 and state == "broken"
    assert sheared == outlet_7(hydro.riser_sheared("row 1", 7))[0]
    assert sheared > outlet_7(hydro.riser_sheared("row 1", 7, stub=1 * ft))[0]
    assert off > outlet_7(hydro.head_off("row 1", 7, loss_coefficient=3))[0]

    broken = sound.with_fault(hydro.head_off("row 1", 7)).with_fault(hydro.capped("row 1", 8))
    assert hydro.solve(broken).line("row 1").state[6:8] == ["broken", "closed"]
    assert hydro.solve(broken.without_faults()).line("row 1").flow[6].to(gpm) == flow
    assert hydro.solve(sound).line("row 1").flow[6].to(gpm) == flow


@pytest.mark.parametrize(
    "use, message",
    [
        (lambda bench: bench.with_fault(hydro.head_off("row 9", 7)), "row 9"),
        (lambda bench: bench.with_fault(hydro.head_off("row 1", 11)), "is 11, must be from 1 to"),
        (lambda bench: bench.with_fault(hydro.worn("row 1", 1, -1)), "share: is -1, must be above"),
        (lambda bench: bench.with_fault(hydro.capped("row 2", 7)), "outlet"),
        (lambda bench: hydro.solve(bench).line("row 9"), "row 9"),
        (lambda bench: hydro.read_layout("no such file"), "no such file"),
    ],
)
def test_invalid_input(bench, use, message):
    with pytest.raises(hydro.InvalidInput, match=message):
        use(bench)


def test_all_mistakes_of_a_file_are_told_with_their_place(tmp_path):
    file = tmp_path / "farm.toml"
    text = LINE.format(pressure="40", count=0, ground_rise="0 psi")
    file.write_text(text)
    with pytest.raises(hydro.InvalidInput) as caught:
        hydro.read_layout(file)
    told = [re.search(r"farm\.toml:(\d+)", line)[1] for line in str(caught.value).splitlines()]
    wrong = [text.splitlines()[int(number) - 1].split()[0] for number in told]
    assert wrong == ["pressure", "count", "ground_rise"]


def test_errors_are_pythons_own_kinds():
    assert issubclass(hydro.InvalidInput, ValueError)
    assert issubclass(hydro.NotSolved, RuntimeError)
    with pytest.raises(TypeError):
        hydro.solve("farm.toml")
    with pytest.raises(TypeError):
        hydro.read_layout(3)


# Solutions


def test_the_bench_is_solved_as_its_report_says(before, after):
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


def test_the_series_of_a_line_agree_with_each_other(before):
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


def test_a_series_is_a_sequence_of_quantities(after):
    series = after.line("row 2").pressure
    numbers = series.to(psi)
    assert type(series) is hydro.PressureSeries
    assert isinstance(numbers, np.ndarray)
    assert numbers.dtype == np.float64 and numbers.shape == (10,)
    assert len(series) == 10
    assert type(series[0]) is hydro.Pressure
    assert [pressure.to(psi) for pressure in series] == list(numbers)
    assert series[-1] == series[9] and series[-10] == series[0] and series[1] != series[0]
    for beyond in (10, -11):
        with pytest.raises(IndexError, match=f"index {beyond} of a series of 10"):
            series[beyond]
    with pytest.raises(TypeError, match="^ft is a LengthUnit, not a PressureUnit"):
        series.to(ft)
    numbers[:] = 0  # the caller's own copy
    assert series[0].to(psi) > 20
    assert len(after.line("manifold").pressure) == 0
    assert after.line("manifold").pressure.to(psi).shape == (0,)


def test_a_line_outlives_its_solution(bench):
    def line():
        return hydro.solve(bench).line("row 1")

    series = line().pressure
    first = line().flow[0]
    for _ in range(100):
        hydro.solve(bench)
    assert series.to(psi)[0] == hydro.solve(bench).line("row 1").pressure[0].to(psi)
    assert first == hydro.solve(bench).line("row 1").flow[0]


def test_states(layout, after):
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


def test_residuals_and_notes(layout, after):
    residuals = after.residuals
    for left in (residuals.mass, residuals.energy, residuals.outlet):
        assert 0 <= left <= 1e-12
    assert 0 < residuals.steps < 60 and residuals.last_resort is False
    assert after.notes == []
    (note,) = hydro.solve(layout("0.95 psi", 2)).notes
    assert "row 1" in note


# Answers


def test_check(layout, after):
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


def test_findings_outlive_their_check(after):
    last = hydro.check(after).below_rated[-1]
    rated = hydro.check(after).below_rated[-1].rated
    assert (last.line, last.outlet) == ("row 2", 10)
    assert rated.to(psi) == pytest.approx(25)


def test_report(before, after):
    assert without_residuals(hydro.report(before, after)) == without_residuals(REPORT.read_text())
    assert hydro.report(after).startswith("Ouzel Bench, seed-potato strips 1 and 2\n")
    assert "and what it does" not in hydro.report(after)


def test_a_report_compares_like_with_like(before, layout):
    with pytest.raises(hydro.InvalidInput):
        hydro.report(before, hydro.solve(layout()))


def test_what_is_printed_of_results(bench, after):
    assert repr(bench) == "<hydro.Layout: lines 6, outlets 20, faults 1>"
    inflow = re.fullmatch("<hydro.Solution: lines 6, inflow (.*)>", repr(after))[1]
    assert eval(inflow) == after.inflow
    assert repr(after.line("row 1")) == "<hydro.LineSolution: row 1, outlets 10>"
    assert repr(after.line("row 1").flow) == "<hydro.FlowSeries of 10>"
    assert repr(hydro.check(after).below_rated[0]).startswith(
        "<hydro.BelowRated: row 2, outlet 2, pressure "
    )


# The module


def test_other_threads_run_while_a_layout_is_solved(layout):
    large = layout("40 psi", 200_000)
    done = threading.Event()

    def work():
        hydro.solve(large)
        done.set()

    interval = sys.getswitchinterval()
    sys.setswitchinterval(1000)  # nobody is made to yield: only who lets go lets others run
    try:
        worker = threading.Thread(target=work)
        worker.start()
        assert not done.is_set()
    finally:
        sys.setswitchinterval(interval)
        worker.join()
    assert done.is_set()


def test_threads_find_the_same(bench, after):
    found = []

    def work():
        for _ in range(20):
            found.append(hydro.solve(bench).line("row 2").pressure.to(psi).tobytes())

    workers = [threading.Thread(target=work) for _ in range(4)]
    for worker in workers:
        worker.start()
    for worker in workers:
        worker.join()
    assert len(found) == 80
    assert set(found) == {after.line("row 2").pressure.to(psi).tobytes()}


def test_names():
    import hydro._hydro as inside

    public = {name for name in vars(inside) if not name.startswith("_")}
    assert public | {"__version__"} == set(hydro.__all__)
    assert hydro.Pressure.__module__ == hydro.InvalidInput.__module__ == "hydro"
    stated = re.search(r"project\(.*?VERSION (\S+)", (ROOT / "CMakeLists.txt").read_text(), re.S)
    assert hydro.__version__ == stated[1]


@pytest.mark.parametrize("name", sorted(hydro.__all__))
def test_signatures_speak_python(name):
    thing = getattr(hydro, name)
    described = [thing, *vars(thing).values()] if isinstance(thing, type) else [thing]
    for part in described:
        assert not re.search(r"::|boost", getattr(part, "__doc__", None) or "")
