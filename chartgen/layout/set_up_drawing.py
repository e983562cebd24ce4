"""The parts of a set-up as lines: chuck and jaws broken off, the work whole, the blade black."""

import math

from chartgen.layout.drawn_to_scale import (
    AXIS,
    BEFORE,
    HIDDEN,
    NARROW,
    WIDE,
    Shown,
    View,
    boxes_of,
    hatched,
    outline,
    polyline,
    shown,
)
from chartgen.layout.placed import Item, Panel, Rule
from chartgen.wording.printed_job import PrintedSketch, SketchBox

_POINT_ANGLE = 60.0
"""Included angle of a lathe centre (memory; it is drawn, never computed with)."""
_BEYOND = 2.6


def drawn(sketch: PrintedSketch, view: View) -> list[Item]:
    """Return the lines of all parts, what lies behind first."""
    items: list[Item] = []
    for part in _shown(sketch, view, "chuck") + _shown(sketch, view, "jaws"):
        items += outline(part, weight=WIDE)
    items += _bar(sketch, view)
    for part in _shown(sketch, view, "piece"):
        items += outline(part, weight=WIDE)
    items += _grooves(sketch, view)
    for box in boxes_of(sketch, "bore"):
        items += _bore(box, view)
    for part in _shown(sketch, view, "cut"):
        items += [*hatched(part), *outline(part, weight=NARROW)]
    for part in _shown(sketch, view, "blade"):
        items += _blade(part)
    for box in boxes_of(sketch, "centre"):
        items += _centre(box, view)
    items.append(
        Rule(
            x1=view.left - _BEYOND,
            y1=view.axis,
            x2=view.right + _BEYOND,
            y2=view.axis,
            weight=NARROW,
            dash=AXIS,
        )
    )
    return items


def _shown(sketch: PrintedSketch, view: View, *parts: str) -> list[Shown]:
    found = (shown(box, view) for box in sketch.boxes if box.part in parts)
    return [part for part in found if part is not None]


def _bar(sketch: PrintedSketch, view: View) -> list[Item]:
    """Return the bar: hidden in the chuck, plain up to the cut, and beyond it as it was before."""
    items: list[Item] = []
    chuck = max((part.right for part in _shown(sketch, view, "chuck")), default=view.left)
    cuts = [part.left for part in _shown(sketch, view, "cut", "piece")]
    for part in _shown(sketch, view, "bar"):
        plain = min(cuts, default=part.right)
        front = _between(part, max(part.left, chuck), part.right)
        # The face of the chuck runs behind the bar.
        items.append(
            Panel(
                x=front.left,
                y=front.top,
                width=front.right - front.left,
                height=front.bottom - front.top,
                paper=True,
            )
        )
        if part.left < chuck:
            inside = _between(part, part.left, chuck)
            items += outline(inside, weight=NARROW, dash=HIDDEN, without=("right",))
        near = _between(part, max(part.left, chuck), max(plain, front.left))
        if "left" in front.broken:
            items += _broken_end(near)
        without = {"right"} if plain < part.right else set()
        without |= {"left"} if part.left < chuck or "left" in near.broken else set()
        items += outline(near, weight=WIDE, without=without)
        if plain < part.right:
            far = _between(part, plain, part.right)
            items += outline(far, weight=NARROW, dash=BEFORE, without=("left",))
    return items


def _between(part: Shown, left: float, right: float) -> Shown:
    """Return the part from one place to another; an edge inside it is not broken off."""
    kept = part.broken - {
        name
        for name, is_inside in (("left", left > part.left), ("right", right < part.right))
        if is_inside
    }
    return Shown(left=left, top=part.top, right=right, bottom=part.bottom, broken=kept)


def _broken_end(part: Shown) -> list[Rule]:
    """Return the end of a round bar broken off: an S, and its lower half closed and hatched."""
    radius = (part.bottom - part.top) / 2.0
    middle = part.top + radius
    swell = min(0.22 * radius, 2.0)

    def swung(share: float, side: float) -> tuple[float, float]:
        return part.left + side * swell * math.sin(math.pi * share), middle + share * radius

    shares = [number / 16.0 for number in range(-16, 17)]
    lower = [share for share in shares if share >= 0.0]
    rules = polyline([swung(share, 1.0) for share in shares], weight=NARROW)
    rules += polyline([swung(share, -1.0) for share in lower], weight=NARROW)
    for share in lower[2:-1:2]:
        # Between the two swings, rising at 45 degrees as far as the loop is wide here.
        reach = 0.8 * swell * math.sin(math.pi * share)
        y = middle + share * radius
        rules.append(
            Rule(
                x1=part.left - reach,
                y1=y + reach,
                x2=part.left + reach,
                y2=y - reach,
                weight=NARROW * 0.7,
            )
        )
    return rules


def _grooves(sketch: PrintedSketch, view: View) -> list[Item]:
    """Return grooves cut into the outline: their edges run right round the piece."""
    items: list[Item] = []
    pieces = _shown(sketch, view, "piece")
    for box in boxes_of(sketch, "groove"):
        part = shown(box, view)
        if part is None:
            continue
        outer = part.top if box.low >= 0.0 else part.bottom
        inner = part.bottom if box.low >= 0.0 else part.top
        # The outline is gone where the groove is.
        items.append(
            Panel(
                x=part.left,
                y=min(outer, inner) - (0.4 if outer < inner else 0.0),
                width=part.right - part.left,
                height=abs(outer - inner) + 0.4,
                paper=True,
            )
        )
        opposite = pieces[0].bottom - (outer - pieces[0].top) if pieces else inner
        items += [
            Rule(x1=x, y1=outer, x2=x, y2=(outer + opposite) / 2.0, weight=WIDE)
            for x in (part.left, part.right)
        ]
        items.append(Rule(x1=part.left, y1=inner, x2=part.right, y2=inner, weight=WIDE))
    return items


def _bore(box: SketchBox, view: View) -> list[Item]:
    """Return the sides of a hole, and its bottom where that lies inside the window: hidden."""
    part = shown(box, view)
    if part is None:
        return []
    return list(outline(part, weight=NARROW, dash=HIDDEN, without=("right",)))


def _blade(part: Shown) -> list[Item]:
    """Return the blade in black, as narrow cut faces are; it goes on where it is broken off."""
    fill = Panel(
        x=part.left,
        y=part.top,
        width=part.right - part.left,
        height=part.bottom - part.top,
    )
    return [fill]


def _centre(box: SketchBox, view: View) -> list[Item]:
    """Return a centre: its point, and as much of its body as the window shows."""
    part = shown(box, view)
    if part is None:
        return []
    radius = (part.bottom - part.top) / 2.0
    tip = radius / math.tan(math.radians(_POINT_ANGLE / 2.0))
    base = min(part.left + tip, part.right)
    # A body broken off before the point is as thick as it gets shows what there is of it.
    radius = (base - part.left) * math.tan(math.radians(_POINT_ANGLE / 2.0))
    middle = (part.top + part.bottom) / 2.0
    rules = polyline(
        ((base, middle - radius), (part.left, middle), (base, middle + radius)), weight=WIDE
    )
    if base < part.right:
        body = _between(part, base, part.right)
        rules += outline(body, weight=WIDE)
    else:
        rules += polyline(((base, middle - radius), (base, middle + radius)), weight=NARROW)
    return list(rules)
