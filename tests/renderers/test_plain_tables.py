"""Cards that are a plain table of words and numbers, as they can be read in the file."""

import io
from collections import Counter
from functools import lru_cache

import pdfplumber
import pytest
from pdfplumber.page import Page

from chartgen.layout.layout_file import Side, layout_names, load_layout
from chartgen.layout.legibility import NUMBERS_ARC_MINUTES, cap_height, size_for_cap
from chartgen.wording.card import PrintedCard
from chartgen.wording.printed import PrintedTable

Rendered = dict[str, list[tuple[PrintedCard[PrintedTable], bytes]]]
PLAIN = [
    name
    for name in layout_names()
    if any("plain-table" in side.blocks for side in load_layout(name).sides)
]
each_plain = pytest.mark.parametrize("name", PLAIN)


@lru_cache(maxsize=40)  # the pages of one layout, not of all
def pages_of(data: bytes) -> list[Page]:
    return list(pdfplumber.open(io.BytesIO(data)).pages)


def front(name: str, data: bytes) -> tuple[Page, Side]:
    """Return the side with the table."""
    pages = zip(pages_of(data)[:1], load_layout(name).sides[:1], strict=True)
    return next((page, side) for page, side in pages if "plain-table" in side.blocks)


def flow(page: Page) -> str:
    return "".join("".join(char["text"] for char in page.chars).split())


def bare(text: str) -> str:
    return "".join(text.split())


def test_there_are_two_kinds_of_them() -> None:
    assert {load_layout(name).card for name in PLAIN} == {"blade-card", "centre-card"}


@each_plain
def test_every_cell_is_printed_at_the_size_of_the_numbers(name: str, rendered: Rendered) -> None:
    for card, data in rendered[name]:
        page, side = front(name, data)
        least = cap_height(distance=side.reading_distance, arc_minutes=NUMBERS_ARC_MINUTES)
        words = page.extract_words(extra_attrs=["size"])
        found = Counter(w["text"] for w in words if w["size"] >= size_for_cap(least) - 0.01)
        wanted = Counter(word for row in card.chart.rows for cell in row for word in cell.split())
        assert not wanted - found, card.file_stem


@each_plain
def test_headings_notes_band_and_deference_stand_on_the_side_of_the_numbers(
    name: str, rendered: Rendered
) -> None:
    for card, data in rendered[name]:
        text = flow(front(name, data)[0])
        parts = [word for heading in card.chart.headings for word in heading.split("\n")]
        for part in (*parts, *card.chart.notes, card.force_band, card.short_deference):
            assert bare(part) in text, card.file_stem


@each_plain
def test_the_first_column_alone_is_bold_among_the_cells(name: str, rendered: Rendered) -> None:
    for card, data in rendered[name]:
        page, side = front(name, data)
        least = cap_height(distance=side.reading_distance, arc_minutes=NUMBERS_ARC_MINUTES)
        words = page.extract_words(extra_attrs=["size", "fontname"])
        bold = Counter(
            w["text"]
            for w in words
            if w["size"] >= size_for_cap(least) - 0.01 and w["fontname"].endswith("Bold")
        )
        wanted = Counter(word for row in card.chart.rows for word in row[0].split())
        assert bold == wanted + Counter(card.chart.title.split()), card.file_stem
