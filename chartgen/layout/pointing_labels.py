"""Names of the parts above a drawing, each with a line down to what it names.

All lines lean alike, so that none crosses another; a name stands in the lowest row where it
lies on no line of a higher one.
"""

from dataclasses import dataclass

from chartgen.layout.drawn_to_scale import NARROW, View
from chartgen.layout.legibility import CAP_HEIGHT, POINT
from chartgen.layout.piece import Setting
from chartgen.layout.placed import Drawing, Face, Item, Panel, Rule, Text
from chartgen.layout.primitives import Disc
from chartgen.layout.typesetting import one_line
from chartgen.quantities import Millimetres
from chartgen.wording.printed_job import PrintedSketch

_LEAN = 0.22
"""How far a line moves to the right on its way up, over its rise: parallel to no edge."""
_APART: Millimetres[float] = 2.0
_CLEAR: Millimetres[float] = 1.2
_DOT: Millimetres[float] = 0.55
_HALO: Millimetres[float] = 0.3


@dataclass(frozen=True, slots=True, kw_only=True)
class _Label:
    """A name, how wide it is, and what it points at, on paper below the rows."""

    text: str
    width: Millimetres[float]
    x: Millimetres[float]
    y: Millimetres[float]

    def line_at(self, y: Millimetres[float]) -> Millimetres[float]:
        """Return where its line passes a height."""
        return self.x + _LEAN * (self.y - y)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Spot:
    label: _Label
    left: Millimetres[float]
    row: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Labels:
    """All names placed. Heights are counted from the upper edge of the drawing, upward negative."""

    setting: Setting
    spots: tuple[_Spot, ...]

    @property
    def height(self) -> Millimetres[float]:
        """What the rows take above the drawing."""
        rows = 1 + max((spot.row for spot in self.spots), default=-1)
        return rows * _pitch(self.setting) + (_CLEAR if rows else 0.0)

    def items(self, top: Millimetres[float]) -> tuple[list[Item], list[Item]]:
        """Return lines and names; `top` is how far down the upper edge of the drawing lies."""
        lines: list[Item] = []
        names: list[Item] = []
        cap = self.setting.words * POINT * CAP_HEIGHT
        for spot in self.spots:
            label, base = spot.label, _base(spot.row, self.setting)
            lines.append(
                Rule(
                    x1=label.line_at(base + 0.7),
                    y1=top + base + 0.7,
                    x2=label.x,
                    y2=top + label.y,
                    weight=NARROW,
                )
            )
            lines.append(_dot(label.x, top + label.y))
            names += [
                Panel(
                    x=spot.left - _HALO,
                    y=top + base - cap - _HALO,
                    width=label.width + 2.0 * _HALO,
                    height=cap + 2.0 * _HALO,
                    paper=True,
                ),
                Text(x=spot.left, y=top + base, text=label.text, size=self.setting.words),
            ]
        return lines, names


def labels_of(sketch: PrintedSketch, view: View, setting: Setting) -> Labels:
    """Return the names of a sketch placed above it, in as few rows as will do."""
    waiting = []
    for along, radius, text in sketch.labels:
        width = one_line(
            text,
            width=setting.width,
            face=Face.REGULAR,
            size=setting.words,
            measure=setting.measure,
        )
        # What is named may be broken off: the line leads to as much of it as is shown.
        x = min(max(view.x(along), view.left + 1.0), view.right - 1.0)
        y = min(max(view.y(radius) - view.top, 1.5), 2.0 * view.half - 1.5)
        waiting.append(_Label(text=text, width=width, x=x, y=y))
    waiting.sort(key=lambda label: (label.line_at(0.0), label.text))
    spots: list[_Spot] = []
    row = 0
    while waiting:
        placed = _row(waiting, row, setting)
        spots += placed
        taken = [spot.label for spot in placed]
        waiting = [label for label in waiting if label not in taken]
        row += 1
    return Labels(setting=setting, spots=tuple(spots))


def _row(waiting: list[_Label], row: int, setting: Setting) -> list[_Spot]:
    """Return the names that find room in a row; at the least one, so that rows come to an end."""
    base = _base(row, setting)
    lines = {id(label): label.line_at(base) for label in waiting}
    spots: list[_Spot] = []
    for label in waiting:
        x = lines[id(label)]
        placed = {id(spot.label) for spot in spots}
        others = [lines[id(o)] for o in waiting if o is not label and id(o) not in placed]
        low = max([0.0, *(o + _APART for o in others if o <= x)])
        low = max([low, *(spot.left + spot.label.width + _APART for spot in spots)])
        high = min([setting.width, *(o - _APART for o in others if o > x)])
        left = min(max(x - label.width / 2.0, low), high - label.width)
        if left >= low - 1e-9 and left <= x <= left + label.width:
            spots.append(_Spot(label=label, left=left, row=row))
    if spots:
        return spots
    # Every name would lie on a line: one of them does, on paper of its own.
    label = waiting[0]
    left = min(max(lines[id(label)] - label.width / 2.0, 0.0), setting.width - label.width)
    return [_Spot(label=label, left=left, row=row)]


def _pitch(setting: Setting) -> Millimetres[float]:
    return setting.words * POINT * CAP_HEIGHT + 2.4


def _base(row: int, setting: Setting) -> Millimetres[float]:
    """Return the base line of a row, the lowest row 0."""
    return -_CLEAR - row * _pitch(setting) - 0.9


def _dot(x: float, y: float) -> Drawing:
    size = 2.0 * _DOT
    return Drawing(
        x=x - _DOT,
        y=y - _DOT,
        size=size,
        primitives=(Disc(0.5, 0.5, 0.5, "ink"),),
        meaning="end of a pointing line",
    )
