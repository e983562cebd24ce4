"""Feeds rounded to what can be set or held, never out of their window."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from chartgen.limits.dial import gearbox_feed, rounded_feed
from chartgen.model.shop import LengthUnits

METRIC, INCH = LengthUnits.METRIC, LengthUnits.INCH


def rounded(feed: float, floor: float, ceiling: float, units: LengthUnits = METRIC) -> float:
    one = rounded_feed(
        feed=np.array([feed]), floor=np.array([floor]), ceiling=np.array([ceiling]), units=units
    )
    return float(one[0])


@pytest.mark.parametrize(
    ("feed", "floor", "ceiling", "expected"),
    [
        (0.0476, 0.01, 0.20, 0.050),  # nearest
        (0.0474, 0.01, 0.20, 0.045),
        (0.0300, 0.01, 0.20, 0.030),
        (0.0290, 0.01, 0.20, 0.028),  # below 0.03 the step is 0.002
        (0.0229, 0.01, 0.20, 0.022),
        (0.0476, 0.01, 0.0480, 0.045),  # the nearest is over the ceiling
        (0.0474, 0.0460, 0.20, 0.050),  # the nearest is under the floor
        (0.0474, 0.0460, 0.0490, 0.047),  # only a finer step is inside, down first
        (0.0472, 0.0471, 0.0485, 0.048),  # and then up
    ],
)
def test_a_metric_feed_is_rounded_to_a_round_step_inside_its_window(
    feed: float, floor: float, ceiling: float, expected: float
) -> None:
    assert rounded(feed, floor, ceiling) == pytest.approx(expected)


def test_a_window_without_even_a_fine_step_in_it_counts_as_none() -> None:
    assert math.isnan(rounded(0.0275, 0.0271, 0.0279))


def test_nothing_is_rounded_to_no_feed_at_all() -> None:
    assert math.isnan(rounded(0.0, 0.0, 0.0))


@pytest.mark.parametrize(
    ("thou", "expected"),
    [(2.03, 2.0), (2.13, 2.2), (1.96, 2.0), (1.13, 1.1), (0.96, 1.0)],
)
def test_an_inch_feed_is_rounded_to_tenths_or_two_tenths_of_a_thousandth(
    thou: float, expected: float
) -> None:
    result = rounded(thou * 0.0254, 0.001, 1.0, INCH)
    assert result / 0.0254 == pytest.approx(expected)


@settings(max_examples=200, deadline=None)
@given(
    floor=st.floats(0.005, 0.1),
    room=st.floats(1.0, 4.0),
    share=st.floats(0.0, 1.0),
    units=st.sampled_from(LengthUnits),
)
def test_a_rounded_feed_lies_inside_its_window_or_there_is_none(
    floor: float, room: float, share: float, units: LengthUnits
) -> None:
    ceiling = floor * room
    feed = floor + share * (ceiling - floor)
    result = rounded(feed, floor, ceiling, units)
    finest = 0.001 if units is METRIC else 0.00254
    if math.isnan(result):
        assert ceiling - floor < finest
    else:
        assert floor - 1e-8 <= result <= ceiling + 1e-8
        in_steps = result / finest
        assert in_steps == pytest.approx(round(in_steps))


@pytest.mark.parametrize(
    ("feed", "expected"), [(0.05, 0.04), (0.04, 0.04), (0.039, 0.02), (0.3, 0.08), (0.01, 0.0)]
)
def test_the_gearbox_gives_no_feed_over_the_ceiling_however_near(
    feed: float, expected: float
) -> None:
    result = gearbox_feed(
        wanted=np.array([feed]),
        least=np.array([0.001]),
        most=np.array([feed]),
        feeds=(0.08, 0.02, 0.04),
    )
    assert result[0] == expected


def test_the_gearbox_gives_no_feed_under_the_floor_however_near() -> None:
    result = gearbox_feed(
        wanted=np.array([0.05, 0.05]),
        least=np.array([0.045, 0.045]),
        most=np.array([0.09, 0.07]),
        feeds=(0.08, 0.02, 0.04),
    )
    assert result.tolist() == [0.08, 0.0]


# The middle in ratio of 0.04 and 0.08 is 0.0566; of two as near the smaller is taken.
@pytest.mark.parametrize(
    ("wanted", "expected"),
    [(0.05, 0.04), (0.056, 0.04), (0.0032**0.5, 0.04), (0.057, 0.08), (0.2, 0.08), (0.001, 0.02)],
)
def test_the_gearbox_gives_its_nearest_feed_in_ratio(wanted: float, expected: float) -> None:
    result = gearbox_feed(
        wanted=np.array([wanted]),
        least=np.array([0.001]),
        most=np.array([0.5]),
        feeds=(0.08, 0.02, 0.04),
    )
    assert result[0] == expected
