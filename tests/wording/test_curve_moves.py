"""When a printed figure is stale: its lines moved by more than an eye sees on paper."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen import pipeline
from chartgen.model.shop import Shop
from chartgen.wording.curve_moves import VISIBLE_SHARE, curve_moves
from chartgen.wording.figure import PrintedCurve, PrintedCurves, PrintedPanel, even_axis, log_axis

ShopOf = Callable[..., Shop]
CURVES = ("spindle-curves-a5", "window-curves-a5", "width-curves-a5", "speed-curves-a5")


def figure(*points: tuple[float, float], logarithmic: bool = False) -> PrintedCurves:
    axis = log_axis("x", 1.0, 100.0) if logarithmic else even_axis("x", 0.0, 100.0)
    curve = PrintedCurve(parts=(points,), label="a")
    panel = PrintedPanel(title="p", x=axis, y=axis, curves=(curve,))
    return PrintedCurves(
        title="t", subtitle="s", panels=(panel,), notes=(), legend=(), description="d"
    )


@pytest.mark.parametrize(
    ("shift", "told"), [(0.0, ""), (0.49, ""), (0.51, "1 of 1 lines and dots")]
)
def test_half_a_hundredth_of_an_even_axis_is_the_least_that_is_seen(
    shift: float, told: str
) -> None:
    assert pytest.approx(0.005) == VISIBLE_SHARE
    assert curve_moves(figure((1.0, 50.0)), figure((1.0, 50.0 + shift))) == told
    assert curve_moves(figure((1.0 + shift, 50.0)), figure((1.0, 50.0))) == told


@pytest.mark.parametrize(("factor", "told"), [(1.02, ""), (1.03, "1 of 1 lines and dots")])
def test_on_a_logarithmic_axis_a_ratio_is_seen(factor: float, told: str) -> None:
    # Two decades: 10 ** (2 x 0.005) = 1.0233.
    for value in (1.5, 60.0):
        was, now = (figure((2.0, v), logarithmic=True) for v in (value, value * factor))
        assert curve_moves(was, now) == told


def test_another_axis_another_label_and_other_notes_are_told() -> None:
    one = figure((1.0, 2.0))
    (panel,) = one.panels
    wider = replace(one, panels=(replace(panel, x=even_axis("x", 0.0, 200.0)),))
    named = replace(one, panels=(replace(panel, curves=(replace(panel.curves[0], label="b"),)),))
    assert {curve_moves(one, other) for other in (wider, named)} == {"other axes or curves"}
    assert curve_moves(one, replace(one, notes=("mind",))) == "other notes"


@pytest.mark.parametrize("layout", CURVES)
def test_a_figure_compared_with_itself_and_across_a_motor_swap(
    motor_swap: tuple[Shop, Shop], layout: str
) -> None:
    before, after = (pipeline.with_layouts(shop, [layout]) for shop in motor_swap)
    states = [
        {line.state.name for line in pipeline.changed_card(one, two).chart.cards}
        for one, two in ((before, before), (before, replace(before, revision="9")))
    ]
    assert states == [{"CURRENT"}, {"HOLDS"}]
    swapped = pipeline.changed_card(before, after).chart.cards
    assert {line.state.name for line in swapped} <= {"STALE", "HOLDS", "NEW", "GONE"}
    if layout == "spindle-curves-a5":
        assert "STALE" in {line.state.name for line in swapped}
