"""A figure's axes and curves by matplotlib, drawn as vectors on the card's own canvas.

All text of a figure is placed by the layout, like any other text of a card: one font, one
measure, held to the reading distance. matplotlib brings the scales, the clipping, the dashes
and the marks; with its own ticks and labels a figure would take four times as long.
"""

import math
from collections.abc import Iterable, Mapping, Sequence
from functools import cache
from typing import Any, Final, TypeAlias

import numpy as np
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.backend_bases import GraphicsContextBase, RendererBase
from matplotlib.colors import to_rgb
from matplotlib.figure import Figure
from matplotlib.lines import Line2D
from matplotlib.patches import Polygon, Rectangle
from matplotlib.path import Path
from matplotlib.transforms import Transform
from matplotlib.typing import ColorType
from numpy.typing import ArrayLike
from reportlab.pdfgen.canvas import Canvas
from reportlab.pdfgen.pathobject import PDFPathObject

from chartgen.layout.legibility import POINT
from chartgen.layout.placed import Plot
from chartgen.quantities import FloatArray
from chartgen.wording.figure import DotShape, PrintedAxis, PrintedCurve, PrintedPanel

Stroke: TypeAlias = tuple[tuple[float, float], tuple[float, float]]
_POINTS_PER_INCH = 72.0
_GRID: Final = {"color": "0.62", "linewidth": 0.35}
_TICK: Final = {"color": "k", "linewidth": 0.4}
_FRAME_WEIGHT = 0.8
_TICK_LENGTH = 1.6 / POINT
_HATCH_PITCH = 5.0
_HATCH_WEIGHT = 0.35
_HATCH_GREY = 0.35
_DOTS: Final[dict[DotShape, dict[str, Any]]] = {
    DotShape.DISC: {"marker": "o", "markersize": 5.0, "markerfacecolor": "k"},
    DotShape.RING: {"marker": "o", "markersize": 6.0, "markerfacecolor": "w"},
    DotShape.SQUARE: {"marker": "s", "markersize": 5.0, "markerfacecolor": "w"},
    DotShape.CROSS: {"marker": "x", "markersize": 5.0},
    DotShape.BAR: {"marker": "|", "markersize": 7.0},
}


def draw_plot(canvas: Canvas, plot: Plot, page_height: float) -> None:
    """Draw a plot's frame, grid, bands, curves and dots; its texts are items of the page."""
    width, height = plot.width / POINT, plot.height / POINT
    panel = plot.panel
    figure, axes = _empty_axes(
        "log" if panel.x.logarithmic else "linear", "log" if panel.y.logarithmic else "linear"
    )
    figure.set_size_inches(width / _POINTS_PER_INCH, height / _POINTS_PER_INCH)
    axes.set_xlim(panel.x.least, panel.x.most)
    axes.set_ylim(panel.y.least, panel.y.most)
    artists = [*_grid(axes, plot, width, height), *_content(panel), _frame(axes)]
    canvas.saveState()
    canvas.translate(plot.x / POINT, (page_height - plot.y - plot.height) / POINT)
    renderer = _CanvasRenderer(canvas, width, height)
    # Each artist draws itself: the axes' own round over ticks, titles and spines, none of
    # which stands here, would take as long again.
    for artist in artists:
        axes.add_artist(artist)
        artist.draw(renderer)
        artist.remove()
    canvas.restoreState()


@cache
def _empty_axes(x_scale: str, y_scale: str) -> tuple[Figure, Axes]:
    """Return bare axes of two scales: made once, because making them is half of a figure's time.

    They hold nothing between two figures, so that nothing of one is seen on the next.
    """
    figure = Figure(dpi=_POINTS_PER_INCH)
    return figure, figure.add_axes((0.0, 0.0, 1.0, 1.0), xscale=x_scale, yscale=y_scale)


def _grid(axes: Axes, plot: Plot, width: float, height: float) -> list[Artist]:
    """Return grid lines at the numbers and short strokes inside the frame between them."""
    panel = plot.panel
    xs = [value for value in plot.x_grid if _inside(panel.x, value)]
    ys = [value for value in plot.y_grid if _inside(panel.y, value)]
    lines = [((x, panel.y.least), (x, panel.y.most)) for x in xs]
    lines += [((panel.x.least, y), (panel.x.most, y)) for y in ys]
    short_x, short_y = _TICK_LENGTH / height, _TICK_LENGTH / width
    across = [((x, 0.0), (x, short_x)) for x in panel.x.minor]
    up = [((0.0, y), (short_y, y)) for y in panel.y.minor]
    return [
        _strokes(lines, axes.transData, _GRID),
        _strokes(across, axes.get_xaxis_transform(), _TICK),
        _strokes(up, axes.get_yaxis_transform(), _TICK),
    ]


def _strokes(lines: Sequence[Stroke], transform: Transform, look: Mapping[str, Any]) -> Line2D:
    """Return many strokes as one artist: one path with gaps, which is drawn at once."""
    gap = (math.nan, math.nan)
    points = [point for line in lines for point in (*line, gap)] or [gap]
    xs, ys = zip(*points, strict=True)
    return Line2D(xs, ys, transform=transform, **look)


def _frame(axes: Axes) -> Artist:
    return Rectangle(
        (0.0, 0.0),
        1.0,
        1.0,
        transform=axes.transAxes,
        fill=False,
        linewidth=_FRAME_WEIGHT,
        clip_on=False,
    )


def _inside(axis: PrintedAxis, value: float) -> bool:
    """Whether a grid line is worth drawing: the frame already marks the ends."""
    return axis.least * (1 + 1e-9) + 1e-12 < value < axis.most * (1 - 1e-9)


def _content(panel: PrintedPanel) -> list[Artist]:
    artists: list[Artist] = [
        Polygon(band.outline, closed=True, facecolor="none", hatch="/", linewidth=0)
        for band in panel.bands
    ]
    artists += [_line(curve, part) for curve in panel.curves for part in curve.parts]
    for shape in dict.fromkeys(dot.shape for dot in panel.dots):
        xs, ys = zip(*(dot.at for dot in panel.dots if dot.shape is shape), strict=True)
        look = {"color": "k", "markeredgecolor": "k", "linestyle": "none"} | _DOTS[shape]
        artists.append(Line2D(xs, ys, **look))
    return artists


def _line(curve: PrintedCurve, part: tuple[tuple[float, float], ...]) -> Line2D:
    xs, ys = zip(*part, strict=True)
    line = Line2D(xs, ys, color="0.35" if curve.fine else "k", linewidth=curve.weight)
    if curve.dash.value:
        line.set_dashes([length / curve.weight for length in curve.dash.value])
        line.set_dash_capstyle("butt")
    line.set_solid_joinstyle("round")
    return line


class _CanvasRenderer(RendererBase):
    """Draws matplotlib's paths on a reportlab canvas whose origin is the axes' corner."""

    def __init__(self, canvas: Canvas, width: float, height: float) -> None:
        super().__init__()
        self._canvas = canvas
        self._size = width, height

    def get_canvas_width_height(self) -> tuple[float, float]:
        return self._size

    def flipy(self) -> bool:
        return False

    def draw_path(
        self,
        gc: GraphicsContextBase,
        path: Path,
        transform: Transform,
        rgbFace: ColorType | None = None,  # noqa: N803 - matplotlib's own name
    ) -> None:
        canvas = self._canvas
        shape = self._outline(path, transform)
        fills = rgbFace is not None
        strokes = gc.get_linewidth() > 0.0
        canvas.saveState()
        self._clip(gc)
        if gc.get_hatch():
            self._hatch(shape, path.get_extents(transform).extents)
        if fills or strokes:
            self._set_pen(gc, rgbFace)
            canvas.drawPath(shape, stroke=int(strokes), fill=int(fills))
        canvas.restoreState()

    def draw_markers(
        self,
        gc: GraphicsContextBase,
        marker_path: Path,
        marker_trans: Transform,
        path: Path,
        trans: Transform,
        rgbFace: ColorType | None = None,  # noqa: N803 - matplotlib's own name
    ) -> None:
        """Draw all marks of one shape as one path."""
        canvas = self._canvas
        shape = canvas.beginPath()
        mark = marker_trans.transform_path(marker_path)
        for at in trans.transform(path.vertices):
            _trace(shape, np.add(mark.vertices, at), mark.codes)
        canvas.saveState()
        self._clip(gc)
        self._set_pen(gc, rgbFace)
        canvas.drawPath(shape, stroke=1, fill=int(rgbFace is not None))
        canvas.restoreState()

    def _outline(self, path: Path, transform: Transform) -> PDFPathObject:
        shape = self._canvas.beginPath()
        placed = transform.transform_path(path)
        _trace(shape, np.asarray(placed.vertices), placed.codes)
        return shape

    def _clip(self, gc: GraphicsContextBase) -> None:
        box = gc.get_clip_rectangle()
        if box is not None:
            clip = self._canvas.beginPath()
            clip.rect(*(float(v) for v in box.bounds))
            self._canvas.clipPath(clip, stroke=0, fill=0)

    def _hatch(self, shape: PDFPathObject, extents: Iterable[float]) -> None:
        """Fill an outline with slanted lines that print on any printer."""
        canvas = self._canvas
        canvas.saveState()
        canvas.clipPath(shape, stroke=0, fill=0)
        canvas.setStrokeGray(_HATCH_GREY)
        canvas.setLineWidth(_HATCH_WEIGHT)
        left, bottom, right, top = (float(value) for value in extents)
        # Counted from the corner of the axes, so that neighbouring bands hatch alike.
        first = int((left - top) // _HATCH_PITCH)
        last = int((right - bottom) // _HATCH_PITCH) + 1
        lines = canvas.beginPath()
        for number in range(first, last + 1):
            x = number * _HATCH_PITCH
            lines.moveTo(x + bottom, bottom)
            lines.lineTo(x + top, top)
        canvas.drawPath(lines, stroke=1, fill=0)
        canvas.restoreState()

    def _set_pen(self, gc: GraphicsContextBase, face: ColorType | None) -> None:
        canvas = self._canvas
        canvas.setLineWidth(gc.get_linewidth())
        canvas.setStrokeColorRGB(*to_rgb(gc.get_rgb()))
        if face is not None:
            canvas.setFillColorRGB(*to_rgb(face))
        _, dashes = gc.get_dashes()
        canvas.setDash([] if dashes is None else np.asarray(dashes, dtype=np.float64).tolist(), 0)
        canvas.setLineCap({"butt": 0, "round": 1, "projecting": 2}[str(gc.get_capstyle())])
        canvas.setLineJoin({"miter": 0, "round": 1, "bevel": 2}[str(gc.get_joinstyle())])


def _trace(shape: PDFPathObject, vertices: FloatArray, codes: ArrayLike | None) -> None:
    """Add a path to a shape. Without codes it is a line, broken where a point is NaN."""
    points = vertices.tolist()
    if codes is None:
        pen_down = False
        for x, y in points:
            if math.isnan(x):
                pen_down = False
            elif pen_down:
                shape.lineTo(x, y)
            else:
                shape.moveTo(x, y)
                pen_down = True
        return
    number = 0
    kinds = np.asarray(codes).tolist()
    while number < len(points):
        kind = kinds[number]
        if kind == Path.MOVETO:
            shape.moveTo(*points[number])
        elif kind == Path.LINETO:
            shape.lineTo(*points[number])
        elif kind == Path.CURVE4:
            shape.curveTo(*points[number], *points[number + 1], *points[number + 2])
            number += 2
        elif kind == Path.CLOSEPOLY:
            shape.close()
        else:
            raise NotImplementedError(f"path code {kind} is drawn by no figure here")
        number += 1
