"""The table: a bold diameter, and for each column the numbers of one cut.

Numbers stand right-aligned, or on their decimal point where they have one, so that the eye
runs down a column; a thin rule every few rows leads it across.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from chartgen.errors import TooSmallError
from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import POINT
from chartgen.layout.piece import Piece, Setting
from chartgen.layout.placed import Align, Face, Item, Rule, Text
from chartgen.layout.typesetting import counted, wrapped
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard
from chartgen.wording.printed import PrintedCell, PrintedChart, PrintedColumn

# Gaps as shares of the size of the numbers.
LEAST_COLUMN_GAP = 0.5
_PART_GAP = 0.34
_MARK_GAP = 0.1
_MOST_COLUMN_GAP = 1.9
_HEAD_PITCH = 1.12
_UNIT_OF_PART = {"speed": "speed_heading", "feed": "feed_heading", "pace": "pace_heading"}


@dataclass(frozen=True, slots=True)
class Part:
    """One number of a cell: where it stands in the column and how it is aligned.

    `right` is where its right edge, or its decimal point, stands; `left` where it begins.
    """

    name: str
    left: Millimetres[float]
    point: Millimetres[float]
    right: Millimetres[float]


@dataclass(frozen=True, slots=True)
class Track:
    """A table column with the parts of its cells, measured."""

    column: PrintedColumn
    parts: tuple[Part, ...]
    width: Millimetres[float]


def table(card: AnyCard, layout: Layout, setting: Setting) -> list[Piece]:
    """Return the whole table as one piece.

    Raises
    ------
    TooSmallError
        If the columns are too wide for the page at the layout's reading distance.
    """
    chart = card.chart
    if not isinstance(chart, PrintedChart):
        raise TypeError("a table block needs a card with a chart")
    tracks = tracks_of(chart, layout, setting)
    stub = stub_width(chart, setting)
    gap = _column_gap(chart, tracks, stub, layout, setting)
    lefts = []
    x = stub + gap
    for track in tracks:
        lefts.append(x)
        x += track.width + gap
    head_items, head_height = _head(chart, tracks, lefts, stub, gap, setting)
    body_items, body_height = _body(chart, tracks, lefts, stub, head_height, layout, setting)
    return [Piece(height=head_height + body_height, items=(*head_items, *body_items))]


def tracks_of(chart: PrintedChart, layout: Layout, setting: Setting) -> list[Track]:
    """Return the columns of a chart, measured."""
    return [_track(chart, index, layout, setting) for index in range(len(chart.columns))]


def stub_width(chart: PrintedChart, setting: Setting) -> Millimetres[float]:
    """Return the width of the diameters before the columns [mm]."""
    return max(
        *(setting.measure(text, Face.BOLD, setting.numbers) for text in chart.stub),
        setting.measure(chart.corner, Face.REGULAR, setting.words),
    )


def row_height(layout: Layout, setting: Setting) -> Millimetres[float]:
    """Return the height of one row [mm]."""
    return setting.numbers * POINT * layout.row_pitch


def _texts(cell: PrintedCell, part: str) -> str:
    return {
        "speed": cell.speed + cell.position,
        "feed": cell.feed,
        "pace": cell.pace,
        "sign": cell.sign,
    }[part]


def _track(chart: PrintedChart, index: int, layout: Layout, setting: Setting) -> Track:
    cells = [row[index] for row in chart.rows]
    part_gap = _PART_GAP * setting.numbers * POINT
    parts: list[Part] = []
    x = 0.0
    for name in layout.cell:
        texts = [text for cell in cells if (text := _texts(cell, name))]
        before, after = _split_widths(texts, name, cells, setting)
        if name in _UNIT_OF_PART:
            label = getattr(chart, _UNIT_OF_PART[name])
            before = max(before, setting.measure(label, Face.REGULAR, setting.words) - after)
        parts.append(Part(name, x, x + before, x + before + after))
        x += before + after + part_gap
    return Track(chart.columns[index], tuple(parts), x - part_gap)


def _split_widths(
    texts: Sequence[str], name: str, cells: Sequence[PrintedCell], setting: Setting
) -> tuple[Millimetres[float], Millimetres[float]]:
    """Return the widest part before the alignment point and the widest after it."""

    def width(text: str) -> float:
        return setting.measure(text, Face.REGULAR, setting.numbers)

    if not texts:
        return 0.0, 0.0
    if name == "sign":
        return 0.0, max(width(text) for text in texts)
    if name == "speed":
        speeds = max(width(cell.speed) for cell in cells)
        marks = max(_mark_width(cell.position, setting) for cell in cells)
        return speeds, marks + (_mark_gap(setting) if marks else 0.0)
    heads = [text.partition(".")[0] for text in texts]
    tails = [text[len(head) :] for text, head in zip(texts, heads, strict=True)]
    return max(map(width, heads)), max(map(width, tails))


def _mark_width(mark: str, setting: Setting) -> Millimetres[float]:
    """Return the width of a position mark: smaller than the number it stands behind."""
    return setting.measure(mark, Face.REGULAR, setting.words) if mark else 0.0


def _mark_gap(setting: Setting) -> Millimetres[float]:
    return _MARK_GAP * setting.numbers * POINT


def _column_gap(
    chart: PrintedChart,
    tracks: Sequence[Track],
    stub: Millimetres[float],
    layout: Layout,
    setting: Setting,
) -> Millimetres[float]:
    em = setting.numbers * POINT
    used = stub + sum(track.width for track in tracks)
    gap = (setting.width - used) / len(tracks)
    if gap >= LEAST_COLUMN_GAP * em:
        return min(gap, _MOST_COLUMN_GAP * em)
    fit, room = 0, setting.width - stub
    # Whichever columns the owner drops, the widest first is the number that always helps.
    for track in sorted(tracks, key=lambda track: -track.width):
        room -= track.width + LEAST_COLUMN_GAP * em
        fit += room >= 0.0
    what = "material" if layout.card == "overview" else "blade"
    raise TooSmallError(
        f"layout {layout.name} holds {fit} of the {len(tracks)} columns of '{chart.title}' at its "
        f"reading distance: drop {counted(len(tracks) - fit, what)}, or "
    )


def _head(
    chart: PrintedChart,
    tracks: Sequence[Track],
    lefts: Sequence[Millimetres[float]],
    stub: Millimetres[float],
    gap: Millimetres[float],
    setting: Setting,
) -> tuple[list[Item], Millimetres[float]]:
    line = setting.words * POINT * _HEAD_PITCH
    several_names = chart.columns[0].name != chart.title
    names = [
        wrapped(
            track.column.heading,
            # A heading may reach into the gap behind its column; the last has none.
            width=track.width + (0.0 if track is tracks[-1] else gap - 1.0),
            face=Face.BOLD,
            size=setting.words,
            measure=setting.measure,
        )
        for track in tracks
    ]
    rows = max(len(lines) for lines in names) if several_names else 0
    items: list[Item] = []
    for lines, left in zip(names, lefts, strict=True):
        for number, text in enumerate(lines):
            y = line * (number + rows - len(lines) + 0.85)
            items.append(Text(x=left, y=y, text=text, size=setting.words, face=Face.BOLD))
    base = line * (rows + 0.85)
    items.append(Text(x=stub, y=base, text=chart.corner, size=setting.words, align=Align.RIGHT))
    for track, left in zip(tracks, lefts, strict=True):
        for part in track.parts:
            if part.name in _UNIT_OF_PART:
                label = getattr(chart, _UNIT_OF_PART[part.name])
                items.append(
                    Text(
                        x=left + part.right,
                        y=base,
                        text=label,
                        size=setting.words,
                        align=Align.RIGHT,
                    )
                )
    height = line * (rows + 1) + 0.9
    items.append(Rule(x1=0.0, y1=height, x2=setting.width, y2=height, weight=0.8))
    return items, height + 0.3


def _body(
    chart: PrintedChart,
    tracks: Sequence[Track],
    lefts: Sequence[Millimetres[float]],
    stub: Millimetres[float],
    top: Millimetres[float],
    layout: Layout,
    setting: Setting,
) -> tuple[list[Item], Millimetres[float]]:
    pitch, size = row_height(layout, setting), setting.numbers
    items: list[Item] = []
    for number, (label, cells) in enumerate(zip(chart.stub, chart.rows, strict=True)):
        y = top + pitch * number + pitch * 0.5 + size * POINT * 0.35
        items.append(Text(x=stub, y=y, text=label, size=size, face=Face.BOLD, align=Align.RIGHT))
        for cell, track, left in zip(cells, tracks, lefts, strict=True):
            items += _cell_items(cell, track, left, y, setting)
        is_last = number + 1 == len(chart.stub)
        if (number + 1) % layout.rule_every == 0 and not is_last:
            rule = top + pitch * (number + 1)
            items.append(Rule(x1=0.0, y1=rule, x2=setting.width, y2=rule, weight=0.35))
    return items, pitch * len(chart.stub)


def _cell_items(
    cell: PrintedCell,
    track: Track,
    left: Millimetres[float],
    y: Millimetres[float],
    setting: Setting,
) -> list[Item]:
    size = setting.numbers
    if cell.way_out:
        speed = track.parts[0]
        sign = next((part for part in track.parts if part.name == "sign"), None)
        items: list[Item] = [Text(x=left + speed.left, y=y, text=f"– {cell.way_out}", size=size)]
        if sign:
            items.append(Text(x=left + sign.left, y=y, text=cell.sign, size=size))
        return items
    items = []
    for part in track.parts:
        if part.name == "sign":
            items.append(Text(x=left + part.left, y=y, text=cell.sign, size=size))
        elif part.name == "speed":
            items.append(
                Text(x=left + part.point, y=y, text=cell.speed, size=size, align=Align.RIGHT)
            )
            if cell.position:
                x = left + part.point + _mark_gap(setting)
                items.append(Text(x=x, y=y, text=cell.position, size=setting.words))
        else:
            text = _texts(cell, part.name)
            head, dot, tail = text.partition(".")
            start = left + part.point - setting.measure(head, Face.REGULAR, size)
            items.append(Text(x=start, y=y, text=head + dot + tail, size=size))
    return items
