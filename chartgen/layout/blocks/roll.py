"""A table of a class, a student a row: it runs on to further pages under the same headings."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from chartgen.errors import TooSmallError
from chartgen.layout.blocks.paper_body import paper_of
from chartgen.layout.blocks.table import row_height
from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import POINT
from chartgen.layout.piece import LEADING, Piece, Setting
from chartgen.layout.placed import Align, Face, Item, Rule, Text
from chartgen.layout.roles import Tag, cell, column_header, row_header, table_cell
from chartgen.layout.typesetting import counted, wrapped
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard
from chartgen.wording.language import tr
from chartgen.wording.lessons.printed_class import PrintedRoll

_LEAST_GAP = 0.6
_MOST_GAP = 2.2
_HEAD_PITCH = 1.15
_NAME = 1
"""The column that may wrap: nobody has his name cut short."""
_MOST_NAME: Millimetres[float] = 60.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Columns:
    """Where each column begins, and how wide it is."""

    lefts: tuple[Millimetres[float], ...]
    widths: tuple[Millimetres[float], ...]


def roll(card: AnyCard, layout: Layout, setting: Setting) -> list[Piece]:
    """Return the headings and a piece a student.

    Raises
    ------
    TooSmallError
        If the columns are wider than the side at its reading distance.
    """
    table = paper_of(card, PrintedRoll, "roll")
    columns = _columns(table, layout, setting)
    again = _head(table, columns, setting, tr("{title} (continued)", title=table.title))
    pieces = [_head(table, columns, setting, table.title)]
    for number, row in enumerate(table.rows, 1):
        ruled = number % layout.rule_every == 0 and number < len(table.rows)
        pieces.append(_row(table, row, columns, layout, setting, again, ruled=ruled))
    return pieces


def _columns(table: PrintedRoll, layout: Layout, setting: Setting) -> _Columns:
    """Return the columns; names get what the others leave, up to a width."""
    widths = [_width(table, column, setting) for column in range(len(table.headings))]
    whole = max(
        (setting.measure(row[_NAME], Face.REGULAR, setting.numbers) for row in table.rows),
        default=0.0,
    )
    em, gaps = setting.numbers * POINT, len(widths) - 1
    least = sum(widths) + _LEAST_GAP * em * gaps
    if least > setting.width:
        raise TooSmallError(
            f"layout {layout.name}: the {counted(len(widths), 'column')} of '{table.title}' need "
            f"{math.ceil(least)} mm and the side has {setting.width:.0f} mm; "
        )
    wanted = max(min(whole, _MOST_NAME), widths[_NAME])
    widths[_NAME] += min(wanted - widths[_NAME], setting.width - least)
    gap = min((setting.width - sum(widths)) / gaps, _MOST_GAP * em)
    lefts = tuple(sum(widths[:i]) + gap * i for i in range(len(widths)))
    return _Columns(lefts=lefts, widths=tuple(widths))


def _width(table: PrintedRoll, column: int, setting: Setting) -> Millimetres[float]:
    """Return the least width of a column: of names the longest word."""
    texts = [row[column] for row in table.rows]
    if column == _NAME:
        texts = [word for text in texts for word in text.split()]
    cells = [setting.measure(text, _face(column), setting.numbers) for text in texts]
    heading = table.headings[column].split("\n")
    return max(*(setting.measure(text, Face.BOLD, setting.words) for text in heading), 0.0, *cells)


def _face(column: int) -> Face:
    return Face.BOLD if column == 0 else Face.REGULAR


def _head(table: PrintedRoll, columns: _Columns, setting: Setting, name: str) -> Piece:
    """Return the headings, the last lines of all on one base line, over a rule."""
    line = setting.words * POINT * _HEAD_PITCH
    lines = [heading.split("\n") for heading in table.headings]
    most = max(map(len, lines))
    items: list[Item] = [
        _set(
            table,
            column,
            text,
            columns,
            line * (most - len(texts) + number + 0.85),
            setting.words,
            Face.BOLD,
            (name, "headings", column_header(str(column))),
        )
        for column, texts in enumerate(lines)
        for number, text in enumerate(texts)
    ]
    bottom = line * most + 0.5
    items.append(Rule(x1=0.0, y1=bottom, x2=setting.width, y2=bottom, weight=0.8))
    return Piece(height=bottom + 0.4, items=tuple(items), keep_with_next=True)


def _row(
    table: PrintedRoll,
    row: Sequence[str],
    columns: _Columns,
    layout: Layout,
    setting: Setting,
    continued: Piece,
    *,
    ruled: bool,
) -> Piece:
    pitch, size = row_height(layout, setting), setting.numbers
    base, line = pitch * 0.5 + size * POINT * 0.35, size * POINT * LEADING
    names = wrapped(
        row[_NAME],
        # A sum of floats may fall short of the very width it was made for.
        width=columns.widths[_NAME] + 1e-6,
        face=Face.REGULAR,
        size=size,
        measure=setting.measure,
    )
    items: list[Item] = []
    for column, text in enumerate(row):
        said = row_header("") if column == 0 else cell(str(column))
        place = (table.title, f"row {row[0]}", said)
        items += [
            _set(table, column, part, columns, base + line * n, size, _face(column), place)
            for n, part in enumerate((names or ("",)) if column == _NAME else (text,))
        ]
    height = pitch + line * max(len(names) - 1, 0)
    if ruled:
        items.append(Rule(x1=0.0, y1=height, x2=setting.width, y2=height, weight=0.35))
    return Piece(height=height, items=tuple(items), continued=(continued,))


def _set(
    table: PrintedRoll,
    column: int,
    text: str,
    columns: _Columns,
    y: float,
    size: float,
    face: Face,
    place: tuple[str, str, Tag],
) -> Text:
    """Return a text at the left edge of its column, or with its right edge at the right one."""
    is_right = column in table.right
    return Text(
        x=columns.lefts[column] + (columns.widths[column] if is_right else 0.0),
        y=y,
        text=text,
        size=size,
        face=face,
        align=Align.RIGHT if is_right else Align.LEFT,
        tags=table_cell(*place),
    )
