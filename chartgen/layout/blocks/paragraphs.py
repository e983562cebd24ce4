"""Running text: titles and paragraphs, with or without a sign hung in the margin."""

from chartgen.layout.layout_file import Layout
from chartgen.layout.piece import Piece, Setting
from chartgen.layout.placed import Face, Item, Text
from chartgen.layout.roles import entry_body, entry_label, paragraph_of, section
from chartgen.layout.typesetting import one_line, wrapped
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard
from chartgen.wording.curves.nomogram import PrintedNomogram
from chartgen.wording.figure import PrintedCurves
from chartgen.wording.lessons.printed_class import (
    PrintedExercises,
    PrintedKey,
    PrintedQuiz,
    PrintedRoll,
    PrintedSignOff,
)
from chartgen.wording.printed import PrintedTable
from chartgen.wording.printed_job import PrintedJob
from chartgen.wording.section_titles import SectionTitle

_WITH_NOTES = (
    PrintedTable
    | PrintedCurves
    | PrintedNomogram
    | PrintedJob
    | PrintedExercises
    | PrintedKey
    | PrintedQuiz
    | PrintedSignOff
    | PrintedRoll
)
_AFTER = 0.4
_BEFORE_NOTES = 1.4


def title(text: str, setting: Setting) -> Piece:
    """Return a title, kept with what follows."""
    line = setting.line
    one_line(text, width=setting.width, face=Face.BOLD, size=setting.words, measure=setting.measure)
    item = Text(
        x=0.0,
        y=line * 0.95,
        text=text,
        size=setting.words,
        face=Face.BOLD,
        tags=section(text),
    )
    return Piece(height=line * 1.25, items=(item,), keep_with_next=True)


def paragraph(
    text: str,
    setting: Setting,
    *,
    sign: str = "",
    indent: Millimetres[float] = 0.0,
) -> Piece:
    """Return a paragraph; with a `sign` in bold before its first line, an entry of a list."""
    size, line = setting.words, setting.line
    lines = wrapped(
        text,
        width=setting.width - indent,
        face=Face.REGULAR,
        size=size,
        measure=setting.measure,
    )
    items: list[Item] = []
    if sign:
        label = entry_label(text)
        items.append(Text(x=0.0, y=line * 0.8, text=sign, size=size, face=Face.BOLD, tags=label))
    tags = entry_body(text) if sign else paragraph_of(text)
    items += [
        Text(x=indent, y=line * (number + 0.8), text=part, size=size, tags=tags)
        for number, part in enumerate(lines)
    ]
    return Piece(height=line * len(lines) + _AFTER, items=tuple(items))


def notes(card: AnyCard, _layout: Layout, setting: Setting) -> list[Piece]:
    """Return the notes under a plain table or a figure."""
    if not isinstance(card.chart, _WITH_NOTES):
        raise TypeError("a notes block needs a card whose body has notes")
    if not card.chart.notes:
        return []
    above = Piece(height=_BEFORE_NOTES, items=())
    if isinstance(card.chart, PrintedJob):
        above = title(SectionTitle.MIND.words, setting)
    if isinstance(card.chart, PrintedCurves):
        above = title(SectionTitle.CURVES.words, setting)
    return [above, *(paragraph(line, setting) for line in card.chart.notes)]


def assumptions(card: AnyCard, _layout: Layout, setting: Setting) -> list[Piece]:
    """Return what the card takes for granted."""
    return [
        title(SectionTitle.ASSUMED.words, setting),
        *(paragraph(line, setting) for line in card.assumptions),
    ]
