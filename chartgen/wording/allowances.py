"""The allowances that bear on one cell, as lines: value, whose it is, why, and its trust."""

from chartgen.limits.cut import Cut
from chartgen.model.blade import Edge, ToolMaterial
from chartgen.model.lathe import ChuckKind
from chartgen.model.material import IsoGroup
from chartgen.model.measured import Assumption
from chartgen.model.motor import MotorKind, PowerIs
from chartgen.model.shop import Feeding, Shop
from chartgen.reference.allowances import AllowanceEntry, load_allowances
from chartgen.sources import NO_SOURCE
from chartgen.wording.measured import measured_lines, measured_words

_OF_KIND = {
    MotorKind.THREE_PHASE: {"three_phase_one_cut", "three_phase_breakdown", "line_voltage"},
    MotorKind.SINGLE_PHASE: {"single_phase_one_cut", "single_phase_breakdown", "line_voltage"},
    MotorKind.INVERTER: {
        "inverter_one_cut",
        "inverter_stall",
        "three_phase_breakdown",
        "pull_out_share",
    },
    MotorKind.BRUSHED_DC: {"dc_one_cut", "dc_stall", "dc_no_load"},
    MotorKind.BRUSHLESS: {"brushless_one_cut", "brushless_stall"},
    MotorKind.MEASURED: set[str](),
}
_EFFICIENCY_OF_KIND = {
    MotorKind.THREE_PHASE: "three_phase_efficiency",
    MotorKind.SINGLE_PHASE: "single_phase_efficiency",
    MotorKind.INVERTER: "inverter_efficiency",
    MotorKind.BRUSHED_DC: "dc_efficiency",
    MotorKind.BRUSHLESS: "brushless_efficiency",
}
# What the file or the plate states leaves its allowance without a say.
_STATED = {
    "overload": (
        "inverter_one_cut",
        "dc_one_cut",
        "brushless_one_cut",
        "three_phase_one_cut",
        "single_phase_one_cut",
    ),
    "current_limit": ("inverter_stall", "dc_stall", "brushless_stall"),
    "breakdown": ("three_phase_breakdown", "single_phase_breakdown"),
    "fastest": ("dc_no_load",),
    "efficiency": tuple(_EFFICIENCY_OF_KIND.values()),
}
_OF_GRIP = {"grip_share", "key_pull", "grip_safety", "cut_safety", "grip_tight"}
# Without a force nothing can be held against what blade, work, grip and edge bear.
_OF_FORCE = _OF_GRIP | {
    "confined_chip",
    "hss_force",
    "polished_force",
    "worn_edge_force",
    "thin_chip",
    "thin_chip_band",
    "blade_stress_carrier",
    "blade_stress_hss",
    "blade_yield_carrier",
    "blade_yield_hss",
    "blade_modulus",
    "blade_shear_modulus",
    "tip_drop",
    "buckling_reserve",
    "jaw_distance",
    "work_deflection",
    "work_stress_share",
    "edge_overload",
    "stopping_turns",
    "rotor_inertia",
}
# Steps of a job beside parting off: the set-up card tells of them.
_OF_OTHER_STEPS = frozenset(
    {
        "turning_feed",
        "handle_turns_steady",
        "finish_feed",
        "rough_depth",
        "finish_depth",
        "facing_stock",
        "turning_force",
        "bright_run_out",
        "black_run_out",
        "grip_length",
        "overhang_most",
        "parting_distance",
        "tailstock_push",
        "drill_chuck_torque",
        "boring_speed",
        "boring_deflection",
        "boring_stock",
        "pilot_from",
        "saw_kerf",
        "saw_stock",
        "wear_pieces",
        "set_up_minutes",
        "hold_minutes",
        "tool_minutes",
        "pass_minutes",
        "peck_minutes",
        "measure_minutes",
        "deburr_minutes",
        "saw_minutes",
    }
)


def allowance_lines(shop: Shop, cut: Cut) -> list[str]:
    """Return a line for each allowance in force for a cell, in the order of the data file."""
    silent = _not_in_force(shop, cut)
    entries = load_allowances().items()
    lines = [_line(entry, shop) for name, entry in entries if name not in silent]
    return [*lines, *measured_lines(shop)]


def _line(entry: AllowanceEntry, shop: Shop) -> str:
    value = shop.allowances.get(entry.name, entry.value)
    owner = "set in the shop file" if entry.name in shop.allowances else entry.mark.word
    if entry.name == Assumption.FORCE_RESERVE.path[-1]:
        owner = measured_words(shop, Assumption.FORCE_RESERVE) or owner
    source = "" if entry.source == NO_SOURCE else f" [{entry.source}]"
    amount = f"{entry.name} = {value:g} {entry.unit.label}".rstrip()
    return f"{amount} ({owner}{source}): {entry.reason}"


def _not_in_force(shop: Shop, cut: Cut) -> frozenset[str]:
    return (
        _OF_OTHER_STEPS
        | _silent_drive(shop)
        | _silent_edge(cut)
        | _silent_hand(shop)
        | _silent_force(cut)
        | _silent_holding(shop)
        | ({"chuck_rim_speed"} if shop.lathe.chuck.marked_speed is not None else set())
    )


def _silent_drive(shop: Shop) -> set[str]:
    motor, drive = shop.lathe.motor, shop.lathe.drive
    every = set().union(*_OF_KIND.values(), _EFFICIENCY_OF_KIND.values())
    in_force = set(_OF_KIND[motor.kind])
    if motor.power_is is PowerIs.INPUT:
        in_force.add(_EFFICIENCY_OF_KIND[motor.kind])
    for field, names in _STATED.items():
        if getattr(motor, field) is not None:
            in_force -= set(names)
    silent = every - in_force
    if drive.efficiency is not None or motor.kind is MotorKind.MEASURED:
        silent |= {"transmission_efficiency", "spindle_bearing_efficiency"}
    else:
        silent.add("transmission_efficiency" if drive.elements else "spindle_bearing_efficiency")
    # It only serves the plausibility check of a shop file.
    return silent | {"socket_power"}


def _silent_edge(cut: Cut) -> set[str]:
    blade, material = cut.blade, cut.material
    silent = {"edge_" + edge.value.replace("-", "_") for edge in Edge if edge is not blade.edge}
    if blade.edge_radius is not None:
        silent |= {"edge_" + blade.edge.value.replace("-", "_"), "worn_edge_radius"}
    if not blade.worn:
        silent.add("worn_edge_radius")
    if blade.tool_material is ToolMaterial.HSS:
        silent |= {"blade_stress_carrier", "blade_yield_carrier"}
    else:
        silent |= {"hss_force", "blade_stress_hss", "blade_yield_hss"}
    if not (blade.edge is Edge.POLISHED and material.wants_polished_edge):
        silent.add("polished_force")
    if not material.work_hardens:
        silent.add("work_hardening_feed")
    if material.iso_group not in {IsoGroup.P, IsoGroup.M}:
        silent.add("depth_over_width")
    return silent


def _silent_hand(shop: Shop) -> set[str]:
    if shop.request.feeding is Feeding.HAND:
        return {"edge_floor_by_power"}
    return {
        "edge_floor_by_hand",
        "handle_turns_most",
        "handle_turns_least",
        "feed_give",
        "room_by_hand",
    }


def _silent_force(cut: Cut) -> set[str]:
    return _OF_FORCE if cut.material.force is None else set()


def _silent_holding(shop: Shop) -> set[str]:
    chuck, work = shop.lathe.chuck, shop.work
    silent = set()
    if chuck.kind is ChuckKind.COLLET:
        silent |= _OF_GRIP
    if chuck.key_torque is not None:
        silent |= {"grip_share", "key_pull"}
    if work.jaw_distance is not None:
        silent.add("jaw_distance")
    if work.bar_behind == 0.0:
        silent.add("whip_share")
    return silent
