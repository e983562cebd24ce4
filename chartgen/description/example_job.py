"""The built-in example of a job: documentation of the job file, and where its mends come from."""

import tomllib
from functools import cache
from pkgutil import get_data
from typing import Any

from chartgen.description.problems import KeyPath


def example_job_text() -> bytes:
    """Return the built-in invented job file."""
    text = get_data("chartgen.description", "example_job.toml")
    if text is None:
        raise FileNotFoundError("example_job.toml")
    return text


@cache
def example_job_value(path: KeyPath) -> object:
    """Return what the example has at `path`; None if nothing."""
    value: Any = tomllib.loads(example_job_text().decode())
    for part in path:
        value = value.get(part) if isinstance(value, dict) else None
    return value
