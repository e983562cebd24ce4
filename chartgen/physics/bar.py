"""How many equal pieces a bar gives."""

import numpy as np

from chartgen.quantities import Fraction, Millimetres, Numeric

_SLIP = 1e-9


def pieces_from_length(
    *,
    bar_length: Millimetres[Numeric],
    held_length: Millimetres[Numeric],
    pitch: Millimetres[Numeric],
) -> Fraction[Numeric]:
    """Return how many whole pieces a bar gives.

    Parameters
    ----------
    bar_length
        Length of the bar [mm].
    held_length
        What is left at the end: the grip and the distance from the jaws to the cut [mm].
    pitch
        Bar that one piece uses up: its length, the kerf, what is faced off [mm].

    Returns
    -------
    Number of pieces, whole, 0 where the bar is shorter than what is held.

    Notes
    -----
    N = floor((L - r) / p). Each piece has its own kerf, the last one too, since the remnant
    stays in the jaws.

    References
    ----------
    Geometry of the bar.
    """
    return np.maximum(0.0, np.floor((bar_length - held_length) / pitch + _SLIP))
