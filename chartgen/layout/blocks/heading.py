"""The first line of a card: what it is about, and for which machine."""

from dataclasses import replace

from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import POINT
from chartgen.layout.piece import Piece, Setting
from chartgen.layout.placed import Align, Face, Item, Rule, Text
from chartgen.layout.roles import as_decoration, paragraph_of, title_of
from chartgen.layout.typesetting import one_line
from chartgen.wording.card import AnyCard

_GAP = 3.0


def heading_again(card: AnyCard, layout: Layout, setting: Setting) -> list[Piece]:
    """Return the heading for a further side, on another leaf: printed again, but read once."""
    return [
        replace(piece, items=tuple(as_decoration(piece.items)))
        for piece in heading(card, layout, setting)
    ]


def heading(card: AnyCard, _layout: Layout, setting: Setting) -> list[Piece]:
    """Return the heading; what does not fit beside the title is left to the foot line."""
    size, measure = setting.numbers, setting.measure
    base = size * POINT * 0.78
    chart = card.chart
    items: list[Item] = [
        Text(
            x=0.0,
            y=base,
            text=chart.title,
            size=size,
            face=Face.BOLD,
            tags=title_of(chart.title),
        )
    ]
    title = one_line(chart.title, width=setting.width, face=Face.BOLD, size=size, measure=measure)
    used = title + _GAP
    lathe = measure(card.lathe, Face.REGULAR, setting.words)
    if used + lathe <= setting.width:
        items.append(
            Text(
                x=setting.width,
                y=base,
                text=card.lathe,
                size=setting.words,
                align=Align.RIGHT,
                tags=paragraph_of(card.lathe),
            )
        )
        used += lathe + _GAP
    if used + measure(chart.subtitle, Face.REGULAR, setting.words) <= setting.width:
        items.append(
            Text(
                x=title + _GAP,
                y=base,
                text=chart.subtitle,
                size=setting.words,
                tags=paragraph_of(chart.subtitle),
            )
        )
    height = size * POINT * 1.15
    items.append(Rule(x1=0.0, y1=height, x2=setting.width, y2=height, weight=1.0))
    return [Piece(height=height + 0.8, items=tuple(items))]
