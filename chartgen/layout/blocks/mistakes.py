"""The plot of mistakes: a bar each, as long as it was made often, its number at its end."""

from chartgen.errors import TooSmallError
from chartgen.layout.blocks.paper_body import paper_of
from chartgen.layout.blocks.paragraphs import paragraph, title
from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import POINT
from chartgen.layout.piece import Piece, Setting
from chartgen.layout.placed import Align, Face, Item, Panel, Rule, Text
from chartgen.layout.roles import figure_of, under
from chartgen.layout.typesetting import wrapped
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard
from chartgen.wording.lessons.printed_class import PrintedBar, PrintedRoll

_LABELS = 0.46
"""Share of the width that the names of the mistakes may take."""
_GAP: Millimetres[float] = 2.0
_LEAST_BAR: Millimetres[float] = 30.0
"""The longest bar is at least so long, or the others could not be told apart."""
_THICK = 1.0
"""A bar's thickness over the size of the numbers."""
_APART = 1.9
"""Pitch of bars over the size of the numbers, where a name takes one line."""


def mistakes(card: AnyCard, layout: Layout, setting: Setting) -> list[Piece]:
    """Return the plot as one piece; a sentence in its place where no mistake was made.

    Raises
    ------
    TooSmallError
        If the side is too narrow for bars beside their names.
    """
    body = paper_of(card, PrintedRoll, "mistakes")
    head = title(body.bars_title, setting)
    if not body.bars:
        return [head, paragraph(body.description, setting)]
    size, measure = setting.words, setting.measure
    longest = max(
        *(measure(bar.label, Face.BOLD, size) for bar in body.bars),
        *(measure(bar.remark, Face.REGULAR, size) for bar in body.bars),
    )
    edge = min(longest, _LABELS * setting.width) + _GAP
    most = max(bar.count for bar in body.bars)
    behind = measure(str(most), Face.BOLD, setting.numbers) + 1.5
    room = setting.width - edge - behind
    if room < _LEAST_BAR:
        raise TooSmallError(
            f"layout {layout.name}: {max(room, 0.0):.0f} mm are left for the bars of mistakes and "
            f"they need {_LEAST_BAR:.0f}; "
        )
    items: list[Item] = []
    y = 0.5
    for bar in body.bars:
        height, drawn = _bar(bar, setting, y, edge, room * bar.count / most)
        items += drawn
        y += height
    # The line that all bars begin at: lengths are compared from it.
    items.append(Rule(x1=edge, y1=0.0, x2=edge, y2=y, weight=0.8))
    figure = figure_of(body.bars_title, body.description)
    return [head, Piece(height=y + 1.0, items=tuple(under(figure, items)))]


def _bar(
    bar: PrintedBar,
    setting: Setting,
    y: Millimetres[float],
    edge: Millimetres[float],
    length: Millimetres[float],
) -> tuple[Millimetres[float], list[Item]]:
    """Return how high a bar is with its name, and its items."""
    size, line = setting.words, setting.line
    lines = [
        (part, face)
        for text, face in ((bar.label, Face.BOLD), (bar.remark, Face.REGULAR))
        for part in wrapped(text, width=edge - _GAP, face=face, size=size, measure=setting.measure)
    ]
    em = setting.numbers * POINT
    height = max(em * _APART, line * len(lines) + 1.6)
    middle = y + height / 2.0
    thick = em * _THICK
    first = middle - line * len(lines) / 2.0
    items: list[Item] = [
        Text(
            x=edge - _GAP,
            y=first + line * (number + 0.8),
            text=text,
            size=size,
            face=face,
            align=Align.RIGHT,
        )
        for number, (text, face) in enumerate(lines)
    ]
    items.append(Panel(x=edge, y=middle - thick / 2.0, width=length, height=thick))
    items.append(
        Text(
            x=edge + length + 1.5,
            y=middle + em * 0.35,
            text=str(bar.count),
            size=setting.numbers,
            face=Face.BOLD,
        )
    )
    return height, items
