"""What changed: each fact under its group, its name in bold, before and after behind it."""

from chartgen.layout.blocks.paragraphs import paragraph, title
from chartgen.layout.layout_file import Layout
from chartgen.layout.piece import Piece, Setting
from chartgen.layout.placed import Face, Item, Text
from chartgen.layout.roles import entry_body, entry_label
from chartgen.layout.typesetting import wrapped
from chartgen.wording.card import AnyCard
from chartgen.wording.language import tr
from chartgen.wording.printed_change import PrintedChange, PrintedFact

_GAP = 1.6
_INDENT = 4.0
_AFTER = 0.4


def facts(card: AnyCard, _layout: Layout, setting: Setting) -> list[Piece]:
    """Return the summary and the facts; a group that breaks says so where it goes on."""
    change = card.chart
    if not isinstance(change, PrintedChange):
        raise TypeError("a facts block needs a change card")
    pieces = [paragraph(line, setting) for line in change.summary]
    for group in change.facts:
        continued = title(tr("{title} (continued)", title=group.title), setting)
        pieces.append(title(group.title, setting))
        pieces += [_fact(fact, setting, continued) for fact in group.facts]
    return pieces


def _fact(fact: PrintedFact, setting: Setting, continued: Piece) -> Piece:
    """Return a fact on one line, or its name on a line and the values below it."""
    size, line, measure = setting.words, setting.line, setting.measure
    values = f"{fact.before} → {fact.after}"
    left = measure(fact.name, Face.BOLD, size) + _GAP
    name, said = entry_label(fact.name), entry_body(fact.name)
    items: list[Item] = []
    if left + measure(values, Face.REGULAR, size) <= setting.width:
        items += [
            Text(x=0.0, y=line * 0.8, text=fact.name, size=size, face=Face.BOLD, tags=name),
            Text(x=left, y=line * 0.8, text=values, size=size, tags=said),
        ]
        rows = 1
    else:
        names = wrapped(fact.name, width=setting.width, face=Face.BOLD, size=size, measure=measure)
        texts = wrapped(
            values,
            width=setting.width - _INDENT,
            face=Face.REGULAR,
            size=size,
            measure=measure,
        )
        items += [
            Text(x=0.0, y=line * (row + 0.8), text=text, size=size, face=Face.BOLD, tags=name)
            for row, text in enumerate(names)
        ]
        items += [
            Text(x=_INDENT, y=line * (row + 0.8), text=text, size=size, tags=said)
            for row, text in enumerate(texts, len(names))
        ]
        rows = len(names) + len(texts)
    return Piece(height=line * rows + _AFTER, items=tuple(items), continued=(continued,))
