"""Layouts of a job's cards: what their owner may arrange, and what no one may leave out."""

from dataclasses import replace

import pytest

from chartgen import pipeline
from chartgen.description.example import example_text
from chartgen.errors import DescriptionError
from chartgen.layout.layout_file import (
    change_layout_names,
    class_layout_names,
    every_layout_name,
    job_layout_names,
    layout_names,
    layout_text,
    load_layout,
    parse_layout,
)
from chartgen.layout.own_layouts import with_own_layouts
from chartgen.model.shop import Shop

SET_UP, BATCH = "set-up-card-a5", "batch-card-a5"


def complaint(text: str) -> str:
    with pytest.raises(DescriptionError) as caught:
        parse_layout(text, file="trial.toml", name="trial")
    return str(caught.value)


def test_the_layouts_of_a_job_are_no_layouts_of_a_shop() -> None:
    assert job_layout_names() == (BATCH, SET_UP)
    kinds = (layout_names(), change_layout_names(), job_layout_names(), class_layout_names())
    assert sorted(name for names in kinds for name in names) == list(every_layout_name())
    assert [load_layout(name).card for name in job_layout_names()] == ["batch-card", "set-up-card"]


@pytest.mark.parametrize("name", [SET_UP, BATCH])
@pytest.mark.parametrize(
    "block", ["cautions", "checklist", "dig-in", "assumptions", "check-rule", "deference"]
)
def test_none_may_leave_out_what_keeps_people_whole(name: str, block: str) -> None:
    text = layout_text(name)
    assert f'"{block}", ' in text
    without = complaint(text.replace(f'"{block}", ', ""))
    assert f"no side has the block '{block}'. Every such card needs it; add it." in without


@pytest.mark.parametrize(("name", "block"), [(SET_UP, "step-table"), (BATCH, "batch-boxes")])
def test_none_may_leave_out_what_it_is_for(name: str, block: str) -> None:
    without = complaint(layout_text(name).replace(f'"{block}", ', ""))
    assert f"no side has the block '{block}'" in without


def test_the_signs_of_the_steps_stand_on_their_side() -> None:
    text = layout_text(SET_UP)
    assert "a side with a table needs the block 'legend'" in complaint(
        text.replace('"legend", ', "")
    )
    assert "a side with a table needs the block 'foot'" in complaint(
        text.replace('"legend", "foot"', '"legend", "identity"')
    )
    assert "no side has the block 'legend-sentences'" in complaint(
        text.replace('"legend-sentences", ', "")
    )


@pytest.mark.parametrize(
    "block",
    [
        "sketch",
        "step-table",
        "step-lines",
        "checklist",
        "dig-in",
        "job-facts",
        "notes-and-sign-off",
        "batch-boxes",
        "first-piece",
    ],
)
def test_no_other_card_has_a_block_of_a_job(block: str) -> None:
    text = layout_text("lathe-chart-a5").replace('"heading", ', f'"heading", "{block}", ', 1)
    assert f"a lathe-chart has no '{block}'. Leave it out." in complaint(text)


def test_an_owner_may_arrange_them_another_way() -> None:
    moved = layout_text(SET_UP).replace('"sketch", ', "", 1)
    moved = moved.replace('"step-lines", ', '"sketch", "step-lines", ', 1)
    layout = parse_layout(moved, file="mine.toml", name="mine")
    assert [("sketch" in side.blocks) for side in layout.sides] == [False, True, False]


@pytest.mark.parametrize(("name", "kind"), [(SET_UP, "set-up card"), (BATCH, "batch card")])
def test_a_shop_is_told_which_command_makes_a_card_of_a_job(
    example: Shop, name: str, kind: str
) -> None:
    asking = replace(example, request=replace(example.request, layouts=("mine.toml",)))
    with pytest.raises(DescriptionError) as caught:
        with_own_layouts(asking, {"mine.toml": ("mine.toml", layout_text(name).encode())})
    assert f"card: is the layout of a {kind}, which only `job` makes." in str(caught.value)
    text = example_text().decode().replace('"centre-card-a6"]', f'"{name}"]')
    with pytest.raises(DescriptionError) as caught:
        pipeline.describe(text.encode(), "my.toml")
    assert str(caught.value).endswith(
        f"{name!r} is the card of a job, and a shop file describes none. "
        "Leave it out here; `chartgen job JOB` makes it."
    )
