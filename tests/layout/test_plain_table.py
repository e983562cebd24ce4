"""The blocks of a plain table: where its cells stand, and what is said if they do not fit."""

import re
from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen.errors import DoesNotFitError
from chartgen.layout.blocks.paragraphs import notes
from chartgen.layout.blocks.plain_table import plain_table
from chartgen.layout.compose import compose
from chartgen.layout.layout_file import load_layout
from chartgen.layout.piece import setting_for
from chartgen.layout.placed import Align, Document, Face, Rule, Text
from chartgen.layout.roles import Role
from chartgen.renderers.fonts import measure
from chartgen.wording.card import PrintedCard
from chartgen.wording.printed import PrintedTable

PlainCard = PrintedCard[PrintedTable]
CardOf = Callable[[str], PlainCard]
LAYOUT = load_layout("blade-card-a6")
SETTING = setting_for(distance=400.0, width=135.0, measure=measure)
TABLE = PrintedTable(
    title="Trial",
    subtitle="",
    headings=("what", "plain", "how\nmany"),
    right=frozenset({2}),
    rows=(("one", "a", "5"), ("two", "", "125"), ("three", "bc", "40"), ("four", "d", "7")),
    notes=("First note.", "Second note."),
    legend=(),
)


def card_with(
    card_of: CardOf,
    rows: tuple[tuple[str, ...], ...] = TABLE.rows,
    notes: tuple[str, ...] = TABLE.notes,
) -> PlainCard:
    return replace(card_of("blade-card"), chart=replace(TABLE, rows=rows, notes=notes))


def texts(card: PlainCard) -> list[Text]:
    pieces = plain_table(card, LAYOUT, SETTING)
    return [item for piece in pieces for item in piece.items if isinstance(item, Text)]


def page_texts(document: Document) -> list[str]:
    return [i.text for page in document.pages for i in page.items if isinstance(i, Text)]


def test_a_row_is_a_piece_and_the_heading_is_kept_with_the_first(card_of: CardOf) -> None:
    pieces = plain_table(card_with(card_of), LAYOUT, SETTING)
    assert len(pieces) == 1 + len(TABLE.rows)
    assert [piece.keep_with_next for piece in pieces] == [True, False, False, False, False]
    assert len({piece.height for piece in pieces[1:]}) == 1


def test_words_stand_on_a_left_edge_and_numbers_on_a_right_one(card_of: CardOf) -> None:
    found = texts(card_with(card_of))
    words = [text for text in found if text.text in {"plain", "a", "bc", "d"}]
    numbers = [text for text in found if text.text in {"how", "many", "5", "125", "40", "7"}]
    assert {text.align for text in words} == {Align.LEFT}
    assert {text.align for text in numbers} == {Align.RIGHT}
    assert len({round(text.x, 6) for text in words}) == 1
    assert len({round(text.x, 6) for text in numbers}) == 1


def test_an_empty_cell_is_a_cell_to_a_screen_reader_and_prints_nothing(card_of: CardOf) -> None:
    empty = [text for text in texts(card_with(card_of)) if not text.text]
    assert empty
    assert {text.tags[-1].role for text in empty} == {Role.CELL}


def test_the_lines_of_a_heading_end_on_the_base_line_of_the_others(card_of: CardOf) -> None:
    base = {text.text: text.y for text in texts(card_with(card_of))[:4]}
    assert base["what"] == base["plain"] == base["many"] > base["how"]


def test_only_the_first_column_is_bold(card_of: CardOf) -> None:
    body = texts(card_with(card_of))[4:]
    bold = {text.text for text in body if text.face is Face.BOLD}
    assert bold == {"one", "two", "three", "four"}


# Every third row, but not under the last: 4 rows have one, 6 rows one, 7 rows two.
@pytest.mark.parametrize(("rows", "rules"), [(3, 0), (4, 1), (6, 1), (7, 2)])
def test_a_thin_rule_stands_under_every_third_row_but_the_last(
    card_of: CardOf, rows: int, rules: int
) -> None:
    card = card_with(card_of, rows=tuple(("one", "a", "5") for _ in range(rows)))
    items = [item for piece in plain_table(card, LAYOUT, SETTING) for item in piece.items]
    thin = [item for item in items if isinstance(item, Rule) and item.weight == 0.35]
    assert len(thin) == rules


def test_columns_wider_than_the_side_are_refused(card_of: CardOf) -> None:
    card = card_with(card_of, rows=(("W" * 40, "M" * 40, "5"),))
    with pytest.raises(DoesNotFitError) as caught:
        plain_table(card, LAYOUT, SETTING)
    assert re.fullmatch(
        r"layout blade-card-a6: the 3 columns of 'Trial' need \d+ mm and the side has 135 mm; "
        r"use a larger layout",
        str(caught.value),
    )


def test_rows_too_many_for_a_blade_card_ask_for_materials_to_be_dropped(card_of: CardOf) -> None:
    card = card_of("blade-card")
    row = card.chart.rows[0]

    def with_rows(count: int) -> PlainCard:
        return replace(card, chart=replace(card.chart, rows=(row,) * count))

    count = 1
    while True:
        try:
            compose(with_rows(count), LAYOUT, measure)
        except DoesNotFitError as error:
            said = str(error)
            break
        count += 1
    assert count > 6
    assert said == (
        f"layout blade-card-a6 holds {count - 1} of the {count} rows of '{card.chart.title}' at "
        "its reading distance: drop 1 material, or use a larger layout"
    )
    with pytest.raises(DoesNotFitError) as caught:
        compose(with_rows(39), LAYOUT, measure)
    assert f": drop {39 - count + 1} materials, or" in str(caught.value)


def test_rows_too_many_for_a_centre_card_ask_for_nothing_to_be_dropped(card_of: CardOf) -> None:
    card, layout = card_of("centre-card"), load_layout("centre-card-a6")
    many = replace(card, chart=replace(card.chart, rows=card.chart.rows[:1] * 40))
    with pytest.raises(DoesNotFitError) as caught:
        compose(many, layout, measure)
    assert re.fullmatch(
        r"layout centre-card-a6 holds \d+ of the 40 rows of '.+ to the centre' at its reading "
        r"distance: use a larger layout",
        str(caught.value),
    )


def test_notes_stand_below_the_table_with_a_space_between(card_of: CardOf) -> None:
    pieces = notes(card_with(card_of), LAYOUT, SETTING)
    said = [item.text for piece in pieces for item in piece.items if isinstance(item, Text)]
    assert said == list(TABLE.notes)
    assert not pieces[0].items
    assert pieces[0].height > 0.0
    assert notes(card_with(card_of, notes=()), LAYOUT, SETTING) == []


@pytest.mark.parametrize(
    ("block", "message"),
    [
        (plain_table, "a plain-table block needs a card with a plain table"),
        (notes, "a notes block needs a card whose body has notes"),
    ],
)
def test_a_chart_is_no_plain_table(
    card_of: CardOf, block: Callable[..., object], message: str
) -> None:
    with pytest.raises(TypeError) as caught:
        block(card_of("lathe-chart"), LAYOUT, SETTING)
    assert str(caught.value) == message


def test_every_note_and_cell_of_a_card_is_placed(card_of: CardOf) -> None:
    for name in ("blade-card-a6", "centre-card-a6"):
        layout = load_layout(name)
        card = card_of(layout.card)
        assert isinstance(card.chart, PrintedTable)
        placed = page_texts(compose(card, layout, measure))
        assert all(cell in placed for row in card.chart.rows for cell in row if cell)
        run_on = " ".join(placed)
        assert all(note in run_on for note in card.chart.notes)


def test_cautions_too_many_for_their_side_run_on_to_a_page_of_their_own(card_of: CardOf) -> None:
    card = card_of("blade-card")
    more = replace(card, cautions=card.cautions * 2)
    document = compose(more, LAYOUT, measure)
    assert len(document.pages) == len(compose(card, LAYOUT, measure).pages) + 1
    placed = " ".join(page_texts(document))
    assert all(placed.count(" ".join(caution.text.split())) == 2 for caution in card.cautions)
