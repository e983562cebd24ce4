"""Errors that a person can act on: what is wrong, where, and the mend."""

from collections.abc import Sequence
from dataclasses import dataclass


class ChartgenError(Exception):
    """Base of every error that the command line prints without a traceback."""


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing wrong in one file.

    `line` is 0 where the fault belongs to no line (a missing file, a missing table).
    """

    file: str
    line: int
    key: str
    problem: str
    mend: str

    def __str__(self) -> str:
        place = f"{self.file}:{self.line}" if self.line else self.file
        key = f": {self.key}" if self.key else ""
        return f"{place}{key}: {self.problem} {self.mend}".rstrip()


class DescriptionError(ChartgenError):
    """A file says something that cannot be used; holds every fault found in it."""

    def __init__(self, faults: Sequence[Fault]) -> None:
        self.faults = tuple(faults)
        super().__init__("\n".join(str(fault) for fault in self.faults))


class DoesNotFitError(ChartgenError):
    """A layout cannot hold its content at its reading distance."""


class TooSmallError(DoesNotFitError):
    """A layout is too small for one card; `problem` ends where the mend of a larger one begins.

    `larger` are the layouts that would hold it, None where nobody looked for any. `rows` is
    how many rows would fit, where it is rows that do not.
    """

    def __init__(
        self, problem: str, *, larger: Sequence[str] | None = None, rows: int | None = None
    ) -> None:
        self.problem = problem
        self.rows = rows
        mend = "use a larger layout"
        if larger is not None:
            mend = "write a larger layout: none that came with the program holds it"
        if larger:
            mend = f"use a layout that holds it: {', '.join(larger)}"
        super().__init__(f"{problem}{mend}")


class RequestError(ChartgenError):
    """A command asks for something that the shop or the reference data does not have."""
