"""The whole run on one page: describe -> limit -> tabulate -> word -> lay out -> render."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from chartgen.card_kinds import CardsOf
from chartgen.carrying import Inputs, attachments_of
from chartgen.description.known import Known
from chartgen.description.recipe import CardOf
from chartgen.description.shop_file import example_text, read_shop
from chartgen.errors import DescriptionError, DoesNotFitError, RequestError, TooSmallError
from chartgen.layout.capacity import layouts_that_hold
from chartgen.layout.compose import compose
from chartgen.layout.layout_file import (
    change_layout_names,
    class_layout_names,
    job_layout_names,
    layout_called,
    layout_names,
)
from chartgen.layout.own_layouts import is_path
from chartgen.layout.placed import Document
from chartgen.limits.run import windows
from chartgen.model.shop import Language, Shop
from chartgen.reference.allowances import load_allowances
from chartgen.reference.tables import load_material, load_transmission, material_keys
from chartgen.renderers.fonts import measure
from chartgen.renderers.pdf import render_pdf
from chartgen.wording.card import AnyCard, PrintedCard, lathe_card
from chartgen.wording.language import speaking
from chartgen.wording.nearest import nearest_name
from chartgen.wording.printed import PrintedChart

if TYPE_CHECKING:
    from collections.abc import Callable

    from chartgen.model.job import Job
    from chartgen.planning.plan import JobPlan
    from chartgen.wording.printed_change import PrintedChange
    from chartgen.wording.printed_job import PrintedJob

EXAMPLE_NAME = "built-in example shop"


@dataclass(frozen=True, slots=True)
class FinishedCard:
    """A card laid out: ready to be rendered under its file name."""

    file_name: str
    document: Document


def describe(text: bytes | None, file: str) -> Shop:
    """Return the shop of a file's bytes, or the built-in example's where there is no file.

    Raises
    ------
    DescriptionError
        With every fault of the file.
    """
    if text is None:
        return read_shop(example_text(), file=EXAMPLE_NAME, known=known_names())
    return read_shop(text, file=file, known=known_names())


def describe_job(text: bytes, file: str, shop: Shop) -> "Job":
    """Return the job of a file's bytes, which the shop has the tools and the room for.

    Raises
    ------
    DescriptionError
        With every fault of the file, or of the job beside the shop.
    """
    from chartgen.description.job_beside_shop import by_names_of, faults_beside
    from chartgen.description.job_file import read_job

    job = read_job(text, file=file, known=known_names())
    faults = faults_beside(job, shop, text=text, file=file)
    if faults:
        raise DescriptionError(faults)
    return by_names_of(job, shop)


def inputs_of(text: bytes | None, shop: Shop) -> Inputs:
    """Return what the cards of a shop carry: the bytes described, the materials printed."""
    return Inputs(
        files=(example_text() if text is None else text,),
        materials=shop.request.materials,
        own_layouts=shop.request.own_layouts,
    )


def inputs_of_job(shop_text: bytes | None, job_text: bytes) -> Inputs:
    """Return what the cards of a job carry: the bytes of both files."""
    return Inputs(
        files=(example_text() if shop_text is None else shop_text, job_text),
        materials=(),
        made_from=CardOf.JOB,
    )


def known_names() -> Known:
    """Return the names that an owner's file may use."""
    allowances = load_allowances()
    return Known(
        materials=material_keys(),
        layouts=layout_names(),
        change_layouts=change_layout_names(),
        job_layouts=job_layout_names(),
        class_layouts=class_layout_names(),
        allowances={name: (e.least, e.most, e.unit) for name, e in allowances.items()},
        transmission=tuple(load_transmission()),
        dc_no_load=allowances["dc_no_load"].value,
    )


def with_materials(shop: Shop, keys: Sequence[str]) -> Shop:
    """Return the shop printing other materials than its file says; none given: unchanged.

    Raises
    ------
    RequestError
        If a material is not in the reference data.
    """
    for key in keys:
        if key not in material_keys():
            raise RequestError(f"material {key!r} is unknown.{nearest_name(key, material_keys())}")
    chosen = tuple(dict.fromkeys(keys)) or shop.request.materials
    return replace(shop, request=replace(shop.request, materials=chosen))


def with_layouts(shop: Shop, names: Sequence[str]) -> Shop:
    """Return the shop printing in other layouts than its file says; none given: unchanged.

    Raises
    ------
    RequestError
        If there is no such layout.
    """
    for name in names:
        if name not in layout_names() and not is_path(name):
            raise RequestError(f"layout {name!r} is unknown.{nearest_name(name, layout_names())}")
    chosen = tuple(dict.fromkeys(names)) or shop.request.layouts
    return replace(shop, request=replace(shop.request, layouts=chosen))


def in_english(shop: Shop) -> Shop:
    """Return the shop with its cards in English, as machines read them."""
    return replace(shop, request=replace(shop.request, language=Language.ENGLISH))


def printed_cards(shop: Shop) -> list[AnyCard]:
    """Return every card a shop asks for, all text made."""
    with speaking(shop.request.language.value):
        return CardsOf(shop, [load_material(key) for key in shop.request.materials]).all()


def changed_card(before: Shop, after: Shop, language: str = "") -> "PrintedCard[PrintedChange]":
    """Return the card of a change from one shop to another, all text made.

    It is told in the language of the shop after, or in the one that is given.

    Raises
    ------
    RequestError
        If the shops have no material in common.
    """
    from chartgen.wording.change import change_card

    with speaking(language or after.request.language.value):
        return change_card(
            before,
            after,
            old_cards=printed_cards(before),
            new_cards=printed_cards(after),
            layout=change_layout_names()[0],
        )


def job_plan(shop: Shop, job: "Job") -> "JobPlan":
    """Return a job worked out for a shop, as numbers."""
    from chartgen.planning.run import plan_job

    return plan_job(shop, job, load_material(job.material))


def explained_job_text(shop: Shop, job: "Job") -> str:
    """Return how each step of a job comes by its numbers, as text."""
    from chartgen.renderers.explanation_text import render_explained_job
    from chartgen.wording.job.explained import explained_job

    return render_explained_job(explained_job(job_plan(shop, job)))


def printed_job_cards(
    shop: Shop, job: "Job", language: str = ""
) -> "list[PrintedCard[PrintedJob]]":
    """Return the cards of a job, the set-up card first, all text made.

    They are told in the language of the shop, or in the one that is given.
    """
    from chartgen.wording.job_card import job_cards

    with speaking(language or shop.request.language.value):
        return job_cards(job_plan(shop, job))


def table_card(shop: Shop, key: str) -> PrintedCard[PrintedChart]:
    """Return one material's lathe chart as words.

    Raises
    ------
    RequestError
        If the material is not in the reference data.
    """
    (material,) = (load_material(k) for k in with_materials(shop, [key]).request.materials)
    found = windows(shop, materials=[material], diameters=shop.request.diameters)
    own = shop.request.own_layouts
    charts = [n for n in shop.request.layouts if layout_called(n, own).card == "lathe-chart"]
    with speaking(shop.request.language.value):
        return lathe_card(shop, found, material, charts[0] if charts else "lathe-chart-a5")


def lay_out(
    cards: Sequence[AnyCard],
    inputs: Inputs | None = None,
    own_layouts: Sequence[tuple[str, str]] = (),
) -> list[FinishedCard]:
    """Return the cards placed on their pages, carrying the inputs they were made from.

    Without inputs a card can be looked at, but not be made again from its file.

    Raises
    ------
    DoesNotFitError
        If any does not fit at its reading distance; every different reason is told, once,
        with the layouts of the same kind that would hold the card.
    """
    finished, reasons = [], dict[str, None]()
    carried = attachments_of(cards, inputs) if inputs else [()] * len(cards)
    for card, attachments in zip(cards, carried, strict=True):
        layout = layout_called(card.layout, own_layouts)
        try:
            document = replace(compose(card, layout, measure), attachments=attachments)
            finished.append(FinishedCard(f"{card.file_stem}.pdf", document))
        except TooSmallError as error:
            larger = layouts_that_hold(card, layout, measure)
            reasons[str(TooSmallError(error.problem, larger=larger))] = None
    if reasons:
        raise DoesNotFitError("\n".join(reasons))
    return finished


def render(card: FinishedCard) -> bytes:
    """Return a card's PDF."""
    return render_pdf(card.document)


def picture_maker() -> "Callable[[bytes], list[bytes]]":
    """Return what makes pictures of a PDF's pages, for the screen.

    Raises
    ------
    RequestError
        If the library for it is not installed; the message says how to install it.
    """
    from chartgen.renderers.png import picture_maker as maker

    return maker()
