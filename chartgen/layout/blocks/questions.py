"""Questions with room to answer: lines to work on and one for the result, or boxes to tick.

A question is one piece: nobody turns a page over between what is asked and the answer.
"""

from chartgen.errors import TooSmallError
from chartgen.layout.blocks.job_body import tick_box, writing_line
from chartgen.layout.blocks.paper_body import BOX, WRITING, ticked_line
from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import POINT
from chartgen.layout.piece import Piece, Setting, moved
from chartgen.layout.placed import Align, Face, Item, Rule, Text
from chartgen.layout.roles import Tags, entry_body, entry_label
from chartgen.layout.typesetting import wrapped
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard
from chartgen.wording.language import tr
from chartgen.wording.lessons.printed_class import PrintedExercises, PrintedQuestion, PrintedQuiz

ANSWER: Millimetres[float] = 40.0
"""The least length that a result is written on."""
_NUMBER = 2.2
"""Room for a question's number, as a share of the size of the words."""
_GAP: Millimetres[float] = 1.5
_BETWEEN: Millimetres[float] = 5.0
_BELOW: Millimetres[float] = 2.6
_UNDER_TEXT: Millimetres[float] = 0.8


def questions(card: AnyCard, layout: Layout, setting: Setting) -> list[Piece]:
    """Return a piece a question, a thin rule under each.

    Raises
    ------
    TooSmallError
        If a result has no room to be written.
    TypeError
        If the card asks nothing.
    """
    if not isinstance(card.chart, PrintedExercises | PrintedQuiz):
        raise TypeError("a questions block needs a card that asks questions")
    return [_question(one, layout, setting) for one in card.chart.questions]


def _question(one: PrintedQuestion, layout: Layout, setting: Setting) -> Piece:
    size, line = setting.words, setting.line
    indent = _NUMBER * size * POINT
    said = entry_body(one.text)
    items: list[Item] = [
        Text(
            x=0.0,
            y=line * 0.8,
            text=one.number,
            size=size,
            face=Face.BOLD,
            tags=entry_label(one.text),
        )
    ]
    lines = wrapped(
        one.text,
        width=setting.width - indent,
        face=Face.REGULAR,
        size=size,
        measure=setting.measure,
    )
    items += [
        Text(x=indent, y=line * (number + 0.8), text=part, size=size, tags=said)
        for number, part in enumerate(lines)
    ]
    y = line * len(lines) + _UNDER_TEXT
    for _ in range(one.working):
        y += WRITING
        items.append(writing_line(x1=indent, x2=setting.width, y=y))
    if one.options:
        y += _UNDER_TEXT + (1.2 if one.working else 0.0)
        options = _options(one, setting, indent, said)
        items += [moved(item, x=0.0, y=y) for item in options.items]
        y += options.height
    else:
        y += WRITING
        items += _answer_line(one, layout, setting, y, said)
    y += _BELOW
    items.append(Rule(x1=0.0, y1=y - 0.8, x2=setting.width, y2=y - 0.8, weight=0.35))
    return Piece(height=y + 0.6, items=tuple(items))


def _answer_line(
    one: PrintedQuestion, layout: Layout, setting: Setting, y: Millimetres[float], tags: Tags
) -> list[Item]:
    """Return the word, a line and the unit behind it, at the right where the eye looks for it."""
    size, measure = setting.words, setting.measure
    word = tr("Answer")
    unit = measure(one.unit, Face.REGULAR, size) + (_GAP if one.unit else 0.0)
    before = measure(word, Face.BOLD, size) + _GAP
    room = setting.width - unit - before
    if room < ANSWER:
        raise TooSmallError(
            f"layout {layout.name}: {max(room, 0.0):.0f} mm are left to write an answer and it "
            f"takes {ANSWER:.0f}; "
        )
    right = setting.width - unit
    left = right - min(room, 1.5 * ANSWER)
    base = y - 0.9
    items: list[Item] = [
        Text(
            x=left - _GAP,
            y=base,
            text=word,
            size=size,
            face=Face.BOLD,
            align=Align.RIGHT,
            tags=tags,
        ),
        writing_line(x1=left, x2=right, y=y),
    ]
    if one.unit:
        items.append(Text(x=right + _GAP, y=base, text=one.unit, size=size, tags=tags))
    return items


def _options(
    one: PrintedQuestion, setting: Setting, indent: Millimetres[float], tags: Tags
) -> Piece:
    """Return the options beside one another where they have room, else one under the other."""
    size = setting.words
    widths = [setting.measure(text, Face.REGULAR, size) + BOX + 2.0 for text in one.options]
    if indent + sum(widths) + _BETWEEN * (len(widths) - 1) <= setting.width:
        items: list[Item] = []
        x = indent
        for text, width in zip(one.options, widths, strict=True):
            items += tick_box(x=x + 0.2, y=0.2, side=BOX)
            middle = (BOX - setting.line) / 2.0 + setting.line * 0.8
            items.append(Text(x=x + BOX + 2.0, y=middle, text=text, size=size, tags=tags))
            x += width + _BETWEEN
        return Piece(height=BOX + 0.6, items=tuple(items))
    items, y = [], 0.0
    for text in one.options:
        option = ticked_line(text, setting, left=indent, tags=tags)
        items += [moved(item, x=0.0, y=y) for item in option.items]
        y += option.height
    return Piece(height=y, items=tuple(items))
