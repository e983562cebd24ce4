"""Files carried inside a document, named for viewers and tied to it (ISO 19005-3, 6.8)."""

import hashlib
from collections.abc import Sequence

from reportlab.pdfbase.pdfdoc import (
    PDFArray,
    PDFDate,
    PDFDictionary,
    PDFName,
    PDFObjectReference,
    PDFStream,
    PDFString,
)
from reportlab.pdfgen.canvas import Canvas

from chartgen.layout.placed import Attachment


def attach(canvas: Canvas, attachments: Sequence[Attachment]) -> None:
    """Put files into a document: what it was made from."""
    if not attachments:
        return
    document = canvas._doc  # noqa: SLF001 - reportlab gives no other way
    references = [(file.name, _file(canvas, file)) for file in attachments]
    # A name tree is sorted by name (ISO 32000-1, 7.9.6).
    names = [part for name, ref in sorted(references) for part in (PDFString(name), ref)]
    catalog = document.Catalog
    catalog.Names = PDFDictionary({"EmbeddedFiles": PDFDictionary({"Names": PDFArray(names)})})
    catalog.AF = PDFArray([reference for _, reference in references])
    catalog.__NoDefault__ = [*catalog.__NoDefault__, "AF"]


def _file(canvas: Canvas, file: Attachment) -> PDFObjectReference:
    document = canvas._doc  # noqa: SLF001
    # Another inside makes another document, though its pages may look the same.
    document.signature.update(file.content)
    digest = hashlib.md5(file.content, usedforsecurity=False).digest()
    made = PDFDate(ts=document._timeStamp)  # noqa: SLF001
    parameters = {
        "Size": len(file.content),
        "CheckSum": PDFString(digest),
        "CreationDate": made,
        "ModDate": made,
    }
    # A solidus inside a name is written as its code.
    media_type = PDFName(file.media_type.replace("/", "#2F"))
    stream = PDFStream(
        dictionary=PDFDictionary(
            {
                "Type": PDFName("EmbeddedFile"),
                "Subtype": media_type,
                "Params": PDFDictionary(parameters),
            }
        ),
        content=file.content,
    )
    inside = document.Reference(stream)
    specification = PDFDictionary(
        {
            "Type": PDFName("Filespec"),
            "F": PDFString(file.name),
            "UF": PDFString(file.name),
            "Desc": PDFString(file.description),
            "AFRelationship": PDFName("Source"),
            "EF": PDFDictionary({"F": inside, "UF": inside}),
        }
    )
    return document.Reference(specification)
