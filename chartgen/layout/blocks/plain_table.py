"""A plain table: a bold first column, words to the left and numbers to the right.

A heading may hold line breaks, so that its words do not widen a column of short numbers.
"""

import math
from collections.abc import Sequence

from chartgen.errors import TooSmallError
from chartgen.layout.blocks.table import row_height
from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import POINT
from chartgen.layout.piece import Piece, Setting
from chartgen.layout.placed import Align, Face, Item, Rule, Text
from chartgen.layout.roles import Tags, cell, column_header, row_header, table_cell
from chartgen.layout.typesetting import counted
from chartgen.wording.card import AnyCard
from chartgen.wording.printed import PrintedTable

# Gap between columns as a share of the size of the numbers.
_LEAST_GAP = 0.5
_MOST_GAP = 6.0
_HEAD_PITCH = 1.15


def plain_table(card: AnyCard, layout: Layout, setting: Setting) -> list[Piece]:
    """Return the heading and each row as a piece, so that a long table is refused by rows.

    Raises
    ------
    TooSmallError
        If the columns are wider than the side at its reading distance.
    """
    table = card.chart
    if not isinstance(table, PrintedTable):
        raise TypeError("a plain-table block needs a card with a plain table")
    widths = [_width(table, column, setting) for column in range(len(table.headings))]
    em = setting.numbers * POINT
    gap = (setting.width - sum(widths)) / max(1, len(widths) - 1)
    if gap < _LEAST_GAP * em:
        needed = sum(widths) + _LEAST_GAP * em * (len(widths) - 1)
        raise TooSmallError(
            f"layout {layout.name}: the {counted(len(widths), 'column')} of '{table.title}' need "
            f"{math.ceil(needed)} mm and the side has {setting.width:.0f} mm; "
        )
    gap = min(gap, _MOST_GAP * em)
    lefts = [sum(widths[:column]) + gap * column for column in range(len(widths))]
    pitch = row_height(layout, setting)
    pieces = [_head(table, lefts, widths, setting)]
    base = pitch * 0.5 + setting.numbers * POINT * 0.35
    for number, row in enumerate(table.rows, 1):
        items: list[Item] = [
            _cell(
                text,
                lefts[i],
                widths[i] * (i in table.right),
                base,
                setting.numbers,
                table_cell(table.title, f"row {number}", cell(str(i)) if i else row_header("")),
                bold=i == 0,
            )
            for i, text in enumerate(row)
        ]
        if number % layout.rule_every == 0 and number < len(table.rows):
            items.append(Rule(x1=0.0, y1=pitch, x2=setting.width, y2=pitch, weight=0.35))
        pieces.append(Piece(height=pitch, items=tuple(items)))
    return pieces


def _head(
    table: PrintedTable, lefts: Sequence[float], widths: Sequence[float], setting: Setting
) -> Piece:
    """Return the headings, the last lines of all on one base line, over a rule."""
    line = setting.words * POINT * _HEAD_PITCH
    lines = [heading.split("\n") for heading in table.headings]
    most = max(map(len, lines))
    items: list[Item] = [
        _cell(
            text,
            lefts[i],
            widths[i] * (i in table.right),
            line * (most - len(texts) + number + 0.85),
            setting.words,
            table_cell(table.title, "headings", column_header(str(i))),
            bold=True,
        )
        for i, texts in enumerate(lines)
        for number, text in enumerate(texts)
    ]
    bottom = line * most + 0.5
    items.append(Rule(x1=0.0, y1=bottom, x2=setting.width, y2=bottom, weight=0.8))
    return Piece(height=bottom + 0.4, items=tuple(items), keep_with_next=True)


def _width(table: PrintedTable, column: int, setting: Setting) -> float:
    face = Face.BOLD if column == 0 else Face.REGULAR
    cells = [setting.measure(row[column], face, setting.numbers) for row in table.rows]
    heading = [
        setting.measure(text, Face.BOLD, setting.words)
        for text in table.headings[column].split("\n")
    ]
    return max(*heading, *cells)


def _cell(
    text: str,
    left: float,
    right_by: float,
    y: float,
    size: float,
    tags: Tags,
    *,
    bold: bool = False,
) -> Text:
    """Return a cell's text: at `left`, or with its right edge `right_by` to the right of it."""
    return Text(
        x=left + right_by,
        y=y,
        text=text,
        size=size,
        face=Face.BOLD if bold else Face.REGULAR,
        align=Align.RIGHT if right_by else Align.LEFT,
        tags=tags,
    )
