"""Why a step cannot be made as asked, and what to do instead."""

from chartgen.model.shop import LengthUnits
from chartgen.planning.operations import Bound, Operation
from chartgen.planning.plan import JobPlan, Refusal
from chartgen.wording.job.amounts import length
from chartgen.wording.language import tr
from chartgen.wording.what_if import way_lines


def way_words(plan: JobPlan, refused: Refusal) -> list[str]:
    """Return the reason in one line and the ways out in the next."""
    units = plan.shop.request.units
    match refused.operation:
        case Operation.PART | Operation.GROOVE:
            return _of_blade(plan, refused, units)
        case Operation.BORE if refused.bound is Bound.TOOL_BENDS:
            return [
                tr(
                    "not with {tool} as it is: it stands out too far for its thickness, or is too "
                    "short",
                    tool=refused.tool,
                ),
                tr("way out: {way}", way=_boring()),
            ]
        case Operation.DRILL if refused.bound is Bound.NO_TOOL:
            return [
                tr(
                    "no drill of this shop leads to this bore: none leaves a boring bar its share, "
                    "none is its size"
                ),
                tr("way out: list the drill under [drills], or {way}", way=_boring()),
            ]
        case Operation.CHECK:
            use = length(plan.bar_use.pitch, units)
            held = length(plan.set_up.grip_length + plan.set_up.jaw_distance, units)
            return [
                tr(
                    "the bar is too short for one piece: it uses {length}, and {held} stay in the "
                    "jaws",
                    length=use,
                    held=held,
                ),
                tr("way out: a longer bar, or less of it in the jaws if the cuts are light"),
            ]
        case _:
            return [_why(refused.bound), tr("way out: {way}", way=_way(refused.bound))]


def _why(bound: Bound) -> str:
    if bound is Bound.BAR_BENDS:
        return tr("not like this: the bar bends away even under the lightest cut")
    if bound is Bound.BAR_AT_JAWS:
        return tr("not like this: even the lightest cut bends the bar too hard at the jaws")
    if bound is Bound.NO_TOOL:
        return tr("no tool of this shop makes this step")
    if bound is Bound.SLOWEST_SPINDLE:
        return tr("not on this lathe: even its slowest speed is too fast for edge, chuck or bar")
    return tr(
        "not on this lathe: {bound} is at its end even for the lightest cut", bound=tr(bound.value)
    )


def _way(bound: Bound) -> str:
    slower = tr("use a slower drive position if there is one, or a smaller size of tool")
    shorter = tr("let less bar stand out, or bring up the centre")
    between = tr("add a drill between, or open the hole with a boring bar")
    ways = {
        Bound.TORQUE: slower,
        Bound.STALL: slower,
        Bound.GRIP: tr(
            "hold it tighter, in jaws with teeth, or against a stop that takes the push"
        ),
        Bound.BAR_BENDS: shorter,
        Bound.BAR_AT_JAWS: shorter,
        Bound.TAILSTOCK_PUSH: between,
        Bound.DRILL_CHUCK: between,
        Bound.NO_TOOL: tr("list one in the shop file"),
        Bound.SLOWEST_SPINDLE: tr(
            "a slower drive position, a smaller size, or less bar behind the spindle"
        ),
    }
    return ways.get(bound) or tr("take less at a time, or another machine")


def _boring() -> str:
    return tr(
        "a stouter or shorter boring bar, or bore from both ends; a reamer follows a drill where "
        "the size is a reamer's"
    )


def _of_blade(plan: JobPlan, refused: Refusal, units: LengthUnits) -> list[str]:
    if not refused.reasons:
        narrowest = min(blade.insert_width for blade in plan.shop.blades)
        return [
            tr("no blade of this shop is narrow enough"),
            tr(
                "way out: a groove of {length} or wider, or a blade ground to it",
                length=length(narrowest, units),
            ),
        ]
    floor, ceiling = refused.reasons
    lines = [
        tr(
            'no window with blade {name}: below stands "{floor}", above "{ceiling}", and no feed '
            "that can be kept lies between them",
            name=refused.tool,
            floor=tr(floor.legend),
            ceiling=tr(ceiling.legend),
        )
    ]
    if refused.operation is Operation.GROOVE:
        narrower = tr("a narrower blade or a fresh edge, plunged side by side")
        lines.append(tr("way out: {way}", way=narrower))
    # Two at most: the roomiest come first.
    match way_lines(refused.ways[:2], units):
        case [way]:
            lines.append(tr("to part it after all: {way}", way=way))
        case [way, other]:
            lines.append(tr("to part it after all: {way}; or {other}", way=way, other=other))
    return lines
