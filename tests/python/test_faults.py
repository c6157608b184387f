"""Faults: how they are said, what they do to a line, and their way from text."""

import math

import pytest

import hydro
from hydro import *  # noqa: F403  what is printed of a fault is valid input after this
from hydro import ft, gpm, inch, psi


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
