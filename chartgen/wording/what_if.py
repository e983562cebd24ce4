"""Ways out and sensitivities as lines: what would help, and what is worth measuring."""

from chartgen.limits.cut import Cut
from chartgen.limits.sensitivity import Outcome, Sensitivity, sensitivities
from chartgen.limits.ways_out import Way, WayOut, ways_out
from chartgen.model.shop import LengthUnits, Shop
from chartgen.wording.language import decimal, tr
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
        tr(
            "{way}: {verdict}, {speed} rev/min and {feed} {unit}, ceiling {times} times the floor",
            way=tr(way.way.value, what=_what(way, units)),
            verdict=tr(way.verdict.value),
            speed=write_speed(way.spindle_speed),
            feed=write_feed(way.feed, units),
            unit=feed_label(units),
            times=decimal(f"{way.room:.1f}"),
        )
        for way in ways
    ]


def _what(way: WayOut, units: LengthUnits) -> str:
    if way.way is Way.SHARPER_EDGE:
        return tr(way.what)
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
