"""A class: who is taught, at which lathes, in which materials, at which level."""

from dataclasses import dataclass
from enum import Enum

from chartgen.model.shop import Language, LengthUnits


class Level(Enum):
    """What the exercises ask: arithmetic of speed and feed, or force, power and limits too."""

    FIRST = "first"
    SECOND = "second"


@dataclass(frozen=True, slots=True, kw_only=True)
class Student:
    """One of a class. `number` counts from 1; `name` may be empty where only a count is known."""

    number: int
    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """A class as its file describes it.

    `lathes` are the paths of the shop files as written; `seed` makes other numbers for another
    year; `exercises` is how many each student gets. `rules` are the school's own, in its words.
    """

    name: str
    revision: str
    date: str
    seed: int
    level: Level
    language: Language
    units: LengthUnits
    students: tuple[Student, ...]
    lathes: tuple[str, ...]
    materials: tuple[str, ...]
    exercises: int
    rules: str = ""

    def __post_init__(self) -> None:
        numbers = [student.number for student in self.students]
        if not numbers or numbers != sorted(set(numbers)) or numbers[0] < 1:
            raise ValueError("students need numbers that rise, each once, from 1")
