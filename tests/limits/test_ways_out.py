"""The ways out of a cell: each is made by hand in the shop file's data and run again.

The full torque on the key by size of chuck is printed in [CHUCK-2757180] p. 43.
"""

from collections.abc import Callable
from dataclasses import replace
from math import ceil

import pytest

from chartgen.limits.run import windows
from chartgen.limits.ways_out import Way, WayOut, ways_out
from chartgen.limits.window import Verdict
from chartgen.model.blade import Blade, Edge, ToolMaterial
from chartgen.model.lathe import ChuckKind
from chartgen.model.shop import Feeding, Shop
from chartgen.reference.tables import load_material

ShopOf = Callable[..., Shop]
Held = Callable[[Shop], Shop]
# Printed for the sizes of these lathes: the full torque on the key [N.m].
FULL_TORQUE = {80.0: "35", 100.0: "50", 125.0: "75", 160.0: "120"}
# Allowance: the blade stands out a millimetre past the depth, set to half a millimetre.
CLEARANCE, STEP = 1.0, 0.5
CLOSE = 2.0
WORTH_IT = 1.05
Outcome = tuple[Verdict, float, float, float]


def outcome(shop: Shop, material: str, blade: Blade, diameter: float, bore: float) -> Outcome:
    found = windows(
        shop,
        materials=[load_material(material)],
        diameters=[diameter],
        blades=[blade],
        bore=bore,
    )
    index = (0, 0, 0)
    room = found.ceiling[index] / found.floor[index]
    return (
        found.verdict(index),
        float(room),
        float(found.spindle_speed[index]),
        float(found.feed[index]),
    )


def closer(shop: Shop) -> Shop:
    return replace(shop, work=replace(shop.work, jaw_distance=CLOSE))


def with_chuck(shop: Shop, **changes: object) -> Shop:
    chuck = replace(shop.lathe.chuck, **changes)  # type: ignore[arg-type]
    return replace(shop, lathe=replace(shop.lathe, chuck=chuck))


def fed(shop: Shop, feeding: Feeding) -> Shop:
    return replace(shop, request=replace(shop.request, feeding=feeding))


def by_hand(
    shop: Shop, blade: Blade, diameter: float, bore: float
) -> dict[tuple[Way, str], tuple[Shop, Blade]]:
    """Return everything that could be changed, as an owner would change it."""
    keen = Edge.HONED if blade.tool_material is ToolMaterial.HSS else Edge.POLISHED
    changed = {(Way.OTHER_BLADE, other.name): (shop, other) for other in shop.blades}
    del changed[Way.OTHER_BLADE, blade.name]
    fresh = replace(blade, edge=keen, worn=False, edge_radius=None)
    changed[Way.SHARPER_EDGE, keen.value] = (shop, fresh)
    reach = ceil(((diameter - bore) / 2.0 + CLEARANCE) / STEP) * STEP
    if reach != blade.projection:
        way = Way.SHORTER if reach < blade.projection else Way.LONGER
        changed[way, f"{reach:g}"] = (shop, replace(blade, projection=reach))
    changed[Way.CLOSER, f"{CLOSE:g}"] = (closer(shop), blade)
    if shop.lathe.chuck.kind is not ChuckKind.COLLET:
        full = FULL_TORQUE[shop.lathe.chuck.size]
        changed[Way.TIGHTER, full] = (with_chuck(shop, key_torque=float(full)), blade)
    if shop.lathe.cross_slide.power_feeds:
        changed[Way.POWER_FEED, ""] = (fed(shop, Feeding.POWER), blade)
    return changed


def asked(shop: Shop, material: str, blade: int, diameter: float, bore: float) -> list[WayOut]:
    return list(
        ways_out(
            shop,
            material=load_material(material),
            blade=shop.blades[blade],
            diameter=diameter,
            bore=bore,
        )
    )


LONG = {'projection = "30 mm"': 'projection = "60 mm"'}
BLUNT = {'edge = "ground"': 'edge = "ground"\nworn = true\nedge_radius = "60 um"'}
FAR = {"[print]": '[work]\njaw_distance = "40 mm"\n[print]'}
LOOSE = {'size = "125 mm"': 'size = "125 mm"\nkey_torque = "8 N.m"'}
Cell = tuple[str, int, float, float]
CELLS: dict[str, tuple[str, dict[str, str], Cell]] = {
    "roomy": ("550 W belts", {}, ("mild-steel", 0, 25.0, 0.0)),
    "roomier but tight": ("250 W brushed DC", {}, ("mild-steel", 0, 16.0, 0.0)),
    "an eighth roomier by the key": ("250 W brushed DC", {}, ("stainless-304", 3, 12.0, 0.0)),
    "hardly roomier by the key": ("250 W brushed DC", {}, ("c45", 0, 12.0, 0.0)),
    "a sixth roomier by power": ("250 W brushed DC", {}, ("aluminium-6082", 0, 20.0, 0.0)),
    "weak motor": ("250 W brushed DC", {}, ("stainless-304", 1, 25.0, 0.0)),
    "blade too far out": ("2.2 kW geared", LONG, ("c45", 2, 20.0, 0.0)),
    "blade too far out for a tube": ("2.2 kW geared", LONG, ("c45", 2, 40.0, 30.0)),
    "blade too short": ("1.1 kW brushless", {}, ("aluminium-6082", 2, 70.0, 0.0)),
    "blunt edge": ("750 W inverter", BLUNT, ("stainless-316", 2, 16.0, 0.0)),
    "thin bar far out": ("750 W inverter", FAR, ("c45", 0, 6.0, 0.0)),
    "loose chuck": ("1.1 kW brushless", LOOSE, ("c60", 0, 20.0, 0.0)),
    "slow hand": ("2.2 kW geared", {}, ("nylon", 3, 10.0, 0.0)),
    "measured": ("measured", {}, ("titanium-pure", 0, 30.0, 0.0)),
    "far too thick": ("250 W brushed DC", {}, ("tool-steel-d2", 2, 80.0, 0.0)),
}


def cell_of(shop_of: ShopOf, name: str) -> tuple[Shop, Cell]:
    lathe, exchange, cell = CELLS[name]
    return shop_of(lathe, exchange), cell


each_cell = pytest.mark.parametrize("name", CELLS)


# Both ways round: what is offered really gives that much room, and what would is offered.
@each_cell
def test_just_the_ways_that_make_a_changed_shop_roomier_are_offered(
    shop_of: ShopOf, name: str
) -> None:
    shop, (material, index, diameter, bore) = cell_of(shop_of, name)
    blade = shop.blades[index]
    verdict, before, *_ = outcome(shop, material, blade, diameter, bore)
    expected = {}
    for way, (changed, other) in by_hand(shop, blade, diameter, bore).items():
        after = outcome(changed, material, other, diameter, bore)
        has_window = after[0] is not Verdict.NO_WINDOW
        opens = has_window and verdict is Verdict.NO_WINDOW
        if (verdict, after[0]) == (Verdict.INSIDE, Verdict.TIGHT):
            continue
        if opens or (has_window and after[1] > WORTH_IT * before):
            expected[way] = after
    found = asked(shop, material, index, diameter, bore)
    assert {
        (one.way, one.what): (one.verdict, one.room, one.spindle_speed, one.feed) for one in found
    } == expected
    for one in found:
        assert one.gain == pytest.approx(one.room / max(before, 1e-3))
        assert one.spindle_speed > 0.0
        assert one.feed > 0.0


@each_cell
def test_a_window_that_is_not_tight_comes_first_then_the_roomier(
    shop_of: ShopOf, name: str
) -> None:
    shop, cell = cell_of(shop_of, name)
    ranks = [(one.verdict is Verdict.TIGHT, -one.room) for one in asked(shop, *cell)]
    assert ranks == sorted(ranks)


# Together the cells ask for every way there is, so that none of the above can hold for nothing.
def test_every_way_is_offered_somewhere_and_none_is_between_centres(shop_of: ShopOf) -> None:
    cells = [cell_of(shop_of, name) for name in CELLS]
    offered = {one.way for shop, cell in cells for one in asked(shop, *cell)}
    assert offered == set(Way)
    assert not [way for way in Way if "centre" in way.value or "tailstock" in way.value]


def test_where_nothing_helps_nothing_is_offered(shop_of: ShopOf) -> None:
    shop, cell = cell_of(shop_of, "far too thick")
    assert asked(shop, *cell) == []


# 20 mm bar: 10 + 1 = 11; 21.2 mm: 10.6 + 1 = 11.6, set to 12; tube 40 x 30 mm: 5 + 1 = 6.
@pytest.mark.parametrize(
    ("diameter", "bore", "out"), [(20.0, 0.0, "11"), (21.2, 0.0, "12"), (40.0, 30.0, "6")]
)
def test_a_blade_too_far_out_is_shortened_to_depth_and_clearance(
    shop_of: ShopOf, diameter: float, bore: float, out: str
) -> None:
    shop = shop_of("2.2 kW geared", LONG)
    (shorter,) = (w for w in asked(shop, "c45", 2, diameter, bore) if w.way is Way.SHORTER)
    assert shorter.what == out


# 62 mm: 31 + 1 = 32; 62.6 mm: 31.3 + 1 = 32.3, set to 32.5. At 58 mm the 30 mm just reach.
@pytest.mark.parametrize(("diameter", "out"), [(58.0, None), (62.0, "32"), (62.6, "32.5")])
def test_a_blade_that_does_not_reach_is_let_out(
    shop_of: ShopOf, diameter: float, out: str | None
) -> None:
    found = asked(shop_of("1.1 kW brushless"), "aluminium-6082", 2, diameter, 0.0)
    longer = [w.what for w in found if w.way is Way.LONGER]
    assert longer == ([out] if out else [])


def test_a_longer_clearance_lets_the_blade_out_further(shop_of: ShopOf) -> None:
    shop = replace(shop_of("1.1 kW brushless"), allowances={"reach_clearance": 2.2})
    found = asked(shop, "aluminium-6082", 2, 62.0, 0.0)
    assert [w.what for w in found if w.way is Way.LONGER] == ["33.5"]


def test_a_collet_or_a_key_pulled_in_full_is_not_pulled_tighter(
    shop_of: ShopOf, in_a_collet: Held
) -> None:
    loose, cell = cell_of(shop_of, "loose chuck")

    def ways(shop: Shop) -> set[Way]:
        return {one.way for one in asked(shop, *cell)}

    assert Way.TIGHTER in ways(loose)
    assert Way.TIGHTER not in ways(in_a_collet(loose))
    assert Way.TIGHTER not in ways(with_chuck(loose, key_torque=75.0))


@pytest.mark.parametrize("size", FULL_TORQUE)
def test_the_key_is_to_be_pulled_with_the_full_torque_of_its_size(
    shop_of: ShopOf, size: float
) -> None:
    loose, cell = cell_of(shop_of, "loose chuck")
    shop = with_chuck(loose, size=size)
    (tighter,) = (one for one in asked(shop, *cell) if one.way is Way.TIGHTER)
    assert tighter.what == FULL_TORQUE[size]


def test_power_feed_is_offered_only_to_a_hand_on_a_lathe_that_has_it(shop_of: ShopOf) -> None:
    shop, cell = cell_of(shop_of, "slow hand")
    slide = replace(shop.lathe.cross_slide, power_feeds=())
    without = replace(shop, lathe=replace(shop.lathe, cross_slide=slide))

    def ways(shop: Shop) -> set[Way]:
        return {one.way for one in asked(shop, *cell)}

    assert Way.POWER_FEED in ways(shop)
    assert Way.POWER_FEED not in ways(without)
    assert Way.POWER_FEED not in ways(fed(shop, Feeding.POWER))


def test_an_edge_that_is_fresh_and_keen_is_not_sharpened(shop_of: ShopOf) -> None:
    shop = shop_of("750 W inverter")
    keen = replace(shop.blades[2], edge=Edge.HONED)
    worn = replace(keen, worn=True)
    for blade, sharpened in ((keen, False), (worn, True), (shop.blades[2], True)):
        changed = replace(shop, blades=(blade,))
        found = asked(changed, "c45", 0, 16.0, 0.0)
        assert (Way.SHARPER_EDGE in {one.way for one in found}) is sharpened


@pytest.mark.parametrize(("beyond", "is_offered"), [(-4.0, True), (4.0, False)])
def test_no_blade_is_set_out_further_than_twelve_of_its_heights(
    shop_of: ShopOf, beyond: float, *, is_offered: bool
) -> None:
    shop = shop_of("1.1 kW brushless", {})
    diameter = 2.0 * 12.0 * shop.blades[2].height + beyond
    offered = [w.way for w in asked(shop, "nylon", 2, diameter, 0.0)]
    assert (Way.LONGER in offered) is is_offered
