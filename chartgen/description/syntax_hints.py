"""For a line that is no TOML: how the key on it, or its heading, is written rightly.

Loaded for the first such line; a sound file needs none of this.
"""

import json
import re
from collections.abc import Iterator
from typing import Any

from chartgen.description.choices import OneOf
from chartgen.description.fields import (
    Count,
    DateText,
    InUnit,
    Number,
    YesNo,
)
from chartgen.description.forms import SHOP_FORM, Form
from chartgen.description.problems import KeyPath
from chartgen.description.tables import Key, ListOf, Table, table_read_by

_KEY = re.compile(r"\s*(?P<name>[\w-]+)\s*=(?P<value>.*)")
_HEADING = re.compile(r"\s*\[+\s*(?P<name>[\w.-]+)\s*\]")


def heading_hint(text: str, line: int, form: Form) -> tuple[str, str] | None:
    """Return problem and mend for a heading that cannot stand on `line`; None for other lines."""
    heading = _HEADING.match(text.split("\n")[line - 1])
    if heading is None:
        return None
    names = heading["name"].split(".")
    is_list = any(
        [part for part in path if isinstance(part, str)] == names and isinstance(key.read, ListOf)
        for path, key in _keys(form.root, ())
    )
    if is_list:
        mend = f"Use double brackets, [[{heading['name']}]], for each {names[-1]}."
    else:
        mend = "Put its keys together under one heading."
    return "a table is written twice.", mend


def value_mend(text: str, line: int, mend: str, form: Form) -> str:
    """Return the mend of a value that is no TOML, fit for its key, or else `mend` as it is."""
    lines = text.split("\n")
    on_line = _KEY.match(lines[line - 1])
    if on_line is None:
        return mend
    name, value = on_line["name"], on_line["value"]
    headings = [found["name"] for found in map(_HEADING.match, lines[: line - 1]) if found]
    heading = headings[-1].split(".") if headings else []
    if heading == ["allowances"]:
        return f"Write a ratio with a point, as in {name} = 1.2; anything else in quotes."
    alike = [(path, key) for path, key in _keys(form.root, ()) if path[-1] == name]
    if not alike:
        return mend
    in_table = [one for one in alike if [p for p in one[0][:-1] if isinstance(p, str)] == heading]
    path, key = (in_table or alike)[0]
    return _mend_for(path, key.read, value) or mend.replace(
        SHOP_FORM.line, _example(path, key.read, form)
    )


def _mend_for(path: KeyPath, read: object, value: str) -> str | None:
    """Return the whole mend for a value that does not stand in quotes; None if it should."""
    name = path[-1]
    match read:
        case DateText():
            return "Write the date as 2026-11-25, or in quotes."
        case Count() if "," in value or "." in value:
            return f"Numbers have a point, and this one is a whole number, as in {name} = 40."
        case Count():
            return f"Write a whole number and nothing else, as in {name} = 40."
        case Number():
            return f"Numbers have a point, as in {name} = 2.8."
        case YesNo():
            return f"Write {name} = true or {name} = false, in small letters."
    return None


def _example(path: KeyPath, read: object, form: Form) -> str:
    value = form.example_value(path)
    match read, value:
        case InUnit(), _:
            value = read.unit.example
        case OneOf(), None:
            value = next(member.value for member in read.members)
        case _, None:
            return SHOP_FORM.line
        case _, [first, *_]:
            value = [first]
    return f"{path[-1]} = {json.dumps(value)}"


def _keys(table: type[Table], path: KeyPath) -> Iterator[tuple[KeyPath, Key[Any]]]:
    for name, key in table.keys.items():
        yield (*path, name), key
        inner = table_read_by(key.read)
        if inner is not None:
            items: KeyPath = (0,) if isinstance(key.read, ListOf) else ()
            yield from _keys(inner, (*path, name, *items))
