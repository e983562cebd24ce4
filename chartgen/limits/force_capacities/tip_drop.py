"""The force at which the tip drops by what it is allowed: bending, shear and what holds it."""

from chartgen.limits.case import Case
from chartgen.quantities import FloatArray, Newtons


def tip_drop(case: Case) -> Newtons[FloatArray]:
    """Return the force at the allowed drop of the tip, one for each blade."""
    return case.blades.at_allowed_drop
