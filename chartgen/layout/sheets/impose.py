"""Leaves on sheets: fronts row by row, backs where the flip brings them behind their fronts."""

from collections.abc import Iterable, Iterator
from itertools import islice

from chartgen.layout.pages import POUCHES, SEALED_EDGE, film_edge
from chartgen.layout.placed import Item, Mounted, Page
from chartgen.layout.sheets.foot import back_items, foot_height, foot_items
from chartgen.layout.sheets.hole import HOLE, hole_mark, hole_place
from chartgen.layout.sheets.leaves import Leaf
from chartgen.layout.sheets.marks import corner_radius, marks
from chartgen.layout.sheets.places import Places, places_for
from chartgen.layout.sheets.plan import SheetPlan
from chartgen.layout.typesetting import Measure
from chartgen.quantities import Millimetres
from chartgen.wording.language import ENGLISH, speaking
from chartgen.wording.sheet import Flip, Lamination, Pouch, sheet_words


class Imposition:
    """How the cards of one size, for one kind of pouch, stand on the sheets of a plan."""

    def __init__(
        self,
        plan: SheetPlan,
        *,
        card: tuple[Millimetres[float], Millimetres[float]],
        pouch: str,
        measure: Measure,
        language: str = ENGLISH,
    ) -> None:
        """Find the places; the foot of a sheet is said in a language.

        Raises
        ------
        RequestError
            If not one card fits on the sheet.
        """
        self.plan = plan
        self._measure = measure
        self.language = language
        with speaking(language):
            self._words = sheet_words(
                paper=plan.paper,
                flip=plan.flip,
                lamination=plan.lamination,
                pouch=_pouch(plan, card, pouch),
                gap=plan.gap,
                radius=corner_radius(card),
                hole=HOLE if plan.hole else None,
            )
            height = foot_height(plan, self._words, measure)
        self.places: Places = places_for(card, plan, foot=height)

    def sheets(self, leaves: Iterable[Leaf]) -> Iterator[Page]:
        """Yield front and back of each sheet in turn; only one sheet is held at a time."""
        waiting = iter(leaves)
        number = 0
        while some := list(islice(waiting, self.places.count)):
            number += 1
            yield self._front(some, number)
            yield self._back(some, number)

    def _front(self, leaves: list[Leaf], number: int) -> Page:
        plan, places = self.plan, self.places
        mounted = tuple(
            Mounted(x=x, y=y, turn=places.turn, page=leaf.front)
            for leaf, (x, y) in zip(leaves, places.positions, strict=False)
        )
        items: list[Item] = [*marks(mounted, plan, bottom=places.foot or plan.printable[3])]
        if plan.hole:
            items += [
                hole_mark(card, *hole_place(leaf, self._measure))
                for card, leaf in zip(mounted, leaves, strict=True)
            ]
        if places.foot is not None:
            with speaking(self.language):
                items += foot_items(plan, self._words, self._measure, top=places.foot, sheet=number)
        width, height = plan.size
        return Page(width=width, height=height, items=tuple(items), mounted=mounted)

    def _back(self, leaves: list[Leaf], number: int) -> Page:
        plan, places = self.plan, self.places
        width, height = plan.size
        mounted = tuple(
            behind(
                Mounted(x=x, y=y, turn=places.turn, page=leaf.front),
                leaf.back,
                plan,
            )
            for leaf, (x, y) in zip(leaves, places.positions, strict=False)
        )
        # Flipped on the short edge, the foot of the front lies behind the head of the back.
        items: tuple[Item, ...] = ()
        if places.foot is not None and plan.flip is Flip.LONG:
            with speaking(self.language):
                items = back_items(plan, top=places.foot, sheet=number)
        return Page(width=width, height=height, items=items, mounted=mounted)


def behind(front: Mounted, back: Page, plan: SheetPlan) -> Mounted:
    """Return a back so mounted that it lies on its front once the sheet is flipped.

    A flip on the long edge of an upright sheet mirrors left and right, one on the short edge top
    and bottom. The cut-out card is then turned in the hand like the page of a book, which
    mirrors left and right *of the card*; two mirrors make a turn.
    """
    width, height = plan.size
    across, down = front.footprint
    if plan.flip is Flip.LONG:
        return Mounted(x=width - front.x - across, y=front.y, turn=-front.turn % 360, page=back)
    return Mounted(x=front.x, y=height - front.y - down, turn=(180 - front.turn) % 360, page=back)


def _pouch(
    plan: SheetPlan, card: tuple[Millimetres[float], Millimetres[float]], name: str
) -> Pouch:
    if plan.lamination is Lamination.TOGETHER:
        return Pouch(name=plan.paper, film=plan.film, edge=SEALED_EDGE)
    return Pouch(name=name, film=POUCHES[name], edge=film_edge(card, name))
