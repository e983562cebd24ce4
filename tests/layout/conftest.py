from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen import pipeline
from chartgen.layout.layout_file import (
    Layout,
    Side,
    class_layout_names,
    job_layout_names,
    layout_names,
    load_layout,
)
from chartgen.layout.legibility import POINT
from chartgen.layout.pages import page_size
from chartgen.layout.placed import Align, Document, Drawing, Item, Panel, Plot, Rule, Text
from chartgen.renderers.fonts import measure
from chartgen.wording.card import PrintedCard

Bounds = tuple[float, float, float, float]


@pytest.fixture(scope="session")
def card_of(
    job_card: Callable[[str], PrintedCard], class_card: Callable[[str], PrintedCard]
) -> Callable[[str], PrintedCard]:
    """Return a function: a kind of card, or a layout -> its card, of a shop, a job or a class.

    A function, because Hypothesis writes out the arguments of a test that fails.
    """
    shop = pipeline.describe(None, pipeline.EXAMPLE_NAME)
    every = replace(shop, request=replace(shop.request, layouts=layout_names()))
    cards: dict[str, PrintedCard] = {}
    for card in pipeline.printed_cards(every):
        cards[card.layout] = card
        kind = load_layout(card.layout).card
        # Of the charts one with all its columns, so that there are some to drop.
        columns = len(getattr(card.chart, "columns", ()))
        if kind not in cards or columns >= len(getattr(cards[kind].chart, "columns", ())):
            cards[kind] = card
    for name in job_layout_names():
        cards[name] = cards[load_layout(name).card] = job_card(name)
    for name in class_layout_names():
        cards[name] = cards[load_layout(name).card] = class_card(name)
    return lambda kind: cards[kind]


@pytest.fixture(scope="session")
def side_with() -> Callable[..., Layout]:
    """Return a function: the blocks of a side -> a small lathe chart with that side alone."""

    def of(
        blocks: str, *, columns: int, distance: float = 400.0, page: str = "A6 landscape"
    ) -> Layout:
        side = Side(
            reading_distance=distance,
            margin=6.5,
            columns=columns,
            blocks=tuple(block.strip(' "') for block in blocks.split(",")),
        )
        return replace(
            load_layout("lathe-chart-a6"),
            name="trial",
            page_name=page,
            page=page_size(page),
            row_pitch=1.4,
            sides=(side,),
        )

    return of


@pytest.fixture(scope="session")
def bounds() -> Callable[[Item], Bounds]:
    """Return a function: an item -> its left, top, right and bottom [mm]."""

    def of(item: Item) -> Bounds:
        match item:
            case Text():
                width = measure(item.text, item.face, item.size)
                shift = {Align.LEFT: 0.0, Align.RIGHT: width, Align.CENTRE: width / 2}
                left = item.x - shift[item.align]
                # Capitals and digits, 0.698 of the size; tails may hang into the line below.
                return left, item.y - item.size * POINT * 0.698, left + width, item.y
            case Rule():
                across, down = sorted((item.x1, item.x2)), sorted((item.y1, item.y2))
                return across[0], down[0], across[1], down[1]
            case Panel() | Plot():
                return item.x, item.y, item.x + item.width, item.y + item.height
            case Drawing():
                return item.x, item.y, item.x + item.size, item.y + item.size

    return of


@pytest.fixture(scope="session")
def outside(
    bounds: Callable[[Item], Bounds],
) -> Callable[[Document, Layout], list[tuple[Item, Bounds]]]:
    """Return a function: a document and its layout -> the items beyond the margins."""

    def of(document: Document, layout: Layout) -> list[tuple[Item, Bounds]]:
        found = []
        # Running text may run on to further pages, so a page does not tell its side.
        margin = min(side.margin for side in layout.sides)
        for page in document.pages:
            # A hundredth of a millimetre for adding floats.
            low = margin - 0.01
            right, bottom = page.width - low, page.height - low
            for item in page.items:
                x1, y1, x2, y2 = bounds(item)
                if x1 < low or y1 < low or x2 > right or y2 > bottom:
                    found.append((item, (x1, y1, x2, y2)))
        return found

    return of


@pytest.fixture(scope="session")
def card_of_layout() -> Callable[[str], tuple[PrintedCard, Document]]:
    """Return a function: the name of a layout -> a card of the built-in shop, and its pages."""
    shop = pipeline.describe(None, pipeline.EXAMPLE_NAME)
    found: dict[str, tuple[PrintedCard, Document]] = {}

    def of(name: str) -> tuple[PrintedCard, Document]:
        if name not in found:
            one = replace(shop, request=replace(shop.request, layouts=(name,)))
            card = pipeline.printed_cards(one)[0]
            found[name] = card, pipeline.lay_out([card])[0].document
        return found[name]

    return of
