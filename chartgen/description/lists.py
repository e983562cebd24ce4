"""Lists of a shop file with more to them than their items: speeds, diameters, strips."""

from collections.abc import Sequence
from typing import Generic, NamedTuple, TypeVar

from chartgen.description.diameters import EXAMPLES, MOST_DIAMETERS, diameters_of
from chartgen.description.fields import STRIPS_MEND, InUnit, quantity, sentences
from chartgen.description.problems import ComplaintError
from chartgen.description.tables import ListOf, Place
from chartgen.quantities import RPM
from chartgen.units import UnreadableError, looks_like_range, speed_range

T = TypeVar("T")


class SpeedRange(NamedTuple):
    """A range that a controller covers [rev/min]."""

    slowest: float
    fastest: float


class SingleSpeeds(NamedTuple):
    """Speeds that belts or gears give [rev/min]."""

    speeds: tuple[float, ...]


class Speeds:
    """Reads "60..1000 rpm" as a range, "250 rpm" or a list as single speeds."""

    def __init__(self, listed: ListOf[float]) -> None:
        self.listed = listed

    def __call__(self, value: object, place: Place) -> SpeedRange | SingleSpeeds:
        """Return the speeds [rev/min]."""
        if isinstance(value, list):
            return SingleSpeeds(distinct(self.listed(value, place), "rpm"))
        if isinstance(value, str) and looks_like_range(value):
            try:
                return SpeedRange(*speed_range(value))
            except UnreadableError as error:
                raise ComplaintError(*sentences(error)) from error
        return SingleSpeeds((quantity(value, RPM, above=0.0, least=None),))


class Diameters:
    """Reads a list of diameters, a range with a step, or preferred numbers.

    A list has to rise, or else `in_any_order` it is sorted for its owner.
    """

    def __init__(self, each: InUnit, *, in_any_order: bool = False) -> None:
        self.each = each
        self.in_any_order = in_any_order
        self.listed = ListOf(each)

    def __call__(self, value: object, place: Place) -> tuple[float, ...]:
        """Return the diameters [mm], from small to large."""
        if isinstance(value, str):
            try:
                diameters = diameters_of(value)
            except UnreadableError as error:
                raise ComplaintError(*sentences(error)) from error
            for end in (diameters[0], diameters[-1]):
                self.each.refuse_outlandish(end)
            return diameters
        if not isinstance(value, list):
            raise ComplaintError(
                "must be a list, or text in quotes.", f"Write it as in {EXAMPLES}."
            )
        diameters = distinct(self.listed(value, place), "mm")
        if len(diameters) > MOST_DIAMETERS:
            raise ComplaintError(
                f"lists {len(diameters)} diameters.", f"Choose at most {MOST_DIAMETERS}."
            )
        if self.in_any_order:
            return tuple(sorted(diameters))
        if list(diameters) != sorted(diameters):
            raise ComplaintError("must rise.", "List the diameters from small to large.")
        return diameters


class Strips:
    """Reads the strips of a blade's body; a list in a list needs more words than one."""

    def __init__(self, listed: ListOf[tuple[float, float]]) -> None:
        self.listed = listed

    def __call__(self, value: object, place: Place) -> tuple[tuple[float, float], ...]:
        """Return thickness and height of each [mm], from the bottom up."""
        if not isinstance(value, list):
            raise ComplaintError("must be a list of pairs.", STRIPS_MEND)
        return self.listed(value, place)


class Distinct(Generic[T]):
    """Reads a list that has each item once."""

    def __init__(self, listed: ListOf[T]) -> None:
        self.listed = listed

    def __call__(self, value: object, place: Place) -> tuple[T, ...]:
        """Return the items."""
        return distinct(self.listed(value, place))


def distinct(values: Sequence[T], unit: str = "") -> tuple[T, ...]:
    """Return `values`, or complain of the first that comes twice."""
    for position, value in enumerate(values):
        if value in values[:position]:
            shown = f"{value:g} {unit}" if unit else f"'{value}'"
            raise ComplaintError(f"has {shown} twice.", "List each once.")
    return tuple(values)
