"""The blade card: one blade in all the materials of a shop, where it may be used."""

from collections.abc import Sequence

from chartgen.charts.blade_use import BladeUse, BladeUseRow, Stretch, blade_use
from chartgen.model.blade import Blade
from chartgen.model.material import Material
from chartgen.model.shop import LengthUnits, Shop
from chartgen.wording.beyond import beyond
from chartgen.wording.blade_letters import blade_letter
from chartgen.wording.card import PrintedCard, make_card
from chartgen.wording.language import decimal, tr
from chartgen.wording.material_names import material_name
from chartgen.wording.numbers import (
    feed_label,
    length_label,
    write_cutting_speed,
    write_feed,
    write_feed_floor,
    write_length,
    write_speed_ceiling,
)
from chartgen.wording.printed import PrintedTable

NONE = "–"

# Fractions of an inch leave room for one.
_MOST_STRETCHES = {LengthUnits.METRIC: 2, LengthUnits.INCH: 1}


def blade_card(
    shop: Shop, materials: Sequence[Material], blade: Blade, layout: str
) -> PrintedCard[PrintedTable]:
    """Return the card of one blade."""
    table = print_blade_use(blade_use(shop, materials, blade))
    return make_card(shop, table, tuple(materials), (blade,), layout, blade.name)


def print_blade_use(use: BladeUse) -> PrintedTable:
    """Return where a blade may be used as strings."""
    units = use.shop.request.units
    _, _, speed_unit = write_cutting_speed(1.0, units).partition(" ")
    size = f"Ø {length_label(units)}"
    return PrintedTable(
        title=tr(
            "Blade {letter}  {name}",
            letter=blade_letter(use.shop, use.blade.name),
            name=use.blade.name,
        ),
        subtitle=tr("where it may be used"),
        headings=(
            tr("material"),
            tr("good\n{size}", size=size),
            tr("usable\n{size}", size=size),
            tr("beyond\nit"),
            tr("start\n{unit}", unit=speed_unit),
            tr("start\n{unit}", unit=feed_label(units)),
            tr("least\n{unit}", unit=feed_label(units)),
        ),
        right=frozenset({4, 5, 6}),
        rows=tuple(_row(row, units) for row in use.rows),
        notes=_notes(use, units),
        legend=(),
    )


def _row(row: BladeUseRow, units: LengthUnits) -> tuple[str, ...]:
    speed, _, _ = write_cutting_speed(row.start_speed, units).partition(" ")
    speed = speed.removesuffix(decimal(".0"))
    longest = sorted(row.usable, key=lambda stretch: stretch.length)[-_MOST_STRETCHES[units] :]
    usable = [_stretch(stretch, units) for stretch in row.usable if stretch in longest]
    return (
        material_name(row.material),
        _stretch(row.good, units) if row.good else NONE,
        ", ".join(usable) or NONE,
        beyond(row.beyond) if row.beyond else tr("chuck size"),
        speed,
        write_feed(row.start_feed, units),
        write_feed_floor(row.least_feed, units),
    )


def _stretch(stretch: Stretch, units: LengthUnits) -> str:
    """Return a stretch of diameters; both ends were worked out, so neither is rounded."""
    ends = (stretch.smallest, stretch.largest)
    return "–".join(dict.fromkeys(write_length(end, units) for end in ends))


def _notes(use: BladeUse, units: LengthUnits) -> tuple[str, ...]:
    step, smallest, largest = (
        write_length(length, units) for length in (use.step, use.smallest, use.largest)
    )
    signs = tr(
        "Good: room between rubbing and too much, and a feed near the start feed. Usable: "
        "anything with a window; outside the good it is tight, so keep to the lathe chart."
    )
    looked_at = tr(
        "Start is what the edge likes, before motor and chuck are asked: set the lathe by the "
        "lathe chart, here at most {speed} rev/min. Under the least feed the edge rubs. Looked "
        "at: every {step} {unit} from {smallest} to {largest}, the chuck's size.",
        speed=write_speed_ceiling(use.fastest),
        step=step,
        unit=length_label(units),
        smallest=smallest,
        largest=largest,
    )
    return (signs, looked_at)
