"""A table of a class, a student a row."""

from chartgen.layout.blocks.paper_body import paper_of
from chartgen.layout.blocks.wrapping_table import Manner, wrapping_table
from chartgen.layout.layout_file import Layout
from chartgen.layout.piece import Piece, Setting
from chartgen.wording.card import AnyCard
from chartgen.wording.lessons.printed_class import PrintedRoll

# Nobody has his name cut short, but a long one does not push the numbers away.
_MANNER = Manner(least_gap=0.6, row="row", content="the table", widest=60.0)


def roll(card: AnyCard, layout: Layout, setting: Setting) -> list[Piece]:
    """Return the headings and a piece a student.

    Raises
    ------
    TooSmallError
        If the columns are wider than the side at its reading distance.
    """
    return wrapping_table(paper_of(card, PrintedRoll, "roll"), layout, setting, _MANNER)
