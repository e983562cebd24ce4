"""The marks of a class -> terminal text and CSV: strings that are there, only placed."""

import csv
import io
from collections.abc import Sequence

from chartgen.renderers.columns import in_columns
from chartgen.renderers.table_text import harmless
from chartgen.wording.lessons.printed_class import PrintedBar
from chartgen.wording.lessons.told_marks import ToldMarks

_LONGEST_BAR = 30
_NUMBERS = frozenset({0, 2, 3, 4})


def render_marks(told: ToldMarks) -> str:
    """Return the marks as aligned tables: students, answers that are not right, exercises."""
    parts = [f"{told.title}\n", in_columns(told.students, right=_NUMBERS)]
    if len(told.wrong) > 1:
        parts.append(in_columns(told.wrong, right=frozenset({0, 2})))
    parts.append(in_columns(told.kinds, right=frozenset(range(1, 6))))
    if told.bars:
        parts.append(f"{told.bars_title}\n{_bars(told.bars)}")
    parts.append("".join(f"{note}\n" for note in told.notes))
    return "\n".join(parts)


def render_marks_csv(told: ToldMarks, delimiter: str) -> str:
    """Return a row a student as CSV; whatever was answered, no cell is a formula."""
    out = io.StringIO()
    writer = csv.writer(out, delimiter=delimiter, lineterminator="\n")
    for row in told.cells:
        writer.writerow([harmless(cell) for cell in row])
    return out.getvalue()


def _bars(bars: Sequence[PrintedBar]) -> str:
    """Return bars of signs, as long as they count."""
    most = max(bar.count for bar in bars)
    wide = max(len(bar.label) for bar in bars)
    digits = len(str(most))
    lines = (
        f"{bar.label.ljust(wide)}  {bar.count:{digits}}  "
        f"{'#' * max(1, round(_LONGEST_BAR * bar.count / most))}  {bar.remark}"
        for bar in bars
    )
    return "".join(f"{line.rstrip()}\n" for line in lines)
