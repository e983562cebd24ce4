"""Feeds as they can be set or held: rounded inside the window, never out of it."""

from collections.abc import Sequence

import numpy as np

from chartgen.model.shop import LengthUnits
from chartgen.quantities import FloatArray, MillimetresPerRev

_INCH = 25.4
# (from this feed on, round to this step), coarse first; the last step is also the last resort.
_STEPS_METRIC = ((0.03, 0.005), (0.0, 0.002))
_STEPS_INCH = ((0.0012 * _INCH, 0.0002 * _INCH), (0.0, 0.0001 * _INCH))
_LAST_RESORT = {LengthUnits.METRIC: 0.001, LengthUnits.INCH: 0.0001 * _INCH}
_SLIP = 1e-9
_TINY = 1e-12


def feed_step(feed: MillimetresPerRev[float], units: LengthUnits) -> MillimetresPerRev[float]:
    """Return the round step that a feed on a card is a multiple of, where its window allows."""
    coarse, fine = _STEPS_METRIC if units is LengthUnits.METRIC else _STEPS_INCH
    return coarse[1] if feed >= coarse[0] - _SLIP else fine[1]


def rounded_feed(
    *,
    feed: MillimetresPerRev[FloatArray],
    floor: MillimetresPerRev[FloatArray],
    ceiling: MillimetresPerRev[FloatArray],
    units: LengthUnits,
) -> MillimetresPerRev[FloatArray]:
    """Return each feed as a card prints it, inside [floor, ceiling]; NaN where none fits.

    To the nearest round step where that lies inside, else down, else up, else to a finer
    step. A window without even a fine step in it cannot be
    held by a hand and counts as none.
    """
    steps = _STEPS_METRIC if units is LengthUnits.METRIC else _STEPS_INCH
    step = np.where(feed >= steps[0][0] - _SLIP, steps[0][1], steps[1][1])
    fine = _LAST_RESORT[units]
    result = np.full(np.shape(feed), np.nan)
    nearest = np.asarray(np.round(feed / step) * step)
    candidates = (
        _up(feed, fine),
        _down(feed, fine),
        _up(feed, step),
        _down(feed, step),
        nearest,
    )
    for candidate in candidates:
        inside = (candidate >= floor - _SLIP) & (candidate <= ceiling + _SLIP) & (candidate > 0.0)
        result = np.where(inside, candidate, result)
    return result


def gearbox_feed(
    *,
    wanted: MillimetresPerRev[FloatArray],
    least: MillimetresPerRev[FloatArray],
    most: MillimetresPerRev[FloatArray],
    feeds: Sequence[MillimetresPerRev[float]],
) -> MillimetresPerRev[FloatArray]:
    """Return the power feed of the lathe to use; 0 where none lies in [least, most].

    Of the listed feeds inside, the one nearest in ratio to the wanted feed; of two as near the
    smaller.
    """
    listed = np.sort(np.asarray(feeds, dtype=np.float64))
    best = np.zeros(np.broadcast_shapes(np.shape(wanted), np.shape(least), np.shape(most)))
    distance = np.full(best.shape, np.inf)
    for feed in listed:
        inside = (feed >= least * (1.0 - _SLIP)) & (feed <= most * (1.0 + _SLIP))
        away = np.abs(np.log(feed / np.maximum(wanted, _TINY)))
        nearer = inside & (away < distance - _SLIP)
        best = np.where(nearer, feed, best)
        distance = np.where(nearer, away, distance)
    return best


def _down(feed: FloatArray, step: FloatArray | float) -> FloatArray:
    return np.asarray(np.floor(feed / step + _SLIP) * step)


def _up(feed: FloatArray, step: FloatArray | float) -> FloatArray:
    return np.asarray(np.ceil(feed / step - _SLIP) * step)
