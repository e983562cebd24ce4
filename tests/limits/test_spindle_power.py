"""From the plate to the spindle: input plates, what lies between, measured readings."""

from collections.abc import Callable
from dataclasses import replace
from math import pi

import numpy as np
import pytest

from chartgen.limits.allowances import allowances_for
from chartgen.limits.cut import recommended
from chartgen.limits.spindle import Duration, input_efficiency, make_spindle
from chartgen.model.material import Material
from chartgen.model.motor import MotorKind, PowerIs
from chartgen.model.shop import Shop

ShopOf = Callable[..., Shop]


@pytest.mark.parametrize(
    ("kind", "share"),
    [
        (MotorKind.THREE_PHASE, 0.75),
        (MotorKind.SINGLE_PHASE, 0.62),
        (MotorKind.INVERTER, 0.70),
        (MotorKind.BRUSHED_DC, 0.65),
        (MotorKind.BRUSHLESS, 0.75),
    ],
)
def test_an_input_plate_is_reduced_by_the_allowance_of_its_kind(
    example: Shop, kind: MotorKind, share: float
) -> None:
    motor = replace(example.lathe.motor, kind=kind, power_is=PowerIs.INPUT, plate_power=1000.0)
    spindle = make_spindle(replace(example.lathe, motor=motor), allowances_for(example))
    assert spindle.shaft_power == pytest.approx(1000.0 * share)


def test_a_measured_motor_loses_nothing_between_plate_and_shaft(example: Shop) -> None:
    assert input_efficiency(MotorKind.MEASURED, allowances_for(example)) == 1.0


def test_an_input_plate_with_its_own_efficiency_uses_that_one(example: Shop) -> None:
    motor = replace(example.lathe.motor, power_is=PowerIs.INPUT, plate_power=1000.0, efficiency=0.8)
    spindle = make_spindle(replace(example.lathe, motor=motor), allowances_for(example))
    assert spindle.shaft_power == pytest.approx(800.0)
    assert spindle.rated_torque == pytest.approx(60.0 * 800.0 / (2.0 * pi * 1400.0))


def test_a_shaft_plate_is_taken_as_it_stands(example: Shop) -> None:
    spindle = make_spindle(example.lathe, allowances_for(example))
    assert spindle.shaft_power == 750.0


# V-belt 0.93 and toothed belt 0.98 [DOE]; gears 0.97 and 0.90 and bearings 0.98 are allowances.
@pytest.mark.parametrize(
    ("elements", "product"),
    [
        (("v-belt",), 0.98 * 0.93),
        (("timing-belt",), 0.98 * 0.98),
        (("v-belt", "back-gear"), 0.98 * 0.93 * 0.90),
        (("v-belt", "gear-stage", "gear-stage"), 0.98 * 0.93 * 0.97**2),
        (("direct",), 0.98),
        ((), 0.90),
    ],
)
def test_the_efficiency_of_what_lies_between_is_the_product_of_its_elements(
    example: Shop, elements: tuple[str, ...], product: float
) -> None:
    drive = replace(example.lathe.drive, elements=elements)
    spindle = make_spindle(replace(example.lathe, drive=drive), allowances_for(example))
    assert spindle.efficiency == pytest.approx(product)


def test_a_stated_efficiency_outranks_the_elements(example: Shop) -> None:
    drive = replace(example.lathe.drive, elements=("v-belt",), efficiency=0.7)
    spindle = make_spindle(replace(example.lathe, drive=drive), allowances_for(example))
    assert spindle.efficiency == 0.7


def test_an_allowance_set_in_the_shop_file_replaces_the_default(example: Shop) -> None:
    shop = replace(example, allowances={"spindle_bearing_efficiency": 0.95})
    spindle = make_spindle(shop.lathe, allowances_for(shop))
    assert spindle.efficiency == pytest.approx(0.93 * 0.95)


def test_readings_stand_as_measured_for_every_duration_in_straight_lines(shop_of: ShopOf) -> None:
    shop = shop_of("measured")
    spindle = make_spindle(shop.lathe, allowances_for(shop))
    (position,) = shop.lathe.drive.positions
    at_top = 60.0 * 500.0 / (2.0 * pi * 2000.0)
    speeds = np.array([100.0, 350.0, 600.0, 1300.0, 2000.0])
    torques = [14.0, 12.0, 10.0, (10.0 + at_top) / 2.0, at_top]
    for duration in Duration:
        assert spindle.torque(position, speeds, duration) == pytest.approx(torques)


def test_readings_decide_the_ceiling_of_feed(shop_of: ShopOf, mild_steel: Material) -> None:
    shop = shop_of("measured")
    _, cut = recommended(shop, material=mild_steel, blade=shop.blades[0], diameter=40.0)
    at_top = 60.0 * 500.0 / (2.0 * pi * 2000.0)
    torque = 10.0 + (at_top - 10.0) * (cut.spindle_speed - 600.0) / 1400.0
    assert 600.0 < cut.spindle_speed < 2000.0
    assert cut.torque_one_cut == pytest.approx(torque)
    assert cut.torque_continuous == cut.torque_one_cut == cut.torque_stall
