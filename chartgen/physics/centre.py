"""On the way to the centre: surface speed that falls, feed to ease, height that matters.

A spindle at constant speed cuts ever slower towards the centre. Bored work has no centre,
so that every cut here ends at an inner diameter. Stepping the spindle up is in `step_up`.
"""

from enum import Enum

import numpy as np

from chartgen.quantities import (
    Degrees,
    MetresPerMinute,
    Millimetres,
    MillimetresPerRev,
    Numeric,
)


def speed_floor_diameter(
    *,
    outer_diameter: Millimetres[Numeric],
    inner_diameter: Millimetres[Numeric],
    start_speed: MetresPerMinute[Numeric],
    floor_speed: MetresPerMinute[Numeric],
) -> Millimetres[Numeric]:
    """Return the diameter below which the surface speed is under a floor.

    Parameters
    ----------
    outer_diameter
        Where the cut starts [mm].
    inner_diameter
        Where it ends: 0 at the centre, or the bore [mm].
    start_speed
        Surface speed at the start [m/min], greater than 0.
    floor_speed
        Slowest surface speed wanted [m/min].

    Returns
    -------
    Diameter [mm]: the outer one where the whole cut is too slow, the inner one where none is.

    Notes
    -----
    d = D v_floor / v_start, at constant spindle speed.

    References
    ----------
    Definition of surface speed.
    """
    crossing = outer_diameter * floor_speed / start_speed
    return np.clip(crossing, inner_diameter, outer_diameter)


class CentreFeedRule(Enum):
    """How to ease the feed near the centre; the sources differ, so a card prints its rule.

    `share` is of the feed outside, `diameter` where easing begins [mm], `source` a key of
    the bibliography or none, `mark` how far the share can be trusted. Where it begins is
    practice in all of them: no source read gives it.
    """

    BY_30_PERCENT = "feed less 30 %", 0.70, 2.0, "TG-5", "found"
    TO_HALF = "half feed", 1.0 / 2.0, 2.0, "TG-6", "found"
    TO_A_THIRD = "a third of the feed", 1.0 / 3.0, 2.0, "TG-6", "found"
    TO_A_QUARTER = "a quarter of the feed", 1.0 / 4.0, 2.0, "none", "memory"

    def __init__(self, words: str, share: float, diameter: float, source: str, mark: str) -> None:
        self.words = words
        self.share = share
        self.diameter = diameter
        self.source = source
        self.mark = mark


def feed_near_centre(
    *,
    feed: MillimetresPerRev[Numeric],
    diameter: Millimetres[Numeric],
    rule: CentreFeedRule,
) -> MillimetresPerRev[Numeric]:
    """Return the feed at a diameter, eased near the centre.

    Parameters
    ----------
    feed
        Feed outside [mm/rev].
    diameter
        Diameter reached by the edge [mm].
    rule
        By how much and from where.

    Returns
    -------
    Feed [mm/rev].

    Notes
    -----
    An edge has a least feed under which it rubs; this function does not know it.

    References
    ----------
    [TG-5] p. 460 and [TG-6] 2021-22 p. 581, which disagree.
    """
    return np.where(np.less(diameter, rule.diameter), rule.share * feed, feed)


def _turned_by_height(
    height_error: Millimetres[Numeric], radius: Millimetres[Numeric]
) -> Degrees[Numeric]:
    """Return by how much the working angles turn [°], at most a right angle."""
    sine = np.clip(height_error / radius, -1.0, 1.0)
    turned: Degrees[Numeric] = np.degrees(np.arcsin(sine))
    return turned


def working_rake(
    *,
    rake: Degrees[Numeric],
    height_error: Millimetres[Numeric],
    radius: Millimetres[Numeric],
) -> Degrees[Numeric]:
    """Return the rake that the chip meets, with the edge off centre height.

    Parameters
    ----------
    rake
        Rake of the tool as ground [°].
    height_error
        Edge above the centre, negative below it [mm].
    radius
        Radius reached by the edge [mm], greater than 0.

    Returns
    -------
    Working rake [°]. Above the centre it grows on the way in, below it falls.

    Notes
    -----
    γ + asin(e / r). Inside r = |e| edge and work do not meet, and the angle is held at 90°.

    References
    ----------
    Derived from the geometry; [JILM-18] p. 37 measured forces that follow it.
    """
    return rake + _turned_by_height(height_error, radius)


def working_clearance(
    *,
    clearance: Degrees[Numeric],
    height_error: Millimetres[Numeric],
    radius: Millimetres[Numeric],
) -> Degrees[Numeric]:
    """Return the clearance under the edge, with the edge off centre height.

    Parameters
    ----------
    clearance
        Clearance of the tool as ground [°].
    height_error
        Edge above the centre, negative below it [mm].
    radius
        Radius reached by the edge [mm], greater than 0.

    Returns
    -------
    Working clearance [°]; at 0 and below the tool rubs instead of cutting.

    Notes
    -----
    α - asin(e / r), with the limits of `working_rake`.

    References
    ----------
    Derived from the geometry.
    """
    return clearance - _turned_by_height(height_error, radius)


def rubbing_radius(
    *, clearance: Degrees[Numeric], height_error: Millimetres[Numeric]
) -> Millimetres[Numeric]:
    """Return the radius where an edge above the centre has lost its clearance.

    Parameters
    ----------
    clearance
        Clearance of the tool as ground [°], from more than 0 to 90.
    height_error
        Edge above the centre, negative below it [mm].

    Returns
    -------
    Radius [mm]; 0 for an edge on the centre or below it, which never loses it.

    Notes
    -----
    r = e / sin α.

    References
    ----------
    Derived: where `working_clearance` is 0.
    """
    return np.maximum(0.0, height_error) / np.sin(np.radians(clearance))


def pip_radius(*, height_error: Millimetres[Numeric]) -> Millimetres[Numeric]:
    """Return the radius of the pip that an edge below the centre passes under.

    Parameters
    ----------
    height_error
        Edge above the centre, negative below it [mm].

    Returns
    -------
    Radius [mm], about; 0 for an edge on the centre or above it. Weight and a bent core break
    most pieces off before.

    Notes
    -----
    r = |e|.

    References
    ----------
    Derived from the geometry.
    """
    return np.maximum(0.0, -height_error)
