"""What was shown and done at the machine, each with a box, and the lines that are signed."""

from collections.abc import Sequence
from dataclasses import replace

from chartgen.errors import TooSmallError
from chartgen.layout.blocks.job_body import clear_below, writing_line
from chartgen.layout.blocks.paper_body import WRITING, paper_of, ticked_line
from chartgen.layout.blocks.paragraphs import title
from chartgen.layout.layout_file import Layout
from chartgen.layout.piece import Piece, Setting
from chartgen.layout.placed import Face, Item, Text
from chartgen.layout.roles import entry_body, paragraph_of
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard
from chartgen.wording.language import tr
from chartgen.wording.lessons.printed_class import PrintedSignOff

LEAST_FIELD: Millimetres[float] = 20.0
"""The least that a date or a name is written on."""
_GAP: Millimetres[float] = 1.5
_BETWEEN: Millimetres[float] = 4.0


def sign_off(card: AnyCard, layout: Layout, setting: Setting) -> list[Piece]:
    """Return the points and, as one piece, the lines to sign: nobody signs another page.

    Raises
    ------
    TooSmallError
        If a line is too short to write on.
    """
    body = paper_of(card, PrintedSignOff, "sign-off")
    words = tr("Shown at the machine, and done")
    again = title(tr("{title} (continued)", title=words), setting)
    points = [
        replace(ticked_line(text, setting, left=0.0, tags=entry_body(text)), continued=(again,))
        for text in body.points
    ]
    return clear_below([title(words, setting), *points, _fields(body, layout, setting)], setting)


def _fields(body: PrintedSignOff, layout: Layout, setting: Setting) -> Piece:
    items: list[Item] = []
    y = 0.0
    for row in body.fields:
        y += WRITING + 0.8
        items += _row(row, layout, setting, y)
    return Piece(height=y + 1.5, items=tuple(items))


def _row(
    names: Sequence[str], layout: Layout, setting: Setting, y: Millimetres[float]
) -> list[Item]:
    """Return named lines beside one another; those after the first are as short as will do."""
    size = setting.words
    used = [setting.measure(name, Face.BOLD, size) + _GAP for name in names]
    shorter = [LEAST_FIELD] * (len(names) - 1)
    first = setting.width - sum(used) - sum(shorter) - _BETWEEN * (len(names) - 1)
    if first < LEAST_FIELD:
        raise TooSmallError(
            f"layout {layout.name}: {max(first, 0.0):.0f} mm are left to write at "
            f"'{names[0]}' and it takes {LEAST_FIELD:.0f}; "
        )
    items: list[Item] = []
    x = 0.0
    for name, before, room in zip(names, used, [first, *shorter], strict=True):
        items.append(
            Text(x=x, y=y - 0.6, text=name, size=size, face=Face.BOLD, tags=paragraph_of(name))
        )
        items.append(writing_line(x1=x + before, x2=x + before + room, y=y))
        x += before + room + _BETWEEN
    return items
