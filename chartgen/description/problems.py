"""Everything wrong with one file, collected as it is found.

A mend that needs a search (the nearest of some names, a line of the example) is only asked
for here; `complaints` finds the words, and is loaded for the first file that has a fault.
"""

from collections.abc import Callable, Iterable, Sequence
from typing import NamedTuple, TypeAlias, TypeVar

T = TypeVar("T")
KeyPath: TypeAlias = tuple[str | int, ...]

MISSING = "is missing."
UNKNOWN_KEY = "is not a known key."


class Nearest(NamedTuple):
    """A mend to be found: the one of `choices` that `word` may have meant."""

    word: str
    choices: Sequence[str]


class Quoted(NamedTuple):
    """A mend to be found: how to write `value` as text."""

    value: object


# None stands for a mend that follows from the place: which keys and brackets belong there.
Mend: TypeAlias = str | Nearest | Quoted | None


class Problem(NamedTuple):
    """One thing wrong at one key; list items count from 0 in `path`."""

    path: KeyPath
    problem: str
    mend: Mend


class ComplaintError(ValueError):
    """A value that cannot be used: what is wrong, and the mend."""

    def __init__(self, problem: str, mend: Mend) -> None:
        self.problem = problem
        self.mend = mend
        super().__init__(problem)


class NotedError(ValueError):
    """A list or table that cannot be used, for problems inside it that are noted already."""


class Problems:
    """The problems found so far; `attempt` lets the rest of the file be checked after one."""

    def __init__(self) -> None:
        self.found: list[Problem] = []

    def add(self, path: KeyPath, problem: str, mend: Mend) -> None:
        """Note one problem."""
        self.found.append(Problem(path, problem, mend))

    def attempt(
        self, path: KeyPath, make: Callable[[], T], *, keys: Iterable[str] = (), mend: str
    ) -> T | None:
        """Return what `make` makes, or note why it refuses and return None.

        A sentence of the model that begins with one of `keys` is placed at that key. Its
        part after a semicolon is the mend; where it has none, `mend` is.
        """
        try:
            return make()
        except ValueError as error:
            problem, _, own_mend = str(error).partition("; ")
            key = problem.split(maxsplit=1)[0]
            place = (*path, key) if key in keys else path
            own_mend = f"{own_mend[:1].upper()}{own_mend[1:]}." if own_mend else mend
            self.add(place, f"{problem}.", own_mend)
            return None
