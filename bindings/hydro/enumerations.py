"""Words with a fixed set of values. Each is a text too: OutletState.works == "works"."""

from enum import StrEnum


class Word(StrEnum):
    """One that prints as what Python reads back."""

    def __repr__(self) -> str:
        return f"{type(self).__name__}.{self.name}"


class UnitSystem(Word):
    """The units in which people of a place read each quantity; gallons are US."""

    __module__ = "hydro"

    us = "us"
    si = "si"


class FirstOutlet(Word):
    """Where the first outlet stands, from the inlet."""

    __module__ = "hydro"

    at_one_spacing = "at_one_spacing"
    at_half_spacing = "at_half_spacing"


class OutletState(Word):
    """What an outlet does."""

    __module__ = "hydro"

    works = "works"
    """within its range"""
    below_minimum = "below_minimum"
    """lets out water, but below the pressure at which it turns or forms its pattern"""
    above_maximum = "above_maximum"
    """mists"""
    dry = "dry"
    """the pressure does not lift water to it"""
    closed = "closed"
    """capped, or its line is shut"""
    broken = "broken"
    """an open riser, or a body without its nozzle"""


class RegulatorState(Word):
    """What a regulator does."""

    __module__ = "hydro"

    holding = "holding"
    """keeps what it is set to"""
    open = "open"
    """less comes than it is set to: it lets all through"""
    shut = "shut"
    """more stands beyond it than it is set to, or than comes"""
    stuck_open = "stuck_open"
    """by a fault"""


class CheckValveState(Word):
    """What a check valve does."""

    __module__ = "hydro"

    open = "open"
    shut = "shut"
    """more stands beyond it than comes"""


class CurveShape(Word):
    """How a pump's curve goes between its points. Two are always joined by the quadratic."""

    __module__ = "hydro"

    through_points = "through points"
    """through every point"""
    quadratic = "quadratic"
    """a - b Q^2, as near to all points as it comes"""


class PumpArrangement(Word):
    """How two pumps stand to each other."""

    __module__ = "hydro"

    parallel = "parallel"
    """side by side, each with a check valve: flows add"""
    series = "series"
    """one after the other: heads add"""


class PumpRange(Word):
    """Where a flow lies in the usable range of a pump at its speed."""

    __module__ = "hydro"

    unknown = "unknown"
    below_least_flow = "below_least_flow"
    inside = "inside"
    above_most_flow = "above_most_flow"


class SupplyLimit(Word):
    """What a supply should not be asked to do."""

    __module__ = "hydro"

    top_speed = "top_speed"
    """the engine turns no faster"""
    power = "power"
    """the shaft takes more than the engine gives"""
    least_flow = "least_flow"
    """below the pump's usable range: heating"""
    most_flow = "most_flow"
    """above the pump's usable range"""
    suction = "suction"
    """less NPSH is available than required: cavitation"""
    gauge_range = "gauge_range"
    """the gauge reads no further"""


class ValveKind(Word):
    """How a valve is built."""

    __module__ = "hydro"

    gate = "gate"
    ball = "ball"
    globe = "globe"
    angle = "angle"


class ValveOpening(Word):
    """How far a valve is closed."""

    __module__ = "hydro"

    open = "open"
    quarter_closed = "quarter closed"
    third_closed = "third closed"
    half_closed = "half closed"
    two_thirds_closed = "two thirds closed"
    three_quarters_closed = "three quarters closed"
    shut = "shut"


class FirstFall(Word):
    """What becomes of an outlet while a tank runs empty."""

    __module__ = "hydro"

    below_rated = "below_rated"
    below_minimum = "below_minimum"
    dry = "dry"


class DrainEnd(Word):
    """Why a tank is followed no further."""

    __module__ = "hydro"

    level_reached = "level_reached"
    """the one that was asked for"""
    tank_empty = "tank_empty"
    """the level is at the tank's outlet, and air follows the water"""
    outflow_ceases = "outflow_ceases"
    """no more than least_outflow"""
