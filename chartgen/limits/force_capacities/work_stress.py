"""The force that stresses the bar at the jaws as far as it is allowed."""

import numpy as np

from chartgen.limits.case import Case
from chartgen.physics.workpiece import force_for_bar_stress
from chartgen.quantities import FloatArray, Newtons


def work_stress(case: Case) -> Newtons[FloatArray]:
    """Return the force at the allowed share of the tensile strength."""
    grid = case.grid
    return np.asarray(
        force_for_bar_stress(
            stress=case.allowances.work_stress_share * grid.tensile_strength,
            distance=grid.jaw_distance,
            outer_diameter=grid.diameter,
            inner_diameter=grid.bore,
        )
    )
