"""Where cards of one size stand on the front of a sheet, and how many."""

from dataclasses import dataclass, replace

from chartgen.errors import RequestError
from chartgen.layout.pages import SEALED_EDGE, page_name
from chartgen.layout.sheets.papers import PAPERS
from chartgen.layout.sheets.plan import MISREGISTER, SHORTEST_MARK, SheetPlan
from chartgen.quantities import Millimetres
from chartgen.wording.sheet import Lamination

_ROUNDING: Millimetres[float] = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Places:
    """Rows and columns of cards of one size; `turn` is how far each is turned, clockwise.

    `foot` is where check rule and words begin, or None where the cards leave no room for them.
    """

    plan: SheetPlan
    card: tuple[Millimetres[float], Millimetres[float]]
    turn: int
    columns: int
    rows: int
    foot: Millimetres[float] | None

    @property
    def count(self) -> int:
        """Cards on a sheet."""
        return self.columns * self.rows

    @property
    def footprint(self) -> tuple[Millimetres[float], Millimetres[float]]:
        """Width and height of a card as it stands."""
        width, height = self.card
        return (height, width) if self.turn else (width, height)

    @property
    def block(self) -> tuple[Millimetres[float], Millimetres[float]]:
        """Width and height of all cards with their gaps."""
        gap, (width, height) = self.plan.gap, self.footprint
        return (
            self.columns * (width + gap) - gap,
            self.rows * (height + gap) - gap,
        )

    @property
    def corner(self) -> tuple[Millimetres[float], Millimetres[float]]:
        """Top left corner of the block: in the middle of the paper, or of what the foot leaves."""
        width, height = self.block
        top, bottom = self.plan.card_room[1], _bottom(self.plan, self.foot)
        return (self.plan.size[0] - width) / 2.0, (top + bottom - height) / 2.0

    @property
    def positions(self) -> tuple[tuple[Millimetres[float], Millimetres[float]], ...]:
        """Top left corners of the cards as they stand, row by row."""
        (left, top), (width, height), gap = self.corner, self.footprint, self.plan.gap
        return tuple(
            (left + column * (width + gap), top + row * (height + gap))
            for row in range(self.rows)
            for column in range(self.columns)
        )


def places_for(
    card: tuple[Millimetres[float], Millimetres[float]],
    plan: SheetPlan,
    *,
    foot: Millimetres[float],
) -> Places:
    """Return as many places as a sheet has, upright or turned; `foot` is how high its foot is.

    Raises
    ------
    RequestError
        If not one card fits; the message names a sheet that holds it.
    """
    best = _most_places(card, plan, foot)
    if best.count:
        return best
    larger = [
        f"{name}{_edge_words(edge_to_edge) if edge_to_edge != plan.edge_to_edge else ''}"
        for edge_to_edge in (plan.edge_to_edge, not plan.edge_to_edge)
        for name in (plan.paper, *PAPERS)
        if not (edge_to_edge and plan.lamination is Lamination.TOGETHER)
        and _most_places(card, replace(plan, paper=name, edge_to_edge=edge_to_edge), foot).count
    ]
    mend = f"use {larger[0]}" if larger else "print it as a single card, without --sheet"
    raise RequestError(
        f"a card of {page_name(card)} ({card[0]:g} x {card[1]:g} mm) does not fit on {plan.paper} "
        f"with its marks and margins; {mend}."
    )


def _edge_words(edge_to_edge: bool) -> str:  # noqa: FBT001 - a pair of words
    return " --edge-to-edge" if edge_to_edge else " without --edge-to-edge"


def _most_places(
    card: tuple[Millimetres[float], Millimetres[float]], plan: SheetPlan, foot: Millimetres[float]
) -> Places:
    """Return the arrangement with most cards; of equals an upright one, and one with a foot."""
    foot_top = plan.printable[3] - foot
    feet: tuple[float | None, ...] = (foot_top, None) if plan.edge_to_edge else (foot_top,)
    every = [_filled(card, plan, turn, top) for top in feet for turn in (0, 90)]
    return max(every, key=lambda places: places.count)


def _filled(
    card: tuple[Millimetres[float], Millimetres[float]],
    plan: SheetPlan,
    turn: int,
    foot: Millimetres[float] | None,
) -> Places:
    left, top, right, _ = plan.card_room
    room = (right - left, _bottom(plan, foot) - top)
    if plan.lamination is Lamination.TOGETHER:
        film = plan.film
        room = (
            min(room[0], film[0] - 2.0 * SEALED_EDGE),
            min(room[1], film[1] - 2.0 * SEALED_EDGE),
        )
    size = (card[1], card[0]) if turn else card
    columns, rows = (
        max(0, int((space + plan.gap + _ROUNDING) / (side + plan.gap)))
        for space, side in zip(room, size, strict=True)
    )
    return Places(plan=plan, card=card, turn=turn, columns=columns, rows=rows, foot=foot)


def _bottom(plan: SheetPlan, foot: Millimetres[float] | None) -> Millimetres[float]:
    """Return where the lowest card may end: over the foot with room for a mark, if there is one."""
    return plan.card_room[3] if foot is None else foot - MISREGISTER - SHORTEST_MARK
