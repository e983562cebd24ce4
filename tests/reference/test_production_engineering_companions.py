"""Worked exercises of three teaching texts, by number only.

- An open companion to a production-engineering textbook, example 2.1: removal rate and
  power printed, torque computed.
- An open production-engineering course, exercise 3: force and speed printed, power computed.
- A textbook for industrial mechanics, learning fields 5-15, section 2.6, exercise 26:
  inputs printed, answers computed.
"""

from collections.abc import Callable

import numpy as np
import pytest

from chartgen.physics.cutting import (
    cutting_force,
    cutting_power,
    force_from_unit_energy,
    power_from_unit_energy,
)
from chartgen.physics.kinematics import cutting_speed, removal_rate, spindle_speed
from chartgen.physics.motor import torque_from_power
from chartgen.quantities import Numeric

Convert = Callable[[Numeric, str, str], float]


def test_example_2_1_removal_and_power_of_a_turning_cut(convert: Convert) -> None:
    # Bar 50 mm, 0.4 mm/rev, depth 4 mm, 70 m/min, 0.065 kW per cm³/min.
    rate = removal_rate(width=4.0, feed=0.4, cutting_speed=70.0)
    assert convert(rate, "mm**3/min", "cm**3/min") == pytest.approx(112.0, abs=0.5)
    unit_energy = convert(0.065, "kW/(cm**3/min)", "J/mm**3")
    power = power_from_unit_energy(removal_rate=rate, unit_energy=unit_energy)
    assert power / 1000.0 == pytest.approx(7.28, abs=0.005)


def test_example_2_1_torque_at_the_mean_diameter() -> None:
    # Computed: speed and force both at the mean diameter 46 mm, 7280 W; 143.5 N·m.
    n = spindle_speed(cutting_speed=70.0, diameter=46.0)
    assert torque_from_power(power=7280.0, speed=n) == pytest.approx(143.5, abs=0.05)


def test_exercise_3_power_and_energy_of_an_orthogonal_cut() -> None:
    # 567 N at 2 m/s, chip 0.127 x 6.35 mm. Computed: 1134 W, 0.703 J/mm³.
    power = cutting_power(force=567.0, cutting_speed=120.0)
    assert power == pytest.approx(1134.0, abs=0.5)
    half_unit = 0.0005 / 0.703
    rate = removal_rate(width=6.35, feed=0.127, cutting_speed=120.0)
    assert power_from_unit_energy(removal_rate=rate, unit_energy=0.703) == pytest.approx(
        power, rel=half_unit
    )
    force = force_from_unit_energy(width=6.35, feed=0.127, unit_energy=0.703, size_factor=1.0)
    assert force == pytest.approx(567.0, rel=half_unit)


def test_exercise_26_power_of_a_forty_mm_drill() -> None:
    # 800 rev/min, 0.3 mm/rev, 2000 N/mm², efficiency 0.72; P = kc D f v / 4.
    # Computed: 10.05 kW at the drill, 13.96 kW at the motor. The two lips cut half the
    # diameter, so force and speed belong to the mean diameter of 20 mm.
    force = cutting_force(width=20.0, feed=0.3, specific_force=2000.0, thickness_exponent=0.0)
    v = cutting_speed(spindle_speed=800.0, diameter=20.0)
    power = cutting_power(force=force, cutting_speed=v)
    assert power == pytest.approx(2000.0 * 40.0 * 0.3 / 4.0 * np.pi * 0.040 * 800.0 / 60.0)
    assert power / 0.72 / 1000.0 == pytest.approx(13.96, abs=0.005)
