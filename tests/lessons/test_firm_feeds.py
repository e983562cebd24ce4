"""Nobody is taught to be timid: what an exercise has cut is no less than a firm feed."""

from collections.abc import Callable

import pytest

from chartgen.lessons.assign import papers_for
from chartgen.lessons.kinds import Kind
from chartgen.limits.cut import recommended
from chartgen.model.course import Course
from chartgen.model.material import Material
from chartgen.model.shop import Shop


# Common practice, no source: a feed of half the usual one is where rubbing begins to be heard.
def test_a_cut_to_the_centre_is_fed_at_least_more_than_half_as_firmly_as_its_best(
    example: Shop, course_of: Callable[..., Course], materials: tuple[Material, ...]
) -> None:
    course = course_of()
    asked = 0
    for paper in papers_for(course, [example], materials, course.students):
        for exercise in paper.exercises:
            if exercise.kind is not Kind.TIME_TO_CENTRE:
                continue
            asked += 1
            assert exercise.blade is not None
            _, best = recommended(
                example,
                material=exercise.material,
                blade=exercise.blade,
                diameter=exercise.given("diameter"),
            )
            assert exercise.given("spindle-speed") == pytest.approx(best.spindle_speed)
            assert exercise.given("feed") > 0.55 * best.feed
    assert asked == 40
