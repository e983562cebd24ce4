"""How far a motor falls behind under load, against published figures.

- United States Department of Energy, fact sheet on finding a motor's load by its slip; its
  worked example (1800, 1770 and 1750 rev/min, 25 hp plate: 15 hp) is quoted from memory.
- A published problem on a permanent-magnet motor: inputs published, answers derived.
- Code of Federal Regulations 10 CFR 431.446 [CFR-431] sorts motors by these pole numbers.
"""

import pytest

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
