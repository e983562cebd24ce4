"""The legend: a few words a sign on the front, a sentence a sign on the back."""

from chartgen.layout.blocks.paragraphs import paragraph, title
from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import POINT
from chartgen.layout.piece import LEADING, Piece, Setting
from chartgen.layout.placed import Face, Item, Text
from chartgen.layout.roles import entry_body, entry_label, paragraph_of
from chartgen.layout.typesetting import one_line
from chartgen.wording.card import AnyCard
from chartgen.wording.printed_job import PrintedJob
from chartgen.wording.section_titles import SectionTitle
from chartgen.wording.signs import legend_lead

# Shares of the size of the words, and the least in mm.
_GAP = (0.85, 4.0)
_SIGN_GAP = (0.25, 1.2)


def legend(card: AnyCard, _layout: Layout, setting: Setting) -> list[Piece]:
    """Return the signs in use with their few words, run on in lines."""
    if not card.chart.legend:
        return []
    size, measure = setting.words, setting.measure
    line = size * POINT * LEADING
    gap, sign_gap = (max(share * size * POINT, least) for share, least in (_GAP, _SIGN_GAP))
    items: list[Item] = []
    # The letters of a chart say what is met first; the signs of a job have no such lead.
    lead = "" if isinstance(card.chart, PrintedJob) else legend_lead()
    x = measure(lead, Face.REGULAR, size) + gap if lead else 0.0
    row = 0
    if lead:
        items.append(Text(x=0.0, y=line * 0.8, text=lead, size=size, tags=paragraph_of(lead)))
    for entry in card.chart.legend:
        sign = measure(entry.sign, Face.BOLD, size)
        width = sign + sign_gap
        width += one_line(
            entry.short,
            width=setting.width - width,
            face=Face.REGULAR,
            size=size,
            measure=measure,
        )
        if x and x + width > setting.width:
            x, row = 0.0, row + 1
        y = line * (row + 0.8)
        label, said = entry_label(entry.sign), entry_body(entry.sign)
        items.append(Text(x=x, y=y, text=entry.sign, size=size, face=Face.BOLD, tags=label))
        items.append(Text(x=x + sign + sign_gap, y=y, text=entry.short, size=size, tags=said))
        x += width + gap
    return [Piece(height=line * (row + 1) + 0.4, items=tuple(items))]


def legend_sentences(card: AnyCard, _layout: Layout, setting: Setting) -> list[Piece]:
    """Return the signs whose few words on the front need a sentence."""
    entries = [entry for entry in card.chart.legend if entry.on_back]
    if not entries:
        return []
    pieces = [title(SectionTitle.SIGNS.words, setting)]
    indent = max(setting.measure(entry.sign, Face.BOLD, setting.words) for entry in entries)
    pieces += [
        paragraph(entry.sentence, setting, sign=entry.sign, indent=indent + 1.5)
        for entry in entries
    ]
    return pieces
