"""The moved cells: a group a material and blade, a row a diameter, before and now.

All groups share their columns, so that the eye runs down a side; a group that breaks
repeats its title and headings where it goes on.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from chartgen.errors import TooSmallError
from chartgen.layout.blocks.paragraphs import paragraph
from chartgen.layout.blocks.table import row_height
from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import POINT
from chartgen.layout.piece import Piece, Setting
from chartgen.layout.placed import Align, Face, Item, Rule, Text
from chartgen.layout.roles import (
    cell,
    column_header,
    row_header,
    section,
    table_cell,
    under,
)
from chartgen.layout.typesetting import wrapped
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard
from chartgen.wording.change import no_cell_moved
from chartgen.wording.language import tr
from chartgen.wording.printed_change import CellHeadings, MovedCell, PrintedChange, PrintedSide

# Gaps as shares of the size of the numbers.
_GAP = 0.34
_MARK_GAP = 0.1
_LEAST_COLUMN_GAP = 0.55
_MOST_COLUMN_GAP = 1.9
_HEAD_PITCH = 1.15
_BEFORE_TITLE = 1.6


@dataclass(frozen=True, slots=True, kw_only=True)
class _Half:
    """Where the parts of a cell end or begin, from the left edge of its half."""

    speed: Millimetres[float]
    feed: Millimetres[float]
    sign: Millimetres[float]
    width: Millimetres[float]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Tracks:
    """The columns of every group: the diameter's right edge, and what begins where."""

    diameter: Millimetres[float]
    before: Millimetres[float]
    old: _Half
    after: Millimetres[float]
    new: _Half
    limit: Millimetres[float]


def moved_cells(card: AnyCard, layout: Layout, setting: Setting) -> list[Piece]:
    """Return a piece a row, each group's title and headings kept with its first row.

    Raises
    ------
    TooSmallError
        If the columns are wider than the side at its reading distance.
    """
    change = card.chart
    if not isinstance(change, PrintedChange):
        raise TypeError("a moved-cells block needs a change card")
    if not change.groups:
        return [paragraph(no_cell_moved(), setting)]
    rows = [row for group in change.groups for row in group.rows]
    tracks = _tracks(rows, change.headings, layout, setting)
    pieces: list[Piece] = []
    for group in change.groups:
        again = tr("{title} (continued)", title=group.title)
        continued = _head(again, group.title, change.headings, tracks, setting)
        pieces.append(_head(group.title, group.title, change.headings, tracks, setting))
        for number, row in enumerate(group.rows, 1):
            ruled = number % layout.rule_every == 0 and number < len(group.rows)
            place = (group.title, f"row {number}")
            pieces.append(_row(row, place, tracks, layout, setting, continued, ruled=ruled))
    return pieces


def _tracks(
    rows: Sequence[MovedCell], headings: CellHeadings, layout: Layout, setting: Setting
) -> _Tracks:
    def widest(texts: Iterable[str], face: Face, size: float) -> float:
        return max((setting.measure(text, face, size) for text in texts), default=0.0)

    diameter = max(
        widest((row.diameter for row in rows), Face.BOLD, setting.numbers),
        widest([headings.diameter], Face.REGULAR, setting.words),
    )
    old = _half([row.before for row in rows], headings, setting)
    new = _half([row.after for row in rows], headings, setting)
    limit = max(
        widest((row.limit for row in rows), Face.REGULAR, setting.words),
        widest(headings.limit.split("\n"), Face.BOLD, setting.words),
    )
    em = setting.numbers * POINT
    used = diameter + old.width + new.width + limit
    gap = (setting.width - used) / 3.0
    if gap < _LEAST_COLUMN_GAP * em:
        raise TooSmallError(
            f"layout {layout.name}: the moved cells need "
            f"{math.ceil(used + 3.0 * _LEAST_COLUMN_GAP * em)} mm and a column of the side has "
            f"{setting.width:.0f} mm; "
        )
    gap = min(gap, _MOST_COLUMN_GAP * em)
    before = diameter + gap
    after = before + old.width + gap
    return _Tracks(
        diameter=diameter,
        before=before,
        old=old,
        after=after,
        new=new,
        limit=after + new.width + gap,
    )


def _half(sides: Sequence[PrintedSide], headings: CellHeadings, setting: Setting) -> _Half:
    measure, size, small = setting.measure, setting.numbers, setting.words
    em = size * POINT
    speeds = max(measure(side.speed, Face.REGULAR, size) for side in sides)
    speeds = max(speeds, measure(headings.speed, Face.REGULAR, small))
    marks = max(measure(side.position, Face.REGULAR, small) for side in sides)
    feeds = max(measure(side.feed, Face.REGULAR, size) for side in sides)
    feeds = max(feeds, measure(headings.feed, Face.REGULAR, small))
    lost = max(measure(_lost(side), Face.REGULAR, size) for side in sides)
    signs = max(measure(side.sign, Face.REGULAR, size) for side in sides)
    feed = speeds + (marks + _MARK_GAP * em if marks else 0.0) + _GAP * em + feeds
    sign = max(feed, lost) + _GAP * em
    return _Half(speed=speeds, feed=feed, sign=sign, width=sign + signs)


def _lost(side: PrintedSide) -> str:
    return f"– {side.way_out}" if side.way_out else ""


def _head(
    name: str, table: str, headings: CellHeadings, tracks: _Tracks, setting: Setting
) -> Piece:
    """Return a group's title, and under it what its columns are, over a rule."""
    line, small = setting.words * POINT * _HEAD_PITCH, setting.words
    titles = wrapped(
        name, width=setting.width, face=Face.BOLD, size=setting.words, measure=setting.measure
    )
    items: list[Item] = [
        Text(
            x=0.0,
            y=_BEFORE_TITLE + line * (number + 0.85),
            text=text,
            size=small,
            face=Face.BOLD,
            tags=section(name),
        )
        for number, text in enumerate(titles)
    ]
    top = _BEFORE_TITLE + line * len(titles)
    upper, lower = top + line * 0.85, top + line * 1.85
    limits = headings.limit.split("\n")
    corner = table_cell(table, "names", column_header("diameter", rows=2))
    items.append(
        Text(
            x=tracks.diameter,
            y=lower,
            text=headings.diameter,
            size=small,
            align=Align.RIGHT,
            tags=corner,
        )
    )
    items += [
        Text(
            x=left,
            y=upper,
            text=text,
            size=small,
            face=Face.BOLD,
            tags=table_cell(table, "names", column_header(key, columns=2)),
        )
        for key, left, text in (
            ("before", tracks.before, headings.before),
            ("after", tracks.after, headings.after),
        )
    ]
    items += [
        Text(
            x=tracks.limit,
            y=y,
            text=text,
            size=small,
            face=Face.BOLD,
            tags=table_cell(table, "names", column_header("limit", rows=2)),
        )
        for text, y in zip(limits, (upper, lower)[-len(limits) :], strict=True)
    ]
    for side, left, half in (
        ("before", tracks.before, tracks.old),
        ("after", tracks.after, tracks.new),
    ):
        items += [
            Text(
                x=left + right,
                y=lower,
                text=text,
                size=small,
                align=Align.RIGHT,
                tags=table_cell(table, "units", column_header(f"{side} {key}")),
            )
            for key, right, text in (
                ("speed", half.speed, headings.speed),
                ("feed", half.feed, headings.feed),
            )
        ]
    bottom = lower + line * 0.15 + 0.5
    items.append(Rule(x1=0.0, y1=bottom, x2=setting.width, y2=bottom, weight=0.8))
    return Piece(height=bottom + 0.3, items=tuple(items), keep_with_next=True)


def _row(
    row: MovedCell,
    place: tuple[str, str],
    tracks: _Tracks,
    layout: Layout,
    setting: Setting,
    continued: Piece,
    *,
    ruled: bool,
) -> Piece:
    pitch, size = row_height(layout, setting), setting.numbers
    y = pitch * 0.5 + size * POINT * 0.35
    items: list[Item] = [
        Text(
            x=tracks.diameter,
            y=y,
            text=row.diameter,
            size=size,
            face=Face.BOLD,
            align=Align.RIGHT,
            tags=table_cell(*place, row_header("")),
        ),
        *_side(row.before, tracks.before, tracks.old, y, setting, (*place, "before")),
        *_side(row.after, tracks.after, tracks.new, y, setting, (*place, "after")),
        Text(
            x=tracks.limit,
            y=y,
            text=row.limit,
            size=setting.words,
            tags=table_cell(*place, cell("limit")),
        ),
    ]
    if ruled:
        items.append(Rule(x1=0.0, y1=pitch, x2=setting.width, y2=pitch, weight=0.35))
    return Piece(height=pitch, items=tuple(items), continued=(continued,))


def _side(
    side: PrintedSide,
    left: Millimetres[float],
    half: _Half,
    y: float,
    setting: Setting,
    place: tuple[str, str, str],
) -> list[Item]:
    size = setting.numbers
    table, row, name = place
    sign = Text(x=left + half.sign, y=y, text=side.sign, size=size)
    if side.way_out:
        lost = Text(x=left, y=y, text=_lost(side), size=size)
        return under(table_cell(table, row, cell(name, columns=2)), [lost, sign])
    speed: list[Item] = [
        Text(x=left + half.speed, y=y, text=side.speed, size=size, align=Align.RIGHT)
    ]
    if side.position:
        x = left + half.speed + _MARK_GAP * size * POINT
        speed.append(Text(x=x, y=y, text=side.position, size=setting.words))
    feed = Text(x=left + half.feed, y=y, text=side.feed, size=size, align=Align.RIGHT)
    return [
        *under(table_cell(table, row, cell(f"{name} speed")), speed),
        *under(table_cell(table, row, cell(f"{name} feed")), [feed, sign]),
    ]
