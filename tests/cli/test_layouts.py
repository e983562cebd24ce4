"""Layouts on the command line: listed, an owner's own by path, and pictures of the pages."""

import io
import json
import re
import sys
from collections.abc import Callable
from pathlib import Path
from subprocess import CompletedProcess

import pdfplumber
import pytest
from PIL import Image

from chartgen import cli
from chartgen.description.example import example_text
from chartgen.layout.layout_file import every_layout_name, layout_text, load_layout

Chartgen = Callable[..., CompletedProcess[str]]
EXAMPLE = example_text().decode()
LAYOUTS_LINE = 'layouts = ["lathe-chart-a5", "overview-a5", "blade-card-a6", "centre-card-a6"]'
OWN = layout_text("lathe-chart-a6").replace('"0.5 m"', '"0.45 m"')
MILD = ("--material", "mild-steel")


def code_of(path: Path) -> str:
    with pdfplumber.open(io.BytesIO(path.read_bytes())) as pdf:
        found = re.search(r"check ([0-9A-Z]{4}-[0-9A-Z]{4})", pdf.pages[0].extract_text())
    assert found
    return found[1]


def lines_of(done: CompletedProcess[str]) -> list[str]:
    assert (done.returncode, done.stderr) == (0, "")
    return done.stdout.splitlines()


def test_every_layout_is_listed_with_its_page_and_pouch(chartgen: Chartgen) -> None:
    rows = lines_of(chartgen("layouts"))[2:]
    assert [row.split()[0] for row in rows] == list(every_layout_name())
    for row, layout in zip(rows, map(load_layout, every_layout_name()), strict=True):
        assert layout.page_name in row
        assert re.search(rf" {layout.pouch} ", row)


def test_a_layout_can_be_printed_to_start_ones_own_from(chartgen: Chartgen) -> None:
    done = chartgen("layouts", "pocket-card")
    assert (done.returncode, done.stdout) == (0, layout_text("pocket-card"))
    wrong = chartgen("layouts", "pocket-crad")
    assert (wrong.returncode, wrong.stdout) == (2, "")
    assert "Did you mean 'pocket-card'" in wrong.stderr


def test_the_schema_is_json(chartgen: Chartgen) -> None:
    said = json.loads(chartgen("layouts", "--schema").stdout)
    assert set(said["properties"]) >= {"page", "pouch", "side"}


def test_a_layout_of_ones_own_is_used_by_its_path(chartgen: Chartgen, tmp_path: Path) -> None:
    (tmp_path / "mine").mkdir()
    (tmp_path / "mine" / "shed.toml").write_text(OWN, "utf-8")
    made = lines_of(chartgen("make", *MILD, "--layout", "mine/shed.toml"))
    assert made == ["cards/shed-mild-steel.pdf", "cards/shed-mild-steel-2.pdf"]


def test_a_shop_file_names_it_from_its_own_folder(chartgen: Chartgen, tmp_path: Path) -> None:
    folder = tmp_path / "shop"
    folder.mkdir()
    text = EXAMPLE.replace(LAYOUTS_LINE, 'layouts = ["shed.toml", "lathe-chart-a5"]')
    assert text != EXAMPLE
    (folder / "shop.toml").write_text(text, "utf-8")
    (folder / "shed.toml").write_text(OWN, "utf-8")
    made = lines_of(chartgen("make", "shop/shop.toml", *MILD))
    assert made == [
        "cards/shed-mild-steel.pdf",
        "cards/shed-mild-steel-2.pdf",
        "cards/lathe-chart-a5-mild-steel.pdf",
    ]
    assert chartgen("check", "shop/shop.toml").returncode == 0
    same = chartgen("compare", "shop/shop.toml", "shop/shop.toml")
    assert same.returncode == 0


def test_the_check_code_holds_what_an_own_layout_says(chartgen: Chartgen, tmp_path: Path) -> None:
    codes = []
    for text in (OWN, OWN.replace("row_pitch = 1.6", "row_pitch = 1.5"), OWN):
        (tmp_path / "shed.toml").write_text(text, "utf-8")
        lines_of(chartgen("make", *MILD, "--layout", "shed.toml", "--layout", "lathe-chart-a5"))
        cards = tmp_path / "cards"
        codes.append(
            (
                code_of(cards / "shed-mild-steel.pdf"),
                code_of(cards / "lathe-chart-a5-mild-steel.pdf"),
            )
        )
    assert codes[0] == codes[2]
    assert codes[0][0] != codes[1][0]
    assert codes[0][1] == codes[1][1], "the card of a shipped layout does not depend on it"


@pytest.mark.parametrize(
    ("name", "text", "said"),
    [
        (
            "shed.toml",
            OWN.replace("columns = 1", "columns = 0"),
            ["side[1].columns: is out of bounds", "side[2].columns: is out of bounds"],
        ),
        ("lathe-chart-a5.toml", OWN, ["there is another layout by the name 'lathe-chart-a5'"]),
        ("My Shed.toml", OWN, ["'My Shed' cannot be the beginning of a card's name"]),
        (
            "shed.toml",
            layout_text("change-card-a5"),
            ["shed.toml:", "card: is the layout of a change card, which only `compare` makes."],
        ),
        ("shed.toml", "\xff", ["shed.toml"]),
    ],
)
def test_a_wrong_layout_writes_nothing(
    chartgen: Chartgen, tmp_path: Path, name: str, text: str, said: list[str]
) -> None:
    (tmp_path / name).write_text(text, "latin-1" if text == "\xff" else "utf-8")
    done = chartgen("make", *MILD, "--layout", name)
    assert (done.returncode, done.stdout) == (2, "")
    assert all(words in done.stderr for words in said), done.stderr
    assert not (tmp_path / "cards").exists()


def test_a_pouch_smaller_than_the_card_is_answered_with_those_that_fit(
    chartgen: Chartgen, tmp_path: Path
) -> None:
    (tmp_path / "shed.toml").write_text(OWN.replace('pouch = "A6"', 'pouch = "A7"'), "utf-8")
    done = chartgen("make", *MILD, "--layout", "shed.toml")
    assert done.returncode == 2
    assert re.match(r"shed\.toml:\d+: pouch: the film A7 \(80 x 111 mm\) is too small", done.stderr)
    assert "Use one of: A6, " in done.stderr


def test_a_layout_that_is_not_there_is_told_with_the_mend(chartgen: Chartgen) -> None:
    done = chartgen("make", *MILD, "--layout", "nowhere.toml")
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr == (
        "nowhere.toml: there is no such file; check its path; `chartgen layouts` lists those "
        "there are.\n"
    )


def test_rows_that_do_not_fit_are_refused_with_the_layouts_that_hold_them(
    chartgen: Chartgen, tmp_path: Path
) -> None:
    small = layout_text("pocket-card").replace('pouch = "badge"', 'pouch = "A6"')
    small = small.replace("badge portrait", "A7 landscape")
    (tmp_path / "small.toml").write_text(small, "utf-8")
    done = chartgen("make", *MILD, "--layout", "small.toml")
    assert done.returncode == 2
    said = re.match(
        r"layout small holds (\d+) of the 12 rows of 'Mild steel' at its reading distance: drop "
        r"(\d+) diameters, or use a layout that holds it: (.+)\n",
        done.stderr,
    )
    assert said, done.stderr
    assert int(said[1]) + int(said[2]) == 12
    for name in said[3].split(", "):
        assert chartgen("make", *MILD, "--layout", name).returncode == 0


def test_a_picture_of_each_page_stands_beside_its_card(chartgen: Chartgen, tmp_path: Path) -> None:
    words = ("make", *MILD, "--layout", "lathe-chart-a5", "--png")
    assert lines_of(chartgen(*words)) == [
        "cards/lathe-chart-a5-mild-steel.pdf",
        "cards/lathe-chart-a5-mild-steel-page-1.png",
        "cards/lathe-chart-a5-mild-steel-page-2.png",
    ]
    files = sorted((tmp_path / "cards").glob("*.png"))
    first = [file.read_bytes() for file in files]
    # A5 landscape at 150 dots an inch: 210 x 148 mm (ISO 216).
    sizes = [Image.open(io.BytesIO(data)).size for data in first]
    for width, height in sizes:
        assert width == pytest.approx(210 / 25.4 * 150, abs=1.0)
        assert height == pytest.approx(148 / 25.4 * 150, abs=1.0)
    for data in first:
        darkest, lightest = Image.open(io.BytesIO(data)).convert("L").getextrema()
        assert (darkest, lightest) == (0, 255)
    lines_of(chartgen(*words))
    assert [file.read_bytes() for file in files] == first


def test_without_the_library_for_pictures_the_message_says_how_to_get_it(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setitem(sys.modules, "pypdfium2", None)
    monkeypatch.setattr("sys.argv", ["chartgen", "make", *MILD, "--png"])
    with pytest.raises(SystemExit) as leaving:
        cli.main()
    assert leaving.value.code == 2
    assert "pip install pypdfium2" in capsys.readouterr().err
    assert not (tmp_path / "cards").exists()
