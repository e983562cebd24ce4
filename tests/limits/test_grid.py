"""The cells laid out: feeds by width, allowances on force, what a bore may be."""

from dataclasses import replace

import pytest

from chartgen.limits.allowances import Allowances, allowances_for, edge_radius
from chartgen.limits.grid import Grid, feeds_for_width, force_allowance, make_grid
from chartgen.model.blade import Blade, Edge
from chartgen.model.lathe import Work
from chartgen.model.material import Material
from chartgen.model.shop import Feeding, Shop
from chartgen.reference.tables import load_material


def grid_of(
    shop: Shop,
    material: Material,
    *,
    bore: float = 0.0,
    work: Work | None = None,
    feeding: Feeding = Feeding.HAND,
) -> Grid:
    return make_grid(
        materials=[material],
        blades=shop.blades,
        diameters=[20.0, 30.0],
        bore=bore,
        work=work or Work(),
        feeding=feeding,
        allowances=allowances_for(shop),
    )


# [TG-6] 2016-17 p. 461: 0.05 to 0.15 at 2 to 3 mm, 0.10 to 0.25 at 4 mm in carbon steel.
@pytest.mark.parametrize(
    ("width", "start", "largest"),
    [
        (2.0, 0.05, 0.15),
        (2.9, 0.05, 0.15),
        (4.0, 0.10, 0.25),
        (1.6, 0.05 * 0.8, 0.15 * 0.8),
        (1.0, 0.05 / 2.0, 0.15 / 2.0),
    ],
)
def test_feeds_come_from_the_row_at_or_under_the_width_and_shrink_below_the_first(
    mild_steel: Material, width: float, start: float, largest: float
) -> None:
    assert feeds_for_width(mild_steel.feeds, width) == pytest.approx((start, largest))


def test_the_allowances_on_force_are_multiplied(
    example: Shop, mild_steel: Material, aluminium: Material
) -> None:
    allowances = allowances_for(replace(example, allowances={"hss_force": 1.1}))
    carbide, _, hss = example.blades
    polished = replace(carbide, edge=Edge.POLISHED)

    def factor(material: Material, blade: Blade) -> float:
        return force_allowance(material, blade, allowances)

    assert factor(mild_steel, carbide) == pytest.approx(1.3)
    assert factor(mild_steel, hss) == pytest.approx(1.3 * 1.1)
    assert factor(mild_steel, polished) == pytest.approx(1.3)
    assert factor(aluminium, polished) == pytest.approx(1.3 * 0.85)
    assert factor(aluminium, replace(polished, worn=True)) == pytest.approx(1.3 * 0.85 * 1.3)


def test_the_edge_radius_is_measured_or_comes_from_the_state_of_the_edge(example: Shop) -> None:
    allowances: Allowances = allowances_for(example)
    carbide, _, hss = example.blades
    assert edge_radius(carbide, allowances) == 30.0
    assert edge_radius(hss, allowances) == 10.0
    assert edge_radius(replace(carbide, worn=True), allowances) == 60.0
    measured = replace(carbide, edge_radius=18.0, worn=True)
    assert edge_radius(measured, allowances) == 18.0


@pytest.mark.parametrize(("feeding", "share"), [(Feeding.HAND, 0.9), (Feeding.POWER, 0.5)])
def test_the_edge_floor_is_its_share_of_the_edge_radius(
    example: Shop, mild_steel: Material, feeding: Feeding, share: float
) -> None:
    grid = grid_of(example, mild_steel, feeding=feeding)
    assert grid.edge_floor.reshape(-1) == pytest.approx([share * r / 1000.0 for r in (30, 30, 10)])


def test_the_depth_of_a_tube_is_its_wall(example: Shop, mild_steel: Material) -> None:
    grid = grid_of(example, mild_steel, bore=14.0, feeding=Feeding.HAND)
    assert grid.depth.reshape(-1).tolist() == [3.0, 8.0]
    assert grid.shape == (1, 3, 2)


@pytest.mark.parametrize("bore", [20.0, 25.0, -1.0])
def test_a_bore_that_leaves_nothing_to_cut_is_refused(
    example: Shop, mild_steel: Material, bore: float
) -> None:
    message = f"a bore of {bore:g} mm leaves nothing to cut at 20 mm diameter"
    with pytest.raises(ValueError, match="leaves nothing to cut") as caught:
        grid_of(example, mild_steel, bore=bore, feeding=Feeding.HAND)
    assert str(caught.value) == message


def test_a_material_without_force_data_asks_for_no_force(example: Shop) -> None:
    grid = grid_of(example, load_material("nylon"), feeding=Feeding.HAND)
    assert not grid.has_force.any()
    assert not grid.force_constant.any()


def test_only_work_hardening_metals_have_a_floor_under_the_skin(
    example: Shop, mild_steel: Material, stainless: Material
) -> None:
    assert grid_of(example, mild_steel, feeding=Feeding.HAND).skin_floor.item() == 0.0
    assert grid_of(example, stainless, feeding=Feeding.HAND).skin_floor.item() == 0.02


# The cut stands at the allowance of 5 mm from the jaws; its far side is a width farther on.
def test_the_bar_overhangs_by_the_distance_to_the_near_side_and_the_width(
    example: Shop, mild_steel: Material
) -> None:
    widths = [blade.insert_width for blade in example.blades]
    plain = grid_of(example, mild_steel)
    assert plain.jaw_distance.reshape(-1) == pytest.approx([5.0 + width for width in widths])
    measured = grid_of(example, mild_steel, work=Work(jaw_distance=12.0))
    assert measured.jaw_distance.reshape(-1) == pytest.approx([12.0 + width for width in widths])
    allowed = replace(example, allowances={"jaw_distance": 8.0})
    assert grid_of(allowed, mild_steel).jaw_distance.reshape(-1) == pytest.approx(
        [8.0 + width for width in widths]
    )
