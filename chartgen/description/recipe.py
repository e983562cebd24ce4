"""The small file a card carries beside its shop file: which card of that shop it is."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final

from chartgen.description.toml_text import quoted
from chartgen.errors import ChartgenError

RECIPE_NAME: Final = "card.toml"
LAYOUT_NAME: Final = "layout.toml"
"""The owner's own layout, carried where the card was made with one."""
SHOP_NAMES: Final = ("shop.toml",)
CHANGE_NAMES: Final = ("before.toml", "after.toml")
_HEAD = "# Which card of {files} this is. `chartgen make CARD.pdf` makes it again.\n"
_ALTERED = (
    "what it carries was altered, or is damaged; do not trust it. Make the card anew from "
    "your shop file with `chartgen make SHOP`."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Recipe:
    """How a card was asked for.

    `number` counts the cards of a layout from 1; `materials` are those printed beside it, and
    none for the card of a change, which takes them from its two shop files. `check` is the
    check code that the card shows.
    """

    program: str
    layout: str
    number: int
    file: str
    materials: tuple[str, ...]
    check: str
    is_change: bool = False

    @property
    def shop_names(self) -> tuple[str, ...]:
        """Names of the shop files carried beside it."""
        return CHANGE_NAMES if self.is_change else SHOP_NAMES


def recipe_text(recipe: Recipe) -> bytes:
    """Return a recipe as the file that a card carries."""
    lines = [
        f"program = {quoted(recipe.program)}",
        f'kind = "{"change" if recipe.is_change else "card"}"',
        f"layout = {quoted(recipe.layout)}",
        f"number = {recipe.number}",
        f"file = {quoted(recipe.file)}",
        f"materials = [{', '.join(map(quoted, recipe.materials))}]",
        f"check = {quoted(recipe.check)}",
    ]
    head = _HEAD.format(files=" and ".join(recipe.shop_names))
    return (head + "\n".join(lines) + "\n").encode()


def read_recipe(content: bytes, *, file: str) -> Recipe:
    """Return the recipe of a card's file.

    Keys this version does not know are passed over: a newer one is told by its `program`.

    Raises
    ------
    ChartgenError
        If it is not what a card carries.
    """
    try:
        raw = tomllib.loads(content.decode())
        return Recipe(
            program=_text(raw, "program"),
            layout=_text(raw, "layout"),
            number=_whole_number(raw, "number"),
            file=_text(raw, "file"),
            materials=_texts(raw, "materials"),
            check=_text(raw, "check"),
            is_change=_text(raw, "kind") == "change",
        )
    except (ValueError, RecursionError, KeyError) as error:
        raise altered(file) from error


def altered(file: str) -> ChartgenError:
    """Return the refusal of a card that is not as it was made."""
    return ChartgenError(f"{file}: {_ALTERED}")


def _text(raw: Mapping[str, Any], key: str) -> str:
    value = raw[key]
    if not isinstance(value, str):
        raise ValueError(key)  # noqa: TRY004 - one refusal for whatever is wrong
    return value


def _texts(raw: Mapping[str, Any], key: str) -> tuple[str, ...]:
    values = raw[key]
    if not isinstance(values, list) or not all(isinstance(value, str) for value in values):
        raise ValueError(key)
    return tuple(values)


def _whole_number(raw: Mapping[str, Any], key: str) -> int:
    value = raw[key]
    if not isinstance(value, int) or isinstance(value, bool) or value < 1:
        raise ValueError(key)
    return value
