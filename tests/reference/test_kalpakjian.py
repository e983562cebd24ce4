"""S. Kalpakjian and S. R. Schmid, Manufacturing Engineering and Technology [KALP].

Examples 22.1 (turning a rod) and 22.2 (drilling magnesium).

Left out: the 0.75 min of example 22.1 (the length is not held, and would only follow from
the answer); example 21.2 (in the tests of tool life).
"""

from collections.abc import Callable

import pytest

from chartgen.physics.cutting import force_from_torque, power_from_unit_energy
from chartgen.physics.kinematics import cutting_speed, removal_rate
from chartgen.physics.motor import torque_from_power
from chartgen.quantities import Numeric

Convert = Callable[[Numeric, str, str], float]

INCH = 25.4


def test_example_22_1_removal_rate_of_a_rod_turned_down_by_a_hundredth(convert: Convert) -> None:
    # 0.50 in to 0.48 in, 400 rev/min, 8 in/min: feed 0.020 in/rev, at the mean diameter.
    v = cutting_speed(spindle_speed=400.0, diameter=0.49 * INCH)
    rate = removal_rate(width=0.01 * INCH, feed=8.0 / 400.0 * INCH, cutting_speed=v)
    assert convert(rate, "mm**3/min", "inch**3/min") == pytest.approx(0.123, abs=0.0005)


def test_example_22_1_force_that_its_power_means(convert: Convert) -> None:
    # 0.180 hp at 400 rev/min, force at the mean diameter; printed 116 lb.
    torque = torque_from_power(power=convert(0.180, "hp", "W"), speed=400.0)
    force = force_from_torque(torque=torque, diameter=0.49 * INCH)
    assert convert(force, "N", "lbf") == pytest.approx(116.0, abs=0.5)


# Example 22.2: drill 10 mm, 0.2 mm/rev, 800 rev/min. A drill clears its circle as a ring as
# wide as its radius does at the mean diameter, half its own.
def drilled_per_minute() -> Numeric:
    mean_speed = cutting_speed(spindle_speed=800.0, diameter=5.0)
    return removal_rate(width=5.0, feed=0.2, cutting_speed=mean_speed)


def test_example_22_2_removal_rate_of_a_ten_mm_drill() -> None:
    # Printed 209 mm³/s, exact 209.44.
    assert drilled_per_minute() / 60.0 == pytest.approx(209.0, abs=0.5)


def test_example_22_2_torque_of_a_ten_mm_drill_in_magnesium() -> None:
    # 0.5 J/mm³; printed 1.25 N·m.
    power = power_from_unit_energy(removal_rate=drilled_per_minute(), unit_energy=0.5)
    assert torque_from_power(power=power, speed=800.0) == pytest.approx(1.25, abs=0.005)
