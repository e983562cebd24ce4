"""The built-in example: documentation of the shop file, and the shop used when there is none."""

import tomllib
from functools import cache
from pkgutil import get_data
from typing import Any

# The example shop has none of these; its readings stand in a file of their own.
_MEASURED = {
    "key": "lathe.chuck.key_torque",
    "value": "40 N.m",
    "plus_minus": "4 N.m",
    "level": "95 %",
    "readings": 5,
    "date": "2026-11-25",
}


def example_readings_text() -> bytes:
    """Return the built-in invented file of readings."""
    text = get_data("chartgen.description", "example_readings.toml")
    if text is None:
        raise FileNotFoundError("example_readings.toml")
    return text


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
    if path[:1] == ("reading",):
        records = tomllib.loads(example_readings_text().decode())["reading"]
        # No record has every key; the first that has one stands for all.
        value = {"reading": [{k: v for one in reversed(records) for k, v in one.items()}]}
        value["reading"][0]["date"] = str(value["reading"][0]["date"])
    if path[:1] == ("measured",):
        value = {"measured": [_MEASURED]}
    for part in path:
        try:
            value = value[0 if isinstance(part, int) else part]
        except (KeyError, IndexError, TypeError):
            return None
    return value
