"""What a card takes for granted, as short sentences a person can check at the machine."""

import math
from collections.abc import Sequence

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
from chartgen.wording.measured import comma_measured, measured_words, stall_words
from chartgen.wording.numbers import (
    feed_label,
    length_label,
    write_cutting_speed,
    write_feed,
    write_length,
    write_speed_ceiling,
)

_HUNDRED = 100.0
NO_FORCE = "No published force data: torque, blade, work and grip are not checked."


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
        return NO_FORCE
    low = max(f.band_low.value for f in with_force)
    high = max(f.band_high.value for f in with_force)
    thin_low, thin_high = (max(side, allowances.thin_chip_band) for side in (low, high))
    if (thin_low, thin_high) == (low, high):
        return f"Force estimate {_band(low, high)}; limits use the high side."
    thin = allowances.thin_chip
    step = f"{thin:g}" if units is LengthUnits.METRIC else write_feed(thin, units)
    return (
        f"Force estimate {_band(thin_low, thin_high)} under {step} {feed_label(units)}, "
        f"{_band(low, high)} above; limits use the high side."
    )


def _band(low: float, high: float) -> str:
    if low == high:
        return f"±{100 * low:.0f} %"
    return f"-{100 * low:.0f} +{100 * high:.0f} %"


def _lathe(shop: Shop, allowances: Allowances) -> str:
    lathe, motor = shop.lathe, shop.lathe.motor
    spindle = make_spindle(lathe, allowances)
    positions = "; ".join(
        f"{p.mark or p.name} {p.slowest:g}"
        if p.is_single_speed
        else f"{p.mark or p.name} {p.slowest:g} to {p.fastest:g}"
        for p in lathe.drive.positions
    )
    if motor.kind is MotorKind.MEASURED:
        power = "torque as measured at the spindle"
    else:
        day = comma_measured(shop, Assumption.MOTOR_EFFICIENCY)
        plate = f" ({motor.plate_power:.4g} W input{day})"
        plate = "" if motor.power_is is PowerIs.SHAFT else plate
        efficiency_day = comma_measured(shop, Assumption.DRIVE_EFFICIENCY)
        power = (
            f"{motor.kind.value} motor, {spindle.shaft_power:.0f} W at its shaft{plate}, "
            f"{100 * spindle.efficiency:.0f} % of it at the spindle"
            f"{efficiency_day}{stall_words(shop)}"
        )
    fastest = lathe.drive.fastest_spindle
    over = any(p.fastest > fastest for p in lathe.drive.positions)
    limit = f" Never over {fastest:g}, though the drive could." if over else ""
    return f"{lathe.name}: {power}. Positions in rev/min: {positions}.{limit}"


def _chuck(shop: Shop, allowances: Allowances) -> str:
    chuck = shop.lathe.chuck
    units = shop.request.units
    speed = write_speed_ceiling(largest_chuck_speed(chuck, allowances))
    size = f"{write_length(chuck.size, units)} {length_label(units)}"
    if chuck.marked_speed is not None:
        return f"Chuck {size}, marked {speed} rev/min."
    # A guess is printed as one: in hundreds, rounded down.
    guess = math.floor(largest_chuck_speed(chuck, allowances) / _HUNDRED) * _HUNDRED
    fastest = shop.lathe.drive.fastest_spindle
    lathe = f" The lathe's own limit is {fastest:g}." if fastest < guess else ""
    return (
        f"Chuck {size} carries no mark: held to {guess:g} rev/min "
        f"(rim {allowances.chuck_rim_speed:g} m/s), because an old or cast-iron body may burst."
        f"{lathe}"
    )


def _blade(shop: Shop, blade: Blade, allowances: Allowances) -> str:
    units = shop.request.units
    radius = edge_radius(blade, allowances)
    known = "measured" if blade.edge_radius is not None else "assumed"
    sizes = (
        f"body {write_length(blade.thickness, units)} x {write_length(blade.height, units)}, "
        f"out {write_length(blade.projection, units)} {length_label(units)}"
    )
    worn = "worn " if blade.worn else ""
    return (
        f"{blade_letter(shop, blade.name)} {blade.name}: {worn}{blade.edge.value}, "
        f"edge radius {radius:g} µm {known}; {sizes}."
    )


def _materials(
    shop: Shop, materials: Sequence[Material], blades: Sequence[Blade], allowances: Allowances
) -> list[str]:
    units, day = shop.request.units, measured_words(shop, Assumption.FORCE_RESERVE)
    if len(materials) > 1:
        reserve = f" Force reserve {allowances.confined_chip:.2f} {day}." if day else ""
        return [
            "Force constants, speeds and feeds differ by material: see the command explain."
            + reserve
        ]
    (material,) = materials
    lines = []
    if material.force is not None:
        kc, mc = material.force.specific_force, material.force.thickness_exponent
        reserves = sorted({force_allowance(material, blade, allowances) for blade in blades})
        reserve = " to ".join(f"{r:.3g}" for r in (reserves[0], reserves[-1])[: len(reserves)])
        lines.append(
            f"Force: {kc.value:g} N/mm² at a 1 mm chip, exponent {mc.value:g} [{kc.source}], "
            f"times {reserve} for a squeezed chip or part-worn edge"
            f"{comma_measured(shop, Assumption.FORCE_RESERVE)}."
        )
    else:
        lines.append(force_band_line(materials, allowances, units))
    starts = [
        f"{write_cutting_speed(material.speeds[b.tool_material].start.value, units)} and "
        f"{write_feed(feeds_for_width(material.feeds, b.insert_width)[0], units)} "
        f"{feed_label(units)} for {b.name}"
        for b in blades
    ]
    lines.append(f"Cuts start from {', '.join(starts)}.")
    if material.wants_polished_edge and any(
        b.edge.value in {"thin-coated", "thick-coated"} for b in blades
    ):
        lines.append(
            "This material wants a polished, sharp edge; a coated one builds up and tears."
        )
    return lines


def _torque(allowances: Allowances) -> str:
    return (
        f"Solid bar: cuts up to {allowances.one_cut_minutes:g} min may use the motor's "
        "one-cut torque, longer ones and tubes only its continuous torque."
    )


def _handle(shop: Shop, allowances: Allowances) -> str:
    slide, units = shop.lathe.cross_slide, shop.request.units
    travel = f"{write_length(slide.travel_per_turn, units)} {length_label(units)}"
    if shop.request.feeding is Feeding.POWER:
        return (
            f"Power cross-feed, listed feeds only; least feed {allowances.edge_floor_by_power:g} "
            f"of the edge radius. One handle turn moves the tool {travel}."
        )
    return (
        f"Fed by hand: least feed {allowances.edge_floor_by_hand:g} of the edge radius, at most "
        f"{allowances.handle_turns_most:g} handle turns a minute. One turn moves the tool "
        f"{travel}; the dial reads {slide.dial_reads.value}."
    )
