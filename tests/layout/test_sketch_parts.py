"""The parts of a set-up drawn: each in its own kind of line, all of them one figure."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen.layout.blocks.sketch import sketch
from chartgen.layout.layout_file import load_layout
from chartgen.layout.piece import setting_for
from chartgen.layout.placed import Item, Panel, Rule, Text
from chartgen.layout.roles import Role
from chartgen.renderers.fonts import measure
from chartgen.wording.card import AnyCard
from chartgen.wording.printed_job import PrintedJob, PrintedSketch, SketchBox, SketchDimension

JobCard = Callable[..., AnyCard]
Bounds = Callable[[Item], tuple[float, float, float, float]]
LAYOUT = load_layout("batch-card-a5")
SETTING = setting_for(distance=400.0, width=197.0, measure=measure, height=66.0)


def placed(card: AnyCard, height: float = 66.0) -> tuple[list[Item], float]:
    (piece,) = sketch(card, LAYOUT, replace(SETTING, height=height))
    return list(piece.items), piece.height


def scale_of(items: list[Item]) -> float:
    (text,) = (i.text for i in items if isinstance(i, Text) and i.text.startswith("Scale "))
    paper, _, real = text.removeprefix("Scale ").partition(":")
    return float(paper) / float(real)


def lines(items: list[Item], *, upright: bool, dashed: bool = False) -> list[Rule]:
    return [
        i
        for i in items
        if isinstance(i, Rule)
        and bool(i.dash) is dashed
        and (abs(i.x1 - i.x2) < 1e-9 if upright else abs(i.y1 - i.y2) < 1e-9)
    ]


class TestParts:
    def test_all_of_it_is_one_figure_told_in_words(self, job_card: JobCard) -> None:
        card = job_card("set-up-card-a5")
        items, _ = placed(card)
        assert isinstance(card.chart, PrintedJob)
        (tags,) = {item.tags for item in items}
        assert [tag.role for tag in tags] == [Role.FIGURE]
        assert tags[0].alternative == card.chart.sketch.description

    def test_what_is_hidden_is_dashed_and_the_axis_chained(self, job_card: JobCard) -> None:
        items, _ = placed(job_card("set-up-card-a5"))
        scale = scale_of(items)
        level = lines(items, upright=False, dashed=True)
        (axis,) = (rule for rule in level if len(rule.dash) == 4)
        bore = [rule for rule in level if abs(rule.y1 - axis.y1) == pytest.approx(8.0 * scale)]
        assert len(bore) == 2
        assert {len(rule.dash) for rule in bore} == {2}
        assert axis.x1 < min(rule.x1 for rule in level if rule is not axis)
        # What is turned off: two dots in a chain.
        before = [rule for rule in level if len(rule.dash) == 6]
        assert {round(abs(rule.y1 - axis.y1) / scale, 6) for rule in before} == {15.0}

    def test_the_blade_stands_black_at_the_cut(self, job_card: JobCard) -> None:
        items, _ = placed(job_card("set-up-card-a5"))
        (blade,) = (i for i in items if isinstance(i, Panel) and not i.paper)
        assert blade.width == pytest.approx(2.0 * scale_of(items))
        hatch = [
            i
            for i in items
            if isinstance(i, Rule) and abs(abs(i.x2 - i.x1) - abs(i.y2 - i.y1)) < 1e-6
        ]
        inside = [
            rule
            for rule in hatch
            if blade.x - 1e-6 <= rule.x1 and rule.x2 <= blade.x + blade.width + 1e-6
        ]
        assert len(inside) > 10

    def test_a_bar_broken_off_ends_in_a_hatched_loop(self, job_card: JobCard) -> None:
        # A thin bar is drawn so large that its chuck lies outside what is shown.
        small = PrintedSketch(
            boxes=(
                SketchBox(part="chuck", x1=-70.0, x2=-30.0, low=-62.0, high=62.0),
                SketchBox(part="jaws", x1=-30.0, x2=0.0, low=4.0, high=34.0),
                SketchBox(part="jaws", x1=-30.0, x2=0.0, low=-34.0, high=-4.0),
                SketchBox(part="bar", x1=-40.0, x2=20.0, low=-4.0, high=4.0),
                SketchBox(part="piece", x1=5.5, x2=19.5, low=-3.0, high=3.0),
                SketchBox(part="cut", x1=4.0, x2=5.5, low=-4.0, high=4.0),
            ),
            dimensions=(SketchDimension(axis="along", start=0.0, end=20.0, text="20"),),
            labels=(),
            description="A thin bar.",
        )
        items, _ = placed(job_card("set-up-card-a5", sketch=small))
        assert scale_of(items) > 1.0
        bent = [
            i
            for i in items
            if isinstance(i, Rule)
            and abs(i.x2 - i.x1) > 1e-6
            and abs(i.y2 - i.y1) > 1e-6
            and i.weight == pytest.approx(0.7)
        ]
        assert len(bent) > 30

    def test_a_block_without_a_job_is_refused(self, card_of: Callable[[str], AnyCard]) -> None:
        with pytest.raises(TypeError, match="a sketch block needs the card of a job"):
            sketch(card_of("lathe-chart"), LAYOUT, SETTING)
