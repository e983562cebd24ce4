"""The built-in example: documentation of the shop file, and the shop used when there is none."""

import tomllib
from functools import cache
from pkgutil import get_data
from typing import Any


def example_text() -> bytes:
    """Return the built-in invented shop file."""
    # importlib.resources would do it too, but loads archives and temporary files: 7 ms.
    text = get_data("chartgen.description", "example_shop.toml")
    if text is None:
        raise FileNotFoundError("example_shop.toml")
    return text


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
