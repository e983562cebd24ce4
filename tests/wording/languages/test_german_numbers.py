"""Numbers in German: the same digits, a decimal comma, and columns that stand on it."""

import json
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from click.testing import CliRunner

from chartgen import pipeline
from chartgen.cli import commands
from chartgen.description.example import example_text
from chartgen.layout.layout_file import load_layout
from chartgen.layout.placed import Face, Text
from chartgen.layout.sheets.impose import Imposition
from chartgen.layout.sheets.plan import plan_sheets
from chartgen.model.shop import Language, LengthUnits, Shop
from chartgen.renderers.fonts import measure
from chartgen.wording import numbers
from chartgen.wording.language import speaking

MM, INCH = LengthUnits.METRIC, LengthUnits.INCH


@pytest.mark.parametrize(
    ("write", "english", "german"),
    [
        (lambda: numbers.write_feed(0.05, MM), "0.050", "0,050"),
        (lambda: numbers.write_feed(0.0508, INCH), "0.0020", "0,0020"),
        (lambda: numbers.write_feed_floor(0.0271, MM), "0.028", "0,028"),
        (lambda: numbers.write_feed_ceiling(float("inf"), MM), "none", "keine"),
        (lambda: numbers.write_speed(1270.0), "1270", "1270"),
        (lambda: numbers.write_speed(8.5), "8.5", "8,5"),
        (lambda: numbers.write_cutting_speed(12.5, MM), "12.5 m/min", "12,5 m/min"),
        (lambda: numbers.write_length(12.7, MM), "12.7", "12,7"),
        (lambda: numbers.write_length(12.7, INCH), "1/2", "1/2"),
        (lambda: numbers.write_length(10.0, INCH), "0.394", "0,394"),
        (lambda: numbers.write_slack(0.1, MM), "0.10", "0,10"),
        (lambda: numbers.write_feed_rate(63.5, MM), "63.5 mm/min", "63,5 mm/min"),
        (lambda: numbers.write_feed_rate(63.5, INCH), "2.50 in/min", "2,50 in/min"),
        (lambda: numbers.write_seconds(2.25), "2.2", "2,2"),
        (
            lambda: numbers.write_feed_floor_whole(0.0254, INCH),
            "0.026 mm/rev (0.0010 in/rev)",
            "0,026 mm/U (0,0010 in/U)",
        ),
        (lambda: numbers.write_span(["1", "2", "3"]), "1 to 3", "1 bis 3"),
        (lambda: numbers.write_span(["1", "1"]), "1", "1"),
    ],
)
def test_a_number_is_written_with_the_sign_of_the_language(
    write: Callable[[], str], english: str, german: str
) -> None:
    assert write() == english
    with speaking("de"):
        assert write() == german


def _feeds(shop: Shop, sign: str) -> Iterator[tuple[float, str]]:
    """Yield where the decimal sign of each feed of a chart stands, with the feed."""
    (finished, *_) = pipeline.lay_out(pipeline.printed_cards(shop))
    cells = {cell for card in pipeline.printed_cards(shop)[:1] for cell in _texts(card.chart)}
    for item in finished.document.pages[0].items:
        if isinstance(item, Text) and item.text in cells and sign in item.text:
            head = item.text.partition(sign)[0]
            yield round(item.x + measure(head, Face.REGULAR, item.size), 3), item.text


def _texts(chart: object) -> set[str]:
    return {cell.feed for row in chart.rows for cell in row} - {""}  # type: ignore[attr-defined]


def test_the_numbers_of_a_column_stand_on_their_decimal_comma(example: Shop) -> None:
    shop = pipeline.with_materials(pipeline.with_layouts(example, ["lathe-chart-a5"]), ["c45"])
    german = replace(shop, request=replace(shop.request, language=Language.GERMAN))
    english_feeds = list(_feeds(shop, "."))
    german_feeds = list(_feeds(german, ","))
    assert [text.replace(",", ".") for _, text in german_feeds] == [t for _, t in english_feeds]
    columns = len(shop.blades)
    assert len(english_feeds) > 10
    assert len({x for x, _ in german_feeds}) == len({x for x, _ in english_feeds}) == columns


def test_the_foot_of_a_sheet_is_said_in_the_language_of_its_cards() -> None:
    layout = load_layout("blade-card-a6")

    def words(language: str, flip: str, laminate: str) -> str:
        plan = plan_sheets(paper="A4", flip=flip, laminate=laminate, hole=True)
        imposed = Imposition(
            plan, card=layout.page, pouch=layout.pouch, measure=measure, language=language
        )
        return " ".join(imposed._words)  # noqa: SLF001 - what its pages print, unbroken

    assert "lange Kante wenden" in words("de", "long", "singly")
    together = words("de", "short", "together")
    assert "kurze Kante wenden" in together
    assert "3 mm Folie" in together
    assert "Öse" in together
    assert "flip on the short edge" in words("en", "short", "together")


def test_csv_and_json_of_a_german_shop_are_those_of_an_english_one(tmp_path: Path) -> None:
    text = example_text().decode().replace('language = "en"', 'language = "de"')
    path = tmp_path / "shop.toml"
    path.write_text(text, "utf-8")
    for form in ("--csv", "--json"):
        spoken = [
            CliRunner().invoke(commands, ["table", *words, "--material", "c45", form]).output
            for words in ([str(path)], [])
        ]
        assert spoken[0] == spoken[1]
    assert json.loads(spoken[0])["units"]["speed"] == "rev/min"
    terminal = CliRunner().invoke(commands, ["table", str(path), "--material", "c45"]).output
    assert "Stahl C45" in terminal
    assert "1/min" in terminal
