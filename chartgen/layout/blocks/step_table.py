"""The table of steps: a number, what is done, and the numbers it is done with."""

from chartgen.layout.blocks.job_body import job_of
from chartgen.layout.blocks.wrapping_table import Manner, wrapping_table
from chartgen.layout.layout_file import Layout
from chartgen.layout.piece import Piece, Setting
from chartgen.wording.card import AnyCard

_MANNER = Manner(least_gap=0.7, row="step", content="the steps of")


def step_table(card: AnyCard, layout: Layout, setting: Setting) -> list[Piece]:
    """Return the headings and a piece a step.

    Raises
    ------
    TooSmallError
        If the columns are wider than the side at its reading distance.
    """
    return wrapping_table(job_of(card, "step-table"), layout, setting, _MANNER)
