"""Which printed cards are stale, which still hold: two shops' cards, pair by pair.

A card holds where nothing on its front moved by more than its rounding: charts by their
cells, plain tables by their printed entries, curves by what an eye sees, jobs by their steps.
"""

from collections.abc import Mapping, Sequence

from chartgen.charts.change import CellChanges, CellPair
from chartgen.wording.card import AnyCard
from chartgen.wording.curve_moves import curve_moves
from chartgen.wording.figure import PrintedCurves
from chartgen.wording.job_moves import job_remark
from chartgen.wording.language import speaking, tr
from chartgen.wording.numbers import write_length
from chartgen.wording.printed import PrintedChart, PrintedTable, overview_title
from chartgen.wording.printed_change import CardLine, CardState
from chartgen.wording.printed_job import PrintedJob

_Cells = Mapping[tuple[str, str, str], CellPair]


def card_states(
    before: Sequence[AnyCard], after: Sequence[AnyCard], changes: CellChanges | None
) -> tuple[CardLine, ...]:
    """Return each card of either shop with its state, the most urgent first.

    The changes of cells are asked for by charts alone; without them a chart counts as moved.
    """
    old = {card.file_stem: card for card in before}
    new = {card.file_stem: card for card in after}
    cells = {} if changes is None else _by_place(changes)
    lines = []
    for stem, card in {**old, **new}.items():
        if stem not in new:
            state, remark = CardState.GONE, ""
        elif stem not in old:
            state, remark = CardState.NEW, ""
        else:
            state, remark = _state(old[stem], new[stem], cells)
        lines.append(CardLine(file_stem=stem, title=card.chart.title, state=state, remark=remark))
    order = list(CardState)
    return tuple(sorted(lines, key=lambda line: order.index(line.state)))


def _by_place(changes: CellChanges) -> _Cells:
    """Return the cells by title, column and row of the charts that show them, as these say them."""
    places: dict[tuple[str, str, str], CellPair] = {}
    request = changes.after.request
    with speaking(request.language.value):
        for cell in changes.cells:
            row, material = write_length(cell.diameter, request.units), tr(cell.material.name)
            places[material, cell.blade.name, row] = cell
            places[overview_title(cell.blade.name), material, row] = cell
    return places


def _state(old: AnyCard, new: AnyCard, cells: _Cells) -> tuple[CardState, str]:
    if old.check_code == new.check_code:
        return CardState.CURRENT, ""
    if old.language != new.language:
        return CardState.STALE, tr("another language")
    remarks = [remark for remark in (_of_body(old, new, cells), _of_safety(old, new)) if remark]
    return (CardState.STALE, "; ".join(remarks)) if remarks else (CardState.HOLDS, "")


def _of_safety(old: AnyCard, new: AnyCard) -> str:
    same = (old.cautions, old.deference) == (new.cautions, new.deference)
    return "" if same else tr("other cautions")


def _of_body(old: AnyCard, new: AnyCard, cells: _Cells) -> str:
    """Return what is otherwise on the front of a card; empty where it holds."""
    was, now = old.chart, new.chart
    if isinstance(was, PrintedChart) and isinstance(now, PrintedChart):
        return _of_chart(was, now, cells)
    if isinstance(was, PrintedTable) and isinstance(now, PrintedTable):
        return _of_table(was, now)
    if isinstance(was, PrintedCurves) and isinstance(now, PrintedCurves):
        return curve_moves(was, now)
    if isinstance(was, PrintedJob) and isinstance(now, PrintedJob):
        return job_remark(was, now)
    return "" if was == now else tr("other contents")


def _of_chart(was: PrintedChart, now: PrintedChart, cells: _Cells) -> str:
    same_frame = _frame(was) == _frame(now)
    if (was.corner, was.feed_heading) != (now.corner, now.feed_heading):
        return tr("other units")
    if was.stub != now.stub:
        return tr("other diameters")
    if was.columns != now.columns or not same_frame:
        return tr("other columns")
    all_cells = [(now.title, column.name, row) for row in now.stub for column in now.columns]
    # Diameters that differ by less than is printed share a row and no cell: print it again.
    moved = sum(place not in cells or bool(cells[place].moves) for place in all_cells)
    return tr("{moved} of {total} cells", moved=moved, total=len(all_cells)) if moved else ""


def _frame(chart: PrintedChart) -> tuple[str, ...]:
    return (chart.title, chart.subtitle, chart.speed_heading, chart.pace_heading)


def _of_table(was: PrintedTable, now: PrintedTable) -> str:
    if (was.title, was.headings) != (now.title, now.headings):
        return tr("other columns")
    if [row[0] for row in was.rows] != [row[0] for row in now.rows]:
        return tr("other rows")
    pairs = [
        (old, new)
        for old_row, new_row in zip(was.rows, now.rows, strict=True)
        for old, new in zip(old_row[1:], new_row[1:], strict=True)
    ]
    moved = sum(old != new for old, new in pairs)
    if moved:
        return tr("{moved} of {total} entries", moved=moved, total=len(pairs))
    return "" if was.subtitle == now.subtitle else tr("another blade")
