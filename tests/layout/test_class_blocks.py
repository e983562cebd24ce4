"""The paper of a class: room to write, bars to scale, rolls that run on, nothing left out."""

import re
from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise

import pytest

from chartgen import pipeline
from chartgen.description.example import example_text
from chartgen.errors import DescriptionError, TooSmallError
from chartgen.layout.blocks import BLOCKS
from chartgen.layout.blocks.mistakes import mistakes
from chartgen.layout.blocks.paper_body import WRITING
from chartgen.layout.blocks.questions import ANSWER, questions
from chartgen.layout.blocks.sign_off import LEAST_FIELD, sign_off
from chartgen.layout.blocks.solutions import solutions
from chartgen.layout.blocks.student import student
from chartgen.layout.compose import compose
from chartgen.layout.layout_file import (
    class_layout_names,
    layout_text,
    load_layout,
    parse_layout,
)
from chartgen.layout.own_layouts import with_own_layouts
from chartgen.layout.piece import Piece, setting_for
from chartgen.layout.placed import Panel, Rule, Text
from chartgen.layout.roles import Role
from chartgen.model.shop import Shop
from chartgen.renderers.fonts import measure
from chartgen.wording.card import AnyCard, PrintedCard
from chartgen.wording.lessons.printed_class import PrintedBar, PrintedQuestion

ClassCard = Callable[[str], PrintedCard]
SHEET, MARKS = load_layout("exercise-sheet-a4"), load_layout("class-marks-a4")
WIDE = setting_for(distance=500.0, width=186.0, measure=measure, height=250.0)
NARROW = setting_for(distance=500.0, width=60.0, measure=measure, height=250.0)
LINE = 0.5
each_layout = pytest.mark.parametrize("name", class_layout_names())


def level_rules(piece: Piece, weight: float) -> list[Rule]:
    return [
        item
        for item in piece.items
        if isinstance(item, Rule) and item.y1 == item.y2 and item.weight == weight
    ]


@pytest.mark.parametrize(
    "block", ["exercise-data", "solutions", "roll", "mistakes", "sign-off", "school-rules"]
)
def test_a_block_of_a_paper_refuses_another_card(
    card_of: Callable[[str], AnyCard], block: str
) -> None:
    with pytest.raises(TypeError, match=f"^a {block} block needs another kind of card$"):
        BLOCKS[block](card_of("lathe-chart"), SHEET, WIDE)


def test_what_asks_nothing_has_no_questions(card_of: Callable[[str], AnyCard]) -> None:
    with pytest.raises(TypeError, match="needs a card that asks questions"):
        questions(card_of("lathe-chart"), SHEET, WIDE)


class TestQuestions:
    def test_each_line_is_high_enough_for_handwriting(self, class_card: ClassCard) -> None:
        card = class_card("exercise-sheet-a4")
        lines = 0
        for question, piece in zip(card.chart.questions, questions(card, SHEET, WIDE), strict=True):
            words = [item.y for item in piece.items if isinstance(item, Text)]
            heights = sorted(rule.y1 for rule in level_rules(piece, LINE))
            assert len(heights) == question.working + (not question.options)
            for above, below in pairwise(heights):
                assert below - above >= WRITING - 1e-9 >= 8.0 - 1e-9
            if heights:
                assert heights[0] - min(words) >= WRITING
            lines += len(heights)
        assert lines > 10

    def test_a_result_has_room_and_its_unit_stands_behind_it(self, class_card: ClassCard) -> None:
        card = class_card("exercise-sheet-a4")
        for question, piece in zip(card.chart.questions, questions(card, SHEET, WIDE), strict=True):
            if question.options:
                continue
            line = max(level_rules(piece, LINE), key=lambda rule: rule.y1)
            assert line.x2 - line.x1 >= ANSWER
            unit = next(
                item
                for item in piece.items
                if isinstance(item, Text) and item.text == question.unit
            )
            assert unit.x > line.x2

    def test_each_option_has_a_box_to_tick(self, class_card: ClassCard) -> None:
        for name in ("safety-quiz-a5", "exercise-sheet-a4"):
            card = class_card(name)
            for one, piece in zip(card.chart.questions, questions(card, SHEET, WIDE), strict=True):
                sides = [i for i in piece.items if isinstance(i, Rule) and i.weight == 0.9]
                assert len(sides) == 4 * len(one.options)
                assert all(abs(s.x2 - s.x1) + abs(s.y2 - s.y1) >= 4.5 - 1e-9 for s in sides)

    def test_an_answer_without_room_is_refused(self, class_card: ClassCard) -> None:
        card = class_card("exercise-sheet-a4")
        one = PrintedQuestion(number="1", text="How fast?", unit="rev/min", options=())
        asking = replace(card, chart=replace(card.chart, questions=(one,)))
        with pytest.raises(TooSmallError, match=r"\d+ mm are left to write an answer"):
            questions(asking, SHEET, NARROW)


def bars_of(card: PrintedCard) -> list[Panel]:
    _, plot = mistakes(card, MARKS, WIDE)
    return [item for item in plot.items if isinstance(item, Panel)]


class TestMistakes:
    def test_bars_are_as_long_as_mistakes_were_made_often(self, class_card: ClassCard) -> None:
        card = class_card("class-marks-a4")
        drawn = bars_of(card)
        counts = [bar.count for bar in card.chart.bars]
        assert len(drawn) == len(counts) >= 4
        scale = drawn[0].width / counts[0]
        for bar, count in zip(drawn, counts, strict=True):
            assert bar.width == pytest.approx(count * scale, abs=1e-9)
            assert not bar.paper
        assert len({bar.x for bar in drawn}) == 1

    def test_each_number_stands_at_the_end_of_its_bar(self, class_card: ClassCard) -> None:
        card = class_card("class-marks-a4")
        _, plot = mistakes(card, MARKS, WIDE)
        texts = [item for item in plot.items if isinstance(item, Text)]
        for bar, drawn in zip(card.chart.bars, bars_of(card), strict=True):
            at_end = [t for t in texts if drawn.y < t.y <= drawn.y + drawn.height]
            number = next(t for t in at_end if t.text == str(bar.count))
            assert 0.0 < number.x - drawn.x - drawn.width < 3.0

    def test_the_plot_is_one_figure_with_words_in_its_place(self, class_card: ClassCard) -> None:
        card = class_card("class-marks-a4")
        _, plot = mistakes(card, MARKS, WIDE)
        assert {item.tags[0].role for item in plot.items} == {Role.FIGURE}
        said = plot.items[0].tags[0].alternative
        for bar in card.chart.bars:
            times = "once" if bar.count == 1 else f"{bar.count} times"
            assert f"{bar.label}: {times}" in said

    def test_a_class_without_mistakes_is_told_so(self, class_card: ClassCard) -> None:
        card = class_card("class-marks-a4")
        spotless = replace(
            card, chart=replace(card.chart, bars=(), description="No wrong answers.")
        )
        assert [i.text for p in mistakes(spotless, MARKS, WIDE) for i in p.items] == [
            "Mistakes made, by how often",
            "No wrong answers.",
        ]

    def test_a_side_too_narrow_for_bars_is_refused(self, class_card: ClassCard) -> None:
        with pytest.raises(TooSmallError, match="are left for the bars of mistakes"):
            mistakes(class_card("class-marks-a4"), MARKS, NARROW)

    def test_a_long_name_is_wrapped_and_its_bar_beside_its_middle(
        self, class_card: ClassCard
    ) -> None:
        card = class_card("class-marks-a4")
        bars = (PrintedBar(label="a mistake " * 15, count=3), PrintedBar(label="short", count=1))
        long = replace(card, chart=replace(card.chart, bars=bars))
        first, second = bars_of(long)
        assert second.y - first.y > 2.0 * WIDE.line


def test_a_roll_runs_on_under_its_headings(class_card: ClassCard) -> None:
    card = class_card("answer-matrix-a4")
    rows = tuple((str(n), f"Student {n}", *card.chart.rows[0][2:]) for n in range(1, 121))
    long = replace(card, chart=replace(card.chart, rows=rows))
    pages = compose(long, load_layout("answer-matrix-a4"), measure).pages
    assert len(pages) > 2
    seen = []
    for page in pages:
        texts = [item.text for item in page.items if isinstance(item, Text)]
        names = [text for text in texts if re.fullmatch(r"Student \d+", text)]
        seen += names
        if names:
            assert "Name" in texts
    assert seen == [f"Student {n}" for n in range(1, 121)]


def test_a_solution_is_one_piece_with_each_wrong_answer_and_why(class_card: ClassCard) -> None:
    card = class_card("answer-key-a4")
    pieces = solutions(card, load_layout("answer-key-a4"), WIDE)
    for solution, piece in zip(card.chart.solutions, pieces, strict=True):
        texts = [item.text for item in piece.items if isinstance(item, Text)]
        said = " ".join(" ".join(texts).split())
        for part in (solution.number, *solution.lines, *sum(solution.wrong, ())):
            assert " ".join(part.split()) in said
        assert texts.count("✗") == len(solution.wrong)


def test_lines_to_sign_are_long_enough_and_stay_with_the_points(class_card: ClassCard) -> None:
    card = class_card("sign-off-card-a5")
    *_, fields = sign_off(card, load_layout("sign-off-card-a5"), WIDE)
    lines = level_rules(fields, LINE)
    assert len(lines) == 4
    assert all(line.x2 - line.x1 >= LEAST_FIELD for line in lines)
    heights = sorted({line.y1 for line in lines})
    assert heights[1] - heights[0] >= 8.0
    longer = replace(card.chart, fields=(("Student of the evening class", "Date"),))
    with pytest.raises(TooSmallError, match="are left to write at 'Student of the evening class'"):
        sign_off(replace(card, chart=longer), SHEET, replace(WIDE, width=80.0))


def test_a_card_of_nobody_has_lines_for_name_and_number(class_card: ClassCard) -> None:
    quiz = class_card("safety-quiz-a5")
    assert not quiz.student
    (piece,) = student(quiz, load_layout("safety-quiz-a5"), WIDE)
    assert [i.text for i in piece.items if isinstance(i, Text)] == ["Name", "No."]
    assert len(level_rules(piece, LINE)) == 2
    (named,) = student(class_card("student-card-a5"), SHEET, WIDE)
    assert next(i.text for i in named.items if isinstance(i, Text)).startswith("No. 3, Björn")


@each_layout
@pytest.mark.parametrize("block", ["cautions", "assumptions", "check-rule", "deference"])
def test_no_layout_of_a_class_may_leave_out_what_keeps_people_whole(name: str, block: str) -> None:
    text = layout_text(name)
    assert f'"{block}", ' in text
    with pytest.raises(DescriptionError) as caught:
        parse_layout(text.replace(f'"{block}", ', ""), file="mine.toml", name="mine")
    assert f"no side has the block '{block}'. Every such card needs it" in str(caught.value)


@each_layout
def test_a_shop_is_told_which_command_makes_a_paper_of_a_class(example: Shop, name: str) -> None:
    asking = replace(example, request=replace(example.request, layouts=("mine.toml",)))
    with pytest.raises(DescriptionError) as caught:
        with_own_layouts(asking, {"mine.toml": ("mine.toml", layout_text(name).encode())})
    command = "mark" if name.startswith("class-marks") else "class"
    assert f"which only `{command}` makes." in str(caught.value)
    text = example_text().decode().replace('"centre-card-a6"]', f'"{name}"]')
    with pytest.raises(DescriptionError) as caught:
        pipeline.describe(text.encode(), "my.toml")
    assert f"{name!r} is a paper of a class, and a shop file describes none." in str(caught.value)
