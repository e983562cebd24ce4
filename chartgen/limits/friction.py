"""The friction in the jaws, taken apart: surface, jaws, factor of the material."""

from dataclasses import dataclass

from chartgen.model.lathe import BarSurface, Chuck
from chartgen.model.lathe import JawFace as Jaws
from chartgen.model.material import IsoGroup, Material
from chartgen.model.shop import Shop
from chartgen.reference.chucks import JawFace, WorkSurface, load_holding
from chartgen.sources import Sourced

_SURFACES = {
    BarSurface.GROUND: WorkSurface.GROUND,
    BarSurface.BRIGHT: WorkSurface.ROUGH,
    BarSurface.BLACK: WorkSurface.UNMACHINED,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Friction:
    """What the friction of a material in the jaws is made of; no factor for steel."""

    held: str
    on_steel: Sourced
    factor: Sourced | None
    factor_name: str

    @property
    def value(self) -> float:
        """The friction coefficient."""
        return self.on_steel.value * (self.factor.value if self.factor else 1.0)


def held_in(shop: Shop) -> str:
    """Return what closes on what, as in "bright bar" or "black bar in serrated jaws"."""
    jaws = shop.lathe.chuck.jaws
    bar = f"{shop.work.surface.value} bar"
    return bar if jaws is Jaws.SMOOTH else f"{bar} in {jaws.value} jaws"


def friction_of(chuck: Chuck, surface: BarSurface, material: Material) -> Friction:
    """Return the friction of one material in the jaws of a chuck.

    Plastics have no factor of their own; brass is the cautious one of their group.
    """
    data, jaws = load_holding(), chuck.jaws
    name = _factor_name(material)
    return Friction(
        held=f"{surface.value} bar in {jaws.value} jaws",
        on_steel=data.jaw_friction[_SURFACES[surface]][JawFace(jaws.value)],
        factor=data.friction_factor[name] if name else None,
        factor_name=name,
    )


def _factor_name(material: Material) -> str:
    if material.iso_group is IsoGroup.K:
        return "iron"
    if material.iso_group is IsoGroup.N:
        # By the class of feeds, not the name: aluminium bronze is a copper alloy.
        return "aluminium" if material.feeds.key == "aluminium" else "brass"
    return ""
