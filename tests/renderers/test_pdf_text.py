"""What can be read in the file: everything the card says, in ink on paper."""

import io
from collections import Counter
from collections.abc import Callable
from functools import lru_cache

import pdfplumber
import pypdfium2  # type: ignore[import-untyped]
import pytest
from pdfplumber.page import Page

from chartgen.layout.layout_file import (
    Layout,
    Side,
    class_layout_names,
    job_layout_names,
    layout_names,
    load_layout,
)
from chartgen.layout.legibility import NUMBERS_ARC_MINUTES, cap_height, size_for_cap
from chartgen.wording.card import PrintedCard
from chartgen.wording.lessons.printed_class import PrintedRoll
from chartgen.wording.printed import PrintedCell, PrintedTable
from chartgen.wording.printed_job import PrintedJob

Rendered = dict[str, list[tuple[PrintedCard, bytes]]]
SidesOf = Callable[[PrintedCard], list[Side]]
# By module: the tests of one layout stand together, so that its pages are read once and let go.
each_layout = pytest.mark.parametrize(
    "name", [*layout_names(), *job_layout_names(), *class_layout_names()], scope="module"
)


@lru_cache(maxsize=40)  # the pages of one layout, not of all
def pages_of(data: bytes) -> list[Page]:
    return list(pdfplumber.open(io.BytesIO(data)).pages)


def bare(text: str) -> str:
    """Return text without spaces, so that a line's end makes no difference."""
    return "".join(text.split())


def flow(page: Page) -> str:
    """Return a page's text in the order it is drawn."""
    return bare("".join(char["text"] for char in page.chars))


def cell_words(cell: PrintedCell, layout: Layout) -> list[str]:
    """Return the words of a cell that stand at the size of the numbers."""
    if cell.way_out:
        return ["–", *cell.way_out.split(), cell.sign]
    shown = {"speed": cell.speed, "feed": cell.feed, "pace": cell.pace, "sign": cell.sign}
    return [shown[part] for part in layout.cell]


@each_layout
class TestTheText:
    def test_every_cell_of_the_chart_is_printed_at_the_size_of_the_numbers(
        self, name: str, rendered: Rendered, sides_of: SidesOf
    ) -> None:
        layout = load_layout(name)
        for card, data in rendered[name]:
            for page, side in zip(pages_of(data), sides_of(card), strict=True):
                if "table" not in side.blocks:
                    continue
                size = size_for_cap(
                    cap_height(distance=side.reading_distance, arc_minutes=NUMBERS_ARC_MINUTES)
                )
                words = page.extract_words(extra_attrs=["size"], x_tolerance=1.5)
                found = Counter(w["text"] for w in words if w["size"] >= size - 0.01)
                wanted = Counter(card.chart.stub)
                for row in card.chart.rows:
                    for cell in row:
                        wanted.update(word for word in cell_words(cell, layout) if word)
                assert not wanted - found, card.file_stem

    def test_every_position_mark_is_printed(
        self, name: str, rendered: Rendered, sides_of: SidesOf
    ) -> None:
        for card, data in rendered[name]:
            for page, side in zip(pages_of(data), sides_of(card), strict=True):
                if "table" in side.blocks:
                    text = flow(page)
                    cells = [cell for row in card.chart.rows for cell in row if cell.speed]
                    for cell, times in Counter((c.speed, c.position) for c in cells).items():
                        assert text.count("".join(cell)) >= times

    def test_every_column_and_its_units_are_headed(
        self, name: str, rendered: Rendered, sides_of: SidesOf
    ) -> None:
        for card, data in rendered[name]:
            chart = card.chart
            for page, side in zip(pages_of(data), sides_of(card), strict=True):
                if "table" in side.blocks:
                    text, columns = flow(page), len(chart.columns)
                    assert bare(chart.corner) in text
                    assert text.count(chart.speed_heading) >= columns
                    assert text.count(bare(chart.feed_heading)) >= columns
                    assert all(bare(column.heading) in text for column in chart.columns)

    def test_the_legend_explains_every_sign(self, name: str, rendered: Rendered) -> None:
        for card, data in rendered[name]:
            text = "\n".join(map(flow, pages_of(data)))
            for entry in card.chart.legend:
                assert bare(entry.sign + entry.short) in text
                assert not entry.on_back or bare(entry.sentence) in text
            if isinstance(card.chart, PrintedTable | PrintedJob | PrintedRoll):
                continue
            signs = {sign for row in card.chart.rows for cell in row for sign in cell.sign}
            assert signs <= {entry.sign for entry in card.chart.legend}

    def test_every_side_tells_which_card_it_is(self, name: str, rendered: Rendered) -> None:
        for card, data in rendered[name]:
            for page in pages_of(data):
                assert bare(card.identity) in flow(page)
                assert bare(f"check {card.check_code}") in flow(page)

    def test_a_side_with_numbers_says_how_sure_they_are_and_what_it_defers_to(
        self, name: str, rendered: Rendered, sides_of: SidesOf
    ) -> None:
        for card, data in rendered[name]:
            for page, side in zip(pages_of(data), sides_of(card), strict=True):
                if "table" in side.blocks:
                    assert bare(card.force_band) in flow(page)
                    assert bare(card.short_deference) in flow(page)

    def test_cautions_assumptions_and_deference_are_printed_whole(
        self, name: str, rendered: Rendered
    ) -> None:
        for card, data in rendered[name]:
            text = "\n".join(map(flow, pages_of(data)))
            for caution in card.cautions:
                assert bare(caution.text) in text
                assert bare(caution.signal) in text
            assert card.cautions
            assert all(bare(line) in text for line in card.assumptions)
            assert bare(card.deference) in text

    def test_another_reader_finds_the_same_words(self, name: str, rendered: Rendered) -> None:
        for _, data in rendered[name][:2]:
            with pypdfium2.PdfDocument(data) as document:
                for page, plumbed in zip(document, pages_of(data), strict=True):
                    text = page.get_textpage().get_text_range()
                    assert Counter(bare(text)) == Counter(flow(plumbed))

    def test_no_character_is_unknown_to_a_reader(self, name: str, rendered: Rendered) -> None:
        for page in (page for _, data in rendered[name] for page in pages_of(data)):
            assert "(cid:" not in flow(page)
            assert flow(page).isprintable()
            assert "\N{REPLACEMENT CHARACTER}" not in flow(page)

    def test_text_is_black_save_in_white_on_a_black_panel(
        self, name: str, rendered: Rendered
    ) -> None:
        for page in (page for _, data in rendered[name] for page in pages_of(data)):
            panels = [r for r in page.rects if r["fill"] and set(r["non_stroking_color"]) == {0}]
            for char in page.chars:
                colour = set(char["non_stroking_color"])
                on_panel = any(
                    r["x0"] <= char["x0"]
                    and char["x1"] <= r["x1"]
                    and r["top"] <= (char["top"] + char["bottom"]) / 2 <= r["bottom"]
                    for r in panels
                )
                assert colour == ({1} if on_panel else {0}), char["text"]

    def test_the_title_names_material_or_blade(self, name: str, rendered: Rendered) -> None:
        for card, data in rendered[name]:
            assert bare(card.chart.title) in flow(pages_of(data)[0])
