"""A printed card's file -> its card again, and what it is worth beside a shop file today."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from chartgen import __version__, pipeline
from chartgen.carrying import Inputs
from chartgen.description.pdf_file import is_pdf, look_inside
from chartgen.description.recipe import (
    JOB_NAME,
    LAYOUT_NAME,
    RECIPE_NAME,
    CardOf,
    Recipe,
    altered,
    read_recipe,
)
from chartgen.errors import ChartgenError, DescriptionError, RequestError
from chartgen.layout import own_layouts
from chartgen.layout.layout_file import change_layout_names, layout_names
from chartgen.model.job import Job
from chartgen.model.shop import Shop
from chartgen.wording.card import AnyCard
from chartgen.wording.staleness import PrintedStaleness, staleness

__all__ = ["PrintedFile", "is_pdf", "open_printed"]


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedFile:
    """A card as its file carries it: what it was made from, and the card made again.

    `job` is None on a card that is of none.
    """

    recipe: Recipe
    inputs: Inputs
    shops: tuple[Shop, ...]
    job: Job | None
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
        before, gone = self.shop, ""
        now: AnyCard | None
        if self.recipe.made_from is CardOf.CHANGE:
            # Its file is named after its shop, which may have another name by now.
            now = replace(
                pipeline.changed_card(self.shops[0], after), file_stem=self.card.file_stem
            )
        elif self.job is not None:
            now, gone = self._planned_again(after)
        else:
            own = self.inputs.own_layouts
            before, after = (_printing(shop, self.recipe, own) for shop in (before, after))
            now = self._same_of(pipeline.printed_cards(after))
        return staleness(
            self.card,
            now,
            before=before,
            after=after,
            by_older=self.older_version,
            gone_because=gone,
        )

    def _planned_again(self, after: Shop) -> tuple[AnyCard | None, str]:
        """Return the job's card of another shop, or None and why that shop cannot make it."""
        text = self.inputs.job_file or b""
        try:
            job = pipeline.describe_job(text, JOB_NAME, after)
        except DescriptionError as error:
            # It was sound when it was opened: what is wrong is wrong beside this shop.
            return None, " ".join(f"{fault.key}: {fault.problem}" for fault in error.faults)
        return self._same_of(pipeline.printed_job_cards(after, job)), ""

    def _same_of(self, cards: Sequence[AnyCard]) -> AnyCard | None:
        """Return the card of the same file name among others."""
        return next((card for card in cards if card.file_stem == self.card.file_stem), None)


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
    if not all(name in inside.files for name in recipe.carried):
        raise altered(file)
    files = {name: inside.files[name] for name in recipe.carried}
    inputs = Inputs(
        files=tuple(files.values()), materials=recipe.materials, made_from=recipe.made_from
    )
    job = None
    try:
        shops = tuple(
            _without_paths(pipeline.describe(text, f"{file}, {name} in it"), recipe)
            for name, text in files.items()
            if name != JOB_NAME
        )
        if inputs.job_file is not None:
            job = pipeline.describe_job(inputs.job_file, f"{file}, {JOB_NAME} in it", shops[0])
        own = _own_layouts(shops[0], recipe, inside.files.get(LAYOUT_NAME), file)
        card = _card_of(shops, job, recipe, own)
    except ChartgenError as error:
        if recipe.program == __version__:
            # What this version wrote it can read: somebody changed it.
            raise altered(file) from error
        raise
    if card is None:
        raise altered(file)
    found = PrintedFile(
        recipe=recipe,
        inputs=replace(inputs, own_layouts=own),
        shops=shops,
        job=job,
        card=card,
    )
    codes = {recipe.check, inside.subject.rpartition("check ")[2]}
    if not found.older_version:
        codes.add(card.check_code)
    if len(codes) > 1:
        raise altered(file)
    return found


def _without_paths(shop: Shop, recipe: Recipe) -> Shop:
    """Return the shop without layouts asked for by path: a PDF carries no more than its own."""
    names = tuple(n for n in shop.request.layouts if not own_layouts.is_path(n))
    # The card of a change or of a job has a layout that no shop can ask for.
    instead = recipe.layout if recipe.made_from is CardOf.SHOP else layout_names()[0]
    request = replace(shop.request, layouts=names or (instead,))
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
    shops: tuple[Shop, ...], job: Job | None, recipe: Recipe, own: tuple[tuple[str, str], ...]
) -> AnyCard | None:
    """Return the card of a recipe, None where what it carries makes no such card."""
    if recipe.made_from is CardOf.CHANGE:
        before, after = shops
        change = pipeline.changed_card(before, after)
        if recipe.layout not in change_layout_names():
            raise RequestError(f"layout {recipe.layout!r} is unknown.")
        return change if change.file_stem == recipe.file else None
    cards: Sequence[AnyCard]
    if job is None:
        cards = pipeline.printed_cards(_printing(shops[0], recipe, own))
    else:
        cards = pipeline.printed_job_cards(shops[0], job)
        cards = [card for card in cards if card.layout == recipe.layout]
    if recipe.number > len(cards):
        return None
    card = cards[recipe.number - 1]
    if recipe.file == card.file_stem:
        return card
    # Beside a card of another layout it may have been numbered.
    numbered = re.fullmatch(re.escape(card.file_stem) + r"-\d+", recipe.file)
    return replace(card, file_stem=recipe.file) if numbered else None
