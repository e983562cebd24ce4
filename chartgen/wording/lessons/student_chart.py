"""The chart of a student's card: some diameters, and what his exercises are about."""

from collections import Counter
from typing import Final

from chartgen.lessons.exercise import Paper
from chartgen.model.shop import LengthUnits, Shop
from chartgen.quantities import Millimetres

MOST_COLUMNS: Final = 3
"""Pairs of material and blade on a student's card: what its page holds at arm's length."""
MOST_ROWS: Final = 8
"""Diameters on it, which leave room for the legend below."""

_STEPS: Final = {LengthUnits.METRIC: 0.5, LengthUnits.INCH: 25.4 / 16.0}
"""Steps of bar diameter as bars are sold, in mm."""

Pair = tuple[str, str]


def pairs_of(paper: Paper) -> tuple[Pair, ...]:
    """Return material and blade of a student's exercises, those asked about most, in order."""
    asked = [(e.material.key, e.blade.name) for e in paper.exercises if e.blade is not None]
    most = [pair for pair, _ in Counter(asked).most_common(MOST_COLUMNS)]
    return tuple(sorted(most))


def shown_diameters(shop: Shop) -> tuple[Millimetres[float], ...]:
    """Return the diameters of a shop, some of them where they are many, spread over all."""
    step = _STEPS[shop.request.units]
    # A shop that lists its bars in the other units gets the nearest of the class's.
    rounded = {max(1, round(diameter / step)) for diameter in shop.request.diameters}
    diameters = [count * step for count in sorted(rounded)]
    if len(diameters) <= MOST_ROWS:
        return tuple(diameters)
    last = len(diameters) - 1
    return tuple(diameters[round(last * row / (MOST_ROWS - 1))] for row in range(MOST_ROWS))
