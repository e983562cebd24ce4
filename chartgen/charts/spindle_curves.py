"""What the drive can give over the spindle's speeds, and what the recommended cuts ask of it."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from chartgen.limits.allowances import allowances_for
from chartgen.limits.force import high_force, nominal_force
from chartgen.limits.spindle import Duration, Spindle, corner_speed, make_spindle
from chartgen.limits.window import Windows
from chartgen.model.blade import Blade
from chartgen.model.lathe import DrivePosition
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.physics.cutting import cutting_torque
from chartgen.physics.motor import power_from_torque
from chartgen.quantities import (
    FloatArray,
    Millimetres,
    NewtonMetres,
    RevsPerMinute,
    Watts,
    frozen_array,
)

_POINTS = 40
_ANY_DURATION = (Duration.CONTINUOUS,)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False, repr=False)
class DriveCurve:
    """Torque [N·m] at the spindle over its speeds [rev/min] in one drive position.

    A position with a single speed has a single point. `duration` is None where the owner
    measured: readings stand for every duration.
    """

    position: DrivePosition
    duration: Duration | None
    speed: FloatArray
    torque: FloatArray

    @property
    def power(self) -> FloatArray:
        """Power at the spindle [W]."""
        return np.asarray(power_from_torque(torque=self.torque, speed=self.speed))


@dataclass(frozen=True, slots=True, kw_only=True)
class Demand:
    """What one recommended cut asks of the spindle at the start of the cut; high: high side."""

    blade: Blade
    diameter: Millimetres[float]
    speed: RevsPerMinute[float]
    torque: NewtonMetres[float]
    torque_high: NewtonMetres[float]

    @property
    def power(self) -> Watts[float]:
        """Power at the spindle [W]."""
        return float(power_from_torque(torque=self.torque, speed=self.speed))

    @property
    def power_high(self) -> Watts[float]:
        """Power at the spindle [W] with the force at the high side of its band."""
        return float(power_from_torque(torque=self.torque_high, speed=self.speed))


@dataclass(frozen=True, slots=True, kw_only=True)
class SpindleCurves:
    """The drive's curves, and the demand of every recommended cut of one material."""

    shop: Shop
    material: Material
    positions: tuple[DrivePosition, ...]
    curves: tuple[DriveCurve, ...]
    demands: tuple[Demand, ...]


def spindle_curves(
    shop: Shop,
    windows: Windows,
    material: Material,
    positions: Sequence[DrivePosition] | None = None,
) -> SpindleCurves:
    """Return the curves of some drive positions, or all, and one material's demands."""
    spindle = make_spindle(shop.lathe, allowances_for(shop))
    shown = shop.lathe.drive.positions if positions is None else tuple(positions)
    return SpindleCurves(
        shop=shop,
        material=material,
        positions=tuple(shown),
        curves=tuple(
            _curve(spindle, position, duration)
            for position in shown
            for duration in (_ANY_DURATION if position.readings else Duration)
        ),
        demands=_demands(shop, windows, material),
    )


def _curve(spindle: Spindle, position: DrivePosition, duration: Duration) -> DriveCurve:
    speed = _speeds(spindle, position)
    return DriveCurve(
        position=position,
        duration=None if position.readings else duration,
        speed=speed,
        torque=frozen_array(spindle.torque(position, speed, duration)),
    )


def _speeds(spindle: Spindle, position: DrivePosition) -> FloatArray:
    """Return the speeds of a position, evenly spaced as ratios, the corners among them."""
    if position.is_single_speed:
        return frozen_array([position.slowest])
    slowest = position.slowest
    fastest = min(position.fastest, max(slowest, spindle.lathe.drive.fastest_spindle))
    motor = spindle.lathe.motor
    corners = [
        corner / position.motor_ratio
        for corner in (
            motor.base_speed,
            motor.base_speed / 2.0,
            corner_speed(motor, spindle.allowances),
        )
    ]
    corners += [reading.speed for reading in position.readings]
    inside = [corner for corner in corners if slowest < corner < fastest]
    return frozen_array(np.unique([*np.geomspace(slowest, fastest, _POINTS), *inside]))


def _demands(shop: Shop, windows: Windows, material: Material) -> tuple[Demand, ...]:
    grid, allowances = windows.grid, allowances_for(shop)
    m = grid.materials.index(material)
    if material.force is None:
        return ()
    feed = np.where(windows.has_window, windows.feed, 0.0)[..., np.newaxis]
    low, high = (
        np.asarray(cutting_torque(force=force, diameter=grid.diameter))[..., 0]
        for force in (nominal_force(grid, feed), high_force(grid, feed, allowances))
    )
    return tuple(
        Demand(
            blade=blade,
            diameter=float(grid.diameter[0, 0, d, 0]),
            speed=float(windows.spindle_speed[m, b, d]),
            torque=float(low[m, b, d]),
            torque_high=float(high[m, b, d]),
        )
        for b, blade in enumerate(grid.blades)
        for d in range(grid.shape[2])
        if windows.has_window[m, b, d]
    )
