from collections.abc import Callable

import pytest

from chartgen.description.shop_file import example_text
from chartgen.model.lathe import Reading
from chartgen.model.motor import PowerIs
from chartgen.model.shop import Shop

Read = Callable[[str | bytes], Shop]
Complaints = Callable[[str | bytes], list[str]]
EXAMPLE = example_text().decode()


def drive(kind: str, positions: str, base: str = 'base_speed = "1400 rpm"') -> str:
    """Return the example with another motor and other drive positions."""
    start, rest = EXAMPLE.split("[lathe.motor]")
    chuck = rest[rest.index("[lathe.chuck]") :]
    motor = f'kind = "{kind}"\n{base}\n'
    if kind != "measured":
        motor += 'power = "550 W"\npower_is = "shaft"\n'
    return (
        f"{start}[lathe.motor]\n{motor}"
        f'[lathe.drive]\nfastest_spindle = "2500 rpm"\n{positions}\n{chuck}'
    )


def position(name: str, speeds: str, *more: str) -> str:
    keys = (f'name = "{name}"', f"speeds = {speeds}", *more)
    return "[[lathe.drive.position]]\n" + "\n".join(keys) + "\n"


def test_listed_speeds_become_one_position_each(read: Read) -> None:
    speeds = '["160 rpm", "250 rpm", "500 rpm"]'
    shop = read(drive("single-phase", position("belt", speeds) + position("direct", '"1400 rpm"')))
    positions = shop.lathe.drive.positions

    assert [(one.name, one.slowest, one.fastest) for one in positions] == [
        ("belt, 160 rpm", 160.0, 160.0),
        ("belt, 250 rpm", 250.0, 250.0),
        ("belt, 500 rpm", 500.0, 500.0),
        ("direct", 1400.0, 1400.0),
    ]
    assert [one.motor_ratio for one in positions] == [1400 / 160, 1400 / 250, 1400 / 500, 1.0]
    assert [one.mark for one in positions] == ["", "", "", ""]


def test_a_speed_that_two_positions_share_needs_marks(read: Read) -> None:
    belt = position("belt", '["160 rpm", "250 rpm"]')
    gear = position("gear", '["40 rpm", "160 rpm"]', 'mark = "A"')

    assert [one.mark for one in read(drive("three-phase", belt + gear)).lathe.drive.positions] == [
        "B",
        "B",
        "A",
        "A",
    ]


def test_ranges_without_marks_of_their_own_get_letters(read: Read) -> None:
    low = position("low", '"60..600 rpm"', 'mark = "X"')
    middle = position("middle", '"100..1200 rpm"', 'mark = "X"')
    high = position("high", '"200..2400 rpm"', 'mark = "B"')

    marks = [one.mark for one in read(drive("inverter", low + middle + high)).lathe.drive.positions]

    assert marks == ["A", "C", "B"]


@pytest.mark.parametrize(
    ("kind", "ratio"), [("inverter", 1.4), ("brushless", 1.4), ("brushed-dc", 1.4 * 1.2)]
)
def test_the_ratio_of_a_range_comes_from_the_motors_top_speed(
    read: Read, kind: str, ratio: float
) -> None:
    shop = read(drive(kind, position("only", '"60..1000 rpm"')))

    assert shop.lathe.drive.positions[0].motor_ratio == pytest.approx(ratio)
    assert shop.lathe.drive.positions[0].mark == ""


def test_a_stated_ratio_is_used(read: Read) -> None:
    shop = read(drive("inverter", position("only", '"60..1000 rpm"', "motor_ratio = 3")))

    assert shop.lathe.drive.positions[0].motor_ratio == 3.0


@pytest.mark.parametrize(
    ("kind", "speeds", "more", "message"),
    [
        (
            "three-phase",
            '"60..1000 rpm"',
            "",
            (
                "lathe.drive.position[1].speeds: is a range, but a three-phase motor on the line "
                'has fixed speeds. List them, as in speeds = ["160 rpm", "250 rpm"].'
            ),
        ),
        (
            "three-phase",
            '["160 rpm", "160 rpm"]',
            "",
            "lathe.drive.position[1].speeds: has 160 rpm twice. List each once.",
        ),
        (
            "three-phase",
            '["160 rpm", "250 rpm"]',
            "motor_ratio = 2.8",
            (
                "lathe.drive.position[1].motor_ratio: cannot hold for several speeds. "
                "Leave it out; each speed then gets its own from base_speed."
            ),
        ),
        (
            "measured",
            '"60..1000 rpm"',
            "",
            (
                "lathe.drive.position[1].readings: is missing for a measured motor. "
                'Add readings = [["200 rpm", "12 N.m"], ["900 rpm", "400 W"]].'
            ),
        ),
        (
            "measured",
            '"60..1000 rpm"',
            'readings = [["200 rpm", "12 N.m"], ["900 rpm", "400 W"]]',
            (
                "lathe.drive.position[1].readings: the readings cover 200..900 rpm but the "
                "position runs 60..1000 rpm. Measure at both ends or narrow it."
            ),
        ),
        (
            "measured",
            '"60..1000 rpm"',
            'readings = [["60 rpm", "2 mm"]]',
            (
                "lathe.drive.position[1].readings[1]: '2 mm' is neither a torque nor a power. "
                "Write it as in '12 N.m' or '400 W'."
            ),
        ),
        (
            "measured",
            '"60..1000 rpm"',
            'readings = ["200 rpm"]',
            (
                "lathe.drive.position[1].readings[1]: must be a pair: a speed, and the torque or "
                'power there. Write it as in ["200 rpm", "12 N.m"] or ["900 rpm", "400 W"].'
            ),
        ),
    ],
)
def test_a_position_that_does_not_suit_its_motor_is_refused(
    complaints: Complaints, kind: str, speeds: str, more: str, message: str
) -> None:
    (complaint,) = complaints(drive(kind, position("only", speeds, more)))

    assert complaint.partition(": ")[2] == message


def test_measured_power_becomes_torque_at_the_spindle(read: Read) -> None:
    readings = 'readings = [["1000 rpm", "400 W"], ["200 rpm", "12 N.m"]]'
    shop = read(drive("measured", position("open", '"200..1000 rpm"', readings), base=""))

    low, high = shop.lathe.drive.positions[0].readings
    assert low == Reading(speed=200.0, torque=12.0)
    # 9550 P[kW] / n, the handbooks' rounding of 60 / (2 pi)
    assert high.torque == pytest.approx(9550 * 0.4 / 1000, rel=1e-4)
    assert shop.lathe.motor.plate_power == pytest.approx(400.0)
    assert shop.lathe.motor.base_speed == 1000.0
    assert shop.lathe.motor.power_is is PowerIs.SHAFT
