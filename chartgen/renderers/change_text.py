"""A change card -> terminal text and CSV: the strings of the card, only placed."""

import csv
import io
from itertools import groupby

from chartgen.renderers.columns import in_columns
from chartgen.renderers.table_text import harmless
from chartgen.wording.card import PrintedCard
from chartgen.wording.language import speaking, tr
from chartgen.wording.printed_change import (
    CellHeadings,
    FactGroup,
    MovedGroup,
    PrintedChange,
    PrintedSide,
)

_RIGHT = frozenset({0, 1, 2, 4, 5})


def render_change(card: PrintedCard[PrintedChange]) -> str:
    """Return the comparison as text: what changed, the cards, the moved cells, the signs."""
    change = card.chart
    with speaking(card.language):
        check = tr("check {code}", code=card.check_code)
    parts = [
        f"{change.title}, {card.lathe}\n{change.subtitle}\n",
        "".join(f"{line}\n" for line in change.summary),
        *(facts_text(group) for group in change.facts),
        *_cards(change, card.language),
        *(cells_text(group, change.headings) for group in change.groups),
        "".join(f"{entry.sign:>6}  {entry.sentence}\n" for entry in change.legend),
        f"{card.deference}\n{card.identity} · {check}\n",
    ]
    return "\n".join(part for part in parts if part)


def facts_text(group: FactGroup) -> str:
    """Return what files say otherwise under one title."""
    width = max(len(fact.name) for fact in group.facts)
    lines = (f"  {f.name.ljust(width)}  {f.before} → {f.after}\n" for f in group.facts)
    return f"{group.title}\n" + "".join(lines)


def _cards(change: PrintedChange, language: str) -> list[str]:
    with speaking(language):
        return [
            f"{tr(state.value)}\n"
            + "".join(
                f"  {line.file_stem}{f': {line.remark}' if line.remark else ''}\n" for line in lines
            )
            for state, lines in groupby(change.cards, key=lambda line: line.state)
        ]


def cells_text(group: MovedGroup, headings: CellHeadings) -> str:
    """Return the moved cells of one material and blade."""
    limit = headings.limit.split("\n")
    rows = [
        ["", headings.before, "", "", headings.after, "", "", limit[0]],
        [
            headings.diameter,
            *(headings.speed, headings.feed, "") * 2,
            " ".join(limit[1:]),
        ],
    ]
    rows += [[row.diameter, *_side(row.before), *_side(row.after), row.limit] for row in group.rows]
    return f"{group.title}\n" + in_columns(rows, right=_RIGHT, rule_after=2)


def _side(side: PrintedSide) -> tuple[str, str, str]:
    if side.way_out:
        return (f"– {side.way_out}", "", side.sign)
    return (f"{side.speed} {side.position}".rstrip(), side.feed, side.sign)


def render_moved_csv(card: PrintedCard[PrintedChange]) -> str:
    """Return the moved cells as CSV, a line a cell."""
    change = card.chart
    headings = change.headings
    parts = (headings.speed, "position", headings.feed, headings.pace, "sign", "use instead")
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(
        [
            "material",
            "blade name",
            headings.diameter,
            *(f"{headings.before} {part}" for part in parts),
            *(f"{headings.after} {part}" for part in parts),
            " ".join(headings.limit.split()),
            "moved in",
        ]
    )
    for group in change.groups:
        for row in group.rows:
            writer.writerow(
                [
                    group.material,
                    harmless(group.blade),
                    row.diameter,
                    *_parts(row.before),
                    *_parts(row.after),
                    row.limit,
                    row.moved,
                ]
            )
    return out.getvalue()


def _parts(side: PrintedSide) -> tuple[str, ...]:
    return (
        side.speed,
        harmless(side.position),
        side.feed,
        side.pace,
        side.sign,
        side.way_out,
    )
