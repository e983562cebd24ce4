"""A CSV file as people save it: its bytes -> rows with their lines, or what is wrong with it.

Spreadsheets part cells by ; , or a tab, by the country they are set to. Which one it is, the
headings tell; nothing is guessed where they do not. No cell is ever taken for a formula.
"""

import csv
import io
import unicodedata
from collections.abc import Callable, Mapping, Sequence
from typing import Final, NamedTuple

from chartgen.errors import DescriptionError, Fault
from chartgen.model.shop import Language

DELIMITERS: Final = {";": "semicolons", ",": "commas", "\t": "tabs"}
PARTED_BY: Final = {Language.ENGLISH: ",", Language.GERMAN: ";"}
"""What parts the cells that this program writes: no comma where numbers have one."""
FORMULA_STARTS: Final = ("=", "+", "-", "@", "\t", "\r", "＝", "＋", "－", "＠")
"""How a cell begins that a spreadsheet may take for a formula, in wide letters too."""
_OTHERS: Final = {"|": "bars", ":": "colons"}
_SAVE_UTF8: Final = (
    "Save it again with the encoding UTF-8 (a spreadsheet's 'Save as' has it, beside CSV)."
)
_WIDE: Final = {"utf-16": (b"\xff\xfe", b"\xfe\xff")}
_SHOWN: Final = 40


class Row(NamedTuple):
    """One line of a table: its number in the file, its cells as they stand."""

    line: int
    cells: tuple[str, ...]


class CsvTable(NamedTuple):
    """A table: what its headings mean, in their order, the rows below, and what parts cells."""

    columns: tuple[str, ...]
    rows: tuple[Row, ...]
    delimiter: str
    heading_line: int


Meaning = Callable[[str], str]
"""A heading in small letters -> what its column is, empty where it is nothing to this table."""


def csv_table(
    data: bytes, *, file: str, meaning: Meaning, needs: Mapping[str, str], headings: str
) -> CsvTable:
    """Return a table.

    Parameters
    ----------
    data
        The file as it lies on the disk.
    file
        Its name, for messages.
    meaning
        Tells what a heading is.
    needs
        The columns it cannot do without, each with the heading to write for it.
    headings
        How its first line may look, for messages.

    Raises
    ------
    DescriptionError
        If it is not UTF-8, has no such headings, is not parted by a known sign, or quotes a
        cell without end.
    """
    text = decoded_csv(data, file=file)
    first = next((n for n, line in enumerate(text.splitlines()) if line.strip()), None)
    if first is None:
        problem = "is empty."
        raise DescriptionError([Fault(file, 0, "", problem, f"Begin it with the line {headings}.")])
    heading = text.splitlines()[first]
    delimiter = _delimiter(heading, file=file, line=first + 1, meaning=meaning, headings=headings)
    rows = list(_rows(text, delimiter, file=file))
    names = [_plain(cell) for cell in rows[0].cells]
    columns = tuple(meaning(name) for name in names)
    faults = [
        Fault(file, rows[0].line, "", f"two columns are both {what!r}.", "Keep one of them.")
        for what in dict.fromkeys(filter(None, columns))
        if columns.count(what) > 1
    ]
    faults += [
        Fault(
            file,
            rows[0].line,
            "",
            f"there is no column {word!r}; found {_listed(rows[0].cells)}.",
            f"Begin with a line such as {headings}.",
        )
        for need, word in needs.items()
        if need not in columns
    ]
    if faults:
        raise DescriptionError(faults)
    body = tuple(row for row in rows[1:] if any(cell.strip() for cell in row.cells))
    return CsvTable(columns, body, delimiter, rows[0].line)


def decoded_csv(data: bytes, *, file: str) -> str:
    """Return the text of a table in UTF-8, with or without a byte-order mark.

    Raises
    ------
    DescriptionError
        If it is in another encoding; the message names the byte that tells.
    """
    if data.startswith(_WIDE["utf-16"]):
        problem = "is text in UTF-16, which its first byte tells."
        raise DescriptionError([Fault(file, 0, "", problem, _SAVE_UTF8)])
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        # Positions count without the mark that is no text.
        start = error.start + (3 if data.startswith(b"\xef\xbb\xbf") else 0)
        line = data.count(b"\n", 0, start) + 1
        byte = data[start]
        problem = f"is not UTF-8 text: byte {start + 1} of the file, 0x{byte:02X}, cannot be read."
        raise DescriptionError([Fault(file, line, "", problem, _SAVE_UTF8)]) from error


def faults_of_shape(table: CsvTable, *, file: str) -> list[Fault]:
    """Return what is wrong with rows that have more or fewer cells than there are headings."""
    faults = []
    width = len(table.columns)
    for row in table.rows:
        if len(row.cells) == width:
            continue
        problem = f"the line has {_counted(len(row.cells))} under {width} headings."
        other = next((d for d in DELIMITERS if d != table.delimiter and d in row.cells[0]), None)
        if len(row.cells) == 1 and other is not None:
            mend = (
                f"The headings are parted by {DELIMITERS[table.delimiter]}, this line by "
                f"{DELIMITERS[other]}; use one for all."
            )
        elif len(row.cells) < width:
            mend = "Add the empty cells that are missing, or the heading's columns are too many."
        elif table.delimiter == ",":
            mend = (
                "Put a cell that has a comma in it, such as a decimal comma, in quotes, or save "
                "the table with semicolons."
            )
        else:
            mend = f"Put a cell that has {table.delimiter!r} in it in quotes."
        faults.append(Fault(file, row.line, "", problem, mend))
    return faults


def unprintable(text: str) -> str:
    """Return the first character that no card can print or that hides, by name; empty if none.

    The joiners that some scripts need between letters are let through.
    """
    for character in text:
        if character in "\u200c\u200d":
            continue
        if unicodedata.category(character)[0] == "C" or character in "\u2028\u2029":
            return code_point(character)
    return ""


def code_point(character: str) -> str:
    """Return a character by code and name, as in U+0007 or U+4E2D CJK UNIFIED IDEOGRAPH-4E2D."""
    return f"U+{ord(character):04X} {unicodedata.name(character, '')}".rstrip()


def _delimiter(heading: str, *, file: str, line: int, meaning: Meaning, headings: str) -> str:
    """Return what parts the cells: the sign by which the most headings are known."""
    known = {
        sign: sum(bool(meaning(_plain(cell))) for cell in _cells(heading, sign))
        for sign in DELIMITERS
    }
    most = max(known.values())
    if most:
        # A single heading is parted by nothing, so that names may have commas.
        alone = [sign for sign in DELIMITERS if sign not in heading]
        return "\t" if len(alone) == len(DELIMITERS) else max(known, key=lambda s: known[s])
    counts = {sign: heading.count(sign) for sign in (*DELIMITERS, *_OTHERS) if sign in heading}
    shown = heading.strip()[:_SHOWN]
    problem = f"the first line, {shown!r}, has no heading that is known here."
    mend = f"Begin with a line such as {headings}."
    if counts:
        sign = max(counts, key=lambda s: counts[s])
        word = (DELIMITERS | _OTHERS)[sign]
        problem = f"the first line, {shown!r}, has no heading that is known; it has {word} in it."
        if sign in _OTHERS:
            mend = f"Part the cells by semicolons or commas, as in {headings}."
    raise DescriptionError([Fault(file, line, "", problem, mend)])


def _cells(line: str, delimiter: str) -> list[str]:
    return next(csv.reader([line], delimiter=delimiter), [])


def _rows(text: str, delimiter: str, *, file: str) -> list[Row]:
    """Return all rows that have a sign in them, with the lines where they begin."""
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True)
    rows: list[Row] = []
    begins = 1
    try:
        for cells in reader:
            if any(cells):
                rows.append(Row(begins, tuple(cells)))
            begins = reader.line_num + 1
    except csv.Error as error:
        problem = "a cell in quotes is not closed, or goes on behind its quotes."
        if "field larger" in str(error):
            problem = "a cell is far too long, as where a quote is not closed."
        mend = 'Close each quote, and write a quote inside a cell twice, as in "Ann ""Sparks""".'
        raise DescriptionError([Fault(file, begins, "", problem, mend)]) from error
    return rows


def _plain(heading: str) -> str:
    return " ".join(unicodedata.normalize("NFC", heading).split()).casefold()


def _listed(cells: Sequence[str]) -> str:
    return ", ".join(repr(cell.strip()[:_SHOWN]) for cell in cells[:6])


def _counted(number: int) -> str:
    return "1 cell" if number == 1 else f"{number} cells"
