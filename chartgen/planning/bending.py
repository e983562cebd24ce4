"""How hard a cut may push on the work in the jaws before it bends away or is torn out of them."""

from chartgen.physics.boring import resultant_force
from chartgen.physics.workpiece import (
    CENTRE_DEFLECTION_SHARE,
    CENTRE_STRESS_SHARE,
    force_for_bar_deflection,
    force_for_bar_stress,
)
from chartgen.planning.machine import Machine
from chartgen.planning.operations import Bound
from chartgen.quantities import Millimetres, Newtons


def bending_caps(
    machine: Machine,
    *,
    diameter: Millimetres[float],
    bore: Millimetres[float],
    overhang: Millimetres[float],
    sideways: float,
    on_centre: bool = False,
) -> dict[Bound, Newtons[float]]:
    """Return the main force that the work bears where the tool is furthest from the jaws.

    The work is as thick and as hollow all the way to the jaws as where it is cut. `sideways` is
    the force square to both the main one and the axis, over the main one. On a centre the bar
    is stiffest held at both ends: the worst place lies between them.
    """
    bends, stressed = (CENTRE_DEFLECTION_SHARE, CENTRE_STRESS_SHARE) if on_centre else (1.0, 1.0)
    at_bend = force_for_bar_deflection(
        deflection=machine.allowances.work_deflection,
        distance=overhang,
        elastic_modulus=machine.material.youngs_modulus.value,
        outer_diameter=diameter,
        inner_diameter=bore,
    )
    at_jaws = force_for_bar_stress(
        stress=machine.allowances.work_stress_share * machine.material.tensile_strength.value,
        distance=overhang,
        outer_diameter=diameter,
        inner_diameter=bore,
    )
    aslant = float(resultant_force(force=1.0, radial_share=sideways))
    return {
        Bound.BAR_BENDS: float(at_bend) / bends / aslant,
        Bound.BAR_AT_JAWS: float(at_jaws) / stressed / aslant,
    }
