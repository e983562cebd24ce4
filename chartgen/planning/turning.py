"""Facing, outside turning and the chamfer: a turning tool on the outside of the bar."""

import math
from collections.abc import Mapping

from chartgen.model.tooling import TurningTool
from chartgen.physics.time import plunge_time, turning_time
from chartgen.planning.bending import bending_caps
from chartgen.planning.feeding import finishing_feed, gentler_feeds, given_feed
from chartgen.planning.loads import back_force_share, feed_force_share, turning_force
from chartgen.planning.machine import Machine, Setting, settings, turning_speeds
from chartgen.planning.operations import Bound, FedBy, Operation
from chartgen.planning.passes import (
    LEAST_DEPTH,
    Passes,
    cut_of,
    deepest,
    driving_caps,
    shared_out,
    soonest,
)
from chartgen.planning.plan import MachineCut, Refusal
from chartgen.quantities import Millimetres, Newtons

_COARSEST_FINISH = 0.25
"""A finishing feed is no more than this share of the nose radius."""

_NEARLY = 0.7


def turning_tool(machine: Machine) -> TurningTool | None:
    """Return the tool the job names, or the first one listed; None where there is none."""
    tools, wanted = machine.shop.tools.turning, machine.job.choice.turning_tool
    return next((tool for tool in tools if wanted in {None, tool.name}), None)


def turned(
    machine: Machine,
    tool: TurningTool,
    *,
    start: Millimetres[float],
    end: Millimetres[float],
    travel: Millimetres[float],
    overhang: Millimetres[float],
    run_out: Millimetres[float],
    on_centre: bool,
) -> MachineCut | Refusal:
    """Return the passes that take the bar from one diameter to another over a length."""
    # Thinnest and weakest at the end of the last pass.
    bending = bending_caps(
        machine,
        diameter=end,
        bore=0.0,
        overhang=overhang,
        sideways=back_force_share(),
        on_centre=on_centre,
    )
    most, stock = _deepest_of(machine, tool), (start - end) / 2.0

    def planned(setting: Setting) -> Passes | None:
        given = given_feed(
            machine,
            wanted=machine.allowances.turning_feed,
            speed=setting.speed,
            slide=FedBy.CARRIAGE,
        )
        finish = finishing_feed(
            machine,
            given,
            wanted=min(machine.allowances.finish_feed, _COARSEST_FINISH * tool.nose_radius),
            speed=setting.speed,
            slide=FedBy.CARRIAGE,
        )
        caps = bending | driving_caps(
            machine, setting, diameter=start, axial_share=feed_force_share()
        )
        limit, bound = deepest(machine, caps=caps, depths=most, feed=given.feed)
        # The first pass meets the high side of a bar that runs out.
        limit -= run_out / 2.0
        if limit < LEAST_DEPTH:
            return None
        count, depth, last = shared_out(stock, finish=machine.allowances.finish_depth, most=limit)
        one = float(turning_time(length=travel, feed=given.feed, spindle_speed=setting.speed))
        fine = float(turning_time(length=travel, feed=finish.feed, spindle_speed=setting.speed))
        return Passes(
            setting=setting,
            given=given,
            finish=finish,
            depth=depth,
            finish_depth=last,
            count=count,
            # One rough pass less deep than the limit is no matter of the limit.
            binds=_binding(bound, setting, limits=depth > _NEARLY * limit),
            force=turning_force(machine, depth=max(depth, last) + run_out / 2.0, feed=given.feed),
            time=(count - 1) * one + fine,
        )

    start_speed, ceiling = turning_speeds(machine.material, tool.tool_material)
    offered = settings(machine, diameter=start, start=start_speed, ceiling=ceiling)
    best = soonest(offered, planned, between=machine.allowances.pass_minutes)
    if best is None:
        return _refused(machine, tool, Operation.TURN, offered, bending, start)
    return cut_of(
        machine, tool, best, diameter=start, travel=travel, axial_share=feed_force_share()
    )


def faced(
    machine: Machine,
    tool: TurningTool,
    *,
    diameter: Millimetres[float],
    bore: Millimetres[float],
    stock: Millimetres[float],
    overhang: Millimetres[float],
) -> MachineCut | Refusal:
    """Return the passes that face the end of the bar at constant spindle speed."""
    # In facing the two side forces change places: the feed is square to the axis.
    bending = bending_caps(
        machine, diameter=diameter, bore=bore, overhang=overhang, sideways=feed_force_share()
    )
    most, travel = _deepest_of(machine, tool), (diameter - bore) / 2.0

    def planned(setting: Setting) -> Passes | None:
        given = given_feed(
            machine,
            wanted=machine.allowances.turning_feed,
            speed=setting.speed,
            slide=FedBy.CROSS_SLIDE,
        )
        caps = bending | driving_caps(
            machine, setting, diameter=diameter, axial_share=back_force_share()
        )
        limit, bound = deepest(machine, caps=caps, depths=most, feed=given.feed)
        if limit < LEAST_DEPTH:
            return None
        count = math.ceil(stock / limit - 1e-9)
        one = float(
            plunge_time(
                outer_diameter=diameter,
                inner_diameter=bore,
                feed=given.feed,
                spindle_speed=setting.speed,
            )
        )
        held = Bound.HAND_PACE if given.is_held_by_hand else bound
        return Passes(
            setting=setting,
            given=given,
            finish=given,
            depth=stock / count,
            finish_depth=0.0,
            count=count,
            binds=_binding(held, setting, limits=count > 1 or given.is_held_by_hand),
            force=turning_force(machine, depth=stock / count, feed=given.feed),
            time=count * one,
        )

    start_speed, ceiling = turning_speeds(machine.material, tool.tool_material)
    offered = settings(machine, diameter=diameter, start=start_speed, ceiling=ceiling)
    best = soonest(offered, planned, between=machine.allowances.pass_minutes)
    if best is None:
        return _refused(machine, tool, Operation.FACE, offered, bending, diameter)
    return cut_of(
        machine, tool, best, diameter=diameter, travel=travel, axial_share=back_force_share()
    )


def chamfered(
    machine: Machine,
    tool: TurningTool,
    *,
    diameter: Millimetres[float],
    width: Millimetres[float],
    overhang: Millimetres[float],
    on_centre: bool,
) -> MachineCut | Refusal:
    """Return the plunge of a tool's straight flank, set at 45 degrees, into the edge."""
    flank = width * math.sqrt(2.0)
    # A flank at 45 degrees pushes both ways alike.
    bending = bending_caps(
        machine,
        diameter=diameter,
        bore=0.0,
        overhang=overhang,
        sideways=feed_force_share(),
        on_centre=on_centre,
    )

    def planned(setting: Setting) -> Passes | None:
        caps = bending | driving_caps(
            machine, setting, diameter=diameter, axial_share=feed_force_share()
        )
        # The flank is as broad as it is: what is too much for a limit is fed more finely.
        over = Bound.NOTHING
        for given in gentler_feeds(
            machine,
            wanted=machine.allowances.finish_feed,
            speed=setting.speed,
            slide=FedBy.CROSS_SLIDE,
        ):
            limit, bound = deepest(
                machine, caps=caps, depths={Bound.NOTHING: math.inf}, feed=given.feed
            )
            if limit >= flank:
                break
            over = bound
        else:
            return None
        return Passes(
            setting=setting,
            given=given,
            finish=given,
            depth=width,
            finish_depth=0.0,
            count=1,
            binds=_binding(over, setting, limits=over is not Bound.NOTHING),
            force=turning_force(machine, depth=flank, feed=given.feed),
            time=width / (given.feed * setting.speed),
        )

    start_speed, ceiling = turning_speeds(machine.material, tool.tool_material)
    # A broad edge chatters: half of the turning speed.
    offered = settings(machine, diameter=diameter, start=0.5 * start_speed, ceiling=ceiling)
    best = soonest(offered, planned, between=machine.allowances.pass_minutes)
    if best is None:
        return _refused(machine, tool, Operation.CHAMFER, offered, bending, diameter)
    return cut_of(
        machine, tool, best, diameter=diameter, travel=width, axial_share=feed_force_share()
    )


def _deepest_of(machine: Machine, tool: TurningTool) -> Mapping[Bound, Millimetres[float]]:
    depth = machine.allowances.rough_depth
    return {Bound.TOOL_DEPTH: min(depth, tool.largest_depth or depth)}


def _binding(bound: Bound, setting: Setting, *, limits: bool) -> Bound:
    """Return what is told to bind: what limits the depth, else the speed, else nothing."""
    if limits and bound is not Bound.TOOL_DEPTH:
        return bound
    return setting.bound


def _refused(
    machine: Machine,
    tool: TurningTool,
    operation: Operation,
    offered: tuple[Setting, ...],
    bending: Mapping[Bound, Newtons[float]],
    diameter: Millimetres[float],
) -> Refusal:
    """Return why not even the thinnest cut fits: the limit met first at the strongest speed."""
    if not offered:
        return Refusal(operation=operation, tool=tool.name, bound=Bound.SLOWEST_SPINDLE)
    strongest = max(offered, key=lambda setting: setting.torque)
    caps = dict(bending) | driving_caps(
        machine, strongest, diameter=diameter, axial_share=feed_force_share()
    )
    bound = min(caps, key=lambda one: caps[one])
    return Refusal(operation=operation, tool=tool.name, bound=bound)
