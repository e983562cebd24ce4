"""Nomograms: three upright scales on which a ruler reads a product without arithmetic.

The outer scales carry the two factors, the middle one the product. With moduli m1 and m2 (height
a decade) and distances from the middle in the same ratio, the middle scale has the modulus
m1 m2 / (m1 + m2), and every straight line across the three reads a true triple. Everything is
given in a square of side 1: stretching it to a page keeps straight lines straight.
"""

import math
from dataclasses import dataclass

from chartgen.model.shop import LengthUnits
from chartgen.physics.cutting import cutting_power
from chartgen.physics.kinematics import spindle_speed

# Ranges: from the slowest HSS in hard steel to polished carbide in aluminium, bars of a small
# lathe, the forces of its narrowest and widest cuts. In m/min and mm, or ft/min and in.
_SPEEDS = {LengthUnits.METRIC: (5.0, 500.0), LengthUnits.INCH: (20.0, 1500.0)}
_DIAMETERS = {LengthUnits.METRIC: (4.0, 200.0), LengthUnits.INCH: (0.15, 8.0)}
_FORCES = (50.0, 3000.0)
_MILLIMETRES = {LengthUnits.METRIC: 1.0, LengthUnits.INCH: 25.4}
_METRES = {LengthUnits.METRIC: 1.0, LengthUnits.INCH: 0.3048}


@dataclass(frozen=True, slots=True, kw_only=True)
class Scale:
    """An upright logarithmic scale in the unit square: value 1 stands at `origin`.

    `modulus` is the height of a decade; a negative one runs downward.
    """

    x: float
    origin: float
    modulus: float
    least: float
    most: float

    def y(self, value: float) -> float:
        """Return the height of a value, 0 at the foot and 1 at the top."""
        return self.origin + self.modulus * math.log10(value)

    def value(self, y: float) -> float:
        """Return the value that stands at a height."""
        return float(10.0 ** ((y - self.origin) / self.modulus))


@dataclass(frozen=True, slots=True, kw_only=True)
class Nomogram:
    """Left and right carry the factors, the middle the product."""

    left: Scale
    middle: Scale
    right: Scale

    def read(self, left: float, right: float) -> float:
        """Return what a ruler laid across two values reads on the middle scale."""
        share = self.middle.x
        return self.middle.value((1.0 - share) * self.left.y(left) + share * self.right.y(right))


def speed_nomogram(units: LengthUnits) -> Nomogram:
    """Return surface speed, spindle speed [rev/min] and diameter on three scales.

    Diameter runs downward, because the spindle speed falls with it.

    References
    ----------
    Definition of surface speed; geometry of the parallel-scale nomogram [DOERFLER].
    """
    constant = spindle_speed(cutting_speed=_METRES[units], diameter=_MILLIMETRES[units])
    return _product(_SPEEDS[units], _DIAMETERS[units], float(constant), inverse=True)


def power_nomogram(units: LengthUnits) -> Nomogram:
    """Return cutting force [N], power at the edge [W] and surface speed on three scales.

    References
    ----------
    Power is force times speed; geometry of the parallel-scale nomogram [DOERFLER].
    """
    constant = cutting_power(force=1.0, cutting_speed=_METRES[units])
    return _product(_FORCES, _SPEEDS[units], float(constant), inverse=False)


def _product(
    left: tuple[float, float], right: tuple[float, float], constant: float, *, inverse: bool
) -> Nomogram:
    """Return scales for constant x left x right, or constant x left / right where `inverse`."""
    m1 = 1.0 / math.log10(left[1] / left[0])
    m2 = 1.0 / math.log10(right[1] / right[0]) * (-1.0 if inverse else 1.0)
    foot = right[1] if inverse else right[0]
    one = Scale(x=0.0, origin=-m1 * math.log10(left[0]), modulus=m1, least=left[0], most=left[1])
    two = Scale(x=1.0, origin=-m2 * math.log10(foot), modulus=m2, least=right[0], most=right[1])
    total = m1 + abs(m2)
    modulus = m1 * abs(m2) / total
    # The line across both ones meets the middle scale at the constant.
    origin = (abs(m2) * one.origin + m1 * two.origin) / total - modulus * math.log10(constant)
    return Nomogram(
        left=one,
        middle=Scale(
            x=m1 / total,
            origin=origin,
            modulus=modulus,
            least=10.0 ** (-origin / modulus),
            most=10.0 ** ((1.0 - origin) / modulus),
        ),
        right=two,
    )
