"""A rule of known length, and the check code as a square that a telephone can read.

Printed at true size the rule measures what it says. Both stand side by side, so that the
square costs a side little of its height.
"""

from dataclasses import replace

from chartgen.errors import TooSmallError
from chartgen.layout.code_square import QUIET_ZONE, code_square
from chartgen.layout.layout_file import OF_A_CLASS, Layout
from chartgen.layout.legibility import POINT
from chartgen.layout.piece import LEADING, Piece, Setting, moved
from chartgen.layout.placed import Face, Item, Rule, Text
from chartgen.layout.roles import paragraph_of
from chartgen.layout.typesetting import wrapped
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard
from chartgen.wording.check_code import square_sentences
from chartgen.wording.language import tr

_LENGTHS = (100.0, 50.0, 40.0, 30.0)
_STEP = 10.0
_INCHES = 4


def ticked(
    *, length: Millimetres[float], step: Millimetres[float], inches: int, y: Millimetres[float]
) -> tuple[Rule, ...]:
    """Return a rule from x = 0 at `y`, ticked in steps above and in inches below."""
    return (
        Rule(x1=0.0, y1=y, x2=length, y2=y, weight=0.6),
        *(
            Rule(x1=tick * step, y1=y - 2.2, x2=tick * step, y2=y, weight=0.6)
            for tick in range(round(length / step) + 1)
        ),
        *(
            Rule(x1=inch * 25.4, y1=y, x2=inch * 25.4, y2=y + 1.6, weight=0.6)
            for inch in range(inches + 1)
        ),
    )


def check_rule(card: AnyCard, layout: Layout, setting: Setting) -> list[Piece]:
    """Return the rule with its words to the left, the square with its words to the right.

    Raises
    ------
    TooSmallError
        If not even the shortest rule fits.
    """
    if setting.width < _LENGTHS[-1]:
        raise TooSmallError(
            f"layout {layout.name}: the side is {setting.width:.0f} mm wide and the shortest rule "
            f"that tells the scale of a print {_LENGTHS[-1]:.0f} mm; "
        )
    square = code_square(card.check_code)
    room = setting.width - square.size - QUIET_ZONE
    items, height = _rule(setting if room < _LENGTHS[-1] else replace(setting, width=room))
    # Where the side is too narrow for both the square stands below the rule.
    top = height if room < _LENGTHS[-1] else 0.0
    size = setting.foot
    line = size * POINT * LEADING
    sentences = square_sentences(card.check_code)
    # No shop file alone makes a paper of a class again.
    for words in sentences[1:] if layout.card in OF_A_CLASS else sentences:
        lines = wrapped(words, width=room, face=Face.REGULAR, size=size, measure=setting.measure)
        if height + line * len(lines) <= top + square.size + QUIET_ZONE:
            break
    items += [
        Text(
            x=0.0,
            y=height + line * (number + 0.9),
            text=text,
            size=size,
            tags=paragraph_of(words),
        )
        for number, text in enumerate(lines)
    ]
    items.append(moved(square, x=setting.width - square.size, y=top + QUIET_ZONE))
    height = max(height + line * len(lines), top + QUIET_ZONE + square.size)
    # The quiet zone below the square is as wide as the one above.
    return [Piece(height=height + QUIET_ZONE, items=tuple(items))]


def _rule(setting: Setting) -> tuple[list[Item], Millimetres[float]]:
    """Return the longest rule that fits, ticked in centimetres, inches below it, its words."""
    length = next(length for length in _LENGTHS if length <= setting.width)
    size = setting.foot
    y = 3.0
    inches = min(_INCHES, int(setting.width / 25.4))
    items: list[Item] = list(ticked(length=length, step=_STEP, inches=inches, y=y))
    words = tr(
        "{length} mm above, {inches} in below: if this rule is not true, print again at 100 %",
        length=f"{length:.0f}",
        inches=inches,
    )
    x = max(length, inches * 25.4) + 3.0
    if x + setting.measure(words, Face.REGULAR, size) <= setting.width:
        tags = paragraph_of(words)
        items.append(Text(x=x, y=y + size * POINT * 0.3, text=words, size=size, tags=tags))
        return items, y + 2.4
    line = size * POINT * LEADING
    lines = wrapped(
        words, width=setting.width, face=Face.REGULAR, size=size, measure=setting.measure
    )
    items += [
        Text(
            x=0.0, y=y + 2.0 + line * (number + 0.9), text=text, size=size, tags=paragraph_of(words)
        )
        for number, text in enumerate(lines)
    ]
    return items, y + 2.4 + line * len(lines)
