"""What feed may not fall below: the edge's own bluntness, and the skin of hard-working metals."""

from collections.abc import Callable

from chartgen.limits.case import Case
from chartgen.limits.reasons import Reason
from chartgen.quantities import FloatArray, MillimetresPerRev


def edge_floor(case: Case) -> MillimetresPerRev[FloatArray]:
    """Return the thinnest chip the edge can still cut."""
    return case.grid.edge_floor


def skin_floor(case: Case) -> MillimetresPerRev[FloatArray]:
    """Return the feed that cuts under the hardened skin; 0 where the metal has none."""
    return case.grid.skin_floor


FeedFloor = Callable[[Case], MillimetresPerRev[FloatArray]]

FEED_FLOORS: tuple[tuple[Reason, FeedFloor], ...] = (
    (Reason.EDGE_FLOOR, edge_floor),
    (Reason.SKIN_FLOOR, skin_floor),
)
