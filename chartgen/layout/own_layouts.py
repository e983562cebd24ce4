"""Layouts of the owner's own: asked for by path, called by the file's name."""

from collections.abc import Mapping
from dataclasses import replace
from pathlib import PurePath

from chartgen.description.locate import line_of
from chartgen.description.toml_text import decoded
from chartgen.errors import DescriptionError, Fault
from chartgen.layout.layout_file import every_layout_name, parse_layout
from chartgen.model.shop import Shop
from chartgen.wording.card import file_name_part

# Kinds of cards that are of more than a shop, and the command that makes them.
_MADE_BY = {
    "change-card": "compare",
    "set-up-card": "job",
    "batch-card": "job",
    "student-card": "class",
    "exercise-sheet": "class",
    "answer-key": "class",
    "answer-matrix": "class",
    "safety-quiz": "class",
    "sign-off-card": "class",
    "class-marks": "mark",
}


def is_path(name: str) -> bool:
    """Whether a layout is asked for by the path of its file."""
    return name.endswith(".toml")


def with_own_layouts(shop: Shop, files: Mapping[str, tuple[str, bytes]]) -> Shop:
    """Return the shop with the owner's own layouts read, each called by its file's name.

    Parameters
    ----------
    shop
        A shop whose layouts are names and paths.
    files
        For each path among them, the name of the file for messages, and its bytes.

    Raises
    ------
    DescriptionError
        With every fault of every one of the files.
    """
    faults: list[Fault] = []
    names: dict[str, str] = {}
    texts: dict[str, str] = {}
    for path, (file, data) in files.items():
        name = PurePath(path).stem
        faults += _faults_of_name(name, file, texts)
        try:
            text = decoded(data, file=file)
            layout = parse_layout(text, file=file, name=name)
        except DescriptionError as error:
            faults += error.faults
            continue
        if layout.card in _MADE_BY:
            kind, command = " ".join(layout.card.rsplit("-", 1)), _MADE_BY[layout.card]
            kind = f"an {kind}" if kind[0] in "aeiou" else f"a {kind}"
            problem = f"is the layout of {kind}, which only `{command}` makes."
            line = line_of(text, ("card",))
            faults.append(Fault(file, line, "card", problem, "Choose another kind of card."))
        names[path], texts[name] = name, text
    if faults:
        raise DescriptionError(faults)
    layouts = tuple(dict.fromkeys(names.get(name, name) for name in shop.request.layouts))
    own = tuple(texts.items())
    return replace(shop, request=replace(shop.request, layouts=layouts, own_layouts=own))


def _faults_of_name(name: str, file: str, taken: Mapping[str, str]) -> list[Fault]:
    """Return what is wrong with the name of an owner's layout: his cards begin with it."""
    mend = "Rename the file, with small letters, digits and hyphens."
    if file_name_part(name) != name:
        return [Fault(file, 0, "", f"{name!r} cannot be the beginning of a card's name.", mend)]
    if name in every_layout_name() or name in taken:
        return [Fault(file, 0, "", f"there is another layout by the name {name!r}.", mend)]
    return []
