"""What each kind of exercise asks, with every number that is needed to answer by hand."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from chartgen.lessons.exercise import Exercise
from chartgen.lessons.kinds import Kind
from chartgen.limits.spindle import Duration
from chartgen.model.lathe import DrivePosition
from chartgen.model.shop import Shop
from chartgen.wording.language import tr
from chartgen.wording.lessons.amounts import stated
from chartgen.wording.material_names import material_name

_DURATIONS = tuple(Duration)
_CURVES = {
    Duration.ONE_CUT: "one cut",
    Duration.CONTINUOUS: "continuous",
    Duration.STALL: "at the stall",
}
"""The names that the curves bear."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Asked:
    """The words that go into a question: its givens by name, material, blade, drive position.

    `curve` is what a curve of that position is called on the figure.
    """

    exercise: Exercise
    words: dict[str, str]
    material: str
    blade: str
    place: str
    curve: str

    def some(self, *names: str) -> dict[str, str]:
        """Return some of the givens."""
        return {name: self.words[name] for name in names}


def question_text(exercise: Exercise, shop: Shop) -> str:
    """Return the question of an exercise at its lathe."""
    words = {given.key.replace("-", "_"): stated(given) for given in exercise.givens}
    words.pop("position", None)
    positions = shop.lathe.drive.positions
    at = next((g for g in exercise.givens if g.key == "position"), None)
    position = None if at is None else positions[round(at.value)]
    asked = _Asked(
        exercise=exercise,
        words=words,
        material=material_name(exercise.material),
        blade=exercise.blade.name if exercise.blade else "",
        place="" if position is None else position.name,
        curve="" if position is None else _curve(exercise, position),
    )
    return _TEXTS[exercise.kind](asked)


def _curve(exercise: Exercise, position: DrivePosition) -> str:
    """Return the label of the curve that is asked about, where one is."""
    if exercise.kind is not Kind.READ_CURVE:
        return ""
    held = _DURATIONS[round(exercise.given("duration"))]
    words = tr("measured") if position.readings else tr(_CURVES[held])
    return f"{position.mark or position.name} {words}"


def _spindle_speed(asked: _Asked) -> str:
    return tr(
        "{material}, a bar of {diameter} diameter: {surface_speed} is wanted at its "
        "surface. Which spindle speed gives that?",
        material=asked.material,
        **asked.words,
    )


def _nearest_step(asked: _Asked) -> str:
    return tr(
        "{material}, a bar of {diameter} diameter: {surface_speed} is wanted at its "
        "surface. Which of this lathe's own speeds is the nearest?",
        material=asked.material,
        **asked.words,
    )


def _true_surface_speed(asked: _Asked) -> str:
    return tr(
        "A bar of {diameter} diameter turns at {spindle_speed}. What is its surface speed?",
        **asked.words,
    )


def _handle_pace_by_diameter(asked: _Asked) -> str:
    return tr(
        "The spindle turns at {spindle_speed}, the blade is to advance {feed}. In one turn "
        "of the handle the dial counts {dial_per_turn}, and it reads the diameter. How "
        "many seconds does a turn of the handle take?",
        **asked.words,
    )


def _handle_pace(asked: _Asked) -> str:
    if "dial_per_turn" in asked.words:
        return _handle_pace_by_diameter(asked)
    return tr(
        "The spindle turns at {spindle_speed}, the blade is to advance {feed}. One turn of "
        "the handle moves the blade by {travel_per_turn}. How many seconds does a turn of "
        "the handle take?",
        **asked.words,
    )


def _time_to_centre(asked: _Asked) -> str:
    return tr(
        "A solid bar of {diameter} diameter is parted at {spindle_speed} with a feed of "
        "{feed}; the spindle speed stays the same. How many seconds does the cut take to "
        "the centre?",
        **asked.words,
    )


def _pieces_per_bar(asked: _Asked) -> str:
    return tr(
        "A bar is {bar_length} long. Each piece is {piece_length} long, its slot {kerf} "
        "wide, and {facing} is faced off it; {held} stay in and before the jaws. How many "
        "whole pieces does the bar give?",
        **asked.words,
    )


def _cutting_force(asked: _Asked) -> str:
    return tr(
        "{material} is parted with a blade {width} wide and a feed of {feed}. At this feed "
        "its specific cutting force is {force_per_area}. What is the cutting force?",
        material=asked.material,
        **asked.words,
    )


def _cutting_power(asked: _Asked) -> str:
    return tr(
        "A blade takes a force of {force} at a surface speed of {surface_speed}. What is "
        "the power at its edge?",
        **asked.words,
    )


def _motor_pulls(asked: _Asked) -> str:
    return tr(
        "At {spindle_speed} in position “{place}” the drive gives {torque} at the spindle. "
        "Parting a bar of {diameter} diameter may take a force of up to {force}, at its "
        "outside. Work out the torque that this needs. Does the drive turn it?",
        place=asked.place,
        **asked.words,
    )


def _what_binds(asked: _Asked) -> str:
    return tr(
        "{material}, a bar of {diameter} diameter at {spindle_speed}, blade {blade}. Each "
        "limit below allows a feed up to its number. Which one is met first when the feed "
        "is raised?",
        material=asked.material,
        blade=asked.blade,
        **asked.some("diameter", "spindle_speed"),
    )


def _read_nomogram(asked: _Asked) -> str:
    return tr(
        "Lay a ruler across the power nomogram: a force of {force} at a surface speed of "
        "{surface_speed}. Which power do you read?",
        **asked.words,
    )


def _read_curve(asked: _Asked) -> str:
    """Return the question of a torque to be read, in the words of the figure."""
    return tr(
        "Read off the spindle curves: which torque does position “{place}” give at "
        "{spindle_speed}, on the curve “{curve}”?",
        place=asked.place,
        curve=asked.curve,
        **asked.some("spindle_speed"),
    )


def _too_timid(asked: _Asked) -> str:
    said = {
        "material": asked.material,
        "blade": asked.blade,
        **asked.some("diameter", "spindle_speed", "feed", "edge_floor"),
    }
    if "skin_floor" not in asked.words:
        return tr(
            "{material}, a bar of {diameter} diameter at {spindle_speed}, blade {blade}: the feed "
            "is {feed}. The edge needs {edge_floor} or more to cut. What goes wrong?",
            **said,
        )
    return tr(
        "{material}, a bar of {diameter} diameter at {spindle_speed}, blade {blade}: the feed is "
        "{feed}. The edge needs {edge_floor} or more to cut, and {skin_floor} or more to get under "
        "the skin that the last turn hardened. What goes wrong?",
        **asked.some("skin_floor"),
        **said,
    )


_TEXTS: Final[dict[Kind, Callable[[_Asked], str]]] = {
    Kind.SPINDLE_SPEED: _spindle_speed,
    Kind.NEAREST_STEP: _nearest_step,
    Kind.TRUE_SURFACE_SPEED: _true_surface_speed,
    Kind.HANDLE_PACE: _handle_pace,
    Kind.CUTTING_FORCE: _cutting_force,
    Kind.CUTTING_POWER: _cutting_power,
    Kind.MOTOR_PULLS: _motor_pulls,
    Kind.WHAT_BINDS: _what_binds,
    Kind.TOO_TIMID: _too_timid,
    Kind.TIME_TO_CENTRE: _time_to_centre,
    Kind.PIECES_PER_BAR: _pieces_per_bar,
    Kind.READ_NOMOGRAM: _read_nomogram,
    Kind.READ_CURVE: _read_curve,
}
