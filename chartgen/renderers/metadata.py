"""What a file says of itself, twice over: its information dictionary and its XMP packet.

ISO 19005-3, 6.6.2: the packet is uncompressed and agrees with the dictionary. It claims
PDF/A-3b, whose rules the tests go through; PDF/UA is built to and not claimed, because most
of its rules only a person can judge.
"""

from reportlab.pdfbase.pdfdoc import PDFObject
from reportlab.pdfgen.canvas import Canvas

from chartgen.layout.placed import Document

_MAKER = "chartgen"
# reportlab's own date where it may not ask the clock.
_MADE = "2000-01-01T00:00:00+00:00"
_PACKET = """<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about=""
 xmlns:dc="http://purl.org/dc/elements/1.1/"
 xmlns:pdf="http://ns.adobe.com/pdf/1.3/"
 xmlns:xmp="http://ns.adobe.com/xap/1.0/"
 xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/">
{claim}<dc:format>application/pdf</dc:format>
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">{title}</rdf:li></rdf:Alt></dc:title>
<dc:creator><rdf:Seq><rdf:li>{maker}</rdf:li></rdf:Seq></dc:creator>
<dc:description><rdf:Alt><rdf:li xml:lang="x-default">{subject}</rdf:li></rdf:Alt></dc:description>
<dc:language><rdf:Bag><rdf:li>{language}</rdf:li></rdf:Bag></dc:language>
<pdf:Keywords>{keywords}</pdf:Keywords>
<pdf:Producer>{maker}</pdf:Producer>
<xmp:CreatorTool>{maker}</xmp:CreatorTool>
<xmp:CreateDate>{made}</xmp:CreateDate>
<xmp:ModifyDate>{made}</xmp:ModifyDate>
</rdf:Description>
</rdf:RDF>
</x:xmpmeta>
<?xpacket end="r"?>"""
_CLAIM = """<pdfaid:part>3</pdfaid:part>
<pdfaid:conformance>B</pdfaid:conformance>
"""


def describe_file(canvas: Canvas, document: Document, *, is_archive: bool) -> None:
    """Set what viewers show of a file, and how they are to print it."""
    canvas.setTitle(document.title)
    canvas.setSubject(document.subject)
    canvas.setKeywords(document.keywords)
    canvas.setAuthor(_MAKER)
    canvas.setCreator(_MAKER)
    canvas.setProducer(_MAKER)
    canvas.setViewerPreference("PrintScaling", "None")
    canvas.setViewerPreference("DisplayDocTitle", "true")
    canvas.setCatalogEntry("Metadata", _Packet(document, is_archive=is_archive))


class _Packet(PDFObject):  # type: ignore[misc]
    """The packet as a stream that nobody needs to unpack; mypy knows no types of reportlab."""

    __RefOnly__ = 1

    def __init__(self, document: Document, *, is_archive: bool) -> None:
        self.content = _packet(document, is_archive=is_archive)

    def format(self, _document: object) -> bytes:
        """Return the stream: reportlab asks every object for its bytes in this way."""
        head = b"<</Type/Metadata/Subtype/XML/Length %d>>" % len(self.content)
        return b"%s\nstream\n%s\nendstream\n" % (head, self.content)


def _packet(document: Document, *, is_archive: bool) -> bytes:
    return _PACKET.format(
        title=_escaped(document.title),
        subject=_escaped(document.subject),
        keywords=_escaped(document.keywords),
        language=_escaped(document.language),
        maker=_MAKER,
        claim=_CLAIM if is_archive else "",
        made=_MADE,
    ).encode()


def _escaped(text: str) -> str:
    # The library's own function loads a quarter of a parser and of the network with it.
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
