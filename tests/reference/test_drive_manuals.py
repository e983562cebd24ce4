"""Continuous torque of a motor with its own fan on an inverter: three manuals, three rules.

- Inverter drive manual 378133, p. 24 [DRIVE-A]: full torque from half of plate speed on.
- Inverter drive manual 2997341, p. 96 [DRIVE-B]: for longer under half of rated speed only
  with forced cooling or a larger motor.
- Inverter drive manual, p. 167 [DRIVE-C]: a curve, read from a damaged figure: 50 to 60 % of
  torque at 5 % of speed, 90 % at 33 %, 100 % at 100 %.
"""

import numpy as np
import pytest

from chartgen.physics.self_cooling import (
    cautious_share,
    full_at_base_speed,
    full_from_half_speed,
    none_under_half_speed,
)

SPEEDS = np.linspace(0.0, 2.0, 401)


@pytest.mark.parametrize("x", [0.5, 0.75, 1.0, 1.5])
def test_the_first_manual_gives_full_torque_from_half_speed_on(x: float) -> None:
    assert full_from_half_speed(speed_ratio=x) == pytest.approx(1.0)


def test_the_first_manual_gives_less_the_slower_it_turns_below_half_speed() -> None:
    below = full_from_half_speed(speed_ratio=SPEEDS[SPEEDS <= 0.5])
    assert np.all(np.diff(below) > 0.0)
    assert below[0] < 1.0


@pytest.mark.parametrize(("x", "share"), [(0.2, 0.0), (0.49, 0.0), (0.5, 1.0), (1.0, 1.0)])
def test_the_second_manual_promises_nothing_under_half_speed(x: float, share: float) -> None:
    assert none_under_half_speed(speed_ratio=x) == pytest.approx(share)


# A damaged figure is read to half a unit of its last digit at best.
@pytest.mark.parametrize(
    ("x", "least", "most"), [(0.05, 0.5, 0.6), (0.33, 0.895, 0.905), (1, 1, 1)]
)
def test_the_third_manual_prints_a_curve(x: float, least: float, most: float) -> None:
    assert least <= full_at_base_speed(speed_ratio=x) <= most


def test_the_default_lies_on_the_cautious_side_of_both_curves_and_on_one_of_them() -> None:
    lower = cautious_share(speed_ratio=SPEEDS)
    curves = [
        full_from_half_speed(speed_ratio=SPEEDS),
        full_at_base_speed(speed_ratio=SPEEDS),
    ]
    assert np.all([lower <= curve for curve in curves])
    assert np.all(np.isclose(lower, curves[0]) | np.isclose(lower, curves[1]))
    # From half speed on it is the second manual's word too, though that one allows more.
    fast = SPEEDS >= 0.5
    assert np.all(lower[fast] <= none_under_half_speed(speed_ratio=SPEEDS)[fast])
