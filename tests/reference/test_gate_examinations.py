"""Indian Graduate Aptitude Test in Engineering, past papers [GATE].

PI 1994 (parting off), ME 1991 (force per area), PI 2007 (drilling). The questions are
multiple choice: the option was printed, the key was not seen, and the arithmetic selects it.

PI 2003, PI 2013 and PI 2007 second question stand in the tests of tool life.

Left out: PI 1992 and ME 1991 second question (no life to work out); ME 2004 (the nearest
printed option, 24 s, is 0.9 s from any reading of the inputs, so it proves nothing); PI 2014
(no key, and two readings of the drill's point).
"""

import pytest

from chartgen.physics.cutting import cutting_force, cutting_power, feed_for_force
from chartgen.physics.drilling import point_height
from chartgen.physics.kinematics import cutting_speed, removal_rate, spindle_speed
from chartgen.physics.time import turning_time


def test_parting_off_with_two_mm_at_a_fifth_of_a_mm_takes_320_newtons() -> None:
    # PI 1994: width 2 mm, infeed 0.2 mm/rev, 800 N/mm² whatever the thickness; option B.
    force = cutting_force(width=2.0, feed=0.2, specific_force=800.0, thickness_exponent=0.0)
    assert force == pytest.approx(320.0, abs=0.5)


def test_parting_off_at_sixty_metres_a_minute_takes_320_watts() -> None:
    # PI 1994: the same cut, fastest 60 m/min at the 100 mm surface; option D.
    n = spindle_speed(cutting_speed=60.0, diameter=100.0)
    surface = cutting_speed(spindle_speed=n, diameter=100.0)
    force = cutting_force(width=2.0, feed=0.2, specific_force=800.0, thickness_exponent=0.0)
    assert cutting_power(force=force, cutting_speed=surface) == pytest.approx(320.0, abs=0.5)


def test_320_newtons_on_two_mm_asks_for_the_infeed_of_the_question() -> None:
    # PI 1994 backwards: the printed force gives the printed 0.2 mm/rev.
    feed = feed_for_force(force=320.0, width=2.0, specific_force=800.0, thickness_exponent=0.0)
    assert feed == pytest.approx(0.2, abs=0.0005)


def test_power_and_speed_of_a_turning_cut_agree_with_its_force_per_area() -> None:
    # ME 1991: depth 1.6 mm, 0.8 mm/rev, 5.5 m/min, 0.67 kW. Computed, no answer printed:
    # 7040 mm³/min by 1.6 x 0.8 x 5500, 5710 N/mm² by 0.67e3 x 60 / 7.04.
    assert removal_rate(width=1.6, feed=0.8, cutting_speed=5.5) == pytest.approx(7040.0)
    force = cutting_force(width=1.6, feed=0.8, specific_force=5710.0, thickness_exponent=0.0)
    # Half a unit of the inputs' last digit, 0.67 kW.
    assert cutting_power(force=force, cutting_speed=5.5) == pytest.approx(670.0, abs=5.0)


def test_a_blind_hole_of_fifty_mm_takes_044_minutes_with_its_point() -> None:
    # PI 2007: drill 10 mm, point 120°, 600 rev/min, 0.2 mm/rev; option (c).
    travel = 50.0 + point_height(diameter=10.0, point_angle=120.0)
    assert turning_time(length=travel, feed=0.2, spindle_speed=600.0) == pytest.approx(
        0.44, abs=0.005
    )
