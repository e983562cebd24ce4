"""The foot of a sheet: a check rule and how to print, cut and laminate, outside all cards."""

from chartgen.layout.blocks.check_rule import ticked
from chartgen.layout.legibility import FOOT_CAP, POINT, size_for_cap
from chartgen.layout.piece import LEADING, moved
from chartgen.layout.placed import Align, Face, Item, Text
from chartgen.layout.sheets.plan import SheetPlan
from chartgen.layout.typesetting import Measure, wrapped
from chartgen.quantities import Millimetres
from chartgen.wording.sheet import rule_words, side_words

_SIZE = size_for_cap(FOOT_CAP)
_LINE: Millimetres[float] = _SIZE * POINT * LEADING
_RULE_HEIGHT: Millimetres[float] = 5.0


def foot_height(plan: SheetPlan, words: tuple[str, ...], measure: Measure) -> Millimetres[float]:
    """Return how much a foot with these words takes of the sheet's height."""
    return _RULE_HEIGHT + _LINE * len(_lines(plan, words, measure))


def foot_items(
    plan: SheetPlan,
    words: tuple[str, ...],
    measure: Measure,
    *,
    top: Millimetres[float],
    sheet: int,
) -> tuple[Item, ...]:
    """Return check rule and words of a front, from `top` down."""
    left = plan.printable[0]
    rule: tuple[Item, ...] = ticked(length=100.0, step=10.0, inches=4, y=2.4)
    size = _SIZE
    beside: tuple[Item, ...] = (
        Text(x=104.6, y=2.4 + size * POINT * 0.3, text=rule_words(), size=size),
        *(
            Text(x=0.0, y=_RULE_HEIGHT + _LINE * (number + 0.8), text=line, size=size)
            for number, line in enumerate(_lines(plan, words, measure))
        ),
    )
    return (
        *(moved(item, x=left, y=top) for item in rule + beside),
        _side(plan, side_words(sheet, back=False), top + _RULE_HEIGHT + _LINE * 0.8),
    )


def back_items(plan: SheetPlan, *, top: Millimetres[float], sheet: int) -> tuple[Item, ...]:
    """Return what a back has of a foot: which side of which sheet it is."""
    return (_side(plan, side_words(sheet, back=True), top + _RULE_HEIGHT + _LINE * 0.8),)


def _side(plan: SheetPlan, text: str, y: Millimetres[float]) -> Text:
    right = plan.printable[2]
    return Text(x=right, y=y, text=text, size=_SIZE, face=Face.BOLD, align=Align.RIGHT)


def _lines(plan: SheetPlan, words: tuple[str, ...], measure: Measure) -> list[str]:
    left, _, right, _ = plan.printable
    # The number of the sheet stands at the right end of the first line.
    width = right - left - measure(side_words(9999, back=False), Face.BOLD, _SIZE) - 3.0
    return wrapped(" ".join(words), width=width, face=Face.REGULAR, size=_SIZE, measure=measure)
