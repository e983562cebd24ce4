"""What force each blade bears at its tip, in its own overhang: worked out once a blade."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from chartgen.limits.allowances import Allowances
from chartgen.model.blade import Blade, ToolMaterial
from chartgen.physics.blade_bending import (
    force_for_bending_stress,
    force_for_tip_deflection,
)
from chartgen.physics.blade_buckling import critical_lateral_force
from chartgen.physics.blade_section import BladeSection, rectangular_section, stacked_section
from chartgen.quantities import (
    FloatArray,
    Newtons,
    NewtonsPerMm,
    NewtonsPerSquareMm,
    frozen_array,
)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False, repr=False)
class BladeStrength:
    """Forces in N, shape (1, B, 1, 1); the edge sits on top of the blade.

    `at_allowed_stress` and `at_allowed_drop` are the allowances of a cut, `at_buckling` is
    the critical force without reserve, `at_yield` bends or breaks the blade for good.
    """

    at_allowed_stress: Newtons[FloatArray]
    at_allowed_drop: Newtons[FloatArray]
    at_buckling: Newtons[FloatArray]
    at_yield: Newtons[FloatArray]


def section_of(blade: Blade) -> BladeSection:
    """Return the section of a blade: its strips, from the bottom up, or a plain rectangle."""
    if blade.strips:
        return stacked_section(
            thicknesses=np.array([thickness for thickness, _ in blade.strips]),
            heights=np.array([height for _, height in blade.strips]),
        )
    return rectangular_section(thickness=blade.thickness, height=blade.height)


def allowed_stress(blade: Blade, allowances: Allowances) -> NewtonsPerSquareMm[float]:
    """Return the bending stress a blade may carry in a cut [N/mm²]."""
    is_hss = blade.tool_material is ToolMaterial.HSS
    return allowances.blade_stress_hss if is_hss else allowances.blade_stress_carrier


def blade_strength(
    blades: Sequence[Blade],
    *,
    tool_stiffness: NewtonsPerMm[float] | None,
    allowances: Allowances,
) -> BladeStrength:
    """Return the strength of some blades; an unmeasured tool post counts as rigid."""
    sections = [section_of(blade) for blade in blades]
    rows = [
        _forces(blade, section, tool_stiffness, allowances)
        for blade, section in zip(blades, sections, strict=True)
    ]

    def column(index: int) -> FloatArray:
        return frozen_array([row[index] for row in rows]).reshape(1, -1, 1, 1)

    return BladeStrength(
        at_allowed_stress=column(0),
        at_allowed_drop=column(1),
        at_buckling=_at_buckling(blades, sections, allowances).reshape(1, -1, 1, 1),
        at_yield=column(2),
    )


def _at_buckling(
    blades: Sequence[Blade], sections: Sequence[BladeSection], allowances: Allowances
) -> FloatArray:
    """Return the force that tips each blade over: all in one search, which is the slow part."""
    return frozen_array(
        critical_lateral_force(
            overhang=np.array([blade.projection for blade in blades]),
            load_height=np.array([section.top_distance for section in sections]),
            elastic_modulus=allowances.blade_modulus,
            shear_modulus=allowances.blade_shear_modulus,
            lateral_second_moment=np.array([s.lateral_second_moment for s in sections]),
            torsion_constant=np.array([s.torsion_constant for s in sections]),
        )
    )


def _forces(
    blade: Blade, section: BladeSection, tool_stiffness: float | None, allowances: Allowances
) -> tuple[float, float, float]:
    elastic, shear = allowances.blade_modulus, allowances.blade_shear_modulus

    def at_stress(stress: float) -> float:
        return float(
            force_for_bending_stress(
                stress=stress,
                overhang=blade.projection,
                section_modulus=section.section_modulus,
            )
        )

    is_hss = blade.tool_material is ToolMaterial.HSS
    return (
        at_stress(allowed_stress(blade, allowances)),
        float(
            force_for_tip_deflection(
                deflection=allowances.tip_drop,
                overhang=blade.projection,
                elastic_modulus=elastic,
                shear_modulus=shear,
                second_moment=section.second_moment,
                shear_area=section.shear_area,
                support_stiffness=np.inf if tool_stiffness is None else tool_stiffness,
            )
        ),
        at_stress(allowances.blade_yield_hss if is_hss else allowances.blade_yield_carrier),
    )
