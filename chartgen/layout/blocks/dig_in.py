"""What to do when the blade digs in: in order, between two bars that the eye finds at once."""

from chartgen.layout.blocks.job_body import clear_below, job_of
from chartgen.layout.blocks.paragraphs import paragraph
from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import POINT
from chartgen.layout.piece import Piece, Setting, moved
from chartgen.layout.placed import Face, Item, Rule, Text
from chartgen.layout.roles import section
from chartgen.layout.typesetting import one_line
from chartgen.wording.card import AnyCard
from chartgen.wording.section_titles import SectionTitle

_BAR = 2.4
"""Weight of the bars [pt]."""
_AIR = 1.2
_INDENT = 1.3
"""Share of the size of the words."""


def dig_in(card: AnyCard, _layout: Layout, setting: Setting) -> list[Piece]:
    """Return the steps as one piece: what is wanted in a hurry is not looked for overleaf."""
    words = SectionTitle.DIG_IN.words
    size, measure = setting.words * 1.15, setting.measure
    line = size * POINT * 1.25
    y = _BAR * POINT / 2.0
    one_line(words, width=setting.width, face=Face.BOLD, size=size, measure=measure)
    items: list[Item] = [
        _bar(y, setting),
        Text(
            x=0.0,
            y=y + _AIR + line * 0.85,
            text=words,
            size=size,
            face=Face.BOLD,
            tags=section(words),
        ),
    ]
    y += _AIR + line * 1.15
    for number, text in enumerate(job_of(card, "dig-in").dig_in, 1):
        one = paragraph(text, setting, sign=f"{number}", indent=_INDENT * setting.words * POINT)
        items += [moved(item, x=0.0, y=y) for item in one.items]
        y += one.height
    y += _AIR / 2.0
    items.append(_bar(y, setting))
    return clear_below([Piece(height=y + _BAR * POINT / 2.0, items=tuple(items))], setting)


def _bar(y: float, setting: Setting) -> Rule:
    return Rule(x1=0.0, y1=y, x2=setting.width, y2=y, weight=_BAR)
