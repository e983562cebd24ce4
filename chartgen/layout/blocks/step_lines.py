"""Step by step in words: what is done, line by line, and what to watch while it is done."""

from dataclasses import replace

from chartgen.layout.blocks.job_body import clear_below, job_of
from chartgen.layout.blocks.paragraphs import paragraph
from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import POINT
from chartgen.layout.piece import Piece, Setting, moved
from chartgen.layout.placed import Face, Item, Text
from chartgen.layout.roles import paragraph_of, section
from chartgen.layout.typesetting import one_line, wrapped
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard
from chartgen.wording.language import tr
from chartgen.wording.printed_job import PrintedStep

_NUMBER = 1.9
"""Room for the number of a step, as a share of the size of the words."""
_GAP: Millimetres[float] = 1.2


def step_lines(card: AnyCard, _layout: Layout, setting: Setting) -> list[Piece]:
    """Return a heading, a piece a line and what to watch, for each step."""
    return [piece for step in job_of(card, "step-lines").steps for piece in _step(step, setting)]


def _step(step: PrintedStep, setting: Setting) -> list[Piece]:
    indent = _NUMBER * setting.words * POINT
    again = _heading(step, tr("{title} (continued)", title=step.what), setting, indent)
    narrow = _narrowed(setting, indent)
    pieces = [paragraph(text, narrow) for text in step.lines]
    if step.watch:
        pieces.append(_watch(step.watch, narrow))
    hung = [
        Piece(
            height=piece.height,
            items=tuple(moved(item, x=indent, y=0.0) for item in piece.items),
            continued=(again,),
        )
        for piece in pieces
    ]
    return clear_below([_heading(step, step.what, setting, indent), *hung], setting)


def _heading(
    step: PrintedStep,
    text: str,
    setting: Setting,
    indent: Millimetres[float],
) -> Piece:
    size, line, measure = setting.words, setting.line, setting.measure
    lines = wrapped(text, width=setting.width - indent, face=Face.BOLD, size=size, measure=measure)
    one_line(step.number, width=indent, face=Face.BOLD, size=size, measure=measure)
    tags = section(f"{step.number} {text}")
    first = line * 0.9
    items: list[Item] = [
        Text(x=0.0, y=first, text=step.number, size=size, face=Face.BOLD, tags=tags)
    ]
    items += [
        Text(x=indent, y=first + line * row, text=part, size=size, face=Face.BOLD, tags=tags)
        for row, part in enumerate(lines)
    ]
    height = line * (len(lines) + 0.15)
    return Piece(height=height, items=tuple(items), keep_with_next=True)


def _watch(text: str, setting: Setting) -> Piece:
    """Return what to watch: its lead in bold, its lines hung behind the lead."""
    sign = tr("Watch:")
    lead = setting.measure(sign, Face.BOLD, setting.words) + _GAP
    words = paragraph(text, _narrowed(setting, lead))
    tags = paragraph_of(f"{sign} {text}")
    items: list[Item] = [
        Text(
            x=0.0,
            y=setting.line * 0.8,
            text=sign,
            size=setting.words,
            face=Face.BOLD,
            tags=tags,
        )
    ]
    items += [moved(replace(item, tags=tags), x=lead, y=0.0) for item in words.items]
    return Piece(height=words.height, items=tuple(items))


def _narrowed(setting: Setting, by: Millimetres[float]) -> Setting:
    return replace(setting, width=setting.width - by)
