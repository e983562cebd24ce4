"""Curves and nomograms in German: every word and every number of them, and all fits."""

from collections.abc import Callable, Iterator
from dataclasses import fields, is_dataclass, replace

import pytest

from chartgen import pipeline
from chartgen.layout.placed import Document, Plot, Text
from chartgen.model.shop import Language, LengthUnits, Shop
from chartgen.wording.card import AnyCard
from chartgen.wording.curves.nomogram import PrintedNomogram
from chartgen.wording.figure import DotShape, PrintedCurves, even_axis, log_axis
from chartgen.wording.language import speaking

ShopOf = Callable[..., Shop]
EnglishLeft = Callable[..., dict[str, list[str]]]
LAYOUTS = (
    "spindle-curves-a5",
    "window-curves-a5",
    "width-curves-a5",
    "speed-curves-a5",
    "speed-nomogram-a5",
    "power-nomogram-a5",
)
MACHINES = (
    "250 W brushed DC",
    "550 W belts",
    "750 W inverter",
    "1.1 kW brushless",
    "2.2 kW geared",
    "measured",
)
each_machine = pytest.mark.parametrize("machine", MACHINES)
each_unit = pytest.mark.parametrize("units", LengthUnits)


def german(shop: Shop, **request: object) -> Shop:
    asked = replace(shop.request, language=Language.GERMAN, **request)  # type: ignore[arg-type]
    return replace(shop, request=asked)


def strings(thing: object) -> Iterator[str]:
    """Yield every string that a printed thing holds, but the names of shapes."""
    if isinstance(thing, str):
        yield thing
    elif isinstance(thing, tuple):
        for part in thing:
            yield from strings(part)
    elif is_dataclass(thing) and not isinstance(thing, DotShape):
        for field in fields(thing):
            yield from strings(getattr(thing, field.name))


def bodies(cards: list[AnyCard]) -> list[PrintedCurves | PrintedNomogram]:
    found = [card.chart for card in cards]
    assert all(isinstance(body, PrintedCurves | PrintedNomogram) for body in found)
    return found  # type: ignore[return-value]


def said_by(document: Document) -> Iterator[str]:
    """Yield each paragraph and label of a document, and the words that stand for a figure."""
    yield document.title
    for page in document.pages:
        parts: dict[object, list[str]] = {}
        for item in page.items:
            if isinstance(item, Text):
                parts.setdefault(item.tags or item, []).append(item.text)
            elif isinstance(item, Plot):
                yield item.meaning
            yield from (tag.alternative for tag in item.tags)
        yield from map(" ".join, parts.values())


@each_unit
@each_machine
def test_a_figure_has_no_english_word_and_no_decimal_point(
    shop_of: ShopOf, english_left: EnglishLeft, machine: str, units: LengthUnits
) -> None:
    shop = german(shop_of(machine), layouts=LAYOUTS, units=units)
    cards = pipeline.printed_cards(shop)
    assert {card.layout for card in cards} == set(LAYOUTS)
    for body in bodies(cards):
        assert english_left(strings(body), shop) == {}


def test_english_is_found_in_english_figures(example: Shop, english_left: EnglishLeft) -> None:
    shop = replace(example, request=replace(example.request, layouts=LAYOUTS))
    for body in bodies(pipeline.printed_cards(shop)):
        assert len(english_left(strings(body), shop)) > 3


@each_unit
@each_machine
def test_every_figure_fits_its_layout(shop_of: ShopOf, machine: str, units: LengthUnits) -> None:
    cards = pipeline.printed_cards(german(shop_of(machine), layouts=LAYOUTS, units=units))
    assert len(pipeline.lay_out(cards)) == len(cards)


def test_the_cards_of_the_built_in_shop_fit_and_say_nothing_in_english(
    example: Shop, english_left: EnglishLeft
) -> None:
    shop = german(example, layouts=LAYOUTS)
    for finished in pipeline.lay_out(pipeline.printed_cards(shop)):
        assert finished.document.language == "de-DE"
        assert english_left(said_by(finished.document), shop) == {}


def test_a_material_without_force_data_is_german_too(
    example: Shop, english_left: EnglishLeft
) -> None:
    shop = german(example, layouts=LAYOUTS, materials=("ptfe",))
    cards = pipeline.printed_cards(shop)
    assert any("Keine veröffentlichten Kraftwerte" in " ".join(strings(c.chart)) for c in cards)
    for body in bodies(cards):
        assert english_left(strings(body), shop) == {}


def test_ticks_have_the_decimal_sign_of_the_language_and_stand_where_they_stood() -> None:
    for make in (
        lambda: log_axis("feed", 0.008, 0.3),
        lambda: even_axis("length", 0.0, 3.0, wanted=6),
    ):
        english = make()
        with speaking("de"):
            spoken = make()
        assert [(v, r) for v, _, r in spoken.ticks] == [(v, r) for v, _, r in english.ticks]
        texts = [text for _, text, _ in english.ticks]
        assert any("." in text for text in texts)
        assert [text for _, text, _ in spoken.ticks] == [t.replace(".", ",") for t in texts]


def test_a_language_changes_words_and_nothing_that_is_drawn(example: Shop) -> None:
    request = replace(example.request, layouts=LAYOUTS[:4], materials=("mild-steel",))
    shop = replace(example, request=request)
    english, spoken = (bodies(pipeline.printed_cards(one)) for one in (shop, german(shop)))
    for one, other in zip(english, spoken, strict=True):
        assert isinstance(one, PrintedCurves)
        assert isinstance(other, PrintedCurves)
        for a, b in zip(one.panels, other.panels, strict=True):
            assert [(c.parts, c.dash) for c in a.curves] == [(c.parts, c.dash) for c in b.curves]
            assert [(d.at, d.shape) for d in a.dots] == [(d.at, d.shape) for d in b.dots]
            assert (a.letters, a.bands) == (b.letters, b.bands)


def test_the_line_drawn_in_is_told_with_the_numbers_of_the_english_card(example: Shop) -> None:
    shop = replace(example, request=replace(example.request, layouts=("speed-nomogram-a5",)))
    (english,), (spoken,) = (bodies(pipeline.printed_cards(one)) for one in (shop, german(shop)))
    words = spoken.notes[1].removesuffix(" 1/min.").split()
    assert words[0] == "Eingezeichnet:"
    digits = [word for word in words if word[0].isdigit()]
    assert digits == [word for word in english.notes[1].split() if word[0].isdigit()]
