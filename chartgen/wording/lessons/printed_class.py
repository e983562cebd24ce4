"""What a class is handed, as strings: sheets of exercises, keys, the quiz, the sign-off."""

from dataclasses import dataclass

from chartgen.wording.signs import LegendEntry


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedQuestion:
    """One question; `unit` stands behind the answer line, `options` are ticked instead of it."""

    number: str
    text: str
    unit: str
    options: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedSolution:
    """A question's answer for the teacher: accepted span, worked lines, wrong answers and why."""

    number: str
    question: str
    answer: str
    accepted: str
    lines: tuple[str, ...]
    wrong: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedExercises:
    """A student's sheet. `data` are the facts of lathe and material that are needed by hand."""

    title: str
    subtitle: str
    student: str
    data: tuple[tuple[str, str], ...]
    questions: tuple[PrintedQuestion, ...]
    notes: tuple[str, ...]
    legend: tuple[LegendEntry, ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedKey:
    """A student's page of the teacher's key."""

    title: str
    subtitle: str
    student: str
    solutions: tuple[PrintedSolution, ...]
    notes: tuple[str, ...]
    legend: tuple[LegendEntry, ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedQuiz:
    """Questions about safety at one lathe, and the lines an instructor signs.

    `sources` names where each question comes from; `answers` stand in the teacher's key only.
    """

    title: str
    subtitle: str
    questions: tuple[PrintedQuestion, ...]
    sources: tuple[str, ...]
    sign_off: tuple[str, ...]
    notes: tuple[str, ...]
    answers: tuple[str, ...] = ()
    legend: tuple[LegendEntry, ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()
