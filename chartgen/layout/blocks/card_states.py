"""Which printed cards are stale and which hold: a list under each state, file by file."""

from itertools import groupby

from chartgen.layout.blocks.paragraphs import paragraph, title
from chartgen.layout.layout_file import Layout
from chartgen.layout.piece import Piece, Setting
from chartgen.wording.card import AnyCard
from chartgen.wording.language import tr
from chartgen.wording.printed_change import PrintedChange

_INDENT = 2.5


def card_states(card: AnyCard, _layout: Layout, setting: Setting) -> list[Piece]:
    """Return the cards; a list that breaks says so where it goes on."""
    change = card.chart
    if not isinstance(change, PrintedChange):
        raise TypeError("a card-states block needs a change card")
    pieces: list[Piece] = []
    for state, lines in groupby(change.cards, key=lambda line: line.state):
        words = tr(state.value)
        continued = title(tr("{title} (continued)", title=words), setting)
        pieces.append(title(words, setting))
        for line in lines:
            text = f"{line.file_stem}: {line.remark}" if line.remark else line.file_stem
            one = paragraph(text, setting, sign="·", indent=_INDENT)
            pieces.append(Piece(height=one.height, items=one.items, continued=(continued,)))
    return pieces
