"""The first piece measured before the others are made: what is wanted, what it is, by whom."""

from dataclasses import replace

from chartgen.errors import TooSmallError
from chartgen.layout.blocks.job_body import clear_below, job_of, writing_line
from chartgen.layout.blocks.paragraphs import title
from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import POINT
from chartgen.layout.piece import Piece, Setting
from chartgen.layout.placed import Face, Item, Text
from chartgen.layout.roles import Tag, cell, column_header, row_header, table_cell
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard
from chartgen.wording.language import tr
from chartgen.wording.section_titles import SectionTitle

ROW: Millimetres[float] = 8.0
"""High enough for handwriting (common practice, no source)."""
_GAP: Millimetres[float] = 4.0
_FIELD: Millimetres[float] = 28.0
"""The least that a number is written into."""
_WRITTEN = (0.6, 0.4)
"""Shares of the room that is left: the measured number, and who measured it."""
_WRITTEN_KEYS = ("measured", "by")


def first_piece(card: AnyCard, layout: Layout, setting: Setting) -> list[Piece]:
    """Return the dimensions with two fields each to write in.

    Raises
    ------
    ValueError
        If the job names no dimension to measure.
    TooSmallError
        If no room is left to write in.
    """
    job = job_of(card, "first-piece")
    if not job.measures:
        raise ValueError(f"the batch card of '{job.title}' names no dimension to measure")
    headings = (tr("dimension"), tr("wanted"), tr("measured"), tr("by"))
    rows = [headings[:2], *job.measures]
    widths = [
        max(
            setting.measure(row[i], Face.BOLD if i == 0 else Face.REGULAR, _size(i, setting))
            for row in rows
        )
        for i in (0, 1)
    ]
    left = setting.width - sum(widths) - 3.0 * _GAP
    if left * min(_WRITTEN) < _FIELD:
        raise TooSmallError(
            f"layout {layout.name}: {max(left, 0.0):.0f} mm are left to write what the first "
            f"piece measures and it takes {_FIELD / min(_WRITTEN):.0f}; shorten the names or "
        )
    widths += [left * share for share in _WRITTEN]
    lefts = [sum(widths[:i]) + _GAP * i for i in range(4)]
    head: list[Item] = [
        Text(
            x=x,
            y=setting.line * 0.8,
            text=text,
            size=setting.words,
            tags=_place("headings", column_header(text)),
        )
        for x, text in zip(lefts, headings, strict=True)
    ]
    pieces = [
        title(SectionTitle.FIRST_PIECE.words, setting),
        Piece(height=setting.line, items=tuple(head), keep_with_next=True),
    ]
    pieces += [_row(name, wanted, lefts, widths, setting) for name, wanted in job.measures]
    return clear_below(pieces, setting)


def _row(
    name: str, wanted: str, lefts: list[float], widths: list[float], setting: Setting
) -> Piece:
    base = ROW * 0.5 + setting.numbers * POINT * 0.35
    items: list[Item] = [
        Text(
            x=lefts[0],
            y=base,
            text=name,
            size=setting.words,
            face=Face.BOLD,
            tags=_place(name, row_header("")),
        ),
        Text(
            x=lefts[1],
            y=base,
            text=wanted,
            size=setting.numbers,
            tags=_place(name, cell("wanted")),
        ),
    ]
    for column in (2, 3):
        line = writing_line(x1=lefts[column], x2=lefts[column] + widths[column], y=ROW - 0.8)
        # An empty field is a cell too: read aloud, a row without it would be a shorter one.
        items.append(replace(line, tags=_place(name, cell(_WRITTEN_KEYS[column - 2]))))
    return Piece(height=ROW, items=tuple(items))


def _size(column: int, setting: Setting) -> float:
    return setting.numbers if column else setting.words


def _place(row: str, one: Tag) -> tuple[Tag, ...]:
    return table_cell("first piece", row, one)
