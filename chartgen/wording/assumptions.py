"""What a card takes for granted, as short sentences a person can check at the machine."""

import math
from collections.abc import Sequence
from typing import Final

from chartgen.limits.allowances import Allowances, allowances_for, edge_radius
from chartgen.limits.grid import feeds_for_width, force_allowance
from chartgen.limits.speed_caps import largest_chuck_speed
from chartgen.limits.spindle import make_spindle
from chartgen.limits.window import Windows
from chartgen.model.blade import Blade
from chartgen.model.material import Material
from chartgen.model.measured import Assumption
from chartgen.model.motor import MotorKind, PowerIs
from chartgen.model.shop import Feeding, LengthUnits, Shop
from chartgen.wording.blade_letters import blade_letter
from chartgen.wording.holding_lines import cut_line, dig_in_lines, grip_line, not_computed_line
from chartgen.wording.language import decimal, tr
from chartgen.wording.measured import comma_measured, measured_words, stall_words
from chartgen.wording.numbers import (
    feed_label,
    length_label,
    write_cutting_speed,
    write_feed,
    write_length,
    write_span,
    write_speed_ceiling,
)

_HUNDRED = 100.0
MOTORS: Final = {
    MotorKind.THREE_PHASE: "three-phase motor",
    MotorKind.SINGLE_PHASE: "single-phase motor",
    MotorKind.INVERTER: "inverter motor",
    MotorKind.BRUSHED_DC: "brushed-dc motor",
    MotorKind.BRUSHLESS: "brushless motor",
}
"""What a motor is called, in English; a measured spindle does not ask for it."""


def assumption_lines(
    shop: Shop,
    *,
    materials: Sequence[Material],
    blades: Sequence[Blade],
    windows: Windows | None = None,
) -> tuple[str, ...]:
    """Return the assumptions behind a card, the machine first.

    With the windows of a single material the dig-in of its blades is told too.
    """
    allowances = allowances_for(shop)
    return (
        f"{_lathe(shop, allowances)} {_chuck(shop, allowances)}",
        *(_blade(shop, blade, allowances) for blade in blades),
        *_materials(shop, materials, blades, allowances),
        grip_line(shop, materials, allowances),
        cut_line(shop, allowances),
        *dig_in_lines(shop, materials=materials, blades=blades, windows=windows),
        _torque(allowances),
        _handle(shop, allowances),
        not_computed_line(shop),
    )


def force_band_line(
    materials: Sequence[Material], allowances: Allowances, units: LengthUnits
) -> str:
    """Return the force band of a card as one short sentence for its foot."""
    with_force = [m.force for m in materials if m.force is not None]
    if not with_force:
        return tr("No published force data: torque, blade, work and grip are not checked.")
    low = max(f.band_low.value for f in with_force)
    high = max(f.band_high.value for f in with_force)
    thin_low, thin_high = (max(side, allowances.thin_chip_band) for side in (low, high))
    if (thin_low, thin_high) == (low, high):
        return tr("Force estimate {band}; limits use the high side.", band=_band(low, high))
    thin = allowances.thin_chip
    step = decimal(f"{thin:g}") if units is LengthUnits.METRIC else write_feed(thin, units)
    return tr(
        "Force estimate {thin} under {step} {unit}, {band} above; limits use the high side.",
        thin=_band(thin_low, thin_high),
        step=step,
        unit=feed_label(units),
        band=_band(low, high),
    )


def _band(low: float, high: float) -> str:
    if low == high:
        return f"±{100 * low:.0f} %"
    return f"-{100 * low:.0f} +{100 * high:.0f} %"


def _lathe(shop: Shop, allowances: Allowances) -> str:
    lathe, motor = shop.lathe, shop.lathe.motor
    spindle = make_spindle(lathe, allowances)
    positions = "; ".join(
        f"{p.mark or p.name} {write_span([decimal(f'{s:g}') for s in (p.slowest, p.fastest)])}"
        for p in lathe.drive.positions
    )
    if motor.kind is MotorKind.MEASURED:
        power = tr("torque as measured at the spindle")
    else:
        day = comma_measured(shop, Assumption.MOTOR_EFFICIENCY)
        watts = decimal(f"{motor.plate_power:.4g}")
        plate = tr(" ({watts} W input{measured})", watts=watts, measured=day)
        plate = "" if motor.power_is is PowerIs.SHAFT else plate
        efficiency_day = comma_measured(shop, Assumption.DRIVE_EFFICIENCY)
        power = tr(
            "{motor}, {watts} W at its shaft{plate}, {percent} % of it at the spindle{measured}",
            motor=tr(MOTORS[motor.kind]),
            watts=f"{spindle.shaft_power:.0f}",
            plate=plate,
            percent=f"{100 * spindle.efficiency:.0f}",
            measured=efficiency_day + stall_words(shop),
        )
    fastest = lathe.drive.fastest_spindle
    over = any(p.fastest > fastest for p in lathe.drive.positions)
    told = tr(
        "{lathe}: {power}. Positions in rev/min: {positions}.",
        lathe=lathe.name,
        power=power,
        positions=positions,
    )
    if not over:
        return told
    limit = decimal(f"{fastest:g}")
    return f"{told} {tr('Never over {speed}, though the drive could.', speed=limit)}"


def _chuck(shop: Shop, allowances: Allowances) -> str:
    chuck = shop.lathe.chuck
    units = shop.request.units
    speed = write_speed_ceiling(largest_chuck_speed(chuck, allowances))
    size = f"{write_length(chuck.size, units)} {length_label(units)}"
    if chuck.marked_speed is not None:
        return tr("Chuck {size}, marked {speed} rev/min.", size=size, speed=speed)
    # A guess is printed as one: in hundreds, rounded down.
    guess = math.floor(largest_chuck_speed(chuck, allowances) / _HUNDRED) * _HUNDRED
    fastest = shop.lathe.drive.fastest_spindle
    told = tr(
        "Chuck {size} carries no mark: held to {speed} rev/min (rim {rim} m/s), because an old or "
        "cast-iron body may burst.",
        size=size,
        speed=f"{guess:g}",
        rim=decimal(f"{allowances.chuck_rim_speed:g}"),
    )
    if fastest >= guess:
        return told
    own = tr("The lathe's own limit is {speed}.", speed=decimal(f"{fastest:g}"))
    return f"{told} {own}"


def _blade(shop: Shop, blade: Blade, allowances: Allowances) -> str:
    units = shop.request.units
    radius = edge_radius(blade, allowances)
    edge = tr(blade.edge.value)
    return tr(
        "{letter} {blade}: {edge}, edge radius {radius} µm {known}; body {thickness} x {height}, "
        "out {projection} {unit}.",
        letter=blade_letter(shop, blade.name),
        blade=blade.name,
        edge=tr("worn {edge}", edge=edge) if blade.worn else edge,
        radius=decimal(f"{radius:g}"),
        known=tr("measured") if blade.edge_radius is not None else tr("assumed"),
        thickness=write_length(blade.thickness, units),
        height=write_length(blade.height, units),
        projection=write_length(blade.projection, units),
        unit=length_label(units),
    )


def _materials(
    shop: Shop, materials: Sequence[Material], blades: Sequence[Blade], allowances: Allowances
) -> list[str]:
    units, day = shop.request.units, measured_words(shop, Assumption.FORCE_RESERVE)
    if len(materials) > 1:
        told = tr("Force constants, speeds and feeds differ by material: see the command explain.")
        if day:
            reserve = decimal(f"{allowances.confined_chip:.2f}")
            told += " " + tr("Force reserve {reserve} {measured}.", reserve=reserve, measured=day)
        return [told]
    (material,) = materials
    lines = []
    if material.force is not None:
        kc, mc = material.force.specific_force, material.force.thickness_exponent
        reserves = sorted({force_allowance(material, blade, allowances) for blade in blades})
        lines.append(
            tr(
                "Force: {kc} N/mm² at a 1 mm chip, exponent {mc} [{source}], times {reserve} for a "
                "squeezed chip or part-worn edge{measured}.",
                kc=decimal(f"{kc.value:g}"),
                mc=decimal(f"{mc.value:g}"),
                source=kc.source,
                reserve=write_span([decimal(f"{r:.3g}") for r in reserves]),
                measured=comma_measured(shop, Assumption.FORCE_RESERVE),
            )
        )
    else:
        lines.append(force_band_line(materials, allowances, units))
    starts = [
        tr(
            "{speed} and {feed} {unit} for {blade}",
            speed=write_cutting_speed(material.speeds[b.tool_material].start.value, units),
            feed=write_feed(feeds_for_width(material.feeds, b.insert_width)[0], units),
            unit=feed_label(units),
            blade=b.name,
        )
        for b in blades
    ]
    lines.append(tr("Cuts start from {starts}.", starts=", ".join(starts)))
    if material.wants_polished_edge and any(
        b.edge.value in {"thin-coated", "thick-coated"} for b in blades
    ):
        lines.append(
            tr("This material wants a polished, sharp edge; a coated one builds up and tears.")
        )
    return lines


def _torque(allowances: Allowances) -> str:
    return tr(
        "Solid bar: cuts up to {minutes} min may use the motor's one-cut torque, longer ones and "
        "tubes only its continuous torque.",
        minutes=decimal(f"{allowances.one_cut_minutes:g}"),
    )


def _handle(shop: Shop, allowances: Allowances) -> str:
    slide, units = shop.lathe.cross_slide, shop.request.units
    travel = f"{write_length(slide.travel_per_turn, units)} {length_label(units)}"
    if shop.request.feeding is Feeding.POWER:
        return tr(
            "Power cross-feed, listed feeds only; least feed {share} of the edge radius. One "
            "handle turn moves the tool {travel}.",
            share=decimal(f"{allowances.edge_floor_by_power:g}"),
            travel=travel,
        )
    return tr(
        "Fed by hand: least feed {share} of the edge radius, at most {turns} handle turns a "
        "minute. One turn moves the tool {travel}; the dial reads {reads}.",
        share=decimal(f"{allowances.edge_floor_by_hand:g}"),
        turns=decimal(f"{allowances.handle_turns_most:g}"),
        travel=travel,
        reads=tr(slide.dial_reads.value),
    )
