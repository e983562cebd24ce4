"""The blocks of a job's cards: tables that run on, steps in words, room to write."""

import re
from collections import Counter
from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise

import pytest

from chartgen.errors import TooSmallError
from chartgen.layout.blocks import BLOCKS
from chartgen.layout.blocks.dig_in import dig_in
from chartgen.layout.blocks.first_piece import first_piece
from chartgen.layout.blocks.job_facts import job_facts
from chartgen.layout.blocks.legend import legend
from chartgen.layout.blocks.notes_and_sign_off import notes_and_sign_off
from chartgen.layout.blocks.step_lines import step_lines
from chartgen.layout.blocks.step_table import step_table
from chartgen.layout.compose import compose
from chartgen.layout.layout_file import load_layout
from chartgen.layout.piece import Piece, setting_for
from chartgen.layout.placed import Align, Document, Face, Rule, Text
from chartgen.layout.roles import Role
from chartgen.renderers.fonts import measure
from chartgen.wording.card import AnyCard, PrintedCard
from chartgen.wording.printed_job import PrintedJob

JobCard = Callable[..., PrintedCard[PrintedJob]]
SET_UP, BATCH = load_layout("set-up-card-a5"), load_layout("batch-card-a5")
WIDE = setting_for(distance=400.0, width=197.0, measure=measure, height=120.0)
NARROW = setting_for(distance=400.0, width=95.5, measure=measure, height=120.0)
OF_A_JOB = (
    "sketch",
    "step-table",
    "step-lines",
    "checklist",
    "dig-in",
    "job-facts",
    "notes-and-sign-off",
    "batch-boxes",
    "first-piece",
)


def texts(pieces: list[Piece]) -> list[Text]:
    return [item for piece in pieces for item in piece.items if isinstance(item, Text)]


def words_of(document: Document) -> list[list[str]]:
    return [[i.text for i in page.items if isinstance(i, Text)] for page in document.pages]


@pytest.mark.parametrize("block", OF_A_JOB)
def test_a_block_of_a_job_refuses_another_card(
    card_of: Callable[[str], AnyCard], block: str
) -> None:
    with pytest.raises(TypeError, match=f"^a {block} block needs the card of a job$"):
        BLOCKS[block](card_of("lathe-chart"), SET_UP, WIDE)


class TestStepTable:
    def test_a_step_is_a_piece_its_cells_on_one_line_its_words_wrapped(
        self, job_card: JobCard
    ) -> None:
        card = job_card("set-up-card-a5")
        pieces = step_table(card, SET_UP, replace(WIDE, width=185.0))
        steps = card.chart.steps
        assert len(pieces) == 1 + len(steps)
        assert pieces[0].keep_with_next
        wrapped = 0
        for step, piece in zip(steps, pieces[1:], strict=True):
            said = texts([piece])
            what = [t.text for t in said if t.tags[-1].key == "1"]
            assert " ".join(what) == step.what
            assert [t.text for t in said if t.tags[-1].key not in {"", "1"}] == list(step.cells)
            assert {t.size for t in said} == {WIDE.numbers}
            wrapped += len(what) > 1
        assert wrapped == 1
        heights = Counter(round(piece.height, 6) for piece in pieces[1:])
        assert len(heights) == 2

    def test_no_cell_reaches_into_the_next_column(self, job_card: JobCard) -> None:
        card = job_card("set-up-card-a5")
        for piece in step_table(card, SET_UP, replace(WIDE, width=185.0)):
            lines: dict[float, list[tuple[float, float]]] = {}
            for t in texts([piece]):
                width = measure(t.text, t.face, t.size)
                left = t.x - (width if t.align is Align.RIGHT else 0.0)
                lines.setdefault(round(t.y, 3), []).append((left, left + width))
            for line in lines.values():
                for (_, end), (start, _) in pairwise(sorted(line)):
                    assert start >= end
                assert max(end for _, end in line) <= 185.0 + 1e-6

    def test_numbers_of_a_column_end_on_one_edge(self, job_card: JobCard) -> None:
        card = job_card("set-up-card-a5")
        for column in card.chart.right:
            ends = {
                round(t.x, 6)
                for t in texts(step_table(card, SET_UP, WIDE)[1:])
                if t.tags[-1].key == str(column)
            }
            assert len(ends) == 1

    def test_columns_too_wide_are_refused_with_the_number_that_fits(
        self, job_card: JobCard
    ) -> None:
        card = job_card("set-up-card-a5")
        with pytest.raises(TooSmallError) as caught:
            step_table(card, SET_UP, replace(WIDE, width=110.0))
        found = re.fullmatch(
            r"layout set-up-card-a5: the 8 columns of the steps of 'Bored ring' need \d+ mm and "
            r"the side has 110 mm, which is room for (\d); drop the others, or use a larger layout",
            str(caught.value),
        )
        assert found
        fitting = int(found[1])
        for count, fits in ((fitting, True), (fitting + 1, False)):
            steps = tuple(replace(s, cells=s.cells[: count - 2]) for s in card.chart.steps)
            fewer = job_card("set-up-card-a5", steps=steps, headings=card.chart.headings[:count])
            if fits:
                assert step_table(fewer, SET_UP, replace(WIDE, width=110.0))
            else:
                with pytest.raises(TooSmallError):
                    step_table(fewer, SET_UP, replace(WIDE, width=110.0))

    def test_steps_too_many_for_a_page_run_on_under_their_headings(self, job_card: JobCard) -> None:
        one = job_card("set-up-card-a5").chart
        many = tuple(
            replace(step, number=str(number), what=f"{step.what} {number}")
            for number, step in enumerate((one.steps * 4)[:40], 1)
        )
        document = compose(job_card("set-up-card-a5", steps=many), SET_UP, measure)
        fronts = [page for page in document.pages if page.side == 0]
        assert len(fronts) > 1
        for page in fronts:
            said = [i.text for i in page.items if isinstance(i, Text)]
            assert all(line in said for text in one.headings for line in text.split("\n") if line)
        numbers = [
            i.text
            for page in fronts
            for i in page.items
            if isinstance(i, Text) and i.tags and i.tags[-1].scope == "Row"
        ]
        assert numbers == [str(number) for number in range(1, 41)]

    def test_a_long_table_leaves_the_sketch_its_share_of_the_page(self, job_card: JobCard) -> None:
        one = job_card("set-up-card-a5").chart
        few = compose(job_card("set-up-card-a5", steps=one.steps[:3]), SET_UP, measure)
        many = compose(job_card("set-up-card-a5", steps=one.steps * 4), SET_UP, measure)
        (short,), (long,) = (
            [w for w in words_of(doc)[0] if w.startswith("Scale ")] for doc in (few, many)
        )
        assert (short, long) == ("Scale 2:1", "Scale 1:1")


class TestStepLines:
    def test_each_step_says_what_how_and_what_to_watch(self, job_card: JobCard) -> None:
        card = job_card("set-up-card-a5")
        said = texts(step_lines(card, SET_UP, NARROW))
        flow = " ".join(t.text for t in said)
        for step in card.chart.steps:
            for text in (f"{step.number} {step.what}", *step.lines):
                assert text in flow
            assert not step.watch or f"Watch: {step.watch}" in flow
        assert flow.count("Watch:") == sum(bool(step.watch) for step in card.chart.steps)
        heads = [t for t in said if t.tags[0].role is Role.SECTION]
        assert {t.face for t in heads} == {Face.BOLD}

    def test_a_step_that_breaks_says_so_where_it_goes_on(self, job_card: JobCard) -> None:
        card = job_card("set-up-card-a5")
        pages = words_of(compose(card, SET_UP, measure))
        assert any(text.endswith("(continued)") for text in pages[1])


class TestFirstPiece:
    def test_each_dimension_has_what_is_wanted_and_two_fields_to_write_in(
        self, job_card: JobCard
    ) -> None:
        card = job_card("batch-card-a5")
        pieces = first_piece(card, BATCH, WIDE)
        rows = pieces[2:]
        assert len(rows) == len(card.chart.measures)
        for (name, wanted), row in zip(card.chart.measures, rows, strict=True):
            assert [t.text for t in texts([row])] == [name, wanted]
            fields = [i for i in row.items if isinstance(i, Rule)]
            assert [rule.tags[-1].key for rule in fields] == ["measured", "by"]
            assert all(rule.x2 - rule.x1 >= 28.0 for rule in fields)
            assert row.height >= 8.0
            assert fields[-1].x2 == pytest.approx(WIDE.width)

    def test_nothing_to_measure_is_a_fault(self, job_card: JobCard) -> None:
        card = job_card("batch-card-a5", measures=())
        with pytest.raises(ValueError, match="'Bored ring' names no dimension to measure"):
            first_piece(card, BATCH, WIDE)

    def test_no_room_to_write_is_refused(self, job_card: JobCard) -> None:
        with pytest.raises(TooSmallError, match=r"mm are left to write what the first piece"):
            first_piece(job_card("batch-card-a5"), BATCH, NARROW)


class TestTheRest:
    def test_what_to_do_in_a_hurry_is_numbered_and_never_broken(self, job_card: JobCard) -> None:
        card = job_card("set-up-card-a5")
        pieces = dig_in(card, SET_UP, NARROW)
        assert len(pieces) == 1
        said = [t.text for t in texts(pieces)]
        assert said[0] == "If it digs in"
        assert [t for t in said if t.isdigit()] == ["1", "2", "3", "4"]
        flow = " ".join(said)
        assert all(text in flow for text in card.chart.dig_in)

    def test_each_fact_stands_behind_its_name(self, job_card: JobCard) -> None:
        card = job_card("set-up-card-a5")
        for setting in (WIDE, NARROW, replace(NARROW, width=50.0)):
            pieces = job_facts(card, SET_UP, setting)
            assert len(pieces) == len(card.chart.facts)
            for (name, text), piece in zip(card.chart.facts, pieces, strict=True):
                first, *rest = texts([piece])
                assert (first.text, first.face) == (name, Face.BOLD)
                assert " ".join(t.text for t in rest) == text
                start = measure(name, Face.BOLD, first.size)
                assert all(t.x >= start or t.y > first.y for t in rest)

    def test_there_is_room_for_notes_and_a_line_to_sign(self, job_card: JobCard) -> None:
        pieces = notes_and_sign_off(job_card("set-up-card-a5"), SET_UP, NARROW)
        said = [t.text for t in texts(pieces)]
        assert said == ["Notes", "Name", "Date", "Checked by"]
        rules = [i for piece in pieces for i in piece.items if isinstance(i, Rule)]
        levels = sorted({round(rule.y1, 6) for rule in rules})
        assert all(b - a >= 8.0 - 1e-6 for a, b in pairwise(levels))
        signing = [rule for rule in rules if rule.y1 == pytest.approx(levels[-1])]
        assert len(signing) == 3
        assert min(rule.x2 - rule.x1 for rule in signing) >= 12.0

    @pytest.mark.parametrize(("height", "lines"), [(120.0, 6), (55.0, 4), (40.0, 3), (-20.0, 3)])
    def test_notes_take_the_lines_the_column_has_room_for(
        self, job_card: JobCard, height: float, lines: int
    ) -> None:
        setting = replace(NARROW, height=height)
        pieces = notes_and_sign_off(job_card("set-up-card-a5"), SET_UP, setting)
        rules = [i for piece in pieces for i in piece.items if isinstance(i, Rule)]
        assert len({round(rule.y1, 6) for rule in rules}) == lines + 1
        if height >= 45.0:
            assert sum(piece.height for piece in pieces) <= height

    def test_the_legend_of_a_job_has_no_lead_about_what_is_met_first(
        self, job_card: JobCard
    ) -> None:
        (piece,) = legend(job_card("set-up-card-a5"), SET_UP, WIDE)
        assert [t.text for t in texts([piece])] == ["!", "tight"]
