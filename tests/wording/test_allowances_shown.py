"""Which allowances stand with a cell: those of its machine, its edge, its metal; and how."""

import re
from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen.limits.cut import recommended
from chartgen.model.blade import Edge
from chartgen.model.motor import MotorKind, PowerIs
from chartgen.model.shop import Feeding, Shop
from chartgen.reference.tables import load_material
from chartgen.wording.allowances import allowance_lines

ShopOf = Callable[..., Shop]
BY_POWER = {"[print]": '[print]\nfeeding = "power"'}


def lines_of(shop: Shop, material: str, blade: int) -> list[str]:
    _, cut = recommended(
        shop, material=load_material(material), blade=shop.blades[blade], diameter=20.0
    )
    return allowance_lines(shop, cut)


def shown(shop: Shop, material: str, blade: int) -> list[str]:
    return [line.split(" = ")[0] for line in lines_of(shop, material, blade)]


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
        "tip_drop",
        "buckling_reserve",
        "jaw_distance",
        "work_deflection",
        "work_stress_share",
        "grip_share",
        "grip_tight",
        "edge_overload",
        "rotor_inertia",
    }
    assert not [name for name in names if name.startswith("blade_")]


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
        "feed_give",
        "room_by_hand",
    }
    assert by_power - by_hand == {"edge_floor_by_power"}


def test_a_line_gives_value_unit_owner_source_and_reason(example: Shop) -> None:
    shop = replace(example, allowances={"confined_chip": 1.2})
    lines = lines_of(shop, "mild-steel", 0)
    assert lines[0] == (
        "confined_chip = 1.2 (set in the shop file): a parted chip is squeezed between two walls "
        "and the edge is seldom new: one reserve for both"
    )
    assert any(line.startswith("edge_thin_coated = 30 µm (found [CZT]): ") for line in lines)
    assert all(re.match(r"\w+ = [\d.]+( \S+)? \(.+\): \S", line) for line in lines)
