"""What to look at before the start, and what to do if the blade digs in: common practice."""

import math

from chartgen.model.job import Coolant
from chartgen.planning.operations import Operation
from chartgen.planning.plan import JobPlan
from chartgen.wording.job import amounts
from chartgen.wording.job.amounts import length, length_up
from chartgen.wording.language import tr
from chartgen.wording.numbers import length_label, write_length, write_slack
from chartgen.wording.steps.dig_in import GIVES


def checklist(plan: JobPlan) -> tuple[str, ...]:
    """Return what to tick before the first start."""
    units, up = plan.shop.request.units, plan.set_up
    first = next(step.cut for step in plan.steps if step.cut)
    parting = next((step.parting for step in plan.steps if step.parting), None)
    drilling = any(step.operation is Operation.DRILL for step in plan.steps)
    items = [
        tr("Eye protection on; no gloves, rings, loose sleeves or hair"),
        _held(plan),
        tr("Chuck key out and put away"),
        tr("Chuck turned a full turn by hand: nothing strikes; slides free over their whole way"),
        (
            tr(
                "{length} of bar behind the spindle: straight, sleeved, fenced off",
                length=length(up.behind, units),
            )
            if up.behind
            else tr("No bar stands out behind the spindle")
        ),
        tr(
            "Speed set: {speed} rev/min; never over {most}",
            speed=amounts.speed(first),
            most=amounts.whole_down(up.largest_speed),
        ),
        _within_reach(plan.job.coolant),
        tr("Guards down, stop within reach"),
    ]
    if drilling:
        items.append(tr("Tailstock clamped; drill chuck tight, its key out"))
    if parting is not None:
        height = plan.allowances.centre_height
        items.append(
            tr(
                "Blade {name}: square, on centre within {error}, {length} out or less; carriage "
                "locked",
                name=parting.blade.name,
                error=f"{write_length(height, units)} {length_label(units)}",
                length=length(parting.blade.projection, units),
            )
        )
        items.append(tr("Tray or rod ready to catch the piece; no hand"))
    return tuple(items)


def _held(plan: JobPlan) -> str:
    units, up = plan.shop.request.units, plan.set_up
    overhang, grip = length_up(plan.first_overhang, units), length(up.grip_length, units)
    if not up.key_torque:
        return tr("Bar {overhang} out, {grip} in the jaws", overhang=overhang, grip=grip)
    return tr(
        "Bar {overhang} out, {grip} in the jaws, key pulled with {torque} N·m or more",
        overhang=overhang,
        grip=grip,
        torque=amounts.whole_up(up.key_torque),
    )


def _within_reach(coolant: Coolant) -> str:
    return {
        Coolant.OIL: tr("Oil and a long brush within reach, no rag"),
        Coolant.EMULSION: tr("Emulsion on, aimed at the cut, splash guard down"),
        Coolant.DRY: tr("Chip hook and brush within reach, no rag"),
    }[coolant]


def dig_in(plan: JobPlan) -> tuple[str, ...]:
    """Return what to do if it digs in, and what gives first on this lathe with this blade."""
    parting = next((step.parting for step in plan.steps if step.parting), None)
    steps = (
        tr("Stop the spindle. Hands off the handle until the chuck stands still."),
        tr(
            "Only then wind the blade out, the way it went in. Never run backwards with it in the "
            "slot."
        ),
        tr(
            "Look at edge, blade, centre height. Did the bar move in the jaws? Measure the "
            "overhang, pull the key again."
        ),
        tr(
            "Find out why before you start: feed too timid or uneven, slack in the slide, blade "
            "low or askew, chips in the slot."
        ),
        tr("Go on in the same slot at the same numbers, not more gently; or saw it."),
    )
    if parting is None or math.isinf(parting.slack):
        return steps
    units = plan.shop.request.units
    swallowed = tr(
        "This cut swallows about {slack} {unit} of sudden extra bite; then {gives}.",
        slack=write_slack(parting.slack, units),
        unit=length_label(units),
        gives=tr(GIVES[parting.gives]),
    )
    return (*steps, swallowed)
