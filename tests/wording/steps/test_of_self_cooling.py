"""The rule for a motor that cools itself is told with its source, and only where it holds."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen import inquiry
from chartgen.model.motor import SelfCooling
from chartgen.model.shop import Shop
from chartgen.reference.tables import load_bibliography
from chartgen.wording.doubts import plate_lines

ShopOf = Callable[..., Shop]


def source_of_torque(shop: Shop) -> str:
    request = inquiry.cut_request(shop, material="mild-steel", tool="A", diameter="25 mm")
    steps = inquiry.explain_cell(shop, request).explanation.steps
    (source,) = [step.source for step in steps if step.title == "At the spindle"]
    return source


def with_rule(shop: Shop, rule: SelfCooling) -> Shop:
    motor = replace(shop.lathe.motor, self_cooling=rule)
    return replace(shop, lathe=replace(shop.lathe, motor=motor))


@pytest.mark.parametrize(
    ("rule", "sources"),
    [
        (SelfCooling.CAUTIOUS, {"DRIVE-A", "DRIVE-C"}),
        (SelfCooling.FULL_FROM_HALF_SPEED, {"DRIVE-A"}),
        (SelfCooling.NONE_UNDER_HALF_SPEED, {"DRIVE-B"}),
        (SelfCooling.FULL_AT_BASE_SPEED, {"DRIVE-C"}),
    ],
)
def test_the_rule_in_force_is_told_with_its_source(
    shop_of: ShopOf, rule: SelfCooling, sources: set[str]
) -> None:
    shop = with_rule(shop_of("750 W inverter"), rule)
    said = source_of_torque(shop)
    assert {key for key in load_bibliography() if f"[{key}]" in said} == sources
    is_default = rule is SelfCooling.CAUTIOUS
    assert (f"self-cooling {rule.value}" in plate_lines(shop)[0]) is not is_default


def test_a_motor_with_a_fan_of_its_own_or_on_the_line_has_no_such_rule(shop_of: ShopOf) -> None:
    fan = {'overload = "150 %"': "forced_cooling = true"}
    assert "DRIVE" not in source_of_torque(shop_of("750 W inverter", fan))
    assert "forced cooling" in plate_lines(shop_of("750 W inverter", fan))[0]
    assert "DRIVE" not in source_of_torque(shop_of("550 W belts"))
