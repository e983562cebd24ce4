"""Where a number comes from and how far it can be trusted."""

from dataclasses import dataclass
from enum import Enum

NO_SOURCE = "none"
"""The source key of a number that no publication backs."""


class Mark(Enum):
    """How a reference number was come by."""

    FOUND = "found", "read in the source named"
    DERIVED = "derived", "worked out from numbers read in the source named"
    MEMORY = "memory", "from memory, seen in no text: an allowance, not a fact"
    PRACTICE = "practice", "common practice, no source"

    def __init__(self, word: str, meaning: str) -> None:
        self.word = word
        self.meaning = meaning

    @classmethod
    def of(cls, word: str) -> "Mark":
        """Return the mark that the data files spell `word`.

        Raises
        ------
        ValueError
            If there is no such mark.
        """
        for mark in cls:
            if mark.word == word:
                return mark
        raise ValueError(f"{word!r} is no mark of trust; use one of {[m.word for m in cls]}")


@dataclass(frozen=True, slots=True, kw_only=True)
class Sourced:
    """A reference number with its source key (see the bibliography) and mark of trust."""

    value: float
    mark: Mark
    source: str
    place: str = ""
    note: str = ""

    @property
    def citation(self) -> str:
        """The source, the place in it and the mark, as an explanation prints them."""
        if self.source == NO_SOURCE:
            return f"no source ({self.mark.word})"
        place = f", {self.place}" if self.place else ""
        return f"[{self.source}]{place} ({self.mark.word})"


@dataclass(frozen=True, slots=True, kw_only=True)
class Publication:
    """An entry of the bibliography."""

    key: str
    title: str
    kind: str
    note: str = ""
