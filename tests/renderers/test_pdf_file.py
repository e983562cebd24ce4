"""The file: the same bytes every time, sound, its fonts inside, true size, not large."""

import io
import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pikepdf
import pytest
from fontTools.ttLib import TTFont  # type: ignore[import-untyped]

from chartgen import pipeline
from chartgen.layout.layout_file import (
    class_layout_names,
    job_layout_names,
    layout_names,
    load_layout,
)
from chartgen.layout.legibility import POINT
from chartgen.wording.card import PrintedCard

Rendered = dict[str, list[tuple[PrintedCard, bytes]]]
BYTES_A_PAGE = 40_000
A5_AREA = 148.0 * 210.0
each_layout = pytest.mark.parametrize(
    "name", [*layout_names(), *job_layout_names(), *class_layout_names()]
)


@pytest.fixture
def files(name: str, rendered: Rendered) -> Iterator[list[pikepdf.Pdf]]:
    opened = [pikepdf.open(io.BytesIO(data)) for _, data in rendered[name]]
    yield opened
    for pdf in opened:
        pdf.close()


def fonts_of(resources: pikepdf.Object) -> Iterator[pikepdf.Object]:
    """Yield every font of some resources, and of the forms they draw."""
    yield from (font for _, font in resources.get("/Font", pikepdf.Dictionary()).items())
    for drawn in dict(resources.get("/XObject", pikepdf.Dictionary()).items()).values():
        if "/Resources" in drawn:
            yield from fonts_of(drawn.Resources)


def shown(page: pikepdf.Page) -> Iterator[tuple[str, bytes]]:
    """Yield the codes a page shows, with the name of the font they are shown in."""
    font = ""
    for instruction in pikepdf.parse_content_stream(page):
        operands, operator = instruction.operands, str(instruction.operator)
        if operator == "Tf":
            font = str(operands[0])
        elif operator in {"Tj", "'"}:
            yield font, bytes(operands[0])
        elif operator == "TJ":
            yield from ((font, bytes(o)) for o in operands[0] if isinstance(o, pikepdf.String))


@each_layout
def test_a_document_gives_the_same_bytes_again(name: str, rendered: Rendered) -> None:
    cards = [card for card, _ in rendered[name]]
    inputs = pipeline.inputs_of(None, pipeline.describe(None, pipeline.EXAMPLE_NAME))
    for finished, (_, data) in zip(pipeline.lay_out(cards, inputs), rendered[name], strict=True):
        assert pipeline.render(finished) == data


def test_two_processes_with_other_hash_seeds_write_the_bytes_of_this_one(
    tmp_path: Path, rendered: Rendered
) -> None:
    by_name = {f"{card.file_stem}.pdf": data for cards in rendered.values() for card, data in cards}
    written = []
    for seed in ("1", "2"):
        folder = tmp_path / seed
        subprocess.run(
            [sys.executable, "-m", "chartgen", "make", "--out", str(folder)],
            check=True,
            capture_output=True,
            cwd=tmp_path,
            env=os.environ | {"PYTHONHASHSEED": seed},
        )
        written.append({path.name: path.read_bytes() for path in folder.iterdir()})
    assert written[0] == written[1]
    assert written[0]
    assert all(by_name[name] == data for name, data in written[0].items())


@each_layout
class TestTheFile:
    def test_it_is_sound(self, name: str, files: list[pikepdf.Pdf]) -> None:
        assert [pdf.check_pdf_syntax() for pdf in files] == [[]] * len(files), name
        assert all(len(pdf.pages) >= len(load_layout(name).sides) for pdf in files)

    def test_it_is_pdf_1_7(self, name: str, rendered: Rendered) -> None:
        assert all(data.startswith(b"%PDF-1.7\n") for _, data in rendered[name])

    def test_every_font_is_inside_as_a_subset(self, files: list[pikepdf.Pdf]) -> None:
        for pdf in files:
            fonts = [font for page in pdf.pages for font in fonts_of(page.Resources)]
            assert fonts
            for font in fonts:
                assert "/FontFile2" in font.FontDescriptor, font.BaseFont
                assert str(font.BaseFont)[7:8] == "+", f"{font.BaseFont} is not a subset"
                assert "/ToUnicode" in font, f"text in {font.BaseFont} cannot be searched"

    def test_no_standard_font_is_listed(self, name: str, rendered: Rendered) -> None:
        for _, data in rendered[name]:
            assert b"Helvetica" not in data
            assert b"/Type1" not in data

    def test_no_character_is_drawn_as_the_empty_box(self, files: list[pikepdf.Pdf]) -> None:
        for pdf in files:
            for page in pdf.pages:
                maps = {}
                for key, font in page.Resources.Font.items():
                    if "/FontDescriptor" not in font:
                        continue
                    stream = io.BytesIO(font.FontDescriptor.FontFile2.read_bytes())
                    (table,) = TTFont(stream)["cmap"].tables
                    maps[key] = table.cmap
                codes = [(font, code) for font, text in shown(page) for code in text]
                assert codes
                assert all(maps[font].get(code, ".notdef") != ".notdef" for font, code in codes)

    def test_it_prints_at_true_size(self, files: list[pikepdf.Pdf]) -> None:
        for pdf in files:
            assert pdf.Root.ViewerPreferences.PrintScaling == "/None"

    def test_it_says_its_language_and_shows_its_title(
        self, name: str, files: list[pikepdf.Pdf], rendered: Rendered
    ) -> None:
        for pdf, (card, _) in zip(files, rendered[name], strict=True):
            title = f"{load_layout(name).title}: {card.chart.title}, {card.lathe}"
            assert str(pdf.Root.Lang) == "en-GB"
            assert pdf.Root.ViewerPreferences.DisplayDocTitle
            assert str(pdf.docinfo.Title) == title
            assert str(pdf.docinfo.Subject) == f"{card.identity} · check {card.check_code}"

    def test_it_names_no_clock(self, files: list[pikepdf.Pdf]) -> None:
        dates = {
            str(pdf.docinfo.get(key)) for pdf in files for key in ("/CreationDate", "/ModDate")
        }
        assert len(dates) == 1
        assert all("2000" in date or date == "None" for date in dates)

    def test_its_pages_have_the_size_of_the_layout(
        self, name: str, files: list[pikepdf.Pdf]
    ) -> None:
        width, height = (length / POINT for length in load_layout(name).page)
        for page in (page for pdf in files for page in pdf.pages):
            box = pytest.approx([0, 0, width, height], abs=0.01)
            assert [float(edge) for edge in page.mediabox] == box
            assert [float(edge) for edge in page.trimbox] == box
            assert "/TrimBox" in page.obj
            assert page.obj.get("/Rotate", 0) == 0

    def test_it_is_small(self, name: str, rendered: Rendered) -> None:
        for card, data in rendered[name]:
            width, height = load_layout(name).page
            # A page of A4 full of print is two of A5.
            share = 2.0 if width * height > A5_AREA else 1.0
            with pikepdf.open(io.BytesIO(data)) as pdf:
                assert len(data) <= BYTES_A_PAGE * share * len(pdf.pages), card.file_stem

    def test_its_file_name_is_safe_and_its_own(self, name: str, rendered: Rendered) -> None:
        stems = [card.file_stem for card, _ in rendered[name]]
        assert len(set(stems)) == len(stems)
        assert all(stem.isascii() and stem.replace("-", "").isalnum() for stem in stems)
