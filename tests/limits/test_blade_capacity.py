"""What the blade bears, cell by cell: bent, dropped, tipped over sideways. By hand.

The section, the beam and the buckling are worked out here from the plates of the example's
blades; moduli, stresses, drop and reserve are the named allowances.
"""

from collections.abc import Callable
from dataclasses import replace
from math import inf, pi, tanh

import pytest
from scipy.integrate import solve_ivp  # type: ignore[import-untyped]
from scipy.optimize import brentq  # type: ignore[import-untyped]

from chartgen.limits.allowances import allowances_for
from chartgen.limits.blade_strength import blade_strength
from chartgen.limits.cut import Cut, assess
from chartgen.limits.reasons import Reason
from chartgen.model.blade import Blade
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.reference.tables import load_material

FeedFor = Callable[[float, float], float]
CeilingOf = Callable[[Cut, Reason], float]
# Allowances: moduli, bending stresses, drop of the tip, reserve against tipping over.
MODULUS, SHEAR_MODULUS = 207_000.0, 79_300.0
STRESS_CARRIER, STRESS_HSS, YIELD_CARRIER, YIELD_HSS = 450.0, 700.0, 1200.0, 3000.0
DROP, BUCKLING_RESERVE = 0.1, 2.0
# Thickness, height, projection of "2.0 carbide" and "1.6 HSS" of the example shop.
CARRIER, HSS = (1.6, 26.0, 32.0), (1.4, 12.7, 16.0)
# From the bottom up: a web of 1.6 x 21 under a land of 2 x 5.
LANDED = ((1.6, 21.0), (2.0, 5.0))


def cut_with(shop: Shop, material: Material, blade: Blade) -> Cut:
    one = replace(shop, blades=(blade,))
    return assess(one, material=material, blade=blade, diameter=25.0, speed=500.0, feed=0.05)


@pytest.mark.parametrize(
    ("index", "plate", "stress"), [(0, CARRIER, STRESS_CARRIER), (2, HSS, STRESS_HSS)]
)
def test_a_flat_blade_bends_too_hard_at_its_stress_times_modulus_over_projection(
    example: Shop,
    mild_steel: Material,
    mild_steel_feed: FeedFor,
    ceiling_of: CeilingOf,
    index: int,
    plate: tuple[float, float, float],
    stress: float,
) -> None:
    thickness, height, projection = plate
    force = stress * (thickness * height**2 / 6.0) / projection
    blade = example.blades[index]
    found = ceiling_of(cut_with(example, mild_steel, blade), Reason.BLADE_BENDING)
    assert found == pytest.approx(mild_steel_feed(force, blade.insert_width))


def test_a_blade_with_a_land_bends_about_its_own_axis(
    example: Shop, mild_steel: Material, mild_steel_feed: FeedFor, ceiling_of: CeilingOf
) -> None:
    web, land = 1.6 * 21.0, 2.0 * 5.0
    axis = (web * 10.5 + land * 23.5) / (web + land)
    second_moment = (
        1.6 * 21.0**3 / 12.0
        + web * (axis - 10.5) ** 2
        + 2.0 * 5.0**3 / 12.0
        + land * (23.5 - axis) ** 2
    )
    assert axis > 26.0 - axis  # so the lower edge is the farther one, and the more stressed
    force = STRESS_CARRIER * second_moment / axis / 32.0
    blade = replace(example.blades[0], thickness=2.0, strips=LANDED)
    found = ceiling_of(cut_with(example, mild_steel, blade), Reason.BLADE_BENDING)
    assert found == pytest.approx(mild_steel_feed(force, 2.0))


# Springs in a row: bending, shear with 6/5 of a rectangle, and the measured post behind them.
@pytest.mark.parametrize("stiffness", [None, 4000.0])
@pytest.mark.parametrize(("index", "plate"), [(0, CARRIER), (2, HSS)])
def test_the_tip_drops_by_bending_and_shear_and_by_what_holds_the_blade(
    example: Shop,
    mild_steel: Material,
    mild_steel_feed: FeedFor,
    ceiling_of: CeilingOf,
    index: int,
    plate: tuple[float, float, float],
    stiffness: float | None,
) -> None:
    thickness, height, projection = plate
    bending = projection**3 / (3.0 * MODULUS * thickness * height**3 / 12.0)
    shear = 1.2 * projection / (SHEAR_MODULUS * thickness * height)
    assert shear > 0.2 * bending  # no small matter in a blade as stubby as these
    behind = 0.0 if stiffness is None else 1.0 / stiffness
    force = DROP / (bending + shear + behind)
    shop = replace(example, lathe=replace(example.lathe, tool_stiffness=stiffness))
    blade = shop.blades[index]
    found = ceiling_of(cut_with(shop, mild_steel, blade), Reason.TIP_DROP)
    assert found == pytest.approx(mild_steel_feed(force, blade.insert_width))


def tipping_force(plate: tuple[float, float, float]) -> float:
    """Shoot the twist of a flat blade from the tip, where the force acts on its top edge."""
    thickness, height, projection = plate
    series = sum(tanh(n * pi * height / (2.0 * thickness)) / n**5 for n in range(1, 200, 2))
    torsion = height * thickness**3 / 3.0 * (1.0 - 192.0 * thickness / (pi**5 * height) * series)
    sideways = MODULUS * height * thickness**3 / 12.0
    twisting = SHEAR_MODULUS * torsion

    def twist_at_clamp(force: float) -> float:
        """C phi'' + (P x)^2 / B phi = 0, with C phi' = -P a phi at the tip."""
        shot = solve_ivp(
            lambda x, y: [y[1], -((force * x) ** 2) / (sideways * twisting) * y[0]],
            (0.0, projection),
            [1.0, -force * height / 2.0 / twisting],
            method="DOP853",
            rtol=1e-11,
            atol=1e-12,
        )
        return float(shot.y[0, -1])

    highest = 4.0126 * (sideways * twisting) ** 0.5 / projection**2
    return float(brentq(twist_at_clamp, 1e-3, highest, xtol=1e-9))


@pytest.mark.parametrize(("index", "plate"), [(0, CARRIER), (2, HSS)])
def test_a_flat_blade_tips_over_sideways_where_the_shot_equation_says_half_its_force(
    example: Shop,
    mild_steel: Material,
    mild_steel_feed: FeedFor,
    ceiling_of: CeilingOf,
    index: int,
    plate: tuple[float, float, float],
) -> None:
    force = tipping_force(plate) / BUCKLING_RESERVE
    blade = example.blades[index]
    found = ceiling_of(cut_with(example, mild_steel, blade), Reason.BLADE_BUCKLING)
    assert found == pytest.approx(mild_steel_feed(force, blade.insert_width), rel=1e-7)


def test_each_allowance_of_the_blade_moves_only_its_own_limit(
    example: Shop, mild_steel: Material, ceiling_of: CeilingOf
) -> None:
    moves = {
        "blade_stress_carrier": Reason.BLADE_BENDING,
        "tip_drop": Reason.TIP_DROP,
        "buckling_reserve": Reason.BLADE_BUCKLING,
    }
    plain = cut_with(example, mild_steel, example.blades[0])
    for name, value in {
        "blade_stress_carrier": 300.0,
        "tip_drop": 0.05,
        "buckling_reserve": 3.0,
    }.items():
        other = cut_with(replace(example, allowances={name: value}), mild_steel, example.blades[0])
        lower = {
            limit.reason for limit in plain.ceilings if ceiling_of(other, limit.reason) < limit.feed
        }
        assert lower == {moves[name]}


def test_the_force_that_bends_a_blade_for_good_is_that_of_its_yield(example: Shop) -> None:
    allowances = allowances_for(example)
    found = blade_strength(example.blades, tool_stiffness=None, allowances=allowances)
    carrier = YIELD_CARRIER * (1.6 * 26.0**2 / 6.0) / 32.0
    hss = YIELD_HSS * (1.4 * 12.7**2 / 6.0) / 16.0
    assert found.at_yield.shape == (1, 3, 1, 1)
    assert found.at_yield[0, [0, 2], 0, 0] == pytest.approx([carrier, hss])


def test_a_plastic_without_force_data_has_no_ceiling_from_the_blade(
    example: Shop, ceiling_of: CeilingOf
) -> None:
    cut = cut_with(example, load_material("nylon"), example.blades[0])
    for reason in (Reason.BLADE_BENDING, Reason.TIP_DROP, Reason.BLADE_BUCKLING):
        assert ceiling_of(cut, reason) == inf
