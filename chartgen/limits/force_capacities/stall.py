"""Where the spindle stops, however short the cut."""

import numpy as np

from chartgen.limits.case import Case
from chartgen.physics.cutting import force_from_torque
from chartgen.quantities import FloatArray, Newtons


def stall(case: Case) -> Newtons[FloatArray]:
    """Return the force at the outer diameter that stops the spindle."""
    torque = case.trials.torque_stall
    return np.asarray(force_from_torque(torque=torque, diameter=case.grid.diameter))
