"""What is asked of a run of sheets, and the room its paper leaves for cards."""

from dataclasses import dataclass

from chartgen.layout.pages import PRINTER_MARGIN, SEALED_EDGE
from chartgen.layout.sheets.papers import PAPERS
from chartgen.quantities import Millimetres
from chartgen.wording.sheet import Flip, Lamination

MISREGISTER: Millimetres[float] = 2.0
"""How far the back may lie off the front: desktop printers do 1 to 3 mm, from memory; a copier's
service standard is 1 mm. Also how far a cut mark keeps from a card."""
SHORTEST_MARK: Millimetres[float] = 2.0
GAP: Millimetres[float] = 2.0 * SEALED_EDGE
"""Between cards: both keep their sealed edge when the film is cut in the middle."""
OLD_INKJET_MARGIN: Millimetres[float] = 13.0
"""What old ink-jets leave at the end they let go last: 12 to 14 mm, from memory."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetPlan:
    """Paper and what becomes of it.

    `end_margin` is kept at top and bottom alike, because a flip on the short edge makes the top
    of one side the bottom of the other. `edge_to_edge` sets cards without a gap, up to the
    edge of the paper where their own margins allow it.
    """

    paper: str
    flip: Flip
    lamination: Lamination
    end_margin: Millimetres[float]
    edge_to_edge: bool
    hole: bool

    def __post_init__(self) -> None:
        if self.paper not in PAPERS:
            raise ValueError(f"{self.paper!r} is no sheet; use one of {', '.join(PAPERS)}")
        if self.edge_to_edge and self.lamination is Lamination.TOGETHER:
            raise ValueError(
                "cards laminated together need film between them; leave out edge to edge, or "
                "laminate them singly"
            )

    @property
    def size(self) -> tuple[Millimetres[float], Millimetres[float]]:
        """Width and height of the paper, upright."""
        return PAPERS[self.paper].size

    @property
    def film(self) -> tuple[Millimetres[float], Millimetres[float]]:
        """Width and height of the film of the paper's pouch."""
        return PAPERS[self.paper].film

    @property
    def gap(self) -> Millimetres[float]:
        """Between neighbouring cards."""
        return 0.0 if self.edge_to_edge else GAP

    @property
    def printable(self) -> tuple[float, float, float, float]:
        """Left, top, right and bottom of what the printer reaches."""
        width, height = self.size
        return (PRINTER_MARGIN, self.end_margin, width - PRINTER_MARGIN, height - self.end_margin)

    @property
    def card_room(self) -> tuple[float, float, float, float]:
        """Left, top, right and bottom of where cards may stand.

        Apart, they leave room for a mark inside what the printer reaches. Edge to edge only
        their content must be within its reach, and every layout keeps that off the card's edge.
        """
        left, top, right, bottom = self.printable
        inward = MISREGISTER + SHORTEST_MARK
        if self.edge_to_edge:
            inward = -PRINTER_MARGIN
        return left + inward, top + inward, right - inward, bottom - inward


def plan_sheets(
    *,
    paper: str,
    flip: str = "long",
    laminate: str = "singly",
    margin: str = "cautious",
    edge_to_edge: bool = False,
    hole: bool = False,
) -> SheetPlan:
    """Return a plan from the words of a command."""
    return SheetPlan(
        paper=paper,
        flip=Flip(flip),
        lamination=Lamination(laminate),
        end_margin=MARGINS[margin],
        edge_to_edge=edge_to_edge,
        hole=hole,
    )


MARGINS = {"cautious": PRINTER_MARGIN, "wide": OLD_INKJET_MARGIN}
