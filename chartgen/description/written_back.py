"""Measured values and readings into the text of a shop file, everything else untouched.

The owner's comments and layout are his. A key that stands there gets another value on its own
line, a new one comes at the end of its table, kept readings and records at the end of the file.
"""

import datetime as dt
import tomllib
from collections.abc import Collection, Sequence
from dataclasses import fields
from decimal import Decimal
from typing import Any, get_args, get_type_hints

import tomlkit
import tomlkit.items

from chartgen.description.reading_tables import ReadingKind
from chartgen.errors import ChartgenError
from chartgen.model.measured import Assumption, Measured
from chartgen.model.readings import (
    DeflectionReading,
    DroopReading,
    KeyTorqueReading,
    KnownCut,
    ShopReading,
    StallReading,
    WattsReading,
)
from chartgen.quantities import FRACTION, Unit

_MARK = b"\xef\xbb\xbf"
_KINDS = {
    WattsReading: ReadingKind.WATTS,
    DroopReading: ReadingKind.DROOP,
    StallReading: ReadingKind.STALL,
    DeflectionReading: ReadingKind.DEFLECTION,
    KeyTorqueReading: ReadingKind.KEY_TORQUE,
}


def written_back(
    data: bytes,
    *,
    measured: Sequence[Measured],
    withdrawn: Collection[Assumption],
    readings: Sequence[ShopReading],
) -> bytes:
    """Return a shop file's bytes with measured values set, others taken back, readings added.

    Parameters
    ----------
    data
        The file, already found sound.
    measured
        What to write, each under its key and as a record.
    withdrawn
        Values of earlier readings that no longer stand; key and record go.
    readings
        What to add to the readings that are kept.

    Raises
    ------
    ChartgenError
        If the file is laid out so that this cannot be done without touching anything else.
    """
    text = data.removeprefix(_MARK).decode()
    windows = "\r\n" in text
    plain = text.replace("\r\n", "\n") if windows else text
    if plain and not plain.endswith("\n"):
        plain += "\n"
    document = tomlkit.parse(plain)
    for name in ("measured", "reading"):
        if name in document and not isinstance(document[name], tomlkit.items.AoT):
            raise ChartgenError(
                f"{name} is written in brackets on a line; write each under its own [[{name}]], "
                "then run again."
            )
    records = _records(document, {one.assumption for one in measured} | set(withdrawn))
    for one in measured:
        _set(document, one.assumption.path, _written(one.value, one.assumption))
    for assumption in withdrawn:
        _remove(document, assumption.path)
    _append(document, "reading", [_reading(one) for one in readings])
    _put_records(document, records, [_record(one) for one in measured])
    result = tomlkit.dumps(document)
    _refuse_damage(plain, result, {*(m.assumption for m in measured), *withdrawn})
    if windows:
        result = result.replace("\n", "\r\n")
    return (_MARK if data.startswith(_MARK) else b"") + result.encode()


def _records(document: tomlkit.TOMLDocument, changed: Collection[Assumption]) -> list[int]:
    """Return the places of the records that give way."""
    keys = {one.key for one in changed}
    kept = document.get("measured", [])
    return [place for place, record in enumerate(kept) if record["key"] in keys]


def _put_records(
    document: tomlkit.TOMLDocument, gone: Sequence[int], new: Sequence[dict[str, Any]]
) -> None:
    """Put each record in the place of the one of its key, others at the end."""
    by_key = {record["key"]: record for record in new}
    for place in reversed(gone):
        record = document["measured"][place]
        replacement = by_key.pop(record["key"], None)
        if replacement is None:
            del document["measured"][place]
            continue
        for key, value in replacement.items():
            if record[key] != value:
                record[key] = value
    if "measured" in document and not document["measured"]:
        del document["measured"]
    _append(document, "measured", [one for one in new if one["key"] in by_key])


def _append(document: tomlkit.TOMLDocument, name: str, records: Sequence[dict[str, Any]]) -> None:
    if not records:
        return
    if name not in document:
        document.add(tomlkit.nl())
        document.append(name, tomlkit.aot())
    for record in records:
        table = tomlkit.table()
        for key, value in record.items():
            table.append(key, value)
        document[name].append(table)


def _set(document: tomlkit.TOMLDocument, path: Sequence[str], value: str | float) -> None:
    table: Any = document
    for name in path[:-1]:
        if name not in table:
            table.append(name, tomlkit.table())
        table = table[name]
    if path[-1] not in table or table[path[-1]] != value:
        table[path[-1]] = value


def _remove(document: tomlkit.TOMLDocument, path: Sequence[str]) -> None:
    table: Any = document
    for name in path[:-1]:
        table = table[name]
    if path[-1] in table:
        del table[path[-1]]


def _refuse_damage(before: str, after: str, changed: Collection[Assumption]) -> None:
    """Hold the new text against the old by another parser: nothing else may have moved."""

    def others(text: str) -> dict[str, Any]:
        raw = tomllib.loads(text)
        raw.pop("measured", None)
        raw.pop("reading", None)
        for one in changed:
            table = raw
            for name in one.path[:-1]:
                table = table.get(name, {})
            table.pop(one.path[-1], None)
        return {name: value for name, value in raw.items() if value != {}}

    if others(before) != others(after):
        raise ChartgenError(
            "the file is laid out so that a value cannot be put in without touching others; "
            "put the values in by hand, as `chartgen learn --dry-run` shows them."
        )


def _record(one: Measured) -> dict[str, Any]:
    return {
        "key": one.assumption.key,
        "value": _written(one.value, one.assumption),
        "plus_minus": _written(one.plus_minus, one.assumption),
        "level": f"{100.0 * one.level:g} %",
        "readings": one.readings,
        "date": dt.date.fromisoformat(one.date),
    }


def _written(value: float, assumption: Assumption) -> str | float:
    # An allowance is a plain number, a key of the lathe has its unit.
    if assumption is Assumption.FORCE_RESERVE:
        return value
    return amount_text(value, assumption.unit)


def amount_text(value: float, unit: Unit) -> str:
    """Return a value as a shop file has it: the fewest digits that read back the very same.

    A reading that came back another by its last digit would be kept twice.
    """
    exact = Decimal(repr(value)) * (100 if unit is FRACTION else 1)
    return f"{exact.normalize():f} {unit.name}"


def _reading(one: ShopReading) -> dict[str, Any]:
    record: dict[str, Any] = {
        "kind": _KINDS[type(one)].value,
        "date": dt.date.fromisoformat(one.date),
    }
    for part in (getattr(one, "cut", None), one):
        for field in fields(part) if part is not None else ():
            value = getattr(part, field.name)
            if field.name == "date" or isinstance(value, KnownCut) or value in (None, ""):
                continue
            if isinstance(value, str):
                record[field.name] = value
            else:
                (unit,) = _unit_of(part, field.name)
                record[field.name] = amount_text(value, unit)
    return record


def _unit_of(part: object, name: str) -> list[Unit]:
    """Return the unit that the annotation of a record's field names."""
    hint = get_type_hints(type(part), include_extras=True)[name]
    spread = [hint, *get_args(hint)]
    return [m for one in spread for m in getattr(one, "__metadata__", ()) if isinstance(m, Unit)][
        :1
    ]
