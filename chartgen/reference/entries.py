"""Strict reading of the data files: every key known, none missing, file and key in each error."""

import tomllib
from collections.abc import Collection, Mapping
from pathlib import Path
from typing import Any, TypeVar

from chartgen.sources import Mark, Sourced

T = TypeVar("T")

NO_SOURCE = "none"
_UNSOURCED_MARKS = frozenset({Mark.MEMORY, Mark.PRACTICE})


def data_text(*path: str) -> str:
    """Return the text of a data file of this package."""
    return Path(__file__).parent.joinpath(*path).read_text("utf-8")


class Entry:
    """One table of a data file, which knows its place for the message of an error."""

    def __init__(self, values: object, *, file: str, key: str) -> None:
        self._file = file
        self._key = key
        if not isinstance(values, dict):
            raise self.error("must be a table")
        self._values: dict[str, Any] = values

    @classmethod
    def parse(cls, text: str, *, file: str) -> "Entry":
        """Return the whole of a file.

        Raises
        ------
        ValueError
            If the text is no TOML.
        """
        try:
            return cls(tomllib.loads(text), file=file, key="")
        except tomllib.TOMLDecodeError as fault:
            raise ValueError(f"{file}: {fault}") from fault

    @property
    def keys(self) -> tuple[str, ...]:
        """The keys of the table, in the order of the file."""
        return tuple(self._values)

    def error(self, problem: str, key: str = "") -> ValueError:
        """Return an error that names the file and the key under this table."""
        place = self._path(key)
        return ValueError(
            f"{self._file}: {place}: {problem}" if place else f"{self._file}: {problem}"
        )

    def expect(self, required: Collection[str], optional: Collection[str] = ()) -> None:
        """Refuse missing and unknown keys.

        Raises
        ------
        ValueError
            Naming the first key missing, else the first unknown one.
        """
        for key in required:
            if key not in self._values:
                raise self.error("is missing", key)
        known = {*required, *optional}
        for key in self._values:
            if key not in known:
                raise self.error(f"is not known here; use {', '.join(sorted(known))}", key)

    def __contains__(self, key: str) -> bool:
        return key in self._values

    def holds(self, key: str, word: str) -> bool:
        """Return whether the key holds just this word."""
        return bool(self._values[key] == word)

    def table(self, key: str) -> "Entry":
        """Return the table under a key."""
        return Entry(self._values[key], file=self._file, key=self._path(key))

    def rows(self, key: str) -> "list[Entry]":
        """Return the array of tables under a key, numbered from 1 in errors."""
        return [
            Entry(row, file=self._file, key=f"{self._path(key)} row {number}")
            for number, row in enumerate(self._list(key), start=1)
        ]

    def text(self, key: str) -> str:
        """Return the text under a key, "" where there is none."""
        value = self._values.get(key, "")
        if not isinstance(value, str):
            raise self.error("must be text", key)
        return value

    def texts(self, key: str) -> tuple[str, ...]:
        """Return the list of texts under a key."""
        values = self._list(key)
        if not all(isinstance(value, str) for value in values):
            raise self.error("must be a list of texts", key)
        return tuple(values)

    def flag(self, key: str) -> bool:
        """Return the true or false under a key."""
        value = self._values[key]
        if not isinstance(value, bool):
            raise self.error("must be true or false", key)
        return value

    def number(self, key: str) -> float:
        """Return the number under a key."""
        return self._number(self._values[key], key)

    def numbers(self, key: str) -> list[float]:
        """Return the list of numbers under a key."""
        return [self._number(value, key) for value in self._list(key)]

    def choice(self, key: str, known: Mapping[str, T]) -> T:
        """Return what a word stands for, refusing words that stand for nothing."""
        word = self.text(key)
        if word not in known:
            raise self.error(f"{word!r} is not one of {', '.join(known)}", key)
        return known[word]

    def sourced(self, key: str) -> Sourced:
        """Return the number under a key with its source and mark of trust.

        Raises
        ------
        ValueError
            If the entry lacks a value, mark or source, has a key more, or claims to be found
            or derived without naming a source.
        """
        entry = self.table(key)
        entry.expect(("value", "mark", "source"), ("place", "note"))
        mark = entry.mark()
        source = entry.text("source")
        if not source or (source == NO_SOURCE and mark not in _UNSOURCED_MARKS):
            raise entry.error(f"a number marked {mark.word} must name its source", "source")
        return Sourced(
            value=entry.number("value"),
            mark=mark,
            source=source,
            place=entry.text("place"),
            note=entry.text("note"),
        )

    def mark(self) -> Mark:
        """Return the mark of trust of this entry."""
        try:
            return Mark.of(self.text("mark"))
        except ValueError as fault:
            raise self.error(str(fault), "mark") from fault

    def _path(self, key: str) -> str:
        return ".".join(part for part in (self._key, key) if part)

    def _list(self, key: str) -> list[Any]:
        values = self._values[key]
        if not isinstance(values, list):
            raise self.error("must be a list", key)
        return values

    def _number(self, value: object, key: str) -> float:
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise self.error("must be a number", key)
        return float(value)
