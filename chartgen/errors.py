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


class RequestError(ChartgenError):
    """A command asks for something that the shop or the reference data does not have."""
