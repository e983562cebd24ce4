"""Room to write in, and the line on which who set up and who checked put their names."""

from chartgen.layout.blocks.job_body import clear_below, job_of, writing_line
from chartgen.layout.blocks.paragraphs import title
from chartgen.layout.layout_file import Layout
from chartgen.layout.piece import Piece, Setting
from chartgen.layout.placed import Face, Item, Text
from chartgen.layout.roles import paragraph_of
from chartgen.layout.typesetting import one_line
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard
from chartgen.wording.language import tr
from chartgen.wording.section_titles import SectionTitle

PITCH: Millimetres[float] = 8.0
"""Lines for handwriting (common practice, no source)."""
_LEAST, _MOST = 3, 6
"""Lines for notes: as many as the column has room for, between these."""
_SHARES = (0.38, 0.24, 0.38)
_GAP: Millimetres[float] = 1.5
_BELOW: Millimetres[float] = 1.5
_BETWEEN: Millimetres[float] = 3.0


def notes_and_sign_off(card: AnyCard, _layout: Layout, setting: Setting) -> list[Piece]:
    """Return lines to write on and the sign-off, as one piece: nobody signs another page."""
    job_of(card, "notes-and-sign-off")
    head = title(SectionTitle.NOTES.words, setting)
    room = int((setting.height - head.height - 2.0 * _BELOW) / PITCH) - 1
    lines = min(max(room, _LEAST), _MOST)
    items: list[Item] = [
        writing_line(x1=0.0, x2=setting.width, y=PITCH * (number + 1)) for number in range(lines)
    ]
    base = PITCH * (lines + 1)
    left = 0.0
    fields = (tr("Name"), tr("Date"), tr("Checked by"))
    across = setting.width - _BETWEEN * (len(fields) - 1)
    for field, share in zip(fields, _SHARES, strict=True):
        width = across * share
        used = one_line(
            field, width=width, face=Face.BOLD, size=setting.words, measure=setting.measure
        )
        items.append(
            Text(
                x=left,
                y=base - 0.6,
                text=field,
                size=setting.words,
                face=Face.BOLD,
                tags=paragraph_of(field),
            )
        )
        items.append(writing_line(x1=left + used + _GAP, x2=left + width, y=base))
        left += width + _BETWEEN
    whole = Piece(height=base + _BELOW, items=tuple(items))
    return clear_below([head, whole], setting)
