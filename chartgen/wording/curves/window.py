"""The window of feed against diameter, drawn: floor, ceiling, what binds, what is advised."""

from collections.abc import Iterable, Sequence

import numpy as np

from chartgen.charts.feed_windows import FeedWindow, FeedWindows
from chartgen.model.shop import LengthUnits, Shop
from chartgen.wording.blade_letters import blade_letter
from chartgen.wording.curves.scales import in_units
from chartgen.wording.figure import (
    Dash,
    DotShape,
    Point,
    PrintedAxis,
    PrintedBand,
    PrintedCurve,
    PrintedCurves,
    PrintedDot,
    PrintedPanel,
    log_axis,
    round_outward,
)
from chartgen.wording.language import decimal, tr
from chartgen.wording.numbers import feed_label, length_label
from chartgen.wording.signs import legend_of_letters

MARGIN = 1.06
"""So that no dot lies on the frame."""
_LONG_RUN = 0.1
"""Share of the axis from which a limit is named alone."""
_LEAST_SPAN = 4.0
"""Most over least feed of an axis, at least: a taller one would look more precise than it is."""


def print_feed_windows(chart: FeedWindows) -> PrintedCurves:
    """Return one material's windows, a panel a blade on one scale."""
    units = chart.shop.request.units
    x_name = f"Ø {length_label(units)}"
    xs = [in_units(d, units) for d in chart.diameters]
    x = log_axis(x_name, xs[0] / MARGIN, xs[-1] * MARGIN)
    y = feed_axis(chart.blades, units)
    least = y.least
    reasons = {run.reason.mark for w in chart.blades for run in w.ceiling_runs}
    return PrintedCurves(
        title=tr(chart.material.name),
        subtitle=tr("window of feed by diameter"),
        panels=tuple(
            PrintedPanel(
                title=_blade(chart.shop, window),
                x=x,
                y=y,
                curves=_curves(window, xs, units, least),
                bands=tuple(PrintedBand(o) for o in _outlines(window, xs, units)),
                dots=(*_changes(window, xs, units, least), *_advised(chart, window, xs)),
                letters=_letters(window, xs, units, least),
            )
            for window in chart.blades
        ),
        notes=_notes(),
        legend=legend_of_letters(reasons),
        description=_description(chart),
    )


def _notes() -> tuple[str, ...]:
    """Return how to read the figure."""
    return (
        tr(
            "Hatched: feeds inside the window, at the speed that the lathe chart recommends for "
            "the diameter. Upper line: the most that the first limit allows; its letter says "
            "which, a stroke where another takes over, two letters where two are met at about the "
            "same feed. Dashed: the least, under which the edge rubs. Dots: the feeds of the lathe "
            "chart. No hatching: no window."
        ),
    )


def feed_axis(windows: Sequence[FeedWindow], units: LengthUnits) -> PrintedAxis:
    """Return an axis of feed that holds every floor and ceiling of some windows."""
    feeds = [in_units(float(f), units) for w in windows for f in (*w.floor, *w.ceiling)]
    least, most = round_outward(
        0.8 * min(in_units(float(f), units) for w in windows for f in w.floor),
        1.15 * max(feed for feed in feeds if np.isfinite(feed)),
    )
    return log_axis(
        feed_label(units), least, max(most, round_outward(least, _LEAST_SPAN * least)[1])
    )


def _blade(shop: Shop, window: FeedWindow) -> str:
    return f"{blade_letter(shop, window.blade.name)}  {window.blade.name}"


def _curves(
    window: FeedWindow, xs: list[float], units: LengthUnits, least: float
) -> tuple[PrintedCurve, ...]:
    floor = [in_units(f, units) for f in window.floor]
    ceiling = [in_units(f, units) for f in window.ceiling]
    return (
        PrintedCurve(
            parts=above(least, zip(xs, ceiling, strict=True)), weight=1.5, label=tr("most")
        ),
        PrintedCurve(
            parts=(tuple(zip(xs, floor, strict=True)),),
            dash=Dash.LONG,
            weight=1.3,
            label=tr("least"),
        ),
    )


def above(least: float, curve: Iterable[Point]) -> tuple[tuple[Point, ...], ...]:
    """Return the stretches of a curve that do not lie under the axis."""
    parts: list[list[Point]] = [[]]
    for x, y in curve:
        if y >= least:
            parts[-1].append((x, y))
        elif parts[-1]:
            parts.append([])
    return tuple(tuple(part) for part in parts if len(part) > 1)


def _parts(xs: list[float], ys: list[float], window: FeedWindow) -> tuple[tuple[Point, ...], ...]:
    """Return the stretches of a curve where there is a window."""
    parts: list[list[Point]] = [[]]
    for x, y, holds in zip(xs, ys, window.has_window, strict=True):
        if holds:
            parts[-1].append((x, y))
        elif parts[-1]:
            parts.append([])
    return tuple(tuple(part) for part in parts if len(part) > 1)


def _outlines(window: FeedWindow, xs: list[float], units: LengthUnits) -> list[tuple[Point, ...]]:
    upper = _parts(xs, [in_units(f, units) for f in window.ceiling], window)
    lower = _parts(xs, [in_units(f, units) for f in window.floor], window)
    return [(*up, *reversed(low)) for up, low in zip(upper, lower, strict=True)]


def _changes(
    window: FeedWindow, xs: list[float], units: LengthUnits, least: float
) -> tuple[PrintedDot, ...]:
    """Return a stroke across the ceiling wherever another limit takes over."""
    at = [(xs[r.first], in_units(window.ceiling[r.first], units)) for r in window.ceiling_runs[1:]]
    return tuple(PrintedDot(at=(x, y), shape=DotShape.BAR) for x, y in at if y >= least)


def _advised(chart: FeedWindows, window: FeedWindow, xs: list[float]) -> tuple[PrintedDot, ...]:
    """Return the feeds that the lathe chart prints, at its own diameters."""
    units = chart.shop.request.units
    return tuple(
        PrintedDot(at=(xs[i], in_units(window.feed[i], units)), shape=DotShape.DISC)
        for i in np.flatnonzero(window.has_window & chart.printed)
    )


def _letters(
    window: FeedWindow, xs: list[float], units: LengthUnits, least: float
) -> tuple[tuple[Point, str], ...]:
    """Return the letter of what binds at the middle of each stretch, the longest first.

    Where two limits take turns, both are met at about the same feed: their letters stand
    together. A ceiling under the axis (a blade too short has none at all) is named at its foot.
    """
    found = []
    for first, last, letters in sorted(_stretches(window, len(xs)), key=lambda s: s[0] - s[1]):
        middle = (first + last) // 2
        y = max(in_units(window.ceiling[middle], units), least)
        found.append(((xs[middle], y), letters))
    return tuple(found)


def _stretches(window: FeedWindow, count: int) -> list[tuple[int, int, str]]:
    """Return first, last and letters: long runs as they are, neighbouring short ones as one."""
    long = max(2, round(_LONG_RUN * count))
    found: list[tuple[int, int, str]] = []
    joins = False
    for run in window.ceiling_runs:
        is_long = run.last - run.first + 1 >= long
        mark = run.reason.mark
        if found and joins and not is_long:
            first, _, marks = found[-1]
            marks = marks if mark in marks.split("/") else f"{marks}/{mark}"
            found[-1] = (first, run.last, marks)
        else:
            found.append((run.first, run.last, mark))
        joins = not is_long
    return found


def _description(chart: FeedWindows) -> str:
    """Return what the figure shows, for somebody who cannot see it."""
    units = chart.shop.request.units
    told = []
    for window in chart.blades:
        inside = np.flatnonzero(window.has_window)
        name = _blade(chart.shop, window)
        if not inside.size:
            told.append(tr("{blade}: no window at any diameter shown", blade=name))
            continue
        first, last = (in_units(chart.diameters[i], units) for i in (inside[0], inside[-1]))
        told.append(
            tr(
                "{blade}: windows between {first} and {last} {length} diameter",
                blade=name,
                first=decimal(f"{first:.3g}"),
                last=decimal(f"{last:.3g}"),
                length=length_label(units),
            )
        )
    return tr(
        "Feed against diameter in {material}: the most that the first limit allows, the least "
        "that the edge needs, and the advised feed between. {blades}.",
        material=tr(chart.material.name),
        blades="; ".join(told),
    )
