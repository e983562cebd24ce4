"""A piece of a card: items placed from its own top left corner, and how high it is.

Pieces are what a column is filled with; a card breaks between pieces, never inside one.
"""

from dataclasses import dataclass, replace

from chartgen.layout.legibility import (
    FOOT_CAP,
    NUMBERS_ARC_MINUTES,
    POINT,
    SIGN_DISTANCE_FACTOR,
    WORDS_ARC_MINUTES,
    cap_height,
    size_for_cap,
)
from chartgen.layout.placed import Drawing, Item, Panel, Plot, Rule, Text
from chartgen.layout.typesetting import Measure
from chartgen.quantities import Millimetres

LEADING = 1.25
"""Line pitch of running text over its size."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """Items and their height; a heading is kept with the piece after it.

    `continued` is set first where this piece begins a new column: the heading again.
    """

    height: Millimetres[float]
    items: tuple[Item, ...]
    keep_with_next: bool = False
    continued: tuple["Piece", ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Setting:
    """What a block needs to know of where it stands: room, font sizes [pt], the measure.

    `height` is what is left of the column under the blocks before it: a figure fills it.
    `sign` is the size of a drawn safety sign [mm].
    """

    width: Millimetres[float]
    height: Millimetres[float]
    numbers: float
    words: float
    foot: float
    sign: Millimetres[float]
    measure: Measure

    @property
    def line(self) -> Millimetres[float]:
        """Line pitch of running text [mm]."""
        return self.words * LEADING * POINT


def setting_for(
    *,
    distance: Millimetres[float],
    width: Millimetres[float],
    measure: Measure,
    height: Millimetres[float] = 0.0,
) -> Setting:
    """Return the font sizes a reading distance asks for, with the room at hand."""
    numbers = cap_height(distance=distance, arc_minutes=NUMBERS_ARC_MINUTES)
    words = cap_height(distance=distance, arc_minutes=WORDS_ARC_MINUTES)
    return Setting(
        width=width,
        height=height,
        numbers=size_for_cap(numbers),
        words=size_for_cap(words),
        foot=size_for_cap(FOOT_CAP),
        sign=distance / SIGN_DISTANCE_FACTOR,
        measure=measure,
    )


def moved(item: Item, *, x: Millimetres[float], y: Millimetres[float]) -> Item:
    """Return an item moved by x to the right and y down."""
    match item:
        case Rule():
            return replace(item, x1=item.x1 + x, x2=item.x2 + x, y1=item.y1 + y, y2=item.y2 + y)
        case Text():
            # Most of what is moved is text, and this is four times as quick as `replace`.
            return Text(
                x=item.x + x,
                y=item.y + y,
                text=item.text,
                size=item.size,
                face=item.face,
                align=item.align,
                paper=item.paper,
                tags=item.tags,
            )
        case Panel() | Plot() | Drawing():
            return replace(item, x=item.x + x, y=item.y + y)
