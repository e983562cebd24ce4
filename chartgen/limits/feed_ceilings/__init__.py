"""Ceilings of feed that are no matter of force: one file a limit, one line each here.

Speed cannot buy them off: with the parts in `force_capacities.HOLDING` and the start feed
they set the target. A ceiling broadcasts to (material, blade, diameter, trial speed), in
mm/rev; inf where it does not apply, 0 where no cut is possible.
"""

from collections.abc import Callable

from chartgen.limits.case import Case
from chartgen.limits.feed_ceilings.hand_pace import hand_pace
from chartgen.limits.feed_ceilings.insert_feed import insert_feed
from chartgen.limits.feed_ceilings.reach import reach
from chartgen.limits.reasons import Reason
from chartgen.quantities import FloatArray, MillimetresPerRev

FeedCeiling = Callable[[Case], MillimetresPerRev[FloatArray]]

FEED_CEILINGS: tuple[tuple[Reason, FeedCeiling], ...] = (
    (Reason.INSERT_FEED, insert_feed),
    (Reason.HAND_PACE, hand_pace),
    (Reason.REACH, reach),
)
