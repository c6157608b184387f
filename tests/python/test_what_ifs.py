"""Questions before digging: their answers as Python has them, and Python while they are found."""

import json
import pickle
import signal
import sys
import threading
from collections.abc import Callable
from typing import Any

import numpy as np
import pytest

import hydro
import hydro.progress
from hydro import Pa, ft, gpm, inch, kg_per_m3, m, m3_per_s, psi

PIPE = hydro.nominal_pipe("1-1/2 in", "PVC Class 160")
SPRAY = hydro.Outlet(
    name="spray", flow=1.2 * gpm, at=30 * psi, minimum=20 * psi, body_bore=0.3 * inch
)
ROW = hydro.Line(name="row 1", pipe=PIPE, outlet=SPRAY, count=12, spacing=20 * ft)
FARM = hydro.Layout(hydro.Supply(pressure=32 * psi), [ROW, ROW.replace(name="row 2")])
RATED = hydro.Limits(judged=["rated"])
GUESS = hydro.Uncertainty(
    manufacturing_variation=0.05, inside_diameter=0.01, supply_pressure=1 * psi
)
LOST = hydro.nozzle_missing("", 0)
SOLD = [
    hydro.PricedPipe(hydro.nominal_pipe(size, "PVC Class 160"), price=hydro.Price(dollars, 20 * ft))
    for size, dollars in (("1-1/4 in", 9.0), ("1-1/2 in", 11.0), ("2 in", 17.0))
]

ANSWERS: dict[str, Callable[..., Any]] = {
    "room_on_line": lambda **work: hydro.room_on_line(FARM, "row 1", limits=RATED, **work),
    "room_by_pipe": lambda **work: hydro.room_by_pipe(FARM, "row 1", [PIPE], limits=RATED, **work),
    "longest_line": lambda **work: hydro.longest_line(FARM, "row 1", limits=RATED, **work),
    "longest_by_pipe": lambda **work: hydro.longest_by_pipe(
        FARM, "row 1", [PIPE], limits=RATED, **work
    ),
    "inlet_position": lambda **work: hydro.inlet_position(FARM, "row 1", **work),
    "smallest_pipe": lambda **work: hydro.smallest_pipe(
        FARM, [hydro.LinesToSize(["row 1", "row 2"], sizes=2)], SOLD, **work
    ),
    "try_pipes": lambda **work: hydro.try_pipes(FARM, ["row 1", "row 2"], SOLD, **work),
    "remedies": lambda **work: hydro.remedies(
        FARM.with_supply(hydro.Supply(pressure=29 * psi)), pipes=SOLD, **work
    ),
    "break_every_outlet": lambda **work: hydro.break_every_outlet(
        FARM, fault=LOST, keep="profiles", **work
    ),
    "chances": lambda **work: hydro.chances(FARM, GUESS, realisations=200, keep=True, **work),
    "chance_of_trouble": lambda **work: hydro.chance_of_trouble(
        FARM, "row 1", 3, GUESS, realisations=100, **work
    ),
}
each_answer = pytest.mark.parametrize("name", ANSWERS)


@pytest.fixture(scope="module")
def breaks() -> hydro.Breaks:
    found = ANSWERS["break_every_outlet"]()
    assert isinstance(found, hydro.Breaks)
    return found


@pytest.fixture(scope="module")
def chances() -> hydro.Chances:
    found = ANSWERS["chances"]()
    assert isinstance(found, hydro.Chances)
    return found


def state(answer: Any) -> Any:
    """All that is known, down to numbers; of a solution, its report."""
    if isinstance(answer, hydro.Solution):
        return str(answer)
    if isinstance(answer, (list, tuple)):
        return [state(element) for element in answer]
    if isinstance(answer, dict):
        return {key: state(value) for key, value in answer.items()}
    if hasattr(answer, "si"):
        return answer.si.tolist()
    if hasattr(answer, "__getstate__") and type(answer).__name__ in hydro.__all__:
        return state(answer.__getstate__())
    return answer


# Work: threads, progress, the interpreter


@each_answer
def test_the_number_of_threads_changes_nothing(name: str) -> None:
    one, three = ANSWERS[name](threads=1), ANSWERS[name](threads=3)
    assert repr(one) == repr(three) and state(one) == state(three)


@each_answer
def test_progress_is_told_from_the_thread_that_asked(name: str) -> None:
    told: list[tuple[int, int]] = []
    threads = set()

    def tell(done: int, of: int) -> None:  # None: goes on
        told.append((done, of))
        threads.add(threading.get_ident())

    answer = ANSWERS[name](progress=tell)
    assert state(answer) == state(ANSWERS[name]())
    assert told and threads == {threading.get_ident()}
    assert all(0 <= done <= of for done, of in told)
    assert [done for done, _ in told] == sorted(done for done, _ in told)


@each_answer
def test_progress_can_stop_the_work(name: str) -> None:
    with pytest.raises(hydro.Stopped) as stopped:
        ANSWERS[name](progress=lambda done, of: False)
    assert 0 <= stopped.value.done <= stopped.value.of
    again = pickle.loads(pickle.dumps(stopped.value))
    assert (str(again), again.done, again.of) == (
        str(stopped.value),
        stopped.value.done,
        stopped.value.of,
    )


@each_answer
def test_what_progress_raises_arrives(name: str) -> None:
    def fail(done: int, of: int) -> None:
        raise ZeroDivisionError(f"at {done} of {of}")

    with pytest.raises(ZeroDivisionError, match="^at .* of"):
        ANSWERS[name](progress=fail)


def test_another_thread_runs_meanwhile() -> None:
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
                hydro.chances(FARM, GUESS, realisations=2000, threads=1, progress=tell)
    finally:
        sys.setswitchinterval(interval)
        began.set()
        thread.join()


def test_ctrl_c_stops_the_work() -> None:
    def press(done: int, of: int) -> None:
        signal.raise_signal(signal.SIGINT)

    with pytest.raises(KeyboardInterrupt):
        hydro.chances(FARM, GUESS, realisations=2000, progress=press)


def test_a_signal_is_heard_although_nobody_is_told() -> None:
    heard = []

    def hear(number: int, frame: object) -> None:
        heard.append(number)
        if len(heard) == 3:  # those that come before they are heard are one
            raise TimeoutError

    before = signal.signal(signal.SIGALRM, hear)
    try:
        with pytest.raises(TimeoutError):
            signal.setitimer(signal.ITIMER_REAL, 0.01, 0.01)
            hydro.chances(FARM, GUESS, realisations=1_000_000)
    finally:
        signal.setitimer(signal.ITIMER_REAL, 0)
        signal.signal(signal.SIGALRM, before)
    assert len(heard) >= 3


def test_progress_true_says_nothing_where_there_is_no_terminal(
    capfd: pytest.CaptureFixture[str],
) -> None:
    assert hydro.progress.shown() is None
    assert len(hydro.break_every_outlet(FARM, fault=LOST, progress=True).breaks) == 24
    assert capfd.readouterr() == ("", "")


@pytest.mark.parametrize("has_tqdm", [False, True])
def test_progress_true_tells_a_terminal(
    has_tqdm: bool, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    if has_tqdm:
        pytest.importorskip("tqdm")
    else:
        monkeypatch.setitem(sys.modules, "tqdm", None)
    monkeypatch.setattr(sys.stderr, "isatty", lambda: True, raising=False)
    hydro.break_every_outlet(FARM, fault=LOST, progress=True)
    told = capsys.readouterr()
    assert told.out == "" and told.err and (has_tqdm or " of " in told.err)


# Misuse


@pytest.mark.parametrize(
    "use, error, message",
    [
        (lambda: hydro.room_on_line(FARM, "row 1", progress=3), TypeError, "progress: 3 is a bare"),
        (lambda: hydro.room_on_line(FARM, "row 1", progress="x"), TypeError, "progress: 'x' is a"),
        (lambda: hydro.room_on_line(FARM, "row 1", threads=-1), ValueError, "threads: is -1"),
        (lambda: hydro.room_on_line(FARM, "row 1", threads=1.5), TypeError, "threads: 1.5"),
        (lambda: hydro.room_on_line(FARM, "row 9"), hydro.InvalidInput, "row 9"),
        (lambda: hydro.room_on_line(FARM, "row 1", most=0), hydro.InvalidInput, "most: is 0"),
        (lambda: hydro.room_on_line(FARM, "row 1", limits=["rated"]), TypeError, "limits: .*Li"),
        (lambda: hydro.Limits(judged=["rate"]), ValueError, r"judged\[0\]: is 'rate', must be"),
        (lambda: hydro.MoreOutlets(spacing=20), TypeError, "spacing: 20 is a bare number"),
        (lambda: hydro.longest_line(FARM, "row 1", spacing=20), TypeError, "spacing: 20 is a bare"),
        (lambda: hydro.with_outlets(FARM, "row 1", 0), hydro.InvalidInput, "is 0"),
        (lambda: hydro.inlet_position(FARM, "row 1", goal="x"), ValueError, "goal: is 'x'"),
        (lambda: hydro.inlet_position(FARM, "row 1", places=[9]), TypeError, r"places\[0\]: 9 is"),
        (lambda: hydro.Price(9, 20), TypeError, "per: 20 is a bare number, not a Length"),
        (lambda: hydro.smallest_pipe(FARM, ["row 1"], SOLD), TypeError, r"lines\[0\]: 'row 1' is"),
        (lambda: hydro.try_pipes(FARM, ["row 1"], [PIPE]), TypeError, r"pipes\[0\]: .*PricedPipe"),
        (lambda: hydro.remedies(FARM, sizes_up=0), hydro.InvalidInput, "sizes_up: is 0"),
        (lambda: hydro.break_every_outlet(FARM, fault="head off"), TypeError, "fault: 'head off'"),
        (
            lambda: hydro.break_every_outlet(FARM, fault=hydro.pump_worn(0.1)),
            hydro.InvalidInput,
            "outlet",
        ),
        (lambda: hydro.Uncertainty(supply_pressure=1), TypeError, "supply_pressure: 1 is a bare"),
        (lambda: hydro.chances(FARM, GUESS, realisations=1), hydro.InvalidInput, "realisations"),
        (lambda: hydro.chances(FARM, GUESS, seed=-1), ValueError, "seed: is -1, must be from 0 to"),
        (lambda: hydro.chances(FARM, GUESS, seed=2**64), ValueError, "seed: is 1844674407370955161"),
        (lambda: hydro.chances(FARM, GUESS, seed=1.0), TypeError, "seed: 1.0 is a bare number"),
        (
            lambda: hydro.chances(FARM, hydro.Uncertainty(rating=0.9)),
            hydro.InvalidInput,
            "rating: is 0.9",
        ),
        (lambda: hydro.sensitivity(hydro.solve(FARM), "row 1"), TypeError, "figure: 'row 1' is a"),
        (
            lambda: hydro.sensitivity(hydro.solve(FARM), hydro.pressure_at("row 1", 99)),
            hydro.InvalidInput,
            "99",
        ),
        (
            lambda: hydro.to_csv(hydro.break_every_outlet(FARM, fault=LOST), hydro.solve(FARM)),
            TypeError,
            "after: goes with a Solution",
        ),
    ],
)
def test_what_is_misused_is_refused(
    use: Callable[[], object], error: type[Exception], message: str
) -> None:
    with pytest.raises(error, match=message):
        use()


def test_problems_of_uncertainty_and_prices() -> None:
    wrong = hydro.Uncertainty(rating=0.9, pump_head=0.1)
    assert [problem.key for problem in hydro.problems(wrong, FARM)] == ["rating", "pump_head"]
    with pytest.raises(TypeError, match="line: is None, not a Layout"):
        hydro.problems(wrong)
    assert hydro.problems(SOLD[0]) == []
    (problem,) = hydro.problems(SOLD[0].replace(price=hydro.Price(-1, 20 * ft)))
    assert "amount" in problem.key and "-1" in problem.text()


# Answers as Python has them


@each_answer
def test_answers_survive_pickle(name: str) -> None:
    answer = ANSWERS[name]()
    again = pickle.loads(pickle.dumps(answer))
    assert repr(again) == repr(answer) and state(again) == state(answer)


def test_breaks_whose_pickle_is_damaged_are_refused(breaks: hydro.Breaks) -> None:
    def made(**changes: Any) -> None:
        again: Any = hydro.Breaks.__new__(hydro.Breaks)
        again.__setstate__(breaks.__getstate__() | changes)  # type: ignore[attr-defined]

    made()
    for damage in (
        {"outlets": breaks.outlets[1:]},
        {"conditions_before": []},
        {"conditions": breaks.conditions_before},
        {"pressure": [1] * psi},
        {"flow": [1] * gpm},
        {"worst": 24},
    ):
        (name,) = damage
        with pytest.raises(ValueError, match=f"^{name}: does not fit the layout"):
            made(**damage)


@each_answer
def test_answers_print_in_a_few_words(name: str) -> None:
    answer = ANSWERS[name]()
    for one in answer if isinstance(answer, list) else [answer]:
        assert repr(one).startswith(f"<hydro.{type(one).__name__}: ") and len(repr(one)) < 400
        for method in ("to_dict", "_repr_html_"):
            if hasattr(one, method):
                assert getattr(one, method)()
        if hasattr(one, "to_dict"):
            json.dumps(one.to_dict(), allow_nan=False)


def test_breaks_in_numpy(breaks: hydro.Breaks) -> None:
    outlets = 2 * ROW.count
    assert breaks.conditions is not None and breaks.pressure is not None and breaks.flow is not None
    assert breaks.conditions.shape == breaks.pressure.shape == (outlets, outlets)
    assert set(np.diagonal(breaks.conditions)) == {hydro.OutletCondition.broken}
    below = (breaks.conditions == "below_minimum") | (breaks.conditions == "dry")
    assert below.sum(axis=1).tolist() == [it.more_out_of_work for it in breaks.breaks]
    assert breaks.worst is not None and breaks.breaks[breaks.worst].more_out_of_work == max(
        it.more_out_of_work for it in breaks.breaks
    )

    # Row 5 is outlet 6 of row 1 broken; each is solved by itself as well.
    alone = hydro.solve(FARM.with_fault(hydro.at_outlet(LOST, "row 1", 6)))
    pressure = np.concatenate([line.pressure.si for line in alone.lines])
    assert breaks.pressure.si[5] == pytest.approx(pressure, abs=1e-9 * 32 * 6895)
    flow = np.concatenate([line.flow.si for line in alone.lines])
    assert breaks.flow.to(m3_per_s)[5] == pytest.approx(flow, abs=1e-9 * flow.sum())


def test_a_table_is_rows_of_a_series_without_a_copy(breaks: hydro.Breaks) -> None:
    table = breaks.pressure
    assert isinstance(table, hydro.PressureTable) and len(table) == table.shape[0]
    assert np.shares_memory(table.si, breaks.pressure.si)
    with pytest.raises(ValueError, match="read-only"):
        table.si[0, 0] = 1
    assert isinstance(table[-1], hydro.PressureSeries)
    assert np.array_equal(table[-1].si, table.si[-1])
    assert table.to(psi) == pytest.approx(table.si / 6894.757293168361, rel=1e-14)
    assert [len(row) for row in table] == [table.shape[1]] * len(table)
    for row in (len(table), -len(table) - 1):
        with pytest.raises(IndexError, match=f"row {row} of {len(table)}"):
            table[row]
    with pytest.raises(TypeError, match="row: 'a' is a str"):
        table["a"]
    with pytest.raises(TypeError, match="unit: .*PressureUnit"):
        table.to(gpm)
    with pytest.raises(TypeError, match=r"write \.to\(psi\), or \.si"):
        np.asarray(table)
    view = hydro.break_every_outlet(FARM, fault=LOST, keep="profiles").pressure.si
    assert view[0, 1] == table.si[0, 1]  # what it is of lives as long


def test_what_is_not_kept_is_none() -> None:
    counts = hydro.break_every_outlet(FARM, fault=LOST, keep="counts")
    assert counts.conditions is None and counts.pressure is None and counts.flow is None
    with pytest.raises(hydro.InvalidInput):
        counts.newly_dry(0)
    assert hydro.break_every_outlet(FARM, fault=LOST).conditions is not None
    assert hydro.chances(FARM, GUESS, realisations=2).kept is None


def test_names_of_those_that_fall(breaks: hydro.Breaks) -> None:
    for index, it in enumerate(breaks.breaks):
        assert len(breaks.newly_out_of_work(index)) == it.more_out_of_work
        assert len(breaks.newly_below_rated(index)) == it.more_below_rated
        assert len(breaks.newly_dry(index)) == it.more_dry
        assert len(breaks.newly_above_maximum(index)) == it.more_above_maximum
    with pytest.raises(hydro.InvalidInput, match="24"):
        breaks.newly_dry(24)


def test_kept_values_are_those_of_realisations(chances: hydro.Chances) -> None:
    kept = chances.kept
    assert kept is not None and kept.pressure is not None and kept.flow is not None
    assert kept.pressure.shape == kept.flow.shape == (200, 24)
    line = chances.lines[1]
    assert kept.pressure.si[:, 12:].mean(axis=0) == pytest.approx(line.pressure.mean.si, rel=1e-12)
    below = (kept.pressure.to(psi) < 30 * (1 - 1e-6)).mean(axis=0)
    assert below.tolist() == [*chances.lines[0].below_rated, *line.below_rated]
    drawn = hydro.solve(hydro.realisation(FARM, GUESS, 1, 7))
    assert kept.inflow[7].to(gpm) == pytest.approx(drawn.inflow.to(gpm), rel=1e-9)
    assert kept.pressure.si[7, 12:] == pytest.approx(drawn.lines[1].pressure.si, rel=1e-9)


def test_an_answer_as_a_data_frame(breaks: hydro.Breaks, chances: hydro.Chances) -> None:
    pytest.importorskip("pandas")
    frame = breaks.to_dataframe()
    assert list(frame["outlet"]) == 2 * list(range(1, 13)) and set(frame["outcome"]) == {"solved"}
    assert list(frame["more_out_of_work"]) == [it.more_out_of_work for it in breaks.breaks]
    frame = chances.to_dataframe()
    assert list(frame["mean_pressure_pa"][:12]) == chances.lines[0].pressure.mean.si.tolist()
    room = ANSWERS["room_on_line"]()
    frame = room.to_dataframe()
    assert list(frame["fits"]) == [count.fits() for count in room.counts]
    frame = hydro.sensitivity(hydro.solve(FARM), hydro.whole_inflow()).to_dataframe()
    assert abs(frame["by_one_step_m3_per_s"]).is_monotonic_decreasing
    assert list(ANSWERS["remedies"]().to_dataframe()["deed"]) == [
        remedy.deed for remedy in ANSWERS["remedies"]().ranked
    ]


def test_a_height_tells_what_a_metre_does() -> None:
    supply = hydro.Supply(pressure=32 * psi)
    solved, higher = (
        hydro.solve(hydro.Layout(supply, [ROW.replace(ground_rise=rise * m)]))
        for rise in (0, 1e-3)
    )
    found = hydro.sensitivity(solved, hydro.pressure_at("row 1", 12))
    change = (higher.lines[0].pressure[11] - solved.lines[0].pressure[11]).to(Pa) / 1e-3
    assert found.of("ground_rise", "row 1").by_height.to(Pa) == pytest.approx(change, rel=1e-4)
    asked = hydro.Sensitivities(solved)
    again = pickle.loads(pickle.dumps(asked)).of(hydro.pressure_at("row 1", 12))
    assert state(again) == state(asked.of(hydro.pressure_at("row 1", 12))) == state(found)


def test_reports_of_what_ifs(breaks: hydro.Breaks, chances: hydro.Chances) -> None:
    assert str(breaks) == hydro.breaks_report(breaks)
    assert hydro.breaks_report(breaks, units="si") != hydro.breaks_report(breaks, units="us")
    assert len(hydro.to_csv(breaks).splitlines()) == 1 + 2 * ROW.count
    assert hydro.to_svg(breaks).count("<svg ") == 1
    assert "200 cases" in hydro.chances_report(FARM, chances, GUESS)
    few = hydro.chances(FARM, GUESS, realisations=20, seed=2**64 - 1, quantiles=[0.25])
    text = hydro.chances_report(FARM, few, GUESS)
    assert f"20 cases, drawn at random (seed {2**64 - 1})" in text and " 25 %" in text
    assert hydro.chances_report(FARM, pickle.loads(pickle.dumps(few)), GUESS) == text
    with pytest.raises(hydro.InvalidInput, match="found: is of other lines or outlets"):
        hydro.chances_report(hydro.Layout(FARM.supply, [ROW]), few, GUESS)
    room = ANSWERS["room_on_line"]()
    assert f"{room.outlets} more" in hydro.room_report(room, "us")


# Monte Carlo against scipy


def test_chances_of_a_lateral_are_those_of_its_realisations_solved_by_scipy() -> None:
    """Each realisation is drawn, and its equations written here are solved one after another."""
    optimize = pytest.importorskip("scipy.optimize")
    density, gravity, cases = 1000.0, 9.80665, 60
    row = hydro.Line(
        name="row 1",
        pipe=hydro.Pipe(inside_diameter=1.5 * inch, hazen_williams=150),
        outlet=SPRAY,
        count=8,
        spacing=30 * ft,
    )
    layout = hydro.Layout(
        hydro.Supply(pressure=35 * psi), [row], hydro.Water(density=density * kg_per_m3)
    )
    uncertainty = hydro.Uncertainty(
        manufacturing_variation=0.08,
        rating=0.03,
        inside_diameter=0.02,
        wall=0.1,
        supply_pressure=2 * psi,
        elevation=1 * ft,
    )

    def pressures(drawn: hydro.Layout) -> Any:
        line = drawn.lines[0]
        kinds = [line.kind_of(outlet) for outlet in range(1, 9)]
        per_root_pascal = np.array(
            [kind.flow.to(m3_per_s) / kind.at.to(Pa) ** 0.5 for kind in kinds]
        )
        assert {kind.exponent for kind in kinds} <= {None, 0.5}
        bore, coefficient = line.pipe.inside_diameter.to(m), line.pipe.hazen_williams
        loss = 10.67 * (30 * 0.3048) / (coefficient**1.852 * bore**4.8704)
        ground = line.ground_rise.to(m) * np.arange(1, 9) / 8

        def along(last: float) -> tuple[list[float], float]:
            """Pressure [Pa] at each outlet, and at the inlet, for this one at the last outlet."""
            pressure, flow = [last], per_root_pascal[7] * last**0.5
            for outlet in range(6, -1, -1):
                head = pressure[0] / (density * gravity) + ground[outlet + 1] - ground[outlet]
                pressure.insert(0, (head + loss * flow**1.852) * density * gravity)
                flow += per_root_pascal[outlet] * pressure[0] ** 0.5
            head = pressure[0] / (density * gravity) + ground[0] + loss * flow**1.852
            return pressure, head * density * gravity

        held = drawn.supply.pressure
        assert held is not None
        last = optimize.brentq(lambda p: along(p)[1] - held.to(Pa), 5e4, 5e5, xtol=1e-6, rtol=1e-14)
        return along(last)[0]

    found = hydro.chances(layout, uncertainty, realisations=cases, seed=3, keep=True)
    by_scipy = np.array(
        [
            pressures(hydro.realisation(layout, uncertainty, 3, number))
            for number in range(cases)
        ]
    )
    kept = found.kept
    assert kept is not None and kept.pressure is not None
    # Realisations that are solved many at once are within 1e-9 (solved_block.hpp), brentq within
    # less; so are means, and deviations by no more than the largest of these, each as an absolute.
    close = 1e-9 * by_scipy.max()
    assert kept.pressure.si == pytest.approx(by_scipy, rel=0, abs=close)
    spread = found.lines[0].pressure
    assert spread.mean.si == pytest.approx(by_scipy.mean(axis=0), rel=0, abs=close)
    assert spread.deviation.si == pytest.approx(by_scipy.std(axis=0, ddof=1), rel=0, abs=close)
    assert (by_scipy.std(axis=0) > 1000).all()


def test_notebooks_give_no_chance_to_outlets_that_are_not_judged() -> None:
    farm = FARM.with_fault(hydro.capped("row 1", 1))
    found = hydro.chances(farm, GUESS, realisations=8)
    html: Any = found
    capped = [line for line in found.lines if line.name == "row 1"][0]
    assert capped.is_judged[0] is False
    assert html._repr_html_().count(">-<") == 3
