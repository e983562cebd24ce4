"""Whatever numbers a seed may draw: the answer worked out by hand passes, a mistake does not.

Every row that any seed can hand out is gone through, so this holds for all seeds.
"""

import math
from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen.charts.nomogram import power_nomogram
from chartgen.lessons.accepted import is_right
from chartgen.lessons.catalogue import CATALOGUE
from chartgen.lessons.cells import Cells, make_cells
from chartgen.lessons.exercise import (
    ChoiceAnswer,
    ChoiceMistake,
    Exercise,
    NumericAnswer,
    NumericMistake,
)
from chartgen.lessons.kinds import Kind
from chartgen.lessons.place import Place
from chartgen.model.lathe import DialReads
from chartgen.model.material import Material
from chartgen.model.shop import LengthUnits, Shop

MOST = 800
"""Of a kind with more rows than this every second, third... is gone through."""
each_kind = pytest.mark.parametrize("kind", list(Kind), ids=lambda kind: kind.value)
Exercises = Callable[[Kind], list[Exercise]]


@pytest.fixture(scope="module", params=list(LengthUnits), ids=lambda units: units.value)
def units(request: pytest.FixtureRequest) -> LengthUnits:
    return LengthUnits(request.param)


@pytest.fixture(scope="module")
def cells(
    units: LengthUnits,
    example: Shop,
    printed: Callable[..., Shop],
    materials: tuple[Material, ...],
) -> Cells:
    return make_cells(printed(example, units), materials)


@pytest.fixture(scope="module")
def exercises(cells: Cells) -> Exercises:
    made: dict[Kind, list[Exercise]] = {}

    def of(kind: Kind) -> list[Exercise]:
        if kind not in made:
            found = CATALOGUE[kind].choices(cells).of_lathe(0, 1)
            step = 1 + len(found.rows) // MOST
            made[kind] = [
                CATALOGUE[kind].exercise(
                    Place(
                        shop=cells.shop,
                        lathe=0,
                        material=cells.materials[material],
                        blade=cells.shop.blades[blade] if blade >= 0 else None,
                    ),
                    **dict(zip(found.names, map(float, row), strict=True)),
                )
                for row, material, blade in zip(
                    found.rows[::step],
                    found.material[::step],
                    found.blade[::step],
                    strict=True,
                )
            ]
        return made[kind]

    return of


# Written out for a pencil, apart from the engine: metric, then inch.
def spindle_speed(e: Exercise, units: LengthUnits) -> float:
    lengths = 1000.0 if units is LengthUnits.METRIC else 12.0
    return lengths * e.given("surface-speed") / (math.pi * e.given("diameter"))


def surface_speed(e: Exercise, units: LengthUnits) -> float:
    lengths = 1000.0 if units is LengthUnits.METRIC else 12.0
    return math.pi * e.given("diameter") * e.given("spindle-speed") / lengths


def pace(e: Exercise, _units: LengthUnits) -> float:
    return 60.0 * e.given("travel-per-turn") / (e.given("feed") * e.given("spindle-speed"))


def time(e: Exercise, _units: LengthUnits) -> float:
    return 60.0 * (e.given("diameter") / 2.0) / (e.given("feed") * e.given("spindle-speed"))


def force(e: Exercise, units: LengthUnits) -> float:
    area = e.given("width") * e.given("feed")
    return e.given("force-per-area") * area * (1.0 if units is LengthUnits.METRIC else 645.16)


def power(e: Exercise, units: LengthUnits) -> float:
    metres = 1.0 if units is LengthUnits.METRIC else 0.3048
    return e.given("force") * e.given("surface-speed") * metres / 60.0


def pieces(e: Exercise, _units: LengthUnits) -> float:
    """Cut the bar up until what is left cannot be held and cut once more."""
    left, count = e.given("bar-length"), 0
    while True:
        left -= e.given("piece-length") + e.given("kerf") + e.given("facing")
        if left < e.given("held"):
            return float(count)
        count += 1


BY_HAND: dict[Kind, Callable[[Exercise, LengthUnits], float]] = {
    Kind.SPINDLE_SPEED: spindle_speed,
    Kind.TRUE_SURFACE_SPEED: surface_speed,
    Kind.HANDLE_PACE: pace,
    Kind.TIME_TO_CENTRE: time,
    Kind.CUTTING_FORCE: force,
    Kind.CUTTING_POWER: power,
    Kind.READ_NOMOGRAM: power,
    Kind.PIECES_PER_BAR: pieces,
}


@pytest.mark.parametrize("kind", list(BY_HAND), ids=lambda kind: kind.value)
def test_the_answer_is_what_a_pencil_gets_from_the_printed_numbers(
    kind: Kind, exercises: Exercises, units: LengthUnits
) -> None:
    for exercise in exercises(kind):
        assert isinstance(exercise.answer, NumericAnswer)
        assert exercise.answer.value == pytest.approx(BY_HAND[kind](exercise, units), rel=1e-9)
        # With three figures and the pi of a school, a pencil still passes.
        rough = float(f"{BY_HAND[kind](exercise, units) * 3.14 / math.pi:.3g}")
        if kind in {Kind.SPINDLE_SPEED, Kind.TRUE_SURFACE_SPEED}:
            assert is_right(exercise.answer, rough)


@each_kind
def test_the_right_answer_passes_and_no_mistake_does(kind: Kind, exercises: Exercises) -> None:
    assert len(exercises(kind)) >= 40
    slips = set()
    for exercise in exercises(kind):
        answer = exercise.answer
        slips |= {one.slip for one in exercise.mistakes}
        if isinstance(answer, NumericAnswer):
            assert answer.low <= answer.value <= answer.high
            values = [m.value for m in exercise.mistakes if isinstance(m, NumericMistake)]
            assert not [value for value in values if is_right(answer, value)]
            assert len({m.slip for m in exercise.mistakes}) == len(exercise.mistakes)
        else:
            taken = [m.option for m in exercise.mistakes if isinstance(m, ChoiceMistake)]
            assert len(taken) == len(exercise.mistakes) == len(set(taken))
            assert answer.right not in taken
    assert len(slips) >= 2


@each_kind
def test_givens_are_as_printed_and_each_once(kind: Kind, exercises: Exercises) -> None:
    for exercise in exercises(kind):
        keys = [given.key for given in exercise.givens]
        assert len(keys) == len(set(keys))
        for given in exercise.givens:
            assert math.isfinite(given.value)
            assert f"{given.value:.10g}" == f"{given.value:.6g}", given


def test_diameters_and_feeds_come_out_round(exercises: Exercises, units: LengthUnits) -> None:
    across, bite = (0.5, 0.005) if units is LengthUnits.METRIC else (1.0 / 16.0, 0.0002)
    for exercise in exercises(Kind.TIME_TO_CENTRE):
        for key, step in (("diameter", across), ("feed", bite)):
            steps = exercise.given(key) / step
            assert steps == pytest.approx(round(steps), abs=1e-6)


def test_the_nearest_step_is_one_of_the_lathe_and_clearly_nearest(
    exercises: Exercises, units: LengthUnits, example: Shop
) -> None:
    for exercise in exercises(Kind.NEAREST_STEP):
        answer, wanted = exercise.answer, spindle_speed(exercise, units)
        assert isinstance(answer, NumericAnswer)
        steps = {
            round(p.dial_step * n, 6)
            for p in example.lathe.drive.positions
            for n in range(1, 1000)
            if p.slowest <= p.dial_step * n <= p.fastest
        }
        assert answer.value in steps
        assert abs(answer.value - wanted) == min(abs(step - wanted) for step in steps)
        # Rounding pi does not lead to another step.
        rough = wanted * math.pi / 3.14
        assert min(steps, key=lambda step: abs(step - rough)) == answer.value


def test_the_motor_pulls_what_needs_less_torque_than_it_gives(
    exercises: Exercises, units: LengthUnits
) -> None:
    seen = set()
    for exercise in exercises(Kind.MOTOR_PULLS):
        mm = 1.0 if units is LengthUnits.METRIC else 25.4
        needed = exercise.given("force") * exercise.given("diameter") * mm / 2000.0
        ratio = exercise.given("torque") / needed
        answer = exercise.answer
        assert isinstance(answer, ChoiceAnswer)
        word = answer.options[answer.right]
        assert word == ("yes" if ratio >= 1.0 else "no")
        assert not 1.0 / 1.14 < ratio < 1.14
        seen.add(word)
    assert seen == {"yes", "no"}


def test_what_binds_is_the_lowest_of_the_printed_limits(exercises: Exercises) -> None:
    for exercise in exercises(Kind.WHAT_BINDS):
        answer = exercise.answer
        assert isinstance(answer, ChoiceAnswer)
        limits = sorted((exercise.given(key), key) for key in answer.options)
        assert limits[0][1] == answer.options[answer.right]
        # Three figures of two limits may eat a little of the 15 %.
        assert limits[1][0] >= 1.14 * limits[0][0]


def test_a_cut_too_timid_is_under_one_printed_floor_only(exercises: Exercises) -> None:
    for exercise in exercises(Kind.TOO_TIMID):
        answer = exercise.answer
        assert isinstance(answer, ChoiceAnswer)
        floors = {g.key: g.value for g in exercise.givens if g.key.endswith("-floor")}
        under = [key for key, floor in floors.items() if exercise.given("feed") < floor]
        assert under == [answer.options[answer.right]]


def test_what_is_read_off_the_nomogram_stands_on_its_scales(
    exercises: Exercises, units: LengthUnits
) -> None:
    figure = power_nomogram(units)
    for exercise in exercises(Kind.READ_NOMOGRAM):
        force, speed = exercise.given("force"), exercise.given("surface-speed")
        assert figure.left.least <= force <= figure.left.most
        assert figure.right.least <= speed <= figure.right.most
        assert isinstance(exercise.answer, NumericAnswer)
        assert figure.read(force, speed) == pytest.approx(exercise.answer.value, rel=1e-9)


def test_a_dial_that_reads_the_diameter_is_a_trap(
    example: Shop, materials: tuple[Material, ...]
) -> None:
    assert example.lathe.cross_slide.dial_reads is DialReads.RADIUS
    slide = replace(example.lathe.cross_slide, dial_reads=DialReads.DIAMETER)
    other = replace(example, lathe=replace(example.lathe, cross_slide=slide))
    place = Place(shop=other, lathe=0, material=materials[0], blade=example.blades[0])
    make = CATALOGUE[Kind.HANDLE_PACE].exercise
    # The dial counts 4 mm, the tool moves 2 mm: 60 x 2 / (0.05 x 600) is 4 s.
    exercise = make(place, spindle_speed=600.0, feed=0.05, dial_per_turn=4.0)
    assert isinstance(exercise.answer, NumericAnswer)
    assert exercise.answer.value == pytest.approx(4.0)
    assert exercise.mistakes[0] == NumericMistake(slip=exercise.mistakes[0].slip, value=8.0)
    assert exercise.mistakes[0].slip.value == "diameter-for-radius"
    assert exercise.given("dial-per-turn") == 4.0
