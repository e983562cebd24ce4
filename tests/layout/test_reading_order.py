"""What a layout makes of a card for a person who hears it: order, parts, decoration."""

from collections.abc import Callable
from dataclasses import replace

from chartgen.layout.compose import compose
from chartgen.layout.layout_file import Layout, load_layout
from chartgen.layout.placed import Document, Text
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


def test_a_narrow_card_has_its_square_below_the_rule(card_of: CardOf, side_with: SideWith) -> None:
    card = replace(card_of("lathe-chart"), assumptions=("Short.",), identity="Shop")
    wide, narrow = (
        compose(card, side_with(BLOCKS, columns=1, page=page), measure)
        for page in ("A6 landscape", "A7 portrait")
    )
    for document, is_below in ((wide, False), (narrow, True)):
        items = document.pages[0].items
        (square,) = (i for i in items if i.tags and i.tags[-1].role is Role.FIGURE)
        words = [i for i in items if isinstance(i, Text) and "this rule" in i.text]
        assert words
        assert (square.y > max(text.y for text in words)) is is_below
        assert square.x + square.size <= document.pages[0].width - 6.5 + 1e-6
