"""How stock is shared out among passes, and which speed turns it off soonest.

A pass is as deep as its weakest limit bears at the high side of the force; the depth a limit
bears is in proportion to its force, so no search is needed.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from chartgen.model.tooling import BoringBar, TurningTool
from chartgen.physics.cutting import force_from_torque
from chartgen.physics.kinematics import cutting_speed
from chartgen.planning.feeding import GivenFeed
from chartgen.planning.loads import ForceBand, load_of, slip_resultant, turning_force
from chartgen.planning.machine import Machine, Setting
from chartgen.planning.operations import Bound
from chartgen.planning.plan import MachineCut
from chartgen.quantities import Millimetres, Minutes, Newtons

LEAST_DEPTH: Millimetres[float] = 0.05
"""A limit that leaves less than this has no use for a pass."""
_AS_QUICK = 0.02
"""Passes that take no more than this share longer in the cut are about as quick."""
_SLIP = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class Passes:
    """Rough passes of equal depth and one that finishes, at one speed."""

    setting: Setting
    given: GivenFeed
    finish: GivenFeed
    depth: Millimetres[float]
    finish_depth: Millimetres[float]
    count: int
    binds: Bound
    force: ForceBand | None
    time: Minutes[float]


def driving_caps(
    machine: Machine, setting: Setting, *, diameter: Millimetres[float], axial_share: float
) -> dict[Bound, Newtons[float]]:
    """Return the main force at a diameter that motor and grip bear at a speed.

    `axial_share` is the force along the axis over the main one.
    """
    caps = {
        Bound.TORQUE: float(force_from_torque(torque=setting.torque, diameter=diameter)),
        Bound.STALL: float(force_from_torque(torque=setting.stall_torque, diameter=diameter)),
    }
    slip, safety = slip_resultant(machine, setting), machine.allowances.cut_safety
    arm = diameter / machine.job.bar.diameter
    if machine.job.holding.stop:
        axial_share = 0.0
    stall = float(force_from_torque(torque=setting.stall_torque, diameter=diameter)) * arm
    both = slip / math.hypot(arm, axial_share)
    if stall >= both * arm:
        caps[Bound.GRIP] = both / safety
    elif axial_share > 0.0:
        # A drive that stalls first pulls no harder around, but the feed may still push.
        caps[Bound.GRIP] = math.sqrt(slip**2 - stall**2) / (safety * axial_share)
    return caps


def deepest(
    machine: Machine,
    *,
    caps: Mapping[Bound, Newtons[float]],
    depths: Mapping[Bound, Millimetres[float]],
    feed: float,
) -> tuple[Millimetres[float], Bound]:
    """Return the deepest cut that every limit bears, and the limit that is met first."""
    per_mm = turning_force(machine, depth=1.0, feed=feed)
    all_depths = dict(depths)
    if per_mm is not None:
        all_depths |= {bound: force / per_mm.high for bound, force in caps.items()}
    bound = min(all_depths, key=lambda one: all_depths[one])
    return all_depths[bound], bound


def shared_out(
    stock: Millimetres[float], *, finish: Millimetres[float], most: Millimetres[float]
) -> tuple[int, Millimetres[float], Millimetres[float]]:
    """Return the number of passes, the depth of the rough ones, and that of the last.

    The last pass takes `finish`, or all there is where that is less; the rest is shared out
    evenly in passes no deeper than `most`.
    """
    last = min(stock, finish, most)
    rough = stock - last
    if rough <= _SLIP:
        return 1, 0.0, last
    count = math.ceil(rough / most - _SLIP)
    return count + 1, rough / count, last


def soonest(
    settings: tuple[Setting, ...],
    planned: Callable[[Setting], Passes | None],
    *,
    between: Minutes[float],
) -> Passes | None:
    """Return the passes that are over first, of those that are about as quick the strongest.

    `between` is the time from one pass to the next: a pass more has to be worth setting it.
    """

    def whole(passes: Passes) -> Minutes[float]:
        return passes.time + passes.count * between

    tried = [passes for setting in settings if (passes := planned(setting)) is not None]
    if not tried:
        return None
    first = min(tried, key=whole)
    most = whole(first) + _AS_QUICK * first.time
    near = [passes for passes in tried if whole(passes) <= most]
    return max(near, key=lambda passes: (passes.setting.torque, passes.setting.speed))


def cut_of(
    machine: Machine,
    tool: TurningTool | BoringBar,
    best: Passes,
    *,
    diameter: Millimetres[float],
    travel: Millimetres[float],
    axial_share: float,
) -> MachineCut:
    """Return passes as the cut of a step; `axial_share` is the axial force over the main one."""
    load = None
    if best.force is not None:
        load = load_of(
            machine,
            best.setting,
            force=best.force,
            diameter=diameter,
            along=axial_share * best.force.high,
        )
    speed = best.setting.speed
    return MachineCut(
        tool=tool.name,
        tool_material=tool.tool_material,
        position=best.setting.position,
        spindle_speed=speed,
        cutting_speed=float(cutting_speed(spindle_speed=speed, diameter=diameter)),
        feed=best.given.feed,
        finish_feed=best.finish.feed if best.finish_depth else None,
        fed_by=best.given.fed_by,
        travel_per_turn=best.given.travel_per_turn,
        seconds_per_turn=best.given.seconds_per_turn,
        depth=best.depth,
        finish_depth=best.finish_depth,
        passes=best.count,
        travel=travel,
        pecks=(),
        load=load,
        binds=best.binds,
        time=best.time,
    )
