"""Which assumption moves a cell most: both ends of each, made by hand and run again."""

from collections.abc import Callable
from dataclasses import replace
from math import inf, isnan, log, nan

import pytest

from chartgen.limits.run import windows
from chartgen.limits.sensitivity import Outcome, Sensitivity, sensitivities
from chartgen.model.blade import Blade
from chartgen.model.lathe import BarSurface
from chartgen.model.motor import PowerIs
from chartgen.model.shop import Shop
from chartgen.reference.tables import load_material

ShopOf = Callable[..., Shop]
Held = Callable[[Shop], Shop]
# Allowances: chip in the slot, band of the force in thin chips, radius of a coated edge [um],
# N of grip for each N.m on the key.
CONFINED, BAND, COATED, PER_TORQUE = 1.3, 0.35, 30.0, 250.0
End = tuple[float, float, float]
LOST = 10.0


def end(shop: Shop, blade: Blade, material: str, diameter: float, bore: float = 0.0) -> End:
    found = windows(
        shop,
        materials=[load_material(material)],
        diameters=[diameter],
        blades=[blade],
        bore=bore,
    )
    index = (0, 0, 0)
    room = found.ceiling[index] / found.floor[index]
    return float(found.spindle_speed[index]), float(found.feed[index]), float(room)


def told(one: Outcome) -> End:
    return one.spindle_speed, one.feed, one.room


def asked(
    shop: Shop, material: str, blade: int, diameter: float, bore: float = 0.0
) -> dict[str, Sensitivity]:
    found = sensitivities(
        shop,
        material=load_material(material),
        blade=shop.blades[blade],
        diameter=diameter,
        bore=bore,
    )
    by_name = {one.assumption: one for one in found}
    assert len(by_name) == len(found)
    return by_name


def with_chuck(shop: Shop, **changes: object) -> Shop:
    chuck = replace(shop.lathe.chuck, **changes)  # type: ignore[arg-type]
    return replace(shop, lathe=replace(shop.lathe, chuck=chuck))


def with_motor(shop: Shop, power_is: PowerIs) -> Shop:
    motor = replace(shop.lathe.motor, power_is=power_is)
    return replace(shop, lathe=replace(shop.lathe, motor=motor))


def with_efficiency(shop: Shop, efficiency: float) -> Shop:
    drive = replace(shop.lathe.drive, efficiency=efficiency)
    return replace(shop, lathe=replace(shop.lathe, drive=drive))


CELLS = [
    ("550 W belts", "mild-steel", 0, 25.0, 0.0),
    ("750 W inverter", "stainless-304", 1, 20.0, 0.0),
    ("2.2 kW geared", "c45", 2, 16.0, 0.0),
    ("1.1 kW brushless", "aluminium-6082", 3, 40.0, 30.0),
    ("750 W inverter", "nylon", 0, 30.0, 0.0),
    ("measured", "titanium-pure", 0, 30.0, 0.0),
    ("250 W brushed DC", "tool-steel-d2", 1, 30.0, 0.0),
]
each_cell = pytest.mark.parametrize("cell", CELLS, ids=lambda cell: f"{cell[1]} on {cell[0]}")


@each_cell
def test_both_ends_of_the_force_are_its_band_in_thin_chips(
    shop_of: ShopOf, cell: tuple[str, str, int, float, float]
) -> None:
    lathe, material, index, diameter, bore = cell
    shop = shop_of(lathe)
    found = asked(shop, material, index, diameter, bore)
    if load_material(material).force is None:
        assert "cutting force" not in found
        return
    for one, share in ((found["cutting force"].low, -BAND), (found["cutting force"].high, BAND)):
        forced = replace(shop, allowances={"confined_chip": CONFINED * (1.0 + share)})
        by_hand = end(forced, shop.blades[index], material, diameter, bore)
        assert told(one) == pytest.approx(by_hand, nan_ok=True)
        assert one.assumed == f"{100.0 * share:+.0f} %"


def test_the_force_is_that_of_the_shop_file_with_its_own_band(shop_of: ShopOf) -> None:
    own = {"confined_chip": 1.1, "thin_chip_band": 0.2}
    shop = replace(shop_of("550 W belts"), allowances=own)
    found = asked(shop, "mild-steel", 0, 25.0)["cutting force"]
    for one, chip in ((found.low, 1.1 * 0.8), (found.high, 1.1 * 1.2)):
        forced = replace(shop, allowances=own | {"confined_chip": chip})
        assert told(one) == pytest.approx(end(forced, shop.blades[0], "mild-steel", 25.0))
    assert (found.low.assumed, found.high.assumed) == ("-20 %", "+20 %")


@each_cell
def test_both_ends_of_the_edge_are_half_as_keen_and_half_as_blunt_again(
    shop_of: ShopOf, cell: tuple[str, str, int, float, float]
) -> None:
    lathe, material, index, diameter, bore = cell
    measured = replace(shop_of(lathe).blades[index], edge_radius=24.0)
    shop = replace(shop_of(lathe), blades=(measured,))
    found = asked(shop, material, 0, diameter, bore)["edge radius"]
    for one, radius in ((found.low, 16.0), (found.high, 36.0)):
        blade = replace(measured, edge_radius=radius)
        by_hand = end(shop, blade, material, diameter, bore)
        assert told(one) == pytest.approx(by_hand, nan_ok=True)
        assert one.assumed == f"{radius:.0f} µm"


def test_an_edge_that_was_not_measured_is_the_assumed_one(shop_of: ShopOf) -> None:
    found = asked(shop_of("550 W belts"), "mild-steel", 0, 25.0)["edge radius"]
    assert (found.low.assumed, found.high.assumed) == ("20 µm", "45 µm")
    assert COATED / 1.5 == 20.0


# A stated 80 %: a tenth less, a twentieth more; never over the whole, never under the half.
@pytest.mark.parametrize(
    ("stated", "low", "high"), [(0.80, 0.70, 0.85), (0.98, 0.88, 1.0), (0.55, 0.5, 0.6)]
)
def test_both_ends_of_the_drive_are_near_the_stated_efficiency(
    shop_of: ShopOf, stated: float, low: float, high: float
) -> None:
    shop = with_efficiency(shop_of("550 W belts"), stated)
    found = asked(shop, "mild-steel", 0, 25.0)["drive efficiency"]
    for one, efficiency in ((found.low, low), (found.high, high)):
        changed = with_efficiency(shop, efficiency)
        assert told(one) == pytest.approx(end(changed, shop.blades[0], "mild-steel", 25.0))
        assert one.assumed == f"{100.0 * efficiency:.0f} %"


def test_a_plate_of_shaft_power_may_be_one_of_input_power_but_not_the_other_way(
    shop_of: ShopOf,
) -> None:
    shop = shop_of("550 W belts")
    found = asked(shop, "mild-steel", 0, 25.0)["shaft or input power"]
    drawn = with_motor(shop, PowerIs.INPUT)
    assert told(found.low) == end(drawn, shop.blades[0], "mild-steel", 25.0)
    assert told(found.high) == end(shop, shop.blades[0], "mild-steel", 25.0)
    assert (found.low.assumed, found.high.assumed) == ("input", "shaft")
    assert "shaft or input power" not in asked(drawn, "mild-steel", 0, 25.0)


def test_both_ends_of_the_bar_are_the_smoothest_and_the_roughest(shop_of: ShopOf) -> None:
    shop = shop_of("1.1 kW brushless")
    found = asked(shop, "mild-steel", 0, 20.0)["surface in the jaws"]
    for one, surface in ((found.low, BarSurface.GROUND), (found.high, BarSurface.BLACK)):
        changed = replace(shop, work=replace(shop.work, surface=surface))
        assert told(one) == end(changed, shop.blades[0], "mild-steel", 20.0)
        assert one.assumed == surface.value


def test_both_ends_of_a_measured_pull_on_the_key_are_three_tenths_off(shop_of: ShopOf) -> None:
    shop = with_chuck(shop_of("1.1 kW brushless"), key_torque=40.0)
    found = asked(shop, "mild-steel", 0, 20.0)["grip of the chuck"]
    for one, torque, words in ((found.low, 28.0, "-30 %"), (found.high, 52.0, "+30 %")):
        changed = with_chuck(shop, key_torque=torque)
        assert told(one) == pytest.approx(end(changed, shop.blades[0], "mild-steel", 20.0))
        assert one.assumed == words


# Printed [CHUCK-2757180] p. 43: 10 kN at 80 mm, 24 kN at 125 mm, 31 kN at 160 mm. What is said
# to be a quarter of the table is what a pull that gives a quarter of it would hold.
@pytest.mark.parametrize(("size", "table"), [(80.0, 10e3), (125.0, 24e3), (160.0, 31e3)])
def test_both_ends_of_an_unknown_grip_are_the_shares_of_the_table_they_are_said_to_be(
    shop_of: ShopOf, size: float, table: float
) -> None:
    shop = with_chuck(shop_of("1.1 kW brushless"), size=size)
    found = asked(shop, "mild-steel", 0, 12.0)["grip of the chuck"]
    assert (found.low.assumed, found.high.assumed) == ("25 % of the table", "the table's")
    for one, share in ((found.high, 1.0), (found.low, 0.25)):
        changed = with_chuck(shop, key_torque=share * table / PER_TORQUE)
        by_hand = end(changed, shop.blades[0], "mild-steel", 12.0)
        assert told(one) == pytest.approx(by_hand, nan_ok=True), one.assumed


@each_cell
def test_the_assumptions_are_ranked_by_how_far_their_ends_lie_apart(
    shop_of: ShopOf, cell: tuple[str, str, int, float, float]
) -> None:
    lathe, material, index, diameter, bore = cell
    found = list(asked(shop_of(lathe), material, index, diameter, bore).values())
    spreads = [one.spread for one in found]
    assert spreads == sorted(spreads, reverse=True)
    for one in found:
        low, high = one.low, one.high
        rooms = abs(log(max(low.room, 1e-3) / max(high.room, 1e-3)))
        if low.has_window and high.has_window:
            pace = abs(log(low.feed * low.spindle_speed / (high.feed * high.spindle_speed)))
            assert one.spread == pytest.approx(pace + rooms)
        else:
            one_lost = low.has_window or high.has_window
            assert one.spread == pytest.approx(LOST if one_lost else rooms)


def test_losing_the_window_counts_more_than_any_change_within_it(shop_of: ShopOf) -> None:
    found = list(asked(shop_of("750 W inverter"), "stainless-304", 0, 25.0).values())
    lost = [one.low.has_window != one.high.has_window for one in found]
    assert True in lost
    assert False in lost
    assert lost == sorted(lost, reverse=True)
    assert min(s.spread for s, gone in zip(found, lost, strict=True) if gone) == LOST
    assert max(s.spread for s, gone in zip(found, lost, strict=True) if not gone) < LOST


# The blade does not reach: no assumption opens the window, and none is worth measuring.
def test_a_cell_without_window_at_either_end_says_so_and_spreads_nothing(shop_of: ShopOf) -> None:
    found = asked(shop_of("750 W inverter"), "mild-steel", 2, 80.0)
    assert set(found) == {
        "cutting force",
        "edge radius",
        "drive efficiency",
        "shaft or input power",
        "grip of the chuck",
        "surface in the jaws",
    }
    for one in found.values():
        assert not one.low.has_window
        assert not one.high.has_window
        assert isnan(one.low.feed)
        assert one.spread == 0.0


def test_an_outcome_has_a_window_where_it_has_a_feed() -> None:
    with_one = Outcome(assumed="as stated", spindle_speed=500.0, feed=0.05, room=2.0)
    assert with_one.has_window
    assert not replace(with_one, feed=nan, room=inf).has_window


def test_a_measured_motor_leaves_nothing_to_assume_of_the_drive(shop_of: ShopOf) -> None:
    found = asked(shop_of("measured"), "titanium-pure", 0, 30.0)
    assert set(found) == {
        "cutting force",
        "edge radius",
        "grip of the chuck",
        "surface in the jaws",
    }


def test_a_collet_leaves_nothing_to_assume_of_the_grip(shop_of: ShopOf, in_a_collet: Held) -> None:
    found = asked(in_a_collet(shop_of("550 W belts")), "mild-steel", 0, 25.0)
    assert set(found) == {
        "cutting force",
        "edge radius",
        "drive efficiency",
        "shaft or input power",
    }


def test_each_assumption_names_what_would_settle_it(shop_of: ShopOf) -> None:
    found = asked(shop_of("550 W belts"), "mild-steel", 0, 25.0)
    assert {name: one.measure_by for name, one in found.items()} == {
        "cutting force": "a watt meter in a cut and out of it",
        "edge radius": "a magnifier and a gauge wire, or a fresh edge",
        "drive efficiency": "a tachometer in a heavy cut",
        "shaft or input power": "the motor's own plate",
        "grip of the chuck": "a torque wrench on the key",
        "surface in the jaws": "looking at the bar",
    }
