"""A chart holds the windows' numbers cell by cell, whichever way it is laid out."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen.charts.speed_feed import ChartCell, lathe_chart, overview_chart
from chartgen.limits.run import windows
from chartgen.limits.window import Verdict, Windows
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.reference.tables import load_material

ShopOf = Callable[..., Shop]
SIZES = (12.0, 25.0, 50.0, 100.0)


@pytest.fixture
def found(example: Shop, mild_steel: Material, stainless: Material) -> Windows:
    return windows(example, materials=[mild_steel, stainless], diameters=SIZES)


def agrees(cell: ChartCell, found: Windows, index: tuple[int, int, int]) -> None:
    assert cell.verdict is found.verdict(index)
    assert cell.floor == found.floor[index]
    assert cell.ceiling == found.ceiling[index]
    assert cell.floor_reason is found.floor_reason(index)
    assert cell.ceiling_reason is found.ceiling_reason(index)
    assert (cell.cut is not None) == found.has_window[index]
    if cell.cut is not None:
        assert cell.cut.feed == found.feed[index]
        assert cell.cut.spindle_speed == found.spindle_speed[index]
        assert cell.cut.position is found.positions[found.position[index]]
        assert cell.cut.is_tight == found.is_tight[index]
        assert cell.cut.is_slow == found.is_slow[index]
        assert cell.cut.wants_power_feed == found.wants_power_feed[index]
        # The example states a backlash of 0.15 mm; half of it may come at once (allowance).
        assert cell.cut.swallows_backlash == (found.dig_in.slack[index] >= 0.075)


def with_backlash(shop: Shop, backlash: float | None) -> Shop:
    slide = replace(shop.lathe.cross_slide, backlash=backlash)
    return replace(shop, lathe=replace(shop.lathe, cross_slide=slide))


def test_a_lathe_chart_has_a_column_for_each_blade_and_a_row_for_each_diameter(
    example: Shop, found: Windows, stainless: Material
) -> None:
    chart = lathe_chart(example, found, stainless)
    assert chart.diameters == SIZES
    assert [column.blade for column in chart.columns] == list(example.blades)
    assert {column.material.key for column in chart.columns} == {"stainless-304"}
    for d, row in enumerate(chart.rows):
        for b, cell in enumerate(row):
            agrees(cell, found, (1, b, d))


def test_an_overview_has_a_column_for_each_material(
    example: Shop, found: Windows, mild_steel: Material, stainless: Material
) -> None:
    chart = overview_chart(example, found, example.blades[2])
    assert [column.material for column in chart.columns] == [mild_steel, stainless]
    assert {column.blade.name for column in chart.columns} == {"1.6 HSS"}
    for d, row in enumerate(chart.rows):
        for m, cell in enumerate(row):
            agrees(cell, found, (m, 2, d))


# 2 mm of travel a turn: 60 x 2 / (f n).
def test_the_seconds_of_a_handle_turn_are_those_of_feed_and_speed(
    example: Shop, found: Windows, mild_steel: Material
) -> None:
    cut = lathe_chart(example, found, mild_steel).rows[1][0].cut
    assert cut is not None
    assert cut.seconds_per_turn == pytest.approx(120.0 / (cut.feed * cut.spindle_speed))


def test_a_cell_without_window_names_the_blade_that_has_one_or_none_for_the_saw(
    example: Shop, found: Windows, mild_steel: Material
) -> None:
    rows = lathe_chart(example, found, mild_steel).rows
    by_hss = [row[2] for row in rows]
    assert [cell.verdict for cell in by_hss[2:]] == [Verdict.NO_WINDOW] * 2
    assert by_hss[2].way_out in example.blades[:2]
    assert by_hss[3].way_out is None
    assert by_hss[0].way_out is None


def test_only_a_stated_backlash_can_be_too_much_for_a_cut(
    example: Shop, found: Windows, mild_steel: Material
) -> None:
    def swallowed(backlash: float | None) -> set[bool]:
        rows = lathe_chart(with_backlash(example, backlash), found, mild_steel).rows
        return {cell.cut.swallows_backlash for row in rows for cell in row if cell.cut}

    assert swallowed(None) == {True}
    assert swallowed(0.25) == {True, False}
    assert swallowed(1.0) == {False}


# A cell swallows a backlash as long as the share of it that comes at once is under its slack.
@pytest.mark.parametrize("share", [0.2, 0.5, 1.0])
def test_the_sign_of_slack_comes_at_the_allowed_share_of_the_backlash(
    example: Shop, found: Windows, mild_steel: Material, share: float
) -> None:
    slack = float(found.dig_in.slack[0, 0, 1])
    for backlash, swallowed in ((0.999 * slack / share, True), (1.001 * slack / share, False)):
        shop = replace(with_backlash(example, backlash), allowances={"backlash_share": share})
        cut = lathe_chart(shop, found, mild_steel).rows[1][0].cut
        assert cut is not None
        assert cut.swallows_backlash is swallowed


def test_without_force_data_no_cut_is_said_not_to_swallow_the_backlash(example: Shop) -> None:
    nylon = load_material("nylon")
    found = windows(example, materials=[nylon], diameters=SIZES)
    rows = lathe_chart(example, found, nylon).rows
    assert {cell.cut.swallows_backlash for row in rows for cell in row if cell.cut} == {True}
