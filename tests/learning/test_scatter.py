"""Means, slopes and Student's t, held against an independent library and printed tables."""

import math

import numpy as np
import pytest
from scipy import stats  # type: ignore[import-untyped]

from chartgen.learning.scatter import (
    mean_of,
    odd_one,
    stiffness_of,
    student_probability,
    student_quantile,
)


@pytest.mark.parametrize("freedom", [1, 2, 3, 4, 5, 8, 13, 30, 101])
@pytest.mark.parametrize("level", [0.5, 0.6827, 0.95, 0.99, 0.9995])
def test_quantiles_are_those_of_an_independent_library(freedom: int, level: float) -> None:
    expected = stats.t.ppf((1.0 + level) / 2.0, freedom)
    assert student_quantile(level, freedom) == pytest.approx(expected, rel=1e-9)
    assert student_probability(expected, freedom) == pytest.approx(level, abs=1e-12)


@pytest.mark.parametrize(
    ("freedom", "printed"), [(1, 12.706), (2, 4.303), (4, 2.776), (10, 2.228), (30, 2.042)]
)
def test_quantiles_are_those_of_the_printed_table(freedom: int, printed: float) -> None:
    """The 95 % column of Student's table, in any handbook of statistics; from memory."""
    assert student_quantile(0.95, freedom) == pytest.approx(printed, abs=0.0005)


def test_the_interval_of_a_mean_is_the_published_one() -> None:
    """NIST/SEMATECH e-Handbook of Statistical Methods 1.3.5.2, from memory.

    195 readings with mean 9.261460 and standard deviation 0.022789: 9.258242 to 9.264679.
    """
    shape = np.linspace(-1.0, 1.0, 195)
    values = 9.261460 + shape * 0.022789 / shape.std(ddof=1)
    mean, half = mean_of(values.tolist(), level=0.95, scale_error=0.0)
    assert mean - half == pytest.approx(9.258242, abs=2e-6)
    assert mean + half == pytest.approx(9.264679, abs=2e-6)


def test_the_slope_is_that_of_least_squares_through_nothing() -> None:
    pulls, movements = [50.0, 98.0, 147.0, 196.0], [0.0031, 0.0059, 0.0096, 0.0121]
    (give,), (rest,), *_ = np.linalg.lstsq(np.array(pulls)[:, None], np.array(movements))
    value, half = stiffness_of(pulls, movements, level=0.95, scale_error=0.0)
    assert value == pytest.approx(1.0 / give, rel=1e-12)
    error = math.sqrt(rest / 3.0 / sum(p * p for p in pulls))
    assert half == pytest.approx(stats.t.ppf(0.975, 3) * error / give / give, rel=1e-9)


def test_a_scale_error_is_not_averaged_away() -> None:
    _, half = mean_of([40.0] * 50, level=0.95, scale_error=0.04)
    assert half == pytest.approx(1.6)


def test_means_and_slopes_hold_the_truth_as_often_as_they_say() -> None:
    chance = np.random.default_rng(20261125)
    trials, means, slopes = 2000, 0, 0
    pulls = [49.0, 98.0, 147.0, 196.0]
    for _ in range(trials):
        mean, half = mean_of(chance.normal(40.0, 3.0, 4).tolist(), level=0.95, scale_error=0.0)
        means += abs(mean - 40.0) <= half
        movements = [p / 15000.0 + chance.normal(0.0, 4e-4) for p in pulls]
        value, wide = stiffness_of(pulls, movements, level=0.95, scale_error=0.0)
        slopes += abs(value - 15000.0) <= wide
    # Four standard deviations of a count of 2000 at 95 % are 2 %.
    assert means / trials == pytest.approx(0.95, abs=0.02)
    assert slopes / trials == pytest.approx(0.95, abs=0.02)


def test_the_odd_one_is_found_only_where_it_is_odd() -> None:
    assert odd_one([38.0, 40.0, 41.0, 39.0, 120.0], scale_error=0.04, false_alarm=0.002) == 4
    assert odd_one([38.0, 40.0, 41.0, 39.0, 44.0], scale_error=0.04, false_alarm=0.002) is None
    assert odd_one([40.0, 40.0, 40.0, 41.0], scale_error=0.04, false_alarm=0.002) is None
    assert odd_one([40.0, 40.0, 400.0], scale_error=0.04, false_alarm=0.002) is None


def test_good_readings_are_seldom_called_odd() -> None:
    chance = np.random.default_rng(7)
    samples = (chance.normal(40.0, 3.0, 5).tolist() for _ in range(2000))
    called = sum(odd_one(s, scale_error=0.0, false_alarm=0.002) is not None for s in samples)
    assert called <= 15
