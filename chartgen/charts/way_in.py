"""The way in to the centre of one material: a small, a middle and a large bar, one blade."""

from dataclasses import dataclass

from chartgen.limits.allowances import allowances_for
from chartgen.limits.way_in import WayIn, way_in
from chartgen.limits.window import Windows
from chartgen.model.blade import Blade
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.physics.centre import CentreFeedRule, pip_radius, working_rake
from chartgen.quantities import Degrees, Millimetres

_SIZES = 3
_RADII: tuple[Millimetres[float], ...] = (2.0, 0.5)


@dataclass(frozen=True, slots=True)
class TurnedAngles:
    """By how much rake and clearance turn at a diameter with the edge off centre height."""

    diameter: Millimetres[float]
    turned: Degrees[float]


@dataclass(frozen=True, slots=True, kw_only=True)
class CentreChart:
    """What happens on the way in; `ways` is empty where no blade has a window.

    `height_error` is how far the edge may be off centre, `height_pip` the diameter of the pip
    that an edge so far below it passes under.
    """

    shop: Shop
    material: Material
    blade: Blade
    has_soft_floor: bool
    rule: CentreFeedRule
    ways: tuple[WayIn, ...]
    height_error: Millimetres[float]
    height_pip: Millimetres[float]
    turned: tuple[TurnedAngles, ...]


def centre_chart(
    shop: Shop,
    windows: Windows,
    material: Material,
    rule: CentreFeedRule = CentreFeedRule.TO_HALF,
) -> CentreChart:
    """Return the way in with the first blade that has windows for three sizes.

    Where none has three, the blade with the most is taken.
    """
    m = windows.grid.materials.index(material)
    sizes = [
        [d for d in range(windows.grid.shape[2]) if windows.has_window[m, b, d]]
        for b in range(windows.grid.shape[1])
    ]
    blade = max(range(len(sizes)), key=lambda b: min(len(sizes[b]), _SIZES))
    height = allowances_for(shop).centre_height
    return CentreChart(
        shop=shop,
        material=material,
        blade=windows.grid.blades[blade],
        has_soft_floor=bool(windows.grid.soft_floor[m, blade, 0, 0] > 0.0),
        rule=rule,
        ways=tuple(
            way_in(shop, windows, (m, blade, d), rule) for d in _small_middle_large(sizes[blade])
        ),
        height_error=height,
        height_pip=float(2.0 * pip_radius(height_error=-height)),
        turned=tuple(
            TurnedAngles(
                2.0 * radius, float(working_rake(rake=0.0, height_error=height, radius=radius))
            )
            for radius in _RADII
        ),
    )


def _small_middle_large(sizes: list[int]) -> list[int]:
    """Return the first, the middle and the last of some sizes, or all of fewer."""
    if len(sizes) <= _SIZES:
        return sizes
    return [sizes[0], sizes[len(sizes) // 2], sizes[-1]]
