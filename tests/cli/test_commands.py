"""The commands: what each prints, and that all outputs of a chart agree."""

import csv
import io
import json
import re
import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from chartgen import __version__, pipeline
from chartgen.description.example import example_text
from chartgen.errors import DoesNotFitError
from chartgen.layout.layout_file import layout_names
from chartgen.reference.tables import load_bibliography, material_keys
from chartgen.wording.printed import PrintedCell

CUT = ("--material", "c45", "--tool", "A", "--diameter", "25 mm")
TRIED = ("--speed", "1000 rpm", "--feed", "0.05 mm/rev")
Chartgen = Callable[..., subprocess.CompletedProcess[str]]
Inside = Callable[..., tuple[int, str, str]]
ExampleWith = Callable[..., str]


def test_make_writes_every_card_of_the_built_in_shop_and_names_each(
    chartgen: Chartgen, tmp_path: Path
) -> None:
    done = chartgen("make")
    shop = pipeline.describe(None, pipeline.EXAMPLE_NAME)
    wanted = [str(Path("cards") / f"{c.file_stem}.pdf") for c in pipeline.printed_cards(shop)]
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.splitlines() == wanted
    assert all((tmp_path / name).read_bytes().startswith(b"%PDF-") for name in wanted)
    assert len(list((tmp_path / "cards").iterdir())) == len(wanted)


def test_make_takes_materials_and_a_nested_folder(inside: Inside, tmp_path: Path) -> None:
    code, out, _ = inside("make", "--material", "ptfe", "--material", "c60", "--out", "a/b/c")
    assert code == 0
    written = {path.name for path in (tmp_path / "a/b/c").iterdir()}
    assert written == {Path(line).name for line in out.splitlines()}
    assert {"lathe-chart-a5-ptfe.pdf", "lathe-chart-a5-c60.pdf"} <= written
    assert not any("mild-steel" in name for name in written)


def test_make_reads_the_shop_file_it_is_given(
    inside: Inside, tmp_path: Path, example_with: ExampleWith
) -> None:
    text = example_with(("Invented training shop", "Corner bench"))
    (tmp_path / "my.toml").write_text(text, "utf-8")
    assert inside("make", "my.toml", "--material", "c45")[0] == 0
    assert inside("check", "my.toml")[1].startswith("Corner bench, revision A, 2026-11-25\n")


def test_table_csv_json_and_the_card_tell_the_same(inside: Inside) -> None:
    code, text, _ = inside("table", "--material", "c45")
    assert code == 0
    lines = list(csv.DictReader(io.StringIO(inside("table", "--material", "c45", "--csv")[1])))
    answer = json.loads(inside("table", "--material", "c45", "--json")[1])
    chart = pipeline.table_card(pipeline.describe(None, "built in"), "c45").chart

    def of_json(cell: dict[str, Any]) -> tuple[str, ...]:
        return tuple(cell[k] for k in ("speed", "position", "feed", "pace", "sign", "way_out"))

    def of_card(cell: PrintedCell) -> tuple[str, ...]:
        return (cell.speed, cell.position, cell.feed, cell.pace, cell.sign, cell.way_out)

    def of_csv(line: dict[str, str]) -> tuple[str, ...]:
        units = answer["units"]
        names = (units["speed"], "position", units["feed"], units["pace"], "sign", "use instead")
        return tuple(line[name] for name in names)

    cells = [of_card(cell) for row in chart.rows for cell in row]
    assert [of_json(cell) for row in answer["rows"] for cell in row["cells"]] == cells
    assert [of_csv(line) for line in lines] == cells
    assert [row["diameter"] for row in answer["rows"]] == list(chart.stub)
    assert answer["legend"] == {entry.sign: entry.sentence for entry in chart.legend}
    shown = text.split()
    assert all(word in shown for cell in cells for part in cell for word in part.split())


def test_a_table_needs_no_layout_with_a_lathe_chart(
    inside: Inside, tmp_path: Path, example_with: ExampleWith
) -> None:
    text = example_with(
        ('["lathe-chart-a5", "overview-a5", "blade-card-a6", "centre-card-a6"]', '["overview-a5"]')
    )
    (tmp_path / "my.toml").write_text(text, "utf-8")
    assert inside("table", "my.toml", "--material", "c45")[1].startswith("C45 steel ")


def test_try_says_inside_and_what_is_recommended(inside: Inside) -> None:
    code, out, _ = inside("try", *CUT, *TRIED)
    assert code == 0
    verdict, advice, end = out.split("\n")
    assert (verdict, end) == ("INSIDE", "")
    assert re.match(r"Between the floor [\d.]+ \(.+\) and the ceiling [\d.]+ mm/rev", advice)


@pytest.mark.parametrize(
    ("feed", "side"), [("0.001 mm/rev", "TIMID"), ("0.05 mm/rev", "INSIDE"), ("1 mm/rev", "BOLD")]
)
def test_try_tells_timid_from_bold_in_words_and_json(inside: Inside, feed: str, side: str) -> None:
    words = ("try", *CUT, "--speed", "1000 rpm", "--feed", feed)
    said, told = inside(*words)[1], json.loads(inside(*words, "--json")[1])
    assert side in said.partition("\n")[0]
    assert said == f"{told['verdict'].upper()}\n{told['advice']}\n"
    assert told["feed_mm_rev"] == pytest.approx(float(feed.split(maxsplit=1)[0]))
    assert told["spindle_speed_rpm"] == pytest.approx(1000)
    limits = (told["floor"]["feed_mm_rev"], told["ceiling"]["feed_mm_rev"])
    assert (limits[0] <= told["feed_mm_rev"] <= limits[1]) == (side == "INSIDE")


def test_try_reads_inches_and_millimetres_alike(inside: Inside) -> None:
    metric = inside("try", *CUT[:4], "--diameter", "25.4 mm", *TRIED, "--json")[1]
    inch = inside("try", *CUT[:4], "--diameter", "1 in", *TRIED, "--json")[1]
    assert json.loads(metric) == json.loads(inch)


def test_a_blade_is_named_by_name_or_letter(inside: Inside) -> None:
    by_letter = inside("try", *CUT, *TRIED)
    by_name = inside("try", "--tool", "2.0 carbide", *CUT[:2], *CUT[4:], *TRIED)
    assert by_letter == by_name


def test_explain_shows_steps_with_sources_in_words_and_json(inside: Inside) -> None:
    text = inside("explain", *CUT)[1]
    told = json.loads(inside("explain", *CUT, "--json")[1])
    assert len(told["steps"]) >= 5
    for step in told["steps"]:
        for key in ("title", "formula", "values", "result", "source"):
            assert step[key], step
            assert step[key] in text
    for part in ("ways_out", "sensitivity", "allowances"):
        assert told[part]
        assert all(f"\n  {line}\n" in text for line in told[part])
    assert text.startswith(told["heading"])


def test_json_holds_no_number_that_json_lacks(inside: Inside) -> None:
    for material in ("ptfe", "titanium-pure", "c45"):
        out = inside("explain", "--material", material, *CUT[2:], "--json")[1]

        def refuse(word: str) -> None:
            raise AssertionError(word)

        json.loads(out, parse_constant=refuse)


def test_check_says_what_was_understood(inside: Inside) -> None:
    code, out, err = inside("check")
    assert (code, err) == (0, "")
    lines = out.splitlines()
    assert lines[:4] == [
        "Invented training shop, revision A, 2026-11-25",
        (
            "Motor: inverter, plate 750 W shaft, base 1400 rev/min, fastest 2800 rev/min, "
            "overload 150 %."
        ),
        "Cross-slide: 2 mm of tool travel a turn, 40 divisions. Spindle at most 2500 rev/min.",
        "Blades: 2.0 carbide cuts 2 mm; 3.0 carbide cuts 3 mm; 1.6 HSS cuts 1.587 mm.",
    ]
    assert lines[4].startswith("Invented bench lathe 125: ")
    shop = pipeline.describe(None, pipeline.EXAMPLE_NAME)
    number = len(pipeline.printed_cards(shop))
    assert lines[-1] == f"{number} cards, all of which fit their layouts."


# Sixty rows are too many for two of the four layouts.
def test_check_and_make_tell_every_card_that_does_not_fit_at_once(
    inside: Inside, tmp_path: Path, example_with: ExampleWith
) -> None:
    sizes = ", ".join(f'"{size} mm"' for size in range(3, 63))
    old = re.search(r"^diameters = \[.*?\]", example_text().decode(), re.MULTILINE | re.DOTALL)
    assert old
    (tmp_path / "my.toml").write_text(
        example_with((old.group(), f"diameters = [{sizes}]")), "utf-8"
    )
    code, out, err = inside("check", "my.toml")
    assert code == 2
    assert "fit their layouts" not in out
    told = err.splitlines()
    assert len(set(told)) == len(told)
    assert {line.split()[1] for line in told} == {"lathe-chart-a5", "overview-a5"}
    shop = pipeline.describe((tmp_path / "my.toml").read_bytes(), "my.toml")
    reasons = set()
    for card in pipeline.printed_cards(shop):
        try:
            pipeline.lay_out([card])
        except DoesNotFitError as error:
            reasons.add(str(error))
    assert set(told) == reasons
    assert inside("make", "my.toml") == (2, "", err)
    assert not (tmp_path / "cards").exists()


def test_doubts_are_told_by_check_and_beside_the_names_of_the_cards(
    inside: Inside, tmp_path: Path, example_with: ExampleWith
) -> None:
    doubt = (
        "Mind: the spindle can turn 2500 rev/min, the chuck is marked 2000; the cards keep to "
        "the chuck.\n"
    )
    (tmp_path / "my.toml").write_text(
        example_with(('marked_speed = "4000 rpm"', 'marked_speed = "2000 rpm"')), "utf-8"
    )
    code, out, err = inside("make", "my.toml", "--material", "c45")
    assert (code, err) == (0, doubt)
    assert all(line.endswith(".pdf") for line in out.splitlines())
    assert doubt in inside("check", "my.toml")[1]
    assert inside("make", "--material", "c45")[2] == ""


def test_the_example_can_be_checked_as_it_comes(chartgen: Chartgen, tmp_path: Path) -> None:
    example = chartgen("example")
    assert example.stdout == example_text().decode()
    (tmp_path / "my.toml").write_text(example.stdout, "utf-8")
    assert chartgen("check", "my.toml").stdout == chartgen("check").stdout


def test_the_example_can_be_piped_into_check(chartgen: Chartgen) -> None:
    done = chartgen("check", "/dev/stdin", stdin=example_text().decode())
    assert done.returncode == 0
    assert done.stdout == chartgen("check").stdout


def test_materials_lists_every_key(inside: Inside) -> None:
    lines = inside("materials")[1].splitlines()[3:]
    assert sorted(line.split()[0] for line in lines) == sorted(material_keys())


def test_sources_lists_every_publication(inside: Inside) -> None:
    out = inside("sources")[1]
    assert re.findall(r"^\[(.+?)\]", out, re.MULTILINE) == list(load_bibliography())


def test_version_is_told(chartgen: Chartgen) -> None:
    assert chartgen("--version").stdout == f"chartgen, version {__version__}\n"


def test_every_shipped_layout_can_be_asked_for(
    inside: Inside, tmp_path: Path, example_with: ExampleWith
) -> None:
    names = ", ".join(f'"{name}"' for name in layout_names())
    text = example_with(
        ('["lathe-chart-a5", "overview-a5", "blade-card-a6", "centre-card-a6"]', f"[{names}]")
    )
    (tmp_path / "my.toml").write_text(text, "utf-8")
    code, out, err = inside("make", "my.toml", "--material", "c45")
    assert (code, err) == (0, "")
    assert all(f"cards/{name}" in out for name in layout_names())
