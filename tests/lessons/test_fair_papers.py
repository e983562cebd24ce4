"""What would let a class share an answer, or give up an exercise that it could have."""

from collections import Counter
from collections.abc import Callable

import numpy as np
import pytest

from chartgen.charts.spindle_curves import spindle_curves
from chartgen.lessons.accepted import is_right
from chartgen.lessons.assign import papers_for
from chartgen.lessons.catalogue import CATALOGUE, LEVELS
from chartgen.lessons.cells import make_cells
from chartgen.lessons.exercise import ChoiceAnswer, ChoiceMistake, NumericAnswer
from chartgen.lessons.kinds import Kind, Slip
from chartgen.lessons.place import Place
from chartgen.lessons.scales import DURATIONS, read_curve
from chartgen.limits.run import windows
from chartgen.model.course import Course, Level
from chartgen.model.material import Material
from chartgen.model.shop import LengthUnits, Shop
from chartgen.wording.curves.spindle import print_spindle_curves
from chartgen.wording.lessons.question_texts import question_text

CourseOf = Callable[..., Course]
ShopOf = Callable[..., Shop]
Printed = Callable[..., Shop]


def test_a_kind_that_can_be_asked_once_is_not_given_up_for_another_asked_twice(
    course_of: CourseOf, printed: Printed, shop_of: ShopOf, materials: tuple[Material, ...]
) -> None:
    # At three lathes each has a third of the numbers; these belts have few of some kinds.
    shops = [printed(shop_of("550 W belts"), LengthUnits.METRIC)] * 3
    course = course_of(count=3, lathes=("one.toml", "two.toml", "three.toml"))
    share = 14
    for paper in papers_for(course, shops, materials, course.students):
        cells = make_cells(shops[paper.lathe], materials)
        could = {
            kind
            for kind in LEVELS[course.level]
            if len(CATALOGUE[kind].choices(cells).of_lathe(paper.lathe, 3).rows) >= share
        }
        asked = Counter(exercise.kind for exercise in paper.exercises)
        assert set(asked) == could
        assert len(could) < course.exercises == asked.total()


def test_a_cut_too_timid_is_not_the_same_letter_for_everyone(
    course_of: CourseOf, printed: Printed, example: Shop, materials: tuple[Material, ...]
) -> None:
    course = course_of(level=Level.FIRST, exercises=8)
    papers = papers_for(course, [printed(example, LengthUnits.METRIC)], materials, course.students)
    right = Counter(
        exercise.answer.right
        for paper in papers
        for exercise in paper.exercises
        if exercise.kind is Kind.TOO_TIMID and isinstance(exercise.answer, ChoiceAnswer)
    )
    assert right.total() == 40
    assert set(right) == {0, 1, 2, 3}
    assert max(right.values()) <= 20


def test_two_limits_met_last_together_are_the_same_mistake(
    course_of: CourseOf, printed: Printed, example: Shop, materials: tuple[Material, ...]
) -> None:
    course = course_of()
    shop = printed(example, LengthUnits.METRIC)
    ties = 0
    for paper in papers_for(course, [shop], materials, course.students):
        for exercise in paper.exercises:
            if exercise.kind is not Kind.WHAT_BINDS:
                continue
            last = max(given.value for given in exercise.givens[3:])
            assert isinstance(exercise.answer, ChoiceAnswer)
            at_last = [
                one.slip
                for one in exercise.mistakes
                if isinstance(one, ChoiceMistake)
                and exercise.given(exercise.answer.options[one.option]) == last
            ]
            ties += len(at_last) > 1
            assert set(at_last) == {Slip.OTHER_SIDE}
    assert ties


@pytest.mark.parametrize("lathe", ["250 W brushed DC", "750 W inverter", "measured"])
def test_a_curve_is_read_only_where_a_pencils_width_of_speed_is_not_felt(
    lathe: str, printed: Printed, shop_of: ShopOf, materials: tuple[Material, ...]
) -> None:
    shop = printed(shop_of(lathe), LengthUnits.METRIC)
    cells = make_cells(shop, materials)
    found = CATALOGUE[Kind.READ_CURVE].choices(cells)
    spindle = cells.case.spindle
    assert found.rows.size
    for speed, position, duration in found.rows:
        place = Place(shop=shop, lathe=0, material=materials[0], blade=None)
        exercise = read_curve(place, spindle_speed=speed, position=position, duration=duration)
        beside = spindle.torque(
            shop.lathe.drive.positions[int(position)],
            np.array([0.98 * speed, 1.02 * speed]),
            DURATIONS[int(duration)],
        )
        assert isinstance(exercise.answer, NumericAnswer)
        assert all(is_right(exercise.answer, torque) for torque in beside), speed


@pytest.mark.parametrize("lathe", ["250 W brushed DC", "750 W inverter", "measured"])
def test_a_curve_that_is_asked_about_bears_that_label_on_the_figure(
    lathe: str, printed: Printed, shop_of: ShopOf, materials: tuple[Material, ...]
) -> None:
    shop = printed(shop_of(lathe), LengthUnits.METRIC)
    found_windows = windows(shop, materials=materials[:1], diameters=(12.0,))
    figure = print_spindle_curves(spindle_curves(shop, found_windows, materials[0]))
    labels = {curve.label for curve in figure.panels[0].curves}
    place = Place(shop=shop, lathe=0, material=materials[0], blade=None)
    found = CATALOGUE[Kind.READ_CURVE].choices(make_cells(shop, materials))
    asked = {
        question_text(
            read_curve(place, spindle_speed=speed, position=position, duration=duration), shop
        )
        for speed, position, duration in found.rows
    }
    assert asked
    for text in asked:
        assert text.rpartition("on the curve “")[2].removesuffix("”?") in labels, text
