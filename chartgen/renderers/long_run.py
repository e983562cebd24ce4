"""What keeps a long run of sheets quick and small: signs described once, pages packed at once."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from reportlab.pdfbase.pdfdoc import (
    PDFArray,
    PDFDictionary,
    PDFName,
    PDFStream,
    PDFZCompress,
)
from reportlab.pdfgen.canvas import Canvas

from chartgen.layout.legibility import POINT
from chartgen.layout.placed import Drawing

if TYPE_CHECKING:
    from chartgen.layout.primitives import Blocks, Primitive

_UNITS = 100.0
"""Side of a described sign, in units of its own: enough for the digits of a file."""
_BEYOND = 10.0
"""How far the ends of strokes may stand out of it."""

DrawSign = Callable[[Canvas, Drawing, float], None]


class Signs:
    """The drawings of one file: each is described at its first use and then only placed."""

    def __init__(self, canvas: Canvas, draw: DrawSign) -> None:
        self._canvas = canvas
        self._draw = draw
        # By identity, which is quick; held here, so that no other can take it over.
        self._described: dict[int, tuple[tuple[Primitive | Blocks, ...], str]] = {}

    def describe(self, item: Drawing) -> None:
        """Describe a drawing if it is new; only between pages."""
        if id(item.primitives) in self._described:
            return
        name = f"sign{len(self._described) + 1}"
        self._described[id(item.primitives)] = item.primitives, name
        beyond = _UNITS + _BEYOND
        self._canvas.beginForm(name, -_BEYOND, -_BEYOND, beyond, beyond)
        side = _UNITS * POINT
        upright = Drawing(x=0.0, y=0.0, size=side, primitives=item.primitives, meaning="")
        self._draw(self._canvas, upright, side)
        self._canvas.endForm()

    def place(self, item: Drawing, page_height: float) -> None:
        """Draw a described drawing where it stands on the page."""
        _, name = self._described[id(item.primitives)]
        scale = item.size / POINT / _UNITS
        canvas = self._canvas
        canvas.saveState()
        canvas.transform(
            scale, 0, 0, scale, item.x / POINT, (page_height - item.y - item.size) / POINT
        )
        canvas.doForm(name)
        canvas.restoreState()


def pack_last_page(canvas: Canvas) -> None:
    """Compress the page just finished: reportlab would hold each as plain text to the end."""
    page = canvas._doc.Pages.pages[-1]  # noqa: SLF001 - reportlab has no other way to a finished page
    flate = PDFDictionary({"Filter": PDFArray([PDFName(PDFZCompress.pdfname)])})
    page.Contents = PDFStream(flate, PDFZCompress.encode(page.stream), filters=[])
    page.stream = None
