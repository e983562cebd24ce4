"""The steps about grip: what the jaws hold, what speed takes off it, when the work slips."""

from dataclasses import dataclass

import numpy as np

from chartgen.limits.cut import Cut
from chartgen.limits.cut_force import Force
from chartgen.limits.force_capacities.grip import slip_force
from chartgen.limits.force_capacities.stall import stall
from chartgen.limits.friction import friction_of
from chartgen.limits.holding import nearest_chuck
from chartgen.limits.reasons import Reason
from chartgen.model.lathe import ChuckKind
from chartgen.model.shop import Shop
from chartgen.physics.grip import centrifugal_force, grip_at_speed
from chartgen.physics.holding import largest_side_force
from chartgen.quantities import FloatArray, Newtons
from chartgen.reference.chucks import BodyMaterial, load_holding
from chartgen.wording.steps.ceilings import borne
from chartgen.wording.steps.step import Step, allowance_source


@dataclass(frozen=True, slots=True, kw_only=True)
class _Grip:
    """The grip of one cut: all forces in N, `slips` without any reserve."""

    static: Newtons[float]
    lost: Newtons[float]
    friction: float
    slips: Newtons[float]
    slips_with_reserve: Newtons[float]
    stalls: Newtons[float]

    @property
    def is_waived(self) -> bool:
        """Whether the spindle stalls before the work can slip, reserve on the grip included."""
        return self.stalls <= self.slips_with_reserve


def grip_steps(shop: Shop, cut: Cut) -> list[Step]:
    """Return the steps of the grip; empty where no force is known."""
    if cut.force is None:
        return []
    if shop.lathe.chuck.kind is ChuckKind.COLLET:
        return [
            Step(
                "Grip: collet",
                "none",
                "no table of what a collet holds was found",
                "no limit is worked out; a collet grips hard and loses little by speed",
                "none",
            )
        ]
    grip = _grip(cut)
    return [
        _static_step(shop, cut, grip),
        _lost_step(shop, cut, grip),
        _friction_step(shop, cut),
        _slip_step(cut, grip),
        _ceiling_step(shop, cut, grip),
        _margin_step(cut, cut.force, grip),
        _tilt_step(cut, cut.force, grip),
    ]


def _grip(cut: Cut) -> _Grip:
    case, index = cut.case, cut.case.trials.positions.index(cut.position)

    def here(values: FloatArray) -> float:
        return float(np.broadcast_to(values, case.trials.speed.shape)[0, 0, 0, index])

    return _Grip(
        static=case.holding.static_grip,
        lost=float(
            centrifugal_force(jaw_moment=case.holding.jaw_moment, spindle_speed=cut.spindle_speed)
        ),
        friction=case.holding.friction.item(),
        slips=here(slip_force(case, grip_safety=1.0)),
        slips_with_reserve=here(slip_force(case, grip_safety=case.allowances.grip_safety)),
        stalls=here(stall(case)),
    )


def _static_step(shop: Shop, cut: Cut, grip: _Grip) -> Step:
    chuck = shop.lathe.chuck
    row, in_table = nearest_chuck(chuck.size)
    table = f"{row.static_grip.value:.0f} N by the table for {chuck.size:g} mm"
    if not in_table and chuck.size < row.size:
        table = (
            f"{row.static_grip.value:.0f} N: no table for {chuck.size:g} mm, "
            f"scaled from {row.size:g} mm by the square of the size"
        )
    elif not in_table:
        table = (
            f"{row.static_grip.value:.0f} N: no table for {chuck.size:g} mm, the largest one stands"
        )
    result = f"{grip.static:.0f} N, all jaws together"
    if chuck.key_torque is not None:
        per_torque = load_holding().grip.grip_per_key_torque
        return Step(
            "Grip at standstill",
            "F0 = q T, at most that of the table",
            f"q = {per_torque.value:g} N per N·m, T = {chuck.key_torque:.4g} N·m; at most {table}",
            result,
            f"{per_torque.citation}; shop file; table: {row.static_grip.citation}",
        )
    allowances, data = cut.case.allowances, load_holding().grip
    return Step(
        "Grip at standstill",
        "F0 = share x table, or q T for a light pull on the key, the larger; at most the table",
        f"share {allowances.grip_share:g}, {table}; q = {data.grip_per_key_torque.value:g} N per "
        f"N·m, T = {allowances.key_pull:g} N·m",
        result,
        f"{row.static_grip.citation}; {allowance_source('grip_share')}; "
        f"{allowance_source('key_pull')}; q: {data.grip_per_key_torque.citation}",
    )


def _lost_step(shop: Shop, cut: Cut, grip: _Grip) -> Step:
    row, _ = nearest_chuck(shop.lathe.chuck.size)
    lost_share, fastest = load_holding().grip.lost_share, row.largest_speed[BodyMaterial.STEEL]
    moment = 1000.0 * cut.case.holding.jaw_moment
    return Step(
        "Grip that speed takes away",
        "F_c = s F_table (n / n_table)²",
        f"s = {lost_share.value:g}, F_table = {row.static_grip.value:.0f} N, "
        f"n = {cut.spindle_speed:g} rev/min, n_table = {fastest.value:.0f} rev/min",
        f"{grip.lost:.0f} N of all jaws; their mass times radius is {moment:.1f} kg·mm",
        f"{lost_share.citation}; speed: {fastest.citation}",
    )


def _friction_step(shop: Shop, cut: Cut) -> Step:
    found = friction_of(shop.lathe.chuck, shop.work.surface, cut.material)
    values = f"{found.held}, on steel {found.on_steel.value:g}"
    source = found.on_steel.citation
    if found.factor is not None:
        values += f"; factor {found.factor.value:g} for {found.factor_name}"
        source += f"; factor: {found.factor.citation}"
    return Step(
        "Friction in the jaws",
        "µ = µ on steel x factor of the material",
        values,
        f"{cut.case.holding.friction.item():.4g}",
        source,
    )


def _slip_step(cut: Cut, grip: _Grip) -> Step:
    return Step(
        "Force at which the work slips, without reserves",
        "F = µ (F0 - F_c)",
        f"µ = {grip.friction:.4g}, F0 = {grip.static:.0f} N, F_c = {grip.lost:.0f} N",
        f"{grip.slips:.0f} N at the outside of the bar, at {cut.spindle_speed:g} rev/min",
        "[RN-1391] p. 48 (found)",
    )


def _ceiling_step(shop: Shop, cut: Cut, grip: _Grip) -> Step:
    allowances = cut.case.allowances
    source = (
        f"[RN-1391] p. 48 (found); {allowance_source('grip_safety')}; "
        f"{allowance_source('cut_safety')}"
    )
    values = (
        f"µ = {grip.friction:.4g}, F0 = {grip.static:.0f} N, "
        f"S_g = {allowances.grip_safety:g}, F_c = {grip.lost:.0f} N, "
        f"S_c = {allowances.cut_safety:g}"
    )
    result = borne(shop, cut, Reason.GRIP)
    if grip.is_waived:
        result = (
            f"waived: the spindle stalls at {grip.stalls:.0f} N, "
            f"before the work can slip at {grip.slips_with_reserve:.0f} N (S_c left out)"
        )
    return Step("Ceiling: grip", "F = µ (F0 / S_g - F_c) / S_c", values, result, source)


def _margin_step(cut: Cut, force: Force, grip: _Grip) -> Step:
    allowances = cut.case.allowances
    margin, least = grip.slips / force.nominal, allowances.grip_tight
    said = "no mark"
    if margin < least:
        said = "tight"
        if grip.stalls <= grip.slips / allowances.grip_safety:
            said = f"waived, the spindle stalls at {grip.stalls:.0f} N"
    return Step(
        "Grip over the expected force (a mark, no limit)",
        "force at which the work slips / expected force",
        f"{grip.slips:.0f} N, {force.nominal:.0f} N",
        f"{margin:.2f} of {least:g} asked for: {said}",
        allowance_source("grip_tight"),
    )


def _tilt_step(cut: Cut, force: Force, grip: _Grip) -> Step:
    left = float(grip_at_speed(static_grip=grip.static, centrifugal_force=grip.lost))
    overhang = cut.case.grid.jaw_distance.item()
    side = float(
        largest_side_force(
            grip=left,
            overhang=overhang,
            clamping_diameter=cut.diameter,
            friction=grip.friction,
            cut_safety=1.0,
        )
    )
    return Step(
        "Tilting of work without a seat (information, no limit)",
        "P = µ F D / (4 L)",
        f"µ = {grip.friction:.4g}, F = F0 - F_c = {left:.0f} N, D = {cut.diameter:g} mm, "
        f"L = {overhang:.4g} mm",
        f"a side force of {side:.0f} N tilts it out of the jaws; "
        f"this cut has {force.high:.0f} N, high side",
        "derived; balance and arm: [CM14] p. 28 (found)",
    )
