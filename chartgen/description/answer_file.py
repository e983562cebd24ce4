"""A file of answers: what each student of a class wrote, as it stands, or every fault of it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final, Protocol

from chartgen.description.csv_table import CsvTable, Row, csv_table, faults_of_shape, unprintable
from chartgen.description.roster import alike
from chartgen.errors import DescriptionError, Fault

_LONGEST_ANSWER: Final = 60
_MARK_OF_TEXT: Final = "'"
"""How a cell begins that is text though it looks like a formula, as this program writes it."""


class AnyPaper(Protocol):
    """What is asked of the paper that answers are to."""

    @property
    def number(self) -> int:
        """The student's number."""

    @property
    def name(self) -> str:
        """The student's name, empty where there is none."""

    @property
    def exercises(self) -> Sequence[object]:
        """What was asked."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GivenAnswers:
    """One student's answers as they were typed, an empty text for none; `line` is the file's."""

    number: int
    name: str
    answers: tuple[str, ...]
    line: int


def answer_headings(questions: int) -> tuple[str, ...]:
    """Return the headings of a file of answers."""
    return ("number", "name", *(f"q{number}" for number in range(1, questions + 1)))


def read_answers(text: bytes, *, file: str, papers: Sequence[AnyPaper]) -> tuple[GivenAnswers, ...]:
    """Return the answers of a file in its order; of whom there is no line, there is nothing.

    Raises
    ------
    DescriptionError
        With every fault found, in the order of the lines.
    """
    questions = max(len(paper.exercises) for paper in papers)
    headings = answer_headings(questions)
    shown = f"number,name,q1,...,q{questions}" if questions > 1 else "number,name,q1"
    table = csv_table(
        text,
        file=file,
        # Any question is a heading, so that one too many is told as such.
        meaning=lambda h: h if h in {"number", "name"} or _is_question(h) else "",
        needs={heading: heading for heading in headings if heading != "name"},
        headings=shown,
    )
    faults = _faults_of_columns(table, headings, file=file, shown=shown)
    if faults:
        raise DescriptionError(faults)
    if not table.rows:
        raise DescriptionError([Fault(file, 0, "", "holds no answers.", "Fill in a line each.")])
    faults = faults_of_shape(table, file=file)
    of_number = {paper.number: paper for paper in papers}
    given: list[GivenAnswers] = []
    for row in table.rows:
        if len(row.cells) == len(table.columns):
            one, wrong = _given(row, table.columns, of_number, file=file, headings=headings)
            faults += wrong
            given += [one] if one else []
    lines: dict[int, int] = {}
    for one in given:
        first = lines.setdefault(one.number, one.line)
        if first != one.line:
            problem = f"{one.number} stands on line {first} too."
            faults.append(Fault(file, one.line, "number", problem, "Delete one of the two lines."))
    if faults:
        raise DescriptionError(sorted(faults, key=lambda fault: fault.line))
    return tuple(given)


def _is_question(heading: str) -> bool:
    return heading[:1] == "q" and heading[1:].isascii() and heading[1:].isdigit()


def _faults_of_columns(
    table: CsvTable, headings: Sequence[str], *, file: str, shown: str
) -> list[Fault]:
    strange = [i + 1 for i, what in enumerate(table.columns) if what not in headings]
    if not strange:
        return []
    which = " and ".join(str(number) for number in strange[:3])
    problem = f"column {which} of {len(table.columns)} is none of this key's."
    return [Fault(file, table.heading_line, "", problem, f"Keep the columns {shown}.")]


def _given(
    row: Row,
    columns: Sequence[str],
    papers: Mapping[int, AnyPaper],
    *,
    file: str,
    headings: Sequence[str],
) -> tuple[GivenAnswers | None, list[Fault]]:
    """Return the answers of a line, or what is wrong with it."""
    cells = {what: cell.strip() for what, cell in zip(columns, row.cells, strict=True)}
    name = cells.get("name", "").removeprefix(_MARK_OF_TEXT)
    paper, complaint = _paper(cells["number"], name, papers)
    if paper is None:
        return None, [Fault(file, row.line, *complaint)]
    faults = []
    for heading in headings[2:]:
        cell = cells[heading]
        if hidden := unprintable(cell):
            problem = f"has the sign {hidden}, which is no part of an answer."
            faults.append(Fault(file, row.line, heading, problem, "Type the answer again."))
        elif len(cell) > _LONGEST_ANSWER:
            problem = f"has {len(cell)} letters, too many for an answer."
            mend = "Type the number or the letter alone."
            faults.append(Fault(file, row.line, heading, problem, mend))
    answers = tuple(cells[heading] for heading in headings[2 : 2 + len(paper.exercises)])
    given = GivenAnswers(number=paper.number, name=paper.name, answers=answers, line=row.line)
    return (None, faults) if faults else (given, [])


def _paper(
    number: str, name: str, papers: Mapping[int, AnyPaper]
) -> tuple[AnyPaper | None, tuple[str, str, str]]:
    """Return the paper that a line is about, or key, problem and mend."""
    least, most = min(papers), max(papers)
    if not (number.isascii() and number.isdigit() and len(number) < len("1000000000")):
        problem = f"{number[:30]!r} is no number of a student." if number else "is empty."
        return None, ("number", problem, "Write the number that stands on the sheet.")
    paper = papers.get(int(number))
    if paper is None:
        problem = f"there is no student {number} in this key, which has {least} to {most}."
        return None, ("number", problem, "Correct the number, or take the key of that student.")
    if name and paper.name and alike(name) != alike(paper.name):
        problem = f"{name[:60]!r} is not the name of student {number}, who is {paper.name!r}."
        return None, ("name", problem, "Correct number or name, so that both are of one student.")
    return paper, ("", "", "")
