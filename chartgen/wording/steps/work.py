"""The steps about the bar: how far it gives way in front of the jaws, and whips behind them."""

from chartgen.limits.cut import Cut
from chartgen.limits.cut_force import Force
from chartgen.limits.reasons import Reason
from chartgen.model.shop import Shop
from chartgen.physics.whip import critical_speed
from chartgen.physics.workpiece import (
    bar_deflection,
    bar_stress,
    core_diameter_at_bend_off,
    core_diameter_at_twist_off,
)
from chartgen.quantities import Millimetres
from chartgen.wording.numbers import write_speed_ceiling
from chartgen.wording.steps.ceilings import borne
from chartgen.wording.steps.step import Step, allowance_source

_BEAM = "beam theory"
_LEAST = 0.001


def work_steps(shop: Shop, cut: Cut) -> list[Step]:
    """Return the steps of the bar in front of the jaws; empty where no force is known."""
    if cut.force is None:
        return []
    return [
        _overhang_step(shop, cut),
        _deflection_step(shop, cut, cut.force),
        _stress_step(shop, cut, cut.force),
        *_pip_steps(cut, cut.force),
    ]


def whip_step(shop: Shop, cut: Cut, cap: float) -> Step:
    """Return the step of bar that stands out behind the spindle."""
    length, material = shop.work.bar_behind, cut.material
    share = cut.case.allowances.whip_share
    critical = critical_speed(
        length=length,
        outer_diameter=cut.diameter,
        inner_diameter=cut.bore,
        elastic_modulus=material.youngs_modulus.value,
        density=material.density.value,
    )
    return Step(
        "Cap: bar behind the spindle whips",
        "n = share x 60 x (3.516 / (2 π)) (√(D² + d²) / 4) √(10⁹ E / ρ) / L²",
        f"share {share:g}, D = {cut.diameter:g} mm, d = {cut.bore:g} mm, "
        f"E = {material.youngs_modulus.value:g} N/mm², ρ = {material.density.value:g} g/cm³, "
        f"L = {length:.4g} mm",
        f"{write_speed_ceiling(cap)} rev/min; critical {critical:.0f} rev/min",
        f"cantilever vibration; {allowance_source('whip_share')}; "
        f"E: {material.youngs_modulus.citation}; ρ: {material.density.citation}",
    )


def _overhang_step(shop: Shop, cut: Cut) -> Step:
    stated = shop.work.jaw_distance
    from_jaws = cut.case.allowances.jaw_distance if stated is None else stated
    return Step(
        "Overhang of the cut",
        "L = distance from the jaws + b",
        f"{from_jaws:.4g} mm, b = {cut.blade.insert_width:.4g} mm",
        f"{cut.case.grid.jaw_distance.item():.4g} mm to the far side of the slot",
        allowance_source("jaw_distance") if stated is None else "shop file",
    )


def _deflection_step(shop: Shop, cut: Cut, force: Force) -> Step:
    grid, modulus = cut.case.grid, cut.material.youngs_modulus
    bends = bar_deflection(
        force=force.high,
        distance=grid.jaw_distance.item(),
        elastic_modulus=modulus.value,
        outer_diameter=cut.diameter,
        inner_diameter=cut.bore,
    )
    return Step(
        "Ceiling: the bar bends away",
        "F = 3 π E δ (D⁴ - d⁴) / (64 L³)",
        f"E = {modulus.value:g} N/mm², δ = {cut.case.allowances.work_deflection:g} mm, "
        f"D = {cut.diameter:g} mm, d = {cut.bore:g} mm, L = {grid.jaw_distance.item():.4g} mm",
        f"{borne(shop, cut, Reason.WORK_DEFLECTION)}; this cut bends it {_length(float(bends))}",
        f"{_BEAM}, jaws taken as rigid; {allowance_source('work_deflection')}; "
        f"E: {modulus.citation}",
    )


def _stress_step(shop: Shop, cut: Cut, force: Force) -> Step:
    grid, strength = cut.case.grid, cut.material.tensile_strength
    share = cut.case.allowances.work_stress_share
    stress = bar_stress(
        force=force.high,
        distance=grid.jaw_distance.item(),
        outer_diameter=cut.diameter,
        inner_diameter=cut.bore,
    )
    return Step(
        "Ceiling: the bar bends at the jaws",
        "F = π s R (D⁴ - d⁴) / (32 L D)",
        f"s = {share:g}, R = {strength.value:g} N/mm², D = {cut.diameter:g} mm, "
        f"d = {cut.bore:g} mm, L = {grid.jaw_distance.item():.4g} mm",
        f"{borne(shop, cut, Reason.WORK_STRESS)}; this cut bends it with {stress:.1f} N/mm²",
        f"{_BEAM}; {allowance_source('work_stress_share')}; R: {strength.citation}",
    )


def _length(bends: Millimetres[float]) -> str:
    return f"{bends:.3f} mm" if bends >= _LEAST else f"less than {_LEAST:g} mm"


def _pip_steps(cut: Cut, force: Force) -> list[Step]:
    if cut.bore:
        return []
    strength, width = cut.material.tensile_strength, cut.blade.insert_width
    twisted = core_diameter_at_twist_off(force=force.nominal, tensile_strength=strength.value)
    bent = core_diameter_at_bend_off(
        force=force.nominal, arm=width / 2.0, tensile_strength=strength.value
    )
    how = "twists" if twisted >= bent else "bends"
    return [
        Step(
            "The pip: core that parts before the edge is through",
            "d = 2.71 √(F / R) twisted off, (16 F b / (π R))^(1/3) bent off; the larger",
            f"F = {force.nominal:.0f} N expected, R = {strength.value:g} N/mm², b = {width:.4g} mm",
            f"Ø {max(twisted, bent):.2f} mm, where it {how} off",
            f"derived: torsion, shear and bending of a round bar; R: {strength.citation}",
        )
    ]
