"""Flywheel and dig-in: worked examples, the two ways to reckon a stop, what gives first."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen.physics.cutting import cutting_force, cutting_torque, force_from_torque
from chartgen.physics.dig_in import Gives, Slack, extra_bite, first_to_give
from chartgen.physics.flywheel import (
    referred_inertia,
    ring_inertia,
    ring_mass,
    rotational_energy,
    stopping_time,
    stopping_torque,
    turns_to_stop,
)
from chartgen.quantities import Numeric

inertias = st.floats(0.001, 1.0)
spindles = st.floats(50.0, 4000.0)
torques = st.floats(0.1, 200.0)
forces = st.floats(10.0, 20_000.0)
feeds = st.floats(0.01, 0.5)
exponents = st.floats(0.0, 0.4)
constants = st.floats(500.0, 12_000.0)


def half_a_unit_of_three_digits(printed: float) -> float:
    """Return half a unit of the third digit, or of the last one before the point."""
    return float(max(0.5, 0.5 * 10.0 ** (np.floor(np.log10(printed)) - 2.0)))


# Derived: the masses are put in as known numbers, the energies are arithmetic on them.
@pytest.mark.parametrize(
    ("size", "bore", "mass", "inertia", "at_1000", "at_2000"),
    [
        (80, 16, 2.0, 0.0017, 9, 36),
        (100, 20, 3.4, 0.0044, 24, 97),
        (125, 30, 5.4, 0.0112, 61, 245),
        (160, 40, 9.3, 0.032, 173, 694),
        (200, 55, 16.0, 0.086, 472, 1890),
        (250, 75, 28.0, 0.238, 1310, 5230),
    ],
)
def test_inertia_and_energy_of_chucks_as_rings(
    size: float, bore: float, mass: float, inertia: float, at_1000: float, at_2000: float
) -> None:
    ring = ring_inertia(mass=mass, outer_diameter=size, inner_diameter=bore)
    assert ring == pytest.approx(inertia, abs=0.0005 if inertia > 0.02 else 0.00005)
    for speed, energy in ((1000.0, at_1000), (2000.0, at_2000)):
        tolerance = half_a_unit_of_three_digits(energy)
        assert rotational_energy(inertia=ring, spindle_speed=speed) == pytest.approx(
            energy, abs=tolerance
        )


def test_a_chuck_of_125_mm_at_500_stops_in_06_turns_against_5_newton_metres() -> None:
    # Derived: J 0.013 -> 18 J, 0.14 s, about 0.6 turns.
    assert rotational_energy(inertia=0.013, spindle_speed=500.0) == pytest.approx(18.0, abs=0.5)
    time = stopping_time(inertia=0.013, spindle_speed=500.0, torque_deficit=5.0)
    assert time == pytest.approx(0.14, abs=0.005)
    turns = turns_to_stop(inertia=0.013, spindle_speed=500.0, cut_torque=12.0, drive_torque=7.0)
    assert turns == pytest.approx(0.6, abs=0.05)


@given(j=inertias, n=spindles, lack=torques)
def test_a_spindle_turns_at_half_its_speed_on_average_while_it_stops(
    j: float, n: float, lack: float
) -> None:
    time = stopping_time(inertia=j, spindle_speed=n, torque_deficit=lack)
    turns = turns_to_stop(inertia=j, spindle_speed=n, cut_torque=lack, drive_torque=0.0)
    assert turns == pytest.approx(time * n / 60.0 / 2.0)


@given(j=inertias, n=spindles, drive=torques, turns=st.floats(0.05, 20.0))
def test_the_stopping_torque_stops_in_the_turns_asked_for(
    j: float, n: float, drive: float, turns: float
) -> None:
    cut = stopping_torque(inertia=j, spindle_speed=n, drive_torque=drive, turns=turns)
    back = turns_to_stop(inertia=j, spindle_speed=n, cut_torque=cut, drive_torque=drive)
    assert back == pytest.approx(turns, rel=1e-6)


@given(j=inertias, n=spindles, drive=torques, share=st.floats(0.0, 1.0))
def test_a_cut_that_the_drive_holds_never_stops_it(
    j: float, n: float, drive: float, share: float
) -> None:
    held = turns_to_stop(inertia=j, spindle_speed=n, cut_torque=share * drive, drive_torque=drive)
    assert held == np.inf
    assert stopping_time(inertia=j, spindle_speed=n, torque_deficit=-share) == np.inf


@given(j=inertias, n=spindles, lack=torques, faster=st.floats(1.01, 10.0))
def test_carried_turns_grow_with_the_square_of_the_speed(
    j: float, n: float, lack: float, faster: float
) -> None:
    slow, fast = (
        turns_to_stop(inertia=j, spindle_speed=speed, cut_torque=lack, drive_torque=0.0)
        for speed in (n, faster * n)
    )
    assert fast == pytest.approx(slow * faster**2)


@given(rotor=inertias, n=spindles, ratio=st.floats(0.2, 10.0))
def test_a_rotor_has_the_same_energy_referred_to_the_spindle(
    rotor: float, n: float, ratio: float
) -> None:
    own = rotational_energy(inertia=rotor, spindle_speed=ratio * n)
    there = referred_inertia(rotor_inertia=rotor, speed_ratio=ratio)
    assert rotational_energy(inertia=there, spindle_speed=n) == pytest.approx(own)


def test_a_tube_is_a_bar_less_its_core() -> None:
    def mass(outer: float, inner: float) -> Numeric:
        return ring_mass(outer_diameter=outer, inner_diameter=inner, length=100.0, density=7.85)

    def inertia(outer: float, inner: float) -> Numeric:
        return ring_inertia(mass=mass(outer, inner), outer_diameter=outer, inner_diameter=inner)

    assert mass(50.0, 30.0) == pytest.approx(mass(50.0, 0.0) - mass(30.0, 0.0))
    assert inertia(50.0, 30.0) == pytest.approx(inertia(50.0, 0.0) - inertia(30.0, 0.0))


@given(a=constants, mc=exponents, f=feeds, bite=st.floats(0.001, 2.0))
def test_the_extra_bite_to_the_force_of_a_thicker_chip_is_the_difference(
    a: float, mc: float, f: float, bite: float
) -> None:
    force = cutting_force(width=1.0, feed=f + bite, specific_force=a, thickness_exponent=mc)
    back = extra_bite(capacity=force, force_constant=a, thickness_exponent=mc, feed=f)
    assert back == pytest.approx(bite, rel=1e-6)


@given(a=constants, mc=exponents, f=feeds, share=st.floats(0.0, 1.0))
def test_a_cut_that_already_takes_the_force_has_no_slack(
    a: float, mc: float, f: float, share: float
) -> None:
    force = share * cutting_force(width=1.0, feed=f, specific_force=a, thickness_exponent=mc)
    back = extra_bite(capacity=force, force_constant=a, thickness_exponent=mc, feed=f)
    assert back == pytest.approx(0.0, abs=1e-9)


def slack_of(
    spindle: Numeric, grip: Numeric, blade: Numeric, edge: Numeric, *, turns: Numeric
) -> Slack:
    """Return the slack of a blade of 2 mm in mild steel at 0.05 mm."""
    return first_to_give(
        spindle=spindle,
        grip=grip,
        blade=blade,
        edge=edge,
        turns_to_stop=turns,
        most_turns=0.5,
        force_constant=3560.0,
        thickness_exponent=0.17,
        feed=0.05,
    )


@pytest.mark.parametrize("first", [g for g in Gives if g is not Gives.NOTHING])
def test_the_weakest_gives_first(first: Gives) -> None:
    capacities = np.full(4, 2000.0)
    capacities[first] = 1000.0
    slack = slack_of(*capacities, turns=0.1)
    assert slack.gives == first
    assert slack.bite == pytest.approx((1000.0 / 3560.0) ** (1.0 / 0.83) - 0.05)


def test_a_fast_spindle_stops_too_late_to_save_the_blade() -> None:
    slack = slack_of(500.0, 3000.0, 1000.0, 2000.0, turns=np.array([0.1, 0.5, 0.51, np.inf]))
    assert slack.gives.tolist() == [Gives.SPINDLE, Gives.SPINDLE, Gives.BLADE, Gives.BLADE]
    assert np.all(slack.bite[:2] < slack.bite[2:])


def test_nothing_gives_where_nothing_is_known() -> None:
    slack = slack_of(1000.0, np.inf, np.inf, np.inf, turns=np.array([0.1, 2.0]))
    assert slack.gives.tolist() == [Gives.SPINDLE, Gives.NOTHING]
    assert slack.bite[1] == np.inf


def test_slack_takes_the_broadcast_shape_of_all_arguments() -> None:
    slack = first_to_give(
        spindle=np.full((3, 1), 500.0),
        grip=1000.0,
        blade=np.inf,
        edge=np.inf,
        turns_to_stop=1.0,
        most_turns=0.5,
        force_constant=3560.0,
        thickness_exponent=0.17,
        feed=np.linspace(0.03, 0.1, 4),
    )
    assert slack.bite.shape == slack.gives.shape == (3, 4)


@given(capacities=st.tuples(forces, forces, forces, forces), more=st.floats(1.0, 5.0))
def test_a_stronger_part_never_lessens_the_slack(
    capacities: tuple[float, float, float, float], more: float
) -> None:
    before = slack_of(*capacities, turns=0.2).bite
    for place in range(4):
        stronger = [c * more if i == place else c for i, c in enumerate(capacities)]
        assert slack_of(*stronger, turns=0.2).bite >= before


@given(j=inertias, n=spindles, stall=torques, others=st.tuples(forces, forces, forces))
def test_both_ways_to_count_the_spindle_name_the_same_part(
    j: float, n: float, stall: float, others: tuple[float, float, float]
) -> None:
    # By the turns at the weakest of the others, or by the torque that stops within half a turn.
    diameter = 25.0
    turns = turns_to_stop(
        inertia=j,
        spindle_speed=n,
        cut_torque=cutting_torque(force=min(others), diameter=diameter),
        drive_torque=stall,
    )
    by_turns = slack_of(force_from_torque(torque=stall, diameter=diameter), *others, turns=turns)
    just_in_time = force_from_torque(
        torque=stopping_torque(inertia=j, spindle_speed=n, drive_torque=stall, turns=0.5),
        diameter=diameter,
    )
    by_torque = slack_of(just_in_time, *others, turns=0.5)
    if just_in_time != pytest.approx(min(others), rel=1e-9):
        assert by_turns.gives == by_torque.gives
    assert by_turns.bite <= by_torque.bite
