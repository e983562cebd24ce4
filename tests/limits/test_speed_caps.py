"""What no spindle speed may pass."""

from dataclasses import replace
from math import pi

import pytest

from chartgen.limits.cut import Side, assess
from chartgen.limits.reasons import Reason
from chartgen.limits.run import windows
from chartgen.model.material import Material
from chartgen.model.shop import Shop


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
