"""Two shops cell by cell: which cells moved by more than they are rounded to, and how."""

from dataclasses import dataclass
from enum import Enum

from chartgen.charts.speed_feed import ChartCell, ChosenCut, lathe_chart
from chartgen.limits.dial import feed_step
from chartgen.limits.run import windows
from chartgen.model.blade import Blade
from chartgen.model.material import Material
from chartgen.model.shop import LengthUnits, Shop
from chartgen.quantities import Millimetres
from chartgen.reference.tables import load_material

_SLIP = 1e-9


class Move(Enum):
    """In what a cell moved."""

    WINDOW = "window won or lost"
    POSITION = "drive position"
    SPEED = "speed"
    FEED = "feed"
    LIMIT = "limit"
    WAY_OUT = "way out"
    SIGNS = "signs"


@dataclass(frozen=True, slots=True, kw_only=True)
class CellPair:
    """One cell of both shops; `moves` is empty where it stayed within its rounding."""

    material: Material
    blade: Blade
    diameter: Millimetres[float]
    before: ChartCell
    after: ChartCell
    moves: frozenset[Move]


@dataclass(frozen=True, slots=True, kw_only=True)
class CellChanges:
    """Every cell that both shops print."""

    before: Shop
    after: Shop
    materials: tuple[Material, ...]
    blades: tuple[Blade, ...]
    diameters: tuple[Millimetres[float], ...]
    cells: tuple[CellPair, ...]

    @property
    def moved(self) -> tuple[CellPair, ...]:
        """The cells that moved."""
        return tuple(cell for cell in self.cells if cell.moves)


def cell_changes(before: Shop, after: Shop) -> CellChanges:
    """Return the cells of the materials, blades and diameters that both shops print.

    Blades are matched by name. Each shop keeps all of its blades while it is worked out,
    for one may be the way out of a cell of another.
    """
    old, new = before.request, after.request
    materials = tuple(load_material(key) for key in new.materials if key in old.materials)
    old_names = {blade.name: blade for blade in before.blades}
    blades = tuple(blade for blade in after.blades if blade.name in old_names)
    diameters = tuple(d for d in new.diameters if d in old.diameters)
    cells: list[CellPair] = []
    if materials and blades and diameters:
        was = windows(before, materials=materials, diameters=diameters)
        now = windows(after, materials=materials, diameters=diameters)
        for material in materials:
            old_chart = lathe_chart(before, was, material, [old_names[b.name] for b in blades])
            new_chart = lathe_chart(after, now, material, blades)
            cells += [
                CellPair(
                    material=material,
                    blade=blade,
                    diameter=diameter,
                    before=old_row[column],
                    after=new_row[column],
                    moves=moves_between(old_row[column], new_row[column], units=new.units),
                )
                for column, blade in enumerate(blades)
                for diameter, old_row, new_row in zip(
                    diameters, old_chart.rows, new_chart.rows, strict=True
                )
            ]
    return CellChanges(
        before=before,
        after=after,
        materials=materials,
        blades=blades,
        diameters=diameters,
        cells=tuple(cells),
    )


def moves_between(before: ChartCell, after: ChartCell, *, units: LengthUnits) -> frozenset[Move]:
    """Return in what a cell moved by more than its rounding; the order makes no difference."""
    moves = set[Move]()
    if before.telling_reason.mark != after.telling_reason.mark:
        moves.add(Move.LIMIT)
    if before.cut is None and after.cut is None:
        if _name(before.way_out) != _name(after.way_out):
            moves.add(Move.WAY_OUT)
    elif before.cut is None or after.cut is None:
        moves.add(Move.WINDOW)
    else:
        moves |= _moves_of_cut(before.cut, after.cut, units)
    return frozenset(moves)


def _moves_of_cut(before: ChosenCut, after: ChosenCut, units: LengthUnits) -> set[Move]:
    moves = set[Move]()
    # The mark is what a card prints of a position; where it prints none, the speed tells.
    if before.position.mark != after.position.mark:
        moves.add(Move.POSITION)
    dial_step = max(before.position.dial_step, after.position.dial_step)
    if abs(before.spindle_speed - after.spindle_speed) > dial_step + _SLIP:
        moves.add(Move.SPEED)
    step = max(feed_step(before.feed, units), feed_step(after.feed, units))
    if abs(before.feed - after.feed) > step + _SLIP:
        moves.add(Move.FEED)
    if _trust(before) != _trust(after):
        moves.add(Move.SIGNS)
    return moves


def _trust(cut: ChosenCut) -> tuple[bool, ...]:
    return (cut.is_tight, cut.is_slow, cut.wants_power_feed, cut.swallows_backlash)


def _name(blade: Blade | None) -> str:
    return blade.name if blade else ""
