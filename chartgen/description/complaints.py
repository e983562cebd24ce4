"""From problems to faults that a person at a lathe can act on: each with its line and mend.

Loaded for the first file that has a fault; a sound file needs none of this.
"""

import json
from collections.abc import Iterator, Sequence
from difflib import get_close_matches

from chartgen.description.forms import SHOP_FORM, Form
from chartgen.description.locate import line_of
from chartgen.description.problems import (
    MISSING,
    UNKNOWN_KEY,
    KeyPath,
    Nearest,
    Problem,
    Quoted,
)
from chartgen.description.tables import ListOf, Table, table_read_by
from chartgen.errors import Fault


def faults_of(
    problems: Sequence[Problem], *, file: str, text: str, form: Form = SHOP_FORM
) -> list[Fault]:
    """Return the problems with their lines and mends, in the order of the file."""
    # A key spelled wrong is one slip, though the walk sees a strange and a missing key.
    misspelled = {
        (*one.path[:-1], near)
        for one in problems
        if one.problem == UNKNOWN_KEY
        for near in _near_keys(one.path, form)
    }
    # Twelve diameters without a unit are one slip, told once.
    unlike: dict[tuple[KeyPath, str, str], Fault] = {}
    for one in problems:
        path, problem = one.path, one.problem
        if problem == MISSING and path in misspelled:
            continue
        family = path[:-1] if path and isinstance(path[-1], int) else path
        mend = mend_of(one, form)
        fault = Fault(file, line_of(text, path), dotted(path), problem, mend)
        unlike.setdefault((family, problem, mend), fault)
    return sorted(unlike.values(), key=lambda fault: (fault.line, fault.key, fault.problem))


def dotted(path: KeyPath) -> str:
    """Return a key as a person points at it: list items count from 1, as in blade[2].height."""
    words = ""
    for part in path:
        if isinstance(part, int):
            words += f"[{part + 1}]"
        else:
            name = part if part.replace("-", "_").replace("_", "a").isalnum() else repr(part)
            words += f".{name}" if words else name
    return words


def mend_of(one: Problem, form: Form = SHOP_FORM) -> str:
    """Return the mend of a problem in words, searched for where that is needed."""
    if isinstance(one.mend, str):
        return one.mend
    if isinstance(one.mend, Nearest):
        word, choices = one.mend
        near = get_close_matches(word, choices, n=1)
        return f"Did you mean '{near[0]}'?" if near else f"Use one of: {', '.join(choices)}."
    if isinstance(one.mend, Quoted):
        return f"Put it in quotes, as in {json.dumps(str(one.mend.value)[:30])}."
    if one.problem == MISSING:
        return _how_to_add(one.path, form)
    if one.problem == UNKNOWN_KEY:
        return _nearest_key(one.path, form)
    return _right_shape(one.path, form)


def _how_to_add(path: KeyPath, form: Form) -> str:
    table = _table_at(path, form)
    if table is not None:
        needs = [
            name for name, key in table.keys.items() if key.required and key.only_beside is None
        ]
        return f"Add a table under the line {_header(path, form)}, with {_listed(needs)}."
    if path[-1] == "power_is":
        return (
            'Add power_is = "shaft" or power_is = "input": a motor\'s plate states shaft power, '
            "a machine's brochure often input."
        )
    return f"Add a line such as {_example_line(path, form)}."


def _nearest_key(path: KeyPath, form: Form) -> str:
    name, table = str(path[-1]), _table_at(path[:-1], form) or form.root
    if near := _near_keys(path, form):
        return f"Did you mean '{near[0]}'?"
    owners = [header for header, other in _tables(form.root, (), form) if name in other.keys]
    if len(owners) == 1:
        return f"It belongs under {owners[0]}."
    return f"Known here: {', '.join(table.keys)}."


def _near_keys(path: KeyPath, form: Form) -> list[str]:
    """Return the key of the table that is most like the last of `path`, if any is."""
    table = _table_at(path[:-1], form) or form.root
    return get_close_matches(str(path[-1]), list(table.keys), n=1)


def _right_shape(path: KeyPath, form: Form) -> str:
    if _table_at(path, form) is not None:
        return f"Write its heading as {_header(path, form)}, and its keys on the lines below."
    return f"Write it in square brackets, as in {_example_line(path, form)}."


def _example_line(path: KeyPath, form: Form) -> str:
    value = form.example_value(path)
    if isinstance(value, list):
        value = value[:1]
    return f"{path[-1]} = {json.dumps(value)}" if value is not None else f'{path[-1]} = ["..."]'


def _header(path: KeyPath, form: Form) -> str:
    *parents, name = names = [part for part in path if isinstance(part, str)]
    owner = _table_at(tuple(parents), form)
    words = ".".join(names)
    is_list = owner is not None and isinstance(owner.keys[name].read, ListOf)
    return f"[[{words}]]" if is_list else f"[{words}]"


def _listed(words: list[str]) -> str:
    return " and ".join(filter(None, (", ".join(words[:-1]), words[-1])))


def _table_at(path: KeyPath, form: Form) -> type[Table] | None:
    """Return the table that `path` names, itself or as the items of a list; None if a value."""
    table: type[Table] | None = form.root
    for part in path:
        if isinstance(part, str):
            key = table.keys.get(part) if table else None
            table = table_read_by(key.read) if key else None
    return table


def _tables(table: type[Table], path: KeyPath, form: Form) -> Iterator[tuple[str, type[Table]]]:
    for name, key in table.keys.items():
        inner = table_read_by(key.read)
        if inner is not None:
            yield _header((*path, name), form), inner
            yield from _tables(inner, (*path, name), form)
