"""A set-up on paper: where its parts lie at a scale, and what of them is cut off.

Lines are those of ISO 128-2 (memory): wide for edges, narrow for the rest in half the weight;
dashed for what is hidden, chained for the axis, double-chained for what was there before the
cut.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from chartgen.layout.placed import Rule
from chartgen.quantities import Millimetres
from chartgen.wording.printed_job import Part, PrintedSketch, SketchBox

SCALES: tuple[tuple[int, int], ...] = (
    (10, 1),
    (5, 1),
    (2, 1),
    (1, 1),
    (1, 2),
    (1, 5),
    (1, 10),
    (1, 20),
    (1, 50),
)
"""Paper to real, the largest first: those of ISO 5455:1979 (memory)."""

WIDE, NARROW = 1.4, 0.7
"""Weights [pt] of a wide and a narrow line, two to one (ISO 128-2; memory)."""
# Strokes and gaps [pt] in the proportions of ISO 128-2 (memory): a dash of 12, a long one of
# 24, a gap of 3 and a dot of 0.5 line weights, the chains shortened by a third for a drawing
# this small (common practice, no source).
HIDDEN = (12.0 * NARROW, 3.0 * NARROW)
AXIS = (16.0 * NARROW, 3.0 * NARROW, 0.5 * NARROW, 3.0 * NARROW)
BEFORE = (16.0 * NARROW, *((3.0 * NARROW, 0.5 * NARROW) * 2), 3.0 * NARROW)

PAD: Millimetres[float] = 4.6
"""How far chuck, jaws and blade are shown beyond the work before they are broken off."""
_JAWS: Millimetres[float] = 26.0
"""The most paper that goes to jaws nobody has dimensioned."""
_CHUCK: Millimetres[float] = 7.0
_CENTRE: Millimetres[float] = 16.0
_BEYOND: Millimetres[float] = 3.0
"""How far the axis runs on beyond the work."""
_WORK: frozenset[Part] = frozenset({"bar", "piece", "cut", "bore", "groove"})


@dataclass(frozen=True, slots=True, kw_only=True)
class View:
    """The window on the set-up: `scale` is paper over real.

    `origin` is where the face of the jaws stands from the left edge, `axis` how far down the
    axis lies; `left`, `right` and `half` end what is shown, in mm on paper.
    """

    scale: float
    origin: Millimetres[float]
    axis: Millimetres[float]
    left: Millimetres[float]
    right: Millimetres[float]
    half: Millimetres[float]

    def x(self, along: float) -> Millimetres[float]:
        """Return where a place along the axis lies on paper."""
        return self.origin + along * self.scale

    def y(self, radius: float) -> Millimetres[float]:
        """Return where a radius lies on paper; above the axis is up."""
        return self.axis - radius * self.scale

    @property
    def top(self) -> Millimetres[float]:
        """The upper edge of what is shown."""
        return self.axis - self.half

    @property
    def bottom(self) -> Millimetres[float]:
        """The lower edge of what is shown."""
        return self.axis + self.half


def view_of(sketch: PrintedSketch, scale: float) -> View:
    """Return the window at a scale, its left edge and its upper edge at 0.

    The work is shown whole, and so is what is dimensioned; of chuck, jaws, blade and centre
    no more than tells what they are.
    """
    work = boxes_of(sketch, *_WORK)
    along = [d for d in sketch.dimensions if d.axis == "along"]
    ends = [end for d in along for end in (d.start, d.end)]
    half = scale * largest_radius(sketch) + PAD
    right = max(0.0, *(box.x2 for box in work), *ends) * scale
    centres = [box.x2 for box in boxes_of(sketch, "centre")]
    if centres:
        right = max(right, min(max(centres) * scale, right + _CENTRE))
    left = scale * min(0.0, *ends, *(box.x1 for box in work if box.part != "bar"))
    jaws = scale * min((box.x1 for box in boxes_of(sketch, "jaws")), default=0.0)
    left = min(left, max(jaws, -_JAWS))
    whole = scale * min(0.0, *(box.x1 for box in sketch.boxes))
    left = max(whole, left - _CHUCK) - _BEYOND
    return View(scale=scale, origin=-left, axis=half, left=_BEYOND, right=right - left, half=half)


def boxes_of(sketch: PrintedSketch, *parts: Part) -> list[SketchBox]:
    """Return the boxes of some parts, in the order they are given."""
    return [box for box in sketch.boxes if box.part in parts]


def largest_radius(sketch: PrintedSketch) -> Millimetres[float]:
    """Return the largest radius of the work: chuck, jaws and tools are broken off."""
    work = boxes_of(sketch, *_WORK)
    return max((max(abs(box.low), abs(box.high)) for box in work), default=0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What is shown of a box on paper, and which of its edges are broken off."""

    left: Millimetres[float]
    top: Millimetres[float]
    right: Millimetres[float]
    bottom: Millimetres[float]
    broken: frozenset[str]

    @property
    def edges(self) -> dict[str, tuple[float, float, float, float]]:
        """The ends of each edge, by its name."""
        left, top, right, bottom = self.left, self.top, self.right, self.bottom
        return {
            "left": (left, top, left, bottom),
            "right": (right, top, right, bottom),
            "top": (left, top, right, top),
            "bottom": (left, bottom, right, bottom),
        }


def shown(box: SketchBox, view: View) -> Shown | None:
    """Return what the window shows of a box, None if nothing."""
    left, right = view.x(box.x1), view.x(box.x2)
    top, bottom = view.y(box.high), view.y(box.low)
    inside = Shown(
        left=max(left, view.left),
        top=max(top, view.top),
        right=min(right, view.right),
        bottom=min(bottom, view.bottom),
        broken=frozenset(
            name
            for name, is_beyond in (
                ("left", left < view.left - _SLIP),
                ("right", right > view.right + _SLIP),
                ("top", top < view.top - _SLIP),
                ("bottom", bottom > view.bottom + _SLIP),
            )
            if is_beyond
        ),
    )
    is_there = inside.right > inside.left and inside.bottom > inside.top
    return inside if is_there else None


_SLIP = 1e-6


def outline(
    part: Shown,
    *,
    weight: float,
    dash: tuple[float, ...] = (),
    without: Iterable[str] = (),
) -> list[Rule]:
    """Return the edges of a part; where it is broken off, a narrow line with a zigzag."""
    rules: list[Rule] = []
    for name, (x1, y1, x2, y2) in part.edges.items():
        if name in without:
            continue
        if name in part.broken:
            rules += zigzag(x1, y1, x2, y2)
        else:
            rules.append(Rule(x1=x1, y1=y1, x2=x2, y2=y2, weight=weight, dash=dash))
    return rules


def zigzag(x1: float, y1: float, x2: float, y2: float) -> list[Rule]:
    """Return a break line: narrow, with a zigzag in its middle (ISO 128-2; memory)."""
    length = math.hypot(x2 - x1, y2 - y1)
    size = min(1.2, length / 5.0)
    along = ((x2 - x1) / length, (y2 - y1) / length)
    across = (-along[1], along[0])

    def at(way: float, aside: float) -> tuple[float, float]:
        middle = length / 2.0 + way * size
        return (
            x1 + along[0] * middle + across[0] * aside * size,
            y1 + along[1] * middle + across[1] * aside * size,
        )

    points = ((x1, y1), at(-1.0, 0.0), at(-0.5, 1.0), at(0.5, -1.0), at(1.0, 0.0), (x2, y2))
    return polyline(points, weight=NARROW)


def polyline(
    points: Sequence[tuple[float, float]], *, weight: float, dash: tuple[float, ...] = ()
) -> list[Rule]:
    """Return a rule from each point to the next."""
    return [
        Rule(x1=x1, y1=y1, x2=x2, y2=y2, weight=weight, dash=dash)
        for (x1, y1), (x2, y2) in pairwise(points)
    ]


def hatched(part: Shown, *, pitch: Millimetres[float] = 1.3) -> list[Rule]:
    """Return narrow lines at 45 degrees, as a cut face has them (ISO 128-3; memory)."""
    width, height = part.right - part.left, part.bottom - part.top
    rules = []
    # A line begins on the left edge or the lower one and ends on the upper or the right one.
    for number in range(1, math.ceil((width + height) / pitch)):
        reach = number * pitch
        if reach >= width + height:
            break
        rise, run = min(reach, height), min(reach, width)
        rules.append(
            Rule(
                x1=part.left + max(0.0, reach - height),
                y1=part.top + rise,
                x2=part.left + run,
                y2=part.top + max(0.0, reach - width),
                weight=NARROW * 0.7,
            )
        )
    return rules
