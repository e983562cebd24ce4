"""Papers: the same for any slice of a class, other numbers for each, cuts that can be made."""

import os
import subprocess
import sys
from collections import Counter
from collections.abc import Callable
from dataclasses import replace
from itertools import islice

import numpy as np
import pytest

from chartgen.lessons.assign import NoExercisesError, papers_for
from chartgen.lessons.bounds import reason_of_key
from chartgen.lessons.catalogue import CATALOGUE, LEVELS
from chartgen.lessons.cells import make_cells
from chartgen.lessons.draws import fingerprints, hash_key, in_order
from chartgen.lessons.exercise import (
    ChoiceAnswer,
    Exercise,
    NumericAnswer,
    NumericMistake,
    Paper,
)
from chartgen.lessons.kinds import Kind, Slip
from chartgen.limits.cut import Cut, Side, assess
from chartgen.model.course import Course, Level, Student
from chartgen.model.material import Material
from chartgen.model.shop import Feeding, LengthUnits, Shop

CourseOf = Callable[..., Course]
ShopOf = Callable[..., Shop]
Printed = Callable[..., Shop]
BELTS = '["115 rpm", "195 rpm", "331 rpm", "562 rpm", "954 rpm", "1620 rpm"]'
LATHES = [
    *("250 W brushed DC", "550 W belts", "750 W inverter", "1.1 kW brushless"),
    *("measured", "2.2 kW geared"),
]
each_level = pytest.mark.parametrize("level", list(Level), ids=lambda level: level.value)


@pytest.fixture
def room(shop_of: ShopOf, example: Shop) -> list[Shop]:
    """Return the three lathes of an invented room."""
    return [example, shop_of("550 W belts"), shop_of("250 W brushed DC")]


def whole(course: Course, shops: list[Shop], materials: tuple[Material, ...]) -> list[Paper]:
    return list(papers_for(course, shops, materials, course.students))


def numbers(exercise: Exercise) -> tuple[object, ...]:
    return (exercise.kind, *(given.value for given in exercise.givens))


@each_level
def test_a_slice_of_a_class_gets_the_papers_of_the_whole(
    level: Level, course_of: CourseOf, room: list[Shop], materials: tuple[Material, ...]
) -> None:
    course = course_of(level, exercises=8)
    papers = whole(course, room, materials)
    assert [paper.number for paper in papers] == list(range(1, 41))
    assert {len(paper.exercises) for paper in papers} == {8}
    for part in (slice(0, 1), slice(17, 23), slice(39, 40)):
        assert list(papers_for(course, room, materials, course.students[part])) == papers[part]
    longer = course_of(level, count=60, exercises=8)
    assert whole(longer, room, materials)[:40] == papers


@pytest.mark.parametrize("seed", range(8))
@pytest.mark.parametrize("lathes", [1, 3])
def test_no_two_of_forty_share_numbers(
    seed: int,
    lathes: int,
    course_of: CourseOf,
    room: list[Shop],
    materials: tuple[Material, ...],
) -> None:
    level = list(Level)[seed % 2]
    course = course_of(level, seed=seed)
    papers = whole(course, room[:lathes], materials)
    met = Counter(numbers(one) for paper in papers for one in paper.exercises)
    assert len(met) == 40 * 13
    assert max(met.values()) == 1


def test_numbers_far_apart_share_none_either(
    course_of: CourseOf, room: list[Shop], materials: tuple[Material, ...]
) -> None:
    # A school's own numbers, of thousands of students: multiples that would meet in any small ring.
    students = tuple(Student(number=20_160 * n, name="") for n in range(1, 41))
    course = course_of(students=students)
    papers = whole(course, room[:2], materials)
    assert max(Counter(numbers(e) for p in papers for e in p.exercises).values()) == 1
    assert list(papers_for(course, room[:2], materials, students[30:33])) == papers[30:33]


def test_who_stays_keeps_his_numbers_though_others_leave(
    course_of: CourseOf, example: Shop, materials: tuple[Material, ...]
) -> None:
    course = course_of(count=12, exercises=8)
    fewer = replace(course, students=course.students[4:])
    assert whole(fewer, [example], materials) == whole(course, [example], materials)[4:]


def test_any_seed_hands_out_every_row_once(example: Shop, materials: tuple[Material, ...]) -> None:
    cells = make_cells(example, materials)
    found = CATALOGUE[Kind.READ_NOMOGRAM].choices(cells).of_lathe(0, 1)
    marks = found.marks
    assert np.unique(marks).size == marks.size
    orders = [in_order(marks, found.group, hash_key(seed, "x")) for seed in range(3000)]
    for order in orders:
        assert np.bincount(order, minlength=marks.size).tolist() == [1] * marks.size
    # Different seeds begin differently: of so many, each row is somebody's first.
    assert len({int(order[0]) for order in orders}) > 0.9 * marks.size


def test_lathes_share_no_numbers(example: Shop, materials: tuple[Material, ...]) -> None:
    cells = make_cells(example, materials)
    found = CATALOGUE[Kind.SPINDLE_SPEED].choices(cells)
    shares = [set(found.of_lathe(lathe, 5).marks.tolist()) for lathe in range(5)]
    assert sum(map(len, shares)) == len(set().union(*shares))
    assert set().union(*shares) == set(found.of_lathe(0, 1).marks.tolist())
    assert min(map(len, shares)) > 100


def test_rows_that_print_alike_have_one_mark() -> None:
    rows = np.array([[0.1 + 0.2, 20.0], [0.3, 20.0], [20.0, 0.3], [np.inf, 1.0]])
    first, second, turned, endless = fingerprints(rows).tolist()
    assert first == second
    assert len({first, turned, endless}) == 3


def test_papers_do_not_depend_on_the_hash_seed_of_a_run() -> None:
    script = (
        "from chartgen.lessons.assign import papers_for\n"
        "from chartgen.model.course import *\n"
        "from chartgen.model.shop import *\n"
        "from chartgen.pipeline import describe\n"
        "from chartgen.reference.tables import load_material\n"
        "c = Course(name='x', revision='1', date='', seed=4, level=Level.SECOND,"
        " language=Language.ENGLISH, units=LengthUnits.METRIC,"
        " students=(Student(number=3, name=''),), lathes=('a',), materials=('c45',), exercises=8)\n"
        "print(list(papers_for(c, [describe(None, '')], [load_material('c45')], c.students)))\n"
    )
    said = {
        subprocess.run(
            [sys.executable, "-c", script],
            env={**os.environ, "PYTHONHASHSEED": seed},
            check=True,
            capture_output=True,
            text=True,
        ).stdout
        for seed in ("1", "2")
    }
    assert len(said) == 1


def test_papers_are_made_one_by_one(
    course_of: CourseOf, example: Shop, mild_steel: Material
) -> None:
    course = course_of(count=20_000, exercises=8)
    papers = papers_for(course, [example], [mild_steel], course.students)
    assert [paper.number for paper in islice(papers, 3)] == [1, 2, 3]


@each_level
@pytest.mark.parametrize("units", list(LengthUnits), ids=lambda units: units.value)
@pytest.mark.parametrize("feeding", list(Feeding), ids=lambda feeding: feeding.value)
@pytest.mark.parametrize("lathe", LATHES)
def test_every_invented_lathe_gives_a_class_its_papers(
    lathe: str,
    feeding: Feeding,
    units: LengthUnits,
    level: Level,
    course_of: CourseOf,
    shop_of: ShopOf,
    printed: Printed,
    materials: tuple[Material, ...],
) -> None:
    shop = printed(shop_of(lathe), units, feeding)
    papers = whole(course_of(level, count=20, units=units, exercises=8), [shop], materials)
    assert max(Counter(numbers(e) for p in papers for e in p.exercises).values()) == 1
    assert {e.kind for p in papers for e in p.exercises} <= set(LEVELS[level])


def test_what_a_lathe_cannot_give_is_replaced_by_the_next_kind(
    course_of: CourseOf, shop_of: ShopOf, printed: Printed, materials: tuple[Material, ...]
) -> None:
    # One speed has no nearest step, single speeds have no curve to read.
    shop = shop_of("550 W belts", {BELTS: '["562 rpm"]'})
    papers = whole(course_of(exercises=8), [printed(shop, LengthUnits.METRIC)], materials)
    kinds = [e.kind for e in papers[0].exercises]
    assert len(kinds) == len(set(kinds)) == 8
    assert not {Kind.NEAREST_STEP, Kind.READ_CURVE} & set(kinds)


def test_a_material_without_force_data_is_asked_no_force(
    course_of: CourseOf, example: Shop, mild_steel: Material
) -> None:
    bare = replace(mild_steel, force=None)
    papers = whole(course_of(exercises=8), [example], (bare,))
    kinds = {e.kind for paper in papers for e in paper.exercises}
    forceful = {Kind.CUTTING_FORCE, Kind.CUTTING_POWER, Kind.MOTOR_PULLS, Kind.READ_NOMOGRAM}
    assert not forceful & kinds


def test_more_than_a_level_has_comes_again_with_other_numbers(
    course_of: CourseOf, example: Shop, materials: tuple[Material, ...]
) -> None:
    paper = whole(course_of(Level.FIRST), [example], materials)[0]
    kinds = Counter(e.kind for e in paper.exercises)
    assert sorted(kinds.values()) == [1, 1, 1, 2, 2, 2, 2, 2]


def test_a_lathe_that_cannot_cut_the_material_is_refused(
    course_of: CourseOf, example: Shop, mild_steel: Material
) -> None:
    allowances = {**example.allowances, "edge_floor_by_hand": 50.0}
    dull = replace(example, allowances=allowances)
    with pytest.raises(NoExercisesError, match="exercises with different numbers"):
        whole(course_of(exercises=8), [dull], (mild_steel,))


def test_on_belts_the_step_above_and_below_are_told(
    course_of: CourseOf, shop_of: ShopOf, materials: tuple[Material, ...]
) -> None:
    papers = whole(course_of(Level.FIRST, exercises=8), [shop_of("550 W belts")], materials)
    steps = [e for p in papers for e in p.exercises if e.kind is Kind.NEAREST_STEP]
    assert len(steps) == 40
    belts = [115.0, 195.0, 331.0, 562.0, 954.0, 1620.0]
    for exercise in steps:
        assert isinstance(exercise.answer, NumericAnswer)
        at = belts.index(exercise.answer.value)
        told = {m.slip: m.value for m in exercise.mistakes if isinstance(m, NumericMistake)}
        assert told.get(Slip.STEP_ABOVE) == (belts[at + 1] if at < 5 else None)
        assert told.get(Slip.STEP_BELOW) == (belts[at - 1] if at > 0 else None)


# ------------------------------------------------- held against the engine, cell by cell


def looked_at(exercise: Exercise, shop: Shop, feed: float | None = None) -> Cut:
    assert exercise.blade is not None
    positions = shop.lathe.drive.positions
    keys = {given.key for given in exercise.givens}
    return assess(
        shop,
        material=exercise.material,
        blade=exercise.blade,
        diameter=exercise.given("diameter"),
        speed=exercise.given("spindle-speed"),
        feed=exercise.given("feed") if feed is None else feed,
        position=positions[int(exercise.given("position"))] if "position" in keys else None,
    )


@pytest.mark.parametrize("seed", range(2))
def test_cuts_lie_inside_the_window_but_where_the_point_is_that_they_do_not(
    seed: int, course_of: CourseOf, room: list[Shop], materials: tuple[Material, ...]
) -> None:
    for paper in whole(course_of(seed=seed), room[:2], materials):
        shop = room[paper.lathe]
        for exercise in paper.exercises:
            answer = exercise.answer
            if exercise.kind is Kind.TIME_TO_CENTRE:
                assert looked_at(exercise, shop).side is Side.INSIDE
            if exercise.kind is Kind.TOO_TIMID:
                cut = looked_at(exercise, shop)
                assert cut.side is Side.TOO_TIMID
                assert isinstance(answer, ChoiceAnswer)
                assert cut.floor.reason is reason_of_key(answer.options[answer.right])
            if exercise.kind is Kind.WHAT_BINDS:
                assert isinstance(answer, ChoiceAnswer)
                lowest = min(exercise.given(key) for key in answer.options)
                cut = looked_at(exercise, shop, feed=lowest)
                assert cut.ceiling.reason is reason_of_key(answer.options[answer.right])
                assert cut.ceiling.feed == pytest.approx(lowest, rel=0.01)
                assert cut.side is Side.INSIDE
