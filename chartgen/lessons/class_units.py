"""The units that a class's numbers are given and asked in."""

from dataclasses import dataclass
from typing import Final

from chartgen.model.shop import LengthUnits
from chartgen.quantities import M_MIN, MM, MM_REV, Millimetres, Unit

INCH: Final = Unit("in", "in", "1/2 in")
INCH_REV: Final = Unit("in/rev", "in/rev", "0.002 in/rev")
FEET_MIN: Final = Unit("ft/min", "ft/min", "80 ft/min")
INCH_MIN: Final = Unit("in/min", "in/min", "2 in/min")
COUNT: Final = Unit("count", "", "12")
"""Pieces, or a place in a list counted from 0."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ClassUnits:
    """Units of length, feed and surface speed; `mm` and `metres` are one of them, converted.

    Spindle speeds, forces, power, torque and time have the same units in every class, because
    the cards do. `diameter_step` and `feed_step` are what a given is a multiple of.
    """

    length: Unit
    feed: Unit
    speed: Unit
    mm: Millimetres[float]
    metres: float
    diameter_step: float
    feed_step: float
    length_decimals: int
    feed_decimals: int

    @property
    def speed_constant(self) -> float:
        """Lengths of a surface speed in a length: 1000 mm in a metre, 12 in in a foot."""
        return 1000.0 * self.metres / self.mm


_OF: Final = {
    LengthUnits.METRIC: ClassUnits(
        length=MM,
        feed=MM_REV,
        speed=M_MIN,
        mm=1.0,
        metres=1.0,
        diameter_step=0.5,
        feed_step=0.005,
        length_decimals=2,
        feed_decimals=3,
    ),
    LengthUnits.INCH: ClassUnits(
        length=INCH,
        feed=INCH_REV,
        speed=FEET_MIN,
        mm=25.4,
        metres=0.3048,
        diameter_step=1.0 / 16.0,
        feed_step=0.0002,
        length_decimals=4,
        feed_decimals=4,
    ),
}


def class_units(units: LengthUnits) -> ClassUnits:
    """Return the units of a class."""
    return _OF[units]
