"""The tables of a layout file: every key, what reads it, and which blocks go together.

An owner's layout may arrange a card as he likes, but not leave out what could hurt him.
"""

from collections.abc import Collection, Iterator
from typing import Any

from chartgen.description.choices import ChosenFrom
from chartgen.description.fields import (
    Count,
    InUnit,
    Ratio,
    Words,
)
from chartgen.description.json_schema import json_schema
from chartgen.description.lists import Distinct
from chartgen.description.problems import Problem
from chartgen.description.tables import ListOf, Table, TableOf, required
from chartgen.layout.pages import (
    NO_POUCH,
    PAGES,
    POUCHES,
    SEALED_EDGE,
    fits_pouch,
    least_margin,
    page_size,
    pouches_for,
)
from chartgen.quantities import MM

# The block that shows the body of each kind of card.
BODY_OF = {
    "lathe-chart": "table",
    "overview": "table",
    "blade-card": "plain-table",
    "centre-card": "plain-table",
    "spindle-curves": "figure",
    "window-curves": "figure",
    "width-curves": "figure",
    "speed-curves": "figure",
    "speed-nomogram": "nomogram",
    "power-nomogram": "nomogram",
    "change-card": "change-figures",
    "set-up-card": "step-table",
    "batch-card": "batch-boxes",
    "student-card": "table",
    "exercise-sheet": "questions",
    "answer-key": "solutions",
    "answer-matrix": "roll",
    "safety-quiz": "questions",
    "sign-off-card": "sign-off",
    "class-marks": "roll",
}
CARDS = tuple(BODY_OF)
_OF_A_CHANGE = ("facts", "card-states", "moved-cells", "change-figures")
_OF_A_JOB = (
    "sketch",
    "step-table",
    "step-lines",
    "checklist",
    "dig-in",
    "job-facts",
    "notes-and-sign-off",
    "batch-boxes",
    "first-piece",
)
_OF: dict[str, tuple[str, ...]] = {
    "change-card": _OF_A_CHANGE,
    "set-up-card": _OF_A_JOB,
    "batch-card": _OF_A_JOB,
    "student-card": ("table", "student"),
    "exercise-sheet": ("questions", "student", "exercise-data"),
    "answer-key": ("solutions", "student"),
    "answer-matrix": ("roll",),
    "safety-quiz": ("questions", "student"),
    "sign-off-card": ("sign-off", "school-rules", "student"),
    "class-marks": ("roll", "mistakes"),
}
# What could hurt, beside what every card has to say.
_ON_A_JOB = ("checklist", "dig-in")
# What a paper of a class is nothing without, beside its body.
_ON_A_PAPER = {
    "student-card": ("student",),
    "exercise-sheet": ("student", "exercise-data"),
    "answer-key": ("student",),
    "safety-quiz": ("student",),
    "sign-off-card": ("student", "school-rules"),
    "class-marks": ("mistakes",),
}
_OF_A_CLASS = (
    "student",
    "questions",
    "exercise-data",
    "solutions",
    "roll",
    "mistakes",
    "sign-off",
    "school-rules",
)
_BODIES = (
    "table",
    "plain-table",
    "figure",
    "nomogram",
    *_OF_A_CHANGE,
    *_OF_A_JOB,
    *_OF_A_CLASS,
)
# A table whose signs are explained on its own side.
_WITH_SIGNS = ("table", "step-table")
_ON_EVERY_CARD = (
    "heading",
    "cautions",
    "assumptions",
    "check-rule",
    "deference",
)
BLOCKS = (
    *_BODIES,
    "heading-again",
    "notes",
    "legend",
    "legend-sentences",
    *_ON_EVERY_CARD,
    "foot",
    "identity",
)
CELL_PARTS = ("speed", "feed", "pace", "sign")
_IN_EVERY_CELL = ("speed", "feed", "sign")
_NEARER = "Choose from the length of an arm to the distance of a wall."


class SideTable(Table):
    """A side of a card: how far off it is read, its margin, its columns, its blocks."""

    reading_distance = required(InUnit(MM, bounds=(250.0, 5000.0), mend=_NEARER))
    margin = required(InUnit(MM, bounds=(4.0, 60.0)))
    columns = required(Count(bounds=(1, 6)))
    blocks = required(Distinct(ListOf(ChosenFrom(BLOCKS))))


class LayoutTable(Table):
    """A layout: kind of card, page, pouch, what a cell shows, the pitch of rows, the sides."""

    title = required(Words())
    card = required(ChosenFrom(CARDS))
    page = required(ChosenFrom(PAGES))
    pouch = required(ChosenFrom((*POUCHES, NO_POUCH)))
    cell = required(Distinct(ListOf(ChosenFrom(CELL_PARTS))))
    row_pitch = required(Ratio(bounds=(1.0, 4.0)))
    rule_every = required(Count(bounds=(1, 50)))
    side = required(ListOf(TableOf(SideTable)))


def layout_schema() -> dict[str, Any]:
    """Return the JSON Schema of a layout file."""
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "A layout of chartgen",
        **json_schema(LayoutTable),
    }


def problems_between_keys(table: LayoutTable) -> Iterator[Problem]:
    """Yield what is wrong with keys that are each right by themselves."""
    size = page_size(table.page)
    if not fits_pouch(size, table.pouch):
        film = " x ".join(f"{edge:g}" for edge in POUCHES[table.pouch])
        page = " x ".join(f"{edge:g}" for edge in sorted(size))
        yield Problem(
            ("pouch",),
            f"the film {table.pouch} ({film} mm) is too small for page {table.page} ({page} mm) "
            f"and a sealed edge of {SEALED_EDGE:g} mm all round.",
            f"Use one of: {', '.join((*pouches_for(size), NO_POUCH))}.",
        )
    least = least_margin(table.page)
    for number, side in enumerate(table.side):
        if side.margin < least:
            yield Problem(
                ("side", number, "margin"),
                f"{side.margin:g} mm is nearer to the edge than can be printed or cut.",
                f"Use {least:g} mm or more.",
            )
    if BODY_OF[table.card] == "table":
        for part in _missing(_IN_EVERY_CELL, table.cell):
            yield Problem(("cell",), f"leaves out {part!r}.", "A cell needs it; add it.")
    yield from _problems_of_blocks(table)


def _problems_of_blocks(table: LayoutTable) -> Iterator[Problem]:
    body = BODY_OF[table.card]
    allowed = _OF.get(table.card, (body,))
    blocks = [block for side in table.side for block in side.blocks]
    wanted: tuple[str, ...] = (body, *_ON_EVERY_CARD)
    if allowed is _OF_A_JOB:
        wanted = (*wanted, *_ON_A_JOB)
    wanted = (*wanted, *_ON_A_PAPER.get(table.card, ()))
    if {*_WITH_SIGNS, "plain-table", "legend"} & set(blocks):
        wanted = (*wanted, "legend-sentences")
    for block in _missing(wanted, blocks):
        yield Problem(
            ("side",), f"no side has the block {block!r}.", "Every such card needs it; add it."
        )
    for number, side in enumerate(table.side):
        path = ("side", number, "blocks")
        for block in side.blocks:
            has_no_notes = block == "notes" and body in {"table", "change-figures"}
            if has_no_notes or (block in _BODIES and block not in allowed):
                yield Problem(path, f"a {table.card} has no {block!r}.", "Leave it out.")
        if not {"foot", "identity"} & set(side.blocks):
            yield Problem(
                path,
                "this side does not tell whose card it is.",
                "Add 'foot' or 'identity'.",
            )
        if set(_WITH_SIGNS) & set(side.blocks):
            for block in _missing(("legend", "foot"), side.blocks):
                yield Problem(
                    path,
                    f"a side with a table needs the block {block!r}.",
                    "Signs and doubts stand beside the numbers; add it.",
                )


def _missing(wanted: Collection[str], given: Collection[str]) -> list[str]:
    return [one for one in wanted if one not in given]
