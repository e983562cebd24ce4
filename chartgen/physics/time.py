"""How long a cut takes: across the end of a bar and along it."""

import numpy as np

from chartgen.quantities import (
    MetresPerMinute,
    Millimetres,
    MillimetresPerRev,
    Minutes,
    Numeric,
    RevsPerMinute,
)


def plunge_time(
    *,
    outer_diameter: Millimetres[Numeric],
    inner_diameter: Millimetres[Numeric],
    feed: MillimetresPerRev[Numeric],
    spindle_speed: RevsPerMinute[Numeric],
) -> Minutes[Numeric]:
    """Return the time of a parting, grooving or facing cut at constant spindle speed.

    Parameters
    ----------
    outer_diameter
        Where the cut starts [mm].
    inner_diameter
        Where it ends: 0 at the centre, or the bore [mm].
    feed
        Feed [mm/rev].
    spindle_speed
        Spindle speed [rev/min].

    Returns
    -------
    Time [min].

    Notes
    -----
    t = (D1 - D2) / (2 f n): the depth on the radius over the feed rate.

    References
    ----------
    [TG-6] 2021-22 p. 1069.
    """
    return (outer_diameter - inner_diameter) / (2.0 * feed * spindle_speed)


def plunge_time_at_constant_cutting_speed(
    *,
    outer_diameter: Millimetres[Numeric],
    inner_diameter: Millimetres[Numeric],
    feed: MillimetresPerRev[Numeric],
    cutting_speed: MetresPerMinute[Numeric],
) -> Minutes[Numeric]:
    """Return the time of a plunge whose spindle speeds up to keep the surface speed.

    Parameters
    ----------
    outer_diameter
        Where the cut starts [mm].
    inner_diameter
        Where the constant surface speed ends [mm].
    feed
        Feed [mm/rev].
    cutting_speed
        Surface speed [m/min].

    Returns
    -------
    Time [min]. From a full diameter to the centre it is half of the time at constant
    spindle speed; no real spindle can follow to the centre itself.

    Notes
    -----
    t = π (D1 + D2)(D1 - D2) / (4000 f v).

    References
    ----------
    [TG-6] 2021-22 p. 1069.
    """
    return (
        np.pi
        * (outer_diameter + inner_diameter)
        * (outer_diameter - inner_diameter)
        / (4000.0 * feed * cutting_speed)
    )


def turning_time(
    *,
    length: Millimetres[Numeric],
    feed: MillimetresPerRev[Numeric],
    spindle_speed: RevsPerMinute[Numeric],
) -> Minutes[Numeric]:
    """Return the time of one pass along the bar, or of a drill down it.

    Parameters
    ----------
    length
        Travel of the tool [mm].
    feed
        Feed [mm/rev].
    spindle_speed
        Spindle speed [rev/min].

    Returns
    -------
    Time [min].

    Notes
    -----
    t = L / (f n).

    References
    ----------
    [GROO5] ch. 22.
    """
    return length / (feed * spindle_speed)
