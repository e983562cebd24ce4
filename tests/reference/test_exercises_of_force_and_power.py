"""Published examples through the exercises of a class: force, power, torque.

The inputs of the book are the givens of the exercise, and its printed answer must pass.

- Graduate Aptitude Test in Engineering, PI 1994, parting off [GATE].
- University of Applied Sciences Magdeburg-Stendal, exercise 1 [HSMD].
- P. C. Sharma, A Textbook of Production Engineering, example 14.10 [PCS].
- M. P. Groover, Fundamentals of Modern Manufacturing, example 20.4, problem 21.23 [GROO5].
- An open companion to a production-engineering textbook, example 2.1 (torque computed).
- S. Kalpakjian and S. R. Schmid, Manufacturing Engineering and Technology, example 22.1 [KALP].
- C. I. Hubert, Electric Machines, example 5.1 [HUB].
"""

from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen.lessons.accepted import is_right
from chartgen.lessons.exercise import ChoiceAnswer, Exercise, NumericAnswer, Paper
from chartgen.lessons.forces import cutting_force, cutting_power, motor_pulls
from chartgen.lessons.kinds import Slip
from chartgen.lessons.marking import mark
from chartgen.lessons.place import Place
from chartgen.lessons.scales import DURATIONS, read_curve, read_nomogram
from chartgen.limits.spindle import Duration
from chartgen.model.material import Material
from chartgen.model.shop import LengthUnits, Shop
from chartgen.quantities import Numeric

At = Callable[[LengthUnits], Place]
Convert = Callable[[Numeric, str, str], float]
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


def right(exercise: Exercise) -> str:
    assert isinstance(exercise.answer, ChoiceAnswer)
    return exercise.answer.options[exercise.answer.right]


@pytest.mark.parametrize(
    ("width", "feed", "force_per_area", "printed"),
    [
        pytest.param(2.0, 0.2, 800.0, 320.0, id="GATE PI 1994, option B"),
        pytest.param(3.0, 0.3, 2350.0, 2115.0, id="HSMD 1"),
        pytest.param(2.0, 0.2, 4000.0, 1600.0, id="PCS 14.10"),
    ],
)
def test_forces_of_the_books(
    width: float, feed: float, force_per_area: float, printed: float, at: At
) -> None:
    exercise = cutting_force(at(METRIC), width=width, feed=feed, force_per_area=force_per_area)
    assert value(exercise) == pytest.approx(printed, abs=0.5)


def test_groover_21_23_force_in_inches(at: At, convert: Convert) -> None:
    # 0.012 in/rev, depth 0.100 in, 0.326 hp per in³/min; the printed force is 155 lb.
    per_area = convert(0.326, "hp/(inch**3/min)", "N/mm**2")
    exercise = cutting_force(at(INCH), width=0.100, feed=0.012, force_per_area=per_area)
    # Half a unit of 0.326 and of 155.
    assert convert(value(exercise), "N", "lbf") == pytest.approx(155.0, rel=0.0005 / 0.326 + 0.004)


@pytest.mark.parametrize("make", [cutting_power, read_nomogram], ids=["worked out", "read off"])
@pytest.mark.parametrize(
    ("force", "speed", "printed"),
    [
        pytest.param(320.0, 60.0, 320.0, id="GATE PI 1994, option D"),
        pytest.param(2115.0, 300.0, 10_575.0, id="HSMD 1"),
        pytest.param(1557.0, 100.0, 2595.0, id="GROO5 20.4"),
    ],
)
def test_powers_of_the_books(
    make: Callable[..., Exercise], force: float, speed: float, printed: float, at: At
) -> None:
    exercise = make(at(METRIC), force=force, surface_speed=speed)
    assert value(exercise) == pytest.approx(printed, abs=0.5)
    answer = exercise.answer
    assert isinstance(answer, NumericAnswer)
    assert is_right(answer, printed)
    # Newtons times metres a minute, sixty times too much, is told.
    paper = Paper(number=1, name="", lathe=0, exercises=(exercise,))
    assert mark(paper, [60.0 * printed]).questions[0].slip is Slip.FACTOR_SIXTY


def test_groover_21_23_power_from_feet(at: At, convert: Convert) -> None:
    # 155 lb at 200 ft/min; printed 0.94 hp.
    pounds = convert(155.0, "lbf", "N")
    exercise = cutting_power(at(INCH), force=pounds, surface_speed=200.0)
    assert convert(value(exercise), "W", "hp") == pytest.approx(0.94, abs=0.005)


def test_companion_2_1_torque_that_the_motor_has_to_give(at: At) -> None:
    # 7280 W at 70 m/min is 6240 N; at the mean diameter 46 mm computed 143.5 N·m.
    cut = {"force": 6240.0, "diameter": 46.0, "spindle_speed": 484.4, "position": 0.0}
    stalls = motor_pulls(at(METRIC), torque=120.0, **cut)
    assert stalls.working[0].result == pytest.approx(143.5, abs=0.05)
    assert right(stalls) == "no"
    assert right(motor_pulls(at(METRIC), torque=170.0, **cut)) == "yes"
    # Who takes the diameter for the arm needs 287 N·m and thinks that 170 stall.
    assert motor_pulls(at(METRIC), torque=170.0, **cut).mistakes[0].slip is (
        Slip.DIAMETER_FOR_RADIUS
    )


def test_kalpakjian_22_1_torque_in_inches(at: At, convert: Convert) -> None:
    # 116 lb at the mean diameter 0.49 in, 0.180 hp at 400 rev/min.
    exercise = motor_pulls(
        at(INCH),
        force=convert(116.0, "lbf", "N"),
        diameter=0.49,
        spindle_speed=400.0,
        torque=10.0,
        position=0.0,
    )
    watts = exercise.working[0].result * 400.0 * 2.0 * 3.141592653589793 / 60.0
    # Half a unit of 116 lb.
    assert convert(watts, "W", "hp") == pytest.approx(0.180, rel=0.5 / 116.0)


def test_hubert_5_1_rated_torque_off_the_curve(
    at: At, shop_of: Callable[..., Shop], convert: Convert
) -> None:
    # 10 hp at 1150 rev/min, straight on the line; printed 45.7 lb·ft.
    place = at(METRIC)
    shop = shop_of(
        "550 W belts",
        {
            '"550 W"': '"10 hp"',
            '"1400 rpm"': '"1150 rpm"',
            'kind = "single-phase"': 'kind = "three-phase"',
            'elements = ["v-belt"]': 'efficiency = "100 %"',
        },
    )
    exercise = read_curve(
        replace(place, shop=shop),
        spindle_speed=1620.0,
        position=5.0,
        duration=float(DURATIONS.index(Duration.CONTINUOUS)),
    )
    # The belt steps 1150 rev/min of the motor up to 1620.
    geared = convert(45.7, "lbf*ft", "N*m") * 1150.0 / 1620.0
    assert value(exercise) == pytest.approx(geared, rel=0.05 / 45.7)
