"""What matplotlib draws on the card's canvas, seen in ink where the numbers say it is."""

import io
import subprocess
import sys
from dataclasses import replace

import numpy as np
import pdfplumber
import pypdfium2  # type: ignore[import-untyped]
import pytest
from numpy.typing import NDArray
from reportlab.pdfgen.canvas import Canvas

from chartgen import pipeline
from chartgen.layout.axes import Frame
from chartgen.layout.placed import Document, Page, Plot
from chartgen.model.shop import Shop
from chartgen.renderers.curves import _trace as trace
from chartgen.renderers.pdf import render_pdf
from chartgen.wording.figure import (
    Dash,
    DotShape,
    PrintedBand,
    PrintedCurve,
    PrintedDot,
    PrintedPanel,
    even_axis,
    log_axis,
)

Pixels = NDArray[np.uint8]
DPI = 200
WIDE, HIGH = 100.0, 80.0
X, Y = log_axis("x", 1.0, 100.0), even_axis("y", 0.0, 10.0)


def plot_of(panel: PrintedPanel) -> Plot:
    return Plot(
        x=10.0, y=10.0, width=80.0, height=60.0, panel=panel, x_grid=(), y_grid=(), meaning="trial"
    )


def drawn(*plots: Plot) -> list[Pixels]:
    """Return each plot on a page of its own, as grey pixels."""
    pages = tuple(Page(width=WIDE, height=HIGH, items=(plot,)) for plot in plots)
    data = render_pdf(Document(title="t", subject="s", pages=pages))
    with pypdfium2.PdfDocument(data) as document:
        rasters = [page.render(scale=DPI / 72, grayscale=True).to_numpy() for page in document]
    return [raster.reshape(raster.shape[:2]).copy() for raster in rasters]


def darkest_near(pixels: Pixels, panel: PrintedPanel, x: float, y: float, reach: int = 1) -> int:
    frame = Frame(x=10.0, y=10.0, width=80.0, height=60.0, panel=panel)
    at_x, at_y = (round(mm / 25.4 * DPI) for mm in frame.at(x, y))
    around = pixels[at_y - reach : at_y + reach + 1, at_x - reach : at_x + reach + 1]
    return int(around.min())


def test_a_curve_is_inked_where_its_numbers_are_and_nowhere_else() -> None:
    points = tuple((x, 2.0 + 3.0 * np.log10(x)) for x in np.geomspace(1.5, 90.0, 60))
    panel = PrintedPanel(title="", x=X, y=Y, curves=(PrintedCurve(parts=(points,)),))
    (pixels,) = drawn(plot_of(panel))
    for x, y in points[::7]:
        assert darkest_near(pixels, panel, x, y) < 60
        assert darkest_near(pixels, panel, x, y + 1.0) > 240
        assert darkest_near(pixels, panel, x, y - 1.0) > 240


def test_a_dashed_curve_has_gaps_and_a_broken_one_a_hole() -> None:
    level = ((1.5, 5.0), (90.0, 5.0))
    panel = PrintedPanel(title="", x=X, y=Y, curves=(PrintedCurve(parts=(level,), dash=Dash.LONG),))
    broken = PrintedCurve(parts=(((1.5, 5.0), (5.0, 5.0)), ((40.0, 5.0), (90.0, 5.0))))
    hole = replace(panel, curves=(broken,))
    dashed, holed = drawn(plot_of(panel), plot_of(hole))
    across = np.geomspace(2.0, 80.0, 200)
    inked = np.array([darkest_near(dashed, panel, x, 5.0, 0) < 128 for x in across])
    assert 0.5 < inked.mean() < 0.9
    assert np.abs(np.diff(inked.astype(int))).sum() > 10
    assert darkest_near(holed, hole, 3.0, 5.0) < 60
    assert darkest_near(holed, hole, 14.0, 5.0) > 240


def test_a_band_is_hatched_inside_its_outline_only() -> None:
    outline = ((3.0, 2.0), (30.0, 2.0), (30.0, 8.0), (3.0, 8.0))
    panel = PrintedPanel(title="", x=X, y=Y, bands=(PrintedBand(outline),))
    (pixels,) = drawn(plot_of(panel))
    inside = [darkest_near(pixels, panel, x, 5.0, 8) for x in (5.0, 10.0, 20.0)]
    outside = [
        darkest_near(pixels, panel, x, y, 8) for x, y in ((1.5, 5.0), (60.0, 5.0), (10.0, 9.2))
    ]
    assert max(inside) < 200
    assert min(outside) > 240


@pytest.mark.parametrize("shape", list(DotShape))
def test_a_dot_stands_at_its_point(shape: DotShape) -> None:
    panel = PrintedPanel(title="", x=X, y=Y, dots=(PrintedDot(at=(10.0, 5.0), shape=shape),))
    (pixels,) = drawn(plot_of(panel))
    assert darkest_near(pixels, panel, 10.0, 5.0, 8) < 100
    assert darkest_near(pixels, panel, 20.0, 5.0, 8) > 240


def test_nothing_is_drawn_outside_the_frame() -> None:
    steep = PrintedCurve(parts=(((0.1, -50.0), (1000.0, 50.0)),))
    panel = PrintedPanel(title="", x=X, y=Y, curves=(steep,))
    (pixels,) = drawn(plot_of(panel))
    edge = round(10.0 / 25.4 * DPI) - 4
    assert pixels[:edge].min() == 255
    assert pixels[:, :edge].min() == 255
    assert pixels[-edge:].min() == 255
    assert pixels[:, -edge:].min() == 255


def test_one_figure_leaves_nothing_on_the_next() -> None:
    full = PrintedPanel(
        title="",
        x=X,
        y=Y,
        curves=(PrintedCurve(parts=(((1.0, 1.0), (90.0, 9.0)),)),),
        dots=(PrintedDot(at=(10.0, 5.0), shape=DotShape.DISC),),
        bands=(PrintedBand(((3.0, 2.0), (30.0, 2.0), (30.0, 8.0))),),
    )
    empty = PrintedPanel(title="", x=X, y=Y)
    alone = drawn(plot_of(empty))[0]
    after = drawn(plot_of(full), plot_of(empty))[1]
    assert np.array_equal(alone, after)


def test_grid_lines_are_lighter_than_curves_and_ticks_stand_at_their_values() -> None:
    panel = PrintedPanel(title="", x=X, y=Y)
    plot = replace(plot_of(panel), x_grid=(10.0,), y_grid=(5.0,))
    (pixels,) = drawn(plot)
    for x, y in ((10.0, 7.3), (30.0, 5.0)):
        assert 60 < darkest_near(pixels, panel, x, y) < 235
    assert darkest_near(pixels, panel, 3.0, 0.12, 1) < 200
    assert darkest_near(pixels, panel, 3.5, 0.12, 1) > 235


def test_curves_stay_apart_in_grey(example: Shop) -> None:
    """No curve is told by colour: the page holds greys only."""
    shop = replace(
        example,
        request=replace(example.request, layouts=("spindle-curves-a5",), materials=("mild-steel",)),
    )
    (finished,) = pipeline.lay_out(pipeline.printed_cards(shop))
    with pypdfium2.PdfDocument(pipeline.render(finished)) as document:
        pixels = document[0].render(scale=1.5).to_numpy().astype(int)
    spread = pixels[..., :3].max(axis=2) - pixels[..., :3].min(axis=2)
    assert spread.max() == 0


def test_the_text_of_a_figure_is_text_in_the_cards_own_font(example: Shop) -> None:
    shop = replace(
        example,
        request=replace(example.request, layouts=("speed-curves-a5",), materials=("c45",)),
    )
    (finished,) = pipeline.lay_out(pipeline.printed_cards(shop))
    with pdfplumber.open(io.BytesIO(pipeline.render(finished))) as pdf:
        page = pdf.pages[0]
        words = {word["text"] for word in page.extract_words()}
        fonts = {char["fontname"].split("+")[-1] for char in page.chars}
        assert not page.images
    assert {"carbide", "start", "m/min", "rev/min", "1000"} <= words
    assert all(font.startswith("IBMPlexSans") for font in fonts)


@pytest.mark.parametrize("layout", ["window-curves-a5", "spindle-curves-a5"])
def test_the_same_shop_gives_the_same_bytes_in_any_order(example: Shop, layout: str) -> None:
    keys = ("mild-steel", "c45")
    renderings = []
    for order in (keys, keys[::-1]):
        request = replace(example.request, layouts=(layout,), materials=order)
        cards = pipeline.lay_out(pipeline.printed_cards(replace(example, request=request)))
        renderings.append({card.file_name: pipeline.render(card) for card in cards})
    assert renderings[0] == renderings[1]


def test_a_card_without_curves_never_loads_matplotlib() -> None:
    """It would double a cold start."""
    code = (
        "import sys; from chartgen import pipeline; s = pipeline.describe(None, '');"
        "c = pipeline.lay_out(pipeline.printed_cards(s)); pipeline.render(c[0]);"
        "sys.exit('matplotlib' in sys.modules)"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0


def test_a_path_that_no_figure_needs_is_refused() -> None:
    """A curve of a kind matplotlib could ask for is never drawn as something else."""
    vertices = np.array([[1.0, 1.0], [2.0, 2.0], [3.0, 1.0]])
    with pytest.raises(NotImplementedError, match="path code 3"):
        trace(Canvas(io.BytesIO()).beginPath(), vertices, np.array([1, 3, 3]))
