"""Every card of every layout: read at its distance, whole, in its place, on any printer."""

import io
from collections.abc import Callable, Iterator
from functools import lru_cache
from itertools import pairwise
from typing import Any

import pdfplumber
import pikepdf
import pytest
from fontTools.ttLib import TTFont  # type: ignore[import-untyped]
from pdfplumber.page import Page

from chartgen.layout.compose import compose
from chartgen.layout.layout_file import (
    Side,
    class_layout_names,
    job_layout_names,
    layout_names,
    load_layout,
)
from chartgen.layout.legibility import (
    NUMBERS_ARC_MINUTES,
    POINT,
    cap_height,
    size_for_cap,
)
from chartgen.layout.placed import Face, Plot
from chartgen.renderers.fonts import font_name, measure
from chartgen.wording.card import PrintedCard
from chartgen.wording.figure import PrintedCurves
from chartgen.wording.printed import PrintedCell, PrintedChart, PrintedTable

Rendered = dict[str, list[tuple[PrintedCard, bytes]]]
SidesOf = Callable[[PrintedCard], list[Side]]
# By module: the tests of one layout stand together, so that its pages are read once and let go.
each_layout = pytest.mark.parametrize(
    "name", [*layout_names(), *job_layout_names(), *class_layout_names()], scope="module"
)
of_charts = [n for n in layout_names() if load_layout(n).card in {"lathe-chart", "overview"}]
of_curves = [n for n in layout_names() if load_layout(n).card.endswith("-curves")]
WHITE = (1.0, 1.0, 1.0)
# WCAG 2.2, success criterion 1.4.6 (AAA).
LEAST_CONTRAST = 7.0


@lru_cache(maxsize=40)  # the pages of one layout, not of all
def pages_of(data: bytes) -> list[Page]:
    return list(pdfplumber.open(io.BytesIO(data)).pages)


def numbers_size(side: Side) -> float:
    cap = cap_height(distance=side.reading_distance, arc_minutes=NUMBERS_ARC_MINUTES)
    return size_for_cap(cap)


def rgb(colour: Any) -> tuple[float, ...]:  # noqa: ANN401 - a number or a tuple
    parts = tuple(colour) if isinstance(colour, tuple | list) else (colour,)
    assert len(parts) in {1, 3}, "a colour that is neither grey nor red, green, blue"
    return tuple(float(part) for part in (parts * 3 if len(parts) == 1 else parts))


def contrast(one: tuple[float, ...], other: tuple[float, ...]) -> float:
    """Return the contrast ratio of two colours as WCAG 2.2 defines it."""

    def luminance(colour: tuple[float, ...]) -> float:
        linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in colour]
        return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]

    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def behind(char: dict[str, Any], page: Page) -> tuple[float, ...]:
    """Return the colour of the last filled rectangle drawn under a character, or of paper."""
    x = (char["x0"] + char["x1"]) / 2
    y = (char["top"] + char["bottom"]) / 2
    found = WHITE
    for rect in page.rects:
        if rect["fill"] and rect["x0"] <= x <= rect["x1"] and rect["top"] <= y <= rect["bottom"]:
            found = rgb(rect["non_stroking_color"])
    return found


def test_contrast_is_that_of_the_published_examples() -> None:
    # WCAG 2.2: black on white is 21:1; #767676 on white is the well-known least grey for 4.5:1.
    assert contrast((0, 0, 0), WHITE) == pytest.approx(21.0)
    assert contrast((0x76 / 255,) * 3, WHITE) == pytest.approx(4.54, abs=0.005)


def words_of(cell: PrintedCell, parts: tuple[str, ...]) -> list[str]:
    if cell.way_out:
        return ["–", *cell.way_out.split(), *([cell.sign] if cell.sign else [])]
    shown = {
        "speed": [cell.speed, cell.position],
        "feed": [cell.feed],
        "pace": [cell.pace],
        "sign": [cell.sign],
    }
    return [word for part in parts for word in shown[part] if word]


def table_rows(page: Page, chart: PrintedChart, size: float) -> list[list[dict[str, Any]]]:
    """Return the words of each row of a table, from left to right, the diameter first."""
    words = page.extract_words(extra_attrs=["size", "fontname"], x_tolerance=1.5)
    bold = [w for w in words if w["fontname"].endswith("Bold") and w["size"] >= size - 0.01]
    stubs = [w for w in bold if w["text"] in chart.stub]
    assert [w["text"] for w in stubs] == list(chart.stub)
    rows = []
    for stub in stubs:
        base = stub["bottom"] - 0.275 * stub["size"]
        on_line = [w for w in words if abs(w["bottom"] - 0.275 * w["size"] - base) < 0.5]
        rows.append(sorted(on_line, key=lambda word: word["x0"]))
    return rows


class TestTables:
    @pytest.mark.parametrize("name", of_charts)
    def test_every_cell_is_whole_and_keeps_to_its_column(
        self, name: str, rendered: Rendered, sides_of: SidesOf
    ) -> None:
        layout = load_layout(name)
        for card, data in rendered[name]:
            pages = zip(pages_of(data), sides_of(card), strict=True)
            page, side = next((p, s) for p, s in pages if "table" in s.blocks)
            lefts: list[list[float]] = [[] for _ in card.chart.columns]
            rights: list[list[float]] = [[] for _ in card.chart.columns]
            rows = table_rows(page, card.chart, numbers_size(side))
            for words, cells in zip(rows, card.chart.rows, strict=True):
                rest = words[1:]
                for number, cell in enumerate(cells):
                    wanted = words_of(cell, layout.cell)
                    mine, rest = rest[: len(wanted)], rest[len(wanted) :]
                    assert [word["text"] for word in mine] == wanted, card.file_stem
                    lefts[number].append(min(word["x0"] for word in mine))
                    rights[number].append(max(word["x1"] for word in mine))
                assert not rest
            gap = 0.4 * numbers_size(side)
            for (_, right), (left, _) in pairwise(zip(lefts, rights, strict=True)):
                assert min(left) - max(right) >= gap, card.file_stem

    def test_every_number_of_a_plain_table_has_the_height_of_the_numbers(
        self, rendered: Rendered, sides_of: SidesOf
    ) -> None:
        seen = 0
        for card, data in (one for cards in rendered.values() for one in cards):
            if not isinstance(card.chart, PrintedTable):
                continue
            page, side = pages_of(data)[0], sides_of(card)[0]
            words = page.extract_words(extra_attrs=["size"])
            large = [w["text"] for w in words if w["size"] >= numbers_size(side) - 0.01]
            for word in (w for row in card.chart.rows for text in row for w in text.split()):
                if any(sign.isdigit() for sign in word):
                    assert word in large, (card.file_stem, word)
                    large.remove(word)
                    seen += 1
        assert seen > 100


class TestFigures:
    @pytest.mark.parametrize("name", of_curves)
    def test_every_number_of_an_axis_has_the_height_of_the_numbers(
        self, name: str, rendered: Rendered, sides_of: SidesOf
    ) -> None:
        for card, data in rendered[name]:
            assert isinstance(card.chart, PrintedCurves)
            page, side = pages_of(data)[0], sides_of(card)[0]
            assert "figure" in side.blocks
            front = compose(card, load_layout(name), measure).pages[0]
            plots = [item for item in front.items if isinstance(item, Plot)]
            assert len(plots) == len(card.chart.panels)
            words = page.extract_words(extra_attrs=["size"])
            found = 0
            for plot in plots:
                ticks = {text for axis in (plot.panel.x, plot.panel.y) for _, text, _ in axis.ticks}
                for word in (word for word in words if word["text"] in ticks):
                    left, middle = (word["x0"] * POINT, (word["top"] + word["bottom"]) / 2 * POINT)
                    is_below = 0.0 < middle - plot.y - plot.height < 8.0
                    is_before = 0.0 < plot.x - left < 25.0 and plot.y < middle
                    if is_below or (is_before and middle < plot.y + plot.height):
                        found += 1
                        assert word["size"] >= numbers_size(side) - 0.01, (card.file_stem, word)
            assert found >= 4

    @pytest.mark.parametrize("name", of_curves)
    def test_curves_of_a_panel_are_told_apart_without_colour(
        self, name: str, rendered: Rendered
    ) -> None:
        """In grey nothing changes, for there is no colour; each curve has a dash of its own."""
        for card, data in rendered[name]:
            assert isinstance(card.chart, PrintedCurves)
            for panel in card.chart.panels:
                # A fine or bold line is told by its weight.
                dashes = [c.dash for c in panel.curves if not c.fine and not c.bold]
                assert len(set(dashes)) == len(dashes), (card.file_stem, panel.title)
            for page in pages_of(data)[:1]:
                for drawn in (*page.lines, *page.curves, *page.rects):
                    for kind in ("stroking_color", "non_stroking_color"):
                        if drawn[kind] is not None:
                            assert len(set(rgb(drawn[kind]))) == 1, "a hue is lost in grey"


@each_layout
class TestEverywhere:
    def test_all_text_stands_out_from_what_is_behind_it(
        self, name: str, rendered: Rendered
    ) -> None:
        for card, data in rendered[name]:
            for page in pages_of(data):
                for char in page.chars:
                    ratio = contrast(rgb(char["non_stroking_color"]), behind(char, page))
                    assert ratio >= LEAST_CONTRAST, (card.file_stem, char["text"])

    def test_no_text_and_no_line_is_nearer_to_the_edge_than_its_side_allows(
        self, name: str, rendered: Rendered, sides_of: SidesOf
    ) -> None:
        for card, data in rendered[name]:
            for page, side in zip(pages_of(data), sides_of(card), strict=True):
                least = side.margin / POINT
                # The box of a character is that of its font, above and below the ink.
                boxes = [
                    (c["x0"], c["top"] + 0.1 * c["size"], c["x1"], c["bottom"] - 0.1 * c["size"])
                    for c in page.chars
                    if c["text"].strip()
                ]
                # What a figure draws is cut off at its frame, which a path alone does not tell.
                drawn = () if "figure" in side.blocks else (*page.lines, *page.rects, *page.curves)
                boxes += [(o["x0"], o["top"], o["x1"], o["bottom"]) for o in drawn]
                # A line is half its weight wider than its middle.
                low = least - 0.6
                assert min(min(box[:2]) for box in boxes) >= low, card.file_stem
                assert max(box[2] for box in boxes) <= float(page.width) - low, card.file_stem
                assert max(box[3] for box in boxes) <= float(page.height) - low, card.file_stem

    def test_no_sign_is_missing_from_its_font(self, name: str, rendered: Rendered) -> None:
        """A sign that a font lacks is drawn as glyph 0 or as an empty one."""
        for card, data in rendered[name][:4]:
            with pikepdf.open(io.BytesIO(data)) as pdf:
                used = 0
                for page in pdf.pages:
                    for glyph in glyphs_of(page):
                        assert glyph != 0, card.file_stem
                        used += 1
                assert used > 200


def glyphs_of(page: pikepdf.Page) -> Iterator[int]:
    """Yield the number in its font of each glyph that a page draws."""
    maps = {}
    for key, font in page.resources["/Font"].items():
        inside = TTFont(io.BytesIO(font["/FontDescriptor"]["/FontFile2"].read_bytes()))
        table = inside["cmap"].tables[0].cmap
        shapes, blank = inside["glyf"], inside["cmap"].tables[0].cmap.get(ord(" "))
        maps[key] = {
            # An empty glyph that is not the space stands for a sign the font does not have.
            code: inside.getGlyphID(glyph)
            if shapes[glyph].numberOfContours or glyph == blank
            else 0
            for code, glyph in table.items()
        }
    chosen: dict[int, int] = {}
    for operands, operator in pikepdf.parse_content_stream(page):
        if str(operator) == "Tf":
            chosen = maps[str(operands[0])]
        elif str(operator) == "Tj":
            yield from (chosen.get(code, 0) for code in bytes(operands[0]))
        assert str(operator) not in {"TJ", "'", '"'}, "text drawn in a way not looked at here"


def test_a_glyph_that_is_missing_would_be_seen() -> None:
    """The check above sees what reportlab prints for a sign its font does not have."""
    from reportlab.pdfgen.canvas import Canvas  # noqa: PLC0415 - one test draws by itself

    file = io.BytesIO()
    font = font_name(Face.REGULAR)
    canvas = Canvas(file, initialFontName=font)
    canvas.setFont(font, 12)
    canvas.drawString(50, 50, "Ø 25 \N{SNOWMAN}")
    canvas.save()
    with pikepdf.open(file) as pdf:
        assert 0 in set(glyphs_of(pdf.pages[0]))
