"""How large text must be to be read at a distance.

20 minutes of arc for the numbers, 16 for other words: the preferred and the least height of
ISO 9241-303 and NUREG-0700. In poor light nothing on a card may be smaller, save the foot.
"""

import math

from chartgen.quantities import Millimetres

NUMBERS_ARC_MINUTES = 20.0
WORDS_ARC_MINUTES = 16.0
CAP_HEIGHT = 0.698
"""Height of a capital over the size of the card's font."""
POINT: Millimetres[float] = 25.4 / 72.0
FOOT_CAP: Millimetres[float] = 1.7
SIGN_DISTANCE_FACTOR = 40.0
"""Distance over the size of a safety sign that is seen from there (ISO 3864-1)."""


def cap_height(*, distance: Millimetres[float], arc_minutes: float) -> Millimetres[float]:
    """Return the height of capitals [mm] for a reading distance [mm], rounded up to 0.1 mm."""
    height = 2.0 * distance * math.tan(math.radians(arc_minutes / 60.0) / 2.0)
    return math.ceil(height * 10.0 - 1e-9) / 10.0


def size_for_cap(cap: Millimetres[float]) -> float:
    """Return the font size [pt] whose capitals have a height [mm]."""
    return cap / CAP_HEIGHT / POINT
