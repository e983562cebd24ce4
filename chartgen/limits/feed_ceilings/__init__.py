"""The ceilings of feed: one file a limit, one line each in the catalogue here.

FEED_CEILINGS are limits that speed cannot buy off; with the start feed they set the target.
TORQUE_CEILINGS depend on the speed chosen; of one-cut and continuous torque only that one
counts which fits the time of the cut (see `regimes`). A ceiling broadcasts to (material,
blade, diameter, trial speed), in mm/rev; inf where it does not apply, 0 where no cut is
possible.
"""

from collections.abc import Callable

from chartgen.limits.case import Case
from chartgen.limits.feed_ceilings.hand_pace import hand_pace
from chartgen.limits.feed_ceilings.insert_feed import insert_feed
from chartgen.limits.feed_ceilings.reach import reach
from chartgen.limits.feed_ceilings.stall import stall
from chartgen.limits.feed_ceilings.torque import continuous_torque, one_cut_torque
from chartgen.limits.reasons import Reason
from chartgen.quantities import FloatArray, MillimetresPerRev

FeedCeiling = Callable[[Case], MillimetresPerRev[FloatArray]]

FEED_CEILINGS: tuple[tuple[Reason, FeedCeiling], ...] = (
    (Reason.INSERT_FEED, insert_feed),
    (Reason.HAND_PACE, hand_pace),
    (Reason.REACH, reach),
)

TORQUE_CEILINGS: tuple[tuple[Reason, FeedCeiling], ...] = (
    (Reason.TORQUE_ONE_CUT, one_cut_torque),
    (Reason.TORQUE_CONTINUOUS, continuous_torque),
    (Reason.STALL, stall),
)
