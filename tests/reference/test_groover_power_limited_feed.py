"""M. P. Groover, Fundamentals of Modern Manufacturing, problem 21.21 [GROOS].

The feed that a 25 kW lathe of 90 % efficiency can pull at 200 m/min and 6 mm depth in carbon
steel of 275 HB (2.8 J/mm³), without and with the size effect of figure 20.14 [GROO5].
"""

import numpy as np
import pytest
from scipy.optimize import brentq  # type: ignore[import-untyped]

from chartgen.physics.cutting import (
    cutting_power,
    feed_for_force,
    force_from_torque,
    force_from_unit_energy,
)
from chartgen.physics.kinematics import spindle_speed
from chartgen.physics.motor import torque_from_power
from chartgen.reference.tables import load_size_effect

AT_EDGE = 25_000.0 * 0.9  # W
SPEED = 200.0  # m/min
DEPTH = 6.0  # mm
UNIT_ENERGY = 2.8  # J/mm³
DIAMETER = 100.0  # mm; any will do, the force does not depend on it

WITHOUT_SIZE_FACTOR = 0.402  # mm/rev, printed
WITH_SIZE_FACTOR = 0.45  # mm/rev, printed as about


def size_factor(thickness: float) -> float:
    """Return the factor of figure 20.14 in a straight line between the table's points."""
    thicknesses, factors = load_size_effect()
    return float(np.interp(thickness, thicknesses, factors))


def feed_at(factor: float) -> float:
    """Return the feed that takes all the power at the edge, the size factor given."""
    n = spindle_speed(cutting_speed=SPEED, diameter=DIAMETER)
    force = force_from_torque(torque=torque_from_power(power=AT_EDGE, speed=n), diameter=DIAMETER)
    return float(
        feed_for_force(
            force=force,
            width=DEPTH,
            specific_force=1000.0 * UNIT_ENERGY * factor,
            thickness_exponent=0.0,
        )
    )


def spare_power(feed: float, factor: float) -> float:
    """Return what the lathe has left over at a feed [W]."""
    force = force_from_unit_energy(
        width=DEPTH, feed=feed, unit_energy=UNIT_ENERGY, size_factor=factor
    )
    return float(AT_EDGE - cutting_power(force=force, cutting_speed=SPEED))


def test_without_size_factor_the_feed_is_0402() -> None:
    assert feed_at(1.0) == pytest.approx(WITHOUT_SIZE_FACTOR, abs=0.0005)


def test_at_that_feed_no_power_is_left_over() -> None:
    root = brentq(lambda feed: spare_power(feed, 1.0), 0.01, 2.0)
    assert root == pytest.approx(WITHOUT_SIZE_FACTOR, abs=0.0005)


def test_with_size_factor_the_feed_settles_near_045() -> None:
    feed = feed_at(1.0)
    for _ in range(20):
        feed = feed_at(size_factor(feed))
    # The figure is read to 3 % by either reader, and feed goes as one over the factor.
    assert feed == pytest.approx(WITH_SIZE_FACTOR, rel=0.03)
    # It has settled: one more round moves it no further, and no power is left over.
    assert feed_at(size_factor(feed)) == pytest.approx(feed, rel=1e-6)
    assert spare_power(feed, size_factor(feed)) == pytest.approx(0.0, abs=0.1)


@pytest.mark.parametrize(
    ("thickness", "read"),
    [(0.13, 1.25), (0.19, 1.1), (0.38, 0.95), (0.40, 0.9), (0.50, 0.875), (0.75, 0.80)],
)
def test_the_author_reads_his_figure_as_the_table_does(thickness: float, read: float) -> None:
    # Values used in the printed solutions; 0.50 mm appears as 0.85 and as 0.9. Two readings
    # of one curve, each to 3 %, and the print keeps to steps of 0.05.
    assert size_factor(thickness) == pytest.approx(read, rel=0.05)
