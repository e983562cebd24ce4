"""The facts of a job: how it is held, the bar, the pieces, the times, each behind its name."""

from collections.abc import Sequence

from chartgen.layout.blocks.job_body import clear_below, job_of
from chartgen.layout.layout_file import Layout
from chartgen.layout.piece import Piece, Setting
from chartgen.layout.placed import Face, Item, Text
from chartgen.layout.roles import entry_body, entry_label
from chartgen.layout.typesetting import one_line, wrapped
from chartgen.quantities import Millimetres
from chartgen.wording.card import AnyCard

_GAP: Millimetres[float] = 2.0
_AFTER: Millimetres[float] = 0.4
_MOST = 0.35
"""Share of the width that names may take; a longer one stands on a line of its own."""


def job_facts(card: AnyCard, _layout: Layout, setting: Setting) -> list[Piece]:
    """Return a piece a fact; the texts begin on one edge, right of the names that are short."""
    return clear_below(named_lines(job_of(card, "job-facts").facts, setting), setting)


def named_lines(facts: Sequence[tuple[str, str]], setting: Setting) -> list[Piece]:
    """Return a piece a pair of name and text, the texts on one edge."""
    widths = [setting.measure(name, Face.BOLD, setting.words) for name, _ in facts]
    edge = max((w for w in widths if w <= _MOST * setting.width), default=0.0) + _GAP
    return [_fact(name, text, edge, setting) for name, text in facts]


def _fact(name: str, text: str, edge: Millimetres[float], setting: Setting) -> Piece:
    size, line, measure = setting.words, setting.line, setting.measure
    used = one_line(name, width=setting.width, face=Face.BOLD, size=size, measure=measure)
    lines = wrapped(text, width=setting.width - edge, face=Face.REGULAR, size=size, measure=measure)
    first = 0 if used + _GAP <= edge + 1e-6 else 1
    items: list[Item] = [
        Text(x=0.0, y=line * 0.8, text=name, size=size, face=Face.BOLD, tags=entry_label(name))
    ]
    items += [
        Text(x=edge, y=line * (row + 0.8), text=part, size=size, tags=entry_body(name))
        for row, part in enumerate(lines, first)
    ]
    return Piece(height=line * (first + len(lines)) + _AFTER, items=tuple(items))
