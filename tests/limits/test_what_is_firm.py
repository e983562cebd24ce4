"""When a feed counts as held, so that no speed is given away for it, and when it does not."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen.limits.cut import Cut, Side, assess, recommended
from chartgen.limits.reasons import Reason
from chartgen.limits.window import Verdict, Windows
from chartgen.model.material import Material
from chartgen.model.shop import Shop

ShopOf = Callable[..., Shop]
COATED, POLISHED = 0, 3


def chosen(shop: Shop, material: Material, blade: int, diameter: float) -> tuple[Windows, Cut]:
    return recommended(shop, material=material, blade=shop.blades[blade], diameter=diameter)


def at(shop: Shop, material: Material, cut: Cut, *, speed: float, feed: float) -> Cut:
    return assess(
        shop,
        material=material,
        blade=cut.blade,
        diameter=cut.diameter,
        speed=speed,
        feed=feed,
    )


# Gearbox: 0.02, 0.03, 0.045 ... By hand the same step is held at four fifths of the start feed.
def test_the_nearest_feed_of_a_gearbox_is_firm_though_it_is_three_fifths_of_the_feed_wanted(
    shop_of: ShopOf, mild_steel: Material
) -> None:
    shop = shop_of("550 W belts", {"[print]": '[print]\nfeeding = "power"'})
    _, cut = chosen(shop, mild_steel, COATED, 34.0)
    assert (cut.spindle_speed, cut.feed) == (954.0, 0.03)
    assert 0.03 < cut.ceiling.feed < 0.045
    slower = at(shop, mild_steel, cut, speed=562.0, feed=0.045)
    assert slower.side is Side.INSIDE
    assert not slower.is_under_soft_floor
    # Nor is it timid, where the slot is not deep: the gearbox has nothing nearer to offer.
    found, cut = chosen(shop, mild_steel, COATED, 30.0)
    assert (cut.spindle_speed, cut.feed) == (954.0, 0.03)
    assert found.verdict((0, COATED, 0)) is Verdict.INSIDE


# What the grip, or another part that no speed buys off, takes from the feed is not missed.
def test_no_step_is_given_away_for_feed_that_the_grip_forbids(
    shop_of: ShopOf, mild_steel: Material
) -> None:
    strong = shop_of("2.2 kW geared", {'power = "2.2 kW"': 'power = "9 kW"'})
    chuck = replace(strong.lathe.chuck, key_torque=36.9)
    shop = replace(strong, lathe=replace(strong.lathe, chuck=chuck))
    _, cut = chosen(shop, mild_steel, COATED, 26.0)
    assert cut.spindle_speed == 1180.0
    assert cut.ceiling.reason is Reason.GRIP
    assert cut.ceiling.feed < 0.8 * 0.05
    # A slower step loses less of the grip to speed and would bear more than four fifths.
    slower = at(shop, mild_steel, cut, speed=755.0, feed=0.042)
    assert slower.side is Side.INSIDE
    assert not slower.is_under_soft_floor


def test_where_no_edge_builds_up_no_feed_is_bought_with_a_crawl(
    shop_of: ShopOf, aluminium: Material
) -> None:
    shop = shop_of("550 W belts", {'power = "550 W"': 'power = "250 W"'})
    _, cut = chosen(shop, aluminium, POLISHED, 40.0)
    assert cut.spindle_speed == 954.0
    assert cut.feed < 0.5 * 0.05
    crawling = at(shop, aluminium, cut, speed=331.0, feed=0.05)
    assert crawling.side is Side.INSIDE
    assert crawling.cutting_speed < 0.4 * crawling.start_speed


def test_a_speed_gives_way_before_a_feed_that_a_hand_cannot_keep_over_its_floor(
    shop_of: ShopOf, aluminium: Material
) -> None:
    shop = shop_of("550 W belts", {'power = "550 W"': 'power = "120 W"'})
    _, cut = chosen(shop, aluminium, POLISHED, 40.0)
    assert cut.spindle_speed < 954.0
    nearer = at(shop, aluminium, cut, speed=954.0, feed=0.0091)
    assert nearer.side is Side.INSIDE
    assert nearer.floor.feed < nearer.ceiling.feed < 1.2 * nearer.floor.feed
    assert cut.feed >= 1.2 * cut.floor.feed
    eager = replace(shop, allowances={"room_by_hand": 1.0})
    assert chosen(eager, aluminium, POLISHED, 40.0)[1].spindle_speed == pytest.approx(954.0)
