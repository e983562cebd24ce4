"""A step in full: what is set, what the cut asks of the machine, what binds it."""

import math

from chartgen.limits.window import Verdict
from chartgen.model.job import Coolant
from chartgen.model.shop import LengthUnits
from chartgen.planning.operations import Bound, FedBy, Operation
from chartgen.planning.plan import JobPlan, Load, MachineCut, Parting, Step
from chartgen.quantities import Millimetres
from chartgen.wording.job import amounts
from chartgen.wording.job.amounts import across, sentence
from chartgen.wording.job.cells import cuts
from chartgen.wording.job.set_up_lines import set_up_lines
from chartgen.wording.job.ways import way_words
from chartgen.wording.language import tr
from chartgen.wording.numbers import (
    feed_label,
    length_label,
    write_cutting_speed,
    write_feed,
    write_speed,
)

_BUILDS_ON = {
    Operation.GROOVE: {Operation.TURN},
    Operation.CHAMFER: {Operation.TURN},
    Operation.BORE: {Operation.DRILL},
    Operation.PART: {Operation.TURN, Operation.DRILL, Operation.BORE},
}
_WET = {Operation.PART, Operation.GROOVE, Operation.DRILL, Operation.BORE}


def step_lines(plan: JobPlan, step: Step) -> tuple[str, ...]:
    """Return what there is to say of a step, a sentence or two each."""
    lines = [
        *set_up_lines(plan, step),
        *(way_words(plan, step.refused) if step.refused else ()),
        *_taken_as_done(plan, step),
        *(_cut(plan, step, step.cut) if step.cut else ()),
        *(_parting(plan, step.parting) if step.parting else ()),
    ]
    return tuple(sentence(line) for line in lines)


def _taken_as_done(plan: JobPlan, step: Step) -> list[str]:
    """Return which steps that were refused a step's own numbers build on."""
    needs = _BUILDS_ON.get(step.operation, set())
    return [
        tr("these numbers take step {number} as done: do not begin before it is", number=number)
        for number, before in enumerate(plan.steps, 1)
        if before.refused is not None and before.operation in needs and step.cut is not None
    ]


def _cut(plan: JobPlan, step: Step, cut: MachineCut) -> list[str]:
    units = plan.shop.request.units
    numbers = tr(
        "{speed} rev/min ({surface}), {feed} {feed_unit}, {rate}: {how}",
        speed=amounts.speed(cut),
        surface=write_cutting_speed(cut.cutting_speed, units),
        feed=write_feed(cut.feed, units),
        feed_unit=feed_label(units),
        rate=amounts.rate(cut, units),
        how=_how(cut, step.parting),
    )
    is_wet = step.operation in _WET
    lines = [f"{numbers}; {_coolant(plan.job.coolant)}" if is_wet else numbers]
    if cut.pecks:
        lines.append(_pecks(cut, units))
    elif cut.depth or cut.finish_depth:
        lines.append(_passes(cut, units))
    if cut.load is not None:
        lines.append(f"{_load(cut.load, step)}. {_binds(cut)}")
    else:
        # That nothing is known of its force is said once, where the bar is held.
        lines.append(_binds(cut))
    return lines


def _coolant(coolant: Coolant) -> str:
    return {
        Coolant.OIL: tr("cutting oil from a long brush"),
        Coolant.EMULSION: tr("emulsion, enough to keep it cool"),
        Coolant.DRY: tr("dry"),
    }[coolant]


def _how(cut: MachineCut, parting: Parting | None) -> str:
    if cut.fed_by is FedBy.POWER:
        return tr("power feed")
    wheel = {
        FedBy.CROSS_SLIDE: tr("cross-slide"),
        FedBy.CARRIAGE: tr("carriage"),
        FedBy.TAILSTOCK: tr("tailstock"),
    }[cut.fed_by]
    if cut.seconds_per_turn is None:
        return tr("{wheel} by hand", wheel=wheel)
    seconds, beats = amounts.pace(cut, parting), amounts.beats(cut)
    if not beats:
        return tr("{seconds} s a turn of the {wheel}", seconds=seconds, wheel=wheel)
    return tr(
        "{seconds} s a turn of the {wheel} (metronome {beats})",
        seconds=seconds,
        wheel=wheel,
        beats=beats,
    )


def _pecks(cut: MachineCut, units: LengthUnits) -> str:
    depths, unit = [amounts.deep(peck, units) for peck in cut.pecks], length_label(units)
    if len(depths) == 1:
        return tr("in one go, {depth} {unit} deep with its point", depth=depths[0], unit=unit)
    return tr(
        "draw back at {depths}, end at {last} {unit}",
        depths=", ".join(depths[:-1]),
        last=depths[-1],
        unit=unit,
    )


def _passes(cut: MachineCut, units: LengthUnits) -> str:
    text = f"{cuts(cut, units)} {length_label(units)}"
    if cut.finish_depth and cut.finish_feed is not None:
        return tr(
            "{cuts}, the last at {feed} {feed_unit}",
            cuts=text,
            feed=write_feed(cut.finish_feed, units),
            feed_unit=feed_label(units),
        )
    return text


def _load(load: Load, step: Step) -> str:
    if step.operation in {Operation.DRILL, Operation.CENTRE_DRILL}:
        return tr(
            "push up to {push} N, torque up to {torque} of {torque_there}, power up to {power} of "
            "{power_there} W",
            push=amounts.newtons_up(load.thrust_high),
            **_of_the_motor(load),
        )
    return tr(
        "force of {low} to {high} N, torque up to {torque} of {torque_there}, power up to {power} "
        "of {power_there} W",
        low=amounts.newtons_down(load.force_low),
        high=amounts.newtons_up(load.force_high),
        **_of_the_motor(load),
    )


def _of_the_motor(load: Load) -> dict[str, str]:
    return {
        "torque": amounts.torque_up(load.torque, there=load.torque_available),
        "torque_there": amounts.torque_down(load.torque_available),
        "power": amounts.whole_up(min(load.power, math.floor(load.power_available)))
        if load.share <= 1.0
        else amounts.whole_up(load.power),
        "power_there": amounts.whole_down(load.power_available),
    }


def _binds(cut: MachineCut) -> str:
    if cut.binds is Bound.NOTHING:
        return tr("Nothing binds: these are start values")
    return tr("What binds: {bound}", bound=tr(cut.binds.value))


def _parting(plan: JobPlan, parting: Parting) -> list[str]:
    lines = [_window(plan, parting)]
    way, units = parting.way_in, plan.shop.request.units
    if way is None:
        return lines
    if way.changes:
        ups = ", ".join(
            f"{across(change.diameter, units)} {write_speed(change.spindle_speed)}"
            for change in way.changes
        )
        lines.append(tr("change up on the way in if you like: at {changes} rev/min", changes=ups))
    inside, feed = across(way.eased_from, units), write_feed(way.eased_feed, units)
    unit = feed_label(units)
    if not way.pip:
        eased = tr("inside {diameter} feed {feed} {unit}", diameter=inside, feed=feed, unit=unit)
    else:
        eased = tr(
            "inside {diameter} feed {feed} {unit}; the core may let go from {core}",
            diameter=inside,
            feed=feed,
            unit=unit,
            core=across(_up(way.pip), units),
        )
    return [*lines, eased]


def _window(plan: JobPlan, parting: Parting) -> str:
    units = plan.shop.request.units
    floor, ceiling = write_feed(parting.floor, units), write_feed(parting.ceiling, units)
    unit = feed_label(units)
    if parting.verdict is Verdict.TIGHT:
        return tr(
            "the window is {floor} to {ceiling} {unit} at this speed, a tight one: keep to the "
            "numbers",
            floor=floor,
            ceiling=ceiling,
            unit=unit,
        )
    return tr(
        "the window is {floor} to {ceiling} {unit} at this speed",
        floor=floor,
        ceiling=ceiling,
        unit=unit,
    )


def _up(value: Millimetres[float]) -> Millimetres[float]:
    return -(-value // 0.1) * 0.1
