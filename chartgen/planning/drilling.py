"""The way to a hole: centre drill, then drills by rising diameter, each inside every limit.

Of the owned drills those are taken that need fewest steps; of as few, the quickest. A drill
that is too much in one step is thereby replaced by smaller ones.
"""

import math
from collections.abc import Sequence
from itertools import combinations, pairwise

from chartgen.model.blade import ToolMaterial
from chartgen.model.tooling import DrillPoint
from chartgen.physics.cutting import specific_cutting_force
from chartgen.physics.drilling import (
    drill_chip_thickness,
    drilling_thrust,
    drilling_torque,
    peck_depths,
    point_height,
)
from chartgen.physics.kinematics import cutting_speed
from chartgen.physics.time import turning_time
from chartgen.planning.feeding import GivenFeed, given_feed
from chartgen.planning.loads import ForceBand, load_of, resultant, slip_resultant
from chartgen.planning.machine import Machine, Setting, settings
from chartgen.planning.operations import Bound, FedBy, Operation
from chartgen.planning.plan import Load, MachineCut, Refusal
from chartgen.quantities import Millimetres, MillimetresPerRev
from chartgen.reference.drilling import (
    DrillFeed,
    PointData,
    deep_hole_factors,
    drilling_feed,
    drilling_speed,
    load_drilling,
)

_MOST_STEPS = 4
_LEAST_STEP: Millimetres[float] = 1.0
"""A drill that has less than this to take off its hole's diameter chips its corners."""
_A_STEP_LESS = 0.999
"""Of a feed that stands on a step: rounded down it is the next step."""
_LEAST_FEED_SHARE = 0.5
"""A drill fed less than half of its start feed rubs."""
_CENTRE_DEPTH = 2.0
"""How many pilot diameters a centre drill goes in."""
_SLIP = 1e-9


def centre_drilled(machine: Machine, *, diameter: Millimetres[float]) -> MachineCut | Refusal:
    """Return the cut of a centre drill with a pilot of a diameter."""
    speeds = drilling_speed(machine.material.key)
    start, ceiling = speeds.start.value, speeds.ceiling.value
    offered = settings(machine, diameter=diameter, start=start, ceiling=ceiling)
    wanted = _LEAST_FEED_SHARE * _feed(machine, diameter).start.value
    fails = Bound.SLOWEST_SPINDLE
    found: list[tuple[Setting, GivenFeed]] = []
    for one in offered:
        given = given_feed(machine, wanted=wanted, speed=one.speed, slide=FedBy.TAILSTOCK)
        over = _over(machine, one, diameter=diameter, pilot=0.0, feed=given.feed)
        fails = over or fails
        if over is None:
            found.append((one, given))
    if not found:
        return Refusal(operation=Operation.CENTRE_DRILL, tool="drill", bound=fails)
    setting, given = max(found, key=lambda one: (one[0].speed, one[0].torque))
    travel = _CENTRE_DEPTH * diameter
    return MachineCut(
        tool="centre drill",
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
        pecks=(),
        load=None
        if machine.material.force is None
        else _load(machine, setting, diameter=diameter, pilot=0.0, feed=given.feed),
        binds=setting.bound,
        time=float(turning_time(length=travel, feed=given.feed, spindle_speed=setting.speed)),
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
    offered = settings(machine, diameter=diameter, start=start * slower, ceiling=ceiling * slower)
    travel = depth + float(point_height(diameter=diameter, point_angle=_point(machine).angle.value))
    wanted = gentler * _feed(machine, diameter).start.value
    found: list[MachineCut] = []
    fails = Bound.TORQUE if offered else Bound.SLOWEST_SPINDLE
    for setting in offered:
        given = given_feed(machine, wanted=wanted, speed=setting.speed, slide=FedBy.TAILSTOCK)
        held = Bound.HAND_PACE if given.is_held_by_hand else setting.bound
        binds = held
        while over := _over(machine, setting, diameter=diameter, pilot=pilot, feed=given.feed):
            fails, binds = over, over
            less = given_feed(
                machine,
                wanted=given.feed * _A_STEP_LESS,
                speed=setting.speed,
                slide=FedBy.TAILSTOCK,
            )
            if less.feed < _LEAST_FEED_SHARE * wanted or less.feed >= given.feed:
                break
            given = less
        if over:
            continue
        if binds is Bound.NOTHING and gentler < 1.0:
            binds = Bound.DEEP_HOLE
        found.append(
            _drill_cut(
                machine, setting, given, pilot=pilot, diameter=diameter, travel=travel, binds=binds
            )
        )
    return min(found, key=lambda one: one.time) if found else fails


def _feed(machine: Machine, diameter: Millimetres[float]) -> DrillFeed:
    return drilling_feed(diameter=diameter, feed_class=machine.material.feeds.key)


def _point(machine: Machine) -> PointData:
    drills = machine.shop.tools.drills
    return load_drilling().points[DrillPoint.STANDARD if drills is None else drills.point]


def _over(
    machine: Machine,
    setting: Setting,
    *,
    diameter: Millimetres[float],
    pilot: Millimetres[float],
    feed: MillimetresPerRev[float],
) -> Bound | None:
    """Return the limit that a drill's cut is over, None where it is inside them all."""
    if machine.material.force is None:
        return None
    load = _load(machine, setting, diameter=diameter, pilot=pilot, feed=feed)
    around = 2000.0 * load.torque / machine.job.bar.diameter
    held = resultant(machine, setting, around=around, along=load.thrust_high)
    checks = (
        (load.torque > setting.torque, Bound.TORQUE),
        (load.torque > setting.stall_torque, Bound.STALL),
        (load.torque > machine.allowances.drill_chuck_torque, Bound.DRILL_CHUCK),
        (load.thrust_high > machine.allowances.tailstock_push, Bound.TAILSTOCK_PUSH),
        (held > slip_resultant(machine, setting), Bound.GRIP),
    )
    return next((bound for is_over, bound in checks if is_over), None)


def _load(
    machine: Machine,
    setting: Setting,
    *,
    diameter: Millimetres[float],
    pilot: Millimetres[float],
    feed: MillimetresPerRev[float],
) -> Load:
    """Return the load of a drill, its main force as that of both lips at their middle."""
    data = machine.material.force
    if data is None:
        raise ValueError(f"{machine.material.key} has no published force data")
    chip = float(drill_chip_thickness(feed=feed, point_angle=_point(machine).angle.value))
    specific = (
        float(
            specific_cutting_force(
                feed=chip,
                specific_force=data.specific_force.value,
                thickness_exponent=data.thickness_exponent.value,
            )
        )
        * machine.allowances.turning_force
    )
    torque = float(
        drilling_torque(specific_force=specific, feed=feed, diameter=diameter, pilot_diameter=pilot)
    )
    thrust = float(
        drilling_thrust(specific_force=specific, feed=feed, diameter=diameter, pilot_diameter=pilot)
    )
    data_of_drills = load_drilling()
    low, high = data_of_drills.band_low.value, data_of_drills.band_high.value
    middle = (diameter + pilot) / 2.0
    force = 2000.0 * torque / middle
    band = ForceBand(low=force * (1.0 - low), middle=force, high=force * (1.0 + high))
    return load_of(machine, setting, force=band, diameter=middle, along=thrust * (1.0 + high))


def _drill_cut(
    machine: Machine,
    setting: Setting,
    given: GivenFeed,
    *,
    pilot: Millimetres[float],
    diameter: Millimetres[float],
    travel: Millimetres[float],
    binds: Bound,
) -> MachineCut:
    return MachineCut(
        tool="drill",
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
        pecks=tuple(
            float(peck)
            for peck in peck_depths(
                depth=travel,
                diameter=diameter,
                first_ratio=load_drilling().first_peck.value,
                next_ratio=load_drilling().next_peck.value,
            )
        ),
        load=None
        if machine.material.force is None
        else _load(machine, setting, diameter=diameter, pilot=pilot, feed=given.feed),
        binds=binds,
        time=float(turning_time(length=travel, feed=given.feed, spindle_speed=setting.speed)),
    )
