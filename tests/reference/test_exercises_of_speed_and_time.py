"""Published examples through the exercises of a class: speeds, feed rates, times.

The inputs of the book are the givens of the exercise, and its printed answer must pass.

- P. C. Sharma, A Textbook of Production Engineering, examples 4.14 and 4.22 [PCS].
- M. P. Groover, Fundamentals of Modern Manufacturing, problems 22.3, 22.4, 22.6, 22.8 [GROO5].
- University of Applied Sciences Magdeburg-Stendal, exercise 1 [HSMD].

Left out: the pieces a bar gives (no published example is held), the nearest step (none either).
"""

from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen.lessons.accepted import is_right
from chartgen.lessons.exercise import Exercise, NumericAnswer, Paper
from chartgen.lessons.kinds import Slip
from chartgen.lessons.marking import Outcome, mark
from chartgen.lessons.paces import handle_pace, time_to_centre
from chartgen.lessons.place import Place
from chartgen.lessons.speeds import spindle_speed, true_surface_speed
from chartgen.model.material import Material
from chartgen.model.shop import LengthUnits, Shop

At = Callable[[LengthUnits], Place]
METRIC, INCH = LengthUnits.METRIC, LengthUnits.INCH


@pytest.fixture
def at(example: Shop, mild_steel: Material) -> At:
    """Return a place of a metric or an inch class; the numbers of the books need no more."""

    def of(units: LengthUnits) -> Place:
        shop = replace(example, request=replace(example.request, units=units))
        return Place(shop=shop, lathe=0, material=mild_steel, blade=shop.blades[0])

    return of


def value(exercise: Exercise) -> float:
    assert isinstance(exercise.answer, NumericAnswer)
    return exercise.answer.value


def passes(exercise: Exercise, printed: float) -> bool:
    assert isinstance(exercise.answer, NumericAnswer)
    return is_right(exercise.answer, printed)


def worked(exercise: Exercise, key: str) -> float:
    """Return a line of the worked solution."""
    return next(line.result for line in exercise.working if line.key == key)


@pytest.mark.parametrize(
    ("surface_speed", "diameter", "printed", "half_unit"),
    [
        pytest.param(300.0, 45.0, 2122.0, 0.5, id="HSMD 1"),
        pytest.param(40.0, 12.5, 1018.6, 0.05, id="PCS 4.22, computed from the printed inputs"),
        pytest.param(27.0, 175.0, 49.11, 0.005, id="PCS 4.13"),
        pytest.param(75.0, 12.7, 1880.0, 0.5, id="PCS 4.14"),
        pytest.param(200.0, 100.0, 636.6, 0.05, id="GROO5 22.4 small end"),
        pytest.param(200.0, 200.0, 318.3, 0.05, id="GROO5 22.4 large end"),
    ],
)
def test_spindle_speeds_of_the_books(
    surface_speed: float, diameter: float, printed: float, half_unit: float, at: At
) -> None:
    exercise = spindle_speed(at(METRIC), surface_speed=surface_speed, diameter=diameter)
    assert value(exercise) == pytest.approx(printed, abs=half_unit)
    assert passes(exercise, printed)


def test_groover_22_6_spindle_speed_in_inches(at: At) -> None:
    # 450 ft/min on 4.5 in; printed 382 rev/min.
    exercise = spindle_speed(at(INCH), surface_speed=450.0, diameter=4.5)
    assert value(exercise) == pytest.approx(382.0, abs=0.5)


@pytest.mark.parametrize(("inches", "printed"), [(38.0, 398.0), (24.0, 251.0)])
def test_groover_22_8_true_surface_speeds_in_feet(inches: float, printed: float, at: At) -> None:
    # 40 rev/min on a ring from 38 in to 24 in.
    exercise = true_surface_speed(at(INCH), spindle_speed=40.0, diameter=inches)
    assert value(exercise) == pytest.approx(printed, abs=0.5)


def test_groover_22_4_surface_speed_back_from_its_spindle_speed(at: At) -> None:
    # 636.6 rev/min, half a unit of it 0.008 %, is 200 m/min on 100 mm.
    exercise = true_surface_speed(at(METRIC), spindle_speed=636.6, diameter=100.0)
    assert value(exercise) == pytest.approx(200.0, rel=0.0001)


def test_sharma_4_22_parting_step_takes_00614_minutes(at: At) -> None:
    # Bar 25 mm, 0.2 mm/rev, 1018.6 rev/min; computed, as the step has no printed answer.
    exercise = time_to_centre(at(METRIC), diameter=25.0, spindle_speed=1018.6, feed=0.2)
    assert worked(exercise, "time-to-centre") / 60.0 == pytest.approx(0.0614, abs=0.00005)
    assert passes(exercise, 60.0 * 0.0614)
    # Who took the whole diameter for the way of the blade gets twice as much.
    paper = Paper(number=1, name="", lathe=0, exercises=(exercise,))
    question = mark(paper, ["0.1227 min"]).questions[0]
    assert (question.outcome, question.slip) == (Outcome.WRONG, Slip.DIAMETER_FOR_RADIUS)


def test_groover_22_3_facing_to_the_centre_takes_2083_minutes(at: At) -> None:
    # 6 in, 180 rev/min, 0.008 in/rev; printed 1.44 in/min and 2.083 min.
    exercise = time_to_centre(at(INCH), diameter=6.0, spindle_speed=180.0, feed=0.008)
    assert worked(exercise, "feed-rate") == pytest.approx(1.44, abs=0.005)
    assert worked(exercise, "time-to-centre") / 60.0 == pytest.approx(2.083, abs=0.0005)
    assert value(exercise) == pytest.approx(60.0 * 2.083, abs=0.03)


def test_exercise_1_feed_rate_on_the_way_to_the_handle(at: At) -> None:
    # 0.3 mm/rev at 2122.07 rev/min; printed 636.6 mm/min. One turn of 2 mm: 60 x 2 / 636.6.
    exercise = handle_pace(at(METRIC), spindle_speed=2122.07, feed=0.3, dial_per_turn=2.0)
    assert worked(exercise, "feed-rate") == pytest.approx(636.6, abs=0.05)
    assert value(exercise) == pytest.approx(120.0 / 636.6, rel=0.0001)


def test_groover_22_8_feed_rate_in_inches(at: At) -> None:
    # 0.015 in/rev at 40 rev/min; printed 0.60 in/min.
    exercise = handle_pace(at(INCH), spindle_speed=40.0, feed=0.015, dial_per_turn=0.1)
    assert worked(exercise, "feed-rate") == pytest.approx(0.60, abs=0.005)
    # A tenth of an inch at six tenths a minute.
    assert value(exercise) == pytest.approx(10.0)
