"""What a material is called on a card: the words translated, designations of standards kept."""

import re
from typing import Final

from chartgen.model.material import Material
from chartgen.wording.language import tr

_WORD: Final = re.compile(r"\b[a-z]{2,}\b")


def material_name(material: Material) -> str:
    """Return the name of a material in the language being spoken."""
    return tr(material.name)


def also_called(material: Material) -> tuple[str, ...]:
    """Return the other names of a material in the language being spoken."""
    return tuple(tr(name) if is_in_words(name) else name for name in material.also)


def is_in_words(name: str) -> bool:
    """Return whether a name holds a word, so that it is no mere designation of a standard."""
    return _WORD.search(name) is not None
