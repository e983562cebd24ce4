"""Invented answers of a class, marked: right ones, typical mistakes, gaps and nonsense."""

from collections.abc import Sequence

from chartgen.lessons.exercise import ChoiceAnswer, ChoiceMistake, Exercise, Paper
from chartgen.lessons.marking import PaperMarks, mark, summary
from chartgen.wording.card import PrintedCard
from chartgen.wording.lessons.marked import MarkedCourse, printed_marks
from chartgen.wording.lessons.printed_class import PrintedRoll


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
    """Return the papers marked."""
    return [
        mark(paper, [answer_of(one, 5 * row + n) for n, one in enumerate(paper.exercises)])
        for row, paper in enumerate(papers)
    ]


def marks_of(papers: Sequence[Paper]) -> PrintedCard[PrintedRoll]:
    """Return the card of the marks of a class."""
    found = marked(papers)
    of = MarkedCourse(
        name="Invented evening class", revision="1", date="2026-09-01", code="7Q2F-K9MD"
    )
    return printed_marks(of, found, summary(found))
