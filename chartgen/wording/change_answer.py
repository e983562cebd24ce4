"""A comparison for a machine to read: the strings of the change card."""

from dataclasses import asdict
from typing import Any

from chartgen.wording.card import PrintedCard
from chartgen.wording.printed_change import PrintedChange


def change_answer(card: PrintedCard[PrintedChange]) -> dict[str, Any]:
    """Return a printed comparison as a dictionary."""
    change = card.chart
    return {
        "title": change.title,
        "subtitle": change.subtitle,
        "summary": list(change.summary),
        "changed": [
            {"title": group.title, "facts": [asdict(fact) for fact in group.facts]}
            for group in change.facts
        ],
        "cards": [
            {
                "file": line.file_stem,
                "title": line.title,
                "state": line.state.name.lower(),
                "remark": line.remark,
            }
            for line in change.cards
        ],
        "units": {
            "diameter": change.headings.diameter,
            "speed": change.headings.speed,
            "feed": change.headings.feed,
            "pace": change.headings.pace,
        },
        "moved": [
            {"material": group.material, "blade": group.blade}
            | asdict(row)
            | {"moved": row.moved.split(", ")}
            for group in change.groups
            for row in group.rows
        ],
        "legend": {entry.sign: entry.sentence for entry in change.legend},
        "check": card.check_code,
    }
