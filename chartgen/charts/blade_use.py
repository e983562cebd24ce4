"""Where one blade may be used: for each material the diameters it has a window for."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from chartgen.limits.allowances import allowances_for
from chartgen.limits.reasons import Reason
from chartgen.limits.run import windows
from chartgen.limits.speed_caps import chuck_speed, fastest_spindle
from chartgen.limits.window import Windows
from chartgen.model.blade import Blade
from chartgen.model.material import Material
from chartgen.model.shop import LengthUnits, Shop
from chartgen.quantities import (
    BoolArray,
    FloatArray,
    MetresPerMinute,
    Millimetres,
    MillimetresPerRev,
    RevsPerMinute,
)

_INCH = 25.4
# (smallest diameter, step): a printed diameter is then one that was worked out.
_GRADUATION = {LengthUnits.METRIC: (3.0, 1.0), LengthUnits.INCH: (_INCH / 8.0, _INCH / 16.0)}
_SLIP = 1e-9


@dataclass(frozen=True, slots=True)
class Stretch:
    """Diameters without a break: the first and the last that were found so."""

    smallest: Millimetres[float]
    largest: Millimetres[float]

    @property
    def length(self) -> Millimetres[float]:
        """How far it reaches [mm]."""
        return self.largest - self.smallest


@dataclass(frozen=True, slots=True, kw_only=True)
class BladeUseRow:
    """Where the blade may be used in one material.

    `good` is the longest stretch inside without being tight, None where there is none.
    `usable` are all stretches with a window, tight or not, rising. `beyond` is what ends the
    last of them above, or what is nearest to giving way where there is none; None where it
    reaches to the largest diameter looked at.
    """

    material: Material
    start_speed: MetresPerMinute[float]
    start_feed: MillimetresPerRev[float]
    least_feed: MillimetresPerRev[float]
    good: Stretch | None
    usable: tuple[Stretch, ...]
    beyond: Reason | None


@dataclass(frozen=True, slots=True, kw_only=True)
class BladeUse:
    """One blade in some materials; diameters were looked at every `step` [mm]."""

    shop: Shop
    blade: Blade
    smallest: Millimetres[float]
    largest: Millimetres[float]
    step: Millimetres[float]
    fastest: RevsPerMinute[float]
    rows: tuple[BladeUseRow, ...]


def blade_use(shop: Shop, materials: Sequence[Material], blade: Blade) -> BladeUse:
    """Return where a blade may be used, from the smallest bar to one as large as the chuck."""
    diameters = _diameters(shop)
    found = windows(shop, materials=materials, blades=[blade], diameters=diameters.tolist())
    allowances = allowances_for(shop)
    caps = [cap(found.grid, shop, allowances).item() for cap in (fastest_spindle, chuck_speed)]
    return BladeUse(
        shop=shop,
        blade=blade,
        smallest=float(diameters[0]),
        largest=float(diameters[-1]),
        step=_GRADUATION[shop.request.units][1],
        fastest=min(caps),
        rows=tuple(_row(found, diameters, number) for number in range(len(materials))),
    )


def stretches(holds: BoolArray, diameters: FloatArray) -> tuple[Stretch, ...]:
    """Return the unbroken stretches of rising diameters at which something holds."""
    edges = np.flatnonzero(np.diff(np.concatenate([[False], holds, [False]]).astype(np.int8)))
    return tuple(
        Stretch(float(diameters[first]), float(diameters[after - 1]))
        for first, after in edges.reshape(-1, 2)
    )


def _diameters(shop: Shop) -> FloatArray:
    smallest, step = _GRADUATION[shop.request.units]
    count = math.floor((shop.lathe.chuck.size - smallest) / step + _SLIP) + 1
    return smallest + step * np.arange(max(count, 1), dtype=np.float64)


def _row(found: Windows, diameters: FloatArray, number: int) -> BladeUseRow:
    has_window = found.has_window[number, 0]
    good = stretches(has_window & ~found.is_tight[number, 0], diameters)
    return BladeUseRow(
        material=found.grid.materials[number],
        start_speed=float(found.grid.start_speed[number, 0, 0, 0]),
        start_feed=float(found.grid.start_feed[number, 0, 0, 0]),
        least_feed=float(found.floor[number, 0].max()),
        good=max(good, key=lambda stretch: stretch.length, default=None),
        usable=stretches(has_window, diameters),
        beyond=_beyond(found, number),
    )


def _beyond(found: Windows, number: int) -> Reason | None:
    """Return what ends the last stretch above, or what gives way last where there is none."""
    has_window = found.has_window[number, 0]
    if has_window.any():
        after = int(np.flatnonzero(has_window)[-1]) + 1
        if after == has_window.size:
            return None
    else:
        after = int(np.argmax(found.ceiling[number, 0] / found.floor[number, 0]))
    cell = (number, 0, after)
    # Where even the slowest spindle is too fast, no ceiling of feed says so.
    if found.floor_reason(cell) is Reason.SLOWEST_SPINDLE:
        return Reason.SLOWEST_SPINDLE
    return found.ceiling_reason(cell)
