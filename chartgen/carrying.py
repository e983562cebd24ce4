"""What a card carries of its making: the owner's files, and which card of them this is."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from chartgen import __version__
from chartgen.description.recipe import (
    JOB_NAME,
    LAYOUT_NAME,
    RECIPE_NAME,
    CardOf,
    Recipe,
    recipe_text,
)
from chartgen.layout.placed import Attachment
from chartgen.wording.card import AnyCard

_TOML = "application/toml"
_SHOP = "The shop file this card was made from"
_JOB = "The job file this card was made from"
_LAYOUT = "The owner's own layout of this card"
_RECIPE = "Which card of the shop file this is"


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs:
    """What cards are made from: files' bytes in the order of `CARRIED`, and the materials.

    `first` is the number of the first card among all cards of its layout; `own_layouts` are
    the name and text of each layout that did not come with the program.
    """

    files: tuple[bytes, ...]
    materials: tuple[str, ...]
    made_from: CardOf = CardOf.SHOP
    first: int = 1
    own_layouts: tuple[tuple[str, str], ...] = ()

    @property
    def shop_file(self) -> bytes:
        """The shop file that the cards are for; of a change, the one after it."""
        return self.files[1 if self.made_from is CardOf.CHANGE else 0]

    @property
    def job_file(self) -> bytes | None:
        """The job file, None where the cards are of no job."""
        return self.files[1] if self.made_from is CardOf.JOB else None


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
            made_from=inputs.made_from,
        )
        files = zip(recipe.carried, inputs.files, strict=True)
        found.append(
            (
                Attachment(RECIPE_NAME, _RECIPE, _TOML, recipe_text(recipe)),
                *(
                    Attachment(name, _JOB if name == JOB_NAME else _SHOP, _TOML, content)
                    for name, content in files
                ),
                *(
                    Attachment(LAYOUT_NAME, _LAYOUT, _TOML, text.encode())
                    for name, text in inputs.own_layouts
                    if name == card.layout
                ),
            )
        )
    return found
