"""Ways out and sensitivities as lines: what would help, and what is worth measuring."""

from chartgen.limits.cut import Cut
from chartgen.limits.sensitivity import Outcome, Sensitivity, sensitivities
from chartgen.limits.ways_out import WayOut, ways_out
from chartgen.model.shop import LengthUnits, Shop
from chartgen.wording.numbers import (
    feed_label,
    length_label,
    write_feed,
    write_length,
    write_speed,
)


def cell_ways(shop: Shop, cut: Cut) -> list[str]:
    """Return the ways that make a cut's cell roomier; the saw where there is none at all."""
    found = ways_out(
        shop, material=cut.material, blade=cut.blade, diameter=cut.diameter, bore=cut.bore
    )
    return way_lines(found, shop.request.units) or ["none found: saw it off and face the end"]


def cell_sensitivity(shop: Shop, cut: Cut) -> list[str]:
    """Return the assumptions behind a cut's cell, the one most worth measuring first."""
    found = sensitivities(
        shop, material=cut.material, blade=cut.blade, diameter=cut.diameter, bore=cut.bore
    )
    return sensitivity_lines(found, shop.request.units)


def way_lines(ways: tuple[WayOut, ...], units: LengthUnits) -> list[str]:
    """Return a line for each way out, as a sentence with what it leads to."""
    return [
        f"{way.way.value.format(what=_what(way, units))}: {way.verdict.value}, "
        f"{write_speed(way.spindle_speed)} rev/min and {write_feed(way.feed, units)} "
        f"{feed_label(units)}, ceiling {way.room:.1f} times the floor"
        for way in ways
    ]


def _what(way: WayOut, units: LengthUnits) -> str:
    if not way.way.is_length:
        return way.what
    return f"{write_length(float(way.what), units)} {length_label(units)}"


def sensitivity_lines(found: tuple[Sensitivity, ...], units: LengthUnits) -> list[str]:
    """Return a line for each assumption, the one most worth measuring first."""
    return [
        f"{one.assumption}: {_end(one.low, units)}; {_end(one.high, units)} "
        f"(settled by {one.measure_by})"
        for one in found
    ]


def _end(outcome: Outcome, units: LengthUnits) -> str:
    if not outcome.has_window:
        return f"{outcome.assumed} leaves no window"
    return (
        f"{outcome.assumed} gives {write_speed(outcome.spindle_speed)} rev/min, "
        f"{write_feed(outcome.feed, units)} {feed_label(units)}, room {outcome.room:.1f}"
    )
