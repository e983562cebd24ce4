"""Every dimensionally exact formula of grip, step-up and flywheel against pint.

The oracle states each law in its coherent form and lets pint convert; an angle is a plain
number there, so a speed in turns a minute is an angular velocity.
Left out: ratios without units, and the extra bite, whose power law owns its units.
"""

from typing import Any

import numpy as np
import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen.physics.centre import rubbing_radius, speed_floor_diameter, working_rake
from chartgen.physics.flywheel import (
    referred_inertia,
    ring_inertia,
    ring_mass,
    rotational_energy,
    stopping_time,
    stopping_torque,
    turns_to_stop,
)
from chartgen.physics.grip import (
    centrifugal_force,
    grip_from_key_torque,
    jaw_moment_from_loss,
)
from chartgen.physics.holding import (
    grip_against_tilt,
    grip_for_cut,
    largest_cutting_force,
    largest_side_force,
    permitted_speed,
)
from chartgen.physics.step_up import shortest_plunge_time

REGISTRY: "pint.UnitRegistry[Any]" = pint.UnitRegistry()


def held(value: float, unit: str) -> Any:  # noqa: ANN401  pint's quantity is generic in its number
    """Return `value` as a quantity of `unit`."""
    return REGISTRY.Quantity(value, unit)


def agree(computed: object, oracle: Any, unit: str) -> bool:  # noqa: ANN401  as above
    """Return whether the formula's number is the oracle's, in the unit its annotation names."""
    return bool(computed == pytest.approx(oracle.to(unit).magnitude, rel=1e-9))


lengths = st.floats(1.0, 300.0)
spindles = st.floats(20.0, 5000.0)
moments = st.floats(0.005, 3.0)
forces = st.floats(10.0, 60_000.0)
inertias = st.floats(0.001, 1.0)
torques = st.floats(0.1, 200.0)
frictions = st.floats(0.05, 0.5)
reserves = st.floats(1.0, 5.0)


@given(moment=moments, n=spindles)
def test_centrifugal_force(moment: float, n: float) -> None:
    oracle = held(moment, "kg*m") * held(n, "turn/min").to("1/s") ** 2
    assert agree(centrifugal_force(jaw_moment=moment, spindle_speed=n), oracle, "N")


@given(grip=forces, share=st.floats(0.1, 1.0), n=spindles)
def test_jaw_moment_from_loss(grip: float, share: float, n: float) -> None:
    oracle = share * held(grip, "N") / held(n, "turn/min").to("1/s") ** 2
    computed = jaw_moment_from_loss(static_grip=grip, lost_share=share, spindle_speed=n)
    assert agree(computed, oracle, "kg*m")


@given(torque=torques, ratio=st.floats(100.0, 400.0))
def test_grip_from_key_torque(torque: float, ratio: float) -> None:
    oracle = held(ratio, "N/(N*m)") * held(torque, "N*m")
    assert agree(grip_from_key_torque(key_torque=torque, grip_per_torque=ratio), oracle, "N")


@given(force=forces, mu=frictions, s=reserves, d=lengths, held_at=lengths)
def test_grip_for_cut(force: float, mu: float, s: float, d: float, held_at: float) -> None:
    # The torque of friction balances that of the cut.
    torque = s * held(force, "N") * held(d, "mm") / 2.0
    oracle = torque / (mu * held(held_at, "mm") / 2.0)
    computed = grip_for_cut(
        cutting_force=force, friction=mu, cut_safety=s, cut_diameter=d, clamping_diameter=held_at
    )
    assert agree(computed, oracle, "N")


@given(grip=forces, share=st.floats(0.0, 0.9), mu=frictions, s=reserves, d=lengths, at=lengths)
def test_largest_cutting_force(
    grip: float, share: float, mu: float, s: float, d: float, at: float
) -> None:
    thrown = share * grip / 1.5
    torque = mu * (held(grip, "N") / 1.5 - held(thrown, "N")) * held(at, "mm") / 2.0
    oracle = torque / (held(d, "mm") / 2.0) / s
    computed = largest_cutting_force(
        static_grip=grip,
        centrifugal_force=thrown,
        friction=mu,
        grip_safety=1.5,
        cut_safety=s,
        cut_diameter=d,
        clamping_diameter=at,
    )
    assert agree(computed, oracle, "N")


@given(grip=forces, share=st.floats(0.0, 0.9), moment=moments)
def test_permitted_speed(grip: float, share: float, moment: float) -> None:
    spare = held(grip * (1.0 - share), "N")
    oracle = (spare / held(moment, "kg*m")) ** 0.5
    computed = permitted_speed(
        static_grip=grip, grip_for_cut=share * grip, jaw_moment=moment, grip_safety=1.0
    )
    assert agree(computed, oracle.to("radian/s"), "turn/min")


@given(force=forces, out=lengths, d=lengths, mu=frictions, s=reserves)
def test_grip_against_tilt_and_largest_side_force(
    force: float, out: float, d: float, mu: float, s: float
) -> None:
    # One jaw of three, on an arm of three quarters of the diameter.
    per_jaw = s * held(force, "N") * held(out, "mm") / (0.75 * held(d, "mm")) / mu
    computed = grip_against_tilt(
        side_force=force, overhang=out, clamping_diameter=d, friction=mu, cut_safety=s
    )
    assert agree(computed, 3.0 * per_jaw, "N")
    moment = mu * held(force, "N") / 3.0 * 0.75 * held(d, "mm")
    side = largest_side_force(
        grip=force, overhang=out, clamping_diameter=d, friction=mu, cut_safety=s
    )
    assert agree(side, moment / held(out, "mm") / s, "N")


@given(outer=lengths, bore=st.floats(0.0, 0.95), length=lengths, rho=st.floats(0.9, 19.0))
def test_ring_mass_and_ring_inertia(outer: float, bore: float, length: float, rho: float) -> None:
    inner = bore * outer
    area = REGISTRY.pi * ((held(outer, "mm") / 2.0) ** 2 - (held(inner, "mm") / 2.0) ** 2)
    oracle = held(rho, "g/cm**3") * area * held(length, "mm")
    mass = ring_mass(outer_diameter=outer, inner_diameter=inner, length=length, density=rho)
    assert agree(mass, oracle, "kg")
    radii = (held(outer, "mm") / 2.0) ** 2 + (held(inner, "mm") / 2.0) ** 2
    inertia = ring_inertia(mass=length, outer_diameter=outer, inner_diameter=inner)
    assert agree(inertia, held(length, "kg") * radii / 2.0, "kg*m**2")


@given(rotor=inertias, motor=spindles, spindle=spindles)
def test_referred_inertia(rotor: float, motor: float, spindle: float) -> None:
    ratio = held(motor, "turn/min") / held(spindle, "turn/min")
    oracle = held(rotor, "kg*m**2") * ratio**2
    computed = referred_inertia(rotor_inertia=rotor, speed_ratio=motor / spindle)
    assert agree(computed, oracle, "kg*m**2")


@given(j=inertias, n=spindles)
def test_rotational_energy(j: float, n: float) -> None:
    oracle = held(j, "kg*m**2") * held(n, "turn/min").to("1/s") ** 2 / 2.0
    assert agree(rotational_energy(inertia=j, spindle_speed=n), oracle, "J")


@given(j=inertias, n=spindles, lack=torques)
def test_stopping_time(j: float, n: float, lack: float) -> None:
    oracle = held(j, "kg*m**2") * held(n, "turn/min").to("1/s") / held(lack, "N*m")
    assert agree(stopping_time(inertia=j, spindle_speed=n, torque_deficit=lack), oracle, "s")


@given(j=inertias, n=spindles, lack=torques, drive=torques)
def test_turns_to_stop_and_stopping_torque(j: float, n: float, lack: float, drive: float) -> None:
    energy = held(j, "kg*m**2") * held(n, "turn/min").to("1/s") ** 2 / 2.0
    angle = (energy / held(lack, "N*m")).to("dimensionless") * held(1.0, "radian")
    turns = turns_to_stop(inertia=j, spindle_speed=n, cut_torque=lack, drive_torque=0.0)
    assert agree(turns, angle, "turn")
    torque = held(drive, "N*m") + energy / held(lack, "turn").to("radian").magnitude
    computed = stopping_torque(inertia=j, spindle_speed=n, drive_torque=drive, turns=lack)
    assert agree(computed, torque, "N*m")


@given(outer=lengths, v=st.floats(10.0, 300.0), share=st.floats(0.01, 1.0))
def test_speed_floor_diameter(outer: float, v: float, share: float) -> None:
    # The spindle speed is the same at both diameters.
    spindle = held(v, "m/min") / (held(outer, "mm") / 2.0)
    oracle = 2.0 * held(share * v, "m/min") / spindle
    computed = speed_floor_diameter(
        outer_diameter=outer, inner_diameter=0.0, start_speed=v, floor_speed=share * v
    )
    assert agree(computed, oracle, "mm")


@given(outer=lengths, n_share=st.floats(1.01, 20.0), v=st.floats(10.0, 300.0), f=st.floats(0.01, 1))
def test_shortest_plunge_time(outer: float, n_share: float, v: float, f: float) -> None:
    # The length of the spiral at the surface speed, then the rest of the radius in turns.
    top = n_share * held(v, "m/min") / (held(outer, "mm") / 2.0)
    reached = 2.0 * held(v, "m/min") / top
    area = REGISTRY.pi / 4.0 * (held(outer, "mm") ** 2 - reached**2)
    turns = reached / 2.0 / held(f, "mm/turn")
    oracle = area / held(f, "mm") / held(v, "m/min") + turns / top.to("turn/min")
    computed = shortest_plunge_time(
        outer_diameter=outer,
        inner_diameter=0.0,
        feed=f,
        cutting_speed=v,
        top=float(top.to("turn/min").magnitude),
    )
    assert agree(computed, oracle, "min")


@given(clearance=st.floats(1.0, 30.0), e=st.floats(0.01, 0.5), r=st.floats(0.5, 50.0))
def test_working_rake_and_rubbing_radius(clearance: float, e: float, r: float) -> None:
    # The triangle of height e and long side r, by its third side.
    third = (held(r, "mm") ** 2 - held(e, "mm") ** 2) ** 0.5
    turned = np.arctan2(held(e, "mm"), third)
    assert agree(working_rake(rake=0.0, height_error=e, radius=r), turned, "degree")
    radius = held(e, "mm") / np.sin(held(clearance, "degree"))
    assert agree(rubbing_radius(clearance=clearance, height_error=e), radius, "mm")
