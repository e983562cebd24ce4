"""What moved on the card of a job: told by step, and nothing where nothing moved."""

from dataclasses import replace

import pytest

from chartgen.wording.job_moves import job_moves, job_remark
from chartgen.wording.printed_job import (
    PrintedJob,
    PrintedSketch,
    PrintedStep,
    SketchBox,
)

SKETCH = PrintedSketch(
    boxes=(SketchBox(part="bar", x1=-30.0, x2=40.0, low=-15.0, high=15.0),),
    dimensions=(),
    labels=(),
    description="Bar 30 mm, 40 mm out of the jaws.",
)


def step(number: int, what: str, *cells: str, lines: tuple[str, ...] = ()) -> PrintedStep:
    return PrintedStep(number=str(number), what=what, cells=cells, lines=lines, watch="")


CARD = PrintedJob(
    title="Invented collar",
    subtitle="mild steel",
    sketch=SKETCH,
    headings=("", "step", "rev/\nmin", "mm/rev"),
    right=frozenset({0, 2, 3}),
    steps=(
        step(1, "hold", "", "", lines=("Close the chuck.",)),
        step(2, "turn", "900", "0.10", lines=("One pass.", "Dry.")),
        step(3, "part off", "560", "0.05"),
    ),
    facts=(("Pieces", "8 a bar"), ("Time", "12 min")),
    checklist=("Key out.",),
    dig_in=("Stop.",),
    notes=(),
    wear=(),
    boxes=("1", "2"),
    legend=(),
)


def with_step(index: int, **values: object) -> PrintedJob:
    steps = list(CARD.steps)
    steps[index] = replace(steps[index], **values)  # type: ignore[arg-type]
    return replace(CARD, steps=tuple(steps))


def told(now: PrintedJob) -> list[tuple[str, str, str, str]]:
    return [
        (group.title, fact.name, fact.before, fact.after)
        for group in job_moves(CARD, now)
        for fact in group.facts
    ]


def test_the_same_card_has_moved_nowhere() -> None:
    assert job_moves(CARD, CARD) == ()
    assert job_remark(CARD, CARD) == ""


def test_a_moved_number_is_told_under_its_heading_at_its_step() -> None:
    now = with_step(1, cells=("1200", "0.10"))
    assert told(now) == [("Step 2, turn", "rev/ min", "900", "1200")]
    assert job_remark(CARD, now) == "1 of 3 steps"


def test_other_words_at_a_step_are_told_without_those_that_stay() -> None:
    now = with_step(1, lines=("Two passes.", "Dry."), watch="The chip.")
    assert told(now) == [("Step 2, turn", "in words", "One pass.", "Two passes. The chip.")]


def test_beside_moved_numbers_the_lines_that_say_them_again_are_left_out() -> None:
    now = with_step(1, cells=("1200", "0.10"), lines=("Two passes.",), watch="The chip.")
    assert told(now) == [
        ("Step 2, turn", "rev/ min", "900", "1200"),
        ("Step 2, turn", "in words", "–", "The chip."),
    ]


def test_a_step_that_came_and_one_that_went_are_told_and_the_rest_keeps_its_own() -> None:
    come = replace(
        CARD,
        steps=(
            CARD.steps[0],
            step(2, "saw off"),
            *(replace(s, number="9") for s in CARD.steps[1:]),
        ),
    )
    assert told(come) == [("Step 2, saw off", "step", "–", "saw off")]
    assert job_remark(CARD, come) == "1 of 4 steps"
    gone = replace(CARD, steps=CARD.steps[:2])
    assert told(gone) == [("Step 3, part off", "step", "part off", "–")]
    assert job_remark(CARD, gone) == "1 of 3 steps"


def test_a_step_by_another_name_in_the_same_place_is_told_as_that() -> None:
    now = with_step(2, what="saw off", cells=("", ""))
    assert told(now) == [
        ("Step 3, saw off", "step", "part off", "saw off"),
        ("Step 3, saw off", "rev/ min", "560", "–"),
        ("Step 3, saw off", "mm/rev", "0.05", "–"),
    ]


def test_another_set_up_and_a_sketch_off_its_scale_are_told() -> None:
    described = replace(CARD, sketch=replace(SKETCH, description="Bar 30 mm, 44 mm out."))
    assert told(described) == [("Set-up", "sketch", SKETCH.description, "Bar 30 mm, 44 mm out.")]
    assert job_remark(CARD, described) == "another set-up"
    drawn = replace(CARD, sketch=replace(SKETCH, boxes=()))
    assert told(drawn) == [("Set-up", "sketch", "as drawn", "drawn otherwise")]


@pytest.mark.parametrize(
    ("change", "name"),
    [
        ({"facts": (("Pieces", "7 a bar"), ("Time", "12 min"))}, "Pieces"),
        ({"facts": (("Pieces", "8 a bar"),)}, "Time"),
        ({"checklist": ("Key out.", "Doors shut.")}, "checklist"),
        ({"dig_in": ()}, "dig-in"),
        ({"notes": ("Long chips.",)}, "note"),
        ({"wear": ("After 5.",)}, "look at an edge"),
        ({"boxes": ("1",)}, "boxes"),
        ({"title": "Another"}, "title"),
        ({"subtitle": "brass"}, "subtitle"),
    ],
)
def test_whatever_else_stands_on_the_card_is_told(change: dict[str, object], name: str) -> None:
    now = replace(CARD, **change)  # type: ignore[arg-type]
    ((title, fact, before, after),) = told(now)
    assert (title, fact) == ("Beside the steps", name)
    assert before != after
    assert job_remark(CARD, now) == f"otherwise: {name}"


def test_other_columns_cannot_be_compared() -> None:
    inches = replace(CARD, headings=("", "step", "rev/min", "in/rev"))
    assert job_remark(CARD, inches) == "other columns"
