"""Dimensions of a drawing: lines with arrows, the number above its line (ISO 129-1; memory).

Along the axis they stand below the work, the shorter nearer; across it to its right. Where
two arrows have no room an oblique stroke ends a line in place of each; a number without room
stands beside. No number crosses another, nor a line
where that can be helped; where it cannot, the line gives way to it.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from chartgen.layout.drawn_to_scale import NARROW, WIDE, View
from chartgen.layout.legibility import CAP_HEIGHT, POINT
from chartgen.layout.piece import Setting
from chartgen.layout.placed import Drawing, Face, Item, Panel, Rule, Text
from chartgen.layout.primitives import Shape
from chartgen.quantities import Millimetres
from chartgen.wording.printed_job import PrintedSketch, SketchDimension

ARROW: Millimetres[float] = 2.2
_HALF = 0.17
"""Half the width of an arrow over its length: 20 degrees closed and filled."""
_INSIDE: Millimetres[float] = 2.0 * ARROW + 1.0
"""The least between two arrows that point outward."""
_STROKE: Millimetres[float] = 0.9
_CLEAR: Millimetres[float] = 1.0
_OVER: Millimetres[float] = 1.4
_HALO: Millimetres[float] = 0.35
_FIRST: Millimetres[float] = 1.5
_ACROSS: Millimetres[float] = 6.0
_LIFT: Millimetres[float] = 1.2
"""A number above its line: its tails hang down to it."""
_BESIDE: Millimetres[float] = 0.7
_APART: Millimetres[float] = 3.0
_BETWEEN: Millimetres[float] = 3.0
Interval = tuple[Millimetres[float], Millimetres[float]]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Along:
    """A dimension along the axis, placed: its row from above, its line, its number."""

    ends: Interval
    line: Interval
    text: str
    at: Interval
    is_inside: bool
    row: int


@dataclass(slots=True)
class Along:
    """The rows of dimensions below the work."""

    setting: Setting
    width: Millimetres[float]
    placed: list[_Along] = field(default_factory=list)

    @property
    def pitch(self) -> Millimetres[float]:
        """From one row to the next."""
        return self.setting.numbers * POINT * CAP_HEIGHT + 2.7

    @property
    def height(self) -> Millimetres[float]:
        """What all rows take below the work."""
        rows = 1 + max((one.row for one in self.placed), default=-1)
        return rows * self.pitch + (_FIRST if rows else 0.0)

    @property
    def rightmost(self) -> Millimetres[float]:
        """How far to the right the lines and numbers reach."""
        return max((max(one.line[1], one.at[1]) for one in self.placed), default=0.0) + _APART

    def add_all(self, sketch: PrintedSketch, view: View) -> None:
        """Place the dimensions along the axis, the shorter nearer to the work."""
        found = [d for d in sketch.dimensions if d.axis == "along"]
        ways = [
            list(self._ways(one.text, *sorted((view.x(one.start), view.x(one.end)))))
            for one in found
        ]
        for tried in sorted(ways, key=lambda tried: (_length(tried[0].line), tried[0].ends)):
            self.placed.append(self._place(tried))

    def _place(self, tried: Sequence[_Along]) -> _Along:
        rows = 1 + max((one.row for one in self.placed), default=-1)
        for row in range(rows + 1):
            for way in tried:
                at = _on_row(way, row)
                if self._is_free(at):
                    return at
        # A row of its own; lines that cross the number give way to it.
        return _on_row(tried[0], rows)

    def _ways(self, text: str, x1: float, x2: float) -> Iterable[_Along]:
        """Yield the ways to set a dimension: between its arrows, right of them, left of them."""
        needed = self.setting.measure(text, Face.REGULAR, self.setting.numbers)
        is_inside = x2 - x1 >= _INSIDE
        line = (x1, x2)
        if needed + 2.0 * _BESIDE <= x2 - x1:
            middle = (x1 + x2 - needed) / 2.0
            yield self._way(text, (x1, x2), line, (middle, middle + needed), is_inside=is_inside)
        start = x2 + _BESIDE
        yield self._way(text, (x1, x2), line, (start, start + needed), is_inside=is_inside)
        end = x1 - _BESIDE
        yield self._way(text, (x1, x2), line, (end - needed, end), is_inside=is_inside)

    def _way(
        self, text: str, ends: Interval, line: Interval, at: Interval, *, is_inside: bool
    ) -> _Along:
        # A number that would leave the page is pushed back on to it.
        push = max(0.0, -at[0]) - max(0.0, at[1] - self.width)
        at = (at[0] + push, at[1] + push)
        line = (max(0.0, min(line[0], at[0])), min(self.width, max(line[1], at[1])))
        return _Along(ends=ends, line=line, text=text, at=at, is_inside=is_inside, row=0)

    def _is_free(self, one: _Along) -> bool:
        for other in self.placed:
            if other.row == one.row and _meet(one.line, other.line, -_HALO):
                return False
            nearer, farther = sorted((one, other), key=lambda way: way.row)
            if any(_meet(nearer.at, (end, end), _CLEAR) for end in farther.ends):
                return False
            if one.row == other.row and _meet(one.at, other.at, _CLEAR):
                return False
        # Its own number must not lie on its own extension lines either.
        return not any(_meet(one.at, (end, end), _BESIDE - 0.01) for end in one.ends)

    def items(self, view: View, edges: dict[float, float]) -> tuple[list[Item], list[Item]]:
        """Return lines, and numbers to be set on them; `edges` says where the work ends below."""
        lines: list[Item] = []
        numbers: list[Item] = []
        for one in self.placed:
            y = view.bottom + _FIRST + self.pitch * (one.row + 1) - 1.2
            for end in one.ends:
                start = edges.get(round(end, 6), view.bottom) + _CLEAR
                lines.append(Rule(x1=end, y1=start, x2=end, y2=y + _OVER, weight=NARROW))
            lines.append(Rule(x1=one.line[0], y1=y, x2=one.line[1], y2=y, weight=NARROW))
            x1, x2 = one.ends
            if one.is_inside:
                lines += [_arrow(x1, y, (1.0, 0.0)), _arrow(x2, y, (-1.0, 0.0))]
            else:
                lines += [_stroke(x1, y), _stroke(x2, y)]
            numbers += number_on_paper(one.text, one.at[0], y - _LIFT, self.setting)
        return lines, numbers


def _length(line: Interval) -> Millimetres[float]:
    return line[1] - line[0]


def _on_row(way: _Along, row: int) -> _Along:
    return _Along(
        ends=way.ends,
        line=way.line,
        text=way.text,
        at=way.at,
        is_inside=way.is_inside,
        row=row,
    )


def _meet(one: Interval, other: Interval, apart: float) -> bool:
    return one[0] < other[1] + apart and other[0] < one[1] + apart


def across_width(sketch: PrintedSketch, setting: Setting) -> Millimetres[float]:
    """Return what the dimensions across the axis take, to the right of the work."""
    widths = [setting.measure(one.text, Face.REGULAR, setting.numbers) for one in _across(sketch)]
    return _ACROSS + sum(widths) + len(widths) * _BETWEEN if widths else 0.0


def across_items(
    sketch: PrintedSketch, view: View, setting: Setting
) -> tuple[list[Item], list[Item]]:
    """Return the lines of dimensions across the axis, and the numbers to be set on them."""
    lines: list[Item] = []
    numbers: list[Item] = []
    cap = setting.numbers * POINT * CAP_HEIGHT
    x = view.right + _ACROSS
    for one in _across(sketch):
        y1, y2 = sorted((view.y(one.start), view.y(one.end)))
        is_inside = y2 - y1 >= _INSIDE
        lines += [
            Rule(x1=view.right + _CLEAR, y1=y, x2=x + _OVER, y2=y, weight=NARROW) for y in (y1, y2)
        ]
        lines.append(Rule(x1=x, y1=y1, x2=x, y2=y2, weight=NARROW))
        if is_inside:
            lines += [_arrow(x, y1, (0.0, 1.0)), _arrow(x, y2, (0.0, -1.0))]
        else:
            lines += [_stroke(x, y1), _stroke(x, y2)]
        numbers += number_on_paper(one.text, x + 0.9, (y1 + y2 + cap) / 2.0, setting)
        x += setting.measure(one.text, Face.REGULAR, setting.numbers) + _BETWEEN
    return lines, numbers


def _across(sketch: PrintedSketch) -> list[SketchDimension]:
    found = [one for one in sketch.dimensions if one.axis == "across"]
    return sorted(found, key=lambda one: abs(one.end - one.start))


def number_on_paper(text: str, x: float, y: float, setting: Setting) -> list[Item]:
    """Return a number with its own paper under it, so that no line runs through it."""
    width = setting.measure(text, Face.REGULAR, setting.numbers)
    cap = setting.numbers * POINT * CAP_HEIGHT
    return [
        Panel(
            x=x - _HALO,
            y=y - cap - _HALO,
            width=width + 2.0 * _HALO,
            height=cap + 2.0 * _HALO,
            paper=True,
        ),
        Text(x=x, y=y, text=text, size=setting.numbers),
    ]


def _stroke(x: float, y: float) -> Rule:
    """Return the oblique stroke that ends a line too short for arrows."""
    return Rule(x1=x - _STROKE, y1=y + _STROKE, x2=x + _STROKE, y2=y - _STROKE, weight=WIDE)


def _arrow(x: float, y: float, into: tuple[float, float]) -> Drawing:
    """Return an arrow whose point is at (x, y); `into` leads from the point along its shaft."""
    # In a unit square of the arrow's length whose middle is the point; up is against y.
    along, down = into[0] * 0.5, -into[1] * 0.5
    wing = _HALF * 0.5
    back = (0.5 + along, 0.5 + down)
    points = (
        (0.5, 0.5),
        (back[0] - down * 2.0 * wing, back[1] + along * 2.0 * wing),
        (back[0] + down * 2.0 * wing, back[1] - along * 2.0 * wing),
    )
    size = 2.0 * ARROW
    return Drawing(
        x=x - ARROW,
        y=y - ARROW,
        size=size,
        primitives=(Shape(points, "ink"),),
        meaning="arrow of a dimension",
    )
