"""Which cautions a card must carry, as the words it prints."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass

from chartgen.model.material import Material
from chartgen.model.shop import Feeding, Shop
from chartgen.reference.cautions import DEFERENCE, Caution, choose_cautions
from chartgen.wording.language import tr
from chartgen.wording.material_names import material_name

_MOST_NAMES = 2


@dataclass(frozen=True, slots=True)
class PrintedCaution:
    """A caution as it is printed; `pictogram` is the key of a drawing or empty.

    `is_injury` is False where nobody can be hurt: its panel carries no alert triangle.
    """

    signal: str
    text: str
    pictogram: str
    is_injury: bool = True


_PARTING = frozenset({"parting"})


def card_cautions(
    shop: Shop, materials: Sequence[Material], operations: Collection[str] = _PARTING
) -> tuple[PrintedCaution, ...]:
    """Return the cautions of a card: the usual ones, those of its operations and materials.

    On a card of several materials a caution that only some of them call for names them.
    """
    usual = _usual(shop, operations)
    common = set(choose_cautions(usual))
    by_material = {
        material_name(material): set(choose_cautions(_tags(material))) for material in materials
    }
    everything = cautions_of(shop, materials, operations)
    return tuple(_printed(caution, _named(caution, common, by_material)) for caution in everything)


def cautions_of(
    shop: Shop, materials: Sequence[Material], operations: Collection[str] = _PARTING
) -> tuple[Caution, ...]:
    """Return the cautions that operations in some materials call for, the gravest first."""
    usual = _usual(shop, operations)
    return choose_cautions(usual.union(*(_tags(material) for material in materials)))


def _usual(shop: Shop, operations: Collection[str]) -> set[str]:
    """Return the tags that a lathe and the operations bring, whatever the material."""
    usual = set(operations)
    if shop.lathe.chuck.marked_speed is None:
        usual.add("unmarked-chuck")
    if shop.request.feeding is Feeding.POWER:
        usual.add("power-feed")
    if shop.work.bar_behind > 0.0:
        usual.add("bar-behind-spindle")
    return usual


def _tags(material: Material) -> set[str]:
    dry = {"dry", "plastic"} & set(material.tags)
    return {*material.tags, *(set() if dry else {"oil-mist"})}


def _named(caution: Caution, common: set[Caution], by_material: dict[str, set[Caution]]) -> str:
    """Return the names to put before a caution: none where it holds for the whole card."""
    names = [name for name, cautions in by_material.items() if caution in cautions]
    if caution in common or len(names) == len(by_material) or len(names) > _MOST_NAMES:
        return ""
    return f"{', '.join(names)}: "


def deference() -> str:
    """Return the sentence every card carries."""
    return tr(DEFERENCE)


def short_deference() -> str:
    """Return the same in the few words that a foot line holds."""
    return tr("Defers to the machine's manual, local codes and qualified instruction.")


def _printed(caution: Caution, names: str) -> PrintedCaution:
    return PrintedCaution(
        tr(caution.signal.word.upper()),
        names + tr(caution.text),
        caution.pictogram,
        caution.signal.is_injury,
    )
