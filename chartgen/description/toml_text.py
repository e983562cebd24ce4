"""Bytes to TOML, with the reader's complaints in plain words."""

import json
import re
import tomllib
from typing import TYPE_CHECKING, Any

from chartgen.errors import DescriptionError, Fault

if TYPE_CHECKING:
    from chartgen.description.forms import Form

# What `tomllib` says begins with one of these; what a person should hear, and do.
_PLAIN_WORDS = (
    ("Cannot overwrite a value", "a key is written twice.", "Keep one of the two lines."),
    ("Cannot declare", "a table is written twice.", "Put its keys together under one heading."),
    ("Cannot mutate", "a key is added to a finished list or table.", "Write it in one place."),
    ("Unclosed array", "a list has no closing bracket.", "End it with ]."),
    ("Unclosed inline table", "a table in braces has no closing brace.", "End it with }."),
    ("Unterminated string", "a text has no closing quote.", 'End it with ", on the same line.'),
    ("Illegal character '\\n'", "a text has no closing quote.", "End it with a quote."),
    ("Illegal character", "a sign that cannot be printed stands here.", "Delete it."),
    ("Unescaped '\\' in a string", "a text holds a backslash.", "Write it twice, or leave it out."),
    ("Invalid date or datetime", "there is no such date.", "Write it as in 2026-11-25."),
    ("Invalid value", "the value cannot be read.", 'Put text in quotes, as in power = "550 W".'),
    (
        "Expected newline or end of document",
        "there is more on the line than one key and its value.",
        'Put text in quotes, as in power = "550 W", and each key on its own line.',
    ),
    (
        "Expected '=' after a key",
        "this is not a key with its value.",
        'Write key = "text", or begin the line with # if it is a note.',
    ),
    ("Expected ']' at the end", "a table's heading is not closed.", "End it with ]."),
    ("Expected ']]' at the end", "a table's heading is not closed.", "End it with ]]."),
    ("Invalid initial character", "no key can begin like this.", 'Write it as in power = "550 W".'),
)
_ABOUT_VALUES = ("Invalid date", "Invalid value", "Expected newline or end of document")
_ABOUT_NAMES = ("Cannot overwrite a value", "Cannot declare")
_WHERE = r" \(at (?:line (?P<line>\d+), column (?P<column>\d+)|end of document)\)$"
_UNKNOWN = ("this cannot be understood.", 'Write key = "text", one on a line.')


def opened(
    data: bytes, *, file: str, needs: str, form: "Form | None" = None
) -> tuple[str, dict[str, Any]]:
    """Return the text of a file and what it holds; `needs` is told of one that holds nothing.

    Raises
    ------
    DescriptionError
        If it is no TOML in UTF-8, or empty.
    """
    source = decoded(data, file=file)
    raw = parsed(source, file=file, form=form)
    if not raw:
        raise DescriptionError([Fault(file, 0, "", "is empty.", needs)])
    return source, raw


def decoded(data: bytes, *, file: str) -> str:
    """Return the text of a file in UTF-8, with or without a byte-order mark.

    Raises
    ------
    DescriptionError
        If it is in another encoding.
    """
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        problem = f"is not UTF-8 text: byte {error.start + 1} of the file cannot be read."
        mend = "Save the file again with the encoding UTF-8."
        raise DescriptionError([Fault(file, line, "", problem, mend)]) from error


def quoted(text: str) -> str:
    """Return a text as TOML writes it."""
    # What JSON escapes TOML escapes alike; it leaves out one control sign.
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")


def parsed(text: str, *, file: str, form: "Form | None" = None) -> dict[str, Any]:
    """Return the tables of a TOML text; of a shop file, or of another `form`.

    Raises
    ------
    DescriptionError
        If it is not TOML.
    """
    try:
        return tomllib.loads(text)
    except RecursionError as error:
        fault = Fault(file, 0, "", "has brackets within brackets without end.", "Close them.")
        raise DescriptionError([fault]) from error
    except ValueError as error:  # also an integer of thousands of digits
        raise DescriptionError([_syntax_fault(str(error), text, file, form)]) from error


def _syntax_fault(message: str, text: str, file: str, form: "Form | None") -> Fault:
    where = re.search(_WHERE, message)
    problem, mend = next(
        (words for start, *words in _PLAIN_WORDS if message.startswith(start)), _UNKNOWN
    )
    if where is None:
        return Fault(file, 0, "", problem, mend)
    if where["line"] is None:
        return Fault(file, text.count("\n") + 1, "", f"at the end of the file, {problem}", mend)
    from chartgen.description import syntax_hints  # noqa: PLC0415 - words for a fault
    from chartgen.description.forms import SHOP_FORM  # noqa: PLC0415 - words for a fault

    form = form or SHOP_FORM

    line = int(where["line"])
    if message.startswith(_ABOUT_VALUES):
        mend = syntax_hints.value_mend(text, line, mend, form)
    elif message.startswith(_ABOUT_NAMES):
        problem, mend = syntax_hints.heading_hint(text, line, form) or (problem, mend)
    # The words of a mend that stand for whichever key it is about fit the file.
    mend = mend.replace(SHOP_FORM.line, form.line)
    return Fault(file, line, "", f"at column {where['column']}, {problem}", mend)
