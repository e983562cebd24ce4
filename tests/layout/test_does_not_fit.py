"""What does not fit is refused, with the number to drop; nothing is ever made smaller."""

import re
from collections.abc import Callable
from dataclasses import replace
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from chartgen.errors import DoesNotFitError
from chartgen.layout.compose import compose
from chartgen.layout.layout_file import Layout, layout_names, load_layout
from chartgen.layout.placed import Document, Item, Text
from chartgen.renderers.fonts import measure
from chartgen.wording.card import PrintedCard
from chartgen.wording.printed import PrintedChart

ChartCard = PrintedCard[PrintedChart]
SideWith = Callable[..., Layout]
CardOf = Callable[[str], ChartCard]
Outside = Callable[[Document, Layout], list[tuple[Item, tuple[float, float, float, float]]]]
DROP = re.compile(
    r"layout (?P<layout>[\w-]+) holds (?P<fit>\d+) of the (?P<all>\d+) (?P<what>rows|columns) of "
    r"'(?P<title>.+)' at its reading distance: drop (?P<drop>\d+) "
    r"(?P<word>diameter|material|blade)s?, or use a larger layout"
)
LAYOUTS = [load_layout(name) for name in layout_names()]
WITH_TABLE = [layout for layout in LAYOUTS if any("table" in side.blocks for side in layout.sides)]
with_table = pytest.mark.parametrize("layout", WITH_TABLE, ids=lambda layout: layout.name)


def chart_of(card: ChartCard, rows: list[int], columns: list[int]) -> ChartCard:
    """Return the card with these of its rows and columns, in this order."""
    chart = card.chart
    return replace(
        card,
        chart=replace(
            chart,
            stub=tuple(chart.stub[row] for row in rows),
            columns=tuple(chart.columns[column] for column in columns),
            rows=tuple(tuple(chart.rows[row][column] for column in columns) for row in rows),
        ),
    )


def refusal(card: ChartCard, layout: Layout) -> re.Match[str] | None:
    """Return what the message says of too many rows or columns; None if the card fits."""
    try:
        compose(card, layout, measure)
    except DoesNotFitError as error:
        message = str(error)
    else:
        return None
    said = DROP.fullmatch(message)
    assert said, message
    assert int(said["fit"]) + int(said["drop"]) == int(said["all"])
    assert (said["layout"], said["title"]) == (layout.name, card.chart.title)
    return said


@with_table
@settings(deadline=None, max_examples=40)
@given(count=st.integers(1, 60), seed=st.integers(0, 1000))
def test_dropping_the_rows_a_refusal_names_makes_the_card_fit_and_one_fewer_does_not(
    layout: Layout, card_of: CardOf, count: int, seed: int
) -> None:
    card, chance = card_of(layout.card), Random(seed)  # noqa: S311 - not for secrets
    columns = list(range(len(card_of(layout.name).chart.columns)))[:2]
    rows = [chance.randrange(len(card.chart.stub)) for _ in range(count)]
    said = refusal(chart_of(card, rows, columns), layout)
    if said is None:
        return
    drop = int(said["drop"])
    assert (said["what"], said["word"], int(said["all"])) == ("rows", "diameter", count)
    # Any rows may go: every row is as high as the other.
    kept = chance.sample(rows, count - drop)
    assert refusal(chart_of(card, kept, columns), layout) is None
    again = refusal(chart_of(card, chance.sample(rows, count - drop + 1), columns), layout)
    assert again
    assert int(again["drop"]) == 1


@with_table
@settings(deadline=None, max_examples=40)
@given(count=st.integers(1, 20), seed=st.integers(0, 1000))
def test_dropping_the_last_columns_by_the_number_a_refusal_names_makes_the_card_fit(
    layout: Layout, card_of: CardOf, count: int, seed: int
) -> None:
    card, chance = card_of(layout.card), Random(seed)  # noqa: S311 - not for secrets
    rows = [0, 1]
    columns = [chance.randrange(len(card.chart.columns)) for _ in range(count)]
    said = refusal(chart_of(card, rows, columns), layout)
    if said is None:
        return
    word = "material" if layout.card == "overview" else "blade"
    assert (said["what"], said["word"], int(said["all"])) == ("columns", word, count)
    fit = int(said["fit"])
    assert refusal(chart_of(card, rows, columns[:fit]), layout) is None
    # Columns differ in width, so one more may yet fit; where not, it alone is in the way.
    again = refusal(chart_of(card, rows, columns[: fit + 1]), layout)
    assert again is None or int(again["drop"]) == 1


@with_table
@pytest.mark.parametrize("column", [0, 1, 2])
def test_of_equal_columns_one_fewer_dropped_than_named_does_not_make_the_card_fit(
    layout: Layout, card_of: CardOf, column: int
) -> None:
    card = card_of(layout.card)
    said = refusal(chart_of(card, [0, 1], [column] * 20), layout)
    assert said
    fit = int(said["fit"])
    assert 0 < fit < 20
    assert refusal(chart_of(card, [0, 1], [column] * fit), layout) is None
    again = refusal(chart_of(card, [0, 1], [column] * (fit + 1)), layout)
    assert again
    assert (int(again["fit"]), int(again["drop"])) == (fit, 1)


@with_table
@settings(deadline=None, max_examples=40)
@given(count=st.integers(1, 20), seed=st.integers(0, 1000))
def test_whichever_columns_are_dropped_the_number_named_is_enough(
    layout: Layout, card_of: CardOf, count: int, seed: int
) -> None:
    card, chance = card_of(layout.card), Random(seed)  # noqa: S311 - not for secrets
    columns = [chance.randrange(len(card.chart.columns)) for _ in range(count)]
    said = refusal(chart_of(card, [0, 1], columns), layout)
    if said is not None and int(said["fit"]):
        kept = chance.sample(columns, int(said["fit"]))
        assert refusal(chart_of(card, [0, 1], kept), layout) is None


@with_table
def test_one_row_too_many_asks_for_one_diameter(layout: Layout, card_of: CardOf) -> None:
    card = card_of(layout.card)
    columns = list(range(len(card_of(layout.name).chart.columns)))[:2]
    count = 1
    while (said := refusal(chart_of(card, [0] * count, columns), layout)) is None:
        count += 1
    assert said[0] == (
        f"layout {layout.name} holds {count - 1} of the {count} rows of '{card.chart.title}' at "
        "its reading distance: drop 1 diameter, or use a larger layout"
    )


@pytest.mark.parametrize(
    "blocks", ['"assumptions"', '"deference"', '"foot"', '"assumptions","foot"']
)
@pytest.mark.parametrize("columns", [1, 2, 3])
def test_text_that_no_side_can_hold_is_refused(
    card_of: CardOf, side_with: SideWith, blocks: str, columns: int
) -> None:
    long = "more words " * 2000
    card = replace(card_of("lathe-chart"), assumptions=(long,), deference=long, force_band=long)
    with pytest.raises(DoesNotFitError):
        compose(card, side_with(blocks, columns=columns), measure)


@pytest.mark.parametrize(("columns", "pages"), [(1, 3), (2, 2), (3, 1)])
def test_running_text_that_does_not_fit_runs_on_to_further_pages(
    card_of: CardOf, side_with: SideWith, columns: int, pages: int
) -> None:
    lines = tuple(f"a few words in line {number}." for number in range(60))
    card = replace(card_of("lathe-chart"), assumptions=lines)
    document = compose(card, side_with('"assumptions","foot"', columns=columns), measure)
    assert len(document.pages) == pages
    told = [[i.text for i in page.items if isinstance(i, Text)] for page in document.pages]
    joined = " ".join(text for page in told for text in page)
    assert [joined.count(line) for line in lines] == [1] * len(lines)
    # What stands at the foot of the side stands at the foot of each.
    feet = [" ".join(page).count("Force estimate") for page in told]
    assert feet == [1] * pages


def test_a_title_wider_than_the_card_is_refused(card_of: CardOf, side_with: SideWith) -> None:
    card = card_of("lathe-chart")
    wide = replace(card, chart=replace(card.chart, title="Wide title " * 12))
    with pytest.raises(DoesNotFitError):
        compose(wide, side_with('"heading"', columns=1), measure)


def test_a_legend_entry_wider_than_the_card_is_refused_or_wrapped(
    card_of: CardOf, side_with: SideWith, outside: Outside
) -> None:
    card, layout = card_of("lathe-chart"), side_with('"legend"', columns=1)
    entry = replace(card.chart.legend[0], short="many words " * 30)
    wide = replace(card, chart=replace(card.chart, legend=(entry,)))
    try:
        document = compose(wide, layout, measure)
    except DoesNotFitError:
        return
    assert not outside(document, layout)


@pytest.mark.parametrize("page", ["A6 landscape", "A6 portrait", "A7 landscape", "A7 portrait"])
def test_a_check_rule_stays_on_a_small_card_or_is_refused(
    card_of: CardOf, side_with: SideWith, outside: Outside, page: str
) -> None:
    layout = side_with("check-rule", columns=1, page=page)
    try:
        document = compose(card_of("lathe-chart"), layout, measure)
    except DoesNotFitError:
        return
    assert not outside(document, layout)
