"""The two-stage choice: what speed cannot buy off sets the feed, then the speed is chosen.

For each cell every trial speed gets a tier and a loss, and the lowest wins:

tier 0  over the soft floor of speed, feed at least `feed_give` of its target
tier 1  over the soft floor, feed down to what a hand can still hold over its floor
tier 2  under the soft floor, with such a feed
tier 3  a feed between floor and ceiling, but hardly any room to hold it in
none    no trial has a feed between floor and ceiling: no window

Where no metal builds up the soft floor is `poor_speed` of the start speed, so that no feed is
bought with a crawl.

The loss is the distance from the start speed plus the feed given away, both as logarithms,
so that ten per cent of either weigh the same.
"""

import numpy as np

from chartgen.limits.case import Case
from chartgen.limits.dial import gearbox_feed, rounded_feed
from chartgen.limits.dig_in import dig_in, motor_ratios
from chartgen.limits.force_capacities.grip import slip_force
from chartgen.limits.reasons import CODES, Reason
from chartgen.limits.regimes import Regimes, regimes
from chartgen.limits.tightness import DIAL_SLIP, is_slow, tightness, wants_power_feed
from chartgen.limits.way_out import nearest_way_out
from chartgen.limits.window import Windows
from chartgen.model.shop import Feeding, LengthUnits
from chartgen.physics.cutting import force_from_torque
from chartgen.physics.kinematics import spindle_speed
from chartgen.quantities import FloatArray, IntArray

# Keys of the choice: a tier outweighs any loss, a miss any tier, a forbidden speed any miss.
_TIER = 1e2
_MISS = 1e4
_FORBIDDEN = 1e8
_SLIP = 1e-9
# Steps of a feed gearbox are seldom wider than this ratio: common practice, no source.
_NEAREST_GEARBOX_FEED = 0.5


def choose(case: Case, units: LengthUnits) -> Windows:
    """Return the window and the recommended cut of every cell of a case."""
    grid, trials = case.grid, case.trials
    start = np.asarray(spindle_speed(cutting_speed=grid.start_speed, diameter=grid.diameter))
    both = regimes(case)
    speed = np.concatenate([trials.speed, trials.speed], axis=3)
    feed = np.minimum(both.target, both.most)
    if case.feeding is Feeding.POWER:
        feed = gearbox_feed(
            wanted=both.target,
            least=both.least,
            most=both.most,
            feeds=case.lathe.cross_slide.power_feeds,
        )
    key = _key(case, both=both, start=start, speed=speed, feed=feed)
    best, chosen = _best_that_can_be_set(case, both, key=key, feed=feed, units=units)

    def at_best(values: FloatArray) -> FloatArray:
        full = np.broadcast_to(values, key.shape)
        return np.take_along_axis(full, best, axis=3)[..., 0]

    shape = grid.shape
    best_key = at_best(key)
    has_window = (best_key < _MISS) & np.isfinite(chosen)
    chosen = np.where(has_window, chosen, np.nan)
    chosen_speed = at_best(speed)
    floor = np.broadcast_to(both.floor.value[..., 0], shape)
    ceiling = at_best(both.ceiling)
    ceiling_code = np.take_along_axis(both.ceiling_code, best, axis=3)[..., 0]
    floor_code = np.broadcast_to(both.floor.code[..., 0], shape)
    too_fast = best_key >= _FORBIDDEN
    floor_code = np.where(too_fast, np.int8(CODES[Reason.SLOWEST_SPINDLE]), floor_code)
    cap_code = np.broadcast_to(case.speed_cap_code[..., 0], shape)
    ceiling_code = np.where(too_fast, cap_code, ceiling_code)
    if case.feeding is Feeding.POWER:
        room = (ceiling >= floor) & ~has_window & ~too_fast
        ceiling_code = np.where(room, np.int8(CODES[Reason.GEARBOX_FEED]), ceiling_code)

    positions = trials.position[best[..., 0] % trials.position.size]
    twice = [trials.torque_stall, trials.torque_stall]
    stall_torque = at_best(np.concatenate(twice, axis=3))
    slips = np.broadcast_to(slip_force(case, grip_safety=1.0), (*shape, trials.position.size))
    slips = at_best(np.concatenate([slips, slips], axis=3))
    tight_flags = has_window * tightness(
        case,
        feed=chosen,
        floor=floor,
        ceiling=ceiling,
        slips=slips,
        stalls=np.asarray(force_from_torque(torque=stall_torque, diameter=grid.diameter[..., 0])),
    )
    return Windows(
        grid=grid,
        positions=trials.positions,
        has_window=has_window,
        is_tight=tight_flags > 0,
        tight_flags=tight_flags,
        is_slow=has_window & is_slow(case, chosen_speed, start[..., 0]),
        wants_power_feed=has_window & wants_power_feed(case, chosen * chosen_speed),
        dig_in=dig_in(
            case,
            feed=chosen,
            speed=chosen_speed,
            motor_ratio=motor_ratios(trials.positions)[positions],
            stall_torque=stall_torque,
            slips=slips,
        ),
        position=positions,
        spindle_speed=chosen_speed,
        start_speed=np.broadcast_to(start[..., 0], shape),
        speed_cap=np.broadcast_to(case.speed_cap[..., 0], shape),
        feed=chosen,
        floor=floor,
        floor_code=floor_code,
        ceiling=ceiling,
        ceiling_code=ceiling_code,
        way_out=nearest_way_out(grid, has_window=has_window, is_tight=tight_flags > 0),
    )


def _best_that_can_be_set(
    case: Case, both: Regimes, *, key: FloatArray, feed: FloatArray, units: LengthUnits
) -> tuple[IntArray, FloatArray]:
    """Return the best trial of each cell (last axis kept) and its feed as it can be set.

    A best trial without a settable feed in it is struck out and the next one taken, so
    `key` changes; NaN stands where no trial is left.
    """
    while True:
        best = np.argmin(key, axis=3)[..., np.newaxis]
        chosen = np.take_along_axis(feed, best, axis=3)[..., 0]
        if case.feeding is Feeding.POWER:
            return best, np.where(chosen > 0.0, chosen, np.nan)
        chosen = rounded_feed(
            feed=chosen,
            floor=np.take_along_axis(both.least, best, axis=3)[..., 0],
            ceiling=np.take_along_axis(both.most, best, axis=3)[..., 0],
            units=units,
        )
        best_key = np.take_along_axis(key, best, axis=3)
        struck = (best_key < _MISS) & np.isnan(chosen)[..., np.newaxis]
        if not struck.any():
            return best, chosen
        np.put_along_axis(key, best, np.where(struck, _MISS, best_key), axis=3)


def _key(
    case: Case, *, both: Regimes, start: FloatArray, speed: FloatArray, feed: FloatArray
) -> FloatArray:
    tiny = 1e-12
    allowed = speed <= np.minimum(case.speed_cap, case.allowances.speed_over_start * start) * (
        1.0 + _SLIP
    )
    given_away = np.log(np.maximum(both.target, tiny) / np.maximum(feed, tiny))
    loss = np.abs(np.log(speed / start)) + np.maximum(given_away, 0.0)
    soft_floor = np.asarray(
        spindle_speed(cutting_speed=case.grid.soft_floor, diameter=case.grid.diameter)
    )
    soft_floor = np.maximum(soft_floor, case.allowances.poor_speed * start)
    over_soft_floor = speed >= soft_floor * (1.0 - DIAL_SLIP)
    by_hand = case.feeding is Feeding.HAND
    # A gearbox has only its own feeds: the one nearest to the target gives nothing away.
    give = case.allowances.feed_give if by_hand else _NEAREST_GEARBOX_FEED
    firm = feed >= give * both.target * (1.0 - _SLIP)
    room = case.allowances.room_by_hand if by_hand else 1.0
    held = feed >= room * both.floor.value * (1.0 - _SLIP)
    tier = np.where(over_soft_floor, np.where(firm, 0.0, 1.0), 2.0)
    tier = np.where(held, tier, 3.0)
    holds = (feed >= both.least * (1.0 - _SLIP)) & (feed > 0.0)
    miss = _MISS * (2.0 - np.minimum(feed / both.floor.value, 1.0)) + loss
    return np.where(allowed, np.where(holds, tier * _TIER + loss, miss), _FORBIDDEN + loss)
