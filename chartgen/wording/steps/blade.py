"""The steps about the blade: what force it bears in its own overhang, and how it gives way."""

from chartgen.limits.blade_strength import allowed_stress, section_of
from chartgen.limits.cut import Cut
from chartgen.limits.cut_force import Force
from chartgen.limits.reasons import Reason
from chartgen.model.blade import Blade, ToolMaterial
from chartgen.model.material import IsoGroup
from chartgen.model.shop import Shop
from chartgen.physics.blade_bending import (
    bending_deflection,
    bending_stress,
    end_slope,
    forward_bite,
    shear_deflection,
)
from chartgen.physics.blade_buckling import buckling_coefficient, load_height_ratio
from chartgen.physics.blade_section import BladeSection
from chartgen.wording.steps.ceilings import borne
from chartgen.wording.steps.step import Step, allowance_source

_BEAM = "beam theory"


def blade_steps(shop: Shop, cut: Cut) -> list[Step]:
    """Return the steps of the blade; empty where no force is known."""
    if cut.force is None:
        return []
    section = section_of(cut.blade)
    return [
        _section_step(cut.blade, section),
        _bending_step(shop, cut, section),
        _tip_drop_step(shop, cut, section),
        *_nod_steps(cut, cut.force, section, shop.lathe.tool_stiffness),
        *_buckling_steps(shop, cut, section),
        *_depth_steps(cut),
    ]


def _section_step(blade: Blade, section: BladeSection) -> Step:
    result = (
        f"I = {section.second_moment:.4g} mm⁴, W = {section.section_modulus:.4g} mm³, "
        f"A_s = {section.shear_area:.4g} mm², edge {section.top_distance:.4g} mm over the axis"
    )
    if blade.strips:
        strips = ", ".join(f"{thick:g} x {high:g} mm" for thick, high in blade.strips)
        return Step(
            "Section of the blade",
            "I = Σ (t b³ / 12 + t b y²), W = I / farther edge, A_s = I² / ∫ Q² / t dy",
            f"strips from the bottom: {strips}",
            result,
            f"{_BEAM}; shop file",
        )
    return Step(
        "Section of the blade",
        "I = t h³ / 12, W = t h² / 6, A_s = t h / 1.2",
        f"t = {blade.thickness:.4g} mm, h = {blade.height:.4g} mm",
        result,
        f"{_BEAM}; shop file",
    )


def _bending_step(shop: Shop, cut: Cut, section: BladeSection) -> Step:
    allowances = cut.case.allowances
    is_hss = cut.blade.tool_material is ToolMaterial.HSS
    length, force = cut.blade.projection, cut.force.high if cut.force else 0.0
    stress = bending_stress(force=force, overhang=length, section_modulus=section.section_modulus)
    return Step(
        "Ceiling: bending of the blade",
        "F = σ W / L",
        f"σ = {allowed_stress(cut.blade, allowances):g} N/mm², "
        f"W = {section.section_modulus:.4g} mm³, L = {length:.4g} mm",
        f"{borne(shop, cut, Reason.BLADE_BENDING)}; this cut bends it with {stress:.0f} N/mm²",
        f"{_BEAM}; {allowance_source('blade_stress_hss' if is_hss else 'blade_stress_carrier')}",
    )


def _tip_drop_step(shop: Shop, cut: Cut, section: BladeSection) -> Step:
    allowances, stiffness = cut.case.allowances, shop.lathe.tool_stiffness
    post = "taken as rigid" if stiffness is None else f"k = {stiffness:g} N/mm as measured"
    return Step(
        "Ceiling: drop of the tip",
        "F = δ / (L³ / (3 E I) + L / (G A_s) + 1 / k)",
        f"δ = {allowances.tip_drop:g} mm, L = {cut.blade.projection:.4g} mm, "
        f"E = {allowances.blade_modulus:g} N/mm², I = {section.second_moment:.4g} mm⁴, "
        f"G = {allowances.blade_shear_modulus:g} N/mm², A_s = {section.shear_area:.4g} mm²; "
        f"post and slides {post}",
        borne(shop, cut, Reason.TIP_DROP),
        f"{_BEAM}; {allowance_source('tip_drop')}; {allowance_source('blade_modulus')}; "
        f"{allowance_source('blade_shear_modulus')}",
    )


def _nod_steps(
    cut: Cut, force: Force, section: BladeSection, stiffness: float | None
) -> list[Step]:
    allowances, length = cut.case.allowances, cut.blade.projection
    bending = bending_deflection(
        force=force.high,
        overhang=length,
        elastic_modulus=allowances.blade_modulus,
        second_moment=section.second_moment,
    )
    shear = shear_deflection(
        force=force.high,
        overhang=length,
        shear_modulus=allowances.blade_shear_modulus,
        shear_area=section.shear_area,
    )
    post = 0.0 if stiffness is None else force.high / stiffness
    slope = end_slope(
        force=force.high,
        overhang=length,
        elastic_modulus=allowances.blade_modulus,
        second_moment=section.second_moment,
    )
    bite = forward_bite(slope=slope, top_distance=section.top_distance)
    parts = f"bending {bending:.4f}, shear {shear:.4f}"
    parts += "" if stiffness is None else f", post and slides {post:.4f}"
    return [
        Step(
            "Drop of the tip in this cut, high side",
            "δ = F L³ / (3 E I) + F L / (G A_s) + F / k",
            f"F = {force.high:.0f} N",
            f"{bending + shear + post:.4f} mm: {parts}",
            _BEAM,
        ),
        Step(
            "Bite of the nodding tip, high side",
            "x = F L² c / (2 E I)",
            f"F = {force.high:.0f} N, c = {section.top_distance:.4g} mm",
            f"{bite:.4f} mm towards the centre, which the next chip is thicker by",
            "derived: small rotation of the tip",
        ),
    ]


def _buckling_steps(shop: Shop, cut: Cut, section: BladeSection) -> list[Step]:
    allowances, length = cut.case.allowances, cut.blade.projection
    ratio = load_height_ratio(
        load_height=section.top_distance,
        overhang=length,
        elastic_modulus=allowances.blade_modulus,
        shear_modulus=allowances.blade_shear_modulus,
        lateral_second_moment=section.lateral_second_moment,
        torsion_constant=section.torsion_constant,
    )
    coefficient = float(buckling_coefficient(load_height_ratio=ratio))
    critical = cut.case.blades.at_buckling.item()
    return [
        Step(
            "Force that tips the blade over sideways",
            "P = λ √(E I_s G J) / L²; λ for a force at ε = (c / L) √(E I_s / (G J)) over the axis",
            f"sideways I_s = {section.lateral_second_moment:.4g} mm⁴, "
            f"twisting J = {section.torsion_constant:.4g} mm⁴, ε = {ratio:.4f}, "
            f"λ = {coefficient:.4f}",
            f"{critical:.0f} N",
            "derived: exact solution of the twisting blade with the force on its top",
        ),
        Step(
            "Ceiling: blade tips over sideways",
            "F = P / reserve",
            f"P = {critical:.0f} N, reserve {allowances.buckling_reserve:g}",
            borne(shop, cut, Reason.BLADE_BUCKLING),
            allowance_source("buckling_reserve"),
        ),
    ]


def _depth_steps(cut: Cut) -> list[Step]:
    if cut.material.iso_group not in {IsoGroup.P, IsoGroup.M}:
        return []
    depth, width = (cut.diameter - cut.bore) / 2.0, cut.blade.insert_width
    most = cut.case.allowances.depth_over_width
    said = f"over {most:g}, so tight" if depth > most * width else f"no mark up to {most:g}"
    return [
        Step(
            "Depth of the slot over its width, in steel (a mark, no limit)",
            "depth / b",
            f"{depth:.4g} mm, b = {width:.4g} mm",
            f"{depth / width:.2f}: {said}",
            allowance_source("depth_over_width"),
        )
    ]
