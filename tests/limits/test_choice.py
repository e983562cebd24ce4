"""The two-stage choice: which speed is taken, what gives way first, and what is left."""

from collections.abc import Callable
from dataclasses import replace
from math import pi

import pytest

from chartgen.limits.cut import Cut, Side, assess, recommended
from chartgen.limits.reasons import Reason
from chartgen.limits.run import windows
from chartgen.limits.way_out import SAW
from chartgen.limits.window import Verdict, Windows
from chartgen.model.material import Material
from chartgen.model.shop import Feeding, LengthUnits, Shop
from chartgen.reference.tables import load_material

ShopOf = Callable[..., Shop]
Held = Callable[[Shop], Shop]
BY_POWER = {"[print]": '[print]\nfeeding = "power"'}


def cell(
    shop: Shop, material: Material, blade: str, diameter: float, bore: float = 0.0
) -> tuple[Windows, Cut, tuple[int, int, int]]:
    (tool,) = (b for b in shop.blades if b.name == blade)
    found, cut = recommended(shop, material=material, blade=tool, diameter=diameter, bore=bore)
    return found, cut, (0, shop.blades.index(tool), 0)


# Enough torque everywhere: the start speed alone decides, and the nearest step in *ratio*.
@pytest.mark.parametrize(
    ("start", "step"),
    [(1180.0, 1180.0), (930.0, 755.0), (960.0, 1180.0), (600.0, 503.0), (630.0, 755.0)],
)
def test_a_stepped_lathe_takes_the_step_nearest_in_ratio(
    shop_of: ShopOf, mild_steel: Material, start: float, step: float
) -> None:
    shop = shop_of("2.2 kW geared", {'power = "2.2 kW"': 'power = "9 kW"'})
    diameter = 1000.0 * 100.0 / (pi * start)
    _, cut, _ = cell(shop, mild_steel, "2 coated", diameter)
    assert cut.spindle_speed == step


def test_a_step_nearest_in_ratio_but_over_one_point_three_times_the_start_is_not_taken(
    shop_of: ShopOf, mild_steel: Material
) -> None:
    shop = shop_of("2.2 kW geared", {'"755 rpm", ': ""})
    diameter = 1000.0 * 100.0 / (pi * 850.0)
    assert 1180.0 / 850.0 < 850.0 / 503.0
    _, cut, _ = cell(shop, mild_steel, "2 coated", diameter)
    assert cut.spindle_speed == 503.0


def test_where_torque_is_short_a_lower_position_is_taken(
    example: Shop, mild_steel: Material
) -> None:
    _, small, _ = cell(example, mild_steel, "2.0 carbide", 25.0)
    _, large, _ = cell(example, mild_steel, "2.0 carbide", 50.0)
    assert (small.position.name, large.position.name) == ("high", "low")


def test_feed_gives_way_to_its_floor_before_the_soft_floor_of_speed_is_passed(
    example: Shop, in_a_collet: Held, mild_steel: Material
) -> None:
    shop = in_a_collet(example)
    found, cut, index = cell(shop, mild_steel, "3.0 carbide", 25.0)
    assert not cut.is_under_soft_floor
    assert cut.feed < 0.8 * 0.06
    assert found.verdict(index) is Verdict.TIGHT
    assert not found.is_slow[index]
    # At a slower speed, under the soft floor, the whole start feed would have been possible.
    slower = assess(
        shop,
        material=mild_steel,
        blade=cut.blade,
        diameter=25.0,
        speed=600.0,
        feed=0.06,
    )
    assert slower.side is Side.INSIDE
    assert slower.is_under_soft_floor


def test_a_cell_under_the_soft_floor_is_a_window_marked_slow(
    shop_of: ShopOf, in_a_collet: Held, mild_steel: Material
) -> None:
    shop = in_a_collet(shop_of("250 W brushed DC"))
    found, cut, index = cell(shop, mild_steel, "2 coated", 12.0)
    assert cut.is_under_soft_floor
    assert found.has_window[index]
    assert found.is_slow[index]


def test_carbide_far_under_its_start_speed_by_choice_is_marked_slow(
    shop_of: ShopOf, aluminium: Material
) -> None:
    shop = shop_of("550 W belts", {'power = "550 W"': 'power = "120 W"'})
    found, cut, index = cell(shop, aluminium, "2 polished", 40.0)
    assert cut.soft_floor_speed == 0.0
    assert cut.cutting_speed < 0.4 * cut.start_speed
    assert found.is_slow[index]


def test_carbide_held_back_only_by_the_fastest_spindle_is_not_marked_slow(
    shop_of: ShopOf, aluminium: Material
) -> None:
    shop = shop_of("2.2 kW geared", {'"2000 rpm"]': '"1180 rpm"]', '"1180 rpm", ': ""})
    found, cut, index = cell(shop, aluminium, "2 polished", 16.0)
    assert cut.spindle_speed == 1180.0
    assert cut.cutting_speed < 0.4 * cut.start_speed
    assert not found.is_slow[index]


def test_hss_far_under_its_start_speed_is_never_marked_slow(
    shop_of: ShopOf, mild_steel: Material
) -> None:
    shop = shop_of(
        "2.2 kW geared",
        {
            "elements": "# elements",
            'speeds = ["70 rpm", ': "speeds = [",
            '"115 rpm", "190 rpm", "300 rpm", "503 rpm", ': '"30 rpm", ',
        },
    )
    found, cut, index = cell(shop, mild_steel, "1.6 HSS", 40.0)
    assert cut.cutting_speed < 0.4 * cut.start_speed
    assert found.has_window[index]
    assert not found.is_slow[index]


def test_where_no_feed_fits_the_way_out_is_an_owned_blade_that_has_a_window(
    example: Shop, mild_steel: Material
) -> None:
    found, cut, index = cell(example, mild_steel, "1.6 HSS", 50.0)
    assert cut.side is Side.NO_WINDOW
    other = int(found.way_out[index])
    assert other != SAW
    assert found.has_window[0, other, 0]


def test_a_roomy_blade_is_the_way_out_before_a_tight_one_of_the_very_width(
    example: Shop, mild_steel: Material
) -> None:
    short = replace(example.blades[1], name="short", projection=5.0)
    shop = replace(example, blades=(short, *example.blades))
    found, _, index = cell(shop, mild_steel, "short", 25.0)
    verdicts = [found.verdict((0, b, 0)) for b in range(4)]
    assert verdicts == [Verdict.NO_WINDOW, Verdict.INSIDE, Verdict.TIGHT, Verdict.INSIDE]
    assert shop.blades[2].insert_width == short.insert_width
    assert found.way_out[index] == 1  # the roomy one nearest in width: 2.0, not 1.6


def test_where_no_blade_has_a_window_only_the_saw_is_left(
    example: Shop, mild_steel: Material
) -> None:
    found = windows(example, materials=[mild_steel], diameters=[100.0])
    assert not found.has_window.any()
    assert (found.way_out == SAW).all()


def test_a_cell_with_a_window_needs_no_way_out(example: Shop, mild_steel: Material) -> None:
    found = windows(example, materials=[mild_steel], diameters=[12.0, 50.0])
    assert (found.way_out[found.has_window] == SAW).all()


def test_a_spindle_whose_slowest_speed_is_too_fast_leaves_no_window(
    shop_of: ShopOf, stainless: Material
) -> None:
    shop = shop_of("550 W belts", {'"115 rpm", "195 rpm", "331 rpm", ': ""})
    found, cut, index = cell(shop, stainless, "1.6 HSS", 25.0)
    assert cut.side is Side.NO_WINDOW
    assert found.floor_reason(index) is Reason.SLOWEST_SPINDLE
    assert found.ceiling_reason(index) is Reason.EDGE_SPEED


def test_power_feeding_picks_only_feeds_of_the_gearbox(
    shop_of: ShopOf, mild_steel: Material, stainless: Material
) -> None:
    shop = shop_of("2.2 kW geared", BY_POWER)
    found = windows(shop, materials=[mild_steel, stainless], diameters=[10.0, 20.0, 30.0])
    assert found.has_window.any()
    assert set(found.feed[found.has_window].tolist()) <= {0.02, 0.03, 0.045, 0.06, 0.09}
    assert not found.wants_power_feed.any()


def test_a_gearbox_whose_feeds_are_all_too_fine_leaves_no_window_and_says_so(
    shop_of: ShopOf, mild_steel: Material
) -> None:
    feeds = '"0.02 mm/rev", "0.03 mm/rev", "0.045 mm/rev", "0.06 mm/rev", "0.09 mm/rev"'
    shop = shop_of("2.2 kW geared", BY_POWER | {feeds: '"0.005 mm/rev", "0.5 mm/rev"'})
    found, cut, index = cell(shop, mild_steel, "2 coated", 25.0)
    assert cut.side is Side.NO_WINDOW
    assert found.ceiling_reason(index) is Reason.GEARBOX_FEED


def test_a_gearbox_feed_between_floor_and_ceiling_is_used_though_it_is_over_the_start_feed(
    shop_of: ShopOf, mild_steel: Material
) -> None:
    feeds = '"0.02 mm/rev", "0.03 mm/rev", "0.045 mm/rev", "0.06 mm/rev", "0.09 mm/rev"'
    blunt = {'edge = "thin-coated"\ninsert': 'edge = "thin-coated"\nedge_radius = "60 um"\ninsert'}
    shop = shop_of("2.2 kW geared", BY_POWER | blunt | {feeds: '"0.02 mm/rev", "0.055 mm/rev"'})
    by_hand = replace(shop, request=replace(shop.request, feeding=Feeding.HAND))
    _, cut, _ = cell(by_hand, mild_steel, "2 coated", 25.0)
    lathe_can = assess(
        shop, material=mild_steel, blade=cut.blade, diameter=25.0, speed=1180.0, feed=0.055
    )
    assert lathe_can.side is Side.INSIDE
    found, cut, index = cell(shop, mild_steel, "2 coated", 25.0)
    assert found.has_window[index]
    assert cut.feed == 0.055


def test_a_tube_is_cut_with_continuous_torque_however_short_the_cut(
    example: Shop, mild_steel: Material
) -> None:
    _, tube, _ = cell(example, mild_steel, "2.0 carbide", 30.0, bore=26.0)
    assert tube.time < 0.1
    assert not tube.is_one_cut
    assert tube.torque_available == tube.torque_continuous
    ceilings = {limit.reason: limit.feed for limit in tube.ceilings}
    assert ceilings[Reason.TORQUE_ONE_CUT] == float("inf")
    assert ceilings[Reason.TORQUE_CONTINUOUS] < ceilings[Reason.STALL]


def test_a_solid_cut_over_three_minutes_is_cut_with_continuous_torque(
    example: Shop, mild_steel: Material
) -> None:
    # High enough to bear more than the motor can turn, so far out.
    blade = replace(example.blades[2], projection=60.0, height=40.0)
    shop = replace(example, blades=(blade,))
    _, short, _ = cell(shop, mild_steel, "1.6 HSS", 40.0)
    _, long, _ = cell(shop, mild_steel, "1.6 HSS", 50.0)
    assert short.time == pytest.approx(40.0 / (2.0 * short.feed * short.spindle_speed))
    assert (short.time < 3.0, short.is_one_cut) == (True, True)
    assert (long.time > 3.0, long.is_one_cut) == (True, False)
    assert long.torque_available == long.torque_continuous < long.torque_one_cut


# A feed rounded down, or down to a gearbox feed, makes a longer cut than the one weighed up.
@pytest.mark.parametrize("exchange", [{}, BY_POWER], ids=["by hand", "by power"])
def test_a_feed_rounded_down_past_three_minutes_keeps_under_the_ceiling_of_a_long_cut(
    shop_of: ShopOf, exchange: dict[str, str]
) -> None:
    _, cut, _ = cell(shop_of("550 W belts", exchange), load_material("c45"), "3 coated", 60.0)
    assert cut.feed <= cut.ceiling.feed
    assert cut.side is not Side.TOO_BOLD


def test_the_blade_must_reach_a_millimetre_past_the_depth(
    example: Shop, mild_steel: Material
) -> None:
    found = windows(example, materials=[mild_steel], diameters=[30.0, 30.01])
    assert example.blades[2].projection == 16.0
    assert found.has_window[0, 2].tolist() == [True, False]
    assert found.ceiling_reason((0, 2, 1)) is Reason.REACH
    assert found.ceiling[0, 2, 1] == 0.0


def test_a_slot_in_steel_deeper_than_eight_widths_is_tight_and_in_brass_is_not(
    shop_of: ShopOf, in_a_collet: Held, mild_steel: Material, stainless: Material
) -> None:
    shop = in_a_collet(shop_of("2.2 kW geared", {'power = "2.2 kW"': 'power = "9 kW"'}))
    some = [mild_steel, stainless, load_material("free-cutting-brass")]
    found = windows(shop, materials=some, diameters=[31.0, 33.0])
    assert found.is_tight[:, 0].tolist() == [[False, True], [False, True], [False, False]]


def test_a_handle_that_would_turn_under_twice_a_minute_calls_for_power_feed(
    shop_of: ShopOf, stainless: Material
) -> None:
    long_and_high = {
        'projection = "30 mm"': 'projection = "80 mm"',
        'height = "12 mm"': 'height = "60 mm"',
    }
    shop = shop_of("2.2 kW geared", long_and_high)
    found = windows(shop, materials=[stainless], diameters=[20.0, 70.0])
    turns = found.feed[0, 2] * found.spindle_speed[0, 2] / 2.0
    assert turns[1] < 2.0 < turns[0]
    assert found.wants_power_feed[0, 2].tolist() == [False, True]


def test_a_shop_in_inches_gets_feeds_in_whole_tenths_of_a_thousandth(
    example: Shop, mild_steel: Material
) -> None:
    shop = replace(example, request=replace(example.request, units=LengthUnits.INCH))
    found = windows(shop, materials=[mild_steel], diameters=[12.0, 25.0])
    tenths = found.feed[found.has_window] / 0.00254
    assert tenths == pytest.approx([round(t) for t in tenths])
