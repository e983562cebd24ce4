"""What to look at before the start, and what to do if the blade digs in: common practice."""

import math

from chartgen.planning.operations import Operation
from chartgen.planning.plan import JobPlan
from chartgen.wording.job import amounts
from chartgen.wording.job.amounts import length, length_up
from chartgen.wording.job.facts import COOLANT_CHECK
from chartgen.wording.numbers import length_label, write_length, write_slack
from chartgen.wording.steps.dig_in import GIVES

_DIG_IN = (
    "Stop the spindle. Hands off the handle until the chuck stands still.",
    "Only then wind the blade out, the way it went in. Never run backwards with it in the slot.",
    (
        "Look at edge, blade, centre height. Did the bar move in the jaws? Measure the overhang, "
        "pull the key again."
    ),
    (
        "Find out why before you start: feed too timid or uneven, slack in the slide, blade low or "
        "askew, chips in the slot."
    ),
    "Go on in the same slot at the same numbers, not more gently; or saw it.",
)


def checklist(plan: JobPlan) -> tuple[str, ...]:
    """Return what to tick before the first start."""
    units, up = plan.shop.request.units, plan.set_up
    first = next(step.cut for step in plan.steps if step.cut)
    key = f", key pulled with {amounts.whole_up(up.key_torque)} N·m" if up.key_torque else ""
    parting = next((step.parting for step in plan.steps if step.parting), None)
    drilling = any(step.operation is Operation.DRILL for step in plan.steps)
    behind = (
        f"{length(up.behind, units)} of bar behind the spindle: straight, sleeved, fenced off"
        if up.behind
        else "No bar stands out behind the spindle"
    )
    items = [
        "Eye protection on; no gloves, rings, loose sleeves or hair",
        (
            f"Bar {length_up(up.overhang, units)} out, {length(up.grip_length, units)} in the "
            f"jaws{key}"
        ),
        "Chuck key out and put away",
        "Chuck turned a full turn by hand: nothing strikes; slides free over their whole way",
        behind,
        (
            f"Speed set: {amounts.speed(first)} rev/min; never over "
            f"{amounts.whole_down(up.largest_speed)}"
        ),
        COOLANT_CHECK[plan.job.coolant],
        "Guards down, stop within reach",
    ]
    if drilling:
        items.append("Tailstock clamped; drill chuck tight, its key out")
    if parting is not None:
        height = plan.allowances.centre_height
        error = f"{write_length(height, units)} {length_label(units)}"
        items.append(
            f"Blade {parting.blade.name}: square, on centre within {error}, "
            f"{length(parting.blade.projection, units)} out or less; carriage locked"
        )
        items.append("Tray or rod ready to catch the piece; no hand")
    return tuple(items)


def dig_in(plan: JobPlan) -> tuple[str, ...]:
    """Return what to do if it digs in, and what gives first on this lathe with this blade."""
    parting = next((step.parting for step in plan.steps if step.parting), None)
    if parting is None:
        return _DIG_IN
    if math.isinf(parting.slack):
        return _DIG_IN
    units = plan.shop.request.units
    return (
        *_DIG_IN,
        (
            f"This cut swallows about {write_slack(parting.slack, units)} {length_label(units)} of "
            f"sudden extra bite; then {GIVES[parting.gives]}."
        ),
    )
