"""Laws that hold for any cut, tried on many: inverses, monotony, arrays against floats."""

from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen.physics.cutting import (
    cutting_force,
    cutting_power,
    cutting_torque,
    feed_for_force,
    force_from_torque,
    force_from_unit_energy,
    power_from_unit_energy,
    specific_cutting_force,
)
from chartgen.physics.kinematics import (
    cutting_speed,
    feed_rate,
    removal_rate,
    seconds_per_turn,
    spindle_speed,
)
from chartgen.physics.motor import (
    brushless_torque_ratio,
    direct_current_torque_ratio,
    inverter_torque_ratio,
    measured_torque,
    power_from_torque,
    torque_from_power,
)
from chartgen.physics.self_cooling import (
    cautious_share,
    full_at_base_speed,
    full_from_half_speed,
    none_under_half_speed,
)
from chartgen.physics.time import (
    plunge_time,
    plunge_time_at_constant_cutting_speed,
    turning_time,
)
from chartgen.quantities import Numeric

widths = st.floats(1.0, 6.0)
feeds = st.floats(0.01, 1.0)
specific_forces = st.floats(400.0, 4000.0)
exponents = st.floats(0.0, 0.5)
diameters = st.floats(2.0, 300.0)
speeds = st.floats(5.0, 500.0)
spindles = st.floats(20.0, 4000.0)


@given(b=widths, h=feeds, kc=specific_forces, mc=exponents)
def test_the_feed_for_the_force_of_a_feed_is_that_feed(
    b: float, h: float, kc: float, mc: float
) -> None:
    force = cutting_force(width=b, feed=h, specific_force=kc, thickness_exponent=mc)
    back = feed_for_force(force=force, width=b, specific_force=kc, thickness_exponent=mc)
    assert back == pytest.approx(h, rel=1e-9)


@given(b=widths, h=feeds, kc=specific_forces, mc=exponents)
def test_force_is_specific_force_times_the_area_of_the_chip(
    b: float, h: float, kc: float, mc: float
) -> None:
    force = cutting_force(width=b, feed=h, specific_force=kc, thickness_exponent=mc)
    per_area = specific_cutting_force(feed=h, specific_force=kc, thickness_exponent=mc)
    assert force == pytest.approx(per_area * b * h, rel=1e-12)


@given(h=feeds, more=st.floats(1.001, 3.0), kc=specific_forces, mc=exponents, v=speeds)
def test_power_rises_with_feed_but_never_faster_than_it(
    h: float, more: float, kc: float, mc: float, v: float
) -> None:
    thin, thick = (
        cutting_power(
            force=cutting_force(width=2.0, feed=f, specific_force=kc, thickness_exponent=mc),
            cutting_speed=v,
        )
        for f in (h, more * h)
    )
    assert thin < thick <= more * thin * (1.0 + 1e-12)


@given(v=speeds, d=diameters, times=st.floats(0.1, 10.0))
def test_spindle_speed_times_diameter_is_constant_at_one_surface_speed(
    v: float, d: float, times: float
) -> None:
    here = spindle_speed(cutting_speed=v, diameter=d)
    there = spindle_speed(cutting_speed=v, diameter=times * d)
    assert there * times * d == pytest.approx(here * d, rel=1e-12)


@given(v=speeds, d=diameters)
def test_the_surface_speed_of_the_spindle_speed_is_the_one_asked_for(v: float, d: float) -> None:
    n = spindle_speed(cutting_speed=v, diameter=d)
    assert cutting_speed(spindle_speed=n, diameter=d) == pytest.approx(v, rel=1e-12)


@given(d=diameters, f=feeds, v=speeds)
def test_a_solid_plunge_at_constant_surface_speed_takes_half_the_time(
    d: float, f: float, v: float
) -> None:
    n = spindle_speed(cutting_speed=v, diameter=d)
    fixed = plunge_time(outer_diameter=d, inner_diameter=0.0, feed=f, spindle_speed=n)
    rising = plunge_time_at_constant_cutting_speed(
        outer_diameter=d, inner_diameter=0.0, feed=f, cutting_speed=v
    )
    assert rising == pytest.approx(fixed / 2.0, rel=1e-12)


@given(d=diameters, waist=st.floats(0.01, 0.99), f=feeds, n=spindles)
def test_a_plunge_can_be_stopped_and_taken_up_again(
    d: float, waist: float, f: float, n: float
) -> None:
    def between(outer: float, inner: float) -> Numeric:
        return plunge_time(outer_diameter=outer, inner_diameter=inner, feed=f, spindle_speed=n)

    assert between(d, waist * d) + between(waist * d, 0.0) == pytest.approx(between(d, 0.0))


@given(force=st.floats(1.0, 10_000.0), d=diameters, n=spindles)
def test_power_by_surface_speed_is_power_by_torque(force: float, d: float, n: float) -> None:
    by_surface = cutting_power(
        force=force, cutting_speed=cutting_speed(spindle_speed=n, diameter=d)
    )
    torque = cutting_torque(force=force, diameter=d)
    assert power_from_torque(torque=torque, speed=n) == pytest.approx(by_surface, rel=1e-12)
    assert torque_from_power(power=by_surface, speed=n) == pytest.approx(torque, rel=1e-12)
    assert force_from_torque(torque=torque, diameter=d) == pytest.approx(force, rel=1e-12)


# Each formula as a function of one argument, the others fixed: a float argument tried
# against an array of the same numbers.
OF_ONE_ARGUMENT: dict[str, Callable[[Numeric], Numeric]] = {
    "specific_cutting_force": lambda x: specific_cutting_force(
        feed=x, specific_force=1780.0, thickness_exponent=0.17
    ),
    "cutting_force": lambda x: cutting_force(
        width=2.0, feed=x, specific_force=1780.0, thickness_exponent=0.17
    ),
    "feed_for_force": lambda x: feed_for_force(
        force=x, width=2.0, specific_force=1780.0, thickness_exponent=0.17
    ),
    "cutting_power": lambda x: cutting_power(force=300.0, cutting_speed=x),
    "cutting_torque": lambda x: cutting_torque(force=300.0, diameter=x),
    "force_from_torque": lambda x: force_from_torque(torque=12.0, diameter=x),
    "force_from_unit_energy": lambda x: force_from_unit_energy(
        width=2.0, feed=x, unit_energy=1.9, size_factor=1.2
    ),
    "power_from_unit_energy": lambda x: power_from_unit_energy(removal_rate=x, unit_energy=1.9),
    "spindle_speed": lambda x: spindle_speed(cutting_speed=60.0, diameter=x),
    "cutting_speed": lambda x: cutting_speed(spindle_speed=800.0, diameter=x),
    "feed_rate": lambda x: feed_rate(feed=0.05, spindle_speed=x),
    "seconds_per_turn": lambda x: seconds_per_turn(feed_rate=x, travel_per_turn=2.0),
    "removal_rate": lambda x: removal_rate(width=2.0, feed=0.05, cutting_speed=x),
    "torque_from_power": lambda x: torque_from_power(power=550.0, speed=x),
    "power_from_torque": lambda x: power_from_torque(torque=5.0, speed=x),
    "full_from_half_speed": lambda x: full_from_half_speed(speed_ratio=x),
    "none_under_half_speed": lambda x: none_under_half_speed(speed_ratio=x),
    "full_at_base_speed": lambda x: full_at_base_speed(speed_ratio=x),
    "cautious_share": lambda x: cautious_share(speed_ratio=x),
    "inverter_torque_ratio": lambda x: inverter_torque_ratio(
        speed_ratio=x, hold_ratio=1.5, breakdown_ratio=2.5, pull_out_share=0.75
    ),
    "direct_current_torque_ratio": lambda x: direct_current_torque_ratio(
        speed_ratio=x, hold_ratio=1.3, no_load_ratio=1.2
    ),
    "brushless_torque_ratio, constant power": lambda x: brushless_torque_ratio(
        speed_ratio=x, hold_ratio=1.5, top_ratio=2.0, straight_fall=False
    ),
    "brushless_torque_ratio, straight fall": lambda x: brushless_torque_ratio(
        speed_ratio=x, hold_ratio=1.5, top_ratio=2.0, straight_fall=True
    ),
    "measured_torque": lambda x: measured_torque(
        speed=x,
        measured_speeds=np.array([0.0, 1.0, 5.0]),
        measured_torques=np.array([12.0, 11.0, 6.0]),
    ),
    "plunge_time": lambda x: plunge_time(
        outer_diameter=x, inner_diameter=0.0, feed=0.05, spindle_speed=800.0
    ),
    "plunge_time_at_constant_cutting_speed": lambda x: plunge_time_at_constant_cutting_speed(
        outer_diameter=x, inner_diameter=0.0, feed=0.05, cutting_speed=60.0
    ),
    "turning_time": lambda x: turning_time(length=x, feed=0.05, spindle_speed=800.0),
}


@pytest.mark.parametrize("formula", OF_ONE_ARGUMENT.values(), ids=OF_ONE_ARGUMENT.keys())
@given(numbers=st.lists(st.floats(0.01, 5.0), min_size=1, max_size=6))
def test_an_array_gives_what_its_numbers_give_one_by_one(
    formula: Callable[[Numeric], Numeric], numbers: list[float]
) -> None:
    at_once = formula(np.array(numbers))
    assert isinstance(at_once, np.ndarray)
    assert at_once.shape == (len(numbers),)
    # Powers of arrays and of floats may differ in the last bit.
    assert at_once == pytest.approx(np.array([formula(x) for x in numbers]), rel=1e-14)
