"""The centre card: what happens to one cut from the outside to the centre."""

import math

from chartgen.charts.way_in import CentreChart, centre_chart
from chartgen.limits.changing_up import LEAST_CHANGE
from chartgen.limits.way_in import WayIn
from chartgen.limits.window import Windows
from chartgen.model.material import Material
from chartgen.model.shop import LengthUnits, Shop
from chartgen.physics.centre import CentreFeedRule
from chartgen.quantities import Millimetres, Minutes
from chartgen.wording.blade_letters import blade_letter
from chartgen.wording.card import PrintedCard, make_card
from chartgen.wording.language import decimal, tr
from chartgen.wording.material_names import material_name
from chartgen.wording.numbers import (
    feed_label,
    length_label,
    write_feed,
    write_length,
    write_speed,
)
from chartgen.wording.printed import PrintedTable

NONE = "–"
_ROUND_UP = {LengthUnits.METRIC: 0.5, LengthUnits.INCH: 25.4 / 32.0}
_FINE_STEP = {LengthUnits.METRIC: 0.1, LengthUnits.INCH: 25.4 / 64.0}
_SECONDS_TO = 120.0
_SLIP = 1e-9


def centre_card(
    shop: Shop, windows: Windows, material: Material, layout: str
) -> PrintedCard[PrintedTable]:
    """Return the card of one material."""
    chart = centre_chart(shop, windows, material)
    return make_card(
        shop, print_centre_chart(chart), (material,), (chart.blade,), layout, material.key
    )


def print_centre_chart(chart: CentreChart) -> PrintedTable:
    """Return the way in as strings: a column a diameter, rows in the order of the cut."""
    ways, units = chart.ways, chart.shop.request.units
    if not ways:
        rows: list[tuple[str, ...]] = [
            (tr("No window with any blade of this shop: saw it off and face the end."),)
        ]
    else:
        rows = [
            (tr("start, {what}", what=name), *cells)
            for name, cells in (
                (
                    tr("rev/min"),
                    [f"{write_speed(w.spindle_speed)} {w.position.mark}" for w in ways],
                ),
                (feed_label(units), [write_feed(w.feed, units) for w in ways]),
            )
        ]
        rows += _changes(chart)
        rows += _rough(chart)
        rows += _centre(chart)
        rows += _times(chart)
    letter = blade_letter(chart.shop, chart.blade.name)
    label = length_label(units)
    return PrintedTable(
        title=tr("{material} to the centre", material=material_name(chart.material)),
        subtitle=tr("blade {letter} {name}", letter=letter, name=chart.blade.name),
        headings=(tr("solid bar"), *(f"Ø {write_length(w.diameter, units)} {label}" for w in ways)),
        right=frozenset(range(1, len(ways) + 1)),
        rows=tuple(tuple(cell.strip() for cell in row) for row in rows),
        notes=_notes(chart),
        legend=(),
    )


def _changes(chart: CentreChart) -> list[tuple[str, ...]]:
    units = chart.shop.request.units
    most = max(len(way.changes) for way in chart.ways)
    rows = []
    for number in range(most):
        cells = []
        for way in chart.ways:
            if number < len(way.changes):
                change = way.changes[number]
                at = write_length(change.diameter, units)
                cells.append(f"Ø {at} → {write_speed(change.spindle_speed)}")
            else:
                cells.append(NONE)
        rows.append((_change_name(number) if most > 1 else tr("change up"), *cells))
    return rows


def _change_name(number: int) -> str:
    """Return the name of one of up to three changes."""
    return (tr("change up, 1st"), tr("change up, 2nd"), tr("change up, 3rd"))[number]


def _rough(chart: CentreChart) -> list[tuple[str, ...]]:
    if not chart.has_soft_floor:
        return []
    units = chart.shop.request.units
    kept = [_rough_cell(w, w.rough_below, units) for w in chart.ways]
    if not _has_changes(chart):
        return [(tr("rougher inside"), *kept)]
    changed = [_rough_cell(w, w.rough_below_with_changes, units) for w in chart.ways]
    return [
        (tr("rougher inside, one speed"), *kept),
        (tr("rougher inside, changed up"), *changed),
    ]


def _rough_cell(way: WayIn, below: float | None, units: LengthUnits) -> str:
    if below is None:
        return NONE
    if below >= way.diameter * (1.0 - _SLIP):
        return tr("all of it")
    return f"Ø {write_length(min(_up(below, _ROUND_UP[units]), way.diameter), units)}"


def _centre(chart: CentreChart) -> list[tuple[str, ...]]:
    units = chart.shop.request.units
    step = _FINE_STEP[units]
    easing = math.floor(chart.rule.diameter / step + _SLIP) * step
    from_diameter = f"Ø {write_length(round(easing, 6), units)}"
    feeds = [write_feed(way.eased_feed, units) for way in chart.ways]
    rows = [(tr("feed inside {diameter}", diameter=from_diameter), *feeds)]
    pips = [way.pip for way in chart.ways]
    if None not in pips:
        cells = [f"Ø {write_length(_up(pip, step), units)}" for pip in pips if pip is not None]
        rows.append((tr("core may let go from"), *cells))
    return rows


def _times(chart: CentreChart) -> list[tuple[str, ...]]:
    kept = [_time(way.time) for way in chart.ways]
    if not _has_changes(chart):
        return [(tr("time"), *kept)]
    changed = [_time(way.time_with_changes) for way in chart.ways]
    return [(tr("time, one speed"), *kept), (tr("time, changed up"), *changed)]


def _has_changes(chart: CentreChart) -> bool:
    return any(way.changes for way in chart.ways)


def _up(length: Millimetres[float], step: Millimetres[float]) -> Millimetres[float]:
    return round(math.ceil(length / step - _SLIP) * step, 6)


def _time(minutes: Minutes[float]) -> str:
    seconds = 60.0 * minutes
    if seconds < _SECONDS_TO:
        return f"{max(seconds, 1.0):.0f} s"
    return decimal(f"{minutes:.1f}") + " min"


def _notes(chart: CentreChart) -> tuple[str, ...]:
    notes = []
    if chart.ways:
        notes.append(_change_note(chart))
        if not chart.has_soft_floor:
            notes.append(
                tr(
                    "No least surface speed is known for this pair, so none is given inside which "
                    "it cuts rougher."
                )
            )
        notes.append(_feed_note(chart))
        notes.append(_core_note(chart))
    notes.append(_height_note(chart))
    notes.append(tr("Bored work has no centre: nothing changes on the way but the surface speed."))
    return tuple(note for note in notes if note)


def _change_note(chart: CentreChart) -> str:
    if _has_changes(chart):
        return tr(
            "Change up with the knob as the edge passes Ø. It saves time and keeps the cut clean, "
            "but need not be done."
        )
    if any(way.position.is_single_speed for way in chart.ways):
        return tr("One speed all the way: belts and gears are not changed in a cut.")
    least = write_length(LEAST_CHANGE, chart.shop.request.units)
    return tr("One speed all the way: no faster one can be used before Ø {least}.", least=least)


def _feed_note(chart: CentreChart) -> str:
    rule = tr(chart.rule.words)
    shares = ", ".join(
        f"{tr(rule.words)} [{rule.source}]" for rule in CentreFeedRule if rule.mark == "found"
    )
    if any(way.eased_to_least for way in chart.ways):
        return tr(
            "Near the centre: {rule}, but not under the least feed of this edge, or it rubs. "
            "Sources differ ({shares}); where to begin is practice.",
            rule=rule,
            shares=shares,
        )
    return tr(
        "Near the centre: {rule}. Sources differ ({shares}); where to begin is practice.",
        rule=rule,
        shares=shares,
    )


def _core_note(chart: CentreChart) -> str:
    if chart.material.force is None:
        return tr("No published force data: where the core lets go is not known.")
    return tr("The core may hold to two thirds of that Ø: ease off and stand clear from there on.")


def _height_note(chart: CentreChart) -> str:
    units = chart.shop.request.units
    error = f"{write_length(chart.height_error, units)} {length_label(units)}"
    outer, inner = (
        tr(
            "{angle}° at Ø {diameter}",
            angle=f"{angle.turned:.0f}",
            diameter=write_length(angle.diameter, units),
        )
        for angle in chart.turned
    )
    return tr(
        "Edge within {error} of centre height. So much too high takes {outer} and {inner} off the "
        "clearance; too low takes it off the rake and leaves a pip of Ø {pip}.",
        error=error,
        outer=outer,
        inner=inner,
        pip=write_length(chart.height_pip, units),
    )
