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
from chartgen.wording.numbers import length_label, write_length

_NAMES = {ToolMaterial.CARBIDE: "carbide", ToolMaterial.HSS: "HSS"}
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
        title=chart.material.name,
        subtitle="widest blade by diameter",
        panels=(
            PrintedPanel(
                title="",
                x=log_axis(f"Ø {label}", xs[0], xs[-1]),
                y=even_axis(f"width {label}", 0.0, top * 1.15),
                curves=(*curves, *rungs),
            ),
        ),
        notes=_notes(chart),
        legend=(),
        description=(
            f"The widest blade that parts {chart.material.name}, against diameter: "
            f"{'; '.join(curve.label for curve in curves)}. Level lines are the blades owned."
        ),
    )


def _curves(
    kind: WidestBlade, xs: list[float], units: LengthUnits, most: float
) -> list[PrintedCurve]:
    name = _NAMES[kind.template.tool_material]
    dashes = _DASHES[kind.template.tool_material]
    found = []
    for values, word, dash in (
        (kind.good, "good", dashes[0]),
        (kind.usable, "tight", dashes[1]),
    ):
        # Where even the widest tried would do, the search ended, not the lathe: nothing is drawn.
        ended = values >= most * (1.0 - 1e-9)
        ys = [in_units(float(v), units) for v in np.where(ended, 0.0, values)]
        parts = _stretches(points(xs, ys))
        if parts:
            found.append(PrintedCurve(parts=parts, dash=dash, label=f"{name} {word}"))
    return found


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
    label = length_label(units)
    templates = " or ".join(
        f"{blade_letter(chart.shop, kind.template.name)} {kind.template.name}"
        for kind in chart.kinds
    )
    return (
        (
            f"For blades like {templates}, but for their width: the body in proportion, as far "
            f"out of the holder. Tried every {write_length(chart.step, units)} {label} up to "
            f"{write_length(chart.most, units)}. Good: a window with room in it. Tight: a window "
            "at all; better a narrower blade. A line that ends: beyond it every width is tight, "
            "none has a window, or even the widest tried has one. A hump: there the spindle "
            "stalls before the work can slip, so grip does not count."
        ),
    )
