"""A file of readings, TOML or CSV: bytes in, records out, or every fault of the file at once."""

import csv
import io
from collections.abc import Mapping, Sequence
from typing import Any

from chartgen.description.complaints import dotted, faults_of, mend_of
from chartgen.description.known import Known
from chartgen.description.locate import line_of
from chartgen.description.problems import MISSING, UNKNOWN_KEY, KeyPath, Problem, Problems
from chartgen.description.reading_tables import ReadingTable
from chartgen.description.readings import readings_of
from chartgen.description.tables import ListOf, Place, Table, TableOf, read_at
from chartgen.description.toml_text import decoded, parsed
from chartgen.errors import DescriptionError, Fault
from chartgen.model.readings import ShopReading
from chartgen.model.shop import Shop

_KEY = "reading"
_DELIMITERS = (";", "\t", ",")


def read_readings(data: bytes, *, file: str, known: Known, shop: Shop) -> tuple[ShopReading, ...]:
    """Return the readings of a file; a name ending in .csv is a table, anything else TOML.

    Raises
    ------
    DescriptionError
        With every fault found.
    """
    text = decoded(data, file=file)
    problems = Problems()
    if file.lower().endswith(".csv"):
        rows, lines = _rows(text, file=file)
        found = _readings({_KEY: rows}, known, shop, problems)
        if problems.found:
            raise DescriptionError(_faults_of_table(problems.found, file=file, lines=lines))
        return found
    raw = parsed(text, file=file)
    for name in raw:
        if name != _KEY:
            problems.add((name,), "has no place in a file of readings.", "Keep only [[reading]].")
    if not raw.get(_KEY) and not problems.found:
        raise DescriptionError([_no_readings(file)])
    found = _readings(raw, known, shop, problems) if _KEY in raw else ()
    if problems.found:
        raise DescriptionError(faults_of(problems.found, file=file, text=text))
    return found


def line_of_reading(data: bytes, *, file: str, index: int) -> int:
    """Return the line where a reading of a sound file begins; readings count from 0."""
    text = decoded(data, file=file)
    if file.lower().endswith(".csv"):
        return _rows(text, file=file)[1][index]
    return line_of(text, (_KEY, index))


def _no_readings(file: str) -> Fault:
    mend = "Write one [[reading]] for each; `chartgen learn --example` shows how."
    return Fault(file, 0, "", "holds no readings.", mend)


def _readings(
    raw: Mapping[str, Any], known: Known, shop: Shop, problems: Problems
) -> tuple[ShopReading, ...]:
    whole: dict[KeyPath, Table] = {}
    read_at(Place((_KEY,), known, problems, whole), ListOf(TableOf(ReadingTable)), raw[_KEY])
    return readings_of(
        whole, blades=shop.blades, positions=shop.lathe.drive.positions, problems=problems
    )


def _rows(text: str, *, file: str) -> tuple[list[dict[str, str]], list[int]]:
    """Return the rows of a table, blank cells left out, and the line of each."""
    heading = next((line for line in text.splitlines() if line.strip()), "")
    delimiter = max(_DELIMITERS, key=heading.count)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter)
    names: list[str] = []
    rows, lines, faults = [], [], []
    for cells in reader:
        stripped = [cell.strip() for cell in cells]
        if not any(stripped) or stripped[0].startswith("#"):
            continue
        if not names:
            names = stripped
            if "kind" not in names:
                problem = f"the first line is no heading: {stripped[0][:40]!r} comes first."
                mend = "Begin with the names of the columns, as in kind,date,material,blade."
                raise DescriptionError([Fault(file, reader.line_num, "", problem, mend)])
            continue
        if len(stripped) > len(names):
            problem = f"the line has {len(stripped)} cells under {len(names)} headings."
            mend = f"Check for a {delimiter!r} inside a cell; decimals have a point."
            faults.append(Fault(file, reader.line_num, "", problem, mend))
        rows.append({k: v for k, v in zip(names, stripped, strict=False) if k and v})
        lines.append(reader.line_num)
    if faults:
        raise DescriptionError(faults)
    if not rows:
        raise DescriptionError([_no_readings(file)])
    return rows, lines


def _faults_of_table(
    problems: Sequence[Problem], *, file: str, lines: Sequence[int]
) -> list[Fault]:
    faults: dict[tuple[str, str], Fault] = {}
    for one in problems:
        row = next((part for part in one.path if isinstance(part, int)), 0)
        key = str(one.path[-1]) if isinstance(one.path[-1], str) else ""
        mend = mend_of(one)
        if one.problem == MISSING:
            mend = mend.replace("Add a line such as", "Fill in its column, as in")
        fault = Fault(file, lines[row], key or dotted(one.path), one.problem, mend)
        # A column that is not known is one slip, not one a row.
        place = key if one.problem == UNKNOWN_KEY else f"{row} {key}"
        faults.setdefault((place, one.problem), fault)
    return sorted(faults.values(), key=lambda fault: (fault.line, fault.key))
