"""The school's own rules, above everything else a sign-off says."""

from chartgen.layout.blocks.job_body import clear_below
from chartgen.layout.blocks.paper_body import paper_of
from chartgen.layout.blocks.paragraphs import paragraph, title
from chartgen.layout.layout_file import Layout
from chartgen.layout.piece import Piece, Setting
from chartgen.wording.card import AnyCard
from chartgen.wording.language import tr
from chartgen.wording.lessons.printed_class import PrintedSignOff


def school_rules(card: AnyCard, _layout: Layout, setting: Setting) -> list[Piece]:
    """Return the rules under their title, a paragraph each."""
    rules = paper_of(card, PrintedSignOff, "school-rules").rules
    head = title(tr("The school's rules come first"), setting)
    return clear_below([head, *(paragraph(rule, setting) for rule in rules)], setting)
