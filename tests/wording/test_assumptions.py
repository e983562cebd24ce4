"""What a card takes for granted, as sentences a person can check at the machine."""

import math
import re
from collections.abc import Callable
from dataclasses import replace

import numpy as np

from chartgen.limits.allowances import allowances_for
from chartgen.limits.run import windows
from chartgen.model.blade import Edge
from chartgen.model.lathe import BarSurface, ChuckKind, JawFace
from chartgen.model.material import Material
from chartgen.model.motor import PowerIs
from chartgen.model.shop import LengthUnits, Shop
from chartgen.reference.tables import load_material
from chartgen.wording.assumptions import assumption_lines, force_band_line
from chartgen.wording.doubts import doubts

ShopOf = Callable[..., Shop]


def text(shop: Shop, *materials: str) -> str:
    found = [load_material(key) for key in materials or ("mild-steel",)]
    return "\n".join(assumption_lines(shop, materials=found, blades=shop.blades))


def test_the_machine_comes_first_with_motor_losses_positions_and_chuck(example: Shop) -> None:
    first, *_ = text(example).splitlines()
    assert first == (
        "Invented bench lathe 125: inverter motor, 750 W at its shaft, 91 % of it at the spindle. "
        "Positions in rev/min: L 60 to 1000; H 150 to 2500. Chuck 125 mm, marked 4000 rev/min."
    )


def test_each_blade_has_a_line_with_its_edge_and_its_sizes(example: Shop) -> None:
    blade = replace(example.blades[0], edge_radius=18.0, worn=True)
    shop = replace(example, blades=(blade, example.blades[2]))
    lines = text(shop).splitlines()
    assert lines[1:3] == [
        "A 2.0 carbide: worn thin-coated, edge radius 18 µm measured; body 1.6 x 26, out 32 mm.",
        "B 1.6 HSS: ground, edge radius 10 µm assumed; body 1.4 x 12.7, out 16 mm.",
    ]


def test_an_unmarked_chuck_is_held_to_a_speed_and_the_reason_said(example: Shop) -> None:
    chuck = replace(example.lathe.chuck, marked_speed=None)
    shop = replace(example, lathe=replace(example.lathe, chuck=chuck))
    speed = int(60_000.0 * 18.0 / (3.14159265 * 125.0)) // 100 * 100
    assert (
        f"Chuck 125 mm carries no mark: held to {speed} rev/min (rim 18 m/s), because an old or "
        "cast-iron body may burst. The lathe's own limit is 2500." in text(shop)
    )


def test_a_drive_faster_than_the_spindle_may_turn_is_told_with_the_limit(example: Shop) -> None:
    drive = replace(example.lathe.drive, fastest_spindle=1500.0)
    shop = replace(example, lathe=replace(example.lathe, drive=drive))
    assert "H 150 to 2500. Never over 1500, though the drive could." in text(shop)
    assert "Never over" not in text(example)
    (doubt,) = doubts(shop)
    assert doubt.startswith(
        "Mind: the drive can turn the spindle faster than this lathe may (1500 rev/min): high "
        "(2500 rev/min)."
    )


def test_an_input_plate_is_shown_beside_the_shaft_power(example: Shop) -> None:
    motor = replace(example.lathe.motor, power_is=PowerIs.INPUT, plate_power=1500.0)
    shop = replace(example, lathe=replace(example.lathe, motor=motor))
    assert "inverter motor, 1050 W at its shaft (1500 W input), 91 %" in text(shop)


def test_a_measured_lathe_says_so(shop_of: ShopOf) -> None:
    assert text(shop_of("measured")).startswith(
        "Test lathe: torque as measured at the spindle. Positions in rev/min: only 100 to 2000."
    )


def test_single_speeds_are_listed_one_by_one(shop_of: ShopOf) -> None:
    assert "954 rpm 954; belts, 1620 rpm 1620." in text(shop_of("550 W belts"))


# kc1.1 1780 N/mm2 and mc 0.17 [TBM]; start values [TG-4], [BENCH] and [TG-6].
def test_one_material_gives_its_force_constants_and_where_cuts_start(example: Shop) -> None:
    said = text(example)
    assert (
        "Force: 1780 N/mm² at a 1 mm chip, exponent 0.17 [TBM], times 1.3 for a squeezed chip or "
        "part-worn edge." in said
    )
    assert (
        "Cuts start from 100 m/min and 0.050 mm/rev for 2.0 carbide, 100 m/min and 0.060 mm/rev "
        "for 3.0 carbide, 25 m/min and 0.040 mm/rev for 1.6 HSS." in said
    )


def test_blades_with_unlike_reserves_give_the_span(example: Shop) -> None:
    polished = replace(example.blades[0], edge=Edge.POLISHED)
    shop = replace(example, blades=(polished, example.blades[1]))
    assert "times 1.1 to 1.3 for a squeezed chip" in text(shop, "aluminium-6082")


def test_a_coated_edge_in_a_material_that_wants_another_is_said(example: Shop) -> None:
    sentence = "This material wants a polished, sharp edge; a coated one builds up and tears."
    assert sentence in text(example, "aluminium-6082")
    assert sentence not in text(example)
    hss_only = replace(example, blades=example.blades[2:])
    assert sentence not in text(hss_only, "aluminium-6082")


def test_several_materials_are_not_told_apart(example: Shop) -> None:
    said = text(example, "mild-steel", "c45")
    assert "Force constants, speeds and feeds differ by material: see the command explain." in said
    assert "Cuts start" not in said


def test_a_plastic_without_force_data_is_said_to_be_unchecked(example: Shop) -> None:
    assert "No published force data: torque, blade, work and grip are not checked." in text(
        example, "nylon"
    )


def test_hand_and_power_feeding_each_say_their_rule(example: Shop, shop_of: ShopOf) -> None:
    assert (
        "Fed by hand: least feed 0.9 of the edge radius, at most 60 handle turns a minute. One "
        "turn moves the tool 2 mm; the dial reads radius." in text(example)
    )
    shop = shop_of("2.2 kW geared", {"[print]": '[print]\nfeeding = "power"'})
    assert (
        "Power cross-feed, listed feeds only; least feed 0.5 of the edge radius. One handle turn "
        "moves the tool 2 mm." in text(shop)
    )


def test_the_rule_of_the_motor_and_what_is_not_computed_are_said(example: Shop) -> None:
    said = text(example)
    assert (
        "Solid bar: cuts up to 3 min may use the motor's one-cut torque, longer ones and tubes "
        "only its continuous torque." in said
    )
    assert said.endswith("Not computed: chatter, slip of the belt, the stiffness of this lathe.")
    lathe = replace(example.lathe, tool_stiffness=20000.0)
    assert text(replace(example, lathe=lathe)).endswith("Not computed: chatter, slip of the belt.")


def test_grip_and_the_place_of_the_cut_have_a_short_line_each(example: Shop) -> None:
    lines = text(example).splitlines()
    assert "Grip: 12 kN assumed (half of the table for 125 mm), friction 0.10 bright bar." in lines
    assert "Cut 5 mm from the jaws; blade may sink 0.10 mm; no bar behind the spindle." in lines


def with_chuck(shop: Shop, **changes: object) -> Shop:
    chuck = replace(shop.lathe.chuck, **changes)  # type: ignore[arg-type]
    return replace(shop, lathe=replace(shop.lathe, chuck=chuck))


# Steel 0.10, aluminium x 0.95, brass x 0.90, grey iron x 0.80 [RN-1391].
def test_friction_goes_from_the_lowest_to_the_highest_of_the_materials(example: Shop) -> None:
    assert "friction 0.08 to 0.10 bright bar." in text(example, "mild-steel", "grey-iron-250")
    black = replace(example, work=replace(example.work, surface=BarSurface.BLACK))
    assert "friction 0.45 black bar in serrated jaws." in text(
        with_chuck(black, jaws=JawFace.SERRATED)
    )


# 250 N of grip for each N·m on the key [CHUCK-2757180].
def test_what_is_known_of_the_chuck_is_said_instead_of_half_the_table(example: Shop) -> None:
    assert "Grip: 10 kN from 40 N·m on the key, friction" in text(
        with_chuck(example, key_torque=40.0)
    )
    assert "Grip: collet; no limit is worked out for it." in text(
        with_chuck(example, kind=ChuckKind.COLLET)
    )
    large = with_chuck(example, size=500.0)
    assert "Grip: 32.5 kN assumed (half of the nearest table, 400 mm; none for 500 mm)" in text(
        large
    )
    third = replace(example, allowances={"grip_share": 0.3})
    assert "Grip: 7.2 kN assumed (0.3 of the table for 125 mm)" in text(third)


# 80 mm holds 10 kN by the table [CHUCK-2757180]: half of it is less than 25 N·m give.
def test_a_small_chuck_is_said_to_be_held_by_a_light_pull(example: Shop) -> None:
    small = with_chuck(example, size=80.0)
    assert "Grip: 6.25 kN assumed (a pull of 25 N·m on the key), friction" in text(small)
    weak = replace(small, allowances={"key_pull": 15.0})
    assert "Grip: 5 kN assumed (half of the table for 80 mm), friction" in text(weak)
    smaller = replace(with_chuck(example, size=63.0), allowances={"key_pull": 10.0})
    assert "Grip: 3.1 kN assumed (half of the nearest table, 80 mm; none for 63 mm)" in text(
        smaller
    )


def test_what_is_known_of_bar_and_tool_post_is_said(example: Shop) -> None:
    shop = replace(
        example,
        work=replace(example.work, jaw_distance=12.0),
        lathe=replace(example.lathe, tool_stiffness=20000.0),
    )
    assert (
        "Cut 12 mm from the jaws; blade may sink 0.10 mm; tool post 20000 N/mm as measured; "
        "no bar behind the spindle."
    ) in text(shop)
    long = replace(shop, work=replace(shop.work, bar_behind=400.0))
    assert "as measured; 400 mm of bar behind the spindle." in text(long)


def dig_in(shop: Shop, *materials: str) -> list[str]:
    found = [load_material(key) for key in materials]
    over = windows(shop, materials=found, diameters=[12.0, 25.0, 50.0])
    lines = assumption_lines(shop, materials=found, blades=shop.blades, windows=over)
    return [line for line in lines if line.startswith("Dig-in: ")]


def test_a_stated_backlash_is_held_against_what_each_blade_swallows(example: Shop) -> None:
    found = load_material("mild-steel")
    over = windows(example, materials=[found], diameters=[12.0, 25.0, 50.0])
    lines = assumption_lines(example, materials=[found], blades=example.blades, windows=over)
    (line,) = (line for line in lines if line.startswith("Dig-in: "))
    assert line == (
        "Dig-in: A swallows 0.12 to 0.14 mm of sudden extra bite, B 0.06 to 0.08, C 0.21; your "
        "backlash is 0.15 mm."
    )
    # A card tells of its own blades only, whatever else the windows were worked out for.
    last = assumption_lines(example, materials=[found], blades=example.blades[2:], windows=over)
    assert "Dig-in: C swallows 0.21 mm of sudden extra bite; your backlash is 0.15 mm." in last
    told = [float(n) for n in re.findall(r"\d\.\d\d", line)]
    slack = over.dig_in.slack[0]
    ends = [end(blade[np.isfinite(blade)]) for blade in slack for end in (np.min, np.max)]
    assert told[:4] == [math.floor(100.0 * float(end)) / 100.0 for end in ends[:4]]


def test_nothing_is_said_of_a_dig_in_without_backlash_force_or_one_material(
    example: Shop,
) -> None:
    slide = replace(example.lathe.cross_slide, backlash=None)
    unstated = replace(example, lathe=replace(example.lathe, cross_slide=slide))
    assert dig_in(example, "mild-steel")
    assert not dig_in(unstated, "mild-steel")
    assert not dig_in(example, "nylon")
    assert not dig_in(example, "mild-steel", "c45")
    assert "Dig-in" not in text(example)


def test_lengths_are_in_the_units_of_the_card(example: Shop) -> None:
    shop = replace(example, request=replace(example.request, units=LengthUnits.INCH))
    assert "Chuck 4.921 in, marked 4000 rev/min." in text(shop)
    assert "out 1.260 in." in text(shop)
    assert (
        "Cut 0.197 in from the jaws; blade may sink 0.0039 in; no bar behind the spindle."
        in text(shop)
    )
    assert dig_in(shop, "mild-steel")[0].endswith("; your backlash is 0.006 in.")
    # 100 m/min and 0.05 mm/rev.
    assert "Cuts start from 328 ft/min and 0.0020 in/rev for 2.0 carbide" in text(shop)


def band(shop: Shop, *materials: Material) -> str:
    return force_band_line(materials, allowances_for(shop), shop.request.units)


def test_the_force_band_is_one_line_with_the_widest_side_of_each(
    example: Shop, mild_steel: Material, stainless: Material
) -> None:
    assert band(example, mild_steel) == (
        "Force estimate ±35 % under 0.1 mm/rev, ±25 % above; limits use the high side."
    )
    assert band(example, mild_steel, stainless) == (
        "Force estimate ±35 % under 0.1 mm/rev, -35 +25 % above; limits use the high side."
    )
    inches = replace(example, request=replace(example.request, units=LengthUnits.INCH))
    assert "under 0.0039 in/rev" in band(inches, mild_steel)
    assert band(example, load_material("nylon")) == (
        "No published force data: torque, blade, work and grip are not checked."
    )
