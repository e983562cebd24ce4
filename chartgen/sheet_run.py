"""Cards on sheets: each is laid out when its sheet is drawn, and every size has its own file."""

from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from chartgen.errors import DoesNotFitError, RequestError
from chartgen.layout.compose import compose
from chartgen.layout.layout_file import layout_called
from chartgen.layout.pages import page_name
from chartgen.layout.sheets.impose import Imposition
from chartgen.layout.sheets.leaves import Leaf, leaves
from chartgen.layout.sheets.papers import PAPERS
from chartgen.layout.sheets.plan import SheetPlan, plan_sheets
from chartgen.quantities import Millimetres
from chartgen.renderers.fonts import measure
from chartgen.renderers.pdf import render_pages
from chartgen.wording.card import AnyCard
from chartgen.wording.language import ENGLISH, TAGS
from chartgen.wording.nearest import nearest_name


def sheet_plan(**words: Any) -> SheetPlan:  # noqa: ANN401 - the words of `plan_sheets`
    """Return the plan of a run of sheets.

    Raises
    ------
    RequestError
        If there is no such paper, or one wish stands against another.
    """
    if words["paper"] not in PAPERS:
        near = nearest_name(words["paper"], tuple(PAPERS))
        raise RequestError(f"sheet {words['paper']!r} is unknown.{near}")
    try:
        return plan_sheets(**words)
    except ValueError as error:
        raise RequestError(f"{error}.") from None


def on_sheets(
    cards: Iterable[AnyCard], plan: SheetPlan, own_layouts: Sequence[tuple[str, str]] = ()
) -> Iterator[tuple[str, bytes]]:
    """Yield name and bytes of one PDF of sheets for every size of card among the cards.

    Raises
    ------
    DoesNotFitError, RequestError
        If a card does not fit its layout, or the sheet, or has no place for a hole.
    """
    runs: dict[tuple[tuple[float, float], str], list[AnyCard]] = {}
    for card in cards:
        layout = layout_called(card.layout, own_layouts)
        runs.setdefault((layout.page, layout.pouch), []).append(card)
    # Every size is held against the sheet before the first card is laid out.
    impositions = [
        imposition(page, pouch, plan, run[0].language) for (page, pouch), run in runs.items()
    ]
    for imposed, run in zip(impositions, runs.values(), strict=True):
        size = page_name(imposed.places.card)
        stem = f"sheet-{plan.paper}-{size}".lower().replace(" ", "-")
        title = f"{plan.paper} sheets of {size} cards, {run[0].lathe}"
        yield f"{stem}.pdf", render_sheets(title, run, imposed, own_layouts)


def imposition(
    page: tuple[Millimetres[float], Millimetres[float]],
    pouch: str,
    plan: SheetPlan,
    language: str = ENGLISH,
) -> Imposition:
    """Return how cards of one size stand on the sheets of a plan, whose feet speak a language.

    Raises
    ------
    RequestError
        If not one of them fits.
    """
    return Imposition(plan, card=page, pouch=pouch, measure=measure, language=language)


def render_sheets(
    title: str,
    cards: Iterable[AnyCard],
    imposed: Imposition,
    own_layouts: Sequence[tuple[str, str]] = (),
) -> bytes:
    """Return a PDF of sheets; each card is laid out when its sheet is drawn, and then let go.

    Raises
    ------
    DoesNotFitError, RequestError
        If a card does not fit its layout, or has no place for a hole.
    """
    plan = imposed.plan
    subject = f"sheets of {plan.paper}, flip on the {plan.flip.value} edge"
    return render_pages(
        title,
        subject,
        imposed.sheets(_leaves(cards, own_layouts)),
        plan.flip,
        TAGS[imposed.language],
    )


def _leaves(cards: Iterable[AnyCard], own_layouts: Sequence[tuple[str, str]]) -> Iterator[Leaf]:
    """Yield the leaves of cards as they are laid out; every reason not to is told, once."""
    reasons = dict[str, None]()
    for card in cards:
        try:
            document = compose(card, layout_called(card.layout, own_layouts), measure)
        except DoesNotFitError as error:
            reasons[str(error)] = None
            continue
        if not reasons:
            yield from leaves(card.file_stem, document)
    if reasons:
        raise DoesNotFitError("\n".join(reasons))
