"""Series: many values of one quantity, beside numpy."""

import copy
import pickle
from collections.abc import Callable
from typing import Any

import numpy as np
import pytest

pytest.importorskip("hypothesis")

from hypothesis import given
from hypothesis import strategies as st
from random_parts import QUANTITIES, finite, units_of

import hydro
from hydro import *  # noqa: F403  what is printed of a series is valid input after this
from hydro import ft, gpm, psi

# A number times a unit is 0 for -0 too, because units have offsets.
NUMBERS = st.lists(finite(1e250).map(lambda number: number + 0.0), max_size=20)
SERIES = [getattr(hydro, kind.__name__ + "Series") for kind in QUANTITIES]
ONE_UNIT = [units_of(kind)[0] for kind in QUANTITIES]


# Between numpy and series


@pytest.mark.parametrize("kind", QUANTITIES, ids=lambda kind: str(kind.__name__))
def test_numbers_go_in_and_come_out_one_by_one_the_same(kind: type) -> None:
    @given(NUMBERS, st.sampled_from(units_of(kind)))
    def examine(numbers: list[float], unit: Any) -> None:
        array = np.array(numbers)
        ours = getattr(hydro, kind.__name__ + "Series")
        series = array * unit
        assert type(series) is ours and len(series) == len(numbers)
        single = [number * unit for number in numbers]
        for again in (unit * array, numbers * unit, tuple(numbers) * unit, ours(single)):
            assert type(again) is ours and again.si.tobytes() == series.si.tobytes()
        assert list(series) == single and [series[i] for i in range(len(series))] == single
        out = series.to(unit)
        assert type(out) is np.ndarray and out.dtype == np.float64 and out.shape == array.shape
        assert out.tobytes() == np.array([one.to(unit) for one in single]).tobytes()
        assert (series / unit).tobytes() == out.tobytes()

    examine()


@pytest.mark.parametrize(
    "numbers",
    [
        np.arange(3),
        np.arange(3, dtype=np.int8),
        np.arange(3, dtype=np.uint64),
        np.arange(3, dtype=np.float32),
        np.arange(3, dtype=">f8"),
        np.arange(6.0)[::2] / 2,
        np.arange(3.0)[::-1][::-1],
        np.array([[0.0, 9], [1, 9], [2, 9]])[:, 0],
        [0, 1, 2],
        (0, 1.0, np.float64(2)),
    ],
)
def test_numbers_of_all_kinds_make_a_series(numbers: Any) -> None:
    assert (numbers * psi).to(psi).tolist() == [0, 1, 2]
    assert (psi * numbers).to(psi).tolist() == [0, 1, 2]
    assert (numbers * (2 * Pa)).to(Pa).tolist() == [0, 2, 4]


@pytest.mark.parametrize(
    "numbers, error, message",
    [
        (np.zeros((2, 2)), ValueError, r"one dimension, not the shape \(2, 2\)"),
        (np.array(3.0), ValueError, r"one dimension, not the shape \(\)"),
        ([[1.0, 2.0], [3.0, 4.0]], ValueError, r"one dimension, not the shape \(2, 2\)"),
        (np.ma.masked_array([1.0, 2.0], [False, True]), TypeError, "masked array"),
        (np.array(["1", "2"]), TypeError, "made of numbers, not of <U1"),
        (["1", "2"], TypeError, "made of numbers, not of <U1"),
        (np.array([1, None]), TypeError, "made of numbers, not of object"),
        ([1 * psi, 2 * psi], TypeError, "made of numbers, not of object"),
        (np.array([1j]), TypeError, "made of numbers, not of complex128"),
        (np.array([True]), TypeError, "made of numbers, not of bool"),
        (np.array(["2020-01-01"], dtype="M8[D]"), TypeError, "made of numbers, not of datetime64"),
    ],
)
def test_what_is_no_row_of_numbers_is_refused(numbers: Any, error: type, message: str) -> None:
    for use in (lambda: numbers * psi, lambda: psi * numbers, lambda: numbers * (1 * psi)):
        with pytest.raises(error, match=message):
            use()


def test_si_is_a_view_that_cannot_be_written_to_and_outlives_its_series() -> None:
    series = np.arange(5) * Pa
    view = series.si
    assert np.shares_memory(view, series.si) and view.tolist() == [0, 1, 2, 3, 4]
    with pytest.raises(ValueError, match="read-only"):
        view[0] = 7
    with pytest.raises(ValueError):
        view.flags.writeable = True
    del series
    again = [np.arange(5) * (7 * Pa) for _ in range(100)]
    assert view.tolist() == [0, 1, 2, 3, 4] and again

    numbers = np.arange(5.0)
    series = numbers * Pa
    numbers[:] = 9
    out = series.to(Pa)
    out[:] = 8
    assert series.si.tolist() == [0, 1, 2, 3, 4]  # neither the giver's nor the taker's changes it


def test_an_array_is_not_made_without_a_unit() -> None:
    series = [1, 2] * psi
    for use in (lambda: np.array(series), lambda: np.asarray(series)):
        with pytest.raises(TypeError, match=r"write \.to\(psi\), or \.si"):
            use()
    with pytest.raises(TypeError):
        np.sqrt(series)


# Reading


@given(NUMBERS, st.data())
def test_a_series_is_indexed_and_sliced_as_numpy_does(numbers: list[float], data: Any) -> None:
    array = np.array(numbers, float)
    series = array * Pa
    cut = data.draw(st.slices(len(numbers)))
    keep = data.draw(st.lists(st.booleans(), min_size=len(numbers), max_size=len(numbers)))
    mask = np.array(keep, bool)
    assert series[cut].si.tobytes() == array[cut].tobytes()
    assert type(series[cut]) is hydro.PressureSeries
    assert series[mask].si.tobytes() == array[mask].tobytes()
    assert series[series > 3 * Pa].si.tobytes() == array[array > 3].tobytes()
    if numbers:
        places = data.draw(st.lists(st.integers(-len(numbers), len(numbers) - 1), max_size=9))
        for several in (places, np.array(places, int)):
            assert series[several].si.tolist() == array[np.array(places, int)].tolist()
        for place in (*places, *np.array(places, int)):
            assert series[place] == array[place] * Pa and type(series[place]) is hydro.Pressure


@pytest.mark.parametrize(
    "index, error",
    [
        (10, IndexError),
        (-11, IndexError),
        (10**30, IndexError),
        ([10], IndexError),
        ("row 1", IndexError),
        (1.0, IndexError),
        ((0, 1), IndexError),
        (None, ValueError),  # would have two dimensions
    ],
)
def test_what_is_no_index_is_refused(index: Any, error: type) -> None:
    with pytest.raises(error):
        (np.arange(10) * psi)[index]


@given(NUMBERS)
def test_a_series_is_printed_pickled_and_copied_as_it_is(numbers: list[float]) -> None:
    for unit in ONE_UNIT:
        series = numbers * unit
        again = pickle.loads(pickle.dumps(series))
        assert type(again) is type(series) and again.si.tobytes() == series.si.tobytes()
        printed = eval(repr(series))
        assert type(printed) is type(series) and np.array_equal(printed.si, series.si)
        assert copy.copy(series) is series and copy.deepcopy(series) is series


def test_long_series_and_what_is_not_finite_are_printed_in_short() -> None:
    assert repr(np.arange(1000) * psi) == "<hydro.PressureSeries of 1000>"
    assert repr([1, float("nan")] * psi) == "<hydro.PressureSeries of 2>"
    assert repr([float("inf")] * psi) == "<hydro.PressureSeries of 1>"
    assert repr([] * psi) == "PressureSeries([])"


def test_a_series_is_printed_as_it_was_written() -> None:
    assert repr([10, 20] * psi) == "[10.0, 20.0] * psi"
    assert repr(np.arange(8) * psi) == "[0.0, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0] * psi"


def test_a_truth_value_of_numpy_is_no_number() -> None:
    with pytest.raises(TypeError):
        np.bool_(True) * psi
    with pytest.raises(TypeError):
        hydro.clogged("row 1", 1, np.bool_(True))


def test_nan_goes_through() -> None:
    series = [1, float("nan"), 3] * psi
    assert np.isnan(series.to(psi)).tolist() == [False, True, False]
    assert (series == series).tolist() == [True, False, True]
    assert (series < 9 * psi).tolist() == [True, False, True]
    assert np.isnan(pickle.loads(pickle.dumps(series)).si[1]) and np.isnan(series.sum().to(psi))


# Arithmetic


@given(st.data())
def test_arithmetic_is_that_of_numpy_in_si(data: Any) -> None:
    size = data.draw(st.integers(0, 8))
    several = st.lists(finite(1e100), min_size=size, max_size=size)
    a, b = np.array(data.draw(several)) + 0.0, np.array(data.draw(several)) + 0.0
    number = data.draw(finite(1e100)) + 0.0
    first, second, one = a * Pa, b * Pa, number * Pa

    def expect(ours: Any, theirs: Any, kind: type = hydro.PressureSeries) -> None:
        assert type(ours) is kind
        values = ours.si if kind is hydro.PressureSeries else ours
        assert values.dtype == theirs.dtype and values.tobytes() == theirs.tobytes()

    expect(first + second, a + b)
    expect(first - second, a - b)
    expect(first + one, a + number)
    expect(one + first, number + a)
    expect(first - one, a - number)
    expect(one - first, number - a)
    expect(-first, -a)
    for factor in (number, b):
        expect(first * factor, a * factor)
        expect(factor * first, factor * a)
    with np.errstate(all="ignore"):
        expect(first / second, a / b, np.ndarray)
        expect(first / one, a / np.float64(number), np.ndarray)
        expect(first / b, a / b)
        expect(first / number, a / np.float64(number))
    for compare in ("__lt__", "__le__", "__gt__", "__ge__", "__eq__", "__ne__"):
        expect(getattr(first, compare)(second), getattr(a, compare)(b), np.ndarray)
        expect(getattr(first, compare)(one), getattr(a, compare)(number), np.ndarray)
    expect(one < first, number < a, np.ndarray)
    if size:
        assert first.min() == a.min() * Pa and first.max() == a.max() * Pa
        # Added in another order than numpy's: as many roundings as values.
        assert abs(first.sum().to(Pa) - a.sum()) <= size * np.spacing(np.abs(a).sum())
        assert abs(first.mean().to(Pa) - a.mean()) <= 2 * size * np.spacing(np.abs(a).max())


@pytest.mark.parametrize("what", ["min", "max", "mean"])
def test_nothing_has_no_extremes_and_no_mean(what: str) -> None:
    with pytest.raises(ValueError, match=f"without values has no {what}"):
        getattr([] * psi, what)()
    assert ([] * psi).sum() == 0 * psi


@pytest.mark.parametrize(
    "use, error, message",
    [
        (lambda s: s + 3, TypeError, r"3 is a bare number, not a Pressure: write 3 \* psi"),
        (lambda s: 3 - s, TypeError, r"3 is a bare number, not a Pressure: write 3 \* psi"),
        (lambda s: s < 3, TypeError, r"3 is a bare number, not a Pressure: write 3 \* psi"),
        (lambda s: s + 3 * ft, TypeError, r"3 \* ft is a Length, not a Pressure"),
        (lambda s: s >= 3 * ft, TypeError, r"3 \* ft is a Length, not a Pressure"),
        (lambda s: s + [1, 2], TypeError, ""),
        (lambda s: s + np.array([1.0, 2.0]), TypeError, ""),
        (lambda s: np.array([1.0, 2.0]) + s, TypeError, ""),
        (lambda s: np.array([1.0, 2.0]) / s, TypeError, ""),
        (lambda s: s + [1, 2] * ft, TypeError, ""),
        (lambda s: s * s, TypeError, ""),
        (lambda s: s * (1 * psi), TypeError, ""),
        (lambda s: s * "2", TypeError, ""),
        (lambda s: s * True, TypeError, ""),
        (lambda s: s + [1, 2, 3] * psi, ValueError, "one series has 2 values, the other 3"),
        (lambda s: s * [1, 2, 3], ValueError, "one series has 2 values, the other 3"),
        (lambda s: s == [1, 2, 3] * psi, ValueError, "one series has 2 values, the other 3"),
        (lambda s: s.to(ft), TypeError, "unit: ft is a LengthUnit, not a PressureUnit"),
        (lambda s: s.to("psi"), TypeError, "unit: 'psi' is a str, not a PressureUnit"),
        (lambda s: s.to(), TypeError, "to needs unit"),
        (hash, TypeError, "unhashable"),
        (lambda s: s.__setitem__(0, 1 * psi), AttributeError, "__setitem__"),
        (lambda s: hydro.PressureSeries([1.0]), TypeError, r"quantities\[0\]: 1.0 is a bare numb"),
        (lambda s: hydro.PressureSeries([1 * ft]), TypeError, r"quantities\[0\]: 1 \* ft is a Len"),
        (lambda s: hydro.PressureSeries(1 * psi), TypeError, "quantities: 1 .* not a list"),
        (lambda s: hydro.PressureSeries("1 psi"), TypeError, "quantities: '1 psi' is a str"),
    ],
)
def test_other_uses_are_refused(use: Callable[[Any], object], error: type, message: str) -> None:
    with pytest.raises(error, match=message):
        use([1, 2] * psi)


def test_series_of_different_quantities_are_not_equal() -> None:
    assert ([1, 2] * psi) != ([1, 2] * gpm)
    assert ([1, 2] * psi) != [1, 2]
    assert not ([1, 2] * psi) == 3


# Of a solution


def test_a_series_is_a_sequence_of_quantities(after: hydro.Solution) -> None:
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
    with pytest.raises(TypeError, match="^unit: ft is a LengthUnit, not a PressureUnit"):
        series.to(ft)
    numbers[:] = 0  # the caller's own copy
    assert series[0].to(psi) > 20
    assert len(after.line("manifold").pressure) == 0
    assert after.line("manifold").pressure.to(psi).shape == (0,)
