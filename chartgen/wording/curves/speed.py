"""Spindle speed against diameter, both as ratios: lines of surface speed, rungs of the machine."""

import math

from chartgen.charts.speed_lines import SpeedLines
from chartgen.model.blade import ToolMaterial
from chartgen.model.shop import LengthUnits
from chartgen.quantities import MetresPerMinute
from chartgen.wording.blade_letters import blade_letter
from chartgen.wording.curves.scales import in_units
from chartgen.wording.curves.spindle import CUT_SHAPES
from chartgen.wording.figure import (
    Dash,
    Point,
    PrintedAxis,
    PrintedCurve,
    PrintedCurves,
    PrintedDot,
    PrintedPanel,
    log_axis,
    plain,
    round_outward,
)
from chartgen.wording.language import tr
from chartgen.wording.numbers import length_label, write_cutting_speed

_MARGIN = 1.06
"""So that no dot lies on the frame."""
_START = {ToolMaterial.CARBIDE: Dash.SOLID, ToolMaterial.HSS: Dash.LONG}
_CEILING = {ToolMaterial.CARBIDE: Dash.LONG_DOT, ToolMaterial.HSS: Dash.SHORT}


def print_speed_lines(chart: SpeedLines) -> PrintedCurves:
    """Return one material's speeds over diameter."""
    units = chart.shop.request.units
    x = log_axis(
        f"Ø {length_label(units)}",
        in_units(chart.smallest, units) / _MARGIN,
        in_units(chart.largest, units) * _MARGIN,
    )
    slowest = min(p.slowest for p in chart.positions)
    least, most = round_outward(
        max(slowest, 0.6 * min((r.speed for r in chart.recommended), default=slowest)),
        1.2 * chart.fastest_spindle,
    )
    y = log_axis(tr("rev/min"), least, most)
    lines = [
        curve
        for edge in chart.edges
        for curve in (
            _line(
                x,
                y,
                edge.start,
                _start_name(edge.tool_material),
                units,
                _START[edge.tool_material],
                1.6,
            ),
            _line(
                x,
                y,
                edge.ceiling,
                _most_name(edge.tool_material),
                units,
                _CEILING[edge.tool_material],
                1.2,
            ),
        )
        if curve is not None
    ]
    return PrintedCurves(
        title=tr(chart.material.name),
        subtitle=tr("spindle speed by diameter"),
        panels=(
            PrintedPanel(
                title="",
                x=x,
                y=y,
                curves=(*lines, *_rungs(chart, x, y)),
                dots=_dots(chart, units),
            ),
        ),
        notes=_notes(chart),
        legend=(),
        description=tr(
            "Spindle speed against diameter in {material}, both axes logarithmic: {lines}. "
            "Level lines are the machine's speeds, dots the recommended cuts of the lathe chart.",
            material=tr(chart.material.name),
            lines="; ".join(line.label for line in lines),
        ),
    )


def _start_name(tool: ToolMaterial) -> str:
    return tr("carbide start") if tool is ToolMaterial.CARBIDE else tr("HSS start")


def _most_name(tool: ToolMaterial) -> str:
    return tr("carbide most") if tool is ToolMaterial.CARBIDE else tr("HSS most")


def _dots(chart: SpeedLines, units: LengthUnits) -> tuple[PrintedDot, ...]:
    """Return the lathe chart's speeds, one of each blade with its letter."""
    names = [blade.name for blade in chart.shop.blades]
    found = []
    for place, name in enumerate(names):
        cuts = [r for r in chart.recommended if r.blade.name == name]
        found += [
            PrintedDot(
                at=(in_units(cut.diameter, units), cut.speed),
                shape=CUT_SHAPES[place % len(CUT_SHAPES)],
                label=blade_letter(chart.shop, name) if number == 1 or len(cuts) == 1 else "",
            )
            for number, cut in enumerate(cuts)
        ]
    return tuple(found)


def _notes(chart: SpeedLines) -> tuple[str, ...]:
    """Return how to read the figure."""
    return (
        tr(
            "Slanted lines: equal surface speed; start is what a cut would like, most is what "
            "the edge bears. Level lines: the machine's own speeds. Dots: the speeds of the "
            "lathe chart; one under its start line was lowered because the motor, the grip or "
            "the fastest spindle ({fastest} rev/min) asks for it. "
            "Chuck: at most {chuck} rev/min.",
            fastest=math.floor(chart.fastest_spindle),
            chuck=math.floor(chart.chuck_speed),
        ),
    )


def _line(
    x: PrintedAxis,
    y: PrintedAxis,
    speed: MetresPerMinute[float],
    name: str,
    units: LengthUnits,
    dash: Dash,
    weight: float,
) -> PrintedCurve | None:
    """Return a line of equal surface speed: straight, of slope -1, so two points make it."""
    ends = clipped(x, y, in_units(1000.0 * speed / math.pi, units))
    if ends is None:
        return None
    return PrintedCurve(
        parts=(ends,),
        dash=dash,
        weight=weight,
        label=f"{name} {write_cutting_speed(speed, units)}",
    )


def clipped(x: PrintedAxis, y: PrintedAxis, product: float) -> tuple[Point, Point] | None:
    """Return where the line x y = product crosses the frame, or None where it misses it."""
    left = max(x.least, product / y.most)
    right = min(x.most, product / y.least)
    return ((left, product / left), (right, product / right)) if left < right else None


def _rungs(chart: SpeedLines, x: PrintedAxis, y: PrintedAxis) -> list[PrintedCurve]:
    """Return the machine's own speeds as level lines: each listed one, both ends of a range."""
    rungs = [
        (f"{position.mark or position.name} {plain(speed)}", speed)
        if position.mark or not position.is_single_speed
        else (plain(speed), speed)
        for position in chart.positions
        for speed in dict.fromkeys((position.slowest, position.fastest))
        if y.least < speed < y.most
    ]
    return [
        PrintedCurve(
            parts=(((x.least, speed), (x.most, speed)),),
            weight=0.6,
            fine=True,
            label=label,
        )
        for label, speed in rungs
    ]
