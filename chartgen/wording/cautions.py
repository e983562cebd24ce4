"""Which cautions a card must carry, as the words it prints."""

from collections.abc import Sequence
from dataclasses import dataclass

from chartgen.model.material import Material
from chartgen.model.shop import Feeding, Shop
from chartgen.reference.cautions import DEFERENCE, Caution, choose_cautions


@dataclass(frozen=True, slots=True)
class PrintedCaution:
    """A caution as it is printed; `pictogram` is the key of a drawing or empty."""

    signal: str
    text: str
    pictogram: str


def card_cautions(shop: Shop, materials: Sequence[Material]) -> tuple[PrintedCaution, ...]:
    """Return the cautions of a card: the usual ones, and those its materials call for."""
    tags = {"parting"}
    for material in materials:
        tags.update(material.tags)
        if "dry" not in material.tags and "plastic" not in material.tags:
            tags.add("oil-mist")
    if shop.lathe.chuck.marked_speed is None:
        tags.add("unmarked-chuck")
    if shop.request.feeding is Feeding.POWER:
        tags.add("power-feed")
    return tuple(_printed(caution) for caution in choose_cautions(tags))


def deference() -> str:
    """Return the sentence every card carries."""
    return DEFERENCE


def short_deference() -> str:
    """Return the same in the few words that a foot line holds."""
    return "Defers to the machine's manual, local codes and qualified instruction."


def _printed(caution: Caution) -> PrintedCaution:
    return PrintedCaution(caution.signal.word.upper(), caution.text, caution.pictogram)
