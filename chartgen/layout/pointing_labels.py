"""Names of the parts above a drawing, each with a line down to what it names.

Names keep the order of what they point at, so that lines do not cross, and stand in as few
rows as the width asks for; the line of a name in a higher row passes between those below it.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from chartgen.errors import TooSmallError
from chartgen.layout.drawn_to_scale import NARROW, View
from chartgen.layout.legibility import CAP_HEIGHT, POINT
from chartgen.layout.piece import Setting
from chartgen.layout.placed import Align, Drawing, Face, Item, Rule, Text
from chartgen.layout.primitives import Disc
from chartgen.layout.typesetting import one_line
from chartgen.quantities import Millimetres
from chartgen.wording.printed_job import PrintedSketch

_APART: Millimetres[float] = 3.5
_CLEAR: Millimetres[float] = 1.2
_ABOVE: Millimetres[float] = 2.0
"""Between the lowest row and the drawing; lines fan out there."""
_BREAKS: Millimetres[float] = 1.5
"""Room for the zigzags of what is broken off, where no name stands above them."""
_HEAD: Millimetres[float] = 0.8
_FOOT: Millimetres[float] = 0.9
"""Between a name and the upper end of its line: letters hang below their base line."""
_DOT: Millimetres[float] = 0.55
_UNCROSSINGS = 40


@dataclass(frozen=True, slots=True, kw_only=True)
class _Name:
    """A name, how wide it is, its row counted from below, where its line begins and ends.

    `top` is where the line begins, in the middle below the name; `x` and `y` are what it
    points at, `y` counted down from the upper edge of the drawing.
    """

    text: str
    width: Millimetres[float]
    x: Millimetres[float]
    y: Millimetres[float]
    row: int = 0
    top: Millimetres[float] = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Labels:
    """All names, placed."""

    setting: Setting
    names: tuple[_Name, ...]

    @property
    def height(self) -> Millimetres[float]:
        """What the rows take above the drawing."""
        if not self.names:
            return _BREAKS
        return (
            max(name.row for name in self.names) * self._pitch + self._cap + _FOOT + _ABOVE + _HEAD
        )

    @property
    def _cap(self) -> Millimetres[float]:
        return self.setting.words * POINT * CAP_HEIGHT

    @property
    def _pitch(self) -> Millimetres[float]:
        return self._cap + 2.0

    def items(self, top: Millimetres[float]) -> tuple[list[Item], list[Item]]:
        """Return lines and names; `top` is how far down the upper edge of the drawing lies."""
        lines: list[Item] = []
        names: list[Item] = []
        for name in self.names:
            lowest = top - _ABOVE
            start = lowest - name.row * self._pitch
            # Upright past the names below, then aslant to what is named.
            if name.row:
                lines.append(Rule(x1=name.top, y1=start, x2=name.top, y2=lowest, weight=NARROW))
            lines.append(Rule(x1=name.top, y1=lowest, x2=name.x, y2=top + name.y, weight=NARROW))
            lines.append(_dot(name.x, top + name.y))
            names.append(
                Text(
                    x=name.top,
                    y=start - _FOOT,
                    text=name.text,
                    size=self.setting.words,
                    align=Align.CENTRE,
                )
            )
        return lines, names


def labels_of(sketch: PrintedSketch, view: View, setting: Setting) -> Labels:
    """Return the names of a sketch placed above it, in as few rows as will do.

    Raises
    ------
    TooSmallError
        If the names are too many for any number of rows.
    """
    names = []
    for along, radius, text in sketch.labels:
        width = one_line(
            text,
            width=setting.width,
            face=Face.REGULAR,
            size=setting.words,
            measure=setting.measure,
        )
        # What is named may be broken off: the line leads to as much of it as is shown.
        x = min(max(view.x(along), view.left + 0.5), view.right - 0.3)
        y = min(max(view.y(radius) - view.top, 1.5), 2.0 * view.half - 1.5)
        names.append(_Name(text=text, width=width, x=x, y=y))
    names.sort(key=lambda name: (name.x, name.y, name.text))
    # Dimensions stand right of the work: lines had better not lead across them.
    over = min(view.right + _APART, setting.width)
    return Labels(setting=setting, names=tuple(_uncrossed(names, over, setting.width)))


def _uncrossed(names: list[_Name], over: float, width: Millimetres[float]) -> list[_Name]:
    """Return the names placed; two whose lines cross change places, which shortens both."""
    placed = _placed(names, over, width)
    for _ in range(_UNCROSSINGS):
        pairs = ((i, j) for j in range(len(placed)) for i in range(j))
        crossing = next((p for p in pairs if _cross(placed[p[0]], placed[p[1]])), None)
        if crossing is None:
            break
        i, j = crossing
        names[i], names[j] = names[j], names[i]
        placed = _placed(names, over, width)
    return placed


def _placed(
    names: Sequence[_Name], over: Millimetres[float], width: Millimetres[float]
) -> list[_Name]:
    """Return names in the order given: over the work, or else wherever the page is wide."""
    for rows in range(1, len(names) + 1):
        in_rows = [replace(name, row=number % rows) for number, name in enumerate(names)]
        for edge in (over, width):
            if tops := _tops(in_rows, edge):
                return [replace(name, top=top) for name, top in zip(in_rows, tops, strict=True)]
    if not names:
        return []
    raise TooSmallError(
        f"the {len(names)} names of the sketch find no room above it in {width:.0f} mm; "
        "shorten them or "
    )


def _tops(names: Sequence[_Name], edge: Millimetres[float]) -> list[float]:
    """Return where lines begin, each as near above its part as others let it; empty: no room."""
    leftmost = _pushed(names, [name.width / 2.0 for name in names])
    rightmost = _pulled(names, [edge - name.width / 2.0 for name in names], edge)
    if any(low > high + 1e-9 for low, high in zip(leftmost, rightmost, strict=True)):
        return []
    wanted = [
        min(max(name.x, low), high)
        for name, low, high in zip(names, leftmost, rightmost, strict=True)
    ]
    both = zip(_pushed(names, wanted), _pulled(names, wanted, edge), strict=True)
    # Both keep every distance, and so does the middle between them.
    return [(one + other) / 2.0 for one, other in both]


def _pulled(names: Sequence[_Name], most: Sequence[float], edge: float) -> list[float]:
    """Return where the lines begin: no further right than `most`; all is turned over."""
    turned = _pushed(names[::-1], [edge - top for top in most[::-1]])
    return [edge - top for top in turned[::-1]]


def _pushed(names: Sequence[_Name], least: Sequence[float]) -> list[float]:
    """Return where the lines begin: no further left than `least`, nor nearer than may be."""
    tops: list[float] = []
    for number, name in enumerate(names):
        before = (tops[i] + _distance(names[i], name) for i in range(number))
        tops.append(max([least[number], *before]))
    return tops


def _distance(one: _Name, other: _Name) -> Millimetres[float]:
    """Return how far apart the lines of two names begin at the least."""
    if one.row == other.row:
        return (one.width + other.width) / 2.0 + _APART
    lower = one if one.row < other.row else other
    return lower.width / 2.0 + _CLEAR


def _cross(one: _Name, other: _Name) -> bool:
    """Whether the slanting lines of two names cross."""

    def side(a: tuple[float, float], b: tuple[float, float], c: tuple[float, float]) -> float:
        return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

    a, b = (one.top, -_ABOVE), (one.x, one.y)
    c, d = (other.top, -_ABOVE), (other.x, other.y)
    return side(a, b, c) * side(a, b, d) < 0.0 and side(c, d, a) * side(c, d, b) < 0.0


def _dot(x: float, y: float) -> Drawing:
    return Drawing(
        x=x - _DOT,
        y=y - _DOT,
        size=2.0 * _DOT,
        primitives=(Disc(0.5, 0.5, 0.5, "ink"),),
        meaning="end of a pointing line",
    )
