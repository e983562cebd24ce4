"""The change card in German: its words, its numbers, and cards of two languages compared."""

import re
from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen import pipeline
from chartgen.charts.change import cell_changes
from chartgen.layout.placed import Text
from chartgen.model.shop import Language, LengthUnits, Shop
from chartgen.renderers.change_text import render_change
from chartgen.wording.card_states import card_states
from chartgen.wording.printed_change import CardState, PrintedChange
from chartgen.wording.staleness import staleness

Swap = tuple[Shop, Shop]
EnglishLeft = Callable[..., dict[str, list[str]]]
each_unit = pytest.mark.parametrize("units", LengthUnits)
_KEY = re.compile(r'[a-z_]+\.[a-z_.]+(?: "[^"]*"\.?[a-z_]*)?')


def german(shop: Shop, **request: object) -> Shop:
    asked = replace(shop.request, language=Language.GERMAN, **request)  # type: ignore[arg-type]
    return replace(shop, request=asked)


def both_german(swap: Swap, **request: object) -> Swap:
    before, after = (german(shop, **request) for shop in swap)
    return before, after


def of_the_files(change: PrintedChange) -> set[str]:
    """Return what stands on the card as in shop files: keys and the words behind, file names."""
    keys = {fact.name for group in change.facts for fact in group.facts}
    stems = {line.file_stem for line in change.cards}
    return {"single-phase", "inverter", *filter(_KEY.fullmatch, keys), *stems}


@each_unit
def test_a_change_card_fits_and_has_no_english_word_but_those_of_the_files(
    motor_swap: Swap, english_left: EnglishLeft, units: LengthUnits
) -> None:
    before, after = both_german(motor_swap, units=units)
    card = pipeline.changed_card(before, after)
    (finished,) = pipeline.lay_out([card])
    said = [card.chart.subtitle]
    for page in finished.document.pages:
        parts: dict[object, list[str]] = {}
        for item in page.items:
            said += [tag.alternative for tag in item.tags]
            if isinstance(item, Text):
                parts.setdefault(item.tags or item, []).append(item.text)
        said += map(" ".join, parts.values())
    assert english_left(said, after, of_the_files(card.chart)) == {}
    assert {
        "Was sich geändert hat",
        "Geänderte Annahmen",
        "Veraltet: abnehmen und neu drucken",
        "vorher",
        "jetzt",
    } <= set(said)


def test_a_group_that_goes_on_says_so_in_german(motor_swap: Swap) -> None:
    (finished,) = pipeline.lay_out([pipeline.changed_card(*both_german(motor_swap))])
    texts = [i.text for page in finished.document.pages for i in page.items if isinstance(i, Text)]
    assert any(text.endswith(" (weiter)") for text in texts)
    assert not any("continued" in text for text in texts)


def test_what_one_file_has_and_the_other_not_is_told_in_german(
    example: Shop, english_left: EnglishLeft
) -> None:
    fewer = replace(example, tools=replace(example.tools, turning=(), boring=(), drills=None))
    change = pipeline.changed_card(german(example), german(fewer)).chart
    told = [fact.before for group in change.facts for fact in group.facts]
    assert {fact.after for group in change.facts for fact in group.facts} == {"–"}
    assert any("Eckenradius" in text for text in told)
    assert any("bohrt aus ab" in text for text in told)
    assert any("anschliff" in text for text in told)
    assert english_left(told, example) == {}


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
