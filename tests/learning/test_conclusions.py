"""When readings conclude and when not; which reading contradicts, and which would help most."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from chartgen.learning.findings import NARROWED, Finding, Verdict, learn
from chartgen.learning.next_reading import Further
from chartgen.learning.refusals import RefusedReadingsError
from chartgen.model.measured import Assumption
from chartgen.model.readings import (
    DroopReading,
    KeyTorqueReading,
    KnownCut,
    ShopReading,
    StallReading,
    WattsReading,
)
from chartgen.model.shop import Shop

ShopOf = Callable[..., Shop]
CutOf = Callable[..., KnownCut]
True_ = Callable[..., Any]
DATE = "2026-11-25"
UNNAMED_DRIVE = {'elements = ["v-belt"]': ""}
RESERVE = Assumption.FORCE_RESERVE


def of(findings: tuple[Finding, ...], assumption: Assumption) -> Finding:
    return next(one for one in findings if one.assumption is assumption)


def pulls(*torques: float) -> list[ShopReading]:
    return [KeyTorqueReading(date=DATE, torque=torque) for torque in torques]


def watts(true_lathe: True_, shop: Shop, cuts: list[KnownCut]) -> list[ShopReading]:
    lathe = true_lathe(shop=shop, chance=np.random.default_rng(11))
    return [lathe.watts(cut) for cut in cuts]


# --------------------------------------------------------------------- what can be told apart


@pytest.mark.parametrize("count", [3, 30])
def test_watts_do_not_tell_force_from_an_efficiency_nobody_knows(
    shop_of: ShopOf, cut_of: CutOf, true_lathe: True_, count: int
) -> None:
    shop = shop_of("750 W inverter", UNNAMED_DRIVE)
    found = learn(shop, watts(true_lathe, shop, [cut_of(diameter=20.0 + i) for i in range(count)]))
    for assumption in (RESERVE, Assumption.DRIVE_EFFICIENCY):
        assert of(found, assumption).verdict is Verdict.TOO_VAGUE


def test_where_the_drive_is_known_watts_tell_of_the_force_and_never_of_the_drive(
    shop_of: ShopOf, cut_of: CutOf, true_lathe: True_
) -> None:
    shop = shop_of("750 W inverter")
    readings = watts(true_lathe, shop, [cut_of(diameter=20.0 + i) for i in range(20)])
    found = learn(shop, readings)
    assert of(found, RESERVE).verdict is Verdict.MEASURED
    drive = of(found, Assumption.DRIVE_EFFICIENCY)
    assert drive.verdict is Verdict.TOO_VAGUE
    assert drive.help is not None
    assert drive.help.further is None


def test_a_second_material_tells_more_than_more_of_the_first(
    shop_of: ShopOf, cut_of: CutOf, true_lathe: True_
) -> None:
    shop = shop_of("750 W inverter")
    same = learn(shop, watts(true_lathe, shop, [cut_of() for _ in range(4)]))
    metals = ["mild-steel", "mild-steel", "aluminium-6082", "aluminium-6082"]
    other = learn(shop, watts(true_lathe, shop, [cut_of(m) for m in metals]))
    narrow, wide = of(other, RESERVE).narrowing, of(same, RESERVE).narrowing
    assert narrow is not None
    assert wide is not None
    assert narrow < wide


def test_stalls_alone_leave_the_force_as_doubtful_as_it_was(
    shop_of: ShopOf, cut_of: CutOf, true_lathe: True_
) -> None:
    shop = shop_of("1.1 kW brushless")
    lathe = true_lathe(shop=shop, chance=np.random.default_rng(1))
    cuts = [cut_of(diameter=d, speed=200.0) for d in (50.0, 54.0, 58.0)]
    found = learn(shop, [lathe.stall(cut, shop.lathe.drive.positions[0]) for cut in cuts])
    assert of(found, RESERVE).verdict is Verdict.TOO_VAGUE
    assert of(found, Assumption.CURRENT_LIMIT).readings == 3


def test_a_stall_on_a_lathe_measured_at_its_spindle_tells_of_the_force(
    shop_of: ShopOf, cut_of: CutOf, true_lathe: True_
) -> None:
    shop = shop_of("measured")
    lathe = true_lathe(shop=shop, chance=np.random.default_rng(1))
    cuts = [cut_of(diameter=d, speed=200.0) for d in (50.0, 54.0, 58.0)]
    found = learn(shop, [lathe.stall(cut, shop.lathe.drive.positions[0]) for cut in cuts])
    assert [one.assumption for one in found] == [RESERVE]
    assert found[0].verdict is Verdict.MEASURED


# ------------------------------------------------------------------- too few, or contradictory


def test_two_readings_conclude_nothing_and_say_how_many_lack(
    shop_of: ShopOf, cut_of: CutOf, true_lathe: True_
) -> None:
    shop = shop_of("750 W inverter")
    readings = watts(true_lathe, shop, [cut_of(), cut_of("aluminium-6082")])
    found = learn(shop, [*readings, *pulls(40.0), *pulls(41.0)])
    assert {one.verdict for one in found} == {Verdict.TOO_FEW}
    assert {one.missing for one in found} == {1}
    assert all(one.measured is None for one in found)


def test_a_reading_that_contradicts_the_others_is_named_and_nothing_concluded(
    shop_of: ShopOf, cut_of: CutOf, true_lathe: True_
) -> None:
    shop = shop_of("750 W inverter")
    readings = watts(true_lathe, shop, [cut_of(diameter=20.0 + i) for i in range(6)])
    wrong = readings[4]
    assert isinstance(wrong, WattsReading)
    wrong = replace(wrong, cut_power=wrong.idle_power + 2.0 * (wrong.cut_power - wrong.idle_power))
    readings[4] = wrong
    one = of(learn(shop, readings), RESERVE)
    assert (one.verdict, one.odd) == (Verdict.CONTRADICTED, wrong)
    (key,) = learn(shop, pulls(38.0, 40.0, 41.0, 39.0, 120.0))
    assert (key.verdict, key.odd) == (Verdict.CONTRADICTED, pulls(120.0)[0])


def test_readings_that_scatter_wildly_conclude_nothing(example: Shop) -> None:
    (key,) = learn(example, pulls(10.0, 40.0, 90.0))
    assert key.verdict is Verdict.TOO_VAGUE


# --------------------------------------------------------------------------- what would help


def test_the_reading_that_would_help_does_help(
    shop_of: ShopOf, cut_of: CutOf, true_lathe: True_
) -> None:
    shop = shop_of("750 W inverter")
    shop = replace(shop, request=replace(shop.request, materials=("mild-steel", "aluminium-6082")))
    few = watts(true_lathe, shop, [cut_of()] * 2)
    before = of(learn(shop, few), RESERVE)
    assert before.help is not None
    assert before.help.further is Further.WATTS_IN_ANOTHER_MATERIAL
    more = watts(true_lathe, shop, [cut_of()] * 2 + [cut_of(before.help.material)] * 3)
    after = of(learn(shop, more), RESERVE)
    assert after.narrowing == pytest.approx(before.help.narrowing, abs=0.02)
    assert before.help.narrowing <= NARROWED
    assert after.verdict is Verdict.MEASURED


def test_watts_help_a_stall_that_stands_alone(
    shop_of: ShopOf, cut_of: CutOf, true_lathe: True_
) -> None:
    shop = shop_of("550 W belts", {'elements = ["v-belt"]': 'elements = ["v-belt"]'})
    lathe = true_lathe(shop=shop, chance=np.random.default_rng(1))
    position = shop.lathe.drive.positions[0]
    readings = [lathe.stall(cut_of(diameter=60.0, speed=115.0), position)]
    found = learn(shop, readings)
    assert of(found, Assumption.BREAKDOWN).missing == 1
    helped = of(found, RESERVE).help
    assert helped is not None
    assert helped.further is Further.WATTS


# ------------------------------------------------------- readings that say nothing on this lathe


@pytest.mark.parametrize(
    ("lathe", "reading", "message"),
    [
        ("750 W inverter", "droop", "does not fall with its load by a known law; read watts"),
        ("250 W brushed DC", "droop at half", "the knob is not fully up"),
        ("550 W belts", "small droop", "no more than the tachometer may be off"),
        ("550 W belts", "strange droop", "no drive position of that name runs 3000 rpm"),
        ("750 W inverter", "fast stall", "above its base speed"),
        ("750 W inverter", "stall anywhere", "in more than one drive position; add position = "),
        ("750 W inverter", "nylon", "no force of nylon is published"),
        ("750 W inverter", "faint watts", "no more than the meter may be off"),
    ],
)
def test_a_reading_that_can_say_nothing_is_refused_with_the_way_out(
    shop_of: ShopOf, cut_of: CutOf, lathe: str, reading: str, message: str
) -> None:
    cut, slow = cut_of(), cut_of(speed=150.0)
    readings: dict[str, ShopReading] = {
        "droop": DroopReading(date=DATE, cut=cut, idle_speed=560.0, position="low"),
        "droop at half": DroopReading(date=DATE, cut=cut, idle_speed=700.0),
        "small droop": DroopReading(date=DATE, cut=replace(cut, speed=561.0), idle_speed=562.0),
        "strange droop": DroopReading(date=DATE, cut=replace(cut, speed=2900.0), idle_speed=3000.0),
        "fast stall": StallReading(date=DATE, cut=replace(cut, speed=900.0), position="low"),
        "stall anywhere": StallReading(date=DATE, cut=slow),
        "nylon": WattsReading(date=DATE, cut=cut_of("nylon"), idle_power=100.0, cut_power=300.0),
        "faint watts": WattsReading(date=DATE, cut=cut, idle_power=150.0, cut_power=151.0),
    }
    good = WattsReading(date=DATE, cut=cut, idle_power=100.0, cut_power=300.0)
    with pytest.raises(RefusedReadingsError) as caught:
        learn(shop_of(lathe), [good, readings[reading]])
    assert message in str(caught.value)
    assert [one for one, _ in caught.value.refused] == [readings[reading]]
    assert str(caught.value).startswith("the ")
    assert len(str(caught.value).splitlines()) == 1
