"""The key and the sheet say the same; a wrong answer is told from the right one by what it says."""

import re
from collections.abc import Callable
from typing import Any

import pytest

from chartgen.lessons.exercise import ChoiceAnswer
from chartgen.lessons.kinds import Kind, Slip
from chartgen.lessons.marking import Outcome, mark
from chartgen.model.shop import LengthUnits
from chartgen.wording.lessons.cards import exercise_sheets, key_pages, student_cards
from chartgen.wording.lessons.formulas import line_of, step_of
from chartgen.wording.lessons.papers import answer_words, printed_exercises, printed_key
from chartgen.wording.lessons.slips import slip_words, times_right

each_room = pytest.mark.parametrize(
    ("level", "units"),
    [("first", LengthUnits.METRIC), ("second", LengthUnits.METRIC), ("second", LengthUnits.INCH)],
)


@each_room
def test_key_and_sheet_ask_the_same_in_the_same_order(
    level: str, units: LengthUnits, room_of: Callable[..., Any]
) -> None:
    room = room_of(level, units)
    for paper in room.papers:
        shop = room.shops[paper.lathe]
        sheet = printed_exercises(room.course, shop, paper)
        key = printed_key(room.course, shop, paper)
        asked = [(one.number, one.text) for one in sheet.questions]
        assert asked == [(one.number, one.question) for one in key.solutions]
        for question, solution in zip(sheet.questions, key.solutions, strict=True):
            if question.options:
                assert solution.answer in question.options
            else:
                assert solution.answer.endswith(question.unit) or question.unit == "pieces"


@each_room
def test_what_the_key_prints_passes_for_right_and_what_it_calls_wrong_does_not(
    level: str, units: LengthUnits, room_of: Callable[..., Any]
) -> None:
    room = room_of(level, units)
    for paper in room.papers:
        key = printed_key(room.course, room.shops[paper.lathe], paper)
        texts = [one.answer for one in key.solutions]
        right = [text[0] if re.match(r"[a-h]\)", text) else text for text in texts]
        assert mark(paper, right).right == len(paper.exercises), right
        for place, solution in enumerate(key.solutions):
            for wrong, _ in solution.wrong:
                answers = [*right[:place], wrong, *right[place + 1 :]]
                assert mark(paper, answers).questions[place].outcome is Outcome.WRONG, wrong


@each_room
def test_the_ends_of_the_printed_span_pass_for_right(
    level: str, units: LengthUnits, room_of: Callable[..., Any]
) -> None:
    room = room_of(level, units)
    spans = 0
    for paper in room.papers:
        key = printed_key(room.course, room.shops[paper.lathe], paper)
        for exercise, solution in zip(paper.exercises, key.solutions, strict=True):
            span = re.fullmatch(r"\(right from ([\d.]+) to ([\d.]+)\)", solution.accepted)
            if span is None:
                is_exact = solution.accepted == "(exactly)"
                assert is_exact or isinstance(exercise.answer, ChoiceAnswer)
                continue
            low, high = float(span[1]), float(span[2])
            assert exercise.answer.low <= low <= exercise.answer.value <= high
            assert high <= exercise.answer.high
            spans += 1
    assert spans > 40


@each_room
def test_a_worked_solution_ends_in_the_answer(
    level: str, units: LengthUnits, room_of: Callable[..., Any]
) -> None:
    room = room_of(level, units)
    for paper in room.papers:
        for exercise in paper.exercises:
            lines = [line_of(step_of(working)) for working in exercise.working]
            assert lines
            if isinstance(exercise.answer, ChoiceAnswer):
                continue
            number = float(re.split(r"[\s\N{NO-BREAK SPACE}]", lines[-1].rpartition("→ ")[2])[0])
            assert exercise.answer.low <= number <= exercise.answer.high, lines


def test_sheet_and_key_of_a_student_bear_one_code_and_no_other_student_has_it(
    room_of: Callable[..., Any],
) -> None:
    room = room_of()
    of = room.course, room.shops, room.papers
    sheets, (matrix, *keys) = exercise_sheets(*of), key_pages(*of)
    codes = [sheet.check_code for sheet in sheets]
    assert codes == [key.check_code for key in keys]
    assert len(set(codes)) == len(room.papers)
    assert matrix.check_code not in codes
    letter = exercise_sheets(*of, sheet="letter")
    assert [one.check_code for one in letter] == codes


def test_the_matrix_has_a_row_a_student_and_the_answers_of_the_key(
    room_of: Callable[..., Any],
) -> None:
    room = room_of("first")
    matrix = key_pages(room.course, room.shops, room.papers)[0].chart
    assert [row[:2] for row in matrix.rows] == [(str(p.number), p.name) for p in room.papers]
    for row, paper in zip(matrix.rows, room.papers, strict=True):
        for cell, exercise in zip(row[2:], paper.exercises, strict=True):
            assert answer_words(exercise).startswith(cell), (cell, exercise.kind)


def test_a_students_card_shows_what_his_exercises_are_about(room_of: Callable[..., Any]) -> None:
    room = room_of()
    for card, paper in zip(
        student_cards(room.course, room.shops, room.papers), room.papers, strict=True
    ):
        asked = {exercise.material.name for exercise in paper.exercises}
        assert {column.name for column in card.chart.columns} <= asked
        assert 1 <= len(card.chart.columns) <= 3
        assert f"No. {paper.number}" in card.student
        assert paper.name in card.student
        assert card.lathe == room.shops[paper.lathe].lathe.name


@pytest.mark.parametrize("slip", list(Slip))
def test_every_mistake_has_words_of_its_own(slip: Slip) -> None:
    words = slip_words(slip)
    assert words
    assert sum(slip_words(other) == words for other in Slip) == 1
    assert all(slip_words(slip, kind) for kind in Kind)


def test_how_often_the_answer_a_wrong_one_is_where_that_tells() -> None:
    assert times_right(200.0, 100.0) == "twice the answer"
    assert times_right(50.2, 100.0) == "half the answer"
    assert times_right(314.0, 100.0) == "π times the answer"
    assert times_right(173.0, 100.0) == ""
    assert times_right(1.0, 0.0) == ""
