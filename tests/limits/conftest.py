from collections.abc import Callable

import pytest

from chartgen.limits.cut import Cut
from chartgen.limits.reasons import Reason

# Allowances: reserve on the force, high side of the band under and from 0.1 mm on.
RESERVE, THIN_SIDE, THICK_SIDE, THIN_CHIP = 1.3, 1.35, 1.25, 0.1
# S235JR: kc1.1 1780 N/mm2, mc 0.17 [TBM].
SPECIFIC_FORCE, EXPONENT = 1780.0, 0.17


@pytest.fixture(scope="session")
def mild_steel_feed() -> Callable[[float, float], float]:
    """Return a function: force [N], insert width -> feed in mild steel whose high side it is."""

    def feed(force: float, width: float) -> float:
        constant = SPECIFIC_FORCE * width * RESERVE
        thin = (force / (constant * THIN_SIDE)) ** (1.0 / (1.0 - EXPONENT))
        thick = (force / (constant * THICK_SIDE)) ** (1.0 / (1.0 - EXPONENT))
        return float(thin if thin < THIN_CHIP else max(thick, THIN_CHIP))

    return feed


@pytest.fixture(scope="session")
def ceiling_of() -> Callable[[Cut, Reason], float]:
    """Return a function: a cut, a reason -> the feed at which that reason ends the window."""
    return lambda cut, reason: next(x.feed for x in cut.ceilings if x.reason is reason)
