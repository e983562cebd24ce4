"""Kinds of value that a shop file holds; each reads one TOML value and complains in shop words.

Every kind is written behind a type in `Annotated`, so that a table of `schema` reads as
the list of its keys with what each takes.
"""

import datetime as dt
import json
import math
from collections.abc import Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from enum import Enum
from typing import TYPE_CHECKING

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler, ValidationInfo
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from chartgen.model.lathe import Reading
from chartgen.physics.motor import torque_from_power
from chartgen.quantities import N_M, RPM, WATT, Unit
from chartgen.units import UnreadableError, magnitude

if TYPE_CHECKING:
    from chartgen.description.known import Known

# A number in a shop file counts things or is a ratio; beyond this it is a slip of the hand.
LARGEST_NUMBER = 1e6


def complaint(problem: str, mend: str) -> PydanticCustomError:
    """Return an error that carries our own words through pydantic."""
    return PydanticCustomError("ours", "{problem} {mend}", {"problem": problem, "mend": mend})


def sentences(error: UnreadableError) -> tuple[str, str]:
    """Return problem and mend as two sentences."""
    return f"{error.problem}.", f"{error.mend[0].upper()}{error.mend[1:]}."


def nearest(word: str, choices: Sequence[str]) -> str:
    """Return "Did you mean 'x'?", or the choices where none is near."""
    near = get_close_matches(word, choices, n=1)
    return f"Did you mean '{near[0]}'?" if near else f"Use one of: {', '.join(choices)}."


def quantity(value: object, unit: Unit, *, above: float | None, least: float | None) -> float:
    """Return the number in a TOML text, in `unit`, or complain."""
    if isinstance(value, str):
        try:
            return magnitude(value, unit, above=above, least=least)
        except UnreadableError as error:
            raise complaint(*sentences(error)) from error
    if isinstance(value, int | float) and not isinstance(value, bool):
        raise complaint("needs a unit.", f'Write it as text in quotes, as in "{unit.example}".')
    raise complaint("must be text in quotes.", f'Write it as in "{unit.example}".')


class _Reader:
    """Hands pydantic the `_read` of a subclass, and editors a JSON Schema."""

    json_type: str = "string"

    def _read(self, value: object) -> object:
        raise NotImplementedError

    def _validate(self, value: object, _info: ValidationInfo) -> object:
        return self._read(value)

    def __get_pydantic_core_schema__(
        self, _source: object, _handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        return core_schema.with_info_plain_validator_function(self._validate)

    def __get_pydantic_json_schema__(
        self, _schema: CoreSchema, _handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        return {"type": self.json_type}


@dataclass(frozen=True)
class InUnit(_Reader):
    """Text with a unit, above 0 unless `or_zero`."""

    unit: Unit
    or_zero: bool = False

    def _read(self, value: object) -> float:
        if self.or_zero:
            return quantity(value, self.unit, above=None, least=0.0)
        return quantity(value, self.unit, above=0.0, least=None)

    def __get_pydantic_json_schema__(
        self, _schema: CoreSchema, _handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        return {"type": "string", "examples": [self.unit.example]}


@dataclass(frozen=True)
class Words(_Reader):
    """Text that is printed as it stands."""

    longest: int = 60

    def _read(self, value: object) -> str:
        if not isinstance(value, str):
            raise complaint(
                "must be text.", f"Put it in quotes, as in {json.dumps(str(value)[:30])}."
            )
        if not value.strip() or not value.isprintable():
            raise complaint("is blank or has signs that cannot be printed.", "Write a few words.")
        if len(value) > self.longest:
            raise complaint(
                f"has {len(value)} letters.", f"Use at most {self.longest}, to fit on a card."
            )
        return value.strip()


@dataclass(frozen=True)
class DateText(Words):
    """A TOML date, or text; kept as text."""

    def _read(self, value: object) -> str:
        return super()._read(value.isoformat() if isinstance(value, dt.date) else value)


@dataclass(frozen=True)
class Number(_Reader):
    """A plain number above 0: a ratio, or with `whole` a count."""

    whole: bool = False
    json_type = "number"

    def _read(self, value: object) -> float:
        is_number = isinstance(value, int) if self.whole else isinstance(value, int | float)
        if not is_number or isinstance(value, bool):
            what = "a whole number" if self.whole else "a plain number"
            raise complaint(
                f"must be {what}, without quotes.", f"Write it as in {40 if self.whole else 2.8}."
            )
        if not isinstance(value, int | float) or not 0 < value <= LARGEST_NUMBER:
            raise complaint(
                "is out of all bounds.", f"Give a number above 0, at most {LARGEST_NUMBER:.0f}."
            )
        return value if self.whole else float(value)


@dataclass(frozen=True)
class YesNo(_Reader):
    """True or false."""

    json_type = "boolean"

    def _read(self, value: object) -> bool:
        if not isinstance(value, bool):
            raise complaint("must be true or false.", "Write true or false, without quotes.")
        return value


class OneOf(_Reader):
    """A member of an enumeration, by its value."""

    def __init__(self, members: type[Enum]) -> None:
        self.members = members

    def _read(self, value: object) -> Enum:
        return self.members(chosen(value, [str(member.value) for member in self.members]))

    def __get_pydantic_json_schema__(
        self, _schema: CoreSchema, _handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        return {"enum": [member.value for member in self.members]}


@dataclass(frozen=True)
class NameIn(_Reader):
    """A name that `Known` has under the attribute `shelf`."""

    shelf: str

    def _validate(self, value: object, info: ValidationInfo) -> str:
        known: Known = info.context  # type: ignore[assignment]
        return chosen(value, getattr(known, self.shelf))


def chosen(value: object, choices: Sequence[str]) -> str:
    """Return `value` if it is among `choices`, or complain with the nearest of them."""
    if not isinstance(value, str):
        raise complaint("must be text in quotes.", f"Use one of: {', '.join(choices)}.")
    if value not in choices:
        raise complaint(f"{value[:60]!r} is not known.", nearest(value, choices))
    return value


@dataclass(frozen=True)
class ReadingPair(_Reader):
    """One measured point: a spindle speed, and torque or power there; kept as torque."""

    def _read(self, value: object) -> Reading:
        if not isinstance(value, list) or len(value) != len(("speed", "torque or power")):
            raise complaint(
                "must be a pair: a speed, and the torque or power there.",
                'Write it as in ["200 rpm", "12 N.m"] or ["900 rpm", "400 W"].',
            )
        speed = quantity(value[0], RPM, above=0.0, least=None)
        if is_readable(value[1], WATT):
            power = quantity(value[1], WATT, above=0.0, least=None)
            return Reading(speed=speed, torque=float(torque_from_power(power=power, speed=speed)))
        if isinstance(value[1], str) and not is_readable(value[1], N_M):
            problem = f"{value[1][:60]!r} is neither a torque nor a power."
            raise complaint(problem, "Write it as in '12 N.m' or '400 W'.")
        return Reading(speed=speed, torque=quantity(value[1], N_M, above=0.0, least=None))


def is_readable(value: object, unit: Unit) -> bool:
    """Whether `value` is text that gives a number in `unit`, of any size."""
    try:
        return isinstance(value, str) and math.isfinite(magnitude(value, unit))
    except UnreadableError:
        return False
