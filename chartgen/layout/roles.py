"""What a part of a page is, so that a screen reader can read a card to a person.

A path of tags leads from the page to a part: table, row, cell. Items that follow one another
under the same path are one part, so the order of a page's items is the order it is read in.
An item without a path is decoration, and is passed over.
"""

from dataclasses import dataclass, replace
from enum import Enum
from typing import TYPE_CHECKING, Literal, TypeAlias

if TYPE_CHECKING:
    from collections.abc import Iterable

    from chartgen.layout.placed import Item


class Role(Enum):
    """A kind of part; the value is its standard structure type (ISO 32000-1, 14.8.4)."""

    TITLE = "H1"
    SECTION = "H2"
    PARAGRAPH = "P"
    LIST = "L"
    ENTRY = "LI"
    LABEL = "Lbl"
    BODY = "LBody"
    TABLE = "Table"
    ROW = "TR"
    HEADER = "TH"
    CELL = "TD"
    FIGURE = "Figure"


@dataclass(frozen=True, slots=True, kw_only=True)
class Tag:
    """A part; `key` tells it apart from a neighbour of the same role.

    `scope` says which cells a header is for, `columns` and `rows` how many a cell spans.
    `alternative` says in words what a figure shows.
    """

    role: Role
    key: str = ""
    scope: Literal["", "Row", "Column"] = ""
    columns: int = 1
    rows: int = 1
    alternative: str = ""


Tags: TypeAlias = tuple[Tag, ...]

_LABEL = Tag(role=Role.LABEL)
_BODY = Tag(role=Role.BODY)


def title_of(text: str) -> Tags:
    """Return the path of a card's title."""
    return (Tag(role=Role.TITLE, key=text),)


def section(text: str) -> Tags:
    """Return the path of a heading inside a card."""
    return (Tag(role=Role.SECTION, key=text),)


def paragraph_of(text: str) -> Tags:
    """Return the path of a paragraph."""
    return (Tag(role=Role.PARAGRAPH, key=text),)


def figure_of(key: str, alternative: str) -> Tags:
    """Return the path of a figure with the words that stand for it."""
    return (Tag(role=Role.FIGURE, key=key, alternative=alternative),)


def entry_label(text: str) -> Tags:
    """Return the path of the sign or name that leads an entry of a list."""
    return (*_entry(text), _LABEL)


def entry_body(text: str) -> Tags:
    """Return the path of what an entry of a list says."""
    return (*_entry(text), _BODY)


def _entry(text: str) -> Tags:
    return (Tag(role=Role.LIST), Tag(role=Role.ENTRY, key=text))


def table_cell(table: str, row: str, cell: Tag) -> Tags:
    """Return the path of a cell: rows and cells are told apart by their keys."""
    return (Tag(role=Role.TABLE, key=table), Tag(role=Role.ROW, key=row), cell)


def column_header(key: str, *, columns: int = 1, rows: int = 1) -> Tag:
    """Return a cell that heads the column below it."""
    return Tag(role=Role.HEADER, key=key, scope="Column", columns=columns, rows=rows)


def row_header(key: str) -> Tag:
    """Return a cell that heads the row to its right."""
    return Tag(role=Role.HEADER, key=key, scope="Row")


def cell(key: str, *, columns: int = 1) -> Tag:
    """Return a cell of a table's body."""
    return Tag(role=Role.CELL, key=key, columns=columns)


def under(tags: Tags, items: "Iterable[Item]") -> "list[Item]":
    """Return items as parts of what the path leads to."""
    return [replace(item, tags=(*tags, *item.tags)) for item in items]


def as_decoration(items: "Iterable[Item]") -> "list[Item]":
    """Return items that a screen reader passes over: what is read elsewhere already."""
    return [replace(item, tags=()) if item.tags else item for item in items]
