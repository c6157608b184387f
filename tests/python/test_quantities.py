"""Quantities: numbers with a unit, what is printed of them, and what is refused."""

import math
import re

import numpy as np
import pytest

import hydro
from hydro import *  # noqa: F403  what is printed of a quantity is valid input after this
from hydro import ft, gph, gpm, inch, kPa, lps, m, m_per_s, mm, psi

MOST_UNITS = 8  # of one quantity


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
        (1.2 * gpm, "1.2 * gpm"),
        (1.5 * lps, "90 * lpm"),
        (20 * hydro.degC, "20 * degC"),
        (90 * hydro.units.s, "90 * units.s"),
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
        # An earlier unit of the list is preferred to one that saves less than their distance.
        text = repr(round(number, 2) * unit).split()[0]
        assert len(text) <= len(str(round(number, 2))) + MOST_UNITS


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
            "stub: 0.5 is a bare number, not a Length: write 0.5 * ft",
        ),
        (
            lambda: hydro.riser_sheared("row 1", 7, stub=25 * psi),
            "stub: 25 * psi is a Pressure, not a Length: write a number times one of ft, inch, ",
        ),
        (
            lambda: hydro.riser_sheared("row 1", 7, stub="0.5 ft"),
            "stub: '0.5 ft' is a str, not a Length: write a number times one of ft, ",
        ),
        (
            lambda: hydro.riser_sheared("row 1", 7, stub=ft),
            "stub: ft is a LengthUnit, not a Length: write a number times one of ft, ",
        ),
        (lambda: 25 * psi + 3 * ft, "3 * ft is a Length, not a Pressure: write "),
        (lambda: 25 * psi < 3 * ft, "3 * ft is a Length, not a Pressure: write "),
        (lambda: (25 * psi).to(ft), "unit: ft is a LengthUnit, not a PressureUnit: write one of "),
        (lambda: (25 * psi).to(25), "unit: 25 is a bare number, not a PressureUnit: write one of "),
        (lambda: (25 * psi).to("psi"), "unit: 'psi' is a str, not a PressureUnit: write one of "),
    ],
)
def test_what_is_no_such_quantity_is_refused_and_told_what_to_write(use, message):
    with pytest.raises(TypeError, match="^" + re.escape(message)):
        use()


@pytest.mark.parametrize(
    "use",
    [
        lambda: "25" * psi,
        lambda: True * psi,
        lambda: 1j * psi,
        lambda: None * psi,
        lambda: psi * gpm,
        lambda: 5 / psi,
        lambda: (25 * psi) * (25 * psi),
        lambda: (25 * psi) // 2,
        lambda: float(25 * psi),
        lambda: (20 * hydro.degC) + (1 * hydro.degC),
        lambda: 2 * (20 * hydro.degC),
    ],
)
def test_other_products_are_refused(use):
    with pytest.raises(TypeError):
        use()


def test_a_quantity_cannot_be_changed():
    with pytest.raises(AttributeError):
        (25 * psi).value = 3
