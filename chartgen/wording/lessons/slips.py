"""What a wrong answer tells: the mistake that leads to it, in a few words."""

import math
from typing import Final

from chartgen.lessons.kinds import Kind, Slip
from chartgen.wording.language import tr

_NEAR: Final = 0.02


def slip_words(slip: Slip, kind: Kind | None = None) -> str:
    """Return what was done wrong, in an exercise of some kind or in all of them."""
    of_kind = {
        (Slip.OTHER_LIMIT, Kind.READ_CURVE): tr("read another curve"),
        (Slip.OTHER_LIMIT, Kind.WHAT_BINDS): tr("took a limit that is met later"),
        (Slip.OTHER_LIMIT, Kind.TOO_TIMID): tr("took one of the two least feeds for the other"),
        (Slip.OTHER_SIDE, Kind.WHAT_BINDS): tr("took the limit that is met last"),
        (Slip.OTHER_SIDE, Kind.TOO_TIMID): tr("took too timid for too bold"),
    }
    if kind is not None and (slip, kind) in of_kind:
        return of_kind[slip, kind]
    return {
        Slip.DIAMETER_FOR_RADIUS: tr("took the diameter for the radius"),
        Slip.RADIUS_FOR_DIAMETER: tr("took the radius for the diameter"),
        Slip.PER_MINUTE_FOR_PER_REV: tr("took the feed per turn for one per minute"),
        Slip.INCH_FOR_MILLIMETRE: tr("mixed up inch and metric"),
        Slip.FACTOR_TEN: tr("lost or gained a factor of ten"),
        Slip.FACTOR_SIXTY: tr("mixed up seconds and minutes"),
        Slip.NO_PI: tr("left out π"),
        Slip.STEP_ABOVE: tr("took the step above"),
        Slip.STEP_BELOW: tr("took the step below"),
        Slip.WITHOUT_KERF: tr("forgot the width of the slot"),
        Slip.WITHOUT_REMNANT: tr("forgot what stays in the jaws"),
        Slip.ROUNDED_UP: tr("rounded up a piece that is not whole"),
        Slip.HIGH_FOR_EXPECTED: tr("took the high side for the expected force"),
        Slip.TORQUE_AT_CENTRE: tr("took the torque where the cut ends, not where it begins"),
        Slip.OTHER_LIMIT: tr("took another limit, or another curve"),
        Slip.OTHER_SIDE: tr("took the opposite end of the window"),
        Slip.MISREAD_SCALE: tr("misread the scale"),
    }[slip]


def times_right(wrong: float, right: float) -> str:
    """Return how many times the right answer a wrong one is, where that is a telling number."""
    ratio = wrong / right if right else math.nan
    telling = (
        (2.0, tr("twice the answer")),
        (0.5, tr("half the answer")),
        (10.0, tr("ten times the answer")),
        (0.1, tr("a tenth of the answer")),
        (60.0, tr("sixty times the answer")),
        (1.0 / 60.0, tr("a sixtieth of the answer")),
        (math.pi, tr("π times the answer")),
        (1.0 / math.pi, tr("the answer over π")),
    )
    for factor, words in telling:
        if abs(ratio / factor - 1.0) < _NEAR:
            return words
    return ""
