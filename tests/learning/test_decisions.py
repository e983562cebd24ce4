"""What becomes of the shop file: a second run, the owner's own values, what is taken back."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from chartgen.learning.decisions import (
    Deed,
    concludes,
    decide,
    not_kept_yet,
    to_withdraw,
    to_write,
)
from chartgen.learning.findings import Finding, learn
from chartgen.learning.unlearned import unlearned
from chartgen.model.measured import Assumption, Measured
from chartgen.model.readings import (
    DeflectionReading,
    KeyTorqueReading,
    KnownCut,
    ShopReading,
)
from chartgen.model.shop import Shop

ShopOf = Callable[..., Shop]
CutOf = Callable[..., KnownCut]
True_ = Callable[..., Any]
DATE = "2026-11-25"
RESERVE = Assumption.FORCE_RESERVE


def of(findings: tuple[Finding, ...], assumption: Assumption) -> Finding:
    return next(one for one in findings if one.assumption is assumption)


def pulls(*torques: float) -> list[ShopReading]:
    return [KeyTorqueReading(date=DATE, torque=torque) for torque in torques]


def watts(true_lathe: True_, shop: Shop, cuts: list[KnownCut]) -> list[ShopReading]:
    lathe = true_lathe(shop=shop, chance=np.random.default_rng(11))
    return [lathe.watts(cut) for cut in cuts]


# ------------------------------------------------------------------ second run, the owner's own


def test_a_second_run_does_not_count_the_first_twice(shop_of: ShopOf) -> None:
    shop = shop_of("750 W inverter")
    (first,) = learn(shop, pulls(38.0, 40.0, 42.0))
    one = first.measured
    assert one is not None
    chuck = replace(shop.lathe.chuck, key_torque=one.value)
    taught = replace(shop, lathe=replace(shop.lathe, chuck=chuck), measured=(one,), allowances={})
    assert unlearned(taught) == shop
    assert learn(taught, pulls(38.0, 40.0, 42.0)) == (first,)


def test_every_measured_value_can_be_left_out_again(example: Shop) -> None:
    lathe = example.lathe
    values = {
        Assumption.FORCE_RESERVE: 1.2,
        Assumption.DRIVE_EFFICIENCY: 0.9,
        Assumption.MOTOR_EFFICIENCY: 0.7,
        Assumption.BREAKDOWN: 2.2,
        Assumption.CURRENT_LIMIT: 1.7,
        Assumption.KEY_TORQUE: 40.0,
        Assumption.TOOL_STIFFNESS: 15000.0,
    }
    measured = tuple(
        Measured(assumption=a, value=v, plus_minus=0.1, level=0.95, readings=3, date=DATE)
        for a, v in values.items()
    )
    bare_motor = replace(lathe.motor, power_is=type(lathe.motor.power_is).INPUT)
    bare = replace(example, lathe=replace(lathe, motor=bare_motor))
    full = replace(
        bare,
        lathe=replace(
            bare.lathe,
            motor=replace(bare_motor, efficiency=0.7, breakdown=2.2, current_limit=1.7),
            drive=replace(lathe.drive, efficiency=0.9),
            chuck=replace(lathe.chuck, key_torque=40.0),
            tool_stiffness=15000.0,
        ),
        allowances={"confined_chip": 1.2},
        measured=measured,
    )
    assert {a: a.stated(full.lathe, full.allowances) for a in Assumption} == values
    assert unlearned(full) == bare


def test_the_owners_own_value_is_only_replaced_when_asked(example: Shop) -> None:
    own = replace(
        example,
        lathe=replace(example.lathe, chuck=replace(example.lathe.chuck, key_torque=50.0)),
    )
    found = learn(own, pulls(38.0, 40.0, 42.0))
    (left,) = decide(own, found, replace=False)
    assert (left.deed, left.finding.stated, to_write([left])) == (Deed.LEAVE, 50.0, ())
    (taken,) = decide(own, found, replace=True)
    assert [one.value for one in to_write([taken])] == [40.0]


def test_what_no_longer_stands_is_taken_back(example: Shop) -> None:
    one = Measured(
        assumption=Assumption.KEY_TORQUE,
        value=40.0,
        plus_minus=2.0,
        level=0.95,
        readings=3,
        date=DATE,
    )
    chuck = replace(example.lathe.chuck, key_torque=40.0)
    taught = replace(example, lathe=replace(example.lathe, chuck=chuck), measured=(one,))
    decisions = decide(taught, learn(taught, pulls(10.0, 40.0, 90.0)), replace=False)
    assert to_withdraw(decisions) == (Assumption.KEY_TORQUE,)
    assert concludes(decisions)
    assert not concludes(decide(example, learn(example, pulls(40.0)), replace=False))


def test_like_pulls_are_several_readings_but_the_same_file_twice_is_one() -> None:
    given = pulls(40.0, 40.0, 41.0)
    assert not_kept_yet([], given) == tuple(given)
    assert not_kept_yet(given, given) == ()
    assert not_kept_yet(pulls(40.0), given) == (given[1], given[2])


# --------------------------------------------------------------------------------- rounding


@pytest.mark.parametrize(
    ("torques", "stiff"), [((38.2, 40.1, 42.3), False), ((21.9, 22.4, 23.3), True)]
)
def test_what_is_written_is_on_the_cautious_side_and_its_span_holds_the_whole_one(
    example: Shop, torques: tuple[float, ...], *, stiff: bool
) -> None:
    readings = pulls(*torques)
    if stiff:
        readings = [DeflectionReading(date=DATE, pull=10.0 * t, movement=0.01) for t in torques]
    (one,) = learn(example, readings)
    assert one.measured is not None
    assert one.measured.value <= one.value
    assert one.measured.value - one.measured.plus_minus <= one.low + 1e-6
    assert one.measured.value + one.measured.plus_minus >= one.high - 1e-6


def test_the_force_reserve_is_rounded_up(shop_of: ShopOf, cut_of: CutOf, true_lathe: True_) -> None:
    shop = shop_of("750 W inverter")
    found = learn(shop, watts(true_lathe, shop, [cut_of(diameter=20.0 + i) for i in range(5)]))
    one = of(found, RESERVE)
    assert one.measured is not None
    assert one.value <= one.measured.value < one.value + 0.01 + 1e-9
