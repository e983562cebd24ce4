"""Why a step cannot be made as asked, and what to do instead."""

from chartgen.model.shop import LengthUnits
from chartgen.planning.operations import Bound, Operation
from chartgen.planning.plan import JobPlan, Refusal
from chartgen.wording.job.amounts import length
from chartgen.wording.what_if import way_lines

_MOST_WAYS = 2
_WAY = {
    Bound.TORQUE: "use a slower drive position if there is one, or a smaller size of tool",
    Bound.STALL: "use a slower drive position if there is one, or a smaller size of tool",
    Bound.GRIP: "hold it tighter, in jaws with teeth, or against a stop that takes the push",
    Bound.BAR_BENDS: "let less bar stand out, or bring up the centre",
    Bound.BAR_AT_JAWS: "let less bar stand out, or bring up the centre",
    Bound.TAILSTOCK_PUSH: "add a drill between, or open the hole with a boring bar",
    Bound.DRILL_CHUCK: "add a drill between, or open the hole with a boring bar",
    Bound.NO_TOOL: "list one in the shop file",
    Bound.SLOWEST_SPINDLE: (
        "a slower drive position, a smaller size, or less bar behind the spindle"
    ),
}
_WHY = {
    Bound.BAR_BENDS: "not like this: the bar bends away even under the lightest cut",
    Bound.BAR_AT_JAWS: "not like this: even the lightest cut bends the bar too hard at the jaws",
    Bound.NO_TOOL: "no tool of this shop makes this step",
    Bound.SLOWEST_SPINDLE: (
        "not on this lathe: even its slowest speed is too fast for edge, chuck or bar"
    ),
}
_BORING = (
    "a stouter or shorter boring bar, or bore from both ends; a reamer follows a drill where the "
    "size is a reamer's"
)


def way_words(plan: JobPlan, refused: Refusal) -> list[str]:
    """Return the reason in one line and the ways out in the next."""
    units = plan.shop.request.units
    match refused.operation:
        case Operation.PART | Operation.GROOVE:
            return _of_blade(plan, refused, units)
        case Operation.BORE:
            return [
                (
                    f"not with {refused.tool} as it is: it stands out too far for its thickness, "
                    "or is too short"
                ),
                f"way out: {_BORING}",
            ]
        case Operation.DRILL if refused.bound is Bound.NO_TOOL:
            return [
                (
                    "no drill of this shop leads to this bore: none leaves a boring bar its share, "
                    "none is its size"
                ),
                f"way out: list the drill under [drills], or {_BORING}",
            ]
        case Operation.CHECK:
            use = length(plan.bar_use.pitch, units)
            held = length(plan.set_up.grip_length + plan.set_up.jaw_distance, units)
            return [
                f"the bar is too short for one piece: it uses {use}, and {held} stay in the jaws",
                "way out: a longer bar, or less of it in the jaws if the cuts are light",
            ]
        case _:
            why = _WHY.get(
                refused.bound,
                f"not on this lathe: {refused.bound.value} is at its end even for the lightest cut",
            )
            way = _WAY.get(refused.bound, "take less at a time, or another machine")
            return [why, f"way out: {way}"]


def _of_blade(plan: JobPlan, refused: Refusal, units: LengthUnits) -> list[str]:
    if not refused.reasons:
        narrowest = min(blade.insert_width for blade in plan.shop.blades)
        return [
            "no blade of this shop is narrow enough",
            f"way out: a groove of {length(narrowest, units)} or wider, or a blade ground to it",
        ]
    floor, ceiling = refused.reasons
    lines = [
        (
            f'no window with blade {refused.tool}: below stands "{floor.legend}", above '
            f'"{ceiling.legend}", and nothing lies between them'
        )
    ]
    ways = way_lines(refused.ways[:_MOST_WAYS], units)
    if ways:
        lines.append(f"to part it after all: {'; or '.join(ways)}")
    return lines
