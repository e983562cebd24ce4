"""Laws of holding that no chuck may break: monotony, inverses, arrays against floats."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen.physics.grip import (
    centrifugal_force,
    grip_at_speed,
    grip_from_key_torque,
    jaw_moment_from_loss,
)
from chartgen.physics.holding import (
    grip_against_tilt,
    grip_for_cut,
    largest_cutting_force,
    largest_side_force,
    permitted_speed,
    static_grip_for_cut,
)
from chartgen.quantities import Numeric

grips = st.floats(500.0, 60_000.0)
moments = st.floats(0.005, 3.0)
spindles = st.floats(0.0, 5000.0)
frictions = st.floats(0.05, 0.5)
reserves = st.floats(1.0, 5.0)
diameters = st.floats(3.0, 200.0)
forces = st.floats(10.0, 10_000.0)


def allowed(
    static_grip: Numeric, speed: Numeric, moment: float = 0.03, friction: float = 0.1
) -> Numeric:
    """Return the allowed force at first contact, with the reserves of a hard limit."""
    return largest_cutting_force(
        static_grip=static_grip,
        centrifugal_force=centrifugal_force(jaw_moment=moment, spindle_speed=speed),
        friction=friction,
        grip_safety=1.5,
        cut_safety=1.2,
        cut_diameter=25.0,
        clamping_diameter=25.0,
    )


def test_the_hard_limit_of_a_parting_cut() -> None:
    # μ (F0 / 1.5 - F_c) / 1.2, by hand: 0.1 (12 000 / 1.5 - 2000) / 1.2 = 500 N.
    force = largest_cutting_force(
        static_grip=12_000.0,
        centrifugal_force=2000.0,
        friction=0.1,
        grip_safety=1.5,
        cut_safety=1.2,
        cut_diameter=25.0,
        clamping_diameter=25.0,
    )
    assert force == pytest.approx(500.0)


@given(grip=grips, more=st.floats(1.0, 3.0), n=spindles, moment=moments)
def test_more_grip_never_lowers_the_allowed_force(
    grip: float, more: float, n: float, moment: float
) -> None:
    assert allowed(more * grip, n, moment) >= allowed(grip, n, moment)


@given(grip=grips, n=spindles, faster=st.floats(1.0, 3.0), moment=moments)
def test_more_speed_never_raises_grip_or_the_allowed_force(
    grip: float, n: float, faster: float, moment: float
) -> None:
    slow, fast = (
        grip_at_speed(
            static_grip=grip,
            centrifugal_force=centrifugal_force(jaw_moment=moment, spindle_speed=speed),
        )
        for speed in (n, faster * n)
    )
    assert 0.0 <= fast <= slow <= grip
    assert 0.0 <= allowed(grip, faster * n, moment) <= allowed(grip, n, moment)


@given(
    force=forces,
    mu=frictions,
    cut_safety=reserves,
    grip_safety=reserves,
    d=diameters,
    held=diameters,
    moment=moments,
    n=spindles,
)
def test_the_grip_set_for_a_cut_allows_just_that_cut_at_that_speed(
    force: float,
    mu: float,
    cut_safety: float,
    grip_safety: float,
    d: float,
    held: float,
    moment: float,
    n: float,
) -> None:
    thrown = centrifugal_force(jaw_moment=moment, spindle_speed=n)
    needed = grip_for_cut(
        cutting_force=force,
        friction=mu,
        cut_safety=cut_safety,
        cut_diameter=d,
        clamping_diameter=held,
    )
    static = static_grip_for_cut(
        grip_for_cut=needed, centrifugal_force=thrown, grip_safety=grip_safety
    )
    back = largest_cutting_force(
        static_grip=static,
        centrifugal_force=thrown,
        friction=mu,
        grip_safety=grip_safety,
        cut_safety=cut_safety,
        cut_diameter=d,
        clamping_diameter=held,
    )
    # A small need beside a large centrifugal force is a difference of large numbers.
    rounding = float(1e-12 * mu * static * held / d)
    assert back == pytest.approx(force, rel=1e-9, abs=rounding)
    speed = permitted_speed(
        static_grip=static, grip_for_cut=needed, jaw_moment=moment, grip_safety=grip_safety
    )
    assert centrifugal_force(jaw_moment=moment, spindle_speed=speed) == pytest.approx(
        thrown, rel=1e-9, abs=float(1e-9 * needed)
    )


@given(grip=grips, short=st.floats(1.0, 3.0), safety=reserves)
def test_no_speed_is_permitted_where_the_grip_does_not_do_at_standstill(
    grip: float, short: float, safety: float
) -> None:
    speed = permitted_speed(
        static_grip=grip,
        grip_for_cut=short * grip / safety,
        jaw_moment=0.05,
        grip_safety=safety,
    )
    assert speed == pytest.approx(0.0, abs=1e-3)


@given(grip=grips, share=st.floats(0.1, 1.0), n=st.floats(500.0, 8000.0))
def test_jaws_of_the_moment_from_a_loss_lose_that_share_at_that_speed(
    grip: float, share: float, n: float
) -> None:
    moment = jaw_moment_from_loss(static_grip=grip, lost_share=share, spindle_speed=n)
    lost = centrifugal_force(jaw_moment=moment, spindle_speed=n)
    assert lost == pytest.approx(share * grip)


@given(force=forces, out=st.floats(1.0, 100.0), d=diameters, mu=frictions, safety=reserves)
def test_the_grip_against_tilt_allows_just_that_side_force(
    force: float, out: float, d: float, mu: float, safety: float
) -> None:
    held = grip_against_tilt(
        side_force=force, overhang=out, clamping_diameter=d, friction=mu, cut_safety=safety
    )
    assert held == pytest.approx(4.0 * safety * force * out / (mu * d))
    back = largest_side_force(
        grip=held, overhang=out, clamping_diameter=d, friction=mu, cut_safety=safety
    )
    assert back == pytest.approx(force)


def test_tilt_asks_for_more_than_slip_from_a_quarter_of_the_diameter_out() -> None:
    def tilt(overhang: float) -> Numeric:
        return grip_against_tilt(
            side_force=500.0, overhang=overhang, clamping_diameter=40.0, friction=0.1, cut_safety=2
        )

    slip = grip_for_cut(
        cutting_force=500.0, friction=0.1, cut_safety=2, cut_diameter=40, clamping_diameter=40
    )
    assert tilt(9.9) < slip < tilt(10.1)


def test_arrays_give_what_floats_give() -> None:
    speeds, static = np.array([[0.0], [1000.0], [6000.0]]), np.array([8000.0, 24_000.0])
    table = np.asarray(allowed(static, speeds))
    assert table.shape == (3, 2)
    for (row, column), force in np.ndenumerate(table):
        assert force == allowed(float(static[column]), float(speeds[row, 0]))


def test_grip_is_in_proportion_to_the_torque_on_the_key() -> None:
    grip = grip_from_key_torque(key_torque=np.array([0.0, 25.0, 50.0]), grip_per_torque=250.0)
    assert grip == pytest.approx(np.array([0.0, 6250.0, 12_500.0]))
