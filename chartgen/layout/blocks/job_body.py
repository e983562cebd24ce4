"""The body of a job's card, and a box to tick, for the blocks that show a part of either."""

from dataclasses import replace

from chartgen.layout.piece import Piece, Setting
from chartgen.layout.placed import Rule
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard
from chartgen.wording.printed_job import PrintedJob

BOX_WEIGHT = 0.9
_CLEAR = 0.4
"""Room before a title that follows, as a share of a line."""


def job_of(card: AnyCard, block: str) -> PrintedJob:
    """Return the job a card is about.

    Raises
    ------
    TypeError
        If the card is about something else.
    """
    if not isinstance(card.chart, PrintedJob):
        raise TypeError(f"a {block} block needs the card of a job")
    return card.chart


def tick_box(
    *, x: Millimetres[float], y: Millimetres[float], side: Millimetres[float]
) -> list[Rule]:
    """Return an empty square to be ticked with a pencil, its top left corner at (x, y)."""
    right, bottom = x + side, y + side
    edges = ((x, y, right, y), (right, y, right, bottom), (x, bottom, right, bottom))
    return [
        Rule(x1=x1, y1=y1, x2=x2, y2=y2, weight=BOX_WEIGHT)
        for x1, y1, x2, y2 in (*edges, (x, y, x, bottom))
    ]


def writing_line(*, x1: Millimetres[float], x2: Millimetres[float], y: float) -> Rule:
    """Return a thin line to write on."""
    return Rule(x1=x1, y1=y, x2=x2, y2=y, weight=0.5)


def clear_below(pieces: list[Piece], setting: Setting) -> list[Piece]:
    """Return pieces, the last with room below it: a piece of room alone could begin a page."""
    return [
        *pieces[:-1],
        *(replace(last, height=last.height + _CLEAR * setting.line) for last in pieces[-1:]),
    ]
