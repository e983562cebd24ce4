"""A table whose second column may wrap: it runs on overleaf under the same headings.

Nothing else wraps, and nothing is set smaller; a table too wide for its side is refused.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

from chartgen.errors import TooSmallError
from chartgen.layout.blocks.table import row_height
from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import POINT
from chartgen.layout.piece import LEADING, Piece, Setting
from chartgen.layout.placed import Align, Face, Item, Rule, Text
from chartgen.layout.roles import Tag, cell, column_header, row_header, table_cell
from chartgen.layout.typesetting import counted, wrapped
from chartgen.quantities import Millimetres
from chartgen.wording.language import tr

_MOST_GAP = 2.2
_HEAD_PITCH = 1.15
_WRAPS = 1
"""The column that may wrap."""


class Rows(Protocol):
    """What such a table is made of; `right` names the columns aligned right."""

    @property
    def title(self) -> str:
        """Its name."""

    @property
    def headings(self) -> tuple[str, ...]:
        """What stands over each column."""

    @property
    def right(self) -> frozenset[int]:
        """The columns of numbers."""

    @property
    def rows(self) -> tuple[tuple[str, ...], ...]:
        """Its rows, the first cell of each its number."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Manner:
    """What differs from one such table to another.

    `least_gap` is the least gap between columns over the size of the numbers, `widest` the most
    the column that wraps takes, `row` what a row is called, `content` what a refusal says of it.
    """

    least_gap: float
    row: str
    content: str
    widest: Millimetres[float] = math.inf


@dataclass(frozen=True, slots=True, kw_only=True)
class _Columns:
    """Where each column begins, and how wide it is."""

    lefts: tuple[Millimetres[float], ...]
    widths: tuple[Millimetres[float], ...]


def wrapping_table(table: Rows, layout: Layout, setting: Setting, manner: Manner) -> list[Piece]:
    """Return the headings and a piece a row.

    Raises
    ------
    TooSmallError
        If the columns are wider than the side at its reading distance.
    """
    columns = _columns(table, layout, setting, manner)
    again = _head(table, columns, setting, tr("{title} (continued)", title=table.title))
    pieces = [_head(table, columns, setting, table.title)]
    for number, row in enumerate(table.rows, 1):
        ruled = number % layout.rule_every == 0 and number < len(table.rows)
        name = f"{manner.row} {row[0]}"
        pieces.append(_row(table, row, columns, layout, setting, again, name, ruled=ruled))
    return pieces


def _columns(table: Rows, layout: Layout, setting: Setting, manner: Manner) -> _Columns:
    """Return the columns; the one that wraps gets the room that the others leave."""
    texts = [[row[i] for row in table.rows] for i in range(len(table.headings))]
    widths = [_width(table, i, texts[i], setting) for i in range(len(table.headings))]
    whole = max(
        (setting.measure(text, Face.REGULAR, setting.numbers) for text in texts[_WRAPS]),
        default=0.0,
    )
    em = setting.numbers * POINT
    gaps = len(widths) - 1
    least = sum(widths) + manner.least_gap * em * gaps
    if least > setting.width:
        raise TooSmallError(
            f"layout {layout.name}: the {counted(len(widths), 'column')} of {manner.content} "
            f"'{table.title}' need {math.ceil(least)} mm and the side has {setting.width:.0f} mm, "
            f"which is room for {_that_fit(widths, manner.least_gap * em, setting)}; drop the "
            "others, or "
        )
    wanted = max(min(whole, manner.widest), widths[_WRAPS])
    widths[_WRAPS] += min(wanted - widths[_WRAPS], setting.width - least)
    gap = min((setting.width - sum(widths)) / gaps, _MOST_GAP * em)
    lefts = (sum(widths[:i]) + gap * i for i in range(len(widths)))
    return _Columns(lefts=tuple(lefts), widths=tuple(widths))


def _that_fit(widths: Sequence[float], gap: float, setting: Setting) -> int:
    """Return how many columns fit, from the first on."""
    needed = [sum(widths[:n]) + gap * (n - 1) for n in range(1, len(widths))]
    return sum(1 for width in needed if width <= setting.width)


def _width(table: Rows, column: int, texts: Sequence[str], setting: Setting) -> float:
    """Return the least width of a column: of what may wrap its longest word."""
    face = _face(column)
    if column == _WRAPS:
        texts = [word for text in texts for word in text.split()]
    cells = [setting.measure(text, face, setting.numbers) for text in texts]
    heading = table.headings[column].split("\n")
    return max(*(setting.measure(text, Face.BOLD, setting.words) for text in heading), 0.0, *cells)


def _face(column: int) -> Face:
    return Face.BOLD if column == 0 else Face.REGULAR


def _head(table: Rows, columns: _Columns, setting: Setting, name: str) -> Piece:
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
    table: Rows,
    row: Sequence[str],
    columns: _Columns,
    layout: Layout,
    setting: Setting,
    continued: Piece,
    name: str,
    *,
    ruled: bool,
) -> Piece:
    pitch, size = row_height(layout, setting), setting.numbers
    base, line = pitch * 0.5 + size * POINT * 0.35, size * POINT * LEADING
    lines = wrapped(
        row[_WRAPS],
        # A sum of floats may fall short of the very width it was made for.
        width=columns.widths[_WRAPS] + 1e-6,
        face=Face.REGULAR,
        size=size,
        measure=setting.measure,
    )
    items: list[Item] = []
    for column, text in enumerate(row):
        said = row_header("") if column == 0 else cell(str(column))
        place = (table.title, name, said)
        items += [
            _set(table, column, part, columns, base + line * n, size, _face(column), place)
            for n, part in enumerate((lines or ("",)) if column == _WRAPS else (text,))
        ]
    height = pitch + line * max(len(lines) - 1, 0)
    if ruled:
        items.append(Rule(x1=0.0, y1=height, x2=setting.width, y2=height, weight=0.35))
    return Piece(height=height, items=tuple(items), continued=(continued,))


def _set(
    table: Rows,
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
