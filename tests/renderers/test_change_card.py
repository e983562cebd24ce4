"""The change card as a file: all that the terminal tells, clear, on as many pages as it takes."""

import io
from collections import Counter
from dataclasses import replace
from itertools import pairwise

import pdfplumber
import pytest
from pdfplumber.page import Page

from chartgen import pipeline
from chartgen.errors import DoesNotFitError
from chartgen.layout.layout_file import change_layout_names, load_layout
from chartgen.layout.legibility import (
    FOOT_CAP,
    NUMBERS_ARC_MINUTES,
    WORDS_ARC_MINUTES,
    cap_height,
    size_for_cap,
)
from chartgen.layout.pages import PRINTER_MARGIN
from chartgen.layout.placed import Align, Document, Face, Plot, Text
from chartgen.model.shop import Shop
from chartgen.renderers.change_text import render_change
from chartgen.renderers.fonts import measure
from chartgen.wording.card import PrintedCard
from chartgen.wording.printed_change import PrintedChange

ChangeCard = PrintedCard[PrintedChange]
LAYOUT = load_layout("change-card-a5")


@pytest.fixture(scope="module")
def card(motor_swap: tuple[Shop, Shop]) -> ChangeCard:
    return pipeline.changed_card(*motor_swap)


@pytest.fixture(scope="module")
def large(example: Shop) -> ChangeCard:
    """Return the card of a change that moves most of the built-in shop's cells."""
    motor = replace(example.lathe.motor, plate_power=300.0)
    work = replace(example.work, jaw_distance=25.0)
    after = replace(example, lathe=replace(example.lathe, motor=motor), work=work)
    return pipeline.changed_card(example, after)


def document_of(card: ChangeCard) -> Document:
    (finished,) = pipeline.lay_out([card])
    return finished.document


def pages_of(card: ChangeCard) -> list[Page]:
    (finished,) = pipeline.lay_out([card])
    return list(pdfplumber.open(io.BytesIO(pipeline.render(finished))).pages)


def bare(text: str) -> str:
    return "".join(text.split())


def flow(pages: list[Page]) -> str:
    return bare("".join(char["text"] for page in pages for char in page.chars))


def test_there_is_one_layout_of_a_change_card() -> None:
    assert change_layout_names() == ("change-card-a5",)
    assert LAYOUT.card == "change-card"


def test_the_file_tells_all_that_the_terminal_tells(card: ChangeCard) -> None:
    said, change = flow(pages_of(card)), card.chart
    text = bare(render_change(card))
    told = [change.title, change.subtitle, *change.summary]
    told += [text for group in change.facts for text in (group.title, *names_of(group.facts))]
    told += [line.state.value for line in change.cards]
    told += [f"{line.file_stem}: {line.remark}" for line in change.cards if line.remark]
    told += [group.title for group in change.groups]
    told += [card.lathe, card.deference, card.identity, f"check {card.check_code}"]
    for words in told:
        assert bare(words) in said, words
        assert bare(words) in text, words


def names_of(facts: tuple[object, ...]) -> list[str]:
    return [f"{f.name} {f.before} → {f.after}" for f in facts]


def test_every_moved_cell_is_printed_at_the_size_of_the_numbers(card: ChangeCard) -> None:
    size = size_for_cap(cap_height(distance=400.0, arc_minutes=NUMBERS_ARC_MINUTES))
    words = [w for page in pages_of(card) for w in page.extract_words(extra_attrs=["size"])]
    found = Counter(w["text"] for w in words if w["size"] >= size - 0.01)
    wanted = Counter[str]()
    for group in card.chart.groups:
        for row in group.rows:
            wanted[row.diameter] += 1
            for side in (row.before, row.after):
                lost = ["–", *side.way_out.split()] if side.way_out else []
                wanted.update(lost or [side.speed, side.feed])
                wanted[side.sign] += 1
    assert wanted - found == Counter()


def test_nothing_is_smaller_than_its_distance_asks_but_the_foot(large: ChangeCard) -> None:
    words = size_for_cap(cap_height(distance=400.0, arc_minutes=WORDS_ARC_MINUTES))
    foot = size_for_cap(FOOT_CAP)
    small = {
        item.text: item.size
        for page in document_of(large).pages
        for item in page.items
        if isinstance(item, Text) and item.size < words - 0.01
    }
    assert small
    assert all(size == pytest.approx(foot) for size in small.values())
    assert set(small) <= {large.identity, f"check {large.check_code}"} | {
        text for text in small if "this rule" in text
    }


@pytest.mark.parametrize("which", ["card", "large"])
def test_all_stands_inside_the_margins_and_no_texts_clash(
    which: str, request: pytest.FixtureRequest
) -> None:
    for page in document_of(request.getfixturevalue(which)).pages:
        lines: dict[float, list[tuple[float, float, str]]] = {}
        for item in page.items:
            if not isinstance(item, Text):
                continue
            width = measure(item.text, item.face, item.size)
            left = item.x - (width if item.align is Align.RIGHT else 0.0)
            assert left >= PRINTER_MARGIN - 0.01, item.text
            assert left + width <= page.width - PRINTER_MARGIN + 0.01, item.text
            assert PRINTER_MARGIN <= item.y <= page.height - PRINTER_MARGIN + 0.01, item.text
            lines.setdefault(round(item.y, 3), []).append((left, left + width, item.text))
        for line in lines.values():
            line.sort()
            for (_, end, text), (start, _, following) in pairwise(line):
                assert not (text and following) or end <= start + 0.1, (text, following)


def test_a_long_list_runs_on_to_further_pages_and_loses_no_row(large: ChangeCard) -> None:
    pages = document_of(large).pages
    assert len(pages) > len(LAYOUT.sides)
    rows = [row for group in large.chart.groups for row in group.rows]
    bold = Counter(
        item.text
        for page in pages
        for item in page.items
        if isinstance(item, Text) and item.face is Face.BOLD and item.align is Align.RIGHT
    )
    assert Counter(row.diameter for row in rows) - bold == Counter()


def test_a_group_that_goes_on_in_another_column_repeats_its_title_and_headings(
    large: ChangeCard,
) -> None:
    titles = {group.title for group in large.chart.groups}
    continued = 0
    for page in document_of(large).pages:
        texts = [item for item in page.items if isinstance(item, Text)]
        diameters = [t for t in texts if t.text == large.chart.headings.diameter]
        if not diameters or any(isinstance(item, Plot) for item in page.items):
            continue
        # Every column begins with a group's title, repeated or not.
        for right in {round(t.x, 2) for t in diameters}:
            top = min(t.y for t in diameters if round(t.x, 2) == right)
            above = [
                t.text
                for t in texts
                if t.face is Face.BOLD and t.y < top and abs(t.x - right) < 12.0 and t.y > 12.0
            ]
            title = next(text for text in above if text.removesuffix(" (continued)") in titles)
            continued += title.endswith(" (continued)")
    assert continued


def test_a_change_without_moved_cells_says_so(example: Shop) -> None:
    same = pipeline.changed_card(example, replace(example, revision="B"))
    said = flow(pages_of(same))
    assert bare("No cell moved by more than it is rounded to.") in said
    assert bare("Nothing on the cards has moved.") in said


def test_every_page_names_card_and_code(large: ChangeCard) -> None:
    for page in pages_of(large):
        assert bare(f"check {large.check_code}") in flow([page])
        assert bare(large.identity) in flow([page])


def test_the_same_two_shops_give_the_same_bytes(motor_swap: tuple[Shop, Shop]) -> None:
    files = []
    for _ in range(2):
        (finished,) = pipeline.lay_out([pipeline.changed_card(*motor_swap)])
        files.append(pipeline.render(finished))
    assert files[0] == files[1]


def test_signs_too_wide_for_a_column_are_refused_and_never_made_smaller(card: ChangeCard) -> None:
    change = card.chart
    group = change.groups[0]
    wide = replace(group.rows[0], limit="a limit of very many words " * 3)
    with pytest.raises(DoesNotFitError, match=r"^layout change-card-a5: the moved cells need \d+"):
        pipeline.lay_out(
            [replace(card, chart=replace(change, groups=(replace(group, rows=(wide,)),)))]
        )
