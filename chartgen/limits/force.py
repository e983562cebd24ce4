"""The cutting force of a grid's cells, with reserve and band, and the way back to feed.

The band is wider for chips thinner than `thin_chip`, where the published constants are
extrapolated. The high side must never fall as feed rises, or a ceiling would have holes:
just above the step it stays at the thin chip's value until the thick chip's overtakes it.
"""

import numpy as np

from chartgen.limits.allowances import Allowances
from chartgen.limits.grid import Grid
from chartgen.quantities import FloatArray, MillimetresPerRev, Newtons


def nominal_force(grid: Grid, feed: MillimetresPerRev[FloatArray]) -> Newtons[FloatArray]:
    """Return the expected cutting force, every allowance in; 0 without force data."""
    return grid.force_constant * feed ** (1.0 - grid.exponent)


def high_force(
    grid: Grid, feed: MillimetresPerRev[FloatArray], allowances: Allowances
) -> Newtons[FloatArray]:
    """Return the high side of the force band; it rises with feed everywhere."""
    thick = (1.0 + grid.band_high) * nominal_force(grid, feed)
    thin = (1.0 + grid.thin_band_high) * nominal_force(grid, np.minimum(feed, allowances.thin_chip))
    return np.maximum(thick, thin)


def low_force(
    grid: Grid, feed: MillimetresPerRev[FloatArray], allowances: Allowances
) -> Newtons[FloatArray]:
    """Return the low side of the force band."""
    share = np.where(feed < allowances.thin_chip, 1.0 - grid.thin_band_low, 1.0 - grid.band_low)
    return share * nominal_force(grid, feed)


def feed_for_high_force(
    grid: Grid, force: Newtons[FloatArray], allowances: Allowances
) -> MillimetresPerRev[FloatArray]:
    """Return the feed whose high side meets a force; inf without force data.

    The inverse of `high_force`, so a ceiling taken from it is met and never passed.
    """
    power = 1.0 / (1.0 - grid.exponent)
    constant = np.where(grid.has_force, grid.force_constant, 1.0)
    # Two powers of small arrays instead of one of a large one.
    per_newton = constant**-power
    base = np.maximum(force, 0.0) ** power * per_newton
    thin_feed = base * (1.0 + grid.thin_band_high) ** -power
    thick_feed = base * (1.0 + grid.band_high) ** -power
    step = allowances.thin_chip
    at_step = (1.0 + grid.thin_band_high) * constant * step ** (1.0 - grid.exponent)
    feed = np.where(force < at_step, thin_feed, np.maximum(thick_feed, step))
    return np.where(grid.has_force, feed, np.inf)
