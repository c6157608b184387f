"""What is misused is refused: no mistake in Python ends the process."""

import pickle
import subprocess
import sys
import textwrap
from typing import Any

import pytest

import hydro
from hydro import ft, gpm, inch, psi

CLASSES = [
    member
    for member in vars(hydro).values()
    if isinstance(member, type) and type(member).__name__ == "pybind11_type"
]
PIPE = hydro.Pipe(inside_diameter=1 * inch, hazen_williams=150)
HEAD = hydro.Outlet(flow=3 * gpm, at=30 * psi)
ROW = hydro.Line(name="row", pipe=PIPE, outlet=HEAD, count=3, spacing=20 * ft)
PLACED = hydro.Line(name="row", outlets=[hydro.PlacedOutlet(place=5 * ft, outlet=HEAD)] * 3)
PUMP = hydro.Pump(
    points=[
        hydro.PumpPoint(flow=0 * gpm, head=90 * ft),
        hydro.PumpPoint(flow=9 * gpm, head=60 * ft),
    ]
)
FARM = hydro.Layout(hydro.Supply(pump=PUMP), [ROW])
MAIN = hydro.Line(name="main", pipe=PIPE, length=9 * ft)


@pytest.mark.parametrize("kind", CLASSES, ids=lambda kind: kind.__name__)
def test_an_object_whose_init_was_not_called_is_empty(kind: type) -> None:
    empty = kind.__new__(kind)
    properties = [name for name in dir(kind) if isinstance(getattr(kind, name), property)]
    with pytest.raises(TypeError, match="__init__ was not called"):
        if "__repr__" in vars(kind):
            repr(empty)
        else:
            getattr(empty, properties[0])
    for name in properties:
        with pytest.raises(TypeError, match="__init__ was not called"):
            getattr(empty, name)
    if "__setstate__" in vars(kind):
        with pytest.raises(TypeError, match="__init__ was not called"):
            empty.__getstate__()


@pytest.mark.parametrize("protocol", range(pickle.HIGHEST_PROTOCOL + 1))
def test_every_protocol_of_pickle_will_do(bench: hydro.Layout, protocol: int) -> None:
    for thing in (25 * psi, psi, PIPE, PLACED, hydro.head_off("row", 2), bench):
        assert pickle.loads(pickle.dumps(thing, protocol)) == thing
    for many in ([10, 20] * psi, hydro.solve(bench).lines[0].flow):
        assert list(pickle.loads(pickle.dumps(many, protocol))) == list(many)
    solved = hydro.solve(bench)
    assert str(pickle.loads(pickle.dumps(solved, protocol))) == str(solved)


@pytest.mark.parametrize("line", [ROW, PLACED])
@pytest.mark.parametrize("number", [0, 4, -1, 10**8, -(10**8)])
def test_an_outlet_that_is_not_there_is_refused(line: hydro.Line, number: int) -> None:
    def refused(key: str) -> Any:
        message = f"^{key}: is {number}, must be from 1 to 3$"
        return pytest.raises(hydro.InvalidInput, match=message)

    with refused("outlet_number"):
        line.place_of(number)
    with refused("outlet_number"):
        line.kind_of(number)
    with refused("tap_outlet"):
        hydro.begins_at(hydro.Line(name="tee", fed_by="row", tap_outlet=number), line)
    with refused("outlet"):
        hydro.open_body(hydro.nozzle_missing("row", number), line)
    layout = hydro.Layout(hydro.Supply(pressure=40 * psi), [line.replace(pipe=PIPE)])
    for where in (line, layout):
        with refused("outlet"):
            hydro.describe(hydro.nozzle_missing("row", number), where, "us")


def test_pumps_that_the_supply_does_not_have_are_refused() -> None:
    point = hydro.operating_point(hydro.Supply(pump=PUMP), 5 * gpm)
    with pytest.raises(hydro.InvalidInput, match="^point: has 1 pumps, but the supply has 0"):
        hydro.limits_passed(hydro.Supply(pressure=40 * psi), point)


def test_a_line_without_outlets_has_no_place_or_kind_of_one() -> None:
    for ask in (MAIN.place_of, MAIN.kind_of):
        with pytest.raises(hydro.InvalidInput, match="is 1, but the line has no outlets"):
            ask(1)


def test_python_ends_in_order_while_daemon_threads_solve() -> None:
    program = """
        import threading, hydro
        from hydro import ft, gpm, inch, psi

        row = hydro.Line(
            name="row",
            pipe=hydro.Pipe(inside_diameter=4 * inch, hazen_williams=150),
            outlet=hydro.Outlet(flow=0.1 * gpm, at=30 * psi),
            count=20_000,
            spacing=1 * ft,
        )
        layout = hydro.Layout(hydro.Supply(pressure=40 * psi), [row])
        started = threading.Barrier(5)

        def work():
            started.wait()
            while True:
                hydro.solve(layout)

        for _ in range(4):
            threading.Thread(target=work, daemon=True).start()
        started.wait()
        hydro.solve(layout)
    """
    ended = subprocess.run(
        [sys.executable, "-c", textwrap.dedent(program)], capture_output=True, text=True
    )
    assert (ended.returncode, ended.stderr) == (0, "")


SHUT = {"check_valve": hydro.CheckValveState.shut}  # where there is none


def test_a_solution_whose_pickle_is_damaged_is_refused(bench: hydro.Layout) -> None:
    solved = hydro.solve(bench)
    layout, water, lines, supply, *rest = solved.__getstate__()
    last = lines[-1].__getstate__()

    def made(kind: type, state: Any) -> Any:
        empty = kind.__new__(kind)
        empty.__setstate__(state)
        return empty

    def with_last(**changes: Any) -> Any:
        damaged = made(hydro.LineSolution, last | changes)
        all_lines = [*lines[:-1], damaged]
        return made(hydro.Solution, (layout, water, all_lines, supply, *rest))

    assert str(with_last()) == str(solved)
    for damage in ({"pressure": [1] * psi}, {"state": []}, {"flow": [] * gpm}, SHUT):
        with pytest.raises(ValueError, match="are not those of the layout"):
            with_last(**damage)
    with pytest.raises(ValueError, match="lines: are not those of the layout"):
        made(hydro.Solution, (layout.without_faults(), water, lines[1:], supply, *rest))
    pumped = hydro.operating_point(hydro.Supply(pump=PUMP), 9 * gpm)
    with pytest.raises(ValueError, match="^supply: is not that of the layout"):
        made(hydro.Solution, (layout, water, lines, pumped, *rest))
    with pytest.raises(TypeError, match="^residuals: is None"):
        made(hydro.Solution, (layout, water, lines, supply, None, *rest[1:]))
    with pytest.raises(ValueError, match="^further_supplies: are not those of the layout"):
        made(hydro.Solution, (layout, water, lines, supply, *rest[:2], [supply]))


@pytest.mark.parametrize(
    "make, message",
    [
        (
            lambda: hydro.Pump(curve_speed=2600),
            r"curve_speed: 2600 is a bare number, not a RotationalSpeed: write 2600 \* rpm$",
        ),
        (lambda: hydro.Pump(power=3 * ft), r"power: 3 \* ft is a Length, not a Power"),
        (lambda: hydro.pump_head(PUMP, 80), "flow: 80 is a bare number, not a Flow"),
        (lambda: hydro.set_for_gauge(FARM, 45), "reading: 45 is a bare number, not a Pressure"),
        (
            lambda: hydro.time_to_fall(hydro.Tank(), hydro.Hole(), 0.3),
            "level: 0.3 is a bare number, not a Length",
        ),
        (lambda: hydro.Supply(pressure=40), "pressure: 40 is a bare number, not a Pressure"),
        (lambda: hydro.Supply(pump=40 * psi), r"pump: 40 \* psi is a Pressure, not a Pump"),
        (lambda: hydro.Pump(points=[(1, 2)]), r"points\[0\]: .* is a tuple, not a PumpPoint"),
        (lambda: hydro.Gauge(after_filter=1), "after_filter: 1 is a bare number, not a bool"),
        (lambda: hydro.engine_slow(2000), "speed: 2000 is a bare number, not a RotationalSpeed"),
        (lambda: hydro.filter_dirty(6), "loss: 6 is a bare number, not a Pressure"),
        (lambda: hydro.Line(regulator=25), "regulator: 25 is a bare number, not a Pressure"),
        (lambda: hydro.Line(valve="shut"), "valve: 'shut' is a str, not a Valve"),
        (lambda: FARM.watering(3), "set_names: 3 is a bare number, not a list"),
        (lambda: FARM.watering([3]), r"set_names\[0\]: 3 is a bare number, not a str"),
        (lambda: FARM.with_supply(40 * psi), r"supply: 40 \* psi is a Pressure, not a Supply"),
        (lambda: hydro.operating_point(FARM.supply, 80), "flow: 80 is a bare number, not a Flow"),
    ],
)
def test_what_is_no_quantity_or_part_is_refused(make: Any, message: str) -> None:
    with pytest.raises(TypeError, match=f"^{message}"):
        make()
