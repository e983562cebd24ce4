"""Where to cut and how to round: on the front alone, outside the cards or on their cut."""

from collections.abc import Iterator, Sequence

from chartgen.layout.legibility import POINT
from chartgen.layout.placed import Drawing, Item, Mounted, Rule
from chartgen.layout.primitives import Stroke, arc
from chartgen.layout.sheets.plan import MISREGISTER, SHORTEST_MARK, SheetPlan
from chartgen.quantities import Millimetres

_WEIGHT = 0.25
"""Points: the thinnest line a laser printer holds, from memory."""
_LONGEST: Millimetres[float] = 5.0
_FLOATS: Millimetres[float] = 1e-3
_SMALL_CARD: Millimetres[float] = 90.0

Bounds = tuple[float, float, float, float]


def corner_radius(card: tuple[Millimetres[float], Millimetres[float]]) -> Millimetres[float]:
    """Return the radius to round a card's corners to: 3 mm to bank card size, 5 mm above.

    ISO/IEC 7810 rounds its ID-1 cards to 3.18 mm; corner punches are sold for 3, 5 and 10 mm,
    from memory.
    """
    return 3.0 if max(card) <= _SMALL_CARD else 5.0


def marks(
    mounted: Sequence[Mounted], plan: SheetPlan, *, bottom: Millimetres[float]
) -> tuple[Item, ...]:
    """Return ticks along every cut and an arc in every corner that the printer reaches.

    Nothing stands below `bottom`, where the foot of the sheet begins.
    """
    left, top, right, _ = plan.printable
    reach = left, top, right, bottom
    boxes = [
        (card.x, card.y, card.x + card.footprint[0], card.y + card.footprint[1]) for card in mounted
    ]
    cuts = dict.fromkeys(tick for box in boxes for tick in _ticks(box, boxes, reach))
    if plan.edge_to_edge:
        cuts |= dict.fromkeys(_seams(boxes, reach))
    radius = corner_radius((mounted[0].page.width, mounted[0].page.height))
    return (
        *(Rule(x1=x1, y1=y1, x2=x2, y2=y2, weight=_WEIGHT) for x1, y1, x2, y2 in cuts),
        *(part for box in boxes for part in _arcs(box, radius, reach)),
    )


def _ticks(box: Bounds, boxes: Sequence[Bounds], reach: Bounds) -> Iterator[Bounds]:
    """Yield the cuts' continuations beyond a card: long where there is room, or short, or none."""
    left, top, right, bottom = box
    for beyond, sign, along in (
        (left, -1.0, (top, bottom)),
        (right, 1.0, (top, bottom)),
        (top, -1.0, (left, right)),
        (bottom, 1.0, (left, right)),
    ):
        for at in along:
            for length in (_LONGEST, SHORTEST_MARK):
                start = beyond + sign * MISREGISTER
                first, last = sorted((round(start, 4), round(start + sign * length, 4)))
                level = round(at, 4)
                across = along == (top, bottom)
                tick = (first, level, last, level) if across else (level, first, level, last)
                if _is_within(tick, reach) and not any(_is_near(tick, card) for card in boxes):
                    yield tick
                    break


def _is_within(part: Bounds, reach: Bounds) -> bool:
    return (
        part[0] >= reach[0] - _FLOATS
        and part[1] >= reach[1] - _FLOATS
        and part[2] <= reach[2] + _FLOATS
        and part[3] <= reach[3] + _FLOATS
    )


def _is_near(tick: Bounds, card: Bounds) -> bool:
    """Return whether a tick comes nearer to a card than its back may lie off its front."""
    return (
        tick[2] > card[0] - MISREGISTER + _FLOATS
        and tick[0] < card[2] + MISREGISTER - _FLOATS
        and tick[3] > card[1] - MISREGISTER + _FLOATS
        and tick[1] < card[3] + MISREGISTER - _FLOATS
    )


def _seams(boxes: Sequence[Bounds], reach: Bounds) -> Iterator[Bounds]:
    """Yield both ends of every cut that two cards share, as far in as the printer reaches."""
    low_x, low_y, high_x, high_y = reach
    for left, top, right, bottom in boxes:
        for other in boxes:
            if abs(other[0] - right) < _FLOATS and abs(other[1] - top) < _FLOATS:
                start, end = max(top, low_y), min(bottom, high_y)
                yield right, start, right, start + _LONGEST
                yield right, end - _LONGEST, right, end
            if abs(other[1] - bottom) < _FLOATS and abs(other[0] - left) < _FLOATS:
                start, end = max(left, low_x), min(right, high_x)
                yield start, bottom, start + _LONGEST, bottom
                yield end - _LONGEST, bottom, end, bottom


def _arcs(box: Bounds, radius: Millimetres[float], reach: Bounds) -> Iterator[Drawing]:
    """Yield a quarter circle in each corner that the printer reaches; it touches both edges."""
    left, top, right, bottom = box
    # The unit square of a drawing has its origin bottom left: centre of the circle, first angle.
    for x, y, centre, start in (
        (left, top, (1.0, 0.0), 90.0),
        (right - radius, top, (0.0, 0.0), 0.0),
        (right - radius, bottom - radius, (0.0, 1.0), -90.0),
        (left, bottom - radius, (1.0, 1.0), 180.0),
    ):
        if _is_within((x, y, x + radius, y + radius), reach):
            yield Drawing(
                x=x,
                y=y,
                size=radius,
                primitives=(
                    Stroke(arc(*centre, 1.0, start, start + 90.0), _WEIGHT * POINT / radius, "ink"),
                ),
                meaning=f"corner radius {radius:g} mm",
            )
