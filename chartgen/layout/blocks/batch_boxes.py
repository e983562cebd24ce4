"""A box to tick for each piece, in groups of five, and marks where an edge is to be looked at."""

import math

from chartgen.errors import TooSmallError
from chartgen.layout.blocks.job_body import clear_below, job_of, tick_box
from chartgen.layout.blocks.paragraphs import paragraph, title
from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import CAP_HEIGHT, POINT
from chartgen.layout.piece import Piece, Setting
from chartgen.layout.placed import Align, Face, Item, Rule, Text
from chartgen.layout.roles import entry_body
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard
from chartgen.wording.printed_job import PrintedJob
from chartgen.wording.section_titles import SectionTitle

BOX: Millimetres[float] = 9.0
"""Room for a number in the corner and a pencil's tick beside it; 6 mm is the least."""
_GROUP = 5
_APART: Millimetres[float] = 3.2
_INSIDE: Millimetres[float] = 0.8
_BELOW: Millimetres[float] = 2.4
_FLAG = 2.6
"""Weight of the bar that marks where to look at an edge [pt]."""


def batch_boxes(card: AnyCard, layout: Layout, setting: Setting) -> list[Piece]:
    """Return the boxes row by row, and below them when to look at which edge.

    Raises
    ------
    TooSmallError
        If the side is not wide enough for a group of boxes.
    """
    job = job_of(card, "batch-boxes")
    groups = int((setting.width + _APART) / (_GROUP * BOX + _APART))
    if groups < 1:
        raise TooSmallError(
            f"layout {layout.name}: {_GROUP} boxes to tick need {_GROUP * BOX:.0f} mm and the "
            f"side has {setting.width:.0f} mm; "
        )
    # In tens where there is room for two groups, so that a row ends on a round number.
    groups -= groups % 2 if groups > 1 else 0
    again = title(SectionTitle.BOXES.continued, setting)
    pieces = [title(SectionTitle.BOXES.words, setting)]
    row = groups * _GROUP
    pieces += [
        _row(job, first, min(first + row, len(job.boxes)), setting, again)
        for first in range(0, len(job.boxes), row)
    ]
    if job.wear:
        pieces += [
            title(SectionTitle.EDGES.words, setting),
            *(paragraph(line, setting) for line in job.wear),
        ]
    return clear_below(pieces, setting)


def _row(job: PrintedJob, first: int, end: int, setting: Setting, continued: Piece) -> Piece:
    """Return the boxes from `first` on, before `end`."""
    cap = setting.numbers * POINT * CAP_HEIGHT
    marks: dict[int, str] = {}
    for after, sign in job.wear_marks:
        marks[after] = f"{marks[after]} {sign}" if after in marks else sign
    items: list[Item] = []
    top = 0.3
    room = BOX + _BELOW + cap
    for number in range(first, end):
        place = number - first
        x = 0.2 + place * BOX + place // _GROUP * _APART
        tags = entry_body(f"piece {number + 1}")
        items += tick_box(x=x, y=top, side=BOX)
        items.append(
            Text(
                x=x + _INSIDE,
                y=top + _INSIDE + cap,
                text=job.boxes[number],
                size=setting.numbers,
                tags=tags,
            )
        )
        if number + 1 in marks:
            # A bar at the right edge of the box, down to the sign that says which edge.
            right = x + BOX
            bottom = top + BOX + _BELOW
            items.append(Rule(x1=right, y1=top - 0.3, x2=right, y2=bottom + cap, weight=_FLAG))
            items.append(
                Text(
                    x=right - 1.0,
                    y=bottom + cap - 0.6,
                    text=marks[number + 1],
                    size=setting.numbers,
                    face=Face.BOLD,
                    align=Align.RIGHT,
                    tags=tags,
                )
            )
    return Piece(height=math.ceil(room) + 0.5, items=tuple(items), continued=(continued,))
