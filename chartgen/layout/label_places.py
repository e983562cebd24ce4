"""Where labels stand beside their curves: off other labels, off other curves, near their own."""

import math
from collections.abc import Sequence

import numpy as np

from chartgen.layout.axes import Frame
from chartgen.quantities import BoolArray, FloatArray, IntArray, Millimetres

_CELL: Millimetres[float] = 0.75
_GAP: Millimetres[float] = 0.9
_SPACING: Millimetres[float] = 0.6
_TRIED = 30
_APART: Millimetres[float] = 2.5
"""Between two labels on a line, so that they do not read as one."""
_NEAR: Millimetres[float] = 2.2
# Dislike of a point of ink: under the label, and near it but of another line.
_CROSSED, _OTHER, _CLOSE = 1.0, 3.0, 0.4
_HALO: Millimetres[float] = 0.5
_TAILS: Millimetres[float] = 1.2
"""Between two labels one above the other: letters hang below their line."""
Box = tuple[float, float, float, float]


class Places:
    """What is already on a figure: boxes of labels, and how much inked line lies where.

    Ink is counted in the cells of a fine grid and summed up from a corner, so that the ink in
    any box is four look-ups, whatever number of places is tried.
    """

    def __init__(self, frame: Frame) -> None:
        self._frame = frame
        self._boxes: list[Box] = []
        self._lines: dict[int, FloatArray] = {}
        self._total = self._summed([])

    def add_line(self, number: int, parts: Sequence[FloatArray]) -> None:
        """Remember a line, by its number, that labels had better not cross."""
        self._lines[number] = self._summed(parts)
        self._total = self._total + self._lines[number]

    def add_box(self, box: Box) -> None:
        """Remember a place that no label may lie on."""
        self._boxes.append(box)

    def place(
        self, candidates: FloatArray, width: float, height: float, own: int | None = None
    ) -> tuple[float, float] | None:
        """Return the left and bottom of the best free place for a label, and take it.

        Candidates are rows of (left, bottom, dislike); `own` is the number of the label's own
        line, which it may stand close to. None where every place lies on another label or
        outside the frame.
        """
        if not candidates.size:
            return None
        left, bottom, dislike = candidates.T
        right, top = left + width, bottom - height
        cost = dislike + _CROSSED * self._ink(self._total, left, top, right, bottom, _HALO)
        near = self._total if own is None else self._total - self._lines[own]
        cost += _OTHER * self._ink(near, left, top, right, bottom, _HALO)
        cost += _CLOSE * self._ink(near, left, top, right, bottom, _NEAR)
        cost[~self._free(left, top, right, bottom)] = np.inf
        best = int(cost.argmin())
        if not np.isfinite(cost[best]):
            return None
        self._boxes.append((left[best], top[best], right[best], bottom[best]))
        return float(left[best]), float(bottom[best])

    def _free(
        self, left: FloatArray, top: FloatArray, right: FloatArray, bottom: FloatArray
    ) -> BoolArray:
        frame = self._frame
        free = (left >= frame.x + _HALO) & (right <= frame.x + frame.width - _HALO)
        free &= (top >= frame.y + _HALO) & (bottom <= frame.y + frame.height - _HALO)
        for box_left, box_top, box_right, box_bottom in self._boxes:
            apart = (right + _APART <= box_left) | (left - _APART >= box_right)
            free &= apart | (bottom + _TAILS <= box_top) | (top - _TAILS >= box_bottom)
        return np.asarray(free)

    def _summed(self, parts: Sequence[FloatArray]) -> FloatArray:
        """Return the number of points left of and above each corner of the grid."""
        frame = self._frame
        shape = math.ceil(frame.width / _CELL), math.ceil(frame.height / _CELL)
        counts = np.zeros((shape[0] + 1, shape[1] + 1))
        for part in parts:
            column = ((part[:, 0] - frame.x) / _CELL).astype(int).clip(0, shape[0] - 1)
            row = ((part[:, 1] - frame.y) / _CELL).astype(int).clip(0, shape[1] - 1)
            np.add.at(counts, (column + 1, row + 1), 1.0)
        return counts.cumsum(axis=0).cumsum(axis=1)

    def _ink(
        self,
        summed: FloatArray,
        left: FloatArray,
        top: FloatArray,
        right: FloatArray,
        bottom: FloatArray,
        margin: Millimetres[float],
    ) -> FloatArray:
        frame = self._frame

        def cell(values: FloatArray, start: float, most: int) -> IntArray:
            return np.rint((values - start) / _CELL).astype(int).clip(0, most)

        columns, rows = summed.shape[0] - 1, summed.shape[1] - 1
        x1, x2 = (cell(v, frame.x, columns) for v in (left - margin, right + margin))
        y1, y2 = (cell(v, frame.y, rows) for v in (top - margin, bottom + margin))
        return np.asarray(summed[x2, y2] - summed[x1, y2] - summed[x2, y1] + summed[x1, y1])


def dense(points: Sequence[tuple[float, float]]) -> FloatArray:
    """Return points along a polyline, no further apart than labels could slip between."""
    corners = np.asarray(points, dtype=np.float64)
    steps = np.hypot(*np.diff(corners, axis=0).T)
    along = np.concatenate([[0.0], np.cumsum(steps)])
    count = max(2, int(along[-1] / _SPACING) + 1)
    wanted = np.linspace(0.0, along[-1], count)
    return np.column_stack([np.interp(wanted, along, corners[:, axis]) for axis in (0, 1)])


def beside_line(
    points: FloatArray, width: float, height: float, *, prefer: float = 0.75
) -> FloatArray:
    """Return candidates above, below and to the sides of a line's points.

    `prefer` is the share of the line's length at which a label is liked best.
    """
    every = max(1, len(points) // _TRIED)
    x, y = points[::every].T
    dislike = 6.0 * np.abs(np.arange(x.size) / max(1, x.size - 1) - prefer)
    aside = (
        (-width / 2, -_GAP, 0.0),
        (-width / 2, _GAP + height, 0.5),
        (_GAP, -_GAP, 0.2),
        (-width - _GAP, -_GAP, 0.2),
        (_GAP, _GAP + height, 0.7),
        (-width - _GAP, _GAP + height, 0.7),
        (_GAP, height / 2, 1.0),
        (-width - _GAP, height / 2, 1.0),
    )
    return np.concatenate(
        [np.column_stack([x + right, y + down, dislike + extra]) for right, down, extra in aside]
    )


def anywhere(frame: Frame, line: FloatArray, width: float, height: float) -> FloatArray:
    """Return candidates all over a frame, the nearer to a line the better."""
    left, bottom = (
        axis.ravel()
        for axis in np.meshgrid(
            np.arange(frame.x, frame.x + frame.width - width, 3.0),
            np.arange(frame.y + height, frame.y + frame.height, 2.0),
        )
    )
    across = np.subtract.outer(left + width / 2, line[:, 0])
    down = np.subtract.outer(bottom - height / 2, line[:, 1])
    return np.column_stack([left, bottom, 0.5 * np.hypot(across, down).min(axis=1)])


def leader(
    line: FloatArray, spot: tuple[float, float], width: float, height: float
) -> tuple[float, float, float, float]:
    """Return the ends of a thin rule from a label's box to the nearest point of its line."""
    left, bottom = spot
    x = np.clip(line[:, 0], left, left + width)
    y = np.clip(line[:, 1], bottom - height, bottom)
    nearest = int(np.hypot(line[:, 0] - x, line[:, 1] - y).argmin())
    return float(x[nearest]), float(y[nearest]), float(line[nearest, 0]), float(line[nearest, 1])


def beside_point(x: float, y: float, width: float, height: float) -> FloatArray:
    """Return candidates round a point, the nearer the better."""
    found = []
    for ring, gap in enumerate((1.3, 2.2, 3.4, 5.0)):
        found += [
            (x + gap, y + height / 2, ring + 0.0),
            (x - width / 2, y - gap, ring + 0.1),
            (x - width - gap, y + height / 2, ring + 0.2),
            (x - width / 2, y + gap + height, ring + 0.3),
            (x + gap * 0.7, y - gap * 0.7, ring + 0.4),
            (x + gap * 0.7, y + gap * 0.7 + height, ring + 0.5),
            (x - width - gap * 0.7, y - gap * 0.7, ring + 0.6),
            (x - width - gap * 0.7, y + gap * 0.7 + height, ring + 0.7),
        ]
    return np.array(found)
