"""Faults: how they are said in code and in text, and what they do to a line."""

import inspect
import math
from collections.abc import Callable
from typing import Any, get_args

import pytest

pytest.importorskip("hypothesis")

from random_parts import in_file, keys_of, needed, parameters

import hydro
from hydro import *  # noqa: F403  what is printed of a fault is valid input after this
from hydro import ft, gpm, inch, mm, psi, rpm

Layouts = Callable[..., hydro.Layout]

SPRAY = hydro.Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
EVERY_KIND = [
    hydro.head_off("row 1", 7),
    hydro.head_off("row 1", 7, loss_coefficient=1.5),
    hydro.riser_sheared("row 1", 7),
    hydro.riser_sheared("row 1", 7, stub=8 * inch, loss_coefficient=2),
    hydro.nozzle_missing("row 1", 7),
    hydro.nozzle_missing("row 1", 7, bore=5 * mm, discharge_coefficient=0.8),
    hydro.clogged("row 1", 7, 0.6),
    hydro.worn("row 1", 7, 0.25),
    hydro.wrong_outlet("row 1", 7, SPRAY),
    hydro.capped("row 1", 7),
    hydro.leak("row 1", 120 * ft, 2 * gpm, 30 * psi),
    hydro.leak("row 1", 120 * ft, 2 * gpm, 30 * psi, exponent=1.1),
    hydro.line_cut("row 1", 55.5 * ft),
    hydro.end_open("row 1"),
    hydro.valve_part_closed("row 1", 12.5),
    hydro.valve_left_open("row 1"),
    hydro.regulator_stuck_open("row 1"),
    hydro.regulator_stuck_open("row 1", 7),
    hydro.regulator_stuck_shut("row 1"),
    hydro.regulator_stuck_shut("row 1", outlet=7),
    hydro.pump_worn(0.15),
    hydro.pump_worn(0.15, pump=2),
    hydro.engine_slow(2000 * rpm),
    hydro.engine_slow(2000 * rpm, pump=2),
    hydro.filter_dirty(6 * psi),
    hydro.pump_worn(0.15, supply="hill pump"),
    hydro.engine_slow(2000 * rpm, supply="hill pump"),
    hydro.filter_dirty(6 * psi, supply="hill pump"),
]


def test_every_kind_is_among_them() -> None:
    assert {type(fault) for fault in EVERY_KIND} == {*get_args(hydro.Fault)}
    given = {(type(fault), key.split(" = ")[0]) for fault in EVERY_KIND for key in keys_of(fault)}
    assert given == {(kind, key) for kind in get_args(hydro.Fault) for key in parameters(kind)}


@pytest.mark.parametrize("fault", EVERY_KIND, ids=str)
def test_a_fault_is_the_same_from_code_and_from_text(fault: Any) -> None:
    text = ", ".join([f'kind = "{hydro.kind_of(fault)}"', *keys_of(fault)])
    read = hydro.read_fault(text, [SPRAY])
    assert type(read) is type(fault) and read == fault and repr(read) == repr(fault)
    assert eval(repr(fault)) == fault
    assert hydro.line_of(fault) == getattr(fault, "line", "")
    assert hydro.is_of_the_supply(fault) is not hasattr(fault, "line")
    assert hydro.outlet_of(fault) == getattr(fault, "outlet", None)
    assert hydro.supply_of(fault) == getattr(fault, "supply", "")
    assert hydro.is_of_first_supply(fault) is (getattr(fault, "supply", None) == "")
    # The name of the kind is that of the maker, in words.
    maker = getattr(hydro, hydro.kind_of(fault).replace(" ", "_"))
    arguments = {key: getattr(fault, key) for key in parameters(type(fault))}
    assert maker(**arguments) == fault
    assert list(inspect.signature(maker).parameters) == list(arguments)


def test_a_wrong_outlet_may_be_told_outright() -> None:
    text = 'line = "row 1", outlet = 7, kind = "wrong outlet", fitted = '
    kind = SPRAY.replace(name="")
    fitted = "{ " + ", ".join(keys_of(kind)) + " }"
    assert hydro.read_fault(text + fitted).fitted.replace(name="") == kind
    assert hydro.read_fault(text + in_file("spray"), [SPRAY]).fitted == SPRAY


@pytest.mark.parametrize("fault", EVERY_KIND, ids=str)
@pytest.mark.parametrize("way", ["maker", "class"])
def test_a_fault_says_what_it_needs_and_takes(fault: Any, way: str) -> None:
    kind = type(fault)
    name = kind.__name__ if way == "class" else hydro.kind_of(fault).replace(" ", "_")
    make = getattr(hydro, name)
    arguments = {key: getattr(fault, key) for key in parameters(kind)}
    for key in needed(kind):
        rest = {other: value for other, value in arguments.items() if other != key}
        with pytest.raises(TypeError, match=f"^{name} needs {key}$"):
            make(**rest)
        with pytest.raises(TypeError, match=f"^{name} has no {key}s; it takes {needed(kind)[0]}"):
            make(**rest, **{key + "s": arguments[key]})
    everything = ", ".join(parameters(kind))
    with pytest.raises(TypeError, match=f"^{name} has no colour; it takes {everything}$"):
        make(**arguments, colour="red")
    first = needed(kind)[0]
    with pytest.raises(TypeError, match=f"^{name} got {first} twice$"):
        make(arguments[first], **arguments)
    with pytest.raises(TypeError, match=rf"^{name} takes at most \d arguments? by .*, but got 9;"):
        make(*9 * ["row 1"])


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
            "riser_sheared('row 1', 7, stub=8 * inch, loss_coefficient=2.0)",
        ),
        (hydro.clogged("row 1", 7, 0.6), "clogged('row 1', 7, 0.6)"),
        (hydro.worn("row 1", outlet=7, share=0.25), "worn('row 1', 7, 0.25)"),
        (hydro.capped("it's", 7), 'capped("it\'s", 7)'),
        (hydro.regulator_stuck_open("hops", 7), "regulator_stuck_open('hops', outlet=7)"),
        (hydro.pump_worn(0.15), "pump_worn(0.15)"),
        (hydro.engine_slow(2000 * rpm, 2), "engine_slow(2000 * rpm, pump=2)"),
        (hydro.filter_dirty(6 * psi), "filter_dirty(6 * psi)"),
        (hydro.filter_dirty(6 * psi, "hill"), "filter_dirty(6 * psi, supply='hill')"),
    ],
)
def test_a_fault_says_itself_and_what_it_says_is_the_same_fault(fault: Any, text: str) -> None:
    assert repr(fault) == text
    assert eval(text) == fault
    assert fault != hydro.capped("another", 1)
    assert hydro.outlet_of(fault) == (None if hydro.is_of_the_supply(fault) else 7)


def test_a_fault_tells_what_it_was_made_of() -> None:
    sheared = hydro.riser_sheared("row 1", 7, stub=0.5 * ft, loss_coefficient=1.5)
    assert (sheared.line, sheared.outlet) == ("row 1", 7)
    assert (sheared.stub, sheared.loss_coefficient) == (0.5 * ft, 1.5)
    assert hydro.riser_sheared("row 1", 7).stub is None
    assert hydro.head_off("row 1", 7, loss_coefficient=2).loss_coefficient == 2
    assert hydro.clogged("row 1", 7, 0.6).share == 0.6
    assert hydro.worn("row 1", 7, 0.25).share == 0.25


def test_faults_act_and_can_be_taken_away(layout: Layouts) -> None:
    sound = layout()
    flow = hydro.solve(sound).line("row 1").flow[6].to(gpm)

    def outlet_7(fault: Any) -> tuple[float, float, str]:
        line = hydro.solve(sound.with_fault(fault)).line("row 1")
        return line.flow[6].to(gpm), line.pressure[6].to(psi), line.state[6]

    def spray(pressure: float) -> float:
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
