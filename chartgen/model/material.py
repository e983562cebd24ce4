"""A work material with its published data, each number with source and mark of trust."""

from dataclasses import dataclass
from enum import Enum

from chartgen.model.blade import ToolMaterial
from chartgen.sources import Sourced


class IsoGroup(Enum):
    """Work material groups of ISO 513."""

    P = "P", "steel"
    M = "M", "austenitic stainless steel"
    K = "K", "cast iron"
    N = "N", "non-ferrous metal and plastic"
    S = "S", "heat-resistant and titanium alloy"

    def __init__(self, letter: str, meaning: str) -> None:
        self.letter = letter
        self.meaning = meaning


@dataclass(frozen=True, slots=True, kw_only=True)
class ForceData:
    """Constants of the cutting-force power law, with the band the printings leave.

    `band_low` and `band_high` are fractions at chips of 0.1 mm and thicker, as in 0.25;
    the engine widens them for thinner chips.
    """

    specific_force: Sourced
    thickness_exponent: Sourced
    band_low: Sourced
    band_high: Sourced


@dataclass(frozen=True, slots=True, kw_only=True)
class SpeedData:
    """Surface speeds in m/min of one tool family in one material, for parting.

    `low` is the slow end of what the sources print; `soft_floor` the speed under which
    metal builds up on a carbide edge, None where that is not applicable.
    """

    start: Sourced
    low: Sourced
    ceiling: Sourced
    soft_floor: Sourced | None


@dataclass(frozen=True, slots=True, kw_only=True)
class FeedRow:
    """Start and largest feed in mm/rev for insert widths from `width` mm up to the next row."""

    width: float
    start: Sourced
    largest: Sourced


@dataclass(frozen=True, slots=True, kw_only=True)
class FeedClass:
    """Feeds by insert width for a family of materials; rows rise in width."""

    key: str
    rows: tuple[FeedRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """A work material. `force` and `unit_energy` are None where no source gives them.

    Density in g/cm³, modulus and strength in N/mm², unit energy in J/mm³. `tags` choose the
    cautions of a card and say how the chip behaves; `work_hardens` sets a least feed.
    """

    key: str
    name: str
    also: tuple[str, ...]
    iso_group: IsoGroup
    condition: str
    hardness: Sourced | None
    density: Sourced
    youngs_modulus: Sourced
    tensile_strength: Sourced
    force: ForceData | None
    unit_energy: Sourced | None
    speeds: dict[ToolMaterial, SpeedData]
    feeds: FeedClass
    wants_polished_edge: bool
    work_hardens: bool
    tags: tuple[str, ...]
    note: str
