"""Where the spindle stops, however short the cut."""

from chartgen.limits.case import Case
from chartgen.limits.feed_ceilings.torque import feed_for_torque
from chartgen.quantities import FloatArray, MillimetresPerRev


def stall(case: Case) -> MillimetresPerRev[FloatArray]:
    """Return the feed at which the high-side force stops the spindle."""
    return feed_for_torque(case, case.trials.torque_stall)
