"""Torque, power and thrust of drills in worked examples of textbooks.

- S. Kalpakjian and S. R. Schmid, Manufacturing Engineering and Technology, ex. 22.2 [KALP].
- A textbook for industrial mechanics, section 2.6, exercise 26 [HT]; answers computed.
- A. Ghosh and A. K. Mallik, Manufacturing Science, example 4.14, p. 230 [GM].

Travel and time of drills stand in the tests of Groover and of GATE.
"""

import numpy as np
import pytest

from chartgen.physics.cutting import cutting_torque
from chartgen.physics.drilling import (
    drilling_thrust,
    drilling_torque,
    lip_force,
)
from chartgen.physics.motor import power_from_torque
from chartgen.reference.drilling import load_drilling


def test_a_ten_mm_drill_in_magnesium_takes_the_printed_torque() -> None:
    # KALP 22.2: 0.2 mm/rev; 0.5 J/mm³ is 500 N/mm². Printed 1.25 N·m.
    torque = drilling_torque(specific_force=500.0, feed=0.2, diameter=10.0, pilot_diameter=0.0)
    assert torque == pytest.approx(1.25, abs=0.005)


def test_a_forty_mm_drill_takes_the_power_of_its_two_lips() -> None:
    # HT 26: 800 rev/min, 0.3 mm/rev, 2000 N/mm², efficiency 0.72; computed 13.96 kW.
    torque = drilling_torque(specific_force=2000.0, feed=0.3, diameter=40.0, pilot_diameter=0.0)
    power = power_from_torque(torque=torque, speed=800.0)
    assert power / 0.72 / 1000.0 == pytest.approx(13.96, abs=0.005)


def test_a_textbooks_chisel_edge_and_thrust_lie_inside_the_band() -> None:
    # GM 4.14: 20 mm, 0.25 mm/rev, printed M = 0.6 F D = 18.2 N·m, F of one lip, and 1500 N.
    # Lips alone have an arm of 0.5 D between them: the rest is the chisel edge.
    one_lip = 18.2 / (0.6 * 20.0 / 1000.0)
    kc = 2.0 * one_lip / lip_force(
        specific_force=1.0, feed=0.25, diameter=20.0, pilot_diameter=0.0
    )  # fmt: skip
    cut = {"specific_force": kc, "feed": 0.25, "diameter": 20.0, "pilot_diameter": 0.0}
    data = load_drilling()
    low, high = 1.0 - data.band_low.value, 1.0 + data.band_high.value
    assert 18.2 / drilling_torque(**cut) == pytest.approx(1.2)
    assert low <= 1500.0 / drilling_thrust(**cut) <= high


def test_the_torque_is_the_lip_force_at_the_mean_diameter() -> None:
    # TBM: Pc = z Fc vc / 2, each lip at half of the surface speed.
    cut = {"specific_force": 2000.0, "feed": 0.2, "diameter": 12.0, "pilot_diameter": 5.0}
    at_the_middle = cutting_torque(force=lip_force(**cut), diameter=8.5)
    assert drilling_torque(**cut) == pytest.approx(at_the_middle)
    assert np.isclose(at_the_middle, 2000.0 * 0.2 * (144.0 - 25.0) / 8000.0)
