"""A key and a file of answers -> the marks of a class, as numbers and as a card."""

from collections.abc import Sequence
from dataclasses import dataclass

from chartgen.description.answer_file import GivenAnswers, read_answers
from chartgen.description.key_file import damaged, read_key
from chartgen.lessons.key_data import KeyPaper, UnusableKeyError, papers_from_key
from chartgen.lessons.marking import ClassSummary, PaperMarks, mark, summary
from chartgen.model.course import Course, Level, Student
from chartgen.model.shop import Language, LengthUnits


@dataclass(frozen=True, slots=True, kw_only=True)
class Key:
    """A key as marking needs it: the course it is of, its papers, what it was made from."""

    course: Course
    papers: tuple[KeyPaper, ...]
    check: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkedClass:
    """A class marked; `absent` are the papers of which the answers have no line."""

    course: Course
    marks: tuple[PaperMarks, ...]
    summary: ClassSummary
    absent: tuple[KeyPaper, ...]


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
        papers = papers_from_key(of_class)
        return Key(
            course=_course(of_class["course"], papers),
            papers=papers,
            check=str(content["check"]),
        )
    except (UnusableKeyError, ValueError, KeyError, TypeError) as error:
        raise damaged(file) from error


def marked_class(key: Key, answers: bytes, *, file: str) -> MarkedClass:
    """Return a class marked, in the order of its numbers.

    Raises
    ------
    DescriptionError
        With every fault of the file of answers.
    """
    given = {one.number: one for one in read_answers(answers, file=file, papers=key.papers)}
    marks = tuple(_marks(key.papers, given))
    return MarkedClass(
        course=key.course,
        marks=marks,
        summary=summary(marks),
        absent=tuple(paper for paper in key.papers if paper.number not in given),
    )


def _marks(papers: Sequence[KeyPaper], given: dict[int, GivenAnswers]) -> list[PaperMarks]:
    return [mark(p, given[p.number].answers) for p in papers if p.number in given]


def _course(data: dict[str, object], papers: Sequence[KeyPaper]) -> Course:
    """Return the course that a key names, with the students of its papers."""
    lathes, materials, exercises = data["lathes"], data["materials"], data["exercises"]
    if not isinstance(lathes, list) or not isinstance(materials, list):
        raise TypeError("a course has lists of lathes and materials")
    return Course(
        name=str(data["name"]),
        revision=str(data["revision"]),
        date=str(data["date"]),
        seed=int(str(data["seed"])),
        level=Level(data["level"]),
        language=Language(data["language"]),
        units=LengthUnits(data["units"]),
        students=tuple(Student(number=one.number, name=one.name) for one in papers),
        lathes=tuple(map(str, lathes)),
        materials=tuple(map(str, materials)),
        exercises=int(str(exercises)),
    )
