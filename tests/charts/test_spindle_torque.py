"""Torque and power at the spindle by drive position, against the handbook's 9550 P / n.

9550 P[kW] / n[rev/min] in N·m: Electrical motors and torques, open engineering reference [ETB].
"""

from collections.abc import Callable

import pytest

from chartgen.charts.spindle_torque import shaft_power, spindle_torques
from chartgen.model.shop import Shop

ShopOf = Callable[..., Shop]


def test_a_belt_multiplies_torque_and_not_power(shop_of: ShopOf) -> None:
    found = spindle_torques(shop_of("550 W belts"))
    speeds = [115.0, 195.0, 331.0, 562.0, 954.0, 1620.0]
    assert [one.speed for one in found] == speeds
    # Allowance: what belt and bearings let through; the same for every belt position.
    shares = [one.continuous / (9550.0 * 0.55 / one.speed) for one in found]
    assert shares == pytest.approx([shares[0]] * len(shares))
    assert 0.85 < shares[0] < 1.0
    assert [one.power_of_one_cut for one in found] == pytest.approx(
        [found[0].power_of_one_cut] * len(found)
    )


def test_a_range_is_told_where_full_torque_has_the_most_power(shop_of: ShopOf) -> None:
    low, high = spindle_torques(shop_of("750 W inverter"))
    # Base 1400 of 2800 rev/min: half of each range's top.
    assert (low.speed, high.speed) == pytest.approx((500.0, 1250.0))
    assert low.one_cut / high.one_cut == pytest.approx(2.5)
    assert low.one_cut / low.continuous == pytest.approx(1.5)


def test_a_range_above_what_the_spindle_may_turn_is_told_at_that_speed(shop_of: ShopOf) -> None:
    found = spindle_torques(shop_of("750 W inverter", {'"2500 rpm"': '"800 rpm"'}))
    assert [one.speed for one in found] == pytest.approx([500.0, 800.0])


def test_readings_stand_as_they_were_measured(shop_of: ShopOf) -> None:
    (only,) = spindle_torques(shop_of("measured"))
    # 10 N·m at 600 rev/min are 628 W, the most of the three readings.
    assert only.speed == pytest.approx(600.0)
    assert (only.continuous, only.one_cut, only.stall) == pytest.approx((10.0, 10.0, 10.0))
    assert only.power_of_one_cut == pytest.approx(628.3, abs=0.1)


def test_the_shaft_has_less_than_a_plate_of_input_power_says(shop_of: ShopOf) -> None:
    plain = shop_of("550 W belts")
    drawn = shop_of(
        "550 W belts", {'power_is = "shaft"': 'power_is = "input"\nefficiency = "60 %"'}
    )
    assert (shaft_power(plain), shaft_power(drawn)) == pytest.approx((550.0, 330.0))
