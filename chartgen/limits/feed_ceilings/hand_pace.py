"""How fast a hand can turn the cross-slide handle."""

import numpy as np

from chartgen.limits.case import Case
from chartgen.model.shop import Feeding
from chartgen.quantities import FloatArray, MillimetresPerRev


def hand_pace(case: Case) -> MillimetresPerRev[FloatArray]:
    """Return the feed at the fastest even pace of a hand; inf under power feed."""
    if case.feeding is Feeding.POWER:
        return np.full((1, 1, 1, 1), np.inf)
    travel_per_minute = case.allowances.handle_turns_most * case.lathe.cross_slide.travel_per_turn
    return travel_per_minute / case.trials.speed
