"""Which kinds of exercise a level has, and what makes each."""

from collections.abc import Callable
from typing import Final, NamedTuple

from chartgen.lessons import bars, bounds, forces, paces, scales, speeds
from chartgen.lessons.cells import Cells
from chartgen.lessons.choices import Choices
from chartgen.lessons.exercise import Exercise
from chartgen.lessons.kinds import Kind
from chartgen.model.course import Level


class Made(NamedTuple):
    """What the numbers of a kind are drawn from, and the function that makes an exercise."""

    choices: Callable[[Cells], Choices]
    exercise: Callable[..., Exercise]


CATALOGUE: Final[dict[Kind, Made]] = {
    Kind.SPINDLE_SPEED: Made(speeds.spindle_speed_choices, speeds.spindle_speed),
    Kind.NEAREST_STEP: Made(speeds.nearest_step_choices, speeds.nearest_step),
    Kind.TRUE_SURFACE_SPEED: Made(speeds.true_surface_speed_choices, speeds.true_surface_speed),
    Kind.HANDLE_PACE: Made(paces.handle_pace_choices, paces.handle_pace),
    Kind.CUTTING_FORCE: Made(forces.cutting_force_choices, forces.cutting_force),
    Kind.CUTTING_POWER: Made(forces.cutting_power_choices, forces.cutting_power),
    Kind.MOTOR_PULLS: Made(forces.motor_pulls_choices, forces.motor_pulls),
    Kind.WHAT_BINDS: Made(bounds.what_binds_choices, bounds.what_binds),
    Kind.TOO_TIMID: Made(bounds.too_timid_choices, bounds.too_timid),
    Kind.TIME_TO_CENTRE: Made(paces.time_to_centre_choices, paces.time_to_centre),
    Kind.PIECES_PER_BAR: Made(bars.pieces_per_bar_choices, bars.pieces_per_bar),
    Kind.READ_NOMOGRAM: Made(scales.read_nomogram_choices, scales.read_nomogram),
    Kind.READ_CURVE: Made(scales.read_curve_choices, scales.read_curve),
}

# In the order in which a sheet asks; a short sheet has the first of them.
LEVELS: Final[dict[Level, tuple[Kind, ...]]] = {
    Level.FIRST: (
        Kind.SPINDLE_SPEED,
        Kind.NEAREST_STEP,
        Kind.TRUE_SURFACE_SPEED,
        Kind.HANDLE_PACE,
        Kind.TIME_TO_CENTRE,
        Kind.PIECES_PER_BAR,
        Kind.TOO_TIMID,
        Kind.READ_NOMOGRAM,
    ),
    Level.SECOND: (
        Kind.NEAREST_STEP,
        Kind.HANDLE_PACE,
        Kind.CUTTING_FORCE,
        Kind.CUTTING_POWER,
        Kind.MOTOR_PULLS,
        Kind.WHAT_BINDS,
        Kind.TIME_TO_CENTRE,
        Kind.READ_CURVE,
        Kind.TOO_TIMID,
        Kind.PIECES_PER_BAR,
        Kind.READ_NOMOGRAM,
        Kind.SPINDLE_SPEED,
        Kind.TRUE_SURFACE_SPEED,
    ),
}
