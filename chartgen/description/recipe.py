"""The small file a card carries beside its inputs: which card of them it is."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum
from typing import Any, Final

from chartgen import __version__
from chartgen.description.toml_text import quoted
from chartgen.errors import ChartgenError

RECIPE_NAME: Final = "card.toml"
LAYOUT_NAME: Final = "layout.toml"
"""The owner's own layout, carried where the card was made with one."""
JOB_NAME: Final = "job.toml"


class CardOf(Enum):
    """What a card is made from; the value is how its recipe says it."""

    SHOP = "card"
    CHANGE = "change"
    JOB = "job"


CARRIED: Final[Mapping[CardOf, tuple[str, ...]]] = {
    CardOf.SHOP: ("shop.toml",),
    CardOf.CHANGE: ("before.toml", "after.toml"),
    CardOf.JOB: ("shop.toml", JOB_NAME),
}
"""Names of the files that a card carries beside its recipe, shops first."""
_HEAD = "# Which card of {files} this is. `chartgen make CARD.pdf` makes it again.\n"
_ALTERED = (
    "what it carries was altered, or is damaged; do not trust it. Make the card anew from "
    "your shop file with `chartgen make SHOP`."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Recipe:
    """How a card was asked for.

    `number` counts the cards of a layout from 1; `materials` are those printed beside it, and
    none for the cards of a change and of a job, whose files name them. `check` is the check
    code that the card shows.
    """

    program: str
    layout: str
    number: int
    file: str
    materials: tuple[str, ...]
    check: str
    made_from: CardOf = CardOf.SHOP

    @property
    def carried(self) -> tuple[str, ...]:
        """Names of the files carried beside it, of which the card is made."""
        return CARRIED[self.made_from]


def recipe_text(recipe: Recipe) -> bytes:
    """Return a recipe as the file that a card carries."""
    lines = [
        f"program = {quoted(recipe.program)}",
        f'kind = "{recipe.made_from.value}"',
        f"layout = {quoted(recipe.layout)}",
        f"number = {recipe.number}",
        f"file = {quoted(recipe.file)}",
        f"materials = [{', '.join(map(quoted, recipe.materials))}]",
        f"check = {quoted(recipe.check)}",
    ]
    head = _HEAD.format(files=" and ".join(recipe.carried))
    return (head + "\n".join(lines) + "\n").encode()


def read_recipe(content: bytes, *, file: str) -> Recipe:
    """Return the recipe of a card's file.

    Keys this version does not know are passed over: a newer one is told by its `program`.

    Raises
    ------
    ChartgenError
        If it is not what a card carries, or was written by a newer version.
    """
    try:
        raw = tomllib.loads(content.decode())
        program = _text(raw, "program")
    except (ValueError, RecursionError, KeyError) as error:
        raise altered(file) from error
    # First of all: a newer version may say what this one would take for an altered file.
    _refuse_newer(program, file)
    try:
        return Recipe(
            program=program,
            layout=_text(raw, "layout"),
            number=_whole_number(raw, "number"),
            file=_text(raw, "file"),
            materials=_texts(raw, "materials"),
            check=_text(raw, "check"),
            made_from=CardOf(_text(raw, "kind")),
        )
    except (ValueError, KeyError) as error:
        raise altered(file) from error


def _refuse_newer(program: str, file: str) -> None:
    """Refuse what a newer version made; its cards may rest on what this one does not know."""
    try:
        made, ours = (
            tuple(int(part) for part in version.split(".")) for version in (program, __version__)
        )
    except ValueError as error:
        raise altered(file) from error
    if made > ours:
        raise ChartgenError(
            f"{file}: was made by version {program} of chartgen and this is {__version__}; "
            f"install version {program} or a later one."
        )


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
