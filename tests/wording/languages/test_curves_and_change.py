"""Curves, nomograms and the change card in German: every word and every number, and all fits."""

import re
from collections.abc import Callable, Iterator
from dataclasses import fields, is_dataclass, replace

import pytest

from chartgen import pipeline
from chartgen.charts.change import cell_changes
from chartgen.layout.placed import Text
from chartgen.model.shop import Language, LengthUnits, Shop
from chartgen.renderers.change_text import render_change
from chartgen.wording.card import AnyCard
from chartgen.wording.card_states import card_states
from chartgen.wording.curves.nomogram import PrintedNomogram
from chartgen.wording.figure import (
    DotShape,
    PrintedCurves,
    even_axis,
    log_axis,
)
from chartgen.wording.language import speaking
from chartgen.wording.printed_change import CardState
from chartgen.wording.staleness import staleness

Swap = tuple[Shop, Shop]
ShopOf = Callable[..., Shop]
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
# Any English sentence of these cards has one of these; none is a word of German.
ENGLISH = frozenset(
    [
        "the",
        "and",
        "of",
        "is",
        "are",
        "with",
        "for",
        "not",
        "from",
        "to",
        "or",
        "on",
        "than",
        "which",
        "where",
        "what",
        "when",
        "before",
        "now",
        "most",
        "least",
        "cut",
        "cuts",
        "feed",
        "speed",
        "speeds",
        "blade",
        "blades",
        "bar",
        "jaws",
        "rev",
        "turn",
        "this",
        "that",
        "card",
        "cards",
        "changed",
        "moved",
        "stale",
        "current",
        "new",
        "print",
        "force",
        "power",
        "torque",
        "spindle",
        "surface",
        "width",
        "tight",
        "good",
        "measured",
        "continuous",
        "diameter",
        "diameters",
        "cells",
        "entries",
        "other",
        "another",
        "only",
        "stated",
        "undated",
        "yes",
        "no",
        "letter",
        "shaft",
        "use",
        "saw",
    ]
)
_KEY = re.compile(r'[a-z_.]+(?: "[^"]*"\.?[a-z_]*)?')


def german(shop: Shop, **request: object) -> Shop:
    asked = replace(shop.request, language=Language.GERMAN, **request)  # type: ignore[arg-type]
    return replace(shop, request=asked)


def both_german(swap: Swap, **request: object) -> Swap:
    before, after = (german(shop, **request) for shop in swap)
    return before, after


def strings(thing: object) -> Iterator[str]:
    """Yield every string a printed thing holds, but shapes and dashes, which are drawn."""
    if isinstance(thing, str):
        yield thing
    elif isinstance(thing, CardState | DotShape):
        return
    elif isinstance(thing, tuple):
        for part in thing:
            yield from strings(part)
    elif is_dataclass(thing):
        for field in fields(thing):
            yield from strings(getattr(thing, field.name))


def owners_words(shop: Shop) -> set[str]:
    """Return what an owner named, and the names of materials, which data files hold."""
    return {
        shop.name,
        shop.lathe.name,
        *(blade.name for blade in shop.blades),
        *(position.name for position in shop.lathe.drive.positions),
    }


def english_in(texts: Iterator[str] | list[str], shop: Shop) -> dict[str, list[str]]:
    """Return every text with the English words in it."""
    found = {}
    for text in texts:
        rest = text
        for name in sorted(owners_words(shop), key=len, reverse=True):
            rest = rest.replace(name, " ")
        words = [word for word in re.findall(r"[^\W\d_]+", rest) if word.lower() in ENGLISH]
        if words:
            found[text] = words
    return found


def decimal_points(texts: Iterator[str] | list[str], shop: Shop) -> list[str]:
    """Return the texts with a number that has a decimal point."""
    found = []
    for text in texts:
        rest = text
        for name in owners_words(shop):
            rest = rest.replace(name, " ")
        if re.search(r"\d\.\d", rest):
            found.append(text)
    return found


def bodies(cards: list[AnyCard]) -> list[PrintedCurves | PrintedNomogram]:
    found = [card.chart for card in cards]
    assert all(isinstance(body, PrintedCurves | PrintedNomogram) for body in found)
    return found  # type: ignore[return-value]


def said(body: PrintedCurves | PrintedNomogram) -> list[str]:
    """Return what a figure says of itself; a legend is the concern of every card."""
    return list(strings(replace(body, legend=())))


@pytest.mark.parametrize("units", LengthUnits)
@pytest.mark.parametrize("machine", MACHINES)
def test_a_figure_has_no_english_word_and_no_decimal_point(
    shop_of: ShopOf, machine: str, units: LengthUnits
) -> None:
    shop = german(shop_of(machine), layouts=LAYOUTS, units=units)
    cards = pipeline.printed_cards(shop)
    assert {card.layout for card in cards} == set(LAYOUTS)
    for body in bodies(cards):
        assert english_in(said(body), shop) == {}
        assert decimal_points(said(body), shop) == []


def test_english_words_are_found_where_they_are(example: Shop) -> None:
    """What finds English finds it: the same cards in English are full of it."""
    shop = replace(example, request=replace(example.request, layouts=LAYOUTS))
    for body in bodies(pipeline.printed_cards(shop)):
        assert len(english_in(said(body), shop)) > 3


@pytest.mark.parametrize("units", LengthUnits)
@pytest.mark.parametrize("machine", MACHINES)
def test_every_figure_fits_its_layout(shop_of: ShopOf, machine: str, units: LengthUnits) -> None:
    shop = german(shop_of(machine), layouts=LAYOUTS, units=units)
    cards = pipeline.printed_cards(shop)
    assert len(pipeline.lay_out(cards)) == len(cards)


def test_the_cards_of_the_built_in_shop_fit(example: Shop) -> None:
    cards = pipeline.printed_cards(german(example, layouts=LAYOUTS))
    assert len(pipeline.lay_out(cards)) == len(cards)


def test_ticks_have_the_decimal_sign_of_the_language_and_stand_where_they_stood() -> None:
    for make in (
        lambda: log_axis("mm/U", 0.008, 0.3),
        lambda: even_axis("mm", 0.0, 3.0, wanted=6),
    ):
        english = make()
        with speaking("de"):
            spoken = make()
        assert [(v, r) for v, _, r in spoken.ticks] == [(v, r) for v, _, r in english.ticks]
        texts = [text for _, text, _ in english.ticks]
        assert any("." in text for text in texts)
        assert [text for _, text, _ in spoken.ticks] == [t.replace(".", ",") for t in texts]


def test_curves_are_the_same_in_any_language(example: Shop) -> None:
    """A language changes words and nothing that is drawn."""
    asked = replace(example.request, layouts=LAYOUTS[:4], materials=("mild-steel",))
    english = bodies(pipeline.printed_cards(replace(example, request=asked)))
    spoken = bodies(
        pipeline.printed_cards(german(example, layouts=LAYOUTS[:4], materials=("mild-steel",)))
    )
    for one, other in zip(english, spoken, strict=True):
        assert isinstance(one, PrintedCurves)
        assert isinstance(other, PrintedCurves)
        for a, b in zip(one.panels, other.panels, strict=True):
            assert [(c.parts, c.dash) for c in a.curves] == [(c.parts, c.dash) for c in b.curves]
            assert [(d.at, d.shape) for d in a.dots] == [(d.at, d.shape) for d in b.dots]
            assert a.letters == b.letters


@pytest.mark.parametrize("units", LengthUnits)
def test_a_change_card_has_no_english_word_but_the_owners_keys(
    motor_swap: Swap, units: LengthUnits
) -> None:
    before, after = both_german(motor_swap, units=units)
    change = pipeline.changed_card(before, after).chart
    groups = [
        replace(group, rows=tuple(replace(row, moved="", limit="") for row in group.rows))
        for group in change.groups
    ]
    told = [
        *strings((change.title, change.subtitle, change.summary, change.headings)),
        *strings(tuple(groups)),
        *strings(change.figures),
        *(group.title for group in change.facts),
        *(line.remark for line in change.cards),
    ]
    # A key stands as in the shop file, and so does the file's word behind it.
    keys = {"single-phase", "inverter"}
    for fact in (fact for group in change.facts for fact in group.facts):
        told += [text for text in (fact.before, fact.after) if text not in keys]
        if not _KEY.fullmatch(fact.name):
            told.append(fact.name)
    dates = {shop.date for shop in (before, after)}
    told = [text for text in told if not any(date in text for date in dates)]
    assert english_in(told, after) == {}
    assert decimal_points(told, after) == []


def test_what_one_file_has_and_the_other_not_is_told_in_german(example: Shop) -> None:
    fewer = replace(example, tools=replace(example.tools, turning=(), boring=(), drills=None))
    change = pipeline.changed_card(german(example), german(fewer)).chart
    told = [fact.before for group in change.facts for fact in group.facts]
    assert {fact.after for group in change.facts for fact in group.facts} == {"–"}
    assert any("Eckenradius" in text for text in told)
    assert any("bohrt aus ab" in text for text in told)
    assert any("anschliff" in text for text in told)
    assert english_in(told, example) == {}


@pytest.mark.parametrize("units", LengthUnits)
def test_a_change_card_fits_its_layout_and_says_its_titles_in_german(
    motor_swap: Swap, units: LengthUnits
) -> None:
    (finished,) = pipeline.lay_out([pipeline.changed_card(*both_german(motor_swap, units=units))])
    texts = {
        item.text
        for page in finished.document.pages
        for item in page.items
        if isinstance(item, Text)
    }
    assert {
        "Was sich geändert hat",
        "Geänderte Annahmen",
        "Veraltet: abnehmen und neu drucken",
        "vorher",
        "jetzt",
    } <= texts
    assert any(text.endswith(" (weiter)") for text in texts)


def test_a_change_without_moved_cells_says_so_in_german(example: Shop) -> None:
    before, after = german(example), german(replace(example, revision="B"))
    (finished,) = pipeline.lay_out([pipeline.changed_card(before, after)])
    texts = [i.text for page in finished.document.pages for i in page.items if isinstance(i, Text)]
    assert "Keine Zelle hat sich um mehr als ihre Rundung verschoben." in texts
    assert "Zahlen gelten; die Karte nennt noch die alten Annahmen" in texts


def test_cells_that_moved_are_counted_alike_in_any_language(motor_swap: Swap) -> None:
    """A card is found by its own German title and rows: "12,5" there is 12.5 here."""
    layouts = ("lathe-chart-a5", "overview-a5", "blade-card-a6")
    diameters = (12.5, 30.0, 40.0)
    english = [
        replace(s, request=replace(s.request, layouts=layouts, diameters=diameters))
        for s in motor_swap
    ]
    spoken = [german(shop, layouts=layouts, diameters=diameters) for shop in motor_swap]
    lines = [pipeline.changed_card(*pair).chart.cards for pair in (english, spoken)]
    numbers = [
        {line.file_stem: (line.state, re.findall(r"\d+", line.remark)) for line in side}
        for side in lines
    ]
    assert numbers[0] == numbers[1]
    counts = [number for _, number in numbers[0].values() if number]
    # Where no cell were found, all would count as moved.
    assert any(int(moved) < int(total) for moved, total in counts)


def test_cells_are_found_whatever_is_spoken_around(motor_swap: Swap) -> None:
    """The command stale speaks English of a German card."""
    before, after = both_german(motor_swap, layouts=("overview-a5",))
    old, new = (pipeline.printed_cards(shop) for shop in (before, after))
    changes = cell_changes(before, after)
    for card in old:
        (now,) = (other for other in new if other.file_stem == card.file_stem)
        found = staleness(card, now, before=before, after=after)
        moved = sum(bool(c.moves) for c in changes.cells if c.blade.name in card.chart.title)
        assert found.remark == f"{moved} of 24 cells"
        assert sum(len(group.rows) for group in found.groups) == moved


def test_a_card_in_another_language_is_stale(example: Shop) -> None:
    request = replace(example.request, layouts=("blade-card-a6", "speed-curves-a5"))
    before = replace(example, request=request)
    after = german(before)
    cards = [pipeline.printed_cards(shop) for shop in (before, after)]
    lines = card_states(cards[0], cards[1], cell_changes(before, after))
    assert {(line.state, line.remark) for line in lines} == {(CardState.STALE, "another language")}
    change = pipeline.changed_card(before, after).chart
    assert {line.remark for line in change.cards} == {"andere Sprache"}
    told = {fact.name: group.title for group in change.facts for fact in group.facts}
    assert told == {"print.language": "Was gedruckt wird"}


def test_one_and_many_agree_with_their_number(example: Shop) -> None:
    one = german(example, materials=("mild-steel",), diameters=(20.0,))
    many = german(example)
    assert pipeline.changed_card(one, one).chart.summary[0] == (
        "Verglichen: 1 Werkstoff, 3 Klingen und 1 Durchmesser, die in beiden Dateien stehen."
    )
    summary = pipeline.changed_card(many, many).chart.summary[0]
    assert summary.startswith(f"Verglichen: {len(many.request.materials)} Werkstoffe, 3 Klingen")


def test_the_terminal_says_the_states_as_the_card_does(motor_swap: Swap) -> None:
    text = render_change(pipeline.changed_card(*both_german(motor_swap)))
    assert "\nVeraltet: abnehmen und neu drucken\n" in text
    assert "Stale" not in text
