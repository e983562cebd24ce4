"""Numbers of an axis in the units of the card."""

from chartgen.model.shop import LengthUnits
from chartgen.wording.figure import Point

_INCH = 25.4
_FOOT = 304.8


def in_units(length: float, units: LengthUnits) -> float:
    """Return a length [mm] or a feed [mm/rev] as the card's axis counts it."""
    return float(length) if units is LengthUnits.METRIC else float(length) / _INCH


def speed_in_units(speed: float, units: LengthUnits) -> float:
    """Return a surface speed [m/min] as the card counts it: m/min or ft/min."""
    return float(speed) if units is LengthUnits.METRIC else float(speed) * 1000.0 / _FOOT


def points(xs: object, ys: object) -> tuple[Point, ...]:
    """Return two arrays as the points of a curve."""
    return tuple((float(x), float(y)) for x, y in zip(xs, ys, strict=True))  # type: ignore[call-overload]
