"""A sheet states all that its questions need: each is worked anew from the printed text alone.

The formulas are written here a second time; nothing but the words on the paper goes in.
"""

import math
import re
from collections import Counter
from collections.abc import Callable
from fractions import Fraction
from typing import Any

import pytest

from chartgen.lessons.exercise import ChoiceAnswer, NumericAnswer
from chartgen.lessons.kinds import Kind
from chartgen.model.shop import LengthUnits
from chartgen.wording.lessons.papers import printed_exercises
from chartgen.wording.lessons.printed_class import PrintedExercises, PrintedQuestion

ROOMS = [
    (level, units)
    for level in ("first", "second")
    for units in (LengthUnits.METRIC, LengthUnits.INCH)
]
NUMBER = r"((?:\d+ )?\d+/\d+|\d+(?:\.\d+)?)"
# Exact by definition (ISO 31-1 / the international yard of 1959).
MM = {"mm": 1.0, "in": 25.4, "mm/rev": 1.0, "in/rev": 25.4}
METRES = {"m/min": 1.0, "ft/min": 0.3048}


def value(text: str) -> float:
    """Return a printed number: a decimal, a fraction, or a whole and a fraction."""
    return float(sum(Fraction(part) for part in text.split()))


def found(text: str, before: str, unit: str, after: str = "") -> tuple[float, str]:
    """Return a number and its unit by the words round it."""
    plain = text.replace("\N{NO-BREAK SPACE}", " ")
    match = re.search(rf"{before}{NUMBER} ({unit})(?![\w/]){after}", plain)
    assert match, (before, plain)
    return value(match[1]), match[2]


def mm(text: str, before: str, unit: str = "mm|in", after: str = "") -> float:
    number, label = found(text, before, unit, after)
    return number * MM[label]


def per_rev(text: str, before: str) -> float:
    return mm(text, before, "mm/rev|in/rev")


def metres(text: str, before: str, after: str = "") -> float:
    number, label = found(text, before, "m/min|ft/min", after)
    return number * METRES[label]


def plain(text: str, before: str, unit: str) -> float:
    return found(text, before, unit)[0]


def spindle_speed(text: str, _sheet: PrintedExercises) -> float:
    speed = metres(text, "diameter: ")
    return 1000.0 * speed / (math.pi * mm(text, "a bar of "))


def nearest_step(text: str, sheet: PrintedExercises) -> float:
    wanted = spindle_speed(text, sheet)
    stated = next(said for name, said in sheet.data if name == "Its speeds")
    steps: list[float] = []
    for part in stated.split("; "):
        span = re.fullmatch(r".+: (\d+) to (\d+) rev/min, set in steps of (\S+)", part)
        if span:
            low, high, step = (float(one) for one in span.groups())
            steps += [low + step * n for n in range(round((high - low) / step) + 1)]
        else:
            steps += [float(one) for one in part.removesuffix(" rev/min").split(", ")]
    return min(steps, key=lambda step: abs(step - wanted))


def true_surface_speed(text: str, _sheet: PrintedExercises) -> float:
    return math.pi * mm(text, "A bar of ") * plain(text, "turns at ", "rev/min") / 1000.0


def handle_pace(text: str, _sheet: PrintedExercises) -> float:
    rate = per_rev(text, "advance ") * plain(text, "turns at ", "rev/min")
    travel = mm(text, "the dial counts ") / 2.0 if "dial" in text else mm(text, "the blade by ")
    return 60.0 * travel / rate


def time_to_centre(text: str, _sheet: PrintedExercises) -> float:
    rate = per_rev(text, "a feed of ") * plain(text, "parted at ", "rev/min")
    return 60.0 * (mm(text, "A solid bar of ") / 2.0) / rate


def pieces_per_bar(text: str, _sheet: PrintedExercises) -> float:
    used = mm(text, "Each piece is ") + mm(text, "its slot ") + mm(text, "wide, and ")
    return math.floor((mm(text, "A bar is ") - mm(text, "off it; ")) / used)


def cutting_force(text: str, _sheet: PrintedExercises) -> float:
    area = mm(text, "a blade ") * per_rev(text, "a feed of ")
    return plain(text, "specific cutting force is ", "N/mm²") * area


def cutting_power(text: str, _sheet: PrintedExercises) -> float:
    return plain(text, "force of ", "N") * metres(text, "surface speed of ") / 60.0


def motor_pulls(text: str, _sheet: PrintedExercises) -> int:
    needed = plain(text, "a force of up to ", "N") * mm(text, "a bar of ") / 2000.0
    return 0 if needed <= plain(text, "the drive gives ", "N·m") else 1


HAND: dict[Kind, Callable[[str, PrintedExercises], float]] = {
    Kind.SPINDLE_SPEED: spindle_speed,
    Kind.NEAREST_STEP: nearest_step,
    Kind.TRUE_SURFACE_SPEED: true_surface_speed,
    Kind.HANDLE_PACE: handle_pace,
    Kind.TIME_TO_CENTRE: time_to_centre,
    Kind.PIECES_PER_BAR: pieces_per_bar,
    Kind.CUTTING_FORCE: cutting_force,
    Kind.CUTTING_POWER: cutting_power,
    # The nomogram only shortens the arithmetic.
    Kind.READ_NOMOGRAM: cutting_power,
    Kind.MOTOR_PULLS: motor_pulls,
}


def lowest(question: PrintedQuestion) -> int:
    """Return which option has the smallest number."""
    feeds = [mm(option, "up to ", "mm/rev|in/rev") for option in question.options]
    return feeds.index(min(feeds))


def too_timid(question: PrintedQuestion) -> str:
    """Return what goes wrong, by the numbers that the question compares."""
    feed = per_rev(question.text, "the feed is ")
    return "edge rubs" if feed < per_rev(question.text, "The edge needs ") else "hardened"


@pytest.mark.parametrize(("level", "units"), ROOMS)
def test_an_answer_follows_from_the_printed_question(
    level: str, units: LengthUnits, room_of: Callable[..., Any]
) -> None:
    room = room_of(level, units)
    worked: Counter[Kind] = Counter()
    for paper in room.papers:
        sheet = printed_exercises(room.course, room.shops[paper.lathe], paper)
        for exercise, question in zip(paper.exercises, sheet.questions, strict=True):
            answer = exercise.answer
            worked[exercise.kind] += 1
            if exercise.kind is Kind.WHAT_BINDS:
                assert lowest(question) == answer.right
            elif exercise.kind is Kind.TOO_TIMID:
                assert too_timid(question) in question.options[answer.right]
            elif exercise.kind in HAND:
                by_hand = HAND[exercise.kind](question.text, sheet)
                if isinstance(answer, ChoiceAnswer):
                    assert by_hand == answer.right, question.text
                    continue
                assert isinstance(answer, NumericAnswer)
                if question.unit == "ft/min":
                    by_hand /= METRES["ft/min"]
                assert answer.low <= by_hand * (1 + 1e-9), question.text
                assert by_hand <= answer.high * (1 + 1e-9), question.text
            else:
                assert exercise.kind is Kind.READ_CURVE
                assert "To read" in dict(sheet.data)
    assert len(worked) >= (8 if level == "first" else 10)


def test_the_formulas_and_letters_of_a_sheet_are_those_of_its_questions(
    room_of: Callable[..., Any],
) -> None:
    room = room_of("first")
    sheet = printed_exercises(room.course, room.shops[0], room.papers[0])
    data = {name: said.replace("\N{NO-BREAK SPACE}", " ") for name, said in sheet.data}
    assert "n = 1000 v / (π D)" in data["Formulas"]
    letters = set(re.findall(r"[A-Za-z]+", data["Formulas"]))
    named = {part.split()[0] for part in data["Letters"].split(", ")}
    assert letters == named
    # Who puts mm in for metres, or takes minutes for seconds, cannot blame the sheet.
    for part in data["Letters"].split(", "):
        assert part.startswith("N ") or re.search(r" \((mm|mm/rev|mm/min|m/min|rev/min|s)\)$", part)


def test_a_question_keeps_each_number_and_its_unit_on_one_line(room_of: Callable[..., Any]) -> None:
    room = room_of("second")
    for paper in room.papers:
        sheet = printed_exercises(room.course, room.shops[paper.lathe], paper)
        for question in sheet.questions:
            assert not re.search(r"\d (mm|rev/min|N|m/min|W)\b", question.text), question.text
