from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen import pipeline
from chartgen.description.example import example_text
from chartgen.layout.compose import compose
from chartgen.layout.layout_file import (
    Side,
    class_layout_names,
    job_layout_names,
    layout_names,
    load_layout,
)
from chartgen.model.shop import Shop
from chartgen.renderers.fonts import measure
from chartgen.wording.card import PrintedCard

Rendered = list[tuple[PrintedCard, bytes]]
SidesOf = Callable[[PrintedCard], list[Side]]


@pytest.fixture(scope="session")
def rendered(
    job_card: Callable[[str], PrintedCard], class_card: Callable[[str], PrintedCard]
) -> dict[str, Rendered]:
    """Return every card of the built-in shop, a job and a class with its PDF, by its layout."""
    shop = pipeline.describe(None, pipeline.EXAMPLE_NAME)
    every = replace(shop, request=replace(shop.request, layouts=layout_names()))
    cards = [
        *pipeline.printed_cards(every),
        *map(job_card, job_layout_names()),
        *map(class_card, class_layout_names()),
    ]
    found: dict[str, Rendered] = {
        name: [] for name in (*layout_names(), *job_layout_names(), *class_layout_names())
    }
    inputs = pipeline.inputs_of(None, every)
    for card, finished in zip(cards, pipeline.lay_out(cards, inputs), strict=True):
        found[card.layout].append((card, pipeline.render(finished)))
    return found


@pytest.fixture(scope="session")
def sides_of() -> SidesOf:
    """Return a function: a card -> the side that each of its pages shows.

    Running text runs on to further pages, so a page's number does not tell its side.
    """
    known: dict[str, list[Side]] = {}

    def of(card: PrintedCard) -> list[Side]:
        if card.file_stem not in known:
            layout = load_layout(card.layout)
            document = compose(card, layout, measure)
            known[card.file_stem] = [layout.sides[page.side] for page in document.pages]
        return known[card.file_stem]

    return of


@pytest.fixture(scope="session")
def shop_with() -> Callable[..., Shop]:
    """Return a function: changes of the example's text, (old, new) each -> a shop."""
    example = example_text().decode()

    def changed(*changes: tuple[str, str]) -> Shop:
        text = example
        for old, new in changes:
            assert old in text
            text = text.replace(old, new)
        return pipeline.describe(text.encode(), "my.toml")

    return changed
