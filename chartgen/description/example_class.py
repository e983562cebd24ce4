"""The built-in example of a class: documentation of its file, and where its mends come from."""

import tomllib
from functools import cache
from pkgutil import get_data
from typing import Any

from chartgen.description.problems import KeyPath

_ROSTER = "roster.csv"


def example_class_text() -> bytes:
    """Return the built-in invented class file."""
    text = get_data("chartgen.description", "example_class.toml")
    if text is None:
        raise FileNotFoundError("example_class.toml")
    return text


@cache
def example_class_value(path: KeyPath) -> object:
    """Return what the example has at `path`, first items standing for all; None if nothing."""
    value: Any = tomllib.loads(example_class_text().decode())
    # The file has a count of students, and shows the other way in a note.
    value["class"]["roster"] = _ROSTER
    for part in path:
        try:
            value = value[0 if isinstance(part, int) else part]
        except (KeyError, IndexError, TypeError):
            return None
    return str(value) if path[-1:] == ("date",) else value
