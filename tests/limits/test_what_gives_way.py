"""What gives way first where torque is short, and which windows are called tight."""

from collections.abc import Callable

import numpy as np
import pytest

from chartgen.limits.cut import Cut, Side, assess, recommended
from chartgen.limits.run import windows
from chartgen.limits.window import Verdict
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.reference.tables import load_material

ShopOf = Callable[..., Shop]
Held = Callable[[Shop], Shop]
LATHES = ("250 W brushed DC", "550 W belts", "750 W inverter", "1.1 kW brushless")


def chosen(shop: Shop, material: Material, blade: int, diameter: float) -> Cut:
    _, cut = recommended(shop, material=material, blade=shop.blades[blade], diameter=diameter)
    return cut


# The faster step is nearer in ratio, but costs more than a fifth of the feed.
def test_a_slower_step_over_the_soft_floor_is_taken_before_a_fifth_of_the_feed_is_lost(
    shop_of: ShopOf, mild_steel: Material
) -> None:
    shop = shop_of("550 W belts")
    cut = chosen(shop, mild_steel, 0, 34.0)
    assert cut.spindle_speed == 562.0
    assert cut.feed == pytest.approx(0.05)
    assert not cut.is_under_soft_floor
    faster = assess(
        shop, material=mild_steel, blade=cut.blade, diameter=34.0, speed=954.0, feed=0.03
    )
    assert faster.side is Side.INSIDE
    assert faster.ceiling.feed < 0.8 * 0.05


def test_half_the_feed_is_given_away_before_the_soft_floor_is_passed(
    shop_of: ShopOf, in_a_collet: Held, mild_steel: Material
) -> None:
    shop = in_a_collet(shop_of("550 W belts"))
    cut = chosen(shop, mild_steel, 1, 14.0)
    assert cut.spindle_speed == 1620.0
    assert cut.feed < 0.8 * 0.06
    assert not cut.is_under_soft_floor
    slower = assess(
        shop, material=mild_steel, blade=cut.blade, diameter=14.0, speed=954.0, feed=0.06
    )
    assert slower.side is Side.INSIDE
    assert slower.is_under_soft_floor


# 1400 rev/min of the motor, geared 2800 to 2500: below it no more torque is to be had.
def test_the_corner_of_the_torque_curve_is_tried(
    shop_of: ShopOf, in_a_collet: Held, mild_steel: Material
) -> None:
    cut = chosen(in_a_collet(shop_of("750 W inverter")), mild_steel, 1, 17.0)
    assert cut.spindle_speed == 1400.0 * 2500.0 / 2800.0


# Limits to come may call more cells tight, never fewer.
@pytest.mark.parametrize("lathe", LATHES)
@pytest.mark.parametrize("key", ["mild-steel", "stainless-304", "grey-iron-250"])
def test_a_narrow_a_starved_and_a_deep_window_are_each_tight(
    shop_of: ShopOf, lathe: str, key: str
) -> None:
    shop, material = shop_of(lathe), load_material(key)
    sizes = np.arange(6.0, 66.0)
    found = windows(shop, materials=[material], diameters=[float(d) for d in sizes])
    width = np.array([blade.insert_width for blade in shop.blades]).reshape(1, -1, 1)
    start = found.grid.start_feed[..., 0]
    narrow = found.ceiling < 1.5 * found.floor
    starved = found.feed < 0.8 * start * (1.0 - 1e-6)
    deep = (sizes / 2.0 > 8.0 * width) & (material.iso_group.letter in "PM")
    for fault in (narrow, starved, deep):
        assert found.is_tight[fault & found.has_window].all()
    roomy = found.has_window & ~found.is_tight
    assert not found.is_tight[~found.has_window].any()
    cells = [(0, int(b), int(d)) for _, b, d in np.argwhere(roomy)]
    assert {found.verdict(cell) for cell in cells} <= {Verdict.INSIDE}


# A blunt edge on a strong lathe: the feed wanted is there, the floor close under it.
def test_a_window_narrow_only_because_of_its_floor_is_tight(
    shop_of: ShopOf, mild_steel: Material
) -> None:
    blunt = {'edge = "thin-coated"\ninsert': 'edge = "thin-coated"\nedge_radius = "54 um"\ninsert'}
    shop = shop_of("550 W belts", blunt)
    found, cut = recommended(shop, material=mild_steel, blade=shop.blades[0], diameter=12.0)
    assert cut.side is Side.INSIDE
    assert cut.feed >= 0.8 * 0.05
    assert cut.ceiling.feed < 1.5 * cut.floor.feed
    assert found.is_tight[0, 0, 0]


# A weak motor and a keen edge: floor far below, but far from the feed wanted.
def test_a_window_starved_of_feed_is_tight_though_its_floor_is_far(
    shop_of: ShopOf, mild_steel: Material
) -> None:
    shop = shop_of("250 W brushed DC")
    found, cut = recommended(shop, material=mild_steel, blade=shop.blades[2], diameter=25.0)
    assert cut.ceiling.feed > 1.5 * cut.floor.feed
    assert cut.feed < 0.8 * 0.04
    assert found.is_tight[0, 2, 0]


# Between 0.0482 and about 0.0488 mm lies no feed that a hand can set or hold.
def test_where_the_best_speed_has_no_settable_feed_the_next_speed_is_taken(
    shop_of: ShopOf, mild_steel: Material
) -> None:
    blunt = {
        'edge = "thin-coated"\ninsert': 'edge = "thin-coated"\nedge_radius = "53.6 um"\ninsert'
    }
    shop = shop_of("550 W belts", blunt)
    at_best = assess(
        shop, material=mild_steel, blade=shop.blades[0], diameter=25.6, speed=954.0, feed=0.0483
    )
    assert at_best.side is Side.INSIDE
    assert 0.048 < at_best.floor.feed < at_best.ceiling.feed < 0.049
    cut = chosen(shop, mild_steel, 0, 25.6)
    assert cut.side is Side.INSIDE
    assert (cut.spindle_speed, cut.feed) == pytest.approx((562.0, 0.05))
