"""Where one blade may be used: the stretches agree with the windows diameter by diameter."""

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from chartgen.charts.blade_use import Stretch, blade_use, stretches
from chartgen.limits.reasons import Reason
from chartgen.limits.run import windows
from chartgen.model.material import Material
from chartgen.model.shop import LengthUnits, Shop
from chartgen.reference.tables import load_material

ShopOf = Callable[..., Shop]


@pytest.mark.parametrize(
    ("holds", "expected"),
    [
        ([0, 0, 0, 0], []),
        ([1, 1, 1, 1], [(10, 40)]),
        ([0, 1, 0, 0], [(20, 20)]),
        ([1, 0, 1, 1], [(10, 10), (30, 40)]),
    ],
)
def test_stretches_are_cut_where_something_does_not_hold(
    holds: list[int], expected: list[tuple[float, float]]
) -> None:
    found = stretches(np.array(holds, dtype=bool), np.array([10.0, 20.0, 30.0, 40.0]))
    assert found == tuple(Stretch(*ends) for ends in expected)


def test_every_diameter_in_a_stretch_has_a_window_and_the_next_ones_have_none(
    example: Shop, mild_steel: Material, stainless: Material, aluminium: Material
) -> None:
    materials = [mild_steel, stainless, aluminium]
    for blade in example.blades:
        use = blade_use(example, materials, blade)
        for row in use.rows:
            for stretch in row.usable:
                inner = [stretch.smallest, stretch.largest]
                found = windows(example, materials=[row.material], blades=[blade], diameters=inner)
                assert found.has_window.all()
                outer = [stretch.smallest - use.step, stretch.largest + use.step]
                outer = [d for d in outer if use.smallest <= d <= use.largest]
                found = windows(example, materials=[row.material], blades=[blade], diameters=outer)
                assert not found.has_window.any()


def test_the_good_stretch_lies_in_a_usable_one_and_is_nowhere_tight(
    example: Shop, aluminium: Material
) -> None:
    blade = example.blades[0]
    (row,) = blade_use(example, [aluminium], blade).rows
    assert row.good
    assert any(
        stretch.smallest <= row.good.smallest and row.good.largest <= stretch.largest
        for stretch in row.usable
    )
    sizes = np.arange(row.good.smallest, row.good.largest + 0.5).tolist()
    found = windows(example, materials=[aluminium], blades=[blade], diameters=sizes)
    assert found.has_window.all()
    assert not found.is_tight.any()


# 32 mm out of the holder less 1 mm of clearance reach 31 mm deep: 62 mm of diameter.
def test_a_blade_ends_where_it_does_not_reach(example: Shop, aluminium: Material) -> None:
    (row,) = blade_use(example, [aluminium], example.blades[0]).rows
    assert row.usable[-1].largest == 62.0
    assert row.beyond is Reason.REACH


def test_diameters_run_up_to_the_size_of_the_chuck(example: Shop, mild_steel: Material) -> None:
    use = blade_use(example, [mild_steel], example.blades[0])
    assert (use.smallest, use.step, use.largest) == (3.0, 1.0, 125.0)


def test_in_inches_every_sixteenth_is_looked_at(example: Shop, mild_steel: Material) -> None:
    request = replace(example.request, units=LengthUnits.INCH)
    use = blade_use(replace(example, request=request), [mild_steel], example.blades[0])
    sixteenth = 25.4 / 16
    assert (use.smallest, use.step) == (2 * sixteenth, sixteenth)
    # 125 mm are 78.7 sixteenths.
    assert use.largest == pytest.approx(78 * sixteenth)


def test_a_blade_good_up_to_the_chuck_has_nothing_beyond(example: Shop) -> None:
    chuck = replace(example.lathe.chuck, size=60.0)
    shop = replace(example, lathe=replace(example.lathe, chuck=chuck))
    (row,) = blade_use(shop, [load_material("nylon")], shop.blades[0]).rows
    assert row.usable[-1].largest == 60.0
    assert row.beyond is None


def test_a_blade_of_no_use_still_names_what_gives_way(shop_of: ShopOf, stainless: Material) -> None:
    shop = shop_of("750 W inverter", {"750 W": "20 W"})
    (row,) = blade_use(shop, [stainless], shop.blades[1]).rows
    assert (row.good, row.usable) == (None, ())
    assert row.beyond is not None


def test_the_spindle_is_never_said_to_run_faster_than_chuck_or_lathe(
    example: Shop, mild_steel: Material
) -> None:
    assert blade_use(example, [mild_steel], example.blades[0]).fastest == 2500.0
    chuck = replace(example.lathe.chuck, marked_speed=1800.0)
    slow = replace(example, lathe=replace(example.lathe, chuck=chuck))
    assert blade_use(slow, [mild_steel], slow.blades[0]).fastest == 1800.0
