"""A step in full: what is set, what the cut asks of the machine, what binds it."""

from chartgen.limits.window import Verdict
from chartgen.model.job import Coolant
from chartgen.model.shop import LengthUnits
from chartgen.planning.operations import Bound, FedBy, Operation
from chartgen.planning.plan import JobPlan, Load, MachineCut, Parting, Step
from chartgen.quantities import Millimetres
from chartgen.wording.job import amounts
from chartgen.wording.job.amounts import across, bare, length, length_up, sentence
from chartgen.wording.job.cells import cuts
from chartgen.wording.job.ways import way_words
from chartgen.wording.numbers import (
    feed_label,
    length_label,
    write_cutting_speed,
    write_feed,
    write_speed,
    write_speed_ceiling,
)

_COOLANT = {
    Coolant.OIL: "cutting oil from a long brush",
    Coolant.EMULSION: "emulsion, enough to keep it cool",
    Coolant.DRY: "dry",
}
_WET = {Operation.PART, Operation.GROOVE, Operation.DRILL, Operation.BORE}


def step_lines(plan: JobPlan, step: Step) -> tuple[str, ...]:
    """Return what there is to say of a step, a sentence or two each."""
    lines = [
        *_special(plan, step),
        *(way_words(plan, step.refused) if step.refused else ()),
        *(_cut(plan, step, step.cut) if step.cut else ()),
        *(_parting(plan, step.parting) if step.parting else ()),
    ]
    return tuple(sentence(line) for line in lines)


def _special(plan: JobPlan, step: Step) -> list[str]:
    """Return what a step without numbers of a cut, or beside them, is about."""
    if step.operation is Operation.SAW and step.is_per_piece:
        return [_sawn_end(plan, step)]
    say = {
        Operation.CHECK: _check,
        Operation.SAW: _blank,
        Operation.HOLD: _hold,
        Operation.SUPPORT: _support,
        Operation.DEBURR: _measure,
        Operation.ADVANCE: _advance,
    }.get(step.operation)
    return say(plan) if say else []


def _check(plan: JobPlan) -> list[str]:
    units, job = plan.shop.request.units, plan.job
    bar = f"{across(job.bar.diameter, units)} by {length(job.bar.length, units)}"
    wanted = [f"wanted: {job.piece.tolerance}"] if job.piece.tolerance else []
    return [f"bar {bar}, {plan.material.name}", *wanted, _clean_up(plan)]


def _blank(plan: JobPlan) -> list[str]:
    units, use = plan.shop.request.units, plan.bar_use
    hole = length(plan.shop.lathe.spindle_bore or 0.0, units)
    return [
        (
            f"the bar does not go through the spindle ({hole}): saw off "
            f"{length_up(use.blank_length, units)} for "
            f"{amounts.counted(use.pieces_a_blank, 'piece')}"
        )
    ]


def _sawn_end(plan: JobPlan, step: Step) -> str:
    units = plan.shop.request.units
    return (
        f"saw it {length(step.length, units)} long: faced on the sawn end as well it has its "
        f"{length(plan.job.piece.length, units)}"
    )


def _support(plan: JobPlan) -> list[str]:
    units, up = plan.shop.request.units, plan.set_up
    out = f"the bar stands out {length_up(up.overhang, units)}: it turns on a centre"
    if up.needs_centre:
        short = length(plan.allowances.overhang_most * plan.job.bar.diameter, units)
        out = (
            f"face and centre it while it stands out {short} or less; then draw it out to "
            f"{length_up(up.overhang, units)}, tighten, and bring up the centre"
        )
    return [
        out,
        "take the centre away before drilling and before parting: never part between centres",
    ]


def _measure(plan: JobPlan) -> list[str]:
    units, piece = plan.shop.request.units, plan.job.piece
    bore = [f"bore {across(piece.bore, units)}"] if piece.bore else []
    sizes = [across(piece.diameter, units), *bore, f"length {bare(piece.length, units)}"]
    tolerance = f"; {piece.tolerance}" if piece.tolerance else ""
    return [f"measure {', '.join(sizes)} {length_label(units)}{tolerance}"]


def _advance(plan: JobPlan) -> list[str]:
    out = length_up(plan.set_up.overhang, plan.shop.request.units)
    if plan.set_up.goes_through_spindle is False:
        return ["the next piece already stands out; a new blank when this one is used up"]
    return [f"loosen, pull the bar out to {out}, tighten with the same pull on the key"]


def _clean_up(plan: JobPlan) -> str:
    units, up = plan.shop.request.units, plan.set_up
    owner = "measured" if up.run_out_is_measured else "assumed; measure it"
    out = f"it may run out by {length(up.run_out, units)} ({owner})"
    if up.stock <= 0.0:
        return f"{out}; nothing is turned off, so the piece runs out as the bar does"
    if up.stock * 2.0 < up.run_out:
        return (
            f"{out} and only {length(up.stock, units)} comes off the radius: it will not clean up "
            "all round. Set it truer, or take a thicker bar"
        )
    return f"{out}; {length(up.stock, units)} comes off the radius, so it cleans up all round"


def _hold(plan: JobPlan) -> list[str]:
    units, up = plan.shop.request.units, plan.set_up
    lines = [
        (
            f"{length(up.grip_length, units)} in the jaws on {plan.job.bar.surface.value} bar, "
            f"{length_up(up.overhang, units)} out"
        )
    ]
    if up.grip_length < plan.job.bar.diameter:
        lines.append(
            "held on less than its own thickness it tilts out of the jaws more easily: hold it "
            "longer if you can"
        )
    if up.grip == float("inf"):
        lines.append("collet: no limit of grip is worked out for it")
    elif up.grip_needed > 0.0:
        lines.append(
            f"the heaviest cut needs {amounts.kilonewtons_up(up.grip_needed)} of grip, reserves "
            f"in: {amounts.whole_up(up.key_torque)} N·m or more on the key; "
            f"{amounts.kilonewtons_down(up.grip)} is taken to be there"
        )
    on_centre = any(step.operation is Operation.SUPPORT and not step.refused for step in plan.steps)
    if up.needs_centre and on_centre:
        short = length(plan.allowances.overhang_most * plan.job.bar.diameter, units)
        lines.append(f"at first no more than {short} out, for facing and the centre drill")
    elif up.needs_centre:
        most = f"{plan.allowances.overhang_most:g}"
        lines.append(
            f"it stands out more than {most} times its thickness and runs on no centre: the "
            "numbers hold only for a straight, truly running bar; a live centre is safer"
        )
    if plan.job.holding.stop:
        lines.append("the bar rests against its stop: it takes the push of the drills")
    bound = f" ({up.speed_bound.value})"
    lines.append(f"never over {write_speed_ceiling(up.largest_speed)} rev/min{bound}")
    return lines


def _cut(plan: JobPlan, step: Step, cut: MachineCut) -> list[str]:
    units = plan.shop.request.units
    surface = write_cutting_speed(cut.cutting_speed, units)
    lines = [
        (
            f"{amounts.speed(cut)} rev/min ({surface}), {write_feed(cut.feed, units)} "
            f"{feed_label(units)}, {amounts.rate(cut, units)}: {_how(cut)}"
        )
    ]
    if step.operation in _WET:
        lines[0] += f"; {_COOLANT[plan.job.coolant]}"
    if cut.pecks:
        lines.append(_pecks(cut, units))
    elif cut.depth or cut.finish_depth:
        lines.append(_passes(cut, units))
    if cut.load is not None:
        lines.append(f"{_load(cut.load, step)}. {_binds(cut)}")
    else:
        lines.append(f"no published force data: torque and grip are not checked. {_binds(cut)}")
    return lines


def _how(cut: MachineCut) -> str:
    if cut.fed_by is FedBy.POWER:
        return "power feed"
    wheel = {
        FedBy.CROSS_SLIDE: "cross-slide",
        FedBy.CARRIAGE: "carriage",
        FedBy.TAILSTOCK: "tailstock",
    }[cut.fed_by]
    if cut.seconds_per_turn is None:
        return f"{wheel} by hand"
    beats = amounts.beats(cut)
    metronome = f" (metronome {beats})" if beats else ""
    return f"{amounts.pace(cut)} s a turn of the {wheel}{metronome}"


def _pecks(cut: MachineCut, units: LengthUnits) -> str:
    depths = [amounts.deep(peck, units) for peck in cut.pecks]
    if len(depths) == 1:
        return f"in one go, {depths[0]} {length_label(units)} deep with its point"
    return f"draw back at {', '.join(depths[:-1])}, end at {depths[-1]} {length_label(units)}"


def _passes(cut: MachineCut, units: LengthUnits) -> str:
    text = f"{cuts(cut, units)} {length_label(units)}"
    if cut.finish_depth and cut.finish_feed is not None:
        text += f", the last at {write_feed(cut.finish_feed, units)} {feed_label(units)}"
    return text


def _load(load: Load, step: Step) -> str:
    force = f"{amounts.newtons_down(load.force_low)} to {amounts.newtons_up(load.force_high)} N"
    if step.operation in {Operation.DRILL, Operation.CENTRE_DRILL}:
        force = f"push up to {amounts.newtons_up(load.thrust_high)} N"
    else:
        force = f"force of {force}"
    return (
        f"{force}, torque up to {amounts.torque_up(load.torque)} of "
        f"{amounts.torque_down(load.torque_available)}, power up to "
        f"{amounts.whole_up(load.power)} of {amounts.whole_down(load.power_available)} W"
    )


def _binds(cut: MachineCut) -> str:
    if cut.binds is Bound.NOTHING:
        return "Nothing binds: these are start values"
    return f"What binds: {cut.binds.value}"


def _parting(plan: JobPlan, parting: Parting) -> list[str]:
    units = plan.shop.request.units
    lines = [
        f"the window is {write_feed(parting.floor, units)} to {write_feed(parting.ceiling, units)} "
        f"{feed_label(units)} at this speed"
        + (", a tight one: keep to the numbers" if parting.verdict is Verdict.TIGHT else "")
    ]
    way = parting.way_in
    if way is None:
        return lines
    if way.changes:
        ups = ", ".join(
            f"{across(change.diameter, units)} {write_speed(change.spindle_speed)}"
            for change in way.changes
        )
        lines.append(f"change up on the way in if you like: at {ups} rev/min")
    lines.append(
        f"inside {across(way.eased_from, units)} feed {write_feed(way.eased_feed, units)} "
        f"{feed_label(units)}"
        + (f"; the core may let go from {across(_up(way.pip), units)}" if way.pip else "")
    )
    return lines


def _up(value: Millimetres[float]) -> Millimetres[float]:
    return -(-value // 0.1) * 0.1
