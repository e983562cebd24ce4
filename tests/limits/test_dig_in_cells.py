"""When a cut digs in, cell by cell: how much it swallows, what gives, how far it is carried."""

from collections.abc import Callable
from dataclasses import replace
from math import inf, isnan, pi

import pytest

from chartgen.limits.cut import Cut, recommended
from chartgen.limits.dig_in import Gives, chuck_inertia
from chartgen.limits.window import Windows
from chartgen.model.lathe import Chuck
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.reference.tables import load_material

ShopOf = Callable[..., Shop]
Held = Callable[[Shop], Shop]
# Memory: mass and bore of a chuck of 125 mm; rotor for each kW. Allowances: what breaks the
# edge over the high side at its largest feed, turns to stop in, yield of a blade.
MASS, BORE, ROTOR = 5.4, 30.0, 0.002
OVERLOAD, TURNS, YIELD_CARRIER = 2.5, 0.5, 1200.0


def cell(shop: Shop, material: Material, blade: int, diameter: float) -> tuple[Windows, Cut]:
    found, cut = recommended(shop, material=material, blade=shop.blades[blade], diameter=diameter)
    assert found.has_window[0, blade, 0]
    return found, cut


# The example's 750 W inverter, geared 2800 to 2500 in its high position.
@pytest.mark.parametrize("collet", [False, True])
@pytest.mark.parametrize("diameter", [12.0, 25.0, 55.0])
def test_the_slack_is_what_the_weakest_part_bears_less_the_feed(
    example: Shop, in_a_collet: Held, mild_steel: Material, diameter: float, *, collet: bool
) -> None:
    shop = in_a_collet(example) if collet else example
    found, cut = cell(shop, mild_steel, 0, diameter)
    ratio = cut.position.motor_ratio
    assert ratio == 2800.0 / {"high": 2500.0, "low": 1000.0}[cut.position.name]
    omega = 2.0 * pi * cut.spindle_speed / 60.0
    chuck = MASS * (62.5**2 + 15.0**2) / 2.0 * 1e-6
    inertia = chuck + ROTOR * 0.750 * ratio**2
    energy = inertia * omega**2 / 2.0
    lost = 0.5 * 24_000.0 * (cut.spindle_speed / 5500.0) ** 2
    constant = 1780.0 * 2.0 * 1.3
    forces = {
        Gives.SPINDLE: (cut.torque_stall + energy / (2.0 * pi * TURNS)) * 2000.0 / diameter,
        Gives.GRIP: inf if collet else 0.10 * (12_000.0 - lost),
        Gives.BLADE: YIELD_CARRIER * (1.6 * 26.0**2 / 6.0) / 32.0,
        # [TG-6]: largest feed 0.15 at 2 mm; a quarter over the expected force there.
        Gives.EDGE: OVERLOAD * 1.25 * constant * 0.15**0.83,
    }
    weakest = min(forces, key=lambda part: forces[part])
    thickest = (forces[weakest] / constant) ** (1.0 / 0.83)
    dig_in = found.dig_in
    assert int(dig_in.gives[0, 0, 0]) == weakest
    assert dig_in.slack[0, 0, 0] == pytest.approx(thickest - cut.feed)
    torque = constant * cut.feed**0.83 * diameter / 2000.0
    assert dig_in.carried_turns[0, 0, 0] == pytest.approx(energy / (2.0 * pi * torque))


def test_each_part_is_the_first_to_give_somewhere(
    shop_of: ShopOf, in_a_collet: Held, example: Shop, mild_steel: Material
) -> None:
    def gives(shop: Shop, blade: int, diameter: float) -> Gives:
        found, _ = cell(shop, mild_steel, blade, diameter)
        return Gives(int(found.dig_in.gives[0, blade, 0]))

    slow = shop_of("250 W brushed DC")
    fast = in_a_collet(example)
    weak = replace(example.blades[0], height=8.0, projection=9.0)
    assert gives(slow, 2, 25.0) is Gives.SPINDLE
    assert gives(example, 0, 12.0) is Gives.GRIP
    assert gives(replace(fast, blades=(weak,)), 0, 12.0) is Gives.BLADE
    assert gives(fast, 0, 12.0) is Gives.EDGE


# Carried turns grow from a few hundredths at a crawl to several above 1200 rev/min.
def test_a_fast_small_bar_is_carried_on_for_turns_and_a_slow_thick_one_is_not(
    example: Shop, mild_steel: Material
) -> None:
    fast, fast_cut = cell(example, mild_steel, 0, 10.0)
    slow, slow_cut = cell(example, mild_steel, 2, 30.0)
    assert fast_cut.spindle_speed > 1200.0
    assert slow_cut.spindle_speed < 330.0
    assert fast.dig_in.carried_turns[0, 0, 0] > 1.0
    assert slow.dig_in.carried_turns[0, 2, 0] < 0.5


# Memory: 80 mm 2.0 kg bored 16; 100 mm 3.4 kg bored 20; 250 mm 28 kg bored 75.
@pytest.mark.parametrize(
    ("size", "mass", "outside", "bore", "scale"),
    [
        (80.0, 2.0, 80.0, 16.0, 1.0),
        (63.0, 2.0, 80.0, 16.0, (63.0 / 80.0) ** 4),
        (90.0, 3.4, 100.0, 20.0, 1.0),
        (250.0, 28.0, 250.0, 75.0, 1.0),
        (315.0, 28.0, 250.0, 75.0, (315.0 / 250.0) ** 4),
    ],
)
def test_a_chuck_is_a_ring_of_the_next_larger_body_or_scaled_outside_the_table(
    size: float, mass: float, outside: float, bore: float, scale: float
) -> None:
    ring = mass * ((outside / 2.0) ** 2 + (bore / 2.0) ** 2) / 2.0 * 1e-6
    assert chuck_inertia(Chuck(size=size)) == pytest.approx(scale * ring)


def test_a_plastic_without_force_data_has_no_slack_in_numbers_and_nothing_is_said_to_give(
    example: Shop,
) -> None:
    found, _ = cell(example, load_material("nylon"), 0, 25.0)
    assert int(found.dig_in.gives[0, 0, 0]) == Gives.NOTHING
    assert isnan(found.dig_in.slack[0, 0, 0])
    assert isnan(found.dig_in.carried_turns[0, 0, 0])
