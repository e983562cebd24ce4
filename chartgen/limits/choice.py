"""The two-stage choice: what speed cannot buy off sets the feed, then the speed is chosen.

For each cell every trial speed gets a tier and a loss, and the lowest wins:

tier 0  over the soft floor of speed, feed at least `feed_give` of its target
tier 1  over the soft floor, feed down to its hard floor
tier 2  under the soft floor
none    no trial has a feed between floor and ceiling: no window

The loss is the distance from the start speed plus the feed given away, both as logarithms,
so that ten per cent of either weigh the same.
"""

import numpy as np

from chartgen.limits.case import Case
from chartgen.limits.dial import gearbox_feed, rounded_feed
from chartgen.limits.envelope import Envelope, highest, lowest
from chartgen.limits.feed_ceilings import FEED_CEILINGS, TORQUE_CEILINGS
from chartgen.limits.feed_floors import FEED_FLOORS
from chartgen.limits.reasons import CODES, Reason
from chartgen.limits.way_out import nearest_way_out
from chartgen.limits.window import Windows
from chartgen.model.shop import Feeding, LengthUnits
from chartgen.physics.kinematics import spindle_speed
from chartgen.quantities import BoolArray, FloatArray

# Keys of the choice: a tier outweighs any loss, a miss any tier, a forbidden speed any miss.
_TIER = 1e2
_MISS = 1e4
_FORBIDDEN = 1e8
_SLIP = 1e-9


def choose(case: Case, units: LengthUnits) -> Windows:
    """Return the window and the recommended cut of every cell of a case."""
    grid, trials = case.grid, case.trials
    start = np.asarray(spindle_speed(cutting_speed=grid.start_speed, diameter=grid.diameter))
    target, ceiling = feed_target_and_ceiling(case)
    floor = highest([(reason, limit(case)) for reason, limit in FEED_FLOORS])
    feed = np.minimum(target, ceiling.value)
    if case.feeding is Feeding.POWER:
        feed = gearbox_feed(feed=feed, feeds=case.lathe.cross_slide.power_feeds)

    allowed = (trials.speed <= case.speed_cap * (1.0 + _SLIP)) & (
        trials.speed <= case.allowances.speed_over_start * start * (1.0 + _SLIP)
    )
    key = _key(case, start=start, target=target, feed=feed, floor=floor.value, allowed=allowed)
    best = np.argmin(key, axis=3)[..., np.newaxis]

    def at_best(values: FloatArray) -> FloatArray:
        full = np.broadcast_to(values, key.shape)
        return np.take_along_axis(full, best, axis=3)[..., 0]

    shape = grid.shape
    best_key = np.take_along_axis(key, best, axis=3)[..., 0]
    speed = at_best(trials.speed)
    flat_floor = np.broadcast_to(floor.value[..., 0], shape)
    flat_ceiling = at_best(ceiling.value)
    chosen = at_best(feed)
    if case.feeding is Feeding.HAND:
        chosen = rounded_feed(feed=chosen, floor=flat_floor, ceiling=flat_ceiling, units=units)
    has_window = (best_key < _MISS) & np.isfinite(chosen)
    chosen = np.where(has_window, chosen, np.nan)

    ceiling_code = at_best(ceiling.code.astype(np.float64)).astype(np.int8)
    floor_code = np.broadcast_to(floor.code[..., 0], shape)
    too_fast = best_key >= _FORBIDDEN
    floor_code = np.where(too_fast, np.int8(CODES[Reason.SLOWEST_SPINDLE]), floor_code)
    ceiling_code = np.where(too_fast, np.int8(CODES[Reason.EDGE_SPEED]), ceiling_code)
    if case.feeding is Feeding.POWER:
        room = (flat_ceiling >= flat_floor) & ~has_window & ~too_fast
        ceiling_code = np.where(room, np.int8(CODES[Reason.GEARBOX_FEED]), ceiling_code)

    is_tight = has_window & _is_tight(case, chosen, flat_floor, flat_ceiling)
    return Windows(
        grid=grid,
        positions=trials.positions,
        has_window=has_window,
        is_tight=is_tight,
        is_slow=has_window & _is_slow(case, speed, start[..., 0]),
        wants_power_feed=has_window & _wants_power_feed(case, chosen * speed),
        position=trials.position[best[..., 0]],
        spindle_speed=speed,
        start_speed=np.broadcast_to(start[..., 0], shape),
        speed_cap=np.broadcast_to(case.speed_cap[..., 0], shape),
        feed=chosen,
        floor=flat_floor,
        floor_code=floor_code,
        ceiling=flat_ceiling,
        ceiling_code=ceiling_code,
        way_out=nearest_way_out(grid, has_window=has_window, is_tight=is_tight),
    )


def feed_target_and_ceiling(case: Case) -> tuple[FloatArray, Envelope]:
    """Return the feed wanted at each trial speed, and the lowest of all its ceilings."""
    bought_by_nothing = [(reason, limit(case)) for reason, limit in FEED_CEILINGS]
    target = np.minimum(case.grid.start_feed, lowest(bought_by_nothing).value)
    torque = [(reason, limit(case, target)) for reason, limit in TORQUE_CEILINGS]
    return target, lowest([*torque, *bought_by_nothing])


def _key(
    case: Case,
    *,
    start: FloatArray,
    target: FloatArray,
    feed: FloatArray,
    floor: FloatArray,
    allowed: BoolArray,
) -> FloatArray:
    speed = case.trials.speed
    tiny = 1e-12
    given_away = np.log(np.maximum(target, tiny) / np.maximum(feed, tiny))
    loss = np.abs(np.log(speed / start)) + np.maximum(given_away, 0.0)
    soft_floor = np.asarray(
        spindle_speed(cutting_speed=case.grid.soft_floor, diameter=case.grid.diameter)
    )
    over_soft_floor = speed >= soft_floor * (1.0 - _SLIP)
    firm = feed >= case.allowances.feed_give * target * (1.0 - _SLIP)
    tier = np.where(over_soft_floor, np.where(firm, 0.0, 1.0), 2.0)
    holds = (feed >= floor * (1.0 - _SLIP)) & (feed > 0.0)
    miss = _MISS * (2.0 - np.minimum(feed / floor, 1.0)) + loss
    return np.where(allowed, np.where(holds, tier * _TIER + loss, miss), _FORBIDDEN + loss)


def _is_tight(case: Case, feed: FloatArray, floor: FloatArray, ceiling: FloatArray) -> BoolArray:
    grid, allowances = case.grid, case.allowances
    narrow = ceiling < allowances.tight_feed * floor
    timid = feed < allowances.feed_give * grid.start_feed[..., 0] * (1.0 - _SLIP)
    deep = grid.is_steel & (grid.depth > allowances.depth_over_width * grid.width)
    return np.asarray(narrow | timid | deep[..., 0])


def _is_slow(case: Case, speed: FloatArray, start: FloatArray) -> BoolArray:
    """Return where the edge runs slower than it likes.

    Under the soft floor always; far under the start speed only where it is the choice that
    holds it back, since no other blade helps against the fastest spindle speed.
    """
    grid = case.grid
    soft_floor = np.asarray(spindle_speed(cutting_speed=grid.soft_floor, diameter=grid.diameter))[
        ..., 0
    ]
    held_back = speed < 0.95 * np.broadcast_to(case.speed_cap[..., 0], speed.shape)
    poor = grid.is_carbide[..., 0] & (speed < case.allowances.poor_speed * start) & held_back
    return np.asarray((speed < soft_floor * (1.0 - _SLIP)) | poor)


def _wants_power_feed(case: Case, feed_rate: FloatArray) -> BoolArray:
    if case.feeding is Feeding.POWER:
        return np.zeros(feed_rate.shape, dtype=np.bool_)
    turns = feed_rate / case.lathe.cross_slide.travel_per_turn
    return np.asarray(turns < case.allowances.handle_turns_least)
