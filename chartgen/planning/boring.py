"""Boring a drilled hole to size: how deep a cut the bar in the bore bears."""

import math

from chartgen.model.tooling import BoringBar
from chartgen.physics.boring import force_for_boring_bar_deflection, overhang_ratio, resultant_force
from chartgen.physics.time import turning_time
from chartgen.planning.bending import bending_caps
from chartgen.planning.feeding import finishing_feed, given_feed
from chartgen.planning.loads import turning_force
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
from chartgen.quantities import Millimetres
from chartgen.reference.boring import load_boring

OUT_OF_BORE: Millimetres[float] = 3.0
"""How much longer than its travel a boring bar stands out, and how much deeper than it the hole
is drilled at full diameter: the bar's end must not meet the cone that the drill leaves."""
_COARSEST = 0.25
_TO_SIZE: Millimetres[float] = 0.05
_NEARLY = 0.7


def boring_bars(machine: Machine, *, hole: Millimetres[float]) -> tuple[BoringBar, ...]:
    """Return the bars that enter a hole, the stoutest first; only the one that the job names."""
    wanted = machine.job.choice.boring_bar
    bars = [
        bar
        for bar in machine.shop.tools.boring
        if bar.smallest_bore <= hole and wanted in {None, bar.name}
    ]
    return tuple(sorted(bars, key=lambda bar: -bar.diameter))


def bored(
    machine: Machine,
    bar: BoringBar,
    *,
    hole: Millimetres[float],
    bore: Millimetres[float],
    length: Millimetres[float],
    overhang: Millimetres[float],
) -> MachineCut | Refusal:
    """Return the passes that take a drilled hole to its bore."""
    out = length + OUT_OF_BORE
    data = load_boring()
    side = data.boring
    ratio = float(overhang_ratio(overhang=out, diameter=bar.diameter))
    if out > bar.reach or ratio > data.overhang[bar.shank].value:
        return Refusal(operation=Operation.BORE, tool=bar.name, bound=Bound.TOOL_BENDS)
    bends = force_for_boring_bar_deflection(
        deflection=machine.allowances.boring_deflection,
        overhang=out,
        diameter=bar.diameter,
        elastic_modulus=data.modulus[bar.shank].value,
    )
    still = bending_caps(
        machine,
        diameter=machine.job.piece.diameter,
        bore=bore,
        overhang=overhang,
        sideways=side.radial.value,
    ) | {
        Bound.TOOL_BENDS: float(bends)
        / float(resultant_force(force=1.0, radial_share=side.radial.value))
    }
    start_speed, ceiling = turning_speeds(machine.material, bar.tool_material)
    slower = machine.allowances.boring_speed

    def planned(setting: Setting) -> Passes | None:
        given = given_feed(
            machine,
            wanted=min(machine.allowances.turning_feed, _COARSEST * bar.nose_radius),
            speed=setting.speed,
            slide=FedBy.CARRIAGE,
        )
        finish = finishing_feed(
            machine,
            given,
            wanted=min(machine.allowances.finish_feed, _COARSEST * bar.nose_radius),
            speed=setting.speed,
            slide=FedBy.CARRIAGE,
        )
        caps = still | driving_caps(machine, setting, diameter=bore, axial_share=side.feed.value)
        depths = {Bound.TOOL_DEPTH: machine.allowances.rough_depth}
        limit, bound = deepest(machine, caps=caps, depths=depths, feed=given.feed)
        if limit < LEAST_DEPTH:
            return None
        count, depth, last = shared_out(
            (bore - hole) / 2.0, finish=machine.allowances.finish_depth, most=limit
        )
        one = float(turning_time(length=length, feed=given.feed, spindle_speed=setting.speed))
        fine = float(turning_time(length=length, feed=finish.feed, spindle_speed=setting.speed))
        binds = bound if depth > _NEARLY * limit and bound is not Bound.TOOL_DEPTH else None
        return Passes(
            setting=setting,
            given=given,
            finish=finish,
            depth=depth,
            finish_depth=last,
            count=count,
            binds=binds or setting.bound,
            force=turning_force(machine, depth=max(depth, last), feed=given.feed),
            time=(count - 1) * one + fine,
        )

    offered = settings(machine, diameter=bore, start=start_speed * slower, ceiling=ceiling * slower)
    best = soonest(offered, planned, between=machine.allowances.pass_minutes)
    if best is None:
        bound = Bound.SLOWEST_SPINDLE
        if offered:
            strongest = max(offered, key=lambda setting: setting.torque)
            caps = still | driving_caps(
                machine, strongest, diameter=bore, axial_share=side.feed.value
            )
            bound = min(caps, key=lambda one: caps[one])
        return Refusal(operation=Operation.BORE, tool=bar.name, bound=bound)
    return cut_of(machine, bar, best, diameter=bore, travel=length, axial_share=side.feed.value)


def holes_for(machine: Machine, *, bore: Millimetres[float]) -> tuple[Millimetres[float], ...]:
    """Return the drills that lead to a bore, those that leave a boring bar least first.

    A drill of the very size of the bore is taken where no bar enters; none where neither is
    owned.
    """
    tools = machine.shop.tools
    if tools.drills is None:
        return ()
    most = tools.tailstock.largest_drill if tools.tailstock else math.inf
    owned = [drill for drill in tools.drills.diameters if drill <= most]
    room = [drill for drill in owned if drill <= bore - machine.allowances.boring_stock]
    to_bore = [drill for drill in room if boring_bars(machine, hole=drill)]
    if to_bore:
        return tuple(sorted(to_bore, reverse=True))
    to_size = [drill for drill in owned if abs(drill - bore) < _TO_SIZE]
    return tuple(to_size[:1])
