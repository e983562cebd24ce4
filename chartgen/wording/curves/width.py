"""The widest blade against diameter, drawn."""

import numpy as np

from chartgen.charts.widest_blade import WidestBlade, WidestBlades
from chartgen.model.blade import ToolMaterial
from chartgen.model.shop import LengthUnits
from chartgen.wording.blade_letters import blade_letter
from chartgen.wording.curves.scales import in_units, points
from chartgen.wording.figure import (
    Dash,
    Point,
    PrintedCurve,
    PrintedCurves,
    PrintedPanel,
    even_axis,
    log_axis,
)
from chartgen.wording.language import tr
from chartgen.wording.numbers import length_label, write_length

_DASHES = {
    ToolMaterial.CARBIDE: (Dash.SOLID, Dash.LONG),
    ToolMaterial.HSS: (Dash.LONG_DOT, Dash.SHORT),
}


def print_widest_blades(chart: WidestBlades) -> PrintedCurves:
    """Return one material's widest blades: usable and good, for each kind of tool."""
    units = chart.shop.request.units
    label = length_label(units)
    xs = [in_units(d, units) for d in chart.diameters]
    owned = {blade.name: in_units(blade.insert_width, units) for blade in chart.shop.blades}
    top = max(*(in_units(float(kind.usable.max()), units) for kind in chart.kinds), *owned.values())
    curves = [curve for kind in chart.kinds for curve in _curves(kind, xs, units, chart.most)]
    rungs = [
        PrintedCurve(
            parts=(((xs[0], width), (xs[-1], width)),),
            weight=0.5,
            label=f"{blade_letter(chart.shop, name)}  {name}",
            bold=True,
            fine=True,
        )
        for name, width in owned.items()
    ]
    return PrintedCurves(
        title=tr(chart.material.name),
        subtitle=tr("widest blade by diameter"),
        panels=(
            PrintedPanel(
                title="",
                x=log_axis(f"Ø {label}", xs[0], xs[-1]),
                y=even_axis(tr("width {unit}", unit=label), 0.0, top * 1.15),
                curves=(*curves, *rungs),
            ),
        ),
        notes=_notes(chart),
        legend=(),
        description=tr(
            "The widest blade that parts {material}, against diameter: {lines}. "
            "Level lines are the blades owned.",
            material=tr(chart.material.name),
            lines="; ".join(curve.label for curve in curves),
        ),
    )


def _curves(
    kind: WidestBlade, xs: list[float], units: LengthUnits, most: float
) -> list[PrintedCurve]:
    tool = kind.template.tool_material
    dashes = _DASHES[tool]
    found = []
    for values, label, dash in (
        (kind.good, _good(tool), dashes[0]),
        (kind.usable, _tight(tool), dashes[1]),
    ):
        # Where even the widest tried would do, the search ended, not the lathe: nothing is drawn.
        ended = values >= most * (1.0 - 1e-9)
        ys = [in_units(float(v), units) for v in np.where(ended, 0.0, values)]
        parts = _stretches(points(xs, ys))
        if parts:
            found.append(PrintedCurve(parts=parts, dash=dash, label=label))
    return found


def _good(tool: ToolMaterial) -> str:
    return tr("carbide good") if tool is ToolMaterial.CARBIDE else tr("HSS good")


def _tight(tool: ToolMaterial) -> str:
    return tr("carbide tight") if tool is ToolMaterial.CARBIDE else tr("HSS tight")


def _stretches(curve: tuple[Point, ...]) -> tuple[tuple[Point, ...], ...]:
    """Return the parts of a curve with a width at all, as steps."""
    parts: list[list[Point]] = [[]]
    for x, y in curve:
        if y > 0.0:
            parts[-1].append((x, y))
        elif parts[-1]:
            parts.append([])
    return tuple(tuple(part) for part in parts if len(part) > 1)


def _notes(chart: WidestBlades) -> tuple[str, ...]:
    units = chart.shop.request.units
    first, *others = (
        f"{blade_letter(chart.shop, kind.template.name)} {kind.template.name}"
        for kind in chart.kinds
    )
    # There are two kinds of tool, carbide and HSS.
    templates = tr("{one} or {other}", one=first, other=others[0]) if others else first
    return (
        tr(
            "For blades like {templates}, but for their width: the body in proportion, as far "
            "out of the holder. Tried every {step} {length} up to "
            "{most}. Good: a window with room in it. Tight: a window "
            "at all; better a narrower blade. A line that ends: beyond it every width is tight, "
            "none has a window, or even the widest tried has one. A hump: there the spindle "
            "stalls before the work can slip, so grip does not count.",
            templates=templates,
            step=write_length(chart.step, units),
            length=length_label(units),
            most=write_length(chart.most, units),
        ),
    )
