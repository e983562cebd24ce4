"""Safety pictograms drawn for these cards.

The meanings and the proportions of disc, ring, bar and triangle are those of ISO 7010 and
ISO 3864; the drawings are our own. They are made to be read 10 mm high on a mono printer:
no stroke is thinner than 0.02 of the sign and nothing is said by colour alone.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from chartgen.layout.primitives import (
    Disc,
    Ink,
    Point,
    Primitive,
    Ring,
    Shape,
    Stroke,
    arc,
    placed,
    rounded,
)

__all__ = ["PICTOGRAMS", "Disc", "Ink", "Pictogram", "Primitive", "Ring", "Shape", "Stroke"]


@dataclass(frozen=True, slots=True)
class Pictogram:
    """A sign: `primitives` are painted in order, the later over the earlier."""

    key: str
    meaning: str
    primitives: tuple[Primitive, ...]


CENTRE: Final = 0.5
SIGN_RADIUS: Final = 0.5
RIM_CLEARANCE: Final = 0.077
"""Width of plain rim that a mandatory symbol leaves, as a part of the disc's diameter."""
RING_WIDTH: Final = 0.10
BAR_WIDTH: Final = 0.08
RING_CLEARANCE: Final = 0.033
BAR_HALO: Final = 0.025
"""Paper left on both sides of the bar, so that it stays apart from the symbol in mono."""
TRIANGLE_HEIGHT: Final = math.sqrt(3) / 2
TRIANGLE_BAND: Final = 0.07 * TRIANGLE_HEIGHT
CORNER_RADIUS: Final = 0.05


def _mandatory(key: str, meaning: str, symbol: Sequence[Primitive]) -> Pictogram:
    """Return a filled disc with `symbol` in paper on it."""
    disc = Disc(CENTRE, CENTRE, SIGN_RADIUS, "mandatory")
    return Pictogram(key, meaning, (disc, *map(rounded, symbol)))


def _prohibition(key: str, meaning: str, symbol: Sequence[Primitive]) -> Pictogram:
    """Return a ring with a bar, upper left to lower right, over `symbol`.

    The bar ends at the inner edge of the ring, so that its halo stays under the ring.
    """
    reach = (SIGN_RADIUS - RING_WIDTH) / math.sqrt(2)
    bar = ((CENTRE - reach, CENTRE + reach), (CENTRE + reach, CENTRE - reach))
    sign = (
        Disc(CENTRE, CENTRE, SIGN_RADIUS, "paper"),
        *symbol,
        Stroke(bar, BAR_WIDTH + 2 * BAR_HALO, "paper"),
        Stroke(bar, BAR_WIDTH, "prohibition"),
        Ring(CENTRE, CENTRE, SIGN_RADIUS, RING_WIDTH, "prohibition"),
    )
    return Pictogram(key, meaning, tuple(map(rounded, sign)))


def _triangle(inset: float, radius: float) -> tuple[Point, ...]:
    """Return the warning triangle, `inset` inside its outline, with rounded corners."""
    bottom = (1 - TRIANGLE_HEIGHT) / 2
    corners = ((0.0, bottom, 150), (1.0, bottom, 270), (0.5, bottom + TRIANGLE_HEIGHT, 30))
    middle = bottom + TRIANGLE_HEIGHT / 3
    points: list[Point] = []
    for x, y, start in corners:
        # A corner of an equilateral triangle lies twice as far from the middle as a side.
        out = math.hypot(x - CENTRE, y - middle)
        part = (out - 2 * (inset + radius)) / out
        at = (CENTRE + (x - CENTRE) * part, middle + (y - middle) * part)
        points.extend(arc(*at, radius, start, start + 120))
    return tuple(points)


def _hand(finger: float) -> tuple[Primitive, ...]:
    """Return an open hand, fingers `finger` thick, 1 long from the wrist at the origin."""
    fingers = (
        ((-0.165, 0.42), (-0.255, 0.78)),
        ((-0.057, 0.45), (-0.088, 0.93)),
        ((0.057, 0.45), (0.088, 0.91)),
        ((0.165, 0.42), (0.255, 0.74)),
    )
    palm = ((-0.15, 0.0), (0.15, 0.0), (0.22, 0.28), (0.22, 0.44), (-0.22, 0.44), (-0.22, 0.28))
    thumb = ((-0.08, 0.10), (-0.30, 0.28), (-0.43, 0.48))
    return (
        Shape(palm, "ink"),
        *(Stroke(points, finger, "ink") for points in fingers),
        Stroke(thumb, 1.1 * finger, "ink"),
    )


def _chuck(x: float, y: float, r: float, body: Ink, ground: Ink) -> tuple[Primitive, ...]:
    """Return a three-jaw chuck seen end on, its jaws standing past the rim, a bar in it."""

    def jaw(inner: float, outer: float, half: float) -> tuple[Point, ...]:
        return ((inner, -half), (outer, -half), (outer, half), (inner, half))

    jaws: list[Primitive] = []
    for angle in (30, 150, 270):
        blocks = (Shape(jaw(0.0, 1.3, 0.29), ground), Shape(jaw(0.36, 1.2, 0.16), body))
        jaws.extend(placed(blocks, x=x, y=y, scale=r, turn=angle, flip=False))
    return (Disc(x, y, r, body), *jaws, Disc(x, y, 0.38 * r, ground), Disc(x, y, 0.26 * r, body))


def _eyes() -> tuple[Primitive, ...]:
    """Return a face from the front, with goggles and their strap."""
    head = (
        *arc(0.5, 0.615, 0.26, 0, 180),
        *arc(0.58, 0.44, 0.34, 180, 205),
        *arc(0.5, 0.32, 0.20, 215, 325),
        *arc(0.42, 0.44, 0.34, 335, 360),
    )
    lens = (
        *arc(0.435, 0.615, 0.03, 0, 90),
        *arc(0.33, 0.595, 0.05, 90, 180),
        *arc(0.345, 0.52, 0.065, 180, 270),
        *arc(0.40, 0.495, 0.04, 270, 345),
    )
    other = tuple((1 - x, y) for x, y in lens)
    strap = ((0.2, 0.635), (0.8, 0.635), (0.8, 0.56), (0.2, 0.56))
    return (
        Shape(head, "paper"),
        Shape(strap, "mandatory"),
        *(Stroke((*one, one[0]), 0.09, "mandatory") for one in (lens, other)),
        *(Shape(one, "paper") for one in (lens, other)),
        Stroke(((0.43, 0.27), (0.57, 0.27)), 0.035, "mandatory"),
    )


def _manual() -> tuple[Primitive, ...]:
    """Return a reader behind an open book."""
    body = (*arc(0.5, 0.42, 0.27, 0, 180), (0.23, 0.36), (0.77, 0.36))
    page = (
        (0.5, 0.43),
        (0.42, 0.475),
        (0.30, 0.49),
        (0.18, 0.46),
        (0.18, 0.226),
        (0.30, 0.25),
        (0.42, 0.235),
        (0.5, 0.19),
    )
    other = tuple((1 - x, y) for x, y in page)
    lines = tuple(
        ((0.235, y), (0.30, y + 0.012), (0.37, y + 0.008), (0.43, y - 0.012)) for y in (0.40, 0.325)
    )
    mirrored = tuple(tuple((1 - x, y) for x, y in line) for line in lines)
    return (
        Shape(body, "paper"),
        Disc(0.5, 0.745, 0.155, "mandatory"),
        Disc(0.5, 0.765, 0.13, "paper"),
        Stroke((*page, page[0]), 0.06, "mandatory"),
        Stroke((*other, other[0]), 0.06, "mandatory"),
        Shape(page, "paper"),
        Shape(other, "paper"),
        Stroke(((0.5, 0.43), (0.5, 0.19)), 0.025, "mandatory"),
        *(Stroke(line, 0.028, "mandatory") for line in (*lines, *mirrored)),
    )


def _guard() -> tuple[Primitive, ...]:
    """Return a chuck end on over the bed, under a hood hinged on a post behind it."""
    hood = (*arc(0.53, 0.53, 0.34, 180, 0), *arc(0.53, 0.53, 0.265, 0, 180))
    return (
        *_chuck(0.53, 0.52, 0.18, "paper", "mandatory"),
        Shape(hood, "paper"),
        Stroke(((0.8325, 0.53), (0.8325, 0.48)), 0.075, "paper"),
        Shape(((0.19, 0.53), (0.265, 0.53), (0.265, 0.22), (0.19, 0.22)), "paper"),
        Shape(((0.19, 0.28), (0.805, 0.28), (0.805, 0.215), (0.19, 0.215)), "paper"),
        Disc(0.2275, 0.53, 0.07, "paper"),
        Disc(0.2275, 0.53, 0.03, "mandatory"),
    )


def _no_gloves() -> tuple[Primitive, ...]:
    """Return a gauntlet, turned so that the bar hides neither thumb nor cuff."""
    cuff = ((-0.17, -0.04), (0.17, -0.04), (0.26, -0.32), (-0.26, -0.32))
    seam = Stroke(((-0.2, -0.21), (0.2, -0.21)), 0.045, "paper")
    return placed(
        (*_hand(0.115), Shape(cuff, "ink"), seam), x=0.505, y=0.34, scale=0.52, turn=-10, flip=True
    )


def _no_reaching() -> tuple[Primitive, ...]:
    """Return a bare hand that reaches for a turning chuck."""
    sleeve = ((-0.17, -0.04), (0.17, -0.04), (0.17, -0.2), (-0.17, -0.2))
    return (
        *_chuck(0.353, 0.358, 0.148, "ink", "paper"),
        *placed(
            (*_hand(0.11), Shape(sleeve, "ink")), x=0.705, y=0.70, scale=0.36, turn=135, flip=False
        ),
    )


def _general() -> Pictogram:
    """Return the warning triangle with its mark."""
    mark = ((0.45, 0.62), (0.55, 0.62), (0.525, 0.36), (0.475, 0.36))
    parts: tuple[Primitive, ...] = (
        Shape(_triangle(0.0, CORNER_RADIUS), "ink"),
        Shape(_triangle(TRIANGLE_BAND, CORNER_RADIUS / 2), "warning"),
        Shape(mark, "ink"),
        Disc(0.5, 0.26, 0.05, "ink"),
    )
    return Pictogram("general", "general warning", tuple(map(rounded, parts)))


PICTOGRAMS: Final[Mapping[str, Pictogram]] = MappingProxyType(
    {
        pictogram.key: pictogram
        for pictogram in (
            _mandatory("eyes", "wear eye protection", _eyes()),
            _mandatory("manual", "read the machine's manual", _manual()),
            _mandatory("guard", "keep the guard in place", _guard()),
            _prohibition("no-gloves", "do not wear gloves", _no_gloves()),
            _prohibition("no-reaching", "do not reach in", _no_reaching()),
            _general(),
        )
    }
)
