"""Where a cell has no window: which owned blade has one there, or only the saw."""

import numpy as np

from chartgen.limits.grid import Grid
from chartgen.quantities import BoolArray, IntArray

SAW = -1


def nearest_way_out(grid: Grid, *, has_window: BoolArray, is_tight: BoolArray) -> IntArray:
    """Return, for each cell, the index of the blade to use instead, or SAW.

    A blade with a roomy window is preferred to one with a tight one, and among equals the
    blade nearest in width to the one asked about.
    """
    width = grid.width.reshape(-1)
    distance = np.abs(np.log(width[:, np.newaxis] / width[np.newaxis, :]))
    # Axes: material, blade asked about, other blade, diameter.
    cost = distance[np.newaxis, :, :, np.newaxis] + 10.0 * is_tight[:, np.newaxis, :, :]
    cost = np.where(has_window[:, np.newaxis, :, :], cost, np.inf)
    best = np.argmin(cost, axis=2)
    possible = np.isfinite(np.min(cost, axis=2))
    return np.where(possible & ~has_window, best, SAW)
