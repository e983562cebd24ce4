"""What reaches the spindle in each drive position, at the speed where it is strongest."""

from dataclasses import dataclass

import numpy as np

from chartgen.limits.allowances import allowances_for
from chartgen.limits.spindle import Duration, Spindle, corner_speed, make_spindle
from chartgen.model.lathe import DrivePosition
from chartgen.model.shop import Shop
from chartgen.physics.motor import power_from_torque
from chartgen.quantities import NewtonMetres, RevsPerMinute, Watts


@dataclass(frozen=True, slots=True, kw_only=True)
class SpindleTorque:
    """One drive position: torques by duration at a speed, and the watts of one cut there."""

    position: DrivePosition
    speed: RevsPerMinute[float]
    continuous: NewtonMetres[float]
    one_cut: NewtonMetres[float]
    stall: NewtonMetres[float]
    power_of_one_cut: Watts[float]


def shaft_power(shop: Shop) -> Watts[float]:
    """Return the power at the motor's shaft [W]."""
    return make_spindle(shop.lathe, allowances_for(shop)).shaft_power


def spindle_torques(shop: Shop) -> tuple[SpindleTorque, ...]:
    """Return what each position gives that the lathe may run at all."""
    spindle = make_spindle(shop.lathe, allowances_for(shop))
    drive = shop.lathe.drive
    return tuple(
        _of(spindle, position)
        for position in drive.positions
        if position.slowest <= drive.fastest_spindle
    )


def _of(spindle: Spindle, position: DrivePosition) -> SpindleTorque:
    speed = _strongest_speed(spindle, position)
    torques = {
        duration: float(spindle.torque(position, np.array([speed]), duration)[0])
        for duration in Duration
    }
    one_cut = torques[Duration.ONE_CUT]
    return SpindleTorque(
        position=position,
        speed=speed,
        continuous=torques[Duration.CONTINUOUS],
        one_cut=one_cut,
        stall=torques[Duration.STALL],
        power_of_one_cut=float(power_from_torque(torque=one_cut, speed=speed)),
    )


def _strongest_speed(spindle: Spindle, position: DrivePosition) -> RevsPerMinute[float]:
    """Return the speed of the most power that full torque still has, within the position."""
    fastest = min(position.fastest, spindle.lathe.drive.fastest_spindle)
    if position.readings:
        inside = [r for r in position.readings if position.slowest <= r.speed <= fastest]
        return max(inside, key=lambda r: r.torque * r.speed).speed if inside else fastest
    corner = corner_speed(spindle.lathe.motor, spindle.allowances) / position.motor_ratio
    return min(max(corner, position.slowest), fastest)
