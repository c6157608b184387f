"""Finding the fault from Python: the demo farm's story, tables of readings, threads, files."""

import pickle
import sys
import threading
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest

import hydro
from hydro import Reading, Sight, ft, gpm, inch, psi

ROOT = Path(__file__).resolve().parents[2]
FARM = hydro.read_layout(str(ROOT / "examples/ouzel_bench.toml")).watering(["rows 1 and 2"])


def story(name: str) -> hydro.Readings:
    return hydro.read_readings(str(ROOT / "examples" / name), FARM)


def test_readings_lead_to_the_sheared_riser() -> None:
    read = story("ouzel_gauge_low.toml")
    found = hydro.find_fault(FARM, read.readings, read.sights)
    first = found.walk[0]
    assert (first.kind, first.line) == ("broken outlet", "row 2")
    assert first.first is not None and first.last is not None
    assert first.first <= 7 <= first.last  # it is sheared at head 7
    assert found.explained and first.probability > 0.9
    assert sum(fault.probability for fault in found.faults) == pytest.approx(1)
    assert "row 2" in hydro.diagnosis_report(FARM, read.readings, read.sights, found)
    drawn = hydro.to_svg_of_diagnosis(FARM, read.readings, read.sights, found)
    assert drawn.startswith("<")


def test_its_look_alike_is_told_apart() -> None:
    read = story("ouzel_gauge_low_too.toml")
    found = hydro.find_fault(FARM, read.readings, read.sights)
    assert (found.walk[0].kind, found.walk[0].line) == ("valve", "row 3")
    right = hydro.make_right(FARM, found.faults[0])
    assert right.ways[right.best].deed is hydro.Deed.mend


def test_what_is_as_it_should_be_is_said_so() -> None:
    sound = hydro.solve(FARM)
    read = [Reading(place="riser", line="row 2", outlet=10, pressure=sound.line("row 2").pressure[9])]
    found = hydro.find_fault(FARM, read)
    assert hydro.is_as_it_should_be(found)
    assert not hydro.is_as_it_should_be(
        hydro.find_fault(FARM, [read[0].replace(pressure=read[0].pressure * 0.4)])
    )


def test_evidence_of_a_fault_without_size_is_a_normal_density() -> None:
    # One reading, nothing uncertain but its own error: the evidence is the normal density at what is
    # left over, by numpy.
    exact = hydro.FindFaultOptions(
        uncertainty=hydro.Uncertainty(),
        gauge_bias=0 * psi,
        blunder=0,
        model_error=0,
        candidates=hydro.CandidateOptions(odds=hydro.PriorOdds(gauge_wrong=0)),
    )
    shown = 20 * psi
    read = [Reading(place="flush end", line="row 2", pressure=shown, pressure_error=2 * psi)]
    found = hydro.find_fault(FARM, read, options=exact)
    of_kind = {
        kind: next(it for it in found.faults if it.candidate.kind == kind)
        for kind in ("no fault", "end open")
    }
    for fault in of_kind.values():
        layout = FARM if fault.fault is None else FARM.with_fault(fault.fault)
        left = (shown - hydro.solve(layout).line("row 2").end_pressure) / (2 * psi)
        assert abs(fault.misfit) == pytest.approx(abs(left), rel=1e-6)
    some, other = of_kind.values()
    assert some.log_evidence - other.log_evidence == pytest.approx(
        -(some.misfit**2 - other.misfit**2) / 2, rel=1e-6
    )


def test_probabilities_are_those_of_brute_force() -> None:
    # Sheared risers of either row or nothing; two readings of one gauge that share its bias. The
    # size is integrated over a fine grid, each of its layouts solved; find_fault.hpp promises a
    # tenth of the odds.
    odds = {kind.name: 0.0 for kind in hydro.CandidateKind}
    options = hydro.FindFaultOptions(
        uncertainty=hydro.Uncertainty(),
        gauge_bias=1 * psi,
        blunder=0,
        model_error=0,
        candidates=hydro.CandidateOptions(
            odds=hydro.PriorOdds(**(odds | {"no_fault": 10, "riser_sheared": 1}))
        ),
    )
    shown = np.array([26.0, 14.0])  # psi
    read = [
        Reading(place="riser", line=line, outlet=10, pressure=its * psi, pressure_error=2 * psi)
        for line, its in zip(("row 1", "row 2"), shown)
    ]
    found = hydro.find_fault(FARM, read, options=options)
    covariance = np.array([[4.0 + 1.0, 1.0], [1.0, 4.0 + 1.0]])  # psi2
    u = np.linspace(-2.5, 2.5, 41)
    prior = np.exp(-(u**2) / 2)

    def likelihood(layout: hydro.Layout) -> float:
        solution = hydro.solve(layout)
        left = shown - [solution.line(name).pressure[9].to(psi) for name in ("row 1", "row 2")]
        return float(np.exp(-left @ np.linalg.solve(covariance, left) / 2))

    weights = {}
    for fault in found.faults:
        its = fault.candidate
        if its.kind == "no fault":
            weights[str(its)] = its.odds * likelihood(FARM)
        else:
            each = [likelihood(hydro.layout_with(its, FARM, u=size)) for size in u]
            weights[str(its)] = its.odds * float(np.trapz(prior * each, u) / np.trapz(prior, u))
    assert len(weights) > 20
    total = sum(weights.values())
    for fault in found.faults:
        share, stated = weights[str(fault.candidate)] / total, fault.probability
        assert stated / (1 - stated) == pytest.approx(share / (1 - share), rel=0.1)


LONG: dict[str, Callable[..., object]] = {
    "find_fault": lambda **work: hydro.find_fault(FARM, GAUGE, **work),
    "next_reading": lambda **work: hydro.next_reading(FARM, GAUGE, **work),
    "detectable": lambda **work: hydro.detectable(FARM, GAUGE[0], **work),
    "calibrate": lambda **work: hydro.calibrate(FARM, GAUGE, **work),
}
GAUGE = [Reading(place="supply gauge", pressure=33.5 * psi)]


@pytest.mark.parametrize("name", LONG)
def test_another_thread_runs_meanwhile(name: str) -> None:
    interval = sys.getswitchinterval()
    sys.setswitchinterval(1000)  # s; only a thread that lets go of the interpreter lets others run
    began, ran = threading.Event(), threading.Event()

    def other() -> None:
        began.wait()
        ran.set()

    thread = threading.Thread(target=other)
    try:
        thread.start()

        # Ends only when the other thread has run, which it cannot but while C++ works.
        def tell(done: int, of: int) -> bool:
            began.set()
            return not ran.is_set()

        with pytest.raises(hydro.Stopped):
            for _ in range(100):
                LONG[name](threads=1, progress=tell)
    finally:
        sys.setswitchinterval(interval)
        began.set()
        thread.join()


def test_answers_are_tables() -> None:
    pytest.importorskip("pandas")
    read = story("ouzel_gauge_low.toml")
    found = hydro.find_fault(FARM, read.readings, read.sights)
    frame = found.to_dataframe()
    assert list(frame.probability) == [it.probability for it in found.faults]
    assert frame.kind[0] == "riser sheared" and frame.line[0] == "row 2"
    leak = frame[frame.kind == "leak"].iloc[0]
    (its,) = [it for it in found.faults if it.log_evidence == leak.log_evidence]
    assert isinstance(its.candidate.place, hydro.Length)
    assert leak.place_m == its.candidate.place.to(hydro.m)
    html = found._repr_html_()  # type: ignore[attr-defined]
    assert "row 2" in html and "100 %" not in html
    following = hydro.next_reading(FARM, GAUGE)
    advice = following.to_dataframe()
    assert list(advice.worth_bit) == [it.worth for it in following.readings]
    assert "look" in set(advice.place) and "riser" in set(advice.place)
    right = hydro.make_right(FARM, found.faults[0])
    ways = right.to_dataframe()
    assert list(ways.deed[ways.best]) == [str(right.ways[right.best].deed)]
    log = [hydro.DayOfReadings(day=day, readings=GAUGE) for day in range(8)]
    drift = hydro.find_drift(FARM, log).to_dataframe()
    assert drift.place[0] == "supply gauge"
    assert drift.last_pressure_pa[0] == pytest.approx((33.5 * psi).to(hydro.Pa))


def test_threads_change_nothing_and_progress_stops() -> None:
    read = story("ouzel_gauge_low.toml")
    one, two = (hydro.find_fault(FARM, read.readings, threads=threads) for threads in (1, 2))
    assert [it.probability for it in one.faults] == [it.probability for it in two.faults]
    with pytest.raises(hydro.Stopped):
        hydro.find_fault(FARM, read.readings, progress=lambda done, of: False)


def test_the_next_reading_and_what_a_gauge_sees() -> None:
    gauge = [Reading(place="supply gauge", pressure=33.5 * psi)]
    following = hydro.next_reading(FARM, gauge, can_look=False, can_read=["riser", "flush end"])
    assert following.stop is hydro.WhyStop.go_on
    best = following.readings[0]
    assert best.reading is not None and best.reading.place in ("riser", "flush end")
    informations = [it.information for it in following.readings]
    assert informations == sorted(informations, reverse=True)
    seen = {it.candidate.kind: it.seen for it in hydro.detectable(FARM, gauge[0])}
    assert seen["riser sheared"] and not seen["clogged"]


def test_a_good_walk_calibrates() -> None:
    walk = [
        Reading(place="supply gauge", pressure=37.5 * psi),
        Reading(place="flush end", line="row 2", pressure=24 * psi),
        Reading(place="bucket", line="row 1", outlet=5, flow=3.4 * gpm),
    ]
    taught = hydro.calibrate(FARM, walk)
    assert taught.fits_well and np.shape(taught.correlation) == (len(taught.learnt),) * 2
    again = pickle.loads(pickle.dumps(taught))
    assert again.to_dict() == taught.to_dict()
    options = hydro.calibrated_options(taught)
    assert options.uncertainty == taught.uncertainty
    assert "pump head" in hydro.calibration_report(walk, taught)


def test_drift_is_noticed() -> None:
    shown = [38.0, 38.5, 37.5, 38.0, 38.5, 38.0, 37.5, 36.0, 35.5, 35.5]
    log = [
        hydro.DayOfReadings(day=day, readings=[Reading(pressure=it * psi, pressure_error=0.5 * psi)])
        for day, it in enumerate(shown)
    ]
    drift = hydro.find_drift(FARM, log)
    assert drift.places[0].alarm is not None and not drift.places[0].rises
    assert "less" in hydro.drift_report(log, drift)


# Tables

ROWS = [
    {"place": "supply gauge", "pressure": "33.5 psi"},
    {"place": "riser", "line": "row 2", "outlet": 10, "pressure": "7.5 psi", "pressure_error": "2 psi"},
    {"place": "bucket", "line": "row 1", "outlet": 3, "volume": "5 gal", "time": "90 s"},
    {"seen": "not turning", "line": "row 2", "outlet": 2, "to_outlet": 3},
]
CSV = """\
place, seen, line, outlet, to_outlet, pressure [psi], pressure_error [psi], volume, time
supply gauge,,,,,33.5,,,
riser,,row 2,10,,7.5,2,,
bucket,,row 1,3,,,,5 gal,90 s
,not turning,row 2,2,3,,,,
"""


def test_a_table_is_the_same_in_every_form(tmp_path: Path) -> None:
    pandas = pytest.importorskip("pandas")
    file = tmp_path / "walk.csv"
    file.write_text(CSV)
    rows = hydro.readings_from_table(ROWS)
    assert [it.place for it in rows.readings] == ["supply gauge", "riser", "bucket"]
    assert rows.sights == (Sight(seen="not turning", line="row 2", outlet=2, to_outlet=3),)
    columns = {name: [row.get(name) for row in ROWS] for name in {key for row in ROWS for key in row}}
    read = pandas.read_csv(file, skipinitialspace=True)
    frames = (pandas.DataFrame(ROWS), read, read.convert_dtypes())  # without a cell: NaN, NA
    for form in (str(file), file, columns, iter(ROWS), *frames):
        assert hydro.readings_from_table(form) == rows
    assert hydro.readings_from_table(ROWS[0]).readings == rows.readings[:1]
    found = hydro.find_fault(FARM, rows.readings, rows.sights)
    assert found.walk[0].line == "row 2"


@pytest.mark.parametrize(
    ("row", "said"),
    [
        ({"place": "riser", "outlet": "x"}, "column \"outlet\": is 'x', must be a whole number"),
        ({"place": "riser", "outlet [psi]": 3}, 'column "outlet [psi]": has no unit'),
        ({"place": "bucket", "flow_error": "2 %"}, "is '2 %', must be a number, a share"),
        ({"place": "riser", "pressure [psi]": "low"}, "is 'low', must be a number of psi"),
        ({"place": "riser", "pressure": "3"}, 'column "pressure": "3": has no unit; a pressure is'),
        ({"place": "riser", "pressure": "3 psi", "pressure [kPa]": 21}, "pressure is given twice"),
        ({"place": "riser", "pressure": 3 * gpm}, 'row 1, column "pressure": '),
        ({"place": "riser", "pressure": 7.5}, 'row 1, column "pressure": is 7.5, a bare number'),
        ({"place": "riser", "pressure": "7.5 gpm"}, 'row 1, column "pressure": '),
        ({"place": "riser", "outlet": 2.5}, "is 2.5, must be a whole number"),
        ({"place": "pressure"}, "row 1: place: is 'pressure', must be one of"),
        ({"seen": "turning", "pressure": "3 psi"}, 'column "pressure": is not known here'),
        ({"line": "row 1"}, 'row 1: has neither "place" nor "seen"'),
        ({"place": "riser", "pressure [bars]": 3}, 'column "pressure [bars]": '),
    ],
)
def test_a_bad_row_is_named(row: dict[str, object], said: str) -> None:
    with pytest.raises(hydro.InvalidInput) as refused:
        hydro.readings_from_table([row])
    assert said in str(refused.value)


def test_all_bad_rows_are_told_at_once(tmp_path: Path) -> None:
    with pytest.raises(hydro.InvalidInput) as refused:
        hydro.readings_from_table([{"place": "riser", "outlet": "x"}, {}, {"seen": "spinning"}])
    assert [line.split(",")[0].split(":")[0] for line in str(refused.value).splitlines()] == ["row 1", "row 3"]
    with pytest.raises(hydro.InvalidInput, match="unequal length"):
        hydro.readings_from_table({"place": ["riser"], "outlet": [1, 2]})
    with pytest.raises(hydro.InvalidInput, match=r"\['line'\] have one cell"):
        hydro.readings_from_table({"place": ["riser", "pipe"], "line": "row 1"})
    for table in ([3], 3):
        with pytest.raises(TypeError, match="is a int, not"):
            hydro.readings_from_table(table)  # type: ignore[arg-type]
    twice = tmp_path / "twice.csv"
    twice.write_text("place,line,line\nriser,row 1,row 2\n")
    with pytest.raises(hydro.InvalidInput, match="columns: line is there more than once"):
        hydro.readings_from_table(twice)
    file = tmp_path / "long.csv"
    file.write_text("place,line\nriser,row 1,7\n")
    with pytest.raises(hydro.InvalidInput, match="more cells"):
        hydro.readings_from_table(file)


def test_bad_readings_are_refused() -> None:
    with pytest.raises(hydro.InvalidInput, match="row 9"):
        hydro.find_fault(FARM, [Reading(place="riser", line="row 9", outlet=1, pressure=9 * psi)])
    with pytest.raises(hydro.InvalidInput, match="pressure_error"):
        hydro.find_fault(FARM, [Reading(pressure=38 * psi, pressure_error=0 * psi)])
    with pytest.raises(TypeError, match="pressure: 38 is a bare number"):
        Reading(pressure=38)  # type: ignore[arg-type]
    with pytest.raises(TypeError, match="the least and the most"):
        hydro.FaultSizes(clogged=0.3)  # type: ignore[arg-type]


def test_sizes_and_odds_are_values() -> None:
    sizes = hydro.FaultSizes(clogged=(0.3, 0.6), supply_low=(1 * ft, 30 * inch))
    assert sizes == pickle.loads(pickle.dumps(sizes)) and sizes.clogged == (0.3, 0.6)
    assert eval(repr(sizes), vars(hydro)) == sizes
    assert hydro.PriorOdds(worn=3).of("worn") == 3
    listed = hydro.candidates(FARM, options=hydro.CandidateOptions(odds=hydro.PriorOdds(clogged=0)))
    assert hydro.CandidateKind.clogged not in {it.kind for it in listed}
