"""The marks of a class as plain data, for a machine: keys and numbers, no words."""

from collections.abc import Iterable
from typing import Any

from chartgen.lessons.marking import ClassSummary, KindSummary, PaperMarks, QuestionMark


def marks_answer(
    marks: Iterable[PaperMarks], summary: ClassSummary, absent: Iterable[int]
) -> dict[str, Any]:
    """Return the marks of each student, what the class made of each kind, and who is missing."""
    return {
        "students": [
            {
                "number": one.number,
                "name": one.name,
                "right": one.right,
                "questions": [_question(question) for question in one.questions],
            }
            for one in marks
        ],
        "kinds": [_kind(kind) for kind in summary.kinds],
        "mistakes": {slip.value: count for slip, count in summary.slips},
        "absent": list(absent),
    }


def _question(one: QuestionMark) -> dict[str, Any]:
    return {
        "kind": one.kind.value,
        "given": one.given,
        "outcome": one.outcome.value,
        "mistake": one.slip.value if one.slip else None,
    }


def _kind(one: KindSummary) -> dict[str, Any]:
    return {
        "kind": one.kind.value,
        "asked": one.asked,
        "right": one.right,
        "wrong": one.wrong,
        "empty": one.empty,
        "unreadable": one.unreadable,
        "unmatched": one.unmatched,
        "mistakes": {slip.value: count for slip, count in one.slips},
    }
