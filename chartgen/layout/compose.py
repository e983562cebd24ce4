"""A card and a layout -> pages: blocks from the top, anchored ones from the bottom.

A heading stands across all columns, on every page that a side runs on to, and so does the
foot; the check rule and the deference stand on the last of them.
"""

from collections.abc import Sequence
from dataclasses import replace

from chartgen.errors import TooSmallError
from chartgen.layout.blocks import ACROSS, ANCHORED, BLOCKS, ON_EACH_PAGE
from chartgen.layout.blocks.table import row_height
from chartgen.layout.layout_file import Layout, Side
from chartgen.layout.outline import outline_of
from chartgen.layout.piece import Piece, Setting, moved, setting_for
from chartgen.layout.placed import Document, Item, Page
from chartgen.layout.roles import as_decoration
from chartgen.layout.typesetting import Measure, counted
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard
from chartgen.wording.language import TAGS, speaking, tr
from chartgen.wording.printed import PrintedChart, PrintedTable

_GUTTER: Millimetres[float] = 6.0
_SLIP = 1e-6


def compose(card: AnyCard, layout: Layout, measure: Measure) -> Document:
    """Return the pages of a card.

    Raises
    ------
    TooSmallError
        If the content does not fit at the reading distance; the message says how many rows
        or columns to drop. Nothing is ever made smaller.
    """
    # What a layout says by itself is said in the card's language.
    with speaking(card.language):
        pages = tuple(
            replace(page, side=number)
            for number, side in enumerate(layout.sides)
            for page in _pages(card, layout, side, measure)
        )
        title = f"{tr(layout.title)}: {card.chart.title}, {card.lathe}"
    return Document(
        title=title,
        language=TAGS[card.language],
        subject=f"{card.identity} · check {card.check_code}",
        keywords=f"check {card.check_code}",
        pages=pages,
        outline=outline_of(pages),
    )


def _pages(card: AnyCard, layout: Layout, side: Side, measure: Measure) -> list[Page]:
    """Return a side; running text that does not fit on it runs on to further ones like it."""
    width, height = layout.page
    wide = setting_for(
        distance=side.reading_distance, width=width - 2.0 * side.margin, measure=measure
    )
    on_each = [b for b in side.blocks if b in ON_EACH_PAGE]
    at_last = [b for b in side.blocks if b in ANCHORED]
    foot = _anchored(card, layout, side, wide, on_each)
    last = _anchored(card, layout, side, wide, at_last)
    bottom = height - side.margin - last.height

    across: list[Item] = []
    top = side.margin
    for name in (b for b in side.blocks if b in ACROSS):
        for piece in BLOCKS[name](card, layout, wide):
            across += [moved(item, x=side.margin, y=top) for item in piece.items]
            top += piece.height

    column = column_width(layout, side)
    room = bottom - top
    narrow = setting_for(distance=side.reading_distance, width=column, measure=measure, height=room)
    pieces: list[Piece] = []
    for name in (block for block in side.blocks if block not in ANCHORED | ACROSS):
        left = room - sum(piece.height for piece in pieces)
        pieces += BLOCKS[name](card, layout, replace(narrow, height=left))
    if room < 0.0:
        raise TooSmallError(
            f"layout {layout.name}: what stands at the foot of a side is {-room:.0f} mm higher "
            "than the side; "
        )
    chart = card.chart
    if isinstance(chart, PrintedChart | PrintedTable) and {"table", "plain-table"} & set(
        side.blocks
    ):
        _refuse_too_many_rows(chart, layout, narrow, pieces, room)
    stacks = _columns(pieces, room, last.height - foot.height, side.columns, layout)
    firsts = range(0, len(stacks), side.columns)
    found = []
    for first in firsts:
        flowing = _placed(stacks[first : first + side.columns], side, column, top)
        below = last if first == firsts[-1] else foot
        found.append(Page(width=width, height=height, items=(*across, *flowing, *below.items)))
        if first == 0 and len(firsts) > 1:
            # What every page of a side repeats is read once.
            across = as_decoration(across)
            foot = _anchored(card, layout, side, wide, on_each, read=False)
            last = _anchored(card, layout, side, wide, at_last, read=False)
    return found


def _anchored(
    card: AnyCard,
    layout: Layout,
    side: Side,
    setting: Setting,
    names: Sequence[str],
    *,
    read: bool = True,
) -> Piece:
    """Return blocks at the bottom of a page as one piece, its items in their places.

    Unless they are `read`, the blocks that stand on each page are decoration.
    """
    items: list[Item] = []
    top = 0.0
    bottom = layout.page[1] - side.margin
    for name in reversed(names):
        for piece in reversed(BLOCKS[name](card, layout, setting)):
            top += piece.height
            set_here = [moved(item, x=side.margin, y=bottom - top) for item in piece.items]
            # Set from the foot upward, read from above downward.
            items[:0] = set_here if read or name not in ON_EACH_PAGE else as_decoration(set_here)
    return Piece(height=top, items=tuple(items))


def column_width(layout: Layout, side: Side) -> Millimetres[float]:
    """Return the width of one of the columns of a side [mm]."""
    full = layout.page[0] - 2.0 * side.margin
    return (full - _GUTTER * (side.columns - 1)) / side.columns


def _placed(
    stacks: list[list[Piece]], side: Side, column: Millimetres[float], top: Millimetres[float]
) -> list[Item]:
    items: list[Item] = []
    for number, stack in enumerate(stacks):
        x, y = side.margin + number * (column + _GUTTER), top
        for piece in stack:
            items += [moved(item, x=x, y=y) for item in piece.items]
            y += piece.height
    return items


def _refuse_too_many_rows(
    chart: PrintedChart | PrintedTable,
    layout: Layout,
    setting: Setting,
    pieces: list[Piece],
    room: Millimetres[float],
) -> None:
    over = sum(piece.height for piece in pieces) - room
    if over <= 0.0:
        return
    pitch = row_height(layout, setting)
    drop = int(-(-over // pitch))
    rows = len(chart.rows)
    raise TooSmallError(
        f"layout {layout.name} holds {max(rows - drop, 0)} of the {rows} rows of "
        f"'{chart.title}' at its reading distance: {_what_to_drop(layout, drop)}",
        rows=max(rows - drop, 0),
    )


def _what_to_drop(layout: Layout, rows: int) -> str:
    """Return what an owner can leave out to have fewer rows, as the start of a sentence's end."""
    if layout.card == "centre-card":
        # Its rows are what there is to say of a cut: nobody chose them.
        return ""
    what = "material" if layout.card == "blade-card" else "diameter"
    return f"drop {counted(rows, what)}, or "


def _columns(
    pieces: list[Piece],
    room: Millimetres[float],
    more: Millimetres[float],
    columns: int,
    layout: Layout,
) -> list[list[Piece]]:
    """Fill as many columns as it takes; those of the pages before the last have `more` room."""
    highest = max((piece.height for piece in pieces), default=0.0)
    if highest > room + _SLIP:
        raise TooSmallError(
            f"layout {layout.name}: a part of its running text is {highest:.0f} mm high "
            f"and the side has {room:.0f} mm; "
        )
    pages = 1
    while len(stacks := _filled(pieces, room, more, columns * (pages - 1))) > columns * pages:
        pages += 1
    return stacks


def _filled(
    pieces: list[Piece], room: Millimetres[float], more: Millimetres[float], roomier: int
) -> list[list[Piece]]:
    """Fill columns, the first ones `roomier`; a title moves with the piece it announces."""
    stacks: list[list[Piece]] = [[]]
    used = 0.0
    for index, piece in enumerate(pieces):
        needed = piece.height
        if piece.keep_with_next and index + 1 < len(pieces):
            needed += pieces[index + 1].height
        if used + needed > room + _SLIP + (more if len(stacks) <= roomier else 0.0):
            stacks.append(list(piece.continued))
            used = sum(repeated.height for repeated in piece.continued)
        stacks[-1].append(piece)
        used += piece.height
    # A last page has to be there, for what stands on it alone.
    return stacks + [[]] * (roomier + 1 - len(stacks))
