"""Pictures of a card's pages, drawn from its PDF, so that they cannot tell anything else."""

import io
from collections.abc import Callable
from importlib import import_module
from typing import TYPE_CHECKING, Any

from chartgen.errors import RequestError

if TYPE_CHECKING:
    from PIL import Image

DPI = 150
_POINTS_PER_INCH = 72


def picture_maker() -> Callable[[bytes], list[bytes]]:
    """Return a function: a PDF -> a PNG a page.

    Raises
    ------
    RequestError
        If the library that draws pages is not installed.
    """
    try:
        pdfium = import_module("pypdfium2")
    except ImportError:
        raise RequestError(
            "pictures need the library pypdfium2, which is not installed; run "
            "`pip install pypdfium2` in chartgen's environment, or leave out --png."
        ) from None

    def pictures(data: bytes) -> list[bytes]:
        with pdfium.PdfDocument(data) as document:
            return [_png(page) for page in document]

    return pictures


def _png(page: Any) -> bytes:  # noqa: ANN401 - the library has no types
    drawn: Image.Image = page.render(scale=DPI / _POINTS_PER_INCH).to_pil().convert("RGB")
    red, green, blue = drawn.split()
    if red.tobytes() == green.tobytes() == blue.tobytes():
        drawn = red
    file = io.BytesIO()
    drawn.save(file, "PNG", optimize=True, dpi=(DPI, DPI))
    return file.getvalue()
