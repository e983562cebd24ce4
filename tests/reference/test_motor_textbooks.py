"""Motors: rated torque, breakdown torque and the straight line of a DC motor.

- C. I. Hubert, Electric Machines, example 5.1 [HUB].
- I. L. Kosow, Electric Machinery and Transformers, example 10.4 [KOS].
- Electrical motors and torques, open engineering reference: 9550 and 5252.
- United States Code of Federal Regulations 10 CFR 431.446 [CFR-431]: pairs of plate power.
- A published problem on a permanent-magnet motor: inputs published, answers derived.

Left out: table values of minimum breakdown torque by plate power (known from memory only);
starting and breakdown ratio of [KOS] 10.4 (ratios, no torque held); its power factor (no formula).
"""

from collections.abc import Callable

import numpy as np
import pytest
from scipy.optimize import brentq, minimize_scalar  # type: ignore[import-untyped]

from chartgen.physics.motor import (
    direct_current_torque_ratio,
    inverter_torque_ratio,
    power_from_torque,
    torque_from_power,
)
from chartgen.quantities import Numeric

Convert = Callable[[Numeric, str, str], float]


def test_torque_is_9550_times_kilowatts_over_speed() -> None:
    # The handbook's 9550 is rounded to tens.
    assert torque_from_power(power=1000.0, speed=1.0) == pytest.approx(9550.0, abs=5.0)


def test_torque_in_pound_feet_is_5252_times_horsepower_over_speed(convert: Convert) -> None:
    torque = torque_from_power(power=convert(1.0, "hp", "W"), speed=1.0)
    assert convert(torque, "N*m", "lbf*ft") == pytest.approx(5252.0, abs=0.5)


@pytest.mark.parametrize(
    ("horsepower", "kilowatts"),
    [
        (0.25, 0.18),
        (1.0 / 3.0, 0.25),
        (0.5, 0.37),
        (0.75, 0.55),
        (1.0, 0.75),
        (1.5, 1.1),
        (2.0, 1.5),
        (3.0, 2.2),
    ],
)
def test_either_side_of_a_double_plate_means_the_same_torque(
    horsepower: float, kilowatts: float, convert: Convert
) -> None:
    # Kilowatts on such plates are preferred numbers, up to 3.5 % off the horsepower.
    by_horsepower = torque_from_power(power=convert(horsepower, "hp", "W"), speed=1440.0)
    by_kilowatts = torque_from_power(power=1000.0 * kilowatts, speed=1440.0)
    assert by_kilowatts == pytest.approx(by_horsepower, rel=0.036)


@pytest.mark.parametrize(
    ("ratio", "pound_feet"),
    [
        pytest.param(1.0, 45.7, id="rated"),
        pytest.param(1.90, 86.8, id="breakdown"),
        pytest.param(1.65, 75.4, id="pull-up"),
        pytest.param(2.25, 102.8, id="locked rotor"),
    ],
)
def test_hubert_example_5_1_torques_of_a_ten_horsepower_motor(
    ratio: float, pound_feet: float, convert: Convert
) -> None:
    # 10 hp at 1150 rev/min; printed in lb·ft.
    rated = torque_from_power(power=convert(10.0, "hp", "W"), speed=1150.0)
    assert convert(ratio * rated, "N*m", "lbf*ft") == pytest.approx(pound_feet, abs=0.05)


def test_hubert_example_5_1_an_inverter_stalls_at_the_breakdown_torque(convert: Convert) -> None:
    # The whole breakdown torque at base speed, with a drive that could hold more.
    share = inverter_torque_ratio(
        speed_ratio=1.0, hold_ratio=3.0, breakdown_ratio=1.90, pull_out_share=1.0
    )
    rated = torque_from_power(power=convert(10.0, "hp", "W"), speed=1150.0)
    assert convert(share * rated, "N*m", "lbf*ft") == pytest.approx(86.8, abs=0.05)


def test_kosow_example_10_4_efficiency_of_a_third_of_a_horsepower(convert: Convert) -> None:
    # 1/3 hp at 1750 rev/min for 400 W in; printed 62.2 %. Torque by the handbook's 5252.
    torque = convert(5252.0 / 3.0 / 1750.0, "lbf*ft", "N*m")
    efficiency = power_from_torque(torque=torque, speed=1750.0) / 400.0
    # Half a unit, and 0.02 more: with 746 W a horsepower, as such books count, it is 62.17,
    # with the exact 745.7 that pint knows 62.14.
    assert 100.0 * efficiency == pytest.approx(62.2, abs=0.07)


@pytest.mark.parametrize("breakdown", [1.7, 2.0, 2.5, 3.0])
@pytest.mark.parametrize("hold", [1.0, 1.2])
def test_above_base_power_is_constant_until_the_breakdown_torque_takes_over(
    breakdown: float, hold: float
) -> None:
    share = 0.75

    def power_ratio(speed_ratio: float) -> float:
        torque = inverter_torque_ratio(
            speed_ratio=speed_ratio,
            hold_ratio=hold,
            breakdown_ratio=breakdown,
            pull_out_share=share,
        )
        return float(torque * speed_ratio)

    def drive_less_motor(speed_ratio: float) -> float:
        drive = inverter_torque_ratio(
            speed_ratio=speed_ratio, hold_ratio=hold, breakdown_ratio=1e9, pull_out_share=share
        )
        motor = inverter_torque_ratio(
            speed_ratio=speed_ratio, hold_ratio=1e9, breakdown_ratio=breakdown, pull_out_share=share
        )
        return float(drive - motor)

    crossing = brentq(drive_less_motor, 1.0, 10.0)
    assert crossing == pytest.approx(share * breakdown / hold)
    for speed_ratio in np.linspace(1.0, crossing, 9):
        assert power_ratio(float(speed_ratio)) == pytest.approx(hold)
    # Past the crossing power falls as one over the speed.
    assert power_ratio(2.0 * crossing) == pytest.approx(hold / 2.0)


# The permanent-magnet motor: 0.12 N·m/A, 12 V per 1000 rev/min, 1.5 Ω, at 10 V. Its line is
# given to the project's formula from a base speed taken anywhere on it.
NO_LOAD = 10.0 / 12.0 * 1000.0  # rev/min
STALL = 0.12 * 10.0 / 1.5  # N·m
every_base = pytest.mark.parametrize("base_share", [0.3, 0.5, 0.9])


def direct_current_torque(speed: float, base_share: float) -> float:
    """Return the torque [N·m] by the formula under test, rated where the base speed is."""
    rated = STALL * (1.0 - base_share)
    ratio = direct_current_torque_ratio(
        speed_ratio=speed / (base_share * NO_LOAD),
        hold_ratio=STALL / rated,  # no limit but the windings
        no_load_ratio=1.0 / base_share,
    )
    return float(rated * ratio)


@every_base
def test_permanent_magnet_motor_stalls_at_080_newton_metres(base_share: float) -> None:
    assert direct_current_torque(0.0, base_share) == pytest.approx(0.80, abs=0.005)


@every_base
def test_permanent_magnet_motor_gives_nothing_at_833_and_beyond(base_share: float) -> None:
    assert direct_current_torque(832.5, base_share) > 0.0
    assert direct_current_torque(833.5, base_share) == 0.0


@every_base
def test_permanent_magnet_motor_turns_208_against_06_newton_metres(base_share: float) -> None:
    speed = brentq(lambda n: direct_current_torque(n, base_share) - 0.6, 0.0, NO_LOAD)
    assert speed == pytest.approx(208.0, abs=0.5)


@every_base
def test_permanent_magnet_motor_peaks_at_174_watts_and_half_its_no_load_speed(
    base_share: float,
) -> None:
    def lost(speed: float) -> float:
        torque = direct_current_torque(speed, base_share)
        return -float(power_from_torque(torque=torque, speed=speed))

    peak = minimize_scalar(lost, bounds=(0.0, NO_LOAD), method="bounded")
    assert peak.x == pytest.approx(NO_LOAD / 2.0, rel=1e-4)
    # Exact 17.453 W, stated as 17.4: the last digit was cut off, not rounded.
    assert -peak.fun == pytest.approx(17.4, abs=0.06)
