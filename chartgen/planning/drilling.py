"""The way to a hole: centre drill, then drills by rising diameter, each inside every limit.

Of the owned drills those are taken that need fewest steps; of as few, the quickest. A drill
that is too much in one step is thereby replaced by smaller ones.
"""

import math
from collections.abc import Sequence
from itertools import combinations, pairwise

from chartgen.model.blade import ToolMaterial
from chartgen.physics.drilling import (
    peck_depths,
    point_height,
)
from chartgen.physics.kinematics import cutting_speed
from chartgen.physics.time import turning_time
from chartgen.planning.drill_loads import drill_load, drill_over, drill_point
from chartgen.planning.feeding import GivenFeed, gentler_feeds, given_feed
from chartgen.planning.machine import Machine, Setting, settings
from chartgen.planning.operations import Bound, FedBy, Operation
from chartgen.planning.plan import MachineCut, Refusal
from chartgen.quantities import Millimetres
from chartgen.reference.drilling import (
    DrillFeed,
    deep_hole_factors,
    drilling_feed,
    drilling_speed,
    load_drilling,
)

_MOST_STEPS = 4
_LEAST_STEP: Millimetres[float] = 1.0
"""A drill that has less than this to take off its hole's diameter chips its corners."""
_LEAST_FEED_SHARE = 0.5
"""A drill fed less than half of its start feed rubs."""
_CENTRE_DEPTH = 2.0
"""How many pilot diameters a centre drill goes in."""
_SLIP = 1e-9


def centre_drilled(machine: Machine, *, diameter: Millimetres[float]) -> MachineCut | Refusal:
    """Return the cut of a centre drill with a pilot of a diameter."""
    speeds = drilling_speed(machine.material.key)
    wanted = _LEAST_FEED_SHARE * _feed(machine, diameter).start.value
    fails = Bound.SLOWEST_SPINDLE
    found: list[tuple[Setting, GivenFeed]] = []
    for is_weak in (False, True):
        offered = settings(
            machine,
            diameter=diameter,
            start=speeds.start.value,
            ceiling=speeds.ceiling.value,
            is_weak=is_weak,
        )
        for one in offered:
            given = given_feed(machine, wanted=wanted, speed=one.speed, slide=FedBy.TAILSTOCK)
            over = drill_over(machine, one, diameter=diameter, pilot=0.0, feed=given.feed)
            fails = over or fails
            if over is None:
                found.append((one, given))
        if found:
            break
    if not found:
        return Refusal(operation=Operation.CENTRE_DRILL, tool="drill", bound=fails)
    setting, given = max(found, key=lambda one: (one[0].speed, one[0].torque))
    travel = _CENTRE_DEPTH * diameter
    return _drill_cut(
        machine,
        setting,
        given,
        pilot=0.0,
        diameter=diameter,
        travel=travel,
        binds=setting.bound,
        tool="centre drill",
        pecks=(),
    )


def drilled(
    machine: Machine, *, final: Millimetres[float], depth: Millimetres[float]
) -> tuple[tuple[Millimetres[float], MachineCut], ...] | Refusal:
    """Return the drills that lead to a hole and their cuts, or why no owned drills do.

    `depth` is that of the full diameter; the point goes further.
    """
    tools = machine.shop.tools
    owned = tools.drills.diameters if tools.drills else ()
    most = tools.tailstock.largest_drill if tools.tailstock else math.inf
    smaller = [drill for drill in owned if drill < final - _LEAST_STEP / 2.0 and drill <= most]
    cuts: dict[tuple[float, float], MachineCut | Bound] = {}

    def cut(pilot: float, drill: float) -> MachineCut | Bound:
        if (pilot, drill) not in cuts:
            cuts[pilot, drill] = _one_drill(machine, pilot=pilot, diameter=drill, depth=depth)
        return cuts[pilot, drill]

    for steps in range(_MOST_STEPS):
        ways = []
        for pilots in combinations(smaller, steps):
            drills = (*pilots, final)
            if not _leads(drills, machine.allowances.pilot_from):
                continue
            made = [cut(pilot, drill) for pilot, drill in pairwise((0.0, *drills))]
            whole = [one for one in made if isinstance(one, MachineCut)]
            if len(whole) == len(drills):
                ways.append(tuple(zip(drills, whole, strict=True)))
        if ways:
            peck = machine.allowances.peck_minutes
            return min(
                ways, key=lambda way: sum(one.time + peck * len(one.pecks) for _, one in way)
            )
    in_one = cut(0.0, final)
    bound = in_one if isinstance(in_one, Bound) else Bound.DRILL_CHUCK
    return Refusal(operation=Operation.DRILL, tool="drill", bound=bound)


def _leads(drills: Sequence[Millimetres[float]], pilot_from: Millimetres[float]) -> bool:
    """Whether each hole is wide enough for the web of the next drill and leaves it work to do."""
    if drills[0] >= pilot_from:
        return False
    share = load_drilling().web_share.value
    return all(
        small >= share * large and large - small >= _LEAST_STEP - _SLIP
        for small, large in pairwise(drills)
    )


def _one_drill(
    machine: Machine,
    *,
    pilot: Millimetres[float],
    diameter: Millimetres[float],
    depth: Millimetres[float],
) -> MachineCut | Bound:
    """Return one drill's cut, the quickest speed that bears it, or what it fails on."""
    speeds = drilling_speed(machine.material.key)
    start, ceiling = speeds.start.value, speeds.ceiling.value
    deep = deep_hole_factors(depth / diameter)
    slower, gentler = deep.speed.value, deep.feed.value
    travel = depth + float(
        point_height(diameter=diameter, point_angle=drill_point(machine).angle.value)
    )
    wanted = gentler * _feed(machine, diameter).start.value
    found: list[MachineCut] = []
    fails = Bound.SLOWEST_SPINDLE
    data = load_drilling()
    pecks = peck_depths(
        depth=travel,
        diameter=diameter,
        first_ratio=data.first_peck.value,
        next_ratio=data.next_peck.value,
    )
    for is_weak in (False, True):
        offered = settings(
            machine,
            diameter=diameter,
            start=start * slower,
            ceiling=ceiling * slower,
            is_weak=is_weak,
        )
        for setting in offered:
            over, binds = None, Bound.NOTHING
            for given in gentler_feeds(
                machine, wanted=wanted, speed=setting.speed, slide=FedBy.TAILSTOCK
            ):
                held = Bound.HAND_PACE if given.is_held_by_hand else setting.bound
                over = drill_over(machine, setting, diameter=diameter, pilot=pilot, feed=given.feed)
                if over is None:
                    break
                fails = binds = over
            if over:
                continue
            if binds is Bound.NOTHING:
                binds = held
            if binds is Bound.NOTHING and gentler < 1.0:
                binds = Bound.DEEP_HOLE
            cut = _drill_cut(
                machine,
                setting,
                given,
                pilot=pilot,
                diameter=diameter,
                travel=travel,
                binds=binds,
                tool="drill",
                pecks=pecks,
            )
            found.append(cut)
        if found:
            break
    return min(found, key=lambda one: one.time) if found else fails


def _feed(machine: Machine, diameter: Millimetres[float]) -> DrillFeed:
    return drilling_feed(diameter=diameter, feed_class=machine.material.feeds.key)


def _drill_cut(
    machine: Machine,
    setting: Setting,
    given: GivenFeed,
    *,
    pilot: Millimetres[float],
    diameter: Millimetres[float],
    travel: Millimetres[float],
    binds: Bound,
    tool: str,
    pecks: tuple[Millimetres[float], ...],
) -> MachineCut:
    return MachineCut(
        tool=tool,
        tool_material=ToolMaterial.HSS,
        position=setting.position,
        spindle_speed=setting.speed,
        cutting_speed=float(cutting_speed(spindle_speed=setting.speed, diameter=diameter)),
        feed=given.feed,
        finish_feed=None,
        fed_by=given.fed_by,
        travel_per_turn=given.travel_per_turn,
        seconds_per_turn=given.seconds_per_turn,
        depth=0.0,
        finish_depth=0.0,
        passes=1,
        travel=travel,
        pecks=pecks,
        load=None
        if machine.material.force is None
        else drill_load(machine, setting, diameter=diameter, pilot=pilot, feed=given.feed),
        binds=binds,
        time=float(turning_time(length=travel, feed=given.feed, spindle_speed=setting.speed)),
    )
