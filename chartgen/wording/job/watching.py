"""One line a step of what to watch: common practice at a manual lathe, no source."""

from typing import Final

from chartgen.planning.operations import Operation
from chartgen.planning.plan import JobPlan, Step

_WATCH: Final = {
    Operation.CHECK: (
        "Measure the bar before it is in the chuck: diameter, length, burrs, bends. Deburr its end."
    ),
    Operation.HOLD: (
        "Jaws on clean bar, not on a burr. Turn the chuck by hand a full turn before the first "
        "start. Key out."
    ),
    Operation.FACE: (
        "A pip in the middle: the tool is off centre height. Set it now, every later tool by it."
    ),
    Operation.CENTRE_DRILL: "It must start without wandering. If it wobbles, face again.",
    Operation.SUPPORT: (
        "Quill short, clamped. Oil or a turning centre; tighten until it does not rattle, no "
        "more. It warms up: ease it."
    ),
    Operation.TURN: (
        "Measure after the first pass, spindle stopped, and set the dial by it. A first pass on "
        "skin or a bent bar cuts in gulps."
    ),
    Operation.DRILL: "Ease the feed as it comes through: it grabs there.",
    Operation.BORE: (
        "Rings or chatters: slower, not finer. Stop before you measure. No finger in the bore."
    ),
    Operation.GROOVE: "Square blade, on centre. Chips must come out; stop if they pack.",
    Operation.CHAMFER: "A broad edge chatters: slower if it sings.",
    Operation.DEBURR: (
        "File with a handle, left hand, sleeves back, or a hand tool with the spindle stopped. "
        "Never hold emery by hand."
    ),
    Operation.ADVANCE: (
        "Against a stop, so that each piece stands out alike. Key out again, every time."
    ),
}
_PART_SOLID = (
    "Keep an even pace: stopping in the slot rubs. Near the centre the piece sags and lets go: "
    "let it drop in the tray."
)
_PART_BORED = (
    "Keep an even pace. Ease off as the bore shows; the ring drops: let it hang on a rod held "
    "in the tailstock, or in the tray."
)
_SAW_BLANK = "Square cut. Deburr both ends, or the jaws do not seat."
_SAW_PIECE = (
    "Never saw in the running lathe. Take the bar out, saw it in a vice, turn the piece about in "
    "the jaws and face it to length."
)


def watch_line(plan: JobPlan, step: Step) -> str:
    """Return what to watch in a step."""
    if step.operation is Operation.PART:
        return _PART_BORED if plan.job.piece.bore else _PART_SOLID
    if step.operation is Operation.SAW:
        return _SAW_PIECE if step.is_per_piece else _SAW_BLANK
    if step.cut is not None and len(step.cut.pecks) > 1:
        return f"Draw back at each peck until the flutes are clear. {_WATCH[step.operation]}"
    return _WATCH[step.operation]
