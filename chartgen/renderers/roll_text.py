"""A table of a class -> terminal text and CSV: the strings of the page, only placed."""

import csv
import io

from chartgen.renderers.columns import in_columns
from chartgen.renderers.table_text import harmless
from chartgen.wording.lessons.printed_class import PrintedRoll

_LONGEST_BAR = 30


def render_roll(roll: PrintedRoll, foot: str) -> str:
    """Return the table as aligned text, with its bars as rows of signs."""
    told = "\n".join(filter(None, (roll.title, roll.subtitle)))
    table = in_columns([roll.headings, *roll.rows], right=roll.right)
    bars = ""
    if roll.bars:
        most = max(bar.count for bar in roll.bars)
        rows = [
            (bar.label, str(bar.count), f"{_bar(bar.count, most)} {bar.remark}".strip())
            for bar in roll.bars
        ]
        widths = [max(len(row[i]) for row in rows) for i in range(2)]
        lines = "".join(
            f"{label.ljust(widths[0])}  {count.rjust(widths[1])}  {rest}".rstrip() + "\n"
            for label, count, rest in rows
        )
        bars = f"\n{roll.bars_title}\n{lines}"
    notes = "".join(f"{note}\n" for note in roll.notes)
    return f"{told}\n\n{table}{bars}\n{notes}{foot}\n"


def render_roll_csv(roll: PrintedRoll, delimiter: str = ",") -> str:
    """Return the table as CSV; whatever a student wrote, no cell is a formula."""
    out = io.StringIO()
    writer = csv.writer(out, delimiter=delimiter, lineterminator="\n")
    for row in (roll.headings, *roll.rows):
        writer.writerow([harmless(cell) for cell in row])
    return out.getvalue()


def _bar(count: int, most: int) -> str:
    return "#" * max(1, round(_LONGEST_BAR * count / most))
