"""An invented class of twelve at two lathes: what it is asked, its cards, its answers marked."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from chartgen.lessons.assign import papers_for
from chartgen.lessons.exercise import ChoiceAnswer, ChoiceMistake, Exercise, Paper
from chartgen.lessons.marking import PaperMarks, mark, summary
from chartgen.model.course import Course, Level, Student
from chartgen.model.shop import Language, LengthUnits, Shop
from chartgen.reference.tables import load_material
from chartgen.wording.card import AnyCard, PrintedCard
from chartgen.wording.language import speaking
from chartgen.wording.lessons.cards import (
    exercise_sheets,
    key_pages,
    quiz_cards,
    sign_off_cards,
    student_cards,
)
from chartgen.wording.lessons.marked import MarkedCourse, printed_marks
from chartgen.wording.lessons.printed_class import PrintedRoll

NAMES = ("Ada Øvergård", "Łukasz Zieliński", "Björn Strömqvist", "")
MATERIALS = ("mild-steel", "aluminium-6082", "stainless-304")


@dataclass(frozen=True, kw_only=True)
class Room:
    """A class with its lathes and what its students are asked."""

    course: Course
    shops: tuple[Shop, ...]
    papers: tuple[Paper, ...]


def room(
    lathes: Sequence[Shop],
    level: str = "second",
    units: LengthUnits = LengthUnits.METRIC,
    language: Language = Language.ENGLISH,
) -> Room:
    """Return the class at some lathes."""
    students = tuple(Student(number=n + 1, name=NAMES[n % len(NAMES)]) for n in range(12))
    course = Course(
        name="Invented evening class",
        revision="1",
        date="2026-09-01",
        seed=1,
        level=Level(level),
        language=language,
        units=units,
        students=students,
        lathes=("bench.toml", "belts.toml"),
        materials=MATERIALS,
        exercises=8 if level == "first" else 11,
        rules="Nobody works alone.\nLong hair under a cap.",
    )
    shops = tuple(
        replace(
            shop,
            request=replace(shop.request, units=units, language=language, materials=MATERIALS),
        )
        for shop in lathes
    )
    materials = [load_material(key) for key in MATERIALS]
    papers = tuple(papers_for(course, shops, materials, students))
    return Room(course=course, shops=shops, papers=papers)


def cards_of(given: Room) -> list[AnyCard]:
    """Return papers of a class on every layout there is for one, in its language."""
    of = given.course, given.shops, given.papers[:3]
    with speaking(given.course.language.value):
        return [
            *student_cards(*of),
            *exercise_sheets(*of),
            *exercise_sheets(*of, sheet="letter"),
            *key_pages(*of),
            *sign_off_cards(given.course, given.shops[0]),
            *quiz_cards(given.course, given.shops[0])[:1],
            marks_of(given),
        ]


def answer_of(exercise: Exercise, turn: int) -> str:
    """Return the answer of a student whose turn it is to be right, wrong, silent or strange."""
    answer = exercise.answer
    if turn % 11 == 9:
        return ""
    if turn % 11 == 10:
        return "?!"
    if turn % 3 == 1 and exercise.mistakes:
        mistake = exercise.mistakes[turn % len(exercise.mistakes)]
        is_option = isinstance(mistake, ChoiceMistake)
        return "abcdefgh"[mistake.option] if is_option else f"{mistake.value:.4g}"
    if isinstance(answer, ChoiceAnswer):
        return "abcdefgh"[answer.right]
    return f"{answer.value:.4g}"


def marked(papers: Sequence[Paper]) -> list[PaperMarks]:
    """Return the papers with invented answers, marked."""
    return [
        mark(paper, [answer_of(one, 5 * row + n) for n, one in enumerate(paper.exercises)])
        for row, paper in enumerate(papers)
    ]


def marks_of(given: Room) -> PrintedCard[PrintedRoll]:
    """Return the card of the marks of a class."""
    found = marked(given.papers)
    of = MarkedCourse(
        name=given.course.name,
        revision=given.course.revision,
        date=given.course.date,
        code="7Q2F-K9MD",
        language=given.course.language.value,
    )
    return printed_marks(of, found, summary(found))
