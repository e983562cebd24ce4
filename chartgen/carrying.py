"""What a card carries of its making: the owner's shop file, and which card of it this is."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from chartgen import __version__
from chartgen.description.recipe import LAYOUT_NAME, RECIPE_NAME, Recipe, recipe_text
from chartgen.layout.placed import Attachment
from chartgen.wording.card import AnyCard

_TOML = "application/toml"
_SHOP = "The shop file this card was made from"
_LAYOUT = "The owner's own layout of this card"
_RECIPE = "Which card of the shop file this is"


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs:
    """What cards are made from: a shop file's bytes, or two of a change, and the materials.

    `first` is the number of the first card among all cards of its layout; `own_layouts` are
    the name and text of each layout that did not come with the program.
    """

    files: tuple[bytes, ...]
    materials: tuple[str, ...]
    first: int = 1
    own_layouts: tuple[tuple[str, str], ...] = ()

    @property
    def are_two_shops(self) -> bool:
        """Whether they make the card of a change."""
        return len(self.files) > 1


def attachments_of(cards: Sequence[AnyCard], inputs: Inputs) -> list[tuple[Attachment, ...]]:
    """Return what each card carries; its place among the cards of its layout is counted."""
    numbers = Counter[str]()
    found = []
    for card in cards:
        numbers[card.layout] += 1
        recipe = Recipe(
            program=__version__,
            layout=card.layout,
            number=numbers[card.layout] + inputs.first - 1,
            file=card.file_stem,
            materials=inputs.materials,
            check=card.check_code,
            is_change=inputs.are_two_shops,
        )
        shops = zip(recipe.shop_names, inputs.files, strict=True)
        found.append(
            (
                Attachment(RECIPE_NAME, _RECIPE, _TOML, recipe_text(recipe)),
                *(Attachment(name, _SHOP, _TOML, content) for name, content in shops),
                *(
                    Attachment(LAYOUT_NAME, _LAYOUT, _TOML, text.encode())
                    for name, text in inputs.own_layouts
                    if name == card.layout
                ),
            )
        )
    return found
