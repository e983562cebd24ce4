"""Right or wrong, and which mistake a wrong answer matches; what a class found hard."""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import Enum
from typing import Protocol

from chartgen.lessons.accepted import is_right, tolerance
from chartgen.lessons.answer_text import numbers_of, option_of
from chartgen.lessons.exercise import (
    ChoiceAnswer,
    ChoiceMistake,
    NumericAnswer,
    NumericMistake,
)
from chartgen.lessons.kinds import Kind, Slip


class Markable(Protocol):
    """What marking needs of an exercise, whether it was just made or comes from a key."""

    @property
    def kind(self) -> Kind:
        """What is asked."""

    @property
    def answer(self) -> NumericAnswer | ChoiceAnswer:
        """What is right."""

    @property
    def mistakes(self) -> tuple[NumericMistake | ChoiceMistake, ...]:
        """The wrong answers that tell their cause."""


class MarkablePaper(Protocol):
    """What marking needs of a paper."""

    @property
    def number(self) -> int:
        """The student's number."""

    @property
    def name(self) -> str:
        """The student's name."""

    @property
    def exercises(self) -> Sequence[Markable]:
        """The exercises in their order."""


class Outcome(Enum):
    """What became of a question."""

    RIGHT = "right"
    WRONG = "wrong"
    EMPTY = "empty"
    UNREADABLE = "unreadable"


@dataclass(frozen=True, slots=True, kw_only=True)
class QuestionMark:
    """One answer marked. `slip` is the mistake that a wrong one matches, None for any other."""

    kind: Kind
    outcome: Outcome
    slip: Slip | None
    given: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperMarks:
    """One student's paper marked."""

    number: int
    name: str
    questions: tuple[QuestionMark, ...]

    @property
    def right(self) -> int:
        """How many answers are right."""
        return sum(one.outcome is Outcome.RIGHT for one in self.questions)


@dataclass(frozen=True, slots=True, kw_only=True)
class KindSummary:
    """What a class made of one kind. `slips` are mistakes with their count, the most made first.

    `unmatched` are wrong answers that match no mistake.
    """

    kind: Kind
    right: int
    wrong: int
    empty: int
    unreadable: int
    unmatched: int
    slips: tuple[tuple[Slip, int], ...]

    @property
    def asked(self) -> int:
        """How often the kind was asked."""
        return self.right + self.wrong + self.empty + self.unreadable


@dataclass(frozen=True, slots=True, kw_only=True)
class ClassSummary:
    """What a class made of its papers; `slips` over all kinds, the most made first."""

    papers: int
    kinds: tuple[KindSummary, ...]
    slips: tuple[tuple[Slip, int], ...]


def mark(paper: MarkablePaper, answers: Sequence[str | float]) -> PaperMarks:
    """Return a paper marked.

    Raises
    ------
    ValueError
        If there are more or fewer answers than exercises; an empty one is an empty text.
    """
    if len(answers) != len(paper.exercises):
        raise ValueError(
            f"number {paper.number} has {len(paper.exercises)} exercises and "
            f"{len(answers)} answers; leave an answer empty, but do not leave it out"
        )
    return PaperMarks(
        number=paper.number,
        name=paper.name,
        questions=tuple(
            _marked(exercise, answer)
            for exercise, answer in zip(paper.exercises, answers, strict=True)
        ),
    )


def _marked(exercise: Markable, given: str | float) -> QuestionMark:
    text = given if isinstance(given, str) else f"{given!r}"
    slip: Slip | None = None
    if not text.strip():
        outcome = Outcome.EMPTY
    elif isinstance(exercise.answer, ChoiceAnswer):
        outcome, slip = _choice(exercise.answer, exercise.mistakes, text)
    else:
        numbers = (
            numbers_of(text, exercise.answer.unit) if isinstance(given, str) else (float(given),)
        )
        outcome, slip = _number(exercise.answer, exercise.mistakes, numbers)
    return QuestionMark(kind=exercise.kind, outcome=outcome, slip=slip, given=text)


def _choice(
    answer: ChoiceAnswer, mistakes: Iterable[NumericMistake | ChoiceMistake], text: str
) -> tuple[Outcome, Slip | None]:
    ticked = option_of(text, answer.options)
    if ticked is None:
        return Outcome.UNREADABLE, None
    if ticked == answer.right:
        return Outcome.RIGHT, None
    made = (m.slip for m in mistakes if isinstance(m, ChoiceMistake) and m.option == ticked)
    return Outcome.WRONG, next(made, None)


def _number(
    answer: NumericAnswer,
    mistakes: Iterable[NumericMistake | ChoiceMistake],
    numbers: Sequence[float],
) -> tuple[Outcome, Slip | None]:
    if not numbers:
        return Outcome.UNREADABLE, None
    if any(is_right(answer, number) for number in numbers):
        return Outcome.RIGHT, None
    near = [
        (abs(number - mistake.value) / (abs(mistake.value) or 1.0), mistake.slip)
        for number in numbers
        for mistake in mistakes
        if isinstance(mistake, NumericMistake)
        and abs(number - mistake.value) <= tolerance(answer, mistake.value)
    ]
    return Outcome.WRONG, min(near, key=lambda one: one[0])[1] if near else None


def summary(marks: Iterable[PaperMarks]) -> ClassSummary:
    """Return what a class made of its papers, read one by one."""
    papers = 0
    outcomes: Counter[tuple[Kind, Outcome]] = Counter()
    slips: Counter[tuple[Kind, Slip | None]] = Counter()
    for paper in marks:
        papers += 1
        for one in paper.questions:
            outcomes[one.kind, one.outcome] += 1
            if one.outcome is Outcome.WRONG:
                slips[one.kind, one.slip] += 1
    asked = [kind for kind in Kind if any((kind, outcome) in outcomes for outcome in Outcome)]
    total: Counter[Slip] = Counter()
    for (_, slip), count in slips.items():
        if slip is not None:
            total[slip] += count
    return ClassSummary(
        papers=papers,
        kinds=tuple(
            KindSummary(
                kind=kind,
                right=outcomes[kind, Outcome.RIGHT],
                wrong=outcomes[kind, Outcome.WRONG],
                empty=outcomes[kind, Outcome.EMPTY],
                unreadable=outcomes[kind, Outcome.UNREADABLE],
                unmatched=slips[kind, None],
                slips=_most_first(Counter({s: slips[kind, s] for s in Slip if slips[kind, s]})),
            )
            for kind in asked
        ),
        slips=_most_first(total),
    )


def _most_first(counts: Counter[Slip]) -> tuple[tuple[Slip, int], ...]:
    """Return counts, the most first; of as many, in the order of `Slip`."""
    order = list(Slip)
    return tuple(sorted(counts.items(), key=lambda one: (-one[1], order.index(one[0]))))
