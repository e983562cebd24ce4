"""Curves of two shops laid over each other: what the drive gives, and the windows of feed."""

from collections.abc import Callable, Sequence
from dataclasses import replace

from chartgen.charts.feed_windows import FeedWindow, FeedWindows
from chartgen.charts.spindle_curves import DriveCurve, SpindleCurves
from chartgen.limits.spindle import Duration
from chartgen.model.shop import LengthUnits
from chartgen.quantities import FloatArray
from chartgen.wording.blade_letters import blade_letter
from chartgen.wording.curves.scales import in_units, points
from chartgen.wording.curves.window import MARGIN, above, feed_axis
from chartgen.wording.figure import (
    Dash,
    DotShape,
    Point,
    PrintedAxis,
    PrintedCurve,
    PrintedCurves,
    PrintedDot,
    PrintedPanel,
    log_axis,
    round_outward,
)
from chartgen.wording.language import tr
from chartgen.wording.numbers import length_label

BEFORE, NOW = "before", "now"
"""Which shop a curve is of; said in words by `_said`."""
_DASHES = {BEFORE: Dash.SHORT, NOW: Dash.SOLID}
_WEIGHTS = {BEFORE: 1.1, NOW: 1.5}


def print_drive_change(before: SpindleCurves, after: SpindleCurves) -> PrintedCurves:
    """Return what both drives give for one cut: torque beside power."""
    speeds = [float(s) for chart in (before, after) for c in _held(chart) for s in c.speed]
    x = log_axis(tr("rev/min"), *round_outward(0.95 * min(speeds), 1.05 * max(speeds)))

    def panel(unit: str, title: str, of_curve: Callable[[DriveCurve], FloatArray]) -> PrintedPanel:
        return _drive_panel((before, after), x, unit, title, of_curve)

    return PrintedCurves(
        title=tr("What changed"),
        subtitle=tr("at the spindle, one cut"),
        panels=(
            panel("N·m", tr("torque"), lambda curve: curve.torque),
            panel("W", tr("power"), lambda curve: curve.power),
        ),
        notes=(),
        legend=(),
        description=tr(
            "What changed: torque and power for one cut against spindle speed, before and now, "
            "in every drive position."
        ),
    )


def print_window_change(before: FeedWindows, after: FeedWindows) -> PrintedCurves:
    """Return the windows of feed of one material, a panel for each blade both shops have."""
    units = after.shop.request.units
    names = {window.blade.name for window in before.blades}
    pairs = [
        (next(w for w in before.blades if w.blade.name == now.blade.name), now)
        for now in after.blades
        if now.blade.name in names
    ]
    ends = [in_units(float(d), units) for c in (before, after) for d in c.diameters[[0, -1]]]
    x = log_axis(f"Ø {length_label(units)}", min(ends) / MARGIN, max(ends) * MARGIN)
    y = feed_axis([window for pair in pairs for window in pair], units)
    return PrintedCurves(
        title=tr(after.material.name),
        subtitle=tr("window of feed, before and now"),
        panels=tuple(
            PrintedPanel(
                title=f"{blade_letter(after.shop, now.blade.name)}  {now.blade.name}",
                x=x,
                y=y,
                curves=(
                    *_window_curves(BEFORE, before, old, y.least, units),
                    *_window_curves(NOW, after, now, y.least, units),
                ),
            )
            for old, now in pairs
        ),
        notes=(),
        legend=(),
        description=tr(
            "{material}: the most and the least feed against diameter, before and now, one blade "
            "beside the other.",
            material=tr(after.material.name),
        ),
    )


def _held(chart: SpindleCurves) -> list[DriveCurve]:
    return [c for c in chart.curves if c.duration in {Duration.ONE_CUT, None}]


def _drive_panel(
    charts: tuple[SpindleCurves, SpindleCurves],
    x: PrintedAxis,
    unit: str,
    title: str,
    of_curve: Callable[[DriveCurve], FloatArray],
) -> PrintedPanel:
    curves: list[PrintedCurve] = []
    dots: list[PrintedDot] = []
    for word, chart in zip((BEFORE, NOW), charts, strict=True):
        held = _held(chart)
        singles = [c for c in held if c.position.is_single_speed]
        marks = sorted(points([c.speed[0] for c in singles], [of_curve(c)[0] for c in singles]))
        shape = DotShape.RING if word == BEFORE else DotShape.DISC
        dots += [PrintedDot(at=at, shape=shape) for at in marks]
        parts = [points(c.speed, of_curve(c)) for c in held if not c.position.is_single_speed]
        curves += _named(word, [*parts, tuple(marks)] if len(marks) > 1 else parts)
    ys = [at[1] for curve in curves for part in curve.parts for at in part if at[1] > 0.0]
    ys += [dot.at[1] for dot in dots]
    return PrintedPanel(
        title=title,
        x=x,
        y=log_axis(unit, *round_outward(0.8 * min(ys), 1.3 * max(ys))),
        curves=tuple(curves),
        dots=tuple(dots),
    )


def _named(word: str, parts: Sequence[tuple[Point, ...]]) -> list[PrintedCurve]:
    """Return the parts as one curve with one name: before and now are told apart, no more."""
    if not parts:
        return []
    return [
        PrintedCurve(
            parts=tuple(parts), dash=_DASHES[word], weight=_WEIGHTS[word], label=_said(word)
        )
    ]


def _said(word: str) -> str:
    return tr("before") if word == BEFORE else tr("now")


def _window_curves(
    word: str, chart: FeedWindows, window: FeedWindow, least: float, units: LengthUnits
) -> list[PrintedCurve]:
    xs = [in_units(float(d), units) for d in chart.diameters]
    most, floor = (
        above(least, zip(xs, (in_units(float(f), units) for f in feeds), strict=True))
        for feeds in (window.ceiling, window.floor)
    )
    curves = _named(word, most)
    # The least feed seldom moves: it is named once, by the curve of now.
    name = tr("least") if word == NOW else ""
    dash = Dash.LONG if word == NOW else Dash.SHORT_WIDE
    return curves + [replace(c, dash=dash, label=name, weight=1.0) for c in _named(word, floor)]
