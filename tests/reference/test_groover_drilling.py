"""M. P. Groover, Fundamentals of Modern Manufacturing, problems 22.10 and 22.11 [GROOS].

Drilling through the general formulas: a drill of diameter D clears its circle as a ring
D/2 wide does at the mean diameter, D/2.
"""

import pytest

from chartgen.physics.drilling import point_height
from chartgen.physics.kinematics import cutting_speed, feed_rate, removal_rate, spindle_speed
from chartgen.physics.time import turning_time
from chartgen.quantities import Numeric

INCH = 25.4
FOOT_IN_METRES = 0.3048
CUBIC_INCH = INCH**3
POINT_ANGLE = 118.0


def drilled(*, diameter: float, feed: Numeric, speed: Numeric) -> Numeric:
    """Return the removal rate of a drill, as that of its ring at the mean diameter."""
    mean_speed = cutting_speed(spindle_speed=speed, diameter=diameter / 2.0)
    return removal_rate(width=diameter / 2.0, feed=feed, cutting_speed=mean_speed)


def test_problem_22_10_speed_feed_rate_time_and_removal_of_a_blind_hole() -> None:
    # Drill 12.7 mm, 60 mm deep, 25 m/min, 0.30 mm/rev, point 118°.
    n = spindle_speed(cutting_speed=25.0, diameter=12.7)
    assert n == pytest.approx(626.6, abs=0.05)
    assert feed_rate(feed=0.30, spindle_speed=n) == pytest.approx(188.0, abs=0.5)
    assert point_height(diameter=12.7, point_angle=POINT_ANGLE) == pytest.approx(3.82, abs=0.005)
    minutes = turning_time(
        length=60.0 + point_height(diameter=12.7, point_angle=POINT_ANGLE),
        feed=0.30,
        spindle_speed=n,
    )
    # Exact 0.33948; printed 0.339.
    assert minutes == pytest.approx(0.339, abs=0.0005)
    # Printed to three digits.
    assert drilled(diameter=12.7, feed=0.30, speed=n) == pytest.approx(23_800.0, abs=50.0)


def test_problem_22_11_twin_drills_share_a_feed_rate_and_the_removal() -> None:
    # 1/2 in and 3/4 in at 230 ft/min each, 1.50 in³/min in all, plate 1.0 in thick.
    small, large = 0.5 * INCH, 0.75 * INCH
    speeds = {
        d: spindle_speed(cutting_speed=230.0 * FOOT_IN_METRES, diameter=d) for d in (small, large)
    }
    feeds = {d: 2.35 * INCH / n for d, n in speeds.items()}
    assert feeds[small] / INCH == pytest.approx(0.0013, abs=0.00005)
    assert feeds[large] / INCH == pytest.approx(0.0020, abs=0.00005)
    total = sum(drilled(diameter=d, feed=feeds[d], speed=speeds[d]) for d in (small, large))
    assert total / CUBIC_INCH == pytest.approx(1.50, abs=0.005)
    minutes = turning_time(
        length=1.0 * INCH + point_height(diameter=large, point_angle=POINT_ANGLE),
        feed=feeds[large],
        spindle_speed=speeds[large],
    )
    # Printed 0.522, here 0.5214: 0.522 follows from a point of 0.226 in, rounded up.
    assert minutes == pytest.approx(0.522, abs=0.001)
