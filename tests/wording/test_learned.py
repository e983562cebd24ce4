"""What readings gave, in words that a machinist can follow."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen.learning.decisions import decide
from chartgen.learning.findings import learn
from chartgen.model.readings import DeflectionReading, KnownCut, ShopReading, WattsReading
from chartgen.model.shop import Shop
from chartgen.renderers.learned_text import render_learned
from chartgen.wording.learned import learned_answer, learned_lines

ShopOf = Callable[..., Shop]
DATE = "2026-11-25"
CUT = KnownCut(material="mild-steel", blade="2 coated", diameter=25.0, speed=500.0, feed=0.05)


def watts(more: float, material: str = "mild-steel") -> WattsReading:
    cut = replace(CUT, material=material)
    return WattsReading(date=DATE, cut=cut, idle_power=150.0, cut_power=150.0 + more)


def text(shop: Shop, *readings: ShopReading) -> str:
    return render_learned(learned_lines(decide(shop, learn(shop, readings), replace=False)))


def test_an_unnamed_drive_asks_for_what_would_tell_most(shop_of: ShopOf) -> None:
    shop = shop_of("750 W inverter", {'elements = ["v-belt"]': ""})
    shop = replace(shop, request=replace(shop.request, materials=("mild-steel", "grey-iron-250")))
    told = text(shop, *[watts(270.0)] * 4)
    assert "not concluded: after 4 readings its doubt is 8" in told
    assert "% of what it was; 75 % or less counts as measured." in told
    assert "Would help most, 3 more of it: a cut in " in told
    assert " with a wattmeter, idle and cutting, though not enough by themselves." in told


def test_a_drive_of_named_elements_is_told_to_stay_as_assumed(shop_of: ShopOf) -> None:
    told = text(shop_of("750 W inverter"), *[watts(270.0)] * 4)
    assert "each holds it only together with the cutting force. It stays as assumed." in told


def test_a_cut_that_contradicts_is_named_by_what_was_noted_of_it(shop_of: ShopOf) -> None:
    told = text(shop_of("750 W inverter"), *[watts(270.0)] * 5, watts(500.0, "aluminium-6082"))
    odd = "the watts reading of 2026-11-25 (aluminium-6082, 2 coated, 25 mm, 500 rpm, 0.05 mm/rev)"
    assert f"not concluded: {odd} contradicts the others." in told


def test_a_movement_that_contradicts_is_named(example: Shop) -> None:
    bends = [DeflectionReading(date=DATE, pull=98.0, movement=m) for m in (0.006, 0.0062, 0.0061)]
    odd = DeflectionReading(date=DATE, pull=98.0, movement=0.06)
    told = text(example, *bends, replace(bends[0], movement=0.0059), odd)
    assert "the movement of 0.06 mm under 98 N on 2026-11-25 contradicts the others." in told


def test_readings_past_what_may_be_assumed_conclude_nothing(shop_of: ShopOf) -> None:
    told = text(shop_of("750 W inverter"), *[watts(100.0)] * 4)
    assert "not concluded: 4 readings point past 1.00, the bound of what may be assumed." in told


@pytest.mark.parametrize("count", [1, 3])
def test_the_answer_for_machines_keeps_to_the_findings(shop_of: ShopOf, count: int) -> None:
    shop = shop_of("750 W inverter")
    findings = learn(shop, [watts(270.0)] * count)
    answer = learned_answer(decide(shop, findings, replace=False))["findings"]
    assert [one["key"] for one in answer] == [f.assumption.key for f in findings]
    assert [one["verdict"] for one in answer] == [f.verdict.value for f in findings]
    assert answer[0]["readings_missing"] == 3 - count
    assert (answer[0]["value"] is None) is (count < 3)
