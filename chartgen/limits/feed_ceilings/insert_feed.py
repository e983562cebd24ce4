"""The largest feed the edge of a width stands in a family of materials."""

from chartgen.limits.case import Case
from chartgen.quantities import FloatArray, MillimetresPerRev


def insert_feed(case: Case) -> MillimetresPerRev[FloatArray]:
    """Return the largest printed feed for the insert width."""
    return case.grid.largest_feed
