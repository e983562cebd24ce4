"""The speeds worth trying for each cell.

A listed speed is a trial as it stands. A range is tried at the start speed and at a ladder
of slower ones, each clipped into the range and under every cap and set as the dial can be
set; slower rungs matter where torque rises as speed falls. The corner of the torque curve,
where the motor gives its most for one cut, is tried too: below it no more is to be had.
"""

import math
from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from chartgen.limits.case import Trials
from chartgen.limits.grid import Grid
from chartgen.limits.spindle import Duration, Spindle, corner_speed
from chartgen.model.lathe import DrivePosition
from chartgen.physics.kinematics import spindle_speed
from chartgen.quantities import FloatArray, RevsPerMinute

# Fine near the start speed, where a few per cent of torque decide; coarse far below it.
LADDER = (1.0, 0.95, 0.9, 0.85, 0.8, 0.75, 0.7, 0.65, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1)


def make_trials(*, grid: Grid, spindle: Spindle, speed_cap: RevsPerMinute[FloatArray]) -> Trials:
    """Return the trial speeds of every drive position for every cell."""
    start = np.asarray(spindle_speed(cutting_speed=grid.start_speed, diameter=grid.diameter))
    positions = spindle.lathe.drive.positions
    corner = corner_speed(spindle.lathe.motor, spindle.allowances)
    blocks = [_speeds(position, start, speed_cap, corner) for position in positions]
    return _trials(spindle, positions, blocks)


def trials_at(*, spindle: Spindle, speed: RevsPerMinute[float]) -> Trials:
    """Return one trial at a given speed for each position that can run it.

    Where none can, the nearest position in ratio stands in: its motor is taken as geared
    to that speed, and it is for the caller to say that the lathe has no such speed.
    """
    positions = spindle.lathe.drive.positions
    able = [p for p in positions if p.slowest <= speed <= p.fastest]
    if not able:
        nearest = min(positions, key=lambda p: _distance(p, speed))
        able = [_geared_to(speed, nearest) if nearest.is_single_speed else nearest]
    blocks = [np.full((1, 1, 1, 1), speed) for _ in able]
    return _trials(spindle, able, blocks)


def _geared_to(speed: RevsPerMinute[float], position: DrivePosition) -> DrivePosition:
    ratio = position.motor_ratio * position.slowest / speed
    return replace(position, slowest=speed, fastest=speed, motor_ratio=ratio)


def _distance(position: DrivePosition, speed: float) -> float:
    return min(abs(math.log(speed / position.slowest)), abs(math.log(speed / position.fastest)))


def _speeds(
    position: DrivePosition, start: FloatArray, cap: FloatArray, corner_speed_of_motor: float
) -> FloatArray:
    if position.is_single_speed:
        return np.full((1, 1, 1, 1), position.slowest)
    ladder = np.array(LADDER).reshape(1, 1, 1, -1)
    step = position.dial_step
    top = np.minimum(cap, position.fastest)
    corner = np.full_like(start, corner_speed_of_motor / position.motor_ratio)
    wanted = np.concatenate([start * ladder, np.minimum(corner, start)], axis=3)
    speed = np.round(np.minimum(wanted, top) / step) * step
    # Rounding to the dial may have passed the cap by up to half a step.
    speed = np.where(speed > top, np.floor(top / step + 1e-9) * step, speed)
    return np.maximum(speed, position.slowest)


def _trials(
    spindle: Spindle, positions: Sequence[DrivePosition], blocks: Sequence[FloatArray]
) -> Trials:
    shape = np.broadcast_shapes(*(block.shape[:3] for block in blocks))
    counts = [block.shape[3] for block in blocks]

    def joined(parts: Sequence[FloatArray]) -> FloatArray:
        full = [np.broadcast_to(part, (*shape, part.shape[3])) for part in parts]
        return np.concatenate(full, axis=3)

    def torque(duration: Duration) -> FloatArray:
        return joined(
            [
                spindle.torque(position, block, duration)
                for position, block in zip(positions, blocks, strict=True)
            ]
        )

    return Trials(
        positions=tuple(positions),
        position=np.repeat(np.arange(len(positions)), counts),
        speed=joined(blocks),
        torque_continuous=torque(Duration.CONTINUOUS),
        torque_one_cut=torque(Duration.ONE_CUT),
        torque_stall=torque(Duration.STALL),
    )
