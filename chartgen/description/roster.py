"""A roster: the students of a class from a CSV file, or every fault of it with line and mend.

What it says is printed and named, never calculated: a cell that a spreadsheet would take for
a formula is refused, and no part of a name becomes part of a path as it stands.
"""

import unicodedata
from collections.abc import Callable, Iterator, Sequence
from itertools import islice
from typing import Final, NamedTuple

from chartgen.description.csv_table import (
    FORMULA_STARTS,
    CsvTable,
    Row,
    code_point,
    csv_table,
    faults_of_shape,
    unprintable,
)
from chartgen.errors import DescriptionError, Fault
from chartgen.model.course import Student

LONGEST_NAME: Final = 60
LARGEST_NUMBER: Final = 999_999_999

_HEADINGS: Final = {
    "number": (
        *("number", "no", "no.", "#", "student number", "student no", "student no."),
        *("nr", "nr.", "nummer", "lfd. nr.", "lfd.nr.", "lfd nr", "lfd. nr"),
    ),
    "name": (
        *("name", "student", "full name", "student name", "name, first name"),
        *("schüler", "schülerin", "schüler/in", "teilnehmer", "teilnehmerin", "teilnehmer/in"),
        "name, vorname",
    ),
    "first name": ("first name", "firstname", "given name", "vorname"),
    "last name": ("last name", "lastname", "surname", "family name", "nachname", "familienname"),
}
_MEANINGS: Final = {word: what for what, words in _HEADINGS.items() for word in words}
_HEADINGS_SHOWN: Final = "number,name"
_FROM_RIGHT: Final = frozenset({"R", "AL", "AN"})

Lacking = Callable[[str], Sequence[str]]
"""A text -> the characters of it that no font of the cards has."""


class _Entry(NamedTuple):
    line: int
    number: int | None
    name: str


def read_roster(data: bytes, *, file: str, lacking: Lacking = lambda _: ()) -> tuple[Student, ...]:
    """Return the students of a roster, by rising numbers.

    Without a column of numbers they are counted in the order of the file.

    Raises
    ------
    DescriptionError
        With every fault found, in the order of the lines.
    """
    table = csv_table(data, file=file, meaning=_meaning, needs={}, headings=_HEADINGS_SHOWN)
    faults = _faults_of_headings(table, file)
    if not faults and not table.rows:
        faults = [Fault(file, 0, "", "holds no students.", "Write one line for each.")]
    if faults:
        raise DescriptionError(faults)
    faults = faults_of_shape(table, file=file)
    entries = []
    for row in table.rows:
        if len(row.cells) == len(table.columns):
            entry, wrong = _entry(row, table.columns, file, lacking)
            faults += wrong
            entries += [entry] if entry else []
    faults += _faults_together(entries, file, has_numbers="number" in table.columns)
    if faults:
        raise DescriptionError(sorted(faults, key=lambda fault: fault.line))
    students = [
        Student(number=count if entry.number is None else entry.number, name=entry.name)
        for count, entry in enumerate(entries, 1)
    ]
    return tuple(sorted(students, key=lambda student: student.number))


def _meaning(heading: str) -> str:
    return _MEANINGS.get(heading, "")


def _faults_of_headings(table: CsvTable, file: str) -> list[Fault]:
    columns = set(table.columns)
    line = table.heading_line
    if "name" in columns and columns & {"first name", "last name"}:
        # "Name" beside "Vorname" is the family name.
        return []
    if "name" in columns or {"first name", "last name"} <= columns:
        return []
    if columns & {"first name", "last name"}:
        found = (columns & {"first name", "last name"}).pop()
        problem = f"there is a {found} but no other part of the name."
        return [Fault(file, line, "", problem, "Add its column, or call the column name.")]
    problem = "there is no column of names."
    return [Fault(file, line, "", problem, f"Begin with a line such as {_HEADINGS_SHOWN}.")]


def _entry(
    row: Row, columns: Sequence[str], file: str, lacking: Lacking
) -> tuple[_Entry | None, list[Fault]]:
    """Return what a line says, or what is wrong with its cells."""
    cells = {column: cell for column, cell in zip(columns, row.cells, strict=True) if column}
    faults = [
        Fault(file, row.line, column, problem, mend)
        for column, cell in cells.items()
        for problem, mend in islice(_complaints(column, cell, lacking), 1)
    ]
    if faults:
        return None, faults
    number = int(cells["number"]) if "number" in cells else None
    parts = (cells.get(part, "") for part in ("first name", "name", "last name"))
    name = " ".join(" ".join(parts).split())
    if len(name) > LONGEST_NAME:
        problem = f"has {len(name)} letters."
        mend = f"Use at most {LONGEST_NAME}, to fit on a card."
        return None, [Fault(file, row.line, "name", problem, mend)]
    return _Entry(row.line, number, unicodedata.normalize("NFC", name)), []


def _complaints(column: str, cell: str, lacking: Lacking) -> Iterator[tuple[str, str]]:
    """Yield what is wrong with a cell, the plainest first, each with its mend."""
    text = unicodedata.normalize("NFC", cell).strip()
    shown = f"{text[:30]!r}"
    if not text:
        yield "is empty.", "Fill it in, or delete the line."
        return
    if cell.startswith(FORMULA_STARTS) or text.startswith(FORMULA_STARTS):
        problem = f"{shown} begins as a formula does, and no formula is taken from a roster."
        yield problem, f"Write the {column} itself, without {text[:1]!r} before it."
    if column == "number":
        if not (text.isascii() and text.isdigit() and 0 < int(text[:12]) <= LARGEST_NUMBER):
            problem = f"{shown} is no whole number from 1 to {LARGEST_NUMBER}."
            yield problem, "Number the students, or leave the column out."
        return
    if hidden := unprintable(text):
        yield f"has the sign {hidden}, which cannot be printed.", "Delete it, or type it again."
    if any(unicodedata.bidirectional(c) in _FROM_RIGHT for c in text):
        problem = f"{shown} is written from the right, which the cards cannot set."
        yield problem, "Write it in Latin letters."
    for character in lacking(text):
        problem = f"no font here has the sign {code_point(character)} of {shown}."
        yield problem, "Write the name another way, as in its owner's passport."


def _faults_together(entries: Sequence[_Entry], file: str, *, has_numbers: bool) -> list[Fault]:
    """Return who stands there twice; one name twice is well where the numbers tell them apart."""
    faults = []
    numbers: dict[int, int] = {}
    names: dict[str, int] = {}
    for entry in entries:
        if entry.number is not None:
            first = numbers.setdefault(entry.number, entry.line)
            if first != entry.line:
                problem = f"{entry.number} stands on line {first} too."
                mend = "Give each student a number of their own."
                faults.append(Fault(file, entry.line, "number", problem, mend))
        if has_numbers:
            continue
        first = names.setdefault(alike(entry.name), entry.line)
        if first != entry.line:
            problem = f"{entry.name!r} stands on line {first} too."
            mend = (
                "Delete one of the lines or, if two students have the same name, add a column "
                "of numbers."
            )
            faults.append(Fault(file, entry.line, "name", problem, mend))
    return faults


def alike(name: str) -> str:
    """Return a name so that two writings of it are the same."""
    return " ".join(unicodedata.normalize("NFKC", name).casefold().split())
