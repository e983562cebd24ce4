"""Reads the files in layouts/: page, pouch, and for each side its distance and blocks."""

import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from functools import cache
from pathlib import Path
from typing import Any, TypeVar

from chartgen.layout.pages import POUCHES, PRINTER_MARGIN, fits_pouch, page_size
from chartgen.quantities import MM, Millimetres
from chartgen.units import magnitude

Value = TypeVar("Value")
Number = TypeVar("Number", int, float)

CARDS = (
    "lathe-chart",
    "overview",
    "blade-card",
    "centre-card",
    "spindle-curves",
    "window-curves",
    "width-curves",
    "speed-curves",
    "speed-nomogram",
    "power-nomogram",
    "change-card",
)
# Cards about two shops: no shop file can ask for one.
_OF_TWO_SHOPS = "change-card"
BLOCKS = (
    "heading",
    "table",
    "plain-table",
    "figure",
    "nomogram",
    "notes",
    "facts",
    "card-states",
    "moved-cells",
    "change-figures",
    "legend",
    "cautions",
    "legend-sentences",
    "assumptions",
    "check-rule",
    "deference",
    "foot",
    "identity",
)
CELL_PARTS = ("speed", "feed", "pace", "sign")


@dataclass(frozen=True, slots=True, kw_only=True)
class Side:
    """One side of a card: blocks flow down its columns, the foot stands at the bottom."""

    reading_distance: Millimetres[float]
    margin: Millimetres[float]
    columns: int
    blocks: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """How one kind of card stands on paper.

    `cell` says which numbers a table cell shows; `rule_every` sets a thin rule after so many
    rows; `row_pitch` is the line pitch over the font size.
    """

    name: str
    title: str
    card: str
    page: tuple[Millimetres[float], Millimetres[float]]
    pouch: str
    cell: tuple[str, ...]
    row_pitch: float
    rule_every: int
    sides: tuple[Side, ...]


@cache
def layout_names() -> tuple[str, ...]:
    """Return the names of the layouts that came with the program and a shop file may name."""
    return tuple(name for name in every_layout_name() if not name.startswith(_OF_TWO_SHOPS))


@cache
def change_layout_names() -> tuple[str, ...]:
    """Return the names of the layouts of a change card, which `compare` makes."""
    return tuple(name for name in every_layout_name() if name.startswith(_OF_TWO_SHOPS))


@cache
def every_layout_name() -> tuple[str, ...]:
    """Return the names of all layouts that came with the program."""
    folder = _folder()
    return tuple(
        sorted(
            entry.name[: -len(".toml")]
            for entry in folder.iterdir()
            if entry.name.endswith(".toml")
        )
    )


@cache
def load_layout(name: str) -> Layout:
    """Return a layout that came with the program.

    Raises
    ------
    ValueError
        If its file is wrong; the message names file and key.
    """
    text = _folder().joinpath(f"{name}.toml").read_text("utf-8")
    return parse_layout(text, file=f"{name}.toml", name=name)


def parse_layout(text: str, *, file: str, name: str) -> Layout:
    """Return the layout that a file's text describes.

    Raises
    ------
    ValueError
        If a key is missing, unknown or wrong; the message names file and key.
    """
    try:
        raw = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise ValueError(f"{file}: is not TOML: {error}") from None
    keys = {"title", "card", "page", "pouch", "cell", "row_pitch", "rule_every", "side"}
    _check(file, "", raw, keys)
    _one_of(file, "card", raw["card"], CARDS)
    _one_of(file, "pouch", raw["pouch"], tuple(POUCHES))
    for part in raw["cell"]:
        _one_of(file, "cell", part, CELL_PARTS)
    page = _read(file, "page", lambda: page_size(raw["page"]))
    if not fits_pouch(page, raw["pouch"]):
        raise ValueError(f"{file}: pouch: page {raw['page']} leaves no sealed edge in it")
    return Layout(
        name=name,
        title=raw["title"],
        card=raw["card"],
        page=page,
        pouch=raw["pouch"],
        cell=tuple(raw["cell"]),
        row_pitch=_read(file, "row_pitch", lambda: _at_least(float(raw["row_pitch"]), 1.0)),
        rule_every=_read(file, "rule_every", lambda: _at_least(int(raw["rule_every"]), 1)),
        sides=tuple(_side(file, number, side) for number, side in enumerate(raw["side"], 1)),
    )


def _side(file: str, number: int, raw: Mapping[str, Any]) -> Side:
    where = f"side[{number}]"
    _check(file, f"{where}.", raw, {"reading_distance", "margin", "columns", "blocks"})
    for block in raw["blocks"]:
        _one_of(file, f"{where}.blocks", block, BLOCKS)
    margin = _read(file, f"{where}.margin", lambda: magnitude(str(raw["margin"]), MM))
    if margin < PRINTER_MARGIN:
        raise ValueError(
            f"{file}: {where}.margin: {margin:g} mm is nearer to the edge than printers print; "
            f"use {PRINTER_MARGIN:g} mm or more"
        )
    return Side(
        reading_distance=_read(
            file,
            f"{where}.reading_distance",
            lambda: magnitude(str(raw["reading_distance"]), MM, above=0.0),
        ),
        margin=margin,
        columns=_read(file, f"{where}.columns", lambda: _at_least(int(raw["columns"]), 1)),
        blocks=tuple(raw["blocks"]),
    )


def _read(file: str, key: str, read: Callable[[], Value]) -> Value:
    """Return what `read` gives; what it refuses is told with file and key."""
    try:
        return read()
    except (ValueError, TypeError, AttributeError) as error:
        raise ValueError(f"{file}: {key}: {error}") from None


def _at_least(value: Number, least: Number) -> Number:
    if value < least:
        raise ValueError(f"{value} is too small; use {least} or more")
    return value


def _check(file: str, where: str, raw: Mapping[str, Any], wanted: set[str]) -> None:
    for key in sorted(raw.keys() - wanted):
        near = get_close_matches(key, wanted, n=1)
        hint = f" Did you mean {near[0]!r}?" if near else ""
        raise ValueError(f"{file}: {where}{key}: is not a known key.{hint}")
    for key in sorted(wanted - raw.keys()):
        raise ValueError(f"{file}: {where}{key}: is missing.")


def _one_of(file: str, key: str, value: str, allowed: tuple[str, ...]) -> None:
    if value not in allowed:
        raise ValueError(f"{file}: {key}: {value!r} is not one of {', '.join(allowed)}")


def _folder() -> Path:
    """Return the layouts: inside the installed package, or beside it in a checkout."""
    installed = Path(__file__).parents[1] / "layout_files"
    return installed if installed.is_dir() else Path(__file__).parents[2] / "layouts"
