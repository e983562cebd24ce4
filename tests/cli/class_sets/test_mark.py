"""The command that marks: what it says of right and wrong answers, and what it refuses."""

import csv
import io
import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pypdfium2
import pytest

Inside = Callable[..., tuple[int, str, str]]
Written = Callable[..., str]
Snapshot = Callable[[str], dict[str, bytes]]

ROSTER = "number,name\n1,Zoë Ångström\n2,Иван\n3,Ann Ash\n"
Marked = Callable[..., tuple[int, str, str]]


@pytest.fixture
def key(inside: Inside, class_file: Written, tmp_path: Path) -> dict[str, Any]:
    """Return the papers of a class that was made in this folder, as its key has them."""
    code, _, err = inside("class", class_file(roster=ROSTER), "--jobs", "1")
    assert code == 0, err
    content: dict[str, Any] = json.loads((tmp_path / "class" / "key.json").read_bytes())
    return {str(paper["number"]): paper for paper in content["key"]["class"]["papers"]}


@pytest.fixture
def marked(inside: Inside, tmp_path: Path) -> Marked:
    """Return a function: rows of answers -> what marking them says."""

    def run(
        *rows: str, heading: str = "number,name,q1,q2,q3", words: tuple[str, ...] = ()
    ) -> tuple[int, str, str]:
        text = "".join(f"{line}\n" for line in (heading, *rows))
        (tmp_path / "typed.csv").write_text(text, "utf-8")
        return inside("mark", "class/key.json", "typed.csv", *words)

    return run


def right(paper: dict[str, Any]) -> list[str]:
    """Return the right answers as a careful student writes them."""
    answers = []
    for exercise in paper["exercises"]:
        answer = exercise["answer"]
        if "options" in answer:
            answers.append("ABCDEFGH"[answer["right"]])
        else:
            answers.append(f"{answer['value']:.6f}".rstrip("0").rstrip("."))
    return answers


def quoted(number: int, answers: list[str]) -> str:
    return f"{number},," + ",".join(f'"{answer}"' for answer in answers)


def test_right_answers_are_right_with_either_decimal_sign_and_units(
    key: dict[str, Any], marked: Marked
) -> None:
    rows = []
    for number, paper in key.items():
        answers = right(paper)
        if number == "2":
            answers = [answer.replace(".", ",") for answer in answers]
        if number == "3":
            units = [exercise["answer"].get("unit", "") for exercise in paper["exercises"]]
            answers = [
                f"{answer} {unit}".strip() for answer, unit in zip(answers, units, strict=True)
            ]
        rows.append(quoted(int(number), answers))
    code, out, err = marked(*rows, words=("--json",))
    assert (code, err) == (0, "")
    assert [student["right"] for student in json.loads(out)["students"]] == [3, 3, 3]


def test_a_wrong_answer_is_told_with_the_mistake_that_makes_it(
    key: dict[str, Any], marked: Marked
) -> None:
    answers = right(key["1"])
    place, exercise = next(
        (n, one) for n, one in enumerate(key["1"]["exercises"]) if one["mistakes"]
    )
    slip, wrong = exercise["mistakes"][0]
    answers[place] = "ABCDEFGH"[wrong] if "options" in exercise["answer"] else f"{wrong:.6f}"
    code, out, _ = marked(quoted(1, answers), words=("--json",))
    assert code == 0
    said = json.loads(out)
    assert said["students"][0]["questions"][place]["mistake"] == slip
    assert said["mistakes"] == {slip: 1}
    assert said["absent"] == [2, 3]
    told = marked(quoted(1, answers))[1]
    assert "No answers from: 2 Иван, 3 Ann Ash." in told
    assert "1 student marked." in told


def test_what_was_typed_is_never_given_back_as_a_formula(
    key: dict[str, Any], marked: Marked
) -> None:
    assert key
    formula = '=HYPERLINK(""http://x"",1)'
    code, out, _ = marked(f'1,,"{formula}",-1+1,@SUM(A1)', words=("--csv",))
    assert code == 0
    cells = [cell for row in csv.reader(io.StringIO(out)) for cell in row]
    assert '\'=HYPERLINK("http://x",1)' in cells
    assert not [cell for cell in cells if cell.startswith(("=", "+", "-", "@"))]


def test_the_marks_are_written_as_a_page(
    key: dict[str, Any], marked: Marked, tmp_path: Path
) -> None:
    code, out, _ = marked(quoted(3, right(key["3"])), words=("--out", "marks"))
    assert code == 0
    assert out.endswith("marks/class-marks-a4.pdf\n")
    pages = pypdfium2.PdfDocument(tmp_path / "marks" / "class-marks-a4.pdf")
    assert "Ann Ash" in pages[0].get_textpage().get_text_range()


@pytest.mark.parametrize(
    ("heading", "rows", "message"),
    [
        ("number,name,q1,q2,q3", ("9,,1,2,3",), "typed.csv:2: number: there is no student 9"),
        ("number,name,q1,q2,q3", ("1,,1,2",), "typed.csv:2: the line has 4 cells under 5"),
        ("number,name,q1,q2", ("1,,1,2",), "typed.csv:1: there is no column 'q3'"),
        ("number|name|q1|q2|q3", ("1||1|2|3",), "typed.csv:1: the first line, 'number|name"),
        (
            "number;name;q1;q2;q3",
            ("1;;1;2;3", "1;;1;2;3"),
            "typed.csv:3: number: 1 stands on line 2 too.",
        ),
    ],
)
def test_a_file_of_answers_that_does_not_fit_is_refused_by_line(
    key: dict[str, Any], marked: Marked, heading: str, rows: tuple[str, ...], message: str
) -> None:
    assert key
    code, out, err = marked(*rows, heading=heading, words=("--out", "marks"))
    assert (code, out) == (2, "")
    assert err.startswith(message)


def test_a_key_that_was_changed_is_refused(
    key: dict[str, Any], marked: Marked, tmp_path: Path
) -> None:
    assert key
    path = tmp_path / "class" / "key.json"
    path.write_text(path.read_text("utf-8").replace("Ann Ash", "Ann Ashe"), "utf-8")
    code, _, err = marked("1,,1,2,3")
    assert code == 2
    assert err == (
        "class/key.json: was changed after it was written, so its answers cannot be trusted. Take "
        "the key.json that `chartgen class` wrote, or make the class again.\n"
    )


def test_the_answers_given_as_the_key_are_told_apart(
    inside: Inside, key: dict[str, Any], marked: Marked
) -> None:
    assert key
    marked("1,,1,2,3")
    code, _, err = inside("mark", "typed.csv", "class/key.json")
    assert code == 2
    assert err == ("typed.csv: is no key of a class. Name the key first, the answers after it.\n")


@pytest.mark.parametrize("units", ["metric", "inch"])
def test_the_longest_names_fit_beside_thirteen_answers(
    inside: Inside, class_file: Written, files_in: Snapshot, units: str
) -> None:
    name = f"{'W' * 19} {'W' * 19} {'W' * 19}"
    file = class_file(
        ('level = "first"', f'level = "second"\nunits = "{units}"'),
        ("exercises = 3", "exercises = 13"),
        ('["belt-lathe.toml"]', '["belt-lathe.toml", "knob-lathe.toml"]'),
        ('["mild-steel"]', '["mild-steel", "aluminium-6082"]'),
        roster=f"number,name\n1,{name}\n2,Ann\n3,{name}\n",
    )
    code, _, err = inside("class", file)
    assert (code, err) == (0, "")
    assert inside("mark", "class/key.json", "class/answers.csv", "--out", "class")[0] == 0
    files = files_in("class")
    for paper in ("key.pdf", "exercises.pdf"):
        pages = [
            page.get_textpage().get_text_range() for page in pypdfium2.PdfDocument(files[paper])
        ]
        assert any(name in " ".join(page.split()) for page in pages), paper
