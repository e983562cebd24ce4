"""Every dimensionally exact formula of the physics against pint, unit by unit.

The oracle states each law in its coherent form (v = ω r, P = T ω, F = U b h, ...) and lets
pint convert. An angle is a plain number there, so a speed in rev/min is an angular velocity,
and a feed in mm/turn times turns a minute is a feed rate.
Left out, as they own their units: the power law of chip thickness and the motor curves.
"""

from typing import Any

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen.physics.cutting import (
    cutting_power,
    cutting_torque,
    force_from_torque,
    force_from_unit_energy,
    power_from_unit_energy,
)
from chartgen.physics.kinematics import (
    cutting_speed,
    feed_rate,
    removal_rate,
    seconds_per_turn,
    spindle_speed,
)
from chartgen.physics.motor import power_from_torque, torque_from_power
from chartgen.physics.time import (
    plunge_time,
    plunge_time_at_constant_cutting_speed,
    turning_time,
)

REGISTRY: "pint.UnitRegistry[Any]" = pint.UnitRegistry()


def held(value: float, unit: str) -> Any:  # noqa: ANN401  pint's quantity is generic in its number
    """Return `value` as a quantity of `unit`."""
    return REGISTRY.Quantity(value, unit)


def agree(computed: object, oracle: Any, unit: str) -> bool:  # noqa: ANN401  as above
    """Return whether the formula's number is the oracle's, in the unit its annotation names."""
    return bool(computed == pytest.approx(oracle.to(unit).magnitude, rel=1e-9))


lengths = st.floats(0.1, 500.0)
feeds = st.floats(0.005, 1.0)
spindles = st.floats(10.0, 5000.0)
speeds = st.floats(1.0, 500.0)
forces = st.floats(0.1, 20_000.0)
torques = st.floats(0.01, 500.0)
powers = st.floats(1.0, 20_000.0)
energies = st.floats(0.1, 10.0)


@given(v=speeds, d=lengths)
def test_spindle_speed(v: float, d: float) -> None:
    oracle = held(v, "m/min") / (held(d, "mm") / 2.0)
    assert agree(spindle_speed(cutting_speed=v, diameter=d), oracle, "turn/min")


@given(n=spindles, d=lengths)
def test_cutting_speed(n: float, d: float) -> None:
    oracle = held(n, "turn/min") * held(d, "mm") / 2.0
    assert agree(cutting_speed(spindle_speed=n, diameter=d), oracle, "m/min")


@given(f=feeds, n=spindles)
def test_feed_rate(f: float, n: float) -> None:
    oracle = held(f, "mm/turn") * held(n, "turn/min")
    assert agree(feed_rate(feed=f, spindle_speed=n), oracle, "mm/min")


@given(pace=st.floats(0.1, 1000.0), travel=st.floats(0.1, 10.0))
def test_seconds_per_turn(pace: float, travel: float) -> None:
    oracle = held(travel, "mm") / held(pace, "mm/min")
    assert agree(seconds_per_turn(feed_rate=pace, travel_per_turn=travel), oracle, "s")


@given(b=lengths, f=feeds, v=speeds)
def test_removal_rate(b: float, f: float, v: float) -> None:
    oracle = held(b, "mm") * held(f, "mm") * held(v, "m/min")
    assert agree(removal_rate(width=b, feed=f, cutting_speed=v), oracle, "mm**3/min")


@given(force=forces, v=speeds)
def test_cutting_power(force: float, v: float) -> None:
    oracle = held(force, "N") * held(v, "m/min")
    assert agree(cutting_power(force=force, cutting_speed=v), oracle, "W")


@given(force=forces, d=lengths)
def test_cutting_torque(force: float, d: float) -> None:
    oracle = held(force, "N") * held(d, "mm") / 2.0
    assert agree(cutting_torque(force=force, diameter=d), oracle, "N*m")


@given(torque=torques, d=lengths)
def test_force_from_torque(torque: float, d: float) -> None:
    oracle = held(torque, "N*m") / (held(d, "mm") / 2.0)
    assert agree(force_from_torque(torque=torque, diameter=d), oracle, "N")


@given(b=lengths, f=feeds, u=energies, c=st.floats(0.5, 2.0))
def test_force_from_unit_energy(b: float, f: float, u: float, c: float) -> None:
    oracle = held(u, "J/mm**3") * c * held(b, "mm") * held(f, "mm")
    computed = force_from_unit_energy(width=b, feed=f, unit_energy=u, size_factor=c)
    assert agree(computed, oracle, "N")


@given(q=st.floats(1.0, 1e6), u=energies)
def test_power_from_unit_energy(q: float, u: float) -> None:
    oracle = held(q, "mm**3/min") * held(u, "J/mm**3")
    assert agree(power_from_unit_energy(removal_rate=q, unit_energy=u), oracle, "W")


@given(power=powers, n=spindles)
def test_torque_from_power(power: float, n: float) -> None:
    oracle = held(power, "W") / held(n, "turn/min").to("1/s")
    assert agree(torque_from_power(power=power, speed=n), oracle, "N*m")


@given(torque=torques, n=spindles)
def test_power_from_torque(torque: float, n: float) -> None:
    oracle = held(torque, "N*m") * held(n, "turn/min").to("1/s")
    assert agree(power_from_torque(torque=torque, speed=n), oracle, "W")


@given(outer=st.floats(5.0, 200.0), bore=st.floats(0.0, 0.95), f=feeds, n=spindles)
def test_plunge_time(outer: float, bore: float, f: float, n: float) -> None:
    inner = outer * bore
    depth = (held(outer, "mm") - held(inner, "mm")) / 2.0
    oracle = depth / (held(f, "mm/turn") * held(n, "turn/min"))
    computed = plunge_time(outer_diameter=outer, inner_diameter=inner, feed=f, spindle_speed=n)
    assert agree(computed, oracle, "min")


@given(outer=st.floats(5.0, 200.0), bore=st.floats(0.0, 0.95), f=feeds, v=speeds)
def test_plunge_time_at_constant_cutting_speed(
    outer: float, bore: float, f: float, v: float
) -> None:
    # The spiral that the edge follows is the area of the ring over the feed.
    inner = outer * bore
    area = REGISTRY.pi / 4.0 * (held(outer, "mm") ** 2 - held(inner, "mm") ** 2)
    oracle = area / held(f, "mm") / held(v, "m/min")
    computed = plunge_time_at_constant_cutting_speed(
        outer_diameter=outer, inner_diameter=inner, feed=f, cutting_speed=v
    )
    assert agree(computed, oracle, "min")


@given(length=st.floats(0.1, 2000.0), f=feeds, n=spindles)
def test_turning_time(length: float, f: float, n: float) -> None:
    oracle = held(length, "mm") / (held(f, "mm/turn") * held(n, "turn/min"))
    assert agree(turning_time(length=length, feed=f, spindle_speed=n), oracle, "min")
