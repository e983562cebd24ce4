"""What is assumed for one shop: the defaults of the data file, and the file's overrides."""

from dataclasses import dataclass

from chartgen.model.blade import Blade
from chartgen.model.shop import Shop
from chartgen.quantities import (
    MetresPerSecond,
    Micrometres,
    Millimetres,
    MillimetresPerRev,
    Minutes,
    NewtonMetres,
    Newtons,
    NewtonsPerSquareMm,
    TurnsPerMinute,
    Watts,
)
from chartgen.reference.allowances import load_allowances


@dataclass(frozen=True, slots=True, kw_only=True)
class Allowances:
    """Every allowance, resolved. Names, reasons and sources stand in `allowances.toml`."""

    confined_chip: float
    hss_force: float
    polished_force: float
    worn_edge_force: float
    thin_chip: MillimetresPerRev[float]
    thin_chip_band: float
    edge_floor_by_hand: float
    edge_floor_by_power: float
    edge_honed: Micrometres[float]
    edge_ground: Micrometres[float]
    edge_dull: Micrometres[float]
    edge_polished: Micrometres[float]
    edge_thin_coated: Micrometres[float]
    edge_thick_coated: Micrometres[float]
    worn_edge_radius: float
    work_hardening_feed: MillimetresPerRev[float]
    feed_give: float
    room_by_hand: float
    tight_feed: float
    speed_over_start: float
    poor_speed: float
    chuck_rim_speed: MetresPerSecond[float]
    reach_clearance: Millimetres[float]
    depth_over_width: float
    handle_turns_most: TurnsPerMinute[float]
    handle_turns_steady: TurnsPerMinute[float]
    handle_turns_least: TurnsPerMinute[float]
    one_cut_minutes: Minutes[float]
    three_phase_one_cut: float
    single_phase_one_cut: float
    inverter_one_cut: float
    inverter_stall: float
    dc_one_cut: float
    dc_stall: float
    dc_no_load: float
    brushless_one_cut: float
    brushless_stall: float
    three_phase_breakdown: float
    single_phase_breakdown: float
    line_voltage: float
    pull_out_share: float
    transmission_efficiency: float
    spindle_bearing_efficiency: float
    three_phase_efficiency: float
    single_phase_efficiency: float
    inverter_efficiency: float
    dc_efficiency: float
    brushless_efficiency: float
    socket_power: Watts[float]
    blade_stress_carrier: NewtonsPerSquareMm[float]
    blade_stress_hss: NewtonsPerSquareMm[float]
    blade_yield_carrier: NewtonsPerSquareMm[float]
    blade_yield_hss: NewtonsPerSquareMm[float]
    blade_modulus: NewtonsPerSquareMm[float]
    blade_shear_modulus: NewtonsPerSquareMm[float]
    tip_drop: Millimetres[float]
    buckling_reserve: float
    jaw_distance: Millimetres[float]
    work_deflection: Millimetres[float]
    work_stress_share: float
    grip_share: float
    key_pull: NewtonMetres[float]
    grip_safety: float
    cut_safety: float
    grip_tight: float
    whip_share: float
    centre_height: Millimetres[float]
    edge_overload: float
    stopping_turns: float
    backlash_share: float
    rotor_inertia: float
    turning_feed: MillimetresPerRev[float]
    finish_feed: MillimetresPerRev[float]
    rough_depth: Millimetres[float]
    finish_depth: Millimetres[float]
    facing_stock: Millimetres[float]
    turning_force: float
    bright_run_out: Millimetres[float]
    black_run_out: Millimetres[float]
    grip_length: Millimetres[float]
    overhang_most: float
    parting_distance: float
    tailstock_push: Newtons[float]
    drill_chuck_torque: NewtonMetres[float]
    boring_speed: float
    boring_deflection: Millimetres[float]
    boring_stock: Millimetres[float]
    pilot_from: Millimetres[float]
    saw_kerf: Millimetres[float]
    saw_stock: Millimetres[float]
    wear_pieces: float
    set_up_minutes: Minutes[float]
    hold_minutes: Minutes[float]
    tool_minutes: Minutes[float]
    pass_minutes: Minutes[float]
    peck_minutes: Minutes[float]
    measure_minutes: Minutes[float]
    deburr_minutes: Minutes[float]
    saw_minutes: Minutes[float]


def allowances_for(shop: Shop) -> Allowances:
    """Return the allowances of a shop: the defaults, with what its file overrides.

    Raises
    ------
    TypeError
        If the data file and the fields above have drifted apart.
    """
    values = {name: entry.value for name, entry in load_allowances().items()}
    return Allowances(**(values | shop.allowances))


def edge_radius(blade: Blade, allowances: Allowances) -> Micrometres[float]:
    """Return the edge radius of a blade [µm]: as measured, or by the state of the edge."""
    if blade.edge_radius is not None:
        return blade.edge_radius
    name = "edge_" + blade.edge.value.replace("-", "_")
    radius: float = getattr(allowances, name)
    return radius * allowances.worn_edge_radius if blade.worn else radius
