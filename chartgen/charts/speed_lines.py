"""Spindle speed against diameter: what the edge asks for, and what the machine has."""

from dataclasses import dataclass

from chartgen.limits.allowances import allowances_for
from chartgen.limits.speed_caps import largest_chuck_speed
from chartgen.limits.window import Windows
from chartgen.model.blade import Blade, ToolMaterial
from chartgen.model.lathe import DrivePosition
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.quantities import MetresPerMinute, Millimetres, RevsPerMinute


@dataclass(frozen=True, slots=True)
class EdgeSpeeds:
    """The surface speeds of one tool material; `soft_floor` is 0 where nothing builds up."""

    tool_material: ToolMaterial
    start: MetresPerMinute[float]
    ceiling: MetresPerMinute[float]
    soft_floor: MetresPerMinute[float]


@dataclass(frozen=True, slots=True)
class RecommendedSpeed:
    """The speed a lathe chart prints for a diameter."""

    blade: Blade
    diameter: Millimetres[float]
    speed: RevsPerMinute[float]


@dataclass(frozen=True, slots=True, kw_only=True)
class SpeedLines:
    """All that stands on a log-log chart of speed over diameter, for one material."""

    shop: Shop
    material: Material
    smallest: Millimetres[float]
    largest: Millimetres[float]
    edges: tuple[EdgeSpeeds, ...]
    positions: tuple[DrivePosition, ...]
    fastest_spindle: RevsPerMinute[float]
    chuck_speed: RevsPerMinute[float]
    recommended: tuple[RecommendedSpeed, ...]


def speed_lines(shop: Shop, windows: Windows, material: Material) -> SpeedLines:
    """Return the speeds of one material on this lathe."""
    grid = windows.grid
    m = grid.materials.index(material)
    diameters = [float(d) for d in grid.diameter.reshape(-1)]
    kinds = [k for k in ToolMaterial if any(b.tool_material is k for b in grid.blades)]
    return SpeedLines(
        shop=shop,
        material=material,
        smallest=min(diameters),
        largest=max(diameters),
        edges=tuple(_edge(material, kind) for kind in kinds),
        positions=shop.lathe.drive.positions,
        fastest_spindle=min(
            shop.lathe.drive.fastest_spindle,
            max(p.fastest for p in shop.lathe.drive.positions),
        ),
        chuck_speed=largest_chuck_speed(shop.lathe.chuck, allowances_for(shop)),
        recommended=tuple(
            RecommendedSpeed(blade, diameter, float(windows.spindle_speed[m, b, d]))
            for b, blade in enumerate(grid.blades)
            for d, diameter in enumerate(diameters)
            if windows.has_window[m, b, d]
        ),
    )


def _edge(material: Material, kind: ToolMaterial) -> EdgeSpeeds:
    speeds = material.speeds[kind]
    return EdgeSpeeds(
        tool_material=kind,
        start=speeds.start.value,
        ceiling=speeds.ceiling.value,
        soft_floor=speeds.soft_floor.value if speeds.soft_floor else 0.0,
    )
