"""A class -> its files, part by part: few students at a time, so that memory stays flat.

A part is what is made at one go: the cards of a batch of students, their sheets, their key,
what marking needs, or the cards of one lathe. Any part can be made by itself, in any order and
in any process, and is the same to the byte.
"""

import gc
import unicodedata
from collections.abc import Iterator, Sequence
from contextlib import AbstractContextManager
from dataclasses import dataclass, replace
from enum import Enum
from typing import TYPE_CHECKING, Final

from chartgen import pipeline
from chartgen.description.key_file import key_text
from chartgen.errors import DoesNotFitError, RequestError
from chartgen.layout.compose import compose
from chartgen.layout.layout_file import load_layout
from chartgen.layout.placed import Page
from chartgen.layout.sheets.leaves import leaves
from chartgen.model.course import Course, Student
from chartgen.model.shop import Shop
from chartgen.reference.tables import load_material
from chartgen.renderers.answer_table import answers_text
from chartgen.renderers.fonts import measure
from chartgen.renderers.pdf import render_pages
from chartgen.sheet_run import on_sheets, sheet_plan
from chartgen.wording.card import AnyCard, file_name_part
from chartgen.wording.check_code import bytes_code, run_code
from chartgen.wording.language import TAGS, speaking, tr
from chartgen.wording.sheet import Flip

if TYPE_CHECKING:
    from chartgen.lessons.exercise import Paper

ANSWERS_NAME: Final = "answers.csv"
"""The one file that people write into."""
BATCH: Final = 40
"""Students in one set of files: a class, and what a printer's tray holds."""
_LONGEST_NAME: Final = 40
_BY_LATHE: Final = ("power-nomogram-a5", "spindle-curves-a5")
"""Cards that exercises ask to be read, one of each lathe beside the sheets."""


class Handout(Enum):
    """A kind of part; the value is the name of its file."""

    CARDS = "cards"
    EXERCISES = "exercises"
    KEY = "key"
    MARKING = "marking"
    LATHE = "lathe"


@dataclass(frozen=True, slots=True)
class Part:
    """What is made at one go, and the folder it goes to, empty for the folder of the class.

    `first` and `end` count students of the class from 0; of a lathe, `first` is its place.
    """

    kind: Handout
    folder: str
    first: int
    end: int

    @property
    def name(self) -> str:
        """What the record of a folder calls it."""
        return f"{self.folder}/{self.kind.value}" if self.folder else self.kind.value


@dataclass(frozen=True, slots=True, kw_only=True)
class ClassRun:
    """A class with its lathes as it is to be printed: on which paper, each student apart or not.

    `shops` speak the class's language and units; `shop_codes` tell the files they came from.
    """

    course: Course
    shops: tuple[Shop, ...]
    shop_codes: tuple[str, ...]
    paper: str = "A4"
    each: bool = False

    @property
    def check(self) -> str:
        """The code of everything that the files depend on."""
        return run_code(self.course, self.shop_codes, self.paper, each=self.each)

    def parts(self) -> list[Part]:
        """Return every part, those of the lathes first."""
        lathes = [
            Part(
                Handout.LATHE,
                "-".join(filter(None, ("lathe", str(place + 1), _safe(shop.lathe.name)))),
                place,
                place + 1,
            )
            for place, shop in enumerate(self.shops)
        ]
        kinds = (Handout.CARDS, Handout.EXERCISES, Handout.KEY, Handout.MARKING)
        count = len(self.course.students)
        batches = []
        for first in range(0, count, BATCH):
            end = min(first + BATCH, count)
            folder = self._folder(first, end) if count > BATCH else ""
            batches += [Part(kind, folder, first, end) for kind in kinds]
        return lathes + batches

    def _folder(self, first: int, end: int) -> str:
        students = self.course.students
        return f"students-{self.digits(students[first])}-{self.digits(students[end - 1])}"

    def digits(self, student: Student) -> str:
        """Return a student's number, as wide as the widest, so that files sort by it."""
        return f"{student.number:0{max(2, len(str(self.course.students[-1].number)))}}"


class ClassFiles:
    """Makes the files of a class's parts; what its students share is worked out once."""

    def __init__(self, run: ClassRun) -> None:
        from chartgen.wording.lessons.cards import ClassPapers

        self._run = run
        self._course = run.course
        self._materials = [load_material(key) for key in run.course.materials]
        self._words = ClassPapers(run.course, run.shops, self._materials)
        self._batch = (0, 0)
        self._kept: list[Paper] = []

    def files_of(self, part: Part) -> Iterator[tuple[str, bytes]]:
        """Yield name and content of each file of a part.

        Raises
        ------
        ChartgenError
            If a card does not fit its layout or the sheet, or cannot be made of these lathes.
        """
        for name, content in self._made(part):
            yield f"{part.folder}/{name}" if part.folder else name, content
        if len(self._course.students) > BATCH:
            # What a finished file leaves refers to itself, and would pile up over many batches.
            gc.collect()

    def _made(self, part: Part) -> Iterator[tuple[str, bytes]]:
        if part.kind is Handout.LATHE:
            yield from self._of_lathe(self._run.shops[part.first])
            return
        papers = self._papers(part)
        if part.kind is Handout.MARKING:
            yield ANSWERS_NAME, answers_text(self._course.language, papers)
            yield "key.json", self._key(papers)
        elif self._run.each:
            if part.kind is Handout.KEY and len(papers) > 1:
                with self._speaking():
                    matrix = self._words.matrix(papers)
                yield "key.pdf", self._in_one([matrix])
            for paper in papers:
                student = Student(number=paper.number, name=paper.name)
                stem = "-".join(filter(None, (self._run.digits(student), _safe(paper.name))))
                yield f"{stem}-{part.kind.value}.pdf", self._one_file(part.kind, [paper])
        elif part.kind is Handout.CARDS:
            yield from self._on_sheets(papers)
        else:
            yield f"{part.kind.value}.pdf", self._one_file(part.kind, papers)

    def _papers(self, part: Part) -> "list[Paper]":
        """Return the papers of a batch; the last one's are kept, since its parts are made in turn.

        Raises
        ------
        RequestError
            If a lathe cannot give as many exercises.
        """
        from chartgen.lessons.assign import NoExercisesError, papers_for

        if self._batch != (part.first, part.end):
            students = self._course.students[part.first : part.end]
            shops, materials = self._run.shops, self._materials
            try:
                self._kept = list(papers_for(self._course, shops, materials, students))
            except NoExercisesError as error:
                raise RequestError(f"{error}.") from None
            self._batch = part.first, part.end
        return self._kept

    def _key(self, papers: "Sequence[Paper]") -> bytes:
        from chartgen.lessons.key_data import key_data

        content = {
            "check": self._run.check,
            "lathes": dict(zip(self._course.lathes, self._run.shop_codes, strict=True)),
            "class": key_data(self._course, papers),
        }
        return key_text(content)

    def _cards(self, kind: Handout, papers: "Sequence[Paper]") -> "Iterator[AnyCard]":
        """Yield the cards of a kind; the matrix of a batch stands before the keys of each."""
        from chartgen.wording.lessons.cards import SHEETS

        words = self._words
        if kind is Handout.KEY and len(papers) > 1:
            yield words.matrix(papers)
        for paper in papers:
            if kind is Handout.CARDS:
                yield words.student_card(paper)
            elif kind is Handout.EXERCISES:
                yield words.exercise_sheet(paper, SHEETS[self._run.paper])
            else:
                yield words.key_page(paper)

    def _of_lathe(self, shop: Shop) -> Iterator[tuple[str, bytes]]:
        """Yield the quiz, the sign-off cards and the cards to read values off."""
        from chartgen.wording.lessons.cards import quiz_cards, sign_off_cards

        with self._speaking():
            quiz = quiz_cards(self._course, shop)
            sign_off = sign_off_cards(self._course, shop)
        # The answers are for the instructor, and must not lie behind the questions.
        for name, card in zip(("safety-quiz", "safety-quiz-answers"), quiz, strict=True):
            yield f"{name}.pdf", self._in_one([card])
        yield "sign-off.pdf", self._in_one(sign_off)
        shown = replace(shop, request=replace(shop.request, layouts=_BY_LATHE))
        for finished in pipeline.lay_out(pipeline.printed_cards(shown)):
            yield finished.file_name, pipeline.render(finished)

    def _on_sheets(self, papers: "Sequence[Paper]") -> Iterator[tuple[str, bytes]]:
        """Yield the sheets to print and cut, of one size of card as a rule."""
        with self._speaking():
            cards = list(self._cards(Handout.CARDS, papers))
        files = list(on_sheets(cards, sheet_plan(paper=self._run.paper)))
        for name, content in files:
            yield name if len(files) > 1 else f"{Handout.CARDS.value}.pdf", content

    def _one_file(self, kind: Handout, papers: "Sequence[Paper]") -> bytes:
        with self._speaking():
            cards = list(self._cards(kind, papers))
        return self._in_one(cards)

    def _in_one(self, cards: "Sequence[AnyCard]") -> bytes:
        """Return cards one after the other, each beginning on a front."""
        course = self._course
        with self._speaking():
            title = f"{tr(load_layout(cards[-1].layout).title)}: {course.name}"
        language = TAGS[course.language.value]
        return render_pages(title, course.name, _pages(cards), Flip.LONG, language)

    def _speaking(self) -> AbstractContextManager[None]:
        return speaking(self._course.language.value)


def for_class(shop: Shop, course: Course) -> Shop:
    """Return a shop as a class uses it: its language, its units, its materials."""
    request = replace(
        shop.request,
        materials=course.materials,
        units=course.units,
        language=course.language,
    )
    return replace(shop, request=request)


def shop_code(content: bytes, shop: Shop) -> str:
    """Return the code of a shop file's bytes and of the owner's layouts it asks for."""
    return bytes_code(content, *(text.encode() for _, text in shop.request.own_layouts))


def _pages(cards: Sequence[AnyCard]) -> Iterator[Page]:
    """Yield front and back of every leaf, laid out one card at a time; every reason not to."""
    reasons = dict[str, None]()
    for card in cards:
        try:
            document = compose(card, load_layout(card.layout), measure)
        except DoesNotFitError as error:
            reasons[str(error)] = None
            continue
        is_alone = len(document.pages) == 1 and len(cards) == 1
        for leaf in leaves(card.file_stem, document) if not reasons else ():
            yield leaf.front
            if not is_alone:
                yield leaf.back
    if reasons:
        raise DoesNotFitError("\n".join(reasons))


def _safe(name: str) -> str:
    """Return a name as part of a file's: small letters of ASCII, digits, hyphens; or nothing."""
    plain = unicodedata.normalize("NFKD", name.replace("ß", "ss"))
    known = "".join(c for c in plain if c.isascii())
    has_any = any(c.isalnum() for c in known)
    return file_name_part(known)[:_LONGEST_NAME].strip("-") if has_any else ""
