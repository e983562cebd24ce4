"""One file a kind of block; a layout names them, `BLOCKS` finds them.

A block takes the card, the layout and the setting, and returns pieces. ANCHORED blocks
stand at the bottom of a side over its full width, ACROSS ones at its top; the others flow
from the top, column by column. Where a side runs on to further pages, the anchored ones
that are not ON_EACH_PAGE stand on the last.
"""

from collections.abc import Callable

from chartgen.layout.blocks.batch_boxes import batch_boxes
from chartgen.layout.blocks.card_states import card_states
from chartgen.layout.blocks.cautions import cautions
from chartgen.layout.blocks.change_figures import change_figures
from chartgen.layout.blocks.check_rule import check_rule
from chartgen.layout.blocks.checklist import checklist
from chartgen.layout.blocks.dig_in import dig_in
from chartgen.layout.blocks.exercise_data import exercise_data
from chartgen.layout.blocks.facts import facts
from chartgen.layout.blocks.figure import figure
from chartgen.layout.blocks.first_piece import first_piece
from chartgen.layout.blocks.foot import deference, foot, identity
from chartgen.layout.blocks.heading import heading, heading_again
from chartgen.layout.blocks.job_facts import job_facts
from chartgen.layout.blocks.legend import legend, legend_sentences
from chartgen.layout.blocks.mistakes import mistakes
from chartgen.layout.blocks.moved_cells import moved_cells
from chartgen.layout.blocks.nomogram import nomogram
from chartgen.layout.blocks.notes_and_sign_off import notes_and_sign_off
from chartgen.layout.blocks.paragraphs import assumptions, notes
from chartgen.layout.blocks.plain_table import plain_table
from chartgen.layout.blocks.questions import questions
from chartgen.layout.blocks.roll import roll
from chartgen.layout.blocks.school_rules import school_rules
from chartgen.layout.blocks.sign_off import sign_off
from chartgen.layout.blocks.sketch import sketch
from chartgen.layout.blocks.solutions import solutions
from chartgen.layout.blocks.step_lines import step_lines
from chartgen.layout.blocks.step_table import step_table
from chartgen.layout.blocks.student import student
from chartgen.layout.blocks.table import table
from chartgen.layout.layout_file import Layout
from chartgen.layout.piece import Piece, Setting
from chartgen.wording.card import AnyCard

Block = Callable[[AnyCard, Layout, Setting], list[Piece]]

BLOCKS: dict[str, Block] = {
    "heading": heading,
    "heading-again": heading_again,
    "table": table,
    "plain-table": plain_table,
    "figure": figure,
    "nomogram": nomogram,
    "notes": notes,
    "facts": facts,
    "card-states": card_states,
    "moved-cells": moved_cells,
    "change-figures": change_figures,
    "sketch": sketch,
    "step-table": step_table,
    "step-lines": step_lines,
    "checklist": checklist,
    "dig-in": dig_in,
    "job-facts": job_facts,
    "notes-and-sign-off": notes_and_sign_off,
    "batch-boxes": batch_boxes,
    "first-piece": first_piece,
    "student": student,
    "questions": questions,
    "exercise-data": exercise_data,
    "solutions": solutions,
    "roll": roll,
    "mistakes": mistakes,
    "sign-off": sign_off,
    "school-rules": school_rules,
    "legend": legend,
    "cautions": cautions,
    "legend-sentences": legend_sentences,
    "assumptions": assumptions,
    "check-rule": check_rule,
    "deference": deference,
    "foot": foot,
    "identity": identity,
}

ACROSS = frozenset({"heading", "heading-again", "student"})
ANCHORED = frozenset({"legend", "check-rule", "deference", "foot", "identity"})
ON_EACH_PAGE = frozenset({"legend", "foot", "identity"})
