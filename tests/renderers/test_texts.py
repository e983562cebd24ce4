"""Terminal table and CSV: the strings of the card, and nothing a spreadsheet would run."""

import csv
import io
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen import pipeline
from chartgen.model.shop import Shop
from chartgen.renderers.columns import in_columns
from chartgen.renderers.table_text import render_csv, render_table
from chartgen.wording.answers import chart_answer
from chartgen.wording.card import PrintedCard

FORMULA = ("=", "+", "-", "@", "\t", "\r")


@pytest.fixture(scope="module", params=["mild-steel", "c45", "titanium-6al-4v", "ptfe"])
def card(request: pytest.FixtureRequest) -> PrintedCard:
    return pipeline.table_card(pipeline.describe(None, pipeline.EXAMPLE_NAME), request.param)


def read_csv(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text), strict=True))


def test_the_csv_has_a_line_for_every_cell_in_the_words_of_the_card(card: PrintedCard) -> None:
    chart = card.chart
    lines = iter(read_csv(render_csv(card)))
    for stub, cells in zip(chart.stub, chart.rows, strict=True):
        for column, cell in zip(chart.columns, cells, strict=True):
            assert next(lines) == {
                chart.corner: stub,
                "blade": column.letter,
                "blade name": column.name,
                chart.speed_heading: cell.speed,
                "position": cell.position,
                chart.feed_heading: cell.feed,
                chart.pace_heading: cell.pace,
                "sign": cell.sign,
                "verdict": cell.verdict,
                "use instead": cell.way_out,
                "feed floor": cell.floor,
                "floor reason": cell.floor_reason,
                "feed ceiling": cell.ceiling,
                "ceiling reason": cell.ceiling_reason,
            }
    assert not list(lines)


def test_csv_and_json_tell_the_same(card: PrintedCard) -> None:
    answer = chart_answer(card.chart)
    cells = [
        (row["diameter"], cell["speed"], cell["feed"], cell["pace"], cell["sign"], cell["way_out"])
        for row in answer["rows"]
        for cell in row["cells"]
    ]
    units = answer["units"]
    keys = (units["diameter"], units["speed"], units["feed"], units["pace"], "sign", "use instead")
    lines = [tuple(line[key] for key in keys) for line in read_csv(render_csv(card))]
    assert lines == cells


def test_the_terminal_table_shows_every_string_of_every_row_in_order(card: PrintedCard) -> None:
    text = render_table(card)
    body = text.partition("----")[2].splitlines()[1:]
    for stub, cells, line in zip(card.chart.stub, card.chart.rows, body, strict=False):
        wanted = [stub]
        for cell in cells:
            wanted += (
                ["–", *cell.way_out.split(), cell.sign]
                if cell.way_out
                else [cell.speed, cell.position, cell.feed, cell.pace, cell.sign]
            )
        assert line.split() == [word for word in wanted if word]


def test_the_terminal_table_says_all_that_the_card_says(card: PrintedCard) -> None:
    text = render_table(card)
    chart = card.chart
    assert text.startswith(f"{chart.title} ({chart.subtitle}) on {card.lathe}\n\n")
    assert all(f"{entry.sign:>6}  {entry.sentence}\n" in text for entry in chart.legend)
    assert all(f"- {line}\n" in text for line in card.assumptions)
    assert f"{card.force_band}\n{card.deference}\n" in text
    assert text.endswith(f"{card.identity} · check {card.check_code}\n")


@pytest.mark.parametrize("name", ["=1+1", "+1", "-1", "@SUM(A1)", '=HYPERLINK("x")', "a,b", 'a"b'])
def test_no_name_in_the_csv_is_taken_for_a_formula(
    shop_with: Callable[..., Shop], name: str
) -> None:
    shop = shop_with(('"2.0 carbide"', f"'{name}'"))
    lines = read_csv(render_csv(pipeline.table_card(shop, "c45")))
    first = lines[0]["blade name"]
    assert first.lstrip("'") == name
    assert not first.startswith(FORMULA)


@pytest.mark.parametrize("mark", ["=1", "+", "-", "@A1"])
def test_no_position_mark_in_the_csv_is_taken_for_a_formula(
    shop_with: Callable[..., Shop], mark: str
) -> None:
    shop = shop_with(('mark = "H"', f'mark = "{mark}"'))
    lines = read_csv(render_csv(pipeline.table_card(shop, "c45")))
    assert any(mark in line["position"] for line in lines)
    assert not any(line["position"].startswith(FORMULA) for line in lines)


@given(
    rows=st.integers(1, 5).flatmap(
        lambda width: st.lists(
            st.lists(st.text("ab–Ø 1", max_size=9), min_size=width, max_size=width),
            min_size=1,
            max_size=8,
        )
    )
)
def test_columns_stand_under_each_other(rows: list[list[str]]) -> None:
    text = in_columns(rows, right=frozenset({0}))
    heading, rule, *body = text.removesuffix("\n").split("\n")
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    assert rule == "  ".join("-" * width for width in widths)
    for row, line in zip(rows, [heading, *body], strict=True):
        assert not line.endswith(" ")
        start = 0
        for column, (cell, width) in enumerate(zip(row, widths, strict=True)):
            part = line[start : start + width].ljust(width)
            assert part == (cell.rjust(width) if column == 0 else cell.ljust(width))
            start += width + 2
