"""Cuts that anybody at a small lathe knows: common practice, no source."""

from collections.abc import Callable

import pytest

from chartgen.inquiry import cut_request, try_cut
from chartgen.limits.cut import Side, assess
from chartgen.model.material import Material
from chartgen.model.shop import Shop

ShopOf = Callable[..., Shop]


# Common practice, no source.
@pytest.mark.parametrize(("speed", "diameter"), [("1000 rpm", "1 in"), ("500 rpm", "2 in")])
def test_a_coated_2_mm_blade_in_mild_steel_runs_at_the_usual_speed_and_feed(
    example: Shop, speed: str, diameter: str
) -> None:
    request = cut_request(
        example,
        material="mild-steel",
        tool="2.0 carbide",
        diameter=diameter,
        speed=speed,
        feed="0.05 mm/rev",
    )
    assert try_cut(example, request).cut.side is Side.INSIDE


# Common practice, no source: creeping is what breaks blades.
@pytest.mark.parametrize("feed", ["0.010 mm/rev", "0.015 mm/rev", "0.020 mm/rev"])
def test_creeping_at_125_turns_is_too_timid_because_the_edge_rubs_and_runs_slow(
    example: Shop, feed: str
) -> None:
    request = cut_request(
        example,
        material="mild-steel",
        tool="2.0 carbide",
        diameter="1 in",
        speed="125 rpm",
        feed=feed,
    )
    answer = try_cut(example, request)
    assert answer.cut.side is Side.TOO_TIMID
    assert answer.advice.startswith("Too timid: the feed is ")
    assert "the edge rubs instead of cutting" in answer.advice
    assert "Slow for this edge: 10.0 m/min is under the 60 m/min" in answer.advice


# Common practice, no source: such a lathe stalls there.
def test_a_mini_lathe_cannot_take_that_cut(shop_of: ShopOf, mild_steel: Material) -> None:
    shop = shop_of("250 W brushed DC")
    assert shop.blades[0].name == "2 coated"
    cut = assess(
        shop, material=mild_steel, blade=shop.blades[0], diameter=25.4, speed=1000.0, feed=0.05
    )
    assert cut.side is Side.TOO_BOLD
    assert cut.torque_stall < cut.torque_needed
