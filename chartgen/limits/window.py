"""The result of a run of the limits: one whole, frozen record of arrays."""

from dataclasses import dataclass
from enum import Enum

import numpy as np
from numpy.typing import NDArray

from chartgen.limits.dig_in import DigIn
from chartgen.limits.grid import Grid
from chartgen.limits.reasons import REASONS, Reason
from chartgen.model.lathe import DrivePosition
from chartgen.quantities import BoolArray, FloatArray, IntArray


class Verdict(Enum):
    """What a cell's window is worth."""

    INSIDE = "inside"
    TIGHT = "tight"
    NO_WINDOW = "no window"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False, repr=False)
class Windows:
    """The window and the recommended cut of every cell, shape (material, blade, diameter).

    Where `has_window` is False, speed and feed are those of the nearest miss and `feed` is
    NaN. `floor_code` and `ceiling_code` index REASONS: what ends the window on each side.
    `tight_flags` say why a cell is tight (see `Tight`). `is_slow`: below the speed this edge
    likes. `wants_power_feed`: the handle turns so slowly that a hand cannot keep it even.
    `dig_in`: what a sudden extra bite does. `way_out` is the index of the owned blade that
    has a window where this one has none, or -1 where only the saw is left.
    """

    grid: Grid
    positions: tuple[DrivePosition, ...]
    has_window: BoolArray
    is_tight: BoolArray
    tight_flags: IntArray
    is_slow: BoolArray
    wants_power_feed: BoolArray
    dig_in: DigIn
    position: IntArray
    spindle_speed: FloatArray
    start_speed: FloatArray
    speed_cap: FloatArray
    feed: FloatArray
    floor: FloatArray
    floor_code: NDArray[np.int8]
    ceiling: FloatArray
    ceiling_code: NDArray[np.int8]
    way_out: IntArray

    def verdict(self, cell: tuple[int, int, int]) -> Verdict:
        """Return the verdict of one cell."""
        if not self.has_window[cell]:
            return Verdict.NO_WINDOW
        return Verdict.TIGHT if self.is_tight[cell] else Verdict.INSIDE

    def floor_reason(self, cell: tuple[int, int, int]) -> Reason:
        """Return what ends a cell's window below."""
        return REASONS[int(self.floor_code[cell])]

    def ceiling_reason(self, cell: tuple[int, int, int]) -> Reason:
        """Return what ends a cell's window above."""
        return REASONS[int(self.ceiling_code[cell])]
