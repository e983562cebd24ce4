"""The columns of a table, measured: what stands in a cell, and where each number ends."""

from collections.abc import Sequence
from dataclasses import dataclass

from chartgen.layout.layout_file import Layout
from chartgen.layout.legibility import POINT
from chartgen.layout.piece import Setting
from chartgen.layout.placed import Face
from chartgen.quantities import Millimetres
from chartgen.wording.language import decimal
from chartgen.wording.printed import PrintedCell, PrintedChart, PrintedColumn

# Gaps as shares of the size of the numbers.
_PART_GAP = 0.34
_MARK_GAP = 0.1
UNIT_OF_PART = {"speed": "speed_heading", "feed": "feed_heading", "pace": "pace_heading"}


@dataclass(frozen=True, slots=True)
class Part:
    """One number of a cell: where it stands in the column and how it is aligned.

    `right` is where its right edge, or its decimal point, stands; `left` where it begins.
    """

    name: str
    left: Millimetres[float]
    point: Millimetres[float]
    right: Millimetres[float]


@dataclass(frozen=True, slots=True)
class Track:
    """A table column with the parts of its cells, measured."""

    column: PrintedColumn
    parts: tuple[Part, ...]
    width: Millimetres[float]


def text_of(cell: PrintedCell, part: str) -> str:
    """Return what a cell shows as one of its parts."""
    return {
        "speed": cell.speed + cell.position,
        "feed": cell.feed,
        "pace": cell.pace,
        "sign": cell.sign,
    }[part]


def track_of(chart: PrintedChart, index: int, layout: Layout, setting: Setting) -> Track:
    """Return a column of a chart with the parts its layout shows, measured."""
    cells = [row[index] for row in chart.rows]
    part_gap = _PART_GAP * setting.numbers * POINT
    parts: list[Part] = []
    x = 0.0
    for name in layout.cell:
        texts = [text for cell in cells if (text := text_of(cell, name))]
        before, after = _split_widths(texts, name, cells, setting)
        if name in UNIT_OF_PART:
            label = getattr(chart, UNIT_OF_PART[name])
            before = max(before, setting.measure(label, Face.REGULAR, setting.words) - after)
        parts.append(Part(name, x, x + before, x + before + after))
        x += before + after + part_gap
    return Track(chart.columns[index], tuple(parts), x - part_gap)


def _split_widths(
    texts: Sequence[str], name: str, cells: Sequence[PrintedCell], setting: Setting
) -> tuple[Millimetres[float], Millimetres[float]]:
    """Return the widest part before the alignment point and the widest after it."""

    def width(text: str) -> float:
        return setting.measure(text, Face.REGULAR, setting.numbers)

    if not texts:
        return 0.0, 0.0
    if name == "sign":
        return 0.0, max(width(text) for text in texts)
    if name == "speed":
        speeds = max(width(cell.speed) for cell in cells)
        marks = max(_mark_width(cell.position, setting) for cell in cells)
        return speeds, marks + (mark_gap(setting) if marks else 0.0)
    heads = [text.partition(decimal("."))[0] for text in texts]
    tails = [text[len(head) :] for text, head in zip(texts, heads, strict=True)]
    return max(map(width, heads)), max(map(width, tails))


def _mark_width(mark: str, setting: Setting) -> Millimetres[float]:
    """Return the width of a position mark: smaller than the number it stands behind."""
    return setting.measure(mark, Face.REGULAR, setting.words) if mark else 0.0


def mark_gap(setting: Setting) -> Millimetres[float]:
    """Return the gap between a speed and the mark of its drive position."""
    return _MARK_GAP * setting.numbers * POINT


def headed(track: Track) -> list[Part]:
    """Return the parts with a heading of their own; a sign belongs to the number before it."""
    return [part for part in track.parts if part.name in UNIT_OF_PART]
