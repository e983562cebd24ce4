"""Rules of PDF/A-3b (ISO 19005-3), gone through one by one with an independent parser.

No validator of the standard can be had as a package, so this list is what the claim in the
metadata rests on. The rules are those of ISO 19005-2, which part 3 takes over but for 6.8; the
numbers of clauses marked (m) are from memory, the others from published validation profiles.
"""

import io
import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator

import pikepdf
import pytest
from fontTools.ttLib import TTFont  # type: ignore[import-untyped]

from chartgen.layout.layout_file import class_layout_names, job_layout_names, layout_names
from chartgen.wording.card import PrintedCard

Rendered = dict[str, list[tuple[PrintedCard, bytes]]]
each_layout = pytest.mark.parametrize(
    "name", [*layout_names(), *job_layout_names(), *class_layout_names()]
)
RDF = "{http://www.w3.org/1999/02/22-rdf-syntax-ns#}"
SPACES = {
    "dc": "http://purl.org/dc/elements/1.1/",
    "pdf": "http://ns.adobe.com/pdf/1.3/",
    "xmp": "http://ns.adobe.com/xap/1.0/",
    "pdfaid": "http://www.aiim.org/pdfa/ns/id/",
    "rdf": RDF[1:-1],
}
FORBIDDEN_FILTERS = {"/LZWDecode", "/Crypt"}
RGB_AND_GREY = {"rg", "RG", "g", "G"}
OTHER_COLOURS = {"k", "K", "cs", "CS", "sc", "SC", "scn", "SCN", "sh", "ri"}
DEEPEST_NESTING = 28
LONGEST_NAME = 127
LONGEST_STRING = 32767


@pytest.fixture
def files(name: str, rendered: Rendered) -> Iterator[list[tuple[bytes, pikepdf.Pdf]]]:
    opened = [(data, pikepdf.open(io.BytesIO(data))) for _, data in rendered[name][:2]]
    yield opened
    for _, pdf in opened:
        pdf.close()


def every(pdf: pikepdf.Pdf, key: str) -> list[pikepdf.Object]:
    """Return what stands under a key anywhere in a file's own objects."""
    found = []

    def walk(value: pikepdf.Object) -> None:
        if isinstance(value, pikepdf.Dictionary | pikepdf.Stream):
            for name, part in value.items():
                if name == key:
                    found.append(part)
                if not (isinstance(part, pikepdf.Object) and part.is_indirect):
                    walk(part)
        elif isinstance(value, pikepdf.Array):
            for part in value:
                if not (isinstance(part, pikepdf.Object) and part.is_indirect):
                    walk(part)

    for value in pdf.objects:
        walk(value)
    return found


def packet(pdf: pikepdf.Pdf) -> ET.Element:
    return ET.fromstring(pdf.Root.Metadata.read_raw_bytes())  # noqa: S314 - our own file


def said(pdf: pikepdf.Pdf, path: str) -> str:
    found = packet(pdf).find(f".//{path}", SPACES)
    assert found is not None, path
    item = found.find(".//rdf:li", SPACES)
    return (item if item is not None else found).text or ""


def date_of(text: str) -> str:
    """Return a date of the information dictionary as XMP writes it."""
    digits = re.fullmatch(r"D:(\d{4})(\d\d)(\d\d)(\d\d)(\d\d)(\d\d)\+00\'00\'", text)
    assert digits, text
    return "{}-{}-{}T{}:{}:{}+00:00".format(*digits.groups())


@each_layout
class TestTheFile:
    # 6.1.2: version 1.0 to 1.7, and a comment of four bytes above 127.
    def test_header(self, files: list[tuple[bytes, pikepdf.Pdf]]) -> None:
        for data, _ in files:
            assert re.match(rb"%PDF-1\.[0-7]\n%[\x80-\xff]{4}", data)

    # 6.1.3: an identifier of two equal strings, no encryption, nothing after the end.
    def test_trailer(self, files: list[tuple[bytes, pikepdf.Pdf]]) -> None:
        for data, pdf in files:
            first, second = pdf.trailer.ID
            assert bytes(first) == bytes(second) != b""
            assert "/Encrypt" not in pdf.trailer
            assert data.endswith(b"%%EOF\n")
            assert data.count(b"%%EOF") == 1

    # 6.1.7 (m): no stream outside the file, no lossy or locked packing; lengths are true.
    def test_streams(self, files: list[tuple[bytes, pikepdf.Pdf]]) -> None:
        for _, pdf in files:
            assert pdf.check_pdf_syntax() == []
            for value in pdf.objects:
                if isinstance(value, pikepdf.Stream):
                    assert not {"/F", "/FFilter", "/FDecodeParms"} & set(value.keys())
            filters = {str(f) for part in every(pdf, "/Filter") for f in listed(part)}
            assert not filters & FORBIDDEN_FILTERS

    # 6.1.13 (m): limits of names, strings and nesting.
    def test_limits(self, files: list[tuple[bytes, pikepdf.Pdf]]) -> None:
        for _, pdf in files:
            assert len(pdf.objects) < 8_388_607
            for page in pdf.pages:
                depth = 0
                for operands, operator in pikepdf.parse_content_stream(page):
                    depth += {"q": 1, "Q": -1}.get(str(operator), 0)
                    assert 0 <= depth <= DEEPEST_NESTING
                    for operand in operands:
                        if isinstance(operand, pikepdf.Name):
                            assert len(str(operand)) <= LONGEST_NAME
                        if isinstance(operand, pikepdf.String):
                            assert len(bytes(operand)) <= LONGEST_STRING
                assert depth == 0

    # 6.3, 6.4, 6.5, 6.9 to 6.11 (m): no annotations, forms, actions, optional content.
    def test_nothing_acts(self, files: list[tuple[bytes, pikepdf.Pdf]]) -> None:
        for _, pdf in files:
            for key in (
                *("/Annots", "/AcroForm", "/AA", "/OpenAction", "/JS", "/JavaScript", "/XFA"),
                *("/OCProperties", "/AlternatePresentations", "/PresSteps", "/Requirements"),
                *("/NeedsRendering", "/Perms"),
            ):
                assert every(pdf, key) == [], key


@each_layout
class TestTheColours:
    # 6.2.3: one output intent, with a profile of as many parts as it says.
    def test_output_intent(self, files: list[tuple[bytes, pikepdf.Pdf]]) -> None:
        for _, pdf in files:
            (intent,) = pdf.Root.OutputIntents
            assert intent.S == "/GTS_PDFA1"
            assert str(intent.OutputConditionIdentifier)
            profile = intent.DestOutputProfile.read_bytes()
            assert (profile[36:40], profile[16:20]) == (b"acsp", b"RGB ")
            assert profile[12:16] in {b"mntr", b"prtr"}
            assert int(intent.DestOutputProfile.N) == 3

    # 6.2.4.3: colours of the device only where the output intent says what they are.
    def test_colours(self, files: list[tuple[bytes, pikepdf.Pdf]]) -> None:
        for _, pdf in files:
            used = {
                str(operator)
                for page in pdf.pages
                for _, operator in pikepdf.parse_content_stream(page)
            }
            assert used & RGB_AND_GREY
            assert not used & OTHER_COLOURS
            assert every(pdf, "/ColorSpace") == []

    # 6.2.5, 6.2.8 to 6.2.10 (m): no images, no PostScript, no transparency, no states.
    def test_nothing_is_transparent(self, files: list[tuple[bytes, pikepdf.Pdf]]) -> None:
        for _, pdf in files:
            for key in ("/ExtGState", "/SMask", "/Group", "/XObject", "/Pattern", "/Shading"):
                assert [part for part in every(pdf, key) if len(part)] == [], key


@each_layout
class TestTheFonts:
    # 6.2.11.4: every font is inside; 6.2.11.6 (m): a symbolic one has one table of characters.
    def test_embedded(self, files: list[tuple[bytes, pikepdf.Pdf]]) -> None:
        for _, pdf in files:
            fonts = [part for part in pdf.objects if is_a(part, "/Font")]
            assert fonts
            for font in fonts:
                flags = int(font.FontDescriptor.Flags)
                assert "/FontFile2" in font.FontDescriptor
                assert font.Subtype == "/TrueType"
                assert flags & 4
                assert not flags & 32
                assert "/Encoding" not in font
                program = TTFont(io.BytesIO(font.FontDescriptor.FontFile2.read_bytes()))
                assert len(program["cmap"].tables) == 1

    # 6.2.11.5: the widths a font states are those of its outlines, within one thousandth.
    def test_widths(self, files: list[tuple[bytes, pikepdf.Pdf]]) -> None:
        for _, pdf in files:
            for font in (part for part in pdf.objects if is_a(part, "/Font")):
                program = TTFont(io.BytesIO(font.FontDescriptor.FontFile2.read_bytes()))
                (table,) = program["cmap"].tables
                scale = 1000 / program["head"].unitsPerEm
                for code, width in enumerate(font.Widths, int(font.FirstChar)):
                    if code in table.cmap:
                        advance = program["hmtx"][table.cmap[code]][0] * scale
                        assert float(width) == pytest.approx(advance, abs=1.0)


@each_layout
class TestWhatItSaysOfItself:
    # 6.6.2: a plain packet of XMP in the catalog.
    def test_packet(self, files: list[tuple[bytes, pikepdf.Pdf]]) -> None:
        for _, pdf in files:
            stream = pdf.Root.Metadata
            assert (stream.Type, stream.Subtype) == ("/Metadata", "/XML")
            assert "/Filter" not in stream
            raw = stream.read_raw_bytes()
            assert raw.startswith('<?xpacket begin="\ufeff"'.encode())
            head = raw.partition(b"?>")[0]
            assert b"bytes=" not in head
            assert b"encoding=" not in head
            assert packet(pdf).tag == "{adobe:ns:meta/}xmpmeta"

    # 6.6.3 (m): what the information dictionary says too is said alike.
    def test_agrees_with_the_information_dictionary(
        self, files: list[tuple[bytes, pikepdf.Pdf]]
    ) -> None:
        for _, pdf in files:
            info = pdf.docinfo
            assert said(pdf, "dc:title") == str(info.Title)
            assert said(pdf, "dc:creator") == str(info.Author)
            assert said(pdf, "dc:description") == str(info.Subject)
            assert said(pdf, "pdf:Keywords") == str(info.Keywords)
            assert said(pdf, "pdf:Producer") == str(info.Producer)
            assert said(pdf, "xmp:CreatorTool") == str(info.Creator)
            assert said(pdf, "xmp:CreateDate") == date_of(str(info.CreationDate))
            assert said(pdf, "xmp:ModifyDate") == date_of(str(info.ModDate))

    # 6.6.2.3 (m): only properties of schemas that the standard knows.
    def test_uses_known_schemas_only(self, files: list[tuple[bytes, pikepdf.Pdf]]) -> None:
        for _, pdf in files:
            (description,) = packet(pdf).iter(f"{RDF}Description")
            spaces = {part.tag[1:].partition("}")[0] for part in description}
            assert spaces <= set(SPACES.values())

    # 6.6.4: part and level; another claim than this is not made.
    def test_claims_level_b_of_part_3_and_nothing_else(
        self, files: list[tuple[bytes, pikepdf.Pdf]]
    ) -> None:
        for data, pdf in files:
            assert (said(pdf, "pdfaid:part"), said(pdf, "pdfaid:conformance")) == ("3", "B")
            assert b"pdfuaid" not in data

    # 6.8 of part 3: a carried file has its type, its names, its date and its relation.
    def test_carried_files(self, files: list[tuple[bytes, pikepdf.Pdf]]) -> None:
        for _, pdf in files:
            tied = list(pdf.Root.AF)
            names = pdf.Root.Names.EmbeddedFiles.Names
            assert [str(name) for name in names[::2]] == ["card.toml", "shop.toml"]
            assert {part.objgen for part in names[1::2]} == {part.objgen for part in tied}
            for specification in tied:
                assert specification.Type == "/Filespec"
                assert str(specification.F) == str(specification.UF)
                assert specification.AFRelationship == "/Source"
                inside = specification.EF.F
                assert inside.objgen == specification.EF.UF.objgen
                assert inside.Subtype == pikepdf.Name("/application#2Ftoml")
                assert str(inside.Params.ModDate)
                assert int(inside.Params.Size) == len(inside.read_bytes())


def is_a(value: pikepdf.Object, kind: str) -> bool:
    return isinstance(value, pikepdf.Dictionary) and value.get("/Type") == kind


def listed(value: pikepdf.Object) -> list[pikepdf.Object]:
    return list(value) if isinstance(value, pikepdf.Array) else [value]
