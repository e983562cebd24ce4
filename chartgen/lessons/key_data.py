"""What marking needs, as plain data and back: no shop file is asked again.

The data name the course, hold every answer with its accepted span and its mistakes, and end
in a digest of it all, so that a key that was altered by hand is refused.
"""

import hashlib
import json
import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Final

from chartgen.lessons.class_units import COUNT, FEET_MIN, INCH, INCH_MIN, INCH_REV
from chartgen.lessons.exercise import (
    ChoiceAnswer,
    ChoiceMistake,
    NumericAnswer,
    NumericMistake,
)
from chartgen.lessons.kinds import Kind, Slip
from chartgen.lessons.marking import Markable
from chartgen.model.course import Course
from chartgen.quantities import M_MIN, N_M, NEWTON, RPM, SECOND, WATT, Unit

FORMAT: Final = 1
_UNITS: Final = {
    unit.name: unit
    for unit in (
        *(RPM, M_MIN, FEET_MIN, SECOND, NEWTON, WATT, N_M, COUNT),
        *(INCH, INCH_REV, INCH_MIN),
    )
}


class UnusableKeyError(ValueError):
    """A key that cannot be marked by: what is wrong with it, and the mend."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyExercise:
    """One exercise as marking needs it."""

    kind: Kind
    answer: NumericAnswer | ChoiceAnswer
    mistakes: tuple[NumericMistake | ChoiceMistake, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyPaper:
    """One student's paper as marking needs it."""

    number: int
    name: str
    lathe: int
    exercises: tuple[KeyExercise, ...]


def paper_data(paper: Any) -> dict[str, Any]:  # noqa: ANN401 - a Paper, or what a key gave
    """Return one paper as plain data."""
    return {
        "number": paper.number,
        "name": paper.name,
        "lathe": paper.lathe,
        "exercises": [_exercise_data(one) for one in paper.exercises],
    }


def key_data(course: Course, papers: Iterable[Any]) -> dict[str, Any]:
    """Return a class's key as plain data, ready for JSON; papers are read one by one."""
    data: dict[str, Any] = {
        "format": FORMAT,
        "course": {
            "name": course.name,
            "revision": course.revision,
            "date": course.date,
            "seed": course.seed,
            "level": course.level.value,
            "language": course.language.value,
            "units": course.units.value,
            "lathes": list(course.lathes),
            "materials": list(course.materials),
            "exercises": course.exercises,
        },
        "papers": [paper_data(paper) for paper in papers],
    }
    return {**data, "digest": digest(data)}


def digest(data: Mapping[str, Any]) -> str:
    """Return the digest of a key's data, whatever its `digest` says."""
    rest = {name: value for name, value in data.items() if name != "digest"}
    text = json.dumps(rest, sort_keys=True, ensure_ascii=True, separators=(",", ":"))
    return hashlib.sha256(text.encode()).hexdigest()


def papers_from_key(data: object) -> tuple[KeyPaper, ...]:
    """Return the papers of a key.

    Raises
    ------
    UnusableKeyError
        If it is no key, one of a newer program, or altered since it was made.
    """
    if not isinstance(data, Mapping) or not isinstance(data.get("format"), int):
        raise UnusableKeyError("this is no key; give the key.json that `chartgen class` wrote")
    if data["format"] > FORMAT:
        raise UnusableKeyError(
            f"this key is of format {data['format']} and this program reads up to {FORMAT}; "
            "mark with the version that made it, or a newer one"
        )
    if data.get("digest") != digest(data):
        raise UnusableKeyError(
            "this key was altered after it was made; make it anew with `chartgen class`"
        )
    try:
        return tuple(_paper(one) for one in data["papers"])
    except (KeyError, TypeError, ValueError, AttributeError) as error:
        raise UnusableKeyError(
            f"this key cannot be read ({error}); make it anew with `chartgen class`"
        ) from error


def _exercise_data(exercise: Markable) -> dict[str, Any]:
    answer = exercise.answer
    if isinstance(answer, ChoiceAnswer):
        right: dict[str, Any] = {"options": list(answer.options), "right": answer.right}
    else:
        right = {
            "value": answer.value,
            "low": answer.low,
            "high": answer.high,
            "unit": answer.unit.name,
        }
    return {
        "kind": exercise.kind.value,
        "answer": right,
        "mistakes": [
            [one.slip.value, one.option if isinstance(one, ChoiceMistake) else one.value]
            for one in exercise.mistakes
        ],
    }


def _paper(data: Mapping[str, Any]) -> KeyPaper:
    return KeyPaper(
        number=int(data["number"]),
        name=str(data["name"]),
        lathe=int(data["lathe"]),
        exercises=tuple(_exercise(one) for one in data["exercises"]),
    )


def _exercise(data: Mapping[str, Any]) -> KeyExercise:
    given, is_choice = data["answer"], "options" in data["answer"]
    answer: NumericAnswer | ChoiceAnswer
    if is_choice:
        answer = ChoiceAnswer(options=tuple(map(str, given["options"])), right=int(given["right"]))
    else:
        answer = NumericAnswer(
            value=_finite(given["value"]),
            unit=_unit(given["unit"]),
            low=_finite(given["low"]),
            high=_finite(given["high"]),
        )
    return KeyExercise(
        kind=Kind(data["kind"]),
        answer=answer,
        mistakes=tuple(
            ChoiceMistake(slip=Slip(slip), option=int(value))
            if is_choice
            else NumericMistake(slip=Slip(slip), value=_finite(value))
            for slip, value in data["mistakes"]
        ),
    )


def _unit(name: str) -> Unit:
    return _UNITS[name]


def _finite(value: object) -> float:
    number = float(value)  # type: ignore[arg-type]
    if not math.isfinite(number):
        raise ValueError(f"{number} is no answer")
    return number
