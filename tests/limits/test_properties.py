"""Laws that hold in every cell, tried on many lathes, materials, blades and diameters."""

from collections.abc import Callable
from dataclasses import fields, replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from chartgen.inquiry import cut_request
from chartgen.limits.cut import Cut, Side, assess, recommended
from chartgen.limits.dig_in import DigIn
from chartgen.limits.run import windows
from chartgen.limits.window import Verdict, Windows
from chartgen.model.blade import Edge
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.reference.tables import load_material, material_keys

ShopOf = Callable[..., Shop]
LATHES = (
    "250 W brushed DC",
    "550 W belts",
    "750 W inverter",
    "1.1 kW brushless",
    "2.2 kW geared",
)
lathes = st.sampled_from(LATHES)
materials = st.sampled_from(material_keys()).map(load_material)
blades = st.integers(0, 3)
diameters = st.floats(4.0, 70.0)
feedings = st.sampled_from(("hand", "power"))
many = settings(max_examples=120, deadline=None, derandomize=True)


def cell(
    shop_of: ShopOf, lathe: str, feeding: str, material: Material, blade: int, diameter: float
) -> tuple[Shop, Windows, Cut, tuple[int, int, int]]:
    shop = shop_of(lathe, {"[print]": f'[print]\nfeeding = "{feeding}"'})
    found, cut = recommended(shop, material=material, blade=shop.blades[blade], diameter=diameter)
    return shop, found, cut, (0, blade, 0)


@many
@given(lathe=lathes, feeding=feedings, material=materials, blade=blades, diameter=diameters)
def test_a_recommended_feed_lies_between_floor_and_ceiling_and_its_speed_under_the_cap(
    shop_of: ShopOf, lathe: str, feeding: str, material: Material, blade: int, diameter: float
) -> None:
    shop, found, cut, index = cell(shop_of, lathe, feeding, material, blade, diameter)
    if found.has_window[index]:
        assert found.floor[index] * (1.0 - 1e-6) <= found.feed[index]
        assert found.feed[index] <= found.ceiling[index] * (1.0 + 1e-6)
        assert found.spindle_speed[index] <= found.speed_cap[index] * (1.0 + 1e-6)
        assert found.spindle_speed[index] <= 1.3 * found.start_speed[index] * (1.0 + 1e-6)
        assert cut.spindle_speed <= cut.speed_ceiling.speed * (1.0 + 1e-6)
        assert cut.lathe_has_speed
        ends = [(p.slowest, p.fastest) for p in shop.lathe.drive.positions]
        assert any(low <= cut.spindle_speed <= high for low, high in ends)
    else:
        assert np.isnan(found.feed[index])
        assert found.verdict(index) is Verdict.NO_WINDOW


@many
@given(lathe=lathes, feeding=feedings, material=materials, blade=blades, diameter=diameters)
def test_a_recommended_cut_asked_about_again_is_inside_with_the_same_window(
    shop_of: ShopOf, lathe: str, feeding: str, material: Material, blade: int, diameter: float
) -> None:
    _, found, cut, index = cell(shop_of, lathe, feeding, material, blade, diameter)
    if found.has_window[index]:
        assert cut.side is Side.INSIDE
        assert all(limit.feed * (1.0 + 1e-6) >= cut.feed for limit in cut.ceilings)
        assert cut.floor.feed == pytest.approx(found.floor[index])
        assert cut.ceiling.feed == pytest.approx(found.ceiling[index])
        assert cut.ceiling.reason is found.ceiling_reason(index)
        assert cut.floor.reason is found.floor_reason(index)
    else:
        assert cut.side is Side.NO_WINDOW


# Every steel on every lathe, in half millimetres: where a cut comes near three minutes, what
# was weighed up and what is printed must still be the same cut.
@pytest.mark.parametrize("feeding", ["hand", "power"])
@pytest.mark.parametrize("lathe", LATHES)
def test_no_recommended_cut_in_carbon_steel_is_too_bold_on_second_sight(
    shop_of: ShopOf, lathe: str, feeding: str
) -> None:
    shop = shop_of(lathe, {"[print]": f'[print]\nfeeding = "{feeding}"'})
    steel = load_material("c45")
    sizes = np.arange(20.0, 70.5, 0.5)
    found = windows(shop, materials=[steel], diameters=[float(d) for d in sizes])
    bold = []
    for _, b, d in np.argwhere(found.has_window):
        index = (0, int(b), int(d))
        cut = assess(
            shop,
            material=steel,
            blade=shop.blades[b],
            diameter=float(sizes[d]),
            speed=float(found.spindle_speed[index]),
            feed=float(found.feed[index]),
            position=found.positions[int(found.position[index])],
        )
        if cut.side is not Side.INSIDE:
            bold.append((shop.blades[b].name, float(sizes[d]), round(cut.time, 2)))
    assert bold == []


@many
@given(lathe=lathes, material=materials, diameter=diameters, worn=st.booleans())
def test_a_sharper_edge_never_raises_the_floor(
    shop_of: ShopOf, lathe: str, material: Material, diameter: float, *, worn: bool
) -> None:
    shop = shop_of(lathe)
    families = (
        (shop.blades[2], (Edge.HONED, Edge.GROUND, Edge.DULL)),
        (shop.blades[0], (Edge.POLISHED, Edge.THIN_COATED, Edge.THICK_COATED)),
    )
    for blade, edges in families:
        floors = [
            assess(
                shop,
                material=material,
                blade=replace(blade, edge=edge, worn=worn),
                diameter=diameter,
                speed=500.0,
                feed=0.05,
            ).floor.feed
            for edge in edges
        ]
        assert floors == sorted(floors)


@many
@given(lathe=lathes, sixtyfourths=st.integers(8, 180))
def test_a_shop_written_in_inches_gives_the_windows_of_the_same_shop_in_millimetres(
    shop_of: ShopOf, mild_steel: Material, lathe: str, sixtyfourths: int
) -> None:
    def sizes(width: str, projection: str, travel: str) -> dict[str, str]:
        return {
            'insert_width = "2 mm"': f'insert_width = "{width}"',
            'thickness = "1.6 mm"': 'thickness = "1.4 mm"',
            'projection = "36 mm"': f'projection = "{projection}"',
            'travel_per_turn = "2 mm"': f'travel_per_turn = "{travel}"',
        }

    whole, millionths = divmod(sixtyfourths * 396_875, 1_000_000)  # 1/64 in = 0.396875 mm
    inch = shop_of(lathe, sizes("1/16 in", "1-1/2 in", "0.1 in"))
    metric = shop_of(lathe, sizes("1.5875 mm", "38.1 mm", "2.54 mm"))
    spelled = {
        "in": cut_request(
            inch, material="mild-steel", tool="A", diameter=f"{sixtyfourths}/64 in"
        ).diameter,
        "mm": cut_request(
            metric, material="mild-steel", tool="A", diameter=f"{whole}.{millionths:06d} mm"
        ).diameter,
    }
    first = windows(inch, materials=[mild_steel], diameters=[spelled["in"]])
    second = windows(metric, materials=[mild_steel], diameters=[spelled["mm"]])
    for name in ("has_window", "spindle_speed", "feed", "floor", "ceiling", "ceiling_code"):
        assert np.array_equal(getattr(first, name), getattr(second, name), equal_nan=True), name


@pytest.mark.parametrize("lathe", LATHES)
def test_a_whole_shop_written_in_inches_and_pounds_gives_the_windows_of_the_metric_one(
    shop_of: ShopOf, lathe: str
) -> None:
    def spelled(
        near: str, behind: str, key: str, stiffness: str, blade: tuple[str, str, str, str]
    ) -> Shop:
        width, thickness, height, strips = blade
        changes = {
            'insert_width = "2 mm"\nthickness = "1.6 mm"\nheight = "26 mm"': (
                f'insert_width = "{width}"\nthickness = "{thickness}"\nheight = "{height}"\n'
                f"strips = {strips}"
            ),
            'name = "Test lathe"': f'name = "Test lathe"\ntool_stiffness = "{stiffness}"',
            "[lathe.chuck]": f'[lathe.chuck]\nkey_torque = "{key}"',
            "[print]": f'[work]\njaw_distance = "{near}"\nbar_behind = "{behind}"\n[print]',
        }
        return shop_of(lathe, changes)

    # 1 lbf = 0.45359237 x 9.80665 N, 1 ft = 304.8 mm, 1 in = 25.4 mm, all by definition.
    pound = 0.45359237 * 9.80665
    inch = spelled(
        "1/4 in",
        "12 in",
        "30 ft.lbf",
        "20000 lbf/in",
        ("3/32 in", "5/64 in", "1 in", '[["1/16 in", "3/4 in"], ["5/64 in", "1/4 in"]]'),
    )
    metric = spelled(
        "6.35 mm",
        "304.8 mm",
        f"{30.0 * pound * 0.3048!r} N.m",
        f"{20000.0 * pound / 25.4!r} N/mm",
        (
            "2.38125 mm",
            "1.984375 mm",
            "25.4 mm",
            '[["1.5875 mm", "19.05 mm"], ["1.984375 mm", "6.35 mm"]]',
        ),
    )
    some = [load_material(key) for key in ("mild-steel", "stainless-304", "aluminium-6082")]
    first, second = (
        windows(shop, materials=some, diameters=[5.0, 12.0, 25.0, 40.0]) for shop in (inch, metric)
    )
    for name in ("has_window", "is_tight", "floor_code", "ceiling_code", "way_out"):
        assert np.array_equal(getattr(first, name), getattr(second, name)), name
    for name in ("spindle_speed", "speed_cap", "feed", "floor", "ceiling"):
        assert getattr(first, name) == pytest.approx(getattr(second, name), nan_ok=True), name
    assert first.dig_in.slack == pytest.approx(second.dig_in.slack, nan_ok=True)


@pytest.mark.parametrize("lathe", LATHES)
def test_a_cell_alone_is_the_cell_in_a_big_grid(shop_of: ShopOf, lathe: str) -> None:
    shop = shop_of(lathe)
    some = [
        load_material(k) for k in ("mild-steel", "stainless-304", "nylon", "free-cutting-brass")
    ]
    sizes = [6.0, 12.0, 25.0, 45.0, 62.0]
    big = windows(shop, materials=some, diameters=sizes)
    names = {f.name for f in fields(Windows)} - {"grid", "positions", "dig_in"}
    of_dig_in = {f.name for f in fields(DigIn)}
    for m, material in enumerate(some):
        for d, diameter in enumerate(sizes):
            alone = windows(shop, materials=[material], diameters=[diameter])
            pairs = {name: (getattr(alone, name), getattr(big, name)) for name in names}
            for name in of_dig_in:
                pairs[name] = getattr(alone.dig_in, name), getattr(big.dig_in, name)
            for name, (one_cell, every_cell) in pairs.items():
                one, of_many = one_cell[0, :, 0], every_cell[m, :, d]
                assert np.array_equal(one, of_many, equal_nan=one.dtype.kind == "f"), name


def test_windows_of_chosen_blades_are_those_of_all_blades(
    example: Shop, mild_steel: Material
) -> None:
    every = windows(example, materials=[mild_steel], diameters=[16.0, 25.0])
    some = windows(
        example, materials=[mild_steel], diameters=[16.0, 25.0], blades=example.blades[1:2]
    )
    assert some.feed[0, 0].tolist() == every.feed[0, 1].tolist()
    assert some.spindle_speed[0, 0].tolist() == every.spindle_speed[0, 1].tolist()
