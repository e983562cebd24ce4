"""What a card's file says of itself, to three parsers that are not ours."""

import io
import xml.etree.ElementTree as ET

import pikepdf
import pypdfium2  # type: ignore[import-untyped]
import pytest
from pypdf import PdfReader

from chartgen.layout.layout_file import class_layout_names, job_layout_names, layout_names
from chartgen.layout.placed import Document, Page
from chartgen.renderers.pdf import render_pdf
from chartgen.wording.card import PrintedCard

Rendered = dict[str, list[tuple[PrintedCard, bytes]]]
each_layout = pytest.mark.parametrize(
    "name", [*layout_names(), *job_layout_names(), *class_layout_names()]
)


@each_layout
def test_three_parsers_read_it_alike(name: str, rendered: Rendered) -> None:
    for _, data in rendered[name][:2]:
        with pikepdf.open(io.BytesIO(data)) as one, pypdfium2.PdfDocument(data) as two:
            three = PdfReader(io.BytesIO(data))
            assert len(one.pages) == len(two) == len(three.pages)
            assert three.metadata is not None
            assert str(one.docinfo.Title) == two.get_metadata_value("Title") == three.metadata.title
            headings = [item.get_title() for item in (mark for mark in two.get_toc())]
            assert headings
            assert {"card.toml", "shop.toml"} == set(one.attachments) == set(three.attachments)


@each_layout
def test_its_outline_names_the_headings_and_their_pages(name: str, rendered: Rendered) -> None:
    for card, data in rendered[name][:1]:
        with pikepdf.open(io.BytesIO(data)) as pdf, pdf.open_outline() as outline:
            (top,) = outline.root
            titles = [item.title for item in top.children]
        assert top.title == card.chart.title
        assert "What this card assumes" in titles
        assert {caution.signal for caution in card.cautions} <= set(titles)


def test_signs_of_xml_in_a_name_are_kept_in_the_packet() -> None:
    page = Page(width=100.0, height=100.0, items=())
    title = 'Lathe <1> & "sons" ]]> Ø'
    data = render_pdf(Document(title=title, subject="s", pages=(page,)))
    with pikepdf.open(io.BytesIO(data)) as pdf:
        packet = ET.fromstring(pdf.Root.Metadata.read_raw_bytes())  # noqa: S314 - our own file
        (told,) = packet.iterfind(".//{http://purl.org/dc/elements/1.1/}title")
        assert "".join(told.itertext()) == str(pdf.docinfo.Title) == title
