"""What each kind of exercise asks, with every number that is needed to answer by hand."""

from chartgen.lessons.exercise import Exercise
from chartgen.lessons.kinds import Kind
from chartgen.limits.spindle import Duration
from chartgen.model.shop import Shop
from chartgen.wording.language import tr
from chartgen.wording.lessons.amounts import stated

_DURATIONS = tuple(Duration)


def question_text(exercise: Exercise, shop: Shop) -> str:
    """Return the question of an exercise at its lathe."""
    words = {given.key.replace("-", "_"): stated(given) for given in exercise.givens}
    material = tr(exercise.material.name)
    return _of_speed(exercise, words, material) or _of_force(exercise, words, material, shop)


def _of_speed(exercise: Exercise, words: dict[str, str], material: str) -> str:
    """Return a question of the first level; empty for another."""
    match exercise.kind:
        case Kind.SPINDLE_SPEED:
            return tr(
                "{material}, a bar of {diameter} diameter: {surface_speed} is wanted at its "
                "surface. Which spindle speed gives that?",
                material=material,
                **words,
            )
        case Kind.NEAREST_STEP:
            return tr(
                "{material}, a bar of {diameter} diameter: {surface_speed} is wanted at its "
                "surface. Which of this lathe's own speeds is the nearest?",
                material=material,
                **words,
            )
        case Kind.TRUE_SURFACE_SPEED:
            return tr(
                "A bar of {diameter} diameter turns at {spindle_speed}. What is its surface speed?",
                **words,
            )
        case Kind.HANDLE_PACE if "dial_per_turn" in words:
            return tr(
                "The spindle turns at {spindle_speed}, the blade is to advance {feed}. In one turn "
                "of the handle the dial counts {dial_per_turn}, and it reads the diameter. How "
                "many seconds does a turn of the handle take?",
                **words,
            )
        case Kind.HANDLE_PACE:
            return tr(
                "The spindle turns at {spindle_speed}, the blade is to advance {feed}. One turn of "
                "the handle moves the blade by {travel_per_turn}. How many seconds does a turn of "
                "the handle take?",
                **words,
            )
        case Kind.TIME_TO_CENTRE:
            return tr(
                "A solid bar of {diameter} diameter is parted at {spindle_speed} with a feed of "
                "{feed}; the spindle speed stays the same. How many seconds does the cut take to "
                "the centre?",
                **words,
            )
        case Kind.PIECES_PER_BAR:
            return tr(
                "A bar is {bar_length} long. Each piece is {piece_length} long, its slot {kerf} "
                "wide, and {facing} is faced off it; {held} stay in and before the jaws. How many "
                "whole pieces does the bar give?",
                **words,
            )
        case _:
            return ""


def _of_force(exercise: Exercise, words: dict[str, str], material: str, shop: Shop) -> str:
    match exercise.kind:
        case Kind.CUTTING_FORCE:
            return tr(
                "{material} is parted with a blade {width} wide and a feed of {feed}. At this feed "
                "a chip takes {force_per_area} of its area. What is the cutting force?",
                material=material,
                **words,
            )
        case Kind.CUTTING_POWER:
            return tr(
                "A blade takes a force of {force} at a surface speed of {surface_speed}. What is "
                "the power at its edge?",
                **words,
            )
        case Kind.MOTOR_PULLS:
            return tr(
                "At {spindle_speed} in position {place} the drive gives {torque} at the spindle. "
                "Parting a bar of {diameter} diameter may take a force of up to {force}, at its "
                "outside. Work out the torque that this needs. Does the drive turn it?",
                place=_position(exercise, shop),
                **_without(words, "position"),
            )
        case Kind.WHAT_BINDS:
            return tr(
                "{material}, a bar of {diameter} diameter at {spindle_speed}, blade {blade}. Each "
                "limit below allows a feed up to its number. Which one is met first when the feed "
                "is raised?",
                material=material,
                blade=_blade(exercise),
                diameter=words["diameter"],
                spindle_speed=words["spindle_speed"],
            )
        case Kind.TOO_TIMID:
            return _timid(exercise, words, material)
        case Kind.READ_NOMOGRAM:
            return tr(
                "Lay a ruler across the power nomogram: a force of {force} at a surface speed of "
                "{surface_speed}. Which power do you read?",
                **words,
            )
        case _:
            return _of_curve(exercise, words, shop)


def _of_curve(exercise: Exercise, words: dict[str, str], shop: Shop) -> str:
    """Return the question of a torque to be read, in the words of the figure."""
    curve = {
        Duration.ONE_CUT: tr("one cut"),
        Duration.CONTINUOUS: tr("continuous"),
        Duration.STALL: tr("at the stall"),
    }[_DURATIONS[round(exercise.given("duration"))]]
    return tr(
        "Read off the spindle curves: which torque does position {place} give at {spindle_speed}, "
        "on the curve “{curve}”?",
        place=_position(exercise, shop),
        spindle_speed=words["spindle_speed"],
        curve=curve,
    )


def _timid(exercise: Exercise, words: dict[str, str], material: str) -> str:
    said = {
        "material": material,
        "blade": _blade(exercise),
        **{key: words[key] for key in ("diameter", "spindle_speed", "feed", "edge_floor")},
    }
    if "skin_floor" not in words:
        return tr(
            "{material}, a bar of {diameter} diameter at {spindle_speed}, blade {blade}: the feed "
            "is {feed}. The edge needs {edge_floor} or more to cut. What goes wrong?",
            **said,
        )
    return tr(
        "{material}, a bar of {diameter} diameter at {spindle_speed}, blade {blade}: the feed is "
        "{feed}. The edge needs {edge_floor} or more to cut, and {skin_floor} or more to get under "
        "the skin that the last turn hardened. What goes wrong?",
        skin_floor=words["skin_floor"],
        **said,
    )


def _blade(exercise: Exercise) -> str:
    return exercise.blade.name if exercise.blade else ""


def _position(exercise: Exercise, shop: Shop) -> str:
    return shop.lathe.drive.positions[round(exercise.given("position"))].name


def _without(words: dict[str, str], key: str) -> dict[str, str]:
    return {name: text for name, text in words.items() if name != key}
