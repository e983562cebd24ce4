"""Curves laid over each other: both shops' own numbers, each told by its name and its dash."""

from dataclasses import replace

import pytest

from chartgen.charts.change import cell_changes
from chartgen.charts.feed_windows import feed_windows
from chartgen.layout.blocks.change_figures import change_figures as block
from chartgen.layout.layout_file import load_layout
from chartgen.layout.piece import setting_for
from chartgen.layout.placed import Plot, Text
from chartgen.limits.allowances import allowances_for
from chartgen.limits.spindle import Duration, make_spindle
from chartgen.model.shop import LengthUnits, Shop
from chartgen.pipeline import changed_card, lay_out
from chartgen.reference.tables import load_material
from chartgen.renderers.fonts import measure
from chartgen.wording.change_figures import change_figures
from chartgen.wording.figure import PrintedCurve, PrintedPanel

Swap = tuple[Shop, Shop]


def named(panel: PrintedPanel, word: str) -> PrintedCurve:
    (curve,) = (curve for curve in panel.curves if curve.label == word)
    return curve


def test_the_drives_are_drawn_with_what_each_gives_for_one_cut(motor_swap: Swap) -> None:
    drive, *_ = change_figures(cell_changes(*motor_swap))
    torque, power = drive.panels
    for word, shop in zip(("before", "now"), motor_swap, strict=True):
        spindle = make_spindle(shop.lathe, allowances_for(shop))
        first = shop.lathe.drive.positions[0]
        x, y = (
            named(torque, word).parts[-1][0]
            if first.is_single_speed
            else (named(torque, word).parts[0][0])
        )
        assert x == pytest.approx(first.slowest)
        assert y == pytest.approx(float(spindle.torque(first, first.slowest, Duration.ONE_CUT)))
    # A torque of T at n rev/min is T n / 9.549 watts.
    for t, p in zip(named(torque, "now").parts, named(power, "now").parts, strict=True):
        assert [y for _, y in p] == pytest.approx([y * x / 9.5493 for x, y in t], rel=1e-4)


def test_the_windows_of_both_shops_stand_in_one_panel_a_blade(motor_swap: Swap) -> None:
    changes = cell_changes(*motor_swap)
    _, *figures = change_figures(changes)
    assert [figure.title for figure in figures] == [m.name for m in changes.materials]
    steel = changes.materials[0]
    for word, shop in zip(("before", "now"), motor_swap, strict=True):
        (own,) = feed_windows(shop, [steel])
        for panel, window in zip(figures[0].panels, own.blades, strict=True):
            inside = window.ceiling >= panel.y.least
            drawn = [y for part in named(panel, word).parts for _, y in part]
            assert drawn == pytest.approx(window.ceiling[inside].tolist())
            assert window.blade.name in panel.title


def test_before_and_now_have_a_dash_each(motor_swap: Swap) -> None:
    for figure in change_figures(cell_changes(*motor_swap)):
        for panel in figure.panels:
            assert named(panel, "before").dash is not named(panel, "now").dash
            assert "before" in figure.description


def test_a_shop_against_itself_lies_on_itself(motor_swap: Swap) -> None:
    after = motor_swap[1]
    for figure in change_figures(cell_changes(after, after)):
        for panel in figure.panels:
            assert named(panel, "before").parts == named(panel, "now").parts


def test_in_inches_two_blades_stand_side_by_side(motor_swap: Swap) -> None:
    before, after = (
        replace(shop, request=replace(shop.request, units=LengthUnits.INCH)) for shop in motor_swap
    )
    third = replace(after.blades[0], name="third")
    before, after = (replace(shop, blades=(*shop.blades, third)) for shop in (before, after))
    _, *figures = change_figures(cell_changes(before, after))
    assert {len(figure.panels) for figure in figures} == {1, 2}


def test_each_figure_fills_a_page_under_its_own_heading(motor_swap: Swap) -> None:
    card = changed_card(*motor_swap)
    (finished,) = lay_out([card])
    pages = [p for p in finished.document.pages if any(isinstance(i, Plot) for i in p.items)]
    titles = [figure.title for figure in card.chart.figures]
    assert len(pages) == len(titles)
    for page, title in zip(pages, titles, strict=True):
        assert title in [item.text for item in page.items if isinstance(item, Text)]


def test_another_kind_of_card_has_no_figures_of_a_change(motor_swap: Swap) -> None:
    card = replace(changed_card(*motor_swap), chart=load_material("mild-steel"))
    setting = setting_for(distance=400.0, width=190.0, measure=measure, height=120.0)
    with pytest.raises(TypeError, match="needs a change card"):
        block(card, load_layout("change-card-a5"), setting)
