"""Without noise, a lathe that is just as assumed reads as expected: no factor is off."""

from collections.abc import Callable
from typing import Any

import pytest

from chartgen.learning.equations import equation_of
from chartgen.learning.unknowns import MARGINAL, MOTOR, STALL, unknowns_of
from chartgen.model.readings import CutReading, KnownCut
from chartgen.model.shop import Shop
from chartgen.reference.tables import load_material

ShopOf = Callable[..., Shop]
CutOf = Callable[..., KnownCut]
MakeTrue = Callable[..., Any]
INPUT = {'power_is = "shaft"': 'power_is = "input"'}
# The no-load speed of each motor: synchronous, or 1.2 times the base speed of a brushed one.
DROOPS = {"550 W belts": 1500.0, "2.2 kW geared": 1500.0, "250 W brushed DC": 2400.0}
LATHES = [*DROOPS, "750 W inverter", "1.1 kW brushless"]


class NoChance:
    """A source of chance that always gives the middle."""

    def normal(self, middle: float, _spread: float) -> float:
        return middle


def readings_of(shop: Shop, lathe: str, cut_of: CutOf, true_lathe: MakeTrue) -> list[CutReading]:
    marginal = unknowns_of(shop, ())[MARGINAL].assumed
    exact = true_lathe(shop=shop, chance=NoChance(), marginal=marginal)
    slowest, fastest = shop.lathe.drive.positions[0], shop.lathe.drive.positions[-1]
    speed = min(200.0, slowest.fastest)
    readings = [exact.watts(cut_of()), exact.stall(cut_of(diameter=50.0, speed=speed), slowest)]
    if lathe in DROOPS:
        readings.append(exact.droop(cut_of(), fastest, DROOPS[lathe]))
    return readings


@pytest.mark.parametrize("exchange", [{}, INPUT], ids=["shaft", "input"])
@pytest.mark.parametrize("lathe", LATHES)
def test_the_engines_own_forward_model_says_nothing_new(
    shop_of: ShopOf, cut_of: CutOf, true_lathe: MakeTrue, lathe: str, exchange: dict[str, str]
) -> None:
    shop = shop_of(lathe, exchange)
    unknowns = unknowns_of(shop, (load_material("mild-steel"),))
    assert (MOTOR in unknowns) is bool(exchange)
    assert STALL in unknowns
    for reading in readings_of(shop, lathe, cut_of, true_lathe):
        equation = equation_of(reading, shop, unknowns)
        assert equation.says == pytest.approx(0.0, abs=1e-9), reading
        assert set(equation.weights) <= set(unknowns)
        assert 0.0 < equation.spread < 0.5


@pytest.mark.parametrize("error", [0.02, 0.4])
def test_an_error_the_owner_states_counts_for_the_default(
    shop_of: ShopOf,
    cut_of: CutOf,
    true_lathe: MakeTrue,
    error: float,
) -> None:
    shop = shop_of("750 W inverter")
    unknowns = unknowns_of(shop, (load_material("mild-steel"),))
    exact = true_lathe(shop=shop, chance=NoChance())
    usual = equation_of(exact.watts(cut_of()), shop, unknowns)
    stated = equation_of(exact.watts(cut_of(feed_error=error)), shop, unknowns)
    assert (stated.spread > usual.spread) is (error > 0.15)
