"""The force at which the blade reaches the bending stress it is allowed at its clamp."""

from chartgen.limits.case import Case
from chartgen.quantities import FloatArray, Newtons


def blade_bending(case: Case) -> Newtons[FloatArray]:
    """Return the force at the allowed bending stress, one for each blade."""
    return case.blades.at_allowed_stress
