"""How far a chosen cut can be trusted: tight, slow for its edge, too slow for a hand."""

from enum import IntFlag

import numpy as np

from chartgen.limits.case import Case
from chartgen.limits.force import nominal_force
from chartgen.model.shop import Feeding
from chartgen.physics.kinematics import spindle_speed
from chartgen.quantities import (
    BoolArray,
    FloatArray,
    IntArray,
    MillimetresPerMinute,
    MillimetresPerRev,
    Newtons,
    RevsPerMinute,
)

_SLIP = 1e-9
# A soft floor is no exact number: a dial set within this share of it stands on it.
DIAL_SLIP = 0.01
# A speed this near to its cap counts as held by the cap.
_AT_THE_CAP = 0.95


class Tight(IntFlag):
    """Why a cell is tight; several may hold at once."""

    NARROW = 1
    TIMID = 2
    DEEP = 4
    LOOSE = 8

    @property
    def words(self) -> str:
        """The reasons in a few words each."""
        said = {
            Tight.NARROW: "ceiling near the floor",
            Tight.TIMID: "feed far under the start feed",
            Tight.DEEP: "slot deep for its width",
            Tight.LOOSE: "grip small for the force",
        }
        return ", ".join(words for reason, words in said.items() if reason in self)


def tightness(
    case: Case,
    *,
    feed: MillimetresPerRev[FloatArray],
    floor: MillimetresPerRev[FloatArray],
    ceiling: MillimetresPerRev[FloatArray],
    slips: Newtons[FloatArray],
    stalls: Newtons[FloatArray],
) -> IntArray:
    """Return why a cell (M, B, D) has little room, as `Tight` flags; 0 where it has enough.

    Its ceiling is near its floor, its feed far under the start feed, the slot in steel deep
    for its width, or the grip less than `grip_tight` times the expected force (`slips` is the
    force at which the work slips, no reserve taken off; waived where the drive stalls before).
    """
    grid, allowances = case.grid, case.allowances
    narrow = ceiling < allowances.tight_feed * floor
    # A gearbox has only its own feeds: the nearest to the start feed is not timid.
    give = allowances.feed_give if case.feeding is Feeding.HAND else 0.0
    timid = feed < give * grid.start_feed[..., 0] * (1.0 - _SLIP)
    deep = grid.is_steel & (grid.depth > allowances.depth_over_width * grid.width)
    expected = nominal_force(grid, feed[..., np.newaxis])[..., 0]
    loose = (slips < allowances.grip_tight * expected) & (stalls > slips / allowances.grip_safety)
    reasons = (
        (Tight.NARROW, narrow),
        (Tight.TIMID, timid),
        (Tight.DEEP, deep[..., 0]),
        (Tight.LOOSE, loose),
    )
    return np.asarray(sum(np.where(holds, int(reason), 0) for reason, holds in reasons))


def is_slow(
    case: Case, speed: RevsPerMinute[FloatArray], start: RevsPerMinute[FloatArray]
) -> BoolArray:
    """Return where the edge runs slower than it likes, for speeds (M, B, D).

    Under the soft floor always; far under the start speed only where it is the choice that
    holds it back, since no other blade helps against the fastest spindle speed.
    """
    grid = case.grid
    soft_floor = np.asarray(spindle_speed(cutting_speed=grid.soft_floor, diameter=grid.diameter))
    held_back = speed < _AT_THE_CAP * np.broadcast_to(case.speed_cap[..., 0], speed.shape)
    poor = (
        grid.is_carbide[..., 0]
        & (speed < (1.0 - DIAL_SLIP) * case.allowances.poor_speed * start)
        & held_back
    )
    return np.asarray((speed < soft_floor[..., 0] * (1.0 - DIAL_SLIP)) | poor)


def wants_power_feed(case: Case, feed_rate: MillimetresPerMinute[FloatArray]) -> BoolArray:
    """Return where the handle turns so slowly that a hand cannot keep it even."""
    if case.feeding is Feeding.POWER:
        return np.zeros(feed_rate.shape, dtype=np.bool_)
    turns = feed_rate / case.lathe.cross_slide.travel_per_turn
    return np.asarray(turns < case.allowances.handle_turns_least)
