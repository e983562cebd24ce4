"""The safety quiz of a lathe, made from its cautions, and its answers for the instructor."""

import zlib
from collections.abc import Sequence
from typing import Final

from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.reference.cautions import NO_SOURCE, Caution
from chartgen.wording.cautions import cautions_of
from chartgen.wording.language import tr
from chartgen.wording.lessons.options import LETTERS
from chartgen.wording.lessons.printed_class import (
    PrintedKey,
    PrintedQuestion,
    PrintedQuiz,
    PrintedSolution,
)
from chartgen.wording.lessons.quiz_words import Asked, asked_of_every_lathe, asked_of_some

MOST_QUESTIONS: Final = 10
MOST_OF_SOME: Final = 4
"""Questions about what only some lathes and materials bring, at most."""


def printed_quiz(shop: Shop, materials: Sequence[Material]) -> PrintedQuiz:
    """Return the questions of a lathe, as they are handed out."""
    return PrintedQuiz(
        title=tr("Safety quiz"),
        subtitle=tr("before the spindle is touched"),
        questions=tuple(
            PrintedQuestion(
                number=str(number),
                text=f"{asked.text} {_cited(caution)}",
                unit="",
                options=_options(asked, caution),
            )
            for number, (caution, asked) in enumerate(_asked(shop, materials), 1)
        ),
        notes=(
            tr(
                "In brackets: where the right answer comes from. One wrong answer is talked over "
                "before the machine is used; the school's own rules come before this sheet."
            ),
        ),
    )


def printed_quiz_key(shop: Shop, materials: Sequence[Material]) -> PrintedKey:
    """Return the answers, for the instructor."""
    return PrintedKey(
        title=tr("Safety quiz: answers"),
        subtitle=tr("for the instructor"),
        solutions=tuple(
            _solution(number, caution, asked)
            for number, (caution, asked) in enumerate(_asked(shop, materials), 1)
        ),
        notes=(),
    )


def right_place(asked: Asked, caution: Caution) -> int:
    """Return where the right answer stands among the options, counted from 0."""
    if asked.truth is not None:
        return 0 if asked.truth else 1
    # Spread over the places, and the same in every run.
    return zlib.crc32(caution.key.encode()) % (1 + len(asked.wrong))


def _asked(shop: Shop, materials: Sequence[Material]) -> list[tuple[Caution, Asked]]:
    """Return which questions are asked: what this lathe brings, then what every lathe does."""
    there = {caution.key: caution for caution in cautions_of(shop, materials)}
    some = [(there[key], asked) for key, asked in asked_of_some().items() if key in there]
    every = [(there[key], asked) for key, asked in asked_of_every_lathe().items() if key in there]
    some = some[:MOST_OF_SOME]
    return [*every[: MOST_QUESTIONS - len(some)], *some]


def _options(asked: Asked, caution: Caution) -> tuple[str, ...]:
    if asked.truth is not None:
        return (tr("true"), tr("false"))
    options = list(asked.wrong)
    options.insert(right_place(asked, caution), tr(caution.text))
    return tuple(f"{LETTERS[place]}) {text}" for place, text in enumerate(options))


def _solution(number: int, caution: Caution, asked: Asked) -> PrintedSolution:
    options = _options(asked, caution)
    place = right_place(asked, caution)
    lines = () if asked.truth is None else (tr(caution.text),)
    return PrintedSolution(
        number=str(number),
        question=f"{asked.text} {_cited(caution)}",
        answer=options[place],
        accepted="",
        lines=lines,
        wrong=(),
    )


def _cited(caution: Caution) -> str:
    return tr("[common practice]") if caution.source == NO_SOURCE else f"[{caution.source}]"
