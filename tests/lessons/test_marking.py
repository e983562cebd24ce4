"""Marking: right, wrong and why; what a class made of it; a key without shop files."""

import json
from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen.lessons.assign import papers_for
from chartgen.lessons.exercise import (
    ChoiceAnswer,
    ChoiceMistake,
    Exercise,
    NumericAnswer,
    NumericMistake,
    Paper,
)
from chartgen.lessons.key_data import UnusableKeyError, digest, key_data, papers_from_key
from chartgen.lessons.kinds import Kind, Slip
from chartgen.lessons.marking import Outcome, mark, summary
from chartgen.model.course import Course
from chartgen.model.material import Material
from chartgen.model.shop import LengthUnits, Shop
from chartgen.quantities import RPM

Class = tuple[Course, list[Paper]]


@pytest.fixture(scope="module", params=list(LengthUnits), ids=lambda units: units.value)
def class_of_twelve(
    request: pytest.FixtureRequest,
    course_of: Callable[..., Course],
    printed: Callable[..., Shop],
    example: Shop,
    materials: tuple[Material, ...],
) -> Class:
    course = course_of(count=12, units=request.param)
    shop = printed(example, request.param)
    return course, list(papers_for(course, [shop], materials, course.students))


def right_answer(exercise: Exercise) -> str:
    answer = exercise.answer
    if isinstance(answer, ChoiceAnswer):
        return "abcdef"[answer.right]
    return f"{answer.value:.3g} {answer.unit.label}"


def written(answer: NumericAnswer, value: float) -> str:
    """Return a wrong number as a student writes it, with a comma and the unit."""
    return f"{value:.5g} {answer.unit.label}".replace(".", ",", 1)


def test_right_answers_to_three_figures_are_right(class_of_twelve: Class) -> None:
    for paper in class_of_twelve[1]:
        answers = [
            # A step of the lathe and a count are written out.
            f"{e.answer.value:g}"
            if isinstance(e.answer, NumericAnswer)
            and e.kind in {Kind.NEAREST_STEP, Kind.PIECES_PER_BAR}
            else right_answer(e)
            for e in paper.exercises
        ]
        marks = mark(paper, answers)
        assert [one.outcome for one in marks.questions] == [Outcome.RIGHT] * 13, answers
        assert marks.right == 13


def test_each_mistake_is_told_by_its_answer(class_of_twelve: Class) -> None:
    told = set()
    for paper in class_of_twelve[1]:
        for place, exercise in enumerate(paper.exercises):
            for mistake in exercise.mistakes:
                if isinstance(mistake, ChoiceMistake):
                    text = "abcdef"[mistake.option]
                else:
                    assert isinstance(exercise.answer, NumericAnswer)
                    text = written(exercise.answer, mistake.value)
                answers = [""] * len(paper.exercises)
                answers[place] = text
                question = mark(paper, answers).questions[place]
                assert (question.outcome, question.slip) == (Outcome.WRONG, mistake.slip), text
                told.add(mistake.slip)
    assert len(told) >= 14


def exercise_of(template: Exercise, value: float, *wrong: tuple[Slip, float]) -> Exercise:
    return replace(
        template,
        answer=NumericAnswer(value=value, unit=RPM, low=0.99 * value, high=1.01 * value),
        mistakes=tuple(NumericMistake(slip=slip, value=number) for slip, number in wrong),
    )


def test_the_nearest_of_two_mistakes_is_told(class_of_twelve: Class) -> None:
    paper = class_of_twelve[1][0]
    near = exercise_of(paper.exercises[0], 500.0, (Slip.NO_PI, 1000.0), (Slip.FACTOR_TEN, 1015.0))
    one = Paper(number=1, name="", lathe=0, exercises=(near,))
    for text, slip in (("1005", Slip.NO_PI), ("1010", Slip.FACTOR_TEN), ("1100", None)):
        assert mark(one, [text]).questions[0].slip is slip
    # "1.015" may be a thousand and fifteen, and for marking it is.
    assert mark(one, ["1.015"]).questions[0].slip is Slip.FACTOR_TEN
    assert mark(one, [1000.0]).questions[0].slip is Slip.NO_PI
    assert mark(one, [500]).questions[0].outcome is Outcome.RIGHT


def test_empty_and_unreadable_are_told_apart(class_of_twelve: Class) -> None:
    paper = class_of_twelve[1][0]
    marks = mark(paper, ["", "  ", "no idea", *[""] * 10])
    outcomes = [one.outcome for one in marks.questions[:3]]
    assert outcomes == [Outcome.EMPTY, Outcome.EMPTY, Outcome.UNREADABLE]
    assert marks.questions[2].given == "no idea"
    assert marks.right == 0


def test_too_few_answers_are_refused(class_of_twelve: Class) -> None:
    with pytest.raises(ValueError, match="13 exercises and 2 answers"):
        mark(class_of_twelve[1][0], ["1", "2"])


def test_the_summary_counts_every_answer_once(class_of_twelve: Class) -> None:
    papers = class_of_twelve[1]
    marks = []
    for number, paper in enumerate(papers):
        answers = [right_answer(e) if e.kind is Kind.HANDLE_PACE else "" for e in paper.exercises]
        place = [e.kind for e in paper.exercises].index(Kind.TIME_TO_CENTRE)
        answer = paper.exercises[place].answer
        assert isinstance(answer, NumericAnswer)
        # Nine take the diameter for the way, two are wrong by nobody's mistake, one says "x".
        told = 2.0 * answer.value if number < 9 else 1.37 * answer.value
        answers[place] = f"{told:.6g}" if number < 11 else "x"
        marks.append(mark(paper, answers))
    found = summary(iter(marks))
    assert found.papers == 12
    assert found.slips == ((Slip.DIAMETER_FOR_RADIUS, 9),)
    assert sum(kind.asked for kind in found.kinds) == 12 * 13
    by_kind = {kind.kind: kind for kind in found.kinds}
    assert by_kind[Kind.HANDLE_PACE].right == 12
    time = by_kind[Kind.TIME_TO_CENTRE]
    assert (time.right, time.wrong, time.unmatched, time.unreadable) == (0, 11, 2, 1)
    assert time.slips == found.slips


# ----------------------------------------------------------------------------------- keys


def test_a_key_marks_as_the_papers_do_without_any_shop_file(class_of_twelve: Class) -> None:
    course, papers = class_of_twelve
    data = json.loads(json.dumps(key_data(course, iter(papers))))
    again = papers_from_key(data)
    assert [(p.number, p.name, p.lathe) for p in again] == [
        (p.number, p.name, p.lathe) for p in papers
    ]
    for paper, kept in zip(papers, again, strict=True):
        for exercise, one in zip(paper.exercises, kept.exercises, strict=True):
            assert one.kind is exercise.kind
            assert one.answer == exercise.answer
            assert one.mistakes == exercise.mistakes
        answers = [right_answer(e) for e in paper.exercises]
        assert mark(kept, answers) == mark(paper, answers)
    assert data["course"]["seed"] == course.seed


def test_an_altered_key_is_refused(class_of_twelve: Class) -> None:
    data = json.loads(json.dumps(key_data(*class_of_twelve)))
    data["papers"][0]["name"] = "Someone else"
    with pytest.raises(UnusableKeyError, match="altered"):
        papers_from_key(data)


def test_a_newer_key_is_refused(class_of_twelve: Class) -> None:
    data = key_data(*class_of_twelve) | {"format": 99}
    with pytest.raises(UnusableKeyError, match="format 99"):
        papers_from_key(data | {"digest": digest(data)})


@pytest.mark.parametrize("data", [None, [], {}, {"format": "1"}, "key"])
def test_what_is_no_key_is_refused(data: object) -> None:
    with pytest.raises(UnusableKeyError, match="no key"):
        papers_from_key(data)


@pytest.mark.parametrize(
    "papers",
    [None, [{}], [{"number": 1, "name": "", "lathe": 0, "exercises": [{"kind": "x"}]}]],
)
def test_a_key_with_a_hole_is_refused(papers: object) -> None:
    data = {"format": 1, "course": {}, "papers": papers}
    with pytest.raises(UnusableKeyError, match="cannot be read"):
        papers_from_key(data | {"digest": digest(data)})
