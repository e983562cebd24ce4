"""The foot line: whose card it is, how sure, what it defers to. The only small print."""

from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import POINT
from chartgen.layout.piece import LEADING, Piece, Setting
from chartgen.layout.placed import Align, Face, Item, Rule, Text
from chartgen.layout.roles import paragraph_of
from chartgen.layout.typesetting import wrapped
from chartgen.wording.card import AnyCard
from chartgen.wording.language import tr


def foot(card: AnyCard, layout: Layout, setting: Setting) -> list[Piece]:
    """Return identity and check code on one line, force band and deference below."""
    return _foot(card, layout, setting, with_band=True)


def identity(card: AnyCard, layout: Layout, setting: Setting) -> list[Piece]:
    """Return identity and check code alone, for a side that says the rest elsewhere."""
    return _foot(card, layout, setting, with_band=False)


def _foot(card: AnyCard, _layout: Layout, setting: Setting, *, with_band: bool) -> list[Piece]:
    size = setting.foot
    line = size * POINT * LEADING
    code = tr("check {code}", code=card.check_code)
    code_width = setting.measure(code, Face.BOLD, size) + 3.0
    names = wrapped(
        card.identity,
        width=setting.width - code_width,
        face=Face.REGULAR,
        size=size,
        measure=setting.measure,
    )
    band = ""
    texts: list[str] = []
    if with_band:
        band = f"{card.force_band} {card.short_deference}"
        texts = wrapped(
            band,
            width=setting.width,
            face=Face.REGULAR,
            size=size,
            measure=setting.measure,
        )
    items: list[Item] = [Rule(x1=0.0, y1=0.6, x2=setting.width, y2=0.6, weight=0.4)]
    said = paragraph_of(card.identity)
    items += [
        Text(x=0.0, y=0.6 + line * (number + 0.9), text=text, size=size, tags=said)
        for number, text in enumerate(names)
    ]
    items.append(
        Text(
            x=setting.width,
            y=0.6 + line * 0.9,
            text=code,
            size=size,
            face=Face.BOLD,
            align=Align.RIGHT,
            tags=paragraph_of(code),
        )
    )
    items += [
        Text(x=0.0, y=0.6 + line * (number + 0.9), text=text, size=size, tags=paragraph_of(band))
        for number, text in enumerate(texts, len(names))
    ]
    return [Piece(height=0.6 + line * (len(names) + len(texts)) + 0.3, items=tuple(items))]


def deference(card: AnyCard, _layout: Layout, setting: Setting) -> list[Piece]:
    """Return the sentence that puts the machine's manual first, large enough to be read."""
    size = setting.words
    line = size * POINT * LEADING
    texts = wrapped(
        card.deference, width=setting.width, face=Face.BOLD, size=size, measure=setting.measure
    )
    items = tuple(
        Text(
            x=0.0,
            y=line * (number + 0.8),
            text=text,
            size=size,
            face=Face.BOLD,
            tags=paragraph_of(card.deference),
        )
        for number, text in enumerate(texts)
    )
    return [Piece(height=line * len(texts) + 0.6, items=items)]
