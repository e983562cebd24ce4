"""Modulus and strength of the work materials: in their physical bounds, marked, consistent."""

import pytest

from chartgen.model.material import IsoGroup, Material
from chartgen.reference.tables import load_material, material_keys
from chartgen.sources import Mark

PLASTICS = {"acetal", "nylon", "polyethylene", "ptfe"}
# The strength printed is that of its group when soft, the hardness that of drawn bar.
WEAKER_THAN_HARD = {"free-cutting-steel"}
# Physics: moduli in N/mm2 that metals of a group can have at all.
MODULI = {
    IsoGroup.P: (195_000.0, 217_000.0),
    IsoGroup.M: (185_000.0, 205_000.0),
    IsoGroup.K: (80_000.0, 180_000.0),
    IsoGroup.N: (65_000.0, 130_000.0),
    IsoGroup.S: (100_000.0, 220_000.0),
}
STRENGTHS = {
    IsoGroup.P: (350.0, 1100.0),
    IsoGroup.M: (500.0, 900.0),
    IsoGroup.K: (180.0, 800.0),
    IsoGroup.N: (150.0, 700.0),
    IsoGroup.S: (300.0, 1300.0),
}


@pytest.fixture(params=material_keys())
def material(request: pytest.FixtureRequest) -> Material:
    return load_material(request.param)


def test_modulus_and_strength_are_those_of_the_group(material: Material) -> None:
    modulus, strength = material.youngs_modulus.value, material.tensile_strength.value
    if material.key in PLASTICS:
        assert 300.0 <= modulus <= 4000.0
        assert 15.0 <= strength <= 100.0
        return
    low, high = MODULI[material.iso_group]
    assert low <= modulus <= high
    low, high = STRENGTHS[material.iso_group]
    assert low <= strength <= high


# Metals bend by a few thousandths before they break; a slip by a power of ten would show.
def test_the_strain_at_strength_is_that_of_a_metal_or_of_a_plastic(material: Material) -> None:
    strain = material.tensile_strength.value / material.youngs_modulus.value
    if material.key in PLASTICS:
        assert 0.01 < strain < 0.08
    else:
        assert 0.0015 < strain < 0.011


def test_a_modulus_is_from_memory_and_says_so(material: Material) -> None:
    assert material.youngs_modulus.mark is Mark.MEMORY
    assert material.youngs_modulus.source == "none"


def test_a_strength_names_its_publication_or_is_from_memory(material: Material) -> None:
    strength = material.tensile_strength
    if strength.mark is Mark.MEMORY:
        assert strength.source == "none"
    else:
        assert strength.mark in {Mark.FOUND, Mark.DERIVED}
        assert strength.source != "none"
        assert strength.place


# Grades of iron are named after their strength in N/mm2.
@pytest.mark.parametrize("key", [key for key in material_keys() if key[-3:].isdigit()])
def test_a_grade_of_iron_named_after_its_strength_has_it(key: str) -> None:
    material = load_material(key)
    if material.iso_group is IsoGroup.K:
        assert material.tensile_strength.value == float(key[-3:])


# Brinell hardness times 3.0 to 3.7 is about the strength of steel in N/mm2: common practice.
def test_strength_of_steel_goes_with_its_hardness_but_for_those_named() -> None:
    steels = [m for m in map(load_material, material_keys()) if m.iso_group is IsoGroup.P]
    ratios = {
        m.key: m.tensile_strength.value / m.hardness.value for m in steels if m.hardness is not None
    }
    assert len(ratios) > 10
    assert {key for key, ratio in ratios.items() if not 2.8 <= ratio <= 3.9} == WEAKER_THAN_HARD


# Sound in a thin metal bar: 3 to 5.3 km/s. Modulus and density slip together or not at all.
def test_modulus_over_density_gives_a_speed_of_sound(material: Material) -> None:
    if material.key in PLASTICS:
        return
    metres = (1e3 * material.youngs_modulus.value / material.density.value) ** 0.5
    assert 3000.0 <= metres <= 5300.0
