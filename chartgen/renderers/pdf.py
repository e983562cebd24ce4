"""A document -> PDF bytes: the same bytes for the same document.

Built to the rules of PDF/A-3 (ISO 19005-3): what the file says of itself, its colours, its
attachments and its structure have a file each beside this one.
"""

import io
from collections.abc import Callable, Iterable
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
    Mounted,
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
from chartgen.renderers.long_run import Signs, pack_last_page
from chartgen.renderers.metadata import describe_file
from chartgen.renderers.output_intent import add_output_intent
from chartgen.renderers.structure import Structure
from chartgen.wording.language import ENGLISH, TAGS
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
    return _rendered(document, document.pages, duplex, is_archive=True)


def render_pages(
    title: str,
    subject: str,
    pages: Iterable[Page],
    duplex: Flip | None,
    language: str = TAGS[ENGLISH],
) -> bytes:
    """Return pages as a PDF file; they may be made while it is written, one at a time.

    It carries nothing, and makes no claim to be an archive: its rules are not gone through.
    """
    about = Document(title=title, subject=subject, pages=(), language=language)
    return _rendered(about, pages, duplex, is_archive=False)


def _rendered(
    about: Document, pages: Iterable[Page], duplex: Flip | None, *, is_archive: bool
) -> bytes:
    rl_config.useA85 = 0  # plain binary streams: a fifth smaller, and no time spent on it
    buffer = io.BytesIO()
    canvas = Canvas(
        buffer,
        invariant=1,
        pdfVersion=(1, 7),
        initialFontName=font_name(Face.REGULAR),
        pageCompression=1,
        lang=about.language,
    )
    describe_file(canvas, about, is_archive=is_archive)
    if duplex is not None:
        canvas.setViewerPreference("Duplex", f"DuplexFlip{duplex.value.title()}Edge")
    signs = Signs(canvas, _draw_drawing)
    add_output_intent(canvas)
    attach(canvas, about.attachments)
    structure = Structure(canvas)
    for number, page in enumerate(pages):
        for entry, heading in enumerate(about.outline):
            if heading.page == number:
                canvas.bookmarkPage(f"heading {entry}")
                canvas.addOutlineEntry(heading.title, f"heading {entry}", level=heading.level)
        _draw_page(canvas, page, signs, structure)
    structure.write()
    write_compactly(canvas)
    canvas.save()
    return buffer.getvalue()


def _like_a_book(page: Page) -> Flip:
    """Return the edge about which a page turns over like that of a book: its upright one."""
    return Flip.SHORT if page.width > page.height else Flip.LONG


def _draw_page(canvas: Canvas, page: Page, signs: Signs, structure: Structure) -> None:
    for mounted in page.mounted:
        for item in mounted.page.items:
            if isinstance(item, Drawing):
                signs.describe(item)
    width, height = page.width / POINT, page.height / POINT
    canvas.setPageSize((width, height))
    canvas.setTrimBox((0, 0, width, height))
    # Nothing is printed up to the edge, so nothing has to bleed over it.
    canvas.setBleedBox((0, 0, width, height))
    structure.begin_page(page.height)
    for mounted in page.mounted:
        _draw_mounted(canvas, mounted, page.height, signs, structure)
    # The page is described from its top left corner in mm, y down.
    for item, end in _with_ends(page):
        structure.lead_to(item)
        _draw(canvas, item, page.height, end)
    structure.end_stretch()
    canvas.showPage()
    structure.close_page()
    if page.mounted:
        pack_last_page(canvas)


def _with_ends(page: Page) -> Iterable[tuple[Item, str]]:
    """Return each item with what ends it: a space where its part goes on in the next.

    Read aloud, the words of two lines are kept apart by that and by nothing else.
    """
    for item, following in zip_longest(page.items, page.items[1:]):
        runs_on = bool(item.tags) and following is not None and following.tags == item.tags
        yield item, " " if runs_on else ""


def _draw_mounted(
    canvas: Canvas, mounted: Mounted, sheet_height: float, signs: Signs, structure: Structure
) -> None:
    """Draw a page on the sheet it stands on, turned with everything on it."""
    a, b, c, d, e, f = mounted.axes
    height = mounted.page.height
    canvas.saveState()
    # Both pages are described y down and drawn y up: v becomes height - V, y sheet - Y.
    canvas.transform(
        a, -b, -c, d, (e + c * height) / POINT, (sheet_height - f - d * height) / POINT
    )
    for item, end in _with_ends(mounted.page):
        structure.lead_to(item, mounted.axes)
        if isinstance(item, Drawing):
            signs.place(item, height)
        else:
            _draw(canvas, item, height, end)
    # The next card on the sheet is another, though it may begin with the same words.
    structure.end_stretch()
    canvas.restoreState()


def _draw(canvas: Canvas, item: Item, page_height: float, end: str) -> None:
    match item:
        case Text():
            _draw_text(canvas, item, page_height, end)
        case Rule():
            canvas.setLineWidth(item.weight)
            canvas.setStrokeColor(_INK)
            if item.dash:
                canvas.setDash(list(item.dash))
            canvas.line(
                item.x1 / POINT,
                (page_height - item.y1) / POINT,
                item.x2 / POINT,
                (page_height - item.y2) / POINT,
            )
            if item.dash:
                canvas.setDash()
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
