"""The card as it lies on the bench: sizes and distances measured in the file and in ink."""

import io
import re
from collections.abc import Callable
from functools import lru_cache

import numpy as np
import pdfplumber
import pypdfium2  # type: ignore[import-untyped]
import pytest
from numpy.typing import NDArray
from pdfplumber.page import Page

from chartgen.layout.code_square import QUIET_ZONE, code_square
from chartgen.layout.layout_file import (
    Side,
    class_layout_names,
    job_layout_names,
    layout_names,
    load_layout,
)
from chartgen.layout.legibility import (
    CAP_HEIGHT,
    NUMBERS_ARC_MINUTES,
    POINT,
    WORDS_ARC_MINUTES,
    cap_height,
)
from chartgen.wording.card import PrintedCard
from chartgen.wording.check_code import square_sentences
from chartgen.wording.lessons.printed_class import PrintedRoll
from chartgen.wording.printed import PrintedTable
from chartgen.wording.printed_job import PrintedJob

Rendered = dict[str, list[tuple[PrintedCard, bytes]]]
SidesOf = Callable[[PrintedCard], list[Side]]
Pixels = NDArray[np.uint8]
# By module: the tests of one layout stand together, so that its pages are read once and let go.
each_layout = pytest.mark.parametrize(
    "name", [*layout_names(), *job_layout_names(), *class_layout_names()], scope="module"
)
CHECK_WORDS = re.compile(
    r"(\d+)mmabove,(\d)inbelow:ifthisruleisnottrue,printagainat100%",
)
DPI = 200
DARK, LIGHT = 90, 200


@lru_cache(maxsize=40)  # the pages of one layout, not of all
def pages_of(data: bytes) -> list[Page]:
    return list(pdfplumber.open(io.BytesIO(data)).pages)


@lru_cache(maxsize=40)  # the pages of one layout, not of all
def raster_of(data: bytes, *, grey: bool, dpi: int = DPI) -> list[Pixels]:
    with pypdfium2.PdfDocument(data) as document:
        return [page.render(scale=dpi / 72, grayscale=grey).to_numpy().copy() for page in document]


def with_sides(data: bytes, sides: list[Side]) -> list[tuple[Page, Side]]:
    return list(zip(pages_of(data), sides, strict=True))


def bare(text: str) -> str:
    return "".join(text.split())


def luminance(pixels: Pixels) -> NDArray[np.float64]:
    """Return the brightness a mono printer sees; the raster is blue, green, red."""
    if pixels.ndim == 2 or pixels.shape[2] == 1:
        return pixels.reshape(pixels.shape[:2]).astype(np.float64)
    blue, green, red = (pixels[..., part].astype(np.float64) for part in range(3))
    return 0.114 * blue + 0.587 * green + 0.299 * red


def cap_of(size: float) -> float:
    """Return the height of capitals [mm] of a size [pt]."""
    return size * CAP_HEIGHT * POINT


def test_numbers_and_words_are_held_to_the_heights_for_their_distance() -> None:
    assert cap_height(distance=700.0, arc_minutes=NUMBERS_ARC_MINUTES) == pytest.approx(4.1)
    assert cap_height(distance=700.0, arc_minutes=WORDS_ARC_MINUTES) == pytest.approx(3.3)


@each_layout
class TestLegible:
    def test_every_digit_in_the_body_of_the_table_has_the_height_of_the_numbers(
        self, name: str, rendered: Rendered, sides_of: SidesOf
    ) -> None:
        for card, data in rendered[name]:
            if isinstance(card.chart, PrintedTable | PrintedJob | PrintedRoll):
                continue
            marks = {cell.position for row in card.chart.rows for cell in row}
            assert not any(mark.isdigit() for mark in marks)
            for page, side in with_sides(data, sides_of(card)):
                if "table" not in side.blocks:
                    continue
                least = cap_height(distance=side.reading_distance, arc_minutes=NUMBERS_ARC_MINUTES)
                stubs = [
                    word
                    for word in page.extract_words(extra_attrs=["size", "fontname"])
                    if word["text"] in card.chart.stub
                    and word["fontname"].endswith("Bold")
                    and cap_of(word["size"]) >= least - 1e-3
                ]
                assert len(stubs) == len(card.chart.stub)
                top = min(word["top"] for word in stubs)
                bottom = max(word["bottom"] for word in stubs)
                digits = [
                    char
                    for char in page.chars
                    if char["text"].isdigit() and top - 1 <= char["top"] <= bottom
                ]
                assert len(digits) > 2 * len(stubs)
                assert min(cap_of(char["size"]) for char in digits) >= least - 1e-3

    def test_no_text_but_the_foot_and_the_check_rule_is_smaller_than_words(
        self, name: str, rendered: Rendered, sides_of: SidesOf
    ) -> None:
        for card, data in rendered[name]:
            for page, side in with_sides(data, sides_of(card)):
                least = cap_height(distance=side.reading_distance, arc_minutes=WORDS_ARC_MINUTES)
                small = bare(
                    "".join(c["text"] for c in page.chars if cap_of(c["size"]) < least - 1e-3)
                )
                for foot in (
                    card.identity,
                    f"check {card.check_code}",
                    f"{card.force_band} {card.short_deference}",
                    *square_sentences(card.check_code),
                ):
                    small = small.replace(bare(foot), "", 1)
                assert not CHECK_WORDS.sub("", small), card.file_stem

    def test_even_the_foot_can_be_read_in_the_hand(self, name: str, rendered: Rendered) -> None:
        # 1.7 mm are 15 minutes of arc at 0.4 m.
        for page in (page for _, data in rendered[name] for page in pages_of(data)):
            assert min(cap_of(char["size"]) for char in page.chars) >= 1.7 - 1e-3

    def test_the_ink_of_a_diameter_is_as_high_as_the_layout_promises(
        self, name: str, rendered: Rendered, sides_of: SidesOf
    ) -> None:
        card, data = rendered[name][0]
        for number, (page, side) in enumerate(with_sides(data, sides_of(card))):
            if "table" not in side.blocks:
                continue
            grey = luminance(raster_of(data, grey=True)[number])
            least = cap_height(distance=side.reading_distance, arc_minutes=NUMBERS_ARC_MINUTES)
            stubs = [
                word
                for word in page.extract_words(extra_attrs=["size", "fontname"])
                if word["text"] in card.chart.stub
                and word["fontname"].endswith("Bold")
                and cap_of(word["size"]) >= least - 1e-3
            ]
            pixel = 25.4 / DPI
            for word in stubs:
                top, bottom = (round(word[edge] * DPI / 72) for edge in ("top", "bottom"))
                left, right = (round(word[edge] * DPI / 72) for edge in ("x0", "x1"))
                rows = (grey[top:bottom, left:right] < LIGHT).any(axis=1)
                # The font's box may reach a rule above or below: the digits are the longest run.
                edges = np.flatnonzero(np.diff(np.concatenate([[False], rows, [False]])))
                height = (edges[1::2] - edges[::2]).max()
                # A round digit is a few hundredths higher than a capital.
                slack = 2.5 * pixel + 0.03 * least
                assert height * pixel == pytest.approx(least, abs=slack), word["text"]

    def test_no_two_words_overlap(self, name: str, rendered: Rendered) -> None:
        for card, data in rendered[name]:
            for page in pages_of(data):
                words = page.extract_words(extra_attrs=["size", "fontname"])
                # A line's height is that of its capitals and tails, not of the font's box.
                base = [w["bottom"] - 0.275 * w["size"] for w in words]
                box = np.array(
                    [
                        (w["x0"], b - CAP_HEIGHT * w["size"], w["x1"], b + 0.2 * w["size"])
                        for w, b in zip(words, base, strict=True)
                    ]
                )
                left, top, right, bottom = (box[:, [edge]] for edge in range(4))
                across = np.minimum(right, right.T) - np.maximum(left, left.T)
                down = np.minimum(bottom, bottom.T) - np.maximum(top, top.T)
                clash = np.triu((across > 0.3) & (down > 0.3), k=1)
                pairs = [(words[a]["text"], words[b]["text"]) for a, b in np.argwhere(clash)]
                assert not pairs, card.file_stem


@each_layout
class TestOnPaper:
    def test_nothing_stands_nearer_to_the_edge_than_printers_print(
        self, name: str, rendered: Rendered
    ) -> None:
        # A pixel more than the margin is left for anti-aliasing.
        margin = min(side.margin for side in load_layout(name).sides)
        rim = int(margin / 25.4 * DPI) - 1
        for card, data in rendered[name]:
            for pixels in raster_of(data, grey=True):
                grey = luminance(pixels)
                assert grey[rim:-rim, rim:-rim].min() < DARK
                inked = grey < 250
                inked[rim:-rim, rim:-rim] = False
                assert not inked.any(), card.file_stem

    def test_the_check_rule_is_as_long_as_it_says(
        self, name: str, rendered: Rendered, sides_of: SidesOf
    ) -> None:
        for card, data in rendered[name]:
            rules = 0
            shown = with_sides(data, sides_of(card))
            for number, (page, side) in enumerate(shown):
                is_last = number + 1 == len(shown) or shown[number + 1][1] is not side
                said = CHECK_WORDS.search(bare("".join(c["text"] for c in page.chars)))
                assert (said is not None) == ("check-rule" in side.blocks and is_last)
                if said is None:
                    continue
                rules += 1
                length, inches = int(said[1]), int(said[2])
                # The square with its quiet zone stands beside the rule.
                square = code_square(card.check_code).size + QUIET_ZONE
                room = load_layout(name).page[0] - 2 * side.margin - square
                assert length == next(rule for rule in (100, 50, 40, 30) if rule <= room)
                flat = [line for line in page.lines if abs(line["top"] - line["bottom"]) < 0.01]
                (rule,) = [
                    line
                    for line in flat
                    if (line["x1"] - line["x0"]) * POINT == pytest.approx(length, abs=0.02)
                ]
                upright = [
                    (line["x0"] - rule["x0"]) * POINT
                    for line in page.lines
                    if abs(line["x0"] - line["x1"]) < 0.01
                    and abs(line["bottom"] - rule["top"]) < 0.1
                ]
                hanging = [
                    (line["x0"] - rule["x0"]) * POINT
                    for line in page.lines
                    if abs(line["x0"] - line["x1"]) < 0.01 and abs(line["top"] - rule["top"]) < 0.1
                ]
                ticks = [10.0 * tick for tick in range(length // 10 + 1)]
                assert sorted(upright) == pytest.approx(ticks, abs=0.02)
                inch_marks = [25.4 * inch for inch in range(inches + 1)]
                assert sorted(hanging) == pytest.approx(inch_marks, abs=0.02)
            assert rules == 1, "every card carries one"

    def test_a_mono_printer_loses_no_text(self, name: str, rendered: Rendered) -> None:
        for card, data in rendered[name][:2]:
            for number, page in enumerate(pages_of(data)):
                grey = luminance(raster_of(data, grey=True)[number])
                colour = luminance(raster_of(data, grey=False)[number])
                assert (255 - grey).mean() == pytest.approx((255 - colour).mean(), rel=0.05)
                for word in page.extract_words():
                    top, bottom = (round(word[edge] * DPI / 72) for edge in ("top", "bottom"))
                    left, right = (round(word[edge] * DPI / 72) for edge in ("x0", "x1"))
                    patch = grey[top : bottom + 1, left : right + 1]
                    if word["text"] in {".", "·", "–", "-"}:
                        continue
                    assert patch.min() < DARK, (card.file_stem, word["text"])
                    assert patch.max() > LIGHT, (card.file_stem, word["text"])

    def test_ink_covers_little_of_the_paper(self, name: str, rendered: Rendered) -> None:
        """A quiet card: black on white, not white on black."""
        for _, data in rendered[name][:2]:
            for pixels in raster_of(data, grey=True):
                # A page that text runs on to may hold a few lines, the rule and the square.
                assert 0.005 < (luminance(pixels) < DARK).mean() < 0.25
