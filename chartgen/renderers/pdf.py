"""A document -> PDF bytes: the same bytes for the same document.

Built to the rules of PDF/A-3 (ISO 19005-3): what the file says of itself, its colours, its
attachments and its structure have a file each beside this one.
"""

import io
from collections.abc import Callable
from itertools import zip_longest

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
    Page,
    Panel,
    Plot,
    Rule,
    Text,
)
from chartgen.layout.primitives import Blocks, Disc, Ring, Shape, Stroke
from chartgen.renderers.attachments import attach
from chartgen.renderers.compact_file import write_compactly
from chartgen.renderers.fonts import font_name, measure, runs
from chartgen.renderers.metadata import describe_file
from chartgen.renderers.output_intent import add_output_intent
from chartgen.renderers.structure import Structure

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
    rl_config.useA85 = 0  # plain binary streams: a fifth smaller, and no time spent on it
    buffer = io.BytesIO()
    first = document.pages[0]
    canvas = Canvas(
        buffer,
        pagesize=(first.width / POINT, first.height / POINT),
        invariant=1,
        pdfVersion=(1, 7),
        initialFontName=font_name(Face.REGULAR),
        pageCompression=1,
        lang=document.language,
    )
    describe_file(canvas, document)
    if len(document.pages) > 1:
        canvas.setViewerPreference("Duplex", "DuplexFlipShortEdge")
    add_output_intent(canvas)
    attach(canvas, document.attachments)
    structure = Structure(canvas)
    for number, page in enumerate(document.pages):
        for entry, heading in enumerate(document.outline):
            if heading.page == number:
                canvas.bookmarkPage(f"heading {entry}")
                canvas.addOutlineEntry(heading.title, f"heading {entry}", level=heading.level)
        _draw_page(canvas, page, structure)
    structure.write()
    write_compactly(canvas)
    canvas.save()
    return buffer.getvalue()


def _draw_page(canvas: Canvas, page: Page, structure: Structure) -> None:
    width, height = page.width / POINT, page.height / POINT
    canvas.setPageSize((width, height))
    canvas.setTrimBox((0, 0, width, height))
    structure.begin_page(page.height)
    # The page is described from its top left corner in mm, y down.
    for item, following in zip_longest(page.items, page.items[1:]):
        structure.lead_to(item)
        # Read aloud, the words of two lines are kept apart by a space and by nothing else.
        runs_on = bool(item.tags) and following is not None and following.tags == item.tags
        _draw(canvas, item, page.height, " " if runs_on else "")
    structure.end_page()
    canvas.showPage()
    structure.close_page()


def _draw(canvas: Canvas, item: Item, page_height: float, end: str) -> None:
    match item:
        case Text():
            _draw_text(canvas, item, page_height, end)
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


def _draw_text(canvas: Canvas, item: Text, page_height: float, end: str) -> None:
    width = measure(item.text, item.face, item.size)
    shift = {Align.LEFT: 0.0, Align.RIGHT: -width, Align.CENTRE: -width / 2.0}[item.align]
    colour = _PAPER if item.paper else _INK
    # Almost every text is ink after ink: said once, it need not be said again.
    if canvas._fillColorObj is not colour:  # noqa: SLF001 - reportlab has no way to ask
        canvas.setFillColor(colour)
    text = canvas.beginText((item.x + shift) / POINT, (page_height - item.y) / POINT)
    for name, part in runs(item.text + end, item.face):
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
            case Blocks():
                _fill_blocks(canvas, primitive, left, bottom, scale)


def _fill_blocks(canvas: Canvas, blocks: Blocks, left: float, bottom: float, size: float) -> None:
    """Fill squares in whole numbers of their own grid: exact edges, and few bytes."""
    canvas.saveState()
    canvas.setFillColor(_COLOURS[blocks.fill])
    module = size / blocks.count
    canvas.transform(module, 0, 0, module, left, bottom)
    runs = " ".join(f"{x} {y} {length} 1 re" for x, y, length in blocks.runs)
    canvas._code.append(f"{runs} f")  # noqa: SLF001 - one path at once, not a call a run
    canvas.restoreState()


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
