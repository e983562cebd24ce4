"""What a card takes for granted about grip, work and dig-in, a short line each."""

from collections.abc import Sequence

import numpy as np

from chartgen.limits.allowances import Allowances
from chartgen.limits.friction import held_in
from chartgen.limits.holding import make_holding, nearest_chuck
from chartgen.limits.window import Windows
from chartgen.model.blade import Blade
from chartgen.model.lathe import ChuckKind
from chartgen.model.material import Material
from chartgen.model.measured import Assumption
from chartgen.model.shop import LengthUnits, Shop
from chartgen.quantities import Millimetres
from chartgen.reference.chucks import load_holding
from chartgen.wording.blade_letters import blade_letter
from chartgen.wording.measured import comma_measured, measured_words
from chartgen.wording.numbers import length_label, write_length, write_slack

_INCH = 25.4
_HALF = 0.5


def grip_line(shop: Shop, materials: Sequence[Material], allowances: Allowances) -> str:
    """Return what the jaws are taken to hold with, and on which word."""
    chuck = shop.lathe.chuck
    if chuck.kind is ChuckKind.COLLET:
        return "Grip: collet; no limit is worked out for it."
    holding = make_holding(chuck, shop.work.surface, materials, allowances)
    frictions = sorted({round(f, 2) for f in holding.friction.reshape(-1).tolist()})
    friction = " to ".join(f"{f:.2f}" for f in (frictions[0], frictions[-1])[: len(frictions)])
    return (
        f"Grip: {holding.static_grip / 1000.0:.3g} kN {_owner(shop, allowances)}, "
        f"friction {friction} {held_in(shop)}."
    )


def _owner(shop: Shop, allowances: Allowances) -> str:
    chuck, share = shop.lathe.chuck, allowances.grip_share
    if chuck.key_torque is not None:
        day = comma_measured(shop, Assumption.KEY_TORQUE)
        return f"from {chuck.key_torque:.4g} N·m on the key{day}"
    size = f"{write_length(chuck.size, shop.request.units)} {length_label(shop.request.units)}"
    part = "half" if share == _HALF else f"{share:g}"
    row, in_table = nearest_chuck(chuck.size)
    per_torque = load_holding().grip.grip_per_key_torque.value
    if allowances.key_pull * per_torque > share * row.static_grip.value:
        return f"assumed (a pull of {allowances.key_pull:g} N·m on the key)"
    if in_table:
        return f"assumed ({part} of the table for {size})"
    return f"assumed ({part} of the nearest table, {row.size:g} mm; none for {size})"


def cut_line(shop: Shop, allowances: Allowances) -> str:
    """Return where the bar is cut, and how far the blade may sink."""
    units, stated = shop.request.units, shop.work.jaw_distance
    from_jaws = allowances.jaw_distance if stated is None else stated
    unit = length_label(units)
    stiffness = shop.lathe.tool_stiffness
    day = measured_words(shop, Assumption.TOOL_STIFFNESS) or "as measured"
    post = "" if stiffness is None else f"; tool post {stiffness:.0f} N/mm {day}"
    behind = shop.work.bar_behind
    bar = f"{write_length(behind, units)} {unit} of bar" if behind else "no bar"
    return (
        f"Cut {write_length(from_jaws, units)} {unit} from the jaws; blade may sink "
        f"{_small(allowances.tip_drop, units)} {unit}{post}; {bar} behind the spindle."
    )


def _small(length: Millimetres[float], units: LengthUnits) -> str:
    return f"{length:.2f}" if units is LengthUnits.METRIC else f"{length / _INCH:.4f}"


def dig_in_lines(
    shop: Shop,
    *,
    materials: Sequence[Material],
    blades: Sequence[Blade],
    windows: Windows | None,
) -> tuple[str, ...]:
    """Return what a stated backlash means to each blade; nothing where it says nothing."""
    backlash, units = shop.lathe.cross_slide.backlash, shop.request.units
    if windows is None or backlash is None or len(materials) != 1:
        return ()
    (material,) = materials
    row = windows.grid.materials.index(material)
    unit = length_label(units)
    spans = []
    for blade in blades:
        slack = windows.dig_in.slack[row, windows.grid.blades.index(blade)]
        known = slack[np.isfinite(slack)]
        if known.size:
            ends = [write_slack(float(end), units) for end in (known.min(), known.max())]
            span = ends[0] if ends[0] == ends[1] else " to ".join(ends)
            spans.append((blade_letter(shop, blade.name), span))
    if not spans:
        return ()
    (letter, span), *rest = spans
    told = f"{letter} swallows {span} {unit} of sudden extra bite" + "".join(
        f", {other} {its}" for other, its in rest
    )
    return (f"Dig-in: {told}; your backlash is {write_length(backlash, units)} {unit}.",)


def not_computed_line(shop: Shop) -> str:
    """Return what no limit of this program knows of."""
    missing = ["chatter"]
    if any("belt" in element or element == "poly-v" for element in shop.lathe.drive.elements):
        missing.append("slip of the belt")
    if shop.lathe.tool_stiffness is None:
        missing.append("the stiffness of this lathe")
    return f"Not computed: {', '.join(missing)}."
