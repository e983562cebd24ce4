"""The whole run on one page: describe -> limit -> tabulate -> word -> lay out -> render."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TypeVar

from chartgen.description.known import Known
from chartgen.description.shop_file import example_text, read_shop
from chartgen.errors import DoesNotFitError, RequestError
from chartgen.layout.compose import compose
from chartgen.layout.layout_file import layout_names, load_layout
from chartgen.layout.placed import Document
from chartgen.limits.run import windows
from chartgen.limits.window import Windows
from chartgen.model.material import Material
from chartgen.model.shop import LengthUnits, Shop
from chartgen.reference.allowances import load_allowances
from chartgen.reference.tables import load_material, load_transmission, material_keys
from chartgen.renderers.fonts import measure
from chartgen.renderers.pdf import render_pdf
from chartgen.wording.card import AnyCard, PrintedCard, lathe_card, overview_card
from chartgen.wording.nearest import nearest_name
from chartgen.wording.printed import PrintedChart

# What one card holds at its reading distance; more of them run on to further cards.
BLADES_A_CARD = {LengthUnits.METRIC: 3, LengthUnits.INCH: 2}
MATERIALS_A_CARD = 6

Item = TypeVar("Item")

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


def known_names() -> Known:
    """Return the names that an owner's file may use."""
    allowances = load_allowances()
    return Known(
        materials=material_keys(),
        layouts=layout_names(),
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


def printed_cards(shop: Shop) -> list[AnyCard]:
    """Return every card a shop asks for, all text made."""
    materials = [load_material(key) for key in shop.request.materials]
    all_windows = windows(shop, materials=materials, diameters=shop.request.diameters)
    blades = in_groups(shop.blades, BLADES_A_CARD[shop.request.units])
    groups = in_groups(materials, MATERIALS_A_CARD)
    some = [all_windows]
    if len(groups) > 1:
        some = [windows(shop, materials=g, diameters=shop.request.diameters) for g in groups]
    makers: dict[str, Callable[[str], list[AnyCard]]] = {
        "lathe-chart": lambda n: [
            lathe_card(shop, all_windows, m, n, tuple(g)) for m in materials for g in blades
        ],
        "overview": lambda n: [overview_card(shop, w, b, n) for b in shop.blades for w in some],
        "blade-card": lambda n: _blade_cards(shop, groups, n),
        "centre-card": lambda n: _centre_cards(shop, all_windows, materials, n),
    }
    cards = [card for n in shop.request.layouts for card in makers[load_layout(n).card](n)]
    return _with_names_of_their_own(cards)


def _blade_cards(shop: Shop, groups: Sequence[Sequence[Material]], name: str) -> list[AnyCard]:
    from chartgen.wording.blade_card import blade_card

    return [blade_card(shop, group, b, name) for b in shop.blades for group in groups]


def _centre_cards(
    shop: Shop, all_windows: Windows, materials: Sequence[Material], name: str
) -> list[AnyCard]:
    from chartgen.wording.centre_card import centre_card

    return [centre_card(shop, all_windows, material, name) for material in materials]


def in_groups(items: Sequence[Item], most: int) -> list[list[Item]]:
    """Return items in as few groups of at most `most` as will do, as even as can be."""
    count = max(1, -(-len(items) // most))
    ends = [round(len(items) * part / count) for part in range(count + 1)]
    return [list(items[start:end]) for start, end in pairwise(ends)]


def _with_names_of_their_own(cards: Sequence[AnyCard]) -> list[AnyCard]:
    """Return the cards, those whose file names would be alike numbered from the second on."""
    taken: set[str] = set()
    named = []
    for card in cards:
        stem, number = card.file_stem, 1
        while stem in taken:
            number += 1
            stem = f"{card.file_stem}-{number}"
        taken.add(stem)
        named.append(replace(card, file_stem=stem))
    return named


def table_card(shop: Shop, key: str) -> PrintedCard[PrintedChart]:
    """Return one material's lathe chart as words.

    Raises
    ------
    RequestError
        If the material is not in the reference data.
    """
    (material,) = (load_material(k) for k in with_materials(shop, [key]).request.materials)
    found = windows(shop, materials=[material], diameters=shop.request.diameters)
    charts = [name for name in shop.request.layouts if load_layout(name).card == "lathe-chart"]
    return lathe_card(shop, found, material, charts[0] if charts else "lathe-chart-a5")


def lay_out(cards: Sequence[AnyCard]) -> list[FinishedCard]:
    """Return the cards placed on their pages.

    Raises
    ------
    DoesNotFitError
        If any does not fit at its reading distance; every different reason is told, once.
    """
    finished, reasons = [], dict[str, None]()
    for card in cards:
        try:
            document = compose(card, load_layout(card.layout), measure)
            finished.append(FinishedCard(f"{card.file_stem}.pdf", document))
        except DoesNotFitError as error:
            reasons[str(error)] = None
    if reasons:
        raise DoesNotFitError("\n".join(reasons))
    return finished


def render(card: FinishedCard) -> bytes:
    """Return a card's PDF."""
    return render_pdf(card.document)
