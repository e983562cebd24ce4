"""The built-in example: documentation of the shop file, and the shop used when there is none."""

import tomllib
from functools import cache
from importlib.resources import files
from typing import Any


def example_text() -> bytes:
    """Return the built-in invented shop file."""
    return files("chartgen.description").joinpath("example_shop.toml").read_bytes()


@cache
def example_value(path: tuple[str | int, ...]) -> object:
    """Return what the example has at `path`, first items standing for all; None if nothing."""
    value: Any = tomllib.loads(example_text().decode())
    for part in path:
        try:
            value = value[0 if isinstance(part, int) else part]
        except (KeyError, IndexError, TypeError):
            return None
    return value
