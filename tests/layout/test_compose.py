"""What a card and a layout give: every item inside the margins, nothing lost, titles kept."""

from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from chartgen.errors import DoesNotFitError
from chartgen.layout.compose import compose
from chartgen.layout.layout_file import (
    Layout,
    class_layout_names,
    job_layout_names,
    layout_names,
    load_layout,
)
from chartgen.layout.placed import Document, Face, Item, Text
from chartgen.renderers.fonts import measure
from chartgen.wording.card import PrintedCard

SideWith = Callable[..., Layout]
CardOf = Callable[[str], PrintedCard]
Outside = Callable[[Document, Layout], list[tuple[Item, tuple[float, float, float, float]]]]
LAYOUTS = [
    load_layout(name) for name in (*layout_names(), *job_layout_names(), *class_layout_names())
]
WITH_TABLE = [layout for layout in LAYOUTS if any("table" in side.blocks for side in layout.sides)]
by_name = pytest.mark.parametrize("layout", LAYOUTS, ids=lambda layout: layout.name)
with_table = pytest.mark.parametrize("layout", WITH_TABLE, ids=lambda layout: layout.name)


@by_name
def test_the_built_in_cards_stand_inside_the_margins(
    layout: Layout, card_of: CardOf, outside: Outside
) -> None:
    assert not outside(compose(card_of(layout.name), layout, measure), layout)


@by_name
def test_a_page_has_the_size_of_its_layout(layout: Layout, card_of: CardOf) -> None:
    document = compose(card_of(layout.name), layout, measure)
    # A side runs on to as many pages as its text takes; none is left out.
    numbers = [page.side for page in document.pages]
    assert numbers == sorted(numbers)
    assert set(numbers) == set(range(len(layout.sides)))
    assert {(page.width, page.height) for page in document.pages} == {layout.page}


@by_name
def test_a_file_says_what_it_is_in_title_and_subject(layout: Layout, card_of: CardOf) -> None:
    card = card_of(layout.name)
    document = compose(card, layout, measure)
    assert document.title == f"{layout.title}: {card.chart.title}, {card.lathe}"
    assert document.subject == f"{card.identity} · check {card.check_code}"


@settings(deadline=None, max_examples=60)
@given(
    layout=st.sampled_from(LAYOUTS),
    assumptions=st.lists(st.integers(1, 40), min_size=1, max_size=5),
    deference=st.integers(1, 60),
    band=st.integers(1, 60),
    identity=st.integers(1, 60),
    title=st.integers(1, 40),
    short=st.integers(1, 40),
)
def test_what_is_accepted_stands_inside_the_margins_and_loses_no_line(
    card_of: CardOf,
    outside: Outside,
    layout: Layout,
    assumptions: list[int],
    deference: int,
    band: int,
    identity: int,
    title: int,
    short: int,
) -> None:
    card = card_of(layout.name)
    legend = card.chart.legend
    if legend:
        legend = (replace(legend[0], short="short " * short), *legend[1:])
    long = replace(
        card,
        assumptions=tuple("assumed " * words for words in assumptions),
        deference="deferred " * deference,
        force_band="banded " * band,
        identity="identified " * identity,
        chart=replace(card.chart, title=("title " * title).strip(), legend=legend),
    )
    try:
        document = compose(long, layout, measure)
    except DoesNotFitError:
        return
    assert not outside(document, layout)
    text = " ".join(i.text for p in document.pages for i in p.items if isinstance(i, Text))
    assert text.count("assumed") == sum(assumptions)
    # What is anchored stands on every page its side runs on to.
    times, rest = divmod(text.count("deferred"), deference)
    assert (times >= 1, rest) == (True, 0)
    assert times <= len(document.pages)


@pytest.mark.parametrize("height", range(50, 150, 2))
def test_a_title_stands_in_the_column_of_what_it_announces(
    card_of: CardOf, side_with: SideWith, height: int
) -> None:
    """As the page grows, columns break at one place after another, but never below a title."""
    card = card_of("lathe-chart")
    layout = side_with('"cautions", "legend-sentences", "assumptions"', columns=8)
    (page,) = compose(card, replace(layout, page=(800.0, float(height))), measure).pages
    texts = [item for item in page.items if isinstance(item, Text)]
    titles = {"What this card assumes", "What the signs mean"} | {
        caution.signal for caution in card.cautions
    }
    found = [(text, after) for text, after in pairwise(texts) if text.text in titles]
    assert len(found) >= 3
    for heading, following in found:
        assert following.y > heading.y, f"{heading.text} is parted from what follows"


@with_table
def test_a_thin_rule_leads_the_eye_every_few_rows(layout: Layout, card_of: CardOf) -> None:
    document = compose(card_of(layout.name), layout, measure)
    rows = len(card_of(layout.name).chart.stub)
    weights = [getattr(item, "weight", None) for page in document.pages for item in page.items]
    assert weights.count(0.35) == (rows - 1) // layout.rule_every


@with_table
def test_diameters_stand_right_aligned_in_bold(layout: Layout, card_of: CardOf) -> None:
    card = card_of(layout.name)
    document = compose(card, layout, measure)
    page = next(p for p in document.pages if "table" in layout.sides[p.side].blocks)
    largest = max(i.size for i in page.items if isinstance(i, Text))
    edges = {
        round(i.x, 6)
        for i in page.items
        if isinstance(i, Text) and i.text in card.chart.stub and i.face is Face.BOLD
        if i.size == largest
    }
    assert len(edges) == 1
