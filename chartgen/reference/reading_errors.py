"""Reads `reading_errors.toml`: how far readings and lathes may be off where nobody says."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from chartgen.reference.entries import Entry, data_text
from chartgen.sources import Mark


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingError:
    """A span that 19 of 20 cases keep to: from `least` to `most`, or up to `most` off."""

    name: str
    least: float
    most: float
    reason: str
    source: str
    mark: Mark


@cache
def load_reading_errors() -> Mapping[str, ReadingError]:
    """Return the errors by name.

    Raises
    ------
    ValueError
        If an entry has neither a value nor a span that rises, or no reason, source and mark.
    """
    return read_reading_errors(data_text("reading_errors.toml"), file="reading_errors.toml")


def read_reading_errors(text: str, *, file: str) -> Mapping[str, ReadingError]:
    """Return the errors that the text of a file describes.

    Raises
    ------
    ValueError
        Naming file and key.
    """
    whole = Entry.parse(text, file=file)
    errors = {}
    for name in whole.keys:
        entry = whole.table(name)
        numbers = ("value",) if "value" in entry else ("least", "most")
        entry.expect((*numbers, "reason", "source", "mark"))
        least = 0.0 if "value" in entry else entry.number("least")
        most = entry.number(numbers[-1])
        if not 0.0 <= least < most:
            raise entry.error(f"{least:g} to {most:g} does not rise from 0")
        errors[name] = ReadingError(
            name=name,
            least=least,
            most=most,
            reason=entry.text("reason"),
            source=entry.text("source"),
            mark=entry.mark(),
        )
    return MappingProxyType(errors)
