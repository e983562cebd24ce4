"""What the colours of a page mean: sRGB, as a profile made here (ISO 15076-1, version 4).

A card's colours are screen values of IEC 61966-2-1; a file for keeping has to say so by a
profile inside it (ISO 19005-3, 6.2.3). sRGB is nine numbers and one curve, so the profile is
written out rather than shipped as a binary file of somebody's.
"""

import struct
from functools import cache

from reportlab.pdfbase.pdfdoc import PDFArray, PDFDictionary, PDFName, PDFStream, PDFString
from reportlab.pdfgen.canvas import Canvas

_NAME = "sRGB IEC61966-2.1"
_NOTE = "No copyright, use freely"
# Chromaticities and white of IEC 61966-2-1, adapted to the white D50 of ISO 15076-1 by the
# linear Bradford transform that it names; a test works them out again.
_RED = (0.43607, 0.22249, 0.01392)
_GREEN = (0.38515, 0.71687, 0.09708)
_BLUE = (0.14307, 0.06061, 0.71410)
_WHITE = (0.9642, 1.0, 0.8249)
_ADAPTATION = (
    (1.04788, 0.02292, -0.05022),
    (0.02959, 0.99048, -0.01707),
    (-0.00925, 0.01508, 0.75168),
)
# y = ((x + 0.055) / 1.055) ** 2.4 from 0.04045, x / 12.92 below it.
_CURVE = (2.4, 1.0 / 1.055, 0.055 / 1.055, 1.0 / 12.92, 0.04045)
_CURVE_WITH_A_STRAIGHT_START = 3
_HEADER = 128
_MADE = (2000, 1, 1, 0, 0, 0)


def add_output_intent(canvas: Canvas) -> None:
    """Add the profile to a document's catalog."""
    profile = PDFStream(dictionary=PDFDictionary({"N": 3}), content=srgb_profile())
    document = canvas._doc  # noqa: SLF001 - reportlab gives no other way
    intent = PDFDictionary(
        {
            "Type": PDFName("OutputIntent"),
            "S": PDFName("GTS_PDFA1"),
            "OutputConditionIdentifier": PDFString(_NAME),
            "Info": PDFString(_NAME),
            "DestOutputProfile": document.Reference(profile),
        }
    )
    catalog = document.Catalog
    catalog.OutputIntents = PDFArray([intent])
    catalog.__NoDefault__ = [*catalog.__NoDefault__, "OutputIntents"]


@cache
def srgb_profile() -> bytes:
    """Return an ICC profile of sRGB."""
    curve = struct.pack(">4sIHH", b"para", 0, _CURVE_WITH_A_STRAIGHT_START, 0) + _fixed(*_CURVE)
    tags = {
        b"desc": _text(_NAME),
        b"cprt": _text(_NOTE),
        b"wtpt": _xyz(_WHITE),
        b"chad": struct.pack(">4sI", b"sf32", 0) + _fixed(*(v for row in _ADAPTATION for v in row)),
        b"rXYZ": _xyz(_RED),
        b"gXYZ": _xyz(_GREEN),
        b"bXYZ": _xyz(_BLUE),
        b"rTRC": curve,
        b"gTRC": curve,
        b"bTRC": curve,
    }
    start = _HEADER + 4 + 12 * len(tags)
    places: dict[bytes, int] = {}
    table, data = struct.pack(">I", len(tags)), b""
    for signature, content in tags.items():
        if content not in places:
            places[content] = start + len(data)
            data += content + b"\0" * (-len(content) % 4)
        table += struct.pack(">4sII", signature, places[content], len(content))
    header = struct.pack(
        ">I4sI4s4s4s6H4s4sIIIQI",
        start + len(data),
        b"\0\0\0\0",
        0x04200000,
        b"mntr",
        b"RGB ",
        b"XYZ ",
        *_MADE,
        b"acsp",
        b"\0\0\0\0",
        0,
        0,
        0,
        0,
        0,
    )
    return (header + _fixed(*_WHITE)).ljust(_HEADER, b"\0") + table + data


def _fixed(*values: float) -> bytes:
    """Return numbers with sixteen bits behind the point."""
    return struct.pack(f">{len(values)}i", *(round(value * 0x10000) for value in values))


def _xyz(values: tuple[float, float, float]) -> bytes:
    return struct.pack(">4sI", b"XYZ ", 0) + _fixed(*values)


def _text(words: str) -> bytes:
    encoded = words.encode("utf-16-be")
    head = struct.pack(">4sIII2s2sII", b"mluc", 0, 1, 12, b"en", b"US", len(encoded), 28)
    return head + encoded
