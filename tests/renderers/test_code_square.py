"""The check code as a square, read back from the page as a camera sees it.

zxing-cpp, an independent reader, finds it in pages that pdfium has drawn.
"""

import re
from functools import lru_cache

import numpy as np
import pypdfium2  # type: ignore[import-untyped]
import pytest
import zxingcpp
from PIL import Image

from chartgen.layout.code_square import MODULE, QUIET_ZONE, code_square
from chartgen.layout.layout_file import (
    class_layout_names,
    job_layout_names,
    layout_names,
    load_layout,
)
from chartgen.layout.legibility import POINT
from chartgen.wording.card import PrintedCard

Rendered = dict[str, list[tuple[PrintedCard, bytes]]]
# By module: the tests of one layout stand together, so that its pages are read once and let go.
each_layout = pytest.mark.parametrize(
    "name", [*layout_names(), *job_layout_names(), *class_layout_names()], scope="module"
)
ISO_MODULES_OF_VERSION_1 = 21
A4_LANDSCAPE = 297.0  # mm


@lru_cache(maxsize=8)  # the pages of one layout, not of all
def pages_of(data: bytes, dpi: int) -> list[Image.Image]:
    with pypdfium2.PdfDocument(data) as document:
        return [page.render(scale=dpi / 72, grayscale=True).to_pil() for page in document]


def read(image: Image.Image) -> list[str]:
    found = zxingcpp.read_barcodes(image)
    assert {str(code.format) for code in found} <= {"QR Code", "QRCode"}
    return [code.text for code in found]


def noisy(image: Image.Image, *, seed: int) -> Image.Image:
    """Return the page as a poor camera gives it: grain, and glare that lifts the blacks."""
    grain = np.random.default_rng(seed).normal(0.0, 15.0, (image.height, image.width))
    return Image.fromarray(
        np.clip(60.0 + 0.7 * np.asarray(image, dtype=float) + grain, 0, 255).astype(np.uint8)
    )


@each_layout
@pytest.mark.parametrize("dpi", [150, 300])
def test_every_card_shows_its_check_code_once_as_a_square(
    name: str, dpi: int, rendered: Rendered
) -> None:
    for card, data in rendered[name][:3]:
        found = [text for page in pages_of(data, dpi) for text in read(page)]
        assert found == [f"CHARTGEN {card.check_code}"]


@each_layout
@pytest.mark.parametrize(("dpi", "turn"), [(150, 7), (150, 214), (300, 90)])
def test_it_is_read_turned_and_in_noise(name: str, dpi: int, turn: int, rendered: Rendered) -> None:
    card, data = rendered[name][0]
    page = pages_of(data, dpi)[-1]
    layout = load_layout(name)
    if layout.page[0] > A4_LANDSCAPE or layout.card == "answer-key":
        # Nobody photographs a whole wall sheet, or a key, for its square: the telephone is held
        # to a corner.
        page = page.crop((page.width // 2, page.height // 2, page.width, page.height))
    page = page.rotate(turn, expand=True, fillcolor=255)
    assert read(noisy(page, seed=turn)) == [f"CHARTGEN {card.check_code}"]


def test_another_code_makes_another_square() -> None:
    assert code_square("7Q2F-K9MD").primitives != code_square("7Q2F-K9ME").primitives


# ISO/IEC 18004: version 1 has 21 modules a side and at level M holds 20 signs of the
# alphanumeric mode; 18 are needed, so no larger symbol may be drawn.
def test_it_is_the_smallest_symbol_with_modules_of_half_a_millimetre() -> None:
    square = code_square("7Q2F-K9MD")
    assert MODULE >= 0.5
    assert square.size == pytest.approx(ISO_MODULES_OF_VERSION_1 * MODULE)


# ISO/IEC 18004: four modules of quiet zone all round.
@each_layout
def test_nothing_is_printed_in_its_quiet_zone(name: str, rendered: Rendered) -> None:
    dpi = 300
    for _, data in rendered[name][:1]:
        with pypdfium2.PdfDocument(data) as document:
            page = document[len(document) - 1]
            image = page.render(scale=dpi / 72, grayscale=True).to_pil()
        (code,) = zxingcpp.read_barcodes(image)
        corners = [
            (point.x, point.y)
            for point in (
                code.position.top_left,
                code.position.top_right,
                code.position.bottom_left,
                code.position.bottom_right,
            )
        ]
        xs, ys = zip(*corners, strict=True)
        pixel = 25.4 / dpi
        side = (max(xs) - min(xs)) * pixel
        assert side == pytest.approx(ISO_MODULES_OF_VERSION_1 * MODULE, abs=3 * pixel)
        quiet = round(QUIET_ZONE / pixel) - 3
        pixels = np.asarray(image)
        around = pixels[min(ys) - quiet : max(ys) + quiet, min(xs) - quiet : max(xs) + quiet].copy()
        edge = quiet - 3
        around[edge:-edge, edge:-edge] = 255
        assert around.min() > 200


@each_layout
def test_words_beside_it_say_what_it_is(name: str, rendered: Rendered) -> None:
    for card, data in rendered[name][:1]:
        with pypdfium2.PdfDocument(data) as document:
            text = document[len(document) - 1].get_textpage().get_text_range()
        said = re.sub(r"\s+", " ", text)
        assert (
            f"The square says CHARTGEN {card.check_code}, the code of this card's inputs." in said
        )


def test_a_square_is_no_wider_than_its_grid() -> None:
    square = code_square("0000-0000")
    (blocks,) = square.primitives
    assert all(
        column >= 0 and column + length <= blocks.count and 0 <= row < blocks.count  # type: ignore[union-attr]
        for column, row, length in blocks.runs  # type: ignore[union-attr]
    )
    assert square.size / POINT > 0.0
