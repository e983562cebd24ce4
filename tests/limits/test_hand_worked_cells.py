"""Cells worked out here step by step, every step written out, against the engine.

No number is copied from the program: what is not arithmetic is a plate value of the built-in
example shop, a published value with its source, or a named allowance.
"""

from math import pi

import pytest

from chartgen.limits.cut import Cut, Side, assess, recommended
from chartgen.limits.reasons import Reason
from chartgen.model.material import Material
from chartgen.model.shop import Shop

# Plates and manual of the example lathe.
POWER, BASE_SPEED, MOTOR_TOP, OVERLOAD = 750.0, 1400.0, 2800.0, 1.5
LOW_TOP, HIGH_TOP = 1000.0, 2500.0
HANDLE = 2.0
# Published: [DOE] v-belt. Allowance: spindle bearings.
EFFICIENCY = 0.93 * 0.98
# Allowances: breakdown over rated torque, share of it asked for, current limit.
BREAKDOWN, PULL_OUT, CURRENT_LIMIT = 2.0, 0.75, 1.5
# Allowances on force: confined chip, high side of the band under 0.1 mm.
RESERVE, HIGH_SIDE = 1.3, 1.35

RATED = 60.0 * POWER / (2.0 * pi * BASE_SPEED)


def one_cut_and_stall(speed: float, top: float) -> tuple[float, float]:
    """Torque at the spindle in the position whose top speed is `top`."""
    ratio = MOTOR_TOP / top
    x = speed * ratio / BASE_SPEED
    over = max(1.0, x)
    one_cut = min(OVERLOAD / over, PULL_OUT * BREAKDOWN / over**2)
    stall = min(max(CURRENT_LIMIT, OVERLOAD) / over, BREAKDOWN / over**2)
    at_spindle = RATED * ratio * EFFICIENCY
    return at_spindle * one_cut, at_spindle * stall


def feed_of(cut: Cut, reason: Reason) -> float:
    return next(limit.feed for limit in cut.ceilings if limit.reason is reason)


# Mild steel as S235JR: kc1.1 1780 N/mm2, mc 0.17 [TBM]. Two millimetres wide.
@pytest.mark.parametrize(
    ("diameter", "speed", "position", "top"),
    [(25.0, 1270.0, "high", HIGH_TOP), (50.0, 600.0, "low", LOW_TOP)],
)
def test_the_coated_blade_in_mild_steel_comes_out_as_worked_by_hand(
    example: Shop, mild_steel: Material, diameter: float, speed: float, position: str, top: float
) -> None:
    b, h, kc, mc = 2.0, 0.05, 1780.0, 0.17
    sharp = kc * b * h ** (1.0 - mc)
    high = sharp * RESERVE * HIGH_SIDE
    needed = high * diameter / 2000.0
    one_cut, stall = one_cut_and_stall(speed, top)
    per_mm = kc * b * RESERVE * HIGH_SIDE
    ceiling = (2000.0 * one_cut / (diameter * per_mm)) ** (1.0 / (1.0 - mc))
    stalling = (2000.0 * stall / (diameter * per_mm)) ** (1.0 / (1.0 - mc))
    minutes = diameter / (2.0 * h * speed)

    blade = example.blades[0]
    cut = assess(example, material=mild_steel, blade=blade, diameter=diameter, speed=speed, feed=h)
    assert cut.position.name == position
    assert cut.case.spindle.rated_torque == pytest.approx(RATED)
    assert cut.case.spindle.efficiency == pytest.approx(EFFICIENCY)
    assert cut.cutting_speed == pytest.approx(pi * diameter * speed / 1000.0)
    assert cut.force is not None
    assert cut.force.sharp == pytest.approx(sharp)
    assert cut.force.nominal == pytest.approx(sharp * RESERVE)
    assert cut.force.low == pytest.approx(sharp * RESERVE * 0.65)
    assert cut.force.high == pytest.approx(high)
    assert minutes < 3.0
    assert cut.time == pytest.approx(minutes)
    assert cut.is_one_cut
    assert cut.torque_needed == pytest.approx(needed)
    assert cut.torque_available == pytest.approx(one_cut)
    assert cut.torque_stall == pytest.approx(stall)
    assert cut.power_needed == pytest.approx(needed * 2.0 * pi * speed / 60.0)
    assert cut.power_one_cut == pytest.approx(one_cut * 2.0 * pi * speed / 60.0)
    assert feed_of(cut, Reason.TORQUE_ONE_CUT) == pytest.approx(ceiling)
    assert feed_of(cut, Reason.STALL) == pytest.approx(stalling)
    assert feed_of(cut, Reason.HAND_PACE) == pytest.approx(60.0 * HANDLE / speed)
    assert cut.feed_rate == pytest.approx(h * speed)
    assert cut.seconds_per_turn == pytest.approx(60.0 * HANDLE / (h * speed))
    assert cut.side is Side.INSIDE


# [TG-4] slow end of 0.2 % C gives the start speed of 100 m/min, [TG-6] the start feed of 0.05.
def test_at_25_mm_the_start_speed_is_within_reach_and_is_taken(
    example: Shop, mild_steel: Material
) -> None:
    _, cut = recommended(example, material=mild_steel, blade=example.blades[0], diameter=25.0)
    start = 1000.0 * 100.0 / (pi * 25.0)
    assert start == pytest.approx(1273.0, abs=0.5)
    assert cut.spindle_speed == 10.0 * round(start / 10.0)
    assert cut.feed == pytest.approx(0.05)


def test_at_50_mm_only_the_low_position_has_the_torque_near_the_start_speed(
    example: Shop, mild_steel: Material
) -> None:
    start = 1000.0 * 100.0 / (pi * 50.0)
    needed = 1780.0 * 2.0 * 0.05**0.83 * RESERVE * HIGH_SIDE * 50.0 / 2000.0
    assert one_cut_and_stall(start, HIGH_TOP)[0] < needed
    _, cut = recommended(example, material=mild_steel, blade=example.blades[0], diameter=50.0)
    assert cut.position.name == "low"
    assert one_cut_and_stall(cut.spindle_speed, LOW_TOP)[0] >= needed
    assert 0.8 * start <= cut.spindle_speed <= start
    assert cut.feed == pytest.approx(0.05)


# 304 as X5CrNi18-10: kc1.1 2350 N/mm2, mc 0.21 [TBM]; 12 m/min [TO1-1A-9]. 1/16 in wide.
def test_the_hss_blade_in_stainless_at_16_mm_comes_out_as_worked_by_hand(
    example: Shop, stainless: Material
) -> None:
    diameter, b, kc, mc = 16.0, 25.4 / 16.0, 2350.0, 0.21
    start = 1000.0 * 12.0 / (pi * diameter)
    speed = 10.0 * round(start / 10.0)
    feed = 0.05 * b / 2.0  # the start feed of the 2 mm row, in proportion to the width
    rounded = 0.04
    sharp = kc * b * rounded ** (1.0 - mc)
    high = sharp * RESERVE * HIGH_SIDE  # high-speed steel: allowance 1.0
    one_cut, _ = one_cut_and_stall(speed, LOW_TOP)
    per_mm = kc * b * RESERVE * HIGH_SIDE
    torque_ceiling = (2000.0 * one_cut / (diameter * per_mm)) ** (1.0 / (1.0 - mc))
    largest = 0.15 * b / 2.0  # [TG-6] fast end at 2 mm, in proportion
    assert torque_ceiling > 0.1  # so the chip is thick there and the band the narrow one
    thick_ceiling = (2000.0 * one_cut / (diameter * kc * b * RESERVE * 1.25)) ** (1.0 / (1.0 - mc))

    windows, cut = recommended(
        example, material=stainless, blade=example.blades[2], diameter=diameter
    )
    index = (0, 2, 0)
    assert windows.start_speed[index] == pytest.approx(start)
    assert cut.spindle_speed == speed
    assert abs(feed - rounded) < 0.0025
    assert cut.feed == pytest.approx(rounded)
    assert cut.force is not None
    assert cut.force.sharp == pytest.approx(sharp)
    assert cut.force.high == pytest.approx(high)
    assert cut.torque_needed == pytest.approx(high * diameter / 2000.0)
    assert cut.torque_available == pytest.approx(one_cut)
    assert feed_of(cut, Reason.TORQUE_ONE_CUT) == pytest.approx(thick_ceiling)
    assert feed_of(cut, Reason.INSERT_FEED) == pytest.approx(largest)
    # Floors: 0.9 of the 10 um of a ground edge, and 0.02 under a work-hardened skin.
    assert {limit.reason: limit.feed for limit in cut.floors} == pytest.approx(
        {Reason.EDGE_FLOOR: 0.009, Reason.SKIN_FLOOR: 0.02}
    )
    assert cut.floor.reason is Reason.SKIN_FLOOR
    assert not cut.is_under_soft_floor
    assert cut.side is Side.INSIDE


# 1.88 J/mm3 [MH31] p. 1147 and 1.63 at 0.05 mm read from [GROO5] fig. 20.14.
def test_the_second_force_model_is_unit_energy_times_size_effect_times_chip_area(
    example: Shop, mild_steel: Material
) -> None:
    cut = assess(
        example,
        material=mild_steel,
        blade=example.blades[0],
        diameter=25.0,
        speed=1270.0,
        feed=0.05,
    )
    assert cut.force is not None
    assert cut.force.by_unit_energy == pytest.approx(1000.0 * 1.88 * 1.63 * 2.0 * 0.05)
