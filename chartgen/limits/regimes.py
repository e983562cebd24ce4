"""Each trial speed twice: as a cut short enough to lean on the motor, and as a long one.

Which torque may be used depends on how long the cut takes, and that on the feed: a solid cut
at or above its `shortest feed` is over within the time of one cut. Taking the two as trials
of their own keeps what was weighed up and what is printed the same cut.
"""

from dataclasses import dataclass
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

from chartgen.limits.case import Case
from chartgen.limits.envelope import Envelope, highest, lowest
from chartgen.limits.feed_ceilings import FEED_CEILINGS
from chartgen.limits.feed_floors import FEED_FLOORS
from chartgen.limits.force import feed_for_high_force
from chartgen.limits.force_capacities import DRIVING, HOLDING
from chartgen.limits.force_capacities.torque import shortest_feed
from chartgen.limits.reasons import Reason
from chartgen.quantities import FloatArray

Kind = TypeVar("Kind", np.float64, np.int8)

# Just under the feed that would make the cut short again.
_UNDER = 1.0 - 1e-6


@dataclass(frozen=True, slots=True, kw_only=True, eq=False, repr=False)
class Regimes:
    """The trials of both regimes joined along the last axis (2 K), in mm/rev.

    `target` is the feed wanted, `ceiling` what ends the window above, [`least`, `most`] the
    feeds that keep the cut in its regime and the window. `floor` has no regime.
    """

    target: FloatArray
    ceiling: FloatArray
    ceiling_code: NDArray[np.int8]
    least: FloatArray
    most: FloatArray
    floor: Envelope


def regimes(case: Case) -> Regimes:
    """Return the trials of a case as one cut first, then as a long cut."""
    shape = (*case.grid.shape, case.trials.speed.shape[3])
    held = lowest([(reason, capacity(case)) for reason, capacity in HOLDING])
    whatever_speed = lowest([(reason, limit(case)) for reason, limit in FEED_CEILINGS])
    whatever_speed = _lower(_as_feed(case, held), whatever_speed)
    target = np.broadcast_to(np.minimum(case.grid.start_feed, whatever_speed.value), shape)
    floor = highest([(reason, limit(case)) for reason, limit in FEED_FLOORS])
    short = shortest_feed(case)

    def joined(one_cut: NDArray[Kind], long_cut: NDArray[Kind]) -> NDArray[Kind]:
        parts = (np.broadcast_to(one_cut, shape), np.broadcast_to(long_cut, shape))
        return np.concatenate(parts, axis=3)

    def ceiling_without(reason: Reason) -> Envelope:
        driven = lowest([(r, capacity(case)) for r, capacity in DRIVING if r is not reason])
        return _lower(_as_feed(case, driven), whatever_speed)

    one_cut = ceiling_without(Reason.TORQUE_CONTINUOUS)
    long_cut = ceiling_without(Reason.TORQUE_ONE_CUT)
    return Regimes(
        target=np.concatenate([target, target], axis=3),
        ceiling=joined(one_cut.value, long_cut.value),
        ceiling_code=joined(one_cut.code, long_cut.code),
        least=joined(np.maximum(floor.value, short), floor.value),
        most=joined(one_cut.value, np.minimum(long_cut.value, short * _UNDER)),
        floor=floor,
    )


def _as_feed(case: Case, capacity: Envelope) -> Envelope:
    """Return capacities of force as ceilings of feed: one power law for all of them."""
    feed = feed_for_high_force(case.grid, capacity.value, case.allowances)
    code = np.broadcast_to(capacity.code, np.broadcast_shapes(capacity.code.shape, feed.shape))
    return Envelope(feed, code)


def _lower(first: Envelope, second: Envelope) -> Envelope:
    """Return the lower of two envelopes at each point; the first wins a tie."""
    wins = second.value < first.value
    return Envelope(
        np.where(wins, second.value, first.value), np.where(wins, second.code, first.code)
    )
