"""The tables of a file as a JSON Schema, so that an editor can help to fill it in.

It tells kinds and names; that a length is more than 0, or that a range rises, only the
program tells.
"""

from typing import Any

from chartgen.description.choices import ChosenFrom, OneOf
from chartgen.description.fields import (
    Allowances,
    Count,
    InUnit,
    Number,
    Ratio,
    ReadingPair,
    Strip,
    Words,
    YesNo,
)
from chartgen.description.lists import Diameters, Distinct, Speeds, Strips
from chartgen.description.reading_tables import AnyAmount
from chartgen.description.schema import ShopFile
from chartgen.description.tables import ListOf, Table, TableOf

_PAIR = {"type": "array", "items": {"type": "string"}, "minItems": 2, "maxItems": 2}
_PLAIN: dict[type, dict[str, Any]] = {
    Allowances: {"type": "object"},
    AnyAmount: {"type": ["string", "number"]},
    Number: {"type": "number"},
    ReadingPair: _PAIR,
    Strip: _PAIR,
    YesNo: {"type": "boolean"},
}


def json_schema(table: type[Table] = ShopFile) -> dict[str, Any]:
    """Return the schema of a table with all tables in it."""
    return {
        "type": "object",
        "description": (table.__doc__ or "").split(": ", 1)[-1],
        "properties": {name: _of(key.read) for name, key in table.keys.items()},
        "required": [
            name for name, key in table.keys.items() if key.required and key.only_beside is None
        ],
        "additionalProperties": False,
    }


def _of(read: object) -> dict[str, Any]:
    match read:
        case TableOf():
            return json_schema(read.kind)
        case ListOf():
            return {"type": "array", "items": _of(read.read_item), "minItems": 1}
        case Distinct():
            return _of(read.listed) | {"uniqueItems": True}
        case Strips():
            return _of(read.listed)
        case Speeds() | Diameters():
            return {"anyOf": [{"type": "string"}, _of(read.listed)]}
        case _:
            return _of_value(read)


def _of_value(read: object) -> dict[str, Any]:
    match read:
        case ChosenFrom():
            return {"enum": list(read.choices)}
        case Ratio() | Count():
            kind = "integer" if isinstance(read, Count) else "number"
            return {"type": kind, "minimum": read.bounds[0], "maximum": read.bounds[1]}
        case OneOf():
            return {"enum": [member.value for member in read.members]}
        case InUnit():
            return {"type": "string", "examples": [read.unit.example]}
        case Words():
            return {"type": "string", "maxLength": read.longest}
        case _:
            return _PLAIN.get(type(read), {"type": "string"})
