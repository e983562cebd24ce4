"""What a class is handed, as cards: a chart a student, exercises, keys, quiz and sign-off."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from chartgen.charts.speed_feed import SpeedFeedChart, pair_chart
from chartgen.lessons.exercise import Paper
from chartgen.limits.allowances import allowances_for
from chartgen.limits.run import windows
from chartgen.model.blade import Blade
from chartgen.model.course import Course
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.wording.assumptions import assumption_lines, force_band_line
from chartgen.wording.card import Body, PrintedCard, file_name_part
from chartgen.wording.cautions import (
    PrintedCaution,
    card_cautions,
    deference,
    short_deference,
)
from chartgen.wording.language import tr
from chartgen.wording.lessons.class_code import class_check_code
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
from chartgen.wording.lessons.student_chart import printed_student_chart, shown_diameters
from chartgen.wording.printed import PrintedChart

STUDENT_LAYOUT = "student-card-a6"
KEY_LAYOUT = "answer-key-a4"
MATRIX_LAYOUT = "answer-matrix-a4"
QUIZ_LAYOUT = "safety-quiz-a5"
SIGN_OFF_LAYOUT = "sign-off-card-a6"
SHEETS = {"A4": "exercise-sheet-a4", "letter": "exercise-sheet-letter"}
"""The layout of the exercises by the paper in the printer."""
MOST_COLUMNS = 3
"""Pairs of material and blade on a student's card: what its page holds at arm's length."""

Pairs = tuple[tuple[str, str], ...]


@dataclass
class ClassPapers:
    """Makes the papers of a class; what students at a lathe share is worked out once.

    A long class is made batch by batch, all of it by one of these. Said in the language
    being spoken; `shops` already have the course's units, language and materials.
    """

    course: Course
    shops: Sequence[Shop]
    materials: Sequence[Material]
    _charts: dict[tuple[int, Pairs], SpeedFeedChart] = field(default_factory=dict)
    _cards: dict[tuple[int, Pairs], PrintedCard[PrintedChart]] = field(default_factory=dict)

    def student_card(self, paper: Paper) -> PrintedCard[PrintedChart]:
        """Return the chart of a student's lathe, cut down to what his exercises are about."""
        shop = self.shops[paper.lathe]
        pairs = _pairs_of(paper) or ((self.materials[0].key, shop.blades[0].name),)
        if (paper.lathe, pairs) not in self._cards:
            self._cards[paper.lathe, pairs] = self._chart_card(paper, pairs)
        shared = self._cards[paper.lathe, pairs]
        return self._of_student(paper, shared)

    def exercise_sheet(self, paper: Paper, layout: str) -> PrintedCard[PrintedExercises]:
        """Return a student's exercises."""
        shop = self.shops[paper.lathe]
        body = printed_exercises(self.course, shop, paper)
        return self._paper(paper, body, layout, _force_assumption())

    def key_page(self, paper: Paper) -> PrintedCard[PrintedKey]:
        """Return a student's page of the teacher's key."""
        shop = self.shops[paper.lathe]
        return self._paper(paper, printed_key(self.course, shop, paper), KEY_LAYOUT, _key_assumes())

    def matrix(self, papers: Sequence[Paper]) -> PrintedCard[PrintedRoll]:
        """Return the answers of some students, one a row."""
        first, last = papers[0].number, papers[-1].number
        return _card(
            self.course,
            self.shops[papers[0].lathe],
            printed_matrix(self.course, papers),
            layout=MATRIX_LAYOUT,
            subject=f"matrix {first} {last}",
            lathe=self.course.name,
            assumptions=_key_assumes(),
        )

    def _chart_card(self, paper: Paper, pairs: Pairs) -> PrintedCard[PrintedChart]:
        shop = self.shops[paper.lathe]
        by_key = {material.key: material for material in self.materials}
        materials = tuple(by_key[key] for key in dict.fromkeys(key for key, _ in pairs))
        blades = tuple(b for b in shop.blades if b.name in {name for _, name in pairs})
        named = {blade.name: blade for blade in blades}
        found = windows(shop, materials=materials, diameters=shown_diameters(shop))
        chart = pair_chart(shop, found, [(by_key[key], named[name]) for key, name in pairs])
        return _card(
            self.course,
            shop,
            printed_student_chart(chart),
            layout=STUDENT_LAYOUT,
            subject="chart",
            materials=materials,
            cautions=card_cautions(shop, materials),
            assumptions=assumption_lines(shop, materials=materials, blades=blades),
            force_band=force_band_line(materials, allowances_for(shop), shop.request.units),
        )

    def _of_student(self, paper: Paper, shared: PrintedCard[Body]) -> PrintedCard[Body]:
        """Return a shared card as a student's own."""
        from dataclasses import replace

        return replace(
            shared,
            student=student_line(self.course, paper),
            file_stem=f"{shared.file_stem}-{paper.number}",
        )

    def _paper(
        self, paper: Paper, body: Body, layout: str, assumptions: tuple[str, ...]
    ) -> PrintedCard[Body]:
        return _card(
            self.course,
            self.shops[paper.lathe],
            body,
            layout=layout,
            subject=f"{paper.number} {paper.name}",
            materials=tuple(dict.fromkeys(e.material for e in paper.exercises)),
            assumptions=assumptions,
            student=student_line(self.course, paper),
            stem=f"{layout}-{paper.number}",
        )
