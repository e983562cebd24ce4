"""The letter that stands for a blade on every card of a shop."""

from collections.abc import Sequence

from chartgen.model.blade import Blade

_ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


def letter_of(blades: Sequence[Blade], name: str) -> str:
    """Return the letter of a blade among all; from the 27th on a letter twice, none shared."""
    place = [blade.name for blade in blades].index(name)
    return _ALPHABET[place % 26] * (1 + place // 26)


def blade_called(blades: Sequence[Blade], word: str) -> Blade | None:
    """Return the blade of a name, or else of a letter; None if neither is there."""
    named = {letter_of(blades, blade.name): blade for blade in blades}
    return (named | {blade.name: blade for blade in blades}).get(word)
