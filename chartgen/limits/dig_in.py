"""When a cut digs in: how much sudden extra bite it swallows, and what gives beyond that.

The spindle counts only by the force that stops it within a fraction of a turn: what turns
carries energy, and a fast heavy chuck breaks the edge or throws the work before it stops.
"""

from dataclasses import dataclass

import numpy as np

from chartgen.limits.case import Case
from chartgen.limits.force import high_force, nominal_force
from chartgen.model.lathe import Chuck, DrivePosition
from chartgen.physics.cutting import force_from_torque
from chartgen.physics.dig_in import Gives, Slack, first_to_give
from chartgen.physics.flywheel import (
    referred_inertia,
    ring_inertia,
    rotational_energy,
    stopping_torque,
)
from chartgen.quantities import (
    FloatArray,
    KilogramSquareMetres,
    Millimetres,
    MillimetresPerRev,
    NewtonMetres,
    Newtons,
    RevsPerMinute,
    Turns,
)
from chartgen.reference.chucks import load_holding

__all__ = ["DigIn", "Gives", "dig_in"]

_WATTS_PER_KILOWATT = 1000.0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False, repr=False)
class DigIn:
    """Slack of each cell [mm], the code of what gives first, and the turns carried on.

    `carried_turns` is how far the spindle turns on its own energy alone against the force of
    the cut as it was before the dig-in. Without force data nothing is known: NaN, and
    `Gives.NOTHING`.
    """

    slack: Millimetres[FloatArray]
    gives: FloatArray
    carried_turns: Turns[FloatArray]


def dig_in(
    case: Case,
    *,
    feed: MillimetresPerRev[FloatArray],
    speed: RevsPerMinute[FloatArray],
    motor_ratio: FloatArray,
    stall_torque: NewtonMetres[FloatArray],
    slips: Newtons[FloatArray],
) -> DigIn:
    """Return what happens when cuts (M, B, D) suddenly bite deeper than their feed."""
    grid, allowances = case.grid, case.allowances
    inertia = spindle_inertia(case, motor_ratio)
    stopping = stopping_torque(
        inertia=inertia,
        spindle_speed=speed,
        drive_torque=stall_torque,
        turns=allowances.stopping_turns,
    )
    diameter = grid.diameter[..., 0]
    edge = allowances.edge_overload * high_force(grid, grid.largest_feed, allowances)[..., 0]
    constant = np.where(grid.has_force, grid.force_constant, np.nan)[..., 0]
    slack: Slack = first_to_give(
        spindle=np.asarray(force_from_torque(torque=stopping, diameter=diameter)),
        grip=slips,
        blade=case.blades.at_yield[..., 0],
        edge=edge,
        # The force that stops it in time stands for the spindle, so it is always in time.
        turns_to_stop=0.0,
        most_turns=allowances.stopping_turns,
        force_constant=constant,
        thickness_exponent=grid.exponent[..., 0],
        feed=feed,
    )
    force = nominal_force(grid, feed[..., np.newaxis])[..., 0]
    torque = np.maximum(force, 1e-9) * diameter / 2000.0
    energy = rotational_energy(inertia=inertia, spindle_speed=speed)
    known = grid.has_force[..., 0]
    return DigIn(
        slack=np.asarray(slack.bite),
        gives=np.where(known, slack.gives, int(Gives.NOTHING)),
        carried_turns=np.where(known, energy / (2.0 * np.pi * torque), np.nan),
    )


def spindle_inertia(case: Case, motor_ratio: FloatArray) -> KilogramSquareMetres[FloatArray]:
    """Return chuck and rotor referred to the spindle [kg·m²]; the bar itself is left out."""
    power = case.spindle.shaft_power / _WATTS_PER_KILOWATT
    rotor = case.allowances.rotor_inertia * power
    return np.asarray(
        chuck_inertia(case.lathe.chuck)
        + referred_inertia(rotor_inertia=rotor, speed_ratio=motor_ratio)
    )


def chuck_inertia(chuck: Chuck) -> KilogramSquareMetres[float]:
    """Return the inertia of a chuck body [kg·m²]; outside the table scaled by size to the fourth.

    Of two bodies around a size the larger stands, the cautious side.
    """
    bodies = load_holding().chuck_bodies
    body = next((b for b in bodies if chuck.size <= b.up_to), bodies[-1])
    inertia = ring_inertia(
        mass=body.mass.value, outer_diameter=body.size, inner_diameter=body.bore.value
    )
    outside = chuck.size < bodies[0].size or chuck.size > bodies[-1].up_to
    scale = (chuck.size / body.size) ** 4 if outside else 1.0
    return float(inertia) * scale


def motor_ratios(positions: tuple[DrivePosition, ...]) -> FloatArray:
    """Return the motor turns for one spindle turn of each position."""
    return np.array([position.motor_ratio for position in positions])
