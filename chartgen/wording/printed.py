"""A chart as strings: what PDF, terminal, CSV and JSON all show."""

from dataclasses import dataclass

from chartgen.charts.speed_feed import ChartCell, ChosenCut, SpeedFeedChart
from chartgen.limits.window import Verdict
from chartgen.model.shop import Feeding, LengthUnits, Shop
from chartgen.wording.blade_letters import blade_letter
from chartgen.wording.language import tr
from chartgen.wording.material_names import also_called, material_name
from chartgen.wording.numbers import (
    feed_label,
    length_label,
    write_feed,
    write_feed_ceiling,
    write_feed_floor,
    write_length,
    write_pace,
    write_seconds,
    write_speed,
)
from chartgen.wording.signs import LegendEntry, legend_of, sign_of


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedCell:
    """One cell. Where `way_out` is set there is no window and the numbers are empty."""

    speed: str
    position: str
    feed: str
    pace: str
    sign: str
    way_out: str
    floor: str
    floor_reason: str
    ceiling: str
    ceiling_reason: str
    verdict: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedColumn:
    """A column: the letter of its blade, what it is about, and its heading."""

    letter: str
    name: str
    heading: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedTable:
    """A plain table of words and numbers, with notes under it.

    `right` names the columns aligned right; the first column is set bold.
    """

    title: str
    subtitle: str
    headings: tuple[str, ...]
    right: frozenset[int]
    rows: tuple[tuple[str, ...], ...]
    notes: tuple[str, ...]
    legend: tuple[LegendEntry, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedChart:
    """A chart after rounding."""

    title: str
    subtitle: str
    corner: str
    speed_heading: str
    feed_heading: str
    pace_heading: str
    columns: tuple[PrintedColumn, ...]
    stub: tuple[str, ...]
    rows: tuple[tuple[PrintedCell, ...], ...]
    legend: tuple[LegendEntry, ...]


def print_lathe_chart(chart: SpeedFeedChart) -> PrintedChart:
    """Return one material's chart as strings; its columns are blades."""
    material = chart.columns[0].material
    group = f"ISO {material.iso_group.letter}"
    return _printed(
        chart,
        title=material_name(material),
        subtitle=", ".join((*also_called(material), group)),
        names=[column.blade.name for column in chart.columns],
    )


def print_overview(chart: SpeedFeedChart) -> PrintedChart:
    """Return one blade's chart as strings; its columns are materials."""
    return _printed(
        chart,
        title=overview_title(chart.columns[0].blade.name),
        subtitle=tr("speed and feed by material"),
        names=[material_name(column.material) for column in chart.columns],
    )


def print_pairs(chart: SpeedFeedChart, *, title: str) -> PrintedChart:
    """Return a chart of pairs as strings: a column is headed by blade letter and material."""
    shown = {column.blade.name for column in chart.columns}
    blades = [blade.name for blade in chart.shop.blades if blade.name in shown]
    letters = {name: blade_letter(chart.shop, name) for name in blades}
    is_lettered = len(set(letters.values())) > 1
    return _printed(
        chart,
        title=title,
        subtitle=", ".join(f"{letters[name]} {name}" if is_lettered else name for name in blades),
        names=[material_name(column.material) for column in chart.columns],
    )


def overview_title(blade: str) -> str:
    """Return what an overview of a blade is called."""
    return tr("Blade {name}", name=blade)


def _printed(chart: SpeedFeedChart, *, title: str, subtitle: str, names: list[str]) -> PrintedChart:
    units = chart.shop.request.units
    by_hand = chart.shop.request.feeding is Feeding.HAND
    letters = [blade_letter(chart.shop, column.blade.name) for column in chart.columns]
    # A letter tells blades apart; where all columns share one it would only be noise.
    lettered = len(set(letters)) > 1
    return PrintedChart(
        title=title,
        subtitle=subtitle,
        corner=f"Ø {length_label(units)}",
        speed_heading=tr("rev/min"),
        feed_heading=feed_label(units),
        pace_heading=tr("s/turn") if by_hand else tr("s/cut"),
        columns=tuple(
            PrintedColumn(
                letter=letter, name=name, heading=f"{letter}  {name}" if lettered else name
            )
            for letter, name in zip(letters, names, strict=True)
        ),
        stub=tuple(write_length(d, units) for d in chart.diameters),
        rows=tuple(tuple(_cell(cell, chart.shop, units) for cell in row) for row in chart.rows),
        legend=legend_of([chart]),
    )


def _cell(cell: ChartCell, shop: Shop, units: LengthUnits) -> PrintedCell:
    cut = cell.cut
    return PrintedCell(
        speed=write_speed(cut.spindle_speed) if cut else "",
        position=cut.position.mark if cut else "",
        feed=write_feed(cut.feed, units) if cut else "",
        pace=_pace(cell, cut, shop) if cut else "",
        sign=sign_of(cell),
        way_out="" if cut else _way_out(cell, shop),
        floor=write_feed_floor(cell.floor, units),
        floor_reason=cell.floor_reason.legend,
        ceiling=write_feed_ceiling(cell.ceiling, units),
        ceiling_reason=cell.ceiling_reason.legend,
        verdict=cell.verdict.value,
    )


def _pace(cell: ChartCell, cut: ChosenCut, shop: Shop) -> str:
    """Return seconds a handle turn, or under power feed, where no hand turns, a whole cut."""
    if shop.request.feeding is Feeding.POWER:
        return write_seconds(cut.seconds_of_cut)
    return write_pace(
        seconds=cut.seconds_per_turn, feed=cut.feed, floor=cell.floor, ceiling=cell.ceiling
    )


def _way_out(cell: ChartCell, shop: Shop) -> str:
    if cell.verdict is not Verdict.NO_WINDOW or cell.way_out is None:
        return tr("saw")
    return tr("use {blade}", blade=blade_letter(shop, cell.way_out.name))
