"""Whom a paper is for: number and name, on every page, for pages are taken apart."""

from chartgen.layout.layout_file import Layout
from chartgen.layout.piece import Piece, Setting
from chartgen.layout.placed import Face, Item, Text
from chartgen.layout.roles import paragraph_of
from chartgen.layout.typesetting import wrapped
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard

_BELOW: Millimetres[float] = 0.8


def student(card: AnyCard, _layout: Layout, setting: Setting) -> list[Piece]:
    """Return the student's line, on as many lines as it takes.

    Raises
    ------
    ValueError
        If the card names no student.
    """
    if not card.student:
        raise ValueError(f"the card '{card.chart.title}' does not say whom it is for")
    size, line = setting.words, setting.line
    lines = wrapped(
        card.student, width=setting.width, face=Face.BOLD, size=size, measure=setting.measure
    )
    items: tuple[Item, ...] = tuple(
        Text(
            x=0.0,
            y=line * (number + 0.8),
            text=text,
            size=size,
            face=Face.BOLD,
            tags=paragraph_of(card.student),
        )
        for number, text in enumerate(lines)
    )
    return [Piece(height=line * len(lines) + _BELOW, items=items)]
