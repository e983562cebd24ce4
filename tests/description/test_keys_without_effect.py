"""A key that the limits make no use of is refused; which ones, the limits themselves tell."""

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from chartgen.description.schema import MotorTable
from chartgen.description.shop_file import example_text
from chartgen.limits.allowances import allowances_for
from chartgen.limits.spindle import Duration, make_spindle
from chartgen.model.lathe import Reading
from chartgen.model.motor import AboveBase, Motor, MotorKind, PowerIs, SelfCooling
from chartgen.model.shop import Shop

Read = Callable[[str | bytes], Shop]
Complaints = Callable[[str | bytes], list[str]]
EXAMPLE = example_text().decode()
PLAIN_EXAMPLE = EXAMPLE.replace('overload = "150 %"', "#")
BASE = 1400.0
LINES = {
    "overload": 'overload = "333 %"',
    "breakdown": 'breakdown = "333 %"',
    "current_limit": 'current_limit = "444 %"',
    "forced_cooling": "forced_cooling = true",
    "self_cooling": 'self_cooling = "full-from-half-speed"',
    "above_base": 'above_base = "straight-fall"',
}


def with_key(motor: Motor, key: str) -> Motor:
    return {
        "overload": replace(motor, overload=3.33),
        "breakdown": replace(motor, breakdown=3.33),
        "current_limit": replace(motor, current_limit=4.44),
        "forced_cooling": replace(motor, forced_cooling=True),
        "self_cooling": replace(motor, self_cooling=SelfCooling.FULL_AT_BASE_SPEED),
        "above_base": replace(motor, above_base=AboveBase.STRAIGHT_FALL),
    }[key]


def has_effect(shop: Shop, kind: MotorKind, key: str) -> bool:
    position = replace(shop.lathe.drive.positions[0], slowest=140.0, fastest=2800.0, motor_ratio=1)
    if kind is MotorKind.MEASURED:
        points = (Reading(speed=100.0, torque=12.0), Reading(speed=2800.0, torque=3.0))
        position = replace(position, readings=points)
    drive = replace(shop.lathe.drive, positions=(position,), fastest_spindle=3000.0)
    speeds = np.linspace(0.1, 1.95, 40) * BASE

    def torques(motor: Motor) -> list[list[float]]:
        lathe = replace(shop.lathe, motor=motor, drive=drive)
        spindle = make_spindle(lathe, allowances_for(shop))
        return [spindle.torque(position, speeds, duration).tolist() for duration in Duration]

    plain = Motor(
        kind=kind,
        plate_power=750.0,
        power_is=PowerIs.SHAFT,
        base_speed=BASE,
        fastest=2 * BASE,
    )
    return torques(plain) != torques(with_key(plain, key))


@pytest.mark.parametrize("kind", MotorKind)
@pytest.mark.parametrize("key", LINES)
def test_a_key_is_accepted_just_where_it_changes_the_torque(
    read: Read, kind: MotorKind, key: str
) -> None:
    declared = MotorTable.keys[key].only_beside
    assert declared is not None

    assert (kind in declared[1]) == has_effect(read(EXAMPLE), kind, key)


@pytest.mark.parametrize(
    ("kind", "key"),
    [
        ("three-phase", "current_limit"),
        ("three-phase", "forced_cooling"),
        ("single-phase", "above_base"),
        ("inverter", "above_base"),
        ("brushed-dc", "breakdown"),
        ("brushed-dc", "forced_cooling"),
        ("brushless", "breakdown"),
        ("brushless", "forced_cooling"),
        ("measured", "overload"),
    ],
)
def test_a_motors_key_without_effect_is_refused(
    complaints: Complaints, kind: str, key: str
) -> None:
    text = PLAIN_EXAMPLE.replace('kind = "inverter"', f'kind = "{kind}"\n{LINES[key]}', 1)
    line = text.splitlines().index(LINES[key]) + 1

    assert complaints(text) == [
        f"my.toml:{line}: lathe.motor.{key}: has no effect beside kind = '{kind}'. Leave it out."
    ]


@pytest.mark.parametrize("line", ['jaws = "smooth"', 'key_torque = "40 N.m"'])
def test_a_collet_has_neither_jaws_nor_a_key(complaints: Complaints, line: str) -> None:
    text = EXAMPLE.replace('kind = "scroll"', f'kind = "collet"\n{line}\n#', 1)
    key, number = line.split(maxsplit=1)[0], text.splitlines().index(line) + 1

    assert complaints(text) == [
        f"my.toml:{number}: lathe.chuck.{key}: has no effect beside kind = 'collet'. Leave it out."
    ]


@pytest.mark.parametrize(
    ("kind", "mend"),
    [
        ("three-phase", 'Add a line such as base_speed = "1400 rpm".'),
        ("single-phase", 'Add a line such as base_speed = "1400 rpm".'),
        ("inverter", 'Add a line such as base_speed = "1400 rpm".'),
        (
            "brushed-dc",
            (
                'Add a line such as base_speed = "4000 rpm"; without a plate, '
                "the no-load speed divided by 1.2 serves."
            ),
        ),
        ("brushless", 'Add a line such as base_speed = "3000 rpm".'),
        ("invertor", 'Add a line such as base_speed = "1400 rpm".'),
    ],
)
def test_a_missing_base_speed_is_shown_as_such_motors_have_it(
    complaints: Complaints, kind: str, mend: str
) -> None:
    text = PLAIN_EXAMPLE.replace('kind = "inverter"', f'kind = "{kind}"', 1)
    text = text.replace('base_speed = "1400 rpm"', "#", 1)
    line = text.splitlines().index("[lathe.motor]") + 1

    assert complaints(text)[0] == f"my.toml:{line}: lathe.motor.base_speed: is missing. {mend}"
