"""Exercise sheets on turning, University of Applied Sciences Magdeburg-Stendal [HSMD].

Exercises 3 to 5 stand in the tests of tool life.
"""

import pytest

from chartgen.physics.cutting import cutting_force, cutting_power
from chartgen.physics.kinematics import feed_rate, spindle_speed
from chartgen.physics.time import turning_time

# Exercise 1: bar 45 mm, 300 m/min, depth 3 mm, 0.3 mm/rev, 2350 N/mm², length 80 mm.
SPEED = spindle_speed(cutting_speed=300.0, diameter=45.0)


def test_exercise_1_spindle_speed() -> None:
    assert pytest.approx(2122.0, abs=0.5) == SPEED


def test_exercise_1_feed_rate() -> None:
    assert feed_rate(feed=0.3, spindle_speed=SPEED) == pytest.approx(636.6, abs=0.05)


def test_exercise_1_time_of_the_pass() -> None:
    minutes = turning_time(length=80.0, feed=0.3, spindle_speed=SPEED)
    assert 60.0 * minutes == pytest.approx(7.5, abs=0.05)


def test_exercise_1_force_and_power() -> None:
    force = cutting_force(width=3.0, feed=0.3, specific_force=2350.0, thickness_exponent=0.0)
    assert force == pytest.approx(2115.0, abs=0.5)
    assert cutting_power(force=force, cutting_speed=300.0) == pytest.approx(10_575.0, abs=0.5)
