"""The teacher's key: answer and accepted span, how it is worked out, wrong answers and why."""

from chartgen.layout.blocks.paper_body import paper_of
from chartgen.layout.blocks.paragraphs import paragraph
from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import POINT
from chartgen.layout.piece import Piece, Setting, moved
from chartgen.layout.placed import Face, Item, Rule, Text
from chartgen.layout.roles import entry_body, entry_label
from chartgen.layout.typesetting import wrapped
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard
from chartgen.wording.lessons.printed_class import PrintedKey, PrintedSolution

_NUMBER = 2.2
"""Room for a question's number, as a share of the size of the words."""
_GAP: Millimetres[float] = 2.0
_BELOW: Millimetres[float] = 2.0
_WRONG = "✗"


def solutions(card: AnyCard, _layout: Layout, setting: Setting) -> list[Piece]:
    """Return a piece a question: a solution is compared with a paper at one glance."""
    key = paper_of(card, PrintedKey, "solutions")
    return [_solution(one, setting) for one in key.solutions]


def _solution(one: PrintedSolution, setting: Setting) -> Piece:
    size, line, measure = setting.words, setting.line, setting.measure
    indent = _NUMBER * size * POINT
    items: list[Item] = []
    y = 0.0

    def put(piece: Piece) -> None:
        nonlocal y
        items.extend(moved(item, x=0.0, y=y) for item in piece.items)
        y += piece.height

    put(paragraph(one.question, setting, sign=one.number, indent=indent))
    said = entry_body(one.question)
    head = wrapped(
        f"{one.answer}  {one.accepted}".strip(),
        width=setting.width - indent,
        face=Face.BOLD,
        size=size,
        measure=measure,
    )
    for text in head:
        items.append(
            Text(x=indent, y=y + line * 0.8, text=text, size=size, face=Face.BOLD, tags=said)
        )
        y += line
    for words in one.lines:
        put(_hung(words, setting, indent))
    for wrong, why in one.wrong:
        left = indent + measure(f"{_WRONG} ", Face.REGULAR, size)
        behind = left + measure(wrong, Face.BOLD, size) + _GAP
        label = entry_label(f"{one.number} {wrong}")
        items += [
            Text(x=indent, y=y + line * 0.8, text=_WRONG, size=size, tags=label),
            Text(x=left, y=y + line * 0.8, text=wrong, size=size, face=Face.BOLD, tags=label),
        ]
        # A wrong option is a sentence: why it is wrong then stands below it.
        own_line = behind > setting.width / 2.0
        y += line if own_line else 0.0
        edge = left if own_line else behind
        texts = wrapped(
            why, width=setting.width - edge, face=Face.REGULAR, size=size, measure=measure
        )
        for text in texts:
            body = entry_body(f"{one.number} {wrong}")
            items.append(Text(x=edge, y=y + line * 0.8, text=text, size=size, tags=body))
            y += line
    y += _BELOW
    items.append(Rule(x1=0.0, y1=y - 0.8, x2=setting.width, y2=y - 0.8, weight=0.35))
    return Piece(height=y + 0.4, items=tuple(items))


def _hung(text: str, setting: Setting, indent: Millimetres[float]) -> Piece:
    """Return a paragraph set in by the room of the number."""
    inner = Setting(
        width=setting.width - indent,
        height=setting.height,
        numbers=setting.numbers,
        words=setting.words,
        foot=setting.foot,
        sign=setting.sign,
        measure=setting.measure,
    )
    piece = paragraph(text, inner)
    items = tuple(moved(item, x=indent, y=0.0) for item in piece.items)
    return Piece(height=piece.height, items=items)
