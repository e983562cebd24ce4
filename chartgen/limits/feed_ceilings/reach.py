"""Whether the blade sticks out far enough for the depth of the cut."""

import numpy as np

from chartgen.limits.case import Case
from chartgen.quantities import FloatArray, MillimetresPerRev


def reach(case: Case) -> MillimetresPerRev[FloatArray]:
    """Return 0 where the holder would meet the bar before the cut is through, else inf."""
    needed = case.grid.depth + case.allowances.reach_clearance
    return np.where(case.grid.projection >= needed, np.inf, 0.0)
