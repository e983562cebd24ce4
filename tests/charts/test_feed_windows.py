"""The curves of feed are the windows themselves, at more diameters."""

from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest

from chartgen.charts import feed_windows as module
from chartgen.charts.feed_windows import FeedWindows, curve_diameters, feed_windows
from chartgen.limits.reasons import Reason
from chartgen.limits.run import windows
from chartgen.model.material import Material
from chartgen.model.shop import Shop

ShopOf = Callable[..., Shop]


@pytest.fixture
def chart(example: Shop, mild_steel: Material) -> FeedWindows:
    (found,) = feed_windows(example, [mild_steel])
    return found


def test_sixty_diameters_five_widths_and_all_materials_come_from_one_call(
    example: Shop, mild_steel: Material, stainless: Material, monkeypatch: pytest.MonkeyPatch
) -> None:
    calls = []

    def counted(*args: object, **keywords: object) -> object:
        calls.append(keywords)
        return windows(*args, **keywords)  # type: ignore[arg-type]

    monkeypatch.setattr(module, "windows", counted)
    first = example.blades[0]
    five = [
        replace(first, name=f"{width:g}", insert_width=width, thickness=0.8 * width)
        for width in (1.6, 2.0, 2.5, 3.0, 4.0)
    ]
    charts = feed_windows(example, [mild_steel, stainless], five)
    assert len(calls) == 1
    assert [len(chart.blades) for chart in charts] == [5, 5]
    assert all(chart.diameters.size >= 60 for chart in charts)


def test_a_point_of_a_curve_is_the_window_at_that_diameter(
    chart: FeedWindows, example: Shop, mild_steel: Material
) -> None:
    for d in range(0, chart.diameters.size, 7):
        alone = windows(example, materials=[mild_steel], diameters=[float(chart.diameters[d])])
        for b, blade in enumerate(chart.blades):
            assert blade.floor[d] == alone.floor[0, b, 0]
            assert blade.ceiling[d] == alone.ceiling[0, b, 0]
            assert blade.has_window[d] == alone.has_window[0, b, 0]
            np.testing.assert_equal(blade.feed[d], alone.feed[0, b, 0])


def test_every_diameter_of_the_lathe_chart_is_on_the_curve(
    chart: FeedWindows, example: Shop
) -> None:
    assert tuple(chart.diameters[chart.printed]) == tuple(sorted(example.request.diameters))
    assert np.all(np.diff(chart.diameters) > 0.0)


def test_an_advised_feed_lies_between_floor_and_ceiling(chart: FeedWindows) -> None:
    for blade in chart.blades:
        inside = blade.has_window
        assert np.all(blade.feed[inside] >= blade.floor[inside] * (1 - 1e-9))
        assert np.all(blade.feed[inside] <= blade.ceiling[inside] * (1 + 1e-9))
        assert np.all(np.isnan(blade.feed[~inside]))


def test_the_runs_of_a_limit_cover_every_diameter_once(chart: FeedWindows) -> None:
    for blade in chart.blades:
        runs = blade.ceiling_runs
        assert runs[0].first == 0
        assert runs[-1].last == chart.diameters.size - 1
        for before, after in pairwise(runs):
            assert after.first == before.last + 1
            assert after.reason is not before.reason


def test_a_spindle_too_fast_at_its_slowest_is_what_ends_the_window(
    shop_of: ShopOf, stainless: Material
) -> None:
    shop = shop_of("550 W belts")
    shop = replace(shop, request=replace(shop.request, diameters=(40.0, 400.0)))
    (chart,) = feed_windows(shop, [stainless])
    hss = next(b for b in chart.blades if b.blade.name == "1.6 HSS")
    assert hss.ceiling_runs[-1].reason is Reason.SLOWEST_SPINDLE


def test_one_diameter_still_makes_a_curve(example: Shop) -> None:
    one = replace(example, request=replace(example.request, diameters=(20.0,)))
    diameters = curve_diameters(one)
    assert diameters[0] < 20.0 < diameters[-1]
