"""A class's marks as tables: a student a line with the mistakes made, an exercise a line."""

from collections.abc import Sequence
from dataclasses import dataclass

from chartgen.lessons.marking import ClassSummary, Outcome, PaperMarks, QuestionMark
from chartgen.model.course import Student
from chartgen.wording.language import decimal, tr, trn
from chartgen.wording.lessons.marked import mistake_bars
from chartgen.wording.lessons.matrix import kind_words
from chartgen.wording.lessons.printed_class import PrintedBar
from chartgen.wording.lessons.slips import slip_words

Cells = tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ToldMarks:
    """Marks as text. `students` and `kinds` begin with their headings.

    `wrong` has every answer that is not right: number, name, question, what was answered, and
    what it was put down to. `cells` is one row a student, as a spreadsheet takes it.
    """

    title: str
    students: tuple[Cells, ...]
    wrong: tuple[Cells, ...]
    kinds: tuple[Cells, ...]
    bars_title: str
    bars: tuple[PrintedBar, ...]
    notes: tuple[str, ...]
    cells: tuple[Cells, ...]


def told_marks(
    name: str, marks: Sequence[PaperMarks], summary: ClassSummary, absent: Sequence[Student]
) -> ToldMarks:
    """Return the marks of a class, said in the language being spoken."""
    notes = [trn("{number} student marked.", "{number} students marked.", len(marks))]
    if absent:
        who = ", ".join(f"{one.number} {one.name}".strip() for one in absent)
        notes.append(tr("No answers from: {who}.", who=who))
    return ToldMarks(
        title=tr("Marks, {course}", course=name),
        students=(
            (tr("No."), tr("Name"), tr("right"), tr("of"), "%"),
            *(_student(one) for one in marks),
        ),
        wrong=(
            (tr("No."), tr("Name"), tr("question"), tr("answer"), tr("what became of it")),
            *(
                (str(one.number), one.name, str(place), question.given, _became(question))
                for one in marks
                for place, question in enumerate(one.questions, 1)
                if question.outcome is not Outcome.RIGHT
            ),
        ),
        kinds=(
            (tr("exercise"), tr("asked"), tr("right"), tr("wrong"), tr("empty"), tr("unreadable")),
            *(
                (
                    kind_words(kind.kind).replace("\n", " "),
                    *map(str, (kind.asked, kind.right, kind.wrong, kind.empty, kind.unreadable)),
                )
                for kind in summary.kinds
            ),
        ),
        bars_title=tr("Mistakes made, by how often"),
        bars=mistake_bars(summary),
        notes=tuple(notes),
        cells=_cells(marks),
    )


def _student(one: PaperMarks) -> Cells:
    asked = len(one.questions)
    share = 100.0 * one.right / asked if asked else 0.0
    return str(one.number), one.name, str(one.right), str(asked), decimal(f"{share:.0f}")


def _became(one: QuestionMark) -> str:
    """Return what became of an answer: right, or why not."""
    if one.slip is not None:
        return slip_words(one.slip, one.kind)
    return {
        Outcome.RIGHT: tr("right"),
        Outcome.WRONG: tr("matches no known mistake"),
        Outcome.EMPTY: tr("empty"),
        Outcome.UNREADABLE: tr("unreadable"),
    }[one.outcome]


def _cells(marks: Sequence[PaperMarks]) -> tuple[Cells, ...]:
    """Return a row a student under headings: the marks, then each answer and what became of it."""
    places = max((len(one.questions) for one in marks), default=0)
    names = (part for n in range(1, places + 1) for part in (f"q{n}", f"q{n} {tr('mark')}"))
    rows: list[Cells] = [(tr("No."), tr("Name"), tr("right"), tr("of"), *names)]
    for one in marks:
        answers = [part for q in one.questions for part in (q.given, _became(q))]
        answers += [""] * (2 * places - len(answers))
        rows.append((str(one.number), one.name, str(one.right), str(len(one.questions)), *answers))
    return tuple(rows)
