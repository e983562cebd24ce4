"""The figures of a change card, each on a page of its own under a heading of its own."""

from dataclasses import replace
from typing import TYPE_CHECKING, cast

from chartgen.layout.blocks.figure import figure_piece
from chartgen.layout.blocks.heading import heading
from chartgen.layout.layout_file import Layout
from chartgen.layout.piece import Piece, Setting, moved
from chartgen.wording.card import AnyCard, PrintedCard
from chartgen.wording.printed_change import PrintedChange

if TYPE_CHECKING:
    from chartgen.wording.figure import PrintedCurves


def change_figures(card: AnyCard, layout: Layout, setting: Setting) -> list[Piece]:
    """Return each figure as a piece as high as a whole side.

    Raises
    ------
    DoesNotFitError
        If a label of a figure finds no place in it.
    """
    if not isinstance(card.chart, PrintedChange):
        raise TypeError("a change-figures block needs a change card")
    pieces = []
    for body in card.chart.figures:
        # A heading asks a card for its chart's title only, whatever kind of chart it is.
        about = replace(cast("PrintedCard[PrintedCurves]", card), chart=body)
        (head,) = heading(about, layout, setting)
        rest = replace(setting, height=setting.height - head.height)
        drawn = figure_piece(body, layout, rest)
        items = (*head.items, *(moved(item, x=0.0, y=head.height) for item in drawn.items))
        pieces.append(Piece(height=setting.height, items=items))
    return pieces
