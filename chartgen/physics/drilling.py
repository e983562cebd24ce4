"""A twist drill in the tailstock: its chip, its torque and thrust, its way in pecks.

Both come from the specific cutting force of turning, over the ring that the drill cuts. What
the chisel edge squeezes aside, and the rubbing of the margins, is not in it: the band beside
the numbers has to hold that. Two models from print stand in `drilling_tables`.
"""

import math

import numpy as np

from chartgen.quantities import (
    Degrees,
    Millimetres,
    MillimetresPerRev,
    NewtonMetres,
    Newtons,
    NewtonsPerSquareMm,
    Numeric,
)

_LIPS = 2.0
_THRUST_SHARE = 0.45
"""Thrust over the force of both lips on a square chip; [CH-A] prints Ff = 0.45 D f kc."""


def point_height(
    *, diameter: Millimetres[Numeric], point_angle: Degrees[Numeric]
) -> Millimetres[Numeric]:
    """Return how far a drill's point stands out before its full diameter.

    Parameters
    ----------
    diameter
        Diameter of the drill [mm].
    point_angle
        Angle of the point [°], greater than 0, below 180; usually 118 or 135.

    Returns
    -------
    Height of the cone [mm]: a through hole needs at least so much more travel.

    Notes
    -----
    a = (D / 2) / tan(σ / 2).

    References
    ----------
    [GROOS] problem 22.10; geometry of a cone.
    """
    return diameter / 2.0 / np.tan(np.radians(point_angle) / 2.0)


def drill_chip_thickness(
    *, feed: MillimetresPerRev[Numeric], point_angle: Degrees[Numeric]
) -> Millimetres[Numeric]:
    """Return how thick a chip each lip of a drill cuts.

    Parameters
    ----------
    feed
        Feed of the drill [mm/rev]; each of the two lips takes half.
    point_angle
        Angle of the point [°].

    Returns
    -------
    Chip thickness, square to the lip [mm].

    Notes
    -----
    h = (f / 2) sin(σ / 2).

    References
    ----------
    [TBM].
    """
    return feed / _LIPS * np.sin(np.radians(point_angle) / 2.0)


def lip_force(
    *,
    specific_force: NewtonsPerSquareMm[Numeric],
    feed: MillimetresPerRev[Numeric],
    diameter: Millimetres[Numeric],
    pilot_diameter: Millimetres[Numeric],
) -> Newtons[Numeric]:
    """Return the cutting force of both lips together.

    Parameters
    ----------
    specific_force
        Specific cutting force at the drill's own chip thickness, kc [N/mm²].
    feed
        Feed [mm/rev].
    diameter
        Diameter of the drill [mm].
    pilot_diameter
        Hole that is there already [mm], 0 in the solid.

    Returns
    -------
    Force [N]. It acts at the mean diameter (D + d) / 2, where it makes the drill's torque.

    Notes
    -----
    F = kc f (D - d) / 2: each lip's chip has the area f (D - d) / 4.

    References
    ----------
    [TBM].
    """
    return specific_force * feed * (diameter - pilot_diameter) / 2.0


def drilling_torque(
    *,
    specific_force: NewtonsPerSquareMm[Numeric],
    feed: MillimetresPerRev[Numeric],
    diameter: Millimetres[Numeric],
    pilot_diameter: Millimetres[Numeric],
) -> NewtonMetres[Numeric]:
    """Return the torque of a drill.

    Parameters
    ----------
    specific_force
        Specific cutting force at the drill's own chip thickness, kc [N/mm²].
    feed
        Feed [mm/rev].
    diameter
        Diameter of the drill [mm].
    pilot_diameter
        Hole that is there already [mm], 0 in the solid.

    Returns
    -------
    Torque [N·m].

    Notes
    -----
    M = kc f (D² - d²) / 8000. A sharp drill and a clear hole: packed chips and a worn drill
    take more, breaking through more again.

    References
    ----------
    [TBM] (Pc = z Fc vc / 2 with A = d f / 4 an edge); the ring of a pilot hole follows.
    """
    ring = diameter**2 - pilot_diameter**2
    return specific_force * feed * ring / 8000.0


def drilling_thrust(
    *,
    specific_force: NewtonsPerSquareMm[Numeric],
    feed: MillimetresPerRev[Numeric],
    diameter: Millimetres[Numeric],
    pilot_diameter: Millimetres[Numeric],
) -> Newtons[Numeric]:
    """Return the push along the axis that feeds a drill.

    Parameters
    ----------
    specific_force
        Specific cutting force at the drill's own chip thickness, kc [N/mm²].
    feed
        Feed [mm/rev].
    diameter
        Diameter of the drill [mm].
    pilot_diameter
        Hole that is there already [mm], 0 in the solid.

    Returns
    -------
    Thrust [N].

    Notes
    -----
    F = 0.45 f kc (D - d). The printed form is for the solid. Sharing it evenly along the lips,
    as here, gives a pilot hole too little relief, for the chisel edge has the largest share.

    References
    ----------
    [CH-A] for the solid; the ring of a pilot hole is derived.
    """
    return _THRUST_SHARE * feed * specific_force * (diameter - pilot_diameter)


def grip_for_drilling(
    *,
    torque: NewtonMetres[Numeric],
    thrust: Newtons[Numeric],
    clamping_diameter: Millimetres[Numeric],
    friction: Numeric,
    cut_safety: Numeric,
) -> Newtons[Numeric]:
    """Return the grip at speed that holds work against a drill's torque and thrust at once.

    Parameters
    ----------
    torque
        Torque of the drill [N·m].
    thrust
        Push along the axis [N]; 0 where the work has a seat in the chuck that takes it.
    clamping_diameter
        Diameter in the jaws [mm], greater than 0.
    friction
        Friction coefficient between jaw and work, greater than 0.
    cut_safety
        Reserve on the forces, 1 for none.

    Returns
    -------
    Grip at speed [N]; `static_grip_for_cut` makes the static grip of it.

    Notes
    -----
    F = S √((2000 M / d)² + T²) / μ. One friction has to bear both: jaws that let the bar creep
    back under the thrust do not hold its torque either. The thrust presses the bar into the
    chuck, so a stop or a shoulder behind the work takes it away from the jaws.

    References
    ----------
    Derived, balance of friction; [RN-1391] p. 51 takes the same resultant.
    """
    turning = 2000.0 * torque / clamping_diameter
    return cut_safety * np.hypot(turning, thrust) / friction


def peck_depths(
    *,
    depth: Millimetres[float],
    diameter: Millimetres[float],
    first_ratio: float,
    next_ratio: float,
) -> tuple[Millimetres[float], ...]:
    """Return the depths at which a drill is drawn back to clear its chips.

    Parameters
    ----------
    depth
        Depth of the hole, from the face [mm]; 0 for none.
    diameter
        Diameter of the drill [mm], greater than 0.
    first_ratio
        Depth of the first peck over the diameter, greater than 0.
    next_ratio
        Depth of every further peck over the diameter, greater than 0.

    Returns
    -------
    Rising depths [mm], the last of them `depth` itself; empty where there is no depth.

    Notes
    -----
    The first peck goes to its ratio, every further one as deep as its own, the last to the
    depth: it is the shallowest.

    References
    ----------
    Common practice, no source.
    """
    if depth <= 0.0:
        return ()
    first, step = min(depth, first_ratio * diameter), next_ratio * diameter
    # A rest of a rounding's size is not worth a peck of its own.
    whole = math.ceil((depth - first) / step - 1e-9)
    return (*(first + step * number for number in range(whole)), depth)
