"""How much a card holds follows from its page: nothing is counted beforehand."""

from collections.abc import Callable
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from chartgen.errors import DoesNotFitError
from chartgen.layout.blocks.table import LEAST_COLUMN_GAP
from chartgen.layout.capacity import column_groups, layouts_that_hold, panel_groups
from chartgen.layout.compose import compose
from chartgen.layout.layout_file import Layout, layout_names, load_layout
from chartgen.layout.layout_schema import BODY_OF
from chartgen.layout.pages import PAGES, least_margin, page_size
from chartgen.layout.placed import Document, Item
from chartgen.renderers.fonts import measure
from chartgen.wording.card import PrintedCard

CardOf = Callable[[str], PrintedCard]
Outside = Callable[[Document, Layout], list[tuple[Item, tuple[float, float, float, float]]]]
LAYOUTS = [load_layout(name) for name in layout_names()]
OF_TABLES = [layout for layout in LAYOUTS if BODY_OF[layout.card] == "table"]
each_table = pytest.mark.parametrize("layout", OF_TABLES, ids=lambda layout: layout.name)


def with_columns(card: PrintedCard, columns: list[int]) -> PrintedCard:
    chart = card.chart
    return replace(
        card,
        chart=replace(
            chart,
            columns=tuple(chart.columns[column] for column in columns),
            rows=tuple(tuple(row[column] for column in columns) for row in chart.rows),
        ),
    )


def fits(card: PrintedCard, layout: Layout) -> bool:
    try:
        compose(card, layout, measure)
    except DoesNotFitError:
        return False
    return True


def as_far(layout: Layout, distance: float) -> Layout:
    return replace(
        layout, sides=tuple(replace(side, reading_distance=distance) for side in layout.sides)
    )


@each_table
def test_every_group_fits_and_one_card_fewer_would_not(layout: Layout, card_of: CardOf) -> None:
    card = card_of(layout.card)
    count = len(card.chart.columns)
    groups = column_groups(card.chart, layout, measure)
    assert [column for group in groups for column in group] == list(range(count))
    for group in groups:
        compose(with_columns(card, group), layout, measure)
    if len(groups) > 1:
        fewer = -(-count // (len(groups) - 1))
        larger = [list(range(count))[first : first + fewer] for first in range(0, count, fewer)]
        assert not all(fits(with_columns(card, columns), layout) for columns in larger)


@each_table
def test_read_from_farther_off_a_card_holds_no_more(layout: Layout, card_of: CardOf) -> None:
    card = card_of(layout.card)
    counts = [
        len(column_groups(card.chart, as_far(layout, distance), measure))
        for distance in (300.0, 500.0, 800.0, 1200.0, 2000.0)
    ]
    assert counts == sorted(counts)
    # A pocket card holds one column from near by too.
    assert counts[0] < counts[-1] or counts[0] == len(card.chart.columns)


def test_a_figure_has_as_many_panels_as_its_page_is_wide_for(card_of: CardOf) -> None:
    body, layout = card_of("window-curves").chart, load_layout("window-curves-a5")
    assert panel_groups(body, layout, measure) == [[0, 1, 2]]
    narrow = replace(layout, page=page_size("A6 portrait"))
    assert panel_groups(body, narrow, measure) == [[0], [1], [2]]
    wide = replace(layout, page=page_size("A3 landscape"))
    many = replace(body, panels=body.panels * 3)
    assert len(panel_groups(many, wide, measure)) < len(panel_groups(many, layout, measure))


def test_the_layouts_named_for_a_card_that_does_not_fit_do_hold_it(card_of: CardOf) -> None:
    card, small = card_of("lathe-chart"), load_layout("pocket-card")
    named = layouts_that_hold(card, small, measure)
    assert named
    assert small.name not in named
    others = [layout for layout in LAYOUTS if layout.card == small.card and layout != small]
    assert {layout.name for layout in others if fits(card, layout)} == set(named)
    areas = [width * height for width, height in (load_layout(name).page for name in named)]
    assert areas == sorted(areas)


@settings(deadline=None, max_examples=300)
@given(
    layout=st.sampled_from(LAYOUTS),
    page=st.sampled_from(PAGES),
    distance=st.floats(250.0, 3000.0),
    columns=st.integers(1, 6),
)
def test_on_any_page_at_any_distance_a_card_stands_inside_the_margins_or_is_refused(
    card_of: CardOf, outside: Outside, layout: Layout, page: str, distance: float, columns: int
) -> None:
    """What an owner may write into a layout of his own; no other error ever comes of it."""
    sides = tuple(
        replace(side, reading_distance=distance, margin=least_margin(page), columns=columns)
        for side in layout.sides
    )
    own = replace(layout, page=page_size(page), sides=sides)
    try:
        document = compose(card_of(layout.name), own, measure)
    except DoesNotFitError:
        return
    assert not outside(document, own)


def test_columns_stand_at_least_half_a_size_apart() -> None:
    # Common practice, no source: less, and the eye takes two numbers for one.
    assert LEAST_COLUMN_GAP >= 0.5
