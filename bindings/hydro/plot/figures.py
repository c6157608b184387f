"""Quantities in the units that the reader knows; in words, nothing finer than a gauge shows."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

import hydro
from hydro import Flow, FlowUnit, LengthUnit, Pressure, PressureUnit

Numbers = npt.NDArray[np.float64]
KEPT = "\N{NO-BREAK SPACE}"  # words on both sides stay in one row


def limit_in_words(value: Pressure, unit: PressureUnit) -> str:
    """A pressure that a person chose, without a needless decimal: `25 psi`."""
    number = f"{value.to(unit):.{0 if unit == hydro.kPa else 1}f}"
    return f"{number.removesuffix('.0')} {unit}"


def flow_in_words(value: Flow, unit: FlowUnit) -> str:
    return f"{value.to(unit):.1f}{KEPT}{unit}"


def length_in_words(number: float, unit: LengthUnit) -> str:
    return f"{number:.1f}{KEPT}{unit}"
