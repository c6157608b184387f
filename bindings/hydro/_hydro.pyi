"""The compiled part of the package: all that is public is in hydro, under the same names."""

import datetime
import os
from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import Any, ClassVar, NoReturn, TypeAlias, overload

import numpy
import pandas
from numpy.typing import NDArray

from .enumerations import (
    AddedWhere,
    BreakDetail,
    CandidateKind,
    CheckValveState,
    CurveShape,
    Deed,
    DrainEnd,
    EvapotranspirationMethod,
    FirstFall,
    FirstOutlet,
    FlowFigureKind,
    InletGoal,
    Input,
    LearntKind,
    Limit,
    OutletCondition,
    OutletState,
    PressureFigureKind,
    PumpArrangement,
    PumpRange,
    ReadingPlace,
    RegulatorState,
    RemedyKind,
    RoomEnd,
    Seen,
    ServedBy,
    SoilKind,
    SupplyLimit,
    UnitSystem,
    ValveKind,
    ValveOpening,
    WalkKind,
    WaterReason,
    WeatherEstimate,
    WhyLeft,
    WhyStop,
)

__version__: str

class Length:
    """A number times a unit, 25 * ft, or a text with a unit, Length("25 ft"). Units: ft, inch, m, mm,
    cm, km.
    """
    def __init__(self, quantity: Length | str, /) -> None: ...
    def to(self, unit: LengthUnit) -> float:
        """The number of this unit. TypeError for a unit of another quantity."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    def __neg__(self) -> Length: ...
    def __pos__(self) -> Length: ...
    def __abs__(self) -> Length: ...
    def __bool__(self) -> bool: ...
    @overload
    def __truediv__(self, other: LengthUnit, /) -> float: ...
    @overload
    def __truediv__(self, other: float, /) -> Length: ...
    @overload
    def __truediv__(self, other: Length, /) -> float: ...
    @overload
    def __truediv__(self, other: Velocity, /) -> Time: ...
    @overload
    def __truediv__(self, other: Time, /) -> Velocity: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __lt__(self, other: Length, /) -> bool: ...
    def __le__(self, other: Length, /) -> bool: ...
    def __gt__(self, other: Length, /) -> bool: ...
    def __ge__(self, other: Length, /) -> bool: ...
    @overload
    def __mul__(self, other: float, /) -> Length: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> LengthSeries: ...
    @overload
    def __mul__(self, other: Length, /) -> Area: ...
    @overload
    def __mul__(self, other: Area, /) -> Volume: ...
    @overload
    def __rmul__(self, other: float, /) -> Length: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> LengthSeries: ...
    def __add__(self, other: Length, /) -> Length: ...
    def __sub__(self, other: Length, /) -> Length: ...

class LengthUnit:
    """A unit of Length: 25 * ft."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    @property
    def symbol(self) -> str:
        """What texts and reports print: gal/min."""
    __array_ufunc__: ClassVar[None]
    @overload
    def __mul__(self, other: float, /) -> Length: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> LengthSeries: ...
    @overload
    def __rmul__(self, other: float, /) -> Length: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> LengthSeries: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Area:
    """A number times a unit, 25 * ft2, or a text with a unit, Area("25 ft2"). Units: ft2, m2, cm2,
    acre, hectare.
    """
    def __init__(self, quantity: Area | str, /) -> None: ...
    def to(self, unit: AreaUnit) -> float:
        """The number of this unit. TypeError for a unit of another quantity."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    def __neg__(self) -> Area: ...
    def __pos__(self) -> Area: ...
    def __abs__(self) -> Area: ...
    def __bool__(self) -> bool: ...
    @overload
    def __truediv__(self, other: AreaUnit, /) -> float: ...
    @overload
    def __truediv__(self, other: float, /) -> Area: ...
    @overload
    def __truediv__(self, other: Area, /) -> float: ...
    @overload
    def __truediv__(self, other: Length, /) -> Length: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __lt__(self, other: Area, /) -> bool: ...
    def __le__(self, other: Area, /) -> bool: ...
    def __gt__(self, other: Area, /) -> bool: ...
    def __ge__(self, other: Area, /) -> bool: ...
    @overload
    def __mul__(self, other: float, /) -> Area: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> AreaSeries: ...
    @overload
    def __mul__(self, other: Length, /) -> Volume: ...
    @overload
    def __mul__(self, other: Velocity, /) -> Flow: ...
    @overload
    def __mul__(self, other: Irradiance, /) -> Power: ...
    @overload
    def __rmul__(self, other: float, /) -> Area: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> AreaSeries: ...
    def __add__(self, other: Area, /) -> Area: ...
    def __sub__(self, other: Area, /) -> Area: ...

class AreaUnit:
    """A unit of Area: 25 * ft2."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    @property
    def symbol(self) -> str:
        """What texts and reports print: gal/min."""
    __array_ufunc__: ClassVar[None]
    @overload
    def __mul__(self, other: float, /) -> Area: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> AreaSeries: ...
    @overload
    def __rmul__(self, other: float, /) -> Area: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> AreaSeries: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Volume:
    """A number times a unit, 25 * gallon, or a text with a unit, Volume("25 gal"). Units: gallon,
    litre, m3.
    """
    def __init__(self, quantity: Volume | str, /) -> None: ...
    def to(self, unit: VolumeUnit) -> float:
        """The number of this unit. TypeError for a unit of another quantity."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    def __neg__(self) -> Volume: ...
    def __pos__(self) -> Volume: ...
    def __abs__(self) -> Volume: ...
    def __bool__(self) -> bool: ...
    @overload
    def __truediv__(self, other: VolumeUnit, /) -> float: ...
    @overload
    def __truediv__(self, other: float, /) -> Volume: ...
    @overload
    def __truediv__(self, other: Volume, /) -> float: ...
    @overload
    def __truediv__(self, other: Area, /) -> Length: ...
    @overload
    def __truediv__(self, other: Length, /) -> Area: ...
    @overload
    def __truediv__(self, other: Flow, /) -> Time: ...
    @overload
    def __truediv__(self, other: Time, /) -> Flow: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __lt__(self, other: Volume, /) -> bool: ...
    def __le__(self, other: Volume, /) -> bool: ...
    def __gt__(self, other: Volume, /) -> bool: ...
    def __ge__(self, other: Volume, /) -> bool: ...
    @overload
    def __mul__(self, other: float, /) -> Volume: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> VolumeSeries: ...
    @overload
    def __mul__(self, other: Pressure, /) -> Energy: ...
    @overload
    def __rmul__(self, other: float, /) -> Volume: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> VolumeSeries: ...
    def __add__(self, other: Volume, /) -> Volume: ...
    def __sub__(self, other: Volume, /) -> Volume: ...

class VolumeUnit:
    """A unit of Volume: 25 * gallon."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    @property
    def symbol(self) -> str:
        """What texts and reports print: gal/min."""
    __array_ufunc__: ClassVar[None]
    @overload
    def __mul__(self, other: float, /) -> Volume: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> VolumeSeries: ...
    @overload
    def __rmul__(self, other: float, /) -> Volume: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> VolumeSeries: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Time:
    """A number times a unit, 25 * units.s, or a text with a unit, Time("25 s"). Units: units.s,
    units.min, units.h, units.day.
    """
    def __init__(self, quantity: Time | str, /) -> None: ...
    def to(self, unit: TimeUnit) -> float:
        """The number of this unit. TypeError for a unit of another quantity."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    def __neg__(self) -> Time: ...
    def __pos__(self) -> Time: ...
    def __abs__(self) -> Time: ...
    def __bool__(self) -> bool: ...
    @overload
    def __truediv__(self, other: TimeUnit, /) -> float: ...
    @overload
    def __truediv__(self, other: float, /) -> Time: ...
    @overload
    def __truediv__(self, other: Time, /) -> float: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __lt__(self, other: Time, /) -> bool: ...
    def __le__(self, other: Time, /) -> bool: ...
    def __gt__(self, other: Time, /) -> bool: ...
    def __ge__(self, other: Time, /) -> bool: ...
    @overload
    def __mul__(self, other: float, /) -> Time: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> TimeSeries: ...
    @overload
    def __mul__(self, other: Velocity, /) -> Length: ...
    @overload
    def __mul__(self, other: Flow, /) -> Volume: ...
    @overload
    def __mul__(self, other: Power, /) -> Energy: ...
    @overload
    def __rmul__(self, other: float, /) -> Time: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> TimeSeries: ...
    def __add__(self, other: Time, /) -> Time: ...
    def __sub__(self, other: Time, /) -> Time: ...

class TimeUnit:
    """A unit of Time: 25 * units.s."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    @property
    def symbol(self) -> str:
        """What texts and reports print: gal/min."""
    __array_ufunc__: ClassVar[None]
    @overload
    def __mul__(self, other: float, /) -> Time: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> TimeSeries: ...
    @overload
    def __rmul__(self, other: float, /) -> Time: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> TimeSeries: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Velocity:
    """A number times a unit, 25 * ft_per_s, or a text with a unit, Velocity("25 ft/s"). Units:
    ft_per_s, m_per_s, inch_per_h, mm_per_h, inch_per_day, mm_per_day.
    """
    def __init__(self, quantity: Velocity | str, /) -> None: ...
    def to(self, unit: VelocityUnit) -> float:
        """The number of this unit. TypeError for a unit of another quantity."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    def __neg__(self) -> Velocity: ...
    def __pos__(self) -> Velocity: ...
    def __abs__(self) -> Velocity: ...
    def __bool__(self) -> bool: ...
    @overload
    def __truediv__(self, other: VelocityUnit, /) -> float: ...
    @overload
    def __truediv__(self, other: float, /) -> Velocity: ...
    @overload
    def __truediv__(self, other: Velocity, /) -> float: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __lt__(self, other: Velocity, /) -> bool: ...
    def __le__(self, other: Velocity, /) -> bool: ...
    def __gt__(self, other: Velocity, /) -> bool: ...
    def __ge__(self, other: Velocity, /) -> bool: ...
    @overload
    def __mul__(self, other: float, /) -> Velocity: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> VelocitySeries: ...
    @overload
    def __mul__(self, other: Time, /) -> Length: ...
    @overload
    def __mul__(self, other: Area, /) -> Flow: ...
    @overload
    def __rmul__(self, other: float, /) -> Velocity: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> VelocitySeries: ...
    def __add__(self, other: Velocity, /) -> Velocity: ...
    def __sub__(self, other: Velocity, /) -> Velocity: ...

class VelocityUnit:
    """A unit of Velocity: 25 * ft_per_s."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    @property
    def symbol(self) -> str:
        """What texts and reports print: gal/min."""
    __array_ufunc__: ClassVar[None]
    @overload
    def __mul__(self, other: float, /) -> Velocity: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> VelocitySeries: ...
    @overload
    def __rmul__(self, other: float, /) -> Velocity: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> VelocitySeries: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Pressure:
    """A number times a unit, 25 * psi, or a text with a unit, Pressure("25 psi"). Units: psi, kPa,
    bar, MPa, Pa, mH2O, ftH2O, inHg.
    """
    def __init__(self, quantity: Pressure | str, /) -> None: ...
    def to(self, unit: PressureUnit) -> float:
        """The number of this unit. TypeError for a unit of another quantity."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    def __neg__(self) -> Pressure: ...
    def __pos__(self) -> Pressure: ...
    def __abs__(self) -> Pressure: ...
    def __bool__(self) -> bool: ...
    @overload
    def __truediv__(self, other: PressureUnit, /) -> float: ...
    @overload
    def __truediv__(self, other: float, /) -> Pressure: ...
    @overload
    def __truediv__(self, other: Pressure, /) -> float: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __lt__(self, other: Pressure, /) -> bool: ...
    def __le__(self, other: Pressure, /) -> bool: ...
    def __gt__(self, other: Pressure, /) -> bool: ...
    def __ge__(self, other: Pressure, /) -> bool: ...
    @overload
    def __mul__(self, other: float, /) -> Pressure: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> PressureSeries: ...
    @overload
    def __mul__(self, other: Flow, /) -> Power: ...
    @overload
    def __mul__(self, other: Volume, /) -> Energy: ...
    @overload
    def __rmul__(self, other: float, /) -> Pressure: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> PressureSeries: ...
    def __add__(self, other: Pressure, /) -> Pressure: ...
    def __sub__(self, other: Pressure, /) -> Pressure: ...

class PressureUnit:
    """A unit of Pressure: 25 * psi."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    @property
    def symbol(self) -> str:
        """What texts and reports print: gal/min."""
    __array_ufunc__: ClassVar[None]
    @overload
    def __mul__(self, other: float, /) -> Pressure: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> PressureSeries: ...
    @overload
    def __rmul__(self, other: float, /) -> Pressure: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> PressureSeries: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Density:
    """A number times a unit, 25 * kg_per_m3, or a text with a unit, Density("25 kg/m3"). Units:
    kg_per_m3, lb_per_ft3.
    """
    def __init__(self, quantity: Density | str, /) -> None: ...
    def to(self, unit: DensityUnit) -> float:
        """The number of this unit. TypeError for a unit of another quantity."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    def __neg__(self) -> Density: ...
    def __pos__(self) -> Density: ...
    def __abs__(self) -> Density: ...
    def __bool__(self) -> bool: ...
    @overload
    def __truediv__(self, other: DensityUnit, /) -> float: ...
    @overload
    def __truediv__(self, other: float, /) -> Density: ...
    @overload
    def __truediv__(self, other: Density, /) -> float: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __lt__(self, other: Density, /) -> bool: ...
    def __le__(self, other: Density, /) -> bool: ...
    def __gt__(self, other: Density, /) -> bool: ...
    def __ge__(self, other: Density, /) -> bool: ...
    @overload
    def __mul__(self, other: float, /) -> Density: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> DensitySeries: ...
    @overload
    def __mul__(self, other: KinematicViscosity, /) -> DynamicViscosity: ...
    @overload
    def __rmul__(self, other: float, /) -> Density: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> DensitySeries: ...
    def __add__(self, other: Density, /) -> Density: ...
    def __sub__(self, other: Density, /) -> Density: ...

class DensityUnit:
    """A unit of Density: 25 * kg_per_m3."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    @property
    def symbol(self) -> str:
        """What texts and reports print: gal/min."""
    __array_ufunc__: ClassVar[None]
    @overload
    def __mul__(self, other: float, /) -> Density: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> DensitySeries: ...
    @overload
    def __rmul__(self, other: float, /) -> Density: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> DensitySeries: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class DynamicViscosity:
    """A number times a unit, 25 * mPa_s, or a text with a unit, DynamicViscosity("25 mPa.s"). Units:
    mPa_s, Pa_s.
    """
    def __init__(self, quantity: DynamicViscosity | str, /) -> None: ...
    def to(self, unit: DynamicViscosityUnit) -> float:
        """The number of this unit. TypeError for a unit of another quantity."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    def __neg__(self) -> DynamicViscosity: ...
    def __pos__(self) -> DynamicViscosity: ...
    def __abs__(self) -> DynamicViscosity: ...
    def __bool__(self) -> bool: ...
    @overload
    def __truediv__(self, other: DynamicViscosityUnit, /) -> float: ...
    @overload
    def __truediv__(self, other: float, /) -> DynamicViscosity: ...
    @overload
    def __truediv__(self, other: DynamicViscosity, /) -> float: ...
    @overload
    def __truediv__(self, other: Density, /) -> KinematicViscosity: ...
    @overload
    def __truediv__(self, other: KinematicViscosity, /) -> Density: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __lt__(self, other: DynamicViscosity, /) -> bool: ...
    def __le__(self, other: DynamicViscosity, /) -> bool: ...
    def __gt__(self, other: DynamicViscosity, /) -> bool: ...
    def __ge__(self, other: DynamicViscosity, /) -> bool: ...
    @overload
    def __mul__(self, other: float, /) -> DynamicViscosity: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> DynamicViscositySeries: ...
    @overload
    def __rmul__(self, other: float, /) -> DynamicViscosity: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> DynamicViscositySeries: ...
    def __add__(self, other: DynamicViscosity, /) -> DynamicViscosity: ...
    def __sub__(self, other: DynamicViscosity, /) -> DynamicViscosity: ...

class DynamicViscosityUnit:
    """A unit of DynamicViscosity: 25 * mPa_s."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    @property
    def symbol(self) -> str:
        """What texts and reports print: gal/min."""
    __array_ufunc__: ClassVar[None]
    @overload
    def __mul__(self, other: float, /) -> DynamicViscosity: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> DynamicViscositySeries: ...
    @overload
    def __rmul__(self, other: float, /) -> DynamicViscosity: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> DynamicViscositySeries: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class KinematicViscosity:
    """A number times a unit, 25 * mm2_per_s, or a text with a unit, KinematicViscosity("25 mm2/s").
    Units: mm2_per_s, m2_per_s.
    """
    def __init__(self, quantity: KinematicViscosity | str, /) -> None: ...
    def to(self, unit: KinematicViscosityUnit) -> float:
        """The number of this unit. TypeError for a unit of another quantity."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    def __neg__(self) -> KinematicViscosity: ...
    def __pos__(self) -> KinematicViscosity: ...
    def __abs__(self) -> KinematicViscosity: ...
    def __bool__(self) -> bool: ...
    @overload
    def __truediv__(self, other: KinematicViscosityUnit, /) -> float: ...
    @overload
    def __truediv__(self, other: float, /) -> KinematicViscosity: ...
    @overload
    def __truediv__(self, other: KinematicViscosity, /) -> float: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __lt__(self, other: KinematicViscosity, /) -> bool: ...
    def __le__(self, other: KinematicViscosity, /) -> bool: ...
    def __gt__(self, other: KinematicViscosity, /) -> bool: ...
    def __ge__(self, other: KinematicViscosity, /) -> bool: ...
    @overload
    def __mul__(self, other: float, /) -> KinematicViscosity: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> KinematicViscositySeries: ...
    @overload
    def __mul__(self, other: Density, /) -> DynamicViscosity: ...
    @overload
    def __rmul__(self, other: float, /) -> KinematicViscosity: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> KinematicViscositySeries: ...
    def __add__(self, other: KinematicViscosity, /) -> KinematicViscosity: ...
    def __sub__(self, other: KinematicViscosity, /) -> KinematicViscosity: ...

class KinematicViscosityUnit:
    """A unit of KinematicViscosity: 25 * mm2_per_s."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    @property
    def symbol(self) -> str:
        """What texts and reports print: gal/min."""
    __array_ufunc__: ClassVar[None]
    @overload
    def __mul__(self, other: float, /) -> KinematicViscosity: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> KinematicViscositySeries: ...
    @overload
    def __rmul__(self, other: float, /) -> KinematicViscosity: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> KinematicViscositySeries: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Temperature:
    """A number times a unit, 25 * degC, or a text with a unit, Temperature("25 degC"). Units: degC,
    degF, units.K.
    """
    def __init__(self, quantity: Temperature | str, /) -> None: ...
    def to(self, unit: TemperatureUnit) -> float:
        """The number of this unit. TypeError for a unit of another quantity."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    def __truediv__(self, other: TemperatureUnit, /) -> float: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __lt__(self, other: Temperature, /) -> bool: ...
    def __le__(self, other: Temperature, /) -> bool: ...
    def __gt__(self, other: Temperature, /) -> bool: ...
    def __ge__(self, other: Temperature, /) -> bool: ...

class TemperatureUnit:
    """A unit of Temperature: 25 * degC."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    @property
    def symbol(self) -> str:
        """What texts and reports print: gal/min."""
    __array_ufunc__: ClassVar[None]
    @overload
    def __mul__(self, other: float, /) -> Temperature: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> TemperatureSeries: ...
    @overload
    def __rmul__(self, other: float, /) -> Temperature: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> TemperatureSeries: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Flow:
    """A number times a unit, 25 * gpm, or a text with a unit, Flow("25 gal/min"). Units: gpm, gph,
    lpm, lph, lps, m3_per_h, m3_per_s, ft3_per_s.
    """
    def __init__(self, quantity: Flow | str, /) -> None: ...
    def to(self, unit: FlowUnit) -> float:
        """The number of this unit. TypeError for a unit of another quantity."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    def __neg__(self) -> Flow: ...
    def __pos__(self) -> Flow: ...
    def __abs__(self) -> Flow: ...
    def __bool__(self) -> bool: ...
    @overload
    def __truediv__(self, other: FlowUnit, /) -> float: ...
    @overload
    def __truediv__(self, other: float, /) -> Flow: ...
    @overload
    def __truediv__(self, other: Flow, /) -> float: ...
    @overload
    def __truediv__(self, other: Velocity, /) -> Area: ...
    @overload
    def __truediv__(self, other: Area, /) -> Velocity: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __lt__(self, other: Flow, /) -> bool: ...
    def __le__(self, other: Flow, /) -> bool: ...
    def __gt__(self, other: Flow, /) -> bool: ...
    def __ge__(self, other: Flow, /) -> bool: ...
    @overload
    def __mul__(self, other: float, /) -> Flow: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> FlowSeries: ...
    @overload
    def __mul__(self, other: Time, /) -> Volume: ...
    @overload
    def __mul__(self, other: Pressure, /) -> Power: ...
    @overload
    def __rmul__(self, other: float, /) -> Flow: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> FlowSeries: ...
    def __add__(self, other: Flow, /) -> Flow: ...
    def __sub__(self, other: Flow, /) -> Flow: ...

class FlowUnit:
    """A unit of Flow: 25 * gpm."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    @property
    def symbol(self) -> str:
        """What texts and reports print: gal/min."""
    __array_ufunc__: ClassVar[None]
    @overload
    def __mul__(self, other: float, /) -> Flow: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> FlowSeries: ...
    @overload
    def __rmul__(self, other: float, /) -> Flow: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> FlowSeries: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class RotationalSpeed:
    """A number times a unit, 25 * rpm, or a text with a unit, RotationalSpeed("25 rpm"). Units: rpm,
    rps.
    """
    def __init__(self, quantity: RotationalSpeed | str, /) -> None: ...
    def to(self, unit: RotationalSpeedUnit) -> float:
        """The number of this unit. TypeError for a unit of another quantity."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    def __neg__(self) -> RotationalSpeed: ...
    def __pos__(self) -> RotationalSpeed: ...
    def __abs__(self) -> RotationalSpeed: ...
    def __bool__(self) -> bool: ...
    @overload
    def __truediv__(self, other: RotationalSpeedUnit, /) -> float: ...
    @overload
    def __truediv__(self, other: float, /) -> RotationalSpeed: ...
    @overload
    def __truediv__(self, other: RotationalSpeed, /) -> float: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __lt__(self, other: RotationalSpeed, /) -> bool: ...
    def __le__(self, other: RotationalSpeed, /) -> bool: ...
    def __gt__(self, other: RotationalSpeed, /) -> bool: ...
    def __ge__(self, other: RotationalSpeed, /) -> bool: ...
    @overload
    def __mul__(self, other: float, /) -> RotationalSpeed: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> RotationalSpeedSeries: ...
    @overload
    def __rmul__(self, other: float, /) -> RotationalSpeed: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> RotationalSpeedSeries: ...
    def __add__(self, other: RotationalSpeed, /) -> RotationalSpeed: ...
    def __sub__(self, other: RotationalSpeed, /) -> RotationalSpeed: ...

class RotationalSpeedUnit:
    """A unit of RotationalSpeed: 25 * rpm."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    @property
    def symbol(self) -> str:
        """What texts and reports print: gal/min."""
    __array_ufunc__: ClassVar[None]
    @overload
    def __mul__(self, other: float, /) -> RotationalSpeed: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> RotationalSpeedSeries: ...
    @overload
    def __rmul__(self, other: float, /) -> RotationalSpeed: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> RotationalSpeedSeries: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Power:
    """A number times a unit, 25 * hp, or a text with a unit, Power("25 hp"). Units: hp, kW, units.W.
    """
    def __init__(self, quantity: Power | str, /) -> None: ...
    def to(self, unit: PowerUnit) -> float:
        """The number of this unit. TypeError for a unit of another quantity."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    def __neg__(self) -> Power: ...
    def __pos__(self) -> Power: ...
    def __abs__(self) -> Power: ...
    def __bool__(self) -> bool: ...
    @overload
    def __truediv__(self, other: PowerUnit, /) -> float: ...
    @overload
    def __truediv__(self, other: float, /) -> Power: ...
    @overload
    def __truediv__(self, other: Power, /) -> float: ...
    @overload
    def __truediv__(self, other: Pressure, /) -> Flow: ...
    @overload
    def __truediv__(self, other: Flow, /) -> Pressure: ...
    @overload
    def __truediv__(self, other: Irradiance, /) -> Area: ...
    @overload
    def __truediv__(self, other: Area, /) -> Irradiance: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __lt__(self, other: Power, /) -> bool: ...
    def __le__(self, other: Power, /) -> bool: ...
    def __gt__(self, other: Power, /) -> bool: ...
    def __ge__(self, other: Power, /) -> bool: ...
    @overload
    def __mul__(self, other: float, /) -> Power: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> PowerSeries: ...
    @overload
    def __mul__(self, other: Time, /) -> Energy: ...
    @overload
    def __rmul__(self, other: float, /) -> Power: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> PowerSeries: ...
    def __add__(self, other: Power, /) -> Power: ...
    def __sub__(self, other: Power, /) -> Power: ...

class PowerUnit:
    """A unit of Power: 25 * hp."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    @property
    def symbol(self) -> str:
        """What texts and reports print: gal/min."""
    __array_ufunc__: ClassVar[None]
    @overload
    def __mul__(self, other: float, /) -> Power: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> PowerSeries: ...
    @overload
    def __rmul__(self, other: float, /) -> Power: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> PowerSeries: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Energy:
    """A number times a unit, 25 * kWh, or a text with a unit, Energy("25 kWh"). Units: kWh, units.J.
    """
    def __init__(self, quantity: Energy | str, /) -> None: ...
    def to(self, unit: EnergyUnit) -> float:
        """The number of this unit. TypeError for a unit of another quantity."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    def __neg__(self) -> Energy: ...
    def __pos__(self) -> Energy: ...
    def __abs__(self) -> Energy: ...
    def __bool__(self) -> bool: ...
    @overload
    def __truediv__(self, other: EnergyUnit, /) -> float: ...
    @overload
    def __truediv__(self, other: float, /) -> Energy: ...
    @overload
    def __truediv__(self, other: Energy, /) -> float: ...
    @overload
    def __truediv__(self, other: Pressure, /) -> Volume: ...
    @overload
    def __truediv__(self, other: Volume, /) -> Pressure: ...
    @overload
    def __truediv__(self, other: Power, /) -> Time: ...
    @overload
    def __truediv__(self, other: Time, /) -> Power: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __lt__(self, other: Energy, /) -> bool: ...
    def __le__(self, other: Energy, /) -> bool: ...
    def __gt__(self, other: Energy, /) -> bool: ...
    def __ge__(self, other: Energy, /) -> bool: ...
    @overload
    def __mul__(self, other: float, /) -> Energy: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> EnergySeries: ...
    @overload
    def __rmul__(self, other: float, /) -> Energy: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> EnergySeries: ...
    def __add__(self, other: Energy, /) -> Energy: ...
    def __sub__(self, other: Energy, /) -> Energy: ...

class EnergyUnit:
    """A unit of Energy: 25 * kWh."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    @property
    def symbol(self) -> str:
        """What texts and reports print: gal/min."""
    __array_ufunc__: ClassVar[None]
    @overload
    def __mul__(self, other: float, /) -> Energy: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> EnergySeries: ...
    @overload
    def __rmul__(self, other: float, /) -> Energy: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> EnergySeries: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Angle:
    """A number times a unit, 25 * degree, or a text with a unit, Angle("25 deg"). Units: degree,
    radian.
    """
    def __init__(self, quantity: Angle | str, /) -> None: ...
    def to(self, unit: AngleUnit) -> float:
        """The number of this unit. TypeError for a unit of another quantity."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    def __neg__(self) -> Angle: ...
    def __pos__(self) -> Angle: ...
    def __abs__(self) -> Angle: ...
    def __bool__(self) -> bool: ...
    @overload
    def __truediv__(self, other: AngleUnit, /) -> float: ...
    @overload
    def __truediv__(self, other: float, /) -> Angle: ...
    @overload
    def __truediv__(self, other: Angle, /) -> float: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __lt__(self, other: Angle, /) -> bool: ...
    def __le__(self, other: Angle, /) -> bool: ...
    def __gt__(self, other: Angle, /) -> bool: ...
    def __ge__(self, other: Angle, /) -> bool: ...
    @overload
    def __mul__(self, other: float, /) -> Angle: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> AngleSeries: ...
    @overload
    def __rmul__(self, other: float, /) -> Angle: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> AngleSeries: ...
    def __add__(self, other: Angle, /) -> Angle: ...
    def __sub__(self, other: Angle, /) -> Angle: ...

class AngleUnit:
    """A unit of Angle: 25 * degree."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    @property
    def symbol(self) -> str:
        """What texts and reports print: gal/min."""
    __array_ufunc__: ClassVar[None]
    @overload
    def __mul__(self, other: float, /) -> Angle: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> AngleSeries: ...
    @overload
    def __rmul__(self, other: float, /) -> Angle: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> AngleSeries: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Irradiance:
    """A number times a unit, 25 * MJ_per_m2_day, or a text with a unit, Irradiance("25 MJ/m2/day").
    Units: MJ_per_m2_day, W_per_m2.
    """
    def __init__(self, quantity: Irradiance | str, /) -> None: ...
    def to(self, unit: IrradianceUnit) -> float:
        """The number of this unit. TypeError for a unit of another quantity."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    def __neg__(self) -> Irradiance: ...
    def __pos__(self) -> Irradiance: ...
    def __abs__(self) -> Irradiance: ...
    def __bool__(self) -> bool: ...
    @overload
    def __truediv__(self, other: IrradianceUnit, /) -> float: ...
    @overload
    def __truediv__(self, other: float, /) -> Irradiance: ...
    @overload
    def __truediv__(self, other: Irradiance, /) -> float: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __lt__(self, other: Irradiance, /) -> bool: ...
    def __le__(self, other: Irradiance, /) -> bool: ...
    def __gt__(self, other: Irradiance, /) -> bool: ...
    def __ge__(self, other: Irradiance, /) -> bool: ...
    @overload
    def __mul__(self, other: float, /) -> Irradiance: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> IrradianceSeries: ...
    @overload
    def __mul__(self, other: Area, /) -> Power: ...
    @overload
    def __rmul__(self, other: float, /) -> Irradiance: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> IrradianceSeries: ...
    def __add__(self, other: Irradiance, /) -> Irradiance: ...
    def __sub__(self, other: Irradiance, /) -> Irradiance: ...

class IrradianceUnit:
    """A unit of Irradiance: 25 * MJ_per_m2_day."""
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    @property
    def symbol(self) -> str:
        """What texts and reports print: gal/min."""
    __array_ufunc__: ClassVar[None]
    @overload
    def __mul__(self, other: float, /) -> Irradiance: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> IrradianceSeries: ...
    @overload
    def __rmul__(self, other: float, /) -> Irradiance: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> IrradianceSeries: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class LengthSeries:
    """Many values of Length, counted from 0: numbers times a unit, [10, 20] * ft or array * ft; or
    several of Length. Unlike an array it cannot be changed.
    """
    def __init__(self, quantities: Iterable[Length], /) -> None: ...
    def to(self, unit: LengthUnit) -> NDArray[numpy.float64]:
        """A new numpy array of numbers of this unit. TypeError for a unit of another quantity."""
    @property
    def si(self) -> NDArray[numpy.float64]:
        """The values in SI units: a view that cannot be written to, without a copy."""
    def __len__(self) -> int: ...
    def __iter__(self) -> Iterator[Length]: ...
    def min(self) -> Length:
        """The smallest value. ValueError when there are none."""
    def max(self) -> Length:
        """The largest value. ValueError when there are none."""
    __hash__: ClassVar[None]  # type: ignore[assignment]
    def __neg__(self) -> LengthSeries: ...
    def sum(self) -> Length:
        """All together."""
    def mean(self) -> Length:
        """The arithmetic mean. ValueError when there are no values."""
    def __repr__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    @overload
    def __truediv__(self, other: LengthUnit, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: LengthSeries, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: Length, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: float, /) -> LengthSeries: ...
    @overload
    def __truediv__(self, other: Sequence[float] | NDArray[Any], /) -> LengthSeries: ...
    @overload
    def __getitem__(self, other: int, /) -> Length: ...
    @overload
    def __getitem__(self, other: slice | Sequence[int] | Sequence[bool] | NDArray[Any], /) -> LengthSeries: ...
    @overload  # type: ignore[override]
    def __eq__(self, other: LengthSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __eq__(self, other: Length, /) -> NDArray[numpy.bool_]: ...
    @overload  # type: ignore[override]
    def __ne__(self, other: LengthSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ne__(self, other: Length, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: LengthSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: Length, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: LengthSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: Length, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: LengthSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: Length, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: LengthSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: Length, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __add__(self, other: LengthSeries, /) -> LengthSeries: ...
    @overload
    def __add__(self, other: Length, /) -> LengthSeries: ...
    def __radd__(self, other: Length, /) -> LengthSeries: ...
    @overload
    def __sub__(self, other: LengthSeries, /) -> LengthSeries: ...
    @overload
    def __sub__(self, other: Length, /) -> LengthSeries: ...
    def __rsub__(self, other: Length, /) -> LengthSeries: ...
    @overload
    def __mul__(self, other: float, /) -> LengthSeries: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> LengthSeries: ...
    @overload
    def __rmul__(self, other: float, /) -> LengthSeries: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> LengthSeries: ...

class AreaSeries:
    """Many values of Area, counted from 0: numbers times a unit, [10, 20] * ft2 or array * ft2; or
    several of Area. Unlike an array it cannot be changed.
    """
    def __init__(self, quantities: Iterable[Area], /) -> None: ...
    def to(self, unit: AreaUnit) -> NDArray[numpy.float64]:
        """A new numpy array of numbers of this unit. TypeError for a unit of another quantity."""
    @property
    def si(self) -> NDArray[numpy.float64]:
        """The values in SI units: a view that cannot be written to, without a copy."""
    def __len__(self) -> int: ...
    def __iter__(self) -> Iterator[Area]: ...
    def min(self) -> Area:
        """The smallest value. ValueError when there are none."""
    def max(self) -> Area:
        """The largest value. ValueError when there are none."""
    __hash__: ClassVar[None]  # type: ignore[assignment]
    def __neg__(self) -> AreaSeries: ...
    def sum(self) -> Area:
        """All together."""
    def mean(self) -> Area:
        """The arithmetic mean. ValueError when there are no values."""
    def __repr__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    @overload
    def __truediv__(self, other: AreaUnit, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: AreaSeries, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: Area, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: float, /) -> AreaSeries: ...
    @overload
    def __truediv__(self, other: Sequence[float] | NDArray[Any], /) -> AreaSeries: ...
    @overload
    def __getitem__(self, other: int, /) -> Area: ...
    @overload
    def __getitem__(self, other: slice | Sequence[int] | Sequence[bool] | NDArray[Any], /) -> AreaSeries: ...
    @overload  # type: ignore[override]
    def __eq__(self, other: AreaSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __eq__(self, other: Area, /) -> NDArray[numpy.bool_]: ...
    @overload  # type: ignore[override]
    def __ne__(self, other: AreaSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ne__(self, other: Area, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: AreaSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: Area, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: AreaSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: Area, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: AreaSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: Area, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: AreaSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: Area, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __add__(self, other: AreaSeries, /) -> AreaSeries: ...
    @overload
    def __add__(self, other: Area, /) -> AreaSeries: ...
    def __radd__(self, other: Area, /) -> AreaSeries: ...
    @overload
    def __sub__(self, other: AreaSeries, /) -> AreaSeries: ...
    @overload
    def __sub__(self, other: Area, /) -> AreaSeries: ...
    def __rsub__(self, other: Area, /) -> AreaSeries: ...
    @overload
    def __mul__(self, other: float, /) -> AreaSeries: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> AreaSeries: ...
    @overload
    def __rmul__(self, other: float, /) -> AreaSeries: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> AreaSeries: ...

class VolumeSeries:
    """Many values of Volume, counted from 0: numbers times a unit, [10, 20] * gallon or array *
    gallon; or several of Volume. Unlike an array it cannot be changed.
    """
    def __init__(self, quantities: Iterable[Volume], /) -> None: ...
    def to(self, unit: VolumeUnit) -> NDArray[numpy.float64]:
        """A new numpy array of numbers of this unit. TypeError for a unit of another quantity."""
    @property
    def si(self) -> NDArray[numpy.float64]:
        """The values in SI units: a view that cannot be written to, without a copy."""
    def __len__(self) -> int: ...
    def __iter__(self) -> Iterator[Volume]: ...
    def min(self) -> Volume:
        """The smallest value. ValueError when there are none."""
    def max(self) -> Volume:
        """The largest value. ValueError when there are none."""
    __hash__: ClassVar[None]  # type: ignore[assignment]
    def __neg__(self) -> VolumeSeries: ...
    def sum(self) -> Volume:
        """All together."""
    def mean(self) -> Volume:
        """The arithmetic mean. ValueError when there are no values."""
    def __repr__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    @overload
    def __truediv__(self, other: VolumeUnit, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: VolumeSeries, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: Volume, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: float, /) -> VolumeSeries: ...
    @overload
    def __truediv__(self, other: Sequence[float] | NDArray[Any], /) -> VolumeSeries: ...
    @overload
    def __getitem__(self, other: int, /) -> Volume: ...
    @overload
    def __getitem__(self, other: slice | Sequence[int] | Sequence[bool] | NDArray[Any], /) -> VolumeSeries: ...
    @overload  # type: ignore[override]
    def __eq__(self, other: VolumeSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __eq__(self, other: Volume, /) -> NDArray[numpy.bool_]: ...
    @overload  # type: ignore[override]
    def __ne__(self, other: VolumeSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ne__(self, other: Volume, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: VolumeSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: Volume, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: VolumeSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: Volume, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: VolumeSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: Volume, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: VolumeSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: Volume, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __add__(self, other: VolumeSeries, /) -> VolumeSeries: ...
    @overload
    def __add__(self, other: Volume, /) -> VolumeSeries: ...
    def __radd__(self, other: Volume, /) -> VolumeSeries: ...
    @overload
    def __sub__(self, other: VolumeSeries, /) -> VolumeSeries: ...
    @overload
    def __sub__(self, other: Volume, /) -> VolumeSeries: ...
    def __rsub__(self, other: Volume, /) -> VolumeSeries: ...
    @overload
    def __mul__(self, other: float, /) -> VolumeSeries: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> VolumeSeries: ...
    @overload
    def __rmul__(self, other: float, /) -> VolumeSeries: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> VolumeSeries: ...

class TimeSeries:
    """Many values of Time, counted from 0: numbers times a unit, [10, 20] * units.s or array *
    units.s; or several of Time. Unlike an array it cannot be changed.
    """
    def __init__(self, quantities: Iterable[Time], /) -> None: ...
    def to(self, unit: TimeUnit) -> NDArray[numpy.float64]:
        """A new numpy array of numbers of this unit. TypeError for a unit of another quantity."""
    @property
    def si(self) -> NDArray[numpy.float64]:
        """The values in SI units: a view that cannot be written to, without a copy."""
    def __len__(self) -> int: ...
    def __iter__(self) -> Iterator[Time]: ...
    def min(self) -> Time:
        """The smallest value. ValueError when there are none."""
    def max(self) -> Time:
        """The largest value. ValueError when there are none."""
    __hash__: ClassVar[None]  # type: ignore[assignment]
    def __neg__(self) -> TimeSeries: ...
    def sum(self) -> Time:
        """All together."""
    def mean(self) -> Time:
        """The arithmetic mean. ValueError when there are no values."""
    def __repr__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    @overload
    def __truediv__(self, other: TimeUnit, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: TimeSeries, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: Time, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: float, /) -> TimeSeries: ...
    @overload
    def __truediv__(self, other: Sequence[float] | NDArray[Any], /) -> TimeSeries: ...
    @overload
    def __getitem__(self, other: int, /) -> Time: ...
    @overload
    def __getitem__(self, other: slice | Sequence[int] | Sequence[bool] | NDArray[Any], /) -> TimeSeries: ...
    @overload  # type: ignore[override]
    def __eq__(self, other: TimeSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __eq__(self, other: Time, /) -> NDArray[numpy.bool_]: ...
    @overload  # type: ignore[override]
    def __ne__(self, other: TimeSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ne__(self, other: Time, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: TimeSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: Time, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: TimeSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: Time, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: TimeSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: Time, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: TimeSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: Time, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __add__(self, other: TimeSeries, /) -> TimeSeries: ...
    @overload
    def __add__(self, other: Time, /) -> TimeSeries: ...
    def __radd__(self, other: Time, /) -> TimeSeries: ...
    @overload
    def __sub__(self, other: TimeSeries, /) -> TimeSeries: ...
    @overload
    def __sub__(self, other: Time, /) -> TimeSeries: ...
    def __rsub__(self, other: Time, /) -> TimeSeries: ...
    @overload
    def __mul__(self, other: float, /) -> TimeSeries: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> TimeSeries: ...
    @overload
    def __rmul__(self, other: float, /) -> TimeSeries: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> TimeSeries: ...

class VelocitySeries:
    """Many values of Velocity, counted from 0: numbers times a unit, [10, 20] * ft_per_s or array *
    ft_per_s; or several of Velocity. Unlike an array it cannot be changed.
    """
    def __init__(self, quantities: Iterable[Velocity], /) -> None: ...
    def to(self, unit: VelocityUnit) -> NDArray[numpy.float64]:
        """A new numpy array of numbers of this unit. TypeError for a unit of another quantity."""
    @property
    def si(self) -> NDArray[numpy.float64]:
        """The values in SI units: a view that cannot be written to, without a copy."""
    def __len__(self) -> int: ...
    def __iter__(self) -> Iterator[Velocity]: ...
    def min(self) -> Velocity:
        """The smallest value. ValueError when there are none."""
    def max(self) -> Velocity:
        """The largest value. ValueError when there are none."""
    __hash__: ClassVar[None]  # type: ignore[assignment]
    def __neg__(self) -> VelocitySeries: ...
    def sum(self) -> Velocity:
        """All together."""
    def mean(self) -> Velocity:
        """The arithmetic mean. ValueError when there are no values."""
    def __repr__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    @overload
    def __truediv__(self, other: VelocityUnit, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: VelocitySeries, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: Velocity, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: float, /) -> VelocitySeries: ...
    @overload
    def __truediv__(self, other: Sequence[float] | NDArray[Any], /) -> VelocitySeries: ...
    @overload
    def __getitem__(self, other: int, /) -> Velocity: ...
    @overload
    def __getitem__(self, other: slice | Sequence[int] | Sequence[bool] | NDArray[Any], /) -> VelocitySeries: ...
    @overload  # type: ignore[override]
    def __eq__(self, other: VelocitySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __eq__(self, other: Velocity, /) -> NDArray[numpy.bool_]: ...
    @overload  # type: ignore[override]
    def __ne__(self, other: VelocitySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ne__(self, other: Velocity, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: VelocitySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: Velocity, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: VelocitySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: Velocity, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: VelocitySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: Velocity, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: VelocitySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: Velocity, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __add__(self, other: VelocitySeries, /) -> VelocitySeries: ...
    @overload
    def __add__(self, other: Velocity, /) -> VelocitySeries: ...
    def __radd__(self, other: Velocity, /) -> VelocitySeries: ...
    @overload
    def __sub__(self, other: VelocitySeries, /) -> VelocitySeries: ...
    @overload
    def __sub__(self, other: Velocity, /) -> VelocitySeries: ...
    def __rsub__(self, other: Velocity, /) -> VelocitySeries: ...
    @overload
    def __mul__(self, other: float, /) -> VelocitySeries: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> VelocitySeries: ...
    @overload
    def __rmul__(self, other: float, /) -> VelocitySeries: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> VelocitySeries: ...

class PressureSeries:
    """Many values of Pressure, counted from 0: numbers times a unit, [10, 20] * psi or array * psi; or
    several of Pressure. Unlike an array it cannot be changed.
    """
    def __init__(self, quantities: Iterable[Pressure], /) -> None: ...
    def to(self, unit: PressureUnit) -> NDArray[numpy.float64]:
        """A new numpy array of numbers of this unit. TypeError for a unit of another quantity."""
    @property
    def si(self) -> NDArray[numpy.float64]:
        """The values in SI units: a view that cannot be written to, without a copy."""
    def __len__(self) -> int: ...
    def __iter__(self) -> Iterator[Pressure]: ...
    def min(self) -> Pressure:
        """The smallest value. ValueError when there are none."""
    def max(self) -> Pressure:
        """The largest value. ValueError when there are none."""
    __hash__: ClassVar[None]  # type: ignore[assignment]
    def __neg__(self) -> PressureSeries: ...
    def sum(self) -> Pressure:
        """All together."""
    def mean(self) -> Pressure:
        """The arithmetic mean. ValueError when there are no values."""
    def __repr__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    @overload
    def __truediv__(self, other: PressureUnit, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: PressureSeries, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: Pressure, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: float, /) -> PressureSeries: ...
    @overload
    def __truediv__(self, other: Sequence[float] | NDArray[Any], /) -> PressureSeries: ...
    @overload
    def __getitem__(self, other: int, /) -> Pressure: ...
    @overload
    def __getitem__(self, other: slice | Sequence[int] | Sequence[bool] | NDArray[Any], /) -> PressureSeries: ...
    @overload  # type: ignore[override]
    def __eq__(self, other: PressureSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __eq__(self, other: Pressure, /) -> NDArray[numpy.bool_]: ...
    @overload  # type: ignore[override]
    def __ne__(self, other: PressureSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ne__(self, other: Pressure, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: PressureSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: Pressure, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: PressureSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: Pressure, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: PressureSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: Pressure, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: PressureSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: Pressure, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __add__(self, other: PressureSeries, /) -> PressureSeries: ...
    @overload
    def __add__(self, other: Pressure, /) -> PressureSeries: ...
    def __radd__(self, other: Pressure, /) -> PressureSeries: ...
    @overload
    def __sub__(self, other: PressureSeries, /) -> PressureSeries: ...
    @overload
    def __sub__(self, other: Pressure, /) -> PressureSeries: ...
    def __rsub__(self, other: Pressure, /) -> PressureSeries: ...
    @overload
    def __mul__(self, other: float, /) -> PressureSeries: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> PressureSeries: ...
    @overload
    def __rmul__(self, other: float, /) -> PressureSeries: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> PressureSeries: ...

class DensitySeries:
    """Many values of Density, counted from 0: numbers times a unit, [10, 20] * kg_per_m3 or array *
    kg_per_m3; or several of Density. Unlike an array it cannot be changed.
    """
    def __init__(self, quantities: Iterable[Density], /) -> None: ...
    def to(self, unit: DensityUnit) -> NDArray[numpy.float64]:
        """A new numpy array of numbers of this unit. TypeError for a unit of another quantity."""
    @property
    def si(self) -> NDArray[numpy.float64]:
        """The values in SI units: a view that cannot be written to, without a copy."""
    def __len__(self) -> int: ...
    def __iter__(self) -> Iterator[Density]: ...
    def min(self) -> Density:
        """The smallest value. ValueError when there are none."""
    def max(self) -> Density:
        """The largest value. ValueError when there are none."""
    __hash__: ClassVar[None]  # type: ignore[assignment]
    def __neg__(self) -> DensitySeries: ...
    def sum(self) -> Density:
        """All together."""
    def mean(self) -> Density:
        """The arithmetic mean. ValueError when there are no values."""
    def __repr__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    @overload
    def __truediv__(self, other: DensityUnit, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: DensitySeries, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: Density, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: float, /) -> DensitySeries: ...
    @overload
    def __truediv__(self, other: Sequence[float] | NDArray[Any], /) -> DensitySeries: ...
    @overload
    def __getitem__(self, other: int, /) -> Density: ...
    @overload
    def __getitem__(self, other: slice | Sequence[int] | Sequence[bool] | NDArray[Any], /) -> DensitySeries: ...
    @overload  # type: ignore[override]
    def __eq__(self, other: DensitySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __eq__(self, other: Density, /) -> NDArray[numpy.bool_]: ...
    @overload  # type: ignore[override]
    def __ne__(self, other: DensitySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ne__(self, other: Density, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: DensitySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: Density, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: DensitySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: Density, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: DensitySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: Density, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: DensitySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: Density, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __add__(self, other: DensitySeries, /) -> DensitySeries: ...
    @overload
    def __add__(self, other: Density, /) -> DensitySeries: ...
    def __radd__(self, other: Density, /) -> DensitySeries: ...
    @overload
    def __sub__(self, other: DensitySeries, /) -> DensitySeries: ...
    @overload
    def __sub__(self, other: Density, /) -> DensitySeries: ...
    def __rsub__(self, other: Density, /) -> DensitySeries: ...
    @overload
    def __mul__(self, other: float, /) -> DensitySeries: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> DensitySeries: ...
    @overload
    def __rmul__(self, other: float, /) -> DensitySeries: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> DensitySeries: ...

class DynamicViscositySeries:
    """Many values of DynamicViscosity, counted from 0: numbers times a unit, [10, 20] * mPa_s or array
    * mPa_s; or several of DynamicViscosity. Unlike an array it cannot be changed.
    """
    def __init__(self, quantities: Iterable[DynamicViscosity], /) -> None: ...
    def to(self, unit: DynamicViscosityUnit) -> NDArray[numpy.float64]:
        """A new numpy array of numbers of this unit. TypeError for a unit of another quantity."""
    @property
    def si(self) -> NDArray[numpy.float64]:
        """The values in SI units: a view that cannot be written to, without a copy."""
    def __len__(self) -> int: ...
    def __iter__(self) -> Iterator[DynamicViscosity]: ...
    def min(self) -> DynamicViscosity:
        """The smallest value. ValueError when there are none."""
    def max(self) -> DynamicViscosity:
        """The largest value. ValueError when there are none."""
    __hash__: ClassVar[None]  # type: ignore[assignment]
    def __neg__(self) -> DynamicViscositySeries: ...
    def sum(self) -> DynamicViscosity:
        """All together."""
    def mean(self) -> DynamicViscosity:
        """The arithmetic mean. ValueError when there are no values."""
    def __repr__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    @overload
    def __truediv__(self, other: DynamicViscosityUnit, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: DynamicViscositySeries, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: DynamicViscosity, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: float, /) -> DynamicViscositySeries: ...
    @overload
    def __truediv__(self, other: Sequence[float] | NDArray[Any], /) -> DynamicViscositySeries: ...
    @overload
    def __getitem__(self, other: int, /) -> DynamicViscosity: ...
    @overload
    def __getitem__(self, other: slice | Sequence[int] | Sequence[bool] | NDArray[Any], /) -> DynamicViscositySeries: ...
    @overload  # type: ignore[override]
    def __eq__(self, other: DynamicViscositySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __eq__(self, other: DynamicViscosity, /) -> NDArray[numpy.bool_]: ...
    @overload  # type: ignore[override]
    def __ne__(self, other: DynamicViscositySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ne__(self, other: DynamicViscosity, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: DynamicViscositySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: DynamicViscosity, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: DynamicViscositySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: DynamicViscosity, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: DynamicViscositySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: DynamicViscosity, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: DynamicViscositySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: DynamicViscosity, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __add__(self, other: DynamicViscositySeries, /) -> DynamicViscositySeries: ...
    @overload
    def __add__(self, other: DynamicViscosity, /) -> DynamicViscositySeries: ...
    def __radd__(self, other: DynamicViscosity, /) -> DynamicViscositySeries: ...
    @overload
    def __sub__(self, other: DynamicViscositySeries, /) -> DynamicViscositySeries: ...
    @overload
    def __sub__(self, other: DynamicViscosity, /) -> DynamicViscositySeries: ...
    def __rsub__(self, other: DynamicViscosity, /) -> DynamicViscositySeries: ...
    @overload
    def __mul__(self, other: float, /) -> DynamicViscositySeries: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> DynamicViscositySeries: ...
    @overload
    def __rmul__(self, other: float, /) -> DynamicViscositySeries: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> DynamicViscositySeries: ...

class KinematicViscositySeries:
    """Many values of KinematicViscosity, counted from 0: numbers times a unit, [10, 20] * mm2_per_s or
    array * mm2_per_s; or several of KinematicViscosity. Unlike an array it cannot be changed.
    """
    def __init__(self, quantities: Iterable[KinematicViscosity], /) -> None: ...
    def to(self, unit: KinematicViscosityUnit) -> NDArray[numpy.float64]:
        """A new numpy array of numbers of this unit. TypeError for a unit of another quantity."""
    @property
    def si(self) -> NDArray[numpy.float64]:
        """The values in SI units: a view that cannot be written to, without a copy."""
    def __len__(self) -> int: ...
    def __iter__(self) -> Iterator[KinematicViscosity]: ...
    def min(self) -> KinematicViscosity:
        """The smallest value. ValueError when there are none."""
    def max(self) -> KinematicViscosity:
        """The largest value. ValueError when there are none."""
    __hash__: ClassVar[None]  # type: ignore[assignment]
    def __neg__(self) -> KinematicViscositySeries: ...
    def sum(self) -> KinematicViscosity:
        """All together."""
    def mean(self) -> KinematicViscosity:
        """The arithmetic mean. ValueError when there are no values."""
    def __repr__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    @overload
    def __truediv__(self, other: KinematicViscosityUnit, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: KinematicViscositySeries, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: KinematicViscosity, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: float, /) -> KinematicViscositySeries: ...
    @overload
    def __truediv__(self, other: Sequence[float] | NDArray[Any], /) -> KinematicViscositySeries: ...
    @overload
    def __getitem__(self, other: int, /) -> KinematicViscosity: ...
    @overload
    def __getitem__(self, other: slice | Sequence[int] | Sequence[bool] | NDArray[Any], /) -> KinematicViscositySeries: ...
    @overload  # type: ignore[override]
    def __eq__(self, other: KinematicViscositySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __eq__(self, other: KinematicViscosity, /) -> NDArray[numpy.bool_]: ...
    @overload  # type: ignore[override]
    def __ne__(self, other: KinematicViscositySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ne__(self, other: KinematicViscosity, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: KinematicViscositySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: KinematicViscosity, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: KinematicViscositySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: KinematicViscosity, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: KinematicViscositySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: KinematicViscosity, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: KinematicViscositySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: KinematicViscosity, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __add__(self, other: KinematicViscositySeries, /) -> KinematicViscositySeries: ...
    @overload
    def __add__(self, other: KinematicViscosity, /) -> KinematicViscositySeries: ...
    def __radd__(self, other: KinematicViscosity, /) -> KinematicViscositySeries: ...
    @overload
    def __sub__(self, other: KinematicViscositySeries, /) -> KinematicViscositySeries: ...
    @overload
    def __sub__(self, other: KinematicViscosity, /) -> KinematicViscositySeries: ...
    def __rsub__(self, other: KinematicViscosity, /) -> KinematicViscositySeries: ...
    @overload
    def __mul__(self, other: float, /) -> KinematicViscositySeries: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> KinematicViscositySeries: ...
    @overload
    def __rmul__(self, other: float, /) -> KinematicViscositySeries: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> KinematicViscositySeries: ...

class TemperatureSeries:
    """Many values of Temperature, counted from 0: numbers times a unit, [10, 20] * degC or array *
    degC; or several of Temperature. Unlike an array it cannot be changed.
    """
    def __init__(self, quantities: Iterable[Temperature], /) -> None: ...
    def to(self, unit: TemperatureUnit) -> NDArray[numpy.float64]:
        """A new numpy array of numbers of this unit. TypeError for a unit of another quantity."""
    @property
    def si(self) -> NDArray[numpy.float64]:
        """The values in SI units: a view that cannot be written to, without a copy."""
    def __len__(self) -> int: ...
    def __iter__(self) -> Iterator[Temperature]: ...
    def min(self) -> Temperature:
        """The smallest value. ValueError when there are none."""
    def max(self) -> Temperature:
        """The largest value. ValueError when there are none."""
    __hash__: ClassVar[None]  # type: ignore[assignment]
    def __repr__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    def __truediv__(self, other: TemperatureUnit, /) -> NDArray[numpy.float64]: ...
    @overload
    def __getitem__(self, other: int, /) -> Temperature: ...
    @overload
    def __getitem__(self, other: slice | Sequence[int] | Sequence[bool] | NDArray[Any], /) -> TemperatureSeries: ...
    @overload  # type: ignore[override]
    def __eq__(self, other: TemperatureSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __eq__(self, other: Temperature, /) -> NDArray[numpy.bool_]: ...
    @overload  # type: ignore[override]
    def __ne__(self, other: TemperatureSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ne__(self, other: Temperature, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: TemperatureSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: Temperature, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: TemperatureSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: Temperature, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: TemperatureSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: Temperature, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: TemperatureSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: Temperature, /) -> NDArray[numpy.bool_]: ...

class FlowSeries:
    """Many values of Flow, counted from 0: numbers times a unit, [10, 20] * gpm or array * gpm; or
    several of Flow. Unlike an array it cannot be changed.
    """
    def __init__(self, quantities: Iterable[Flow], /) -> None: ...
    def to(self, unit: FlowUnit) -> NDArray[numpy.float64]:
        """A new numpy array of numbers of this unit. TypeError for a unit of another quantity."""
    @property
    def si(self) -> NDArray[numpy.float64]:
        """The values in SI units: a view that cannot be written to, without a copy."""
    def __len__(self) -> int: ...
    def __iter__(self) -> Iterator[Flow]: ...
    def min(self) -> Flow:
        """The smallest value. ValueError when there are none."""
    def max(self) -> Flow:
        """The largest value. ValueError when there are none."""
    __hash__: ClassVar[None]  # type: ignore[assignment]
    def __neg__(self) -> FlowSeries: ...
    def sum(self) -> Flow:
        """All together."""
    def mean(self) -> Flow:
        """The arithmetic mean. ValueError when there are no values."""
    def __repr__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    @overload
    def __truediv__(self, other: FlowUnit, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: FlowSeries, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: Flow, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: float, /) -> FlowSeries: ...
    @overload
    def __truediv__(self, other: Sequence[float] | NDArray[Any], /) -> FlowSeries: ...
    @overload
    def __getitem__(self, other: int, /) -> Flow: ...
    @overload
    def __getitem__(self, other: slice | Sequence[int] | Sequence[bool] | NDArray[Any], /) -> FlowSeries: ...
    @overload  # type: ignore[override]
    def __eq__(self, other: FlowSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __eq__(self, other: Flow, /) -> NDArray[numpy.bool_]: ...
    @overload  # type: ignore[override]
    def __ne__(self, other: FlowSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ne__(self, other: Flow, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: FlowSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: Flow, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: FlowSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: Flow, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: FlowSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: Flow, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: FlowSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: Flow, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __add__(self, other: FlowSeries, /) -> FlowSeries: ...
    @overload
    def __add__(self, other: Flow, /) -> FlowSeries: ...
    def __radd__(self, other: Flow, /) -> FlowSeries: ...
    @overload
    def __sub__(self, other: FlowSeries, /) -> FlowSeries: ...
    @overload
    def __sub__(self, other: Flow, /) -> FlowSeries: ...
    def __rsub__(self, other: Flow, /) -> FlowSeries: ...
    @overload
    def __mul__(self, other: float, /) -> FlowSeries: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> FlowSeries: ...
    @overload
    def __rmul__(self, other: float, /) -> FlowSeries: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> FlowSeries: ...

class RotationalSpeedSeries:
    """Many values of RotationalSpeed, counted from 0: numbers times a unit, [10, 20] * rpm or array *
    rpm; or several of RotationalSpeed. Unlike an array it cannot be changed.
    """
    def __init__(self, quantities: Iterable[RotationalSpeed], /) -> None: ...
    def to(self, unit: RotationalSpeedUnit) -> NDArray[numpy.float64]:
        """A new numpy array of numbers of this unit. TypeError for a unit of another quantity."""
    @property
    def si(self) -> NDArray[numpy.float64]:
        """The values in SI units: a view that cannot be written to, without a copy."""
    def __len__(self) -> int: ...
    def __iter__(self) -> Iterator[RotationalSpeed]: ...
    def min(self) -> RotationalSpeed:
        """The smallest value. ValueError when there are none."""
    def max(self) -> RotationalSpeed:
        """The largest value. ValueError when there are none."""
    __hash__: ClassVar[None]  # type: ignore[assignment]
    def __neg__(self) -> RotationalSpeedSeries: ...
    def sum(self) -> RotationalSpeed:
        """All together."""
    def mean(self) -> RotationalSpeed:
        """The arithmetic mean. ValueError when there are no values."""
    def __repr__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    @overload
    def __truediv__(self, other: RotationalSpeedUnit, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: RotationalSpeedSeries, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: RotationalSpeed, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: float, /) -> RotationalSpeedSeries: ...
    @overload
    def __truediv__(self, other: Sequence[float] | NDArray[Any], /) -> RotationalSpeedSeries: ...
    @overload
    def __getitem__(self, other: int, /) -> RotationalSpeed: ...
    @overload
    def __getitem__(self, other: slice | Sequence[int] | Sequence[bool] | NDArray[Any], /) -> RotationalSpeedSeries: ...
    @overload  # type: ignore[override]
    def __eq__(self, other: RotationalSpeedSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __eq__(self, other: RotationalSpeed, /) -> NDArray[numpy.bool_]: ...
    @overload  # type: ignore[override]
    def __ne__(self, other: RotationalSpeedSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ne__(self, other: RotationalSpeed, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: RotationalSpeedSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: RotationalSpeed, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: RotationalSpeedSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: RotationalSpeed, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: RotationalSpeedSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: RotationalSpeed, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: RotationalSpeedSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: RotationalSpeed, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __add__(self, other: RotationalSpeedSeries, /) -> RotationalSpeedSeries: ...
    @overload
    def __add__(self, other: RotationalSpeed, /) -> RotationalSpeedSeries: ...
    def __radd__(self, other: RotationalSpeed, /) -> RotationalSpeedSeries: ...
    @overload
    def __sub__(self, other: RotationalSpeedSeries, /) -> RotationalSpeedSeries: ...
    @overload
    def __sub__(self, other: RotationalSpeed, /) -> RotationalSpeedSeries: ...
    def __rsub__(self, other: RotationalSpeed, /) -> RotationalSpeedSeries: ...
    @overload
    def __mul__(self, other: float, /) -> RotationalSpeedSeries: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> RotationalSpeedSeries: ...
    @overload
    def __rmul__(self, other: float, /) -> RotationalSpeedSeries: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> RotationalSpeedSeries: ...

class PowerSeries:
    """Many values of Power, counted from 0: numbers times a unit, [10, 20] * hp or array * hp; or
    several of Power. Unlike an array it cannot be changed.
    """
    def __init__(self, quantities: Iterable[Power], /) -> None: ...
    def to(self, unit: PowerUnit) -> NDArray[numpy.float64]:
        """A new numpy array of numbers of this unit. TypeError for a unit of another quantity."""
    @property
    def si(self) -> NDArray[numpy.float64]:
        """The values in SI units: a view that cannot be written to, without a copy."""
    def __len__(self) -> int: ...
    def __iter__(self) -> Iterator[Power]: ...
    def min(self) -> Power:
        """The smallest value. ValueError when there are none."""
    def max(self) -> Power:
        """The largest value. ValueError when there are none."""
    __hash__: ClassVar[None]  # type: ignore[assignment]
    def __neg__(self) -> PowerSeries: ...
    def sum(self) -> Power:
        """All together."""
    def mean(self) -> Power:
        """The arithmetic mean. ValueError when there are no values."""
    def __repr__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    @overload
    def __truediv__(self, other: PowerUnit, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: PowerSeries, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: Power, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: float, /) -> PowerSeries: ...
    @overload
    def __truediv__(self, other: Sequence[float] | NDArray[Any], /) -> PowerSeries: ...
    @overload
    def __getitem__(self, other: int, /) -> Power: ...
    @overload
    def __getitem__(self, other: slice | Sequence[int] | Sequence[bool] | NDArray[Any], /) -> PowerSeries: ...
    @overload  # type: ignore[override]
    def __eq__(self, other: PowerSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __eq__(self, other: Power, /) -> NDArray[numpy.bool_]: ...
    @overload  # type: ignore[override]
    def __ne__(self, other: PowerSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ne__(self, other: Power, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: PowerSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: Power, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: PowerSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: Power, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: PowerSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: Power, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: PowerSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: Power, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __add__(self, other: PowerSeries, /) -> PowerSeries: ...
    @overload
    def __add__(self, other: Power, /) -> PowerSeries: ...
    def __radd__(self, other: Power, /) -> PowerSeries: ...
    @overload
    def __sub__(self, other: PowerSeries, /) -> PowerSeries: ...
    @overload
    def __sub__(self, other: Power, /) -> PowerSeries: ...
    def __rsub__(self, other: Power, /) -> PowerSeries: ...
    @overload
    def __mul__(self, other: float, /) -> PowerSeries: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> PowerSeries: ...
    @overload
    def __rmul__(self, other: float, /) -> PowerSeries: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> PowerSeries: ...

class EnergySeries:
    """Many values of Energy, counted from 0: numbers times a unit, [10, 20] * kWh or array * kWh; or
    several of Energy. Unlike an array it cannot be changed.
    """
    def __init__(self, quantities: Iterable[Energy], /) -> None: ...
    def to(self, unit: EnergyUnit) -> NDArray[numpy.float64]:
        """A new numpy array of numbers of this unit. TypeError for a unit of another quantity."""
    @property
    def si(self) -> NDArray[numpy.float64]:
        """The values in SI units: a view that cannot be written to, without a copy."""
    def __len__(self) -> int: ...
    def __iter__(self) -> Iterator[Energy]: ...
    def min(self) -> Energy:
        """The smallest value. ValueError when there are none."""
    def max(self) -> Energy:
        """The largest value. ValueError when there are none."""
    __hash__: ClassVar[None]  # type: ignore[assignment]
    def __neg__(self) -> EnergySeries: ...
    def sum(self) -> Energy:
        """All together."""
    def mean(self) -> Energy:
        """The arithmetic mean. ValueError when there are no values."""
    def __repr__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    @overload
    def __truediv__(self, other: EnergyUnit, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: EnergySeries, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: Energy, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: float, /) -> EnergySeries: ...
    @overload
    def __truediv__(self, other: Sequence[float] | NDArray[Any], /) -> EnergySeries: ...
    @overload
    def __getitem__(self, other: int, /) -> Energy: ...
    @overload
    def __getitem__(self, other: slice | Sequence[int] | Sequence[bool] | NDArray[Any], /) -> EnergySeries: ...
    @overload  # type: ignore[override]
    def __eq__(self, other: EnergySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __eq__(self, other: Energy, /) -> NDArray[numpy.bool_]: ...
    @overload  # type: ignore[override]
    def __ne__(self, other: EnergySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ne__(self, other: Energy, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: EnergySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: Energy, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: EnergySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: Energy, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: EnergySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: Energy, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: EnergySeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: Energy, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __add__(self, other: EnergySeries, /) -> EnergySeries: ...
    @overload
    def __add__(self, other: Energy, /) -> EnergySeries: ...
    def __radd__(self, other: Energy, /) -> EnergySeries: ...
    @overload
    def __sub__(self, other: EnergySeries, /) -> EnergySeries: ...
    @overload
    def __sub__(self, other: Energy, /) -> EnergySeries: ...
    def __rsub__(self, other: Energy, /) -> EnergySeries: ...
    @overload
    def __mul__(self, other: float, /) -> EnergySeries: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> EnergySeries: ...
    @overload
    def __rmul__(self, other: float, /) -> EnergySeries: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> EnergySeries: ...

class AngleSeries:
    """Many values of Angle, counted from 0: numbers times a unit, [10, 20] * degree or array * degree;
    or several of Angle. Unlike an array it cannot be changed.
    """
    def __init__(self, quantities: Iterable[Angle], /) -> None: ...
    def to(self, unit: AngleUnit) -> NDArray[numpy.float64]:
        """A new numpy array of numbers of this unit. TypeError for a unit of another quantity."""
    @property
    def si(self) -> NDArray[numpy.float64]:
        """The values in SI units: a view that cannot be written to, without a copy."""
    def __len__(self) -> int: ...
    def __iter__(self) -> Iterator[Angle]: ...
    def min(self) -> Angle:
        """The smallest value. ValueError when there are none."""
    def max(self) -> Angle:
        """The largest value. ValueError when there are none."""
    __hash__: ClassVar[None]  # type: ignore[assignment]
    def __neg__(self) -> AngleSeries: ...
    def sum(self) -> Angle:
        """All together."""
    def mean(self) -> Angle:
        """The arithmetic mean. ValueError when there are no values."""
    def __repr__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    @overload
    def __truediv__(self, other: AngleUnit, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: AngleSeries, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: Angle, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: float, /) -> AngleSeries: ...
    @overload
    def __truediv__(self, other: Sequence[float] | NDArray[Any], /) -> AngleSeries: ...
    @overload
    def __getitem__(self, other: int, /) -> Angle: ...
    @overload
    def __getitem__(self, other: slice | Sequence[int] | Sequence[bool] | NDArray[Any], /) -> AngleSeries: ...
    @overload  # type: ignore[override]
    def __eq__(self, other: AngleSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __eq__(self, other: Angle, /) -> NDArray[numpy.bool_]: ...
    @overload  # type: ignore[override]
    def __ne__(self, other: AngleSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ne__(self, other: Angle, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: AngleSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: Angle, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: AngleSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: Angle, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: AngleSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: Angle, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: AngleSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: Angle, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __add__(self, other: AngleSeries, /) -> AngleSeries: ...
    @overload
    def __add__(self, other: Angle, /) -> AngleSeries: ...
    def __radd__(self, other: Angle, /) -> AngleSeries: ...
    @overload
    def __sub__(self, other: AngleSeries, /) -> AngleSeries: ...
    @overload
    def __sub__(self, other: Angle, /) -> AngleSeries: ...
    def __rsub__(self, other: Angle, /) -> AngleSeries: ...
    @overload
    def __mul__(self, other: float, /) -> AngleSeries: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> AngleSeries: ...
    @overload
    def __rmul__(self, other: float, /) -> AngleSeries: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> AngleSeries: ...

class IrradianceSeries:
    """Many values of Irradiance, counted from 0: numbers times a unit, [10, 20] * MJ_per_m2_day or
    array * MJ_per_m2_day; or several of Irradiance. Unlike an array it cannot be changed.
    """
    def __init__(self, quantities: Iterable[Irradiance], /) -> None: ...
    def to(self, unit: IrradianceUnit) -> NDArray[numpy.float64]:
        """A new numpy array of numbers of this unit. TypeError for a unit of another quantity."""
    @property
    def si(self) -> NDArray[numpy.float64]:
        """The values in SI units: a view that cannot be written to, without a copy."""
    def __len__(self) -> int: ...
    def __iter__(self) -> Iterator[Irradiance]: ...
    def min(self) -> Irradiance:
        """The smallest value. ValueError when there are none."""
    def max(self) -> Irradiance:
        """The largest value. ValueError when there are none."""
    __hash__: ClassVar[None]  # type: ignore[assignment]
    def __neg__(self) -> IrradianceSeries: ...
    def sum(self) -> Irradiance:
        """All together."""
    def mean(self) -> Irradiance:
        """The arithmetic mean. ValueError when there are no values."""
    def __repr__(self) -> str: ...
    __array_ufunc__: ClassVar[None]
    @overload
    def __truediv__(self, other: IrradianceUnit, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: IrradianceSeries, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: Irradiance, /) -> NDArray[numpy.float64]: ...
    @overload
    def __truediv__(self, other: float, /) -> IrradianceSeries: ...
    @overload
    def __truediv__(self, other: Sequence[float] | NDArray[Any], /) -> IrradianceSeries: ...
    @overload
    def __getitem__(self, other: int, /) -> Irradiance: ...
    @overload
    def __getitem__(self, other: slice | Sequence[int] | Sequence[bool] | NDArray[Any], /) -> IrradianceSeries: ...
    @overload  # type: ignore[override]
    def __eq__(self, other: IrradianceSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __eq__(self, other: Irradiance, /) -> NDArray[numpy.bool_]: ...
    @overload  # type: ignore[override]
    def __ne__(self, other: IrradianceSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ne__(self, other: Irradiance, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: IrradianceSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __lt__(self, other: Irradiance, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: IrradianceSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __le__(self, other: Irradiance, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: IrradianceSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __gt__(self, other: Irradiance, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: IrradianceSeries, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __ge__(self, other: Irradiance, /) -> NDArray[numpy.bool_]: ...
    @overload
    def __add__(self, other: IrradianceSeries, /) -> IrradianceSeries: ...
    @overload
    def __add__(self, other: Irradiance, /) -> IrradianceSeries: ...
    def __radd__(self, other: Irradiance, /) -> IrradianceSeries: ...
    @overload
    def __sub__(self, other: IrradianceSeries, /) -> IrradianceSeries: ...
    @overload
    def __sub__(self, other: Irradiance, /) -> IrradianceSeries: ...
    def __rsub__(self, other: Irradiance, /) -> IrradianceSeries: ...
    @overload
    def __mul__(self, other: float, /) -> IrradianceSeries: ...
    @overload
    def __mul__(self, other: Sequence[float] | NDArray[Any], /) -> IrradianceSeries: ...
    @overload
    def __rmul__(self, other: float, /) -> IrradianceSeries: ...
    @overload
    def __rmul__(self, other: Sequence[float] | NDArray[Any], /) -> IrradianceSeries: ...

class UnitSet:
    """The units that reports of a system print."""
    @property
    def length(self) -> LengthUnit:
        """Of lines."""
    @property
    def bore(self) -> LengthUnit:
        """Of pipes."""
    @property
    def pressure(self) -> PressureUnit:
        """Gauge."""
    @property
    def flow(self) -> FlowUnit:
        """Of lines and sprinklers."""
    @property
    def small_flow(self) -> FlowUnit:
        """For outlets under one `flow`."""
    @property
    def velocity(self) -> VelocityUnit:
        """Of water in a pipe."""
    @property
    def temperature(self) -> TemperatureUnit:
        """Of water and pipe."""
    @property
    def volume(self) -> VolumeUnit:
        """Of a bucket."""
    @property
    def power(self) -> PowerUnit:
        """Of a pump's shaft."""
    @property
    def bucket(self) -> float:
        """That is used with a stopwatch, in units of volume."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Water:
    """The water as it is described; what is not given follows from 20 degC."""
    def __init__(self, *, temperature: Temperature | None = None, density: Density | None = None, kinematic_viscosity: KinematicViscosity | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def temperature(self) -> Temperature | None:
        """0 to 100 degC; default 20 degC."""
    @property
    def density(self) -> Density | None:
        """Instead of that of the temperature."""
    @property
    def kinematic_viscosity(self) -> KinematicViscosity | None:
        """Instead of that of the temperature."""
    def replace(self, **changes: Any) -> Water:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class WaterProperties:
    """The water as it is calculated with."""
    @property
    def density(self) -> Density:
        """A Density."""
    @property
    def kinematic_viscosity(self) -> KinematicViscosity:
        """A KinematicViscosity."""
    @property
    def vapour_pressure(self) -> Pressure:
        """Absolute."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Pipe:
    """A bore and exactly one wall."""
    def __init__(self, *, name: str = '', inside_diameter: Length = ..., hazen_williams: float | None = None, roughness: Length | None = None, darcy_factor: float | None = None, pressure_rating: Pressure | None = None, kind: str = '') -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def name(self) -> str:
        """For reports."""
    @property
    def inside_diameter(self) -> Length:
        """0.1 mm to 10 m."""
    @property
    def hazen_williams(self) -> float | None:
        """Coefficient C, 10 to 200 [-]."""
    @property
    def roughness(self) -> Length | None:
        """Darcy-Weisbach, equivalent sand grain; 0 is smooth."""
    @property
    def darcy_factor(self) -> float | None:
        """Darcy-Weisbach with this constant factor f [-]."""
    @property
    def pressure_rating(self) -> Pressure | None:
        """At 73 degF."""
    @property
    def kind(self) -> str:
        """One of pipe_kinds(), for its derating when warm; empty: not derated."""
    def replace(self, **changes: Any) -> Pipe:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class NominalSize:
    """What a standard says of one size of one kind of pipe."""
    def __eq__(self, other: object) -> bool: ...
    __hash__: ClassVar[None]  # type: ignore[assignment]
    @property
    def size(self) -> str:
        """1-1/4 in"""
    @property
    def kind(self) -> str:
        """PVC SDR 26, also when asked as Class 160."""
    @property
    def outside_diameter(self) -> Length | None:
        """Average; None where the inside is controlled."""
    @property
    def minimum_wall(self) -> Length:
        """A Length."""
    @property
    def inside_diameter(self) -> Length:
        """Average."""
    @property
    def hazen_williams(self) -> float:
        """Of new pipe [-]."""
    @property
    def pressure_rating(self) -> Pressure | None:
        """Water at 73 degF; None where not known."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Compensating:
    """The pressures between which an outlet holds its flow."""
    def __init__(self, *, low: Pressure = ..., high: Pressure = ...) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def low(self) -> Pressure:
        """A Pressure."""
    @property
    def high(self) -> Pressure:
        """A Pressure."""
    def replace(self, **changes: Any) -> Compensating:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class RatedPoint:
    """One line of a catalogue."""
    def __init__(self, *, pressure: Pressure = ..., flow: Flow = ...) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def pressure(self) -> Pressure:
        """At the device."""
    @property
    def flow(self) -> Flow:
        """A Flow."""
    def replace(self, **changes: Any) -> RatedPoint:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class Outlet:
    """A kind of outlet, rated in one way: a flow at a pressure, a nozzle, or points."""
    def __init__(self, *, name: str = '', flow: Flow = ..., at: Pressure = ..., exponent: float | None = None, rated: Pressure | None = None, minimum: Pressure | None = None, maximum: Pressure | None = None, compensating: Compensating | None = None, nozzle: Length | None = None, discharge_coefficient: float | None = None, points: Iterable[RatedPoint] = (), body_bore: Length | None = None, regulator: Pressure | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def name(self) -> str:
        """For reports."""
    @property
    def flow(self) -> Flow:
        """This flow ..."""
    @property
    def at(self) -> Pressure:
        """... at this pressure, with ..."""
    @property
    def exponent(self) -> float | None:
        """... this flow exponent [-], 0 to 1.5, default 0.5."""
    @property
    def rated(self) -> Pressure | None:
        """It is judged against this pressure, default `at`."""
    @property
    def minimum(self) -> Pressure | None:
        """It does not turn or form its pattern below."""
    @property
    def maximum(self) -> Pressure | None:
        """It mists above."""
    @property
    def compensating(self) -> Compensating | None:
        """Beside `flow`; then `rated` is its low."""
    @property
    def nozzle(self) -> Length | None:
        """Instead of `flow`: its bore; needs `rated`."""
    @property
    def discharge_coefficient(self) -> float | None:
        """Cd of the nozzle [-], usually 0.95 to 0.98."""
    @property
    def points(self) -> tuple[RatedPoint, ...]:
        """Instead of `flow`: two or more; needs `rated`."""
    @property
    def body_bore(self) -> Length | None:
        """What is left when the nozzle is lost."""
    @property
    def regulator(self) -> Pressure | None:
        """Below it: holds the device at this pressure at most."""
    def replace(self, **changes: Any) -> Outlet:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...
    def rated_pressure(self) -> Pressure:
        """The pressure it is judged against."""

class PointsFit:
    """The power law that meets a catalogue's points best."""
    @property
    def flow(self) -> Flow:
        """At ..."""
    @property
    def at(self) -> Pressure:
        """... the first point's pressure."""
    @property
    def exponent(self) -> float:
        """[-]"""
    @property
    def largest_misfit(self) -> float:
        """Of the catalogue's flow, over all points [-]."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Riser:
    """How high an outlet stands and, with bore and wall, what that costs."""
    def __init__(self, *, height: Length = ..., inside_diameter: Length | None = None, hazen_williams: float | None = None, roughness: Length | None = None, darcy_factor: float | None = None, loss_coefficient: float | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def height(self) -> Length:
        """Of the outlet above the line."""
    @property
    def inside_diameter(self) -> Length | None:
        """With exactly one of the three walls of Pipe."""
    @property
    def hazen_williams(self) -> float | None:
        """Coefficient C [-]."""
    @property
    def roughness(self) -> Length | None:
        """Darcy-Weisbach; 0 is smooth."""
    @property
    def darcy_factor(self) -> float | None:
        """Constant Darcy-Weisbach factor f [-]."""
    @property
    def loss_coefficient(self) -> float | None:
        """K on the riser's velocity head [-], default 0."""
    def replace(self, **changes: Any) -> Riser:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...
    def pipe(self) -> Pipe | None:
        """The riser as a pipe; None where no bore is known."""

class Site:
    """The place, and the units its people read."""
    def __init__(self, *, name: str = '', altitude: Length | None = None, units: UnitSystem | str | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def name(self) -> str:
        """For reports."""
    @property
    def altitude(self) -> Length | None:
        """-500 to 6000 m, default sea level."""
    @property
    def units(self) -> UnitSystem | None:
        """In which reports are written, default "si"."""
    def replace(self, **changes: Any) -> Site:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class PumpPoint:
    """One point of a pump's catalogue; the head is of the water pumped."""
    def __init__(self, *, flow: Flow = ..., head: Length = ...) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def flow(self) -> Flow:
        """A Flow."""
    @property
    def head(self) -> Length:
        """A Length."""
    def replace(self, **changes: Any) -> PumpPoint:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class EfficiencyPoint:
    """One point of a pump's efficiency."""
    def __init__(self, *, flow: Flow = ..., efficiency: float = 0.0) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def flow(self) -> Flow:
        """A Flow."""
    @property
    def efficiency(self) -> float:
        """Water power over shaft power, above 0 to 1 [-]."""
    def replace(self, **changes: Any) -> EfficiencyPoint:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class Pump:
    """A pump and the engine that turns it."""
    def __init__(self, *, points: Iterable[PumpPoint] = (), shape: CurveShape | str | None = None, curve_speed: RotationalSpeed | None = None, speed: RotationalSpeed | None = None, top_speed: RotationalSpeed | None = None, least_flow: Flow | None = None, most_flow: Flow | None = None, npsh_required: Iterable[PumpPoint] = (), efficiency: float | None = None, efficiencies: Iterable[EfficiencyPoint] = (), power: Power | None = None, droop: float | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def points(self) -> tuple[PumpPoint, ...]:
        """Two or more, flow rising and head falling."""
    @property
    def shape(self) -> CurveShape | None:
        """Between the points, default "through points"."""
    @property
    def curve_speed(self) -> RotationalSpeed | None:
        """At which the points were taken."""
    @property
    def speed(self) -> RotationalSpeed | None:
        """At which it runs, default curve_speed."""
    @property
    def top_speed(self) -> RotationalSpeed | None:
        """Of the engine."""
    @property
    def least_flow(self) -> Flow | None:
        """Usable, at curve_speed."""
    @property
    def most_flow(self) -> Flow | None:
        """Usable, at curve_speed."""
    @property
    def npsh_required(self) -> tuple[PumpPoint, ...]:
        """At curve_speed: two or more, never falling."""
    @property
    def efficiency(self) -> float | None:
        """In the whole usable range [-], or ..."""
    @property
    def efficiencies(self) -> tuple[EfficiencyPoint, ...]:
        """... by flow at curve_speed: two or more."""
    @property
    def power(self) -> Power | None:
        """The most that the engine gives to the shaft."""
    @property
    def droop(self) -> float | None:
        """Share of speed lost at that power [-], default 0."""
    def replace(self, **changes: Any) -> Pump:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class PumpFit:
    """How a pump's curve meets its points."""
    @property
    def head_at_rest(self) -> Length:
        """Without flow, at curve_speed."""
    @property
    def largest_misfit(self) -> Length:
        """Of the points' heads; 0 where it goes through them."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Suction:
    """The way of the water into the pump."""
    def __init__(self, *, lift: Length = ..., pipe: Pipe | None = None, length: Length | None = None, loss_coefficient: float | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def lift(self) -> Length:
        """Pump above the water, -30 m to 10 m."""
    @property
    def pipe(self) -> Pipe | None:
        """None: no loss."""
    @property
    def length(self) -> Length | None:
        """Of the pipe."""
    @property
    def loss_coefficient(self) -> float | None:
        """K on the pipe's velocity head [-], default 0."""
    def replace(self, **changes: Any) -> Suction:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class Filter:
    """A filter or strainer: it takes this pressure at this flow."""
    def __init__(self, *, loss: Pressure = ..., at: Flow = ...) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def loss(self) -> Pressure:
        """A Pressure."""
    @property
    def at(self) -> Flow:
        """A Flow."""
    def replace(self, **changes: Any) -> Filter:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class Gauge:
    """The pressure gauge at the supply."""
    def __init__(self, *, height: Length | None = None, range: Pressure | None = None, after_filter: bool | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def height(self) -> Length | None:
        """Above the supply's elevation, default 0."""
    @property
    def range(self) -> Pressure | None:
        """The end of its scale."""
    @property
    def after_filter(self) -> bool | None:
        """Default before it."""
    def replace(self, **changes: Any) -> Gauge:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class Tank:
    """A tank, a drum or a pond that feeds by its own height."""
    def __init__(self, *, level: Length = ..., diameter: Length | None = None, area: Area | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def level(self) -> Length:
        """Of the water above the outlet."""
    @property
    def diameter(self) -> Length | None:
        """Of a round one, or ..."""
    @property
    def area(self) -> Area | None:
        """... of the water's surface."""
    def replace(self, **changes: Any) -> Tank:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...
    def surface(self) -> Area | None:
        """Area of the water's surface; None: not known."""

class Hydrant:
    """A town main or a shared hydrant, known by two readings."""
    def __init__(self, *, pressure_at_rest: Pressure = ..., residual_pressure: Pressure = ..., flow: Flow = ...) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def pressure_at_rest(self) -> Pressure:
        """Nothing flows."""
    @property
    def residual_pressure(self) -> Pressure:
        """... while ..."""
    @property
    def flow(self) -> Flow:
        """... this flow runs."""
    def replace(self, **changes: Any) -> Hydrant:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class Supply:
    """What feeds the lines: one of a held pressure, a pump, a tank, a hydrant."""
    def __init__(self, *, pressure: Pressure | None = None, pump: Pump | None = None, tank: Tank | None = None, hydrant: Hydrant | None = None, second_pump: Pump | None = None, arrangement: PumpArrangement | str | None = None, suction: Suction | None = None, filter: Filter | None = None, gauge: Gauge | None = None, elevation: Length | None = None, name: str = '') -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def pressure(self) -> Pressure | None:
        """Held, gauge, before the filter; or ..."""
    @property
    def pump(self) -> Pump | None:
        """... this, or ..."""
    @property
    def tank(self) -> Tank | None:
        """... this, or ..."""
    @property
    def hydrant(self) -> Hydrant | None:
        """... this."""
    @property
    def second_pump(self) -> Pump | None:
        """Beside the first."""
    @property
    def arrangement(self) -> PumpArrangement | None:
        """Of the two, default "parallel"."""
    @property
    def suction(self) -> Suction | None:
        """Of the pumps, both together."""
    @property
    def filter(self) -> Filter | None:
        """Between the source and the lines."""
    @property
    def gauge(self) -> Gauge | None:
        """The one that people read."""
    @property
    def elevation(self) -> Length | None:
        """Of the source, default 0."""
    @property
    def name(self) -> str:
        """Of a further one, for fed_by; the first has none."""
    def replace(self, **changes: Any) -> Supply:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class PumpDuty:
    """What one pump does."""
    @property
    def flow(self) -> Flow:
        """Through it."""
    @property
    def head(self) -> Length:
        """That it gives."""
    @property
    def speed(self) -> RotationalSpeed | None:
        """Droop taken off; None: not known."""
    @property
    def range(self) -> PumpRange:
        """Where the flow lies in the usable range."""
    @property
    def least_flow(self) -> Flow | None:
        """Usable, at this speed."""
    @property
    def most_flow(self) -> Flow | None:
        """Usable, at this speed."""
    @property
    def water_power(self) -> Power:
        """Given to the water."""
    @property
    def efficiency(self) -> float | None:
        """Inside the usable range only [-]."""
    @property
    def shaft_power(self) -> Power | None:
        """Inside the usable range only."""
    @property
    def npsh_required(self) -> Length | None:
        """At this flow and speed."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class OperatingPoint:
    """The whole supply at one flow."""
    @property
    def flow(self) -> Flow:
        """Out of the supply; below 0: into it."""
    @property
    def pressure(self) -> Pressure:
        """At the start of the lines that it feeds, gauge."""
    @property
    def source_pressure(self) -> Pressure:
        """Before the filter: at the outlet of the pump or the tank, gauge."""
    @property
    def gauge_reading(self) -> Pressure | None:
        """None: there is no gauge."""
    @property
    def filter_loss(self) -> Pressure:
        """That the filter takes."""
    @property
    def suction_loss(self) -> Length:
        """Friction and fittings."""
    @property
    def npsh_available(self) -> Length | None:
        """Of a pump, of the first in series; None: there is no pump."""
    @property
    def pumps(self) -> list[PumpDuty]:
        """None, one or two."""
    @property
    def held_shut(self) -> bool:
        """Other supplies hold its check valve shut: the pressure is theirs."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class PumpReading:
    """What the gauge showed while this flow ran."""
    def __init__(self, *, gauge: Pressure = ..., flow: Flow = ..., gauge_uncertainty: Pressure | None = None, flow_uncertainty: Flow | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def gauge(self) -> Pressure:
        """A Pressure."""
    @property
    def flow(self) -> Flow:
        """0: the valve was closed."""
    @property
    def gauge_uncertainty(self) -> Pressure | None:
        """Standard; None: 3 % of the gauge's range over the square root of 3."""
    @property
    def flow_uncertainty(self) -> Flow | None:
        """Standard; None: 3 % of the flow."""
    def replace(self, **changes: Any) -> PumpReading:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class HeadEstimate:
    """A head and its standard uncertainty."""
    @property
    def head(self) -> Length:
        """A Length."""
    @property
    def uncertainty(self) -> Length:
        """A Length."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class PumpFromReadings:
    """The curve that readings make."""
    @property
    def pump(self) -> Pump:
        """Its points are the readings, its curve_speed the speed; ready for a Supply."""
    @property
    def readings(self) -> list[PumpReading]:
        """In the order of the flow, with the uncertainties that were used."""
    @property
    def head_at_rest(self) -> HeadEstimate:
        """Without flow."""
    @property
    def largest_misfit(self) -> Length:
        """Largest distance of a reading's head from the curve; 0 for two."""
    def head(self, flow: Flow) -> HeadEstimate:
        """At a flow. InvalidInput for one below 0."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Valve:
    """The valve at the inlet of a line, by its kind and how far it is closed."""
    def __init__(self, *, kind: ValveKind | str | None = None, opening: ValveOpening | str = ...) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def kind(self) -> ValveKind | None:
        """Needed unless it is shut."""
    @property
    def opening(self) -> ValveOpening:
        """Default "open"."""
    def replace(self, **changes: Any) -> Valve:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class HeadOff:
    """The outlet is knocked off: its riser stands open at the top."""
    def __init__(self, line: str, outlet: int, *, loss_coefficient: float | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlet(self) -> int:
        """Counts from 1, from the inlet on."""
    @property
    def loss_coefficient(self) -> float | None:
        """K of the break [-]; None: the riser's own where given, else 1."""
    def replace(self, **changes: Any) -> HeadOff:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class RiserSheared:
    """The riser is sheared off: a stub stands open."""
    def __init__(self, line: str, outlet: int, *, stub: Length | None = None, loss_coefficient: float | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlet(self) -> int:
        """Counts from 1, from the inlet on."""
    @property
    def stub(self) -> Length | None:
        """None: 0.5 ft, or the riser if that is shorter."""
    @property
    def loss_coefficient(self) -> float | None:
        """K of the break [-]; None: the riser's own where given, else 1."""
    def replace(self, **changes: Any) -> RiserSheared:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class NozzleMissing:
    """The nozzle is lost: the body's bore stands open."""
    def __init__(self, line: str, outlet: int, *, bore: Length | None = None, discharge_coefficient: float | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlet(self) -> int:
        """Counts from 1, from the inlet on."""
    @property
    def bore(self) -> Length | None:
        """None: the outlet's body_bore."""
    @property
    def discharge_coefficient(self) -> float | None:
        """Cd [-]; None: 0.85."""
    def replace(self, **changes: Any) -> NozzleMissing:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class Clogged:
    """Something in the nozzle: less flow at the same pressure."""
    def __init__(self, line: str, outlet: int, share: float) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlet(self) -> int:
        """Counts from 1, from the inlet on."""
    @property
    def share(self) -> float:
        """Of the flow that is lost, above 0 and below 1 [-]."""
    def replace(self, **changes: Any) -> Clogged:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class Worn:
    """A worn nozzle: more flow at the same pressure."""
    def __init__(self, line: str, outlet: int, share: float) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlet(self) -> int:
        """Counts from 1, from the inlet on."""
    @property
    def share(self) -> float:
        """Of the flow that is gained, above 0 to 10 [-]."""
    def replace(self, **changes: Any) -> Worn:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class WrongOutlet:
    """An outlet of another kind stands there, judged by its own rating."""
    def __init__(self, line: str, outlet: int, fitted: Outlet) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlet(self) -> int:
        """Counts from 1, from the inlet on."""
    @property
    def fitted(self) -> Outlet:
        """The kind that stands there."""
    def replace(self, **changes: Any) -> WrongOutlet:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class Capped:
    """Closed on purpose."""
    def __init__(self, line: str, outlet: int) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlet(self) -> int:
        """Counts from 1, from the inlet on."""
    def replace(self, **changes: Any) -> Capped:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class Leak:
    """A hole in the line."""
    def __init__(self, line: str, place: Length, flow: Flow, at: Pressure, *, exponent: float | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def place(self) -> Length:
        """From the line's inlet."""
    @property
    def flow(self) -> Flow:
        """This flow ..."""
    @property
    def at(self) -> Pressure:
        """... at this pressure in the line, with ..."""
    @property
    def exponent(self) -> float | None:
        """... this exponent [-], 0.1 to 1.5; None: 0.5."""
    def replace(self, **changes: Any) -> Leak:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class LineCut:
    """The line is cut through: both ends stand open, and no water passes."""
    def __init__(self, line: str, place: Length) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def place(self) -> Length:
        """From the line's inlet."""
    def replace(self, **changes: Any) -> LineCut:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class EndOpen:
    """The cap or flush valve at the far end is open."""
    def __init__(self, line: str) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def line(self) -> str:
        """Name of the line."""
    def replace(self, **changes: Any) -> EndOpen:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class ValvePartClosed:
    """The valve at the line's inlet is not fully open."""
    def __init__(self, line: str, loss_coefficient: float) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def loss_coefficient(self) -> float:
        """K on the line's velocity head, beside the line's own [-]."""
    def replace(self, **changes: Any) -> ValvePartClosed:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class ValveLeftOpen:
    """The valve of a line that should be shut is open."""
    def __init__(self, line: str) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def line(self) -> str:
        """Name of the line."""
    def replace(self, **changes: Any) -> ValveLeftOpen:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class RegulatorStuckOpen:
    """A regulator no longer regulates: all pressure comes through."""
    def __init__(self, line: str, *, outlet: int | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlet(self) -> int | None:
        """The outlet whose own it is, from 1 on; None: the line's."""
    def replace(self, **changes: Any) -> RegulatorStuckOpen:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class RegulatorStuckShut:
    """A regulator lets nothing through."""
    def __init__(self, line: str, *, outlet: int | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlet(self) -> int | None:
        """The outlet whose own it is, from 1 on; None: the line's."""
    def replace(self, **changes: Any) -> RegulatorStuckShut:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class PumpWorn:
    """Worn impeller or rings: less head at every flow."""
    def __init__(self, share: float, *, pump: int | None = None, supply: str = '') -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def share(self) -> float:
        """Of the head that is lost, above 0 and below 1 [-]."""
    @property
    def pump(self) -> int | None:
        """1 or 2; None: the first."""
    @property
    def supply(self) -> str:
        """Name of a further one; empty: the first."""
    def replace(self, **changes: Any) -> PumpWorn:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class EngineSlow:
    """The engine does not reach its speed."""
    def __init__(self, speed: RotationalSpeed, *, pump: int | None = None, supply: str = '') -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def speed(self) -> RotationalSpeed:
        """That it reaches."""
    @property
    def pump(self) -> int | None:
        """1 or 2; None: the first."""
    @property
    def supply(self) -> str:
        """Name of a further one; empty: the first."""
    def replace(self, **changes: Any) -> EngineSlow:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class FilterDirty:
    """Dirt in the filter."""
    def __init__(self, loss: Pressure, *, supply: str = '') -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def loss(self) -> Pressure:
        """That it takes now, at the flow at which it is rated."""
    @property
    def supply(self) -> str:
        """Name of a further one; empty: the first."""
    def replace(self, **changes: Any) -> FilterDirty:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class PipeReach:
    """A first length of other pipe."""
    def __init__(self, *, pipe: Pipe = ..., to: Length = ...) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def pipe(self) -> Pipe:
        """A Pipe."""
    @property
    def to(self) -> Length:
        """Its far end, from the line's inlet."""
    def replace(self, **changes: Any) -> PipeReach:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class PlacedOutlet:
    """One outlet of those that stand unevenly."""
    def __init__(self, *, place: Length = ..., outlet: Outlet = ...) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def place(self) -> Length:
        """From the line's inlet."""
    @property
    def outlet(self) -> Outlet:
        """An Outlet."""
    def replace(self, **changes: Any) -> PlacedOutlet:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class Line:
    """A line as it is described; the keywords are the keys of a file."""
    def __init__(self, *, name: str = '', fed_by: str = '', tap: Length | None = None, tap_outlet: int | None = None, joins: str = '', joins_at: Length | None = None, joins_outlet: int | None = None, pipe: Pipe = ..., reaches: Iterable[PipeReach] = (), outlet: Outlet | None = None, count: int | None = None, spacing: Length | None = None, first_at: Length | None = None, outlets: Iterable[PlacedOutlet] = (), length: Length | None = None, ground_rise: Length | None = None, elevations: Iterable[Length] = (), riser: Riser = ..., valve: Valve | None = None, check_valve: bool | None = None, regulator: Pressure | None = None, loss_coefficient: float | None = None, outlet_loss_coefficient: float | None = None, connection_length: Length | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def name(self) -> str:
        """Every line needs one of its own."""
    @property
    def fed_by(self) -> str:
        """The line or further supply at which this one begins; empty: the supply."""
    @property
    def tap(self) -> Length | None:
        """Where along it; default its far end."""
    @property
    def tap_outlet(self) -> int | None:
        """Or at which of its outlets, from 1 on."""
    @property
    def joins(self) -> str:
        """The line that its far end meets; empty: it is closed."""
    @property
    def joins_at(self) -> Length | None:
        """Where along that line; default its far end."""
    @property
    def joins_outlet(self) -> int | None:
        """Or at which of its outlets, from 1 on."""
    @property
    def pipe(self) -> Pipe:
        """Beyond the reaches."""
    @property
    def reaches(self) -> tuple[PipeReach, ...]:
        """First lengths of other pipe, from the inlet on."""
    @property
    def outlet(self) -> Outlet | None:
        """None: a main or a manifold."""
    @property
    def count(self) -> int | None:
        """Of outlets, 1 to most_outlets."""
    @property
    def spacing(self) -> Length | None:
        """From outlet to outlet."""
    @property
    def first_at(self) -> Length | None:
        """From the inlet to the first outlet, default one spacing."""
    @property
    def outlets(self) -> tuple[PlacedOutlet, ...]:
        """Instead of the four above: from the inlet on."""
    @property
    def length(self) -> Length | None:
        """To the far end; default to the last outlet."""
    @property
    def ground_rise(self) -> Length | None:
        """Far end above near end; may be negative; default 0, or what it takes to join."""
    @property
    def elevations(self) -> tuple[Length, ...]:
        """Instead: of the ground at every outlet, like the supply's."""
    @property
    def riser(self) -> Riser:
        """Of every outlet."""
    @property
    def valve(self) -> Valve | None:
        """At the inlet, default none."""
    @property
    def check_valve(self) -> bool | None:
        """At the inlet: no water runs back, default False."""
    @property
    def regulator(self) -> Pressure | None:
        """At the inlet: no more than this beyond it."""
    @property
    def loss_coefficient(self) -> float | None:
        """K at the inlet, on this pipe's velocity head [-], default 0."""
    @property
    def outlet_loss_coefficient(self) -> float | None:
        """K in the line at each outlet, on the velocity head arriving [-], default 0."""
    @property
    def connection_length(self) -> Length | None:
        """Pipe that loses as much as an outlet's connection in the line, default 0."""
    def replace(self, **changes: Any) -> Line:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...
    def outlet_count(self) -> int:
        """How many outlets it has."""
    def place_of(self, outlet_number: int) -> Length:
        """Distance of an outlet (from 1 on) from the inlet. InvalidInput when there is no such outlet.
        """
    def kind_of(self, outlet_number: int) -> Outlet:
        """The kind that stands there. InvalidInput when there is no such outlet."""
    def outlet_near(self, place: Length) -> int | None:
        """The outlet within 1 mm of a place, the last one if there are more."""
    def merged(self, place: Length) -> Length:
        """The place itself, or that of the outlet or the far end within 1 mm of it."""
    def whole_length(self) -> Length:
        """From the inlet to the far end."""
    def pipe_at(self, place: Length) -> Pipe:
        """The pipe that arrives at a place; at the inlet the first one."""

class OpenRiser:
    """A riser standing open to the air."""
    @property
    def height(self) -> Length:
        """Of its mouth above the line."""
    @property
    def loss_coefficient(self) -> float:
        """K, without the velocity head that is lost at the mouth [-]."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class OpenBody:
    """A body standing open without its nozzle."""
    @property
    def bore(self) -> Length | None:
        """None: not known."""
    @property
    def discharge_coefficient(self) -> float:
        """Cd [-]."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Problem:
    """One mistake in an input."""
    @property
    def place(self) -> str:
        """What it is in: `line "row 1"`; empty: the key says all."""
    @property
    def key(self) -> str:
        """The field, as it is spelt in a file: `riser.height`."""
    @property
    def message(self) -> str:
        """Value, accepted interval, hint."""
    def __repr__(self) -> str: ...
    def text(self) -> str:
        """The whole of it, as InvalidInput tells it."""
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class WateringSet:
    """Lines that are opened together while all others are shut."""
    def __init__(self, *, name: str = '', lines: Iterable[str] = ()) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def name(self) -> str:
        """Every set needs one of its own."""
    @property
    def lines(self) -> tuple[str, ...]:
        """By name, one or more."""
    def replace(self, **changes: Any) -> WateringSet:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class Layout:
    """The supplies, the lines that hang on them, the water, the place, the sets in which it is
    watered, what is broken. It is examined when it is made and cannot be changed; a change makes a
    new one. Until sets are chosen, all lines are open whose own valve is not shut. InvalidInput
    with every mistake of every part.
    """
    def __init__(self, supply: Supply, lines: Iterable[Line], water: Water | None = None, site: Site | None = None, sets: Iterable[WateringSet] = (), further_supplies: Iterable[Supply] = ()) -> None: ...
    @property
    def supply(self) -> Supply:
        """What feeds every line that begins nowhere else."""
    @property
    def further_supplies(self) -> tuple[Supply, ...]:
        """Beside the first, each with a name, in the order in which they were given."""
    @property
    def lines(self) -> tuple[Line, ...]:
        """In the order in which they were given."""
    @property
    def water(self) -> Water:
        """As it was given."""
    @property
    def site(self) -> Site:
        """As it was given."""
    @property
    def sets(self) -> tuple[WateringSet, ...]:
        """In the order in which they were given."""
    @property
    def running_sets(self) -> tuple[str, ...]:
        """Names of the sets that run; empty: none was chosen."""
    @property
    def supply_as_it_is(self) -> Supply:
        """The supply with what its faults change."""
    @property
    def further_supplies_as_they_are(self) -> tuple[Supply, ...]:
        """The further supplies with what their faults change."""
    @property
    def faults(self) -> tuple[Fault, ...]:
        """What is broken."""
    @property
    def outlet_count(self) -> int:
        """Of all lines."""
    @property
    def units(self) -> UnitSystem:
        """In which reports are written."""
    @property
    def outward_order(self) -> list[int]:
        """Indices of the lines, each after the line that feeds it."""
    def line(self, name: str) -> Line:
        """The line of this name. InvalidInput when there is none."""
    def index_of(self, line_name: str) -> int:
        """Position in `lines`, from 0 on."""
    def feeder_of(self, line_index: int) -> int | None:
        """Index of the line that feeds this one; None: a supply does."""
    def joined_by(self, line_index: int) -> int | None:
        """Index of the line that this one's far end meets; None: it meets none."""
    def supply_of(self, line_index: int) -> int:
        """Of the supply at the start of the lines that feed this one: 0 the first, 1 on the further
        ones.
        """
    def inlet_elevation(self, line_index: int) -> Length:
        """Of the ground at a line's near end."""
    def ground_rise(self, line_index: int) -> Length:
        """Of a line's far end above its near end."""
    def ground_elevation(self, line_index: int, place: Length) -> Length:
        """Of the ground at a distance from the near end."""
    def outlet_elevation(self, line_index: int, outlet_number: int) -> Length:
        """Of the ground at an outlet (from 1 on)."""
    def outlet_at(self, line_index: int, outlet_number: int) -> Outlet:
        """The kind that stands at an outlet (from 1 on), the wrong one where a fault says so."""
    def faults_on(self, line_index: int) -> list[Fault]:
        """In the order of the outlets."""
    def open_end_of(self, line_index: int) -> Length | None:
        """Where a line is open to the air, so that no water passes; None: it is not."""
    def is_cut_off(self, line_index: int) -> bool:
        """Whether no water comes to any part of a line, whatever the pressures: on every way to it a
        line is open to the air, shut, or its regulator stuck shut, or a check valve points the
        other way.
        """
    def is_shut(self, line_index: int) -> bool:
        """Whether no water comes to it on purpose: by its valve or another, or by the sets that run.
        """
    def inlet_is_shut(self, line_index: int) -> bool:
        """Whether nothing passes its inlet, whatever the pressures. Where its far end joins another
        line it may have water all the same.
        """
    def has_water(self, line_index: int, place: Length) -> bool:
        """Whether water can come to a place on a line; at one where it is open to the air, to what
        lies beyond.
        """
    def inlet_has_water(self, line_index: int) -> bool:
        """Whether it can come to its inlet, and on to where the line is open to the air."""
    def has_water_beyond_open_end(self, line_index: int) -> bool:
        """Whether it can come to what lies beyond the place where the line is open to the air."""
    def outlet_has_water(self, line_index: int, outlet_number: int) -> bool:
        """Whether water can come to an outlet (from 1 on); one that stands where the line is open to
        the air lies before that place.
        """
    def with_fault(self, fault: Fault) -> Layout:
        """With this fault too. InvalidInput when it does not fit the layout or another fault."""
    def with_faults(self, faults: Iterable[Fault]) -> Layout:
        """With these faults too. InvalidInput with everything that does not fit."""
    def with_possible_faults(self, faults: Iterable[Fault]) -> PossibleFaults:
        """With those that fit, taken one after another; the others are skipped and listed."""
    def without_faults(self) -> Layout:
        """With nothing broken."""
    def watering(self, set_names: str | Iterable[str]) -> Layout:
        """With these sets running, one or several, and every line shut that they do not open: a line
        is open when such a set names it, when it feeds such a line, or when it hangs on one and no
        set names it or a line between. InvalidInput for a name that is not a set's, or none.
        """
    def without_watering(self) -> Layout:
        """With no set chosen."""
    def with_supply(self, supply: Supply) -> Layout:
        """With another supply. Faults stay. InvalidInput when it is no supply, or when a fault does
        not fit it.
        """
    def with_further_supplies(self, further_supplies: Iterable[Supply]) -> Layout:
        """With these supplies beside the first. Faults stay. InvalidInput when one is no supply, or
        when a line or a fault does not fit them.
        """
    def with_line(self, line: Line) -> Layout:
        """With this line added, or put in the place of the line of its name. Faults stay. InvalidInput
        when the line or a fault does not fit the rest.
        """
    def without(self, line_name: str) -> Layout:
        """Without the line of this name, in the sets too, and its faults. InvalidInput when there is
        none, when it is the only one, or when it feeds another or another joins it.
        """
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def __repr__(self) -> str: ...

class SkippedFault:
    """A fault that does not fit the layout, and why."""
    @property
    def fault(self) -> Fault:
        """A Fault."""
    @property
    def problems(self) -> list[Problem]:
        """Why it does not fit."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class PossibleFaults:
    """A layout with the faults that fit it, and the others."""
    @property
    def layout(self) -> Layout:
        """With the faults."""
    @property
    def skipped(self) -> list[SkippedFault]:
        """The faults that do not fit."""
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Opening:
    """A leak, or where a line ends in the air."""
    @property
    def fault(self) -> int:
        """Index into Layout.faults_on the line, from 0 on."""
    @property
    def distance(self) -> Length:
        """From the inlet."""
    @property
    def line_pressure(self) -> Pressure:
        """In the pipe there, gauge."""
    @property
    def flow(self) -> Flow:
        """That escapes."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class PipeExtremes:
    """What one kind of pipe bears along a line."""
    @property
    def pipe_name(self) -> str:
        """Of the line's pipe, or of a first reach."""
    @property
    def start(self) -> Length:
        """From the inlet: where it begins."""
    @property
    def end(self) -> Length:
        """From the inlet: as far as it goes, or as there is water."""
    @property
    def highest_velocity(self) -> Velocity:
        """A Velocity."""
    @property
    def lowest_pressure(self) -> Pressure:
        """Gauge."""
    @property
    def highest_pressure(self) -> Pressure:
        """Gauge."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class RegulatorSolution:
    """The regulator at the inlet of a line."""
    @property
    def state(self) -> RegulatorState:
        """What it does."""
    @property
    def pressure(self) -> Pressure:
        """Beyond it; 0 for one that is stuck open."""
    @property
    def drop(self) -> Pressure:
        """That it takes."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class LineSolution:
    """One line. Each series has one entry an outlet, from the inlet on; index 0 is outlet 1."""
    @property
    def name(self) -> str:
        """As in the layout."""
    @property
    def distance(self) -> LengthSeries:
        """Of the outlets from the inlet."""
    @property
    def pressure(self) -> PressureSeries:
        """At the device, gauge."""
    @property
    def line_pressure(self) -> PressureSeries:
        """In the pipe below the outlet, gauge."""
    @property
    def flow(self) -> FlowSeries:
        """Out of the outlet."""
    @property
    def velocity(self) -> VelocitySeries:
        """In the pipe on the inlet's side of the outlet; below 0: towards the inlet."""
    @property
    def state(self) -> list[OutletState]:
        """What each outlet does."""
    @property
    def inflow(self) -> Flow:
        """Into the line through its inlet; below 0: out of it."""
    @property
    def end_flow(self) -> Flow:
        """Out of its far end into the line that this joins; below 0: in."""
    @property
    def inlet_velocity(self) -> Velocity:
        """In its first pipe; below 0: out of the inlet."""
    @property
    def inlet_pressure(self) -> Pressure:
        """In the pipe that feeds it, where it begins, gauge."""
    @property
    def end_pressure(self) -> Pressure:
        """At its far end, gauge."""
    @property
    def openings(self) -> list[Opening]:
        """From the inlet on."""
    @property
    def pipes(self) -> list[PipeExtremes]:
        """From the inlet on; empty where no water comes."""
    @property
    def shut(self) -> bool:
        """On purpose, by a valve or the sets that run."""
    @property
    def inlet_shut(self) -> bool:
        """Nothing passes its inlet, whatever the pressures."""
    @property
    def regulator(self) -> RegulatorSolution | None:
        """None: it has none, or no water comes."""
    @property
    def check_valve(self) -> CheckValveState | None:
        """None: it has none, or no water comes."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Residuals:
    """How well the equations are met: the largest figures left, as shares of their scales (the largest
    flow in any pipe; the larger of the supply's head and the rise and fall of the ground). Each is
    at most 1e-12.
    """
    @property
    def mass(self) -> float:
        """At every place [-]."""
    @property
    def energy(self) -> float:
        """In every length of pipe [-]."""
    @property
    def outlet(self) -> float:
        """In the head at every outlet [-]."""
    @property
    def steps(self) -> int:
        """Newton steps taken."""
    @property
    def last_resort(self) -> bool:
        """The plain steps did not suffice."""
    def __repr__(self) -> str: ...
    def are_met(self) -> bool:
        """Whether each figure is within 1e-12. If not, nothing of the solution is an answer."""
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Solution:
    """All lines solved, with the residuals that prove it. str() of it is the report."""
    @property
    def layout(self) -> Layout:
        """What was solved."""
    @property
    def water(self) -> WaterProperties:
        """As it was calculated with."""
    @property
    def lines(self) -> list[LineSolution]:
        """In the order of the layout."""
    @property
    def supply(self) -> OperatingPoint:
        """What the first one does."""
    @property
    def further_supplies(self) -> list[OperatingPoint]:
        """What each of the further ones does, in the order of the layout."""
    @property
    def inflow(self) -> Flow:
        """Out of all supplies together."""
    @property
    def supply_pressure(self) -> Pressure:
        """At the start of the lines that the first supply feeds, gauge."""
    @property
    def residuals(self) -> Residuals:
        """How well the equations are met."""
    @property
    def notes(self) -> list[str]:
        """Where an input or a result lies outside the range in which a law was validated."""
    def line(self, name: str) -> LineSolution:
        """The line of this name. InvalidInput when there is none."""
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    def to_dict(self, before: Solution | None = None) -> dict[str, Any]:
        """All that is known, with the members of to_json: numbers in SI, lists with one entry an
        outlet.
        before: the same layout without its faults, to be compared with.

        >>> row = Line(name="main", pipe=nominal_pipe("3 in", "PVC Sch 40"), length=100 * m)
        >>> solve(Layout(Supply(pressure=3 * bar), [row])).to_dict()["supply"]["pressure"]
        300000.0
        """
    def to_dataframe(self, before: Solution | None = None) -> pandas.DataFrame:
        """One row an outlet, with the columns of to_csv: numbers in SI, the unit in the column's name.
        before: the same layout without its faults, in columns of its own. ImportError without
        pandas.
        """
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class BelowRated:
    """An outlet under its rated pressure."""
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlet(self) -> int:
        """Counts from 1, from the inlet on."""
    @property
    def pressure(self) -> Pressure:
        """As it is found, gauge."""
    @property
    def rated(self) -> Pressure:
        """What it is judged by."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class BelowMinimum:
    """An outlet under the pressure at which it works."""
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlet(self) -> int:
        """Counts from 1, from the inlet on."""
    @property
    def pressure(self) -> Pressure:
        """As it is found, gauge."""
    @property
    def minimum(self) -> Pressure:
        """What it is judged by."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class AboveMaximum:
    """An outlet over its highest pressure."""
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlet(self) -> int:
        """Counts from 1, from the inlet on."""
    @property
    def pressure(self) -> Pressure:
        """As it is found, gauge."""
    @property
    def maximum(self) -> Pressure:
        """What it is judged by."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class DryOutlet:
    """An outlet to which the pressure in the line does not lift water."""
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlet(self) -> int:
        """Counts from 1, from the inlet on."""
    @property
    def line_pressure(self) -> Pressure:
        """As it is found, gauge."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Variation:
    """How evenly outlets of one kind water, on one line or (line empty) on all."""
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlet_name(self) -> str:
        """Of the kind."""
    @property
    def outlets(self) -> int:
        """How many let out water."""
    @property
    def pressure(self) -> float:
        """(largest - smallest) / average [-]."""
    @property
    def flow(self) -> float:
        """(largest - smallest) / largest [-]."""
    @property
    def too_wide(self) -> bool:
        """Beyond what is accepted."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class FastWater:
    """The fastest water in a line, where it is too fast."""
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def velocity(self) -> Velocity:
        """A Velocity."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class BelowAtmosphere:
    """The lowest pressure in a line, where it is below the atmosphere's."""
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def pressure(self) -> Pressure:
        """Gauge."""
    @property
    def column_separates(self) -> bool:
        """The water would boil: the answer does not hold there."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class OverRating:
    """The highest pressure in a pipe, where it is above its rating."""
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def pipe_name(self) -> str:
        """Name of the pipe."""
    @property
    def pressure(self) -> Pressure:
        """Gauge."""
    @property
    def rating(self) -> Pressure:
        """What is left of it at the water's temperature."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Check:
    """What is wrong with a solved layout; the lists go by line."""
    @property
    def below_rated(self) -> list[BelowRated]:
        """Dry ones are among them."""
    @property
    def below_minimum(self) -> list[BelowMinimum]:
        """Dry ones are among them."""
    @property
    def above_maximum(self) -> list[AboveMaximum]:
        """Of outlets that have a maximum."""
    @property
    def dry(self) -> list[DryOutlet]:
        """No water reaches them."""
    @property
    def variations(self) -> list[Variation]:
        """All, also the good ones."""
    @property
    def fast_water(self) -> list[FastWater]:
        """One a line."""
    @property
    def below_atmosphere(self) -> list[BelowAtmosphere]:
        """One a line."""
    @property
    def over_rating(self) -> list[OverRating]:
        """One a pipe of a line."""
    @property
    def supply_limits(self) -> list[SupplyLimit]:
        """That are passed."""
    @property
    def further_supply_limits(self) -> list[list[SupplyLimit]]:
        """Of each further supply, in the order of the layout."""
    @property
    def lifts_no_water(self) -> bool:
        """Outlets are open, and the supply brings water to none of them."""
    @property
    def all_is_shut(self) -> bool:
        """No outlet is open: a pump runs against shut valves."""
    def __repr__(self) -> str: ...
    def every_outlet_serves(self) -> bool:
        """No outlet is below its rated or lowest pressure, or above its highest."""
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class LineChange:
    """What changed at the outlets of one line, after less before; index 0 is outlet 1."""
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def pressure(self) -> PressureSeries:
        """At the device."""
    @property
    def line_pressure(self) -> PressureSeries:
        """In the pipe."""
    @property
    def flow(self) -> FlowSeries:
        """Out of the outlet."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Comparison:
    """What changed, line by line and in sum."""
    @property
    def lines(self) -> list[LineChange]:
        """In the order of the layout."""
    @property
    def newly_below_rated(self) -> list[BelowRated]:
        """Pressures as they are after; likewise in the next two."""
    @property
    def newly_below_minimum(self) -> list[BelowMinimum]:
        """Under their minimum."""
    @property
    def newly_dry(self) -> list[DryOutlet]:
        """No water reaches them."""
    @property
    def escaping(self) -> Flow:
        """More than before, out of broken outlets, leaks and open ends."""
    @property
    def missing(self) -> Flow:
        """Less than before, out of outlets that are neither broken nor capped after."""
    @property
    def inflow_before(self) -> Flow:
        """Out of all supplies."""
    @property
    def inflow_after(self) -> Flow:
        """Out of all supplies."""
    @property
    def supply_before(self) -> Pressure:
        """Gauge."""
    @property
    def supply_after(self) -> Pressure:
        """Gauge."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class FlowUniformity:
    """How even some amounts are; 100 % is perfectly even."""
    @property
    def count(self) -> int:
        """Of amounts."""
    @property
    def mean(self) -> Flow:
        """Arithmetic."""
    @property
    def least(self) -> Flow:
        """The smallest amount."""
    @property
    def low_quarter(self) -> Flow:
        """Mean of the lowest quarter."""
    @property
    def christiansen(self) -> float:
        """CU [%]."""
    @property
    def distribution(self) -> float:
        """DU of the low quarter [%]."""
    @property
    def statistical(self) -> float | None:
        """Us [%]; None of one amount."""
    def __repr__(self) -> str: ...
    def field_emission(self) -> float:
        """What DU is called where the amounts are flows measured at emitters [%]."""
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class VolumeUniformity:
    """How even some amounts are; 100 % is perfectly even."""
    @property
    def count(self) -> int:
        """Of amounts."""
    @property
    def mean(self) -> Volume:
        """Arithmetic."""
    @property
    def least(self) -> Volume:
        """The smallest amount."""
    @property
    def low_quarter(self) -> Volume:
        """Mean of the lowest quarter."""
    @property
    def christiansen(self) -> float:
        """CU [%]."""
    @property
    def distribution(self) -> float:
        """DU of the low quarter [%]."""
    @property
    def statistical(self) -> float | None:
        """Us [%]; None of one amount."""
    def __repr__(self) -> str: ...
    def field_emission(self) -> float:
        """What DU is called where the amounts are flows measured at emitters [%]."""
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class LengthUniformity:
    """How even some amounts are; 100 % is perfectly even."""
    @property
    def count(self) -> int:
        """Of amounts."""
    @property
    def mean(self) -> Length:
        """Arithmetic."""
    @property
    def least(self) -> Length:
        """The smallest amount."""
    @property
    def low_quarter(self) -> Length:
        """Mean of the lowest quarter."""
    @property
    def christiansen(self) -> float:
        """CU [%]."""
    @property
    def distribution(self) -> float:
        """DU of the low quarter [%]."""
    @property
    def statistical(self) -> float | None:
        """Us [%]; None of one amount."""
    def __repr__(self) -> str: ...
    def field_emission(self) -> float:
        """What DU is called where the amounts are flows measured at emitters [%]."""
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class OutletUniformity:
    """Outlets of one kind on one line or, with an empty line, on all."""
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlet_name(self) -> str:
        """Of the kind."""
    @property
    def flows(self) -> FlowUniformity:
        """Their measures."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class WeakestOutlet:
    """An outlet and how it stands to its rating."""
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlet(self) -> int:
        """Counts from 1, from the inlet on."""
    @property
    def pressure(self) -> Pressure:
        """At the device, gauge."""
    @property
    def rated(self) -> Pressure:
        """What it is judged by."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class PressureBudgetEntry:
    """One stretch of the way from the source to an outlet."""
    @property
    def part(self) -> str:
        """"source", "pump", "suction", "filter", "line" or "riser"."""
    @property
    def line(self) -> str:
        """Its name, where the part is one."""
    @property
    def gain(self) -> Pressure:
        """By a pump, or given at the start."""
    @property
    def rise(self) -> Pressure:
        """That the ground, the lift or the riser takes; negative downhill."""
    @property
    def loss(self) -> Pressure:
        """By friction and fittings."""
    @property
    def regulator(self) -> Pressure:
        """That a regulator takes."""
    @property
    def left(self) -> Pressure:
        """At its end, gauge."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class PressureBudget:
    """Where the pressure goes on its way from the source to one outlet."""
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlet(self) -> int:
        """Counts from 1, from the inlet on."""
    @property
    def entries(self) -> list[PressureBudgetEntry]:
        """From the source to the outlet."""
    @property
    def left(self) -> Pressure:
        """At the device, gauge."""
    @property
    def rated(self) -> Pressure:
        """Of the device."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Setting:
    """How the supply is set for a wanted pressure, and what comes of it."""
    @property
    def reached(self) -> bool:
        """Whether what was wanted is there."""
    @property
    def speed(self) -> RotationalSpeed | None:
        """To which the engine is set; None: a held pressure."""
    @property
    def pressure(self) -> Pressure:
        """Before the filter: that must be held, gauge."""
    @property
    def limits(self) -> list[SupplyLimit]:
        """Of the supply, that are passed."""
    @property
    def solution(self) -> Solution:
        """At that setting."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Throttling:
    """What a fault does at unchanged engine speed, and what more speed makes good."""
    @property
    def reading(self) -> Pressure:
        """Of the gauge, or before the filter, when all was sound."""
    @property
    def sound(self) -> Solution:
        """As it was."""
    @property
    def broken(self) -> Solution:
        """At unchanged speed."""
    @property
    def throttled_up(self) -> Setting:
        """Until the gauge reads as when all was sound."""
    @property
    def at_unchanged_speed(self) -> Comparison:
        """Of broken with sound."""
    @property
    def after_throttling_up(self) -> Comparison:
        """Of throttled_up with sound: what is newly below here, throttling up does not cure."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class SetsTogether:
    """Watering sets that would run at once."""
    @property
    def sets(self) -> list[str]:
        """By name."""
    @property
    def reached(self) -> bool:
        """Every outlet has its share."""
    @property
    def speed(self) -> RotationalSpeed | None:
        """That is needed; None: a held pressure."""
    @property
    def pressure(self) -> Pressure:
        """Before the filter, gauge."""
    @property
    def gauge_reading(self) -> Pressure | None:
        """None: there is no gauge."""
    @property
    def flow(self) -> Flow:
        """Out of the supply."""
    @property
    def weakest(self) -> WeakestOutlet:
        """With the smallest share of its rating."""
    @property
    def fastest_line(self) -> str:
        """Name of the line."""
    @property
    def fastest(self) -> Velocity:
        """Velocity in it."""
    @property
    def too_fast(self) -> bool:
        """Beyond what is accepted."""
    @property
    def limits(self) -> list[SupplyLimit]:
        """Of the supply, that are passed."""
    def __repr__(self) -> str: ...
    def can_run(self) -> bool:
        """Every outlet is served and no limit of the supply is passed; fast water is a caution."""
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Hole:
    """A small hole in the bottom or low in the wall; the level counts from it."""
    def __init__(self, *, diameter: Length = ..., discharge_coefficient: float | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def diameter(self) -> Length:
        """A Length."""
    @property
    def discharge_coefficient(self) -> float | None:
        """Cd [-], default 0.62."""
    def replace(self, **changes: Any) -> Hole:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class DrainStep:
    """The tank at one moment."""
    @property
    def level(self) -> Length:
        """Above the tank's outlet."""
    @property
    def time(self) -> Time:
        """Since the beginning."""
    @property
    def outflow(self) -> Flow:
        """Out of the tank."""
    @property
    def run_out(self) -> Volume:
        """Since the beginning."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class OutletFall:
    """The first outlet of all that comes to this state."""
    @property
    def fall(self) -> FirstFall:
        """The state."""
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlet(self) -> int:
        """Counts from 1, from the inlet on."""
    @property
    def level(self) -> Length:
        """Of the tank."""
    @property
    def time(self) -> Time:
        """0: it is so from the beginning."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class LowestMouth:
    """The lowest place at which water leaves: when the tank stands no higher, nothing flows."""
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlet(self) -> int | None:
        """None: a leak or an open end."""
    @property
    def level(self) -> Length:
        """Above the tank's outlet; may be negative."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Drain:
    """A tank from its level to the end."""
    @property
    def steps(self) -> list[DrainStep]:
        """First the beginning, last the end."""
    @property
    def first_falls(self) -> list[OutletFall]:
        """In the order of time."""
    @property
    def end(self) -> DrainEnd:
        """Why there."""
    @property
    def lowest_mouth(self) -> LowestMouth | None:
        """None: everything is closed."""
    @property
    def time_error(self) -> float:
        """Estimate, share of the whole time [-]."""
    @property
    def solves(self) -> int:
        """Of the layout."""
    def __repr__(self) -> str: ...
    def time(self) -> Time:
        """From the beginning to the end."""
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class PressureFigure:
    """A pressure of a solution."""
    def __init__(self, *, kind: PressureFigureKind | str = ..., at: str = '', outlet: int = 0) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def kind(self) -> PressureFigureKind:
        """Which."""
    @property
    def at(self) -> str:
        """Name of the line, or of a further supply; empty: the first."""
    @property
    def outlet(self) -> int:
        """From 1 on."""
    def replace(self, **changes: Any) -> PressureFigure:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class FlowFigure:
    """A flow of a solution."""
    def __init__(self, *, kind: FlowFigureKind | str = ..., at: str = '', outlet: int = 0) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def kind(self) -> FlowFigureKind:
        """Which."""
    @property
    def at(self) -> str:
        """Name of the line, or of a further supply; empty: the first."""
    @property
    def outlet(self) -> int:
        """From 1 on."""
    def replace(self, **changes: Any) -> FlowFigure:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class PressureInfluence:
    """What one input does to a figure."""
    @property
    def input(self) -> Input:
        """Which."""
    @property
    def at(self) -> str:
        """Name of the line, or of a further supply; empty: the first."""
    @property
    def kind(self) -> str:
        """Name of the kind of pipe or outlet."""
    @property
    def number(self) -> int:
        """Of the outlet, the pump, or the pipe where there are several; from 1 on."""
    @property
    def by_share(self) -> Pressure:
        """Of a size: by one whole share of it."""
    @property
    def by_height(self) -> Pressure:
        """Of a height: by one metre of it."""
    def __repr__(self) -> str: ...
    def by_one_step(self) -> Pressure:
        """What 1 % more of a size, or a height 0.1 ft (3 cm) larger, does."""
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class PressureSensitivity:
    """One figure and what all inputs do to it."""
    @property
    def value(self) -> Pressure:
        """Of the figure."""
    @property
    def influences(self) -> list[PressureInfluence]:
        """Largest by_one_step() first."""
    def __repr__(self) -> str: ...
    def by_line(self) -> PressureSensitivity:
        """Of all outlets of a line together, and of all reaches."""
    def by_kind(self) -> PressureSensitivity:
        """Of all that is of one kind of pipe or outlet; what has no name of a kind, by line."""
    def of(self, input: Input | str, at: str, number: int = 0) -> PressureInfluence:
        """Zero where it does nothing. number: 0: of all of that line or supply together."""
    def to_dict(self) -> dict[str, Any]:
        """All that is known, by the names of the members: numbers in SI, words as texts."""
    def to_dataframe(self) -> pandas.DataFrame:
        """One row for each input; what it does to the figure in Pa or m3/s, by the share, by the metre
        and
        by one step. ImportError without pandas.
        """
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class FlowInfluence:
    """What one input does to a figure."""
    @property
    def input(self) -> Input:
        """Which."""
    @property
    def at(self) -> str:
        """Name of the line, or of a further supply; empty: the first."""
    @property
    def kind(self) -> str:
        """Name of the kind of pipe or outlet."""
    @property
    def number(self) -> int:
        """Of the outlet, the pump, or the pipe where there are several; from 1 on."""
    @property
    def by_share(self) -> Flow:
        """Of a size: by one whole share of it."""
    @property
    def by_height(self) -> Flow:
        """Of a height: by one metre of it."""
    def __repr__(self) -> str: ...
    def by_one_step(self) -> Flow:
        """What 1 % more of a size, or a height 0.1 ft (3 cm) larger, does."""
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class FlowSensitivity:
    """One figure and what all inputs do to it."""
    @property
    def value(self) -> Flow:
        """Of the figure."""
    @property
    def influences(self) -> list[FlowInfluence]:
        """Largest by_one_step() first."""
    def __repr__(self) -> str: ...
    def by_line(self) -> FlowSensitivity:
        """Of all outlets of a line together, and of all reaches."""
    def by_kind(self) -> FlowSensitivity:
        """Of all that is of one kind of pipe or outlet; what has no name of a kind, by line."""
    def of(self, input: Input | str, at: str, number: int = 0) -> FlowInfluence:
        """Zero where it does nothing. number: 0: of all of that line or supply together."""
    def to_dict(self) -> dict[str, Any]:
        """All that is known, by the names of the members: numbers in SI, words as texts."""
    def to_dataframe(self) -> pandas.DataFrame:
        """One row for each input; what it does to the figure in Pa or m3/s, by the share, by the metre
        and
        by one step. ImportError without pandas.
        """
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Sensitivities:
    """A solution that is ready to be asked about any number of figures, without solving anew."""
    def __init__(self, solution: Solution) -> None: ...
    @property
    def solution(self) -> Solution:
        """What is asked about."""
    @overload
    def of(self, figure: PressureFigure) -> PressureSensitivity: ...
    @overload
    def of(self, figure: FlowFigure) -> FlowSensitivity:
        """What all inputs do to it."""
    def __repr__(self) -> str: ...

class PressureTable:
    """Values of Pressure in rows and columns, both counted from 0."""
    @property
    def shape(self) -> tuple[int, int]:
        """Rows and columns."""
    @property
    def si(self) -> NDArray[numpy.float64]:
        """The values in SI units, one row an entry: a view that cannot be written to, without a copy.
        """
    def to(self, unit: PressureUnit) -> NDArray[numpy.float64]:
        """A new numpy array of numbers of this unit, one row an entry. TypeError for a unit of another
        quantity.
        """
    def __len__(self) -> int: ...
    def __getitem__(self, row: int) -> PressureSeries: ...
    def __iter__(self) -> Iterator[PressureSeries]: ...
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class FlowTable:
    """Values of Flow in rows and columns, both counted from 0."""
    @property
    def shape(self) -> tuple[int, int]:
        """Rows and columns."""
    @property
    def si(self) -> NDArray[numpy.float64]:
        """The values in SI units, one row an entry: a view that cannot be written to, without a copy.
        """
    def to(self, unit: FlowUnit) -> NDArray[numpy.float64]:
        """A new numpy array of numbers of this unit, one row an entry. TypeError for a unit of another
        quantity.
        """
    def __len__(self) -> int: ...
    def __getitem__(self, row: int) -> FlowSeries: ...
    def __iter__(self) -> Iterator[FlowSeries]: ...
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class CheckOptions:
    """The largest that is accepted; common practice, no source."""
    def __init__(self, *, pressure_variation: float = 0.2, flow_variation: float = 0.1, velocity: Velocity = ...) -> None: ...
    @property
    def pressure_variation(self) -> float:
        """Of pressure [-]."""
    @property
    def flow_variation(self) -> float:
        """Of flow [-]."""
    @property
    def velocity(self) -> Velocity:
        """In lines."""
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def replace(self, **changes: Any) -> CheckOptions:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class Limits:
    """What is judged, and by what."""
    def __init__(self, *, judged: Iterable[Limit | str] = ..., lines: Iterable[str] = (), accepted: CheckOptions = ...) -> None: ...
    @property
    def judged(self) -> tuple[Limit, ...]:
        """Default: all."""
    @property
    def lines(self) -> tuple[str, ...]:
        """Whose outlets and pipes are judged, by name; empty: all."""
    @property
    def accepted(self) -> CheckOptions:
        """As check takes it."""
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def replace(self, **changes: Any) -> Limits:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class Margin:
    """How near a limit is, where it is nearest."""
    @property
    def limit(self) -> Limit:
        """Which."""
    @property
    def line(self) -> str:
        """Empty: of all lines together, or of a supply."""
    @property
    def outlet(self) -> int | None:
        """From 1 on; None: not of one outlet."""
    @property
    def supply(self) -> str:
        """Name of a further one; empty: the first, or none."""
    @property
    def left(self) -> float:
        """Of the limit [-]; below 0 it is passed by so much."""
    @property
    def passed(self) -> bool:
        """As a check finds it."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class MoreOutlets:
    """Which outlets are added, and where."""
    def __init__(self, *, where: AddedWhere | str = ..., outlet: Outlet | None = None, spacing: Length | None = None) -> None: ...
    @property
    def where(self) -> AddedWhere:
        """Beyond the last outlet or between them."""
    @property
    def outlet(self) -> Outlet | None:
        """None: that of the last outlet before it."""
    @property
    def spacing(self) -> Length | None:
        """Beyond: from outlet to outlet, None: that of the line, of an uneven one that of its last two
        outlets. Between: the nearest that two may stand, None: 1 mm.
        """
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def replace(self, **changes: Any) -> MoreOutlets:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class RoomAtCount:
    """The whole layout with so many outlets more."""
    @property
    def added(self) -> int:
        """So many; of longest_line, all outlets."""
    @property
    def line(self) -> str:
        """Of the outlet with the smallest share of its rating."""
    @property
    def outlet(self) -> int:
        """Its number; 0: none is judged."""
    @property
    def pressure(self) -> Pressure:
        """There, gauge."""
    @property
    def rated(self) -> Pressure:
        """Its own."""
    @property
    def supply_pressure(self) -> Pressure:
        """Of the first supply."""
    @property
    def inflow(self) -> Flow:
        """Out of all supplies together."""
    @property
    def margins(self) -> list[Margin]:
        """Of each limit that is judged."""
    def __repr__(self) -> str: ...
    def fits(self) -> bool:
        """No limit is passed."""
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Room:
    """How many more outlets a line can take."""
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlets(self) -> int:
        """That fit."""
    @property
    def end(self) -> RoomEnd:
        """What ends it."""
    @property
    def counts(self) -> list[RoomAtCount]:
        """From 0 on; the last is too many if a limit ends it."""
    @property
    def ended_by(self) -> list[Margin]:
        """Limits that one more passes; if the layout passes some as it is, those."""
    @property
    def judged(self) -> list[Limit]:
        """The other limits were left out."""
    def __repr__(self) -> str: ...
    def fails_as_it_is(self) -> bool:
        """A limit is passed with none added."""
    def to_dict(self) -> dict[str, Any]:
        """All that is known, by the names of the members: numbers in SI, words as texts."""
    def to_dataframe(self) -> pandas.DataFrame:
        """One row for each count that was tried: the weakest outlet, pressures [Pa], flow [m3/s], and
        what
        is left of each limit. ImportError without pandas.
        """
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class RoomWithPipe:
    """Room on a line that is all of another pipe."""
    @property
    def pipe(self) -> Pipe:
        """In place of its pipe and reaches."""
    @property
    def room(self) -> Room:
        """With it."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class LongestLine:
    """How long a line can be."""
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlets(self) -> int:
        """0: a limit is passed at every count tried."""
    @property
    def length(self) -> Length:
        """From the inlet to the last outlet."""
    @property
    def fewest(self) -> int:
        """Outlets at which no limit is passed."""
    @property
    def end(self) -> RoomEnd:
        """What ends it."""
    @property
    def counts(self) -> list[RoomAtCount]:
        """`added` counts all outlets here, from 1 on."""
    @property
    def ended_by(self) -> list[Margin]:
        """Limits that one more passes, or the last one tried."""
    @property
    def judged(self) -> list[Limit]:
        """The other limits were left out."""
    def __repr__(self) -> str: ...
    def to_dict(self) -> dict[str, Any]:
        """All that is known, by the names of the members: numbers in SI, words as texts."""
    def to_dataframe(self) -> pandas.DataFrame:
        """One row for each count that was tried: the weakest outlet, pressures [Pa], flow [m3/s], and
        what
        is left of each limit. ImportError without pandas.
        """
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class LongestWithPipe:
    """Length of a line that is all of one pipe."""
    @property
    def pipe(self) -> Pipe:
        """In place of its pipe and reaches."""
    @property
    def longest(self) -> LongestLine:
        """With it."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class InletPosition:
    """A row fed at a place."""
    @property
    def place(self) -> Length:
        """From the present inlet, along the row."""
    @property
    def lowest(self) -> Pressure:
        """Pressure at an outlet of the row."""
    @property
    def lowest_outlet(self) -> int:
        """Its number as it is now."""
    @property
    def highest(self) -> Pressure:
        """Pressure at an outlet of the row."""
    @property
    def lowest_share(self) -> float:
        """Of the rated pressure [-]."""
    @property
    def variation(self) -> float:
        """Of pressure [-]; infinite where the whole row is dry."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class InletPositions:
    """Places from which to feed a row."""
    @property
    def present(self) -> InletPosition:
        """As it is."""
    @property
    def best(self) -> InletPosition:
        """Of equal ones the nearest to the present inlet."""
    @property
    def all(self) -> list[InletPosition]:
        """In the order of their places."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Price:
    """So much money for such a length, as pipe is sold."""
    def __init__(self, amount: float, per: Length) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def amount(self) -> float:
        """Money, in any one currency, 0 to 1e9."""
    @property
    def per(self) -> Length:
        """1 mm to 10 km."""
    def replace(self, **changes: Any) -> Price:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class PricedPipe:
    """A pipe that can be had."""
    def __init__(self, pipe: Pipe, *, price: Price | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def pipe(self) -> Pipe:
        """Which."""
    @property
    def price(self) -> Price | None:
        """None: not known."""
    def replace(self, **changes: Any) -> PricedPipe:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class LinesToSize:
    """Lines that are laid alike."""
    def __init__(self, lines: Iterable[str], *, sizes: int = 1) -> None: ...
    @property
    def lines(self) -> tuple[str, ...]:
        """By name."""
    @property
    def sizes(self) -> int:
        """At most so many along each of them, 1 to 10."""
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def replace(self, **changes: Any) -> LinesToSize:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class LaidPipe:
    """A length of one pipe."""
    @property
    def line(self) -> str:
        """Its name."""
    @property
    def pipe(self) -> Pipe:
        """Which."""
    @property
    def start(self) -> Length:
        """From the line's inlet."""
    @property
    def end(self) -> Length:
        """From the line's inlet."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class SmallestPipe:
    """The cheapest way to lay lines, or that there is none."""
    @property
    def found(self) -> bool:
        """If not, the rest is of the widest pipe throughout."""
    @property
    def pipes(self) -> list[LaidPipe]:
        """Line by line as they were named, from the inlet on."""
    @property
    def cost(self) -> float | None:
        """Money; None: there is no price, or not of all."""
    @property
    def volume(self) -> Volume:
        """Inside the pipes."""
    @property
    def passed(self) -> list[Margin]:
        """Limits that are; empty where found."""
    @property
    def solution(self) -> Solution:
        """So laid; its layout can be used on."""
    @property
    def ways(self) -> int:
        """That there are to lay all lines."""
    @property
    def tried(self) -> int:
        """Of these, solved."""
    def __repr__(self) -> str: ...
    def to_dict(self) -> dict[str, Any]:
        """All that is known, by the names of the members: numbers in SI, words as texts."""
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class PipeTried:
    """What one pipe throughout would do."""
    @property
    def pipe(self) -> Pipe:
        """Which."""
    @property
    def cost(self) -> float | None:
        """Money; None: there is no price, or not of all."""
    @property
    def volume(self) -> Volume:
        """Inside the pipes."""
    @property
    def lowest_share(self) -> float | None:
        """Of rated pressure, at the outlet with the smallest [-]; None: none is judged."""
    @property
    def lowest_pressure(self) -> Pressure | None:
        """Of the same outlet."""
    @property
    def highest_velocity(self) -> Velocity:
        """In these lines."""
    @property
    def flow_variation(self) -> float:
        """The largest in these lines [-]."""
    @property
    def passed(self) -> list[Margin]:
        """Limits that are."""
    @property
    def solution(self) -> Solution:
        """So laid."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Standing:
    """How a layout stands."""
    @property
    def below_rated(self) -> int:
        """Outlets; dry ones are among them."""
    @property
    def lowest_share(self) -> float | None:
        """Of rated pressure; 0: dry; None: none is judged [-]."""
    @property
    def flow(self) -> Flow:
        """Out of all supplies."""
    @property
    def shaft_power(self) -> Power | None:
        """Of all pumps; None: none, or not known."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Remedy:
    """One thing that could be done."""
    @property
    def kind(self) -> RemedyKind:
        """What."""
    @property
    def lines(self) -> list[str]:
        """To which it is done; none: the supply."""
    @property
    def deed(self) -> str:
        """What is done, in the units of the layout."""
    @property
    def cures(self) -> bool:
        """Every outlet is served then."""
    @property
    def passed(self) -> list[Margin]:
        """Limits that keep it from being a cure."""
    @property
    def cost(self) -> float | None:
        """Money; None: a price is missing."""
    @property
    def after(self) -> Standing:
        """With it done."""
    @property
    def solution(self) -> Solution:
        """With it done; its layout can be used on."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Remedies:
    """What could be done for outlets that fall short."""
    @property
    def before(self) -> Standing:
        """As it is."""
    @property
    def ranked(self) -> list[Remedy]:
        """Cures first; empty where nothing falls short."""
    def __repr__(self) -> str: ...
    def to_dict(self) -> dict[str, Any]:
        """All that is known, by the names of the members: numbers in SI, words as texts."""
    def to_dataframe(self) -> pandas.DataFrame:
        """One row for each remedy, in the order of the ranking. ImportError without pandas."""
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class OutletNumber:
    """An outlet, by its line and number."""
    def __eq__(self, other: object) -> bool: ...
    __hash__: ClassVar[None]  # type: ignore[assignment]
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlet(self) -> int:
        """Counts from 1, from the inlet on."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Break:
    """One outlet broken, and what it does to the others. Counts are of outlets that were not so
    before.
    """
    @property
    def line(self) -> str:
        """Of the outlet that is broken."""
    @property
    def outlet(self) -> int:
        """Counts from 1, from the inlet on."""
    @property
    def escaping(self) -> Flow:
        """More than before, out of broken outlets, leaks and open ends."""
    @property
    def missing(self) -> Flow:
        """Less than before, out of all outlets that are neither broken nor capped."""
    @property
    def inflow(self) -> Flow:
        """Out of all supplies."""
    @property
    def supply_pressure(self) -> Pressure:
        """Of the first supply, gauge."""
    @property
    def gauge_reading(self) -> Pressure:
        """Of the first supply; without a gauge, before the filter."""
    @property
    def more_below_rated(self) -> int:
        """Those out of work are among them."""
    @property
    def more_out_of_work(self) -> int:
        """Below their minimum, or dry."""
    @property
    def more_dry(self) -> int:
        """No water reaches them."""
    @property
    def more_above_maximum(self) -> int:
        """They mist."""
    @property
    def weakest(self) -> WeakestOutlet | None:
        """None: there is no other outlet to judge."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class LeftOut:
    """An outlet of which there is no Break, and why."""
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlet(self) -> int:
        """Counts from 1, from the inlet on."""
    @property
    def why(self) -> str:
        """In words."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Breaks:
    """Every outlet of a layout, broken in turn. str() of it is the report."""
    @property
    def fault(self) -> Fault:
        """Its line and outlet do not count."""
    @property
    def before(self) -> Solution:
        """Before any of them."""
    @property
    def outlets(self) -> list[OutletNumber]:
        """All of the layout, line by line."""
    @property
    def breaks(self) -> list[Break]:
        """That are solved, in the order of the outlets."""
    @property
    def not_solved(self) -> list[LeftOut]:
        """Likewise."""
    @property
    def skipped(self) -> list[LeftOut]:
        """Likewise."""
    @property
    def worst(self) -> int | None:
        """Index into breaks of the one that puts most others out of work; of equal ones that with most
        others below rated, then that with the smallest share at its weakest outlet, then the first.
        """
    @property
    def rest_works(self) -> int:
        """Breaks that put no other out of work."""
    @property
    def rest_is_served(self) -> int:
        """Breaks after which none is below its rated pressure that was not."""
    @property
    def conditions_before(self) -> list[OutletCondition]:
        """One for each of outlets."""
    @property
    def conditions(self) -> NDArray[numpy.object_] | None:
        """Of OutletCondition, a row for each of breaks, a column for each of outlets; None where only
        counts are kept.
        """
    @property
    def pressure(self) -> PressureTable | None:
        """At the device, likewise; None unless profiles are kept."""
    @property
    def flow(self) -> FlowTable | None:
        """Out of the outlet, likewise."""
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...
    def newly_below_rated(self, break_index: int) -> list[OutletNumber]:
        """Which others are below their rated pressure after this one of breaks, from 0 on, that were
        not before. InvalidInput when there is no such break, or only counts are kept.
        """
    def newly_out_of_work(self, break_index: int) -> list[OutletNumber]:
        """Which others are out of work after this one of breaks, from 0 on, that were not before.
        InvalidInput when there is no such break, or only counts are kept.
        """
    def newly_dry(self, break_index: int) -> list[OutletNumber]:
        """Which others are dry after this one of breaks, from 0 on, that were not before. InvalidInput
        when there is no such break, or only counts are kept.
        """
    def newly_above_maximum(self, break_index: int) -> list[OutletNumber]:
        """Which others are above their highest pressure after this one of breaks, from 0 on, that were
        not before. InvalidInput when there is no such break, or only counts are kept.
        """
    def to_dict(self) -> dict[str, Any]:
        """All that is known, by the names of the members: numbers in SI, words as texts."""
    def to_dataframe(self) -> pandas.DataFrame:
        """One row for each outlet, with the columns of to_csv: numbers in SI, the unit in the column's
        name. ImportError without pandas.
        """
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class PressureSpread:
    """Of one figure."""
    @property
    def mean(self) -> Pressure:
        """Arithmetic."""
    @property
    def deviation(self) -> Pressure:
        """Standard deviation."""
    @property
    def quantiles(self) -> list[Pressure]:
        """In the order of the options."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class FlowSpread:
    """Of one figure."""
    @property
    def mean(self) -> Flow:
        """Arithmetic."""
    @property
    def deviation(self) -> Flow:
        """Standard deviation."""
    @property
    def quantiles(self) -> list[Flow]:
        """In the order of the options."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class NumberSpread:
    """Of one figure."""
    @property
    def mean(self) -> float:
        """Arithmetic."""
    @property
    def deviation(self) -> float:
        """Standard deviation."""
    @property
    def quantiles(self) -> list[float]:
        """In the order of the options."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class PressureSeriesSpread:
    """Of one figure at every outlet of a line, from the inlet on."""
    @property
    def mean(self) -> PressureSeries:
        """Arithmetic."""
    @property
    def deviation(self) -> PressureSeries:
        """Standard deviation."""
    @property
    def quantiles(self) -> list[PressureSeries]:
        """In the order of the options."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class FlowSeriesSpread:
    """Of one figure at every outlet of a line, from the inlet on."""
    @property
    def mean(self) -> FlowSeries:
        """Arithmetic."""
    @property
    def deviation(self) -> FlowSeries:
        """Standard deviation."""
    @property
    def quantiles(self) -> list[FlowSeries]:
        """In the order of the options."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class OutletUncertainty:
    """Of one kind of outlet, where it is not as the others."""
    def __init__(self, *, outlet: str = '', manufacturing_variation: float | None = None, rating: float | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def outlet(self) -> str:
        """The kind's name."""
    @property
    def manufacturing_variation(self) -> float | None:
        """Cv [-]; None: as of the others."""
    @property
    def rating(self) -> float | None:
        """Of all of the kind together [-]."""
    def replace(self, **changes: Any) -> OutletUncertainty:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class Uncertainty:
    """What of a layout is not known exactly, as standard deviations; those without a unit are shares
    of the value. What is not given is exact.
    """
    def __init__(self, *, manufacturing_variation: float = 0.0, rating: float = 0.0, outlets: Iterable[OutletUncertainty] = (), inside_diameter: float = 0.0, wall: float = 0.0, loss_coefficient: float = 0.0, supply_pressure: Pressure = ..., pump_head: float = 0.0, elevation: Length = ...) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def manufacturing_variation(self) -> float:
        """Cv, of the flow of each outlet by itself at one pressure; normal, 0 to 0.2."""
    @property
    def rating(self) -> float:
        """Of the flow of each kind of outlet, all of that kind together; normal, 0 to 0.2."""
    @property
    def outlets(self) -> tuple[OutletUncertainty, ...]:
        """Kinds for which these two are others."""
    @property
    def inside_diameter(self) -> float:
        """Of the bore of each kind of pipe, all of its lengths together; normal, 0 to 0.1."""
    @property
    def wall(self) -> float:
        """Of C, roughness or factor of each kind of pipe; lognormal, 0 to 1."""
    @property
    def loss_coefficient(self) -> float:
        """Of the K of each line, all of one line together; lognormal, 0 to 2."""
    @property
    def supply_pressure(self) -> Pressure:
        """Of each supply that is not a pump; normal."""
    @property
    def pump_head(self) -> float:
        """Of the head of each pump, the same share at every flow; normal, 0 to 0.2."""
    @property
    def elevation(self) -> Length:
        """Of each elevation that was measured by itself; normal."""
    def replace(self, **changes: Any) -> Uncertainty:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class Chance:
    """So many of so many realisations."""
    def __eq__(self, other: object) -> bool: ...
    __hash__: ClassVar[None]  # type: ignore[assignment]
    @property
    def times(self) -> int:
        """In which it was so."""
    @property
    def of(self) -> int:
        """Of all."""
    def __repr__(self) -> str: ...
    def share(self) -> float:
        """[-]."""
    def low(self) -> float:
        """The true one lies above it, 39 times of 40 [-]."""
    def high(self) -> float:
        """The true one lies below it, 39 times of 40 [-]."""
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class LineChances:
    """One line. All have one entry for each outlet; index 0 is outlet 1."""
    @property
    def name(self) -> str:
        """Name of the line."""
    @property
    def pressure(self) -> PressureSeriesSpread:
        """At the device."""
    @property
    def flow(self) -> FlowSeriesSpread:
        """Out of the outlet."""
    @property
    def is_judged(self) -> list[bool]:
        """Neither closed nor broken."""
    @property
    def below_rated(self) -> list[float]:
        """Chances [-]; 0 for those not judged."""
    @property
    def below_minimum(self) -> list[float]:
        """Likewise."""
    @property
    def above_maximum(self) -> list[float]:
        """Likewise."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class UniformityChances:
    """How even outlets of one kind water, on one line or (line empty) all."""
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def outlet_name(self) -> str:
        """Of the kind."""
    @property
    def outlets(self) -> int:
        """Of the kind."""
    @property
    def christiansen(self) -> NumberSpread:
        """CU [%]."""
    @property
    def distribution(self) -> NumberSpread:
        """DU of the low quarter [%]."""
    @property
    def statistical(self) -> NumberSpread | None:
        """Us [%]; None of one outlet."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Kept:
    """Every value that was found, a row for each realisation, from 0 on."""
    @property
    def outlets(self) -> int:
        """Of all lines, in their order."""
    @property
    def pressure(self) -> PressureTable | None:
        """A column for each outlet."""
    @property
    def flow(self) -> FlowTable | None:
        """A column for each outlet."""
    @property
    def inflow(self) -> FlowSeries:
        """One for each realisation."""
    @property
    def lowest_pressure(self) -> PressureSeries:
        """One for each realisation; empty where no outlet is judged."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Chances:
    """How likely outlets of a layout fall short."""
    @property
    def realisations(self) -> int:
        """That were solved."""
    @property
    def seed(self) -> int:
        """Of the draws."""
    @property
    def quantiles(self) -> list[float]:
        """Shares that quantiles were asked for."""
    @property
    def lines(self) -> list[LineChances]:
        """In the order of the layout."""
    @property
    def inflow(self) -> FlowSpread:
        """Out of all supplies together."""
    @property
    def lowest_pressure(self) -> PressureSpread | None:
        """At the device, of the outlets that are judged; None: none is."""
    @property
    def any_below_rated(self) -> Chance:
        """That at least one outlet is."""
    @property
    def any_below_minimum(self) -> Chance:
        """Likewise."""
    @property
    def any_above_maximum(self) -> Chance:
        """Likewise."""
    @property
    def times_below_rated(self) -> list[int]:
        """In how many realisations exactly so many outlets were: entry k for k outlets."""
    @property
    def uniformity(self) -> list[UniformityChances]:
        """As uniformity_of_outlets has them."""
    @property
    def kept(self) -> Kept | None:
        """None unless asked for."""
    def __repr__(self) -> str: ...
    def to_dict(self) -> dict[str, Any]:
        """All that is known, by the names of the members: numbers in SI, words as texts."""
    def to_dataframe(self) -> pandas.DataFrame:
        """One row for each outlet: mean and deviation of pressure [Pa] and flow [m3/s], and chances.
        ImportError without pandas.
        """
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class TroubleAtCount:
    """Chances with so many outlets more."""
    @property
    def more(self) -> int:
        """So many."""
    @property
    def below_rated(self) -> Chance:
        """That at least one outlet is."""
    @property
    def below_minimum(self) -> Chance:
        """Likewise."""
    @property
    def above_maximum(self) -> Chance:
        """Likewise."""
    @property
    def lowest_pressure(self) -> PressureSpread | None:
        """At the device, of the outlets that are judged; None: none is."""
    @property
    def inflow(self) -> FlowSpread:
        """Out of all supplies together."""
    @property
    def seed(self) -> int:
        """Of the draws."""
    @property
    def quantiles(self) -> list[float]:
        """Shares that quantiles were asked for."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Reading:
    """One figure that was read, or could be. problems of it are told by find_fault."""
    def __init__(self, *, place: ReadingPlace | str = ..., line: str = '', outlet: int = 0, pressure: Pressure | None = None, flow: Flow | None = None, speed: RotationalSpeed | None = None, volume: Volume | None = None, time: Time | None = None, pressure_error: Pressure | None = None, flow_error: float | None = None, time_error: Time | None = None, speed_error: float | None = None, gauge: str = '') -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def place(self) -> ReadingPlace:
        """Where."""
    @property
    def line(self) -> str:
        """Its name, where is_on_line(place)."""
    @property
    def outlet(self) -> int:
        """From 1 on, where is_at_outlet(place)."""
    @property
    def pressure(self) -> Pressure | None:
        """-100 kPa to 10 MPa."""
    @property
    def flow(self) -> Flow | None:
        """Above 0."""
    @property
    def speed(self) -> RotationalSpeed | None:
        """Of the engine."""
    @property
    def volume(self) -> Volume | None:
        """Of a bucket: instead of flow ..."""
    @property
    def time(self) -> Time | None:
        """... that was filled in this time."""
    @property
    def pressure_error(self) -> Pressure | None:
        """Standard error; None: 1 psi."""
    @property
    def flow_error(self) -> float | None:
        """Standard error, share; None: 2 %."""
    @property
    def time_error(self) -> Time | None:
        """Of a bucket's time; None: 0.5 s."""
    @property
    def speed_error(self) -> float | None:
        """Standard error, share; None: 1 %."""
    @property
    def gauge(self) -> str:
        """Readings of one gauge share what it shows too much. Default: one of its own at the supply
        and after the filter each; all others by one that is carried round.
        """
    def replace(self, **changes: Any) -> Reading:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class Sight:
    """What is seen of one outlet, or of some next to each other."""
    def __init__(self, *, seen: Seen | str = ..., line: str = '', outlet: int = 0, to_outlet: int | None = None, width: Pressure | None = None, doubt: float | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def seen(self) -> Seen:
        """Whether it turns."""
    @property
    def line(self) -> str:
        """Its name."""
    @property
    def outlet(self) -> int:
        """From 1 on."""
    @property
    def to_outlet(self) -> int | None:
        """The last one; None: the same."""
    @property
    def width(self) -> Pressure | None:
        """Of the pressure over which outlets of one kind cease to turn; None: 2 psi."""
    @property
    def doubt(self) -> float | None:
        """Chance that it was misjudged; None: 0.02."""
    def replace(self, **changes: Any) -> Sight:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class PriorOdds:
    """Relative odds, 0 or more: of each kind at each place where it can be, before anything is read.
    Defaults are assumed. 0 leaves a kind out.
    """
    def __init__(self, *, no_fault: float = 10.0, head_off: float = 1.0, riser_sheared: float = 1.0, nozzle_missing: float = 0.5, worn: float = 0.5, clogged: float = 1.0, wrong_outlet: float = 0.2, leak: float = 0.5, end_open: float = 1.0, valve_left_open: float = 3.0, valve_part_closed: float = 2.0, regulator_stuck_open: float = 0.5, regulator_stuck_shut: float = 0.5, filter_dirty: float = 5.0, engine_slow: float = 5.0, pump_worn: float = 2.0, supply_low: float = 2.0, gauge_wrong: float = 3.0) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def no_fault(self) -> float:
        """Odds at each place."""
    @property
    def head_off(self) -> float:
        """Odds at each place."""
    @property
    def riser_sheared(self) -> float:
        """Odds at each place."""
    @property
    def nozzle_missing(self) -> float:
        """Odds at each place."""
    @property
    def worn(self) -> float:
        """Odds at each place."""
    @property
    def clogged(self) -> float:
        """Odds at each place."""
    @property
    def wrong_outlet(self) -> float:
        """Odds at each place."""
    @property
    def leak(self) -> float:
        """Odds at each place."""
    @property
    def end_open(self) -> float:
        """Odds at each place."""
    @property
    def valve_left_open(self) -> float:
        """Odds at each place."""
    @property
    def valve_part_closed(self) -> float:
        """Odds at each place."""
    @property
    def regulator_stuck_open(self) -> float:
        """Odds at each place."""
    @property
    def regulator_stuck_shut(self) -> float:
        """Odds at each place."""
    @property
    def filter_dirty(self) -> float:
        """Odds at each place."""
    @property
    def engine_slow(self) -> float:
        """Odds at each place."""
    @property
    def pump_worn(self) -> float:
        """Odds at each place."""
    @property
    def supply_low(self) -> float:
        """Odds at each place."""
    @property
    def gauge_wrong(self) -> float:
        """Odds at each place."""
    def replace(self, **changes: Any) -> PriorOdds:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...
    def of(self, kind: CandidateKind | str) -> float:
        """Of this kind."""

class FaultSizes:
    """How large each fault may be: nine of ten lie between these two."""
    def __init__(self, *, loss_coefficient: tuple[float, float] = ..., discharge_coefficient: tuple[float, float] = ..., worn: tuple[float, float] = ..., clogged: tuple[float, float] = ..., leak: tuple[float, float] = ..., valve_part_closed: tuple[float, float] = ..., filter_dirty: tuple[float, float] = ..., engine_slow: tuple[float, float] = ..., pump_worn: tuple[float, float] = ..., supply_low: tuple[Length, Length] = ..., supply_low_share: tuple[float, float] = ..., gauge_wrong: Pressure = ...) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def loss_coefficient(self) -> tuple[float, float]:
        """Factor on the K of an open riser."""
    @property
    def discharge_coefficient(self) -> tuple[float, float]:
        """Cd of a body without its nozzle."""
    @property
    def worn(self) -> tuple[float, float]:
        """Share of the flow gained."""
    @property
    def clogged(self) -> tuple[float, float]:
        """Share of the flow lost."""
    @property
    def leak(self) -> tuple[float, float]:
        """In flows of the line's outlets at their rating."""
    @property
    def valve_part_closed(self) -> tuple[float, float]:
        """K."""
    @property
    def filter_dirty(self) -> tuple[float, float]:
        """Times its loss as described."""
    @property
    def engine_slow(self) -> tuple[float, float]:
        """Share of the speed lost."""
    @property
    def pump_worn(self) -> tuple[float, float]:
        """Share of the head lost."""
    @property
    def supply_low(self) -> tuple[Length, Length]:
        """Of the water's surface ..."""
    @property
    def supply_low_share(self) -> tuple[float, float]:
        """... or of a pressure that is held or a hydrant's."""
    @property
    def gauge_wrong(self) -> Pressure:
        """Standard deviation."""
    def replace(self, **changes: Any) -> FaultSizes:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class Candidate:
    """One thing that may be wrong. str() of it says it."""
    def __init__(self, *, kind: CandidateKind | str = ..., line: str = '', outlet: int | None = None, place: Length | None = None, fitted: Outlet | None = None, gauge: str = '', odds: float = 0.0) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def kind(self) -> CandidateKind:
        """What."""
    @property
    def line(self) -> str:
        """Empty: of the supply, of a gauge, or none."""
    @property
    def outlet(self) -> int | None:
        """From 1 on."""
    @property
    def place(self) -> Length | None:
        """Of a leak, from the line's inlet."""
    @property
    def fitted(self) -> Outlet | None:
        """Of a wrong outlet."""
    @property
    def gauge(self) -> str:
        """Of a wrong one."""
    @property
    def odds(self) -> float:
        """Before anything is read."""
    def replace(self, **changes: Any) -> Candidate:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...
    def __str__(self) -> str: ...

class CandidateOptions:
    """What may be looked for."""
    def __init__(self, *, odds: PriorOdds = ..., sizes: FaultSizes = ..., other_outlets: Iterable[Outlet] = ()) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def odds(self) -> PriorOdds:
        """Before anything is read."""
    @property
    def sizes(self) -> FaultSizes:
        """How large each fault may be."""
    @property
    def other_outlets(self) -> tuple[Outlet, ...]:
        """Kinds that may stand at a place by mistake; default those of the layout's own."""
    def replace(self, **changes: Any) -> CandidateOptions:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class FindFaultOptions:
    """What is believed beside the readings. All defaults are assumed."""
    def __init__(self, *, candidates: CandidateOptions = ..., uncertainty: Uncertainty | None = None, gauge_bias: Pressure = ..., blunder: float = 0.02, model_error: float = 0.01, walk_share: float = 0.8) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def candidates(self) -> CandidateOptions:
        """What may be wrong."""
    @property
    def uncertainty(self) -> Uncertainty | None:
        """Of the layout; None: assumed_uncertainty()."""
    @property
    def gauge_bias(self) -> Pressure:
        """Standard deviation of what each gauge shows too much."""
    @property
    def blunder(self) -> float:
        """Probability that one reading is a blunder, 0 to 0.5."""
    @property
    def model_error(self) -> float:
        """Standard deviation, share of each figure predicted, 0 to 0.2."""
    @property
    def walk_share(self) -> float:
        """Of a place's probability that its outlets hold together."""
    def replace(self, **changes: Any) -> FindFaultOptions:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class ReadingFit:
    """What a reading is by a candidate, and what it was."""
    @property
    def pressure_predicted(self) -> Pressure | None:
        """None: it is no pressure."""
    @property
    def pressure_read(self) -> Pressure | None:
        """Likewise."""
    @property
    def flow_predicted(self) -> Flow | None:
        """None: it is no flow."""
    @property
    def flow_read(self) -> Flow | None:
        """Likewise."""
    @property
    def speed_predicted(self) -> RotationalSpeed | None:
        """None: it is no speed."""
    @property
    def speed_read(self) -> RotationalSpeed | None:
        """Likewise."""
    @property
    def misfit(self) -> float:
        """Read less predicted, in standard errors of this reading by itself."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class FoundFault:
    """One candidate after the readings."""
    @property
    def candidate(self) -> Candidate:
        """Which."""
    @property
    def probability(self) -> float:
        """0 to 1."""
    @property
    def log_evidence(self) -> float:
        """Natural logarithm; its differences are those of Bayes factors."""
    @property
    def size(self) -> float:
        """Most probable, in deviations from the median; 0 where there is none."""
    @property
    def fault(self) -> Fault | None:
        """Of that size; None: no fault, supply low or gauge wrong."""
    @property
    def smaller(self) -> Fault | None:
        """It is larger than this in 9 of 10 cases."""
    @property
    def larger(self) -> Fault | None:
        """It is smaller than this in 9 of 10 cases."""
    @property
    def supply(self) -> Supply | None:
        """Of a supply that is low: as it then is."""
    @property
    def gauge_shows_too_much(self) -> Pressure | None:
        """Of a wrong gauge."""
    @property
    def misfit(self) -> float:
        """Of all readings together, in standard errors."""
    @property
    def fits(self) -> list[ReadingFit]:
        """One for each reading."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class WalkTo:
    """All that one would look for at one place on one way."""
    @property
    def kind(self) -> WalkKind:
        """What one goes to look at."""
    @property
    def line(self) -> str:
        """Empty: at the supply."""
    @property
    def probability(self) -> float:
        """0 to 1."""
    @property
    def first(self) -> int | None:
        """Of the fewest outlets in a row that hold walk_share of it."""
    @property
    def last(self) -> int | None:
        """Likewise."""
    @property
    def most_likely(self) -> int | None:
        """Outlet."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class LookAlike:
    """Two candidates that the readings cannot tell apart, and what could."""
    @property
    def one(self) -> int:
        """Index into faults."""
    @property
    def other(self) -> int:
        """Likewise."""
    @property
    def apart(self) -> float:
        """What was read, between them, in standard errors: below 1."""
    @property
    def tells_apart(self) -> Reading | None:
        """A Reading without a figure; None: no reading does."""
    @property
    def then_apart(self) -> float:
        """That reading, between them, in its standard errors."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class NotSolvedCandidate:
    """A candidate that could not be solved, and why."""
    @property
    def candidate(self) -> Candidate:
        """Which."""
    @property
    def why(self) -> str:
        """In words."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class FoundFaults:
    """All candidates after the readings."""
    @property
    def faults(self) -> list[FoundFault]:
        """Most probable first."""
    @property
    def walk(self) -> list[WalkTo]:
        """Most probable first."""
    @property
    def look_alikes(self) -> list[LookAlike]:
        """Of the most probable ones."""
    @property
    def explained(self) -> bool:
        """False: no single fault explains these readings."""
    @property
    def least_misfit(self) -> float:
        """Of all readings, by the candidate that fits best, in standard errors."""
    @property
    def not_solved(self) -> list[NotSolvedCandidate]:
        """Candidates."""
    @property
    def notes(self) -> list[str]:
        """What follows from readings that are few, and the like."""
    @property
    def solves(self) -> int:
        """Layouts that were solved."""
    def __repr__(self) -> str: ...
    def to_dict(self) -> dict[str, Any]:
        """All that is known, by the names of the members: numbers in SI, words as texts."""
    def to_dataframe(self) -> pandas.DataFrame:
        """One row for each candidate, most probable first. ImportError without pandas."""
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class PossibleReading:
    """One thing that could be read or looked at."""
    @property
    def reading(self) -> Reading | None:
        """Without a figure; or ..."""
    @property
    def look(self) -> Sight | None:
        """... a look at one outlet; what is seen does not count."""
    @property
    def information(self) -> float:
        """Expected [bits]."""
    @property
    def time(self) -> Time:
        """Reading, there and back from the supply."""
    @property
    def worth(self) -> float:
        """Information less the price of the time [bits]."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class NextReadings:
    """All that could be read, best first."""
    @property
    def stop(self) -> WhyStop:
        """Why no more should be read."""
    @property
    def readings(self) -> list[PossibleReading]:
        """Best first."""
    @property
    def use_the_bucket(self) -> bool:
        """No pressure is worth a reading and a bucket is."""
    @property
    def uncertainty_left(self) -> float:
        """Entropy of the candidates [bits]."""
    def __repr__(self) -> str: ...
    def to_dict(self) -> dict[str, Any]:
        """All that is known, by the names of the members: numbers in SI, words as texts."""
    def to_dataframe(self) -> pandas.DataFrame:
        """One row for each reading or look that could be taken, best first. ImportError without
        pandas.
        """
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Detectable:
    """What one gauge shows of one candidate."""
    def __init__(self, *, candidate: Candidate = ..., pressure_change: Pressure | None = None, flow_change: Flow | None = None, speed_change: RotationalSpeed | None = None, standard_errors: float = 0.0, seen: bool = False) -> None: ...
    @property
    def candidate(self) -> Candidate:
        """At its median size."""
    @property
    def pressure_change(self) -> Pressure | None:
        """That it shows more, or ..."""
    @property
    def flow_change(self) -> Flow | None:
        """... of a flow."""
    @property
    def speed_change(self) -> RotationalSpeed | None:
        """Of an engine's counter."""
    @property
    def standard_errors(self) -> float:
        """0 or more."""
    @property
    def seen(self) -> bool:
        """2 or more."""
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def replace(self, **changes: Any) -> Detectable:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class ExtraTime:
    """How long a line has to run on."""
    @property
    def line(self) -> str:
        """Its name."""
    @property
    def time(self) -> Time:
        """0 or more."""
    @property
    def outlet(self) -> int:
        """The one that had least of its water, from 1 on; 0: none had less."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class WayOn:
    """One way to make it right, and what it is worth."""
    @property
    def deed(self) -> Deed:
        """What is done."""
    @property
    def below_rated(self) -> list[OutletNumber]:
        """Outlets that are not without the fault."""
    @property
    def out_of_work(self) -> list[OutletNumber]:
        """Below the minimum, or dry; likewise."""
    @property
    def escaping(self) -> Flow:
        """Lost meanwhile."""
    @property
    def extra(self) -> list[ExtraTime]:
        """Of each line with outlets that runs."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class MakeRight:
    """All ways to make it right."""
    @property
    def found(self) -> FoundFault:
        """The fault."""
    @property
    def run_time(self) -> Time:
        """That it lasts."""
    @property
    def ways(self) -> list[WayOn]:
        """In the order of Deed."""
    @property
    def best(self) -> int:
        """Index of the one to choose."""
    def __repr__(self) -> str: ...
    def to_dict(self) -> dict[str, Any]:
        """All that is known, by the names of the members: numbers in SI, words as texts."""
    def to_dataframe(self) -> pandas.DataFrame:
        """One row for each way; extra_s is the longest time that a line has to run on. ImportError
        without
        pandas.
        """
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Learnt:
    """One input, before the walk and after."""
    @property
    def kind(self) -> LearntKind:
        """What."""
    @property
    def of(self) -> str:
        """Kind of pipe or outlet, line, supply or gauge."""
    @property
    def pump(self) -> int:
        """1 or 2, of a pump's head."""
    @property
    def before(self) -> float | None:
        """C or the factor f of a pipe's wall, as described."""
    @property
    def after(self) -> float | None:
        """As it was learnt."""
    @property
    def factor(self) -> float | None:
        """What was learnt over what is described."""
    @property
    def deviation_before(self) -> float | None:
        """Standard deviation, share of the value."""
    @property
    def deviation(self) -> float | None:
        """After the walk."""
    @property
    def more(self) -> Pressure | None:
        """Than is described; of a gauge, what it shows too much."""
    @property
    def more_deviation_before(self) -> Pressure | None:
        """Standard deviation."""
    @property
    def more_deviation(self) -> Pressure | None:
        """After the walk."""
    @property
    def moved(self) -> float:
        """In standard deviations of what was assumed."""
    @property
    def learnt(self) -> float:
        """Share of its variance that the readings took, 0 to 1."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Entangled:
    """One of those that cannot be told apart."""
    @property
    def which(self) -> int:
        """Index into Calibration.learnt."""
    @property
    def weight(self) -> float:
        """In deviations of what was assumed."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class NotToldApart:
    """Inputs that can go together by these weights, and the readings stay nearly the same."""
    @property
    def inputs(self) -> list[Entangled]:
        """Largest weight first."""
    @property
    def left(self) -> float:
        """Share of the variance that is left, 0.5 to 1."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Calibration:
    """What a walk taught."""
    @property
    def layout(self) -> Layout:
        """As it was learnt."""
    @property
    def uncertainty(self) -> Uncertainty:
        """Of that layout."""
    @property
    def gauge_bias(self) -> Pressure:
        """Standard deviation left, of a gauge of this walk once corrected."""
    @property
    def learnt(self) -> list[Learnt]:
        """Kinds of pipe, of outlet, lines, supplies, gauges."""
    @property
    def correlation(self) -> list[list[float]]:
        """Of what is left, in the order of learnt."""
    @property
    def not_told_apart(self) -> list[NotToldApart]:
        """The least known first."""
    @property
    def before(self) -> list[ReadingFit]:
        """Readings by the layout as it was described."""
    @property
    def fits(self) -> list[ReadingFit]:
        """By the calibrated layout, its gauges' biases in."""
    @property
    def chi_squared(self) -> float:
        """One degree of freedom a reading."""
    @property
    def chance(self) -> float:
        """Of a larger one."""
    @property
    def fits_well(self) -> bool:
        """chance is 0.0027 or more."""
    @property
    def worst(self) -> int | None:
        """Index of the reading whose misfit is largest."""
    @property
    def steps(self) -> int:
        """Of the least squares."""
    @property
    def notes(self) -> list[str]:
        """What follows from readings that are few."""
    def __repr__(self) -> str: ...
    def to_dict(self) -> dict[str, Any]:
        """All that is known, by the names of the members: numbers in SI, words as texts."""
    def to_dataframe(self) -> pandas.DataFrame:
        """One row for each input that can be learnt: shares of the value, of pressures [Pa].
        ImportError
        without pandas.
        """
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class DayOfReadings:
    """The readings of one day."""
    def __init__(self, *, day: float = 0.0, name: str = '', readings: Iterable[Reading] = ()) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def day(self) -> float:
        """Counted from any day on; later ones rise."""
    @property
    def name(self) -> str:
        """A date, as it is told; empty: "day 3"."""
    @property
    def readings(self) -> tuple[Reading, ...]:
        """Of that day."""
    def replace(self, **changes: Any) -> DayOfReadings:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class PlaceDrift:
    """One place through all days."""
    @property
    def place(self) -> Reading:
        """A Reading without a figure."""
    @property
    def normal_pressure(self) -> Pressure | None:
        """Mean of the first days."""
    @property
    def pressure_scatter(self) -> Pressure | None:
        """From day to day."""
    @property
    def last_pressure(self) -> Pressure | None:
        """Of the last day."""
    @property
    def normal_flow(self) -> Flow | None:
        """Likewise."""
    @property
    def flow_scatter(self) -> Flow | None:
        """Likewise."""
    @property
    def last_flow(self) -> Flow | None:
        """Likewise."""
    @property
    def normal_speed(self) -> RotationalSpeed | None:
        """Likewise."""
    @property
    def speed_scatter(self) -> RotationalSpeed | None:
        """Likewise."""
    @property
    def last_speed(self) -> RotationalSpeed | None:
        """Likewise."""
    @property
    def trend(self) -> float:
        """A day, in scatters."""
    @property
    def trend_error(self) -> float:
        """Standard error of that."""
    @property
    def last(self) -> float:
        """The last day, in scatters from normal."""
    @property
    def up(self) -> float:
        """The sum of what is too much, after the last day."""
    @property
    def down(self) -> float:
        """The sum of what is too little, after the last day."""
    @property
    def rises(self) -> bool:
        """Which of them gave the alarm."""
    @property
    def alarm(self) -> int | None:
        """Index of the day on which it came; None: it did not."""
    @property
    def since(self) -> int | None:
        """Index of the day from which on it changed."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Drift:
    """All places that were read."""
    @property
    def places(self) -> list[PlaceDrift]:
        """Those with an alarm first, the earliest change first."""
    @property
    def notes(self) -> list[str]:
        """In sentences."""
    def __repr__(self) -> str: ...
    def to_dict(self) -> dict[str, Any]:
        """All that is known, by the names of the members: numbers in SI, words as texts."""
    def to_dataframe(self) -> pandas.DataFrame:
        """One row for each place, in SI, the unit in the column's name; alarm and since are indices of
        days. ImportError without pandas.
        """
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Sums:
    """What a place's sums are after each value, in scatters from normal."""
    @property
    def up(self) -> list[float]:
        """Of what is too much."""
    @property
    def down(self) -> list[float]:
        """Of what is too little."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Weather:
    """The weather of a day, or of the mean day of a week or a month. Humidity is given in one way or
    not at all: dew point, vapour pressure, the day's two extremes (or the maximum alone), its mean.
    """
    def __init__(self, *, reference_evapotranspiration: Velocity | None = None, latitude: Angle = ..., day_of_year: int = 0, altitude: Length | None = None, minimum_temperature: Temperature = ..., maximum_temperature: Temperature = ..., dew_point: Temperature | None = None, vapour_pressure: Pressure | None = None, maximum_humidity: float | None = None, minimum_humidity: float | None = None, mean_humidity: float | None = None, wind: Velocity | None = None, wind_height: Length | None = None, sunshine: Time | None = None, solar_radiation: Irradiance | None = None, heat_into_ground: Irradiance | None = None, coastal: bool = False) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def reference_evapotranspiration(self) -> Velocity | None:
        """Typed in: needs nothing else."""
    @property
    def latitude(self) -> Angle:
        """North is positive."""
    @property
    def day_of_year(self) -> int:
        """1 is the first of January."""
    @property
    def altitude(self) -> Length | None:
        """Default sea level."""
    @property
    def minimum_temperature(self) -> Temperature:
        """Of the day."""
    @property
    def maximum_temperature(self) -> Temperature:
        """Of the day."""
    @property
    def dew_point(self) -> Temperature | None:
        """A Temperature."""
    @property
    def vapour_pressure(self) -> Pressure | None:
        """Mean of the day."""
    @property
    def maximum_humidity(self) -> float | None:
        """Relative, 0 to 1 [-]."""
    @property
    def minimum_humidity(self) -> float | None:
        """Relative, 0 to 1 [-]."""
    @property
    def mean_humidity(self) -> float | None:
        """Relative, 0 to 1 [-]."""
    @property
    def wind(self) -> Velocity | None:
        """Mean of 24 hours."""
    @property
    def wind_height(self) -> Length | None:
        """Of its measurement, default 2 m."""
    @property
    def sunshine(self) -> Time | None:
        """Bright sunshine in the day."""
    @property
    def solar_radiation(self) -> Irradiance | None:
        """Mean of 24 hours; instead of sunshine."""
    @property
    def heat_into_ground(self) -> Irradiance | None:
        """Default 0; matters in monthly means only."""
    @property
    def coastal(self) -> bool:
        """For radiation from temperatures."""
    def replace(self, **changes: Any) -> Weather:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class ReferenceEvapotranspiration:
    """A depth of water a day, and how it was had."""
    @property
    def rate(self) -> Velocity:
        """ET0."""
    @property
    def method(self) -> EvapotranspirationMethod:
        """How it was had."""
    @property
    def estimates(self) -> list[WeatherEstimate]:
        """What stood in for readings that were not there."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class StageLengths:
    """How many days each stage of a crop lasts, from planting, or from leafing out."""
    def __init__(self, *, initial: int = 0, development: int = 0, middle: int = 0, late: int = 0, planted: str = '', region: str = '') -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def initial(self) -> int:
        """Days."""
    @property
    def development(self) -> int:
        """Days."""
    @property
    def middle(self) -> int:
        """Days."""
    @property
    def late(self) -> int:
        """Days."""
    @property
    def planted(self) -> str:
        """Month, of a row of the table."""
    @property
    def region(self) -> str:
        """Of a row of the table."""
    def replace(self, **changes: Any) -> StageLengths:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...
    def total(self) -> int:
        """Days from planting to the end."""

class Crop:
    """A crop, as the published tables describe it."""
    def __init__(self, *, name: str = '', initial_coefficient: float = 0.0, middle_coefficient: float = 0.0, final_coefficient: float = 0.0, height: Length = ..., root_depth_from: Length = ..., root_depth_to: Length = ..., allowed_depletion: float = 0.0, stages: Iterable[StageLengths] = ()) -> None: ...
    @property
    def name(self) -> str:
        """As the table spells it."""
    @property
    def initial_coefficient(self) -> float:
        """Kc [-]."""
    @property
    def middle_coefficient(self) -> float:
        """Kc [-]."""
    @property
    def final_coefficient(self) -> float:
        """At the end of the late stage [-]."""
    @property
    def height(self) -> Length:
        """At most."""
    @property
    def root_depth_from(self) -> Length:
        """The smaller end of the range, which is for deciding when to water."""
    @property
    def root_depth_to(self) -> Length:
        """The larger end."""
    @property
    def allowed_depletion(self) -> float:
        """Share of the available water, where it loses 5 mm/day [-]."""
    @property
    def stages(self) -> tuple[StageLengths, ...]:
        """By region; empty where table 11 has none."""
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def replace(self, **changes: Any) -> Crop:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class Climate:
    """What the tables of coefficients hang on: means of the stage, not of a day."""
    def __init__(self, *, wind: Velocity = ..., minimum_humidity: float = 0.45) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def wind(self) -> Velocity:
        """At 2 m."""
    @property
    def minimum_humidity(self) -> float:
        """The day's least relative humidity [-]."""
    def replace(self, **changes: Any) -> Climate:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class Soil:
    """A soil as it is described: a kind, or what was measured, or both."""
    def __init__(self, *, kind: SoilKind | str | None = None, available_water: float | None = None, intake_rate: Velocity | None = None, slope: float | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def kind(self) -> SoilKind | None:
        """By texture."""
    @property
    def available_water(self) -> float | None:
        """Depth of water in a depth of soil [-]."""
    @property
    def intake_rate(self) -> Velocity | None:
        """Where it lies; the slope does not change it."""
    @property
    def slope(self) -> float | None:
        """Rise over run [-], default level."""
    def replace(self, **changes: Any) -> Soil:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class AvailableWater:
    """A published range of available water."""
    @property
    def least(self) -> float:
        """[-]"""
    @property
    def most(self) -> float:
        """[-]"""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Block:
    """A piece of ground that is watered alike: its lines, its crop and its soil. What is typed in
    takes the place of what the tables say of the crop.
    """
    def __init__(self, *, name: str = '', lines: Iterable[str] = (), crop: str = '', crop_coefficient: float | None = None, stages: StageLengths | None = None, region: str = '', season_day: int | None = None, root_depth: Length | None = None, allowed_depletion: float | None = None, under_cover: bool = False, days_since_filled: int | None = None, soil: Soil = ..., share_wetted: float | None = None, area: Area | None = None, row_spacing: Length | None = None, plant_spacing: Length | None = None, area_per_plant: Area | None = None, efficiency: float | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def name(self) -> str:
        """Its own."""
    @property
    def lines(self) -> tuple[str, ...]:
        """Of the layout, by their names."""
    @property
    def crop(self) -> str:
        """One of crop_names(); empty, or any other name, when all is typed."""
    @property
    def crop_coefficient(self) -> float | None:
        """Kc [-]."""
    @property
    def stages(self) -> StageLengths | None:
        """Days; or region."""
    @property
    def region(self) -> str:
        """A row of the table of stages."""
    @property
    def season_day(self) -> int | None:
        """Today, counted from planting or leafing out."""
    @property
    def root_depth(self) -> Length | None:
        """Where the crop draws water."""
    @property
    def allowed_depletion(self) -> float | None:
        """Share of the available water [-]."""
    @property
    def under_cover(self) -> bool:
        """In a tunnel or glasshouse: the tables do not hold, no rain comes."""
    @property
    def days_since_filled(self) -> int | None:
        """Mornings since water last filled its soil."""
    @property
    def soil(self) -> Soil:
        """What it stands in."""
    @property
    def share_wetted(self) -> float | None:
        """Of the ground that water reaches, default 1 [-]."""
    @property
    def area(self) -> Area | None:
        """Of the whole block."""
    @property
    def row_spacing(self) -> Length | None:
        """With the plant spacing: the area of a plant; or area_per_plant."""
    @property
    def plant_spacing(self) -> Length | None:
        """In the row."""
    @property
    def area_per_plant(self) -> Area | None:
        """That area itself."""
    @property
    def efficiency(self) -> float | None:
        """Share of the water applied that the roots get [-]."""
    def replace(self, **changes: Any) -> Block:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class WaterDay:
    """What came and what the weather asked for on a day."""
    def __init__(self, *, reference_evapotranspiration: Velocity = ..., rain: Length = ..., watering: Length = ..., crop_coefficient: float | None = None, root_depth: Length | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def reference_evapotranspiration(self) -> Velocity:
        """ET0."""
    @property
    def rain(self) -> Length:
        """Measured."""
    @property
    def watering(self) -> Length:
        """Net, over the whole area."""
    @property
    def crop_coefficient(self) -> float | None:
        """Of that day, instead of the block's [-]."""
    @property
    def root_depth(self) -> Length | None:
        """Of that day, instead of the block's."""
    def replace(self, **changes: Any) -> WaterDay:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class SinceRain:
    """Days of one weather: it rained so many mornings ago and has been dry since."""
    def __init__(self, *, days: int = 0, rain: Length = ...) -> None: ...
    @property
    def days(self) -> int:
        """0: this morning."""
    @property
    def rain(self) -> Length:
        """Measured."""
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def replace(self, **changes: Any) -> SinceRain:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class SoilWaterDay:
    """A line of the account. Depths are over the whole area of the block."""
    @property
    def root_depth(self) -> Length:
        """On that day."""
    @property
    def total_available_water(self) -> Length:
        """TAW: that the roots reach."""
    @property
    def readily_available_water(self) -> Length:
        """RAW: that may be used up without harm."""
    @property
    def allowed_depletion(self) -> float:
        """p [-]."""
    @property
    def depletion_before(self) -> Length:
        """At the end of the day before."""
    @property
    def rain(self) -> Length:
        """Measured."""
    @property
    def rain_not_counted(self) -> Length:
        """Too little, or between what is wetted."""
    @property
    def watering(self) -> Length:
        """Net."""
    @property
    def percolation(self) -> Length:
        """Lost below the roots."""
    @property
    def depletion_at_start(self) -> Length:
        """After rain and watering."""
    @property
    def crop_coefficient(self) -> float:
        """Kc [-]."""
    @property
    def stress_coefficient(self) -> float:
        """Ks [-]."""
    @property
    def crop_evapotranspiration(self) -> Length:
        """In the day, with stress."""
    @property
    def depletion_at_end(self) -> Length:
        """In the evening."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class WaterNeed:
    """What a block needs."""
    @property
    def block(self) -> str:
        """Its name."""
    @property
    def days(self) -> list[SoilWaterDay]:
        """The account, up to yesterday."""
    @property
    def today(self) -> SoilWaterDay:
        """If nothing more comes."""
    @property
    def start_is_guessed(self) -> bool:
        """The depletion at the start was assumed, and nothing has filled the account since."""
    @property
    def depletion(self) -> Length:
        """Now."""
    @property
    def crop_evapotranspiration(self) -> Velocity:
        """Without stress, today."""
    @property
    def water_today(self) -> bool:
        """Whether it is time."""
    @property
    def reason(self) -> WaterReason:
        """Why, or why not."""
    @property
    def time_left(self) -> Time | None:
        """Until all is used up that may be, at today's use: less than a day means today. None: nothing
        is used.
        """
    @property
    def net_depth(self) -> Length:
        """Fills the account."""
    @property
    def gross_depth(self) -> Length | None:
        """With the losses; None: no efficiency is given."""
    @property
    def volume(self) -> Volume | None:
        """Gross where known, else net; None: no area."""
    @property
    def volume_per_plant(self) -> Volume | None:
        """Likewise; None: no area per plant."""
    def __repr__(self) -> str: ...
    def to_dict(self) -> dict[str, Any]:
        """All that is known, by the names of the members: numbers in SI, words as texts."""
    def to_dataframe(self) -> pandas.DataFrame:
        """One row for each day of the account: day 0 is today, -1 yesterday. Depths are in metres, as
        the
        columns' names say. ImportError without pandas.
        """
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Ground:
    """The ground that some lines water. Without the spacing or the area no depth is known."""
    def __init__(self, *, lines: Iterable[str] = (), row_spacing: Length | None = None, outlet_spacing: Length | None = None, area: Area | None = None, outlets_per_plant: float | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def lines(self) -> tuple[str, ...]:
        """By name, one or more."""
    @property
    def row_spacing(self) -> Length | None:
        """From line to line; or area."""
    @property
    def outlet_spacing(self) -> Length | None:
        """Beside it; default that of each line."""
    @property
    def area(self) -> Area | None:
        """Of all of it."""
    @property
    def outlets_per_plant(self) -> float | None:
        """Default: flows are told for each outlet [-]."""
    def replace(self, **changes: Any) -> Ground:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class ApplicationRates:
    """Depths of water in a time."""
    @property
    def average(self) -> Velocity:
        """Of all outlets."""
    @property
    def low_quarter(self) -> Velocity:
        """Of the quarter of the outlets that is weakest."""
    @property
    def driest(self) -> Velocity:
        """Of one outlet."""
    @property
    def wettest(self) -> Velocity:
        """Of one outlet."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Application:
    """What comes down."""
    @property
    def lines(self) -> list[str]:
        """Their names."""
    @property
    def flows(self) -> FlowUniformity:
        """Of the outlets; all 0 where no water comes to them."""
    @property
    def total(self) -> Flow:
        """Out of them."""
    @property
    def rates(self) -> ApplicationRates | None:
        """None: no spacing and no area is known."""
    @property
    def distribution(self) -> float:
        """DU of the rates, else of the flows [%]."""
    @property
    def outlets_per_plant(self) -> float | None:
        """As described."""
    @property
    def flow(self) -> FlowSeries:
        """Of each outlet that counts, line by line."""
    @property
    def area(self) -> AreaSeries:
        """That each of them waters; empty where no rates are known."""
    def __repr__(self) -> str: ...
    def to_plant(self, outlet: Flow) -> Flow:
        """The flow to a plant from outlets of this flow; from one outlet where none per plant are
        known.
        """
    def to_dict(self) -> dict[str, Any]:
        """All that is known, by the names of the members: numbers in SI, words as texts."""
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class WaterAmount:
    """What must come to the roots: exactly one of the two. What is lost on the way comes on top."""
    def __init__(self, *, depth: Length | None = None, per_plant: Volume | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def depth(self) -> Length | None:
        """Over the ground."""
    @property
    def per_plant(self) -> Volume | None:
        """To each plant."""
    def replace(self, **changes: Any) -> WaterAmount:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class RunTimeOptions:
    """What the soil and the air do with the water."""
    def __init__(self, *, effective_portion: float = 0.9, served: ServedBy | str = ..., intake_rate: Velocity | None = None, surface_storage: Length = ..., wetting_loss: Length = ...) -> None: ...
    @property
    def effective_portion(self) -> float:
        """Of the water let out that comes to the soil, above 0 to 1 [-]."""
    @property
    def served(self) -> ServedBy:
        """Whom the run is long enough for."""
    @property
    def intake_rate(self) -> Velocity | None:
        """Of the soil; None: not judged."""
    @property
    def surface_storage(self) -> Length:
        """That may stand on the surface."""
    @property
    def wetting_loss(self) -> Length:
        """Wets leaves and litter, and is lost, at each burst."""
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def replace(self, **changes: Any) -> RunTimeOptions:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class Watering:
    """What a run of some length does."""
    @property
    def time(self) -> Time:
        """Of running."""
    @property
    def let_out(self) -> Volume:
        """By all outlets."""
    @property
    def to_the_air(self) -> Volume:
        """Lost."""
    @property
    def to_the_roots(self) -> Volume:
        """Of what was needed."""
    @property
    def deeper(self) -> Volume:
        """Than the roots: more than was needed."""
    @property
    def missing(self) -> Volume:
        """Of what was needed."""
    @property
    def efficiency(self) -> float:
        """to_the_roots / let_out [-]."""
    @property
    def served_share(self) -> float:
        """Of the outlets, that give what is needed [-]."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Bursts:
    """A run in bursts, long enough in all for those who are served."""
    @property
    def bursts(self) -> int:
        """How many."""
    @property
    def each(self) -> Time:
        """How long."""
    @property
    def rest(self) -> Time:
        """Between two, until nothing stands on the surface."""
    @property
    def whole(self) -> Time:
        """From the first start to the last stop."""
    @property
    def standing(self) -> Length:
        """On the surface at the end of a burst, at the wettest outlet."""
    @property
    def runs_off(self) -> bool:
        """More stands than may."""
    @property
    def does(self) -> Watering:
        """All bursts together; wetting losses count as lost to the air."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class RunTime:
    """How long, and what comes of it."""
    @property
    def for_low_quarter(self) -> Time | None:
        """None: the weakest quarter gets nothing."""
    @property
    def for_average(self) -> Time:
        """So that on average enough comes."""
    @property
    def served(self) -> ServedBy:
        """As asked for."""
    @property
    def does(self) -> Watering:
        """A run that is long enough for those who are served."""
    @property
    def longest_burst(self) -> Time | None:
        """None: the soil takes in all, or is not known."""
    @property
    def bursts(self) -> Bursts:
        """As few as run off nothing."""
    def __repr__(self) -> str: ...
    def to_dict(self) -> dict[str, Any]:
        """All that is known, by the names of the members: numbers in SI, words as texts."""
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class BucketStep:
    """How a bucket stands at one moment."""
    @property
    def time(self) -> Time:
        """Since it was full."""
    @property
    def run_out(self) -> Volume:
        """Since then."""
    @property
    def outflow(self) -> Flow:
        """Out of its hole."""
    @property
    def level(self) -> Length:
        """Above the hole."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class BucketFills:
    """What it takes to give so much."""
    @property
    def whole(self) -> int:
        """Fills that run out wholly."""
    @property
    def last(self) -> Volume:
        """Out of one more; 0: none is needed."""
    @property
    def time(self) -> Time:
        """Of running, all fills together."""
    def __repr__(self) -> str: ...
    def fills(self) -> int:
        """Whole ones, and the last."""
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class BucketRun:
    """One fill of a bucket, and what a need takes."""
    @property
    def holds(self) -> Volume:
        """Above the hole."""
    @property
    def empty(self) -> Time:
        """After this time."""
    @property
    def at_first(self) -> Flow:
        """While it is full."""
    @property
    def steps(self) -> list[BucketStep]:
        """Evenly spaced in time, first full, last empty."""
    @property
    def for_need(self) -> BucketFills | None:
        """None: none was asked for."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class LineVolume:
    """What a line holds."""
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def volume(self) -> Volume:
        """Of its bore, risers included."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Filling:
    """Filling the lines to which water comes, and the way back."""
    @property
    def lines(self) -> list[LineVolume]:
        """One after the other."""
    @property
    def volume(self) -> Volume:
        """Of all of them."""
    @property
    def gentle_flow(self) -> Flow:
        """That moves at the velocity asked for."""
    @property
    def flow(self) -> Flow:
        """At which they are filled."""
    @property
    def time(self) -> Time:
        """At that flow."""
    @property
    def velocity(self) -> Velocity:
        """At that flow, in the pipes that begin at the supplies together."""
    @property
    def run_out(self) -> Volume:
        """When all is shut off; the most there can be."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class InterruptedRun:
    """When, since the start of the run."""
    def __init__(self, *, planned: Time = ..., broke: Time = ..., stopped: Time = ...) -> None: ...
    @property
    def planned(self) -> Time:
        """How long it should have run."""
    @property
    def broke(self) -> Time:
        """0 to `stopped`."""
    @property
    def stopped(self) -> Time:
        """May be later than planned, if nobody looked."""
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def replace(self, **changes: Any) -> InterruptedRun:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class MissedOnLine:
    """What the outlets of one line missed."""
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def missed(self) -> VolumeSeries:
        """One entry an outlet; below 0: it has had more than it should."""
    @property
    def missed_depth(self) -> LengthSeries:
        """Empty where its ground is not known."""
    @property
    def missed_in_all(self) -> Volume:
        """Of the outlets that missed some."""
    @property
    def for_weakest(self) -> Time:
        """Still due, once it is started again."""
    @property
    def weakest(self) -> int:
        """The outlet that is due longest, from 1 on; 0: none is due."""
    @property
    def on_average(self) -> Time:
        """Still due."""
    @property
    def out_of_service(self) -> list[int]:
        """That missed some and get none any more: capped, or dry."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class MissedWater:
    """What each outlet missed while something was broken."""
    @property
    def lines(self) -> list[MissedOnLine]:
        """That should have had water."""
    @property
    def pumped(self) -> Volume:
        """Until it was stopped."""
    @property
    def given(self) -> Volume:
        """By whole outlets."""
    @property
    def lost(self) -> Volume:
        """Through breaks, leaks and open ends."""
    @property
    def for_weakest(self) -> Time:
        """The longest of the lines."""
    def __repr__(self) -> str: ...
    def to_dict(self) -> dict[str, Any]:
        """All that is known, by the names of the members: numbers in SI, words as texts."""
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class PipeWall:
    """What the wall of a pipe is."""
    def __init__(self, *, inside_diameter: Length = ..., thickness: Length = ..., modulus: Pressure = ...) -> None: ...
    @property
    def inside_diameter(self) -> Length:
        """D."""
    @property
    def thickness(self) -> Length:
        """t."""
    @property
    def modulus(self) -> Pressure:
        """E, of elasticity."""
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def replace(self, **changes: Any) -> PipeWall:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class StoppedWater:
    """Water in one pipe that is stopped."""
    def __init__(self, *, length: Length = ..., velocity: Velocity = ..., wave_speed: Velocity = ..., density: Density = ...) -> None: ...
    @property
    def length(self) -> Length:
        """From where the pressure is held: the supply, a tank."""
    @property
    def velocity(self) -> Velocity:
        """That is taken away."""
    @property
    def wave_speed(self) -> Velocity:
        """a."""
    @property
    def density(self) -> Density:
        """Of the water."""
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def replace(self, **changes: Any) -> StoppedWater:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class KnownWall:
    """The wall of pipes of this name, where the tables do not know it or somebody knows better."""
    def __init__(self, *, pipe: str = '', thickness: Length | None = None, modulus: Pressure | None = None) -> None: ...
    @property
    def pipe(self) -> str:
        """Empty: all the others."""
    @property
    def thickness(self) -> Length | None:
        """Default by the table of the kind."""
    @property
    def modulus(self) -> Pressure | None:
        """Default by the kind."""
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def replace(self, **changes: Any) -> KnownWall:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class LineSurge:
    """The water of one line, stopped where it leaves it."""
    @property
    def line(self) -> str:
        """Name of the line."""
    @property
    def pipe_name(self) -> str:
        """That has the least to spare."""
    @property
    def velocity(self) -> Velocity:
        """Highest in that pipe."""
    @property
    def wave_speed(self) -> Velocity:
        """In that pipe."""
    @property
    def wall_known(self) -> bool:
        """False: taken for stiff, the worst."""
    @property
    def way(self) -> Length:
        """Of the water from the supply to the line's far end."""
    @property
    def reflection(self) -> Time:
        """2 L / a over that way."""
    @property
    def closing(self) -> Time:
        """As asked for."""
    @property
    def rise_at_once(self) -> Pressure:
        """If it stops at once."""
    @property
    def rise(self) -> Pressure:
        """With that closing."""
    @property
    def steady(self) -> Pressure:
        """Highest in that pipe."""
    @property
    def rating(self) -> Pressure | None:
        """With its derating; None: not known."""
    @property
    def shortest_closing(self) -> Time | None:
        """0: at once; None: no rating, or none to spare."""
    def __repr__(self) -> str: ...
    def is_safe(self) -> bool:
        """Whether the rating is kept; False where it is not known."""
    def to_dict(self) -> dict[str, Any]:
        """All that is known, by the names of the members: numbers in SI, words as texts."""
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class SetToWater:
    """One set that is to be watered: for a time, or for what is needed on its ground."""
    def __init__(self, *, set: str = '', time: Time | None = None, need: WaterAmount | None = None, ground: Ground = ...) -> None: ...
    @property
    def set(self) -> str:
        """Its name."""
    @property
    def time(self) -> Time | None:
        """Or need."""
    @property
    def need(self) -> WaterAmount | None:
        """A WaterAmount, on the ground."""
    @property
    def ground(self) -> Ground:
        """No lines named: all that the set opens."""
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def replace(self, **changes: Any) -> SetToWater:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class WaterPrices:
    """Prices; money is a plain number, in any one currency."""
    def __init__(self, *, of_volume: float | None = None, volume: Volume = ..., of_energy: float | None = None, energy: Energy = ..., of_pump_time: float | None = None, pump_time: Time = ...) -> None: ...
    @property
    def of_volume(self) -> float | None:
        """None: water costs nothing."""
    @property
    def volume(self) -> Volume:
        """For which that is paid."""
    @property
    def of_energy(self) -> float | None:
        """At the shaft."""
    @property
    def energy(self) -> Energy:
        """For which that is paid."""
    @property
    def of_pump_time(self) -> float | None:
        """Of the hours it runs."""
    @property
    def pump_time(self) -> Time:
        """For which that is paid."""
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def replace(self, **changes: Any) -> WaterPrices:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class Turn:
    """Sets that run at once for a while."""
    @property
    def sets(self) -> list[str]:
        """Their names."""
    @property
    def fill_from(self) -> Time:
        """Since midnight, like the next two."""
    @property
    def start(self) -> Time:
        """All lines are full."""
    @property
    def stop(self) -> Time:
        """All is shut, or the next turn begins."""
    @property
    def speed(self) -> RotationalSpeed | None:
        """None: a held pressure, or it cannot be set."""
    @property
    def pressure(self) -> Pressure:
        """Before the filter."""
    @property
    def gauge_reading(self) -> Pressure | None:
        """None: there is no gauge."""
    @property
    def reached(self) -> bool:
        """Every outlet has its share of rated."""
    @property
    def limits(self) -> list[SupplyLimit]:
        """That are passed."""
    @property
    def flow(self) -> Flow:
        """Out of all supplies."""
    @property
    def fill(self) -> Volume:
        """Into lines that were empty."""
    @property
    def let_out(self) -> Volume:
        """By whole outlets."""
    @property
    def lost(self) -> Volume:
        """Through breaks, leaks and open ends."""
    @property
    def run_out(self) -> Volume:
        """The most that leaves its lines if all is shut off after it; not pumped."""
    @property
    def water_energy(self) -> Energy:
        """Into the water."""
    @property
    def shaft_energy(self) -> Energy | None:
        """None: the efficiency is not known there."""
    def __repr__(self) -> str: ...
    def pumped(self) -> Volume:
        """fill, let_out and lost together."""
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class SetDay:
    """How a set fares."""
    @property
    def set(self) -> str:
        """Its name."""
    @property
    def runs(self) -> Time:
        """In all."""
    @property
    def share(self) -> float:
        """Of what it needs [-]."""
    @property
    def let_out(self) -> Volume:
        """By whole outlets."""
    @property
    def still_needs(self) -> Time | None:
        """As it ran last, or alone; None: nothing, or not known."""
    @property
    def why_left(self) -> WhyLeft | None:
        """None: it has all."""
    @property
    def limits(self) -> list[SupplyLimit]:
        """That stand in its way, run alone."""
    @property
    def application(self) -> Application | None:
        """As it ran last; None: it did not run."""
    @property
    def run(self) -> RunTime | None:
        """For its need, as it ran last; None: it runs for a time."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class DayPlan:
    """The watering day."""
    @property
    def turns(self) -> list[Turn]:
        """In their order."""
    @property
    def sets(self) -> list[SetDay]:
        """In the order in which they were asked for."""
    @property
    def earliest(self) -> Time:
        """As it was asked for."""
    @property
    def latest(self) -> Time:
        """As it was asked for."""
    @property
    def pumped(self) -> Volume:
        """fill, let_out and lost together."""
    @property
    def let_out(self) -> Volume:
        """By whole outlets."""
    @property
    def lost(self) -> Volume:
        """Through breaks, leaks and open ends."""
    @property
    def fill(self) -> Volume:
        """Into lines that were empty."""
    @property
    def pump_time(self) -> Time:
        """Filling counts."""
    @property
    def water_energy(self) -> Energy:
        """Into the water."""
    @property
    def shaft_energy(self) -> Energy | None:
        """None: not known of some turn."""
    @property
    def cost(self) -> float | None:
        """Money; None: no prices, or not known."""
    def __repr__(self) -> str: ...
    def all_fits(self) -> bool:
        """Whether every set has what it needs."""
    def to_dict(self) -> dict[str, Any]:
        """All that is known, by the names of the members: numbers in SI, words as texts."""
    def to_dataframe(self) -> pandas.DataFrame:
        """One row for each turn, with the columns of to_csv: numbers in SI, the unit in the column's
        name; NaN where something is not known. ImportError without pandas.
        """
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class TodaysSets:
    """The sets of a layout, by what its blocks need."""
    @property
    def to_water(self) -> list[SetToWater]:
        """In the order of the layout."""
    @property
    def enough(self) -> list[str]:
        """Of blocks that need no water today."""
    @property
    def no_block(self) -> list[str]:
        """Whose outlets stand in no block."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class FileLimits:
    """The most that a description file may hold of each."""
    def __init__(self, *, bytes: int = 8388608, values: int = 1000000, nesting: int = 64, text: int = 1000, mistakes: int = 100000, definitions: int = 10000, supplies: int = 1000, lines: int = 100000, outlets: int = 1000000, reaches: int = 1000, points: int = 100, sets: int = 10000, faults: int = 10000, readings: int = 1000) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def bytes(self) -> int:
        """Of the file, 1 to 2^30."""
    @property
    def values(self) -> int:
        """Keys, tables and elements of lists, from 1 on."""
    @property
    def nesting(self) -> int:
        """Of lists and tables in one another, 1 to 200."""
    @property
    def text(self) -> int:
        """Bytes of a name, quantity, number or other word."""
    @property
    def mistakes(self) -> int:
        """Collected before the file is given up, from 1 on."""
    @property
    def definitions(self) -> int:
        """Kinds of pipe, of outlet, and blocks, each."""
    @property
    def supplies(self) -> int:
        """Further ones."""
    @property
    def lines(self) -> int:
        """At most 100000 in any layout."""
    @property
    def outlets(self) -> int:
        """Of all lines; at most 1000000 in any layout."""
    @property
    def reaches(self) -> int:
        """Of one line."""
    @property
    def points(self) -> int:
        """Of one curve."""
    @property
    def sets(self) -> int:
        """Of [[set]]."""
    @property
    def faults(self) -> int:
        """Of [[fault]]."""
    @property
    def readings(self) -> int:
        """And as many sights."""
    def replace(self, **changes: Any) -> FileLimits:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class Blocks:
    """What a description file tells of ground and weather."""
    @property
    def blocks(self) -> list[Block]:
        """In the order of their names."""
    @property
    def weather(self) -> Weather | None:
        """None: the file has no [weather]."""
    @property
    def since_rain(self) -> SinceRain | None:
        """Of [weather]: days_since_rain, rain."""
    def __repr__(self) -> str: ...
    def __init__(self, *args: NoReturn, **kwargs: NoReturn) -> None:
        """TypeError: only the library makes it."""

class Readings:
    """What was read and seen on a walk; both may be empty."""
    def __init__(self, *, readings: Iterable[Reading] = (), sights: Iterable[Sight] = ()) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def readings(self) -> tuple[Reading, ...]:
        """Figures."""
    @property
    def sights(self) -> tuple[Sight, ...]:
        """What was seen."""
    def replace(self, **changes: Any) -> Readings:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

class SeenBy:
    """What one gauge, meter or bucket can see."""
    def __init__(self, *, reading: Reading = ..., candidates: Iterable[Detectable] = ()) -> None: ...
    @property
    def reading(self) -> Reading:
        """Its place and errors."""
    @property
    def candidates(self) -> tuple[Detectable, ...]:
        """Of detectable()."""
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def replace(self, **changes: Any) -> SeenBy:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...
ft: LengthUnit
inch: LengthUnit
m: LengthUnit
mm: LengthUnit
cm: LengthUnit
km: LengthUnit
ft2: AreaUnit
m2: AreaUnit
cm2: AreaUnit
acre: AreaUnit
hectare: AreaUnit
gallon: VolumeUnit
litre: VolumeUnit
m3: VolumeUnit
s: TimeUnit
min: TimeUnit
h: TimeUnit
day: TimeUnit
ft_per_s: VelocityUnit
m_per_s: VelocityUnit
inch_per_h: VelocityUnit
mm_per_h: VelocityUnit
inch_per_day: VelocityUnit
mm_per_day: VelocityUnit
psi: PressureUnit
kPa: PressureUnit
bar: PressureUnit
MPa: PressureUnit
Pa: PressureUnit
mH2O: PressureUnit
ftH2O: PressureUnit
inHg: PressureUnit
kg_per_m3: DensityUnit
lb_per_ft3: DensityUnit
mPa_s: DynamicViscosityUnit
Pa_s: DynamicViscosityUnit
mm2_per_s: KinematicViscosityUnit
m2_per_s: KinematicViscosityUnit
degC: TemperatureUnit
degF: TemperatureUnit
K: TemperatureUnit
gpm: FlowUnit
gph: FlowUnit
lpm: FlowUnit
lph: FlowUnit
lps: FlowUnit
m3_per_h: FlowUnit
m3_per_s: FlowUnit
ft3_per_s: FlowUnit
rpm: RotationalSpeedUnit
rps: RotationalSpeedUnit
hp: PowerUnit
kW: PowerUnit
W: PowerUnit
kWh: EnergyUnit
J: EnergyUnit
degree: AngleUnit
radian: AngleUnit
MJ_per_m2_day: IrradianceUnit
W_per_m2: IrradianceUnit
gravity: float

Fault: TypeAlias = (
    HeadOff | RiserSheared | NozzleMissing | Clogged | Worn | WrongOutlet | Capped | Leak
    | LineCut | EndOpen | ValvePartClosed | ValveLeftOpen | RegulatorStuckOpen |
    RegulatorStuckShut | PumpWorn | EngineSlow | FilterDirty
)
most_outlets: int
most_lines: int
most_further_supplies: int
same_place: Length
same_height: Length
bulk_modulus_of_water: Pressure

@overload
def to_text(quantity: Length, unit: LengthUnit) -> str: ...
@overload
def to_text(quantity: Area, unit: AreaUnit) -> str: ...
@overload
def to_text(quantity: Volume, unit: VolumeUnit) -> str: ...
@overload
def to_text(quantity: Time, unit: TimeUnit) -> str: ...
@overload
def to_text(quantity: Velocity, unit: VelocityUnit) -> str: ...
@overload
def to_text(quantity: Pressure, unit: PressureUnit) -> str: ...
@overload
def to_text(quantity: Density, unit: DensityUnit) -> str: ...
@overload
def to_text(quantity: DynamicViscosity, unit: DynamicViscosityUnit) -> str: ...
@overload
def to_text(quantity: KinematicViscosity, unit: KinematicViscosityUnit) -> str: ...
@overload
def to_text(quantity: Temperature, unit: TemperatureUnit) -> str: ...
@overload
def to_text(quantity: Flow, unit: FlowUnit) -> str: ...
@overload
def to_text(quantity: RotationalSpeed, unit: RotationalSpeedUnit) -> str: ...
@overload
def to_text(quantity: Power, unit: PowerUnit) -> str: ...
@overload
def to_text(quantity: Energy, unit: EnergyUnit) -> str: ...
@overload
def to_text(quantity: Angle, unit: AngleUnit) -> str: ...
@overload
def to_text(quantity: Irradiance, unit: IrradianceUnit) -> str:
    """The shortest text that stands for the quantity in this unit. TypeError for a unit of another
    quantity.

    >>> to_text(25 * psi, kPa)
    '172.36893232920903 kPa'
    """

def unit_set(system: UnitSystem | str) -> UnitSet:
    """The units of a system, "us" or "si".

    >>> unit_set("us").flow
    gpm
    """

def density_of_water(temperature: Temperature) -> Density:
    """Density at atmospheric pressure, against IAPWS-95. InvalidInput outside 0 to 100 degC.

    >>> round(density_of_water(20 * degC).to(kg_per_m3), 1)
    998.2
    """

def viscosity_of_water(temperature: Temperature) -> DynamicViscosity:
    """Dynamic viscosity at atmospheric pressure. InvalidInput outside 0 to 100 degC.

    >>> round(viscosity_of_water(20 * degC).to(mPa_s), 3)
    1.002
    """

def vapour_pressure_of_water(temperature: Temperature) -> Pressure:
    """Absolute. InvalidInput outside 0 to 100 degC.

    >>> round(vapour_pressure_of_water(20 * degC).to(kPa), 2)
    2.34
    """

def properties(water: Water) -> WaterProperties:
    """The water as it is calculated with. InvalidInput when problems(water) is not empty.

    >>> properties(Water(density=1000 * kg_per_m3)).density
    1000 * kg_per_m3
    """

def area(pipe: Pipe) -> Area:
    """Area of the bore.

    >>> round(area(Pipe(inside_diameter=2 * inch)).to(cm2), 2)
    20.27
    """

def nominal_size(size: str, kind: str) -> NominalSize:
    """What the standard says of one size, a text with a unit, of one of pipe_kinds(). InvalidInput
    naming the kinds or sizes that would be accepted.

    >>> nominal_size("1-1/2 in", "PVC Class 160").inside_diameter
    1.734 * inch
    """

def nominal_pipe(size: str, kind: str) -> Pipe:
    """The same, ready for a layout: average bore, usual coefficient, rating.

    >>> nominal_pipe("3 in", "PVC Class 160").hazen_williams
    150.0
    """

def temperature_factor(kind: str, temperature: Temperature) -> float | None:
    """What is left of the pressure rating when pipe and water are warm, 0 to 1 [-]; None where nothing
    is known. InvalidInput outside -40 to 100 degC.

    >>> round(temperature_factor("PVC Sch 40", 110 * degF), 2)
    0.5
    """

def pipe_kinds() -> list[str]:
    """The kinds of pipe that nominal_pipe knows, as they are spelt in a file.

    >>> pipe_kinds()[0]
    'PVC Sch 40'
    """

def pipe_sizes(kind: str) -> list[str]:
    """The sizes of a kind, from small to large.

    >>> pipe_sizes("PVC Sch 40")[:3]
    ['1/2 in', '3/4 in', '1 in']
    """

def velocity(pipe: Pipe, flow: Flow) -> Velocity:
    """Mean over the bore.

    >>> speed = velocity(nominal_pipe("2 in", "PVC Sch 40"), 30 * gpm)
    >>> round(speed.to(ft_per_s), 2)
    2.92
    """

def reynolds_number(pipe: Pipe, flow: Flow, water: WaterProperties) -> float:
    """Re = V D / nu [-].

    >>> pipe = Pipe(inside_diameter=50 * mm, roughness=0 * mm)
    >>> round(reynolds_number(pipe, 1 * lps, properties(Water())), -2)
    25400.0
    """

def colebrook_white(reynolds: float, relative_roughness: float) -> float:
    """Friction factor of turbulent flow [-]: C. F. Colebrook, J. Inst. Civ. Eng. 11 (1939), equation
    13. Re 100 to 1e12, k/D 0 to 0.05; InvalidInput outside.

    >>> round(colebrook_white(1e5, 0), 4)
    0.018
    """

def friction_loss(pipe: Pipe, length: Length, flow: Flow, water: WaterProperties) -> Length:
    """Head lost to the wall over a length, by the law that the pipe's wall chooses: Hazen-Williams h =
    10.67 L Q^1.852 / (C^1.852 D^4.8704) [m, m3/s], or Darcy-Weisbach.

    >>> lateral = Pipe(inside_diameter=1.754 * inch, hazen_williams=150)
    >>> loss = friction_loss(lateral, 100 * ft, 20 * gpm, properties(Water()))
    >>> round(loss.to(ft), 2)
    1.62
    """

def fitting_loss(pipe: Pipe, loss_coefficient: float, flow: Flow) -> Length:
    """Head lost in a fitting, h = K V^2 / (2 g).

    >>> round(fitting_loss(nominal_pipe("2 in", "PVC Sch 40"), 0.5, 30 * gpm).to(ft), 3)
    0.066
    """

def discharge(outlet: Outlet, pressure: Pressure, density: Density = ...) -> Flow:
    """Flow at this pressure at the device; 0 for a pressure of 0 or less. The density is for a nozzle.
    InvalidInput for problems(outlet).

    >>> discharge(Outlet(flow=1 * gpm, at=20 * psi), 80 * psi)
    2 * gpm
    """

def is_below(pressure: Pressure, limit: Pressure) -> bool:
    """Whether it is below by more than a millionth.

    >>> is_below(24.9 * psi, 25 * psi)
    True
    """

def is_above(pressure: Pressure, limit: Pressure) -> bool:
    """Whether it is above by more than a millionth.

    >>> is_above(25.0000001 * psi, 25 * psi)
    False
    """

def atmospheric_pressure(site: Site) -> Pressure:
    """Absolute pressure of the air: ICAO Standard Atmosphere, Doc 7488.

    >>> atmospheric_pressure(Site()).to(kPa)
    101.325
    """

def head(pressure: Pressure, density: Density) -> Length:
    """Head of a column of water, H = p / (rho g).

    >>> round(head(1 * psi, 1000 * kg_per_m3).to(ft), 3)
    2.307
    """

def pressure(head: Length, density: Density) -> Pressure:
    """Pressure at the foot of a column of water, p = rho g H.

    >>> pressure(10 * m, 1000 * kg_per_m3).to(kPa)
    98.0665
    """

def pump_head(pump: Pump, flow: Flow, speed: RotationalSpeed | None = None) -> Length:
    """Head at a flow with the pump turning at its speed, or at this one; without droop. InvalidInput
    for problems(pump), or a speed without a curve_speed.

    >>> pump = Pump(points=[PumpPoint(flow=0 * gpm, head=150 * ft),
    ...                     PumpPoint(flow=100 * gpm, head=125 * ft)], curve_speed=2600 * rpm)
    >>> round(pump_head(pump, 60 * gpm).to(ft), 6)
    141.0
    >>> round(pump_head(pump, 30 * gpm, 1300 * rpm).to(ft), 6)
    35.25
    """

@overload
def fit_of(points: Iterable[RatedPoint]) -> PointsFit: ...
@overload
def fit_of(points: Pump) -> PumpFit:
    """How a curve meets the points of a catalogue: least squares of ln q on ln p for an outlet's,
    InvalidInput for fewer than two of them, or pressures that are all the same; or that of a pump,
    which has its own points, InvalidInput for problems(pump).

    >>> fit = fit_of([RatedPoint(pressure=20 * psi, flow=1 * gpm),
    ...               RatedPoint(pressure=80 * psi, flow=2 * gpm)])
    >>> round(fit.exponent, 6)
    0.5
    >>> pump = Pump(points=[PumpPoint(flow=60 * gpm, head=141 * ft),
    ...                     PumpPoint(flow=100 * gpm, head=125 * ft)])
    >>> round(fit_of(pump).head_at_rest.to(ft), 6)
    150.0
    """

def hydrant_pressure(hydrant: Hydrant, flow: Flow) -> Pressure:
    """What the gauge shows while this flow, 0 or more, runs; below 0 where the main does not give as
    much. InvalidInput for problems(hydrant).

    >>> main = Hydrant(pressure_at_rest=60 * psi, residual_pressure=40 * psi, flow=500 * gpm)
    >>> round(hydrant_pressure(main, 500 * gpm).to(psi), 6)
    40.0
    """

def hydrant_flow(hydrant: Hydrant, pressure: Pressure) -> Flow:
    """The flow that brings the gauge down to this pressure, 0 to the one at rest: NFPA 291.
    InvalidInput for problems(hydrant).

    >>> main = Hydrant(pressure_at_rest=60 * psi, residual_pressure=40 * psi, flow=500 * gpm)
    >>> round(hydrant_flow(main, 20 * psi).to(gpm))
    727
    """

def takes_water_in(supply: Supply) -> bool:
    """Whether it takes water in where other supplies push it: a held pressure and a tank do.

    >>> takes_water_in(Supply(tank=Tank(level=20 * ft)))
    True
    """

def operating_point(supply: Supply, flow: Flow, water: Water | None = None, site: Site | None = None) -> OperatingPoint:
    """What the supply does while this flow leaves it, 0 or more, unless it takes_water_in.
    InvalidInput for problems of the parts.

    >>> main = Hydrant(pressure_at_rest=60 * psi, residual_pressure=40 * psi, flow=500 * gpm)
    >>> round(operating_point(Supply(hydrant=main), 250 * gpm).pressure.to(psi), 1)
    54.5
    """

def limits_passed(supply: Supply, point: OperatingPoint) -> list[SupplyLimit]:
    """What the supply should not be asked to do and is, each once; a limit that is not given is not
    judged. point: as operating_point gives it.

    >>> pump = Pump(points=[PumpPoint(flow=0 * gpm, head=150 * ft),
    ...                     PumpPoint(flow=100 * gpm, head=125 * ft)], least_flow=20 * gpm)
    >>> limits_passed(Supply(pump=pump), operating_point(Supply(pump=pump), 5 * gpm))
    [SupplyLimit.least_flow]
    """

def pump_from_readings(readings: Iterable[PumpReading], *, suction: Suction | None = None, gauge: Gauge | None = None, filter: Filter | None = None, speed: RotationalSpeed | None = None, water: Water | None = None) -> PumpFromReadings:
    """A pump's curve H = a - b Q^2 from what was read at its gauge while the flow was measured, with
    its uncertainty (JCGM 100:2008, equation 10). InvalidInput for fewer than two readings, heads
    that do not fall, and a gauge whose uncertainty and range are both unknown.
    suction: None: water at the pump's height, no loss. gauge: None: at the pump's height. filter:
    that the gauge may stand behind. speed: at which the pump ran, all the time.

    >>> closed = PumpReading(gauge=50 * psi, flow=0 * gpm)
    >>> open_to_buckets = PumpReading(gauge=42 * psi, flow=60 * gpm)
    >>> curve = pump_from_readings([closed, open_to_buckets], gauge=Gauge(range=100 * psi))
    >>> round(curve.head_at_rest.head.to(ft), 1), round(curve.head_at_rest.uncertainty.to(ft), 1)
    (115.5, 4.0)
    """

def loss_coefficient(valve: Valve) -> float:
    """K on the line's velocity head [-]: B. R. Munson et al., Fundamentals of Fluid Mechanics, table
    8.2, from memory. InvalidInput for problems(valve), or one that is shut.

    >>> loss_coefficient(Valve(kind="gate", opening="half closed"))
    2.1
    """

def head_off(line: str, outlet: int, loss_coefficient: float | None = None) -> HeadOff:
    """The outlet is knocked off and its riser stands open at the top. Outlets count from 1.
    loss_coefficient: K of the break [-], default the riser's own where given, else 1.

    >>> head_off("row 1", 7)
    head_off('row 1', 7)
    """

def riser_sheared(line: str, outlet: int, stub: Length | None = None, loss_coefficient: float | None = None) -> RiserSheared:
    """The riser is sheared off and a stub stands open. Outlets count from 1.
    stub: its height, default 0.5 ft or the riser if that is shorter.
    loss_coefficient: K of the break [-], default the riser's own where given, else 1.

    >>> riser_sheared("row 1", 7, stub=3 * inch)
    riser_sheared('row 1', 7, stub=3 * inch)
    """

def nozzle_missing(line: str, outlet: int, bore: Length | None = None, discharge_coefficient: float | None = None) -> NozzleMissing:
    """The nozzle is lost and the body's bore stands open, q = Cd A sqrt(2 p / rho).
    bore: default the outlet's body_bore. discharge_coefficient: Cd [-], default 0.85.

    >>> nozzle_missing("row 1", 7, bore=0.3 * inch)
    nozzle_missing('row 1', 7, bore=0.3 * inch)
    """

def clogged(line: str, outlet: int, share: float) -> Clogged:
    """Something sits in the nozzle. share: of the flow that is lost, above 0 and below 1 [-].

    >>> clogged("row 1", 7, 0.6).share
    0.6
    """

def worn(line: str, outlet: int, share: float) -> Worn:
    """The nozzle is worn. share: of the flow that is gained, above 0 to 10 [-].

    >>> worn("row 1", 7, 0.25).outlet
    7
    """

def wrong_outlet(line: str, outlet: int, fitted: Outlet) -> WrongOutlet:
    """An outlet of another kind stands there, and is judged by its own rating.

    >>> wrong_outlet("row 1", 7, Outlet(flow=4 * gpm, at=25 * psi)).fitted.flow
    4 * gpm
    """

def capped(line: str, outlet: int) -> Capped:
    """The outlet is closed on purpose. Outlets count from 1.

    >>> capped("row 1", 7)
    capped('row 1', 7)
    """

def leak(line: str, place: Length, flow: Flow, at: Pressure, exponent: float | None = None) -> Leak:
    """A hole in the line at a distance from its inlet, q = flow (p / at)^exponent, p in the line.
    exponent: 0.1 to 1.5 [-], default 0.5.

    >>> leak("row 1", 120 * ft, 2 * gpm, 30 * psi)
    leak('row 1', 120 * ft, 2 * gpm, 30 * psi)
    """

def line_cut(line: str, place: Length) -> LineCut:
    """The line is cut through at a distance from its inlet: both ends stand open, and no water passes.

    >>> line_cut("row 1", 120 * ft)
    line_cut('row 1', 120 * ft)
    """

def end_open(line: str) -> EndOpen:
    """The cap or flush valve at the far end is open.

    >>> end_open("row 1")
    end_open('row 1')
    """

def valve_part_closed(line: str, loss_coefficient: float) -> ValvePartClosed:
    """The valve at the line's inlet is not fully open: K [-] on the line's velocity head.

    >>> valve_part_closed("row 1", 40)
    valve_part_closed('row 1', 40.0)
    """

def valve_left_open(line: str) -> ValveLeftOpen:
    """The valve of a line that should be shut, by itself or by the sets that run, is open.

    >>> valve_left_open("row 3")
    valve_left_open('row 3')
    """

def regulator_stuck_open(line: str, outlet: int | None = None) -> RegulatorStuckOpen:
    """A regulator no longer regulates: all pressure comes through.
    outlet: the one whose own it is, from 1 on; None: the line's.

    >>> regulator_stuck_open("hops", 7)
    regulator_stuck_open('hops', outlet=7)
    """

def regulator_stuck_shut(line: str, outlet: int | None = None) -> RegulatorStuckShut:
    """A regulator lets nothing through.
    outlet: the one whose own it is, from 1 on; None: the line's.

    >>> regulator_stuck_shut("hops")
    regulator_stuck_shut('hops')
    """

def pump_worn(share: float, pump: int | None = None, supply: str = '') -> PumpWorn:
    """Worn impeller or rings. share: of the head that is lost at every flow, above 0 and below 1 [-].
    pump: 1 or 2, default the first. supply: name of a further one; empty: the first.

    >>> pump_worn(0.15)
    pump_worn(0.15)
    """

def engine_slow(speed: RotationalSpeed, pump: int | None = None, supply: str = '') -> EngineSlow:
    """The engine does not reach its speed. speed: that it reaches.
    pump: 1 or 2, default the first. supply: name of a further one; empty: the first.

    >>> engine_slow(2000 * rpm)
    engine_slow(2000 * rpm)
    """

def filter_dirty(loss: Pressure, supply: str = '') -> FilterDirty:
    """Dirt in the filter. loss: that it takes now, at the flow at which it is rated.
    supply: name of a further one; empty: the first.

    >>> filter_dirty(6 * psi, supply="creek")
    filter_dirty(6 * psi, supply='creek')
    """

def line_of(fault: Fault) -> str:
    """Name of the line; empty: the fault is a supply's.

    >>> line_of(end_open("row 1"))
    'row 1'
    """

def outlet_of(fault: Fault) -> int | None:
    """From 1 on; None: the fault is the line's or a supply's.

    >>> outlet_of(head_off("row 1", 7))
    7
    """

def is_of_the_supply(fault: Fault) -> bool:
    """Whether it is of the pump, the engine or the filter.

    >>> is_of_the_supply(pump_worn(0.15))
    True
    """

def is_of_first_supply(fault: Fault) -> bool:
    """Whether it is of the pump, the engine or the filter of the first supply.

    >>> is_of_first_supply(pump_worn(0.15, supply="creek"))
    False
    """

def supply_of(fault: Fault) -> str:
    """Of a fault that is_of_the_supply, the name of the further one; empty: the first one's.

    >>> supply_of(filter_dirty(6 * psi, supply="creek"))
    'creek'
    """

def with_faults(supply: Supply, faults: Iterable[Fault]) -> Supply:
    """The supply with what its faults change; those of lines and of other supplies change nothing.

    >>> sound = Supply(pressure=40 * psi, filter=Filter(loss=1.5 * psi, at=80 * gpm))
    >>> with_faults(sound, [filter_dirty(6 * psi)]).filter
    Filter(loss=6 * psi, at=80 * gpm)
    """

def kind_of(fault: Fault) -> str:
    """As it is spelt in a file.

    >>> kind_of(head_off("row 1", 7))
    'head off'
    """

def begins_at(line: Line, feeder: Line) -> Length:
    """Where on its feeder a line begins.

    >>> main = Line(name="main", length=180 * ft)
    >>> begins_at(Line(name="row 1", fed_by="main"), main)
    180 * ft
    """

def ends_at(line: Line, joined: Line) -> Length:
    """Where on the line that it joins a line ends.

    >>> row = Line(name="row 1", count=10, spacing=20 * ft)
    >>> ends_at(Line(name="cross pipe", joins="row 1", joins_outlet=7), row)
    140 * ft
    """

def open_riser(fault: Fault, line: Line) -> OpenRiser | None:
    """The open riser that this fault leaves on this line; None for the others. Needs no bore.

    >>> row = Line(name="row 1", count=10, spacing=20 * ft, riser=Riser(height=2 * ft))
    >>> open_riser(riser_sheared("row 1", 7), row).height
    6 * inch
    """

def open_body(fault: Fault, line: Line) -> OpenBody | None:
    """The open body that this fault leaves on this line; None for the others.

    >>> row = Line(name="row 1", count=10, spacing=20 * ft)
    >>> open_body(nozzle_missing("row 1", 7, bore=0.3 * inch), row).discharge_coefficient
    0.85
    """

def open_end(fault: Fault, line: Line) -> Length | None:
    """Where the fault opens the line to the air, so that no water passes; None for the others.

    >>> open_end(line_cut("row 1", 90 * ft), Line(name="row 1", count=10, spacing=20 * ft))
    90 * ft
    """

def describe(fault: Fault, line: Line | Layout, units: UnitSystem | str) -> str:
    """One sentence, with the values used. line: the fault's, or the layout that it is in.

    >>> row = Line(name="row 1", count=10, spacing=20 * ft)
    >>> describe(clogged("row 1", 7, 0.6), row, "us")
    'row 1, outlet 7: clogged, 60 % of its flow lost'
    """

def problems(part: Supply | Pump | Suction | Filter | Gauge | Tank | Hole | Hydrant | Line | Valve | Pipe | Outlet | Riser | Water | Site | PricedPipe | Weather | StageLengths | Climate | Soil | Block | WaterDay | Ground | WaterAmount | RunTimeOptions | SetToWater | InterruptedRun | CandidateOptions | Fault | Uncertainty, line: Line | Supply | Layout | None = None) -> list[Problem]:
    """What is wrong with one part of a layout or of a watering day, with a fault on a line or of a
    supply, or with an uncertainty of a layout; empty when nothing is.

    >>> problems(Pipe(inside_diameter=2 * inch, hazen_williams=900))[0].text()
    'hazen_williams: is 900, must be from 10 to 200'
    """

def places_of(lines: Iterable[Line]) -> list[str]:
    """What each line is called in a Problem's place: `line "row 1"`.

    >>> places_of([Line(name="row 1"), Line()])
    ['line "row 1"', 'line 2']
    """

def solve(layout: Layout, *, newton_steps: int = 60) -> Solution:
    """Pressure and flow everywhere. Other threads run meanwhile.
    newton_steps: at most, 0 to 10000; then the last resort, with as many for each of its ramps.
    NotSolved when the equations could not be met; it carries what was reached.

    >>> lateral = Pipe(inside_diameter=1.754 * inch, hazen_williams=150)
    >>> spray = Outlet(flow=1.2 * gpm, at=30 * psi)
    >>> row = Line(name="row 1", pipe=lateral, outlet=spray, count=24, spacing=20 * ft)
    >>> solution = solve(Layout(Supply(pressure=40 * psi), [row]))
    >>> solution.line("row 1").pressure.to(psi).round(1)[[0, 23]]
    array([39.7, 37. ])
    >>> max(solution.residuals.mass, solution.residuals.energy) <= 1e-12
    True
    """

def check(solution: Solution, *, pressure_variation: float = 0.2, flow_variation: float = 0.1, velocity: Velocity = ...) -> Check:
    """Every outlet against its rated, lowest and highest pressure; how evenly a line waters; water too
    fast; pressure below the atmosphere's, or above a pipe's rating; a supply that brings no water,
    or is asked more than it should do.
    The keywords are the largest that is accepted: variations [-], the velocity in lines (default 5
    ft/s); InvalidInput when they are not above 0. All three are common practice, no source.

    >>> spray = Outlet(flow=1.2 * gpm, at=30 * psi)
    >>> row = Line(name="row 1", pipe=nominal_pipe("1 in", "PVC Sch 40"), outlet=spray,
    ...            count=24, spacing=20 * ft)
    >>> short = check(solve(Layout(Supply(pressure=40 * psi), [row]))).below_rated
    >>> short[0].outlet, round(short[-1].pressure.to(psi), 1)
    (5, 17.4)
    """

def compare(before: Solution, after: Solution) -> Comparison:
    """What a fault does to the rest: the same layout solved before and after. InvalidInput when the
    two do not have the same lines and outlets.

    >>> lateral = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=lateral, outlet=Outlet(flow=1.2 * gpm, at=30 * psi),
    ...            count=24, spacing=20 * ft)
    >>> before = solve(Layout(Supply(pressure=40 * psi), [row]))
    >>> after = solve(before.layout.with_fault(capped("row 1", 7)))
    >>> round(compare(before, after).lines[0].pressure[0].to(psi), 2)
    0.03
    """

@overload
def uniformity(amounts: FlowSeries | Iterable[Flow]) -> FlowUniformity: ...
@overload
def uniformity(amounts: VolumeSeries | Iterable[Volume]) -> VolumeUniformity: ...
@overload
def uniformity(amounts: LengthSeries | Iterable[Length]) -> LengthUniformity:
    """Of measured flows, or of volumes or depths caught in cans that are alike in the same time: CU
    after J. E. Christiansen (1942), DU of the low quarter, statistical. InvalidInput for no
    amounts, all 0, or one that is negative or not finite.

    >>> round(uniformity([1.0, 1.1, 0.9, 1.0] * gpm).christiansen, 1)
    95.0
    """

def uniformity_of_outlets(solution: Solution) -> list[OutletUniformity]:
    """Each kind on each line, in their order; then each kind that stands on several lines, together.
    Broken and capped outlets are left out; dry ones count.

    >>> lateral = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=lateral, outlet=Outlet(flow=1.2 * gpm, at=30 * psi),
    ...            count=24, spacing=20 * ft)
    >>> before = solve(Layout(Supply(pressure=40 * psi), [row]))
    >>> round(uniformity_of_outlets(before)[0].flows.christiansen)
    99
    """

def design_emission_uniformity(computed: FlowUniformity, *, manufacturing_variation: float | None = None, outlets_per_plant: int | None = None) -> float:
    """EU = 100 (1 - 1.27 Cv / sqrt(Np)) (least q) / mean [%], J. Keller and D. Karmeli (1974), from
    memory. computed: from a solution; measured flows have the makers' variation in them.
    manufacturing_variation: Cv of new outlets, 0 to 0.5 [-]. outlets_per_plant: Np. Both are
    needed: InvalidInput.

    >>> flows = uniformity([0.5, 0.52, 0.48, 0.5] * gph)
    >>> round(design_emission_uniformity(flows, manufacturing_variation=0.05, outlets_per_plant=4), 1)
    93.0
    """

def assumptions(layout: Layout, units: UnitSystem | str) -> list[str]:
    """What was not given and therefore assumed, one sentence each.

    >>> row = Line(name="main", pipe=nominal_pipe("3 in", "PVC Sch 40"), length=100 * m)
    >>> assumptions(Layout(Supply(pressure=3 * bar), [row]), "si")[0]
    "the supply's elevation is 0; all others count from it"
    """

def multiple_outlet_factor(outlets: int, flow_exponent: float, first: FirstOutlet | str = 'at_one_spacing') -> float:
    """Christiansen's F [-], with which the loss along a line is worked out by hand: J. E.
    Christiansen, Bulletin 670, University of California (1942). flow_exponent: of the friction law,
    1 to 2; 1.852 for Hazen-Williams. The answers of the library do not use it.

    >>> round(multiple_outlet_factor(10, 1.852), 3)
    0.402
    """

def weakest_outlet(solution: Solution) -> WeakestOutlet | None:
    """The outlet with the smallest share of its rated pressure, of dry ones that with the least
    pressure in its line; None: there is no outlet to judge (broken, capped and shut ones are not).

    >>> pump = Pump(points=[PumpPoint(flow=0 * gpm, head=150 * ft),
    ...                     PumpPoint(flow=100 * gpm, head=125 * ft)], curve_speed=2600 * rpm)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=Outlet(flow=3.52 * gpm, at=25 * psi),
    ...            count=10, spacing=36 * ft)
    >>> farm = Layout(Supply(pump=pump), [row, row.replace(name="row 2")],
    ...               sets=[WateringSet(name="one", lines=["row 1"]),
    ...                     WateringSet(name="two", lines=["row 2"])])
    >>> weakest_outlet(solve(farm)).outlet
    10
    """

def pressure_budget(solution: Solution, line: str | None = None, outlet: int | None = None) -> PressureBudget:
    """What raises and what takes the pressure on the way from the source to this outlet; without line
    and outlet, to the weakest one. InvalidInput for one that is not there, or that no water comes
    to.

    >>> pump = Pump(points=[PumpPoint(flow=0 * gpm, head=150 * ft),
    ...                     PumpPoint(flow=100 * gpm, head=125 * ft)], curve_speed=2600 * rpm)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=Outlet(flow=3.52 * gpm, at=25 * psi),
    ...            count=10, spacing=36 * ft)
    >>> farm = Layout(Supply(pump=pump), [row, row.replace(name="row 2")],
    ...               sets=[WateringSet(name="one", lines=["row 1"]),
    ...                     WateringSet(name="two", lines=["row 2"])])
    >>> [entry.part for entry in pressure_budget(solve(farm), "row 1", 10).entries]
    ['pump', 'line']
    """

def can_be_set(supply: Supply) -> bool:
    """Whether a supply can be set: a held pressure, or pumps whose curve_speed is known.

    >>> can_be_set(Supply(tank=Tank(level=2 * m)))
    False
    """

def set_for_gauge(layout: Layout, reading: Pressure) -> Setting:
    """The engine speed, or the held pressure, for this reading at the supply's gauge; without a gauge,
    for this pressure before the filter. InvalidInput when the supply is a tank, a hydrant or a pump
    whose curve_speed is not known.

    >>> pump = Pump(points=[PumpPoint(flow=0 * gpm, head=150 * ft),
    ...                     PumpPoint(flow=100 * gpm, head=125 * ft)], curve_speed=2600 * rpm)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=Outlet(flow=3.52 * gpm, at=25 * psi),
    ...            count=10, spacing=36 * ft)
    >>> farm = Layout(Supply(pump=pump), [row, row.replace(name="row 2")],
    ...               sets=[WateringSet(name="one", lines=["row 1"]),
    ...                     WateringSet(name="two", lines=["row 2"])])
    >>> setting = set_for_gauge(farm.watering("one"), 45 * psi)
    >>> round(setting.solution.supply_pressure.to(psi), 6)
    45.0
    """

def set_for_weakest(layout: Layout, pressure: Pressure) -> Setting:
    """The engine speed, or the held pressure, for this pressure at the weakest outlet: that with the
    lowest pressure.

    >>> pump = Pump(points=[PumpPoint(flow=0 * gpm, head=150 * ft),
    ...                     PumpPoint(flow=100 * gpm, head=125 * ft)], curve_speed=2600 * rpm)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=Outlet(flow=3.52 * gpm, at=25 * psi),
    ...            count=10, spacing=36 * ft)
    >>> farm = Layout(Supply(pump=pump), [row, row.replace(name="row 2")],
    ...               sets=[WateringSet(name="one", lines=["row 1"]),
    ...                     WateringSet(name="two", lines=["row 2"])])
    >>> setting = set_for_weakest(farm.watering("one"), 25 * psi)
    >>> round(setting.solution.line("row 1").pressure.min().to(psi), 6)
    25.0
    """

def set_for_rated(layout: Layout, share: float = 1.0) -> Setting:
    """The engine speed, or the held pressure, for at least this share [-] of its rated pressure at
    every outlet.

    >>> pump = Pump(points=[PumpPoint(flow=0 * gpm, head=150 * ft),
    ...                     PumpPoint(flow=100 * gpm, head=125 * ft)], curve_speed=2600 * rpm)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=Outlet(flow=3.52 * gpm, at=25 * psi),
    ...            count=10, spacing=36 * ft)
    >>> farm = Layout(Supply(pump=pump), [row, row.replace(name="row 2")],
    ...               sets=[WateringSet(name="one", lines=["row 1"]),
    ...                     WateringSet(name="two", lines=["row 2"])])
    >>> check(set_for_rated(farm.watering("one")).solution).below_rated
    []
    """

def set_for_rated_if_possible(layout: Layout, share: float = 1.0) -> Setting:
    """Likewise; but a supply that cannot be set is taken as it is, `reached` saying whether it is
    enough.

    >>> pump = Pump(points=[PumpPoint(flow=0 * gpm, head=150 * ft),
    ...                     PumpPoint(flow=100 * gpm, head=125 * ft)], curve_speed=2600 * rpm)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=Outlet(flow=3.52 * gpm, at=25 * psi),
    ...            count=10, spacing=36 * ft)
    >>> farm = Layout(Supply(pump=pump), [row, row.replace(name="row 2")],
    ...               sets=[WateringSet(name="one", lines=["row 1"]),
    ...                     WateringSet(name="two", lines=["row 2"])])
    >>> row_on_tank = farm.with_supply(Supply(tank=Tank(level=2 * m)))
    >>> set_for_rated_if_possible(row_on_tank).reached
    False
    """

def throttle_up(sound: Layout, faults: Iterable[Fault]) -> Throttling:
    """The faults at unchanged speed, and after the engine is throttled up until the gauge reads as
    before. sound: with the speed at which it runs. InvalidInput for a fault that does not fit.

    >>> pump = Pump(points=[PumpPoint(flow=0 * gpm, head=150 * ft),
    ...                     PumpPoint(flow=100 * gpm, head=125 * ft)], curve_speed=2600 * rpm)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=Outlet(flow=3.52 * gpm, at=25 * psi),
    ...            count=10, spacing=36 * ft)
    >>> farm = Layout(Supply(pump=pump), [row, row.replace(name="row 2")],
    ...               sets=[WateringSet(name="one", lines=["row 1"]),
    ...                     WateringSet(name="two", lines=["row 2"])])
    >>> answer = throttle_up(farm.watering("one"), [end_open("row 1")])
    >>> answer.broken.supply_pressure < answer.reading
    True
    """

def sets_together(layout: Layout, *, share: float = 1.0, velocity: Velocity = ...) -> list[SetsTogether]:
    """Every set alone, then every two, last all of them: the speed or pressure that gives every outlet
    its share, and whether any limit is passed. InvalidInput when the layout has no sets.
    share: of its rated pressure at every outlet [-], default 1. velocity: largest accepted in
    lines, default 5 ft/s (common practice).

    >>> pump = Pump(points=[PumpPoint(flow=0 * gpm, head=150 * ft),
    ...                     PumpPoint(flow=100 * gpm, head=125 * ft)], curve_speed=2600 * rpm)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=Outlet(flow=3.52 * gpm, at=25 * psi),
    ...            count=10, spacing=36 * ft)
    >>> farm = Layout(Supply(pump=pump), [row, row.replace(name="row 2")],
    ...               sets=[WateringSet(name="one", lines=["row 1"]),
    ...                     WateringSet(name="two", lines=["row 2"])])
    >>> [(together.sets, together.can_run()) for together in sets_together(farm)]
    [(['one'], True), (['two'], True), (['one', 'two'], True)]
    """

def outflow(tank: Tank, hole: Hole) -> Flow:
    """At the tank's level, q = Cd a sqrt(2 g level). Needs no surface.

    >>> drum = Tank(level=0.6 * m, diameter=0.35 * m)
    >>> round(outflow(drum, Hole(diameter=2 * mm)).to(lph), 1)
    24.1
    """

def time_to_fall(tank: Tank, hole: Hole, level: Length | None = None) -> Time:
    """Until the level has fallen to this one, 0 to the tank's, default 0.

    >>> drum = Tank(level=0.6 * m, diameter=0.35 * m)
    >>> round(time_to_fall(drum, Hole(diameter=2 * mm)).to(units.h), 1)
    4.8
    """

def time_to_run_out(tank: Tank, hole: Hole, volume: Volume) -> Time:
    """Until so much has run out, 0 to all that is above the hole.

    >>> drum = Tank(level=0.6 * m, diameter=0.35 * m)
    >>> round(time_to_run_out(drum, Hole(diameter=2 * mm), 10 * litre).to(units.min), 1)
    26.1
    """

def level_after(tank: Tank, hole: Hole, time: Time) -> Length:
    """After this time, 0 or more; 0 when it is empty.

    >>> drum = Tank(level=0.6 * m, diameter=0.35 * m)
    >>> round(level_after(drum, Hole(diameter=2 * mm), 1 * units.h).to(cm), 1)
    37.6
    """

def drain(layout: Layout, *, to_level: Length | None = None, least_outflow: float = 0.001, levels: int = 11, tolerance: float = 1e-06) -> Drain:
    """A layout's tank, whose surface is known, running empty through the lines. InvalidInput,
    NotSolved, and NotDrained when the time is not known as well as asked for.
    to_level: default until least_outflow. least_outflow: share of the outflow at first, 0 to 0.5:
    no more comes. levels: that are reported, 2 to 1000. tolerance: accepted error, share of the
    time, 1e-12 to 0.01.

    >>> pipe = nominal_pipe("1 in", "PVC Sch 40")
    >>> row = Line(name="beds", pipe=pipe, outlet=Outlet(flow=8 * lph, at=1 * mH2O),
    ...            count=20, spacing=1 * m)
    >>> tank = Tank(level=1.2 * m, diameter=0.6 * m)
    >>> emptied = drain(Layout(Supply(tank=tank), [row]), to_level=0.2 * m)
    >>> emptied.end, round(emptied.time().to(units.h), 1)
    (DrainEnd.level_reached, 2.3)
    """

def pressure_at(line: str, outlet: int) -> PressureFigure:
    """The pressure at an outlet's device.

    >>> pressure_at("row 1", 7)
    PressureFigure(at='row 1', outlet=7)
    """

def line_pressure_at(line: str, outlet: int) -> PressureFigure:
    """The pressure in the line at an outlet.

    >>> line_pressure_at("row 1", 7).kind
    PressureFigureKind.line
    """

def supply_pressure(supply: str = '') -> PressureFigure:
    """The pressure at the start of the lines that a supply feeds; its name, empty: the first.

    >>> supply_pressure().kind
    PressureFigureKind.supply
    """

def gauge_reading(supply: str = '') -> PressureFigure:
    """What the gauge of a supply reads; its name, empty: the first.

    >>> gauge_reading("creek").at
    'creek'
    """

def flow_of(line: str, outlet: int) -> FlowFigure:
    """The flow out of an outlet.

    >>> flow_of("row 1", 7).outlet
    7
    """

def inflow_of(line: str) -> FlowFigure:
    """The flow into a line through its inlet.

    >>> inflow_of("row 1").kind
    FlowFigureKind.inflow
    """

def supply_flow(supply: str = '') -> FlowFigure:
    """The flow out of one supply; its name, empty: the first.

    >>> supply_flow().kind
    FlowFigureKind.supply
    """

def whole_inflow() -> FlowFigure:
    """The flow out of all supplies together.

    >>> whole_inflow()
    FlowFigure()
    """

def is_height(input: Input | str) -> bool:
    """Whether it is a height, given by the metre; else a size, given by the share.

    >>> is_height(Input.ground), is_height("inside_diameter")
    (True, False)
    """

def words_of(input: Input | str) -> str:
    """As a person says it.

    >>> words_of(Input.inside_diameter)
    'pipe bore'
    """

@overload
def sensitivity(solution: Solution, figure: PressureFigure) -> PressureSensitivity: ...
@overload
def sensitivity(solution: Solution, figure: FlowFigure) -> FlowSensitivity:
    """What a little more of each input does to one figure: the exact derivative by every bore, wall,
    length, loss, outlet, height, regulator and supply. InvalidInput for a line, an outlet, a supply
    or a gauge that is not there, and for a figure that hangs on water that stands still round a
    loop.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> found = sensitivity(solve(farm), pressure_at("row 1", 24))
    >>> round(found.of("supply_pressure", "").by_one_step().to(psi), 2)
    0.37
    """

def every_limit() -> list[Limit]:
    """All of them, in the order in which they are told.

    >>> every_limit()[0]
    Limit.rated
    """

def supply_limit(limit: Limit | str) -> SupplyLimit | None:
    """As a supply's findings name it; None: a limit of outlets or pipes.

    >>> supply_limit("suction")
    SupplyLimit.suction
    """

def margins(solution: Solution, limits: Limits = ...) -> list[Margin]:
    """How much is left of each limit that is judged and is there. InvalidInput for a line that is not
    there.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> [round(margin.left, 2) for margin in margins(solve(farm), Limits(judged=["rated"]))]
    [0.23]
    """

def passed(margins: Iterable[Margin]) -> list[Margin]:
    """Those that are passed.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> passed(margins(solve(farm), Limits(judged=["rated"])))
    []
    """

def with_more_outlets(layout: Layout, line: str, more: MoreOutlets, count: int) -> Layout:
    """The layout with so many more outlets on one of its lines. InvalidInput when the line has no
    outlet, when its far end joins another and it should go on, or when there is no place left
    between.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> with_more_outlets(farm, "row 1", MoreOutlets(), 3).line("row 1").outlet_count()
    27
    """

def places_for_more(layout: Layout, line: str, more: MoreOutlets) -> int:
    """How many have a place between the outlets of a line; beyond the last one most_outlets.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> places_for_more(farm, "row 1", MoreOutlets(where="between", spacing=9 * ft))
    23
    """

def room_on_line(layout: Layout, line: str, *, limits: Limits = ..., most: int = 500, more: MoreOutlets = ..., threads: int = 0, progress: Callable[[int, int], bool | None] | bool | None = None) -> Room:
    """How many more outlets a line can take before the first limit is passed, on any line, its supply
    as it is, and what it is that ends it. InvalidInput for a line to which no water comes;
    NotSolved.
    limits: that must be kept. most: that are tried, 1 to 100000. more: which outlets, and where.
    threads: 0: as many as the machine runs at once; the answer is the same whatever their number.
    progress: True: a bar on a terminal; or a function of how many parts are done and of how many,
    which returns False to stop the work (Stopped). Other threads run meanwhile.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> room_on_line(farm, "row 1", limits=Limits(judged=["rated"]))
    <hydro.Room: 14 more on row 1, ended by limit: rated>
    """

def room_by_pipe(layout: Layout, line: str, pipes: Iterable[Pipe], *, limits: Limits = ..., most: int = 500, more: MoreOutlets = ..., threads: int = 0, progress: Callable[[int, int], bool | None] | bool | None = None) -> list[RoomWithPipe]:
    """The same with each of these pipes in turn, in place of the line's pipe and reaches.
    limits: that must be kept. most: that are tried, 1 to 100000. more: which outlets, and where.
    threads: 0: as many as the machine runs at once; the answer is the same whatever their number.
    progress: True: a bar on a terminal; or a function of how many parts are done and of how many,
    which returns False to stop the work (Stopped). Other threads run meanwhile.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> wider = nominal_pipe("2 in", "PVC Class 160")
    >>> found = room_by_pipe(farm, "row 1", [pipe, wider], limits=Limits(judged=["rated"]))
    >>> found[0].room.outlets < found[1].room.outlets
    True
    """

def with_outlets(layout: Layout, line: str, count: int, *, spacing: Length | None = None, first_at: Length | None = None, outlet: Outlet | None = None) -> Layout:
    """The line of a layout laid anew with so many outlets, from 1 on; keywords as of longest_line.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> wider_spaced = with_outlets(farm, "row 1", 7, spacing=30 * ft)
    >>> round(wider_spaced.line("row 1").whole_length().to(ft), 6)
    200.0
    """

def longest_line(layout: Layout, line: str, *, limits: Limits = ..., most: int = 500, spacing: Length | None = None, first_at: Length | None = None, outlet: Outlet | None = None, threads: int = 0, progress: Callable[[int, int], bool | None] | bool | None = None) -> LongestLine:
    """How long a line can be for a spacing, and how short it must not be: the last count of outlets
    before a limit is passed. InvalidInput for a line that feeds or joins another, or has a fault of
    its own; NotSolved.
    limits: that must be kept. most: outlets that are tried. spacing: default the line's, of an
    uneven one its last. first_at: default the line's. outlet: default the line's first. threads: 0:
    as many as the machine runs at once; the answer is the same whatever their number. progress:
    True: a bar on a terminal; or a function of how many parts are done and of how many, which
    returns False to stop the work (Stopped). Other threads run meanwhile.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> longest_line(farm, "row 1", limits=Limits(judged=["rated"])).outlets
    38
    """

def longest_by_pipe(layout: Layout, line: str, pipes: Iterable[Pipe], *, limits: Limits = ..., most: int = 500, spacing: Length | None = None, first_at: Length | None = None, outlet: Outlet | None = None, threads: int = 0, progress: Callable[[int, int], bool | None] | bool | None = None) -> list[LongestWithPipe]:
    """The same with each of these pipes in turn, in place of the line's pipe and reaches.
    limits: that must be kept. most: outlets that are tried. spacing: default the line's, of an
    uneven one its last. first_at: default the line's. outlet: default the line's first. threads: 0:
    as many as the machine runs at once; the answer is the same whatever their number. progress:
    True: a bar on a terminal; or a function of how many parts are done and of how many, which
    returns False to stop the work (Stopped). Other threads run meanwhile.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> wider = nominal_pipe("2 in", "PVC Class 160")
    >>> only = Limits(judged=["rated"])
    >>> found = longest_by_pipe(farm, "row 1", [pipe, wider], limits=only)
    >>> found[0].longest.length < found[1].longest.length
    True
    """

def inlet_position(layout: Layout, line: str, *, goal: InletGoal | str = ..., places: Iterable[Length] = (), feed_pipe: Pipe | None = None, threads: int = 0, progress: Callable[[int, int], bool | None] | bool | None = None) -> InletPositions:
    """Where along a row to feed it from. InvalidInput when the row has no outlets, feeds or joins a
    line, has a fault of its own or no water, or when a place is not on it; NotSolved.
    goal: what makes a place the best. places: from the present inlet on; default the inlet, every
    outlet, and half-way between two. feed_pipe: that leads there; default the way there takes no
    pressure but for the ground. threads: 0: as many as the machine runs at once; the answer is the
    same whatever their number. progress: True: a bar on a terminal; or a function of how many parts
    are done and of how many, which returns False to stop the work (Stopped). Other threads run
    meanwhile.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> inlet_position(farm, "row 1").best.lowest_share > 37 / 30
    True
    """

def with_inlet_at(layout: Layout, line: str, place: Length, feed_pipe: Pipe | None = None) -> Layout:
    """The layout with the row fed at a place: the line of its name leads there, lines `NAME, near
    part` and `NAME, far part` carry its outlets.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> [line.name for line in with_inlet_at(farm, "row 1", 240 * ft).lines]
    ['row 1', 'row 1, near part', 'row 1, far part']
    """

def cost(price: Price, length: Length) -> float:
    """Money for this length; nothing is rounded to whole pieces.

    >>> cost(Price(14.20, 20 * ft), 100 * ft)
    71.0
    """

def smallest_pipe(layout: Layout, lines: Iterable[LinesToSize], pipes: Iterable[PricedPipe], *, limits: Limits = ..., change_every: Length | None = None, most_ways_of_a_group: int = 100000, most_tried: int = 1000000, threads: int = 0, progress: Callable[[int, int], bool | None] | bool | None = None) -> SmallestPipe:
    """The cheapest pipe with which every limit holds; without prices that with the least room inside.
    InvalidInput for a line that is not there, is named twice or is shut, prices that some have and
    others not, or too many ways; NotSolved.
    lines: groups, each laid alike and apart from the others. pipes: in any order. limits: that must
    hold. change_every: where pipe may change, from the inlet; default at outlets and where lines
    begin or end. most_ways_of_a_group: 1 to 10 million. most_tried: 1 to 100 million. threads: 0:
    as many as the machine runs at once; the answer is the same whatever their number. progress:
    True: a bar on a terminal; or a function of how many parts are done and of how many, which
    returns False to stop the work (Stopped). Other threads run meanwhile.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> narrow = nominal_pipe("1 in", "PVC Class 200")
    >>> row = Line(name="row 1", pipe=narrow, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=33 * psi), [row])
    >>> sold = [PricedPipe(nominal_pipe(size, "PVC Class 160"), price=Price(dollars, 20 * ft))
    ...         for size, dollars in (("1-1/4 in", 9), ("1-1/2 in", 11), ("2 in", 17))]
    >>> found = smallest_pipe(farm, [LinesToSize(["row 1"], sizes=2)], sold)
    >>> found.found, [laid.pipe.name for laid in found.pipes]
    (True, ['1-1/2 in PVC Class 160', '1-1/4 in PVC Class 160'])
    """

def try_pipes(layout: Layout, lines: Iterable[str], pipes: Iterable[PricedPipe], *, limits: Limits = ..., threads: int = 0, progress: Callable[[int, int], bool | None] | bool | None = None) -> list[PipeTried]:
    """One row for each pipe of the list, in its order: these lines are laid in it throughout.
    limits: that are judged. threads: 0: as many as the machine runs at once; the answer is the same
    whatever their number. progress: True: a bar on a terminal; or a function of how many parts are
    done and of how many, which returns False to stop the work (Stopped). Other threads run
    meanwhile.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> narrow = nominal_pipe("1 in", "PVC Class 200")
    >>> row = Line(name="row 1", pipe=narrow, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=33 * psi), [row])
    >>> sold = [PricedPipe(nominal_pipe(size, "PVC Class 160"), price=Price(dollars, 20 * ft))
    ...         for size, dollars in (("1-1/4 in", 9), ("1-1/2 in", 11), ("2 in", 17))]
    >>> [tried.passed == [] for tried in try_pipes(farm, ["row 1"], sold)]
    [False, True, True]
    """

def remedies(layout: Layout, *, pipes: Iterable[PricedPipe] = (), sizes_up: int = 2, most_outlets_fewer: float = 0.5, outlet_step: float = 0.05, least_outlet: float = 0.7, least_gain: float = 0.01, outlet_price: float | None = None, lost_outlet_price: float | None = None, kilowatt_price: float | None = None, threads: int = 0, progress: Callable[[int, int], bool | None] | bool | None = None) -> Remedies:
    """What could be done for outlets that fall short, and what each remedy buys: wider pipe, fewer or
    smaller outlets, more pressure, a feed to the middle, a second feed.
    pipes: that can be had; none: no remedy of pipe. sizes_up: so many of the next wider ones, 1 to
    20. most_outlets_fewer: share of a row that may be given up, 0 to 1 [-]. outlet_step: in which
    smaller outlets can be had, 0.001 to 0.5 [-]. least_outlet: share of the flow of now, 0.05 to 1
    [-]. least_gain: what gives less of rated pressure is left out [-]. outlet_price: money for each
    that is changed. lost_outlet_price: for each that is taken away. kilowatt_price: for one kW more
    at the shaft. threads: 0: as many as the machine runs at once; the answer is the same whatever
    their number. progress: True: a bar on a terminal; or a function of how many parts are done and
    of how many, which returns False to stop the work (Stopped). Other threads run meanwhile.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> narrow = nominal_pipe("1 in", "PVC Class 200")
    >>> row = Line(name="row 1", pipe=narrow, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=33 * psi), [row])
    >>> sold = [PricedPipe(nominal_pipe(size, "PVC Class 160"), price=Price(dollars, 20 * ft))
    ...         for size, dollars in (("1-1/4 in", 9), ("1-1/2 in", 11), ("2 in", 17))]
    >>> best = remedies(farm, pipes=sold).ranked[0]
    >>> best.cures, best.kind
    (True, RemedyKind.wider_pipe)
    """

def at_outlet(fault: Fault, line: str, outlet: int) -> Fault:
    """The same fault at this outlet. InvalidInput for one that acts at no outlet.

    >>> at_outlet(clogged("row 1", 7, 0.6), "row 2", 3)
    clogged('row 2', 3, 0.6)
    """

def break_every_outlet(layout: Layout, *, fault: Fault = ..., keep: BreakDetail | str = ..., threads: int = 0, progress: Callable[[int, int], bool | None] | bool | None = None) -> Breaks:
    """What each outlet would do to the rest if it broke, one after another, beside the faults that the
    layout has already. InvalidInput for a fault that acts at no outlet, or that no outlet could
    have; NotSolved when the layout is not solved as it is.
    fault: its line and outlet do not count. keep: how much of each break. threads: 0: as many as
    the machine runs at once; the answer is the same whatever their number. progress: True: a bar on
    a terminal; or a function of how many parts are done and of how many, which returns False to
    stop the work (Stopped). Other threads run meanwhile.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> found = break_every_outlet(farm, fault=nozzle_missing("", 0, bore=0.3 * inch))
    >>> len(found.breaks), found.conditions.shape
    (24, (24, 24))
    """

def realisation(layout: Layout, uncertainty: Uncertainty, seed: int, number: int) -> Layout:
    """The layout with its inputs as they are drawn for this realisation, from 0 on: the same seed and
    number give the same layout. Each outlet is of a kind of its own. InvalidInput for an
    uncertainty out of its intervals.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> guess = Uncertainty(supply_pressure=1 * psi)
    >>> drawn = [realisation(farm, guess, 1, number).supply.pressure for number in (0, 0, 1)]
    >>> drawn[0] == drawn[1], drawn[0] == drawn[2]
    (True, False)
    """

def chances(layout: Layout, uncertainty: Uncertainty, *, realisations: int = 10000, seed: int = 1, quantiles: Iterable[float] = ..., keep: bool = False, threads: int = 0, progress: Callable[[int, int], bool | None] | bool | None = None) -> Chances:
    """How likely outlets fall short when not all of a layout is known exactly: many realisations are
    solved and counted (Monte Carlo). InvalidInput for options or an uncertainty out of their
    intervals; NotSolved when one realisation cannot be solved.
    realisations: N, 2 to 1000000. seed: of the draws. quantiles: shares to give, each above 0 and
    below 1. keep: every pressure and flow, up to 100000000 of each. threads: 0: as many as the
    machine runs at once; the answer is the same whatever their number. progress: True: a bar on a
    terminal; or a function of how many parts are done and of how many, which returns False to stop
    the work (Stopped). Other threads run meanwhile.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> guess = Uncertainty(supply_pressure=4 * psi)
    >>> found = chances(farm, guess, realisations=200, keep=True)
    >>> found.kept.pressure.shape, found.any_below_rated.of
    ((200, 24), 200)
    """

def chance_of_trouble(layout: Layout, line: str, most: int, uncertainty: Uncertainty, *, realisations: int = 10000, seed: int = 1, quantiles: Iterable[float] = ..., more: MoreOutlets = ..., threads: int = 0, progress: Callable[[int, int], bool | None] | bool | None = None) -> list[TroubleAtCount]:
    """The chance that outlets fall short, for none more on a line, one more and so on up to most, 0 to
    1000. All outlets of the layout are judged.
    realisations: N, 2 to 1000000. seed: of the draws. quantiles: shares to give, each above 0 and
    below 1. more: which outlets, and where. threads: 0: as many as the machine runs at once; the
    answer is the same whatever their number. progress: True: a bar on a terminal; or a function of
    how many parts are done and of how many, which returns False to stop the work (Stopped). Other
    threads run meanwhile.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> guess = Uncertainty(supply_pressure=1 * psi)
    >>> found = chance_of_trouble(farm, "row 1", 20, guess, realisations=100)
    >>> found[0].below_rated.share(), found[20].below_rated.share()
    (0.0, 1.0)
    """

def is_pressure(place: ReadingPlace | str) -> bool:
    """Whether a pressure is read there.

    >>> is_pressure("riser")
    True
    """

def is_flow(place: ReadingPlace | str) -> bool:
    """Whether a flow is read there.

    >>> is_flow("bucket")
    True
    """

def is_on_line(place: ReadingPlace | str) -> bool:
    """Whether it takes the name of a line.

    >>> is_on_line("meter")
    False
    """

def is_at_outlet(place: ReadingPlace | str) -> bool:
    """Whether it takes the number of an outlet.

    >>> is_at_outlet("jet")
    True
    """

def flow_read(reading: Reading) -> Flow:
    """The flow that a bucket says, or that is given. InvalidInput when neither is.

    >>> flow_read(Reading(place="bucket", volume=10 * litre, time=20 * units.s)).to(lpm)
    30.0
    """

def gauge_of(reading: Reading) -> str:
    """Name of the gauge whose bias a pressure has; empty for what is no pressure.

    >>> gauge_of(Reading(place="meter"))
    ''
    """

def problems_of_place(reading: Reading, layout: Layout) -> list[Problem]:
    """What is wrong with a place alone, without a figure.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> problems_of_place(Reading(place="riser", line="row 1", outlet=30), farm)[0].key
    'outlet'
    """

def notes_on(readings: Iterable[Reading], sights: Iterable[Sight]) -> list[str]:
    """What follows from readings that are few or all in one place, in sentences; empty when nothing
    does.

    >>> notes_on([], [Sight(line="row 1", outlet=1)])
    []
    """

def candidates(layout: Layout, *, options: CandidateOptions = ..., gauges: Iterable[str] = ()) -> list[Candidate]:
    """All that may be wrong with a layout, the faults that it has already left as they are: no fault
    first, then outlet by outlet and line by line, then the supply's, then one wrong gauge for each
    of these names.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> str(candidates(farm)[1])
    'row 1, outlet 1: leak'
    """

def has_size(kind: CandidateKind | str) -> bool:
    """Whether the size of such a fault is not known.

    >>> has_size("clogged"), has_size("end open")
    (True, False)
    """

def fault_of(candidate: Candidate, layout: Layout, sizes: FaultSizes = ..., u: float = 0.0) -> Fault | None:
    """The fault of a size u standard normal deviations from its median, -2.5 to 2.5; None for no
    fault, a supply that is low and a wrong gauge.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> seven = Candidate(kind="clogged", line="row 1", outlet=7)
    >>> round(fault_of(seven, farm).share, 2)
    0.42
    """

def layout_with(candidate: Candidate, layout: Layout, sizes: FaultSizes = ..., u: float = 0.0) -> Layout:
    """The layout with it. A wrong gauge changes nothing of the water. InvalidInput when the layout
    cannot have it.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> seven = Candidate(kind="clogged", line="row 1", outlet=7)
    >>> len(layout_with(seven, farm).faults)
    1
    """

def assumed_uncertainty(layout: Layout) -> Uncertainty:
    """What a layout's inputs may be off by when nobody says. Common practice, no source.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> assumed_uncertainty(farm).supply_pressure
    1 * psi
    """

def walk_kind_of(kind: CandidateKind | str) -> WalkKind:
    """What one looks for when this is the fault.

    >>> walk_kind_of("riser sheared")
    WalkKind.broken_outlet
    """

def find_fault(layout: Layout, readings: Iterable[Reading], sights: Iterable[Sight] = (), *, options: FindFaultOptions = ..., threads: int = 0, progress: Callable[[int, int], bool | None] | bool | None = None) -> FoundFaults:
    """Which fault explains what was read, and how sure that is: a probability for every candidate,
    summed up as a person would walk. One fault at a time is looked for. InvalidInput with all
    problems of the readings, sights and options; NotSolved when the layout is not solved as it is.
    threads: 0: as many as the machine runs at once; the answer is the same whatever their number.
    progress: True: a bar on a terminal; or a function of how many parts are done and of how many,
    which returns False to stop the work (Stopped). Other threads run meanwhile.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> opened = solve(farm.with_fault(end_open("row 1")))
    >>> read = [Reading(place="flush end", line="row 1",
    ...                 pressure=opened.line("row 1").end_pressure)]
    >>> seen = [Sight(seen="turning", line="row 1", outlet=1, to_outlet=3)]
    >>> first = find_fault(farm, read, seen).walk[0]
    >>> first.kind, first.line, first.probability > 0.9
    (WalkKind.end_open, 'row 1', True)
    """

def next_reading(layout: Layout, readings: Iterable[Reading], sights: Iterable[Sight] = (), *, find_fault: FindFaultOptions = ..., can_read: Iterable[ReadingPlace | str] = (), can_look: bool = True, bits_per_minute: float = 0.0, walking_speed: Velocity = ..., time_to_read: Time = ..., sure_enough: float = 0.9, least: float = 0.05, places: int = 20, threads: int = 0, progress: Callable[[int, int], bool | None] | bool | None = None) -> NextReadings:
    """What to read next, and when to stop: how much each reading that could be taken, and each look,
    is expected to tell. find_fault: its FindFaultOptions. can_read: places; none: all that the
    layout has. can_look: whether outlets may be looked at. bits_per_minute: price of a minute, 0 or
    more. walking_speed: there and back. time_to_read: for one reading. sure_enough: probability of
    the first place to walk to. least: bits that are worth a reading. places: outlets tried of one
    line, at most. threads: 0: as many as the machine runs at once; the answer is the same whatever
    their number. progress: True: a bar on a terminal; or a function of how many parts are done and
    of how many, which returns False to stop the work (Stopped). Other threads run meanwhile.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> opened = solve(farm.with_fault(end_open("row 1")))
    >>> read = [Reading(place="flush end", line="row 1",
    ...                 pressure=opened.line("row 1").end_pressure)]
    >>> seen = [Sight(seen="turning", line="row 1", outlet=1, to_outlet=3)]
    >>> next_reading(farm, read, seen).stop
    WhyStop.sure_enough
    """

def detectable(layout: Layout, reading: Reading, *, options: FindFaultOptions = ..., threads: int = 0, progress: Callable[[int, int], bool | None] | bool | None = None) -> list[Detectable]:
    """Which faults one gauge, meter or bucket can see at all, before anything is read; in the order of
    candidates(). reading: its place and errors. threads: 0: as many as the machine runs at once;
    the answer is the same whatever their number. progress: True: a bar on a terminal; or a function
    of how many parts are done and of how many, which returns False to stop the work (Stopped).
    Other threads run meanwhile.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> at_end = Reading(place="flush end", line="row 1")
    >>> {it.candidate.kind: it.seen for it in detectable(farm, at_end)}["end open"]
    True
    """

def make_right(layout: Layout, found: FoundFault, *, run_time: Time = ...) -> MakeRight:
    """What to do now about the fault that was found, and what it is worth. layout: without the fault.
    run_time: that the fault lasts, above 0.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> opened = solve(farm.with_fault(end_open("row 1")))
    >>> read = [Reading(place="flush end", line="row 1",
    ...                 pressure=opened.line("row 1").end_pressure)]
    >>> seen = [Sight(seen="turning", line="row 1", outlet=1, to_outlet=3)]
    >>> right = make_right(farm, find_fault(farm, read, seen).faults[0])
    >>> len(right.ways) > right.best
    True
    """

def assumed_before_calibration(layout: Layout) -> Uncertainty:
    """What is assumed of a layout's inputs before a walk: as assumed_uncertainty, and wider where
    readings teach most. Common practice, no source.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> assumed_before_calibration(farm).wall
    0.15
    """

def calibrate(layout: Layout, readings: Iterable[Reading], *, uncertainty: Uncertainty | None = None, gauge_bias: Pressure = ..., model_error: float = 0.01, most_steps: int = 50, threads: int = 0, progress: Callable[[int, int], bool | None] | bool | None = None) -> Calibration:
    """What the readings of a good day teach of pipes, outlets, lines, supplies and gauges.
    uncertainty: what is believed before; None: assumed_before_calibration(). gauge_bias: standard
    deviation of what each gauge shows too much. model_error: share of each figure. most_steps: 1 to
    1,000. NotCalibrated when the least squares do not settle. threads: 0: as many as the machine
    runs at once; the answer is the same whatever their number. progress: True: a bar on a terminal;
    or a function of how many parts are done and of how many, which returns False to stop the work
    (Stopped). Other threads run meanwhile.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> walk = [Reading(place="flush end", line="row 1", pressure=32 * psi),
    ...         Reading(place="supply gauge", pressure=40 * psi)]
    >>> calibrate(farm, walk).fits_well
    True
    """

def corrected(readings: Iterable[Reading], calibration: Calibration) -> list[Reading]:
    """Readings of another day less what their gauges show too much, as far as that was learnt.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> walk = [Reading(place="flush end", line="row 1", pressure=32 * psi),
    ...         Reading(place="supply gauge", pressure=40 * psi)]
    >>> len(corrected(walk, calibrate(farm, walk)))
    2
    """

def calibrated_options(calibration: Calibration, options: FindFaultOptions = ...) -> FindFaultOptions:
    """These options with what is left uncertain after the walk, for readings that are corrected.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> walk = [Reading(place="flush end", line="row 1", pressure=32 * psi),
    ...         Reading(place="supply gauge", pressure=40 * psi)]
    >>> calibrated_options(calibrate(farm, walk)).uncertainty.wall
    0.15
    """

def find_drift(layout: Layout, log: Iterable[DayOfReadings], *, normal_days: int = 5, allowance: float = 0.5, alarm_level: float = 5.0) -> Drift:
    """From which day on a reading is no longer what it was. log: earlier days, and today last.
    normal_days: of the first, 2 or more. allowance: half of the change that is looked for, in
    scatters. alarm_level: of a sum, in scatters.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> shown = [40, 40.5, 39.5, 40, 40.5, 40, 37, 36.5, 37]
    >>> log = [DayOfReadings(day=day, readings=[Reading(pressure=it * psi)])
    ...        for day, it in enumerate(shown)]
    >>> find_drift(farm, log).places[0].since
    6
    """

def cumulative_sums(values: Iterable[float], allowance: float) -> Sums:
    """What the sums are after each of these values, in scatters from normal.

    >>> cumulative_sums([0.0, 1.5, 2.0], 0.5).up
    [0.0, 1.0, 2.5]
    """

def extraterrestrial_radiation(latitude: Angle, day_of_year: int) -> Irradiance:
    """Radiation on a level plane above the air, mean of 24 hours, FAO-56 equation 21. latitude: -90 to
    90 degrees. day_of_year: 1 to 366.

    >>> round(extraterrestrial_radiation(-20 * degree, 246).to(MJ_per_m2_day), 1)  # example 8
    32.2
    """

def daylight(latitude: Angle, day_of_year: int) -> Time:
    """From sunrise to sunset, FAO-56 equation 34.

    >>> round(daylight(-20 * degree, 246).to(units.h), 1)  # example 9
    11.7
    """

def wind_at_2_m(wind: Velocity, height: Length) -> Velocity:
    """Over short grass, from a reading at another height, 0.2 to 100 m, FAO-56 equation 47.

    >>> round(wind_at_2_m(3.2 * m_per_s, 10 * m).to(m_per_s), 1)  # example 14
    2.4
    """

def penman_monteith(weather: Weather) -> ReferenceEvapotranspiration:
    """What well-watered short grass gives to the air, FAO-56 equation 6; what is not given by
    estimates, which are named. InvalidInput for problems(weather).

    >>> july = Weather(latitude=50.8 * degree, day_of_year=187, altitude=100 * m,
    ...                minimum_temperature=12.3 * degC, maximum_temperature=21.5 * degC,
    ...                maximum_humidity=0.84, minimum_humidity=0.63, wind=2.78 * m_per_s,
    ...                wind_height=10 * m, sunshine=9.25 * units.h)
    >>> round(penman_monteith(july).rate.to(mm_per_day), 2)
    3.88
    """

def hargreaves(weather: Weather) -> ReferenceEvapotranspiration:
    """The same from the day's two temperatures, FAO-56 equation 52.

    >>> lyon = Weather(latitude=45.72 * degree, day_of_year=196,
    ...                minimum_temperature=14.8 * degC, maximum_temperature=26.6 * degC)
    >>> round(hargreaves(lyon).rate.to(mm_per_day), 1)  # example 20
    5.0
    """

def reference_evapotranspiration(weather: Weather) -> ReferenceEvapotranspiration:
    """Typed in if it is; penman_monteith if humidity, wind and sunshine or radiation are there; else
    hargreaves.

    >>> july = Weather(latitude=50.8 * degree, day_of_year=187, altitude=100 * m,
    ...                minimum_temperature=12.3 * degC, maximum_temperature=21.5 * degC,
    ...                maximum_humidity=0.84, minimum_humidity=0.63, wind=2.78 * m_per_s,
    ...                wind_height=10 * m, sunshine=9.25 * units.h)
    >>> reference_evapotranspiration(july).method
    EvapotranspirationMethod.penman_monteith
    """

def crop(name: str) -> Crop:
    """A crop of FAO-56, tables 11, 12 and 22. InvalidInput when it is not there, with names near it:
    none stands in for another.

    >>> crop("potato").middle_coefficient
    1.15
    """

def crop_names() -> list[str]:
    """All of the table, as they are spelt.

    >>> "potato" in crop_names()
    True
    """

def stage_lengths(crop: Crop, region: str = '') -> StageLengths:
    """The row of table 11 for a region, by its name or the beginning of it; none named: the only row.
    InvalidInput with the regions there are.

    >>> stage_lengths(crop("potato"), "Europe").total()
    145
    """

def climate_of(weather: Weather) -> Climate:
    """Wind at 2 m and least humidity of this weather; where they are not given, the wind is 2 m/s and
    the dew point the minimum temperature.

    >>> july = Weather(latitude=50.8 * degree, day_of_year=187, altitude=100 * m,
    ...                minimum_temperature=12.3 * degC, maximum_temperature=21.5 * degC,
    ...                maximum_humidity=0.84, minimum_humidity=0.63, wind=2.78 * m_per_s,
    ...                wind_height=10 * m, sunshine=9.25 * units.h)
    >>> climate_of(july).minimum_humidity
    0.63
    """

def adjusted_coefficient(tabulated: float, height: Length, climate: Climate) -> float:
    """A coefficient of the table as it is in another climate, FAO-56 equations 62 and 65.

    >>> dry_and_windy = Climate(wind=4.6 * m_per_s, minimum_humidity=0.44)
    >>> round(adjusted_coefficient(1.2, 2 * m, dry_and_windy), 2)
    1.3
    """

def crop_coefficient(crop: Crop, stages: StageLengths, season_day: int, climate: Climate = ...) -> float:
    """How much more, or less, a crop uses than short grass on a day of its season, FAO-56 equation 66.
    season_day: 1 to the length of the season.

    >>> potato = crop("potato")
    >>> crop_coefficient(potato, stage_lengths(potato, "Europe"), 80)
    1.15
    """

def allowed_depletion(tabulated: float, crop_evapotranspiration: Velocity) -> float:
    """The share of the available water that may be used up without harm, where the crop loses this
    much a day. tabulated: for 5 mm/day [-].

    >>> round(allowed_depletion(0.35, 7 * mm_per_day), 2)
    0.27
    """

def available_water_range(kind: SoilKind | str) -> AvailableWater:
    """FAO-56 table 19, between field capacity and wilting point.

    >>> available_water_range("clay").most
    0.2
    """

def available_water(soil: Soil) -> float:
    """What was measured, or the middle of the range of its kind [-]. InvalidInput where neither is
    known.

    >>> available_water(Soil(kind="sand"))
    0.08
    """

def intake_rate(soil: Soil) -> Velocity:
    """What was measured, or the low end for its kind, less for the slope. InvalidInput where neither
    is known.

    >>> intake_rate(Soil(kind="loam"))
    10 * mm_per_h
    """

def area_per_plant(block: Block) -> Area | None:
    """By the two spacings or as it is given; None: not known.

    >>> round(area_per_plant(Block(row_spacing=3 * ft, plant_spacing=2 * ft)) / ft2, 9)
    6.0
    """

def days_since_rain(since: SinceRain, reference_evapotranspiration: Velocity) -> list[WaterDay]:
    """The days from that rain to yesterday, for water_need; the rain of this morning goes with today.

    >>> len(days_since_rain(SinceRain(days=4, rain=0.5 * inch), 4 * mm_per_day))
    4
    """

def water_need(block: Block, past: Iterable[WaterDay], today: WaterDay, *, depletion: Length | None = None, climate: Climate = ...) -> WaterNeed:
    """The water in the roots' reach, kept like an account: whether to water today and how much, FAO-56
    chapter 8. past: the days before today, the oldest first; may be empty. today: what came this
    morning, and what the weather will ask for. depletion: before the first of the days, or of
    today; None: all that may be used up is. climate: for coefficients of the table. InvalidInput
    with every mistake of the block and of the days.

    >>> bed = Block(name="bed", crop_coefficient=1.2, root_depth=0.8 * m, allowed_depletion=0.4,
    ...             soil=Soil(available_water=0.2))
    >>> hot = WaterDay(reference_evapotranspiration=5 * mm_per_day)
    >>> need = water_need(bed, [hot] * 10, hot, depletion=55 * mm)  # example 37
    >>> round(need.days[-1].depletion_at_end.to(mm), 1), need.reason
    (104.5, WaterReason.used_up)
    """

def water_need_today(block: Block, since_rain: SinceRain | None, reference_evapotranspiration: Velocity, *, climate: Climate = ...) -> WaterNeed:
    """The account since water last filled the block (days_since_filled), rain since then counted; else
    since the rain; else of today alone. All days have the same weather.

    >>> bed = Block(name="bed", crop_coefficient=1.2, root_depth=0.8 * m, allowed_depletion=0.4,
    ...             soil=Soil(available_water=0.2), days_since_filled=10)
    >>> need = water_need_today(bed, None, 5 * mm_per_day)
    >>> round(need.depletion.to(mm), 1), need.reason
    (60.0, WaterReason.today)
    """

def application(solution: Solution, ground: Ground) -> Application:
    """How fast water comes down on the ground, or to each plant, of all its lines together. What wind
    and the overlap of sprinklers do is not in it. InvalidInput for problems(ground), or where no
    outlet is open.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> ground = Ground(lines=["row 1"], row_spacing=30 * ft)
    >>> round(application(solve(farm), ground).rates.average.to(inch_per_h), 2)
    0.22
    """

def application_by_line(solution: Solution, ground: Ground) -> list[Application]:
    """The same of each line of the ground that has an open outlet; an area is shared by the number of
    outlets.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> ground = Ground(lines=["row 1"], row_spacing=30 * ft)
    >>> len(application_by_line(solve(farm), ground))
    1
    """

def area_per_outlet(layout: Layout, ground: Ground, line_name: str) -> Area | None:
    """The ground that each outlet of a line has to water; None: no spacing and no area is known.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> ground = Ground(lines=["row 1"], row_spacing=30 * ft)
    >>> round(area_per_outlet(farm, ground, "row 1").to(ft2))
    600
    """

def run_time(application: Application, need: WaterAmount, *, effective_portion: float = 0.9, served: ServedBy | str = ..., intake_rate: Velocity | None = None, surface_storage: Length = ..., wetting_loss: Length = ...) -> RunTime:
    """How long to water for a depth of water, or for a volume to each plant, and in how many bursts
    where the soil takes the water in more slowly than it comes. InvalidInput for a depth where no
    area is known, a volume per plant where none per plant are, or when no water comes.
    effective_portion: of the water let out that comes to the soil, above 0 to 1. served: whom the
    run is long enough for. intake_rate: of the soil; None: not judged. surface_storage: that may
    stand on the surface. wetting_loss: wets leaves and litter, and is lost, at each burst.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> comes = application(solve(farm), Ground(lines=["row 1"], row_spacing=30 * ft))
    >>> found = run_time(comes, WaterAmount(depth=0.5 * inch))
    >>> round(found.for_low_quarter.to(units.h), 1)
    2.6
    """

def watering(application: Application, need: WaterAmount, time: Time, *, effective_portion: float = 0.9, served: ServedBy | str = ..., intake_rate: Velocity | None = None, surface_storage: Length = ..., wetting_loss: Length = ...) -> Watering:
    """What a run of this length does. time: 0 or more.
    effective_portion: of the water let out that comes to the soil, above 0 to 1. served: whom the
    run is long enough for. intake_rate: of the soil; None: not judged. surface_storage: that may
    stand on the surface. wetting_loss: wets leaves and litter, and is lost, at each burst.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> comes = application(solve(farm), Ground(lines=["row 1"], row_spacing=30 * ft))
    >>> watering(comes, WaterAmount(depth=0.5 * inch), 1 * units.h).served_share
    0.0
    """

def long_or_short(application: Application, need: WaterAmount, *, most: int = 6, effective_portion: float = 0.9, served: ServedBy | str = ..., intake_rate: Velocity | None = None, surface_storage: Length = ..., wetting_loss: Length = ...) -> list[Bursts]:
    """Long slow watering against short: one burst, two, and so on, side by side. most: bursts, 1 to
    100. InvalidInput also where no area is known.
    effective_portion: of the water let out that comes to the soil, above 0 to 1. served: whom the
    run is long enough for. intake_rate: of the soil; None: not judged. surface_storage: that may
    stand on the surface. wetting_loss: wets leaves and litter, and is lost, at each burst.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> comes = application(solve(farm), Ground(lines=["row 1"], row_spacing=30 * ft))
    >>> [one.bursts for one in long_or_short(comes, WaterAmount(depth=0.5 * inch), most=3)]
    [1, 2, 3]
    """

def bucket(tank: Tank, hole: Hole, need: Volume | None = None, steps: int = 11) -> BucketRun:
    """A drum or bucket with a hole, for the plant that no line reaches. need: 0 to 1e6 L. steps: 2 to
    1000.

    >>> pail = Tank(level=0.3 * m, diameter=0.25 * m)
    >>> run = bucket(pail, Hole(diameter=1 * mm), 40 * litre)
    >>> run.for_need.fills(), round(run.empty.to(units.h), 1)
    (3, 6.9)
    """

def filling(layout: Layout, *, flow: Flow | None = None, velocity: Velocity = ...) -> Filling:
    """How much water the lines hold, of the sets that run or of all lines, and how long they take to
    fill. flow: default the gentle one. velocity: of the gentle flow; 1 ft/s is common practice, no
    source.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> round(filling(farm).volume.to(gallon))
    59
    """

def volume_of(line: Line) -> Volume:
    """What one line holds.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> volume_of(row) == filling(farm).volume
    True
    """

def missed_water(sound: Solution, broken: Solution, run: InterruptedRun, again: Solution | None = None, grounds: Iterable[Ground] = ()) -> MissedWater:
    """What each outlet missed while something was broken, and how long to make up. again: as it is
    started again, None: mended. grounds: of some lines; the depths missed are known there.
    InvalidInput when the solutions do not have the same lines and outlets, or for times that do not
    follow each other.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> broken = solve(farm.with_fault(end_open("row 1")))
    >>> run = InterruptedRun(planned=2 * units.h, broke=1 * units.h, stopped=1.5 * units.h)
    >>> missed = missed_water(solve(farm), broken, run)
    >>> missed.for_weakest > 30 * units.min, missed.lines[0].weakest
    (True, 24)
    """

def modulus_of(kind: str) -> Pressure:
    """E of a kind of nominal_pipe. InvalidInput for an unknown kind.

    >>> modulus_of("PVC Class 160")
    400000 * psi
    """

def wave_speed(wall: PipeWall | None, density: Density, bulk_modulus: Pressure = ...) -> Velocity:
    """How fast a wave of pressure runs, after Joukowsky and Korteweg. wall: None: stiff pipe, the
    fastest there can be.

    >>> round(wave_speed(None, 998.2 * kg_per_m3).to(m_per_s))
    1481
    """

def reflection_time(water: StoppedWater) -> Time:
    """2 L / a: closed within it is as if at once.

    >>> water = StoppedWater(length=300 * ft, velocity=5 * ft_per_s,
    ...                      wave_speed=1200 * ft_per_s, density=62.4 * lb_per_ft3)
    >>> round(reflection_time(water).to(units.s), 6)
    0.5
    """

def surge_rise(water: StoppedWater, closing: Time | None = None) -> Pressure:
    """What is added when the water is stopped. closing: how long it takes, None: at once.

    >>> water = StoppedWater(length=300 * ft, velocity=5 * ft_per_s,
    ...                      wave_speed=1200 * ft_per_s, density=62.4 * lb_per_ft3)
    >>> round(surge_rise(water).to(psi))
    81
    >>> round(surge_rise(water, 5 * units.s).to(psi), 1)
    8.1
    """

def shortest_closing(water: StoppedWater, rise: Pressure) -> Time:
    """Such that no more than this is added; 0: at once. rise: above 0.

    >>> water = StoppedWater(length=300 * ft, velocity=5 * ft_per_s,
    ...                      wave_speed=1200 * ft_per_s, density=62.4 * lb_per_ft3)
    >>> round(shortest_closing(water, 20 * psi).to(units.s), 1)
    2.0
    """

def length_at_peak(water: StoppedWater, closing: Time) -> Length:
    """How much of the pipe, from the valve back, has the whole rise when it is closed in this time; 0
    where none has.

    >>> water = StoppedWater(length=300 * ft, velocity=5 * ft_per_s,
    ...                      wave_speed=1200 * ft_per_s, density=62.4 * lb_per_ft3)
    >>> round(length_at_peak(water, 0.3 * units.s).to(ft))
    120
    """

def surges(solution: Solution, *, walls: Iterable[KnownWall] = (), closing: Time = ...) -> list[LineSurge]:
    """The pressure that stopping the water of each line would bring, in the order of the layout.
    walls: what is known of them. closing: how fast the valves close, default as fast as a hand or a
    flap does; 0: at once. InvalidInput for what is not above 0.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> surges(solve(farm))[0].is_safe()
    True
    """

def day_plan(layout: Layout, sets: Iterable[SetToWater], *, earliest: Time = ..., latest: Time = ..., together: bool = True, changeover: Time = ..., fill_velocity: Velocity = ..., share: float = 1.0, soil: RunTimeOptions = ..., prices: WaterPrices = ..., threads: int = 0, progress: Callable[[int, int], bool | None] | bool | None = None) -> DayPlan:
    """One day's watering, set after set, with the faults of the layout. A day too short is no error:
    what is left is told. InvalidInput for sets that the layout does not have or that open no
    outlet, a need that fits no line, hours that end before they begin; NotSolved.
    earliest, latest: since midnight, daylight or when the pump may run. together: sets that can.
    changeover: between two turns. fill_velocity: common practice, no source. share: of its rated
    pressure at every outlet. soil: what it and the air do with the water. prices: for the cost.
    threads: 0: as many as the machine runs at once; the answer is the same whatever their number.
    progress: True: a bar on a terminal; or a function of how many parts are done and of how many,
    which returns False to stop the work (Stopped). Other threads run meanwhile.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> farm = Layout(Supply(pressure=40 * psi), [row],
    ...               sets=[WateringSet(name="one", lines=["row 1"])])
    >>> plan = day_plan(farm, [SetToWater(set="one", time=2 * units.h)])
    >>> plan.all_fits(), plan.turns[0].sets
    (True, ['one'])
    """

def todays_sets(layout: Layout, blocks: Iterable[Block], needs: Iterable[WaterNeed]) -> TodaysSets:
    """Which sets water the blocks that need it today, and how much each must give, without what is
    lost on the way. needs: one for each of the blocks. InvalidInput for a set whose outlets stand
    in two blocks, a block of which neither area nor spacing is known, a block without its need.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> farm = Layout(Supply(pressure=40 * psi), [row],
    ...               sets=[WateringSet(name="one", lines=["row 1"])])
    >>> bed = Block(name="bed", lines=["row 1"], crop_coefficient=1.2, root_depth=0.8 * m,
    ...             allowed_depletion=0.4, soil=Soil(available_water=0.2), row_spacing=30 * ft)
    >>> need = water_need(bed, [], WaterDay(reference_evapotranspiration=5 * mm_per_day))
    >>> todays_sets(farm, [bed], [need]).to_water[0].set
    'one'
    """

def read_layout(file: str | os.PathLike[str], *, limits: FileLimits = ...) -> Layout:
    """Reads a description file (TOML 1.0). Its faults are in the layout; reports are in US units when
    the supply's pressure is given in psi. limits: how much the file may hold. InvalidInput with
    every mistake, each with file, line and column.

    >>> read_layout("examples/ouzel_strips.toml")
    <hydro.Layout: lines 6, outlets 20, faults 1>
    """

def read_layout_text(text: str, name: str = 'text', *, limits: FileLimits = ...) -> Layout:
    '''The same from text; `name` stands for the file in errors.

    >>> text = """
    ... supply = { pressure = "40 psi" }
    ... pipe.lateral = { inside_diameter = "1.754 in", hazen_williams = 150 }
    ... outlet.spray = { flow = "1.2 gpm", at = "30 psi" }
    ... line = [{ name = "row 1", pipe = "lateral", outlet = "spray", count = 24, spacing = "20 ft" }]
    ... """
    >>> read_layout_text(text)
    <hydro.Layout: lines 1, outlets 24, faults 0>
    '''

def read_outlets(file: str | os.PathLike[str], *, limits: FileLimits = ...) -> list[Outlet]:
    """The kinds of outlets that a description file defines, used or not.

    >>> [kind.name for kind in read_outlets("examples/ouzel_strips.toml")]
    ['turning_head']
    """

def read_fault(text: str, outlets: Iterable[Outlet] = (), *, limits: FileLimits = ...) -> Fault:
    """Reads the inside of an inline table. outlets: those that a wrong one may be, by their names.

    >>> read_fault('line = "row 2", outlet = 7, kind = "head off"')
    head_off('row 2', 7)
    """

def report(solution: Solution, after: Solution | None = None, *, units: UnitSystem | str | None = None, skipped: Iterable[SkippedFault] = (), throttling: Throttling | None = None) -> str:
    """A solved layout told to the person who waters from it; with `after`, what the faults of that one
    do to the rest. units: "us" or "si", default those of the site. skipped: faults to be listed.
    throttling: what throttle_up says of them, to be told. InvalidInput when the two do not have the
    same lines and outlets.

    >>> lateral = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=lateral, outlet=Outlet(flow=1.2 * gpm, at=30 * psi),
    ...            count=24, spacing=20 * ft)
    >>> before = solve(Layout(Supply(pressure=40 * psi), [row]))
    >>> report(before).splitlines()[0]
    '* Every one of the 24 outlets has its rated pressure.'
    """

def setting_report(setting: Setting, *, units: UnitSystem | str | None = None) -> str:
    """How the supply is set, for the person at the engine: speed or pressure, gauge, flow, the weakest
    outlet, and the limits that are passed. units: "us" or "si", default those of the site.

    >>> pump = Pump(points=[PumpPoint(flow=0 * gpm, head=150 * ft),
    ...                     PumpPoint(flow=100 * gpm, head=125 * ft)], curve_speed=2600 * rpm)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=Outlet(flow=3.52 * gpm, at=25 * psi),
    ...            count=10, spacing=36 * ft)
    >>> farm = Layout(Supply(pump=pump), [row],
    ...               sets=[WateringSet(name="one", lines=["row 1"])])
    >>> "rpm" in setting_report(set_for_rated(farm))
    True
    """

def throttling_sentences(throttling: Throttling, *, units: UnitSystem | str | None = None) -> list[str]:
    """Three sentences: what a fault does to the gauge, to what speed the engine must be throttled up
    to bring the reading back, and what that cures and does not. units: as in report.

    >>> pump = Pump(points=[PumpPoint(flow=0 * gpm, head=150 * ft),
    ...                     PumpPoint(flow=100 * gpm, head=125 * ft)], curve_speed=2600 * rpm)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=Outlet(flow=3.52 * gpm, at=25 * psi),
    ...            count=10, spacing=36 * ft)
    >>> farm = Layout(Supply(pump=pump), [row],
    ...               sets=[WateringSet(name="one", lines=["row 1"])])
    >>> len(throttling_sentences(throttle_up(farm, [end_open("row 1")])))
    3
    """

def sets_report(layout: Layout, together: Iterable[SetsTogether], *, units: UnitSystem | str | None = None) -> str:
    """Which watering sets can run together, as a table a grower reads. together: what sets_together
    found of the layout. units: as in report.

    >>> pump = Pump(points=[PumpPoint(flow=0 * gpm, head=150 * ft),
    ...                     PumpPoint(flow=100 * gpm, head=125 * ft)], curve_speed=2600 * rpm)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=Outlet(flow=3.52 * gpm, at=25 * psi),
    ...            count=10, spacing=36 * ft)
    >>> farm = Layout(Supply(pump=pump), [row],
    ...               sets=[WateringSet(name="one", lines=["row 1"])])
    >>> "one" in sets_report(farm, sets_together(farm))
    True
    """

def pocket_sheets(layout: Layout, *, units: UnitSystem | str | None = None) -> list[str]:
    """One short sheet for each watering set, to carry along the rows: speed and gauge, bucket times,
    and what a break does to the gauge and to the other heads. Its faults are left out. units: as in
    report. InvalidInput for a set in which no outlet is open; NotSolved.

    >>> pump = Pump(points=[PumpPoint(flow=0 * gpm, head=150 * ft),
    ...                     PumpPoint(flow=100 * gpm, head=125 * ft)], curve_speed=2600 * rpm)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=Outlet(flow=3.52 * gpm, at=25 * psi),
    ...            count=10, spacing=36 * ft)
    >>> farm = Layout(Supply(pump=pump), [row],
    ...               sets=[WateringSet(name="one", lines=["row 1"])])
    >>> len(pocket_sheets(farm))
    1
    """

def to_csv(solution: Solution | Breaks | DayPlan, after: Solution | None = None) -> str:
    """One row for each outlet (RFC 4180); numbers in SI, the unit in the column's name. The last five
    columns are followed by those of the first solution when two are given. Of Breaks, what each
    outlet does to the others when it breaks; of a DayPlan, one row for each turn.

    >>> lateral = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=lateral, outlet=Outlet(flow=1.2 * gpm, at=30 * psi),
    ...            count=24, spacing=20 * ft)
    >>> before = solve(Layout(Supply(pressure=40 * psi), [row]))
    >>> to_csv(before).splitlines()[0].split(",")[:3]
    ['line', 'outlet', 'kind']
    """

def to_json(solution: Solution, after: Solution | None = None) -> str:
    """All that is known, as one object (RFC 8259); quantities are numbers in SI.

    >>> lateral = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=lateral, outlet=Outlet(flow=1.2 * gpm, at=30 * psi),
    ...            count=24, spacing=20 * ft)
    >>> before = solve(Layout(Supply(pressure=40 * psi), [row]))
    >>> to_json(before).startswith("{")
    True
    """

def to_svg(solution: Solution | Breaks, after: Solution | None = None, *, units: UnitSystem | str | None = None) -> str:
    """The pressure at every outlet along each line, as an SVG picture; of Breaks, what each outlet
    does when another breaks. units: "us" or "si", default those of the site.

    >>> row = Line(name="row 1", pipe=nominal_pipe("1 in", "PVC Sch 40"), length=9 * m)
    >>> to_svg(solve(Layout(Supply(pressure=2 * bar), [row]))).count("<svg ")
    1
    """

def to_svg_of_supply(solution: Solution, after: Solution | None = None, *, units: UnitSystem | str | None = None) -> str:
    """What the supply gives at the start of the lines against what these ask for, as an SVG picture;
    after: with faults, at another speed, or with other sets running. NotSolved when the lines are
    not solved at one of the pressures drawn. units: "us" or "si", default those of the site.

    >>> row = Line(name="row 1", pipe=nominal_pipe("1 in", "PVC Sch 40"), length=9 * m)
    >>> to_svg_of_supply(solve(Layout(Supply(pressure=2 * bar), [row]))).count("<svg ")
    1
    """

def write_file(path: str | os.PathLike[str], text: str) -> None:
    """A text into a file, whole or not at all. InvalidInput with the path and the reason.

    >>> import os, tempfile
    >>> folder = tempfile.TemporaryDirectory()
    >>> path = os.path.join(folder.name, "pressure.txt")
    >>> write_file(path, str(25 * psi))
    >>> with open(path) as file:
    ...     file.read()
    '25 psi'
    >>> folder.cleanup()
    """

def room_report(room: Room, units: UnitSystem | str) -> str:
    """Room on a line, as a sentence and a table. units: "us" or "si".

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> room = room_on_line(farm, "row 1", limits=Limits(judged=["rated"]))
    >>> room_report(room, "us").split(".")[0]
    '14 more outlets fit on row 1'
    """

def longest_line_report(longest: LongestLine, units: UnitSystem | str) -> str:
    """How long a line can be, as a sentence and a table. units: "us" or "si".

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> longest = longest_line(farm, "row 1", limits=Limits(judged=["rated"]))
    >>> "38 outlets" in longest_line_report(longest, "us")
    True
    """

def breaks_report(breaks: Breaks, *, units: UnitSystem | str | None = None) -> str:
    """Every outlet broken in turn, as sentences and a table that a grower reads. units: as in report.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> found = break_every_outlet(farm, fault=nozzle_missing("", 0, bore=0.3 * inch))
    >>> "row 1" in breaks_report(found)
    True
    """

def chances_report(layout: Layout, found: Chances, uncertainty: Uncertainty, *, units: UnitSystem | str | None = None) -> str:
    """How likely outlets fall short, as a table a grower reads: what chances found of the layout, with
    the same uncertainty. units: as in report.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> guess = Uncertainty(supply_pressure=1 * psi)
    >>> found = chances(farm, guess, realisations=100)
    >>> "row 1" in chances_report(farm, found, guess)
    True
    """

def trouble_report(layout: Layout, line: str, found: Iterable[TroubleAtCount], uncertainty: Uncertainty, *, units: UnitSystem | str | None = None) -> str:
    """The same for each count of outlets more on a line: what chance_of_trouble found.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> guess = Uncertainty(supply_pressure=1 * psi)
    >>> found = chance_of_trouble(farm, "row 1", 3, guess, realisations=100)
    >>> "row 1" in trouble_report(farm, "row 1", found, guess)
    True
    """

def read_blocks(file: str | os.PathLike[str], *, limits: FileLimits = ...) -> Blocks:
    """Reads the tables [block.NAME] and [weather] of a description file; read_layout reads the rest.
    limits: how much it may hold. InvalidInput with every mistake, each with file, line and column.

    >>> read_blocks("examples/ouzel_strips.toml").blocks
    []
    """

def read_blocks_text(text: str, name: str = 'text', *, limits: FileLimits = ...) -> Blocks:
    '''The same from text; `name` stands for the file in errors.

    >>> text = """
    ... weather = { reference_evapotranspiration = "5 mm/day" }
    ... block.bed = { lines = [], crop = "potato", season_day = 60, region = "Europe" }
    ... """
    >>> read_blocks_text(text).blocks[0].crop
    'potato'
    '''

def need_report(blocks: Iterable[Block], needs: Iterable[WaterNeed], weather: ReferenceEvapotranspiration, units: UnitSystem | str) -> str:
    """Which blocks need water today, and how much, as a grower reads it. needs: one for each of the
    blocks, in their order. units: "us" or "si".

    >>> rate = 5 * mm_per_day
    >>> bed = Block(name="bed", crop_coefficient=1.2, root_depth=0.8 * m,
    ...             allowed_depletion=0.4, soil=Soil(available_water=0.2))
    >>> need = water_need(bed, [], WaterDay(reference_evapotranspiration=rate))
    >>> weather = reference_evapotranspiration(Weather(reference_evapotranspiration=rate))
    >>> "bed" in need_report([bed], [need], weather, "si")
    True
    """

def day_report(layout: Layout, plan: DayPlan, *, units: UnitSystem | str | None = None, surges: Iterable[LineSurge] = ()) -> str:
    """The watering day as a page that a grower reads. plan: of the layout. units: "us" or "si",
    default those of the site. surges: of a turn, or of several: the worst are told.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> farm = Layout(Supply(pressure=40 * psi), [row],
    ...               sets=[WateringSet(name="one", lines=["row 1"])])
    >>> plan = day_plan(farm, [SetToWater(set="one", time=2 * units.h)])
    >>> "one" in day_report(farm, plan)
    True
    """

def to_calendar(layout: Layout, plan: DayPlan, date: datetime.date, *, units: UnitSystem | str | None = None) -> str:
    """The watering day as a calendar file (iCalendar, RFC 5545): one event for each turn, at the
    farm's own time wherever it is read. date: of the years 1900 to 9999. units: of the
    descriptions, as in day_report.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> farm = Layout(Supply(pressure=40 * psi), [row],
    ...               sets=[WateringSet(name="one", lines=["row 1"])])
    >>> plan = day_plan(farm, [SetToWater(set="one", time=2 * units.h)])
    >>> import datetime
    >>> to_calendar(farm, plan, datetime.date(2026, 6, 14)).splitlines()[0]
    'BEGIN:VCALENDAR'
    """

def to_svg_of_day(layout: Layout, plan: DayPlan, *, units: UnitSystem | str | None = None) -> str:
    """The watering day as bars over its hours, as an SVG picture. units: as in day_report.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> farm = Layout(Supply(pressure=40 * psi), [row],
    ...               sets=[WateringSet(name="one", lines=["row 1"])])
    >>> plan = day_plan(farm, [SetToWater(set="one", time=2 * units.h)])
    >>> to_svg_of_day(farm, plan).count("<svg ")
    1
    """

def missed_report(layout: Layout, missed: MissedWater, run: InterruptedRun, *, units: UnitSystem | str | None = None) -> str:
    """What to make up after a break, as a page that a grower reads. missed: of the layout, in this
    run. units: as in day_report.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> run = InterruptedRun(planned=2 * units.h, broke=1 * units.h, stopped=1.5 * units.h)
    >>> broken = solve(farm.with_fault(end_open("row 1")))
    >>> missed = missed_water(solve(farm), broken, run)
    >>> "row 1" in missed_report(farm, missed, run)
    True
    """

def read_readings(file: str | os.PathLike[str], layout: Layout, *, limits: FileLimits = ...) -> Readings:
    """The [[reading]] and [[sight]] of a description file, or of one of their own. layout: with the
    sets that ran. limits: how much the file may hold. InvalidInput with every mistake, each with
    file, line and column.

    >>> farm = read_layout("examples/ouzel_bench.toml").watering(["rows 1 and 2"])
    >>> len(read_readings("examples/ouzel_gauge_low.toml", farm).readings)
    2
    """

def read_readings_text(text: str, layout: Layout, name: str = 'text', *, limits: FileLimits = ...) -> Readings:
    """The same from text; `name` stands for the file in errors.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> text = 'reading = [{ place = "supply gauge", pressure = "38 psi" }]'
    >>> read_readings_text(text, farm).readings
    (Reading(pressure=38 * psi),)
    """

def is_as_it_should_be(found: FoundFaults) -> bool:
    """Whether no fault explains the readings better than that nothing is wrong, but for what is worth
    a bare mention: no Bayes factor against it is above 3.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> read = [Reading(place="flush end", line="row 1", pressure=20 * psi)]
    >>> found = find_fault(farm, read)
    >>> is_as_it_should_be(found)
    False
    """

def diagnosis_report(layout: Layout, readings: Iterable[Reading], sights: Iterable[Sight], found: FoundFaults, *, units: UnitSystem | str | None = None, find_fault: FindFaultOptions = ..., next: NextReadings | None = None, make_right: MakeRight | None = None, seen_by: Iterable[SeenBy] = ()) -> str:
    """What is wrong, as far as the readings tell, to the person who walks there. layout, readings,
    sights, found: what find_fault() was asked and answered. units: "us" or "si", default those of
    the site. find_fault: the FindFaultOptions that were used. next: of next_reading(). make_right:
    of make_right(). seen_by: what gauges can see at all.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> read = [Reading(place="flush end", line="row 1", pressure=20 * psi)]
    >>> found = find_fault(farm, read)
    >>> "row 1" in diagnosis_report(farm, read, [], found)
    True
    """

def to_svg_of_diagnosis(layout: Layout, readings: Iterable[Reading], sights: Iterable[Sight], found: FoundFaults, *, units: UnitSystem | str | None = None) -> str:
    """How likely the fault is at each place along the lines, as an SVG picture. units: as in
    diagnosis_report.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> read = [Reading(place="flush end", line="row 1", pressure=20 * psi)]
    >>> found = find_fault(farm, read)
    >>> to_svg_of_diagnosis(farm, read, [], found).count("<svg ")
    1
    """

def calibration_report(readings: Iterable[Reading], calibration: Calibration, *, units: UnitSystem | str | None = None) -> str:
    """What a walk taught, as a page. units: as in diagnosis_report.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> walk = [Reading(place="flush end", line="row 1", pressure=32 * psi)]
    >>> "row 1" in calibration_report(walk, calibrate(farm, walk))
    True
    """

def drift_report(log: Iterable[DayOfReadings], drift: Drift, units: UnitSystem | str = ...) -> str:
    """What changed over the days, as a page.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> log = [DayOfReadings(day=day, readings=[Reading(pressure=40 * psi)])
    ...        for day in range(9)]
    >>> drift_report(log, find_drift(farm, log))
    'No reading has left what is normal for its place.\n'
    """

def in_words(learnt: Learnt, rises: bool) -> str:
    """What was learnt of one input, as a person says it. rises: that it is more.

    >>> spray = Outlet(name="spray", flow=1.2 * gpm, at=30 * psi)
    >>> pipe = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=pipe, outlet=spray, count=24, spacing=20 * ft)
    >>> farm = Layout(Supply(pressure=40 * psi), [row])
    >>> walk = [Reading(place="flush end", line="row 1", pressure=32 * psi)]
    >>> of_pipe = calibrate(farm, walk).learnt[0]
    >>> isinstance(in_words(of_pipe, True), str)
    True
    """
