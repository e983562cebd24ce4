"""One line a step of what to watch: common practice at a manual lathe, no source."""

from chartgen.planning.operations import Operation
from chartgen.planning.plan import JobPlan, Step
from chartgen.wording.language import tr


def watch_line(plan: JobPlan, step: Step) -> str:
    """Return what to watch in a step."""
    if step.operation is Operation.PART:
        return _part(is_bored=plan.job.piece.bore > 0.0, is_long=plan.set_up.needs_centre)
    if step.operation is Operation.SAW:
        return _saw(is_piece=step.is_per_piece)
    if step.operation is Operation.ADVANCE and plan.set_up.goes_through_spindle is False:
        return tr("Key out again after each new blank.")
    watch = _watch(step.operation)
    if step.cut is not None and len(step.cut.pecks) > 1:
        return tr("Draw back at each peck until the flutes are clear. {watch}", watch=watch)
    return watch


def _watch(operation: Operation) -> str:
    return {
        Operation.CHECK: tr(
            "Measure the bar before it is in the chuck: diameter, length, burrs, bends. Deburr "
            "its end."
        ),
        Operation.HOLD: tr(
            "Jaws on clean bar, not on a burr. Turn the chuck by hand a full turn before the "
            "first start. Key out."
        ),
        Operation.FACE: tr(
            "A pip in the middle: the tool is off centre height. Set it now, every later tool by "
            "it."
        ),
        Operation.CENTRE_DRILL: tr("It must start without wandering. If it wobbles, face again."),
        Operation.SUPPORT: tr(
            "Quill short, clamped. Oil or a turning centre; tighten until it does not rattle, no "
            "more. It warms up: ease it."
        ),
        Operation.TURN: tr(
            "Measure after the first pass, spindle stopped, and set the dial by it. A first pass "
            "on skin or a bent bar cuts in gulps."
        ),
        Operation.DRILL: tr("Ease the feed as it comes through: it grabs there."),
        Operation.BORE: tr(
            "Rings or chatters: slower, not finer. Stop before you measure. No finger in the bore."
        ),
        Operation.GROOVE: tr("Square blade, on centre. Chips must come out; stop if they pack."),
        Operation.CHAMFER: tr("A broad edge chatters: slower if it sings."),
        Operation.DEBURR: tr(
            "File with a handle, left hand, sleeves back, or a hand tool with the spindle "
            "stopped. Never hold emery by hand."
        ),
        Operation.ADVANCE: tr(
            "Against a stop, so that each piece stands out alike. Key out again, every time."
        ),
    }[operation]


def _part(*, is_bored: bool, is_long: bool) -> str:
    if is_bored:
        return tr(
            "Keep an even pace. Ease off as the bore shows; the ring drops: let it hang on a rod "
            "held in the tailstock, or in the tray."
        )
    if is_long:
        return tr(
            "Keep an even pace: stopping in the slot rubs. So long a piece swings before it lets "
            "go: stop the spindle while its core is still stout, and saw through that."
        )
    return tr(
        "Keep an even pace: stopping in the slot rubs. Near the centre the piece sags and lets "
        "go: let it drop in the tray."
    )


def _saw(*, is_piece: bool) -> str:
    if is_piece:
        return tr(
            "Never saw in the running lathe. Take the bar out, saw it in a vice, turn the piece "
            "about in the jaws and face it to length."
        )
    return tr("Square cut. Deburr both ends, or the jaws do not seat.")
