"""What passes for right, and which mistakes can be told from it.

A result is asked to three figures and is right within 1 %: that allows for π as 3.14 and for
one rounding on the way. A value read off a nomogram is right within 4 %, off a curve within
6 %: half a division of the scale, where it is coarsest, and a line's width (common practice, no
source). A count is right or not. A step of the lathe is right within 1 % too, but never
as far as half the way to the next.
"""

from collections.abc import Sequence
from typing import Final

from chartgen.lessons.exercise import NumericAnswer, NumericMistake
from chartgen.lessons.kinds import Kind

BY_CALCULATION: Final = 0.01
BY_NOMOGRAM: Final = 0.04
BY_CURVE: Final = 0.06
_SHARES: Final = {
    Kind.READ_NOMOGRAM: BY_NOMOGRAM,
    Kind.READ_CURVE: BY_CURVE,
    Kind.PIECES_PER_BAR: 0.0,
}
_SLIP: Final = 1e-9


def accepted(kind: Kind, value: float) -> tuple[float, float]:
    """Return the least and the largest answer that pass for right."""
    share = _SHARES.get(kind, BY_CALCULATION)
    return value * (1.0 - share), value * (1.0 + share)


def tolerance(answer: NumericAnswer, value: float) -> float:
    """Return how far an answer may lie from a wrong number and still be taken for it."""
    share = (answer.high - answer.low) / (2.0 * answer.value) if answer.value else 0.0
    return abs(value) * share + _SLIP


def is_right(answer: NumericAnswer, value: float) -> bool:
    """Return whether a number passes for right."""
    slip = abs(answer.value) * _SLIP
    return answer.low - slip <= value <= answer.high + slip


def told_apart(
    answer: NumericAnswer, mistakes: Sequence[NumericMistake]
) -> tuple[NumericMistake, ...]:
    """Return the mistakes that can be told from the right answer and from those before them."""
    kept: list[NumericMistake] = []
    for one in mistakes:
        reach = tolerance(answer, one.value)
        is_hidden = answer.low - reach <= one.value <= answer.high + reach
        is_double = any(
            abs(one.value - other.value) <= reach + tolerance(answer, other.value)
            or one.slip is other.slip
            for other in kept
        )
        if not is_hidden and not is_double:
            kept.append(one)
    return tuple(kept)
