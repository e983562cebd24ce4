"""Rounding and writing numbers, in the units of the card.

A ceiling is rounded down and a floor up, so that no printed limit is looser than the
computed one.
"""

import math
from collections.abc import Callable, Sequence

from chartgen.model.shop import LengthUnits
from chartgen.quantities import (
    MetresPerMinute,
    Millimetres,
    MillimetresPerMinute,
    MillimetresPerRev,
    RevsPerMinute,
    Seconds,
)
from chartgen.wording.language import decimal, tr

_INCH = 25.4
_FOOT = 304.8
_SLIP = 1e-9
_FRACTION_SLIP = 1e-4
_FINEST_PART = 64
_TENTH = 0.1
_WHOLE_TURNS_FROM = 10.0
_WHOLE_SECONDS_FROM = 10.0
_WHOLE_METRES_FROM = 20.0
# (from this many seconds on, step): nobody counts tenths, but near one second a half is
# a quarter of the feed.
_PACE_STEPS = ((10.0, 1.0), (3.0, 0.5), (0.0, 0.1))
_FINER_PACES = (0.5, 0.1, 0.05, 0.01)


def feed_label(units: LengthUnits) -> str:
    """Return the unit of feed on a card."""
    return tr("mm/rev") if units is LengthUnits.METRIC else tr("in/rev")


def length_label(units: LengthUnits) -> str:
    """Return the unit of length on a card."""
    return "mm" if units is LengthUnits.METRIC else "in"


def write_span(ends: Sequence[str]) -> str:
    """Return "low to high", or the one number that both ends are."""
    first, *rest = dict.fromkeys(ends)
    return tr("{low} to {high}", low=first, high=rest[-1]) if rest else first


def write_feed(feed: MillimetresPerRev[float], units: LengthUnits) -> str:
    """Return a feed that has already been rounded to a settable step."""
    if units is LengthUnits.METRIC:
        return decimal(f"{feed:.3f}")
    return decimal(f"{feed / _INCH:.4f}")


def write_feed_ceiling(feed: MillimetresPerRev[float], units: LengthUnits) -> str:
    """Return a ceiling of feed, rounded down."""
    return _write_limit(feed, units, math.floor, +1)


def write_feed_floor(feed: MillimetresPerRev[float], units: LengthUnits) -> str:
    """Return a floor of feed, rounded up."""
    return _write_limit(feed, units, math.ceil, -1)


def _write_limit(feed: float, units: LengthUnits, rounded: object, slip: int) -> str:
    if math.isinf(feed):
        return tr("none")
    step, scale = (0.001, 1.0) if units is LengthUnits.METRIC else (0.0001, _INCH)
    steps = feed / scale / step + slip * 1e-6
    whole = math.floor(steps) if rounded is math.floor else math.ceil(steps)
    return decimal(f"{whole * step:.{3 if units is LengthUnits.METRIC else 4}f}")


def write_speed(speed: RevsPerMinute[float]) -> str:
    """Return a spindle speed that has already been rounded to the dial."""
    return decimal(f"{speed:.{0 if speed >= _WHOLE_TURNS_FROM else 1}f}")


def write_speed_ceiling(speed: RevsPerMinute[float]) -> str:
    """Return a ceiling of spindle speed, rounded down to the whole turn."""
    return tr("none") if math.isinf(speed) else f"{math.floor(speed + _SLIP)}"


def write_cutting_speed(speed: MetresPerMinute[float], units: LengthUnits) -> str:
    """Return a surface speed with its unit."""
    if units is LengthUnits.METRIC:
        return decimal(f"{speed:.{0 if speed >= _WHOLE_METRES_FROM else 1}f}") + " m/min"
    return f"{speed * 1000.0 / _FOOT:.0f} ft/min"


def write_length(length: Millimetres[float], units: LengthUnits) -> str:
    """Return a length: plain millimetres, or inches as a fraction where it is one."""
    if units is LengthUnits.METRIC:
        return decimal(f"{length:g}" if round(length, 2) == length else f"{length:.2f}")
    inches = length / _INCH
    parts = round(inches * _FINEST_PART)
    if abs(parts / _FINEST_PART - inches) > _FRACTION_SLIP:
        return decimal(f"{inches:.3f}")
    whole, rest = divmod(parts, _FINEST_PART)
    if not rest:
        return f"{whole}"
    common = math.gcd(rest, _FINEST_PART)
    part = f"{rest // common}/{_FINEST_PART // common}"
    return f"{whole} {part}" if whole else part


def write_slack(slack: Millimetres[float], units: LengthUnits) -> str:
    """Return a bite that is swallowed, rounded down so that no more is promised."""
    if units is LengthUnits.METRIC:
        return decimal(f"{math.floor(slack * 100.0 + 1e-6) / 100.0:.2f}")
    return decimal(f"{math.floor(slack / _INCH * 1000.0 + 1e-6) / 1000.0:.3f}")


def write_feed_rate(rate: MillimetresPerMinute[float], units: LengthUnits) -> str:
    """Return the pace of the slide with its unit."""
    if units is LengthUnits.METRIC:
        return decimal(f"{rate:.1f}") + " mm/min"
    return decimal(f"{rate / _INCH:.2f}") + " in/min"


def write_pace(
    *,
    seconds: Seconds[float],
    feed: MillimetresPerRev[float],
    floor: MillimetresPerRev[float],
    ceiling: MillimetresPerRev[float],
) -> str:
    """Return the seconds of one handle turn, rounded so that the feed it means stays inside.

    The step grows with the time; where no round time means a feed inside the window, the
    next finer step is used.
    """
    steps = [step for least, step in _PACE_STEPS if seconds >= least]
    for step in (*steps[:1], *(s for s in _FINER_PACES if s < steps[0])):
        nearest = round(seconds / step)
        for count in (nearest, math.floor(seconds / step), math.ceil(seconds / step)):
            if count <= 0:
                continue
            meant = feed * seconds / (count * step)
            if floor * (1.0 - _SLIP) <= meant <= ceiling * (1.0 + _SLIP):
                return _write_seconds(count * step, step)
    return decimal(f"{seconds:.2f}")


def write_seconds(seconds: Seconds[float]) -> str:
    """Return a time in seconds: whole ones from ten on, tenths below."""
    return decimal(f"{seconds:.{0 if seconds >= _WHOLE_SECONDS_FROM else 1}f}")


def write_feed_floor_whole(feed: MillimetresPerRev[float], units: LengthUnits) -> str:
    """Return a floor of feed with its unit: in mm, as the formulas have it, and as the card."""
    return _both(feed, units, write_feed_floor)


def write_feed_ceiling_whole(feed: MillimetresPerRev[float], units: LengthUnits) -> str:
    """Return a ceiling of feed with its unit: in mm, and as the card has it."""
    return _both(feed, units, write_feed_ceiling)


def _both(feed: float, units: LengthUnits, write: Callable[[float, LengthUnits], str]) -> str:
    metric = write(feed, LengthUnits.METRIC)
    if math.isinf(feed):
        return metric
    if units is LengthUnits.METRIC:
        return f"{metric} {feed_label(units)}"
    return f"{metric} {feed_label(LengthUnits.METRIC)} ({write(feed, units)} {feed_label(units)})"


def _write_seconds(seconds: float, step: float) -> str:
    if step >= 1.0:
        return f"{seconds:.0f}"
    return decimal(f"{seconds:.{2 if step < _TENTH else 1}f}")
