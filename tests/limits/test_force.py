"""The force band: wide for thin chips, never falling as feed rises, and invertible."""

from dataclasses import replace
from functools import cache

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from chartgen.limits.allowances import Allowances, allowances_for
from chartgen.limits.force import feed_for_high_force, high_force, low_force, nominal_force
from chartgen.limits.grid import Grid, make_grid
from chartgen.model.lathe import Work
from chartgen.model.shop import Feeding, Shop
from chartgen.pipeline import describe
from chartgen.reference.tables import load_material, material_keys

THIN = 0.1
METALS = [key for key in material_keys() if load_material(key).force is not None]


@cache
def example_shop() -> Shop:
    return describe(None, "")


@cache
def one_cell(material: str, band: float = 0.35) -> tuple[Grid, Allowances]:
    shop = replace(example_shop(), allowances={"thin_chip_band": band})
    allowances = allowances_for(shop)
    grid = make_grid(
        materials=[load_material(material)],
        blades=shop.blades[:1],
        diameters=[25.0],
        work=Work(),
        feeding=Feeding.HAND,
        allowances=allowances,
    )
    return grid, allowances


def high(material: str, feed: float, band: float = 0.35) -> float:
    grid, allowances = one_cell(material, band)
    return float(high_force(grid, np.full((1, 1, 1, 1), feed), allowances).item())


# kc1.1 1780, mc 0.17 [TBM]; reserve 1.3; a quarter either way at 0.1 mm and above, 35 % below.
@pytest.mark.parametrize(
    ("feed", "low_share", "high_share"), [(0.05, 0.65, 1.35), (0.2, 0.75, 1.25)]
)
def test_the_band_lies_about_the_expected_force(
    feed: float, low_share: float, high_share: float
) -> None:
    grid, allowances = one_cell("mild-steel")
    expected = 1780.0 * 2.0 * feed**0.83 * 1.3
    at = np.full((1, 1, 1, 1), feed)
    assert nominal_force(grid, at).item() == pytest.approx(expected)
    assert low_force(grid, at, allowances).item() == pytest.approx(low_share * expected)
    assert high_force(grid, at, allowances).item() == pytest.approx(high_share * expected)


def test_where_the_printings_disagree_more_than_a_thin_chip_does_their_band_stays() -> None:
    key = max(METALS, key=lambda k: load_material(k).force.band_high.value)  # type: ignore[union-attr]
    force = load_material(key).force
    assert force is not None
    grid, _ = one_cell(key, 0.1)
    assert grid.thin_band_high.item() == force.band_high.value > 0.1


def test_just_above_the_step_the_high_side_stays_at_its_value_on_the_step() -> None:
    on_step = high("mild-steel", THIN)
    assert high("mild-steel", 1.01 * THIN) == pytest.approx(on_step)
    assert high("mild-steel", 1.3 * THIN) > on_step


@settings(max_examples=150, deadline=None)
@given(
    material=st.sampled_from(METALS),
    feed=st.floats(0.002, 0.5),
    more=st.floats(1.0, 1.5),
    band=st.floats(0.1, 0.6),
)
def test_the_high_side_never_falls_as_feed_rises(
    material: str, feed: float, more: float, band: float
) -> None:
    assert high(material, feed * more, band) >= high(material, feed, band) * (1.0 - 1e-12)


@settings(max_examples=150, deadline=None)
@given(material=st.sampled_from(METALS), feed=st.floats(0.002, 0.5))
def test_the_feed_for_a_force_meets_that_force_and_is_the_feed_it_came_from(
    material: str, feed: float
) -> None:
    grid, allowances = one_cell(material)
    force = high(material, feed)
    back = feed_for_high_force(grid, np.full((1, 1, 1, 1), force), allowances).item()
    assert high(material, back) == pytest.approx(force, rel=1e-9)
    step_up = (1.0 + grid.thin_band_high.item()) / (1.0 + grid.band_high.item())
    flat_ends = THIN * step_up ** (1.0 / (1.0 - grid.exponent.item()))
    if not THIN <= feed <= flat_ends * (1.0 + 1e-9):
        assert back == pytest.approx(feed, rel=1e-9)


def test_no_force_bears_no_feed() -> None:
    grid, allowances = one_cell("mild-steel")
    assert feed_for_high_force(grid, np.zeros((1, 1, 1, 1)), allowances).item() == 0.0
    assert feed_for_high_force(grid, np.full((1, 1, 1, 1), -5.0), allowances).item() == 0.0


def test_without_force_data_any_feed_is_borne() -> None:
    grid, allowances = one_cell("nylon")
    force = np.full((1, 1, 1, 1), 5.0)
    assert feed_for_high_force(grid, force, allowances).item() == float("inf")
    assert nominal_force(grid, force).item() == 0.0
