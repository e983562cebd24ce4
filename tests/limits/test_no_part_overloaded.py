"""No part bears more than it may, in any recommended cut: each by its own formula forwards."""

from collections.abc import Callable
from dataclasses import replace
from math import inf

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from chartgen.limits.cut import Side, recommended
from chartgen.model.lathe import Work
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.physics.blade_bending import bending_stress, tip_deflection
from chartgen.physics.blade_section import rectangular_section
from chartgen.physics.workpiece import bar_deflection, bar_stress
from chartgen.reference.tables import load_material, material_keys

ShopOf = Callable[..., Shop]
LATHES = (
    "250 W brushed DC",
    "550 W belts",
    "750 W inverter",
    "1.1 kW brushless",
    "2.2 kW geared",
)
lathes = st.sampled_from(LATHES)
materials = st.sampled_from(material_keys()).map(load_material)
metals = st.sampled_from(
    [key for key in material_keys() if load_material(key).force is not None]
).map(load_material)
blades = st.integers(0, 3)
diameters = st.floats(4.0, 70.0)
speeds = st.floats(60.0, 2000.0)
moderate = settings(max_examples=80, deadline=None, derandomize=True)
SLIP = 1e-9


# Each part by its own formula forwards, and not by the force that the limit was taken from.
@moderate
@given(
    lathe=lathes,
    material=metals,
    blade=blades,
    diameter=diameters,
    bore_share=st.sampled_from((0.0, 0.6)),
    near_side=st.sampled_from((None, 2.0, 30.0)),
    stiffness=st.sampled_from((None, 3000.0)),
)
def test_no_recommended_cut_asks_more_of_any_part_than_it_bears(
    shop_of: ShopOf,
    lathe: str,
    material: Material,
    blade: int,
    diameter: float,
    bore_share: float,
    near_side: float | None,
    stiffness: float | None,
) -> None:
    plain = shop_of(lathe)
    shop = replace(
        plain,
        lathe=replace(plain.lathe, tool_stiffness=stiffness),
        work=Work(jaw_distance=near_side),
    )
    tool, bore = shop.blades[blade], bore_share * diameter
    _, cut = recommended(shop, material=material, blade=tool, diameter=diameter, bore=bore)
    if cut.side is not Side.INSIDE:
        return
    assert cut.force is not None
    force, most = cut.force.high, 1.0 + SLIP
    flat = rectangular_section(thickness=tool.thickness, height=tool.height)
    allowances = cut.case.allowances
    stress = bending_stress(
        force=force, overhang=tool.projection, section_modulus=flat.section_modulus
    )
    assert stress <= (700.0 if tool.tool_material.value == "hss" else 450.0) * most
    drop = tip_deflection(
        force=force,
        overhang=tool.projection,
        elastic_modulus=allowances.blade_modulus,
        shear_modulus=allowances.blade_shear_modulus,
        second_moment=flat.second_moment,
        shear_area=flat.shear_area,
        support_stiffness=stiffness or inf,
    )
    assert drop <= 0.1 * most
    assert force <= cut.case.blades.at_buckling.item() / 2.0 * most
    distance = (5.0 if near_side is None else near_side) + tool.insert_width
    away = bar_deflection(
        force=force,
        distance=distance,
        elastic_modulus=material.youngs_modulus.value,
        outer_diameter=diameter,
        inner_diameter=bore,
    )
    assert away <= 0.05 * most
    at_jaws = bar_stress(
        force=force, distance=distance, outer_diameter=diameter, inner_diameter=bore
    )
    assert at_jaws <= 0.5 * material.tensile_strength.value * most
    assert cut.torque_needed <= cut.torque_available * most
    assert cut.torque_needed <= cut.torque_stall * most
    holding = cut.case.holding
    lost = holding.jaw_moment * (2.0 * np.pi * cut.spindle_speed / 60.0) ** 2
    slips = holding.friction.item() * (holding.static_grip / 1.5 - lost)
    stalls = 2000.0 * cut.torque_stall / diameter
    assert 1.2 * force <= slips * most or stalls <= slips * most
