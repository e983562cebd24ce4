"""From the numbers of an axis to millimetres on the page, and which ticks get a label."""

import math
from collections.abc import Callable
from dataclasses import dataclass

from chartgen.layout.legibility import POINT
from chartgen.layout.piece import Setting
from chartgen.layout.placed import Face
from chartgen.quantities import Millimetres
from chartgen.wording.figure import PrintedAxis, PrintedCurves, PrintedPanel

BETWEEN_PANELS: Millimetres[float] = 4.5
# Below this a panel's labels crowd its curves: in sizes of its numbers, and in widest numbers.
_LEAST_SIZES = 8.0
_LEAST_NUMBERS = 3.5


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


def panel_widths(body: PrintedCurves, setting: Setting) -> list[Millimetres[float]]:
    """Return how wide each panel of a figure has to be with the gap behind it [mm]."""

    def widest(axis: PrintedAxis) -> Millimetres[float]:
        return max(
            setting.measure(text, Face.REGULAR, setting.numbers) for _, text, _ in axis.ticks
        )

    first = widest(body.panels[0].y)
    return [
        max(_LEAST_SIZES * setting.numbers * POINT, _LEAST_NUMBERS * widest(panel.x))
        + BETWEEN_PANELS
        + (first if number == 0 else 0.0)
        for number, panel in enumerate(body.panels)
    ]
