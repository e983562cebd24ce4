"""What a card takes for granted about grip, work and dig-in, a short line each."""

from collections.abc import Sequence
from typing import Final

import numpy as np

from chartgen.limits.allowances import Allowances
from chartgen.limits.holding import make_holding, nearest_chuck
from chartgen.limits.window import Windows
from chartgen.model.blade import Blade
from chartgen.model.lathe import BarSurface, ChuckKind, JawFace
from chartgen.model.material import Material
from chartgen.model.measured import Assumption
from chartgen.model.shop import LengthUnits, Shop
from chartgen.quantities import Millimetres
from chartgen.reference.chucks import load_holding
from chartgen.wording.blade_letters import blade_letter
from chartgen.wording.language import decimal, tr
from chartgen.wording.measured import comma_measured, measured_words
from chartgen.wording.numbers import length_label, write_length, write_slack, write_span

_INCH = 25.4
_HALF = 0.5
BARS: Final = {
    BarSurface.GROUND: "ground bar",
    BarSurface.BRIGHT: "bright bar",
    BarSurface.BLACK: "black bar",
}
"""What the jaws close on, in English."""


def grip_line(shop: Shop, materials: Sequence[Material], allowances: Allowances) -> str:
    """Return what the jaws are taken to hold with, and on which word."""
    chuck = shop.lathe.chuck
    if chuck.kind is ChuckKind.COLLET:
        return tr("Grip: collet; no limit is worked out for it.")
    holding = make_holding(chuck, shop.work.surface, materials, allowances)
    frictions = sorted({round(f, 2) for f in holding.friction.reshape(-1).tolist()})
    return tr(
        "Grip: {grip} kN {whose}, friction {friction} {held}.",
        grip=decimal(f"{holding.static_grip / 1000.0:.3g}"),
        whose=_owner(shop, allowances),
        friction=write_span([decimal(f"{f:.2f}") for f in frictions]),
        held=_held_in(shop),
    )


def _held_in(shop: Shop) -> str:
    """Return what closes on what, as in "bright bar" or "black bar in serrated jaws"."""
    jaws = shop.lathe.chuck.jaws
    bar = tr(BARS[shop.work.surface])
    if jaws is JawFace.SMOOTH:
        return bar
    if jaws is JawFace.DIAMOND:
        return tr("{bar} in diamond jaws", bar=bar)
    return tr("{bar} in serrated jaws", bar=bar)


def _owner(shop: Shop, allowances: Allowances) -> str:
    chuck, share = shop.lathe.chuck, allowances.grip_share
    if chuck.key_torque is not None:
        day = comma_measured(shop, Assumption.KEY_TORQUE)
        return tr("from {torque} N·m on the key", torque=decimal(f"{chuck.key_torque:.4g}")) + day
    size = f"{write_length(chuck.size, shop.request.units)} {length_label(shop.request.units)}"
    part = tr("half") if share == _HALF else decimal(f"{share:g}")
    row, in_table = nearest_chuck(chuck.size)
    per_torque = load_holding().grip.grip_per_key_torque.value
    if allowances.key_pull * per_torque > share * row.static_grip.value:
        return tr(
            "assumed (a pull of {torque} N·m on the key)",
            torque=decimal(f"{allowances.key_pull:g}"),
        )
    if in_table:
        return tr("assumed ({part} of the table for {size})", part=part, size=size)
    return tr(
        "assumed ({part} of the nearest table, {nearest} mm; none for {size})",
        part=part,
        nearest=decimal(f"{row.size:g}"),
        size=size,
    )


def cut_line(shop: Shop, allowances: Allowances) -> str:
    """Return where the bar is cut, and how far the blade may sink."""
    units, stated = shop.request.units, shop.work.jaw_distance
    from_jaws = allowances.jaw_distance if stated is None else stated
    unit = length_label(units)
    stiffness = shop.lathe.tool_stiffness
    day = measured_words(shop, Assumption.TOOL_STIFFNESS) or tr("as measured")
    post = (
        ""
        if stiffness is None
        else tr(
            "; tool post {stiffness} N/mm {measured}", stiffness=f"{stiffness:.0f}", measured=day
        )
    )
    behind = shop.work.bar_behind
    bar = (
        tr(
            "{length} {unit} of bar behind the spindle",
            length=write_length(behind, units),
            unit=unit,
        )
        if behind
        else tr("no bar behind the spindle")
    )
    return tr(
        "Cut {distance} {unit} from the jaws; blade may sink {sink} {unit}{post}; {bar}.",
        distance=write_length(from_jaws, units),
        sink=_small(allowances.tip_drop, units),
        unit=unit,
        post=post,
        bar=bar,
    )


def _small(length: Millimetres[float], units: LengthUnits) -> str:
    return decimal(f"{length:.2f}" if units is LengthUnits.METRIC else f"{length / _INCH:.4f}")


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
            spans.append((blade_letter(shop, blade.name), write_span(ends)))
    if not spans:
        return ()
    (letter, span), *rest = spans
    line = tr(
        "Dig-in: {letter} swallows {span} {unit} of sudden extra bite{others}; your backlash is "
        "{backlash} {unit}.",
        letter=letter,
        span=span,
        unit=unit,
        others="".join(f", {other} {its}" for other, its in rest),
        backlash=write_length(backlash, units),
    )
    return (line,)


def not_computed_line(shop: Shop) -> str:
    """Return what no limit of this program knows of."""
    missing = [tr("chatter")]
    if any("belt" in element or element == "poly-v" for element in shop.lathe.drive.elements):
        missing.append(tr("slip of the belt"))
    if shop.lathe.tool_stiffness is None:
        missing.append(tr("the stiffness of this lathe"))
    return tr("Not computed: {missing}.", missing=", ".join(missing))
