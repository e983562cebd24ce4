"""The command that makes what a class is handed: its files, going on, refusals."""

import sys
from collections.abc import Callable
from pathlib import Path

import pypdfium2
import pytest

from chartgen.class_run import BATCH, ClassFiles, ClassRun, Handout
from chartgen.cli.class_set import _read as read_class_files
from chartgen.description.answer_file import read_answers
from chartgen.description.key_file import read_key

Inside = Callable[..., tuple[int, str, str]]
Written = Callable[..., str]
Snapshot = Callable[[str], dict[str, bytes]]

ROSTER = "number,name\n1,Zoë Ångström\n2,Иван\n3,Ann Ash\n"


def words_of(content: bytes) -> list[str]:
    """Return the text of each page of a PDF."""
    return [page.get_textpage().get_text_range() for page in pypdfium2.PdfDocument(content)]


def test_a_class_gets_cards_exercises_a_key_and_what_marking_needs(
    inside: Inside, class_file: Written, files_in: Snapshot
) -> None:
    code, out, err = inside("class", class_file(roster=ROSTER), "--jobs", "1")
    assert (code, err) == (0, "")
    files = files_in("class")
    ours = {name for name in files if "/" not in name}
    assert ours == {
        *("cards.pdf", "exercises.pdf", "key.pdf"),
        *("answers.csv", "key.json", "class.json"),
    }
    lathe = "lathe-1-invented-belt-lathe-90"
    assert {f"{lathe}/safety-quiz.pdf", f"{lathe}/sign-off.pdf"} <= set(files)
    assert f"{lathe}/power-nomogram-a5.pdf" in files
    assert all(f"class/{name}" in out for name in files if name != "class.json")
    for name in ("cards.pdf", "exercises.pdf", "key.pdf"):
        said = " ".join(words_of(files[name]))
        assert all(student in said for student in ("Zoë Ångström", "Иван", "Ann Ash")), name
    # The table to type answers into opens in a spreadsheet and fits the key.
    assert files["answers.csv"].decode("utf-8-sig").splitlines()[1] == "1,Zoë Ångström,,,"
    key = read_key(files["key.json"], file="key.json")
    assert [paper["number"] for paper in key["class"]["papers"]] == [1, 2, 3]


def test_every_student_begins_on_a_front(
    inside: Inside, class_file: Written, files_in: Snapshot
) -> None:
    assert inside("class", class_file(roster=ROSTER))[0] == 0
    pages = words_of(files_in("class")["exercises.pdf"])
    assert len(pages) % 2 == 0
    for student in ("Zoë Ångström", "Иван", "Ann Ash"):
        assert next(n for n, said in enumerate(pages) if student in said) % 2 == 0


def test_several_processes_make_the_same_bytes(
    inside: Inside, class_file: Written, files_in: Snapshot
) -> None:
    name = class_file()
    assert inside("class", name, "--out", "one", "--jobs", "1")[0] == 0
    assert inside("class", name, "--out", "two", "--jobs", "3")[0] == 0
    assert files_in("one") == files_in("two")


def test_the_same_inputs_again_make_nothing(
    inside: Inside, class_file: Written, files_in: Snapshot
) -> None:
    name = class_file()
    inside("class", name)
    before = files_in("class")
    code, out, _ = inside("class", name)
    assert code == 0
    assert ", 0 of them made now." in out
    assert files_in("class") == before


@pytest.mark.parametrize("harm", ["gone", "shorter"])
def test_a_file_that_is_gone_or_cut_short_is_made_again(
    inside: Inside, class_file: Written, files_in: Snapshot, tmp_path: Path, harm: str
) -> None:
    name = class_file()
    inside("class", name)
    before = files_in("class")
    harmed = tmp_path / "class" / "key.pdf"
    if harm == "gone":
        harmed.unlink()
    else:
        harmed.write_bytes(before["key.pdf"][:-1])
    code, out, _ = inside("class", name)
    assert code == 0
    assert ", 1 of them made now." in out
    assert files_in("class") == before


def test_other_inputs_are_told_and_need_to_be_agreed_to(
    inside: Inside, class_file: Written, files_in: Snapshot
) -> None:
    inside("class", class_file(), "--each")
    before = files_in("class")
    name = class_file(("students = 3", "students = 2"))
    code, _, err = inside("class", name, "--each")
    assert code == 2
    assert err.startswith("class/class.json: this folder holds the class 'Tuesdays' made from ")
    assert err.endswith("Add --again to make all anew, or choose another folder with --out.\n")
    assert files_in("class") == before
    assert inside("class", name, "--each", "--again")[0] == 0
    inside("class", name, "--each", "--out", "fresh")
    # Nothing of the student who left lies among the new files.
    assert files_in("class") == files_in("fresh")


@pytest.mark.parametrize("changed", ["belt-lathe.toml", "class.toml"], ids=["a lathe", "the class"])
def test_a_byte_of_any_input_is_another_input(
    inside: Inside, class_file: Written, tmp_path: Path, changed: str
) -> None:
    name = class_file()
    inside("class", name)
    path = tmp_path / changed
    text = path.read_text("utf-8")
    path.write_text(text.replace("exercises = 3", "exercises = 2") + "# seen\n", "utf-8")
    assert inside("class", name)[0] == 2


@pytest.mark.parametrize("content", [b"", b"{}", b"\xff"])
def test_a_record_that_cannot_be_read_stops_the_run_unless_all_is_made_again(
    inside: Inside, class_file: Written, tmp_path: Path, content: bytes
) -> None:
    name = class_file()
    (tmp_path / "class").mkdir()
    (tmp_path / "class" / "class.json").write_bytes(content)
    code, _, err = inside("class", name)
    assert code == 2
    assert "does not say what is in this folder" in err
    assert inside("class", name, "--again")[0] == 0


def test_a_long_class_is_made_in_batches_that_do_not_depend_on_each_other(
    inside: Inside, class_file: Written, files_in: Snapshot, tmp_path: Path
) -> None:
    count = BATCH + 2
    name = class_file(("students = 3", f"students = {count}"), ("exercises = 3", "exercises = 1"))
    assert inside("class", name)[0] == 0
    files = files_in("class")
    folders = {file.partition("/")[0] for file in files if file.startswith("students-")}
    assert folders == {"students-01-40", "students-41-42"}
    course, described = read_class_files(tmp_path / name)
    shops = tuple(shop for shop, _ in described)
    run = ClassRun(course=course, shops=shops, shop_codes=("",), each=False)
    last = [part for part in run.parts() if part.first == BATCH]
    assert [part.kind for part in last] == [kind for kind in Handout if kind != Handout.LATHE]
    alone = dict(ClassFiles(run).files_of(last[1]))
    assert alone.items() <= files.items()
    assert len(alone) == 1


TRICKS = [
    *("../../etc/passwd", "..", "C:\\boot", "CON", "nul.txt", "a/b", "~root", "$HOME", "`id`"),
    *("%00", "ﬁﬀ", "a∕b", "x" * 60, "ÅÄÖ ß", "Иван", "'; rm -r", '"quoted"', "&<b>"),
]


def test_no_name_becomes_a_path(
    inside: Inside, class_file: Written, files_in: Snapshot, tmp_path: Path
) -> None:
    quoted = ('"{}"'.format(name.replace('"', '""')) for name in TRICKS)
    name = class_file(
        ("exercises = 3", "exercises = 1"), roster="name\n" + "".join(f"{q}\n" for q in quoted)
    )
    code, _, err = inside("class", name, "--each")
    assert (code, err) == (0, "")
    made = [file for file in files_in("class") if file.endswith("-exercises.pdf")]
    assert len(made) == len(TRICKS)
    stems = {file.removesuffix("-exercises.pdf") for file in made}
    assert all(set(stem) <= set("abcdefghijklmnopqrstuvwxyz0123456789-") for stem in stems)
    assert {stem[:2] for stem in stems} == {f"{n:02}" for n in range(1, len(TRICKS) + 1)}
    assert {path.name for path in tmp_path.iterdir()} == {
        *("belt-lathe.toml", "knob-lathe.toml", "class.toml", "roster.csv", "class"),
    }


def test_the_faults_of_all_files_are_told_at_once(
    inside: Inside, class_file: Written, tmp_path: Path
) -> None:
    name = class_file(
        ('"first"', '"third"'),
        ('["belt-lathe.toml"]', '["belt-lathe.toml", "gone.toml"]'),
        roster="name\nAnn\n=Bo\n",
    )
    belt = tmp_path / "belt-lathe.toml"
    belt.write_text(belt.read_text("utf-8").replace('"370 W"', '"370"'), "utf-8")
    code, _, err = inside("class", name)
    assert code == 2
    told = [line.split(":")[0] for line in err.splitlines()]
    assert told == ["class.toml", "roster.csv", "belt-lathe.toml", "gone.toml"]
    assert not (tmp_path / "class").exists()


def test_a_class_that_is_not_there_says_where_one_comes_from(inside: Inside) -> None:
    code, _, err = inside("class", "mine.toml")
    assert code == 2
    assert err == (
        "mine.toml: there is no such file; check the name, or run `chartgen example --class` for "
        "a file to start from.\n"
    )


def test_the_example_of_a_class_is_printed_alone(inside: Inside) -> None:
    assert inside("example", "--class")[1].startswith("# A CLASS FILE")
    code, _, err = inside("example", "--class", "--job")
    assert code == 2
    assert "one file at a time" in err


def test_a_bar_shows_on_a_terminal_only(
    inside: Inside, class_file: Written, monkeypatch: pytest.MonkeyPatch
) -> None:
    name = class_file()
    assert inside("class", name, "--jobs", "1")[2] == ""
    monkeypatch.setattr(sys.stderr, "isatty", lambda: True)
    assert "100%" in inside("class", name, "--out", "seen", "--jobs", "1")[2]


def test_a_lathe_that_cannot_give_so_many_exercises_says_so(
    inside: Inside, class_file: Written, monkeypatch: pytest.MonkeyPatch
) -> None:
    from chartgen.lessons import assign  # noqa: PLC0415 - only this test bends it

    def none(*_: object) -> None:
        raise assign.NoExercisesError("the lathe cannot give 3 exercises; ask for fewer")

    monkeypatch.setattr(assign, "papers_for", none)
    code, _, err = inside("class", class_file(), "--jobs", "2")
    assert (code, err) == (2, "the lathe cannot give 3 exercises; ask for fewer.\n")


def test_answers_typed_into_the_table_of_a_german_class_are_read(
    inside: Inside, class_file: Written, files_in: Snapshot
) -> None:
    inside("class", class_file(("[class]", '[class]\nlanguage = "de"'), roster=ROSTER))
    table = files_in("class")["answers.csv"]
    assert table.decode("utf-8-sig").startswith("number;name;q1;q2;q3\r\n")
    from chartgen.marking_run import open_key  # noqa: PLC0415 - reads what was made here

    papers = open_key(files_in("class")["key.json"], file="key.json").papers
    given = read_answers(table, file="answers.csv", papers=papers)
    assert [one.name for one in given] == ["Zoë Ångström", "Иван", "Ann Ash"]
