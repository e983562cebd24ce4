"""What no spindle speed may pass."""

from collections.abc import Callable
from dataclasses import replace
from math import inf, pi

import pytest

from chartgen.limits.cut import Side, assess
from chartgen.limits.reasons import Reason
from chartgen.limits.run import windows
from chartgen.model.lathe import Work
from chartgen.model.material import Material
from chartgen.model.shop import Shop

ShopOf = Callable[..., Shop]


def cap(shop: Shop, material: Material, reason: Reason, diameter: float = 25.0) -> float:
    cut = assess(
        shop,
        material=material,
        blade=shop.blades[0],
        diameter=diameter,
        speed=500.0,
        feed=0.05,
    )
    return next(limit.speed for limit in cut.speed_limits if limit.reason is reason)


def test_a_marked_chuck_may_turn_as_marked(example: Shop, mild_steel: Material) -> None:
    assert cap(example, mild_steel, Reason.CHUCK_SPEED) == 4000.0


def test_an_unmarked_chuck_is_held_to_a_rim_speed_of_18_metres_a_second(
    example: Shop, mild_steel: Material
) -> None:
    chuck = replace(example.lathe.chuck, marked_speed=None, size=160.0)
    shop = replace(example, lathe=replace(example.lathe, chuck=chuck))
    expected = 60.0 * 18.0 / (pi * 0.160)
    assert cap(shop, mild_steel, Reason.CHUCK_SPEED) == pytest.approx(expected)
    found = windows(shop, materials=[mild_steel], diameters=[6.0])
    assert found.speed_cap[0, 0, 0] == pytest.approx(min(expected, 2500.0))
    assert (found.spindle_speed <= expected).all()


# 171 m/min: fast end of 0.2 % C, 150 HB [TG-4] p. 1351.
def test_the_edge_may_not_run_faster_than_the_fast_end_in_print(
    example: Shop, mild_steel: Material
) -> None:
    expected = 1000.0 * 171.0 / (pi * 25.0)
    assert cap(example, mild_steel, Reason.EDGE_SPEED) == pytest.approx(expected)


def test_the_spindle_may_not_run_faster_than_its_manual_nor_its_fastest_position(
    example: Shop, mild_steel: Material
) -> None:
    drive = example.lathe.drive
    held = replace(
        example, lathe=replace(example.lathe, drive=replace(drive, fastest_spindle=1800.0))
    )
    free = replace(
        example, lathe=replace(example.lathe, drive=replace(drive, fastest_spindle=9999.0))
    )
    assert cap(held, mild_steel, Reason.FASTEST_SPINDLE) == 1800.0
    assert cap(free, mild_steel, Reason.FASTEST_SPINDLE) == 2500.0


def test_a_cut_over_the_lowest_cap_alone_is_too_bold_and_names_it(
    example: Shop, mild_steel: Material
) -> None:
    cut = assess(
        example,
        material=mild_steel,
        blade=example.blades[2],
        diameter=25.0,
        speed=600.0,
        feed=0.02,
    )
    assert cut.floor.feed <= cut.feed <= cut.ceiling.feed
    assert cut.side is Side.TOO_BOLD
    assert cut.speed_ceiling.reason is Reason.EDGE_SPEED


def test_the_dial_is_rounded_down_where_rounding_would_pass_a_cap(
    example: Shop, mild_steel: Material
) -> None:
    chuck = replace(example.lathe.chuck, marked_speed=1237.0)
    shop = replace(example, lathe=replace(example.lathe, chuck=chuck))
    found = windows(shop, materials=[mild_steel], diameters=[25.0])
    assert found.spindle_speed[0, 0, 0] == 1230.0


# Handbooks print 43.0e6 d / L2 rev/min for a solid steel bar; its last digit is 0.05 of 43.0.
@pytest.mark.parametrize(("diameter", "behind"), [(8.0, 300.0), (20.0, 600.0), (35.0, 900.0)])
def test_steel_behind_the_spindle_may_turn_at_half_of_its_critical_speed(
    example: Shop, mild_steel: Material, diameter: float, behind: float
) -> None:
    shop = replace(example, work=Work(bar_behind=behind))
    expected = 0.5 * 43.0e6 * diameter / behind**2
    found = cap(shop, mild_steel, Reason.BAR_WHIP, diameter)
    assert found == pytest.approx(expected, rel=0.05 / 43.0 + 0.0005)


# A cantilever: f = 3.516 / (2 pi) sqrt(E I / (m L4)); E of 6082 70 000 N/mm2, 2.7 g/cm3.
def test_a_tube_behind_the_spindle_is_faster_than_a_solid_bar(
    example: Shop, aluminium: Material
) -> None:
    shop = replace(example, work=Work(bar_behind=800.0))
    outer, inner, length = 0.030, 0.020, 0.8
    second_moment = pi * (outer**4 - inner**4) / 64.0
    mass = 2700.0 * pi * (outer**2 - inner**2) / 4.0
    critical = 60.0 * 3.516 / (2.0 * pi) * (70e9 * second_moment / (mass * length**4)) ** 0.5
    cut = assess(
        shop,
        material=aluminium,
        blade=shop.blades[0],
        diameter=30.0,
        bore=20.0,
        speed=500.0,
        feed=0.05,
    )
    (found,) = (x.speed for x in cut.speed_limits if x.reason is Reason.BAR_WHIP)
    assert found == pytest.approx(0.5 * critical, rel=0.0005)
    assert found > cap(shop, aluminium, Reason.BAR_WHIP, 30.0)


def test_bar_that_does_not_stick_out_behind_cannot_whip(
    example: Shop, mild_steel: Material
) -> None:
    assert example.work.bar_behind == 0.0
    assert cap(example, mild_steel, Reason.BAR_WHIP) == inf


def test_a_bar_that_would_whip_is_turned_slower_and_named_when_asked_faster(
    example: Shop, mild_steel: Material
) -> None:
    shop = replace(example, work=Work(bar_behind=600.0))
    highest = cap(shop, mild_steel, Reason.BAR_WHIP, 12.0)
    found = windows(shop, materials=[mild_steel], diameters=[12.0])
    free = windows(example, materials=[mild_steel], diameters=[12.0])
    assert found.speed_cap[0, 0, 0] == highest < free.spindle_speed[0, 0, 0]
    assert found.spindle_speed[0, 0, 0] <= highest
    cut = assess(
        shop,
        material=mild_steel,
        blade=shop.blades[0],
        diameter=12.0,
        speed=1.1 * highest,
        feed=0.04,
    )
    assert cut.speed_ceiling.reason is Reason.BAR_WHIP
    assert cut.floor.feed <= cut.feed <= cut.ceiling.feed
    assert cut.side is Side.TOO_BOLD


# 54 rev/min are too slow for the slowest step: the bar ends this window and not the edge.
def test_where_even_the_slowest_speed_whips_the_bar_the_bar_is_named(
    example: Shop, mild_steel: Material
) -> None:
    shop = replace(example, work=Work(bar_behind=2000.0))
    found = windows(shop, materials=[mild_steel], diameters=[10.0])
    assert not found.has_window.any()
    assert found.floor_reason((0, 0, 0)) is Reason.SLOWEST_SPINDLE
    assert found.ceiling_reason((0, 0, 0)) is Reason.BAR_WHIP


# With the three slowest belts gone, 562 rev/min is the slowest speed there is.
@pytest.mark.parametrize(
    ("marked", "behind", "reason"),
    [
        (4000.0, 0.0, Reason.EDGE_SPEED),
        (100.0, 0.0, Reason.CHUCK_SPEED),
        (4000.0, 3000.0, Reason.BAR_WHIP),
        (50.0, 3000.0, Reason.CHUCK_SPEED),
        (300.0, 3000.0, Reason.BAR_WHIP),
    ],
)
def test_where_every_speed_is_forbidden_the_lowest_cap_is_named(
    shop_of: ShopOf, stainless: Material, marked: float, behind: float, reason: Reason
) -> None:
    slow = '"115 rpm", "195 rpm", "331 rpm", '
    shop = shop_of("550 W belts", {slow: "", "3000 rpm": f"{marked:g} rpm"})
    shop = replace(shop, work=Work(bar_behind=behind), blades=shop.blades[2:3])
    caps = {
        found: cap(shop, stainless, found, 25.0)
        for found in (Reason.EDGE_SPEED, Reason.CHUCK_SPEED, Reason.BAR_WHIP)
    }
    assert min(caps, key=lambda found: caps[found]) is reason
    assert caps[reason] < 562.0
    found = windows(shop, materials=[stainless], diameters=[25.0])
    index = (0, 0, 0)
    assert not found.has_window[index]
    assert found.floor_reason(index) is Reason.SLOWEST_SPINDLE
    assert found.ceiling_reason(index) is reason
