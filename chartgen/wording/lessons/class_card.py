"""A paper of a class as a card: cautions, deference, identity and check code round its body."""

from collections.abc import Sequence
from dataclasses import dataclass

from chartgen.model.course import Course
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.reference.cautions import Signal
from chartgen.wording.card import Body, PrintedCard
from chartgen.wording.cautions import PrintedCaution, deference, short_deference
from chartgen.wording.language import tr
from chartgen.wording.lessons.class_code import class_check_code


@dataclass(frozen=True, slots=True, kw_only=True)
class CardWords:
    """What stands round the body of one paper; `cautions` are those of paper unless given.

    `subject` says which of the papers of a class it is, `student` whose.
    """

    layout: str
    subject: str
    lathe: str
    assumptions: tuple[str, ...]
    materials: Sequence[Material] = ()
    cautions: tuple[PrintedCaution, ...] = ()
    force_band: str = ""
    student: str = ""


def class_card(course: Course, shop: Shop, body: Body, words: CardWords) -> PrintedCard[Body]:
    """Return a paper of a class."""
    return PrintedCard(
        file_stem=words.layout,
        layout=words.layout,
        lathe=words.lathe,
        chart=body,
        cautions=words.cautions or on_paper(),
        assumptions=words.assumptions,
        force_band=words.force_band,
        deference=deference(),
        short_deference=short_deference(),
        identity=identity_of(
            course=course.name,
            lathe=words.lathe,
            revision=course.revision,
            date=course.date,
        ),
        check_code=class_check_code(course, shop, materials=words.materials, subject=words.subject),
        language=course.language.value,
        student=words.student,
    )


def on_paper() -> tuple[PrintedCaution, ...]:
    """Return the caution of a sheet that no machine is set by."""
    return (
        PrintedCaution(
            tr(Signal.NOTICE.word.upper()),
            tr(
                "Worked on paper, away from the machine. No number of this sheet sets a lathe: "
                "that is done by its card, its manual and the instructor."
            ),
            "",
            Signal.NOTICE.is_injury,
        ),
    )


def identity_of(*, course: str, lathe: str, revision: str, date: str) -> str:
    """Return whose a paper is, in the words of every card's foot."""
    dated = tr("revision {revision}", revision=revision or "–"), date or tr("undated")
    return " · ".join(part for part in (course, lathe, *dated) if part)
