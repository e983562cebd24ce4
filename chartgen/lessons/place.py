"""Where an exercise is worked: the lathe, the material, the blade, the units."""

from dataclasses import dataclass

from chartgen.lessons.accepted import accepted, told_apart
from chartgen.lessons.class_units import ClassUnits, class_units
from chartgen.lessons.exercise import (
    ChoiceAnswer,
    ChoiceMistake,
    Exercise,
    Given,
    NumericAnswer,
    NumericMistake,
    Working,
)
from chartgen.lessons.kinds import Kind, Slip
from chartgen.model.blade import Blade
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.quantities import Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where an exercise is worked. `lathe` counts the course's lathes from 0."""

    shop: Shop
    lathe: int
    material: Material
    blade: Blade | None

    @property
    def units(self) -> ClassUnits:
        """The units of the class: those the shop's cards are printed in."""
        return class_units(self.shop.request.units)

    def length(self, key: str, value: float) -> Given:
        """Return a given length."""
        return Given(key=key, value=value, unit=self.units.length)

    def feed(self, value: float) -> Given:
        """Return a given feed."""
        return Given(key="feed", value=value, unit=self.units.feed)

    def surface_speed(self, value: float) -> Given:
        """Return a given surface speed."""
        return Given(key="surface-speed", value=value, unit=self.units.speed)

    def numeric(
        self,
        kind: Kind,
        *,
        givens: tuple[Given, ...],
        value: float,
        unit: Unit,
        slips: list[tuple[Slip, float]],
        working: tuple[Working, ...],
        span: tuple[float, float] | None = None,
    ) -> Exercise:
        """Return an exercise that asks for a number; without a span, the kind's own holds."""
        low, high = accepted(kind, value) if span is None else span
        answer = NumericAnswer(value=value, unit=unit, low=low, high=high)
        wrong = [NumericMistake(slip=slip, value=number) for slip, number in slips]
        return self._exercise(kind, givens, answer, told_apart(answer, wrong), working)

    def choice(
        self,
        kind: Kind,
        *,
        givens: tuple[Given, ...],
        options: tuple[str, ...],
        right: str,
        slips: list[tuple[Slip, str]],
        working: tuple[Working, ...],
    ) -> Exercise:
        """Return an exercise that asks for one of several options."""
        answer = ChoiceAnswer(options=options, right=options.index(right))
        wrong: dict[int, ChoiceMistake] = {}
        for slip, option in slips:
            place = options.index(option)
            if place != answer.right:
                wrong.setdefault(place, ChoiceMistake(slip=slip, option=place))
        return self._exercise(kind, givens, answer, tuple(wrong.values()), working)

    def _exercise(
        self,
        kind: Kind,
        givens: tuple[Given, ...],
        answer: NumericAnswer | ChoiceAnswer,
        mistakes: tuple[NumericMistake | ChoiceMistake, ...],
        working: tuple[Working, ...],
    ) -> Exercise:
        return Exercise(
            kind=kind,
            lathe=self.lathe,
            material=self.material,
            blade=self.blade,
            givens=givens,
            answer=answer,
            mistakes=mistakes,
            working=working,
        )
