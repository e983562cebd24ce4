"""What the drive can turn: for one cut if the cut is solid and short, else for ever.

In a solid cut at constant spindle speed the torque falls in a straight line to the centre
(its heating is that of 0.577 of the start), which is why a short cut may lean on the motor.
A tube keeps its load to the end, so it counts as a long cut.
"""

import numpy as np

from chartgen.limits.case import Case
from chartgen.limits.force import feed_for_high_force
from chartgen.physics.cutting import force_from_torque
from chartgen.quantities import BoolArray, FloatArray, MillimetresPerRev, NewtonMetres


def feed_for_torque(case: Case, torque: NewtonMetres[FloatArray]) -> MillimetresPerRev[FloatArray]:
    """Return the feed whose high-side force takes a spindle torque at the outer diameter."""
    force = np.asarray(force_from_torque(torque=torque, diameter=case.grid.diameter))
    return feed_for_high_force(case.grid, force, case.allowances)


def is_one_cut(case: Case, feed: MillimetresPerRev[FloatArray]) -> BoolArray:
    """Return where a cut at a feed is solid and short enough for the one-cut torque."""
    if case.grid.bore > 0.0:
        return np.zeros((1, 1, 1, 1), dtype=np.bool_)
    shortest_feed = case.grid.depth / (case.allowances.one_cut_minutes * case.trials.speed)
    return feed >= shortest_feed


def one_cut_torque(
    case: Case, target: MillimetresPerRev[FloatArray]
) -> MillimetresPerRev[FloatArray]:
    """Return the one-cut ceiling; inf where the cut is long or hollow."""
    ceiling = feed_for_torque(case, case.trials.torque_one_cut)
    return np.where(is_one_cut(case, np.minimum(target, ceiling)), ceiling, np.inf)


def continuous_torque(
    case: Case, target: MillimetresPerRev[FloatArray]
) -> MillimetresPerRev[FloatArray]:
    """Return the continuous ceiling; inf where the cut is solid and short."""
    one_cut = feed_for_torque(case, case.trials.torque_one_cut)
    short = is_one_cut(case, np.minimum(target, one_cut))
    return np.where(short, np.inf, feed_for_torque(case, case.trials.torque_continuous))
