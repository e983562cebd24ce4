"""What a class is handed, as strings: exercises, keys, the quiz, the sign-off, the marks."""

from dataclasses import dataclass

from chartgen.wording.signs import LegendEntry


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedQuestion:
    """One question; `unit` stands behind the answer line, `options` are ticked instead of it.

    `working` is how many lines there are to work it out on.
    """

    number: str
    text: str
    unit: str
    options: tuple[str, ...]
    working: int = 0


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
    solutions: tuple[PrintedSolution, ...]
    notes: tuple[str, ...]
    legend: tuple[LegendEntry, ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedQuiz:
    """Questions about safety at one lathe; the answers are a table of the teacher's."""

    title: str
    subtitle: str
    questions: tuple[PrintedQuestion, ...]
    notes: tuple[str, ...]
    legend: tuple[LegendEntry, ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedSignOff:
    """What was shown at the machine and done there, and the lines that are signed.

    `rules` are the school's own, above everything else; `fields` are named lines to fill in,
    each row of them beside one another.
    """

    title: str
    subtitle: str
    rules: tuple[str, ...]
    points: tuple[str, ...]
    fields: tuple[tuple[str, ...], ...]
    notes: tuple[str, ...]
    legend: tuple[LegendEntry, ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedBar:
    """A bar of a plot: what it counts, how many, and a remark under its name."""

    label: str
    count: int
    remark: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedRoll:
    """A table of a class, a student a row, which runs on to further pages.

    `right` names the columns aligned right. `bars` are the mistakes made, the most frequent
    first, under `bars_title`; `description` says them in words.
    """

    title: str
    subtitle: str
    headings: tuple[str, ...]
    right: frozenset[int]
    rows: tuple[tuple[str, ...], ...]
    notes: tuple[str, ...]
    bars_title: str = ""
    bars: tuple[PrintedBar, ...] = ()
    description: str = ""
    legend: tuple[LegendEntry, ...] = ()
