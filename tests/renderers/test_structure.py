"""A card read aloud: its structure as an independent parser gives it back, in order."""

import io
from collections.abc import Iterator
from typing import Any

import pdfplumber
import pdfua
import pikepdf
import pytest

from chartgen import pipeline
from chartgen.layout.layout_file import class_layout_names, job_layout_names, layout_names
from chartgen.model.shop import Shop
from chartgen.wording.card import PrintedCard
from chartgen.wording.figure import PrintedCurves
from chartgen.wording.printed import PrintedCell, PrintedChart, PrintedTable

Rendered = dict[str, list[tuple[PrintedCard, bytes]]]
Element = dict[str, Any]
each_layout = pytest.mark.parametrize(
    "name", [*layout_names(), *job_layout_names(), *class_layout_names()]
)
# ISO 32000-1, 14.8.4: what may stand in what, for the types used here.
PARENTS = {
    "H1": {None},
    "H2": {None},
    "P": {None},
    "L": {None},
    "LI": {"L"},
    "Lbl": {"LI"},
    "LBody": {"LI"},
    "Table": {None},
    "TR": {"Table"},
    "TH": {"TR"},
    "TD": {"TR"},
    "Figure": {None, "H2", "Lbl"},
}


class Aloud:
    """A document as pdfplumber reads it: the tree, and the text of each of its elements."""

    def __init__(self, data: bytes) -> None:
        self._pdf = pdfplumber.open(io.BytesIO(data))
        self.tree: list[Element] = self._pdf.structure_tree
        self._texts: dict[tuple[int, int], str] = {}
        for page in self._pdf.pages:
            for char in page.chars:
                if char["mcid"] is not None:
                    key = page.page_number, char["mcid"]
                    self._texts[key] = self._texts.get(key, "") + char["text"]

    def text(self, element: Element) -> str:
        if element.get("alt_text"):
            return str(element["alt_text"])
        own = "".join(
            self._texts.get((element["page_number"], mcid), "") for mcid in element.get("mcids", [])
        )
        return own + "".join(self.text(child) for child in element.get("children", []))

    def elements(self, kind: str) -> list[Element]:
        return [element for element, _ in self.walk() if element["type"] == kind]

    def walk(self) -> Iterator[tuple[Element, str | None]]:
        def below(element: Element, parent: str | None) -> Iterator[tuple[Element, str | None]]:
            yield element, parent
            for child in element.get("children", []):
                yield from below(child, element["type"])

        for top in self.tree:
            yield from below(top, None)

    def table(self, element: Element) -> list[list[tuple[str, str]]]:
        """Return rows of (kind, text), each cell in every place it spans."""
        rows: list[list[tuple[str, str] | None]] = []
        grid: dict[tuple[int, int], tuple[str, str]] = {}
        for number, row in enumerate(element["children"]):
            column = 0
            for cell in row["children"]:
                while (number, column) in grid:
                    column += 1
                attributes = cell.get("attributes", {})
                for down in range(attributes.get("RowSpan", 1)):
                    for across in range(attributes.get("ColSpan", 1)):
                        grid[number + down, column + across] = (
                            f"{cell['type']}{attributes.get('Scope', '')}",
                            self.text(cell).strip(),
                        )
                column += attributes.get("ColSpan", 1)
        width = {sum(1 for r, _ in grid if r == number) for number in range(len(rows) or 1)}
        assert len(width) == 1
        count = 1 + max(row for row, _ in grid)
        return [
            [grid[number, column] for column in range(1 + max(c for _, c in grid))]
            for number in range(count)
        ]


def parts_of(cell: PrintedCell, parts: list[str]) -> list[str]:
    """Return what a cell of the card says in each of the columns below its heading."""
    if cell.way_out:
        return [f"– {cell.way_out} {cell.sign}".strip()] * len(parts)
    texts = {
        "speed": f"{cell.speed} {cell.position}".strip(),
        "feed": cell.feed,
        "pace": cell.pace,
    }
    said = [texts[part] for part in parts]
    said[-1] = f"{said[-1]} {cell.sign}".strip()
    return said


@each_layout
def test_the_tree_is_built_as_the_standard_allows(name: str, rendered: Rendered) -> None:
    for _, data in rendered[name]:
        found = list(Aloud(data).walk())
        assert found[0][0]["type"] == "H1"
        assert all(parent in PARENTS[element["type"]] for element, parent in found)


@each_layout
def test_a_card_begins_with_its_title_and_has_a_heading_for_each_part(
    name: str, rendered: Rendered
) -> None:
    for card, data in rendered[name][:3]:
        aloud = Aloud(data)
        assert [aloud.text(title).strip() for title in aloud.elements("H1")] == [card.chart.title]
        headings = " ".join(aloud.text(heading) for heading in aloud.elements("H2"))
        assert "What this card assumes" in headings
        assert all(caution.signal in headings for caution in card.cautions)


@pytest.mark.parametrize("name", ["lathe-chart-a5", "overview-a5"])
def test_a_chart_reads_row_by_row_each_cell_under_its_headings(
    name: str, rendered: Rendered
) -> None:
    for card, data in rendered[name]:
        chart = card.chart
        assert isinstance(chart, PrintedChart)
        aloud = Aloud(data)
        (table,) = aloud.elements("Table")
        rows = aloud.table(table)
        parts = [
            part
            for part, heading in (
                ("speed", chart.speed_heading),
                ("feed", chart.feed_heading),
                ("pace", chart.pace_heading),
            )
            if ("THColumn", heading) in rows[1]
        ]
        names, units = rows[:2]
        assert names == [
            ("THColumn", chart.corner),
            *[("THColumn", " ".join(c.heading.split())) for c in chart.columns for _ in parts],
        ]
        assert units[0] == ("THColumn", chart.corner)
        for diameter, cells, row in zip(chart.stub, chart.rows, rows[2:], strict=True):
            assert row[0] == ("THRow", diameter)
            said = [text for cell in cells for text in parts_of(cell, parts)]
            assert row[1:] == [("TD", text) for text in said]


@pytest.mark.parametrize("name", ["blade-card-a6", "centre-card-a6"])
def test_a_plain_table_reads_as_it_is_printed(name: str, rendered: Rendered) -> None:
    for card, data in rendered[name]:
        table = card.chart
        assert isinstance(table, PrintedTable)
        aloud = Aloud(data)
        (element,) = aloud.elements("Table")
        head, *rows = aloud.table(element)
        assert head == [("THColumn", " ".join(text.split())) for text in table.headings]
        for printed, row in zip(table.rows, rows, strict=True):
            assert row == [("THRow", printed[0]), *(("TD", text) for text in printed[1:])]


@each_layout
def test_curves_and_signs_are_told_in_words(name: str, rendered: Rendered) -> None:
    for card, data in rendered[name][:3]:
        aloud = Aloud(data)
        figures = [aloud.text(figure) for figure in aloud.elements("Figure")]
        assert all(figures)
        assert f"QR code that says CHARTGEN {card.check_code}" in figures
        drawn = {caution.pictogram for caution in card.cautions if caution.pictogram}
        assert len(figures) > len(drawn)
        if isinstance(card.chart, PrintedCurves):
            assert card.chart.description in figures


@each_layout
def test_everything_said_on_a_card_is_read_and_lines_are_kept_apart(
    name: str, rendered: Rendered
) -> None:
    for card, data in rendered[name][:3]:
        aloud = Aloud(data)
        read = " ".join(" ".join(aloud.text(top).split()) for top in aloud.tree)
        for text in (
            *(caution.text for caution in card.cautions),
            *card.assumptions,
            card.deference,
            card.identity,
            f"check {card.check_code}",
        ):
            assert " ".join(text.split()) in read


@each_layout
def test_all_that_is_drawn_is_content_or_an_artifact(name: str, rendered: Rendered) -> None:
    paints = {"f", "F", "f*", "S", "s", "B", "b", "b*", "Tj", "TJ", "'", "Do", "sh"}
    for _, data in rendered[name][:2]:
        with pikepdf.open(io.BytesIO(data)) as pdf:
            for number, page in enumerate(pdf.pages):
                assert page.obj.Tabs == "/S"
                assert int(page.obj.StructParents) == number
                depth, mcids = 0, []
                for operands, operator in pikepdf.parse_content_stream(page):
                    match str(operator):
                        case "BDC":
                            depth += 1
                            mcids.append(int(operands[1].MCID))
                        case "BMC":
                            assert operands[0] == "/Artifact"
                            depth += 1
                        case "EMC":
                            depth -= 1
                        case paint if paint in paints:
                            assert depth == 1, paint
                    assert depth in {0, 1}
                assert mcids == list(range(len(mcids)))
                owners = pdf.Root.StructTreeRoot.ParentTree.Nums[2 * number + 1]
                assert len(owners) == len(mcids)
                for mcid, owner in zip(mcids, owners, strict=True):
                    kids = owner.K if isinstance(owner.K, pikepdf.Array) else [owner.K]
                    assert mcid in [int(kid) for kid in kids if not hasattr(kid, "keys")]
                    assert owner.Pg.objgen == page.obj.objgen


# The rules of PDF/UA-1 that a machine can check, by an independent package.
@each_layout
def test_an_outside_check_of_accessibility_finds_no_error(name: str, rendered: Rendered) -> None:
    for _, data in rendered[name][:2]:
        report = pdfua.validate(io.BytesIO(data))
        errors = [str(f) for f in report.findings if f.severity is pdfua.Severity.ERROR]
        assert errors == []


def test_a_change_card_reads_each_moved_cell_before_and_now(
    motor_swap: tuple[Shop, Shop],
) -> None:
    card = pipeline.changed_card(*motor_swap)
    (finished,) = pipeline.lay_out([card])
    aloud = Aloud(pipeline.render(finished))
    rows = {
        tuple(text for _, text in row)
        for table in aloud.elements("Table")
        for row in aloud.table(table)
    }
    cells = [row for group in card.chart.groups for row in group.rows]
    assert cells
    for cell in cells:
        sides = []
        for side in (cell.before, cell.after):
            if side.way_out:
                sides += [f"– {side.way_out} {side.sign}".strip()] * 2
            else:
                sides += [
                    f"{side.speed} {side.position}".strip(),
                    f"{side.feed} {side.sign}".strip(),
                ]
        assert (cell.diameter, *sides, cell.limit) in rows
