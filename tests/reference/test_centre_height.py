"""Edge off centre height: a derived angle, and forces measured in cut-off tests.

Cut-off tests on aluminium bars of 40 mm [JILM-18] p. 37: with the tool above the centre the
cutting force falls as the depth increases, with it below the centre the force rises. Force
falls as rake grows, so the sign of the change in working rake is tested.
"""

import numpy as np
import pytest

from chartgen.physics.centre import (
    pip_radius,
    rubbing_radius,
    working_clearance,
    working_rake,
)

RADII_ON_THE_WAY_IN = np.linspace(20.0, 1.0, 39)  # mm, a bar of 40 mm


def test_a_tenth_of_a_millimetre_turns_the_angles_by_115_degrees_near_the_centre() -> None:
    # Derived: asin(0.1 / 0.5) = 11.54°.
    assert working_rake(rake=0.0, height_error=0.1, radius=0.5) == pytest.approx(11.5, abs=0.05)
    assert working_clearance(clearance=7.0, height_error=0.1, radius=0.5) == pytest.approx(
        7.0 - 11.5, abs=0.05
    )


@pytest.mark.parametrize("height", [0.2, 0.5])
def test_above_the_centre_the_rake_grows_with_depth_as_the_measured_force_falls(
    height: float,
) -> None:
    rake = working_rake(rake=10.0, height_error=height, radius=RADII_ON_THE_WAY_IN)
    assert np.all(np.diff(rake) > 0.0)


@pytest.mark.parametrize("height", [-0.2, -0.5])
def test_below_the_centre_the_rake_falls_with_depth_as_the_measured_force_rises(
    height: float,
) -> None:
    rake = working_rake(rake=10.0, height_error=height, radius=RADII_ON_THE_WAY_IN)
    assert np.all(np.diff(rake) < 0.0)


def test_on_the_centre_nothing_changes_with_depth() -> None:
    rake = working_rake(rake=10.0, height_error=0.0, radius=RADII_ON_THE_WAY_IN)
    assert np.all(rake == 10.0)


@pytest.mark.parametrize("height", [-0.3, -0.05, 0.0, 0.05, 0.3])
def test_what_the_rake_gains_the_clearance_loses(height: float) -> None:
    rake = working_rake(rake=6.0, height_error=height, radius=RADII_ON_THE_WAY_IN)
    clearance = working_clearance(clearance=7.0, height_error=height, radius=RADII_ON_THE_WAY_IN)
    assert rake + clearance == pytest.approx(np.full_like(RADII_ON_THE_WAY_IN, 13.0))


def test_an_edge_above_the_centre_loses_its_clearance_at_the_rubbing_radius() -> None:
    radius = rubbing_radius(clearance=7.0, height_error=0.1)
    assert working_clearance(clearance=7.0, height_error=0.1, radius=radius) == pytest.approx(
        0.0, abs=1e-9
    )
    assert rubbing_radius(clearance=7.0, height_error=-0.1) == 0.0


def test_only_an_edge_below_the_centre_leaves_a_pip_of_that_radius() -> None:
    heights = np.array([-0.2, -0.1, 0.0, 0.1])
    assert pip_radius(height_error=heights) == pytest.approx(np.array([0.2, 0.1, 0.0, 0.0]))


def test_inside_the_pip_the_angle_stays_at_a_right_angle() -> None:
    assert working_rake(rake=0.0, height_error=-0.1, radius=0.02) == pytest.approx(-90.0)
