"""Invented classes: a course of so many students, and lathes printed in the class's units."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen.model.course import Course, Level, Student
from chartgen.model.material import Material
from chartgen.model.shop import Feeding, Language, LengthUnits, Shop
from chartgen.reference.tables import load_material

MATERIALS = ("mild-steel", "stainless-304", "free-cutting-brass")
CourseOf = Callable[..., Course]
Printed = Callable[..., Shop]


@pytest.fixture(scope="session")
def course_of() -> CourseOf:
    """Return a function: what is otherwise -> an invented course of 40."""

    def of(level: Level = Level.SECOND, *, count: int = 40, **changes: object) -> Course:
        course = Course(
            name="Invented evening class",
            revision="A",
            date="2026-11-25",
            seed=1,
            level=level,
            language=Language.ENGLISH,
            units=LengthUnits.METRIC,
            students=tuple(Student(number=n, name="") for n in range(1, count + 1)),
            lathes=("one.toml",),
            materials=MATERIALS,
            exercises=13,
        )
        return replace(course, **changes)  # type: ignore[arg-type]

    return of


@pytest.fixture(scope="session")
def printed() -> Printed:
    """Return a shop that prints in other units, or feeds otherwise."""

    def of(shop: Shop, units: LengthUnits, feeding: Feeding = Feeding.HAND) -> Shop:
        return replace(shop, request=replace(shop.request, units=units, feeding=feeding))

    return of


@pytest.fixture(scope="session")
def materials() -> tuple[Material, ...]:
    """Return the materials of the invented class."""
    return tuple(load_material(key) for key in MATERIALS)
