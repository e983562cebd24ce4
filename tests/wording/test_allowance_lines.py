"""The allowances shown with a cell are those that bear on it: all of them, and no other."""

import math
import re
from collections.abc import Callable, Iterator
from dataclasses import fields, replace

import numpy as np
import pytest

from chartgen.limits.cut import Cut, recommended
from chartgen.limits.cut_force import Force
from chartgen.limits.dig_in import DigIn
from chartgen.limits.window import Windows
from chartgen.model.blade import Edge
from chartgen.model.motor import MotorKind, PowerIs
from chartgen.model.shop import Feeding, Shop
from chartgen.reference.allowances import load_allowances
from chartgen.reference.tables import load_material
from chartgen.wording.allowances import allowance_lines

ShopOf = Callable[..., Shop]
UNMARKED = {'marked_speed = "4000 rpm"\n': ""}
BY_POWER = {"[print]": '[print]\nfeeding = "power"'}
INPUT = {'power_is = "shaft"': 'power_is = "input"'}
CASES = {
    "inverter, carbide in steel": ("750 W inverter", {}, "mild-steel", 0),
    "inverter of input power, unmarked chuck": ("750 W inverter", UNMARKED | INPUT, "c45", 0),
    "brushed motor, HSS in stainless": ("250 W brushed DC", {}, "stainless-304", 2),
    "brushed motor of input power": ("250 W brushed DC", INPUT, "mild-steel", 2),
    "belts, polished in aluminium": ("550 W belts", {}, "aluminium-6082", 3),
    "gears by power, carbide in brass": ("2.2 kW geared", BY_POWER, "free-cutting-brass", 0),
    "brushless, polished in a plastic": ("1.1 kW brushless", UNMARKED, "nylon", 3),
    "brushless, HSS in a plastic": ("1.1 kW brushless", {}, "nylon", 2),
    "measured, carbide in titanium": ("measured", {}, "titanium-pure", 0),
}


def cell(shop: Shop, material: str, blade: int, diameter: float) -> tuple[Windows, Cut]:
    return recommended(
        shop, material=load_material(material), blade=shop.blades[blade], diameter=diameter
    )


def shown(shop: Shop, material: str, blade: int, diameter: float = 20.0) -> list[str]:
    _, cut = cell(shop, material, blade, diameter)
    return [line.split(" = ")[0] for line in allowance_lines(shop, cut)]


def all_numbers(found: Windows, cut: Cut, blade: int) -> Iterator[float]:
    """Yield every number of one cell, for comparison."""
    for field in fields(Windows):
        value = getattr(found, field.name)
        if isinstance(value, np.ndarray):
            yield float(value[0, blade, 0])
    # Without a force nothing is told of a dig-in, whatever stands in its arrays.
    if cut.force is not None:
        for field in fields(DigIn):
            yield float(getattr(found.dig_in, field.name)[0, blade, 0])
    for field in fields(Cut):
        value = getattr(cut, field.name)
        if isinstance(value, bool | float):
            yield float(value)
    if cut.force is not None:
        for field in fields(Force):
            yield float(getattr(cut.force, field.name) or 0.0)
    for limit in (*cut.floors, *cut.ceilings):
        yield limit.feed
    for cap in cut.speed_limits:
        yield cap.speed


def differs(first: list[float], second: list[float]) -> bool:
    return any(
        not (a == b or (math.isnan(a) and math.isnan(b)) or math.isclose(a, b, rel_tol=1e-9))
        for a, b in zip(first, second, strict=True)
    )


def moves(shop: Shop, name: str, material: str, blade: int) -> bool:
    """Whether an allowance, anywhere in its bounds, changes a number of the blade's cells."""
    entry = load_allowances()[name]
    for diameter in (8.0, 20.0, 40.0):
        before = list(all_numbers(*cell(shop, material, blade, diameter), blade))
        for value in (entry.least, entry.most):
            changed = replace(shop, allowances={**shop.allowances, name: value})
            after = list(all_numbers(*cell(changed, material, blade, diameter), blade))
            if differs(before, after):
                return True
    return False


# What only another blade's window turns on (the way out) is left out by keeping one blade.
@pytest.mark.parametrize("case", CASES)
def test_an_allowance_that_is_not_shown_changes_nothing(shop_of: ShopOf, case: str) -> None:
    lathe, exchange, material, blade = CASES[case]
    shop = shop_of(lathe, exchange)
    alone = replace(shop, blades=(shop.blades[blade],))
    hidden = set(load_allowances()) - set(shown(alone, material, 0))
    assert [name for name in sorted(hidden) if moves(alone, name, material, 0)] == []


# `worn_edge_force` is a printed what-if; thresholds may lie out of these cells' reach.
THRESHOLDS = {
    "worn_edge_force",
    "feed_give",
    "tight_feed",
    "poor_speed",
    "speed_over_start",
    "handle_turns_least",
    "handle_turns_most",
    "chuck_rim_speed",
    "reach_clearance",
    "thin_chip",
    "one_cut_minutes",
    "pull_out_share",
    "dc_no_load",
    "depth_over_width",
}


@pytest.mark.parametrize("case", CASES)
def test_an_allowance_that_is_shown_bears_on_a_number(shop_of: ShopOf, case: str) -> None:
    lathe, exchange, material, blade = CASES[case]
    shop = shop_of(lathe, exchange)
    alone = replace(shop, blades=(shop.blades[blade],))
    named = [name for name in shown(alone, material, 0) if name not in THRESHOLDS]
    assert [name for name in named if not moves(alone, name, material, 0)] == []


@pytest.mark.parametrize(
    ("material", "is_steel"),
    [("mild-steel", True), ("stainless-304", True), ("aluminium-6082", False), ("nylon", False)],
)
def test_the_depth_of_a_slot_in_steel_is_an_allowance_of_steel_alone(
    example: Shop, material: str, *, is_steel: bool
) -> None:
    assert ("depth_over_width" in shown(example, material, 0)) is is_steel


@pytest.mark.parametrize("blade", [0, 2, 3])
def test_where_no_force_is_known_no_allowance_on_force_is_shown(
    shop_of: ShopOf, blade: int
) -> None:
    names = set(shown(shop_of("750 W inverter"), "nylon", blade))
    assert not names & {
        "confined_chip",
        "hss_force",
        "polished_force",
        "worn_edge_force",
        "thin_chip",
        "thin_chip_band",
    }


def test_a_lathe_on_an_inverter_shows_no_allowance_of_another_motor(shop_of: ShopOf) -> None:
    names = shown(shop_of("750 W inverter"), "mild-steel", 0)
    assert not [name for name in names if name.startswith(("dc_", "brushless_", "single_"))]
    assert "inverter_stall" in names


@pytest.mark.parametrize(
    ("plate", "kind", "gone"),
    [
        ({"overload": 1.4}, MotorKind.INVERTER, "inverter_one_cut"),
        ({"current_limit": 1.8}, MotorKind.INVERTER, "inverter_stall"),
        ({"breakdown": 2.4}, MotorKind.INVERTER, "three_phase_breakdown"),
        ({"breakdown": 2.4}, MotorKind.SINGLE_PHASE, "single_phase_breakdown"),
        ({"overload": 1.4}, MotorKind.THREE_PHASE, "three_phase_one_cut"),
        ({"fastest": 1800.0}, MotorKind.BRUSHED_DC, "dc_no_load"),
        ({"current_limit": 1.8}, MotorKind.BRUSHLESS, "brushless_stall"),
        (
            {"power_is": PowerIs.INPUT, "efficiency": 0.8},
            MotorKind.BRUSHLESS,
            "brushless_efficiency",
        ),
    ],
)
def test_what_the_plate_states_silences_its_allowance(
    example: Shop, plate: dict[str, object], kind: MotorKind, gone: str
) -> None:
    motor = replace(example.lathe.motor, kind=kind, overload=None, fastest=None)
    if "efficiency" in plate:
        motor = replace(motor, power_is=PowerIs.INPUT)
    bare = replace(example, lathe=replace(example.lathe, motor=motor))
    stated = replace(motor, **plate)  # type: ignore[arg-type]
    assert gone in shown(bare, "mild-steel", 0)
    with_plate = replace(example, lathe=replace(example.lathe, motor=stated))
    assert gone not in shown(with_plate, "mild-steel", 0)


def test_named_elements_show_the_bearings_and_none_show_one_figure_for_all(
    example: Shop,
) -> None:
    def names(**drive: object) -> set[str]:
        changed = replace(example.lathe.drive, **drive)  # type: ignore[arg-type]
        shop = replace(example, lathe=replace(example.lathe, drive=changed))
        both = {"spindle_bearing_efficiency", "transmission_efficiency"}
        return both & set(shown(shop, "mild-steel", 0))

    assert names() == {"spindle_bearing_efficiency"}
    assert names(elements=()) == {"transmission_efficiency"}
    assert names(efficiency=0.9) == set()


def test_a_measured_edge_radius_silences_the_assumed_one(example: Shop) -> None:
    blade = replace(example.blades[0], worn=True)
    assumed = shown(replace(example, blades=(blade,)), "mild-steel", 0)
    measured = replace(example, blades=(replace(blade, edge_radius=20.0),))
    assert {"edge_thin_coated", "worn_edge_radius"} <= set(assumed)
    assert not {"edge_thin_coated", "worn_edge_radius"} & set(shown(measured, "mild-steel", 0))


@pytest.mark.parametrize("edge", Edge)
def test_only_the_edge_in_use_is_shown(example: Shop, edge: Edge) -> None:
    blade = replace(example.blades[0], edge=edge, tool_material=edge.tool_material)
    names = shown(replace(example, blades=(blade,)), "mild-steel", 0)
    states = {"edge_" + other.value.replace("-", "_") for other in Edge}
    assert states & set(names) == {"edge_" + edge.value.replace("-", "_")}


def test_feeding_by_hand_and_by_power_show_their_own(shop_of: ShopOf) -> None:
    by_hand = set(shown(shop_of("2.2 kW geared"), "mild-steel", 0))
    shop = shop_of("2.2 kW geared", BY_POWER)
    assert shop.request.feeding is Feeding.POWER
    by_power = set(shown(shop, "mild-steel", 0))
    assert by_hand - by_power == {
        "edge_floor_by_hand",
        "handle_turns_most",
        "handle_turns_least",
    }
    assert by_power - by_hand == {"edge_floor_by_power"}


def test_a_line_gives_value_unit_owner_source_and_reason(example: Shop) -> None:
    shop = replace(example, allowances={"confined_chip": 1.2})
    _, cut = cell(shop, "mild-steel", 0, 20.0)
    lines = allowance_lines(shop, cut)
    assert lines[0] == (
        "confined_chip = 1.2 (set in the shop file): a parted chip is squeezed between two walls "
        "and the edge is seldom new: one reserve for both"
    )
    assert any(line.startswith("edge_thin_coated = 30 µm (found [CZT]): ") for line in lines)
    assert all(re.match(r"\w+ = [\d.]+( \S+)? \(.+\): \S", line) for line in lines)
