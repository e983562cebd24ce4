"""The force at which the work may turn in the jaws; waived where the spindle stalls first."""

import numpy as np

from chartgen.limits.case import Case
from chartgen.limits.force_capacities.stall import stall
from chartgen.physics.grip import centrifugal_force
from chartgen.physics.holding import largest_cutting_force
from chartgen.quantities import FloatArray, Newtons


def grip(case: Case) -> Newtons[FloatArray]:
    """Return the largest cutting force with both reserves; inf where a stall comes first.

    A drive that stalls before the work can slip, reserve on the grip included, cannot make
    it slip by torque alone.
    """
    slips = slip_force(case, grip_safety=case.allowances.grip_safety)
    return np.where(stall(case) <= slips, np.inf, slips / case.allowances.cut_safety)


def slip_force(case: Case, *, grip_safety: float) -> Newtons[FloatArray]:
    """Return the force at which the work slips at the speed of each trial; inf if not known."""
    holding = case.holding
    lost = np.asarray(
        centrifugal_force(jaw_moment=holding.jaw_moment, spindle_speed=case.trials.speed)
    )
    return np.asarray(
        largest_cutting_force(
            static_grip=holding.static_grip,
            centrifugal_force=lost,
            friction=holding.friction,
            grip_safety=grip_safety,
            cut_safety=1.0,
            # The cut starts where the jaws hold: at the outside of the bar.
            cut_diameter=1.0,
            clamping_diameter=1.0,
        )
    )
