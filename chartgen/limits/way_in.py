"""One solid cut from the outside to the centre: where to change up, ease, and let go."""

from dataclasses import dataclass

import numpy as np

from chartgen.limits.changing_up import CHANGE_STEP, changes_up, one_step
from chartgen.limits.dial import gearbox_feed, rounded_feed
from chartgen.limits.force import nominal_force
from chartgen.limits.window import Windows
from chartgen.model.lathe import DrivePosition
from chartgen.model.shop import Feeding, Shop
from chartgen.physics.centre import CentreFeedRule, feed_near_centre, speed_floor_diameter
from chartgen.physics.kinematics import cutting_speed
from chartgen.physics.step_up import StepUpPlan, plan_time
from chartgen.physics.workpiece import core_diameter_at_bend_off, core_diameter_at_twist_off
from chartgen.quantities import (
    MetresPerMinute,
    Millimetres,
    MillimetresPerRev,
    Minutes,
    Newtons,
    RevsPerMinute,
)

_SLIP = 1e-9


@dataclass(frozen=True, slots=True)
class Change:
    """Where the spindle is changed up, and to what."""

    diameter: Millimetres[float]
    spindle_speed: RevsPerMinute[float]


@dataclass(frozen=True, slots=True, kw_only=True)
class WayIn:
    """The way in of one cell's cut.

    `rough_below` is the diameter below which the surface speed is under the soft floor if the
    starting speed is kept, `rough_below_with_changes` if the changes are followed; None where
    nothing builds up. `eased_feed` holds inside `eased_from`; `eased_to_least` says that the
    edge would rub if the rule were followed all the way. `pip` is the core that the cut itself
    breaks off, None without force data. Times run to the centre, without turning the knob.
    """

    diameter: Millimetres[float]
    position: DrivePosition
    spindle_speed: RevsPerMinute[float]
    feed: MillimetresPerRev[float]
    changes: tuple[Change, ...]
    rough_below: Millimetres[float] | None
    rough_below_with_changes: Millimetres[float] | None
    eased_feed: MillimetresPerRev[float]
    eased_from: Millimetres[float]
    eased_to_least: bool
    pip: Millimetres[float] | None
    time: Minutes[float]
    time_with_changes: Minutes[float]


def way_in(
    shop: Shop,
    windows: Windows,
    cell: tuple[int, int, int],
    rule: CentreFeedRule = CentreFeedRule.TO_HALF,
) -> WayIn:
    """Return the way in of a cell's recommended cut.

    Raises
    ------
    ValueError
        If the cell has no window, or the work is bored and so has no centre.
    """
    if windows.grid.bore > 0.0:
        raise ValueError("bored work has no centre to cut to")
    if not windows.has_window[cell]:
        raise ValueError("a cell without a window has no cut to follow to the centre")
    diameter = float(windows.grid.diameter[0, 0, cell[2], 0])
    start, feed = float(windows.spindle_speed[cell]), float(windows.feed[cell])
    position = windows.positions[int(windows.position[cell])]
    soft_floor = float(windows.grid.soft_floor[cell[0], cell[1], 0, 0])
    plan = changes_up(shop, windows, cell, soft_floor)
    eased, eased_to_least = _eased_feed(shop, feed, float(windows.floor[cell]), rule)
    eased_from = min(rule.diameter, diameter)
    kept, step = one_step(diameter, start), CHANGE_STEP[shop.request.units]
    return WayIn(
        diameter=diameter,
        position=position,
        spindle_speed=start,
        feed=feed,
        changes=tuple(
            Change(float(at), float(speed))
            for at, speed in zip(plan.start_diameters[1:], plan.spindle_speeds[1:], strict=True)
        ),
        rough_below=_rough_below(kept, soft_floor, step),
        rough_below_with_changes=_rough_below(plan, soft_floor, step),
        eased_feed=eased,
        eased_from=eased_from,
        eased_to_least=eased_to_least,
        pip=_pip(windows, cell, feed=feed, eased=eased, eased_from=eased_from),
        time=_time(kept, feed=feed, eased=eased, eased_from=eased_from),
        time_with_changes=_time(plan, feed=feed, eased=eased, eased_from=eased_from),
    )


def _time(
    plan: StepUpPlan,
    *,
    feed: MillimetresPerRev[float],
    eased: MillimetresPerRev[float],
    eased_from: Millimetres[float],
) -> Minutes[float]:
    """Return the time to the centre; the last speed of a plan cuts the eased end."""
    last = float(plan.spindle_speeds[-1])
    longer = eased_from / (2.0 * last) * (1.0 / eased - 1.0 / feed)
    return float(plan_time(plan=plan, feed=feed)) + longer


def _rough_below(
    plan: StepUpPlan, soft_floor: MetresPerMinute[float], step: Millimetres[float]
) -> Millimetres[float] | None:
    """Return the outermost diameter at which a plan falls under the soft floor.

    A step that does so only in the last `step` before the change is not counted: a change at a
    round diameter is late by less.
    """
    if soft_floor == 0.0:
        return None
    under = speed_floor_diameter(
        outer_diameter=plan.start_diameters,
        inner_diameter=plan.end_diameters,
        start_speed=cutting_speed(spindle_speed=plan.spindle_speeds, diameter=plan.start_diameters),
        floor_speed=soft_floor,
    )
    late = np.where(plan.end_diameters > 0.0, step, 0.0)
    falls_under = under > plan.end_diameters + late + _SLIP
    return float(np.max(np.where(falls_under, under, 0.0)))


def _eased_feed(
    shop: Shop,
    feed: MillimetresPerRev[float],
    least: MillimetresPerRev[float],
    rule: CentreFeedRule,
) -> tuple[MillimetresPerRev[float], bool]:
    """Return the feed near the centre as it can be set, and whether it is held by the least."""
    wanted = float(feed_near_centre(feed=feed, diameter=0.0, rule=rule))
    if shop.request.feeding is Feeding.POWER:
        listed = gearbox_feed(
            wanted=np.array(wanted),
            least=np.array(least),
            most=np.array(feed),
            feeds=shop.lathe.cross_slide.power_feeds,
        )
        return float(listed), wanted < least
    eased = rounded_feed(
        feed=np.array(max(wanted, least)),
        floor=np.array(least),
        ceiling=np.array(feed),
        units=shop.request.units,
    )
    return float(eased), wanted < least


def _pip(
    windows: Windows,
    cell: tuple[int, int, int],
    *,
    feed: MillimetresPerRev[float],
    eased: MillimetresPerRev[float],
    eased_from: Millimetres[float],
) -> Millimetres[float] | None:
    """Return the core that the cut breaks off; at the full feed if it breaks before easing."""
    grid, (material, blade, _) = windows.grid, cell
    if not grid.has_force[material, 0, 0, 0]:
        return None
    strength = float(grid.tensile_strength[material, 0, 0, 0])
    width = float(grid.width[0, blade, 0, 0])

    def core(at: MillimetresPerRev[float]) -> Millimetres[float]:
        expected = nominal_force(grid, np.full((1, 1, 1, 1), at))
        force: Newtons[float] = float(expected[material, blade, 0, 0])
        return max(
            float(core_diameter_at_twist_off(force=force, tensile_strength=strength)),
            float(
                core_diameter_at_bend_off(force=force, arm=width / 2.0, tensile_strength=strength)
            ),
        )

    before = core(feed)
    return before if before >= eased_from else min(core(eased), eased_from)
