"""M. P. Groover, Fundamentals of Modern Manufacturing: Materials, Processes, and Systems.

Example 20.4, table 20.2 and figure 20.14 [GROO5]; problems 15.3, 21.18-21.27 and 22.1-22.11
with the answers of the solutions manual [GROOS]. By number only.

Left out: 15.1, the shear half of 15.3 and 21.14 (shear plane); 23.1, 23.5, 23.7 (in the tests
of tool life); 21.13, 21.26, 21.30, 23.2, 23.6 (print and data disagree).
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
import pytest

from chartgen.physics.cutting import (
    cutting_power,
    force_from_unit_energy,
    power_from_unit_energy,
)
from chartgen.physics.kinematics import cutting_speed, feed_rate, removal_rate, spindle_speed
from chartgen.physics.time import (
    plunge_time,
    plunge_time_at_constant_cutting_speed,
    turning_time,
)
from chartgen.quantities import Numeric

Convert = Callable[[Numeric, str, str], float]

INCH = 25.4
FOOT_IN_METRES = 0.3048
CUBIC_INCH = INCH**3


@dataclass(frozen=True, slots=True, kw_only=True)
class PowerExample:
    """Turning power by unit energy, with printed watts at the edge and at the motor."""

    place: str
    speed: float  # m/min
    feed: float  # mm/rev
    depth: float  # mm
    unit_energy: float  # J/mm³
    size_factor: float
    efficiency: float
    at_edge: float  # W
    at_motor: float  # W
    tolerances: tuple[float, float]  # W, half a unit of each printed answer


POWER_EXAMPLES = (
    PowerExample(
        place="21.18 stainless at 0.25 mm",
        speed=200.0,
        feed=0.25,
        depth=7.5,
        unit_energy=2.8,
        size_factor=1.0,
        efficiency=0.9,
        at_edge=17_500.0,
        at_motor=19_440.0,
        tolerances=(50.0, 5.0),
    ),
    PowerExample(
        place="21.19 stainless at 0.5 mm",
        speed=200.0,
        feed=0.5,
        depth=7.5,
        unit_energy=2.8,
        size_factor=0.85,
        efficiency=0.9,
        at_edge=29_750.0,
        at_motor=33_060.0,
        tolerances=(5.0, 5.0),
    ),
    PowerExample(
        place="21.27 aluminium",
        speed=5.6 * 60.0,
        feed=0.25,
        depth=2.0,
        unit_energy=0.7,
        size_factor=1.0,
        efficiency=0.85,
        at_edge=1960.0,
        at_motor=2306.0,
        tolerances=(0.5, 0.5),
    ),
)


@pytest.mark.parametrize("example", POWER_EXAMPLES, ids=[e.place for e in POWER_EXAMPLES])
def test_power_by_unit_energy_is_the_printed_one_both_ways(example: PowerExample) -> None:
    rate = removal_rate(width=example.depth, feed=example.feed, cutting_speed=example.speed)
    by_volume = power_from_unit_energy(
        removal_rate=rate, unit_energy=example.unit_energy * example.size_factor
    )
    force = force_from_unit_energy(
        width=example.depth,
        feed=example.feed,
        unit_energy=example.unit_energy,
        size_factor=example.size_factor,
    )
    by_force = cutting_power(force=force, cutting_speed=example.speed)
    edge, motor = example.tolerances
    for power in (by_volume, by_force):
        assert power == pytest.approx(example.at_edge, abs=edge)
        assert power / example.efficiency == pytest.approx(example.at_motor, abs=motor)


def test_problem_21_20_horsepower_in_aluminium(convert: Convert) -> None:
    # 900 ft/min, 0.020 in/rev, depth 0.25 in, 0.25 hp per in³/min, factor 0.9, E 0.87.
    # Printed 12.2 and 14.0 hp. Exact 12.15 is the half itself: 0.001 hp more than half a unit.
    rate = removal_rate(width=0.25 * INCH, feed=0.020 * INCH, cutting_speed=900.0 * FOOT_IN_METRES)
    energy = convert(0.25 * 0.9, "hp/(inch**3/min)", "J/mm**3")
    horsepower = convert(power_from_unit_energy(removal_rate=rate, unit_energy=energy), "W", "hp")
    assert horsepower == pytest.approx(12.2, abs=0.051)
    assert horsepower / 0.87 == pytest.approx(14.0, abs=0.05)


def test_example_20_4_power_and_energy_of_a_square_cut() -> None:
    # 1557 N at 100 m/min, chip 0.5 x 3.0 mm; printed 2595 W and 1.038 J/mm³,
    # whose half unit is 0.05 %.
    power = cutting_power(force=1557.0, cutting_speed=100.0)
    assert power == pytest.approx(2595.0, abs=0.5)
    rate = removal_rate(width=3.0, feed=0.5, cutting_speed=100.0)
    assert power_from_unit_energy(removal_rate=rate, unit_energy=1.038) == pytest.approx(
        2595.0, rel=0.0005 / 1.038
    )


def test_problem_21_23_horsepower_removal_and_unit_power(convert: Convert) -> None:
    # 155 lb at 200 ft/min, 0.012 in/rev, depth 0.100 in.
    v = 200.0 * FOOT_IN_METRES
    watts = cutting_power(force=convert(155.0, "lbf", "N"), cutting_speed=v)
    assert convert(watts, "W", "hp") == pytest.approx(0.94, abs=0.005)
    rate = removal_rate(width=0.100 * INCH, feed=0.012 * INCH, cutting_speed=v)
    assert rate / CUBIC_INCH == pytest.approx(2.88, abs=0.005)
    energy = convert(0.326, "hp/(inch**3/min)", "J/mm**3")
    by_volume = power_from_unit_energy(removal_rate=rate, unit_energy=energy)
    # Half a unit of 0.326 hp per in³/min.
    assert by_volume == pytest.approx(watts, rel=0.0005 / 0.326)


def test_problem_15_3_removal_rate() -> None:
    # 1.8 m/s, 0.30 mm/rev, depth 2.6 mm; printed 1404 mm³/s.
    rate = removal_rate(width=2.6, feed=0.30, cutting_speed=1.8 * 60.0)
    assert rate / 60.0 == pytest.approx(1404.0, abs=0.5)


def test_problem_22_1_time_and_removal_of_a_long_pass() -> None:
    # 200 mm bar, 700 mm long, 2.30 m/s, 0.32 mm/rev, depth 1.80 mm.
    v = 2.30 * 60.0
    n = spindle_speed(cutting_speed=v, diameter=200.0)
    assert turning_time(length=700.0, feed=0.32, spindle_speed=n) == pytest.approx(9.96, abs=0.005)
    rate = removal_rate(width=1.80, feed=0.32, cutting_speed=v)
    assert rate / 60.0 == pytest.approx(1320.0, abs=5.0)  # printed to three digits


def test_problem_22_2_speed_that_a_five_minute_pass_needs() -> None:
    # 400 mm long, 150 mm bar, 0.30 mm/rev; the printed speed makes the pass take 5.0 min.
    n = spindle_speed(cutting_speed=125.7, diameter=150.0)
    # Half a unit of 125.7 m/min, 0.04 %, is 0.002 min.
    assert turning_time(length=400.0, feed=0.30, spindle_speed=n) == pytest.approx(5.0, abs=0.002)


def test_problem_22_3_facing_at_constant_spindle_speed() -> None:
    # 6 in bar to the centre, 180 rev/min, 0.008 in/rev.
    feed = 0.008 * INCH
    assert feed_rate(feed=feed, spindle_speed=180.0) / INCH == pytest.approx(1.44, abs=0.005)
    minutes = plunge_time(
        outer_diameter=6.0 * INCH, inner_diameter=0.0, feed=feed, spindle_speed=180.0
    )
    assert minutes == pytest.approx(2.083, abs=0.0005)


def test_problem_22_8_facing_a_ring() -> None:
    # 38 in to 24 in, 40 rev/min, 0.015 in/rev, depth 0.18 in.
    feed = 0.015 * INCH
    assert feed_rate(feed=feed, spindle_speed=40.0) / INCH == pytest.approx(0.60, abs=0.005)
    minutes = plunge_time(
        outer_diameter=38.0 * INCH, inner_diameter=24.0 * INCH, feed=feed, spindle_speed=40.0
    )
    assert minutes == pytest.approx(11.67, abs=0.005)


@pytest.mark.parametrize(
    ("inches", "feet_per_minute", "cubic_inches_per_minute"),
    [
        pytest.param(38.0, 398.0, 12.89, id="22.8 outside"),
        pytest.param(24.0, 251.0, 8.14, id="22.8 inside"),
    ],
)
def test_problem_22_8_speed_and_removal_fall_with_the_diameter(
    inches: float, feet_per_minute: float, cubic_inches_per_minute: float
) -> None:
    v = cutting_speed(spindle_speed=40.0, diameter=inches * INCH)
    assert v / FOOT_IN_METRES == pytest.approx(feet_per_minute, abs=0.5)
    rate = removal_rate(width=0.18 * INCH, feed=0.015 * INCH, cutting_speed=v)
    assert rate / CUBIC_INCH == pytest.approx(cubic_inches_per_minute, abs=0.005)


def test_problem_22_4_taper_at_constant_cutting_speed() -> None:
    # 100 mm to 200 mm over 750 mm, 200 m/min, 0.25 mm/rev along the slant of the cone.
    # A slanted pass is a plunge of the same rings stretched by slant over depth on the radius.
    slant = np.hypot(750.0, 50.0)
    plunge = plunge_time_at_constant_cutting_speed(
        outer_diameter=200.0, inner_diameter=100.0, feed=0.25, cutting_speed=200.0
    )
    assert plunge * slant / 50.0 == pytest.approx(7.084, abs=0.0005)
    small, large = (spindle_speed(cutting_speed=200.0, diameter=d) for d in (100.0, 200.0))
    assert small == pytest.approx(636.6, abs=0.05)
    assert large == pytest.approx(318.3, abs=0.05)


def test_problem_22_5_fixed_speed_that_takes_the_same_time() -> None:
    # The print takes the length of the axis, 750 mm, here, not the slant.
    minutes = turning_time(length=750.0, feed=0.25, spindle_speed=423.5)
    assert minutes == pytest.approx(7.084, abs=0.001)  # half a unit of 423.5 rev/min


def test_problem_22_6_depth_feed_speed_and_time() -> None:
    # 4.5 in to 4.25 in, 46 in long, 450 ft/min, 6.75 in³/min; answers 0.125 in, 0.010 in/rev.
    v = 450.0 * FOOT_IN_METRES
    rate = removal_rate(width=0.125 * INCH, feed=0.010 * INCH, cutting_speed=v)
    assert rate / CUBIC_INCH == pytest.approx(6.75, abs=0.005)
    n = spindle_speed(cutting_speed=v, diameter=4.5 * INCH)
    assert n == pytest.approx(382.0, abs=0.5)
    minutes = turning_time(length=46.0 * INCH, feed=0.010 * INCH, spindle_speed=n)
    assert minutes == pytest.approx(12.04, abs=0.005)
