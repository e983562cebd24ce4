"""What to look at before the spindle turns: a box to tick, and the words beside it."""

from chartgen.layout.blocks.job_body import clear_below, job_of, tick_box
from chartgen.layout.blocks.paragraphs import title
from chartgen.layout.layout_file import Layout
from chartgen.layout.piece import Piece, Setting
from chartgen.layout.placed import Face, Item, Text
from chartgen.layout.roles import entry_body
from chartgen.layout.typesetting import wrapped
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard
from chartgen.wording.section_titles import SectionTitle

BOX: Millimetres[float] = 4.5
"""A tick of a pencil has room in it (common practice, no source)."""
_GAP: Millimetres[float] = 2.0
_AFTER: Millimetres[float] = 1.2


def checklist(card: AnyCard, _layout: Layout, setting: Setting) -> list[Piece]:
    """Return the points of the checklist; one that breaks the list says so where it goes on."""
    again = title(SectionTitle.CHECKS.continued, setting)
    points = [_point(text, setting, again) for text in job_of(card, "checklist").checklist]
    return clear_below([title(SectionTitle.CHECKS.words, setting), *points], setting)


def _point(text: str, setting: Setting, continued: Piece) -> Piece:
    indent = BOX + _GAP
    line = setting.line
    lines = wrapped(
        text,
        width=setting.width - indent,
        face=Face.REGULAR,
        size=setting.words,
        measure=setting.measure,
    )
    # A single line stands in the middle of its box, more begin at its top.
    top = max(0.0, (BOX - line * len(lines)) / 2.0)
    items: list[Item] = list(tick_box(x=0.2, y=0.2, side=BOX))
    items += [
        Text(
            x=indent,
            y=top + line * (number + 0.8),
            text=part,
            size=setting.words,
            tags=entry_body(text),
        )
        for number, part in enumerate(lines)
    ]
    height = max(BOX + 0.4, line * len(lines)) + _AFTER
    return Piece(height=height, items=tuple(items), continued=(continued,))
