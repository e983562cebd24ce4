"""On which line of a TOML text a key stands.

`tomllib` forgets where it read a value, and a fault without its line is hard to mend. This
scanner knows just enough of TOML to follow tables, keys and brackets; it never fails, and
where it loses the track the nearest enclosing table answers.
"""

import re
from dataclasses import dataclass
from functools import lru_cache

from chartgen.description.problems import KeyPath

__all__ = ["KeyPath", "line_of"]

_TOKEN = re.compile(
    r'"""(?:\\.|[^\\])*?"{3,5}'
    r"|'''.*?'{3,5}"
    r'|"(?:\\.|[^"\\\n])*"'
    r"|'[^'\n]*'"
    r"|(?P<gap>#[^\n]*|[ \t\r]+)"
    r"|\n|[\[\]{}=,.]|[^\s\[\]{}=,.#\"']+|.",
    re.DOTALL,
)


def line_of(text: str, path: KeyPath) -> int:
    """Return the line, from 1, of the innermost part of `path` in `text`; 0 if there is none.

    Array items count from 0, as in ("blade", 1, "height").
    """
    places = _places(text)
    while path and path not in places:
        path = path[:-1]
    return places.get(path, 0)


@lru_cache(maxsize=2)
def _places(text: str) -> dict[KeyPath, int]:
    scan = _Scan()
    line = 1
    for match in _TOKEN.finditer(text):
        if match["gap"] is None:
            scan.take(match[0], line)
        line += match[0].count("\n")
    return scan.places


@dataclass(slots=True)
class _Bracket:
    """An open array or inline table; `item` counts an array's items, None in a table."""

    path: KeyPath
    item: int | None

    @property
    def inside(self) -> KeyPath:
        return self.path if self.item is None else (*self.path, self.item)


class _Scan:
    """The state between two tokens: which table, which open brackets, and what comes next."""

    def __init__(self) -> None:
        self.places: dict[KeyPath, int] = {}
        self._array_lengths: dict[KeyPath, int] = {}
        self._table: KeyPath = ()
        self._open: list[_Bracket] = []
        self._keys: list[str] = []
        self._value: KeyPath = ()
        self._is_array_header = False
        self._awaits = "key"  # or "value", "header", or "end" of the value at hand

    def take(self, sign: str, line: int) -> None:
        """Go on by one sign, which is neither a comment nor blank space."""
        if sign == "\n":
            if not self._open:
                self._keys, self._awaits = [], "key"
        elif self._awaits == "header":
            self._take_header(sign, line)
        elif sign in {"]", "}"}:
            self._open, self._awaits = self._open[:-1], "end"
        elif self._awaits == "key":
            self._take_key(sign, line)
        elif self._awaits == "value":
            self._take_value(sign, line)
        elif sign == "," and self._open:
            self._next_item(self._open[-1])

    def _take_key(self, sign: str, line: int) -> None:
        if sign == "[" and not self._open:
            self._awaits, self._is_array_header = "header", False
        elif sign == "=":
            self._value = self._open[-1].inside if self._open else self._table
            for key in self._keys:
                self._value = (*self._value, key)
                self.places.setdefault(self._value, line)
            self._awaits = "value"
        elif sign not in {".", ","}:
            self._keys.append(_bare(sign))

    def _take_header(self, sign: str, line: int) -> None:
        if sign == "[":
            self._is_array_header = True
        elif sign == "]" and self._keys:
            path: KeyPath = ()
            for depth, key in enumerate(self._keys, start=1):
                path = (*path, key)
                self.places.setdefault(path, line)
                if self._is_array_header and depth == len(self._keys):
                    self._array_lengths[path] = self._array_lengths.get(path, 0) + 1
                if path in self._array_lengths:
                    path = (*path, self._array_lengths[path] - 1)
            self.places.setdefault(path, line)
            self._table, self._keys, self._awaits = path, [], "end"
        elif sign != ".":
            self._keys.append(_bare(sign))

    def _take_value(self, sign: str, line: int) -> None:
        self.places.setdefault(self._value, line)
        self._awaits = "end"
        if sign == "[":
            self._open.append(_Bracket(self._value, 0))
            self._value, self._awaits = self._open[-1].inside, "value"
        elif sign == "{":
            self._open.append(_Bracket(self._value, None))
            self._keys, self._awaits = [], "key"

    def _next_item(self, bracket: _Bracket) -> None:
        if bracket.item is None:
            self._keys, self._awaits = [], "key"
        else:
            bracket.item += 1
            self._value, self._awaits = bracket.inside, "value"


def _bare(key: str) -> str:
    return key[1:-1] if key[0] in "\"'" else key
