"""One exercise as numbers: wording makes a question, a worked solution and a key of it."""

from dataclasses import dataclass

from chartgen.lessons.kinds import Kind, Slip
from chartgen.model.blade import Blade
from chartgen.model.material import Material
from chartgen.quantities import Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class Given:
    """A number the question states, rounded as it is printed; the answer rests on just that."""

    key: str
    value: float
    unit: Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class NumericAnswer:
    """A number; right from `low` to `high`, which allow for rounding or for reading a scale."""

    value: float
    unit: Unit
    low: float
    high: float

    def __post_init__(self) -> None:
        if not self.low <= self.value <= self.high:
            raise ValueError(f"{self.value:g} does not lie from {self.low:g} to {self.high:g}")


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoiceAnswer:
    """One of several options by key; the first letter of the alphabet stands for the first."""

    options: tuple[str, ...]
    right: int

    def __post_init__(self) -> None:
        if not 0 <= self.right < len(self.options) or len(set(self.options)) < len(self.options):
            raise ValueError("the right one must be among different options")


@dataclass(frozen=True, slots=True, kw_only=True)
class NumericMistake:
    """The wrong number that a slip leads to."""

    slip: Slip
    value: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoiceMistake:
    """The wrong option that a slip leads to."""

    slip: Slip
    option: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Working:
    """One line of a worked solution: what is worked out, its formula by key, and its value.

    `values` are the numbers that go into the formula, by symbol.
    """

    key: str
    values: tuple[Given, ...]
    result: float
    unit: Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class Exercise:
    """An exercise for one student at one lathe.

    `lathe` counts the course's lathes from 0. A mistake whose answer would pass for right is
    left out, since it cannot be told.
    """

    kind: Kind
    lathe: int
    material: Material
    blade: Blade | None
    givens: tuple[Given, ...]
    answer: NumericAnswer | ChoiceAnswer
    mistakes: tuple[NumericMistake | ChoiceMistake, ...]
    working: tuple[Working, ...]

    def given(self, key: str) -> float:
        """Return a given number by its key.

        Raises
        ------
        KeyError
            If the question states no such number.
        """
        for one in self.givens:
            if one.key == key:
                return one.value
        raise KeyError(key)


@dataclass(frozen=True, slots=True, kw_only=True)
class Paper:
    """What one student gets: number and name with the exercises in their order."""

    number: int
    name: str
    lathe: int
    exercises: tuple[Exercise, ...]
