"""Plain text in columns, for a terminal or a file."""

from collections.abc import Sequence

_GAP = "  "


def in_columns(
    rows: Sequence[Sequence[str]], *, right: frozenset[int] = frozenset(), rule_after: int = 1
) -> str:
    """Return rows in aligned columns; `right` names columns to align right.

    A line of dashes stands after the first `rule_after` rows, the heading.
    """
    widths = [max(len(row[i]) for row in rows) for i in range(len(rows[0]))]

    def line(row: Sequence[str]) -> str:
        cells = (
            cell.rjust(width) if i in right else cell.ljust(width)
            for i, (cell, width) in enumerate(zip(row, widths, strict=True))
        )
        return _GAP.join(cells).rstrip()

    rule = _GAP.join("-" * width for width in widths)
    lines = [line(row) for row in rows]
    return "\n".join([*lines[:rule_after], rule, *lines[rule_after:]]) + "\n"
