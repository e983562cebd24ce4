"""The paper of a sheet, and the laminating pouch of its size."""

from dataclasses import dataclass

from chartgen.layout.pages import POUCHES, SEALED_EDGE, page_size
from chartgen.quantities import Millimetres


@dataclass(frozen=True, slots=True, kw_only=True)
class Paper:
    """Width and height of a paper, upright, and of the film of its pouch."""

    size: tuple[Millimetres[float], Millimetres[float]]
    film: tuple[Millimetres[float], Millimetres[float]]

    def __post_init__(self) -> None:
        edges = [(f - p) / 2.0 for f, p in zip(self.film, self.size, strict=True)]
        if min(edges) < SEALED_EDGE:
            raise ValueError(f"a pouch of {self.film} mm does not seal round {self.size} mm")


# From memory: the films of A3 and tabloid. Letter's, 9 x 11.5 in, is stated by a shop.
PAPERS: dict[str, Paper] = {
    "A4": Paper(size=page_size("A4"), film=POUCHES["A4"]),
    "letter": Paper(size=page_size("letter"), film=(228.6, 292.1)),
    "A3": Paper(size=page_size("A3"), film=(303.0, 426.0)),
    "tabloid": Paper(size=(279.4, 431.8), film=(292.1, 444.5)),
}
"""What home and school printers take, the smaller ones first."""
