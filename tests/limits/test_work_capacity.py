"""What the bar bears in front of the jaws: how far it bends away, how hard at the jaws."""

from collections.abc import Callable
from dataclasses import replace
from math import pi

import pytest

from chartgen.limits.cut import Cut, Side, assess, recommended
from chartgen.limits.reasons import Reason
from chartgen.model.lathe import Work
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.reference.tables import load_material

FeedFor = Callable[[float, float], float]
CeilingOf = Callable[[Cut, Reason], float]
Held = Callable[[Shop], Shop]
# Allowances: how far the bar may bend away, what share of its strength it may see.
DEFLECTION, STRESS_SHARE, JAW_DISTANCE = 0.05, 0.5, 5.0
# Memory: modulus of steel. Published: 420 N/mm2 for steel under 125 HB, group 1 of [TG-1].
STEEL_MODULUS, STEEL_STRENGTH = 206_000.0, 420.0
WIDTH = 2.0

cells = pytest.mark.parametrize(
    ("diameter", "bore", "near_side"),
    [(8.0, 0.0, None), (8.0, 5.0, None), (12.0, 0.0, 40.0), (12.0, 9.0, 40.0)],
    ids=["solid", "bored", "solid, far out", "bored, far out"],
)


def cut_of(
    shop: Shop, material: Material, *, diameter: float, bore: float, near_side: float | None
) -> tuple[Cut, float]:
    held = replace(shop, work=Work(jaw_distance=near_side))
    cut = assess(
        held,
        material=material,
        blade=held.blades[0],
        diameter=diameter,
        bore=bore,
        speed=1000.0,
        feed=0.05,
    )
    return cut, (JAW_DISTANCE if near_side is None else near_side) + WIDTH


@cells
def test_the_bar_bends_away_at_the_far_side_of_the_cut(
    example: Shop,
    mild_steel: Material,
    mild_steel_feed: FeedFor,
    ceiling_of: CeilingOf,
    diameter: float,
    bore: float,
    near_side: float | None,
) -> None:
    cut, length = cut_of(example, mild_steel, diameter=diameter, bore=bore, near_side=near_side)
    second_moment = pi * (diameter**4 - bore**4) / 64.0
    force = DEFLECTION * 3.0 * STEEL_MODULUS * second_moment / length**3
    assert ceiling_of(cut, Reason.WORK_DEFLECTION) == pytest.approx(mild_steel_feed(force, WIDTH))


@cells
def test_the_bar_is_stressed_at_the_jaws_to_half_of_its_strength(
    example: Shop,
    mild_steel: Material,
    mild_steel_feed: FeedFor,
    ceiling_of: CeilingOf,
    diameter: float,
    bore: float,
    near_side: float | None,
) -> None:
    cut, length = cut_of(example, mild_steel, diameter=diameter, bore=bore, near_side=near_side)
    section_modulus = pi * (diameter**4 - bore**4) / (32.0 * diameter)
    force = STRESS_SHARE * STEEL_STRENGTH * section_modulus / length
    assert ceiling_of(cut, Reason.WORK_STRESS) == pytest.approx(mild_steel_feed(force, WIDTH))


def test_each_allowance_of_the_work_moves_only_its_own_limit(
    example: Shop, mild_steel: Material
) -> None:
    def ceilings(shop: Shop) -> dict[Reason, float]:
        cut, _ = cut_of(shop, mild_steel, diameter=8.0, bore=0.0, near_side=None)
        return {limit.reason: limit.feed for limit in cut.ceilings}

    plain = ceilings(example)
    moves = {
        ("work_deflection", 0.02): {Reason.WORK_DEFLECTION},
        ("work_stress_share", 0.3): {Reason.WORK_STRESS},
        ("jaw_distance", 12.0): {Reason.WORK_DEFLECTION, Reason.WORK_STRESS},
    }
    for (name, value), moved in moves.items():
        other = ceilings(replace(example, allowances={name: value}))
        assert {reason for reason in plain if other[reason] != plain[reason]} == moved


# A thin bar cut far from the jaws stays bent; cut closer it takes the whole start feed.
def test_a_thin_bar_far_from_the_jaws_is_held_by_its_stress_and_closer_it_is_not(
    example: Shop, in_a_collet: Held, mild_steel: Material
) -> None:
    def chosen(near_side: float) -> Cut:
        shop = in_a_collet(replace(example, work=Work(jaw_distance=near_side)))
        _, cut = recommended(shop, material=mild_steel, blade=shop.blades[2], diameter=5.0)
        return cut

    far, close = chosen(10.0), chosen(2.0)
    assert far.side is close.side is Side.INSIDE
    assert far.ceiling.reason is Reason.WORK_STRESS
    assert far.feed < close.feed == pytest.approx(0.04)


def test_a_bar_of_plastic_without_force_data_has_no_ceiling_from_bending(
    example: Shop, ceiling_of: CeilingOf
) -> None:
    cut, _ = cut_of(example, load_material("nylon"), diameter=8.0, bore=0.0, near_side=None)
    assert ceiling_of(cut, Reason.WORK_DEFLECTION) == float("inf")
    assert ceiling_of(cut, Reason.WORK_STRESS) == float("inf")
