"""A document -> PDF bytes: the same bytes for the same document."""

import io
from collections.abc import Callable, Iterable

from reportlab import rl_config
from reportlab.lib.colors import Color
from reportlab.pdfgen.canvas import Canvas

from chartgen.layout.legibility import POINT
from chartgen.layout.placed import (
    Align,
    Document,
    Drawing,
    Face,
    Item,
    Mounted,
    Page,
    Panel,
    Plot,
    Rule,
    Text,
)
from chartgen.layout.primitives import Disc, Ring, Shape, Stroke
from chartgen.renderers.fonts import font_name, measure, runs
from chartgen.renderers.long_run import Signs, pack_last_page
from chartgen.wording.sheet import Flip

_INK = Color(0, 0, 0)
_PAPER = Color(1, 1, 1)
# Screen values of the ISO 3864-4 colours; every sign still reads in mono.
_COLOURS = {
    "ink": _INK,
    "paper": _PAPER,
    "mandatory": Color(0x00 / 255, 0x53 / 255, 0x87 / 255),
    "prohibition": Color(0x9B / 255, 0x24 / 255, 0x23 / 255),
    "warning": Color(0xF9 / 255, 0xA8 / 255, 0x00 / 255),
}


def render_pdf(document: Document) -> bytes:
    """Return the document as a PDF 1.7 file, all fonts embedded, print scaling off."""
    duplex = None
    if len(document.pages) > 1:
        duplex = _like_a_book(document.pages[0])
    return render_pages(document.title, document.subject, document.pages, duplex)


def render_pages(title: str, subject: str, pages: Iterable[Page], duplex: Flip | None) -> bytes:
    """Return pages as a PDF file; they may be made while it is written, one at a time."""
    rl_config.useA85 = 0  # plain binary streams: a fifth smaller, and no time spent on it
    buffer = io.BytesIO()
    canvas = Canvas(
        buffer,
        invariant=1,
        pdfVersion=(1, 7),
        initialFontName=font_name(Face.REGULAR),
        pageCompression=1,
        lang="en-GB",
    )
    canvas.setTitle(title)
    canvas.setSubject(subject)
    canvas.setAuthor("chartgen")
    canvas.setCreator("chartgen")
    canvas.setViewerPreference("PrintScaling", "None")
    canvas.setViewerPreference("DisplayDocTitle", "true")
    if duplex is not None:
        canvas.setViewerPreference("Duplex", f"DuplexFlip{duplex.value.title()}Edge")
    signs = Signs(canvas, _draw_drawing)
    for page in pages:
        _draw_page(canvas, page, signs)
    canvas.save()
    return buffer.getvalue()


def _like_a_book(page: Page) -> Flip:
    """Return the edge about which a page turns over like that of a book: its upright one."""
    return Flip.SHORT if page.width > page.height else Flip.LONG


def _draw_page(canvas: Canvas, page: Page, signs: Signs) -> None:
    for mounted in page.mounted:
        for item in mounted.page.items:
            if isinstance(item, Drawing):
                signs.describe(item)
    width, height = page.width / POINT, page.height / POINT
    canvas.setPageSize((width, height))
    canvas.setTrimBox((0, 0, width, height))
    # Nothing is printed up to the edge, so nothing has to bleed over it.
    canvas.setBleedBox((0, 0, width, height))
    for mounted in page.mounted:
        _draw_mounted(canvas, mounted, page.height, signs)
    # The page is described from its top left corner in mm, y down.
    for item in page.items:
        _draw(canvas, item, page.height)
    canvas.showPage()
    if page.mounted:
        pack_last_page(canvas)


def _draw_mounted(canvas: Canvas, mounted: Mounted, sheet_height: float, signs: Signs) -> None:
    """Draw a page on the sheet it stands on, turned with everything on it."""
    a, b, c, d, e, f = mounted.axes
    height = mounted.page.height
    canvas.saveState()
    # Both pages are described y down and drawn y up: v becomes height - V, y sheet - Y.
    canvas.transform(
        a, -b, -c, d, (e + c * height) / POINT, (sheet_height - f - d * height) / POINT
    )
    for item in mounted.page.items:
        if isinstance(item, Drawing):
            signs.place(item, height)
        else:
            _draw(canvas, item, height)
    canvas.restoreState()


def _draw(canvas: Canvas, item: Item, page_height: float) -> None:
    match item:
        case Text():
            _draw_text(canvas, item, page_height)
        case Rule():
            canvas.setLineWidth(item.weight)
            canvas.setStrokeColor(_INK)
            canvas.line(
                item.x1 / POINT,
                (page_height - item.y1) / POINT,
                item.x2 / POINT,
                (page_height - item.y2) / POINT,
            )
        case Panel():
            canvas.setFillColor(_PAPER if item.paper else _INK)
            canvas.rect(
                item.x / POINT,
                (page_height - item.y - item.height) / POINT,
                item.width / POINT,
                item.height / POINT,
                stroke=0,
                fill=1,
            )
        case Plot():
            from chartgen.renderers.curves import draw_plot

            draw_plot(canvas, item, page_height)
        case Drawing():
            _draw_drawing(canvas, item, page_height)


def _draw_text(canvas: Canvas, item: Text, page_height: float) -> None:
    left = item.x
    if item.align is not Align.LEFT:
        width = measure(item.text, item.face, item.size)
        left -= width if item.align is Align.RIGHT else width / 2.0
    text = canvas.beginText(left / POINT, (page_height - item.y) / POINT)
    text.setFillColor(_PAPER if item.paper else _INK)
    for name, part in runs(item.text, item.face):
        text.setFont(name, item.size)
        text.textOut(part)
    canvas.drawText(text)


def _draw_drawing(canvas: Canvas, item: Drawing, page_height: float) -> None:
    scale = item.size / POINT
    left, bottom = item.x / POINT, (page_height - item.y - item.size) / POINT

    def at(x: float, y: float) -> tuple[float, float]:
        return left + x * scale, bottom + y * scale

    for primitive in item.primitives:
        match primitive:
            case Disc(x, y, r, fill):
                canvas.setFillColor(_COLOURS[fill])
                canvas.circle(*at(x, y), r * scale, stroke=0, fill=1)
            case Ring(x, y, r, width, ink):
                canvas.setStrokeColor(_COLOURS[ink])
                canvas.setLineWidth(width * scale)
                canvas.circle(*at(x, y), (r - width / 2.0) * scale, stroke=1, fill=0)
            case Stroke(points, width, ink):
                canvas.setStrokeColor(_COLOURS[ink])
                canvas.setLineWidth(width * scale)
                canvas.setLineCap(1)
                canvas.setLineJoin(1)
                canvas.drawPath(_path(canvas, points, at, close=False), stroke=1, fill=0)
                canvas.setLineCap(0)
                canvas.setLineJoin(0)
            case Shape(points, fill):
                canvas.setFillColor(_COLOURS[fill])
                canvas.drawPath(_path(canvas, points, at, close=True), stroke=0, fill=1)


def _path(
    canvas: Canvas,
    points: tuple[tuple[float, float], ...],
    at: Callable[[float, float], tuple[float, float]],
    *,
    close: bool,
) -> object:
    path = canvas.beginPath()
    path.moveTo(*at(*points[0]))
    for point in points[1:]:
        path.lineTo(*at(*point))
    if close:
        path.close()
    return path
