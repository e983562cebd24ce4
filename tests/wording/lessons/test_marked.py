"""The card of the marks: its bars and its rows count what marking found."""

from collections import Counter
from collections.abc import Callable
from typing import Any

from chartgen.lessons.marking import Outcome, summary
from chartgen.wording.lessons.marked import kind_line, mistake_bars, slip_letters


def test_the_bars_are_all_wrong_answers_the_most_frequent_first(
    of_a_class: dict[str, Any], room_of: Callable[..., Any]
) -> None:
    marks = of_a_class["marked"](room_of().papers)
    wrong = [one for paper in marks for one in paper.questions if one.outcome is Outcome.WRONG]
    bars = mistake_bars(summary(marks))
    assert sum(bar.count for bar in bars) == len(wrong) > 20
    made = Counter(one.slip for one in wrong if one.slip)
    known = [bar for bar in bars if bar.remark]
    assert [bar.count for bar in known] == sorted(made.values(), reverse=True)
    assert [bar.label[:2] for bar in known] == [f"{chr(65 + n)}:" for n in range(len(made))]


def test_a_row_says_what_became_of_each_answer(
    of_a_class: dict[str, Any], room_of: Callable[..., Any]
) -> None:
    room = room_of()
    marks = of_a_class["marked"](room.papers)
    letters = slip_letters(summary(marks))
    card = of_a_class["marks_of"](room)
    signs = {Outcome.RIGHT: "✓", Outcome.EMPTY: "–", Outcome.UNREADABLE: "?"}
    for row, paper in zip(card.chart.rows, marks, strict=True):
        assert row[:2] == (str(paper.number), paper.name)
        for sign, one in zip(row[2:-2], paper.questions, strict=True):
            wrong = f"✗{letters[one.slip] if one.slip else ''}"
            assert sign == signs.get(one.outcome, wrong)
        assert row[-2] == str(sum(sign == "✓" for sign in row[2:-2]))
        assert row[-1] == f"{100 * int(row[-2]) / len(paper.questions):.0f}"


def test_each_kind_has_its_line_with_what_is_not_nought(
    of_a_class: dict[str, Any], room_of: Callable[..., Any]
) -> None:
    kinds = summary(of_a_class["marked"](room_of().papers)).kinds
    for kind in kinds:
        line = kind_line(kind)
        assert f"{kind.right} of {kind.asked} right" in line
        assert ("wrong" in line) == bool(kind.wrong)
        assert ("empty" in line) == bool(kind.empty)
