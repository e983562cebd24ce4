"""Every material, every layout, and shops at the edge of what a file may say."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from itertools import pairwise

import pytest

from chartgen import pipeline
from chartgen.errors import ChartgenError, DoesNotFitError
from chartgen.layout.layout_file import layout_names, load_layout
from chartgen.layout.pages import CUT_MARGIN
from chartgen.layout.placed import Align, Document, Text
from chartgen.model.shop import Shop
from chartgen.reference.tables import material_keys
from chartgen.renderers.fonts import measure

SIX = [list(material_keys()[i : i + 6]) for i in range(0, len(material_keys()), 6)]
each_layout = pytest.mark.parametrize("name", layout_names())
WIDE = "W" * 60
MANY_WORDS = ("two by " * 9)[:60].strip()


def printing(shop: Shop, name: str) -> Shop:
    return replace(shop, request=replace(shop.request, layouts=(name,)))


def beyond_the_margin(document: Document) -> Iterator[str]:
    """Yield every text that runs over the margin to the left or right."""
    for page in document.pages:
        for item in page.items:
            if isinstance(item, Text):
                width = measure(item.text, item.face, item.size)
                share = {Align.LEFT: 0.0, Align.RIGHT: 1.0, Align.CENTRE: 0.5}[item.align]
                left = item.x - share * width
                # No margin is less than that of a card cut from a larger sheet.
                if left < CUT_MARGIN - 0.01 or left + width > page.width - CUT_MARGIN + 0.01:
                    yield item.text


def clashing(document: Document) -> Iterator[tuple[str, str]]:
    """Yield texts on one line that run into each other."""
    for page in document.pages:
        lines: dict[float, list[tuple[float, float, str]]] = {}
        for item in page.items:
            if isinstance(item, Text):
                width = measure(item.text, item.face, item.size)
                share = {Align.LEFT: 0.0, Align.RIGHT: 1.0, Align.CENTRE: 0.5}[item.align]
                left = item.x - share * width
                lines.setdefault(round(item.y, 3), []).append((left, left + width, item.text))
        for line in lines.values():
            line.sort()
            for (_, end, text), (start, _, following) in pairwise(line):
                if text and following and end > start + 0.1:
                    yield text, following


@each_layout
def test_every_material_fits_every_layout(name: str) -> None:
    shop = printing(pipeline.describe(None, pipeline.EXAMPLE_NAME), name)
    of_six = load_layout(name).card in {"overview", "blade-card"}
    groups = SIX if of_six else [list(material_keys())]
    for keys in groups:
        cards = pipeline.printed_cards(pipeline.with_materials(shop, keys))
        assert cards
        for finished in pipeline.lay_out(cards):
            assert not list(beyond_the_margin(finished.document)), finished.file_name
            assert not list(clashing(finished.document)), finished.file_name


@each_layout
@pytest.mark.parametrize(
    "changes",
    [
        [('units = "metric"', 'units = "inch"')],
        [('dial_reads = "radius"', 'dial_reads = "diameter"')],
        [('projection = "16 mm"', 'projection = "2 mm"')],
        [
            ('projection = "16 mm"', 'projection = "2 mm"'),
            ('"32 mm"', '"2 mm"'),
            ('"36 mm"', '"2 mm"'),
        ],
        [('power = "750 W"', 'power = "20 W"')],
        [('power = "750 W"', 'power = "20 kW"')],
        [('fastest_spindle = "2500 rpm"', 'fastest_spindle = "900 rpm"')],
        [('mark = "L"', 'mark = "low"'), ('mark = "H"', 'mark = "top"')],
        [('mark = "L"', ""), ('mark = "H"', "")],
        [('"6 mm"', '"1/8 in"'), ('"60 mm"', '"400.5 mm"')],
        [
            ('feeding = "hand"', 'feeding = "power"'),
            ("# power_feeds", "power_feeds"),
        ],
        [('"2.0 carbide"', f'"{WIDE}"')],
        [('"2.0 carbide"', f'"{MANY_WORDS}"')],
        [('"Invented bench lathe 125"', f'"{WIDE}"')],
        [('"Invented bench lathe 125"', f'"{MANY_WORDS}"')],
        [('"Invented training shop"', f'"{WIDE}"')],
        [('revision = "A"', f'revision = "{WIDE}"')],
        [('"Invented training shop"', f'"{MANY_WORDS}"')],
    ],
    ids=lambda changes: "; ".join(new[:30] for _, new in changes),
)
def test_an_unusual_shop_is_printed_clear_or_refused(
    shop_with: Callable[..., Shop], name: str, changes: list[tuple[str, str]]
) -> None:
    for card in pipeline.printed_cards(printing(shop_with(*changes), name)):
        try:
            (finished,) = pipeline.lay_out([card])
        except DoesNotFitError:
            continue
        assert not list(beyond_the_margin(finished.document)), finished.file_name
        assert not list(clashing(finished.document)), finished.file_name


@pytest.mark.parametrize(
    "names", [("2.0 carbide", "2-0 carbide"), ("Ωμέγα", "Άλφα"), ("Cut", "cut"), ("a/b", "a b")]
)
def test_two_blades_never_share_a_file(
    shop_with: Callable[..., Shop], names: tuple[str, str]
) -> None:
    shop = shop_with(('"2.0 carbide"', f'"{names[0]}"'), ('"3.0 carbide"', f'"{names[1]}"'))
    stems = [card.file_stem for card in pipeline.printed_cards(shop)]
    assert len(set(stems)) == len(stems)


@pytest.mark.parametrize("name", ["../up", "a/b", "C:\\x", "con", ".", "-rf", "ü"])
def test_a_file_name_never_leaves_its_folder(shop_with: Callable[..., Shop], name: str) -> None:
    shop = shop_with(('"2.0 carbide"', "'" + name + "'"))
    for card in pipeline.printed_cards(shop):
        assert card.file_stem.isascii()
        assert card.file_stem.replace("-", "").isalnum()
        assert card.file_stem.startswith(card.layout)


def test_an_unknown_material_is_refused_with_the_nearest() -> None:
    shop = pipeline.describe(None, pipeline.EXAMPLE_NAME)
    with pytest.raises(ChartgenError) as caught:
        pipeline.with_materials(shop, ["mild-stel"])
    assert str(caught.value).startswith(
        "material 'mild-stel' is unknown. Did you mean 'mild-steel'"
    )


def test_materials_asked_for_twice_are_printed_once() -> None:
    shop = pipeline.describe(None, pipeline.EXAMPLE_NAME)
    chosen = pipeline.with_materials(shop, ["c45", "brass", "c45"])
    assert chosen.request.materials == ("c45", "brass")
    assert pipeline.with_materials(shop, []) == shop
