"""The table of steps: a number, what is done, and the numbers it is done with.

What is done may take more than one line; nothing else does. A table longer than its side
goes on overleaf under the same headings.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from chartgen.errors import TooSmallError
from chartgen.layout.blocks.job_body import job_of
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
from chartgen.wording.printed_job import PrintedJob

_LEAST_GAP = 0.7
_MOST_GAP = 2.2
_HEAD_PITCH = 1.15
_STEP = 1
"""The column that may wrap."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Columns:
    """Where each column begins, and how wide it is."""

    lefts: tuple[Millimetres[float], ...]
    widths: tuple[Millimetres[float], ...]


def step_table(card: AnyCard, layout: Layout, setting: Setting) -> list[Piece]:
    """Return the headings and a piece a step.

    Raises
    ------
    TooSmallError
        If the columns are wider than the side at its reading distance.
    """
    job = job_of(card, "step-table")
    columns = _columns(job, layout, setting)
    continued = tr("{title} (continued)", title=job.title)
    again = _head(job, columns, setting, continued)
    pieces = [_head(job, columns, setting, job.title)]
    for number, row in enumerate(job.rows, 1):
        ruled = number % layout.rule_every == 0 and number < len(job.rows)
        pieces.append(_row(job, row, columns, layout, setting, again, ruled=ruled))
    return pieces


def _columns(job: PrintedJob, layout: Layout, setting: Setting) -> _Columns:
    """Return the columns; the step gets the room that the others leave."""
    texts = [[row[i] for row in job.rows] for i in range(len(job.headings))]
    widths = [_width(job, i, texts[i], setting) for i in range(len(job.headings))]
    whole = max(
        *(setting.measure(text, Face.REGULAR, setting.numbers) for text in texts[_STEP]),
        widths[_STEP],
    )
    em = setting.numbers * POINT
    gaps = len(widths) - 1
    least = sum(widths) + _LEAST_GAP * em * gaps
    if least > setting.width:
        raise TooSmallError(
            f"layout {layout.name}: the {counted(len(widths), 'column')} of the steps of "
            f"'{job.title}' need {math.ceil(least)} mm and the side has {setting.width:.0f} mm, "
            f"which is room for {_that_fit(widths, em, setting)}; drop the others, or "
        )
    widths[_STEP] += min(whole - widths[_STEP], setting.width - least)
    gap = min((setting.width - sum(widths)) / gaps, _MOST_GAP * em)
    lefts = (sum(widths[:i]) + gap * i for i in range(len(widths)))
    return _Columns(lefts=tuple(lefts), widths=tuple(widths))


def _that_fit(widths: Sequence[float], em: float, setting: Setting) -> int:
    """Return how many columns fit, from the first on."""
    needed = [sum(widths[:n]) + _LEAST_GAP * em * (n - 1) for n in range(1, len(widths))]
    return sum(1 for width in needed if width <= setting.width)


def _width(job: PrintedJob, column: int, texts: Sequence[str], setting: Setting) -> float:
    """Return the least width of a column: of what may wrap its longest word."""
    face = _face(column)
    if column == _STEP:
        texts = [word for text in texts for word in text.split()]
    cells = [setting.measure(text, face, setting.numbers) for text in texts]
    heading = job.headings[column].split("\n")
    return max(*(setting.measure(text, Face.BOLD, setting.words) for text in heading), *cells)


def _face(column: int) -> Face:
    return Face.BOLD if column == 0 else Face.REGULAR


def _head(job: PrintedJob, columns: _Columns, setting: Setting, table: str) -> Piece:
    """Return the headings, the last lines of all on one base line, over a rule."""
    line = setting.words * POINT * _HEAD_PITCH
    lines = [heading.split("\n") for heading in job.headings]
    most = max(map(len, lines))
    items: list[Item] = [
        _set(
            job,
            column,
            text,
            columns,
            line * (most - len(texts) + number + 0.85),
            setting.words,
            Face.BOLD,
            (table, "headings", column_header(str(column))),
        )
        for column, texts in enumerate(lines)
        for number, text in enumerate(texts)
    ]
    bottom = line * most + 0.5
    items.append(Rule(x1=0.0, y1=bottom, x2=setting.width, y2=bottom, weight=0.8))
    return Piece(height=bottom + 0.4, items=tuple(items), keep_with_next=True)


def _row(
    job: PrintedJob,
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
    steps = wrapped(
        row[_STEP],
        # A sum of floats may fall short of the very width it was made for.
        width=columns.widths[_STEP] + 1e-6,
        face=Face.REGULAR,
        size=size,
        measure=setting.measure,
    )
    items: list[Item] = []
    for column, text in enumerate(row):
        said = row_header("") if column == 0 else cell(str(column))
        place = (job.title, f"step {row[0]}", said)
        items += [
            _set(job, column, part, columns, base + line * n, size, _face(column), place)
            for n, part in enumerate(steps if column == _STEP else (text,))
        ]
    height = pitch + line * (len(steps) - 1)
    if ruled:
        items.append(Rule(x1=0.0, y1=height, x2=setting.width, y2=height, weight=0.35))
    return Piece(height=height, items=tuple(items), continued=(continued,))


def _set(
    job: PrintedJob,
    column: int,
    text: str,
    columns: _Columns,
    y: float,
    size: float,
    face: Face,
    place: tuple[str, str, Tag],
) -> Text:
    """Return a text at the left edge of its column, or with its right edge at the right one."""
    is_right = column in job.right
    return Text(
        x=columns.lefts[column] + (columns.widths[column] if is_right else 0.0),
        y=y,
        text=text,
        size=size,
        face=face,
        align=Align.RIGHT if is_right else Align.LEFT,
        tags=table_cell(*place),
    )
