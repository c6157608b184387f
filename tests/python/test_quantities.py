"""Quantities: numbers with a unit, what is printed of them, and what is refused."""

import copy
import math
import pickle
import re
from collections.abc import Callable
from typing import Any

import numpy as np
import pytest

pytest.importorskip("hypothesis")

from hypothesis import assume, given
from hypothesis import strategies as st
from random_parts import QUANTITIES, finite, quantities, units_of

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
        (1800 * hydro.rpm, hydro.RotationalSpeed, hydro.rps, 30),
        (1 * hydro.hp, hydro.Power, hydro.units.W, 550 * 0.3048 * 0.45359237 * 9.80665),
        (1 * hydro.kW, hydro.Power, hydro.units.W, 1000),
    ],
)
def test_a_number_times_a_unit_is_a_quantity_and_reads_back(
    quantity: Any, kind: type, unit: Any, number: float
) -> None:
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
        (1800 * hydro.rpm, "1800 * rpm"),
        (2 / 3 * hydro.rps, "40 * rpm"),
        (746 * hydro.units.W, "746 * units.W"),
        (7.5 * hydro.kW, "7.5 * kW"),
        (5 * hydro.ft_per_s, "5 * ft_per_s"),
        (0 * psi, "0 * psi"),
        (math.inf * psi, "float('inf') * psi"),
        (psi, "psi"),
        (inch, "inch"),
        (m_per_s, "m_per_s"),
    ],
)
def test_what_is_printed_is_readable(quantity: Any, text: str) -> None:
    assert repr(quantity) == text


@pytest.mark.parametrize("unit", [psi, kPa, hydro.bar, gpm, gph, hydro.lph, ft, inch, mm, m_per_s])
def test_what_is_printed_of_a_quantity_is_the_same_quantity(unit: Any) -> None:
    for number in np.random.default_rng(7).uniform(-300, 300, 200):
        for quantity in (number * unit, round(number, 2) * unit, 1e-9 * number * unit):
            assert eval(repr(quantity)) == quantity
        # An earlier unit of the list is preferred to one that saves less than their distance.
        text = repr(round(number, 2) * unit).split()[0]
        assert len(text) <= len(str(round(number, 2))) + MOST_UNITS


def test_arithmetic_and_order() -> None:
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
def test_what_is_no_such_quantity_is_refused_and_told_what_to_write(
    use: Callable[[], object], message: str
) -> None:
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
def test_other_products_are_refused(use: Callable[[], object]) -> None:
    with pytest.raises(TypeError):
        use()


def test_a_quantity_cannot_be_changed() -> None:
    with pytest.raises(AttributeError):
        (25 * psi).value = 3


# Round trips


@pytest.mark.parametrize("kind", QUANTITIES, ids=lambda kind: str(kind.__name__))
def test_a_quantity_survives_repr_str_pickle_and_copy(kind: type) -> None:
    @given(quantities(kind))
    def examine(quantity: Any) -> None:
        for again in (
            eval(repr(quantity)),
            kind(str(quantity)),
            kind(quantity),
            pickle.loads(pickle.dumps(quantity)),
        ):
            assert type(again) is kind
            assert again == quantity and not again != quantity and hash(again) == hash(quantity)
        assert copy.copy(quantity) is quantity and copy.deepcopy(quantity) is quantity

    examine()


@pytest.mark.parametrize("kind", QUANTITIES, ids=lambda kind: str(kind.__name__))
def test_a_number_reads_back_in_every_unit(kind: type) -> None:
    # Away from the ends of the range of doubles, which factors of up to 6e13 would reach.
    numbers = finite(1e250).filter(lambda number: number == 0 or abs(number) > 1e-250)

    @given(numbers, st.sampled_from(units_of(kind)))
    def examine(number: float, unit: Any) -> None:
        quantity = number * unit
        assert type(quantity) is kind and quantity == unit * number
        # Two products and two quotients are 4 roundings of half a unit in the last place, which is
        # at most twice as large at the other end of a power of 2. Temperatures have 4 sums more,
        # of up to 460 degrees.
        near = 4 * math.ulp(number)
        if kind is hydro.Temperature:
            near = 8 * math.ulp(abs(number) + 460)
        assert type(quantity.to(unit)) is float
        assert abs(quantity.to(unit) - number) <= near
        assert quantity.to(unit) == quantity / unit

    examine()


@pytest.mark.parametrize("kind", QUANTITIES, ids=lambda kind: str(kind.__name__))
def test_quantities_are_ordered_as_their_numbers(kind: type) -> None:
    @given(finite(1e250), finite(1e250), st.sampled_from(units_of(kind)))
    def examine(a: float, b: float, unit: Any) -> None:
        low, high = min(a, b) * unit, max(a, b) * unit
        # Rounding keeps the order, and may make two of one.
        assert low <= high and high >= low and not high < low and not low > high
        assert (low < high) == (high > low) == (low != high) == (not low == high)
        assert low != high or hash(low) == hash(high)

    examine()


@pytest.mark.parametrize(
    "product, factors",
    [
        (6 * hydro.ft2, (2 * ft, 3 * ft)),
        (6 * hydro.m3, (2 * hydro.m2, 3 * m)),
        (6 * m, (2 * m_per_s, 3 * hydro.units.s)),
        (6 * hydro.m3_per_s, (2 * m_per_s, 3 * hydro.m2)),
        (6 * hydro.gallon, (2 * gpm, 3 * hydro.units.min)),
        (6 * hydro.Pa_s, (2 * hydro.kg_per_m3, 3 * hydro.m2_per_s)),
    ],
)
def test_a_product_of_quantities_and_what_follows_from_it(product: Any, factors: Any) -> None:
    one, other = factors
    unit, one_unit, other_unit = (
        next(unit for unit in units_of(type(value)) if str(value).endswith(" " + unit.symbol))
        for value in (product, one, other)
    )
    for made in (one * other, other * one):
        assert type(made) is type(product)
        assert made.to(unit) == pytest.approx(6, rel=1e-15)
    assert type(product / one) is type(other) and type(product / other) is type(one)
    assert (product / one).to(other_unit) == pytest.approx(3, rel=1e-15)
    assert (product / other).to(one_unit) == pytest.approx(2, rel=1e-15)
    assert product / product == 1.0


def test_a_quantity_is_not_divided_by_nothing() -> None:
    for use in (lambda: 1 * psi / 0, lambda: 1 * psi / (0 * psi), lambda: 1 * ft / (0 * ft)):
        with pytest.raises(ZeroDivisionError):
            use()


@given(quantities(hydro.Pressure), finite(1e6))
def test_arithmetic_is_that_of_the_numbers_in_si(pressure: hydro.Pressure, factor: float) -> None:
    number, pascal = pressure.to(hydro.Pa), hydro.Pa
    assume(math.isfinite(number))
    assert (pressure + pressure).to(pascal) == number + number
    assert (pressure - 2 * pascal).to(pascal) == number - 2
    assert (pressure * factor).to(pascal) == (factor * pressure).to(pascal) == number * factor
    assert (-pressure).to(pascal) == -number and (+pressure) == pressure
    assert abs(pressure).to(pascal) == abs(number) and bool(pressure) == bool(number)
    if factor:
        assert (pressure / factor).to(pascal) == number / factor
        assert pressure / (factor * pascal) == number / factor


@pytest.mark.parametrize("kind", QUANTITIES, ids=lambda kind: str(kind.__name__))
def test_units_are_values(kind: type) -> None:
    all_units = units_of(kind)
    assert len({unit.symbol for unit in all_units}) == len({*all_units}) == len(all_units)
    for unit in all_units:
        assert pickle.loads(pickle.dumps(unit)) == unit == eval(repr(unit)) == copy.copy(unit)
        assert str(unit) == unit.symbol and f"{unit}" == unit.symbol
        assert kind(f"1 {unit.symbol}") == 1 * unit
        assert unit != 1 and unit != unit.symbol
        with pytest.raises(AttributeError):
            unit.symbol = "other"


@pytest.mark.parametrize("text", ["inf", "-inf", "nan"])
def test_what_is_not_finite_is_printed_and_read_too(text: str) -> None:
    pressure = float(text) * psi
    assert repr(pressure) == f"float('{text}') * psi" and str(pressure) == f"{text} psi"
    again = eval(repr(pressure))
    assert again == pressure or text == "nan" and math.isnan(again.to(psi))
    with pytest.raises(hydro.InvalidInput):
        hydro.Pressure(str(pressure))  # none that a person writes
