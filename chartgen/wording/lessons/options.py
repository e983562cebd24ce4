"""The options of a choice as words, by their keys."""

from typing import Final

from chartgen.lessons.exercise import Exercise
from chartgen.lessons.kinds import Kind
from chartgen.limits.reasons import Reason
from chartgen.wording.language import tr
from chartgen.wording.lessons.amounts import stated

LETTERS: Final = "abcdefgh"


def limit_words(key: str) -> str:
    """Return a limit in a few words."""
    return tr(Reason[key.upper().replace("-", "_")].legend)


def option_words(exercise: Exercise, key: str) -> str:
    """Return an option of an exercise."""
    if exercise.kind is Kind.WHAT_BINDS:
        limit = next(given for given in exercise.givens if given.key == key)
        return tr("{limit}: up to {feed}", limit=limit_words(key), feed=stated(limit))
    return {
        "yes": tr("yes, it turns"),
        "no": tr("no, it stalls"),
        "stall": tr("The spindle stalls, for the chip is too thick."),
        "blade-bending": tr("The blade bends, for the force is too high."),
        "edge-floor": tr(
            "The edge rubs instead of cutting, for the chip is thinner than it needs."
        ),
        "skin-floor": tr("The edge stays in the skin that the last turn has hardened."),
    }[key]


def lettered(exercise: Exercise, options: tuple[str, ...]) -> tuple[str, ...]:
    """Return options with the letters that an answer file knows them by."""
    return tuple(
        f"{LETTERS[place]}) {option_words(exercise, key)}" for place, key in enumerate(options)
    )
