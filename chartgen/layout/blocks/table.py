"""The table: a bold diameter, and for each column the numbers of one cut.

Numbers stand right-aligned, or on their decimal point where they have one, so that the eye
runs down a column; a thin rule every few rows leads it across.
"""

from collections.abc import Sequence
from dataclasses import replace

from chartgen.errors import TooSmallError
from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import POINT
from chartgen.layout.piece import Piece, Setting
from chartgen.layout.placed import Align, Face, Item, Rule, Text
from chartgen.layout.roles import Tag, cell, column_header, row_header, table_cell, under
from chartgen.layout.tracks import UNIT_OF_PART, Track, headed, mark_gap, text_of, track_of
from chartgen.layout.typesetting import counted, wrapped
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard
from chartgen.wording.language import decimal
from chartgen.wording.printed import PrintedCell, PrintedChart

# Gaps as shares of the size of the numbers.
LEAST_COLUMN_GAP = 0.5
_MOST_COLUMN_GAP = 1.9
_HEAD_PITCH = 1.12


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
    return [track_of(chart, index, layout, setting) for index in range(len(chart.columns))]


def stub_width(chart: PrintedChart, setting: Setting) -> Millimetres[float]:
    """Return the width of the diameters before the columns [mm]."""
    return max(
        *(setting.measure(text, Face.BOLD, setting.numbers) for text in chart.stub),
        setting.measure(chart.corner, Face.REGULAR, setting.words),
    )


def row_height(layout: Layout, setting: Setting) -> Millimetres[float]:
    """Return the height of one row [mm]."""
    return setting.numbers * POINT * layout.row_pitch


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
    base = line * (rows + 0.85)
    items: list[Item] = [
        Text(
            x=stub,
            y=base,
            text=chart.corner,
            size=setting.words,
            align=Align.RIGHT,
            tags=table_cell(
                chart.title,
                "names" if rows else "units",
                column_header(chart.corner, rows=2 if rows else 1),
            ),
        )
    ]
    for index, (lines, left) in enumerate(zip(names, lefts, strict=True)):
        head = column_header(str(index), columns=len(headed(tracks[index])))
        for number, text in enumerate(lines):
            y = line * (number + rows - len(lines) + 0.85)
            items.append(
                Text(
                    x=left,
                    y=y,
                    text=text,
                    size=setting.words,
                    face=Face.BOLD,
                    # Without a row of names the name is the card's title.
                    tags=table_cell(chart.title, "names", head) if rows else (),
                )
            )
    for index, (track, left) in enumerate(zip(tracks, lefts, strict=True)):
        for part in headed(track):
            label = getattr(chart, UNIT_OF_PART[part.name])
            items.append(
                Text(
                    x=left + part.right,
                    y=base,
                    text=label,
                    size=setting.words,
                    align=Align.RIGHT,
                    tags=table_cell(chart.title, "units", column_header(f"{index} {part.name}")),
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
        row = f"row {number}"
        items.append(
            Text(
                x=stub,
                y=y,
                text=label,
                size=size,
                face=Face.BOLD,
                align=Align.RIGHT,
                tags=table_cell(chart.title, row, row_header("")),
            )
        )
        for index, (printed, track, left) in enumerate(zip(cells, tracks, lefts, strict=True)):
            for tag, parts in _cell_items(printed, track, left, y, setting):
                named = replace(tag, key=f"{index} {tag.key}")
                items += under(table_cell(chart.title, row, named), parts)
        is_last = number + 1 == len(chart.stub)
        if (number + 1) % layout.rule_every == 0 and not is_last:
            rule = top + pitch * (number + 1)
            items.append(Rule(x1=0.0, y1=rule, x2=setting.width, y2=rule, weight=0.35))
    return items, pitch * len(chart.stub)


def _cell_items(
    printed: PrintedCell,
    track: Track,
    left: Millimetres[float],
    y: Millimetres[float],
    setting: Setting,
) -> list[tuple[Tag, list[Item]]]:
    """Return the parts of a cell, each a cell of its own to a screen reader."""
    size = setting.numbers
    sign = next((part for part in track.parts if part.name == "sign"), None)
    signs: list[Item] = (
        [Text(x=left + sign.left, y=y, text=printed.sign, size=size)]
        if sign and printed.sign
        else []
    )
    if printed.way_out:
        x = left + track.parts[0].left
        text = f"– {printed.way_out}"
        way_out = cell("way out", columns=len(headed(track)))
        return [(way_out, [Text(x=x, y=y, text=text, size=size), *signs])]
    found: list[tuple[Tag, list[Item]]] = []
    for part in headed(track):
        items: list[Item] = []
        if part.name == "speed":
            items.append(
                Text(x=left + part.point, y=y, text=printed.speed, size=size, align=Align.RIGHT)
            )
            if printed.position:
                x = left + part.point + mark_gap(setting)
                items.append(Text(x=x, y=y, text=printed.position, size=setting.words))
        else:
            text = text_of(printed, part.name)
            head, dot, tail = text.partition(decimal("."))
            start = left + part.point - setting.measure(head, Face.REGULAR, size)
            items.append(Text(x=start, y=y, text=head + dot + tail, size=size))
        found.append((cell(part.name), items))
    found[-1][1].extend(signs)
    return found
