"""One cut at a given speed and feed, held against the limits one by one."""

from collections.abc import Callable
from dataclasses import replace
from math import pi

import pytest

from chartgen.limits.cut import Cut, Side, assess, recommended, spindle_speed_at
from chartgen.limits.reasons import Reason
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.reference.tables import load_material

ShopOf = Callable[..., Shop]


def turned(shop: Shop, material: Material, *, speed: float, feed: float, at: float = 25.0) -> Cut:
    return assess(
        shop, material=material, blade=shop.blades[0], diameter=at, speed=speed, feed=feed
    )


def test_a_cut_is_timid_under_the_floor_bold_over_the_ceiling_and_inside_between(
    example: Shop, mild_steel: Material
) -> None:
    inside = turned(example, mild_steel, speed=1200.0, feed=0.05)
    floor, ceiling = inside.floor.feed, inside.ceiling.feed
    sides = [
        turned(example, mild_steel, speed=1200.0, feed=feed).side
        for feed in (0.99 * floor, floor, 0.05, ceiling, 1.01 * ceiling)
    ]
    assert sides == [Side.TOO_TIMID, Side.INSIDE, Side.INSIDE, Side.INSIDE, Side.TOO_BOLD]


def test_the_floor_is_the_highest_floor_and_the_ceiling_the_lowest(
    example: Shop, stainless: Material
) -> None:
    cut = turned(example, stainless, speed=700.0, feed=0.05)
    assert cut.floor.feed == max(limit.feed for limit in cut.floors)
    assert cut.ceiling.feed == min(limit.feed for limit in cut.ceilings)
    assert cut.speed_ceiling.speed == min(limit.speed for limit in cut.speed_limits)


def test_without_a_position_named_the_one_with_most_torque_is_taken(
    example: Shop, mild_steel: Material
) -> None:
    cut = turned(example, mild_steel, speed=500.0, feed=0.05)
    assert cut.position.name == "low"


def test_a_position_that_cannot_run_the_speed_is_passed_over(
    example: Shop, mild_steel: Material
) -> None:
    low, high = example.lathe.drive.positions
    cut = assess(
        example,
        material=mild_steel,
        blade=example.blades[0],
        diameter=25.0,
        speed=1500.0,
        feed=0.05,
        position=low,
    )
    assert cut.position == high
    assert cut.lathe_has_speed


def test_a_named_position_is_kept(example: Shop, mild_steel: Material) -> None:
    _, high = example.lathe.drive.positions
    cut = assess(
        example,
        material=mild_steel,
        blade=example.blades[0],
        diameter=25.0,
        speed=500.0,
        feed=0.05,
        position=high,
    )
    assert cut.position == high


# 1.3 for one cut, V-belt and bearings: the motor geared to the speed asked for.
def test_a_speed_the_steps_lack_is_answered_as_if_geared_to_it_and_said_to_be_missing(
    shop_of: ShopOf, mild_steel: Material
) -> None:
    shop = shop_of("550 W belts")
    cut = turned(shop, mild_steel, speed=700.0, feed=0.05)
    assert not cut.lathe_has_speed
    geared = 60.0 * 550.0 / (2.0 * pi * 700.0) * 0.93 * 0.98
    assert cut.torque_continuous == pytest.approx(geared)
    assert cut.torque_one_cut == pytest.approx(1.3 * geared)


def test_a_speed_outside_every_range_is_answered_in_the_nearest_range(
    example: Shop, mild_steel: Material
) -> None:
    slow = turned(example, mild_steel, speed=30.0, feed=0.05)
    fast = turned(example, mild_steel, speed=3000.0, feed=0.05)
    assert (slow.position.name, fast.position.name) == ("low", "high")
    assert not slow.lathe_has_speed
    assert not fast.lathe_has_speed
    assert fast.side is Side.TOO_BOLD


def test_a_cell_known_to_have_no_window_says_so_whatever_the_cut(
    example: Shop, mild_steel: Material
) -> None:
    cut = assess(
        example,
        material=mild_steel,
        blade=example.blades[0],
        diameter=25.0,
        speed=1200.0,
        feed=0.05,
        cell_has_window=False,
    )
    assert cut.side is Side.NO_WINDOW


# The torque named as available and the torque that makes the ceiling must be the same one.
@pytest.mark.parametrize(("diameter", "feed"), [(60.0, 0.05), (62.0, 0.1), (62.0, 0.05)])
def test_the_torque_that_counts_for_a_cut_is_the_one_its_ceiling_comes_from(
    example: Shop, mild_steel: Material, diameter: float, feed: float
) -> None:
    cut = turned(example, mild_steel, speed=160.0, feed=feed, at=diameter)
    applies = {limit.reason for limit in cut.ceilings if limit.feed != float("inf")}
    counts = Reason.TORQUE_ONE_CUT if cut.is_one_cut else Reason.TORQUE_CONTINUOUS
    other = Reason.TORQUE_CONTINUOUS if cut.is_one_cut else Reason.TORQUE_ONE_CUT
    assert counts in applies
    assert other not in applies


def test_a_plastic_without_force_data_has_no_force_and_no_ceiling_from_torque(
    example: Shop,
) -> None:
    cut = turned(example, load_material("nylon"), speed=1500.0, feed=0.05)
    assert cut.force is None
    assert cut.torque_needed == 0.0
    assert cut.power_needed == 0.0
    torque = {Reason.TORQUE_ONE_CUT, Reason.TORQUE_CONTINUOUS, Reason.STALL}
    assert {x.feed for x in cut.ceilings if x.reason in torque} == {float("inf")}
    assert cut.side is Side.INSIDE


def test_a_metal_without_unit_energy_in_print_has_no_second_force(example: Shop) -> None:
    cut = turned(example, load_material("free-cutting-brass"), speed=1000.0, feed=0.05)
    assert cut.force is not None
    assert cut.force.by_unit_energy is None


def test_the_spindle_speed_at_a_surface_speed_is_that_of_the_outside(
    example: Shop, mild_steel: Material
) -> None:
    cut = turned(example, mild_steel, speed=500.0, feed=0.05, at=40.0)
    assert spindle_speed_at(60.0, cut) == pytest.approx(1000.0 * 60.0 / (pi * 40.0))


def test_a_worn_edge_pushes_a_third_harder_and_rubs_under_twice_the_feed(
    example: Shop, mild_steel: Material
) -> None:
    worn = replace(example, blades=(replace(example.blades[0], worn=True),))
    fresh, blunt = (turned(s, mild_steel, speed=600.0, feed=0.06) for s in (example, worn))
    assert fresh.force is not None
    assert blunt.force is not None
    assert blunt.force.high == pytest.approx(1.3 * fresh.force.high)
    assert blunt.floor.feed == pytest.approx(2.0 * fresh.floor.feed)


def test_the_nearest_miss_of_a_cell_without_window_is_held_at_its_floor(
    example: Shop, mild_steel: Material
) -> None:
    _, cut = recommended(example, material=mild_steel, blade=example.blades[2], diameter=50.0)
    assert cut.side is Side.NO_WINDOW
    assert cut.feed == cut.floor.feed


# A soft floor is no exact number: within a hundredth of it a dial stands on it.
@pytest.mark.parametrize(("share", "is_under"), [(0.991, False), (0.989, True)])
def test_a_speed_within_a_hundredth_of_the_soft_floor_is_not_under_it(
    example: Shop, mild_steel: Material, share: float, *, is_under: bool
) -> None:
    soft_floor = turned(example, mild_steel, speed=500.0, feed=0.05).soft_floor_speed
    speed = share * 1000.0 * soft_floor / (pi * 25.0)
    assert turned(example, mild_steel, speed=speed, feed=0.05).is_under_soft_floor is is_under
