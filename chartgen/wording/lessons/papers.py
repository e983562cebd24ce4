"""A student's paper as a sheet of exercises, and as a page of the teacher's key."""

from typing import Final

from chartgen.lessons.exercise import (
    ChoiceAnswer,
    ChoiceMistake,
    Exercise,
    NumericAnswer,
    NumericMistake,
    Paper,
)
from chartgen.lessons.kinds import Kind
from chartgen.model.course import Course
from chartgen.model.shop import Shop
from chartgen.quantities import Unit
from chartgen.wording.language import tr
from chartgen.wording.lessons.amounts import result, span, unit_label, with_unit
from chartgen.wording.lessons.formulas import line_of, step_of
from chartgen.wording.lessons.options import LETTERS, lettered
from chartgen.wording.lessons.printed_class import (
    PrintedExercises,
    PrintedKey,
    PrintedQuestion,
    PrintedSolution,
)
from chartgen.wording.lessons.question_texts import question_text
from chartgen.wording.lessons.sheet_facts import sheet_facts
from chartgen.wording.lessons.slips import slip_words, times_right

WORKING: Final = 3
"""Lines to work out a number on."""
_READ: Final = frozenset({Kind.READ_NOMOGRAM, Kind.READ_CURVE})
_WORKED_CHOICE: Final = frozenset({Kind.MOTOR_PULLS})


def printed_exercises(course: Course, shop: Shop, paper: Paper) -> PrintedExercises:
    """Return a student's exercises at a lathe."""
    return PrintedExercises(
        title=tr("Exercises"),
        subtitle=course.name,
        data=sheet_facts(shop, paper),
        questions=tuple(
            _question(number, exercise, shop) for number, exercise in enumerate(paper.exercises, 1)
        ),
        notes=(
            tr(
                "Three figures are enough. Tick one box where there are boxes. In an answer file "
                "a ticked box is its letter."
            ),
        ),
    )


def printed_key(course: Course, shop: Shop, paper: Paper) -> PrintedKey:
    """Return a student's exercises worked out."""
    return PrintedKey(
        title=tr("Answer key"),
        subtitle=course.name,
        solutions=tuple(
            _solution(number, exercise, shop) for number, exercise in enumerate(paper.exercises, 1)
        ),
        notes=(tr("✗ marks a wrong answer and the mistake that leads to it."),),
    )


def answer_unit(exercise: Exercise) -> str:
    """Return what stands behind the line that a result is written on."""
    if isinstance(exercise.answer, ChoiceAnswer):
        return ""
    if exercise.kind is Kind.PIECES_PER_BAR:
        return tr("pieces")
    return unit_label(exercise.answer.unit)


def answer_words(exercise: Exercise) -> str:
    """Return the right answer as the key prints it."""
    answer = exercise.answer
    if isinstance(answer, ChoiceAnswer):
        return lettered(exercise, answer.options)[answer.right]
    return _number(exercise, answer.value, answer.unit)


def mistake_words(exercise: Exercise, mistake: NumericMistake | ChoiceMistake) -> tuple[str, str]:
    """Return a wrong answer and what was done wrong."""
    answer = exercise.answer
    if isinstance(mistake, ChoiceMistake) and isinstance(answer, ChoiceAnswer):
        return LETTERS[mistake.option], slip_words(mistake.slip, exercise.kind)
    if isinstance(mistake, NumericMistake) and isinstance(answer, NumericAnswer):
        times = times_right(mistake.value, answer.value)
        why = ", ".join(part for part in (slip_words(mistake.slip, exercise.kind), times) if part)
        return _number(exercise, mistake.value, answer.unit), why
    raise TypeError("a mistake is of its answer's kind: a number for one, an option for the other")


def _question(number: int, exercise: Exercise, shop: Shop) -> PrintedQuestion:
    answer = exercise.answer
    is_choice = isinstance(answer, ChoiceAnswer)
    works = exercise.kind in _WORKED_CHOICE or not (is_choice or exercise.kind in _READ)
    return PrintedQuestion(
        number=str(number),
        text=question_text(exercise, shop),
        unit=answer_unit(exercise),
        options=lettered(exercise, answer.options) if isinstance(answer, ChoiceAnswer) else (),
        working=WORKING if works else 0,
    )


def _solution(number: int, exercise: Exercise, shop: Shop) -> PrintedSolution:
    return PrintedSolution(
        number=str(number),
        question=question_text(exercise, shop),
        answer=answer_words(exercise),
        accepted=_accepted(exercise),
        lines=tuple(line_of(step_of(working)) for working in exercise.working),
        wrong=tuple(mistake_words(exercise, mistake) for mistake in _in_order(exercise)),
    )


def _in_order(exercise: Exercise) -> list[NumericMistake | ChoiceMistake]:
    """Return the mistakes, those of options by their letters."""
    return sorted(
        exercise.mistakes, key=lambda one: one.option if isinstance(one, ChoiceMistake) else 0
    )


def _accepted(exercise: Exercise) -> str:
    """Return the span that passes for right."""
    if isinstance(exercise.answer, ChoiceAnswer):
        return ""
    low, high = span(exercise.answer)
    if low == high:
        return tr("(exactly)")
    return tr("(right from {low} to {high})", low=low, high=high)


def _number(exercise: Exercise, value: float, unit: Unit) -> str:
    if exercise.kind is Kind.PIECES_PER_BAR:
        return with_unit(f"{value:.0f}", unit)
    return result(value, unit)
