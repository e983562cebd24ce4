"""A printed card's file -> its card again, and what it is worth beside a shop file today."""

import re
from dataclasses import dataclass, replace

from chartgen import __version__, pipeline
from chartgen.carrying import Inputs
from chartgen.description.pdf_file import is_pdf, look_inside
from chartgen.description.recipe import LAYOUT_NAME, RECIPE_NAME, Recipe, altered, read_recipe
from chartgen.errors import ChartgenError, RequestError
from chartgen.layout import own_layouts
from chartgen.layout.layout_file import change_layout_names
from chartgen.model.shop import Shop
from chartgen.wording.card import AnyCard
from chartgen.wording.staleness import PrintedStaleness, staleness

__all__ = ["PrintedFile", "is_pdf", "open_printed"]


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedFile:
    """A card as its file carries it: the shops it was made from, and the card made again."""

    recipe: Recipe
    inputs: Inputs
    shops: tuple[Shop, ...]
    card: AnyCard

    @property
    def shop(self) -> Shop:
        """The shop it was printed for; of a change, the shop after it."""
        return self.shops[-1]

    @property
    def older_version(self) -> str:
        """The version of chartgen that made it, empty where it is this one."""
        return "" if self.recipe.program == __version__ else self.recipe.program

    def made_again(self) -> pipeline.FinishedCard:
        """Return the card laid out, under its own name, carrying what it carried.

        Raises
        ------
        DoesNotFitError
            If it does not fit, which a card that was printed once can only by another version.
        """
        inputs = replace(self.inputs, first=self.recipe.number)
        (finished,) = pipeline.lay_out([self.card], inputs, inputs.own_layouts)
        return finished

    def beside(self, after: Shop) -> PrintedStaleness:
        """Return what the card is worth beside a shop file of today.

        Raises
        ------
        ChartgenError
            If the shop cannot print what the card shows.
        """
        recipe, before = self.recipe, self.shop
        if recipe.is_change:
            # Its file is named after its shop, which may have another name by now.
            now: AnyCard | None = replace(
                pipeline.changed_card(self.shops[0], after), file_stem=self.card.file_stem
            )
        else:
            own = self.inputs.own_layouts
            before, after = _printing(before, recipe, own), _printing(after, recipe, own)
            again = {card.file_stem: card for card in pipeline.printed_cards(after)}
            now = again.get(self.card.file_stem)
        return staleness(self.card, now, before=before, after=after, by_older=self.older_version)


def open_printed(content: bytes, *, file: str) -> PrintedFile:
    """Return the card that a PDF is, made again from what it carries.

    Raises
    ------
    ChartgenError
        If the PDF carries no inputs, was altered, or was made by a newer version.
    """
    inside = look_inside(content, file=file)
    if RECIPE_NAME not in inside.files:
        raise ChartgenError(
            f"{file}: carries no shop file: it is no card of chartgen, or another program saved "
            "it without. Give the file that chartgen wrote, or make the card anew from its shop "
            "file."
        )
    recipe = read_recipe(inside.files[RECIPE_NAME], file=file)
    _refuse_newer(recipe, file)
    if not all(name in inside.files for name in recipe.shop_names):
        raise altered(file)
    files = tuple(inside.files[name] for name in recipe.shop_names)
    try:
        shops = tuple(
            _without_paths(pipeline.describe(text, f"{file}, {name} in it"), recipe)
            for text, name in zip(files, recipe.shop_names, strict=True)
        )
        own = _own_layouts(shops[0], recipe, inside.files.get(LAYOUT_NAME), file)
        card = _card_of(shops, recipe, own)
    except ChartgenError as error:
        if recipe.program == __version__:
            # What this version wrote it can read: somebody changed it.
            raise altered(file) from error
        raise
    if card is None:
        raise altered(file)
    found = PrintedFile(
        recipe=recipe,
        inputs=Inputs(files=files, materials=recipe.materials, own_layouts=own),
        shops=shops,
        card=card,
    )
    codes = {recipe.check, inside.subject.rpartition("check ")[2]}
    if not found.older_version:
        codes.add(card.check_code)
    if len(codes) > 1:
        raise altered(file)
    return found


def _refuse_newer(recipe: Recipe, file: str) -> None:
    """Refuse what a newer version made; its cards may rest on what this one does not know."""
    try:
        made, ours = (
            tuple(int(part) for part in version.split("."))
            for version in (recipe.program, __version__)
        )
    except ValueError as error:
        raise altered(file) from error
    if made > ours:
        raise ChartgenError(
            f"{file}: was made by version {recipe.program} of chartgen and this is {__version__}; "
            f"install version {recipe.program} or a later one."
        )


def _without_paths(shop: Shop, recipe: Recipe) -> Shop:
    """Return the shop without layouts asked for by path: a PDF carries no more than its own."""
    names = tuple(n for n in shop.request.layouts if not own_layouts.is_path(n))
    request = replace(shop.request, layouts=names or (recipe.layout,))
    return replace(shop, request=request)


def _own_layouts(
    shop: Shop, recipe: Recipe, text: bytes | None, file: str
) -> tuple[tuple[str, str], ...]:
    """Return the owner's own layout that a card carries, read and checked; none: nothing."""
    if text is None:
        return ()
    name = f"{recipe.layout}.toml"
    asking = replace(shop, request=replace(shop.request, layouts=(name,)))
    read = own_layouts.with_own_layouts(asking, {name: (f"{file}, {LAYOUT_NAME} in it", text)})
    return read.request.own_layouts


def _printing(shop: Shop, recipe: Recipe, own: tuple[tuple[str, str], ...]) -> Shop:
    """Return the shop printing what the card was printed among."""
    shop = pipeline.with_materials(shop, recipe.materials)
    if own:
        request = replace(shop.request, layouts=(recipe.layout,), own_layouts=own)
        return replace(shop, request=request)
    return pipeline.with_layouts(shop, [recipe.layout])


def _card_of(
    shops: tuple[Shop, ...], recipe: Recipe, own: tuple[tuple[str, str], ...]
) -> AnyCard | None:
    """Return the card of a recipe, None where the shops have no such card."""
    if recipe.is_change:
        before, after = shops
        change = pipeline.changed_card(before, after)
        if recipe.layout not in change_layout_names():
            raise RequestError(f"layout {recipe.layout!r} is unknown.")
        return change if change.file_stem == recipe.file else None
    cards = pipeline.printed_cards(_printing(shops[0], recipe, own))
    if recipe.number > len(cards):
        return None
    card = cards[recipe.number - 1]
    if recipe.file == card.file_stem:
        return card
    # Beside a card of another layout it may have been numbered.
    numbered = re.fullmatch(re.escape(card.file_stem) + r"-\d+", recipe.file)
    return replace(card, file_stem=recipe.file) if numbered else None
