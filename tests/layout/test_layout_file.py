"""The files in layouts/, and what is said of a wrong one."""

from itertools import chain

import pytest

from chartgen.layout.blocks import ANCHORED
from chartgen.layout.blocks import BLOCKS as DRAWN
from chartgen.layout.layout_file import (
    BLOCKS,
    CARDS,
    CELL_PARTS,
    every_layout_name,
    load_layout,
    parse_layout,
)
from chartgen.layout.pages import PRINTER_MARGIN, fits_pouch

GOOD = """\
title = "Trial"
card = "lathe-chart"
page = "A5 landscape"
pouch = "A5"
cell = ["speed", "feed", "pace", "sign"]
row_pitch = 1.35
rule_every = 3

[[side]]
reading_distance = "0.7 m"
margin = "6.5 mm"
columns = 1
blocks = ["heading", "table", "legend", "foot"]

[[side]]
reading_distance = "40 cm"
margin = "1/2 in"
columns = 2
blocks = ["cautions", "identity"]
"""


def complaint(old: str, new: str) -> str:
    assert old in GOOD
    with pytest.raises(ValueError) as caught:  # noqa: PT011 - the callers test the full text
        parse_layout(GOOD.replace(old, new, 1), file="trial.toml", name="trial")
    return str(caught.value)


def test_a_file_is_read_into_millimetres() -> None:
    layout = parse_layout(GOOD, file="trial.toml", name="trial")
    assert (layout.name, layout.title, layout.card, layout.pouch) == (
        "trial",
        "Trial",
        "lathe-chart",
        "A5",
    )
    assert layout.page == (210.0, 148.0)
    assert (layout.cell, layout.row_pitch, layout.rule_every) == (CELL_PARTS, 1.35, 3)
    front, back = layout.sides
    assert (front.reading_distance, front.margin, front.columns) == (700.0, 6.5, 1)
    assert front.blocks == ("heading", "table", "legend", "foot")
    assert (back.reading_distance, back.margin, back.columns) == pytest.approx((400.0, 12.7, 2))


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        ("title =", "titel =", "trial.toml: titel: is not a known key. Did you mean 'title'?"),
        ("title =", "zzz = 1\ntitle =", "trial.toml: zzz: is not a known key."),
        ('title = "Trial"\n', "", "trial.toml: title: is missing."),
        ("[[side]]", "[[sides]]", "trial.toml: sides: is not a known key. Did you mean 'side'?"),
        (
            "columns = 1",
            "colums = 1",
            "trial.toml: side[1].colums: is not a known key. Did you mean 'columns'?",
        ),
        ("columns = 2\n", "", "trial.toml: side[2].columns: is missing."),
        (
            '"cautions"',
            '"caution"',
            f"trial.toml: side[2].blocks: 'caution' is not one of {', '.join(BLOCKS)}",
        ),
        (
            '"lathe-chart"',
            '"lathe chart"',
            f"trial.toml: card: 'lathe chart' is not one of {', '.join(CARDS)}",
        ),
        ('"pace"', '"pase"', "trial.toml: cell: 'pase' is not one of speed, feed, pace, sign"),
        (
            'pouch = "A5"',
            'pouch = "A6"',
            "trial.toml: pouch: page A5 landscape leaves no sealed edge in it",
        ),
        (
            "6.5 mm",
            "6.4 mm",
            (
                "trial.toml: side[1].margin: 6.4 mm is nearer to the edge than printers print; "
                "use 6.5 mm or more"
            ),
        ),
        (
            "1/2 in",
            "1/4 in",
            (
                "trial.toml: side[2].margin: 6.35 mm is nearer to the edge than printers print; "
                "use 6.5 mm or more"
            ),
        ),
    ],
)
def test_a_wrong_layout_is_told_by_file_and_key(old: str, new: str, message: str) -> None:
    assert complaint(old, new) == message


def test_an_unknown_pouch_is_answered_with_all_there_are() -> None:
    assert complaint('pouch = "A5"', 'pouch = "A2"').startswith(
        "trial.toml: pouch: 'A2' is not one of A4, A5, A6, A7"
    )


@pytest.mark.parametrize(
    ("old", "new", "place"),
    [
        ("A5 landscape", "A5 sideways", "trial.toml: page: "),
        ("0.7 m", "0.7", "trial.toml: side[1].reading_distance: "),
        ("1/2 in", "half an inch", "trial.toml: side[2].margin: "),
        ("columns = 1", 'columns = "one"', "trial.toml: side[1].columns: "),
        ("columns = 1", "columns = 0", "trial.toml: side[1].columns: "),
        ("rule_every = 3", "rule_every = 0", "trial.toml: rule_every: "),
        ("row_pitch = 1.35", 'row_pitch = "wide"', "trial.toml: row_pitch: "),
        ('"0.7 m"', '"0 m"', "trial.toml: side[1].reading_distance: "),
        ('"0.7 m"', "700", "trial.toml: side[1].reading_distance: "),
        ('title = "Trial"', "title = ", "trial.toml: "),
    ],
)
def test_a_value_of_the_wrong_kind_is_told_by_file_and_key(old: str, new: str, place: str) -> None:
    assert complaint(old, new).startswith(place)


def test_every_block_a_layout_may_name_can_be_drawn() -> None:
    assert set(BLOCKS) == set(DRAWN)
    assert set(DRAWN) >= ANCHORED


@pytest.mark.parametrize("name", every_layout_name())
class TestEachShippedLayout:
    def test_it_fits_its_pouch(self, name: str) -> None:
        layout = load_layout(name)
        assert fits_pouch(layout.page, layout.pouch)

    def test_it_stays_where_printers_print(self, name: str) -> None:
        assert all(side.margin >= PRINTER_MARGIN for side in load_layout(name).sides)

    def test_it_says_everything_a_card_must_say(self, name: str) -> None:
        sides = load_layout(name).sides
        blocks = set(chain.from_iterable(side.blocks for side in sides))
        assert blocks >= {
            "heading",
            "cautions",
            "assumptions",
            "check-rule",
            "deference",
        }
        if {"table", "plain-table", "legend"} & blocks:
            assert "legend-sentences" in blocks
        assert all({"foot", "identity"} & set(side.blocks) for side in sides)

    def test_the_signs_of_a_table_are_explained_on_the_same_side(self, name: str) -> None:
        for side in load_layout(name).sides:
            assert "table" not in side.blocks or "legend" in side.blocks

    def test_a_table_shows_speed_and_feed_and_the_sign(self, name: str) -> None:
        assert {"speed", "feed", "sign"} <= set(load_layout(name).cell)
