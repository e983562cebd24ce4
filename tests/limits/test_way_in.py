"""The way in: laws that hold for every shop, and some cuts worked by hand."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from itertools import pairwise
from math import pi, sqrt

import numpy as np
import pytest

from chartgen.limits.allowances import allowances_for
from chartgen.limits.changing_up import CHANGE_STEP, LEAST_CHANGE, LEAST_GAIN, MOST_CHANGES
from chartgen.limits.force import high_force, nominal_force
from chartgen.limits.run import windows
from chartgen.limits.spindle import Duration, make_spindle
from chartgen.limits.way_in import WayIn, way_in
from chartgen.limits.window import Windows
from chartgen.model.material import Material
from chartgen.model.shop import Feeding, Shop
from chartgen.physics.centre import CentreFeedRule
from chartgen.reference.tables import load_material

ShopOf = Callable[..., Shop]
LATHES = ("250 W brushed DC", "550 W belts", "750 W inverter", "1.1 kW brushless", "measured")
KEYS = (
    "mild-steel",
    "stainless-304",
    "grey-iron-250",
    "aluminium-6082",
    "titanium-6al-4v",
    "nylon",
)
SIZES = (6.0, 10.0, 16.0, 25.0, 40.0, 60.0)
SLIP = 1e-6


def all_ways(shop: Shop) -> Iterator[tuple[Windows, tuple[int, int, int], WayIn]]:
    materials = [load_material(key) for key in KEYS]
    found = windows(shop, materials=materials, diameters=SIZES)
    for m, b, d in np.argwhere(found.has_window).tolist():
        yield found, (m, b, d), way_in(shop, found, (m, b, d))


@pytest.fixture(scope="module", params=LATHES)
def shop(request: pytest.FixtureRequest, shop_of: ShopOf) -> Shop:
    return shop_of(request.param)


def test_changes_are_few_further_in_each_time_and_well_worth_a_hand(shop: Shop) -> None:
    step = CHANGE_STEP[shop.request.units]
    for _, _, way in all_ways(shop):
        assert len(way.changes) <= MOST_CHANGES
        places = [way.diameter, *(change.diameter for change in way.changes)]
        speeds = [way.spindle_speed, *(change.spindle_speed for change in way.changes)]
        assert all(outer > inner >= LEAST_CHANGE for outer, inner in pairwise(places))
        assert all(fast >= LEAST_GAIN * slow - SLIP for slow, fast in pairwise(speeds))
        assert all(place / step == pytest.approx(round(place / step)) for place in places[1:])


def test_a_change_is_a_speed_the_dial_can_be_set_to_in_the_same_position(shop: Shop) -> None:
    for _, _, way in all_ways(shop):
        assert not (way.position.is_single_speed and way.changes)
        for change in way.changes:
            turns = change.spindle_speed / way.position.dial_step
            assert turns == pytest.approx(round(turns))
            assert change.spindle_speed <= way.position.fastest


def test_no_change_passes_chuck_lathe_or_hand_nor_the_surface_speed_of_the_start(
    shop: Shop,
) -> None:
    allowances = allowances_for(shop)
    travel = shop.lathe.cross_slide.travel_per_turn
    for _, _, way in all_ways(shop):
        for change in way.changes:
            assert change.spindle_speed <= shop.lathe.drive.fastest_spindle
            assert change.spindle_speed <= (shop.lathe.chuck.marked_speed or np.inf)
            turns = change.spindle_speed * way.feed / travel
            assert turns <= allowances.handle_turns_most + SLIP
            surface = change.spindle_speed * change.diameter
            assert surface <= way.spindle_speed * way.diameter * (1.0 + SLIP)


def test_the_drive_gives_the_torque_of_every_change(shop: Shop) -> None:
    allowances = allowances_for(shop)
    spindle = make_spindle(shop.lathe, allowances)
    for found, (m, b, _), way in all_ways(shop):
        force = high_force(found.grid, np.full((1, 1, 1, 1), way.feed), allowances)[m, b, 0, 0]
        minutes = way.diameter / 2.0 / (way.feed * way.spindle_speed)
        short = minutes <= allowances.one_cut_minutes * (1.0 + SLIP)
        for change in way.changes:
            needed = force * change.diameter / 2000.0
            at = np.array([change.spindle_speed])
            for duration in (
                Duration.ONE_CUT if short else Duration.CONTINUOUS,
                Duration.STALL,
            ):
                assert needed <= spindle.torque(way.position, at, duration)[0] * (1.0 + SLIP)


def test_changing_up_never_costs_time_nor_makes_more_of_the_cut_rough(shop: Shop) -> None:
    for _, _, way in all_ways(shop):
        assert way.time_with_changes <= way.time * (1.0 + SLIP)
        assert bool(way.changes) == (way.time_with_changes < way.time * (1.0 - SLIP))
        if way.rough_below is not None:
            assert way.rough_below_with_changes is not None
            assert way.rough_below_with_changes <= way.rough_below + SLIP


def test_the_eased_feed_lies_between_the_least_and_the_full_feed(shop: Shop) -> None:
    for found, cell, way in all_ways(shop):
        assert found.floor[cell] - SLIP <= way.eased_feed <= way.feed + SLIP
        assert way.eased_to_least == (way.feed / 2.0 < found.floor[cell])


def test_a_bar_behind_the_spindle_that_whips_holds_the_changes_back(
    example: Shop, mild_steel: Material
) -> None:
    free = windows(example, materials=[mild_steel], diameters=[25.0])
    assert way_in(example, free, (0, 0, 0)).changes
    whipping = replace(example, work=replace(example.work, bar_behind=1000.0))
    found = windows(whipping, materials=[mild_steel], diameters=[25.0])
    cap = found.speed_cap[0, 0, 0]
    assert cap < 2000.0
    for change in way_in(whipping, found, (0, 0, 0)).changes:
        assert change.spindle_speed <= cap


# 1270 rev/min at 25 mm are 99.7 m/min; 60 m/min are left at 25 x 60 / 99.7 = 15.04 mm.
def test_mild_steel_of_25_mm_gets_rough_inside_15_mm(example: Shop, mild_steel: Material) -> None:
    found = windows(example, materials=[mild_steel], diameters=[25.0])
    way = way_in(example, found, (0, 0, 0))
    assert (way.spindle_speed, way.feed) == (1270.0, 0.05)
    surface = pi * 25.0 * 1270.0 / 1000.0
    assert way.rough_below == pytest.approx(25.0 * 60.0 / surface)
    assert way.changes[0].diameter == 15.0


# 11.5 mm of radius at 0.05, the last 1 mm at 0.028: (11.5 / 0.05 + 1 / 0.028) turns.
def test_the_time_at_one_speed_is_that_of_both_feeds(example: Shop, mild_steel: Material) -> None:
    found = windows(example, materials=[mild_steel], diameters=[25.0])
    way = way_in(example, found, (0, 0, 0))
    assert way.eased_feed == pytest.approx(0.028)
    assert way.time == pytest.approx((11.5 / 0.05 + 1.0 / 0.028) / 1270.0)
    ends = [change.diameter for change in way.changes]
    (change,) = way.changes
    outside = (25.0 - ends[0]) / 2.0 / 0.05 / 1270.0
    inside = ((ends[0] - 2.0) / 2.0 / 0.05 + 1.0 / 0.028) / change.spindle_speed
    assert way.time_with_changes == pytest.approx(outside + inside)


def test_a_material_that_builds_nothing_up_has_no_rough_diameter(example: Shop) -> None:
    iron = load_material("grey-iron-250")
    found = windows(example, materials=[iron], diameters=[25.0])
    way = way_in(example, found, (0, 0, 0))
    assert way.rough_below is None
    assert way.rough_below_with_changes is None


def test_a_start_under_the_soft_floor_is_rough_all_the_way(
    example: Shop, mild_steel: Material
) -> None:
    found = windows(example, materials=[mild_steel], diameters=[6.0])
    way = way_in(example, found, (0, 0, 0))
    # 2500 rev/min at 6 mm are 47 m/min, under 60.
    assert way.rough_below == 6.0


def test_belts_are_not_changed_in_a_cut(shop_of: ShopOf, mild_steel: Material) -> None:
    shop = shop_of("550 W belts")
    found = windows(shop, materials=[mild_steel], diameters=[25.0])
    way = way_in(shop, found, (0, 0, 0))
    assert way.changes == ()
    assert way.time_with_changes == way.time


# The twist-off of a core: 2.71 times the root of force over strength, while that is more than
# what bends off. Brass: it goes inside 2 mm, so with the eased feed.
def test_a_core_inside_the_easing_diameter_breaks_at_the_eased_feed(example: Shop) -> None:
    brass = load_material("free-cutting-brass")
    found = windows(example, materials=[brass], diameters=[25.0])
    way = way_in(example, found, (0, 0, 0))
    at = np.full((1, 1, 1, 1), way.eased_feed)
    force = float(nominal_force(found.grid, at)[0, 0, 0, 0])
    strength = brass.tensile_strength.value
    twisted = 2.71 * sqrt(force / strength)
    bent = (32.0 * force * 1.0 / (pi * strength)) ** (1 / 3)
    assert way.pip == pytest.approx(max(twisted, bent), rel=2e-3)
    assert way.pip is not None
    assert way.pip < 2.0


def test_a_core_outside_the_easing_diameter_breaks_at_the_full_feed(
    example: Shop, mild_steel: Material
) -> None:
    found = windows(example, materials=[mild_steel], diameters=[25.0])
    way = way_in(example, found, (0, 0, 0))
    at = np.full((1, 1, 1, 1), way.feed)
    force = float(nominal_force(found.grid, at)[0, 0, 0, 0])
    assert way.pip == pytest.approx(
        2.71 * sqrt(force / mild_steel.tensile_strength.value), rel=2e-3
    )
    assert way.pip is not None
    assert way.pip > 2.0


def test_without_force_data_there_is_no_pip(example: Shop) -> None:
    nylon = load_material("nylon")
    assert nylon.force is None
    found = windows(example, materials=[nylon], diameters=[25.0])
    assert way_in(example, found, (0, 0, 0)).pip is None


def test_another_rule_gives_another_feed(example: Shop, aluminium: Material) -> None:
    blade = 2
    found = windows(example, materials=[aluminium], diameters=[20.0])
    feed = found.feed[0, blade, 0]
    for rule in CentreFeedRule:
        way = way_in(example, found, (0, blade, 0), rule)
        # An HSS edge may be fed so finely that no rule meets its least feed; steps of 0.005.
        assert way.eased_feed == pytest.approx(rule.share * feed, abs=0.0025)
        assert not way.eased_to_least


def test_power_feed_is_eased_to_a_feed_of_the_gearbox(
    shop_of: ShopOf, mild_steel: Material
) -> None:
    shop = shop_of("750 W inverter")
    shop = replace(shop, request=replace(shop.request, feeding=Feeding.POWER))
    found = windows(shop, materials=[mild_steel], diameters=[25.0])
    way = way_in(shop, found, (0, 0, 0))
    assert way.eased_feed in shop.lathe.cross_slide.power_feeds
    assert found.floor[0, 0, 0] <= way.eased_feed <= way.feed


def test_bored_work_and_a_cell_without_window_are_refused(
    example: Shop, mild_steel: Material
) -> None:
    bored = windows(example, materials=[mild_steel], diameters=[25.0], bore=10.0)
    with pytest.raises(ValueError, match=r"^bored work has no centre to cut to$"):
        way_in(example, bored, (0, 0, 0))
    none = windows(example, materials=[mild_steel], diameters=[100.0])
    with pytest.raises(
        ValueError, match=r"^a cell without a window has no cut to follow to the centre$"
    ):
        way_in(example, none, (0, 0, 0))
