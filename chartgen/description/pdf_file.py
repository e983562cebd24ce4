"""The files inside a PDF, read by name into memory; the PDF may be anybody's.

Nothing in it is run, no name in it becomes a path, and nothing is unpacked beyond a limit.
"""

import hashlib
import io
import logging
import zlib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, Final

from pypdf import PdfReader
from pypdf.errors import PyPdfError
from pypdf.generic import ArrayObject, ByteStringObject, DictionaryObject, StreamObject

from chartgen.description.recipe import altered
from chartgen.errors import ChartgenError

BEGINNING: Final = b"%PDF-"
MOST_OF_A_PDF: Final = 20_000_000
MOST_OF_A_FILE: Final = 1_000_000
"""Bytes; a shop file has a few thousand."""
_MOST_FILES = 20
_FROM_CHARTGEN = "give the file that chartgen wrote, or make the card anew from its shop file"


@dataclass(frozen=True, slots=True)
class Inside:
    """What a PDF holds: its files by name, and what it says it is about."""

    files: Mapping[str, bytes]
    subject: str


def is_pdf(content: bytes) -> bool:
    """Return whether a file's bytes begin like a PDF."""
    return content.startswith(BEGINNING)


def look_inside(content: bytes, *, file: str) -> Inside:
    """Return the files inside a PDF, all of them whole as their checksums say.

    Raises
    ------
    ChartgenError
        If it is locked, broken, too large, or a file in it is not what it was.
    """
    if len(content) > MOST_OF_A_PDF:
        raise ChartgenError(
            f"{file}: has {len(content) // 1_000_000} MB, which no card has; {_FROM_CHARTGEN}."
        )
    # Its remarks on a broken file are for its own developers.
    logging.getLogger("pypdf").setLevel(logging.CRITICAL)
    try:
        reader = PdfReader(io.BytesIO(content))
        locked = reader.is_encrypted
        found = [] if locked else list(_streams(reader))
        subject = "" if locked or reader.metadata is None else reader.metadata.subject or ""
    except (PyPdfError, ArithmeticError, LookupError, OSError, RecursionError) as error:
        raise _broken(file) from error
    except (AttributeError, TypeError, ValueError) as error:
        # Parts of another kind than the reader expects: a file can be broken in any way.
        raise _broken(file) from error
    if locked:
        raise ChartgenError(f"{file}: is locked with a password; {_FROM_CHARTGEN}.")
    return Inside({name: _whole(stream, file) for name, stream in found}, subject)


def _broken(file: str) -> ChartgenError:
    return ChartgenError(f"{file}: is damaged and cannot be read as a PDF; {_FROM_CHARTGEN}.")


def _streams(reader: PdfReader) -> Iterator[tuple[str, StreamObject]]:
    """Yield each attachment by the name that the document's name tree gives it."""
    names = _dictionary(reader.root_object.get("/Names"))
    tree = _dictionary(names.get("/EmbeddedFiles")).get("/Names")
    entries = tree.get_object() if tree is not None else None
    if not isinstance(entries, ArrayObject):
        return
    for index in range(0, min(len(entries) - 1, 2 * _MOST_FILES), 2):
        inside = _dictionary(_dictionary(entries[index + 1]).get("/EF"))
        stream = inside.get("/F")
        stream = stream.get_object() if stream is not None else None
        if isinstance(stream, StreamObject):
            yield str(entries[index]), stream


def _dictionary(value: Any) -> DictionaryObject:  # noqa: ANN401 - anything may stand in a PDF
    found = value.get_object() if value is not None else None
    return found if isinstance(found, DictionaryObject) else DictionaryObject()


def _whole(stream: StreamObject, file: str) -> bytes:
    """Return an attachment's bytes, unpacked no further than a shop file can reach."""
    packed = stream._data  # noqa: SLF001 - its own unpacking knows no limit
    filters = stream.get("/Filter")
    names = filters if isinstance(filters, ArrayObject) else [filters] if filters else []
    if [str(name) for name in names] not in ([], ["/FlateDecode"]):
        raise altered(file)
    content = packed
    if names:
        unpacker = zlib.decompressobj()
        try:
            content = unpacker.decompress(packed, MOST_OF_A_FILE + 1)
        except zlib.error as error:
            raise altered(file) from error
    if len(content) > MOST_OF_A_FILE:
        raise ChartgenError(
            f"{file}: carries a file of more than {MOST_OF_A_FILE // 1_000_000} MB, which no shop "
            f"file is; {_FROM_CHARTGEN}."
        )
    stated = _dictionary(stream.get("/Params")).get("/CheckSum")
    if stated is not None:
        raw = stated.get_object()
        told = raw if isinstance(raw, ByteStringObject) else getattr(raw, "original_bytes", b"")
        if bytes(told) != hashlib.md5(content, usedforsecurity=False).digest():
            raise altered(file)
    return bytes(content)
