"""The files in layouts/, and what is said of a wrong one."""

from itertools import chain

import pytest

from chartgen.errors import DescriptionError
from chartgen.layout.blocks import ANCHORED
from chartgen.layout.blocks import BLOCKS as DRAWN
from chartgen.layout.layout_file import every_layout_name, load_layout, parse_layout
from chartgen.layout.layout_schema import BLOCKS, BODY_OF, CELL_PARTS
from chartgen.layout.pages import fits_pouch, least_margin

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
blocks = ["cautions", "legend-sentences", "assumptions", "check-rule", "deference", "identity"]
"""


def complaint(old: str, new: str) -> str:
    assert old in GOOD
    with pytest.raises(DescriptionError) as caught:
        parse_layout(GOOD.replace(old, new, 1), file="trial.toml", name="trial")
    said = str(caught.value).splitlines()
    assert all(line.startswith("trial.toml:") for line in said)
    return "\n".join(line.removeprefix("trial.toml:") for line in said)


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
        ("title =", "titel =", "1: titel: is not a known key. Did you mean 'title'?"),
        (
            'title = "Trial"\n',
            "",
            ' title: is missing. Add a line such as title = "Lathe chart".',
        ),
        (
            "columns = 1",
            "colums = 1",
            "12: side[1].colums: is not a known key. Did you mean 'columns'?",
        ),
        (
            "columns = 2\n",
            "",
            "15: side[2].columns: is missing. Add a line such as columns = 1.",
        ),
        (
            '"cautions"',
            '"caution"',
            "19: side[2].blocks[1]: 'caution' is not known. Did you mean 'cautions'?",
        ),
        (
            '"lathe-chart"',
            '"lathe chart"',
            "2: card: 'lathe chart' is not known. Did you mean 'lathe-chart'?",
        ),
        (
            '"pace"',
            '"pase"',
            "5: cell[3]: 'pase' is not known. Did you mean 'pace'?",
        ),
        (
            'pouch = "A5"',
            'pouch = "A6"',
            (
                "4: pouch: the film A6 (111 x 154 mm) is too small for page A5 landscape "
                "(148 x 210 mm) and a sealed edge of 3 mm all round. Use one of: A5, A4, letter, "
                "A3, tabloid, none."
            ),
        ),
        (
            "6.5 mm",
            "6.4 mm",
            (
                "11: side[1].margin: 6.4 mm is nearer to the edge than can be printed or "
                "cut. Use 6.5 mm or more."
            ),
        ),
        (
            "1/2 in",
            "1/4 in",
            (
                "17: side[2].margin: 6.35 mm is nearer to the edge than can be printed or "
                "cut. Use 6.5 mm or more."
            ),
        ),
        (
            'pouch = "A5"',
            'pouch = "A55"',
            "4: pouch: 'A55' is not known. Did you mean 'A5'?",
        ),
        (
            "rule_every = 3",
            "rule_every = 0",
            "7: rule_every: is out of bounds (1 to 50). Check the number.",
        ),
        (
            "row_pitch = 1.35",
            "row_pitch = 0.9",
            "6: row_pitch: is out of bounds (1 to 4). Check the number.",
        ),
        (
            '"0.7 m"',
            "700",
            (
                "10: side[1].reading_distance: needs a unit. Write it as text in quotes, "
                'as in "2 mm".'
            ),
        ),
        (
            'title = "Trial"',
            "title = ",
            (
                "1: at column 9, the value cannot be read. Put text in quotes, as in "
                'title = "Lathe chart".'
            ),
        ),
        (
            '"table", ',
            '"figure", ',
            (
                "9: side: no side has the block 'table'. Every such card needs it; add it.\n"
                "13: side[1].blocks: a lathe-chart has no 'figure'. Leave it out."
            ),
        ),
        (
            ', "legend", "foot"]',
            "]",
            (
                "13: side[1].blocks: a side with a table needs the block 'foot'. Signs and "
                "doubts stand beside the numbers; add it.\n"
                "13: side[1].blocks: a side with a table needs the block 'legend'. Signs "
                "and doubts stand beside the numbers; add it.\n"
                "13: side[1].blocks: this side does not tell whose card it is. Add 'foot' "
                "or 'identity'."
            ),
        ),
        (
            '["speed", "feed", "pace", "sign"]',
            '["speed", "pace"]',
            (
                "5: cell: leaves out 'feed'. A cell needs it; add it.\n"
                "5: cell: leaves out 'sign'. A cell needs it; add it."
            ),
        ),
    ],
)
def test_a_wrong_layout_is_told_by_file_line_and_key_with_the_mend(
    old: str, new: str, message: str
) -> None:
    assert complaint(old, new) == message


@pytest.mark.parametrize(
    "block", ["heading", "cautions", "assumptions", "check-rule", "deference", "legend-sentences"]
)
def test_no_layout_may_leave_out_what_keeps_people_whole(block: str) -> None:
    without = complaint(f'"{block}", ', "")
    assert f"no side has the block '{block}'" in without


def test_every_fault_of_a_file_is_told_at_once_in_the_order_of_its_lines() -> None:
    text = GOOD.replace('"A5 landscape"', '"A5 sideways"').replace("1/2 in", "half an inch")
    with pytest.raises(DescriptionError) as caught:
        parse_layout(text.replace("columns = 1", "columns = 0"), file="trial.toml", name="trial")
    faults = caught.value.faults
    assert [(fault.line, fault.key) for fault in faults] == [
        (3, "page"),
        (12, "side[1].columns"),
        (17, "side[2].margin"),
    ]
    assert all(fault.mend for fault in faults)


def test_an_unknown_pouch_that_is_like_none_is_answered_with_all_there_are() -> None:
    assert complaint('pouch = "A5"', 'pouch = "zip bag"').endswith(
        "Use one of: A3, A4, A5, A6, A7, tabloid, letter, 4x6, 3x5, badge, badge-67x99, none."
    )


@pytest.mark.parametrize("text", ["", "[[", "= 1", 'title = "x', "side = 3", "side = []"])
def test_a_text_that_is_no_layout_is_refused_in_words(text: str) -> None:
    with pytest.raises(DescriptionError) as caught:
        parse_layout(text, file="trial.toml", name="trial")
    assert all(fault.mend for fault in caught.value.faults)


def test_every_block_a_layout_may_name_can_be_drawn() -> None:
    assert set(BLOCKS) == set(DRAWN)
    assert set(BODY_OF.values()) <= set(DRAWN)
    assert set(DRAWN) >= ANCHORED


@pytest.mark.parametrize("name", every_layout_name())
class TestEachShippedLayout:
    def test_it_fits_its_pouch(self, name: str) -> None:
        layout = load_layout(name)
        assert fits_pouch(layout.page, layout.pouch)

    def test_it_stays_where_printers_print(self, name: str) -> None:
        layout = load_layout(name)
        assert all(side.margin >= least_margin(layout.page_name) for side in layout.sides)

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
