"""Two printed figures line by line: which moved by more than an eye sees on paper."""

import math
from collections.abc import Sequence
from itertools import chain

from chartgen.wording.figure import Point, PrintedAxis, PrintedCurves, PrintedPanel
from chartgen.wording.language import tr

# Half a millimetre on an axis of 100 mm, which is about the width of a line: common practice,
# no source.
VISIBLE_SHARE = 0.005

_Line = tuple[str, Sequence[Point]]


def curve_moves(was: PrintedCurves, now: PrintedCurves) -> str:
    """Return in few words what moved on a figure; empty where an eye sees no difference."""
    if _frame(was) != _frame(now):
        return tr("other axes or curves")
    total = moved = 0
    for old, new in zip(was.panels, now.panels, strict=True):
        for (_, before), (_, after) in zip(_lines(old), _lines(new), strict=True):
            total += 1
            moved += not _alike(before, after, new)
    if moved:
        return tr("{moved} of {total} lines and dots", moved=moved, total=total)
    return "" if was.notes == now.notes else tr("other notes")


def _frame(figure: PrintedCurves) -> tuple[object, ...]:
    return (
        figure.title,
        tuple(
            (
                panel.title,
                panel.x,
                panel.y,
                tuple(name for name, _ in _lines(panel)),
            )
            for panel in figure.panels
        ),
    )


def _lines(panel: PrintedPanel) -> list[_Line]:
    """Return every line, outline and mark of a panel with the label it carries."""
    lines: list[_Line] = [
        (curve.label, tuple(chain.from_iterable(curve.parts))) for curve in panel.curves
    ]
    lines += [("", band.outline) for band in panel.bands]
    lines += [(f"{dot.shape.value} {dot.label}", (dot.at,)) for dot in panel.dots]
    lines += [(text, (at,)) for at, text in panel.letters]
    return lines


def _alike(before: Sequence[Point], after: Sequence[Point], panel: PrintedPanel) -> bool:
    return len(before) == len(after) and all(
        abs(_share(axis, old[side]) - _share(axis, new[side])) <= VISIBLE_SHARE
        for old, new in zip(before, after, strict=True)
        for side, axis in ((0, panel.x), (1, panel.y))
    )


def _share(axis: PrintedAxis, value: float) -> float:
    """Return how far along its axis a value stands, 0 to 1."""
    if axis.logarithmic:
        return math.log(max(value, 1e-12) / axis.least) / math.log(axis.most / axis.least)
    return (value - axis.least) / (axis.most - axis.least)
