"""How much one card of a layout holds: measured on the page, never counted beforehand."""

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import replace
from itertools import pairwise
from typing import TypeVar

from chartgen.errors import DoesNotFitError, TooSmallError
from chartgen.layout.axes import panel_widths
from chartgen.layout.blocks.table import LEAST_COLUMN_GAP, stub_width, tracks_of
from chartgen.layout.compose import column_width, compose
from chartgen.layout.layout_file import Layout, Side, every_layout_name, load_layout
from chartgen.layout.layout_schema import BODY_OF
from chartgen.layout.legibility import POINT
from chartgen.layout.piece import Setting, setting_for
from chartgen.layout.typesetting import Measure
from chartgen.wording.card import AnyCard
from chartgen.wording.figure import PrintedCurves
from chartgen.wording.printed import PrintedChart

Item = TypeVar("Item")


def column_groups(chart: PrintedChart, layout: Layout, measure: Measure) -> list[list[int]]:
    """Return the columns of a chart in as few groups as the page is wide enough for.

    Where a single column is too wide, each stands alone, and is refused when it is laid out.
    """
    setting = _setting(layout, measure)
    gap = LEAST_COLUMN_GAP * setting.numbers * POINT
    widths = [track.width + gap for track in tracks_of(chart, layout, setting)]
    return _fewest(widths, setting.width - stub_width(chart, setting))


def panel_groups(body: PrintedCurves, layout: Layout, measure: Measure) -> list[list[int]]:
    """Return the panels of a figure in as few groups as the page is wide enough for."""
    setting = _setting(layout, measure)
    return _fewest(panel_widths(body, setting), setting.width)


def rows_that_fit(card: AnyCard, layout: Layout, measure: Measure) -> int | None:
    """Return how many rows of a card fit, None if all do or it is not the rows that do not."""
    try:
        compose(card, replace(layout, sides=(_body_side(layout),)), measure)
    except TooSmallError as error:
        return error.rows
    return None


def layouts_that_hold(card: AnyCard, refused: Layout, measure: Measure) -> list[str]:
    """Return the layouts that came with the program and hold a card, the smallest page first."""
    holding = []
    for layout in map(load_layout, every_layout_name()):
        if layout.card == refused.card and layout.name != refused.name:
            with suppress(DoesNotFitError):
                compose(card, layout, measure)
                holding.append(layout)
    holding.sort(key=lambda layout: layout.page[0] * layout.page[1])
    return [layout.name for layout in holding]


def in_groups(items: Sequence[Item], most: int) -> list[list[Item]]:
    """Return items in as few groups of at most `most` as will do, as even as can be."""
    count = max(1, -(-len(items) // most))
    ends = [round(len(items) * part / count) for part in range(count + 1)]
    return [list(items[start:end]) for start, end in pairwise(ends)]


def _fewest(widths: Sequence[float], room: float) -> list[list[int]]:
    every = list(range(len(widths)))
    for most in range(len(widths), 1, -1):
        groups = in_groups(every, most)
        if all(sum(widths[i] for i in group) <= room for group in groups):
            return groups
    return in_groups(every, 1)


def _body_side(layout: Layout) -> Side:
    return next(side for side in layout.sides if BODY_OF[layout.card] in side.blocks)


def _setting(layout: Layout, measure: Measure) -> Setting:
    side = _body_side(layout)
    width = column_width(layout, side)
    return setting_for(distance=side.reading_distance, width=width, measure=measure)
