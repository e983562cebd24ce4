"""Nomograms: a straight line reads a true triple, to a billionth of a millimetre."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen.charts.nomogram import Nomogram, Scale, power_nomogram, speed_nomogram
from chartgen.model.shop import LengthUnits

both = pytest.mark.parametrize("units", list(LengthUnits))
PAGE = 180.0  # mm: no card's scales are taller
shares = st.floats(0.0, 1.0)


def value_at(scale: Scale, share: float) -> float:
    return float(scale.least * (scale.most / scale.least) ** share)


def off_the_line(nomogram: Nomogram, left: float, product: float, right: float) -> float:
    """Return by how many mm the middle point misses the line of the outer two on a page."""
    x1, y1 = nomogram.left.x * PAGE, nomogram.left.y(left) * PAGE
    x2, y2 = nomogram.middle.x * PAGE, nomogram.middle.y(product) * PAGE
    x3, y3 = nomogram.right.x * PAGE, nomogram.right.y(right) * PAGE
    # Twice the area of the triangle over its base, written out.
    return abs((x3 - x1) * (y2 - y1) - (x2 - x1) * (y3 - y1)) / math.hypot(x3 - x1, y3 - y1)


@given(shares, shares)
def test_a_ruler_reads_1000_v_over_pi_d(first: float, second: float) -> None:
    """N = 1000 v / (pi d), the definition of surface speed."""
    scales = speed_nomogram(LengthUnits.METRIC)
    v, d = value_at(scales.left, first), value_at(scales.right, second)
    n = 1000.0 * v / (math.pi * d)
    assert off_the_line(scales, v, n, d) < 1e-9
    assert scales.read(v, d) == pytest.approx(n, rel=1e-12)


@given(shares, shares)
def test_a_ruler_reads_12_v_over_pi_d_in_inches(first: float, second: float) -> None:
    """Rpm = 12 V / (pi D), as every handbook in inches prints it."""
    scales = speed_nomogram(LengthUnits.INCH)
    v, d = value_at(scales.left, first), value_at(scales.right, second)
    assert off_the_line(scales, v, 12.0 * v / (math.pi * d), d) < 1e-9


@given(shares, shares)
def test_a_ruler_reads_force_times_speed(first: float, second: float) -> None:
    """P = F v / 60, the definition of power; 1 N at 1 ft/min is 0.3048 / 60 W."""
    for units, metres in ((LengthUnits.METRIC, 1.0), (LengthUnits.INCH, 0.3048)):
        scales = power_nomogram(units)
        f, v = value_at(scales.left, first), value_at(scales.right, second)
        assert off_the_line(scales, f, f * v * metres / 60.0, v) < 1e-9


@both
@pytest.mark.parametrize("make", [speed_nomogram, power_nomogram])
def test_distances_are_as_the_moduli_and_the_middle_their_product_over_their_sum(
    make: type, units: LengthUnits
) -> None:
    """The rule of the parallel-scale nomogram, as [DOERFLER] gives it."""
    scales = make(units)
    m1, m2, m3 = (abs(s.modulus) for s in (scales.left, scales.right, scales.middle))
    assert (scales.middle.x - scales.left.x) / (scales.right.x - scales.middle.x) == pytest.approx(
        m1 / m2
    )
    assert m3 == pytest.approx(m1 * m2 / (m1 + m2))


@both
@pytest.mark.parametrize("make", [speed_nomogram, power_nomogram])
def test_every_scale_fills_the_height(make: type, units: LengthUnits) -> None:
    for scale in vars_of(make(units)):
        ends = sorted((scale.y(scale.least), scale.y(scale.most)))
        assert ends == pytest.approx([0.0, 1.0], abs=1e-12)
        assert scale.value(scale.y(scale.most)) == pytest.approx(scale.most)


def vars_of(nomogram: Nomogram) -> tuple[Scale, Scale, Scale]:
    return nomogram.left, nomogram.middle, nomogram.right


def test_a_worked_cut_is_read_off_the_scales() -> None:
    """100 m/min on a bar of one inch is 1253 rev/min: the definition, by hand."""
    assert speed_nomogram(LengthUnits.METRIC).read(100.0, 25.4) == pytest.approx(1253.0, abs=0.5)
