"""Blade and bar as cantilevers against a finite-element library, uniform and stepped.

The library bends without shear, as the formulas compared here do.
"""

import numpy as np
import pytest
from Pynite import FEModel3D  # type: ignore[import-untyped]

from chartgen.physics.blade_bending import bending_deflection, end_slope, tip_deflection
from chartgen.physics.blade_section import rectangular_section, stacked_section
from chartgen.physics.workpiece import bar_deflection, bar_stress
from chartgen.quantities import Numeric

E_STEEL, G_STEEL = 207_000.0, 79_300.0
FREEDOMS = ("DX", "DY", "DZ", "RX", "RY", "RZ")
CASE = "Combo 1"  # the library's name of a load that was given none
Piece = tuple[float, Numeric, Numeric]  # length, second moments about level and upright axis


def cantilever(pieces: list[Piece], *, down: float, across: float = 0.0) -> FEModel3D:
    """Return a solved cantilever along x, clamped where the first piece begins."""
    model = FEModel3D()
    model.add_material("steel", E_STEEL, G_STEEL, 0.3, 7.85e-9)
    model.add_node("0", 0.0, 0.0, 0.0)
    model.def_support("0", *(True for _ in FREEDOMS))
    end = 0.0
    for number, (length, level, upright) in enumerate(pieces, start=1):
        end += length
        model.add_node(f"{number}", end, 0.0, 0.0)
        # Area and torsion constant play no part under these loads.
        model.add_section(f"{number}", 100.0, float(upright), float(level), 100.0)
        model.add_member(f"{number}", f"{number - 1}", f"{number}", "steel", f"{number}")
    model.add_node_load(f"{len(pieces)}", "FY", -down)
    model.add_node_load(f"{len(pieces)}", "FZ", across)
    model.analyze()
    return model


@pytest.mark.parametrize(
    ("thickness", "height", "overhang"), [(1.0, 12.0, 25.0), (2.0, 26.0, 50.0), (3.0, 32.0, 50.0)]
)
def test_a_blade_bends_down_nods_and_bends_sideways_as_the_library_says(
    thickness: float, height: float, overhang: float
) -> None:
    section = rectangular_section(thickness=thickness, height=height)
    piece = (overhang, section.second_moment, section.lateral_second_moment)
    tip = cantilever([piece], down=500.0, across=40.0).nodes["1"]
    for force, moment, expected in (
        (500.0, section.second_moment, -tip.DY[CASE]),
        (40.0, section.lateral_second_moment, tip.DZ[CASE]),
    ):
        computed = bending_deflection(
            force=force, overhang=overhang, elastic_modulus=E_STEEL, second_moment=moment
        )
        assert computed == pytest.approx(expected, rel=1e-9)
    slope = end_slope(
        force=500.0,
        overhang=overhang,
        elastic_modulus=E_STEEL,
        second_moment=section.second_moment,
    )
    assert slope == pytest.approx(-tip.RZ[CASE], rel=1e-9)


def test_a_blade_on_a_springy_post_drops_as_a_beam_on_a_spring_does() -> None:
    section = stacked_section(thicknesses=np.array([2.0, 3.0]), heights=np.array([23.0, 3.0]))
    stiffness = 15_000.0
    model = FEModel3D()
    model.add_material("steel", E_STEEL, G_STEEL, 0.3, 7.85e-9)
    model.add_section("blade", 100.0, 100.0, float(section.second_moment), 100.0)
    model.add_node("clamp", 0.0, 0.0, 0.0)
    model.add_node("tip", 40.0, 0.0, 0.0)
    model.def_support("clamp", *(freedom != "DY" for freedom in FREEDOMS))
    model.def_support_spring("clamp", "DY", stiffness)
    model.add_member("blade", "clamp", "tip", "steel", "blade")
    model.add_node_load("tip", "FY", -300.0)
    model.analyze()
    computed = tip_deflection(
        force=300.0,
        overhang=40.0,
        elastic_modulus=E_STEEL,
        shear_modulus=1e30,  # the library knows no shear
        second_moment=section.second_moment,
        shear_area=section.shear_area,
        support_stiffness=stiffness,
    )
    assert computed == pytest.approx(-model.nodes["tip"].DY[CASE], rel=1e-9)


def round_moment(outer: float, inner: float) -> float:
    return float(np.pi / 64.0 * (outer**4 - inner**4))


@pytest.mark.parametrize(("outer", "inner"), [(12.0, 0.0), (25.0, 0.0), (40.0, 30.0)])
def test_a_bar_in_the_chuck_bends_as_the_library_says(outer: float, inner: float) -> None:
    moment = round_moment(outer, inner)
    model = cantilever([(70.0, moment, moment)], down=400.0)
    computed = bar_deflection(
        force=400.0,
        distance=70.0,
        elastic_modulus=E_STEEL,
        outer_diameter=outer,
        inner_diameter=inner,
    )
    assert computed == pytest.approx(-model.nodes["1"].DY[CASE], rel=1e-9)
    at_jaws = abs(model.members["1"].moment("Mz", 0.0, CASE))
    stress = bar_stress(force=400.0, distance=70.0, outer_diameter=outer, inner_diameter=inner)
    assert stress == pytest.approx(at_jaws * outer / 2.0 / moment, rel=1e-9)


@pytest.mark.parametrize("inner", [0.0, 6.0])
def test_a_turned_down_bar_is_the_uniform_bars_put_together(inner: float) -> None:
    # 25 mm for 40 mm from the jaws, then 14 mm for 30 mm; the thick end bends as a uniform
    # bar of the full length less what it would have bent in the thin part's place.
    def uniform(diameter: float, length: float) -> Numeric:
        return bar_deflection(
            force=400.0,
            distance=length,
            elastic_modulus=E_STEEL,
            outer_diameter=diameter,
            inner_diameter=inner,
        )

    thick, thin = round_moment(25.0, inner), round_moment(14.0, inner)
    model = cantilever([(40.0, thick, thick), (30.0, thin, thin)], down=400.0)
    composed = uniform(25.0, 70.0) - uniform(25.0, 30.0) + uniform(14.0, 30.0)
    stepped = -model.nodes["2"].DY[CASE]
    assert composed == pytest.approx(stepped, rel=1e-9)
    assert uniform(25.0, 70.0) < stepped < uniform(14.0, 70.0)
