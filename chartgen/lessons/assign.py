"""Papers for a class: any slice of it gets the same papers as the whole.

Students take the lathes in turn by their number, and the places in each kind's order by how
many of their lathe come before. Numbers over 40 may be far apart (a school's own, of thousands
of students): then it is the place in the class's list that counts. At which lathe a set of
numbers is asked is decided by the numbers themselves, so that two students at different lathes
cannot share them either.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import islice

from chartgen.lessons.catalogue import CATALOGUE, LEVELS
from chartgen.lessons.cells import Cells, make_cells
from chartgen.lessons.choices import Choices
from chartgen.lessons.draws import hash_key, in_order
from chartgen.lessons.exercise import Exercise, Paper
from chartgen.lessons.kinds import Kind
from chartgen.lessons.place import Place
from chartgen.model.course import Course, Student
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.quantities import IntArray

CLASS_OF = 40
"""No two students of a class of so many get the same numbers."""


class NoExercisesError(ValueError):
    """A lathe and its materials cannot give so many different exercises."""


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class _Drawn:
    """One kind at one lathe: what it may ask, in the order in which it is handed out.

    `rounds` is how often it may come on one paper, so that numbers are left for everyone.
    """

    kind: Kind
    choices: Choices
    order: IntArray
    rounds: int


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class _AtLathe:
    """What one lathe's students are asked: each kind once, then each that can come again."""

    lathe: int
    cells: Cells
    kinds: tuple[_Drawn, ...]

    def exercises(self, before: int, count: int) -> Iterator[Exercise]:
        """Yield the exercises of the student with so many at this lathe before him."""
        most = max(drawn.rounds for drawn in self.kinds)
        asked = (
            (drawn, attempt)
            for attempt in range(most)
            for drawn in self.kinds
            if attempt < drawn.rounds
        )
        for drawn, attempt in islice(asked, count):
            yield self._exercise(drawn, before * drawn.rounds + attempt)

    def _exercise(self, drawn: _Drawn, place: int) -> Exercise:
        row = int(drawn.order[place % drawn.order.size])
        found, cells = drawn.choices, self.cells
        blade = int(found.blade[row])
        at = Place(
            shop=cells.shop,
            lathe=self.lathe,
            material=cells.materials[int(found.material[row])],
            blade=cells.shop.blades[blade] if blade >= 0 else None,
        )
        values = dict(zip(found.names, map(float, found.rows[row]), strict=True))
        return CATALOGUE[drawn.kind].exercise(at, **values)


def papers_for(
    course: Course,
    shops: Sequence[Shop],
    materials: Sequence[Material],
    students: Sequence[Student],
) -> Iterator[Paper]:
    """Yield the papers of some students of a course, one by one.

    Parameters
    ----------
    course
        The class: seed, level, how many exercises; all of its students.
    shops
        Its lathes in the order of `course.lathes`, with the units of the class.
    materials
        Its materials.
    students
        Any of its students.

    Raises
    ------
    NoExercisesError
        If a lathe cannot give a class of 40 as many exercises with different numbers.
    """
    rooms: dict[int, _AtLathe] = {}
    place_of = _places(course)
    for student in students:
        before, lathe = divmod(place_of[student.number], len(shops))
        if lathe not in rooms:
            rooms[lathe] = _at_lathe(course, shops, materials, lathe)
        yield Paper(
            number=student.number,
            name=student.name,
            lathe=lathe,
            exercises=tuple(rooms[lathe].exercises(before, course.exercises)),
        )


def _places(course: Course) -> dict[int, int]:
    """Return each student's place by number: the number itself, or where it stands in the list.

    Where the last number is no larger than a class, a student keeps his numbers though others
    come or leave.
    """
    numbers = [student.number for student in course.students]
    if numbers[-1] <= CLASS_OF:
        return {number: number - 1 for number in numbers}
    return {number: place for place, number in enumerate(numbers)}


def _at_lathe(
    course: Course, shops: Sequence[Shop], materials: Sequence[Material], lathe: int
) -> _AtLathe:
    """Work out what one lathe's students can be asked.

    A kind that the lathe and its materials cannot give, or not to each of a class, is left out,
    and the next takes its place; where fewer are left than a paper has exercises, those come
    again that can.
    """
    cells = make_cells(shops[lathe], materials)
    share = math.ceil(CLASS_OF / len(shops))
    drawn = []
    for kind in LEVELS[course.level]:
        found = CATALOGUE[kind].choices(cells).of_lathe(lathe, len(shops))
        key = hash_key(course.seed, lathe, kind.value)
        order = in_order(found.marks, found.group, key)
        drawn.append(_Drawn(kind=kind, choices=found, order=order, rounds=order.size // share))
    for rounds in range(1, course.exercises + 1):
        kinds = tuple(
            replace(one, rounds=min(one.rounds, rounds)) for one in drawn if one.rounds > 0
        )
        if sum(one.rounds for one in kinds) >= course.exercises:
            return _AtLathe(lathe=lathe, cells=cells, kinds=kinds)
    raise NoExercisesError(
        f"{shops[lathe].lathe.name} cannot give {course.exercises} exercises with different "
        f"numbers for each of {CLASS_OF} students; ask for fewer, or list more materials"
    )
