"""A key and a file of answers -> the marks of a class: as numbers, as text and as a page."""

from dataclasses import dataclass
from typing import Any

from chartgen import pipeline
from chartgen.description.answer_file import read_answers
from chartgen.description.key_file import damaged, read_key
from chartgen.lessons.key_data import KeyPaper, UnusableKeyError, papers_from_key
from chartgen.lessons.marking import ClassSummary, PaperMarks, mark, summary
from chartgen.model.course import Student
from chartgen.model.shop import Language
from chartgen.wording.check_code import bytes_code
from chartgen.wording.language import speaking
from chartgen.wording.lessons.marked import MarkedCourse, printed_marks
from chartgen.wording.lessons.marks_answer import marks_answer
from chartgen.wording.lessons.told_marks import ToldMarks, told_marks


@dataclass(frozen=True, slots=True, kw_only=True)
class Key:
    """A key as marking needs it: what it says of its class, and the papers."""

    name: str
    revision: str
    date: str
    language: Language
    papers: tuple[KeyPaper, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkedClass:
    """A class marked; `absent` are those of whom the file of answers has no line."""

    of: MarkedCourse
    marks: tuple[PaperMarks, ...]
    summary: ClassSummary
    absent: tuple[Student, ...]

    def told(self) -> ToldMarks:
        """Return the marks as tables of text."""
        with speaking(self.of.language):
            return told_marks(self.of.name, self.marks, self.summary, self.absent)

    def data(self) -> dict[str, Any]:
        """Return the marks as plain data."""
        return marks_answer(self.marks, self.summary, [one.number for one in self.absent])

    def page(self) -> pipeline.FinishedCard:
        """Return the marks as pages with the plot of the mistakes, under their file's name."""
        with speaking(self.of.language):
            card = printed_marks(self.of, self.marks, self.summary)
        (finished,) = pipeline.lay_out([card])
        return finished


def open_key(data: bytes, *, file: str) -> Key:
    """Return the key of a file.

    Raises
    ------
    DescriptionError
        If it is no key, was changed, or is a newer program's.
    """
    content = read_key(data, file=file)
    try:
        of_class = content["class"]
        course = of_class["course"]
        return Key(
            name=str(course["name"]),
            revision=str(course["revision"]),
            date=str(course["date"]),
            language=Language(course["language"]),
            papers=_in_order(papers_from_key(of_class)),
        )
    except (UnusableKeyError, ValueError, KeyError, TypeError) as error:
        raise damaged(file) from error


def marked_class(key: Key, key_bytes: bytes, answers: bytes, *, file: str) -> MarkedClass:
    """Return a class marked, in the order of its numbers.

    Raises
    ------
    DescriptionError
        With every fault of the file of answers.
    """
    given = {one.number: one for one in read_answers(answers, file=file, papers=key.papers)}
    there = [paper for paper in key.papers if paper.number in given]
    marks = tuple(mark(paper, given[paper.number].answers) for paper in there)
    missing = (paper for paper in key.papers if paper.number not in given)
    return MarkedClass(
        of=MarkedCourse(
            name=key.name,
            revision=key.revision,
            date=key.date,
            code=bytes_code(key_bytes, answers),
            language=key.language.value,
        ),
        marks=marks,
        summary=summary(marks),
        absent=tuple(Student(number=one.number, name=one.name) for one in missing),
    )


def _in_order(papers: tuple[KeyPaper, ...]) -> tuple[KeyPaper, ...]:
    """Return papers that can be marked: some, each of another student, each with exercises."""
    numbers = [paper.number for paper in papers]
    if not papers or numbers != sorted(set(numbers)) or not all(p.exercises for p in papers):
        raise ValueError("a key has papers by rising numbers, and exercises on each")
    return papers
