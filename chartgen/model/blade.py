"""The parting blade: what it is made of, how sharp, how wide, how far it sticks out."""

from dataclasses import dataclass
from enum import Enum

from chartgen.quantities import Micrometres, Millimetres

_STRIP_SLIP = 0.05


class ToolMaterial(Enum):
    """Tool family; decides speeds."""

    HSS = "hss"
    CARBIDE = "carbide"


class Edge(Enum):
    """State of the edge; decides the thinnest chip it can cut."""

    HONED = "honed"
    GROUND = "ground"
    DULL = "dull"
    POLISHED = "polished"
    THIN_COATED = "thin-coated"
    THICK_COATED = "thick-coated"

    @property
    def tool_material(self) -> ToolMaterial:
        """The tool family this state belongs to."""
        hss = {Edge.HONED, Edge.GROUND, Edge.DULL}
        return ToolMaterial.HSS if self in hss else ToolMaterial.CARBIDE


@dataclass(frozen=True, slots=True, kw_only=True)
class Blade:
    """One parting blade in its holder.

    `insert_width` is what is cut out of the bar, `thickness` the body that carries it.
    `edge_radius` is None where the owner has not measured it: the edge state decides.
    `strips` describe a tapered or T-shaped body from the bottom up as (thickness, height);
    empty for a plain flat one.
    """

    name: str
    tool_material: ToolMaterial
    edge: Edge
    edge_radius: Micrometres[float] | None = None
    worn: bool = False
    insert_width: Millimetres[float]
    thickness: Millimetres[float]
    height: Millimetres[float]
    projection: Millimetres[float]
    strips: tuple[tuple[Millimetres[float], Millimetres[float]], ...] = ()

    def __post_init__(self) -> None:
        if self.edge.tool_material is not self.tool_material:
            states = [e.value for e in Edge if e.tool_material is self.tool_material]
            raise ValueError(
                f"edge '{self.edge.value}' is not a state of a {self.tool_material.value} edge; "
                f"use one of {', '.join(states)}"
            )
        if self.thickness > self.insert_width:
            raise ValueError(
                f"thickness ({self.thickness:g} mm) is more than insert_width "
                f"({self.insert_width:g} mm): the body would rub in its own slot"
            )
        if self.strips and abs(sum(h for _, h in self.strips) - self.height) > _STRIP_SLIP:
            raise ValueError(
                f"strips are {sum(h for _, h in self.strips):g} mm high together and the blade "
                f"{self.height:g} mm; list them all, from the bottom up"
            )
        if self.height < self.thickness:
            raise ValueError(
                f"height ({self.height:g} mm) is less than thickness ({self.thickness:g} mm); "
                "a blade stands on its narrow side"
            )
