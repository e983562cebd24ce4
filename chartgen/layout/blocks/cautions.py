"""The cautions: grouped under their signal words, the drawn signs first in each group."""

from itertools import groupby

from chartgen.layout.blocks.paragraphs import paragraph
from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import POINT
from chartgen.layout.pictograms import PICTOGRAMS
from chartgen.layout.piece import Piece, Setting
from chartgen.layout.placed import Drawing, Face, Item, Panel, Text
from chartgen.layout.roles import entry_body, entry_label, figure_of, section
from chartgen.layout.typesetting import one_line, wrapped
from chartgen.wording.card import AnyCard
from chartgen.wording.cautions import PrintedCaution
from chartgen.wording.language import tr

_GAP = 2.0
_PANEL_GAP = 0.8
# Shares of the size of the words, so that a card read from farther off looks alike.
_BULLET = 0.92
_WORD_AFTER_TRIANGLE = 2.9
_GENERAL = "general"


def cautions(card: AnyCard, _layout: Layout, setting: Setting) -> list[Piece]:
    """Return a panel with each signal word, and under it its cautions."""
    pieces: list[Piece] = []
    seen = {_GENERAL}
    for signal, group in groupby(card.cautions, key=lambda caution: caution.signal):
        members = list(group)
        pieces.append(_panel(signal, setting, is_injury=members[0].is_injury))
        # A sign is drawn once a card: repeated, it would stop being looked at.
        drawn = []
        for caution in members:
            if caution.pictogram and caution.pictogram not in seen:
                seen.add(caution.pictogram)
                drawn.append(caution)
        plain = [c for c in members if c not in drawn]
        pieces += [_with_sign(caution, setting) for caution in drawn]
        pieces += [
            paragraph(c.text, setting, sign="·", indent=_BULLET * setting.words * POINT)
            for c in plain
        ]
    return pieces


def _panel(signal: str, setting: Setting, *, is_injury: bool) -> Piece:
    top = _PANEL_GAP
    size = setting.words * 1.15
    height = size * POINT * 1.25
    items: list[Item] = [Panel(x=0.0, y=top, width=setting.width, height=height)]
    # A notice is not about injury, so it carries no safety alert symbol (ANSI Z535).
    if is_injury:
        meaning = tr(PICTOGRAMS[_GENERAL].meaning)
        items.append(
            Drawing(
                x=1.2,
                y=top + 0.45,
                size=height - 0.9,
                primitives=PICTOGRAMS[_GENERAL].primitives,
                meaning=meaning,
                tags=(*section(signal), *figure_of(_GENERAL, meaning)),
            )
        )
    y = top + height * 0.78
    one_line(
        signal,
        width=setting.width - _WORD_AFTER_TRIANGLE * setting.words * POINT,
        face=Face.BOLD,
        size=size,
        measure=setting.measure,
    )
    items.append(
        Text(
            x=_WORD_AFTER_TRIANGLE * setting.words * POINT,
            y=y,
            text=signal,
            size=size,
            face=Face.BOLD,
            paper=True,
            tags=section(signal),
        )
    )
    return Piece(height=top + height + 1.0, items=tuple(items), keep_with_next=True)


def _with_sign(caution: PrintedCaution, setting: Setting) -> Piece:
    pictogram = PICTOGRAMS[caution.pictogram]
    meaning = tr(pictogram.meaning)
    indent = setting.sign + _GAP
    lines = wrapped(
        caution.text,
        width=setting.width - indent,
        face=Face.REGULAR,
        size=setting.words,
        measure=setting.measure,
    )
    line = setting.line
    height = max(setting.sign, line * len(lines)) + 0.8
    top = (height - 0.8 - line * len(lines)) / 2.0
    items: list[Item] = [
        Drawing(
            x=0.0,
            y=0.0,
            size=setting.sign,
            primitives=pictogram.primitives,
            meaning=meaning,
            tags=(*entry_label(caution.text), *figure_of(pictogram.key, meaning)),
        )
    ]
    items += [
        Text(
            x=indent,
            y=top + line * (number + 0.8),
            text=text,
            size=setting.words,
            tags=entry_body(caution.text),
        )
        for number, text in enumerate(lines)
    ]
    return Piece(height=height, items=tuple(items))
