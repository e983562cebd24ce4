"""P. C. Sharma, A Textbook of Production Engineering [PCS].

Examples 4.13, 4.14, 4.22 (operation times) and 14.10 (force per area).

Left out: the whole-job time of example 4.22, 3.01 min (the inputs of its other steps are not
held); 14.4 (in the tests of tool life); 15.4 (beside the drilling guide); 15.8 (tool shank as
a cantilever).
"""

import numpy as np
import pytest

from chartgen.physics.cutting import cutting_force
from chartgen.physics.kinematics import spindle_speed
from chartgen.physics.time import plunge_time, turning_time


def test_example_4_13_facing_at_a_mean_diameter_takes_191_minutes() -> None:
    # Mean diameter 175 mm, 27 m/min, 0.8 mm/rev, 75 mm of face: from 250 mm in to 100 mm.
    n = spindle_speed(cutting_speed=27.0, diameter=175.0)
    assert n == pytest.approx(49.11, abs=0.005)
    minutes = plunge_time(outer_diameter=250.0, inner_diameter=100.0, feed=0.8, spindle_speed=n)
    assert minutes == pytest.approx(1.91, abs=0.005)


def test_example_4_14_drilling_through_takes_0174_minutes() -> None:
    # Drill 12.7 mm, 50 mm deep, 75 m/min, 0.175 mm/rev, two allowances of 0.29 D.
    n = spindle_speed(cutting_speed=75.0, diameter=12.7)
    minutes = turning_time(length=50.0 + 2.0 * 0.29 * 12.7, feed=0.175, spindle_speed=n)
    assert minutes == pytest.approx(0.174, abs=0.0005)


def test_example_4_22_parting_step_of_a_twenty_five_mm_bar() -> None:
    # Speed set at the mean diameter 12.5 mm, 40 m/min, 0.2 mm/rev. Computed, as the step
    # itself has no printed answer: 40000 / (12.5 π) and 12.5 mm of radius at 0.2 mm a turn.
    n = spindle_speed(cutting_speed=40.0, diameter=12.5)
    assert n == pytest.approx(40_000.0 / (12.5 * np.pi))
    minutes = plunge_time(outer_diameter=25.0, inner_diameter=0.0, feed=0.2, spindle_speed=n)
    assert minutes == pytest.approx(12.5 / 0.2 / n)


def test_example_14_10_force_per_area_of_a_small_chip() -> None:
    # 1600 N on a chip of 2 x 0.2 mm²; printed 4000 N/mm².
    force = cutting_force(width=2.0, feed=0.2, specific_force=4000.0, thickness_exponent=0.0)
    assert force == pytest.approx(1600.0, abs=0.5)
