"""Series: many values of one quantity, beside numpy."""

import numpy as np
import pytest

import hydro
from hydro import ft, psi


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
    with pytest.raises(TypeError, match="^unit: ft is a LengthUnit, not a PressureUnit"):
        series.to(ft)
    numbers[:] = 0  # the caller's own copy
    assert series[0].to(psi) > 20
    assert len(after.line("manifold").pressure) == 0
    assert after.line("manifold").pressure.to(psi).shape == (0,)
