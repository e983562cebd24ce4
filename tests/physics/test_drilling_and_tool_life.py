"""What drilling, boring and tool life must do whatever the numbers are."""

import math
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen.physics.boring import boring_bar_deflection, overhang_ratio, resultant_force
from chartgen.physics.drilling import (
    drill_chip_thickness,
    drilling_thrust,
    drilling_torque,
    grip_for_drilling,
    peck_depths,
    point_height,
)
from chartgen.physics.holding import grip_for_cut, static_grip_for_cut
from chartgen.physics.tool_life import cutting_speed_for_life, tool_life

diameters = st.floats(1.0, 25.0)
feeds = st.floats(0.01, 0.4)
pilots = st.floats(0.0, 0.9)


@given(f=feeds, d=diameters, pilot=pilots)
def test_a_pilot_and_the_drill_after_it_share_what_one_drill_takes(
    f: float, d: float, pilot: float
) -> None:
    # Rings add up: 0 to d, then d to D, is 0 to D, for torque as for thrust.
    small = d * pilot
    for formula in (drilling_torque, drilling_thrust):
        first = formula(specific_force=2000.0, feed=f, diameter=small, pilot_diameter=0.0)
        then = formula(specific_force=2000.0, feed=f, diameter=d, pilot_diameter=small)
        whole = formula(specific_force=2000.0, feed=f, diameter=d, pilot_diameter=0.0)
        assert first + then == pytest.approx(whole)


def test_a_drill_the_size_of_its_hole_takes_nothing() -> None:
    cut = {"specific_force": 2000.0, "feed": 0.1, "diameter": 8.0, "pilot_diameter": 8.0}
    assert drilling_torque(**cut) == 0.0
    assert drilling_thrust(**cut) == 0.0


def test_a_pointed_drill_stands_out_further_and_cuts_thinner() -> None:
    blunt, pointed = (point_height(diameter=10.0, point_angle=a) for a in (135.0, 118.0))
    assert pointed > blunt > 0.0
    thick, thin = (drill_chip_thickness(feed=0.2, point_angle=a) for a in (135.0, 118.0))
    assert 0.0 < thin < thick < 0.1


def test_a_right_angled_point_is_as_high_as_its_radius() -> None:
    assert point_height(diameter=10.0, point_angle=90.0) == pytest.approx(5.0)
    assert drill_chip_thickness(feed=0.2, point_angle=90.0) == pytest.approx(0.1 / math.sqrt(2.0))


def test_without_thrust_a_drill_is_held_like_any_cut_of_its_torque() -> None:
    # 4 N·m are 800 N at the 10 mm of the drill.
    drilled = grip_for_drilling(
        torque=4.0, thrust=0.0, clamping_diameter=25.0, friction=0.1, cut_safety=1.5
    )
    turned = grip_for_cut(
        cutting_force=800.0, friction=0.1, cut_safety=1.5, cut_diameter=10.0, clamping_diameter=25.0
    )
    assert drilled == pytest.approx(turned)


def test_thrust_without_a_seat_asks_for_more_grip_and_without_torque_for_its_own() -> None:
    held = {"clamping_diameter": 25.0, "friction": 0.1, "cut_safety": 1.0}
    both = grip_for_drilling(torque=4.0, thrust=2000.0, **held)
    assert both > grip_for_drilling(torque=4.0, thrust=0.0, **held)
    assert grip_for_drilling(torque=0.0, thrust=2000.0, **held) == pytest.approx(20_000.0)
    static = static_grip_for_cut(grip_for_cut=both, centrifugal_force=0.0, grip_safety=1.5)
    assert static == pytest.approx(1.5 * both)


@given(
    depth=st.floats(0.1, 200.0),
    d=diameters,
    first=st.floats(0.5, 5.0),
    step=st.floats(0.25, 2.0),
)
def test_pecks_rise_to_the_depth_and_none_is_deeper_than_its_ratio(
    depth: float, d: float, first: float, step: float
) -> None:
    depths = peck_depths(depth=depth, diameter=d, first_ratio=first, next_ratio=step)
    assert depths[-1] == depth
    assert 0.0 < depths[0] <= first * d * (1.0 + 1e-9)
    for shallow, deep in pairwise(depths):
        assert 0.0 < deep - shallow <= step * d * (1.0 + 1e-6)
    # As few as that allows.
    fewest = 1 + max(0, math.ceil((depth - first * d) / (step * d) - 1e-6))
    assert len(depths) == fewest


@pytest.mark.parametrize(
    ("depth", "pecks"),
    [
        (0.0, ()),
        (12.0, (12.0,)),
        (18.0, (18.0,)),
        (30.0, (18.0, 24.0, 30.0)),
        (32.0, (18.0, 24.0, 30.0, 32.0)),
    ],
)
def test_a_six_mm_drill_goes_three_diameters_then_one_each(
    depth: float, pecks: tuple[float, ...]
) -> None:
    assert peck_depths(depth=depth, diameter=6.0, first_ratio=3.0, next_ratio=1.0) == pecks


def test_a_bar_twice_as_far_out_bends_eight_times_as_far() -> None:
    near, far = (
        boring_bar_deflection(force=100.0, overhang=L, elastic_modulus=206e3, diameter=10.0)
        for L in (30.0, 60.0)
    )
    assert far == pytest.approx(8.0 * near)
    assert overhang_ratio(overhang=40.0, diameter=10.0) == pytest.approx(4.0)


def test_side_force_adds_at_a_right_angle() -> None:
    assert resultant_force(force=400.0, radial_share=0.75) == pytest.approx(500.0)
    assert resultant_force(force=400.0, radial_share=0.0) == pytest.approx(400.0)


@given(v=st.floats(5.0, 300.0), n=st.floats(0.1, 0.6))
def test_life_falls_with_speed_is_a_minute_at_the_constant_and_leads_back(
    v: float, n: float
) -> None:
    life = tool_life(cutting_speed=v, constant=200.0, exponent=n)
    assert cutting_speed_for_life(life=life, constant=200.0, exponent=n) == pytest.approx(v)
    assert tool_life(cutting_speed=1.01 * v, constant=200.0, exponent=n) < life
    assert tool_life(cutting_speed=200.0, constant=200.0, exponent=n) == pytest.approx(1.0)


def test_arrays_pass_through() -> None:
    d = np.array([4.0, 8.0])
    torque = drilling_torque(specific_force=2000.0, feed=0.1, diameter=d, pilot_diameter=0.0)
    assert torque[1] == pytest.approx(4.0 * torque[0])
