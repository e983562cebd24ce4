"""The bar behind the spindle: at which speed it whips, and how a mass off the axis pulls."""

import numpy as np

from chartgen.quantities import (
    GramsPerCubicCm,
    Kilograms,
    Millimetres,
    Newtons,
    NewtonsPerSquareMm,
    Numeric,
    RevsPerMinute,
)

SECONDS_PER_MINUTE = 60.0
# Square of the first root of cos x cosh x = -1; handbooks print 3.516 or 3.52.
CANTILEVER_FACTOR = 1.8751040687119611**2
# A modulus in N/mm² over a density in g/cm³, brought to the square of a speed in mm/s.
MODULUS_OVER_DENSITY = 1e9


def critical_speed(
    *,
    length: Millimetres[Numeric],
    outer_diameter: Millimetres[Numeric],
    inner_diameter: Millimetres[Numeric],
    elastic_modulus: NewtonsPerSquareMm[Numeric],
    density: GramsPerCubicCm[Numeric],
) -> RevsPerMinute[Numeric]:
    """Return the speed at which a bar standing out behind the spindle whips.

    Parameters
    ----------
    length
        Unsupported length [mm], greater than 0.
    outer_diameter
        Diameter of the bar [mm].
    inner_diameter
        Bore [mm], 0 for a solid bar.
    elastic_modulus
        Modulus of elasticity [N/mm²].
    density
        Density [g/cm³].

    Returns
    -------
    First critical speed [rev/min]. How close to it one may run is not decided here.

    Notes
    -----
    f = 3.516 / (2 π) √(E I / (m' L⁴)), a straight uniform cantilever; for solid steel
    43.0e6 d / L² rev/min. The clamp is rigid here: play in the spindle bore and whatever
    gives way in it lower the speed, and a bent bar swings long before it.

    References
    ----------
    Cantilever vibration; the factor is the squared first root of cos x cosh x = -1.
    """
    radius_of_gyration = np.sqrt(outer_diameter**2 + inner_diameter**2) / 4.0
    sound_speed = np.sqrt(MODULUS_OVER_DENSITY * elastic_modulus / density)
    turns_per_second = CANTILEVER_FACTOR / (2.0 * np.pi) * radius_of_gyration / length**2
    return SECONDS_PER_MINUTE * turns_per_second * sound_speed


def unbalance_force(
    *,
    mass: Kilograms[Numeric],
    eccentricity: Millimetres[Numeric],
    spindle_speed: RevsPerMinute[Numeric],
) -> Newtons[Numeric]:
    """Return the force that a mass off the axis pulls round with.

    Parameters
    ----------
    mass
        Mass off the axis [kg].
    eccentricity
        Its distance from the axis [mm].
    spindle_speed
        Spindle speed [rev/min].

    Returns
    -------
    Rotating force [N].

    Notes
    -----
    F = m e ω². Well under the critical speed only: near it the eccentricity itself grows.

    References
    ----------
    Centripetal force.
    """
    angular_speed = 2.0 * np.pi * spindle_speed / SECONDS_PER_MINUTE
    return mass * eccentricity / 1000.0 * angular_speed**2
