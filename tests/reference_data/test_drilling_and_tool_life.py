"""The data of drills, boring bars and tool life: whole, in order, on the safe side."""

import re
from importlib.resources import files
from itertools import pairwise

import numpy as np
import pytest

from chartgen.model.blade import ToolMaterial
from chartgen.model.material import IsoGroup
from chartgen.model.tooling import BarMaterial, DrillPoint
from chartgen.physics.tool_life import tool_life
from chartgen.reference.boring import load_boring, read_boring
from chartgen.reference.drilling import (
    chisel_factors,
    deep_hole_factors,
    deepest_ratio,
    drilling_feed,
    drilling_speed,
    guide_factor,
    load_drilling,
    read_drilling,
)
from chartgen.reference.tables import load_feed_classes, load_material, material_keys
from chartgen.reference.tool_life import load_tool_life, read_tool_life, taylor_for
from chartgen.sources import Mark

FOOT = 0.3048
INCH = 25.4
# NAVY, feeds of twist drills by size, in/rev: up to this size, lower and upper value.
NAVY_FEEDS = [(0.125, 0.001, 0.002), (0.25, 0.002, 0.004), (0.5, 0.004, 0.007), (1.0, 0.007, 0.015)]
# Two printings of the older handbook's drilling speeds, ft/min, both read.
PRINTED_SPEEDS = {
    "mild-steel": 90, "c45": 75, "c60": 70, "free-cutting-steel": 120, "stainless-303": 85,
    "stainless-304": 55, "stainless-316": 50, "stainless-416": 90, "stainless-430": 65,
    "tool-steel-annealed": 45, "tool-steel-d2": 30, "grey-iron-200": 80, "grey-iron-250": 60,
    "nodular-iron-400": 100, "nodular-iron-600": 50, "malleable-iron": 110,
}  # fmt: skip


def data(name: str) -> str:
    return files("chartgen.reference").joinpath(name).read_text("utf-8")


@pytest.mark.parametrize("key", material_keys())
def test_every_material_has_a_drilling_speed_not_above_its_turning_speed(key: str) -> None:
    start, ceiling = drilling_speed(key)
    turning = load_material(key).speeds[ToolMaterial.HSS].ceiling
    assert 0.6 * ceiling.value <= start.value <= 0.71 * ceiling.value
    # Turned speeds come from other printings; a drill, which sheds its heat worse, keeps below.
    assert ceiling.value <= turning.value


def test_no_speed_is_of_a_material_that_is_not() -> None:
    assert set(load_drilling().speeds) == set(material_keys())


@pytest.mark.parametrize(("key", "printed"), PRINTED_SPEEDS.items())
def test_no_ceiling_lies_above_the_handbooks_drilling_speed(key: str, printed: int) -> None:
    # MH-old, drilling columns.
    ceiling = drilling_speed(key).ceiling
    assert ceiling.value <= printed * FOOT
    if ceiling.mark is Mark.FOUND:
        assert ceiling.value > printed * FOOT - 1.0


@pytest.mark.parametrize(("size", "lower", "upper"), NAVY_FEEDS)
def test_feeds_lie_inside_the_printed_span_of_their_size(
    size: float, lower: float, upper: float
) -> None:
    start, largest = drilling_feed(diameter=size * INCH, feed_class="steel")
    assert start.value == pytest.approx(lower * INCH, rel=0.02)
    assert start.value <= lower * INCH
    assert 0.78 * upper * INCH < largest.value <= upper * INCH


@pytest.mark.parametrize("feed_class", load_feed_classes())
def test_feeds_rise_with_the_drill_and_start_is_never_above_the_largest(feed_class: str) -> None:
    sizes = np.arange(0.5, 30.0, 0.25)
    rows = [drilling_feed(diameter=float(d), feed_class=feed_class) for d in sizes]
    for feed in rows:
        assert 0.0 < feed.start.value <= feed.largest.value
    for thin, thick in pairwise(rows):
        assert thin.start.value <= thick.start.value
        assert thin.largest.value <= thick.largest.value


@pytest.mark.parametrize(
    ("feed_class", "at_12_5"),
    [("steel", 0.30), ("stainless", 0.18), ("titanium", 0.15), ("plastic", 0.13)],
)
def test_no_feed_lies_above_the_second_table(feed_class: str, at_12_5: float) -> None:
    # KALP table 23.11, feed at 12.5 mm.
    assert drilling_feed(diameter=12.5, feed_class=feed_class).largest.value <= at_12_5


def test_a_feed_between_rows_says_that_it_is_derived() -> None:
    between = drilling_feed(diameter=8.0, feed_class="steel").start
    assert (between.mark, between.source, between.note) == (Mark.DERIVED, "NAVY", "between rows")
    assert drilling_feed(diameter=6.35, feed_class="steel").start.mark is Mark.FOUND


@pytest.mark.parametrize(
    ("ratio", "speed", "feed"),
    [(0.5, 1, 1), (2, 1, 1), (3, 0.9, 0.9), (4, 0.8, 0.9), (4.5, 0.75, 0.85), (6, 0.6, 0.8)],
)
def test_deep_holes_are_drilled_slower(ratio: float, speed: float, feed: float) -> None:
    factors = deep_hole_factors(ratio)
    assert factors.speed.value == pytest.approx(speed)
    assert factors.feed.value == pytest.approx(feed)


def test_beyond_the_table_its_last_row_holds_and_says_so() -> None:
    assert deepest_ratio() == 6.0
    beyond = deep_hole_factors(9.0)
    assert beyond.speed.value == pytest.approx(0.6)
    assert beyond.speed.mark is Mark.DERIVED
    assert beyond.speed.note == "beyond the last row"


def test_a_longer_chisel_edge_takes_more() -> None:
    for thin, thick in pairwise(values for _, values in load_drilling().chisel):
        assert all(a.value < b.value for a, b in zip(thin, thick, strict=True))
    split, standard = (chisel_factors(p) for p in (DrillPoint.SPLIT, DrillPoint.STANDARD))
    assert split.lips.value < standard.lips.value


def test_the_second_models_iron_takes_more_the_harder_it_is() -> None:
    rows = [row for row in load_drilling().guide_factors if row.work == "grey iron"]
    assert len(rows) == 3
    for soft, hard in pairwise(rows):
        assert soft.hardness < hard.hardness
        assert soft.factor.value < hard.factor.value


def test_the_second_model_stands_for_known_materials_once_and_of_like_hardness() -> None:
    rows = [(key, row) for row in load_drilling().guide_factors for key in row.stands_for]
    assert len({key for key, _ in rows}) == len(rows)
    for key, row in rows:
        hardness = load_material(key).hardness
        assert hardness
        assert row.hardness == pytest.approx(hardness.value, abs=35.0)
        assert guide_factor(key) == row.factor
    assert guide_factor("brass") is None


def test_a_carbide_bar_stands_out_further_and_is_stiffer() -> None:
    boring = load_boring()
    for row in (boring.overhang, boring.modulus):
        assert row[BarMaterial.CARBIDE].value > row[BarMaterial.STEEL].value
    # BBD: steel 4, carbide 6 diameters.
    assert {shank: one.value for shank, one in boring.overhang.items()} == {
        BarMaterial.STEEL: 4.0,
        BarMaterial.CARBIDE: 6.0,
    }
    for side in (boring.turning, boring.boring):
        assert 0.0 < side.radial.value < side.feed.value < 1.0


@pytest.mark.parametrize("key", material_keys())
def test_taylor_constants_hold_for_steel_iron_and_metal_that_is_neither(key: str) -> None:
    material = load_material(key)
    law = taylor_for(tool_material=ToolMaterial.HSS, material=material)
    if material.iso_group in {IsoGroup.M, IsoGroup.S} or "plastic" in material.tags:
        assert law is None
        return
    assert law
    # GROO5 table 22.2, high-speed steel: 70 in steel, 120 elsewhere, n 0.125.
    steel = material.iso_group is IsoGroup.P
    assert (law.constant.value, law.exponent.value) == (70.0 if steel else 120.0, 0.125)


def test_carbide_lasts_longer_at_its_own_speed_than_steel_would_at_it() -> None:
    # GROO5 table 22.2, uncoated carbide: 500 in steel, n 0.25.
    steel = load_material("c45")
    carbide, hss = (taylor_for(tool_material=t, material=steel) for t in reversed(ToolMaterial))
    assert carbide
    assert hss
    assert (carbide.constant.value, carbide.exponent.value) == (500.0, 0.25)
    lives = [
        tool_life(cutting_speed=90.0, constant=law.constant.value, exponent=law.exponent.value)
        for law in (carbide, hss)
    ]
    assert lives[0] > 100.0
    assert lives[1] < 1.0
    assert load_tool_life().spread.value == pytest.approx(0.2)


FAULTS = [
    (read_drilling, "drilling.toml", "[web]\nshare", "[web]\nwidth", "web.share: is missing"),
    (read_drilling, "drilling.toml", "diameter = 6.35", "diameter = 3.175",
     "feed row 3.diameter: 3.175 is not above the row before, or not above 0"),
    (read_drilling, "drilling.toml", "torque = [1.000, ", "torque = [",
     "chisel.torque: has 11 numbers for 12 ratios"),
    (read_drilling, "drilling.toml", "ratio = [0.03, 0.05", "ratio = [0.05, 0.03",
     "chisel.ratio: must rise"),
    (read_drilling, "drilling.toml", "[speed.34crmo4]\nstart = {value = 14.5",
     "[speed.34crmo4]\nstart = {value = 99",
     "speed.34crmo4.start: must lie above 0 and not above the ceiling"),
    (read_boring, "boring.toml", "diameters", "length", "clamping.diameters: is missing"),
    (read_tool_life, "tool_life.toml", "[carbide]", "[ceramic]", "carbide: is missing"),
]  # fmt: skip


@pytest.mark.parametrize(("read", "name", "old", "new", "message"), FAULTS)
def test_a_fault_is_named_with_file_and_key(
    read: object, name: str, old: str, new: str, message: str
) -> None:
    text = data(name)
    assert old in text
    assert callable(read)
    with pytest.raises(ValueError, match=f"^{re.escape(f'{name}: {message}')}$"):
        read(text.replace(old, new, 1), file=name)
