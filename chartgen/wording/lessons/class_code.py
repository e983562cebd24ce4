"""The check code of a class's papers: a short sign of everything one was made from."""

from collections.abc import Sequence

from chartgen.model.course import Course
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.wording.check_code import check_code


def class_check_code(
    course: Course,
    shop: Shop,
    *,
    materials: Sequence[Material],
    subject: str,
) -> str:
    """Return the code of a paper; `subject` says whose it is.

    The roll of the class does not go in: a student more leaves the others' papers as they are.
    """
    of_course = (
        course.name,
        course.revision,
        course.date,
        course.seed,
        course.level.value,
        course.units.value,
        course.lathes,
        course.materials,
        course.exercises,
        course.rules,
    )
    return check_code(shop, materials=materials, layout="class", subject=f"{of_course!r} {subject}")
