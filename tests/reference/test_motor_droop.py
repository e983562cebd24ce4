"""How far a motor falls behind under load, against published figures.

- United States Department of Energy, fact sheet on finding a motor's load by its slip; its
  worked example (1800, 1770 and 1750 rev/min, 25 hp plate: 15 hp) is quoted from memory.
- A published problem on a permanent-magnet motor: inputs published, answers derived.
- Code of Federal Regulations 10 CFR 431.446 [CFR-431] sorts motors by these pole numbers.
"""

import math

import pytest
from scipy.optimize import brentq  # type: ignore[import-untyped]

from chartgen.physics.motor import synchronous_speed, torque_ratio_from_droop


def test_the_load_by_slip_is_that_of_the_fact_sheet() -> None:
    no_load = synchronous_speed(rated_speed=1750.0)
    share = torque_ratio_from_droop(
        droop=no_load - 1770.0, no_load_speed=no_load, rated_speed=1750.0
    )
    assert share == pytest.approx(0.6)
    assert share * 25.0 == pytest.approx(15.0)


def test_the_droop_of_the_permanent_magnet_problem_gives_its_torque() -> None:
    """k_T 0.12 N.m/A, 12 V at 1000 rev/min, 1.5 ohm, 10 V: 208 rev/min at 0.6 N.m."""
    no_load, stall = 10.0 / 12.0 * 1000.0, 0.12 * 10.0 / 1.5
    rated_torque = 0.2
    rated_speed = no_load * (1.0 - rated_torque / stall)
    share = torque_ratio_from_droop(
        droop=no_load - 208.3, no_load_speed=no_load, rated_speed=rated_speed
    )
    assert share * rated_torque == pytest.approx(0.6, abs=0.001)


@pytest.mark.parametrize(
    ("plate", "synchronous"),
    [
        (2850.0, 3000.0),
        (1400.0, 1500.0),
        (930.0, 1000.0),
        (700.0, 750.0),
        (3450.0, 3600.0),
        (1725.0, 1800.0),
        (1140.0, 1200.0),
        (860.0, 900.0),
    ],
)
def test_plates_of_both_mains_have_their_synchronous_speed(
    plate: float, synchronous: float
) -> None:
    """120 f / p of two to eight poles; the plates are usual ones: common practice, no source."""
    assert synchronous_speed(rated_speed=plate) == synchronous


def test_no_line_motor_is_faster_than_two_poles_at_60_hertz() -> None:
    with pytest.raises(ValueError, match="no line motor runs at 4000 rpm"):
        synchronous_speed(rated_speed=4000.0)


# Kloss's curve of an induction motor: T / T_b = 2 / (s / s_b + s_b / s), with the breakdown slip
# s_b = s_N (b + sqrt(b² - 1)) that puts rated torque at rated slip. The formula is from memory
# (every textbook of electric machines prints it); the check values of s_b are arithmetic of it.


def breakdown_slip(rated_slip: float, breakdown: float) -> float:
    return rated_slip * (breakdown + math.sqrt(breakdown**2 - 1.0))


def kloss_torque_ratio(slip: float, rated_slip: float, breakdown: float) -> float:
    at = breakdown_slip(rated_slip, breakdown)
    return 2.0 * breakdown / (slip / at + at / slip)


@pytest.mark.parametrize(
    ("breakdown", "rated_slip", "printed"),
    [(2.5, 0.05, 0.2396), (1.6, 0.05, 0.1424), (2.5, 0.028, 0.1342)],
)
def test_the_curve_has_rated_torque_at_rated_slip_and_its_top_at_the_breakdown_slip(
    breakdown: float, rated_slip: float, printed: float
) -> None:
    at = breakdown_slip(rated_slip, breakdown)
    assert at == pytest.approx(printed, abs=0.00005)
    assert kloss_torque_ratio(rated_slip, rated_slip, breakdown) == pytest.approx(1.0)
    top = kloss_torque_ratio(at, rated_slip, breakdown)
    assert top == pytest.approx(breakdown)
    assert kloss_torque_ratio(0.9 * at, rated_slip, breakdown) < top
    assert kloss_torque_ratio(1.1 * at, rated_slip, breakdown) < top


@pytest.mark.parametrize("breakdown", [2.0, 2.5, 3.0])
@pytest.mark.parametrize("load", [0.25, 0.5, 0.75, 1.0, 1.2])
def test_torque_from_droop_is_kloss_within_a_tenth_up_to_a_fifth_over_rated(
    breakdown: float, load: float
) -> None:
    """1420 rev/min on the plate of a 1500 rev/min motor; Kloss solved for the slip at a load."""
    rated = 80.0 / 1500.0
    slip = brentq(
        lambda s: kloss_torque_ratio(s, rated, breakdown) - load,
        1e-6,
        breakdown_slip(rated, breakdown),
    )
    told = torque_ratio_from_droop(droop=1500.0 * slip, no_load_speed=1500.0, rated_speed=1420.0)
    assert told == pytest.approx(load, rel=0.1)
