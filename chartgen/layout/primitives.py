"""The few vector parts a drawing is made of: a renderer must be able to paint each.

A drawing stands in a unit square, origin bottom left, y up. Curves other than circles are
broken into chords here, so that no renderer needs to know them.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, Literal, TypeAlias

Point: TypeAlias = tuple[float, float]
Ink: TypeAlias = Literal["ink", "paper", "mandatory", "prohibition", "warning"]
"""What a mark is made of; in mono `warning` prints as paper, the other two as ink."""


@dataclass(frozen=True, slots=True)
class Disc:
    """A filled circle."""

    x: float
    y: float
    r: float
    fill: Ink


@dataclass(frozen=True, slots=True)
class Ring:
    """A circular band; `r` is its outer radius and `width` is taken inward."""

    x: float
    y: float
    r: float
    width: float
    ink: Ink


@dataclass(frozen=True, slots=True)
class Stroke:
    """A polyline with round ends and joins."""

    points: tuple[Point, ...]
    width: float
    ink: Ink


@dataclass(frozen=True, slots=True)
class Shape:
    """A closed filled polygon; its curves are already broken into chords."""

    points: tuple[Point, ...]
    fill: Ink


@dataclass(frozen=True, slots=True)
class Blocks:
    """Rows of squares of a grid, filled as one path so that no seam shows between them.

    `runs` are column, row from below and length; the grid has `count` squares a side.
    """

    runs: tuple[tuple[int, int, int], ...]
    count: int
    fill: Ink


Primitive: TypeAlias = Disc | Ring | Stroke | Shape
"""A part of a pictogram."""

CHORD_DEGREES: Final = 6
PLACES: Final = 4
"""Decimals kept, so that the last bit of a sine cannot change the bytes of a card."""


def arc(x: float, y: float, r: float, start: float, end: float) -> tuple[Point, ...]:
    """Return points along an arc from `start` to `end` degrees, counted from east."""
    chords = max(1, math.ceil(abs(end - start) / CHORD_DEGREES))
    angles = (math.radians(start + (end - start) * i / chords) for i in range(chords + 1))
    return tuple((x + r * math.cos(a), y + r * math.sin(a)) for a in angles)


def placed(
    primitives: Sequence[Primitive], *, x: float, y: float, scale: float, turn: float, flip: bool
) -> tuple[Primitive, ...]:
    """Return `primitives` scaled, flipped left to right, turned and moved to (x, y)."""
    cosine, sine = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    side = -scale if flip else scale

    def moved(point: Point) -> Point:
        across, along = side * point[0], scale * point[1]
        return (x + across * cosine - along * sine, y + across * sine + along * cosine)

    out: list[Primitive] = []
    for item in primitives:
        match item:
            case Stroke(points, width, ink):
                out.append(Stroke(tuple(map(moved, points)), width * scale, ink))
            case Shape(points, fill):
                out.append(Shape(tuple(map(moved, points)), fill))
            case Disc(cx, cy, r, fill):
                out.append(Disc(*moved((cx, cy)), r * scale, fill))
            case Ring(cx, cy, r, width, ink):
                out.append(Ring(*moved((cx, cy)), r * scale, width * scale, ink))
    return tuple(out)


def rounded(primitive: Primitive) -> Primitive:
    """Return `primitive` with its coordinates cut to the decimals kept."""

    def cut(points: tuple[Point, ...]) -> tuple[Point, ...]:
        return tuple((round(x, PLACES), round(y, PLACES)) for x, y in points)

    match primitive:
        case Disc(x, y, r, fill):
            return Disc(round(x, PLACES), round(y, PLACES), round(r, PLACES), fill)
        case Ring(x, y, r, width, ink):
            at = round(x, PLACES), round(y, PLACES)
            return Ring(*at, round(r, PLACES), round(width, PLACES), ink)
        case Stroke(points, width, ink):
            return Stroke(cut(points), round(width, PLACES), ink)
        case Shape(points, fill):
            return Shape(cut(points), fill)
