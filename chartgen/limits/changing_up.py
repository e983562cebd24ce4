"""Changing the spindle up in a cut: where, and to what, as a hand can follow it."""

import math
from dataclasses import dataclass

import numpy as np

from chartgen.limits.allowances import Allowances, allowances_for
from chartgen.limits.force import high_force
from chartgen.limits.reasons import Reason
from chartgen.limits.speed_caps import SPEED_CAPS
from chartgen.limits.spindle import Duration, Spindle, make_spindle
from chartgen.limits.window import Windows
from chartgen.model.lathe import DrivePosition
from chartgen.model.shop import Feeding, LengthUnits, Shop
from chartgen.physics.cutting import cutting_torque
from chartgen.physics.kinematics import cutting_speed
from chartgen.physics.step_up import StepUpPlan, step_up_plan
from chartgen.quantities import (
    FloatArray,
    MetresPerMinute,
    Millimetres,
    NewtonMetres,
    Newtons,
    RevsPerMinute,
    frozen_array,
)

MOST_CHANGES = 3
"""A hand on the speed knob is a hand off the work: no plan asks for more."""
LEAST_CHANGE: Millimetres[float] = 6.0
"""Nearer to the centre the cut is over before the knob is turned."""
LEAST_GAIN = 1.2
"""A change to less than so many times the speed is not worth a hand."""
CHANGE_STEP = {LengthUnits.METRIC: 0.5, LengthUnits.INCH: 25.4 / 32.0}
"""How finely [mm] a diameter can be watched while it is cut."""
# Without a floor of speed to keep over, the spindle follows when half the speed is gone.
_SHARE_WITHOUT_FLOOR = 0.5
_SLIP = 1e-9


def changes_up(
    shop: Shop, windows: Windows, cell: tuple[int, int, int], soft_floor: MetresPerMinute[float]
) -> StepUpPlan:
    """Return the changes up as a hand can follow them; one step where there are none.

    The surface speed of the start is the ceiling, so no step passes what the edge bears. A
    speed at which the drive does not give the torque needed where it would be taken is struck
    out and the plan made anew.
    """
    diameter = float(windows.grid.diameter[0, 0, cell[2], 0])
    start = float(windows.spindle_speed[cell])
    ceiling = float(cutting_speed(spindle_speed=start, diameter=diameter))
    drive = _drive(shop, windows, cell)
    speeds = _speeds_to_change_to(shop, windows, cell)
    while speeds.size:
        # Equal ratios reach the fastest speed in the changes there may be.
        ratio = (float(speeds[-1]) / start) ** (1.0 / MOST_CHANGES)
        plan = step_up_plan(
            outer_diameter=diameter,
            inner_diameter=0.0,
            start=start,
            speeds=speeds,
            top=float(speeds[-1]),
            floor_speed=min(
                soft_floor or _SHARE_WITHOUT_FLOOR * ceiling, ceiling / max(ratio, LEAST_GAIN)
            ),
            ceiling_speed=ceiling,
        )
        plan = _as_followed(plan, CHANGE_STEP[shop.request.units])
        taken = plan.spindle_speeds[1:]
        weak = taken[drive.needs(plan.start_diameters[1:]) > drive.gives(taken) * (1.0 + _SLIP)]
        if not weak.size:
            return plan
        speeds = frozen_array(speeds[speeds != weak[0]])
    return one_step(diameter, start)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Drive:
    """What one cut needs of the drive and what its position gives."""

    spindle: Spindle
    position: DrivePosition
    duration: Duration
    force: Newtons[float]

    def needs(self, diameter: Millimetres[FloatArray]) -> NewtonMetres[FloatArray]:
        """Return the torque needed at diameters, on the high side."""
        return np.asarray(cutting_torque(force=self.force, diameter=diameter))

    def gives(self, speed: RevsPerMinute[FloatArray]) -> NewtonMetres[FloatArray]:
        """Return the torque that may be used at spindle speeds."""
        return np.minimum(
            self.spindle.torque(self.position, speed, self.duration),
            self.spindle.torque(self.position, speed, Duration.STALL),
        )


def _drive(shop: Shop, windows: Windows, cell: tuple[int, int, int]) -> _Drive:
    allowances = allowances_for(shop)
    start, feed = float(windows.spindle_speed[cell]), float(windows.feed[cell])
    depth = float(windows.grid.depth[0, 0, cell[2], 0])
    is_short = depth <= allowances.one_cut_minutes * feed * start * (1.0 + _SLIP)
    force = high_force(windows.grid, np.full((1, 1, 1, 1), feed), allowances)
    return _Drive(
        spindle=make_spindle(shop.lathe, allowances),
        position=windows.positions[int(windows.position[cell])],
        duration=Duration.ONE_CUT if is_short else Duration.CONTINUOUS,
        force=float(force[cell[0], cell[1], 0, 0]),
    )


def _speeds_to_change_to(
    shop: Shop, windows: Windows, cell: tuple[int, int, int]
) -> RevsPerMinute[FloatArray]:
    """Return the faster speeds that the dial can be set to in the cut, rising.

    Only those of the position in use, since a belt is not moved in a cut; under every cap
    that is no matter of surface speed, and as fast as the hand can feed.
    """
    allowances = allowances_for(shop)
    position = windows.positions[int(windows.position[cell])]
    start, feed = float(windows.spindle_speed[cell]), float(windows.feed[cell])
    if position.is_single_speed:
        return frozen_array([])
    top = min(position.fastest, _speed_cap(shop, windows, cell, allowances))
    if shop.request.feeding is Feeding.HAND:
        pace = allowances.handle_turns_most * shop.lathe.cross_slide.travel_per_turn
        top = min(top, pace / feed)
    step = position.dial_step
    first, last = math.floor(start / step + _SLIP) + 1, math.floor(top / step + _SLIP)
    return frozen_array(step * np.arange(first, last + 1, dtype=np.float64))


def _speed_cap(
    shop: Shop, windows: Windows, cell: tuple[int, int, int], allowances: Allowances
) -> RevsPerMinute[float]:
    """Return the lowest cap on spindle speed, that of the edge apart: it rises on the way in."""
    shape = (*windows.grid.shape, 1)
    caps = [
        np.broadcast_to(cap(windows.grid, shop, allowances), shape)[(*cell, 0)]
        for reason, cap in SPEED_CAPS
        if reason is not Reason.EDGE_SPEED
    ]
    return float(min(caps))


def _as_followed(plan: StepUpPlan, step: Millimetres[float]) -> StepUpPlan:
    """Return a plan changed up at round diameters, later rather than sooner, a few times."""
    outer, start = float(plan.start_diameters[0]), float(plan.spindle_speeds[0])
    changes: dict[float, float] = {}
    last = start
    for at, speed in zip(plan.start_diameters[1:], plan.spindle_speeds[1:], strict=True):
        seen_at = math.floor(float(at) / step + _SLIP) * step
        if seen_at < LEAST_CHANGE or len(changes) == MOST_CHANGES:
            break
        if speed >= LEAST_GAIN * last * (1.0 - _SLIP) and seen_at not in changes:
            changes[seen_at] = last = float(speed)
    return StepUpPlan(
        spindle_speeds=frozen_array([start, *changes.values()]),
        start_diameters=frozen_array([outer, *changes]),
        end_diameters=frozen_array([*changes, float(plan.end_diameters[-1])]),
    )


def one_step(diameter: Millimetres[float], speed: RevsPerMinute[float]) -> StepUpPlan:
    """Return the plan of a cut that keeps its speed."""
    return StepUpPlan(
        spindle_speeds=frozen_array([speed]),
        start_diameters=frozen_array([diameter]),
        end_diameters=frozen_array([0.0]),
    )
