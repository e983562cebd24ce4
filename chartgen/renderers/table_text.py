"""A printed chart -> terminal text and CSV: the strings of the card, only placed."""

import csv
import io

from chartgen.description.csv_table import FORMULA_STARTS
from chartgen.renderers.columns import in_columns
from chartgen.wording.card import PrintedCard
from chartgen.wording.language import speaking, tr
from chartgen.wording.printed import PrintedCell, PrintedChart

_PARTS = 4
_HEADINGS = (
    "blade",
    "blade name",
    "position",
    "sign",
    "verdict",
    "use instead",
    "feed floor",
    "floor reason",
    "feed ceiling",
    "ceiling reason",
)


def render_table(card: PrintedCard[PrintedChart]) -> str:
    """Return the chart as aligned text with its legend, assumptions and foot."""
    chart = card.chart
    names = [""]
    units = [chart.corner]
    right = {0}
    for number, column in enumerate(chart.columns):
        names += [column.heading, "", "", ""]
        units += [chart.speed_heading, chart.feed_heading, chart.pace_heading, ""]
        right |= {1 + _PARTS * number + part for part in range(3)}
    rows = [names, units]
    for stub, cells in zip(chart.stub, chart.rows, strict=True):
        rows.append([stub, *(text for cell in cells for text in _cell(cell))])
    with speaking(card.language):
        heading = tr(
            "{title} ({subtitle}) on {lathe}",
            title=chart.title,
            subtitle=chart.subtitle,
            lathe=card.lathe,
        )
        check = tr("check {code}", code=card.check_code)
    legend = "".join(f"{entry.sign:>6}  {entry.sentence}\n" for entry in chart.legend)
    assumptions = "".join(f"- {line}\n" for line in card.assumptions)
    return (
        f"{heading}\n\n"
        + in_columns(rows, right=frozenset(right), rule_after=2)
        + f"\n{legend}\n{assumptions}\n{card.force_band}\n{card.deference}\n"
        + f"{card.identity} · {check}\n"
    )


def _cell(cell: PrintedCell) -> tuple[str, str, str, str]:
    if cell.way_out:
        return (f"– {cell.way_out}", "", "", cell.sign)
    return (f"{cell.speed} {cell.position}".rstrip(), cell.feed, cell.pace, cell.sign)


def render_csv(card: PrintedCard[PrintedChart]) -> str:
    """Return the chart as CSV, a line a cell; a spreadsheet opens it with every sign apart."""
    chart = card.chart
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    blade, blade_name, position, *rest = _HEADINGS
    writer.writerow(
        [
            chart.corner,
            blade,
            blade_name,
            chart.speed_heading,
            position,
            chart.feed_heading,
            chart.pace_heading,
            *rest,
        ]
    )
    for stub, cells in zip(chart.stub, chart.rows, strict=True):
        for column, cell in zip(chart.columns, cells, strict=True):
            writer.writerow(
                [
                    stub,
                    column.letter,
                    harmless(column.name),
                    cell.speed,
                    harmless(cell.position),
                    cell.feed,
                    cell.pace,
                    cell.sign,
                    cell.verdict,
                    cell.way_out,
                    cell.floor,
                    cell.floor_reason,
                    cell.ceiling,
                    cell.ceiling_reason,
                ]
            )
    return out.getvalue()


def harmless(text: str) -> str:
    """Return a name that no spreadsheet takes for a formula."""
    return f"'{text}" if text.startswith(FORMULA_STARTS) else text
