"""The force that bends the bar by what it is allowed at the cut."""

import numpy as np

from chartgen.limits.case import Case
from chartgen.physics.workpiece import force_for_bar_deflection
from chartgen.quantities import FloatArray, Newtons


def work_deflection(case: Case) -> Newtons[FloatArray]:
    """Return the force at the allowed deflection, for the overhang of the cut itself."""
    grid = case.grid
    return np.asarray(
        force_for_bar_deflection(
            deflection=case.allowances.work_deflection,
            distance=grid.jaw_distance,
            elastic_modulus=grid.youngs_modulus,
            outer_diameter=grid.diameter,
            inner_diameter=grid.bore,
        )
    )
