"""The widest slot the lathe can part, against diameter: blades it has and blades it could have."""

from dataclasses import dataclass, replace

import numpy as np

from chartgen.charts.feed_windows import curve_diameters
from chartgen.limits.run import windows
from chartgen.model.blade import Blade, ToolMaterial
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.quantities import BoolArray, FloatArray, Millimetres, frozen_array

# Widths tried: from the narrowest blade sold to wider than a small lathe drives.
_NARROWEST: Millimetres[float] = 1.0
_WIDEST: Millimetres[float] = 5.0
_STEP: Millimetres[float] = 0.1
_DIAMETERS = 20


@dataclass(frozen=True, slots=True, kw_only=True, eq=False, repr=False)
class WidestBlade:
    """The widest insert width [mm] with a window, and with one that is not tight; 0 for none.

    Every blade tried is like `template` but for its width and, in proportion, its body.
    """

    template: Blade
    usable: FloatArray
    good: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False, repr=False)
class WidestBlades:
    """One curve for each kind of tool the shop owns; `step` is how finely widths were tried."""

    shop: Shop
    material: Material
    diameters: FloatArray
    step: Millimetres[float]
    most: Millimetres[float]
    kinds: tuple[WidestBlade, ...]


def widest_blades(shop: Shop, material: Material) -> WidestBlades:
    """Return the widest blade against diameter for each tool material a shop owns."""
    diameters = curve_diameters(shop, _DIAMETERS)
    widths = np.arange(_NARROWEST, _WIDEST + _STEP / 2.0, _STEP)
    templates = [
        max((b for b in shop.blades if b.tool_material is kind), key=lambda b: b.projection)
        for kind in ToolMaterial
        if any(b.tool_material is kind for b in shop.blades)
    ]
    tried = [_of_width(blade, float(width)) for blade in templates for width in widths]
    found = windows(shop, materials=[material], blades=tried, diameters=diameters.tolist())
    shape = (len(templates), widths.size, diameters.size)
    has_window = found.has_window.reshape(shape)
    is_good = has_window & ~found.is_tight.reshape(shape)
    return WidestBlades(
        shop=shop,
        material=material,
        diameters=diameters,
        step=_STEP,
        most=_WIDEST,
        kinds=tuple(
            WidestBlade(
                template=blade,
                usable=_widest(has_window[k], widths),
                good=_widest(is_good[k], widths),
            )
            for k, blade in enumerate(templates)
        ),
    )


def _of_width(blade: Blade, width: Millimetres[float]) -> Blade:
    """Return a blade of another width, its body thinner or thicker in proportion.

    A body is never thicker than high: it stands on its narrow side.
    """
    ratio = min(width / blade.insert_width, blade.height / blade.thickness)
    return replace(
        blade,
        name=f"{blade.name} at {width:g} mm",
        insert_width=width,
        thickness=blade.thickness * ratio,
        strips=tuple((thickness * ratio, height) for thickness, height in blade.strips),
    )


def _widest(holds: BoolArray, widths: FloatArray) -> FloatArray:
    """Return the largest width that holds at each diameter, 0 where none does."""
    return frozen_array((holds * widths[:, np.newaxis]).max(axis=0))
