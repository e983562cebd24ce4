"""The usual spellings of units, each with what it measures and its exact factor.

A factor is a ratio of whole numbers. Python divides those, of any size, to the nearest
float, and so spares each start of the program the import of `fractions` (2 ms).
"""

from enum import Enum
from functools import reduce
from typing import NamedTuple


class Kind(Enum):
    """What a number measures: in trade words, as pint spells its unit here, and how to put it."""

    LENGTH = "a length", "mm", "write it"
    FEED = "a feed", "mm/rev", "write it per turn,"
    SURFACE_SPEED = "a speed along the surface", "m/min", "write a length per minute,"
    SPINDLE_SPEED = "a spindle speed", "rev/min", "write turns per minute,"
    RATE = "a number of times per minute", "1/min", "write it per minute,"
    TIME = "a time", "min", "write it"
    MASS = "a mass", "kg", "write it"
    FORCE = "a force", "N", "write it"
    PRESSURE = "a force on an area", "N/mm**2", "write it"
    STIFFNESS = "a stiffness", "N/mm", "write a force over a length,"
    TORQUE = "a torque", "N*m", "write a force times an arm,"
    POWER = "a power", "W", "write it"
    VOLUME_RATE = "a volume per minute", "mm**3/min", "write it"
    SHARE = "a share", "dimensionless", "write it in percent,"
    ANGLE = "an angle", "deg", "write it in degrees,"
    OTHER = "", "", ""

    def __init__(self, words: str, held_in: str, advice: str) -> None:
        self.words = words
        self.held_in = held_in
        self.advice = advice


class Ratio(NamedTuple):
    """An exact number, `top` over `bottom`, not reduced; `bottom` is above 0."""

    top: int
    bottom: int

    def __float__(self) -> float:
        return self.top / self.bottom


def exact(text: str) -> Ratio:
    """Return "1/16" or "0.0254" as a ratio."""
    top, _, bottom = text.partition("/")
    whole, _, decimals = top.partition(".")
    return Ratio(int(whole + decimals), int(bottom or 1) * 10 ** len(decimals))


def product(first: Ratio, second: Ratio) -> Ratio:
    """Return the two multiplied, still exact."""
    return Ratio(first.top * second.top, first.bottom * second.bottom)


def _table(kind: Kind, spellings: dict[str, str]) -> dict[str, tuple[Kind, Ratio]]:
    """Return one kind's part of the table; a value is an exact number, or a product "a b"."""
    factors = {}
    for words, parts in spellings.items():
        factor = reduce(product, map(exact, parts.split()))
        for word in words.split(","):
            factors[word] = (kind, factor)
    return factors


# Exact by definition: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, g = 9.80665 m/s2,
# 1 hp = 550 ft.lbf/s, 1 PS = 75 kgf.m/s. A test derives each from pint.
FACTORS: dict[str, tuple[Kind, Ratio]] = {
    **_table(
        Kind.LENGTH,
        {"mm,MM": "1", "cm": "10", "m": "1000", "um,micron,microns": "1/1000"}
        | {'in,inch,inches,IN,"': "25.4", "thou": "0.0254", "ft,foot,feet": "304.8"},
    ),
    **_table(
        Kind.FEED,
        {"mm/rev,mm/r,mm/turn,mm/U": "1", "um/rev": "1/1000"}
        | {"in/rev,inch/rev,ipr,IPR": "25.4", "thou/rev": "0.0254"},
    ),
    **_table(
        Kind.SURFACE_SPEED,
        {"m/min": "1", "m/s": "60", "mm/min": "1/1000", "mm/s": "60/1000"}
        | {"ft/min,sfm,SFM,sfpm,fpm": "0.3048", "in/min,ipm": "0.0254", "ft/s": "60 0.3048"},
    ),
    **_table(
        Kind.SPINDLE_SPEED,
        {"rpm,RPM,rev/min,revs/min,r/min,turns/min,turn/min,U/min": "1", "rps,rev/s": "60"},
    ),
    **_table(Kind.RATE, {"1/min,min-1,/min": "1"}),
    **_table(
        Kind.TIME, {"min,minute,minutes": "1", "s,sec,second,seconds": "1/60", "h,hour,hours": "60"}
    ),
    **_table(Kind.MASS, {"kg": "1", "g": "1/1000", "lb,lbs": "0.45359237"}),
    **_table(
        Kind.FORCE, {"N": "1", "kN": "1000", "lbf": "0.45359237 9.80665", "kgf,kp": "9.80665"}
    ),
    **_table(
        Kind.PRESSURE,
        {"N/mm2,MPa": "1", "GPa,kN/mm2": "1000", "J/mm3": "1000"}
        | {"psi": "0.45359237 9.80665 100/64516", "ksi": "1000 0.45359237 9.80665 100/64516"},
    ),
    **_table(
        Kind.STIFFNESS,
        {"N/mm": "1", "N/um,kN/mm": "1000", "lbf/in": "0.45359237 9.80665 10/254"},
    ),
    **_table(
        Kind.TORQUE,
        {"N.m,Nm": "1", "N.mm,Nmm": "1/1000", "N.cm,Ncm": "1/100"}
        | {"ft.lb,lb.ft,ft.lbf,lbf.ft": "0.45359237 9.80665 0.3048"}
        | {"in.lb,lb.in,in.lbf,lbf.in": "0.45359237 9.80665 0.0254"},
    ),
    **_table(
        Kind.POWER,
        {"W": "1", "kW,KW": "1000", "hp,HP": "550 0.45359237 9.80665 0.3048", "PS": "75 9.80665"},
    ),
    **_table(Kind.VOLUME_RATE, {"mm3/min": "1", "cm3/min": "1000", "in3/min": "16387.064"}),
    **_table(Kind.SHARE, {"%,percent": "1/100"}),
    **_table(Kind.ANGLE, {"deg,°,degree,degrees": "1"}),
}

# Without regard to case these could be something else: milli for mega ("mPa"), a nanometre,
# a knot, a picosecond, or for a single letter a siemens, a henry, a gauss.
CASE_MATTERS = frozenset({"mpa", "nm", "kn", "ps", "m", "g", "s", "h", "n"})
