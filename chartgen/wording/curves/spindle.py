"""Torque and power over spindle speed, drawn, with what the recommended cuts ask."""

from collections.abc import Callable

from chartgen.charts.spindle_curves import Demand, DriveCurve, SpindleCurves
from chartgen.limits.spindle import Duration
from chartgen.quantities import FloatArray
from chartgen.wording.blade_letters import blade_letter
from chartgen.wording.curves.scales import points
from chartgen.wording.figure import (
    Dash,
    DotShape,
    PrintedAxis,
    PrintedCurve,
    PrintedCurves,
    PrintedDot,
    PrintedPanel,
    log_axis,
    round_outward,
)
from chartgen.wording.language import tr
from chartgen.wording.numbers import length_label, write_length

_DASHES = {
    Duration.CONTINUOUS: (Dash.SOLID, Dash.SOLID_NOTCHED, Dash.SOLID_BARRED),
    Duration.ONE_CUT: (Dash.LONG, Dash.LONG_DOT, Dash.LONG_DOT_DOT),
    Duration.STALL: (Dash.SHORT, Dash.SHORT_WIDE, Dash.SHORT_PAIRS),
}
POSITIONS_A_CARD = 3
"""More drive positions with a range run on to further cards: so many dashes are told apart."""
CUT_SHAPES = (DotShape.DISC, DotShape.RING, DotShape.SQUARE, DotShape.CROSS)
"""How the cuts of the first, second... blade of a shop are marked on every figure."""


def print_spindle_curves(chart: SpindleCurves) -> PrintedCurves:
    """Return the drive's curves with one material's demands, torque beside power."""
    speeds = [float(s) for curve in chart.curves for s in curve.speed]
    speeds += [demand.speed for demand in chart.demands]
    x = log_axis(tr("rev/min"), *round_outward(0.95 * min(speeds), 1.05 * max(speeds)))
    panels = (
        _panel(
            chart,
            x,
            "N·m",
            tr("torque at the spindle"),
            lambda c: c.torque,
            lambda d: (d.torque, d.torque_high),
        ),
        _panel(
            chart,
            x,
            "W",
            tr("power at the spindle"),
            lambda c: c.power,
            lambda d: (d.power, d.power_high),
        ),
    )
    return PrintedCurves(
        title=tr(chart.material.name),
        subtitle=tr("what the drive gives and the cuts ask"),
        panels=panels,
        notes=_notes(chart),
        legend=(),
        description=tr(
            "Torque and power at the spindle against its speed, for each drive position: "
            "continuous, one cut and stall; with what the recommended cuts in {material} "
            "ask of it.",
            material=tr(chart.material.name),
        ),
    )


def _panel(
    chart: SpindleCurves,
    x: PrintedAxis,
    unit: str,
    title: str,
    of_curve: Callable[[DriveCurve], FloatArray],
    of_demand: Callable[[Demand], tuple[float, float]],
) -> PrintedPanel:
    curves = [
        PrintedCurve(
            parts=(points(curve.speed, of_curve(curve)),),
            dash=_dash(chart, curve),
            label=f"{curve.position.mark or curve.position.name} {_words(curve.duration)}",
        )
        for curve in chart.curves
        if not curve.position.is_single_speed
    ]
    steps, dots = _steps(chart, of_curve)
    curves += steps
    for blade in dict.fromkeys(demand.blade for demand in chart.demands):
        cuts = [demand for demand in chart.demands if demand.blade == blade]
        curves.append(
            PrintedCurve(
                parts=(tuple((c.speed, of_demand(c)[1]) for c in cuts),),
                weight=0.7,
                label=tr("cuts {letter}", letter=blade_letter(chart.shop, blade.name)),
                bold=True,
            )
        )
        shape = CUT_SHAPES[list(chart.shop.blades).index(blade) % len(CUT_SHAPES)]
        dots += [PrintedDot(at=(c.speed, of_demand(c)[1]), shape=shape) for c in cuts]
    ys = [y for curve in curves for part in curve.parts for _, y in part if y > 0.0]
    ys += [dot.at[1] for dot in dots if dot.at[1] > 0.0]
    return PrintedPanel(
        title=title,
        x=x,
        y=log_axis(unit, *round_outward(0.8 * min(ys), 1.3 * max(ys))),
        curves=tuple(curves),
        dots=tuple(dots),
    )


def _steps(
    chart: SpindleCurves, of_curve: Callable[[DriveCurve], FloatArray]
) -> tuple[list[PrintedCurve], list[PrintedDot]]:
    """Return single speeds as marks; a thin line leads the eye from one to the next."""
    found: list[PrintedCurve] = []
    dots: list[PrintedDot] = []
    singles = [curve for curve in chart.curves if curve.position.is_single_speed]
    for duration in dict.fromkeys(curve.duration for curve in singles):
        held = [curve for curve in singles if curve.duration is duration]
        marks = sorted(points([c.speed[0] for c in held], [of_curve(c)[0] for c in held]))
        words = _words(duration)
        kind = duration or Duration.CONTINUOUS
        alone = len(marks) == 1
        dots += [
            PrintedDot(at=at, shape=DotShape.BAR, label=words if alone else "") for at in marks
        ]
        if not alone:
            found.append(
                PrintedCurve(parts=(tuple(marks),), dash=_DASHES[kind][0], weight=0.5, label=words)
            )
    return found, dots


def _notes(chart: SpindleCurves) -> tuple[str, ...]:
    """Return how to read the figure."""
    units = chart.shop.request.units
    lines = [
        tr(
            "Continuous: for as long as you like. One cut: a short solid cut, then rest. Stall: "
            "the most before the spindle stops."
        )
    ]
    if any(position.is_single_speed for position in chart.positions):
        lines.append(
            tr("Marks: the speeds there are; the thin lines only lead from one to the next.")
        )
    if chart.demands:
        sizes = [demand.diameter for demand in chart.demands]
        ends = list(dict.fromkeys(write_length(size, units) for size in (min(sizes), max(sizes))))
        span = tr("{least} to {most}", least=ends[0], most=ends[1]) if len(ends) > 1 else ends[0]
        lines.append(
            tr(
                "Cuts: the recommended cuts of each blade, Ø {span} {length}, at the "
                "outside of the bar, with the force at the high side of its band. A cut on the "
                "one-cut line uses all the motor has; one under it is held back by something "
                "else.",
                span=span,
                length=length_label(units),
            )
        )
    else:
        lines.append(tr("No published force data: what the cuts ask is not known."))
    return tuple(lines)


def _words(duration: Duration | None) -> str:
    """Return how long what a curve shows may last; what was measured, lasted as it did."""
    match duration:
        case Duration.CONTINUOUS:
            return tr("continuous")
        case Duration.ONE_CUT:
            return tr("one cut")
        case Duration.STALL:
            return tr("at the stall")
        case None:
            return tr("measured")


def _dash(chart: SpindleCurves, curve: DriveCurve) -> Dash:
    ranged = [p for p in chart.positions if not p.is_single_speed]
    place = ranged.index(curve.position)
    return _DASHES[curve.duration or Duration.CONTINUOUS][place % POSITIONS_A_CARD]
