"""From the numbers of an axis to millimetres on the page, and which ticks get a label."""

import math
from collections.abc import Callable
from dataclasses import dataclass

from chartgen.quantities import Millimetres
from chartgen.wording.figure import PrintedAxis, PrintedPanel


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """The box of a pair of axes on its page [mm], y down, and the way into it."""

    x: Millimetres[float]
    y: Millimetres[float]
    width: Millimetres[float]
    height: Millimetres[float]
    panel: PrintedPanel

    def at(self, x: float, y: float) -> tuple[Millimetres[float], Millimetres[float]]:
        """Return where a point of the panel stands on the page."""
        return (
            self.x + self.width * share(self.panel.x, x),
            self.y + self.height * (1.0 - share(self.panel.y, y)),
        )


def share(axis: PrintedAxis, value: float) -> float:
    """Return how far along an axis a value stands, 0 to 1."""
    if axis.logarithmic:
        return math.log(value / axis.least) / math.log(axis.most / axis.least)
    return (value - axis.least) / (axis.most - axis.least)


def labelled(
    axis: PrintedAxis, length: Millimetres[float], size_of: Callable[[str], Millimetres[float]]
) -> list[tuple[float, str]]:
    """Return the ticks that get their number: by rank, as long as none crowds another.

    `size_of` is the room a text takes along the axis, the gap to its neighbour included.
    """
    taken: list[tuple[float, float]] = []
    chosen: list[tuple[float, str]] = []
    for value, text, _ in sorted(axis.ticks, key=lambda tick: (tick[2], tick[0])):
        middle, half = length * share(axis, value), size_of(text) / 2.0
        if all(middle + half <= low or middle - half >= high for low, high in taken):
            taken.append((middle - half, middle + half))
            chosen.append((value, text))
    return sorted(chosen)
