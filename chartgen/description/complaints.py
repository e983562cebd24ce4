"""From what the schema refuses to words that a person at a lathe can act on."""

import json
import types
from collections.abc import Iterator, Mapping
from difflib import get_close_matches
from typing import Any, get_args

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from chartgen.description.example import example_value
from chartgen.description.known import Known
from chartgen.description.locate import KeyPath
from chartgen.description.problems import Problems
from chartgen.description.schema import ShopFile, Table

MISSING = frozenset({"missing", "missing_plate_value"})


def check_against_schema(raw: Mapping[str, Any], known: Known, problems: Problems) -> None:
    """Add to `problems` everything that `raw` has wrong, table by table."""
    try:
        ShopFile.model_validate(raw, context=known)
    except ValidationError as refusal:
        details = refusal.errors(include_url=False)
        # A key spelled wrong is one slip, though the schema sees a strange and a missing key.
        misspelled = {
            (*path[:-1], near)
            for path in (one["loc"] for one in details if one["type"] == "extra_forbidden")
            for near in _near_keys(path)
        }
        for detail in details:
            if detail["type"] not in MISSING or detail["loc"] not in misspelled:
                problems.add(detail["loc"], *_in_shop_words(detail))


def _in_shop_words(detail: ErrorDetails) -> tuple[str, str]:
    """Return problem and mend of one refusal."""
    path, kind = detail["loc"], detail["type"]
    if kind == "ours":
        return detail["ctx"]["problem"], detail["ctx"]["mend"]
    if kind in MISSING:
        return "is missing.", _how_to_add(path)
    if kind == "extra_forbidden":
        return "is not a known key.", _nearest_key(path)
    if kind == "too_short":
        return "is empty.", "List at least one."
    return _wrong_shape(path, detail["input"])


def _how_to_add(path: KeyPath) -> str:
    table = _table_at(path)
    if table is not None:
        needs = [key for key, field in table.model_fields.items() if field.is_required()]
        return f"Add a table under the line {_header(path)}, with {_listed(needs)}."
    if path[-1] == "power_is":
        return (
            'Add power_is = "shaft" or power_is = "input": a motor\'s plate states shaft power, '
            "a machine's brochure often input."
        )
    return f"Add a line such as {_example_line(path)}."


def _nearest_key(path: KeyPath) -> str:
    key, table = str(path[-1]), _table_at(path[:-1]) or ShopFile
    if near := _near_keys(path):
        return f"Did you mean '{near[0]}'?"
    owners = [header for header, other in _tables(ShopFile, ()) if key in other.model_fields]
    if len(owners) == 1:
        return f"It belongs under {owners[0]}."
    return f"Known here: {', '.join(table.model_fields)}."


def _near_keys(path: KeyPath) -> list[str]:
    """Return the key of the table that is most like the last of `path`, if any is."""
    table = _table_at(path[:-1]) or ShopFile
    return get_close_matches(str(path[-1]), list(table.model_fields), n=1)


def _wrong_shape(path: KeyPath, value: object) -> tuple[str, str]:
    table = _table_at(path)
    if table is not None:
        is_bracket_slip = isinstance(value, dict) or (
            isinstance(value, list) and all(isinstance(item, dict) for item in value)
        )
        problem = "has the wrong brackets." if is_bracket_slip else "must be a table."
        return problem, f"Write its heading as {_header(path)}, and its keys on the lines below."
    if path == ("allowances",):
        return "must be a table.", "Write its heading as [allowances]."
    return "must be a list.", f"Write it in square brackets, as in {_example_line(path)}."


def _example_line(path: KeyPath) -> str:
    value = example_value(path)
    if isinstance(value, list):
        value = value[:1]
    return f"{path[-1]} = {json.dumps(value)}" if value is not None else f'{path[-1]} = ["..."]'


def _header(path: KeyPath) -> str:
    names = ".".join(part for part in path if isinstance(part, str))
    return f"[[{names}]]" if _is_list_of_tables(path) else f"[{names}]"


def _listed(words: list[str]) -> str:
    return " and ".join(filter(None, (", ".join(words[:-1]), words[-1])))


def _annotation(path: KeyPath) -> object:
    table = _table_at(path[:-1]) if path[:-1] else ShopFile
    field = table.model_fields.get(str(path[-1])) if table else None
    return field.annotation if field else None


def _is_list_of_tables(path: KeyPath) -> bool:
    names = tuple(part for part in path if isinstance(part, str))
    return isinstance(_annotation(names), types.GenericAlias)


def _table_at(path: KeyPath) -> type[Table] | None:
    """Return the table that `path` names, itself or as the items of a list; None if a value."""
    table: type[Table] | None = ShopFile
    for part in path:
        if isinstance(part, int):
            continue
        field = table.model_fields.get(part) if table else None
        table = _table_in(field.annotation) if field else None
    return table


def _table_in(annotation: object) -> type[Table] | None:
    if isinstance(annotation, type) and issubclass(annotation, Table):
        return annotation
    return next(filter(None, map(_table_in, get_args(annotation))), None)


def _tables(table: type[Table], path: KeyPath) -> Iterator[tuple[str, type[Table]]]:
    for key, field in table.model_fields.items():
        inner = _table_in(field.annotation)
        if inner is not None:
            yield _header((*path, key)), inner
            yield from _tables(inner, (*path, key))
