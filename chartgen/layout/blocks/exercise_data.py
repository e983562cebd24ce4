"""What a student needs to know of the lathe and the material, each fact behind its name."""

from chartgen.layout.blocks.job_body import clear_below
from chartgen.layout.blocks.job_facts import named_lines
from chartgen.layout.blocks.paper_body import paper_of
from chartgen.layout.blocks.paragraphs import title
from chartgen.layout.layout_file import Layout
from chartgen.layout.piece import Piece, Setting
from chartgen.wording.card import AnyCard
from chartgen.wording.language import tr
from chartgen.wording.lessons.printed_class import PrintedExercises


def exercise_data(card: AnyCard, _layout: Layout, setting: Setting) -> list[Piece]:
    """Return the facts of a sheet of exercises; nothing where it needs none."""
    data = paper_of(card, PrintedExercises, "exercise-data").data
    if not data:
        return []
    head = title(tr("Facts for all questions"), setting)
    return clear_below([head, *named_lines(data, setting)], setting)
