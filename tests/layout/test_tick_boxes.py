"""Boxes to tick: one for each point of the checklist, one for each piece of a batch."""

from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise

import pytest

from chartgen.errors import TooSmallError
from chartgen.layout.blocks.batch_boxes import batch_boxes
from chartgen.layout.blocks.checklist import checklist
from chartgen.layout.compose import compose
from chartgen.layout.layout_file import load_layout
from chartgen.layout.piece import Piece, Setting, setting_for
from chartgen.layout.placed import Document, Face, Rule, Text
from chartgen.renderers.fonts import measure
from chartgen.wording.card import PrintedCard
from chartgen.wording.printed_job import PrintedJob

JobCard = Callable[..., PrintedCard[PrintedJob]]
SET_UP, BATCH = load_layout("set-up-card-a5"), load_layout("batch-card-a5")
WIDE = setting_for(distance=400.0, width=197.0, measure=measure, height=120.0)
NARROW = setting_for(distance=400.0, width=95.5, measure=measure, height=120.0)


def texts(pieces: list[Piece]) -> list[Text]:
    return [item for piece in pieces for item in piece.items if isinstance(item, Text)]


def words_of(document: Document) -> list[list[str]]:
    return [[i.text for i in page.items if isinstance(i, Text)] for page in document.pages]


def squares(pieces: list[Piece]) -> list[float]:
    """Return the sides of the boxes to tick: four rules in a row that end where they began."""
    found = []
    for piece in pieces:
        rules = [i for i in piece.items if isinstance(i, Rule)]
        for n in range(len(rules) - 3):
            four = rules[n : n + 4]
            xs = {round(x, 6) for rule in four for x in (rule.x1, rule.x2)}
            ys = {round(y, 6) for rule in four for y in (rule.y1, rule.y2)}
            if len(xs) == len(ys) == 2 and len({(r.x1, r.y1, r.x2, r.y2) for r in four}) == 4:
                assert max(xs) - min(xs) == pytest.approx(max(ys) - min(ys))
                found.append(max(xs) - min(xs))
    return found


class TestTicks:
    def test_a_box_stands_before_each_point_of_the_checklist(self, job_card: JobCard) -> None:
        card = job_card("set-up-card-a5")
        pieces = checklist(card, SET_UP, NARROW)
        sides = squares(pieces)
        assert len(sides) == len(card.chart.checklist)
        assert min(sides) >= 4.0
        flow = " ".join(t.text for t in texts(pieces))
        assert all(point in flow for point in card.chart.checklist)

    @pytest.mark.parametrize("count", [1, 4, 5, 20, 21, 137])
    @pytest.mark.parametrize("setting", [WIDE, NARROW])
    def test_there_is_a_box_for_each_piece_and_none_more(
        self, job_card: JobCard, count: int, setting: Setting
    ) -> None:
        card = job_card("batch-card-a5", pieces=count)
        pieces = batch_boxes(card, BATCH, setting)
        sides = squares(pieces)
        assert len(sides) == count
        # A pencil needs 6 mm (common practice, no source).
        assert min(sides) >= 6.0
        numbers = [t.text for t in texts(pieces) if t.text.isdigit()]
        assert numbers == [str(number) for number in range(1, count + 1)]
        rights = [max(i.x1, i.x2) for piece in pieces for i in piece.items if isinstance(i, Rule)]
        assert max(rights) <= setting.width

    def test_groups_of_five_stand_apart(self, job_card: JobCard) -> None:
        pieces = batch_boxes(job_card("batch-card-a5"), BATCH, WIDE)
        lefts = [t.x for t in texts(pieces) if t.text.isdigit()]
        steps = [round(b - a, 6) for a, b in pairwise(lefts)]
        side = squares(pieces)[0]
        assert [n for n, step in enumerate(steps, 1) if step > side + 1.0] == [5, 10, 15]

    @pytest.mark.parametrize("count", [20, 48])
    def test_a_mark_follows_each_piece_after_which_an_edge_is_looked_at(
        self, job_card: JobCard, count: int
    ) -> None:
        card = job_card("batch-card-a5", pieces=count)
        pieces = batch_boxes(card, BATCH, WIDE)
        signs = {
            (t.tags[1].key, t.text)
            for t in texts(pieces)
            if t.face is Face.BOLD and len(t.text) == 1
        }
        assert signs == {(f"piece {after}", sign) for after, sign in card.chart.wear_marks}
        bars = [i for p in pieces for i in p.items if isinstance(i, Rule) and i.weight > 2.0]
        assert len(bars) == len(card.chart.wear_marks)
        flow = " ".join(t.text for t in texts(pieces))
        assert all(line in flow for line in card.chart.wear)

    def test_two_marks_after_one_piece_stand_side_by_side(self, job_card: JobCard) -> None:
        card = job_card("batch-card-a5", wear_marks=((5, "A"), (5, "B")))
        assert "A B" in [t.text for t in texts(batch_boxes(card, BATCH, WIDE))]

    def test_boxes_too_many_for_a_page_run_on_with_their_title(self, job_card: JobCard) -> None:
        document = compose(job_card("batch-card-a5", pieces=200), BATCH, measure)
        fronts = [
            words
            for page, words in zip(document.pages, words_of(document), strict=True)
            if page.side == 0
        ]
        assert len(fronts) > 1
        assert "Tick each finished piece (continued)" in fronts[1]
        numbers = [w for words in fronts for w in words if w.isdigit()]
        assert numbers == [str(number) for number in range(1, 201)]

    def test_a_side_too_narrow_for_a_group_is_refused(self, job_card: JobCard) -> None:
        with pytest.raises(TooSmallError, match=r"5 boxes to tick need 45 mm and the side has 40"):
            batch_boxes(job_card("batch-card-a5"), BATCH, replace(WIDE, width=40.0))
