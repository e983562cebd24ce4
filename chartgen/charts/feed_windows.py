"""The window of feed against diameter, one blade beside the other."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from chartgen.limits.reasons import CODES, REASONS, Reason
from chartgen.limits.run import windows
from chartgen.limits.window import Windows
from chartgen.model.blade import Blade
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.quantities import BoolArray, FloatArray, frozen_array

POINTS = 60
"""Diameters looked at: enough for a limit to change where it really does, within 4 %."""


@dataclass(frozen=True, slots=True)
class CeilingRun:
    """Neighbouring diameters, first to last index, at which the same limit binds."""

    first: int
    last: int
    reason: Reason


@dataclass(frozen=True, slots=True, kw_only=True, eq=False, repr=False)
class FeedWindow:
    """One blade's floor, ceiling and recommended feed [mm/rev] over the diameters.

    All at the recommended speed of each diameter. `feed` is NaN where there is no window.
    """

    blade: Blade
    floor: FloatArray
    ceiling: FloatArray
    feed: FloatArray
    has_window: BoolArray
    ceiling_runs: tuple[CeilingRun, ...]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False, repr=False)
class FeedWindows:
    """The windows of some blades in one material; `diameters` in mm, rising.

    `printed` tells the diameters that the lathe chart prints too.
    """

    shop: Shop
    material: Material
    diameters: FloatArray
    printed: BoolArray
    blades: tuple[FeedWindow, ...]


def feed_windows(
    shop: Shop, materials: Sequence[Material], blades: Sequence[Blade] | None = None
) -> tuple[FeedWindows, ...]:
    """Return the windows of some materials over the span of the shop's diameters.

    One run of the limits serves all of them.
    """
    asked = np.array(shop.request.diameters)
    diameters = frozen_array(np.union1d(curve_diameters(shop), asked))
    printed = np.isin(diameters, asked)
    found = windows(shop, materials=materials, diameters=diameters.tolist(), blades=blades)
    return tuple(
        FeedWindows(
            shop=shop,
            material=material,
            diameters=diameters,
            printed=printed,
            blades=tuple(_window(found, m, b) for b in range(len(found.grid.blades))),
        )
        for m, material in enumerate(materials)
    )


def curve_diameters(shop: Shop, points: int = POINTS) -> FloatArray:
    """Return diameters [mm] from the smallest to the largest a shop prints, as ratios even."""
    smallest, largest = min(shop.request.diameters), max(shop.request.diameters)
    if smallest == largest:
        # One diameter is no curve: its neighbourhood, a third to either side.
        smallest, largest = smallest / 1.5, largest * 1.5
    return frozen_array(np.geomspace(smallest, largest, points))


def _window(found: Windows, m: int, b: int) -> FeedWindow:
    return FeedWindow(
        blade=found.grid.blades[b],
        floor=frozen_array(found.floor[m, b]),
        ceiling=frozen_array(found.ceiling[m, b]),
        feed=frozen_array(found.feed[m, b]),
        has_window=found.has_window[m, b],
        ceiling_runs=_runs(_codes(found, m, b)),
    )


def _codes(found: Windows, m: int, b: int) -> list[int]:
    """Return what ends the window above; where even the slowest spindle is too fast, that."""
    slowest = CODES[Reason.SLOWEST_SPINDLE]
    too_fast = found.floor_code[m, b] == slowest
    codes: list[int] = np.where(too_fast, np.int8(slowest), found.ceiling_code[m, b]).tolist()
    return codes


def _runs(codes: list[int]) -> tuple[CeilingRun, ...]:
    starts = [i for i, code in enumerate(codes) if i == 0 or code != codes[i - 1]]
    ends = [*(start - 1 for start in starts[1:]), len(codes) - 1]
    return tuple(
        CeilingRun(first, last, REASONS[codes[first]])
        for first, last in zip(starts, ends, strict=True)
    )
