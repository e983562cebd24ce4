"""A class file: the course it means, and every fault of it and its roster at once."""

import re

import pytest

from chartgen.description.class_file import example_class_text, lathe_paths, read_class
from chartgen.description.class_tables import ClassFile
from chartgen.description.json_schema import json_schema
from chartgen.errors import ChartgenError, DescriptionError
from chartgen.model.course import Course, Level, Student
from chartgen.model.shop import Language, LengthUnits
from chartgen.pipeline import known_names

EXAMPLE = example_class_text().decode()
ROSTER = b"number,name\n1,Ann Ash\n2,Bo Birch\n"
SHORTEST = """[class]
name = "Tuesdays"
level = "second"
students = 3
lathes = ["a.toml"]
materials = ["c45"]
"""


def read(text: str, roster: bytes | None = ROSTER, *, file: str = "class.toml") -> Course:
    def at(path: str) -> bytes:
        if roster is None:
            raise ChartgenError(f"{path}: there is no such file; check its path.")
        return roster

    return read_class(text.encode(), file=file, known=known_names(), roster=at)


def faults(text: str, roster: bytes | None = ROSTER, *, file: str = "class.toml") -> list[str]:
    with pytest.raises(DescriptionError) as caught:
        read(text, roster, file=file)
    return str(caught.value).splitlines()


def test_the_example_is_the_class_that_it_describes() -> None:
    assert read(EXAMPLE) == Course(
        name="Invented evening class",
        revision="A",
        date="2026-11-25",
        seed=1,
        level=Level.FIRST,
        language=Language.ENGLISH,
        units=LengthUnits.METRIC,
        students=tuple(Student(number=n, name="") for n in range(1, 13)),
        lathes=("shop.toml",),
        materials=("mild-steel", "aluminium-6082"),
        exercises=8,
        rules="Nobody starts a lathe before the instructor has seen the set-up. Ask when in doubt.",
    )


def test_what_may_be_left_out_has_a_value() -> None:
    course = read(SHORTEST)
    assert (course.seed, course.exercises, course.rules) == (1, 8, "")
    assert (course.language, course.units) == (Language.ENGLISH, LengthUnits.METRIC)


def test_the_example_shows_every_key() -> None:
    (table,) = json_schema(ClassFile)["properties"].values()
    shown = set(re.findall(r"(?m)^(?:# )?(\w+) = ", EXAMPLE))
    assert set(table["properties"]) == shown - {"key"}


def test_a_roster_names_the_students() -> None:
    course = read(SHORTEST.replace("students = 3", 'roster = "list.csv"'))
    assert course.students == (
        Student(number=1, name="Ann Ash"),
        Student(number=2, name="Bo Birch"),
    )


def test_the_faults_of_both_files_are_told_at_once() -> None:
    text = SHORTEST.replace("students = 3", 'roster = "list.csv"').replace("second", "third")
    assert faults(text, b"name\nAnn\nAnn\n", file="school/class.toml") == [
        "school/class.toml:3: class.level: 'third' is not known. Use one of: first, second.",
        (
            "school/list.csv:3: name: 'Ann' stands on line 2 too. Delete one of the lines or, if "
            "two "
            "students have the same name, add a column of numbers."
        ),
    ]


def test_a_roster_that_is_not_there_is_told_at_the_line_that_names_it() -> None:
    (said,) = faults(SHORTEST.replace("students = 3", 'roster = "list.csv"'), None)
    assert said == ("class.toml:4: class.roster: list.csv: there is no such file. Check its path.")


CHANGES = [
    (
        "students = 3",
        "",
        (
            "class.toml:1: class.students: is missing. Add a line such as students = 12, or "
            "roster = "
            '"roster.csv".'
        ),
    ),
    (
        "students = 3",
        'students = 3\nroster = "list.csv"',
        (
            "class.toml:4: class.students: stands beside roster, which says who the students are. "
            "Keep one of the two lines."
        ),
    ),
    (
        "students = 3",
        "students = 0",
        "class.toml:4: class.students: is out of bounds (1 to 100000). Check the number.",
    ),
    (
        '"c45"',
        '"c54"',
        "class.toml:6: class.materials[1]: 'c54' is not known. Did you mean 'c45'?",
    ),
    (
        '"a.toml"',
        '"a.toml", "a.toml"',
        "class.toml:5: class.lathes: has 'a.toml' twice. List each once.",
    ),
    ('"a.toml"', "", "class.toml:5: class.lathes: is empty. List at least one."),
    (
        '"a.toml"',
        '"a\\u0000.toml"',
        (
            "class.toml:5: class.lathes[1]: is blank or has signs that no file's name has. Write "
            "the "
            "path of the file from this one's folder."
        ),
    ),
    (
        "students = 3",
        "students = 3\nexercises = 14",
        "class.toml:5: class.exercises: is out of bounds (1 to 13). Check the number.",
    ),
    (
        "students = 3",
        "students = 3\nlanguge = 'de'",
        "class.toml:5: class.languge: is not a known key. Did you mean 'language'?",
    ),
    (
        'name = "Tuesdays"',
        "",
        'class.toml:1: class.name: is missing. Add a line such as name = "Invented evening class".',
    ),
]


@pytest.mark.parametrize(("old", "new", "message"), CHANGES)
def test_a_fault_is_told_with_its_line_and_its_mend(old: str, new: str, message: str) -> None:
    assert old in SHORTEST
    assert faults(SHORTEST.replace(old, new)) == [message]


def test_an_empty_file_says_what_a_class_file_needs() -> None:
    (said,) = faults("")
    assert said.startswith("class.toml: is empty. A class file needs [class]")


def test_the_lathes_are_told_even_of_a_file_with_faults() -> None:
    assert lathe_paths(SHORTEST.replace("second", "third").encode()) == ("a.toml",)
    assert lathe_paths(b"[class") == ()
    assert lathe_paths(b"[class]\nlathes = 3") == ()
