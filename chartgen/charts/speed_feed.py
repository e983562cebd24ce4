"""Speed and feed against diameter, for some pairs of material and blade.

One chart answers two questions: the lathe chart has one material and a column a blade, the
overview one blade and a column a material.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from chartgen.limits.allowances import allowances_for
from chartgen.limits.reasons import Reason
from chartgen.limits.window import Verdict, Windows
from chartgen.model.blade import Blade
from chartgen.model.lathe import DrivePosition
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.physics.kinematics import seconds_per_turn
from chartgen.quantities import (
    Millimetres,
    MillimetresPerRev,
    RevsPerMinute,
    Seconds,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class ChosenCut:
    """The recommended cut of a cell that has a window.

    `swallows_backlash` is False only where the share of a stated backlash that may come at
    once is known to be more sudden bite than the cut bears.
    """

    spindle_speed: RevsPerMinute[float]
    position: DrivePosition
    feed: MillimetresPerRev[float]
    seconds_per_turn: Seconds[float]
    seconds_of_cut: Seconds[float]
    is_tight: bool
    is_slow: bool
    wants_power_feed: bool
    swallows_backlash: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ChartCell:
    """One cell: its window, and the cut chosen in it, or None with the way out.

    `way_out` names the owned blade to use where there is no window; None means the saw.
    """

    floor: MillimetresPerRev[float]
    floor_reason: Reason
    ceiling: MillimetresPerRev[float]
    ceiling_reason: Reason
    verdict: Verdict
    cut: ChosenCut | None
    way_out: Blade | None

    @property
    def telling_reason(self) -> Reason:
        """The limit that a card names: the ceiling's, or a floor that says more than it."""
        floor_tells = self.cut is None and self.floor_reason is Reason.SLOWEST_SPINDLE
        return self.floor_reason if floor_tells else self.ceiling_reason


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """What one column of a chart is about."""

    material: Material
    blade: Blade


@dataclass(frozen=True, slots=True, kw_only=True)
class SpeedFeedChart:
    """The chart: rows are diameters, columns pairs of material and blade."""

    shop: Shop
    columns: tuple[Column, ...]
    diameters: tuple[Millimetres[float], ...]
    rows: tuple[tuple[ChartCell, ...], ...]


def lathe_chart(
    shop: Shop, windows: Windows, material: Material, blades: Sequence[Blade] | None = None
) -> SpeedFeedChart:
    """Return one material's chart, a column for each of some blades, or for all of them.

    A cell without a window is offered any blade of the windows, shown in a column or not.
    """
    shown = windows.grid.blades if blades is None else blades
    return _chart(shop, windows, [(material, blade) for blade in shown])


def overview_chart(
    shop: Shop, windows: Windows, blade: Blade, materials: Sequence[Material] | None = None
) -> SpeedFeedChart:
    """Return one blade's chart, a column for each of some materials, or for all of them."""
    shown = windows.grid.materials if materials is None else materials
    return _chart(shop, windows, [(material, blade) for material in shown])


def pair_chart(
    shop: Shop, windows: Windows, pairs: Sequence[tuple[Material, Blade]]
) -> SpeedFeedChart:
    """Return a chart of some pairs of material and blade, a column each."""
    return _chart(shop, windows, pairs)


def _chart(shop: Shop, windows: Windows, pairs: Sequence[tuple[Material, Blade]]) -> SpeedFeedChart:
    grid = windows.grid
    diameters = tuple(float(d) for d in grid.diameter.reshape(-1))
    indices = [(grid.materials.index(m), grid.blades.index(b)) for m, b in pairs]
    return SpeedFeedChart(
        shop=shop,
        columns=tuple(Column(material=m, blade=b) for m, b in pairs),
        diameters=diameters,
        rows=tuple(
            tuple(_cell(shop, windows, (m, b, row)) for m, b in indices)
            for row in range(len(diameters))
        ),
    )


def _cell(shop: Shop, windows: Windows, index: tuple[int, int, int]) -> ChartCell:
    way_out = int(windows.way_out[index])
    return ChartCell(
        floor=float(windows.floor[index]),
        floor_reason=windows.floor_reason(index),
        ceiling=float(windows.ceiling[index]),
        ceiling_reason=windows.ceiling_reason(index),
        verdict=windows.verdict(index),
        cut=_chosen_cut(shop, windows, index) if windows.has_window[index] else None,
        way_out=windows.grid.blades[way_out] if way_out >= 0 else None,
    )


def _chosen_cut(shop: Shop, windows: Windows, index: tuple[int, int, int]) -> ChosenCut:
    speed, feed = float(windows.spindle_speed[index]), float(windows.feed[index])
    backlash = shop.lathe.cross_slide.backlash or 0.0
    at_once = allowances_for(shop).backlash_share * backlash
    return ChosenCut(
        spindle_speed=speed,
        position=windows.positions[int(windows.position[index])],
        feed=feed,
        seconds_per_turn=float(
            seconds_per_turn(
                feed_rate=feed * speed,
                travel_per_turn=shop.lathe.cross_slide.travel_per_turn,
            )
        ),
        seconds_of_cut=60.0 * float(windows.grid.depth[0, 0, index[2], 0]) / (feed * speed),
        is_tight=bool(windows.is_tight[index]),
        is_slow=bool(windows.is_slow[index]),
        wants_power_feed=bool(windows.wants_power_feed[index]),
        swallows_backlash=not float(windows.dig_in.slack[index]) < at_once,
    )
