"""What the model refuses to be: every check of every record, with its whole message."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from chartgen.model.blade import Blade, Edge, ToolMaterial
from chartgen.model.lathe import (
    BarSurface,
    Chuck,
    ChuckKind,
    Drive,
    DrivePosition,
    JawFace,
    Lathe,
    Reading,
    Work,
)
from chartgen.model.material import IsoGroup
from chartgen.model.motor import AboveBase, Motor, MotorKind, PowerIs, SelfCooling
from chartgen.model.shop import Feeding, PrintRequest, Shop

BLADE = Blade(
    name="2 coated",
    tool_material=ToolMaterial.CARBIDE,
    edge=Edge.THIN_COATED,
    insert_width=2.0,
    thickness=1.6,
    height=26.0,
    projection=30.0,
)
POSITION = DrivePosition(
    name="low", mark="L", slowest=100.0, fastest=1000.0, motor_ratio=2.0, dial_step=10.0
)
DRIVE = Drive(positions=(POSITION,), fastest_spindle=1000.0)
MOTOR = Motor(
    kind=MotorKind.BRUSHLESS, plate_power=500.0, power_is=PowerIs.SHAFT, base_speed=2000.0
)


def refusal(make: Callable[[], Any]) -> str:
    with pytest.raises(ValueError, match=r".+") as caught:
        make()
    return str(caught.value)


def two_readings(first: float, last: float) -> tuple[Reading, ...]:
    return (Reading(speed=first, torque=12.0), Reading(speed=last, torque=8.0))


BLADES: list[tuple[dict[str, Any], str]] = [
    (
        {"edge": Edge.HONED},
        (
            "edge 'honed' is not a state of a carbide edge; use one of polished, thin-coated, "
            "thick-coated"
        ),
    ),
    (
        {"tool_material": ToolMaterial.HSS},
        "edge 'thin-coated' is not a state of a hss edge; use one of honed, ground, dull",
    ),
    (
        {"thickness": 2.1},
        "thickness (2.1 mm) is more than insert_width (2 mm): the body would rub in its own slot",
    ),
    (
        {"height": 1.5},
        "height (1.5 mm) is less than thickness (1.6 mm); a blade stands on its narrow side",
    ),
    (
        {"strips": ((1.6, 20.0),)},
        ("strips are 20 mm high together and the blade 26 mm; list them all, from the bottom up"),
    ),
    (
        {"strips": ((1.6, 20.0), (2.0, 6.1))},
        ("strips are 26.1 mm high together and the blade 26 mm; list them all, from the bottom up"),
    ),
]


@pytest.mark.parametrize(("change", "message"), BLADES)
def test_a_blade_is_refused_with_the_mend(change: dict[str, Any], message: str) -> None:
    assert refusal(lambda: replace(BLADE, **change)) == message


# Strips are measured one by one: a slip of 0.05 mm in their sum is no fault.
@pytest.mark.parametrize("land", [5.96, 6.0, 6.04])
def test_strips_that_add_up_to_the_height_within_what_can_be_measured_are_taken(
    land: float,
) -> None:
    strips = ((1.6, 20.0), (2.0, land))
    assert replace(BLADE, strips=strips).strips == strips


def test_a_blade_without_strips_is_a_flat_one() -> None:
    assert BLADE.strips == ()


def test_a_body_as_wide_as_its_insert_is_taken() -> None:
    assert replace(BLADE, thickness=2.0).thickness == 2.0


POSITIONS: list[tuple[dict[str, Any], str]] = [
    ({"slowest": 1100.0}, "the range 1100..1000 rpm must rise and be above 0"),
    ({"slowest": 0.0}, "the range 0..1000 rpm must rise and be above 0"),
    (
        {"readings": two_readings(1000.0, 100.0)},
        "the readings must rise in speed, each speed once",
    ),
    (
        {"readings": two_readings(100.0, 100.0)},
        "the readings must rise in speed, each speed once",
    ),
    (
        {"readings": two_readings(150.0, 1000.0)},
        (
            "the readings cover 150..1000 rpm but the position runs 100..1000 rpm; measure at both "
            "ends or narrow it"
        ),
    ),
    (
        {"readings": two_readings(100.0, 900.0)},
        (
            "the readings cover 100..900 rpm but the position runs 100..1000 rpm; measure at both "
            "ends or narrow it"
        ),
    ),
]


@pytest.mark.parametrize(("change", "message"), POSITIONS)
def test_a_drive_position_is_refused_with_the_mend(change: dict[str, Any], message: str) -> None:
    assert refusal(lambda: replace(POSITION, **change)) == message


def test_readings_that_cover_the_range_are_taken() -> None:
    readings = two_readings(50.0, 1000.0)
    assert replace(POSITION, readings=readings).readings == readings


def test_only_a_position_without_a_range_has_a_single_speed() -> None:
    assert not POSITION.is_single_speed
    assert replace(POSITION, fastest=100.0).is_single_speed


def test_a_drive_without_positions_is_refused() -> None:
    message = "a drive needs at least one position"
    assert refusal(lambda: replace(DRIVE, positions=())) == message


def test_a_drive_whose_every_speed_is_over_its_limit_is_refused() -> None:
    assert refusal(lambda: replace(DRIVE, fastest_spindle=90.0)) == (
        "fastest_spindle (90 rpm) is below every speed the positions can give; one of them is wrong"
    )


MOTORS: list[tuple[dict[str, Any], str]] = [
    (
        {"fastest": 1900.0},
        (
            "fastest (1900 rpm) is below base_speed (2000 rpm); give the motor's speed at the top "
            "of its control range, or leave it out"
        ),
    ),
    (
        {"efficiency": 0.8},
        (
            "efficiency only matters when power_is = 'input'; leave it out, or say that the plate "
            "states input power"
        ),
    ),
    (
        {"forced_cooling": True, "self_cooling": SelfCooling.FULL_FROM_HALF_SPEED},
        "self_cooling has no effect beside forced_cooling = true; leave it out",
    ),
    (
        {"above_base": AboveBase.STRAIGHT_FALL},
        (
            "above_base = 'straight-fall' needs fastest, the speed where torque reaches nothing, "
            "above base_speed"
        ),
    ),
    (
        {"above_base": AboveBase.STRAIGHT_FALL, "fastest": 2000.0},
        (
            "above_base = 'straight-fall' needs fastest, the speed where torque reaches nothing, "
            "above base_speed"
        ),
    ),
    ({"breakdown": 0.9}, "breakdown is under 100 %; it is a multiple of the rated torque"),
    ({"overload": 0.5}, "overload is under 100 %; it is a multiple of the rated torque"),
    ({"current_limit": 0.99}, "current_limit is under 100 %; it is a multiple of the rated torque"),
]


@pytest.mark.parametrize(("change", "message"), MOTORS)
def test_a_motor_is_refused_with_the_mend(change: dict[str, Any], message: str) -> None:
    assert refusal(lambda: replace(MOTOR, **change)) == message


def test_a_motor_with_all_its_plate_filled_in_is_taken() -> None:
    full = replace(
        MOTOR,
        power_is=PowerIs.INPUT,
        efficiency=0.8,
        fastest=4000.0,
        above_base=AboveBase.STRAIGHT_FALL,
        breakdown=2.0,
        overload=1.0,
        current_limit=1.5,
    )
    assert full.overload == 1.0


def test_a_measured_motor_without_readings_in_a_position_is_refused(example: Shop) -> None:
    measured = replace(MOTOR, kind=MotorKind.MEASURED)
    read = replace(POSITION, readings=two_readings(100.0, 1000.0))
    drive = replace(DRIVE, positions=(read, replace(POSITION, name="high")))

    def lathe(drive: Drive) -> Lathe:
        return replace(example.lathe, motor=measured, drive=drive)

    message = "a measured motor needs readings in every drive position"
    assert refusal(lambda: lathe(drive)) == message
    assert lathe(replace(DRIVE, positions=(read,))).motor is measured


# Nobody has to measure how the work is held: what is not said is the usual, or unknown.
def test_a_chuck_of_which_only_the_size_is_known_is_a_smooth_scroll_chuck() -> None:
    chuck = Chuck(size=125.0)
    assert (chuck.kind, chuck.jaws) == (ChuckKind.SCROLL, JawFace.SMOOTH)
    assert (chuck.key_torque, chuck.marked_speed) == (None, None)


def test_a_bar_of_which_nothing_is_said_is_bright_and_does_not_stick_out_behind() -> None:
    work = Work()
    assert (work.surface, work.jaw_distance, work.bar_behind) == (BarSurface.BRIGHT, None, 0.0)


def test_a_lathe_whose_tool_post_nobody_measured_has_no_stiffness(example: Shop) -> None:
    lathe = example.lathe
    again = Lathe(
        name=lathe.name,
        motor=lathe.motor,
        drive=lathe.drive,
        chuck=lathe.chuck,
        cross_slide=lathe.cross_slide,
    )
    assert again.tool_stiffness is None


def test_two_blades_of_one_name_are_refused(example: Shop) -> None:
    blades = (BLADE, replace(BLADE, insert_width=3.0))
    assert refusal(lambda: replace(example, blades=blades)) == "two blades have the same name"


def test_power_feeding_without_power_feeds_is_refused(example: Shop) -> None:
    request: PrintRequest = replace(example.request, feeding=Feeding.POWER)
    assert refusal(lambda: replace(example, request=request)) == (
        "feeding = 'power' needs power_feeds in the cross-slide; list them or feed by hand"
    )


def test_only_motors_on_the_line_have_fixed_speeds() -> None:
    fixed = {kind for kind in MotorKind if not kind.stepless}
    assert fixed == {MotorKind.THREE_PHASE, MotorKind.SINGLE_PHASE}


def test_every_edge_belongs_to_one_tool_family() -> None:
    carbide = {edge for edge in Edge if edge.tool_material is ToolMaterial.CARBIDE}
    assert carbide == {Edge.POLISHED, Edge.THIN_COATED, Edge.THICK_COATED}


# ISO 513: P, M, K, N, S for the materials here.
def test_the_material_groups_carry_the_letters_of_iso_513() -> None:
    assert "".join(group.letter for group in IsoGroup) == "PMKNS"
    assert all(group.meaning for group in IsoGroup)
