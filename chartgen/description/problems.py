"""Everything wrong with one file, collected as it is found."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import TypeVar

from chartgen.description.locate import KeyPath, line_of
from chartgen.errors import Fault

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing wrong at one key; list items count from 0 in `path`."""

    path: KeyPath
    problem: str
    mend: str


class Problems:
    """The problems found so far; `attempt` lets the rest of the file be checked after one."""

    def __init__(self) -> None:
        self.found: list[Problem] = []

    def add(self, path: KeyPath, problem: str, mend: str) -> None:
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

    def faults(self, *, file: str, text: str) -> list[Fault]:
        """Return the problems with their lines, in the order of the file."""
        # Twelve diameters without a unit are one slip, told once.
        unlike: dict[tuple[KeyPath, str, str], Problem] = {}
        for problem in self.found:
            is_item = bool(problem.path) and isinstance(problem.path[-1], int)
            family = problem.path[:-1] if is_item else problem.path
            unlike.setdefault((family, problem.problem, problem.mend), problem)
        faults = [
            Fault(file, line_of(text, one.path), dotted(one.path), one.problem, one.mend)
            for one in unlike.values()
        ]
        return sorted(faults, key=lambda fault: (fault.line, fault.key, fault.problem))


def dotted(path: KeyPath) -> str:
    """Return a key as a person points at it: list items count from 1, as in blade[2].height."""
    words = ""
    for part in path:
        if isinstance(part, int):
            words += f"[{part + 1}]"
        else:
            name = part if part.replace("-", "_").replace("_", "a").isalnum() else repr(part)
            words += f".{name}" if words else name
    return words
