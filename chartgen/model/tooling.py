"""What a lathe has beside its parting blades: turning tools, boring bars, drills, a tailstock."""

from dataclasses import dataclass
from enum import Enum

from chartgen.model.blade import ToolMaterial
from chartgen.quantities import Millimetres


class BarMaterial(Enum):
    """What the shank of a boring bar is made of; decides how far it may stand out."""

    STEEL = "steel"
    CARBIDE = "carbide"


class DrillPoint(Enum):
    """How a drill's point is ground; decides how hard it pushes."""

    STANDARD = "standard"
    SPLIT = "split"


@dataclass(frozen=True, slots=True, kw_only=True)
class TurningTool:
    """A tool for facing and outside turning.

    `largest_depth` is the deepest cut its owner takes with it, None for the allowance.
    """

    name: str
    tool_material: ToolMaterial
    nose_radius: Millimetres[float]
    largest_depth: Millimetres[float] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class BoringBar:
    """A boring bar: `reach` is how far it can stand out, `smallest_bore` what it enters."""

    name: str
    tool_material: ToolMaterial
    shank: BarMaterial
    diameter: Millimetres[float]
    reach: Millimetres[float]
    smallest_bore: Millimetres[float]
    nose_radius: Millimetres[float]

    def __post_init__(self) -> None:
        if self.smallest_bore <= self.diameter:
            raise ValueError(
                f"smallest_bore ({self.smallest_bore:g} mm) is not larger than the bar's own "
                f"diameter ({self.diameter:g} mm): it could not enter"
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class Drills:
    """Twist drills of high-speed steel, by rising diameter; `centre_drill` is its pilot."""

    diameters: tuple[Millimetres[float], ...]
    point: DrillPoint = DrillPoint.STANDARD
    centre_drill: Millimetres[float] | None = None

    def __post_init__(self) -> None:
        if not self.diameters or list(self.diameters) != sorted(set(self.diameters)):
            raise ValueError("the diameters must rise, each once")


@dataclass(frozen=True, slots=True, kw_only=True)
class Tailstock:
    """The tailstock: `travel_per_turn` of its hand wheel, `largest_drill` its chuck holds."""

    travel_per_turn: Millimetres[float]
    largest_drill: Millimetres[float]
    live_centre: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Tools:
    """Every tool but the parting blades; empty where the owner listed none."""

    turning: tuple[TurningTool, ...] = ()
    boring: tuple[BoringBar, ...] = ()
    drills: Drills | None = None
    tailstock: Tailstock | None = None

    def __post_init__(self) -> None:
        names = [tool.name for tool in self.turning] + [bar.name for bar in self.boring]
        if len(names) != len(set(names)):
            raise ValueError("two tools have the same name")
