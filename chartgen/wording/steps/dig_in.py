"""The steps about a dig-in: what turns on, what gives first, how much bite is swallowed."""

from dataclasses import dataclass

import numpy as np

from chartgen.limits.cut import Cut
from chartgen.limits.cut_force import Force
from chartgen.limits.dig_in import Gives, chuck_inertia, dig_in, spindle_inertia
from chartgen.limits.force import high_force
from chartgen.limits.force_capacities.grip import slip_force
from chartgen.model.blade import ToolMaterial
from chartgen.model.shop import Shop
from chartgen.physics.flywheel import stopping_torque
from chartgen.quantities import KilogramSquareMetres, Millimetres, Newtons, Turns
from chartgen.wording.numbers import length_label, write_length, write_slack
from chartgen.wording.steps.step import Step, allowance_source

_SQUARE_MM = 1e6  # of one m²
GIVES = {
    Gives.SPINDLE: "the spindle stops",
    Gives.GRIP: "the work slips in the jaws",
    Gives.BLADE: "the blade stays bent or breaks",
    Gives.EDGE: "the edge breaks",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class SuddenBite:
    """What a sudden extra bite does to one cut; see `DigIn`."""

    slack: Millimetres[float]
    gives: Gives
    carried_turns: Turns[float]


def sudden_bite(cut: Cut) -> SuddenBite | None:
    """Return what a sudden extra bite does at the cut's own speed and feed.

    None without force data. For the recommended cut it is what its window says.
    """
    if cut.force is None:
        return None
    found = dig_in(
        cut.case,
        feed=np.full((1, 1, 1), cut.feed),
        speed=np.full((1, 1, 1), cut.spindle_speed),
        motor_ratio=np.full((1, 1, 1), cut.position.motor_ratio),
        stall_torque=np.full((1, 1, 1), cut.torque_stall),
        slips=slip_force(cut.case, grip_safety=1.0)[..., 0],
    )
    return SuddenBite(
        slack=found.slack.item(),
        gives=Gives(int(found.gives.item())),
        carried_turns=found.carried_turns.item(),
    )


def dig_in_steps(shop: Shop, cut: Cut) -> list[Step]:
    """Return the steps of a dig-in; empty where no force is known."""
    found = sudden_bite(cut)
    if found is None or cut.force is None:
        return []
    ratio = np.array(cut.position.motor_ratio)
    inertia = float(spindle_inertia(cut.case, ratio))
    forces = _forces(cut, inertia)
    return [
        _inertia_step(shop, cut, inertia),
        _carried_step(cut, cut.force, inertia, found),
        *_force_steps(cut, inertia, forces),
        _slack_step(cut, found, min(forces.values())),
        _sentence_step(shop, found),
    ]


def _forces(cut: Cut, inertia: KilogramSquareMetres[float]) -> dict[Gives, Newtons[float]]:
    """Return the force at which each part gives; the spindle that stops it in time."""
    case, allowances = cut.case, cut.case.allowances
    stopping = stopping_torque(
        inertia=inertia,
        spindle_speed=cut.spindle_speed,
        drive_torque=cut.torque_stall,
        turns=allowances.stopping_turns,
    )
    edge = high_force(case.grid, case.grid.largest_feed, allowances).item()
    return {
        Gives.SPINDLE: float(2000.0 * stopping / cut.diameter),
        Gives.GRIP: float(slip_force(case, grip_safety=1.0)[0, 0, 0, 0]),
        Gives.BLADE: case.blades.at_yield.item(),
        Gives.EDGE: allowances.edge_overload * edge,
    }


def _inertia_step(shop: Shop, cut: Cut, inertia: float) -> Step:
    chuck, ratio = shop.lathe.chuck, cut.position.motor_ratio
    power = cut.case.spindle.shaft_power / 1000.0
    rotor = cut.case.allowances.rotor_inertia * power * _SQUARE_MM
    return Step(
        "Dig-in: what turns on, at the spindle",
        "J = J_chuck + J_rotor i²",
        f"J_chuck = {chuck_inertia(chuck) * _SQUARE_MM:.0f} kg·mm² for a chuck of "
        f"{chuck.size:g} mm, J_rotor = {rotor:.0f} kg·mm² for {power:.4g} kW, i = {ratio:.3g}",
        f"{inertia * _SQUARE_MM:.0f} kg·mm², without the bar",
        f"chuck masses: no source (memory); {allowance_source('rotor_inertia')}",
    )


def _carried_step(cut: Cut, force: Force, inertia: float, found: SuddenBite) -> Step:
    return Step(
        "Dig-in: turns carried on the spindle's own energy",
        "N = J (π n / 30)² / (4 π T), T = F D / 2000",
        f"J = {inertia:.5f} kg·m², n = {cut.spindle_speed:g} rev/min, "
        f"F = {force.nominal:.0f} N expected, D = {cut.diameter:g} mm",
        f"{found.carried_turns:.3g} turns",
        "mechanics: its energy goes into the cut",
    )


def _force_steps(cut: Cut, inertia: float, forces: dict[Gives, float]) -> list[Step]:
    allowances, grid = cut.case.allowances, cut.case.grid
    is_hss = cut.blade.tool_material is ToolMaterial.HSS
    snaps = "blade_yield_hss" if is_hss else "blade_yield_carrier"
    edge = forces[Gives.EDGE] / allowances.edge_overload
    grip = forces[Gives.GRIP]
    return [
        Step(
            "Dig-in: force that stops the spindle in time",
            "F = 2000 (T + J (π n / 30)² / (4 π N)) / D",
            f"T = {cut.torque_stall:.2f} N·m at the stall, J = {inertia:.5f} kg·m², "
            f"n = {cut.spindle_speed:g} rev/min, N = {allowances.stopping_turns:g} turns, "
            f"D = {cut.diameter:g} mm",
            f"{forces[Gives.SPINDLE]:.0f} N",
            f"mechanics; {allowance_source('stopping_turns')}",
        ),
        Step(
            "Dig-in: force that bends or breaks the blade",
            "F = W σ / L, as for the bending of the blade",
            f"σ = {getattr(allowances, snaps):g} N/mm²",
            f"{forces[Gives.BLADE]:.0f} N",
            allowance_source(snaps),
        ),
        Step(
            "Dig-in: force that breaks the edge",
            "F = overload x high-side force at the largest feed of the width",
            f"{allowances.edge_overload:g} x {edge:.0f} N at {grid.largest_feed.item():.4g} mm",
            f"{forces[Gives.EDGE]:.0f} N",
            allowance_source("edge_overload"),
        ),
        Step(
            "Dig-in: force at which the work slips",
            "F = µ (F0 - F_c), without reserves",
            "as above" if np.isfinite(grip) else "collet",
            f"{grip:.0f} N" if np.isfinite(grip) else "no limit is worked out",
            "[RN-1391] p. 48 (found)" if np.isfinite(grip) else "none",
        ),
    ]


def _slack_step(cut: Cut, found: SuddenBite, weakest: Newtons[float]) -> Step:
    data = cut.material.force
    exponent = data.thickness_exponent.value if data else 0.0
    return Step(
        "Dig-in: slack, the sudden extra bite that is swallowed",
        "x = (F / A)^(1/(1-mc)) - f, A = kc1.1 b x reserve; never under 0",
        f"F = {weakest:.0f} N, the least of the four; A = {cut.case.grid.force_constant.item():.1f}"
        f" N, mc = {exponent:g}, f = {cut.feed:.4f} mm/rev",
        f"{found.slack:.4f} mm",
        "inverse of the power law, expected side",
    )


def _sentence_step(shop: Shop, found: SuddenBite) -> Step:
    units, backlash = shop.request.units, shop.lathe.cross_slide.backlash
    unit = length_label(units)
    said = (
        f"Over {write_slack(found.slack, units)} {unit} of sudden extra bite "
        f"{GIVES[found.gives]} first"
    )
    if backlash is None:
        values = "no backlash stated"
    else:
        values = f"backlash {write_length(backlash, units)} {unit}"
        said += f"; your backlash of {write_length(backlash, units)} {unit} is "
        said += (
            "more than that, so pull steadily against the slack and snug the gibs"
            if found.slack < backlash
            else "not more than that"
        )
    return Step(
        "Dig-in: what gives first",
        "least of the four forces; slack against backlash",
        values,
        f"{said}.",
        "derived from the steps above; shop file",
    )
