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
    """capped"""
    broken = "broken"
    """an open riser, or a body without its nozzle"""
