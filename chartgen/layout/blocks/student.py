"""Whom a paper is for: number and name, on every page, for pages are taken apart."""

from chartgen.layout.blocks.job_body import writing_line
from chartgen.layout.blocks.paper_body import WRITING
from chartgen.layout.layout_file import Layout
from chartgen.layout.piece import Piece, Setting
from chartgen.layout.placed import Face, Item, Text
from chartgen.layout.roles import paragraph_of
from chartgen.layout.typesetting import wrapped
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard
from chartgen.wording.language import tr

_BELOW: Millimetres[float] = 0.8
_GAP: Millimetres[float] = 1.5
_BETWEEN: Millimetres[float] = 4.0
_NUMBER: Millimetres[float] = 14.0
"""What a number is written on."""


def student(card: AnyCard, _layout: Layout, setting: Setting) -> list[Piece]:
    """Return the student's line, or lines to write on where the card is anybody's."""
    if not card.student:
        return [_to_fill_in(setting)]
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


def _to_fill_in(setting: Setting) -> Piece:
    """Return a line for a name and a short one for a number."""
    name, number = tr("Name"), tr("No.")
    used = [setting.measure(text, Face.BOLD, setting.words) + _GAP for text in (name, number)]
    second = setting.width - used[1] - _NUMBER
    items: list[Item] = [
        Text(
            x=x,
            y=WRITING - 0.6,
            text=text,
            size=setting.words,
            face=Face.BOLD,
            tags=paragraph_of(text),
        )
        for x, text in ((0.0, name), (second, number))
    ]
    items.append(writing_line(x1=used[0], x2=second - _BETWEEN, y=WRITING))
    items.append(writing_line(x1=second + used[1], x2=setting.width, y=WRITING))
    return Piece(height=WRITING + 2.0, items=tuple(items))
