"""The compiled part of the package: all that is public is in hydro, under the same names."""

import os
from collections.abc import Iterable, Iterator, Sequence
from typing import Any, ClassVar, NoReturn, TypeAlias, overload

import numpy
import pandas
from numpy.typing import NDArray

from .enumerations import FirstOutlet, OutletState, UnitSystem

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
    """A number times a unit, 25 * ft2, or a text with a unit, Area("25 ft2"). Units: ft2, m2, cm2.
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
    units.min, units.h.
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
    ft_per_s, m_per_s.
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
    def __init__(self, *, name: str = '', flow: Flow = ..., at: Pressure = ..., exponent: float | None = None, rated: Pressure | None = None, minimum: Pressure | None = None, maximum: Pressure | None = None, compensating: Compensating | None = None, nozzle: Length | None = None, discharge_coefficient: float | None = None, points: Iterable[RatedPoint] = (), body_bore: Length | None = None) -> None: ...
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

class Supply:
    """A pressure that is held, whatever flows."""
    def __init__(self, *, pressure: Pressure = ..., elevation: Length | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def pressure(self) -> Pressure:
        """Held, gauge."""
    @property
    def elevation(self) -> Length | None:
        """Of the place where it is held, default 0."""
    def replace(self, **changes: Any) -> Supply:
        """The same with other values of the fields that are named."""
    def __repr__(self) -> str: ...

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
    """The line is cut through; no water is beyond."""
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
    def __init__(self, *, name: str = '', fed_by: str = '', tap: Length | None = None, tap_outlet: int | None = None, pipe: Pipe = ..., reaches: Iterable[PipeReach] = (), outlet: Outlet | None = None, count: int | None = None, spacing: Length | None = None, first_at: Length | None = None, outlets: Iterable[PlacedOutlet] = (), length: Length | None = None, ground_rise: Length | None = None, elevations: Iterable[Length] = (), riser: Riser = ..., loss_coefficient: float | None = None, outlet_loss_coefficient: float | None = None, connection_length: Length | None = None) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def name(self) -> str:
        """Every line needs one of its own."""
    @property
    def fed_by(self) -> str:
        """The line on which this one begins; empty: the supply."""
    @property
    def tap(self) -> Length | None:
        """Where along it; default its far end."""
    @property
    def tap_outlet(self) -> int | None:
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
        """Far end above near end, default 0; may be negative."""
    @property
    def elevations(self) -> tuple[Length, ...]:
        """Instead: of the ground at every outlet, like the supply's."""
    @property
    def riser(self) -> Riser:
        """Of every outlet."""
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

class Layout:
    """A supply, the lines that hang on it, the water, the place, what is broken. It is examined when
    it is made and cannot be changed; a change makes a new one. InvalidInput with every mistake of
    every part.
    """
    def __init__(self, supply: Supply, lines: Iterable[Line], water: Water | None = None, site: Site | None = None) -> None: ...
    @property
    def supply(self) -> Supply:
        """What feeds it."""
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
        """Index of the line that feeds this one; None: the supply does."""
    def inlet_elevation(self, line_index: int) -> Length:
        """Of the ground at a line's near end."""
    def ground_elevation(self, line_index: int, place: Length) -> Length:
        """Of the ground at a distance from the near end."""
    def outlet_elevation(self, line_index: int, outlet_number: int) -> Length:
        """Of the ground at an outlet (from 1 on)."""
    def outlet_at(self, line_index: int, outlet_number: int) -> Outlet:
        """The kind that stands at an outlet (from 1 on), the wrong one where a fault says so."""
    def faults_on(self, line_index: int) -> list[Fault]:
        """In the order of the outlets."""
    def open_end_of(self, line_index: int) -> Length | None:
        """Where a line is open to the air, and dry beyond; None: it is not."""
    def is_cut_off(self, line_index: int) -> bool:
        """Whether no water comes to a line, because one that feeds it is open to the air before it.
        """
    def with_fault(self, fault: Fault) -> Layout:
        """With this fault too. InvalidInput when it does not fit the layout or another fault."""
    def with_faults(self, faults: Iterable[Fault]) -> Layout:
        """With these faults too. InvalidInput with everything that does not fit."""
    def with_possible_faults(self, faults: Iterable[Fault]) -> PossibleFaults:
        """With those that fit, taken one after another; the others are skipped and listed."""
    def without_faults(self) -> Layout:
        """With nothing broken."""
    def with_line(self, line: Line) -> Layout:
        """With this line added, or put in the place of the line of its name. Faults stay. InvalidInput
        when the line or a fault does not fit the rest.
        """
    def without(self, line_name: str) -> Layout:
        """Without the line of this name and its faults. InvalidInput when there is none, when it is
        the only one, or when it feeds another.
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
        """In the pipe, arriving at the outlet."""
    @property
    def state(self) -> list[OutletState]:
        """What each outlet does."""
    @property
    def inflow(self) -> Flow:
        """Into the line."""
    @property
    def inlet_velocity(self) -> Velocity:
        """In its first pipe."""
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
    def inflow(self) -> Flow:
        """Out of the supply."""
    @property
    def supply_pressure(self) -> Pressure:
        """Gauge."""
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
        """Out of the supply."""
    @property
    def inflow_after(self) -> Flow:
        """Out of the supply."""
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
ft: LengthUnit
inch: LengthUnit
m: LengthUnit
mm: LengthUnit
cm: LengthUnit
km: LengthUnit
ft2: AreaUnit
m2: AreaUnit
cm2: AreaUnit
gallon: VolumeUnit
litre: VolumeUnit
m3: VolumeUnit
s: TimeUnit
min: TimeUnit
h: TimeUnit
ft_per_s: VelocityUnit
m_per_s: VelocityUnit
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
gravity: float

Fault: TypeAlias = (
    HeadOff | RiserSheared | NozzleMissing | Clogged | Worn | WrongOutlet | Capped | Leak
    | LineCut | EndOpen | ValvePartClosed
)
most_outlets: int
most_lines: int
same_place: Length

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
def to_text(quantity: Flow, unit: FlowUnit) -> str:
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

def fit_of(points: Iterable[RatedPoint]) -> PointsFit:
    """Least squares of ln q on ln p. InvalidInput for fewer than two points, or pressures that are all
    the same.

    >>> fit = fit_of([RatedPoint(pressure=20 * psi, flow=1 * gpm),
    ...               RatedPoint(pressure=80 * psi, flow=2 * gpm)])
    >>> round(fit.exponent, 6)
    0.5
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
    """The line is cut through at a distance from its inlet; no water is beyond.

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

def line_of(fault: Fault) -> str:
    """Name of the line.

    >>> line_of(end_open("row 1"))
    'row 1'
    """

def outlet_of(fault: Fault) -> int | None:
    """From 1 on; None: the fault is the line's.

    >>> outlet_of(head_off("row 1", 7))
    7
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
    """Where the fault opens the line to the air, so that no water is beyond; None for the others.

    >>> open_end(line_cut("row 1", 90 * ft), Line(name="row 1", count=10, spacing=20 * ft))
    90 * ft
    """

def describe(fault: Fault, line: Line, units: UnitSystem | str) -> str:
    """One sentence, with the values used.

    >>> row = Line(name="row 1", count=10, spacing=20 * ft)
    >>> describe(clogged("row 1", 7, 0.6), row, "us")
    'row 1, outlet 7: clogged, 60 % of its flow lost'
    """

def problems(part: Supply | Line | Pipe | Outlet | Riser | Water | Site | Fault, line: Line | None = None) -> list[Problem]:
    """What is wrong with one part of a layout, or with a fault on a line; empty when nothing is.

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
    fast; pressure below the atmosphere's, or above a pipe's rating.
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

def read_layout(file: str | os.PathLike[str]) -> Layout:
    """Reads a description file (TOML 1.0). Its faults are in the layout; reports are in US units when
    the supply's pressure is given in psi. InvalidInput with every mistake, each with file, line and
    column.

    >>> read_layout("examples/ouzel_strips.toml")
    <hydro.Layout: lines 6, outlets 20, faults 1>
    """

def read_layout_text(text: str, name: str = 'text') -> Layout:
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

def read_outlets(file: str | os.PathLike[str]) -> list[Outlet]:
    """The kinds of outlets that a description file defines, used or not.

    >>> [kind.name for kind in read_outlets("examples/ouzel_strips.toml")]
    ['turning_head']
    """

def read_fault(text: str, outlets: Iterable[Outlet] = ()) -> Fault:
    """Reads the inside of an inline table. outlets: those that a wrong one may be, by their names.

    >>> read_fault('line = "row 2", outlet = 7, kind = "head off"')
    head_off('row 2', 7)
    """

def report(solution: Solution, after: Solution | None = None, *, units: UnitSystem | str | None = None, skipped: Iterable[SkippedFault] = ()) -> str:
    """A solved layout told to the person who waters from it; with `after`, what the faults of that one
    do to the rest. units: "us" or "si", default those of the site. skipped: faults to be listed.
    InvalidInput when the two do not have the same lines and outlets.

    >>> lateral = nominal_pipe("1-1/2 in", "PVC Class 160")
    >>> row = Line(name="row 1", pipe=lateral, outlet=Outlet(flow=1.2 * gpm, at=30 * psi),
    ...            count=24, spacing=20 * ft)
    >>> before = solve(Layout(Supply(pressure=40 * psi), [row]))
    >>> report(before).splitlines()[0]
    '* Every one of the 24 outlets has its rated pressure.'
    """

def to_csv(solution: Solution, after: Solution | None = None) -> str:
    """One row for each outlet (RFC 4180); numbers in SI, the unit in the column's name. The last five
    columns are followed by those of the first solution when two are given.

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

def to_svg(solution: Solution, after: Solution | None = None, *, units: UnitSystem | str | None = None) -> str:
    """The pressure at every outlet along each line, as an SVG picture. units: "us" or "si", default
    those of the site.

    >>> row = Line(name="row 1", pipe=nominal_pipe("1 in", "PVC Sch 40"), length=9 * m)
    >>> to_svg(solve(Layout(Supply(pressure=2 * bar), [row]))).count("<svg ")
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
