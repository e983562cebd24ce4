"""Kinds of value that a shop file holds; each reads one TOML value and complains in shop words.

Each is an object that is called with a value, so that `schema` reads as the list of the
keys with what each takes. They are plain classes: the file is read at every start, and a
dataclass takes longer to make than a whole file to read.
"""

import datetime as dt
import math
from enum import Enum
from typing import TypeAlias, TypeVar

from chartgen.description.problems import ComplaintError, Nearest, NotedError, Quoted
from chartgen.description.tables import Place, read_at
from chartgen.model.lathe import Reading
from chartgen.physics.motor import torque_from_power
from chartgen.quantities import FRACTION, MM, N_M, RPM, WATT, Unit
from chartgen.units import UnreadableError, magnitude

Member = TypeVar("Member", bound=Enum)
Bounds: TypeAlias = tuple[float, float]

# A number in a shop file counts things or is a ratio; beyond this it is a slip of the hand.
LARGEST_NUMBER = 1e6
STRIPS_MEND = 'List them from the bottom up, as in [["1.2 mm", "20 mm"], ["1.6 mm", "6 mm"]].'


def sentences(error: UnreadableError) -> tuple[str, str]:
    """Return problem and mend as two sentences."""
    return f"{error.problem}.", f"{error.mend[0].upper()}{error.mend[1:]}."


def quantity(value: object, unit: Unit, *, above: float | None, least: float | None) -> float:
    """Return the number in a TOML text, in `unit`, or complain."""
    if isinstance(value, str):
        try:
            return magnitude(value, unit, above=above, least=least)
        except UnreadableError as error:
            raise ComplaintError(*sentences(error)) from error
    if isinstance(value, int | float) and not isinstance(value, bool):
        raise ComplaintError(
            "needs a unit.", f'Write it as text in quotes, as in "{unit.example}".'
        )
    raise ComplaintError("must be text in quotes.", f'Write it as in "{unit.example}".')


class InUnit:
    """Text with a unit, above 0 unless `or_zero`, and within `bounds` in that unit."""

    def __init__(
        self,
        unit: Unit,
        *,
        or_zero: bool = False,
        bounds: Bounds = (0.0, math.inf),
        mend: str = "Check number and unit.",
    ) -> None:
        self.unit = unit
        self.or_zero = or_zero
        self.bounds = bounds
        self.mend = mend

    def __call__(self, value: object, _place: Place) -> float:
        """Return the number in the unit."""
        above, least = (None, 0.0) if self.or_zero else (0.0, None)
        number = quantity(value, self.unit, above=above, least=least)
        self.refuse_outlandish(number)
        return number

    def refuse_outlandish(self, number: float) -> None:
        """Complain of a number that no such thing has; a slip, or another unit, does."""
        least, most = self.bounds
        # Rounded, so that a value just on a bound passes in any unit.
        if not least <= round(number, 9) <= most:
            name = self.unit.name
            raise ComplaintError(
                f"is {number:.6g} {name}, which is out of bounds ({least:g} to {most:.9g} {name}).",
                self.mend,
            )


class JawDistance(InUnit):
    """From the jaws to the near side of the cut; a blade that touches the jaws is named."""

    def __call__(self, value: object, _place: Place) -> float:
        """Return the distance in the unit."""
        distance = quantity(value, self.unit, above=None, least=None)
        if distance <= 0:
            what = "an overhang of zero" if distance == 0 else "less than an overhang of zero"
            raise ComplaintError(
                f"{value!r} is {what}: the blade would touch the jaws.",
                "Give the distance from the jaws to the near side of the cut, as in '5 mm', "
                "or leave it out.",
            )
        return distance


class Words:
    """Text that is printed as it stands."""

    def __init__(self, *, longest: int = 60, or_blank: bool = False) -> None:
        self.longest = longest
        self.or_blank = or_blank

    def __call__(self, value: object, _place: Place) -> str:
        """Return the text without blank ends."""
        if not isinstance(value, str):
            raise ComplaintError("must be text.", Quoted(value))
        if self.or_blank and not value.strip():
            return ""
        if not value.strip() or not value.isprintable():
            raise ComplaintError(
                "is blank or has signs that cannot be printed.", "Write a few words."
            )
        if len(value) > self.longest:
            raise ComplaintError(
                f"has {len(value)} letters.", f"Use at most {self.longest}, to fit on a card."
            )
        return value.strip()


class DateText(Words):
    """A TOML date, or text; kept as text."""

    def __call__(self, value: object, place: Place) -> str:
        """Return the date as it is printed."""
        return super().__call__(value.isoformat() if isinstance(value, dt.date) else value, place)


class Number:
    """A plain number above 0."""

    def __call__(self, value: object, _place: Place) -> float:
        """Return the number."""
        if not isinstance(value, int | float) or isinstance(value, bool):
            raise ComplaintError("must be a plain number, without quotes.", "Write it as in 2.8.")
        if not 0 < value <= LARGEST_NUMBER:
            raise ComplaintError(
                "is out of all bounds.", f"Give a number above 0, at most {LARGEST_NUMBER:.0f}."
            )
        return float(value)


class Ratio(Number):
    """A plain number within bounds."""

    def __init__(self, *, bounds: Bounds) -> None:
        self.bounds = bounds

    def __call__(self, value: object, place: Place) -> float:
        """Return the number."""
        number = super().__call__(value, place)
        least, most = self.bounds
        if not least <= number <= most:
            raise ComplaintError(f"is out of bounds ({least:g} to {most:g}).", "Check the number.")
        return number


class Count:
    """A whole number within bounds."""

    def __init__(self, *, bounds: tuple[int, int]) -> None:
        self.bounds = bounds

    def __call__(self, value: object, _place: Place) -> int:
        """Return the number."""
        if not isinstance(value, int) or isinstance(value, bool):
            raise ComplaintError("must be a whole number, without quotes.", "Write it as in 40.")
        least, most = self.bounds
        if not least <= value <= most:
            raise ComplaintError(f"is out of bounds ({least} to {most}).", "Check the number.")
        return value


class YesNo:
    """True or false."""

    def __call__(self, value: object, _place: Place) -> bool:
        """Return it."""
        if not isinstance(value, bool):
            raise ComplaintError("must be true or false.", "Write true or false, without quotes.")
        return value


class ReadingPair:
    """One measured point: a spindle speed, and torque or power there; kept as torque."""

    def __call__(self, value: object, _place: Place) -> Reading:
        """Return the point."""
        if not isinstance(value, list) or len(value) != len(("speed", "torque or power")):
            raise ComplaintError(
                "must be a pair: a speed, and the torque or power there.",
                'Write it as in ["200 rpm", "12 N.m"] or ["900 rpm", "400 W"].',
            )
        speed = quantity(value[0], RPM, above=0.0, least=None)
        if is_readable(value[1], WATT):
            power = quantity(value[1], WATT, above=0.0, least=None)
            return Reading(speed=speed, torque=float(torque_from_power(power=power, speed=speed)))
        if isinstance(value[1], str) and not is_readable(value[1], N_M):
            problem = f"{value[1][:60]!r} is neither a torque nor a power."
            raise ComplaintError(problem, "Write it as in '12 N.m' or '400 W'.")
        return Reading(speed=speed, torque=quantity(value[1], N_M, above=0.0, least=None))


class Strip:
    """One strip of a blade's body: its thickness and its height."""

    def __call__(self, value: object, _place: Place) -> tuple[float, float]:
        """Return both [mm]."""
        if not isinstance(value, list) or len(value) != len(("thickness", "height")):
            raise ComplaintError("must be a pair: a thickness and a height.", STRIPS_MEND)
        thickness, height = (quantity(one, MM, above=0.0, least=None) for one in value)
        return thickness, height


def is_readable(value: object, unit: Unit) -> bool:
    """Whether `value` is text that gives a number in `unit`, of any size."""
    try:
        return isinstance(value, str) and math.isfinite(magnitude(value, unit))
    except UnreadableError:
        return False


class Allowances:
    """The allowances that the shop sets otherwise, by name; each has its bounds in `Known`."""

    def __call__(self, value: object, place: Place) -> dict[str, float]:
        """Return the values by name, or note the faults of each and refuse them."""
        if not isinstance(value, dict):
            raise ComplaintError("must be a table.", "Write its heading as [allowances].")
        read = {name: read_at(place.inside(name), _allowance, one) for name, one in value.items()}
        values = {name: number for name, number in read.items() if number is not None}
        if len(values) < len(read):
            raise NotedError
        return values


def _allowance(value: object, place: Place) -> float:
    name, allowances = str(place.path[-1]), place.known.allowances
    if name not in allowances:
        raise ComplaintError("is not a known allowance.", Nearest(name, list(allowances)))
    least, most, unit = allowances[name]
    number = amount(value, unit)
    if not least <= number <= most:
        label = "" if unit is FRACTION else f" {unit.name}"
        raise ComplaintError(
            f"is {number:g}{label}, which is out of bounds.",
            f"Choose from {least:g}{label} to {most:g}{label}.",
        )
    return number


def amount(value: object, unit: Unit) -> float:
    """Return an allowance; a ratio may be a plain number, as 1.2 for 120 %."""
    if unit is FRACTION and isinstance(value, int | float) and not isinstance(value, bool):
        # TOML's whole numbers have no largest; a float does.
        return float(value) if abs(value) <= LARGEST_NUMBER else math.inf
    return quantity(value, unit, above=None, least=None)
