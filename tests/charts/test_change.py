"""Cells that moved: laws that hold for any two shops, and each way a cell can move."""

from collections.abc import Callable
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from chartgen.charts.change import CellChanges, Move, cell_changes, moves_between
from chartgen.charts.speed_feed import ChartCell, ChosenCut, lathe_chart
from chartgen.limits.dial import feed_step
from chartgen.limits.reasons import Reason
from chartgen.limits.run import windows
from chartgen.limits.window import Verdict
from chartgen.model.material import Material
from chartgen.model.shop import LengthUnits, Shop

ShopOf = Callable[..., Shop]
METRIC, INCH = LengthUnits.METRIC, LengthUnits.INCH
LATHES = [
    "250 W brushed DC",
    "550 W belts",
    "750 W inverter",
    "1.1 kW brushless",
    "measured",
    "2.2 kW geared",
]


@pytest.fixture(scope="module")
def cell(example: Shop, mild_steel: Material) -> ChartCell:
    """Return a cell with a window."""
    found = windows(example, materials=[mild_steel], diameters=[25.0])
    inside = lathe_chart(example, found, mild_steel).rows[0][0]
    assert inside.cut is not None
    return inside


def with_cut(cell: ChartCell, **changes: object) -> ChartCell:
    cut = cell.cut
    assert isinstance(cut, ChosenCut)
    return replace(cell, cut=replace(cut, **changes))  # type: ignore[arg-type]


@pytest.mark.parametrize("lathe", LATHES)
def test_a_shop_compared_with_itself_moves_nothing(shop_of: ShopOf, lathe: str) -> None:
    changes = cell_changes(shop_of(lathe), shop_of(lathe))
    assert len(changes.cells) == 1 * 4 * 2
    assert changes.moved == ()


@pytest.mark.parametrize("other", LATHES[:-1])
def test_turning_before_and_after_round_turns_every_cell_round(shop_of: ShopOf, other: str) -> None:
    one, two = shop_of(other), shop_of("2.2 kW geared")
    there, back = cell_changes(one, two), cell_changes(two, one)

    def turned(changes: CellChanges) -> list[tuple[object, ...]]:
        return [(c.blade.name, c.diameter, c.after, c.before, c.moves) for c in changes.cells]

    assert [(c.blade.name, c.diameter, c.before, c.after, c.moves) for c in there.cells] == turned(
        back
    )
    assert there.moved


@settings(deadline=None, max_examples=60)
@given(nudge=st.floats(-1.0, 1.0), units=st.sampled_from(LengthUnits))
def test_a_nudge_of_one_step_of_dial_and_feed_is_no_move(
    cell: ChartCell, nudge: float, units: LengthUnits
) -> None:
    cut = cell.cut
    assert cut is not None
    step = feed_step(cut.feed, units)
    nudged = with_cut(
        cell,
        spindle_speed=cut.spindle_speed + nudge * cut.position.dial_step,
        feed=cut.feed + nudge * step,
    )
    assert moves_between(cell, nudged, units=units) == frozenset()
    further = with_cut(
        cell,
        spindle_speed=cut.spindle_speed + 2.1 * cut.position.dial_step,
        feed=cut.feed + 2.1 * step,
    )
    assert moves_between(cell, further, units=units) == {Move.SPEED, Move.FEED}


def test_each_thing_a_card_prints_of_a_cell_can_move_it(cell: ChartCell) -> None:
    cut = cell.cut
    assert cut is not None
    position = replace(cut.position, mark="other")
    moved = {
        Move.POSITION: with_cut(cell, position=position),
        Move.LIMIT: replace(cell, ceiling_reason=Reason.REACH),
        Move.SIGNS: with_cut(cell, is_tight=not cut.is_tight),
    }
    for move, other in moved.items():
        assert moves_between(cell, other, units=METRIC) == {move}
    for sign in ("is_slow", "wants_power_feed", "swallows_backlash"):
        other = with_cut(cell, **{sign: not getattr(cut, sign)})
        assert moves_between(cell, other, units=METRIC) == {Move.SIGNS}


def test_a_position_of_another_name_and_the_same_mark_is_the_same_on_a_card(
    cell: ChartCell,
) -> None:
    cut = cell.cut
    assert cut is not None
    renamed = with_cut(cell, position=replace(cut.position, name="other"))
    assert moves_between(cell, renamed, units=METRIC) == frozenset()


def test_a_window_lost_and_another_way_out_are_moves(cell: ChartCell, example: Shop) -> None:
    lost = replace(cell, cut=None, verdict=Verdict.NO_WINDOW)
    assert moves_between(cell, lost, units=METRIC) == {Move.WINDOW}
    assert moves_between(lost, cell, units=METRIC) == {Move.WINDOW}
    offered = replace(lost, way_out=example.blades[1])
    assert moves_between(lost, offered, units=METRIC) == {Move.WAY_OUT}
    assert moves_between(offered, offered, units=METRIC) == frozenset()


def test_one_cut_and_continuous_torque_are_one_limit_on_a_card(cell: ChartCell) -> None:
    short, long = (
        replace(cell, ceiling_reason=reason)
        for reason in (Reason.TORQUE_ONE_CUT, Reason.TORQUE_CONTINUOUS)
    )
    assert moves_between(short, long, units=METRIC) == frozenset()


def test_a_step_of_feed_is_that_of_the_cards_units() -> None:
    assert feed_step(0.05, METRIC) == pytest.approx(0.005)
    assert feed_step(0.02, METRIC) == pytest.approx(0.002)
    assert feed_step(0.05, INCH) == pytest.approx(0.0002 * 25.4)
    assert feed_step(0.02, INCH) == pytest.approx(0.0001 * 25.4)


def test_only_what_both_shops_print_is_compared(example: Shop) -> None:
    request = replace(example.request, materials=("ptfe", "c45"), diameters=(10.0, 11.0, 25.0))
    after = replace(example, request=request, blades=example.blades[1:])
    changes = cell_changes(example, after)
    assert [m.key for m in changes.materials] == ["c45"]
    assert [b.name for b in changes.blades] == ["3.0 carbide", "1.6 HSS"]
    assert changes.diameters == (10.0, 25.0)
    assert len(changes.cells) == 1 * 2 * 2


def test_a_way_out_that_went_with_its_blade_moves_the_cell(
    motor_swap: tuple[Shop, Shop],
) -> None:
    before, _ = motor_swap
    after = replace(before, blades=before.blades[:1])
    moved = {(cell.material.key, cell.diameter): cell for cell in cell_changes(before, after).moved}
    cell = moved["stainless-304", 40.0]
    assert cell.moves == {Move.WAY_OUT}
    assert cell.before.way_out is not None
    assert (cell.before.way_out.name, cell.after.way_out) == ("2 carbide", None)
