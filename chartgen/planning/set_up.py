"""How the bar stands in the chuck: from the jaws outward, and how hard they must close."""

import math
from collections.abc import Iterable

from chartgen.model.lathe import BarSurface
from chartgen.planning.bar_use import (
    goes_through,
    grip_length,
    jaw_distance,
    pieces_a_blank,
    pitch_of,
)
from chartgen.planning.machine import Machine
from chartgen.planning.plan import SetUp, Step
from chartgen.quantities import Millimetres, NewtonMetres
from chartgen.reference.chucks import load_holding


def overhang_of(machine: Machine, *, kerf: Millimetres[float]) -> Millimetres[float]:
    """Return how far the bar stands out: for one piece, or for all of a sawn blank's."""
    pieces = 1 if goes_through(machine) is not False else pieces_a_blank(machine, kerf=kerf)
    return jaw_distance(machine) + pieces * pitch_of(machine, kerf=kerf)


def run_out_of(machine: Machine) -> Millimetres[float]:
    """Return how far the bar runs out: as measured, or as its surface lets expect."""
    bar, allowances = machine.job.bar, machine.allowances
    if bar.run_out is not None:
        return bar.run_out
    drawn = bar.surface is not BarSurface.BLACK
    return allowances.bright_run_out if drawn else allowances.black_run_out


def needs_centre(machine: Machine, *, overhang: Millimetres[float]) -> bool:
    """Return whether the bar stands out further than it may without a centre."""
    return overhang > machine.allowances.overhang_most * machine.job.bar.diameter


def _key_torque(machine: Machine, needed: NewtonMetres[float]) -> NewtonMetres[float]:
    """Return how hard to pull the key: as the heaviest cut needs, never less than a light pull.

    Light cuts need little grip, but nobody should be told to leave a chuck loose for them. 0 for
    a collet, and where no force is known.
    """
    if math.isinf(machine.holding.static_grip) or needed == 0.0:
        return 0.0
    usual, stated = machine.allowances.key_pull, machine.shop.lathe.chuck.key_torque
    return max(needed, usual if stated is None else min(usual, stated))


def set_up(machine: Machine, *, kerf: Millimetres[float], steps: Iterable[Step]) -> SetUp:
    """Return how the bar is held for all steps of a job."""
    loads = [step.cut.load for step in steps if step.cut and step.cut.load]
    needed = max((load.grip_needed for load in loads), default=0.0)
    grip = machine.holding.static_grip
    per_torque = load_holding().grip.grip_per_key_torque.value
    overhang = overhang_of(machine, kerf=kerf)
    return SetUp(
        jaw_distance=jaw_distance(machine),
        kerf=kerf,
        facing=machine.allowances.facing_stock,
        overhang=overhang,
        grip_length=grip_length(machine),
        behind=machine.job.bar.behind,
        goes_through_spindle=goes_through(machine),
        needs_centre=needs_centre(machine, overhang=overhang),
        grip_needed=needed,
        grip=grip,
        key_torque=_key_torque(machine, needed / per_torque),
        largest_speed=machine.largest_speed,
        speed_bound=machine.speed_bound,
        stock=(machine.job.bar.diameter - machine.job.piece.diameter) / 2.0,
        run_out=run_out_of(machine),
        run_out_is_measured=machine.job.bar.run_out is not None,
    )
