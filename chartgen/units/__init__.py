"""Text in, floats out; the only package that imports pint, and only for rare units."""

from chartgen.units.factors import FACTORS, Kind
from chartgen.units.ranges import between, looks_like_range, speed_range
from chartgen.units.reading import SHOP_UNITS, UnreadableError, magnitude

__all__ = [
    "FACTORS",
    "SHOP_UNITS",
    "Kind",
    "UnreadableError",
    "between",
    "looks_like_range",
    "magnitude",
    "speed_range",
]
