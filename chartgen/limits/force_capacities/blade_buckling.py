"""The force at which a thin blade tips over sideways, with its reserve."""

from chartgen.limits.case import Case
from chartgen.quantities import FloatArray, Newtons


def blade_buckling(case: Case) -> Newtons[FloatArray]:
    """Return the critical lateral force over its reserve, one for each blade."""
    return case.blades.at_buckling / case.allowances.buckling_reserve
