"""Quantities: what a number means, and the one unit it is held in.

Inside chartgen every number is a plain float or a float64 array, in the unit its
annotation names. The unit is written here once: the reader of shop files converts
by it, the cards and explanations print its label, a test holds docstrings to it.

A unit cannot be checked by mypy, so every formula takes keyword arguments only.
"""

from dataclasses import dataclass
from typing import Annotated, TypeAlias, TypeVar

import numpy as np
from numpy.typing import NDArray


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit: its spelling in a shop file and its label on a card.

    `example` is what an error message offers as the right way to write it.
    """

    name: str
    label: str
    example: str


FloatArray: TypeAlias = NDArray[np.float64]
BoolArray: TypeAlias = NDArray[np.bool_]
IntArray: TypeAlias = NDArray[np.int_]
Numeric: TypeAlias = float | FloatArray
T = TypeVar("T")

MM = Unit("mm", "mm", "2 mm")
UM = Unit("um", "µm", "30 um")
MM_REV = Unit("mm/rev", "mm/rev", "0.05 mm/rev")
MM_MIN = Unit("mm/min", "mm/min", "60 mm/min")
M_MIN = Unit("m/min", "m/min", "100 m/min")
M_S = Unit("m/s", "m/s", "18 m/s")
RPM = Unit("rpm", "rev/min", "1400 rpm")
MIN = Unit("min", "min", "3 min")
SECOND = Unit("s", "s", "2 s")
NEWTON = Unit("N", "N", "500 N")
N_MM2 = Unit("N/mm2", "N/mm²", "1780 N/mm2")
N_M = Unit("N.m", "N·m", "12 N.m")
WATT = Unit("W", "W", "550 W")
MM3_MIN = Unit("mm3/min", "mm³/min", "5000 mm3/min")
J_MM3 = Unit("J/mm3", "J/mm³", "1.9 J/mm3")
DEGREE = Unit("deg", "°", "5 deg")
TURNS_MIN = Unit("1/min", "turns/min", "60 1/min")
FRACTION = Unit("%", "", "90 %")
KG = Unit("kg", "kg", "5.4 kg")
N_PER_MM = Unit("N/mm", "N/mm", "20 N/um")

Millimetres = Annotated[T, MM]
Micrometres = Annotated[T, UM]
MillimetresPerRev = Annotated[T, MM_REV]
MillimetresPerMinute = Annotated[T, MM_MIN]
MetresPerMinute = Annotated[T, M_MIN]
MetresPerSecond = Annotated[T, M_S]
RevsPerMinute = Annotated[T, RPM]
Minutes = Annotated[T, MIN]
Seconds = Annotated[T, SECOND]
Newtons = Annotated[T, NEWTON]
NewtonsPerSquareMm = Annotated[T, N_MM2]
NewtonMetres = Annotated[T, N_M]
Watts = Annotated[T, WATT]
CubicMmPerMinute = Annotated[T, MM3_MIN]
JoulesPerCubicMm = Annotated[T, J_MM3]
Degrees = Annotated[T, DEGREE]
TurnsPerMinute = Annotated[T, TURNS_MIN]
Fraction = Annotated[T, FRACTION]
Kilograms = Annotated[T, KG]
NewtonsPerMm = Annotated[T, N_PER_MM]
# Only inside formulas; no shop file writes them, so `units` needs no spelling of them.
KilogramMetres = Annotated[T, Unit("kg.m", "kg·m", "0.04 kg.m")]
KilogramSquareMetres = Annotated[T, Unit("kg.m2", "kg·m²", "0.013 kg.m2")]
GramsPerCubicCm = Annotated[T, Unit("g/cm3", "g/cm³", "7.85 g/cm3")]
Joules = Annotated[T, Unit("J", "J", "18 J")]
Turns = Annotated[T, Unit("rev", "rev", "0.5 rev")]
SquareMm = Annotated[T, Unit("mm2", "mm²", "50 mm2")]
CubicMm = Annotated[T, Unit("mm3", "mm³", "200 mm3")]
QuarticMm = Annotated[T, Unit("mm4", "mm⁴", "2900 mm4")]


def frozen_array(values: object) -> FloatArray:
    """Return `values` as a read-only float64 array, so that a frozen object stays frozen."""
    array = np.array(values, dtype=np.float64)
    array.setflags(write=False)
    return array
