"""`compare`: what it prints and writes, and what it says of files it cannot use."""

import csv
import io
import json
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from chartgen.description.example import example_text

Chartgen = Callable[..., subprocess.CompletedProcess[str]]
Inside = Callable[..., tuple[int, str, str]]
ExampleWith = Callable[..., str]
SWAP = Path(__file__).parents[2] / "output_examples" / "motor-swap"
BOTH = (str(SWAP / "before.toml"), str(SWAP / "after.toml"))
# The drive of the new motor turns the fastest belt faster than the lathe may: told every time.
MIND = (
    "Mind: the drive can turn the spindle faster than this lathe may (2000 rev/min): belt 6 "
    "(2700 rev/min). Set the drive's highest frequency or the knob's end so that it cannot. No "
    "card goes above the limit.\n"
)
CARD = "change-card-a5-shed-at-number-nine.pdf"


def test_it_tells_what_moved_and_writes_nothing_unasked(chartgen: Chartgen, tmp_path: Path) -> None:
    done = chartgen("compare", *BOTH)
    assert (done.returncode, done.stderr) == (0, MIND)
    assert done.stdout.startswith("What changed, Invented belt lathe 110\n")
    assert "  lathe.motor.power                     550 W → 750 W\n" in done.stdout
    assert "\nStale: take down and print again\n  lathe-chart-a5-mild-steel: " in done.stdout
    assert list(tmp_path.iterdir()) == []


def test_the_three_commands_of_the_readme_tell_the_story(inside: Inside, tmp_path: Path) -> None:
    text = (SWAP.parents[1] / "README.md").read_text("utf-8")
    block = text.split("<!-- swap -->\n```sh\n")[1].split("\n```")[0]
    folder = "output_examples/motor-swap"
    said = []
    for line in block.splitlines():
        program, *words = line.replace(folder, str(SWAP)).split()
        assert program == "chartgen"
        said.append(inside(*words))
    assert [code for code, _, _ in said] == [0, 0, 0]
    assert [err for _, _, err in said[1:]] == [MIND, MIND]
    written = {path.name for path in (tmp_path / "cards").iterdir()}
    stale = said[1][1].split("Stale: take down and print again\n")[1].split("\n\n")[0]
    for line in stale.splitlines():
        assert f"{line.split(':')[0].strip()}.pdf" in written
    assert CARD in written


def test_with_a_folder_it_writes_the_card_and_names_it(inside: Inside, tmp_path: Path) -> None:
    plain = inside("compare", *BOTH)[1]
    code, out, err = inside("compare", *BOTH, "--out", "a/b")
    assert (code, err) == (0, MIND)
    assert out == f"{plain}{Path('a/b') / CARD}\n"
    assert (tmp_path / "a/b" / CARD).read_bytes().startswith(b"%PDF-")


def test_csv_json_and_text_tell_the_same_cells(inside: Inside) -> None:
    text = inside("compare", *BOTH)[1]
    lines = list(csv.DictReader(io.StringIO(inside("compare", *BOTH, "--csv")[1])))
    told = json.loads(inside("compare", *BOTH, "--json")[1])
    assert [line["Ø mm"] for line in lines] == [cell["diameter"] for cell in told["moved"]]
    for line, cell in zip(lines, told["moved"], strict=True):
        for side in ("before", "now"):
            parts = cell["before" if side == "before" else "after"]
            assert [line[f"{side} {name}"] for name in ("rev/min", "mm/rev", "s/turn", "sign")] == [
                parts[name] for name in ("speed", "feed", "pace", "sign")
            ]
            assert parts["speed"] in text
        assert (line["now limited by"], line["moved in"].split(", ")) == (
            cell["limit"],
            cell["moved"],
        )
    assert all(line in text for line in told["summary"])


@pytest.mark.parametrize("form", ["--csv", "--json"])
def test_a_program_that_reads_the_answer_gets_nothing_else(inside: Inside, form: str) -> None:
    plain = inside("compare", *BOTH, form)[1]
    code, out, err = inside("compare", *BOTH, form, "--out", "cards")
    assert (code, out) == (0, plain)
    assert err == f"{MIND}{Path('cards') / CARD}\n"


def test_the_same_file_twice_has_moved_nothing(inside: Inside) -> None:
    code, out, err = inside("compare", BOTH[0], BOTH[0])
    assert (code, err) == (0, "")
    assert "Nothing on the cards has moved.\n" in out
    assert "Stale" not in out


def test_a_file_that_is_no_shop_file_is_told_by_its_side(inside: Inside, tmp_path: Path) -> None:
    (tmp_path / "old.toml").write_text("lathe = 3\n", "utf-8")
    (tmp_path / "notes.txt").write_text("bought a motor\n", "utf-8")
    code, out, err = inside("compare", "old.toml", BOTH[1])
    assert (code, out) == (2, "")
    assert all(line.startswith("BEFORE: old.toml") for line in err.splitlines())
    code, out, err = inside("compare", BOTH[0], "notes.txt")
    assert (code, out) == (2, "")
    assert err.startswith("AFTER: notes.txt:1: ")
    assert len(err.splitlines()) == 1


def test_the_faults_of_both_files_are_told_at_once(inside: Inside, tmp_path: Path) -> None:
    (tmp_path / "old.toml").write_text(
        example_text().decode().replace('kind = "inverter"', 'kind = "steam"'), "utf-8"
    )
    code, out, err = inside("compare", "old.toml", "none.toml")
    assert (code, out) == (2, "")
    assert [line.split(":")[:2] for line in err.splitlines()] == [
        ["BEFORE", " old.toml"],
        ["AFTER", " none.toml"],
    ]


def test_a_broken_pdf_is_told_to_be_one(inside: Inside, tmp_path: Path) -> None:
    (tmp_path / "card.pdf").write_bytes(b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n")
    code, out, err = inside("compare", "card.pdf", BOTH[1])
    assert (code, out) == (2, "")
    assert err == (
        "BEFORE: card.pdf: is damaged and cannot be read as a PDF; give the file that chartgen "
        "wrote, or make the card anew from its shop file.\n"
    )


def test_no_material_in_common_is_one_message_and_leaves_the_card_that_was_there(
    inside: Inside, tmp_path: Path
) -> None:
    inside("compare", *BOTH, "--out", ".")
    kept = (tmp_path / CARD).read_bytes()
    text = (SWAP / "after.toml").read_text("utf-8")
    other = text.replace('["mild-steel", "stainless-304", "aluminium-6082"]', '["ptfe"]')
    assert other != text
    (tmp_path / "other.toml").write_text(other, "utf-8")
    code, out, err = inside("compare", BOTH[0], "other.toml", "--out", ".")
    assert (code, out) == (2, "")
    assert err.startswith("BEFORE and AFTER print no material in common (mild-steel, ")
    assert len(err.splitlines()) == 1
    assert (tmp_path / CARD).read_bytes() == kept
    assert {path.name for path in tmp_path.iterdir()} == {CARD, "other.toml"}


def test_a_file_is_missing_and_said_so(inside: Inside) -> None:
    code, out, err = inside("compare", BOTH[0])
    assert (code, out) == (2, "")
    assert "AFTER" in err


def test_a_doubt_about_the_new_shop_is_told_beside(inside: Inside, tmp_path: Path) -> None:
    text = (SWAP / "after.toml").read_text("utf-8")
    (tmp_path / "my.toml").write_text(text.replace('"3500 rpm"', '"1500 rpm"'), "utf-8")
    code, _, err = inside("compare", BOTH[0], "my.toml")
    assert code == 0
    assert "Mind: the spindle can turn 2000 rev/min" in err


def test_make_tells_that_a_change_card_is_not_its_own(
    inside: Inside, tmp_path: Path, example_with: ExampleWith
) -> None:
    (tmp_path / "my.toml").write_text(
        example_with(('"centre-card-a6"]', '"change-card-a5"]')), "utf-8"
    )
    code, out, err = inside("make", "my.toml")
    assert (code, out) == (2, "")
    assert err.endswith(
        "print.layouts[4]: 'change-card-a5' is the card of a change from one shop file to another. "
        "Leave it out here; `chartgen compare BEFORE AFTER --out DIR` makes it.\n"
    )
    assert not (tmp_path / "cards").exists()


def test_german_cards_are_compared_in_german_but_for_a_program_in_english(
    inside: Inside, tmp_path: Path
) -> None:
    german = []
    for path in map(Path, BOTH):
        text = path.read_text("utf-8")
        assert text.count("[print]\n") == 1
        german.append(tmp_path / path.name)
        german[-1].write_text(text.replace("[print]\n", '[print]\nlanguage = "de"\n'), "utf-8")
    names = tuple(map(str, german))
    _, text, _ = inside("compare", *names)
    assert text.startswith("Was sich geändert hat, Invented belt lathe 110\n")
    assert "\nVeraltet: abnehmen und neu drucken\n" in text
    for option in ("--json", "--csv"):
        (_, said, _), (_, english, _) = (
            inside("compare", *names, option),
            inside("compare", *BOTH, option),
        )
        assert said != text
        if option == "--csv":
            assert said == english
        else:
            codes = [json.loads(one).pop("check") for one in (said, english)]
            # The code is that of the card, which is German.
            assert codes[0] != codes[1]
            assert codes[0] in text
            assert json.loads(said)["moved"] == json.loads(english)["moved"]
            assert json.loads(said)["summary"] == json.loads(english)["summary"]
