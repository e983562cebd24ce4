"""Speeds: from the surface of the work to the spindle, the slide and the handle."""

import numpy as np

from chartgen.quantities import (
    CubicMmPerMinute,
    MetresPerMinute,
    Millimetres,
    MillimetresPerMinute,
    MillimetresPerRev,
    Numeric,
    RevsPerMinute,
    Seconds,
)


def spindle_speed(
    *, cutting_speed: MetresPerMinute[Numeric], diameter: Millimetres[Numeric]
) -> RevsPerMinute[Numeric]:
    """Return the spindle speed that gives a surface speed at a diameter.

    Parameters
    ----------
    cutting_speed
        Surface speed [m/min].
    diameter
        Diameter where that speed holds [mm], greater than 0.

    Returns
    -------
    Spindle speed [rev/min], in the broadcast shape of the arguments.

    Notes
    -----
    n = 1000 v / (π d). At constant spindle speed the surface speed falls in
    proportion to the diameter on the way to the centre.

    References
    ----------
    Definition of surface speed.
    """
    return 1000.0 * cutting_speed / (np.pi * diameter)


def cutting_speed(
    *, spindle_speed: RevsPerMinute[Numeric], diameter: Millimetres[Numeric]
) -> MetresPerMinute[Numeric]:
    """Return the surface speed at a diameter.

    Parameters
    ----------
    spindle_speed
        Spindle speed [rev/min].
    diameter
        Diameter [mm].

    Returns
    -------
    Surface speed [m/min], in the broadcast shape of the arguments.

    Notes
    -----
    v = π d n / 1000.

    References
    ----------
    Definition of surface speed.
    """
    return np.pi * diameter * spindle_speed / 1000.0


def feed_rate(
    *, feed: MillimetresPerRev[Numeric], spindle_speed: RevsPerMinute[Numeric]
) -> MillimetresPerMinute[Numeric]:
    """Return the pace of the slide.

    Parameters
    ----------
    feed
        Feed [mm/rev].
    spindle_speed
        Spindle speed [rev/min].

    Returns
    -------
    Feed rate [mm/min].

    Notes
    -----
    vf = f n.

    References
    ----------
    Definition of feed.
    """
    return feed * spindle_speed


def seconds_per_turn(
    *,
    feed_rate: MillimetresPerMinute[Numeric],
    travel_per_turn: Millimetres[Numeric],
) -> Seconds[Numeric]:
    """Return how long one turn of the cross-slide handle takes.

    Parameters
    ----------
    feed_rate
        Pace of the slide [mm/min], greater than 0.
    travel_per_turn
        Real travel of the tool for one turn of the handle [mm], whatever the dial reads.

    Returns
    -------
    Time of one turn [s].

    Notes
    -----
    t = 60 p / vf.

    References
    ----------
    Definition of feed rate; 60 s/min.
    """
    return 60.0 * travel_per_turn / feed_rate


def removal_rate(
    *,
    width: Millimetres[Numeric],
    feed: MillimetresPerRev[Numeric],
    cutting_speed: MetresPerMinute[Numeric],
) -> CubicMmPerMinute[Numeric]:
    """Return the volume turned into chips.

    Parameters
    ----------
    width
        Width of the chip before cutting: insert width in parting, depth in turning [mm].
    feed
        Feed [mm/rev].
    cutting_speed
        Surface speed [m/min]; at the mean diameter of the ring that is removed for the exact
        volume, at the outer one for the usual handbook value.

    Returns
    -------
    Removal rate [mm³/min].

    Notes
    -----
    Q = 1000 b f v.

    References
    ----------
    [GROO5] ch. 22 uses the same product with v at the outer diameter.
    """
    return 1000.0 * width * feed * cutting_speed
