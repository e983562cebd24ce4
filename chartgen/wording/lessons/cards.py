"""What a class is handed, as cards: a chart a student, exercises, keys, quiz and sign-off."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import Final

from chartgen.charts.speed_feed import pair_chart
from chartgen.lessons.exercise import Paper
from chartgen.limits.allowances import allowances_for
from chartgen.limits.run import windows
from chartgen.model.course import Course
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.reference.tables import load_material
from chartgen.wording.assumptions import assumption_lines, force_band_line
from chartgen.wording.card import Body, PrintedCard, file_name_part
from chartgen.wording.cautions import PrintedCaution, card_cautions
from chartgen.wording.language import tr
from chartgen.wording.lessons.class_card import CardWords, class_card, on_paper
from chartgen.wording.lessons.matrix import printed_matrix
from chartgen.wording.lessons.papers import printed_exercises, printed_key
from chartgen.wording.lessons.printed_class import (
    PrintedExercises,
    PrintedKey,
    PrintedQuiz,
    PrintedRoll,
    PrintedSignOff,
)
from chartgen.wording.lessons.quiz import printed_quiz, printed_quiz_key
from chartgen.wording.lessons.sign_off import printed_sign_off
from chartgen.wording.lessons.student_chart import Pair, pairs_of, shown_diameters
from chartgen.wording.printed import PrintedChart, print_pairs

STUDENT_LAYOUT: Final = "student-card-a5"
KEY_LAYOUT: Final = "answer-key-a4"
MATRIX_LAYOUT: Final = "answer-matrix-a4"
QUIZ_LAYOUT: Final = "safety-quiz-a5"
SIGN_OFF_LAYOUT: Final = "sign-off-card-a5"
SHEETS: Final = {"A4": "exercise-sheet-a4", "letter": "exercise-sheet-letter"}
"""The layout of the exercises by the paper in the printer."""


@dataclass
class ClassPapers:
    """Makes the papers of a class; what students at a lathe share is worked out once.

    All of a class is made by one of these, batch by batch. Words are said in the language
    being spoken; `shops` already have the course's units, language and materials.
    """

    course: Course
    shops: Sequence[Shop]
    materials: Sequence[Material]
    _shared: dict[tuple[int, tuple[Pair, ...]], PrintedCard[PrintedChart]] = field(
        default_factory=dict
    )
    _cautions: dict[tuple[int, bool], tuple[PrintedCaution, ...]] = field(default_factory=dict)

    def student_card(self, paper: Paper) -> PrintedCard[PrintedChart]:
        """Return the chart of a student's lathe, cut down to what his exercises are about."""
        shop = self.shops[paper.lathe]
        pairs = pairs_of(paper, shop.blades) or ((self.materials[0].key, shop.blades[0].name),)
        if (paper.lathe, pairs) not in self._shared:
            self._shared[paper.lathe, pairs] = self._chart_card(shop, pairs)
        shared = self._shared[paper.lathe, pairs]
        # Its code is that of the chart's inputs: whose card it is changes none of its numbers.
        return replace(
            shared,
            student=student_line(paper),
            file_stem=f"{STUDENT_LAYOUT}-{paper.number}",
        )

    def exercise_sheet(self, paper: Paper, layout: str) -> PrintedCard[PrintedExercises]:
        """Return a student's exercises."""
        body = printed_exercises(self.course, self.shops[paper.lathe], paper)
        assumed = (
            tr(
                "All numbers that are needed stand on this sheet, rounded as they are to be used. "
                "They are for practice: a cut at the lathe is set by its own card."
            ),
        )
        return self._paper(paper, body, layout, assumed)

    def key_page(self, paper: Paper) -> PrintedCard[PrintedKey]:
        """Return a student's page of the teacher's key; its code is that of his exercises."""
        body = printed_key(self.course, self.shops[paper.lathe], paper)
        return self._paper(paper, body, KEY_LAYOUT, _of_a_key())

    def matrix(self, papers: Sequence[Paper]) -> PrintedCard[PrintedRoll]:
        """Return the answers of some students, one a row."""
        subject = f"answers {papers[0].number} {papers[-1].number}"
        words = CardWords(layout=MATRIX_LAYOUT, subject=subject, lathe="", assumptions=_of_a_key())
        shop = self.shops[papers[0].lathe]
        return class_card(self.course, shop, printed_matrix(self.course, papers), words)

    def _chart_card(self, shop: Shop, pairs: Sequence[Pair]) -> PrintedCard[PrintedChart]:
        by_key = {material.key: material for material in self.materials}
        by_name = {blade.name: blade for blade in shop.blades}
        materials = tuple(by_key[key] for key in dict.fromkeys(key for key, _ in pairs))
        blades = tuple(by_name[name] for name in dict.fromkeys(name for _, name in pairs))
        found = windows(shop, materials=materials, diameters=shown_diameters(shop))
        chart = pair_chart(shop, found, [(by_key[key], by_name[name]) for key, name in pairs])
        words = CardWords(
            layout=STUDENT_LAYOUT,
            subject=f"chart {pairs}",
            lathe=shop.lathe.name,
            materials=materials,
            cautions=card_cautions(shop, materials),
            assumptions=assumption_lines(shop, materials=materials, blades=blades),
            force_band=force_band_line(materials, allowances_for(shop), shop.request.units),
        )
        body = print_pairs(chart, title=tr("Speed and feed"))
        return class_card(self.course, shop, body, words)

    def _paper(
        self, paper: Paper, body: Body, layout: str, assumptions: tuple[str, ...]
    ) -> PrintedCard[Body]:
        shop = self.shops[paper.lathe]
        words = CardWords(
            layout=layout,
            # One code for sheet and key, so that a teacher sees that they belong together.
            subject=f"exercises {paper.number}",
            lathe=shop.lathe.name,
            materials=tuple(self.materials),
            assumptions=assumptions,
            student=student_line(paper),
        )
        card = class_card(self.course, shop, body, words)
        return replace(card, file_stem=f"{layout}-{paper.number}")


def student_line(paper: Paper) -> str:
    """Return whom a paper is for."""
    if not paper.name:
        return tr("No. {number}", number=paper.number)
    return tr("No. {number}, {name}", number=paper.number, name=paper.name)


def student_cards(
    course: Course, shops: Sequence[Shop], papers: Sequence[Paper]
) -> list[PrintedCard[PrintedChart]]:
    """Return the card of each student."""
    made = _papers_of(course, shops)
    return [made.student_card(paper) for paper in papers]


def exercise_sheets(
    course: Course, shops: Sequence[Shop], papers: Sequence[Paper], sheet: str = "A4"
) -> list[PrintedCard[PrintedExercises]]:
    """Return the exercises of each student, on one of the papers of `SHEETS`."""
    made = _papers_of(course, shops)
    return [made.exercise_sheet(paper, SHEETS[sheet]) for paper in papers]


def key_pages(
    course: Course, shops: Sequence[Shop], papers: Sequence[Paper]
) -> list[PrintedCard[PrintedRoll] | PrintedCard[PrintedKey]]:
    """Return the teacher's key: the answers of all, then a page a student."""
    made = _papers_of(course, shops)
    return [made.matrix(papers), *(made.key_page(paper) for paper in papers)]


def quiz_cards(
    course: Course, shop: Shop
) -> list[PrintedCard[PrintedQuiz] | PrintedCard[PrintedKey]]:
    """Return the safety quiz of a lathe, and its answers for the instructor."""
    materials = _materials(course)
    cautions = card_cautions(shop, materials)
    assumed = (
        tr("The questions are about this lathe as its shop file describes it, and about parting."),
    )
    quiz = CardWords(
        layout=QUIZ_LAYOUT,
        subject="quiz",
        lathe=shop.lathe.name,
        materials=materials,
        cautions=cautions,
        assumptions=assumed,
    )
    answers = replace(
        quiz,
        layout=KEY_LAYOUT,
        cautions=on_paper(),
        student=tr("For the instructor"),
    )
    stem = file_name_part(shop.lathe.name)
    return [
        replace(
            class_card(course, shop, printed_quiz(shop, materials), quiz),
            file_stem=f"{QUIZ_LAYOUT}-{stem}",
        ),
        replace(
            class_card(course, shop, printed_quiz_key(shop, materials), answers),
            file_stem=f"{QUIZ_LAYOUT}-{stem}-answers",
        ),
    ]


def sign_off_cards(course: Course, shop: Shop) -> list[PrintedCard[PrintedSignOff]]:
    """Return the sign-off card of a lathe."""
    materials = _materials(course)
    words = CardWords(
        layout=SIGN_OFF_LAYOUT,
        subject="sign-off",
        lathe=shop.lathe.name,
        materials=materials,
        cautions=card_cautions(shop, materials),
        assumptions=(tr("The lathe is as its shop file describes it, and parting is taught."),),
    )
    card = class_card(course, shop, printed_sign_off(shop, materials, course.rules), words)
    return [replace(card, file_stem=f"{SIGN_OFF_LAYOUT}-{file_name_part(shop.lathe.name)}")]


def _papers_of(course: Course, shops: Sequence[Shop]) -> ClassPapers:
    return ClassPapers(course, shops, _materials(course))


def _materials(course: Course) -> tuple[Material, ...]:
    return tuple(load_material(key) for key in course.materials)


def _of_a_key() -> tuple[str, ...]:
    return (
        tr(
            "A number is right within what the rounding of hand work or the reading of a scale "
            "takes up; the answers come from the formulas that the cards are made by."
        ),
    )
