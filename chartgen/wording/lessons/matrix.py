"""The answers of a class at a glance: a student a row, a question a column."""

from collections.abc import Sequence

from chartgen.lessons.exercise import ChoiceAnswer, Exercise, Paper
from chartgen.lessons.kinds import Kind
from chartgen.model.course import Course
from chartgen.wording.language import tr
from chartgen.wording.lessons.amounts import figures, result, unit_label
from chartgen.wording.lessons.options import LETTERS
from chartgen.wording.lessons.printed_class import PrintedRoll

_FIGURES = 3
_LONGEST_NAME = 26
"""Beside thirteen answers; the number tells who it is, and the papers have the whole name."""


def kind_words(kind: Kind) -> str:
    """Return what a kind of exercise asks for, as the heading of a column."""
    return {
        Kind.SPINDLE_SPEED: tr("spindle\nspeed"),
        Kind.NEAREST_STEP: tr("nearest\nspeed"),
        Kind.TRUE_SURFACE_SPEED: tr("surface\nspeed"),
        Kind.HANDLE_PACE: tr("turn of\nhandle"),
        Kind.CUTTING_FORCE: tr("force"),
        Kind.CUTTING_POWER: tr("power"),
        Kind.MOTOR_PULLS: tr("motor\npulls"),
        Kind.WHAT_BINDS: tr("what\nbinds"),
        Kind.TOO_TIMID: tr("too\ntimid"),
        Kind.TIME_TO_CENTRE: tr("to the\ncentre"),
        Kind.PIECES_PER_BAR: tr("pieces"),
        Kind.READ_NOMOGRAM: tr("read\npower"),
        Kind.READ_CURVE: tr("read\ntorque"),
    }[kind]


def name_in_roll(name: str) -> str:
    """Return a name as a line of a class's table holds it, a long one cut short and so marked."""
    if len(name) <= _LONGEST_NAME:
        return name
    return f"{name[: _LONGEST_NAME - 1].rstrip(' -,')}…"


def printed_matrix(course: Course, papers: Sequence[Paper]) -> PrintedRoll:
    """Return the right answers of some students.

    Where all are asked the same in a place, its heading says what and in which unit; else each
    cell has its unit.
    """
    places = max(len(paper.exercises) for paper in papers)
    columns = [[_at(paper, place) for paper in papers] for place in range(places)]
    asked = [_common(column) for column in columns]
    return PrintedRoll(
        title=tr("Answers"),
        subtitle=course.name,
        headings=(
            tr("No."),
            tr("Name"),
            *(
                f"{place}\n{_heading(one)}" if one else f"{place}"
                for place, one in enumerate(asked, 1)
            ),
        ),
        right=frozenset(range(2, 2 + places)),
        rows=tuple(
            (
                str(paper.number),
                name_in_roll(paper.name),
                *(
                    _cell(column[row], has_heading=one is not None)
                    for column, one in zip(columns, asked, strict=True)
                ),
            )
            for row, paper in enumerate(papers)
        ),
        notes=(
            tr(
                "The right answers; the pages of the key say what passes for right, and what a "
                "wrong answer tells."
            ),
        ),
    )


def _at(paper: Paper, place: int) -> Exercise | None:
    return paper.exercises[place] if place < len(paper.exercises) else None


def _common(column: Sequence[Exercise | None]) -> Exercise | None:
    """Return the first exercise of a column if all are of its kind and unit."""
    first = column[0]
    alike = all(
        one is not None
        and first is not None
        and (one.kind, _unit(one)) == (first.kind, _unit(first))
        for one in column
    )
    return first if alike else None


def _unit(exercise: Exercise) -> str:
    return "" if isinstance(exercise.answer, ChoiceAnswer) else exercise.answer.unit.label


def _heading(exercise: Exercise) -> str:
    words = kind_words(exercise.kind)
    if isinstance(exercise.answer, ChoiceAnswer) or not exercise.answer.unit.label:
        return words
    return f"{words}\n{unit_label(exercise.answer.unit)}"


def _cell(exercise: Exercise | None, *, has_heading: bool) -> str:
    if exercise is None:
        return "–"
    answer = exercise.answer
    if isinstance(answer, ChoiceAnswer):
        return LETTERS[answer.right]
    if exercise.kind is Kind.PIECES_PER_BAR:
        return f"{answer.value:.0f}"
    if has_heading:
        return figures(answer.value, _FIGURES)
    return result(answer.value, answer.unit)
