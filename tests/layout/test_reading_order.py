"""What a layout makes of a card for a person who hears it: order, parts, decoration."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen.layout.code_square import QUIET_ZONE
from chartgen.layout.compose import compose
from chartgen.layout.layout_file import Layout, load_layout
from chartgen.layout.placed import Document, Drawing, Rule, Text
from chartgen.layout.roles import Role
from chartgen.renderers.fonts import measure
from chartgen.wording.card import AnyCard

CardOf = Callable[[str], AnyCard]
SideWith = Callable[..., Layout]
BLOCKS = '"assumptions", "check-rule", "identity"'


def spoken(document: Document, page: int) -> list[str]:
    return [
        item.text for item in document.pages[page].items if isinstance(item, Text) and item.tags
    ]


def long_winded(card: AnyCard) -> AnyCard:
    return replace(card, assumptions=card.assumptions * 6)


def test_a_page_is_read_from_its_title_down_to_its_foot(card_of: CardOf) -> None:
    card = card_of("lathe-chart")
    front = spoken(compose(card, load_layout(card.layout), measure), 0)
    title, foot = front.index(card.chart.title), front.index(f"check {card.check_code}")
    legend = front.index(card.chart.legend[0].short)
    assert title == 0
    assert title < front.index(card.chart.rows[0][0].speed) < legend < foot


def test_what_every_page_of_a_side_repeats_is_read_once(
    card_of: CardOf, side_with: SideWith
) -> None:
    layout = side_with(BLOCKS, columns=1)
    document = compose(long_winded(card_of("lathe-chart")), layout, measure)
    assert len(document.pages) > 1
    code = f"check {card_of('lathe-chart').check_code}"
    printed = [
        [item.text for item in page.items if isinstance(item, Text)] for page in document.pages
    ]
    assert all(code in texts for texts in printed)
    assert [code in spoken(document, page) for page in range(len(printed))] == [
        number == 0 for number in range(len(printed))
    ]


def test_the_outline_names_each_heading_with_its_page(card_of: CardOf) -> None:
    card = card_of("lathe-chart")
    document = compose(card, load_layout(card.layout), measure)
    first, *others = document.outline
    assert (first.title, first.level, first.page) == (card.chart.title, 0, 0)
    assert {entry.level for entry in others} == {1}
    assert all(entry.title in spoken(document, entry.page) for entry in others)


@pytest.mark.parametrize(("page", "length"), [("A6 landscape", 100.0), ("A7 portrait", 40.0)])
def test_the_square_stands_clear_of_the_rule_beside_it(
    card_of: CardOf, side_with: SideWith, page: str, length: float
) -> None:
    card = replace(card_of("lathe-chart"), assumptions=("Short.",), identity="Shop")
    document = compose(card, side_with(BLOCKS, columns=1, page=page), measure)
    items = document.pages[0].items
    (square,) = (i for i in items if i.tags and i.tags[-1].role is Role.FIGURE)
    assert isinstance(square, Drawing)
    (rule,) = (i for i in items if isinstance(i, Rule) and i.weight == 0.6 and i.y1 == i.y2)
    assert rule.x2 - rule.x1 == pytest.approx(length)
    words = [i for i in items if isinstance(i, Text) and i.y > rule.y1 - 4.0]
    ends = [i.x + measure(i.text, i.face, i.size) for i in words if "this rule" in i.text]
    assert max(rule.x2, *ends, 0.0) + QUIET_ZONE <= square.x + 1e-6
    assert square.x + square.size <= document.pages[0].width - 6.5 + 1e-6
