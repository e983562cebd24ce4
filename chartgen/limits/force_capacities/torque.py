"""What the drive can turn: for one cut if the cut is solid and short, else for ever.

In a solid cut at constant spindle speed the torque falls in a straight line to the centre
(its heating is that of 0.577 of the start), which is why a short cut may lean on the motor.
A tube keeps its load to the end, so it counts as a long cut.
"""

import numpy as np

from chartgen.limits.case import Case
from chartgen.physics.cutting import force_from_torque
from chartgen.quantities import FloatArray, MillimetresPerRev, Newtons


def shortest_feed(case: Case) -> MillimetresPerRev[FloatArray]:
    """Return the feed from which a solid cut is over within one cut's time; inf for a tube."""
    if case.grid.bore > 0.0:
        return np.full((1, 1, 1, 1), np.inf)
    return case.grid.depth / (case.allowances.one_cut_minutes * case.trials.speed)


def one_cut_torque(case: Case) -> Newtons[FloatArray]:
    """Return the force at the outer diameter that the drive turns for one cut."""
    torque = case.trials.torque_one_cut
    return np.asarray(force_from_torque(torque=torque, diameter=case.grid.diameter))


def continuous_torque(case: Case) -> Newtons[FloatArray]:
    """Return the force at the outer diameter that the drive turns for ever."""
    torque = case.trials.torque_continuous
    return np.asarray(force_from_torque(torque=torque, diameter=case.grid.diameter))
