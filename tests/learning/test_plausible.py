"""Readings that the lathe cannot have given are refused before anything follows from them."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen.learning.findings import learn
from chartgen.learning.refusals import RefusedReadingsError
from chartgen.model.readings import KeyTorqueReading, KnownCut, ShopReading, WattsReading
from chartgen.model.shop import Shop

ShopOf = Callable[..., Shop]
DATE = "2026-11-25"
CUT = KnownCut(
    material="mild-steel", blade="2 coated", diameter=25.0, speed=954.0, feed=0.05, feed_error=None
)


def watts(cut_power: float, speed: float = 954.0) -> WattsReading:
    return WattsReading(
        date=DATE,
        cut=replace(CUT, speed=speed),
        idle_power=120.0,
        cut_power=cut_power,
        meter_error=None,
    )


def refusal(shop: Shop, *readings: ShopReading) -> str:
    with pytest.raises(RefusedReadingsError) as caught:
        learn(shop, readings)
    return str(caught.value)


def test_a_slipped_decimal_on_the_chuck_key_does_not_double_the_grip(shop_of: ShopOf) -> None:
    """A 125 mm chuck takes 75 N·m on its key [CHUCK-2757180], so 380 was 38."""
    said = refusal(shop_of("550 W belts"), KeyTorqueReading(date=DATE, torque=380.0))
    assert said == (
        "the keytorque reading of 2026-11-25: a pull of 380 N.m is more than a key of a 125 mm "
        "chuck takes (full torque about 75 N.m); check the number and its unit."
    )


def test_a_strong_pull_is_still_a_pull(shop_of: ShopOf) -> None:
    pulls = [KeyTorqueReading(date=DATE, torque=t) for t in (80.0, 84.0, 82.0)]
    (finding,) = learn(shop_of("550 W belts"), pulls)
    assert finding.measured is not None


def test_a_key_larger_than_the_table_and_a_collet_are_not_judged(shop_of: ShopOf) -> None:
    shop = shop_of("550 W belts")
    large = replace(shop.lathe.chuck, size=600.0)
    shop = replace(shop, lathe=replace(shop.lathe, chuck=large))
    assert learn(shop, [KeyTorqueReading(date=DATE, torque=t) for t in (900.0, 910.0, 905.0)])


def test_more_watts_than_the_motor_can_draw_are_refused(shop_of: ShopOf) -> None:
    said = refusal(shop_of("550 W belts"), watts(2900.0))
    assert "2900 W in the cut is" in said
    assert "times what this motor draws at full load" in said


def test_a_speed_of_no_position_is_refused(shop_of: ShopOf) -> None:
    said = refusal(shop_of("550 W belts"), watts(500.0, speed=740.0))
    assert "no drive position of this lathe turns 740 rpm; read the speed in the cut" in said


def test_an_unloaded_belt_runs_a_little_over_its_plate(shop_of: ShopOf) -> None:
    assert learn(shop_of("550 W belts"), [watts(500.0, speed=1010.0)])


def test_all_refusals_come_at_once(shop_of: ShopOf) -> None:
    said = refusal(shop_of("550 W belts"), watts(2900.0), KeyTorqueReading(date=DATE, torque=380.0))
    assert len(said.splitlines()) == 2
