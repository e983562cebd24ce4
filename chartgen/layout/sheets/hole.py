"""Where a hole to hang a card by touches nothing that is printed on either side."""

import math
from collections.abc import Iterator

from chartgen.errors import RequestError
from chartgen.layout.legibility import CAP_HEIGHT, POINT
from chartgen.layout.placed import Align, Drawing, Item, Mounted, Page, Panel, Plot, Rule, Text
from chartgen.layout.primitives import Ring, Stroke
from chartgen.layout.sheets.leaves import Leaf
from chartgen.layout.sheets.plan import MISREGISTER
from chartgen.layout.typesetting import Measure
from chartgen.quantities import Millimetres

HOLE: Millimetres[float] = 5.0
"""Diameter; 5 to 6 mm is usual for a single hole, from memory."""
FROM_EDGE: Millimetres[float] = 3.5
"""Centre from the card's edge. With 3 mm of film outside, 4 mm of card and film hold it, and the
content of most cards, which begins at 6.5 mm, stays clear even 2 mm off. No source: judgement."""
_IN_CORNER: Millimetres[float] = 5.0
_CLEAR: Millimetres[float] = 0.25
_DESCENT = 0.25
"""How far tails hang below the base line, over the font's size."""


def hole_place(leaf: Leaf, measure: Measure) -> tuple[Millimetres[float], Millimetres[float]]:
    """Return the centre of the hole on the front: in the middle of the top, or in a top corner.

    Raises
    ------
    RequestError
        If content stands at each of these places.
    """
    width = leaf.front.width
    reach = HOLE / 2.0 + _CLEAR
    for x in (width / 2.0, _IN_CORNER, width - _IN_CORNER):
        # The card turns like the page of a book: left of the front is right of the back.
        if _is_clear(leaf.front, x, reach, measure) and _is_clear(
            leaf.back, width - x, reach + MISREGISTER, measure
        ):
            return x, FROM_EDGE
    raise RequestError(
        f"{leaf.name}: content stands wherever a hole could be, in the middle of its top and in "
        "both top corners; leave out --hole, or choose another --layout."
    )


def hole_mark(mounted: Mounted, x: Millimetres[float], y: Millimetres[float]) -> Drawing:
    """Return circle and cross on the sheet, for a hole at (x, y) of a mounted card."""
    a, b, c, d, e, f = mounted.axes
    centre = (a * x + c * y + e, b * x + d * y + f)
    line = 0.25 * POINT / HOLE
    return Drawing(
        x=centre[0] - HOLE / 2.0,
        y=centre[1] - HOLE / 2.0,
        size=HOLE,
        primitives=(
            Ring(0.5, 0.5, 0.5, line, "ink"),
            Stroke(((0.2, 0.5), (0.8, 0.5)), line, "ink"),
            Stroke(((0.5, 0.2), (0.5, 0.8)), line, "ink"),
        ),
        meaning=f"hole {HOLE:g} mm",
    )


def _is_clear(
    page: Page, x: Millimetres[float], reach: Millimetres[float], measure: Measure
) -> bool:
    for left, top, right, bottom in _boxes(page, measure):
        across = max(left - x, 0.0, x - right)
        down = max(top - FROM_EDGE, 0.0, FROM_EDGE - bottom)
        if math.hypot(across, down) < reach:
            return False
    return True


def _boxes(page: Page, measure: Measure) -> Iterator[tuple[float, float, float, float]]:
    for item in page.items:
        yield _box(item, measure)


def _box(item: Item, measure: Measure) -> tuple[float, float, float, float]:
    match item:
        case Text():
            width = measure(item.text, item.face, item.size)
            shift = {Align.LEFT: 0.0, Align.RIGHT: width, Align.CENTRE: width / 2.0}[item.align]
            em = item.size * POINT
            left = item.x - shift
            return left, item.y - em * CAP_HEIGHT, left + width, item.y + em * _DESCENT
        case Rule():
            across, down = sorted((item.x1, item.x2)), sorted((item.y1, item.y2))
            return across[0], down[0], across[1], down[1]
        case Panel() | Plot():
            return item.x, item.y, item.x + item.width, item.y + item.height
        case Drawing():
            return item.x, item.y, item.x + item.size, item.y + item.size
