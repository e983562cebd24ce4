"""The letter that stands for a blade on every card of a shop."""

from collections.abc import Sequence

from chartgen.model.blade import Blade
from chartgen.model.shop import Shop

_ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


def blade_letter(shop: Shop, name: str) -> str:
    """Return the letter of a blade; from the 27th on a letter twice, so that none is shared."""
    return letter_of(shop.blades, name)


def letter_of(blades: Sequence[Blade], name: str) -> str:
    """Return the letter of a blade among all the blades of a shop."""
    place = [blade.name for blade in blades].index(name)
    return _ALPHABET[place % 26] * (1 + place // 26)
