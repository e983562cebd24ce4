"""The steps about force, torque and power, both force models side by side."""

from chartgen.limits.cut import Cut
from chartgen.limits.grid import force_allowance
from chartgen.limits.reasons import Reason
from chartgen.model.material import ForceData
from chartgen.model.motor import Motor, MotorKind, PowerIs, SelfCooling
from chartgen.model.shop import Shop
from chartgen.wording.numbers import write_feed_ceiling_whole
from chartgen.wording.steps.step import Step, allowance_source

_COOLING_RULE = {
    SelfCooling.CAUTIOUS: "the lower of the rules of [DRIVE-A] and [DRIVE-C]",
    SelfCooling.FULL_FROM_HALF_SPEED: "the rule of [DRIVE-A]",
    SelfCooling.NONE_UNDER_HALF_SPEED: "the rule of [DRIVE-B]",
    SelfCooling.FULL_AT_BASE_SPEED: "the rule of [DRIVE-C]",
}
_NO_DATA = (
    "no published force constants: force, power, torque, blade, work and grip are not checked"
)


def force_steps(cut: Cut) -> list[Step]:
    """Return the force by both models, with the reserve and the band."""
    data, force = cut.material.force, cut.force
    if data is None or force is None:
        return [Step("Cutting force", "none", "no data for this material", _NO_DATA, "none")]
    kc, mc = data.specific_force, data.thickness_exponent
    b, h = cut.blade.insert_width, cut.feed
    steps = [
        Step(
            "Force of a sharp edge, first model (power law)",
            "F = kc1.1 b h^(1-mc)",
            f"kc1.1 = {kc.value:g} N/mm², b = {b:.4g} mm, h = {h:.4f} mm, mc = {mc.value:g}",
            f"{force.sharp:.0f} N (kc = {force.sharp / (b * h):.0f} N/mm²)",
            kc.citation,
        ),
        _second_model_step(cut, force.sharp, force.by_unit_energy, force.size_factor),
        Step(
            "Force with reserve",
            "F x allowances",
            _reserve_values(cut),
            f"{force.nominal:.0f} N expected",
            allowance_source("confined_chip"),
        ),
        Step(
            "Force band",
            "low and high side",
            _band_values(cut, data),
            f"{force.low:.0f} to {force.high:.0f} N",
            f"{data.band_high.citation}; {allowance_source('thin_chip_band')}",
        ),
    ]
    what_if = cut.case.allowances.worn_edge_force
    if not cut.blade.worn:
        steps.append(
            Step(
                "What if the edge is worn",
                "F x wear",
                f"x {what_if:g}",
                f"{force.high * what_if:.0f} N high side",
                allowance_source("worn_edge_force"),
            )
        )
    return steps


def torque_steps(shop: Shop, cut: Cut) -> list[Step]:
    """Return what the cut needs at the spindle against what the drive gives."""
    steps = [_motor_step(shop, cut), _available_step(cut)]
    if cut.force is None:
        return steps
    duration = "one cut" if cut.is_one_cut else "continuous"
    reason = Reason.TORQUE_ONE_CUT if cut.is_one_cut else Reason.TORQUE_CONTINUOUS
    ceilings = {limit.reason: limit.feed for limit in cut.ceilings}
    limit_minutes = cut.case.allowances.one_cut_minutes
    kind = "bored, so a long cut" if cut.bore else f"solid, {cut.time:.2f} min"
    return [
        *steps,
        Step(
            "Torque needed at the outside, high side",
            "T = F D / 2000",
            f"F = {cut.force.high:.0f} N, D = {cut.diameter:g} mm",
            f"{cut.torque_needed:.1f} N·m of {cut.torque_available:.1f} N·m ({duration})",
            "definition",
        ),
        Step(
            "Power needed at the outside, high side",
            "P = F v / 60",
            f"v = {cut.cutting_speed:.1f} m/min",
            f"{cut.power_needed:.0f} W of {cut.power_continuous:.0f} W continuous, "
            f"{cut.power_one_cut:.0f} W one cut",
            "definition",
        ),
        Step(
            "Which torque counts",
            f"one cut if solid and at most {limit_minutes:g} min",
            kind,
            duration,
            allowance_source("one_cut_minutes"),
        ),
        Step(
            "Ceiling: torque",
            "h = (2000 T / (D A))^(1/(1-mc)), A = kc1.1 b x reserve x high side",
            f"T = {cut.torque_available:.1f} N·m",
            write_feed_ceiling_whole(ceilings[reason], shop.request.units),
            "inverse of the power law",
        ),
        Step(
            "Ceiling: stall",
            "the same with stall torque",
            f"T = {cut.torque_stall:.1f} N·m",
            write_feed_ceiling_whole(ceilings[Reason.STALL], shop.request.units),
            "inverse of the power law",
        ),
    ]


def _second_model_step(cut: Cut, sharp: float, other: float | None, size_factor: float) -> Step:
    title = "The same by the second model (unit energy by hardness)"
    if other is None or cut.material.unit_energy is None:
        return Step(
            title, "F = 1000 U C b h", "no unit energy in the sources", "not available", "none"
        )
    energy = cut.material.unit_energy
    return Step(
        title,
        "F = 1000 U C b h",
        f"U = {energy.value:g} J/mm³, C = {size_factor:.2f} at this chip",
        f"{other:.0f} N, {100.0 * (other / sharp - 1.0):+.0f} % against the first",
        f"{energy.citation}; C: [GROO5] fig. 20.14 (found, read to 3 %)",
    )


def _reserve_values(cut: Cut) -> str:
    factor = force_allowance(cut.material, cut.blade, cut.case.allowances)
    return f"all allowances on force together x {factor:.3g}"


def _band_values(cut: Cut, data: ForceData) -> str:
    allowances = cut.case.allowances
    low, high = data.band_low.value, data.band_high.value
    where = "from"
    if cut.feed < allowances.thin_chip:
        low, high = (max(side, allowances.thin_chip_band) for side in (low, high))
        where = "under"
    return f"-{100 * low:.0f} % +{100 * high:.0f} %, chip {where} {allowances.thin_chip:g} mm"


def _motor_step(shop: Shop, cut: Cut) -> Step:
    motor, spindle = shop.lathe.motor, cut.case.spindle
    if motor.kind is MotorKind.MEASURED:
        return Step(
            "Motor", "as measured", f"position {cut.position.name}", "readings", "shop file"
        )
    plate = f"{motor.plate_power:.4g} W {motor.power_is.value} power on the plate"
    if motor.power_is is PowerIs.INPUT:
        plate += f" x efficiency {spindle.shaft_power / motor.plate_power:.2f}"
    return Step(
        f"Motor ({motor.kind.value})",
        "T_N = 60 P / (2 π n)",
        f"{plate}, {motor.base_speed:g} rev/min",
        f"{spindle.shaft_power:.0f} W, {spindle.rated_torque:.2f} N·m at the motor shaft",
        "shop file",
    )


def _available_step(cut: Cut) -> Step:
    spindle = cut.case.spindle
    ratio = cut.position.motor_ratio
    return Step(
        "At the spindle",
        "T = T_N x ratio x efficiency x share",
        f"ratio {ratio:.3g}, efficiency {spindle.efficiency:.3g}, {cut.spindle_speed:g} rev/min",
        f"{cut.torque_continuous:.1f} N·m continuous, {cut.torque_one_cut:.1f} one cut, "
        f"{cut.torque_stall:.1f} at the stall",
        f"drive curves of this program; allowances of the drive{_cooling(cut.case.lathe.motor)}",
    )


def _cooling(motor: Motor) -> str:
    """Return which rule holds for a motor on an inverter that is cooled by itself."""
    if motor.kind is not MotorKind.INVERTER or motor.forced_cooling:
        return ""
    return f"; continuous by {_COOLING_RULE[motor.self_cooling]}"
