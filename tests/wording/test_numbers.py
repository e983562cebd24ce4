"""Rounding and writing numbers: never a looser limit, never a feed out of its window."""

import math

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from chartgen.model.shop import LengthUnits
from chartgen.wording.numbers import (
    feed_label,
    length_label,
    write_cutting_speed,
    write_feed,
    write_feed_ceiling,
    write_feed_floor,
    write_feed_rate,
    write_length,
    write_pace,
    write_speed,
    write_speed_ceiling,
)

METRIC, INCH = LengthUnits.METRIC, LengthUnits.INCH
MM = {METRIC: 1.0, INCH: 25.4}
feeds = st.floats(0.002, 0.5)


def test_feeds_and_lengths_carry_the_unit_of_the_card() -> None:
    assert (feed_label(METRIC), feed_label(INCH)) == ("mm/rev", "in/rev")
    assert (length_label(METRIC), length_label(INCH)) == ("mm", "in")


def test_a_settable_feed_is_written_in_full() -> None:
    assert write_feed(0.05, METRIC) == "0.050"
    assert write_feed(0.0508, INCH) == "0.0020"


@pytest.mark.parametrize(
    ("feed", "units", "floor", "ceiling"),
    [
        (0.0603, METRIC, "0.061", "0.060"),
        (0.0270, METRIC, "0.027", "0.027"),
        (0.9 * 30.0 / 1000.0, METRIC, "0.027", "0.027"),
        (0.0508, INCH, "0.0020", "0.0020"),
        (0.0600, INCH, "0.0024", "0.0023"),
        (0.0, METRIC, "0.000", "0.000"),
        (math.inf, METRIC, "none", "none"),
        (math.inf, INCH, "none", "none"),
    ],
)
def test_a_ceiling_is_rounded_down_and_a_floor_up(
    feed: float, units: LengthUnits, floor: str, ceiling: str
) -> None:
    assert write_feed_floor(feed, units) == floor
    assert write_feed_ceiling(feed, units) == ceiling


@settings(max_examples=200, deadline=None)
@given(feed=feeds, units=st.sampled_from(LengthUnits))
def test_no_printed_limit_is_looser_than_the_computed_one(feed: float, units: LengthUnits) -> None:
    finest = {METRIC: 0.001, INCH: 0.00254}[units]
    hair = 1e-5 * finest  # a limit a float's error off a whole step counts as on it
    ceiling = float(write_feed_ceiling(feed, units)) * MM[units]
    floor = float(write_feed_floor(feed, units)) * MM[units]
    assert feed - finest < ceiling <= feed + hair
    assert feed - hair <= floor < feed + finest


@pytest.mark.parametrize(
    ("speed", "written", "as_ceiling"),
    [
        (1270.0, "1270", "1270"),
        (2177.7, "2178", "2177"),
        (9.5, "9.5", "9"),
        (10.0, "10", "10"),
        (249.9999999999, "250", "250"),
        (math.inf, "inf", "none"),
    ],
)
def test_a_speed_is_rounded_to_the_turn_and_as_a_ceiling_down(
    speed: float, written: str, as_ceiling: str
) -> None:
    assert write_speed(speed) == written
    assert write_speed_ceiling(speed) == as_ceiling


@pytest.mark.parametrize(
    ("speed", "units", "expected"),
    [
        (99.7, METRIC, "100 m/min"),
        (20.0, METRIC, "20 m/min"),
        (12.34, METRIC, "12.3 m/min"),
        (30.48, INCH, "100 ft/min"),
    ],
)
def test_a_surface_speed_has_a_decimal_only_where_it_is_slow(
    speed: float, units: LengthUnits, expected: str
) -> None:
    assert write_cutting_speed(speed, units) == expected


@pytest.mark.parametrize(
    ("length", "units", "expected"),
    [
        (25.0, METRIC, "25"),
        (1.6, METRIC, "1.6"),
        (12.75, METRIC, "12.75"),
        (1.5875, METRIC, "1.59"),
        (25.4, INCH, "1"),
        (12.7, INCH, "1/2"),
        (38.1, INCH, "1 1/2"),
        (1.5875, INCH, "1/16"),
        (25.4 * 63.0 / 64.0, INCH, "63/64"),
        (2.0, INCH, "0.079"),
    ],
)
def test_a_length_in_inches_is_a_fraction_where_it_is_one(
    length: float, units: LengthUnits, expected: str
) -> None:
    assert write_length(length, units) == expected


def test_a_feed_rate_carries_its_unit() -> None:
    assert write_feed_rate(63.5, METRIC) == "63.5 mm/min"
    assert write_feed_rate(63.5, INCH) == "2.50 in/min"


# Nobody counts tenths of a second over ten, nor halves near one.
@pytest.mark.parametrize(
    ("seconds", "expected"),
    [
        (42.3, "42"),
        (10.4, "10"),
        (7.3, "7.5"),
        (3.1, "3.0"),
        (2.3, "2.3"),
        (1.89, "1.9"),
        (0.62, "0.6"),
    ],
)
def test_a_pace_in_a_wide_window_is_rounded_to_what_can_be_counted(
    seconds: float, expected: str
) -> None:
    assert write_pace(seconds=seconds, feed=0.05, floor=0.01, ceiling=0.2) == expected


@pytest.mark.parametrize(
    ("seconds", "floor", "ceiling", "expected"),
    [
        (7.3, 0.01, 0.0500, "7.5"),  # longer means less feed
        (7.7, 0.01, 0.0500, "8.0"),  # the nearest would mean too much feed
        (7.3, 0.0495, 0.2, "7.0"),  # the nearest would mean too little
        (7.3, 0.0499, 0.0501, "7.3"),  # no half second fits: a tenth
        (7.26, 0.0499, 0.0501, "7.25"),  # no tenth fits: a twentieth
        (7.3, 0.04999, 0.05001, "7.3"),
    ],
)
def test_a_pace_is_rounded_to_the_side_or_the_step_that_stays_inside(
    seconds: float, floor: float, ceiling: float, expected: str
) -> None:
    assert write_pace(seconds=seconds, feed=0.05, floor=floor, ceiling=ceiling) == expected


def test_a_turn_quicker_than_any_step_is_written_in_hundredths() -> None:
    assert write_pace(seconds=0.013, feed=0.05, floor=0.0499, ceiling=0.0501) == "0.01"


@settings(max_examples=300, deadline=None, derandomize=True)
@given(
    seconds=st.floats(0.5, 90.0),
    floor=st.floats(0.005, 0.1),
    room=st.floats(1.001, 1.02) | st.floats(1.0, 3.0),
    share=st.floats(0.0, 1.0),
)
def test_a_printed_pace_means_a_feed_inside_the_window_wherever_a_hundredth_of_a_second_can(
    seconds: float, floor: float, room: float, share: float
) -> None:
    ceiling = floor * room
    feed = floor + share * (ceiling - floor)
    longest, shortest = (feed * seconds / end for end in (floor, ceiling))
    assume(math.floor(longest * 100.0 - 1e-6) >= math.ceil(shortest * 100.0 + 1e-6))
    written = float(write_pace(seconds=seconds, feed=feed, floor=floor, ceiling=ceiling))
    assert floor * (1.0 - 1e-6) <= feed * seconds / written <= ceiling * (1.0 + 1e-6)
