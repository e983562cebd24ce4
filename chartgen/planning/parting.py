"""Parting off and the groove: what a blade cuts, chosen by its window; else the saw."""

import math
from dataclasses import replace

from chartgen.limits.cut import Cut, recommended
from chartgen.limits.reasons import Reason
from chartgen.limits.way_in import way_in
from chartgen.limits.ways_out import ways_out
from chartgen.limits.window import Verdict, Windows
from chartgen.model.blade import Blade, Edge, ToolMaterial
from chartgen.model.job import Groove
from chartgen.model.shop import Feeding, Shop
from chartgen.physics.dig_in import Gives
from chartgen.planning.bar_use import cut_distance, pieces_from
from chartgen.planning.loads import ForceBand, load_of
from chartgen.planning.machine import Machine, Setting
from chartgen.planning.operations import Bound, FedBy, Operation
from chartgen.planning.plan import BladeOption, MachineCut, Parting, Refusal
from chartgen.quantities import Millimetres, Minutes

_RANK = {Verdict.INSIDE: 0, Verdict.TIGHT: 1, Verdict.NO_WINDOW: 2}
_LEAST_ROOM = 1.1
"""No hand keeps its pace nearer than a twentieth to either side. Common practice, no source."""
_BOUND_OF = {
    Reason.TORQUE_ONE_CUT: Bound.TORQUE,
    Reason.TORQUE_CONTINUOUS: Bound.TORQUE,
    Reason.STALL: Bound.STALL,
    Reason.GRIP: Bound.GRIP,
    Reason.WORK_DEFLECTION: Bound.BAR_BENDS,
    Reason.WORK_STRESS: Bound.BAR_AT_JAWS,
    Reason.HAND_PACE: Bound.HAND_PACE,
}


def blade_options(
    machine: Machine, *, diameter: Millimetres[float], bore: Millimetres[float]
) -> tuple[BladeOption, ...]:
    """Return every owned blade with its verdict here and the pieces a bar gives with it."""
    options = []
    for blade in machine.shop.blades:
        at = cut_distance(machine, kerf=blade.insert_width)
        found, _ = recommended(
            _cut_at(machine, at, diameter=diameter, bore=bore),
            material=machine.material,
            blade=blade,
            diameter=diameter,
            bore=bore,
        )
        index = (0, machine.shop.blades.index(blade), 0)
        options.append(
            BladeOption(
                blade=blade,
                verdict=_verdict(machine, found, index),
                room=float(found.ceiling[index] / found.floor[index]),
                is_slow=bool(found.is_slow[index]),
                pieces=pieces_from(machine, kerf=blade.insert_width),
            )
        )
    return tuple(options)


def chosen_blade(machine: Machine, options: tuple[BladeOption, ...]) -> BladeOption:
    """Return the blade the job names; else one well inside its window, that wastes least.

    A window too narrow for a hand counts less, and a carbide edge that is not the material's: a
    sharp, polished one has the roomiest window in steel too, and chips there. Only what saves a
    bar counts as waste: of blades that need as many bars the roomier one.
    """
    wanted = machine.job.choice.blade
    if wanted is not None:
        return next(option for option in options if option.blade.name == wanted)
    quantity, polished = machine.job.quantity, machine.material.wants_polished_edge
    hand = machine.shop.request.feeding is Feeding.HAND
    least = machine.allowances.room_by_hand if hand else 1.0

    def worth(option: BladeOption) -> tuple[float, ...]:
        bars = -(-quantity // option.pieces) if option.pieces else quantity
        blade, is_thin = option.blade, option.room < least
        is_other = blade.tool_material is ToolMaterial.CARBIDE and polished is not (
            blade.edge is Edge.POLISHED
        )
        return (_RANK[option.verdict], is_thin, option.is_slow, is_other, bars, -option.room)

    return min(options, key=worth)


def parted(
    machine: Machine,
    blade: Blade,
    *,
    diameter: Millimetres[float],
    bore: Millimetres[float],
) -> tuple[MachineCut, Parting] | Refusal:
    """Return the parting cut of a blade with its way in, or why it has no window."""
    at = cut_distance(machine, kerf=blade.insert_width)
    shop = _cut_at(machine, at, diameter=diameter, bore=bore)
    found, cut = recommended(
        shop, material=machine.material, blade=blade, diameter=diameter, bore=bore
    )
    index = (0, shop.blades.index(blade), 0)
    verdict = _verdict(machine, found, index)
    if verdict is Verdict.NO_WINDOW:
        ways = ways_out(shop, material=machine.material, blade=blade, diameter=diameter, bore=bore)
        return Refusal(
            operation=Operation.PART,
            tool=blade.name,
            bound=_BOUND_OF.get(found.ceiling_reason(index), Bound.BLADE),
            reasons=(found.floor_reason(index), found.ceiling_reason(index)),
            ways=ways,
        )
    way = None if bore > 0.0 else way_in(shop, found, index)
    made = _blade_cut(
        machine,
        cut,
        found,
        index,
        time=cut.time if way is None else way.time,
        travel=(diameter - bore) / 2.0,
        passes=1,
    )
    slack = float(found.dig_in.slack[index])
    parting = Parting(
        blade=blade,
        verdict=verdict,
        floor=float(found.floor[index]),
        ceiling=float(found.ceiling[index]),
        way_in=way,
        slack=slack if math.isfinite(slack) else math.inf,
        gives=Gives(int(found.dig_in.gives[index])),
    )
    return made, parting


def grooved(
    machine: Machine,
    groove: Groove,
    *,
    diameter: Millimetres[float],
    distance: Millimetres[float],
) -> MachineCut | Refusal:
    """Return the plunges that cut a groove with the widest blade that fits into it.

    `distance` runs from the jaws to its near side.
    """
    end = diameter - 2.0 * groove.depth
    fits = [b for b in machine.shop.blades if b.insert_width <= groove.width + 1e-9]
    refusals = []
    for blade in sorted(fits, key=lambda one: -one.insert_width):
        found, cut = recommended(
            _cut_at(machine, distance, diameter=diameter, bore=end),
            material=machine.material,
            blade=blade,
            diameter=diameter,
            bore=end,
        )
        index = (0, machine.shop.blades.index(blade), 0)
        if _verdict(machine, found, index) is not Verdict.NO_WINDOW:
            passes = math.ceil(groove.width / blade.insert_width - 1e-9)
            return _blade_cut(
                machine,
                cut,
                found,
                index,
                time=passes * cut.time,
                travel=groove.depth,
                passes=passes,
            )
        refusals.append(
            Refusal(
                operation=Operation.GROOVE,
                tool=blade.name,
                bound=_BOUND_OF.get(found.ceiling_reason(index), Bound.BLADE),
                reasons=(found.floor_reason(index), found.ceiling_reason(index)),
            )
        )
    if refusals:
        return refusals[0]
    return Refusal(operation=Operation.GROOVE, tool="", bound=Bound.BLADE)


def _verdict(machine: Machine, found: Windows, index: tuple[int, int, int]) -> Verdict:
    """Return the verdict of a window; one too narrow for any hand to keep within is none."""
    by_hand = machine.shop.request.feeding is Feeding.HAND
    if by_hand and found.ceiling[index] < _LEAST_ROOM * found.floor[index]:
        return Verdict.NO_WINDOW
    return found.verdict(index)


def _cut_at(
    machine: Machine,
    distance: Millimetres[float],
    *,
    diameter: Millimetres[float],
    bore: Millimetres[float],
) -> Shop:
    """Return the shop cutting so far from the jaws, at a diameter down to a bore.

    A window takes the bar behind the spindle to be of the cut's own size, and a tube where that
    has a bore. The bar of a job is solid and as thick as it came: what stands out of it is made
    as long as whips, at the size of the cut, where the bar does. A shaft whips in proportion to
    √(D² + d²) / L².
    """
    work, bar = machine.shop.work, machine.job.bar
    alike = work.bar_behind * (math.hypot(diameter, bore) / bar.diameter) ** 0.5
    return replace(machine.shop, work=replace(work, jaw_distance=distance, bar_behind=alike))


def _blade_cut(
    machine: Machine,
    cut: Cut,
    found: Windows,
    index: tuple[int, int, int],
    *,
    time: Minutes[float],
    travel: Millimetres[float],
    passes: int,
) -> MachineCut:
    load = None
    if cut.force is not None:
        setting = Setting(
            position=cut.position,
            speed=cut.spindle_speed,
            torque=cut.torque_available,
            stall_torque=cut.torque_stall,
            bound=Bound.NOTHING,
        )
        force = ForceBand(low=cut.force.low, middle=cut.force.nominal, high=cut.force.high)
        load = load_of(machine, setting, force=force, diameter=cut.diameter, along=0.0)
    by_hand = machine.shop.request.feeding is Feeding.HAND
    reason = found.ceiling_reason(index)
    return MachineCut(
        tool=cut.blade.name,
        tool_material=cut.blade.tool_material,
        position=cut.position,
        spindle_speed=cut.spindle_speed,
        cutting_speed=cut.cutting_speed,
        feed=cut.feed,
        finish_feed=None,
        fed_by=FedBy.CROSS_SLIDE if by_hand else FedBy.POWER,
        travel_per_turn=machine.shop.lathe.cross_slide.travel_per_turn if by_hand else None,
        seconds_per_turn=cut.seconds_per_turn if by_hand else None,
        depth=0.0,
        finish_depth=0.0,
        passes=passes,
        travel=travel,
        pecks=(),
        load=load,
        binds=_BOUND_OF.get(reason, Bound.BLADE),
        time=time,
    )
