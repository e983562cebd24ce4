"""One cut at a given speed and feed, held against the same limits one by one."""

from dataclasses import dataclass
from enum import Enum

import numpy as np

from chartgen.limits.case import Case
from chartgen.limits.cut_force import Force, cut_force
from chartgen.limits.feed_ceilings import FEED_CEILINGS
from chartgen.limits.feed_floors import FEED_FLOORS
from chartgen.limits.force import feed_for_high_force
from chartgen.limits.force_capacities import DRIVING, HOLDING
from chartgen.limits.force_capacities.torque import shortest_feed
from chartgen.limits.reasons import Reason
from chartgen.limits.run import make_case, windows
from chartgen.limits.speed_caps import SPEED_CAPS
from chartgen.limits.tightness import DIAL_SLIP
from chartgen.limits.window import Windows
from chartgen.model.blade import Blade
from chartgen.model.lathe import DrivePosition
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.physics.cutting import (
    cutting_power,
    cutting_torque,
)
from chartgen.physics.kinematics import cutting_speed, feed_rate, seconds_per_turn, spindle_speed
from chartgen.physics.motor import power_from_torque
from chartgen.physics.time import plunge_time
from chartgen.quantities import (
    FloatArray,
    MetresPerMinute,
    Millimetres,
    MillimetresPerMinute,
    MillimetresPerRev,
    Minutes,
    NewtonMetres,
    RevsPerMinute,
    Seconds,
    Watts,
)

_SLIP = 1e-9


class Side(Enum):
    """Where a cut lies: the verdict of `try`."""

    INSIDE = "inside"
    TOO_TIMID = "too timid"
    TOO_BOLD = "too bold"
    NO_WINDOW = "no window"


@dataclass(frozen=True, slots=True)
class FeedLimit:
    """A limit of feed at the cut's own speed: inf or 0 where it does not apply."""

    reason: Reason
    feed: MillimetresPerRev[float]


@dataclass(frozen=True, slots=True)
class SpeedLimit:
    """A limit of spindle speed."""

    reason: Reason
    speed: RevsPerMinute[float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """One cut, whole: speeds, pace, force, power, torque, every limit, the verdict."""

    case: Case
    material: Material
    blade: Blade
    diameter: Millimetres[float]
    bore: Millimetres[float]
    spindle_speed: RevsPerMinute[float]
    position: DrivePosition
    lathe_has_speed: bool
    cutting_speed: MetresPerMinute[float]
    feed: MillimetresPerRev[float]
    feed_rate: MillimetresPerMinute[float]
    seconds_per_turn: Seconds[float]
    time: Minutes[float]
    force: Force | None
    is_one_cut: bool
    torque_needed: NewtonMetres[float]
    torque_continuous: NewtonMetres[float]
    torque_one_cut: NewtonMetres[float]
    torque_stall: NewtonMetres[float]
    power_needed: Watts[float]
    power_continuous: Watts[float]
    power_one_cut: Watts[float]
    start_speed: MetresPerMinute[float]
    soft_floor_speed: MetresPerMinute[float]
    floors: tuple[FeedLimit, ...]
    ceilings: tuple[FeedLimit, ...]
    speed_limits: tuple[SpeedLimit, ...]
    side: Side

    @property
    def floor(self) -> FeedLimit:
        """The highest floor of feed."""
        return max(self.floors, key=lambda limit: limit.feed)

    @property
    def ceiling(self) -> FeedLimit:
        """The lowest ceiling of feed at this speed."""
        return min(self.ceilings, key=lambda limit: limit.feed)

    @property
    def speed_ceiling(self) -> SpeedLimit:
        """The lowest limit of speed."""
        return min(self.speed_limits, key=lambda limit: limit.speed)

    @property
    def torque_available(self) -> NewtonMetres[float]:
        """Torque that counts for a cut of this length."""
        return self.torque_one_cut if self.is_one_cut else self.torque_continuous

    @property
    def is_under_soft_floor(self) -> bool:
        """Whether metal may build up on the edge at this speed."""
        return self.cutting_speed < self.soft_floor_speed * (1.0 - DIAL_SLIP)


def recommended(
    shop: Shop,
    *,
    material: Material,
    blade: Blade,
    diameter: Millimetres[float],
    bore: Millimetres[float] = 0.0,
) -> tuple[Windows, Cut]:
    """Return the window of one cell, and the recommended cut, or the nearest miss, in full."""
    cell = windows(shop, materials=[material], blades=shop.blades, diameters=[diameter], bore=bore)
    index = (0, shop.blades.index(blade), 0)
    feed = cell.feed[index] if cell.has_window[index] else cell.floor[index]
    cut = assess(
        shop,
        material=material,
        blade=blade,
        diameter=diameter,
        bore=bore,
        speed=float(cell.spindle_speed[index]),
        feed=float(feed),
        position=cell.positions[int(cell.position[index])],
        cell_has_window=bool(cell.has_window[index]),
    )
    return cell, cut


def assess(
    shop: Shop,
    *,
    material: Material,
    blade: Blade,
    diameter: Millimetres[float],
    bore: Millimetres[float] = 0.0,
    speed: RevsPerMinute[float],
    feed: MillimetresPerRev[float],
    position: DrivePosition | None = None,
    cell_has_window: bool = True,
) -> Cut:
    """Return one cut held against every limit.

    Parameters
    ----------
    shop, material, blade
        What cuts what on which lathe.
    diameter
        Bar diameter [mm].
    bore
        Bore [mm], 0 for solid bar.
    speed
        Spindle speed [rev/min].
    feed
        Feed [mm/rev].
    position
        Drive position; None for the one with most torque among those that run the speed.
    cell_has_window
        Whether any speed has a feed between floor and ceiling here.

    Raises
    ------
    ValueError
        If the bore leaves nothing to cut.
    """
    case = make_case(
        shop, materials=[material], blades=[blade], diameters=[diameter], bore=bore, speed=speed
    )
    trials, grid = case.trials, case.grid
    names = [p.name for p in trials.positions]
    if position is not None and position.name in names:
        index = names.index(position.name)
    else:
        index = int(np.argmax(trials.torque_one_cut[0, 0, 0]))
    torques = [
        float(t[0, 0, 0, index])
        for t in (trials.torque_continuous, trials.torque_one_cut, trials.torque_stall)
    ]
    surface = float(cutting_speed(spindle_speed=speed, diameter=diameter))

    def pick(values: FloatArray) -> float:
        return float(np.broadcast_to(values, trials.speed.shape)[0, 0, 0, index])

    # The cut's own feed decides which torque it may lean on.
    short = feed >= pick(shortest_feed(case))
    other = Reason.TORQUE_CONTINUOUS if short else Reason.TORQUE_ONE_CUT
    forces = [
        (r, np.full((1, 1, 1, 1), np.inf) if r is other else capacity(case))
        for r, capacity in (*DRIVING, *HOLDING)
    ]
    ceilings = [
        FeedLimit(r, pick(feed_for_high_force(grid, capacity, case.allowances)))
        for r, capacity in forces
    ]
    ceilings += [FeedLimit(r, pick(limit(case))) for r, limit in FEED_CEILINGS]
    floors = [FeedLimit(r, pick(limit(case))) for r, limit in FEED_FLOORS]
    speed_limits = [SpeedLimit(r, pick(cap(grid, shop, case.allowances))) for r, cap in SPEED_CAPS]
    force = cut_force(case, material, blade, feed)
    needed = force.high if force else 0.0
    return Cut(
        case=case,
        material=material,
        blade=blade,
        diameter=diameter,
        bore=bore,
        spindle_speed=speed,
        position=trials.positions[index],
        lathe_has_speed=any(p.slowest <= speed <= p.fastest for p in shop.lathe.drive.positions),
        cutting_speed=surface,
        feed=feed,
        feed_rate=float(feed_rate(feed=feed, spindle_speed=speed)),
        seconds_per_turn=float(
            seconds_per_turn(
                feed_rate=feed * speed, travel_per_turn=shop.lathe.cross_slide.travel_per_turn
            )
        ),
        time=float(
            plunge_time(
                outer_diameter=diameter, inner_diameter=bore, feed=feed, spindle_speed=speed
            )
        ),
        force=force,
        is_one_cut=short,
        torque_needed=float(cutting_torque(force=needed, diameter=diameter)),
        torque_continuous=torques[0],
        torque_one_cut=torques[1],
        torque_stall=torques[2],
        power_needed=float(cutting_power(force=needed, cutting_speed=surface)),
        power_continuous=float(power_from_torque(torque=torques[0], speed=speed)),
        power_one_cut=float(power_from_torque(torque=torques[1], speed=speed)),
        start_speed=pick(grid.start_speed),
        soft_floor_speed=pick(grid.soft_floor),
        floors=tuple(floors),
        ceilings=tuple(ceilings),
        speed_limits=tuple(speed_limits),
        side=_side(
            speed=speed,
            feed=feed,
            floors=floors,
            ceilings=ceilings,
            speed_limits=speed_limits,
            cell_has_window=cell_has_window,
        ),
    )


def spindle_speed_at(cutting_speed: MetresPerMinute[float], cut: Cut) -> RevsPerMinute[float]:
    """Return the spindle speed that gives a surface speed at the cut's diameter."""
    return float(spindle_speed(cutting_speed=cutting_speed, diameter=cut.diameter))


def _side(
    *,
    speed: float,
    feed: float,
    floors: list[FeedLimit],
    ceilings: list[FeedLimit],
    speed_limits: list[SpeedLimit],
    cell_has_window: bool,
) -> Side:
    if not cell_has_window:
        return Side.NO_WINDOW
    over_speed = speed > min(limit.speed for limit in speed_limits) * (1.0 + _SLIP)
    over_feed = feed > min(limit.feed for limit in ceilings) * (1.0 + _SLIP)
    if over_speed or over_feed:
        return Side.TOO_BOLD
    if feed < max(limit.feed for limit in floors) * (1.0 - _SLIP):
        return Side.TOO_TIMID
    return Side.INSIDE
