"""The file of a sheet: true size, the flip it wants, backs behind fronts, cards unchanged."""

import io
from collections.abc import Callable, Iterator
from dataclasses import replace

import numpy as np
import pdfplumber
import pikepdf
import pypdfium2
import pytest
from numpy.typing import NDArray

from chartgen import pipeline, sheet_run
from chartgen.errors import DoesNotFitError
from chartgen.layout.legibility import POINT
from chartgen.layout.pages import page_size
from chartgen.layout.placed import Document, Page, Panel
from chartgen.layout.sheets.leaves import Leaf
from chartgen.layout.sheets.plan import SheetPlan, plan_sheets
from chartgen.model.shop import Shop
from chartgen.renderers.fonts import measure
from chartgen.renderers.pdf import render_pages, render_pdf
from chartgen.wording.card import AnyCard

DPI = 150
A6 = page_size("A6 landscape")
Sheets = Callable[..., bytes]


def in_layouts(shop: Shop, *names: str) -> list[AnyCard]:
    return pipeline.printed_cards(pipeline.with_layouts(shop, names))


@pytest.fixture(scope="module")
def sheets_of(example: Shop) -> Sheets:
    """Return a function: a layout and the words of a plan -> the PDF of its sheets."""

    def of(layout: str, **words: str | bool) -> bytes:
        plan = sheet_run.sheet_plan(**{"paper": "A4", **words})
        ((_, data),) = sheet_run.on_sheets(in_layouts(example, layout), plan)
        return data

    return of


def grey(data: bytes, number: int) -> NDArray[np.int_]:
    page = pypdfium2.PdfDocument(data)[number]
    return np.asarray(page.render(scale=DPI / 72.0, grayscale=True).to_pil()).astype(int)


def part(picture: NDArray[np.int_], box: tuple[float, float, float, float]) -> NDArray[np.int_]:
    left, top, right, bottom = (round(side / 25.4 * DPI) for side in box)
    return picture[top:bottom, left:right]


@pytest.mark.parametrize(("flip", "entry"), [("long", "Long"), ("short", "Short")])
def test_the_viewer_is_told_true_size_and_the_flip(
    sheets_of: Sheets, flip: str, entry: str
) -> None:
    with pikepdf.open(io.BytesIO(sheets_of("blade-card-a6", flip=flip))) as pdf:
        # ISO 32000-1, table 150.
        assert pdf.Root.ViewerPreferences.PrintScaling == "/None"
        assert f"/DuplexFlip{entry}Edge" == pdf.Root.ViewerPreferences.Duplex
        assert len(pdf.pages) % 2 == 0
        for page in pdf.pages:
            # ISO 32000-1, 14.11.2: trim within bleed within media; here all are the paper.
            boxes = [[float(x) for x in page.obj[name]] for name in ("/TrimBox", "/BleedBox")]
            media = [float(x) for x in page.mediabox]
            assert media == pytest.approx([0, 0, 210 / 25.4 * 72, 297 / 25.4 * 72], abs=0.01)
            assert all(box == pytest.approx(media, abs=0.01) for box in boxes)


@pytest.mark.parametrize(
    ("layout", "entry"), [("lathe-chart-a5", "Short"), ("speed-nomogram-a5", "Long")]
)
def test_a_single_card_turns_over_like_a_page_of_a_book(
    example: Shop, layout: str, entry: str
) -> None:
    # About its upright edge: the short one of a page wider than high.
    finished = pipeline.lay_out(in_layouts(example, layout)[:1])[0]
    with pikepdf.open(io.BytesIO(pipeline.render(finished))) as pdf:
        assert f"/DuplexFlip{entry}Edge" == pdf.Root.ViewerPreferences.Duplex


def test_the_check_rule_of_the_sheet_is_100_mm_and_4_in_long(sheets_of: Sheets) -> None:
    with pdfplumber.open(io.BytesIO(sheets_of("blade-card-a6"))) as pdf:
        page = pdf.pages[0]
        foot = [line for line in page.lines if line["top"] > page.height - 25 / POINT]
    (long,) = [line for line in foot if line["width"] > 250]
    assert long["width"] * 25.4 / 72 == pytest.approx(100.0, abs=0.01)
    level = long["top"]
    above = [line["x0"] for line in foot if line["width"] < 1 and line["bottom"] <= level + 0.1]
    below = [line["x0"] for line in foot if line["width"] < 1 and line["bottom"] > level + 0.1]
    assert [x - long["x0"] for x in above] == pytest.approx(
        [n * 72 / 2.54 for n in range(11)], 1e-3
    )
    assert [x - long["x0"] for x in below] == pytest.approx([0, 72, 144, 216, 288], abs=0.02)


@pytest.mark.parametrize("words", [{}, {"edge_to_edge": True}], ids=["upright", "turned"])
@pytest.mark.parametrize("side", [0, 1])
def test_a_card_on_a_sheet_is_the_single_card(
    sheets_of: Sheets, example: Shop, words: dict[str, bool], side: int
) -> None:
    single = pipeline.render(pipeline.lay_out(in_layouts(example, "blade-card-a6")[:1])[0])
    plan = plan_sheets(paper="A4", **words)  # type: ignore[arg-type]
    places = sheet_run.imposition(A6, "A6", plan).places
    sheet = grey(sheets_of("blade-card-a6", **words), side)
    left, top = places.positions[0]
    width, height = places.footprint
    if side == 1:
        left = 210.0 - left - width
    on_sheet = part(sheet, (left, top, left + width, top + height))
    alone = grey(single, side)
    if places.turn:
        # A front stands a quarter clockwise, its back a quarter the other way.
        alone = np.rot90(alone, 1 if side else -1)
    inner = 6 / 25.4 * DPI  # inside of the arcs and marks
    rows, columns = (min(a, b) for a, b in zip(on_sheet.shape, alone.shape, strict=True))
    ours, theirs = (
        picture[round(inner) : rows - round(inner), round(inner) : columns - round(inner)]
        for picture in (on_sheet, alone)
    )
    ink = theirs < 128
    assert ink.sum() > 5000
    # Half a dot of offset shifts the edges of letters, not letters.
    near = np.zeros_like(ink)
    for down in (-1, 0, 1):
        for right in (-1, 0, 1):
            near |= np.roll(ours < 160, (down, right), (0, 1))
    assert (ink & ~near).sum() < 0.01 * ink.sum()
    assert abs((ours < 128).sum() - ink.sum()) < 0.1 * ink.sum()


@pytest.mark.parametrize("flip", ["long", "short"])
@pytest.mark.parametrize("size", [A6, page_size("A6 portrait"), (85.6, 53.98)])
def test_printed_and_held_to_the_light_a_mirrored_back_covers_its_front(
    flip: str, size: tuple[float, float]
) -> None:
    # A rasteriser of its own prints both sides; the back's content is the front's seen from
    # behind, so that on a sheet held to the light only one picture may be seen.
    blocks = [(10.0, 10.0, 25.0, 8.0), (12.0, 25.0, 6.0, 20.0), (40.0, 38.0, 30.0, 5.0)]
    width, height = size

    def page(*, mirrored: bool) -> Page:
        items = tuple(
            Panel(x=width - x - w if mirrored else x, y=y, width=w, height=h)
            for x, y, w, h in blocks
        )
        return Page(width=width, height=height, items=items)

    leaf = Leaf(name="trial", front=page(mirrored=False), back=page(mirrored=True))
    plan = plan_sheets(paper="A4", flip=flip)
    imposed = sheet_run.imposition(size, "A6", plan)
    # One card fewer than there are places: an asymmetric sheet.
    leaves = [leaf] * max(imposed.places.count - 1, 1)
    data = render_pages("trial", "", imposed.sheets(leaves), plan.flip)
    front, back = grey(data, 0), grey(data, 1)
    seen_through = back[:, ::-1] if flip == "long" else back[::-1, :]
    boxes = [
        (x, y, x + imposed.places.footprint[0], y + imposed.places.footprint[1])
        for x, y in imposed.places.positions[: len(leaves)]
    ]
    for left, top, right, bottom in boxes:
        inside = (left + 6, top + 6, right - 6, bottom - 6)
        ours, theirs = part(front, inside) < 128, part(seen_through, inside) < 128
        assert ours.sum() > 5000
        assert (ours ^ theirs).sum() < 0.02 * ours.sum()


def test_every_word_of_every_card_is_on_the_sheets(sheets_of: Sheets, example: Shop) -> None:
    data = sheets_of("blade-card-a6")
    every = pypdfium2.PdfDocument(data)
    said = " ".join(page.get_textpage().get_text_range() for page in every)
    cards = pipeline.lay_out(in_layouts(example, "blade-card-a6"))
    assert len(cards) == 3
    for finished in cards:
        for page in pypdfium2.PdfDocument(render_pdf(finished.document)):
            for line in page.get_textpage().get_text_range().splitlines():
                assert line.strip() in said


def fonts(pdf: pikepdf.Pdf) -> set[tuple[int, int]]:
    return {
        obj.objgen
        for obj in pdf.objects
        if isinstance(obj, pikepdf.Dictionary) and "/FontFile2" in obj
    }


def test_signs_and_fonts_are_in_a_file_once_however_many_cards(
    sheets_of: Sheets, example: Shop
) -> None:
    drawn = {
        item.primitives
        for finished in pipeline.lay_out(in_layouts(example, "lathe-chart-a5"))
        for page in finished.document.pages
        for item in page.items
        if hasattr(item, "primitives")
    }
    with pikepdf.open(io.BytesIO(sheets_of("lathe-chart-a5"))) as pdf:
        forms = [o for o in pdf.objects if isinstance(o, pikepdf.Stream) and "/BBox" in o]
        assert len(forms) == len(drawn) > 4
        assert len(pdf.pages) == 12
        assert len(fonts(pdf)) <= 4
        assert pdf.check_pdf_syntax() == []


def test_a_card_on_a_long_run_takes_at_most_12_kilobytes(example: Shop) -> None:
    printed = in_layouts(example, "lathe-chart-a5")
    cards = [replace(card, file_stem=f"{number}") for number, card in enumerate(printed * 4)]
    plan = sheet_run.sheet_plan(paper="A4", edge_to_edge=True)
    ((_, data),) = sheet_run.on_sheets(cards, plan)
    assert len(cards) == 24
    assert len(data) / len(cards) <= 12_000


def test_sheets_are_the_same_bytes_again(sheets_of: Sheets) -> None:
    assert sheets_of("blade-card-a6") == sheets_of("blade-card-a6")


def test_each_size_of_card_has_sheets_of_its_own(example: Shop) -> None:
    cards = in_layouts(example, "blade-card-a6", "overview-a5", "centre-card-a6")
    made = dict(sheet_run.on_sheets(cards, sheet_run.sheet_plan(paper="letter")))
    assert list(made) == ["sheet-letter-a6-landscape.pdf", "sheet-letter-a5-landscape.pdf"]


def test_every_reason_why_cards_do_not_fit_is_told_and_no_sheet_made(
    shop_with: Callable[..., Shop],
) -> None:
    many = ", ".join(f'"{d} mm"' for d in range(61, 100))
    shop = shop_with(('"60 mm",', f'"60 mm", {many},'))
    cards = in_layouts(shop, "lathe-chart-a5", "overview-a5")

    def every() -> Iterator[tuple[str, bytes]]:
        return sheet_run.on_sheets(cards, sheet_run.sheet_plan(paper="A4"))

    with pytest.raises(DoesNotFitError) as told:
        list(every())
    lines = str(told.value).splitlines()
    assert len(lines) == len(set(lines)) > 1
    assert all(line.startswith("layout ") for line in lines)


def test_a_document_of_one_page_asks_for_no_duplex() -> None:
    page = Page(width=100.0, height=50.0, items=())
    with pikepdf.open(
        io.BytesIO(render_pdf(Document(title="t", subject="s", pages=(page,))))
    ) as pdf:
        assert "/Duplex" not in pdf.Root.ViewerPreferences


def test_the_foot_is_measured_as_it_is_set() -> None:
    plan: SheetPlan = plan_sheets(paper="A4", hole=True, laminate="together")
    imposed = sheet_run.imposition(A6, "A6", plan)
    size = (A6[0], A6[1])
    blank = Page(width=size[0], height=size[1], items=())
    front = next(imposed.sheets([Leaf(name="x", front=blank, back=blank)]))
    low = max(item.y for item in front.items if hasattr(item, "text"))
    assert imposed.places.foot is not None
    assert imposed.places.foot < low <= 297.0 - 6.5
    assert all(
        item.x + measure(item.text, item.face, item.size) <= 210.0 - 6.5 + 0.01
        for item in front.items
        if hasattr(item, "text") and item.align.value == "left"
    )
