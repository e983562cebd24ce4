"""The bytes of a file whose structure is packed: object streams and a cross-reference stream.

ISO 32000-1, 7.5.7 and 7.5.8. Two hundred elements of structure, each an object of its own,
would be half of a card's bytes in the plain form that reportlab writes; packed together they
are a tenth of it.
"""

import zlib
from typing import Any

from reportlab.pdfbase.pdfdoc import PDFFile, PDFIndirectObject, PDFObject
from reportlab.pdfgen.canvas import Canvas

_FREE, _PLAIN, _PACKED = 0, 1, 2
_WIDTHS = (1, 4, 2)


class Written(PDFObject):  # type: ignore[misc]
    """An object whose bytes are made already; mypy knows no types of reportlab."""

    __RefOnly__ = 1

    def __init__(self, content: bytes = b"") -> None:
        self.content = content

    def format(self, _document: object) -> bytes:
        """Return the bytes: reportlab asks every object for them in this way."""
        return self.content


def write_compactly(canvas: Canvas) -> None:
    """Let a canvas write its file with the objects that are `Written` packed together."""
    document = canvas._doc  # noqa: SLF001 - reportlab gives no other way
    document.format = lambda: _bytes_of(document)


def _bytes_of(document: Any) -> bytes:  # noqa: ANN401 - reportlab has no types
    document.encrypt.prepare(document)
    file = PDFFile(document._pdfVersion)  # noqa: SLF001
    packed: list[tuple[int, bytes]] = []
    places: list[tuple[int, int, int]] = [(_FREE, 0, 0xFFFF)]
    number = 1
    # Formatting one object may call for others, which then stand at the end.
    while number in document.numberToId:
        name = document.numberToId[number]
        content = document.idToObject[name]
        if isinstance(content, Written):
            places.append((_PACKED, 0, len(packed)))
            packed.append((number, content.content))
        else:
            written = PDFIndirectObject(name, content).format(document)
            places.append((_PLAIN, file.add(written), 0))
        number += 1
    holder, table = number, number + 1
    places = [
        (kind, holder, index) if kind == _PACKED else (kind, place, index)
        for kind, place, index in places
    ]
    places.append((_PLAIN, file.add(_object_stream(holder, packed)), 0))
    start = file.add(b"")
    places.append((_PLAIN, start, 0))
    root, info = (
        document.Reference(part).format(document) for part in (document.Catalog, document.info)
    )
    head = b"/Type/XRef/Size %d/W[%d %d %d]/Root %s/Info %s/ID %s" % (
        table + 1,
        *_WIDTHS,
        root,
        info,
        _identity(document),
    )
    rows = b"".join(
        value.to_bytes(width, "big")
        for entry in places
        for value, width in zip(entry, _WIDTHS, strict=True)
    )
    file.add(_stream(table, head, rows))
    file.add(b"startxref\n%d\n%%%%EOF\n" % start)
    return bytes(file.format(document))


def _object_stream(number: int, packed: list[tuple[int, bytes]]) -> bytes:
    numbers, contents, offset = [], [], 0
    for member, content in packed:
        numbers.append(b"%d %d" % (member, offset))
        contents.append(content)
        offset += len(content) + 1
    first = b" ".join(numbers) + b"\n"
    head = b"/Type/ObjStm/N %d/First %d" % (len(packed), len(first))
    return _stream(number, head, first + b"\n".join(contents))


def _stream(number: int, head: bytes, content: bytes) -> bytes:
    data = zlib.compress(content)
    return b"%d 0 obj\n<<%s/Filter/FlateDecode/Length %d>>\nstream\n%s\nendstream\nendobj\n" % (
        number,
        head,
        len(data),
        data,
    )


def _identity(document: Any) -> bytes:  # noqa: ANN401
    digest = document.signature.hexdigest().encode()
    return b"[<%s><%s>]" % (digest, digest)
