"""The body of a class's paper, and a box to tick with words beside it, for its blocks."""

from typing import TypeVar

from chartgen.layout.blocks.job_body import tick_box
from chartgen.layout.piece import Piece, Setting
from chartgen.layout.placed import Face, Item, Text
from chartgen.layout.roles import Tags
from chartgen.layout.typesetting import wrapped
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard
from chartgen.wording.lessons.printed_class import (
    PrintedExercises,
    PrintedKey,
    PrintedQuiz,
    PrintedRoll,
    PrintedSignOff,
)

Paper = TypeVar("Paper", PrintedExercises, PrintedKey, PrintedQuiz, PrintedRoll, PrintedSignOff)

BOX: Millimetres[float] = 4.5
"""A tick of a pencil has room in it (common practice, no source)."""
WRITING: Millimetres[float] = 8.0
"""Pitch of lines for handwriting (common practice, no source)."""
_GAP: Millimetres[float] = 2.0


def paper_of(card: AnyCard, kind: type[Paper], block: str) -> Paper:
    """Return the body of a card that has to be of a kind.

    Raises
    ------
    TypeError
        If it is of another.
    """
    if not isinstance(card.chart, kind):
        raise TypeError(f"a {block} block needs another kind of card")
    return card.chart


def ticked_line(text: str, setting: Setting, *, left: Millimetres[float], tags: Tags) -> Piece:
    """Return an empty box with words beside it, the first of their lines in its middle."""
    indent, line = left + BOX + _GAP, setting.line
    lines = wrapped(
        text,
        width=setting.width - indent,
        face=Face.REGULAR,
        size=setting.words,
        measure=setting.measure,
    )
    # A single line stands in the middle of its box, more begin at its top.
    top = max(0.0, (BOX - line * len(lines)) / 2.0)
    items: list[Item] = list(tick_box(x=left + 0.2, y=0.2, side=BOX))
    items += [
        Text(x=indent, y=top + line * (number + 0.8), text=part, size=setting.words, tags=tags)
        for number, part in enumerate(lines)
    ]
    return Piece(height=max(BOX + 0.4, line * len(lines)) + 1.0, items=tuple(items))
