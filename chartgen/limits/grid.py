"""Every cell asked for, as arrays that broadcast: material x blade x diameter x trial speed.

The four axes are kept apart until a limit needs them together, so that a power law is
worked out once for each material and blade and not once for each cell.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from chartgen.limits.allowances import Allowances, edge_radius
from chartgen.model.blade import Blade, Edge, ToolMaterial
from chartgen.model.lathe import Work
from chartgen.model.material import FeedClass, IsoGroup, Material
from chartgen.model.shop import Feeding
from chartgen.quantities import BoolArray, FloatArray, Millimetres, frozen_array


@dataclass(frozen=True, slots=True, kw_only=True, eq=False, repr=False)
class Grid:
    """The cells. Shapes: m = (M,1,1,1), mb = (M,B,1,1), b = (1,B,1,1), d = (1,1,D,1).

    `force_constant` (mb) is kc1.1 times width times every allowance on force, in N at a
    chip of 1 mm; 0 where `has_force` (m) is False, for a material without force data.
    `jaw_distance` (b) runs from the jaws to the far side of the cut. `soft_floor` (mb) is 0
    where no edge builds up. Speeds are m/min, feeds mm/rev, moduli N/mm².
    """

    materials: tuple[Material, ...]
    blades: tuple[Blade, ...]
    bore: Millimetres[float]
    diameter: FloatArray
    depth: FloatArray
    width: FloatArray
    projection: FloatArray
    has_force: BoolArray
    force_constant: FloatArray
    exponent: FloatArray
    band_low: FloatArray
    band_high: FloatArray
    thin_band_low: FloatArray
    thin_band_high: FloatArray
    start_speed: FloatArray
    speed_ceiling: FloatArray
    soft_floor: FloatArray
    start_feed: FloatArray
    largest_feed: FloatArray
    edge_floor: FloatArray
    skin_floor: FloatArray
    is_carbide: BoolArray
    is_steel: BoolArray
    jaw_distance: FloatArray
    youngs_modulus: FloatArray
    tensile_strength: FloatArray
    density: FloatArray

    @property
    def shape(self) -> tuple[int, int, int]:
        """Number of materials, blades and diameters."""
        return len(self.materials), len(self.blades), self.diameter.size


def feeds_for_width(feeds: FeedClass, width: Millimetres[float]) -> tuple[float, float]:
    """Return start and largest feed [mm/rev] for an insert width.

    The row at or under the width holds; below the first row both fall in proportion.
    """
    row = feeds.rows[0]
    for candidate in feeds.rows:
        if candidate.width <= width:
            row = candidate
    scale = min(1.0, width / feeds.rows[0].width)
    return row.start.value * scale, row.largest.value * scale


def force_allowance(material: Material, blade: Blade, allowances: Allowances) -> float:
    """Return the product of the allowances on the cutting force of one pair."""
    factor = allowances.confined_chip
    if blade.tool_material is ToolMaterial.HSS:
        factor *= allowances.hss_force
    if blade.edge is Edge.POLISHED and material.wants_polished_edge:
        factor *= allowances.polished_force
    if blade.worn:
        factor *= allowances.worn_edge_force
    return factor


def make_grid(
    *,
    materials: Sequence[Material],
    blades: Sequence[Blade],
    diameters: Sequence[float],
    bore: Millimetres[float] = 0.0,
    work: Work,
    feeding: Feeding,
    allowances: Allowances,
) -> Grid:
    """Lay out the cells of some materials, blades and diameters.

    Raises
    ------
    ValueError
        If the bore is not smaller than every diameter.
    """
    diameter = np.asarray(diameters, dtype=np.float64)
    if not 0.0 <= bore < diameter.min():
        raise ValueError(
            f"a bore of {bore:g} mm leaves nothing to cut at {diameter.min():g} mm diameter"
        )
    floor_ratio = (
        allowances.edge_floor_by_hand if feeding is Feeding.HAND else allowances.edge_floor_by_power
    )

    from_jaws = allowances.jaw_distance if work.jaw_distance is None else work.jaw_distance

    def by_material(values: object) -> FloatArray:
        return frozen_array(values).reshape(-1, 1, 1, 1)

    def by_pair(values: Sequence[Sequence[float]]) -> FloatArray:
        return frozen_array(values).reshape(len(materials), len(blades), 1, 1)

    def by_blade(values: object) -> FloatArray:
        return frozen_array(values).reshape(1, -1, 1, 1)

    bands = [
        (m.force.band_low.value, m.force.band_high.value) if m.force else (0.0, 0.0)
        for m in materials
    ]
    thin = allowances.thin_chip_band
    speeds = [[m.speeds[b.tool_material] for b in blades] for m in materials]
    feeds = [[feeds_for_width(m.feeds, b.insert_width) for b in blades] for m in materials]
    floors = [floor_ratio * edge_radius(b, allowances) / 1000.0 for b in blades]
    return Grid(
        materials=tuple(materials),
        blades=tuple(blades),
        bore=bore,
        diameter=frozen_array(diameter).reshape(1, 1, -1, 1),
        depth=frozen_array((diameter - bore) / 2.0).reshape(1, 1, -1, 1),
        width=by_blade([b.insert_width for b in blades]),
        projection=by_blade([b.projection for b in blades]),
        has_force=np.array([m.force is not None for m in materials]).reshape(-1, 1, 1, 1),
        force_constant=by_pair(
            [
                [
                    m.force.specific_force.value
                    * b.insert_width
                    * force_allowance(m, b, allowances)
                    if m.force
                    else 0.0
                    for b in blades
                ]
                for m in materials
            ]
        ),
        exponent=by_material(
            [m.force.thickness_exponent.value if m.force else 0.0 for m in materials]
        ),
        band_low=by_material([low for low, _ in bands]),
        band_high=by_material([high for _, high in bands]),
        thin_band_low=by_material([max(low, thin) for low, _ in bands]),
        thin_band_high=by_material([max(high, thin) for _, high in bands]),
        start_speed=by_pair([[s.start.value for s in row] for row in speeds]),
        speed_ceiling=by_pair([[s.ceiling.value for s in row] for row in speeds]),
        soft_floor=by_pair(
            [[s.soft_floor.value if s.soft_floor else 0.0 for s in row] for row in speeds]
        ),
        start_feed=by_pair([[start for start, _ in row] for row in feeds]),
        largest_feed=by_pair([[largest for _, largest in row] for row in feeds]),
        edge_floor=by_blade(floors),
        skin_floor=by_material(
            [allowances.work_hardening_feed if m.work_hardens else 0.0 for m in materials]
        ),
        is_carbide=np.array([b.tool_material is ToolMaterial.CARBIDE for b in blades]).reshape(
            1, -1, 1, 1
        ),
        is_steel=np.array([m.iso_group in {IsoGroup.P, IsoGroup.M} for m in materials]).reshape(
            -1, 1, 1, 1
        ),
        jaw_distance=by_blade([from_jaws + b.insert_width for b in blades]),
        youngs_modulus=by_material([m.youngs_modulus.value for m in materials]),
        tensile_strength=by_material([m.tensile_strength.value for m in materials]),
        density=by_material([m.density.value for m in materials]),
    )
