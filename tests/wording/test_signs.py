"""The signs beside a cell, and a legend that explains each that stands there and no other."""

from dataclasses import replace

import pytest

from chartgen.charts.speed_feed import ChartCell, SpeedFeedChart, lathe_chart
from chartgen.limits.feed_ceilings import FEED_CEILINGS
from chartgen.limits.force_capacities import DRIVING, HOLDING
from chartgen.limits.reasons import Reason
from chartgen.limits.run import windows
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.wording.signs import DIG_IN, POWER_FEED, SLOW, TIGHT, legend_of, sign_of

# What the letter of a cell can be: any ceiling, and the two that stand for a missing window.
ON_A_CELL = [
    *(reason for reason, _ in FEED_CEILINGS),
    *(reason for reason, _ in (*DRIVING, *HOLDING)),
    Reason.SLOWEST_SPINDLE,
    Reason.GEARBOX_FEED,
]


@pytest.fixture(scope="module")
def chart(example: Shop, mild_steel: Material) -> SpeedFeedChart:
    found = windows(example, materials=[mild_steel], diameters=[12.0, 25.0, 50.0])
    return lathe_chart(example, found, mild_steel)


def with_cell(chart: SpeedFeedChart, cell: ChartCell) -> SpeedFeedChart:
    return replace(chart, rows=((cell,),))


@pytest.fixture
def fitting(chart: SpeedFeedChart) -> ChartCell:
    """Return a cell with a window and without any remark."""
    cell = chart.rows[0][0]
    assert cell.cut is not None
    plain = replace(
        cell.cut,
        is_tight=False,
        is_slow=False,
        wants_power_feed=False,
        swallows_backlash=True,
    )
    return replace(cell, cut=plain, ceiling_reason=Reason.INSERT_FEED)


def test_a_cell_carries_the_letter_of_its_ceiling(fitting: ChartCell) -> None:
    assert sign_of(fitting) == "F"


def test_each_remark_adds_its_sign(fitting: ChartCell) -> None:
    assert fitting.cut is not None
    remarks = {
        TIGHT: replace(fitting.cut, is_tight=True),
        SLOW: replace(fitting.cut, is_slow=True),
        POWER_FEED: replace(fitting.cut, wants_power_feed=True),
        DIG_IN: replace(fitting.cut, swallows_backlash=False),
    }
    for sign, cut in remarks.items():
        assert sign_of(replace(fitting, cut=cut)) == f"F{sign}"


def test_all_remarks_stand_in_a_fixed_order(fitting: ChartCell) -> None:
    assert fitting.cut is not None
    cut = replace(fitting.cut, is_tight=True, is_slow=True, wants_power_feed=True)
    assert sign_of(replace(fitting, cut=cut)) == "F!~*"
    slow_alone = replace(cut, is_tight=False, wants_power_feed=False, swallows_backlash=False)
    assert sign_of(replace(fitting, cut=slow_alone)) == "F^~"


# A cut that half the backlash can spoil is a tight one, whatever else may be said of it.
def test_the_sign_of_slack_takes_the_place_of_the_tight_one(fitting: ChartCell) -> None:
    assert fitting.cut is not None
    cut = replace(fitting.cut, is_tight=True, is_slow=True, swallows_backlash=False)
    assert sign_of(replace(fitting, cut=cut)) == "F^~"
    cut = replace(cut, wants_power_feed=True)
    assert sign_of(replace(fitting, cut=cut)) == "F^~*"
    roomy = replace(cut, is_tight=False, is_slow=False)
    assert sign_of(replace(fitting, cut=roomy)) == "F^*"


def test_a_cut_that_cannot_swallow_the_backlash_is_told_what_to_do(
    chart: SpeedFeedChart, fitting: ChartCell
) -> None:
    assert fitting.cut is not None
    cell = replace(fitting, cut=replace(fitting.cut, swallows_backlash=False))
    (entry,) = (e for e in legend_of([with_cell(chart, cell)]) if e.sign == DIG_IN)
    assert (entry.short, entry.on_back) == ("slack", True)
    assert entry.sentence == (
        "Tight, and half of your backlash, let in at once, is more than this cut swallows: keep "
        "the slack taken up, snug the gibs."
    )


# A floor never stands on a cell: without a window its ceiling or the slowest spindle is named.
def test_the_legend_has_no_letter_that_no_cell_can_carry(
    chart: SpeedFeedChart, fitting: ChartCell
) -> None:
    marks = {reason.mark for reason in ON_A_CELL}
    dead = [reason for reason in Reason if reason.mark not in marks]
    assert {Reason.EDGE_FLOOR, Reason.SKIN_FLOOR} <= set(dead)
    for reason in dead:
        assert legend_of([with_cell(chart, replace(fitting, ceiling_reason=reason))]) == ()


def test_a_cell_without_window_carries_what_forbids_it(chart: SpeedFeedChart) -> None:
    lost = chart.rows[2][2]
    assert lost.cut is None
    assert sign_of(lost) == Reason.REACH.mark
    too_fast = replace(lost, floor_reason=Reason.SLOWEST_SPINDLE, ceiling_reason=Reason.EDGE_SPEED)
    assert sign_of(too_fast) == Reason.SLOWEST_SPINDLE.mark


@pytest.mark.parametrize("reason", ON_A_CELL, ids=lambda reason: reason.name)
def test_every_letter_that_can_stand_on_a_cell_is_in_the_legend(
    chart: SpeedFeedChart, fitting: ChartCell, reason: Reason
) -> None:
    if reason is Reason.SLOWEST_SPINDLE:
        cell = replace(chart.rows[2][2], floor_reason=reason)
    else:
        cell = replace(fitting, ceiling_reason=reason)
    entries = legend_of([with_cell(chart, cell)])
    assert sign_of(cell)[0] == reason.mark
    assert reason.mark in {entry.sign for entry in entries}
    assert all(entry.short and entry.sentence.endswith(".") for entry in entries)


def test_the_legend_explains_the_signs_that_stand_on_the_chart_and_no_other(
    chart: SpeedFeedChart,
) -> None:
    used = {c for row in chart.rows for cell in row for c in sign_of(cell)}
    ways = {"use A", "saw"}
    assert {entry.sign for entry in legend_of([chart])} - ways == used


def test_the_legend_of_a_plain_chart_is_one_letter(
    chart: SpeedFeedChart, fitting: ChartCell
) -> None:
    assert [entry.sign for entry in legend_of([with_cell(chart, fitting)])] == ["F"]


def test_the_ways_out_are_explained_where_a_cell_needs_them(chart: SpeedFeedChart) -> None:
    lost = chart.rows[2][2]
    assert lost.way_out is not None
    signs = [entry.sign for entry in legend_of([with_cell(chart, lost)])]
    assert signs == ["R", "use A"]
    hopeless = replace(lost, way_out=None)
    signs = [entry.sign for entry in legend_of([with_cell(chart, hopeless)])]
    assert signs == ["R", "saw"]


def test_several_charts_share_one_legend(chart: SpeedFeedChart, fitting: ChartCell) -> None:
    other = with_cell(chart, replace(fitting, ceiling_reason=Reason.HAND_PACE))
    signs = [entry.sign for entry in legend_of([with_cell(chart, fitting), other])]
    assert signs == ["F", "P"]


def test_signs_with_more_to_say_are_repeated_on_the_back(chart: SpeedFeedChart) -> None:
    on_back = {entry.sign for entry in legend_of([chart]) if entry.on_back}
    assert TIGHT in on_back
    assert "use A" in on_back
    assert "T" not in on_back
