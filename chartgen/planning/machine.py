"""What a job's steps share: the shop's drive, chuck and material, resolved once.

Every step is offered the speeds that the lathe can give; which of them is taken is for the
step to decide, with what it can cut at each.
"""

import math
from dataclasses import dataclass, replace

import numpy as np

from chartgen.limits.allowances import Allowances, allowances_for
from chartgen.limits.holding import Holding, make_holding
from chartgen.limits.speed_caps import largest_chuck_speed
from chartgen.limits.spindle import Duration, Spindle, make_spindle
from chartgen.limits.trials import LADDER
from chartgen.model.blade import ToolMaterial
from chartgen.model.job import Job
from chartgen.model.lathe import DrivePosition, Work
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.physics.kinematics import spindle_speed
from chartgen.physics.whip import critical_speed
from chartgen.planning.operations import Bound
from chartgen.quantities import MetresPerMinute, Millimetres, NewtonMetres, RevsPerMinute

_SLIP = 1e-9
# Slower than half its start speed no step is looked for where the dial is free.
_SLOWEST_RUNG = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Machine:
    """The lathe with its allowances, its grip on this bar, and what no speed may exceed."""

    shop: Shop
    job: Job
    material: Material
    allowances: Allowances
    spindle: Spindle
    holding: Holding
    largest_speed: RevsPerMinute[float]
    speed_bound: Bound


@dataclass(frozen=True, slots=True, kw_only=True)
class Setting:
    """A speed that the lathe can be set to, the torque for ever and at the stall there."""

    position: DrivePosition
    speed: RevsPerMinute[float]
    torque: NewtonMetres[float]
    stall_torque: NewtonMetres[float]
    bound: Bound


def machine_for(shop: Shop, job: Job, material: Material) -> Machine:
    """Return the shop as the job finds it: its bar in the chuck, nothing but it behind."""
    jaw_distance = shop.work.jaw_distance
    work = Work(surface=job.bar.surface, jaw_distance=jaw_distance, bar_behind=job.bar.behind)
    shop = replace(shop, work=work)
    allowances = allowances_for(shop)
    caps = _caps(shop, job, material, allowances)
    bound = min(caps, key=lambda one: caps[one])
    return Machine(
        shop=shop,
        job=job,
        material=material,
        allowances=allowances,
        spindle=make_spindle(shop.lathe, allowances),
        holding=make_holding(shop.lathe.chuck, job.bar.surface, [material], allowances),
        largest_speed=caps[bound],
        speed_bound=bound,
    )


def _caps(
    shop: Shop, job: Job, material: Material, allowances: Allowances
) -> dict[Bound, RevsPerMinute[float]]:
    drive = shop.lathe.drive
    caps = {
        Bound.FASTEST_SPINDLE: min(
            drive.fastest_spindle, max(position.fastest for position in drive.positions)
        ),
        Bound.CHUCK_SPEED: largest_chuck_speed(shop.lathe.chuck, allowances),
    }
    if job.bar.behind > 0.0:
        critical = critical_speed(
            length=job.bar.behind,
            outer_diameter=job.bar.diameter,
            inner_diameter=0.0,
            elastic_modulus=material.youngs_modulus.value,
            density=material.density.value,
        )
        caps[Bound.BAR_WHIP] = float(allowances.whip_share * critical)
    return caps


def turning_speeds(
    material: Material, tool: ToolMaterial
) -> tuple[MetresPerMinute[float], MetresPerMinute[float]]:
    """Return start and largest surface speed for turning.

    The data are for parting: their ceiling is a turning speed, their start half to two thirds
    of one. Turning starts midway between both in ratio.
    """
    speeds = material.speeds[tool]
    return math.sqrt(speeds.start.value * speeds.ceiling.value), speeds.ceiling.value


def settings(
    machine: Machine,
    *,
    diameter: Millimetres[float],
    start: MetresPerMinute[float],
    ceiling: MetresPerMinute[float],
    is_weak: bool = False,
) -> tuple[Setting, ...]:
    """Return the speeds worth trying, none over a cap.

    A small drill wants more than the fastest speed of a position. Where the motor `is_weak`
    there, as a brushed one without torque left at the end of its knob, slower ones are offered.

    A lathe that cannot turn as slowly as the edge wants offers its slowest speed, if the edge
    still bears it; none where even that is over what edge, chuck, spindle or bar bear.
    """
    wanted = float(spindle_speed(cutting_speed=start, diameter=diameter))
    by_edge = float(spindle_speed(cutting_speed=ceiling, diameter=diameter))
    cap = min(machine.largest_speed, by_edge, wanted * machine.allowances.speed_over_start)
    bound = machine.speed_bound if machine.largest_speed < wanted else Bound.NOTHING
    found: dict[tuple[str, float], Setting] = {}
    for position in machine.shop.lathe.drive.positions:
        reached = min(wanted, position.fastest) if is_weak else wanted
        for speed in _speeds(position, reached, cap):
            found[position.name, speed] = _setting(machine, position, speed, bound)
    if found:
        return tuple(found.values())
    slowest = min(machine.shop.lathe.drive.positions, key=lambda position: position.slowest)
    if slowest.slowest > min(machine.largest_speed, by_edge) * (1.0 + _SLIP):
        return ()
    return (_setting(machine, slowest, slowest.slowest, Bound.SLOWEST_SPINDLE),)


def _speeds(position: DrivePosition, wanted: float, cap: float) -> list[float]:
    """Return what a position offers under the cap: its one speed, or a ladder down."""
    if position.slowest > cap * (1.0 + _SLIP):
        return []
    if position.is_single_speed:
        return [position.slowest]
    top, step = min(cap, position.fastest), position.dial_step
    rungs = (wanted * rung for rung in LADDER if rung >= _SLOWEST_RUNG)
    speeds = []
    for rung in rungs:
        speed = round(min(rung, top) / step) * step
        if speed > top:
            speed = math.floor(top / step + _SLIP) * step
        speeds.append(max(speed, position.slowest))
    return speeds


def _setting(
    machine: Machine, position: DrivePosition, speed: RevsPerMinute[float], bound: Bound
) -> Setting:
    at = np.array(speed)
    return Setting(
        position=position,
        speed=speed,
        torque=float(machine.spindle.torque(position, at, Duration.CONTINUOUS)),
        stall_torque=float(machine.spindle.torque(position, at, Duration.STALL)),
        bound=bound,
    )
