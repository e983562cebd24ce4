"""Axes and curves as words and numbers: 1-2-5 ticks, plain numbers, dashes of their own."""

import math
from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen import pipeline
from chartgen.model.shop import LengthUnits, Shop
from chartgen.wording.card import AnyCard
from chartgen.wording.curves.nomogram import PrintedNomogram
from chartgen.wording.figure import (
    Dash,
    PrintedCurves,
    PrintedPanel,
    even_axis,
    log_axis,
    round_outward,
)

ShopOf = Callable[..., Shop]
KINDS = ("spindle-curves-a5", "window-curves-a5", "width-curves-a5", "speed-curves-a5")
MACHINES = (
    "250 W brushed DC",
    "550 W belts",
    "750 W inverter",
    "1.1 kW brushless",
    "2.2 kW geared",
    "measured",
)


def cards(shop: Shop, *layouts: str) -> list[AnyCard]:
    asked = replace(shop.request, layouts=layouts)
    return pipeline.printed_cards(replace(shop, request=asked))


def panels(shop: Shop, layout: str) -> list[PrintedPanel]:
    found = []
    for card in cards(shop, layout):
        assert isinstance(card.chart, PrintedCurves)
        found += card.chart.panels
    return found


def test_a_decade_is_labelled_1_2_5_first_in_plain_numbers() -> None:
    """The 1-2-5 rule of scales (MIL-STD-1472, from memory)."""
    axis = log_axis("rev/min", 60.0, 2500.0)
    first = [text for _, text, rank in axis.ticks if rank == 0]
    assert first == ["100", "200", "500", "1000", "2000"]
    assert [text for _, text, _ in log_axis("mm/rev", 0.01, 0.02).ticks] == [
        "0.01",
        "0.015",
        "0.02",
    ]
    assert all("e" not in text for _, text, _ in log_axis("W", 1e-3, 1e6).ticks)


@given(st.floats(1e-3, 1e3), st.floats(1.2, 1e4))
def test_ticks_lie_on_their_axis_and_say_their_value(least: float, ratio: float) -> None:
    axis = log_axis("x", least, least * ratio)
    for value, text, _ in axis.ticks:
        assert axis.least * (1 - 1e-6) <= value <= axis.most * (1 + 1e-6)
        assert float(text) == pytest.approx(value, abs=1e-6)
    assert all(axis.least < value < axis.most for value in axis.minor)


@given(st.floats(-50.0, 50.0), st.floats(0.1, 1e3))
def test_an_even_axis_steps_by_one_two_or_five(least: float, span: float) -> None:
    axis = even_axis("x", least, least + span)
    steps = {round(b[0] - a[0], 9) for a, b in pairwise(axis.ticks)}
    assert len(steps) <= 1
    for step in steps:
        assert f"{step:e}"[0] in "125"


@given(st.floats(1e-3, 1e4), st.floats(1.0, 1e3))
def test_rounding_outward_never_cuts_off(least: float, ratio: float) -> None:
    low, high = round_outward(least, least * ratio)
    assert low <= least * (1 + 1e-9)
    assert high >= least * ratio * (1 - 1e-9)


@pytest.mark.parametrize("machine", MACHINES)
@pytest.mark.parametrize("layout", KINDS)
def test_every_curve_of_a_panel_is_named_and_told_apart_without_colour(
    shop_of: ShopOf, machine: str, layout: str
) -> None:
    for panel in panels(shop_of(machine), layout):
        heavy = [curve for curve in panel.curves if not curve.fine and not curve.bold]
        assert len({curve.dash for curve in heavy}) == len(heavy)
        labels = [curve.label for curve in panel.curves]
        assert all(labels)
        assert len(set(labels)) == len(labels)
        # Two dashes that differ only in the eye of the program would be no difference.
        assert len({curve.dash.value for curve in heavy}) == len(heavy)


def test_no_two_dashes_are_alike() -> None:
    assert len({dash.value for dash in Dash}) == len(Dash)


@pytest.mark.parametrize("units", list(LengthUnits))
def test_lines_of_surface_speed_have_slope_minus_one_and_their_own_speed(
    example: Shop, units: LengthUnits
) -> None:
    """N = 1000 v / (pi d): straight in logarithms, slope -1."""
    shop = replace(example, request=replace(example.request, units=units))
    metres, millimetres = (1.0, 1.0) if units is LengthUnits.METRIC else (0.3048, 25.4)
    slanted = 0
    for panel in panels(shop, "speed-curves-a5"):
        for curve in panel.curves:
            (((x1, y1), (x2, y2)),) = curve.parts
            if curve.fine:
                assert y1 == y2
                continue
            slanted += 1
            slope = (math.log(y2) - math.log(y1)) / (math.log(x2) - math.log(x1))
            assert slope == pytest.approx(-1.0, abs=1e-12)
            printed = float(curve.label.split()[-2])
            speed = math.pi * x1 * millimetres * y1 / 1000.0 / metres
            assert speed == pytest.approx(printed, rel=0.01)
    assert slanted >= 12


@pytest.mark.parametrize("machine", MACHINES)
@pytest.mark.parametrize("layout", KINDS)
def test_curves_and_dots_lie_inside_their_axes(shop_of: ShopOf, machine: str, layout: str) -> None:
    for panel in panels(shop_of(machine), layout):
        points = [p for curve in panel.curves for part in curve.parts for p in part]
        points += [dot.at for dot in panel.dots]
        assert points
        for x, y in points:
            assert panel.x.least * (1 - 1e-9) <= x <= panel.x.most * (1 + 1e-9)
            assert y <= panel.y.most * (1 + 1e-9)


def test_the_window_names_every_limit_that_binds_and_explains_no_other(example: Shop) -> None:
    for card in cards(example, "window-curves-a5"):
        assert isinstance(card.chart, PrintedCurves)
        named = {
            letter
            for panel in card.chart.panels
            for _, letters in panel.letters
            for letter in letters.split("/")
        }
        assert named == {entry.sign for entry in card.chart.legend}


def test_the_dots_of_the_window_are_the_feeds_the_lathe_chart_prints(example: Shop) -> None:
    (curves, *_), (chart, *_) = (
        cards(example, name) for name in ("window-curves-a5", "lathe-chart-a5")
    )
    assert isinstance(curves.chart, PrintedCurves)
    for place, panel in enumerate(curves.chart.panels):
        dots = {f"{d.at[0]:g}": f"{d.at[1]:.3f}" for d in panel.dots if d.shape.value == "disc"}
        printed = {
            stub: row[place].feed
            for stub, row in zip(chart.chart.stub, chart.chart.rows, strict=True)
            if row[place].feed
        }
        assert dots == printed


def test_many_stepless_positions_run_on_to_further_cards(shop_of: ShopOf) -> None:
    shop = shop_of("750 W inverter")
    low = shop.lathe.drive.positions[0]
    five = tuple(replace(low, name=f"p{n}", mark=f"P{n}", motor_ratio=1.0 + n) for n in range(5))
    drive = replace(shop.lathe.drive, positions=five)
    shop = replace(shop, lathe=replace(shop.lathe, drive=drive))
    found = cards(shop, "spindle-curves-a5")
    assert len(found) == 2
    assert len({card.file_stem for card in found}) == 2
    shown = {
        curve.label.split()[0]
        for card in found
        if isinstance(card.chart, PrintedCurves)
        for panel in card.chart.panels
        for curve in panel.curves
        if not curve.bold
    }
    assert shown == {f"P{n}" for n in range(5)}


@pytest.mark.parametrize("layout", KINDS)
def test_a_figure_tells_in_words_what_it_shows(example: Shop, layout: str) -> None:
    for card in cards(example, layout):
        assert isinstance(card.chart, PrintedCurves)
        assert card.chart.title in card.chart.description
        assert len(card.chart.description) > 60
        assert card.chart.notes


@pytest.mark.parametrize("units", list(LengthUnits))
@pytest.mark.parametrize(
    ("layout", "check"),
    [
        ("speed-nomogram-a5", lambda a, b, metres, mm: 1000.0 * a * metres / (math.pi * b * mm)),
        ("power-nomogram-a5", lambda a, b, metres, _: a * b * metres / 60.0),
    ],
)
def test_the_line_drawn_in_says_what_arithmetic_says(
    example: Shop, units: LengthUnits, layout: str, check: Callable[..., float]
) -> None:
    shop = replace(example, request=replace(example.request, units=units))
    metres, mm = (1.0, 1.0) if units is LengthUnits.METRIC else (0.3048, 25.4)
    (card,) = cards(shop, layout)
    assert isinstance(card.chart, PrintedNomogram)
    (line,) = (note for note in card.chart.notes if note.startswith("Drawn in"))
    numbers = [float(word) for word in line.split() if word[0].isdigit()]
    assert numbers[2] == pytest.approx(check(numbers[0], numbers[1], metres, mm), rel=0.006)
    assert all(0.0 <= height <= 1.0 for height in card.chart.worked)


def test_a_nomogram_needs_no_material_with_force_data(example: Shop) -> None:
    plain = pipeline.with_materials(example, ["acetal"])
    for layout in ("speed-nomogram-a5", "power-nomogram-a5"):
        (card,) = cards(plain, layout)
        assert isinstance(card.chart, PrintedNomogram)
        assert card.force_band == ""
        assert card.assumptions == card.chart.assumptions
