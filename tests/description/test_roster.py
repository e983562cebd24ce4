"""A roster: who is in it, and every fault at its line with its mend."""

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen.description.roster import read_roster
from chartgen.errors import DescriptionError, Fault
from chartgen.model.course import Student
from chartgen.renderers.fonts import lacking


def read(text: str | bytes) -> list[tuple[int, str]]:
    data = text.encode() if isinstance(text, str) else text
    students = read_roster(data, file="roster.csv", lacking=lacking)
    assert all(isinstance(student, Student) for student in students)
    return [(student.number, student.name) for student in students]


def faults(text: str | bytes) -> list[str]:
    with pytest.raises(DescriptionError) as caught:
        read(text)
    for fault in caught.value.faults:
        assert fault.mend.endswith((".", ")")), fault
    return str(caught.value).splitlines()


def read_or_refused(data: bytes) -> tuple[Student, ...]:
    """Return the students, none of a file that is refused; each refusal has its words."""
    told: tuple[Fault, ...] = ()
    students: tuple[Student, ...] = ()
    try:
        students = read_roster(data, file="roster.csv", lacking=lacking)
    except DescriptionError as error:
        told = error.faults
    assert bool(told) != bool(students)
    assert all(fault.problem and fault.mend for fault in told)
    return students


# ---------------------------------------------------------------------------- well read


@pytest.mark.parametrize(
    "text",
    [
        "number,name\n1,Ann Ash\n2,Bo Birch\n",
        "number;name\r\n1;Ann Ash\r\n2;Bo Birch\r\n",
        "number\tname\n1\tAnn Ash\n2\tBo Birch\n",
        "NUMBER,NAME\n1,Ann Ash\n2,Bo Birch",
        "name,number\nBo Birch,2\nAnn Ash,1\n",
        "name\nAnn Ash\nBo Birch\n",
        "Student\nAnn Ash\n\nBo Birch\n",
        "Name,Vorname\nAsh,Ann\nBirch,Bo\n",
        "Nr.;Nachname;Vorname\n1;Ash;Ann\n2;Birch;Bo\n",
        "Lfd. Nr.;Teilnehmer/in\n1;Ann Ash\n2;Bo Birch\n",
        "first name,last name\nAnn,Ash\nBo,Birch\n",
        'number,name\n1,"Ann  Ash "\n2, Bo Birch\n',
        "\n\nnumber,name\n1,Ann Ash\n2,Bo Birch\n,\n",
        "number,class,name,phone\n1,7b,Ann Ash,+49 1\n2,7b,Bo Birch,=1\n",
        "\ufeffnumber,name\n1,Ann Ash\n2,Bo Birch\n",
    ],
)
def test_a_roster_is_read_as_people_save_it(text: str) -> None:
    assert read(text) == [(1, "Ann Ash"), (2, "Bo Birch")]


def test_name_and_first_name_in_one_cell_are_kept_as_they_stand() -> None:
    text = "Lfd. Nr.;Name, Vorname\r\n7;Ash, Ann\r\n9;Birch, Bo\r\n"
    assert read(text) == [(7, "Ash, Ann"), (9, "Birch, Bo")]


def test_a_single_column_has_names_with_commas() -> None:
    assert read("name\nAsh, Ann\nBirch, Bo\n") == [(1, "Ash, Ann"), (2, "Birch, Bo")]


def test_numbers_may_have_gaps_and_tell_two_of_one_name_apart() -> None:
    assert read("number,name\n7,Ann Ash\n3,Ann Ash\n") == [(3, "Ann Ash"), (7, "Ann Ash")]


@pytest.mark.parametrize(
    "name", ["Zoë Ångström", "Łukasz Žižka", "Nguyễn Thị Ánh", "Ólafur Þór", "Ελένη", "Иван"]
)
def test_names_of_any_alphabet_that_the_fonts_have_are_kept_composed(name: str) -> None:
    apart = unicodedata.normalize("NFD", name)
    assert read(f"name\n{apart}\n") == [(1, unicodedata.normalize("NFC", name))]


def test_thousands_of_rows_are_fine() -> None:
    rows = "".join(f"{n},Student {n}\n" for n in range(1, 6001))
    assert read(f"number,name\n{rows}")[-1] == (6000, "Student 6000")


@given(st.text(max_size=80))
def test_whatever_a_file_holds_is_read_or_refused_in_words(text: str) -> None:
    data = f"number,name\n1,{text}\n".encode(errors="replace")
    for student in read_or_refused(data):
        assert student.name
        assert student.name.isprintable() or {"\u200c", "\u200d"} & set(student.name)
        assert not student.name.startswith(("=", "+", "-", "@"))
        assert not lacking(student.name)


@given(st.binary(max_size=200))
def test_whatever_bytes_a_file_has_are_read_or_refused_in_words(data: bytes) -> None:
    read_or_refused(data)


# ------------------------------------------------------------------------------- refused

ONE_FAULT = [
    ("", "roster.csv: is empty. Begin it with the line number,name."),
    ("number,name\n", "roster.csv: holds no students. Write one line for each."),
    (
        "number|name\n1|Ann\n",
        (
            "roster.csv:1: the first line, 'number|name', has no heading that is known; it has "
            "bars "
            "in it. Part the cells by semicolons or commas, as in number,name."
        ),
    ),
    (
        "Ann Ash\nBo Birch\n",
        (
            "roster.csv:1: the first line, 'Ann Ash', has no heading that is known here. Begin "
            "with "
            "a line such as number,name."
        ),
    ),
    (
        "number,nmae\n1,Ann\n",
        "roster.csv:1: there is no column of names. Begin with a line such as number,name.",
    ),
    (
        "number,vorname\n1,Ann\n",
        (
            "roster.csv:1: there is a first name but no other part of the name. Add its column, or "
            "call the column name."
        ),
    ),
    (
        "name,student\nAnn,Ann\n",
        "roster.csv:1: two columns are both 'name'. Keep one of them.",
    ),
    (
        "number;name\n1;Ann\n2,Bo\n",
        (
            "roster.csv:3: the line has 1 cell under 2 headings. The headings are parted by "
            "semicolons, this line by commas; use one for all."
        ),
    ),
    (
        "number,name\n1,Ash, Ann\n",
        (
            "roster.csv:2: the line has 3 cells under 2 headings. Put a cell that has a comma in "
            "it, "
            "such as a decimal comma, in quotes, or save the table with semicolons."
        ),
    ),
    (
        "number,name\n1,Ann\n2,\n",
        "roster.csv:3: name: is empty. Fill it in, or delete the line.",
    ),
    (
        "number,name\n,Ann\n",
        "roster.csv:2: number: is empty. Fill it in, or delete the line.",
    ),
    (
        "number,name\nS7,Ann\n",
        (
            "roster.csv:2: number: 'S7' is no whole number from 1 to 999999999. Number the "
            "students, "
            "or leave the column out."
        ),
    ),
    (
        "number,name\n4,Ann\n5,Bo\n4,Cy\n",
        "roster.csv:4: number: 4 stands on line 2 too. Give each student a number of their own.",
    ),
    (
        "name\nAnn Ash\nBo\nann  ASH\n",
        (
            "roster.csv:4: name: 'ann ASH' stands on line 2 too. Delete one of the lines or, if "
            "two "
            "students have the same name, add a column of numbers."
        ),
    ),
    (
        "name\n\u05d0\u05d1\n",
        (
            "roster.csv:2: name: '\u05d0\u05d1' is written from the right, which the cards cannot "
            "set. Write it in Latin letters."
        ),
    ),
    (
        "name\nBo 李\n",
        (
            "roster.csv:2: name: no font here has the sign U+674E CJK UNIFIED IDEOGRAPH-674E of "
            "'Bo 李'. Write the name another way, as in its owner's passport."
        ),
    ),
    (
        "name\nBo\u0007\n",
        (
            "roster.csv:2: name: has the sign U+0007, which cannot be printed. Delete it, or "
            "type it "
            "again."
        ),
    ),
    (
        "name\nBo\u202eexe\n",
        (
            "roster.csv:2: name: has the sign U+202E RIGHT-TO-LEFT OVERRIDE, which cannot be "
            "printed. "
            "Delete it, or type it again."
        ),
    ),
    (
        "name\nBo\x00\n",
        (
            "roster.csv:2: name: has the sign U+0000, which cannot be printed. Delete it, or "
            "type it "
            "again."
        ),
    ),
    (
        'number,name\n1,"Ann\n2,Bo\n',
        (
            "roster.csv:2: a cell in quotes is not closed, or goes on behind its quotes. Close "
            "each "
            'quote, and write a quote inside a cell twice, as in "Ann ""Sparks""".'
        ),
    ),
    (
        f"name\n{'x' * 61}\n",
        "roster.csv:2: name: has 61 letters. Use at most 60, to fit on a card.",
    ),
]


@pytest.mark.parametrize(("text", "message"), ONE_FAULT)
def test_a_fault_is_told_with_its_line_and_its_mend(text: str, message: str) -> None:
    assert faults(text) == [message]


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\r", "＝", " ="])
def test_a_cell_that_a_spreadsheet_would_calculate_is_refused(start: str) -> None:
    said = faults(f'number,name\n1,Ann\n2,"{start}HYPERLINK(1)"\n')
    assert len(said) == 1
    assert said[0].startswith("roster.csv:3: name: ")
    assert "begins as a formula does" in said[0]


@pytest.mark.parametrize(
    ("data", "where", "what"),
    [
        ("number,name\n1,Zoë\n".encode("latin-1"), "roster.csv:2", "byte 17 of the file, 0xEB,"),
        ("number,name\n1,Zoë\n".encode("utf-16"), "roster.csv", "is text in UTF-16"),
        (b"\xef\xbb\xbfname\nZo\xeb\n", "roster.csv:2", "byte 11 of the file, 0xEB,"),
    ],
)
def test_another_encoding_is_refused_by_its_byte(data: bytes, where: str, what: str) -> None:
    (said,) = faults(data)
    assert said.startswith(f"{where}: ")
    assert what in said
    assert "Save it again with the encoding UTF-8" in said


def test_all_faults_of_a_file_are_told_at_once_in_the_order_of_its_lines() -> None:
    said = faults("number,name\n1,Ann\n1,=Bo\n2,\n1,Cy\nx,Di\n3\n")
    assert [line.split(":")[1] for line in said] == ["3", "4", "5", "6", "7"]
