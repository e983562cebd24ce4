"""Ways out and assumptions as lines of text, word for word."""

from dataclasses import replace
from math import nan

import pytest

from chartgen.limits.cut import Cut, recommended
from chartgen.limits.sensitivity import Outcome, Sensitivity
from chartgen.limits.ways_out import Way, WayOut
from chartgen.limits.window import Verdict
from chartgen.model.shop import LengthUnits, Shop
from chartgen.reference.tables import load_material
from chartgen.wording.what_if import cell_sensitivity, cell_ways, sensitivity_lines, way_lines

METRIC, INCH = LengthUnits.METRIC, LengthUnits.INCH


def way_out(way: Way, what: str) -> WayOut:
    return WayOut(
        way=way,
        what=what,
        verdict=Verdict.TIGHT,
        room=1.96,
        gain=3.0,
        spindle_speed=635.0,
        feed=0.0508,
    )


# 0.0508 mm are two thousandths of an inch.
LEADS_TO = ": tight, 635 rev/min and 0.051 mm/rev, ceiling 2.0 times the floor"


@pytest.mark.parametrize(
    ("way", "what", "words"),
    [
        (Way.OTHER_BLADE, "2.0 carbide", "take blade 2.0 carbide"),
        (Way.SHARPER_EDGE, "honed", "put in a fresh honed edge"),
        (Way.SHORTER, "13.5", "let the blade stand out only 13.5 mm"),
        (Way.LONGER, "26", "let the blade stand out 26 mm, if it is long enough"),
        (Way.CLOSER, "2", "cut 2 mm from the jaws"),
        (Way.TIGHTER, "75", "pull the chuck key with 75 N·m, its full torque"),
        (Way.POWER_FEED, "", "use the power feed"),
    ],
    ids=lambda value: value.name if isinstance(value, Way) else None,
)
def test_each_way_is_said_with_the_cut_it_leads_to(way: Way, what: str, words: str) -> None:
    assert way_lines((way_out(way, what),), METRIC) == [words + LEADS_TO]


def test_every_way_is_worded_in_the_order_given() -> None:
    some = (way_out(Way.TIGHTER, "75"), way_out(Way.POWER_FEED, ""))
    beginnings = [line.partition(":")[0] for line in way_lines(some, METRIC)]
    assert beginnings == ["pull the chuck key with 75 N·m, its full torque", "use the power feed"]


def test_the_feed_a_way_leads_to_is_in_the_units_of_the_card() -> None:
    assert way_lines((way_out(Way.POWER_FEED, ""),), INCH) == [
        "use the power feed: tight, 635 rev/min and 0.0020 in/rev, ceiling 2.0 times the floor"
    ]


# 26 mm are 1.024 inches; a torque, a name and an edge stand as they are.
@pytest.mark.parametrize(
    ("way", "what", "words"),
    [
        (Way.SHORTER, "13.5", "let the blade stand out only 0.531 in"),
        (Way.LONGER, "26", "let the blade stand out 1.024 in, if it is long enough"),
        (Way.CLOSER, "2", "cut 0.079 in from the jaws"),
        (Way.TIGHTER, "75", "pull the chuck key with 75 N·m, its full torque"),
        (Way.OTHER_BLADE, "2", "take blade 2"),
    ],
    ids=lambda value: value.name if isinstance(value, Way) else None,
)
def test_only_lengths_of_a_way_are_turned_into_inches(way: Way, what: str, words: str) -> None:
    (line,) = way_lines((way_out(way, what),), INCH)
    assert line.partition(":")[0] == words


def assumption(low_feed: float, high_feed: float) -> Sensitivity:
    low, high = (
        Outcome(assumed=assumed, spindle_speed=speed, feed=feed, room=room)
        for assumed, speed, feed, room in (
            ("20 µm", 320.0, low_feed, 14.84),
            ("45 µm", 1270.0, high_feed, 1.03),
        )
    )
    return Sensitivity(
        assumption="edge radius",
        measure_by="a magnifier and a gauge wire, or a fresh edge",
        low=low,
        high=high,
        spread=1.0,
    )


def test_an_assumption_is_said_with_both_ends_and_what_settles_it() -> None:
    assert sensitivity_lines((assumption(0.04, 0.0508),), METRIC) == [
        (
            "edge radius: 20 µm gives 320 rev/min, 0.040 mm/rev, room 14.8; 45 µm gives 1270 "
            "rev/min, 0.051 mm/rev, room 1.0 (settled by a magnifier and a gauge wire, or a "
            "fresh edge)"
        ),
    ]
    (line,) = sensitivity_lines((assumption(0.0254, 0.0508),), INCH)
    assert "320 rev/min, 0.0010 in/rev, room 14.8" in line
    assert "1270 rev/min, 0.0020 in/rev, room 1.0" in line


@pytest.mark.parametrize(
    ("low", "high", "ends"),
    [
        (
            0.04,
            nan,
            "20 µm gives 320 rev/min, 0.040 mm/rev, room 14.8; 45 µm leaves no window",
        ),
        (
            nan,
            0.04,
            "20 µm leaves no window; 45 µm gives 1270 rev/min, 0.040 mm/rev, room 1.0",
        ),
        (nan, nan, "20 µm leaves no window; 45 µm leaves no window"),
    ],
)
def test_an_end_that_loses_the_window_says_so_and_no_number(
    low: float, high: float, ends: str
) -> None:
    (line,) = sensitivity_lines((assumption(low, high),), METRIC)
    assert line == (
        f"edge radius: {ends} (settled by a magnifier and a gauge wire, or a fresh edge)"
    )


def best(shop: Shop, material: str, blade: int, diameter: float, bore: float = 0.0) -> Cut:
    _, cut = recommended(
        shop,
        material=load_material(material),
        blade=shop.blades[blade],
        diameter=diameter,
        bore=bore,
    )
    return cut


# 50 mm bar: 25 + 1 = 26 mm out.
def test_the_ways_of_a_cell_are_told_the_best_first(example: Shop) -> None:
    assert cell_ways(example, best(example, "mild-steel", 2, 50.0)) == [
        (
            "let the blade stand out 26 mm, if it is long enough: tight, 160 rev/min and 0.040 "
            "mm/rev, ceiling 5.8 times the floor"
        ),
        "take blade 2.0 carbide: tight, 600 rev/min and 0.050 mm/rev, ceiling 2.0 times the floor",
        "take blade 3.0 carbide: tight, 500 rev/min and 0.050 mm/rev, ceiling 1.9 times the floor",
    ]


# The blade of 16 mm reaches 15 mm deep: enough for a tube of 50 x 30 mm, not for the solid bar.
def test_the_bore_of_the_cell_counts(example: Shop) -> None:
    ways = cell_ways(example, best(example, "mild-steel", 2, 50.0, bore=30.0))
    assert ways
    assert not [line for line in ways if "if it is long enough" in line]


def test_a_cell_that_nothing_helps_is_sent_to_the_saw(example: Shop) -> None:
    assert cell_ways(example, best(example, "mild-steel", 0, 100.0)) == [
        "none found: saw it off and face the end"
    ]


def test_the_assumptions_of_a_cell_are_told_the_one_most_worth_measuring_first(
    example: Shop,
) -> None:
    lines = cell_sensitivity(example, best(example, "mild-steel", 2, 25.0))
    assert [line.partition(":")[0] for line in lines[:2]] == ["grip of the chuck", "edge radius"]
    assert len(lines) == 6
    gone = cell_sensitivity(example, best(example, "mild-steel", 2, 80.0))
    assert all(line.count("leaves no window") == 2 for line in gone)


def test_in_inches_no_line_holds_millimetres(example: Shop) -> None:
    shop = replace(example, request=replace(example.request, units=INCH))
    for blade, diameter in ((2, 25.4), (2, 50.8), (0, 76.2)):
        cut = best(shop, "mild-steel", blade, diameter)
        for line in (*cell_ways(shop, cut), *cell_sensitivity(shop, cut)):
            assert " mm" not in line
