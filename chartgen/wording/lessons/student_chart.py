"""The chart of a student's card: some diameters, and what his exercises are about."""

from collections import Counter
from collections.abc import Sequence
from typing import Final

from chartgen.lessons.exercise import Paper
from chartgen.model.blade import Blade
from chartgen.model.shop import LengthUnits, Shop
from chartgen.quantities import Millimetres

MOST_COLUMNS: Final = 3
"""Pairs of material and blade on a student's card: what its page holds at arm's length."""
MOST_ROWS: Final = 8
"""Diameters on it, which leave room for the legend below."""

_STEPS: Final = {LengthUnits.METRIC: 0.5, LengthUnits.INCH: 25.4 / 16.0}
"""Steps of bar diameter as bars are sold, in mm."""

Pair = tuple[str, str]


def pairs_of(paper: Paper, blades: Sequence[Blade]) -> tuple[Pair, ...]:
    """Return the material that a student's exercises ask about most, with the lathe's blades.

    All blades of it where the page holds them, so that none is named that is not there; of more
    those of his exercises. Nothing where no exercise is about a blade.
    """
    asked = [(e.material.key, e.blade.name) for e in paper.exercises if e.blade is not None]
    if not asked:
        return ()
    ((material, _),) = Counter(key for key, _ in asked).most_common(1)
    names = [blade.name for blade in blades]
    used = {name for key, name in asked if key == material}
    shown = sorted(names, key=lambda name: (name not in used, names.index(name)))[:MOST_COLUMNS]
    return tuple((material, name) for name in names if name in shown)


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
