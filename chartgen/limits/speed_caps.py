"""What no spindle speed may exceed, whatever feed would bear it: one function a cap."""

from collections.abc import Callable

import numpy as np

from chartgen.limits.allowances import Allowances
from chartgen.limits.grid import Grid
from chartgen.limits.reasons import Reason
from chartgen.model.lathe import Chuck
from chartgen.model.shop import Shop
from chartgen.physics.kinematics import spindle_speed
from chartgen.physics.whip import critical_speed
from chartgen.quantities import FloatArray, RevsPerMinute


def edge_speed(grid: Grid, _shop: Shop, _allowances: Allowances) -> RevsPerMinute[FloatArray]:
    """Return the speed at which the tool material reaches its highest surface speed."""
    return np.asarray(spindle_speed(cutting_speed=grid.speed_ceiling, diameter=grid.diameter))


def fastest_spindle(_grid: Grid, shop: Shop, _allowances: Allowances) -> RevsPerMinute[FloatArray]:
    """Return the machine's own limit."""
    fastest = max(position.fastest for position in shop.lathe.drive.positions)
    return np.array(min(shop.lathe.drive.fastest_spindle, fastest)).reshape(1, 1, 1, 1)


def chuck_speed(_grid: Grid, shop: Shop, allowances: Allowances) -> RevsPerMinute[FloatArray]:
    """Return the speed marked on the chuck, or the cautious one of an unmarked chuck."""
    return np.array(largest_chuck_speed(shop.lathe.chuck, allowances)).reshape(1, 1, 1, 1)


def largest_chuck_speed(chuck: Chuck, allowances: Allowances) -> RevsPerMinute[float]:
    """Return the marked speed [rev/min], or the one that gives the allowed rim speed."""
    if chuck.marked_speed is not None:
        return chuck.marked_speed
    metres_per_minute = 60.0 * allowances.chuck_rim_speed
    return float(spindle_speed(cutting_speed=metres_per_minute, diameter=chuck.size))


def bar_whip(grid: Grid, shop: Shop, allowances: Allowances) -> RevsPerMinute[FloatArray]:
    """Return the allowed share of the critical speed of bar behind the spindle."""
    length = shop.work.bar_behind
    if length == 0.0:
        return np.full((1, 1, 1, 1), np.inf)
    critical = critical_speed(
        length=length,
        outer_diameter=grid.diameter,
        inner_diameter=grid.bore,
        elastic_modulus=grid.youngs_modulus,
        density=grid.density,
    )
    return np.asarray(allowances.whip_share * critical)


SpeedCap = Callable[[Grid, Shop, Allowances], RevsPerMinute[FloatArray]]

SPEED_CAPS: tuple[tuple[Reason, SpeedCap], ...] = (
    (Reason.EDGE_SPEED, edge_speed),
    (Reason.FASTEST_SPINDLE, fastest_spindle),
    (Reason.CHUCK_SPEED, chuck_speed),
    (Reason.BAR_WHIP, bar_whip),
)
