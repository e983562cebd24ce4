"""Lists of a shop file that may also be written as one text: speeds and diameters."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from chartgen.description.diameters import EXAMPLES, MOST_DIAMETERS, diameters_of
from chartgen.description.fields import complaint, quantity, sentences
from chartgen.quantities import RPM
from chartgen.units import UnreadableError, speed_range


@dataclass(frozen=True, slots=True)
class SpeedRange:
    """A range that a controller covers [rev/min]."""

    slowest: float
    fastest: float


@dataclass(frozen=True, slots=True)
class SingleSpeeds:
    """Speeds that belts or gears give [rev/min]."""

    speeds: tuple[float, ...]


def read_speeds(value: Any, handler: Any) -> Any:  # noqa: ANN401 - pydantic's own signature
    """Read "60..1000 rpm" as a range, "250 rpm" or a list as single speeds."""
    if isinstance(value, list):
        return SingleSpeeds(distinct(handler(value), "rpm"))
    if isinstance(value, str) and ".." in value.replace("…", ".."):
        try:
            return SpeedRange(*speed_range(value))
        except UnreadableError as error:
            raise complaint(*sentences(error)) from error
    return SingleSpeeds((quantity(value, RPM, above=0.0, least=None),))


def read_diameters(value: Any, handler: Any) -> Any:  # noqa: ANN401
    """Read a list of diameters, a range with a step, or preferred numbers."""
    if isinstance(value, str):
        try:
            return diameters_of(value)
        except UnreadableError as error:
            raise complaint(*sentences(error)) from error
    if not isinstance(value, list):
        raise complaint("must be a list, or text in quotes.", f"Write it as in {EXAMPLES}.")
    diameters = distinct(handler(value), "mm")
    if len(diameters) > MOST_DIAMETERS:
        raise complaint(f"lists {len(diameters)} diameters.", f"Choose at most {MOST_DIAMETERS}.")
    if list(diameters) != sorted(diameters):
        raise complaint("must rise.", "List the diameters from small to large.")
    return diameters


def distinct(values: Sequence[Any], unit: str = "") -> tuple[Any, ...]:
    """Return `values`, or complain of the first that comes twice."""
    for position, value in enumerate(values):
        if value in values[:position]:
            shown = f"{value:g} {unit}" if unit else f"'{value}'"
            raise complaint(f"has {shown} twice.", "List each once.")
    return tuple(values)
