"""Torque at the spindle for every kind of motor and the three durations, against arithmetic.

Each table row works the share of rated torque out in words; the plates are invented.
"""

from collections.abc import Callable
from dataclasses import replace
from math import pi

import numpy as np
import pytest

from chartgen.limits.allowances import allowances_for
from chartgen.limits.spindle import Duration, Spindle, make_spindle
from chartgen.model.lathe import Drive, DrivePosition
from chartgen.model.motor import AboveBase, Motor, MotorKind, PowerIs, SelfCooling
from chartgen.model.shop import Shop

Shares = tuple[float, float, float]
ThreeTorques = Callable[..., Shares]
RATIO, EFFICIENCY = 2.0, 0.9
POWER, BASE = 600.0, 1500.0
AT_SPINDLE = 60.0 * POWER / (2.0 * pi * BASE) * RATIO * EFFICIENCY


def spindle_with(shop: Shop, motor: Motor) -> Spindle:
    position = DrivePosition(
        name="only", mark="", slowest=50.0, fastest=1500.0, motor_ratio=RATIO, dial_step=10.0
    )
    drive = Drive(positions=(position,), efficiency=EFFICIENCY, fastest_spindle=1500.0)
    lathe = replace(shop.lathe, motor=motor, drive=drive)
    return make_spindle(lathe, allowances_for(shop))


def shares(shop: Shop, motor: Motor, x: float) -> list[float]:
    """Return torque over rated torque at `x` times base speed, for the three durations."""
    spindle = spindle_with(shop, motor)
    (position,) = spindle.lathe.drive.positions
    speed = np.array([x * BASE / RATIO])
    return [float(spindle.torque(position, speed, d)[0]) / AT_SPINDLE for d in Duration]


def motor_of(kind: MotorKind, **plate: object) -> Motor:
    values = {
        "kind": kind,
        "plate_power": POWER,
        "power_is": PowerIs.SHAFT,
        "base_speed": BASE,
    }
    return Motor(**(values | plate))  # type: ignore[arg-type]


def test_the_durations_are_for_ever_one_cut_and_the_stall() -> None:
    assert [d.value for d in Duration] == ["continuous", "one cut", "stall"]


# Allowances: three-phase 1.5 for one cut, breakdown 2.0; single-phase 1.3 and 2.0; volts 0.9.
@pytest.mark.parametrize("x", [0.2, 1.0])
@pytest.mark.parametrize(
    ("kind", "plate", "expected"),
    [
        (MotorKind.THREE_PHASE, {}, (1.0, 1.5, 0.81 * 2.0)),
        (MotorKind.THREE_PHASE, {"breakdown": 2.6, "overload": 1.7}, (1.0, 1.7, 0.81 * 2.6)),
        (MotorKind.SINGLE_PHASE, {}, (1.0, 1.3, 0.81 * 2.0)),
        (MotorKind.SINGLE_PHASE, {"breakdown": 2.5, "overload": 1.2}, (1.0, 1.2, 0.81 * 2.5)),
    ],
)
def test_a_motor_on_the_line_gives_its_ratios_at_any_speed(
    example: Shop, kind: MotorKind, plate: dict[str, float], expected: Shares, x: float
) -> None:
    assert shares(example, motor_of(kind, **plate), x) == pytest.approx(expected)


# Allowances: 1.2 for one cut, current limit 1.5, breakdown 2.0, of which 0.75 is asked for.
# For ever, cooled by itself, the lower of 0.5 + x below half of base speed and of the curve
# through 0.5 at 5 %, 0.9 at 33 % and 1 at base speed.
@pytest.mark.parametrize(
    ("plate", "x", "expected"),
    [
        ({}, 0.1, (0.5 + 0.4 * 0.05 / 0.28, 1.2, 1.5)),
        ({}, 0.25, (0.5 + 0.25, 1.2, 1.5)),
        ({}, 0.5, (0.9 + 0.1 * 0.17 / 0.67, 1.2, 1.5)),
        ({"self_cooling": SelfCooling.FULL_FROM_HALF_SPEED}, 0.5, (1.0, 1.2, 1.5)),
        ({"self_cooling": SelfCooling.FULL_FROM_HALF_SPEED}, 0.1, (0.6, 1.2, 1.5)),
        ({"self_cooling": SelfCooling.NONE_UNDER_HALF_SPEED}, 0.49, (0.0, 1.2, 1.5)),
        ({"self_cooling": SelfCooling.NONE_UNDER_HALF_SPEED}, 0.5, (1.0, 1.2, 1.5)),
        ({"self_cooling": SelfCooling.FULL_AT_BASE_SPEED}, 0.33, (0.9, 1.2, 1.5)),
        ({}, 1.0, (1.0, 1.2, 1.5)),
        ({}, 1.6, (0.75 * 2.0 / 1.6**2, 0.75 * 2.0 / 1.6**2, 2.0 / 1.6**2)),
        ({}, 1.2, (1.0 / 1.2, 1.2 / 1.2, 1.5 / 1.2)),
        ({"forced_cooling": True}, 0.1, (1.0, 1.2, 1.5)),
        ({"overload": 1.5}, 1.0, (1.0, 1.5, 1.5)),
        ({"overload": 1.8}, 1.0, (1.0, 0.75 * 2.0, 1.8)),
        ({"current_limit": 1.8}, 1.0, (1.0, 1.2, 1.8)),
        ({"breakdown": 3.0}, 2.0, (1.0 / 2.0, 0.75 * 3.0 / 4.0, 1.5 / 2.0)),
        ({"breakdown": 3.0, "current_limit": 4.0}, 1.0, (1.0, 1.2, 3.0)),
    ],
)
def test_an_inverter_holds_torque_to_base_speed_then_power_then_breakdown(
    example: Shop, plate: dict[str, float], x: float, expected: Shares
) -> None:
    motor = motor_of(MotorKind.INVERTER, **plate)
    assert shares(example, motor, x) == pytest.approx(expected)


# Allowances: 1.3 for one cut, current limit 1.5, no-load speed 1.2 of base. The voltage line
# goes through rated torque at base speed and nothing at no load: (x0 - x) / (x0 - 1).
@pytest.mark.parametrize(
    ("plate", "x", "expected"),
    [
        ({}, 0.5, (1.0, 1.3, 1.5)),
        ({}, 0.92, (1.0, 1.3, (1.2 - 0.92) / 0.2)),
        ({}, 1.0, (1.0, 1.0, 1.0)),
        ({}, 1.1, (0.5, 0.5, 0.5)),
        ({}, 1.3, (0.0, 0.0, 0.0)),
        ({"fastest": 1.5 * BASE}, 0.75, (1.0, 1.3, 1.5)),
        ({"fastest": 1.5 * BASE}, 1.25, (0.5, 0.5, 0.5)),
        ({"overload": 1.4, "current_limit": 2.0}, 0.5, (1.0, 1.4, 2.0)),
    ],
)
def test_a_brushed_motor_holds_torque_up_to_its_voltage_line(
    example: Shop, plate: dict[str, float], x: float, expected: Shares
) -> None:
    motor = motor_of(MotorKind.BRUSHED_DC, **plate)
    assert shares(example, motor, x) == pytest.approx(expected, abs=1e-12)


def test_a_brushed_motor_whose_top_is_its_base_speed_still_turns(example: Shop) -> None:
    motor = motor_of(MotorKind.BRUSHED_DC, fastest=BASE)
    assert shares(example, motor, 0.5) == pytest.approx((1.0, 1.3, 1.5))


# Allowances: 1.5 for one cut, 2.0 at the stall.
@pytest.mark.parametrize(
    ("plate", "x", "expected"),
    [
        ({}, 0.3, (1.0, 1.5, 2.0)),
        ({}, 1.0, (1.0, 1.5, 2.0)),
        ({}, 2.0, (1.0 / 2.0, 1.5 / 2.0, 2.0 / 2.0)),
        ({"overload": 1.2, "current_limit": 1.6}, 0.3, (1.0, 1.2, 1.6)),
        (
            {"fastest": 3.0 * BASE, "above_base": AboveBase.STRAIGHT_FALL},
            2.0,
            (0.5, 1.5 * 0.5, 2.0 * 0.5),
        ),
        (
            {"fastest": 3.0 * BASE, "above_base": AboveBase.STRAIGHT_FALL},
            3.5,
            (0.0, 0.0, 0.0),
        ),
    ],
)
def test_a_brushless_motor_holds_torque_then_power_or_falls_straight(
    example: Shop, plate: dict[str, object], x: float, expected: Shares
) -> None:
    motor = motor_of(MotorKind.BRUSHLESS, **plate)
    assert shares(example, motor, x) == pytest.approx(expected)
