"""Which blade and which bars a centre card speaks of, and what a wrong height does."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen.charts.way_in import centre_chart
from chartgen.limits.run import windows
from chartgen.model.material import Material
from chartgen.model.shop import Shop

ShopOf = Callable[..., Shop]


def test_the_first_blade_with_three_windows_is_taken_with_small_middle_and_large(
    example: Shop, mild_steel: Material
) -> None:
    sizes = [8.0, 12.0, 20.0, 30.0, 40.0]
    found = windows(example, materials=[mild_steel], diameters=sizes)
    assert found.has_window[0, 0].all()
    chart = centre_chart(example, found, mild_steel)
    assert chart.blade == example.blades[0]
    assert [way.diameter for way in chart.ways] == [8.0, 20.0, 40.0]


def test_a_first_blade_too_short_is_passed_over(example: Shop, mild_steel: Material) -> None:
    short = replace(example.blades[0], projection=6.0)
    shop = replace(example, blades=(short, *example.blades[1:]))
    found = windows(shop, materials=[mild_steel], diameters=[8.0, 20.0, 30.0, 40.0])
    chart = centre_chart(shop, found, mild_steel)
    assert chart.blade == shop.blades[1]
    assert [way.diameter for way in chart.ways] == [8.0, 30.0, 40.0]


def test_fewer_than_three_windows_are_all_shown(example: Shop, mild_steel: Material) -> None:
    found = windows(example, materials=[mild_steel], diameters=[20.0, 30.0])
    chart = centre_chart(example, found, mild_steel)
    assert [way.diameter for way in chart.ways] == [20.0, 30.0]


def test_without_any_window_there_is_no_way_in(shop_of: ShopOf, stainless: Material) -> None:
    shop = shop_of("750 W inverter", {"750 W": "20 W"})
    found = windows(shop, materials=[stainless], diameters=[30.0, 50.0])
    assert not found.has_window.any()
    assert centre_chart(shop, found, stainless).ways == ()


# asin(0.1 / 2) = 2.866 deg, asin(0.1 / 0.5) = 11.537 deg; a pip of 0.1 mm radius.
def test_a_tenth_off_centre_turns_the_angles_by_three_and_twelve_degrees(
    example: Shop, mild_steel: Material
) -> None:
    found = windows(example, materials=[mild_steel], diameters=[20.0])
    chart = centre_chart(example, found, mild_steel)
    assert chart.height_error == 0.1
    assert chart.height_pip == pytest.approx(0.2)
    assert [angle.diameter for angle in chart.turned] == [4.0, 1.0]
    assert [angle.turned for angle in chart.turned] == pytest.approx([2.866, 11.537], abs=5e-4)
