"""German charts, blade and centre cards: they fit every layout, and no English is left on them."""

import re
from collections.abc import Callable, Iterator
from dataclasses import replace

import pytest

from chartgen import pipeline
from chartgen.layout.compose import compose
from chartgen.layout.layout_file import every_layout_name, load_layout
from chartgen.layout.placed import Document, Drawing, Text
from chartgen.model.lathe import BarSurface, ChuckKind, JawFace
from chartgen.model.measured import Assumption, Measured
from chartgen.model.motor import Motor, MotorKind, PowerIs
from chartgen.model.shop import Feeding, Language, LengthUnits, Shop
from chartgen.reference.cautions import LONGEST_TEXT, load_cautions
from chartgen.reference.tables import load_material, material_keys
from chartgen.renderers.fonts import measure
from chartgen.renderers.table_text import render_table
from chartgen.wording.assumptions import assumption_lines
from chartgen.wording.cautions import card_cautions, deference
from chartgen.wording.language import speaking, tr

KINDS = {"lathe-chart", "overview", "blade-card", "centre-card"}
LAYOUTS = [name for name in every_layout_name() if load_layout(name).card in KINDS]
# Words of an English card that are no German words.
ENGLISH_WORDS = frozenset(
    re.findall(
        r"\S+",
        """
        the and of is with for not from cut feed speed blade jaws what this card work turn turns
        use saw tight slow edge bar bars rev first met more than under over above below each out
        into measured assumed steel iron copper stainless annealed tempered class chuck swarf wear
        never spindle motor's handle least most near centre core time change check revision sheet
        front back undated leaded continued assumes mean signs good usable beyond
        """,
    )
)


def german(shop: Shop) -> Shop:
    return replace(shop, request=replace(shop.request, language=Language.GERMAN))


def of_the_owner(shop: Shop) -> list[str]:
    """Return what the owner named, the longest first; it stays as it is."""
    positions = [name for p in shop.lathe.drive.positions for name in (p.name, p.mark) if name]
    names = [shop.name, shop.lathe.name, *(blade.name for blade in shop.blades), *positions]
    return sorted(names, key=len, reverse=True)


def left_over(text: str, shop: Shop) -> list[str]:
    """Return English words and decimal points in a text, what stays as it is taken out."""
    text = re.sub(r'\[[^\]]*\]|CHARTGEN \S+|"chartgen stale"|"explain"|AlZn5\.5MgCu', " ", text)
    for name in of_the_owner(shop):
        text = re.sub(rf"(?<!\w){re.escape(name)}(?!\w)", " ", text)
    words = {word.lower() for word in re.findall(r"[^\W\d_]+(?:'s)?", text)}
    return sorted(words & ENGLISH_WORDS) + re.findall(r"\d\.\d\S*", text)


def said_by(document: Document) -> Iterator[str]:
    """Yield every text of a document whole, lines of a paragraph joined, and its drawings."""
    yield document.title
    for page in document.pages:
        parts: dict[object, list[str]] = {}
        for item in page.items:
            if isinstance(item, Text):
                parts.setdefault(item.tags or item, []).append(item.text)
            elif isinstance(item, Drawing):
                yield item.meaning
        yield from map(" ".join, parts.values())


@pytest.mark.parametrize("name", LAYOUTS)
def test_german_cards_fit_their_layout_and_say_nothing_in_english(example: Shop, name: str) -> None:
    shop = german(pipeline.with_layouts(example, [name]))
    cards = pipeline.printed_cards(shop)
    assert cards
    for finished in pipeline.lay_out(cards):
        assert finished.document.language == "de-DE"
        for text in said_by(finished.document):
            assert left_over(text, shop) == [], text


def test_what_finds_english_finds_it(example: Shop) -> None:
    shop = pipeline.with_layouts(example, ["lathe-chart-a5"])
    (card, *_) = pipeline.printed_cards(shop)
    found = [
        one
        for text in said_by(compose(card, load_layout("lathe-chart-a5"), measure))
        for one in left_over(text, shop)
    ]
    assert {"the", "feed", "blade", "chuck", "check"} < set(found)
    assert any(one[0].isdigit() for one in found)


@pytest.mark.parametrize(
    "name", ["lathe-chart-a5", "index-card-3x5", "overview-a5", "blade-card-a6", "wall-sheet-a3"]
)
def test_a_german_card_takes_the_metal_of_every_material(example: Shop, name: str) -> None:
    every = pipeline.with_materials(example, material_keys())
    few = replace(every, request=replace(every.request, diameters=(12.0, 25.0)))
    shop = german(pipeline.with_layouts(few, [name]))
    for finished in pipeline.lay_out(pipeline.printed_cards(shop)):
        for text in said_by(finished.document):
            assert left_over(text, shop) == [], text


def test_a_german_table_is_german_and_for_machines_english(example: Shop) -> None:
    shop = german(example)
    text = render_table(pipeline.table_card(shop, "mild-steel"))
    assert left_over(text, shop) == []
    assert text.startswith("Baustahl (")
    machine = pipeline.table_card(pipeline.in_english(shop), "mild-steel")
    assert machine.chart == pipeline.table_card(example, "mild-steel").chart


def _chuck(shop: Shop, **changes: object) -> Shop:
    chuck = replace(shop.lathe.chuck, **changes)  # type: ignore[arg-type]
    return replace(shop, lathe=replace(shop.lathe, chuck=chuck))


def _motor(shop: Shop, motor: Motor) -> Shop:
    return replace(shop, lathe=replace(shop.lathe, motor=motor))


def _request(shop: Shop, **changes: object) -> Shop:
    return replace(shop, request=replace(shop.request, **changes))  # type: ignore[arg-type]


def _power_fed(shop: Shop) -> Shop:
    slide = replace(shop.lathe.cross_slide, power_feeds=(0.02, 0.05))
    fed = replace(shop, lathe=replace(shop.lathe, cross_slide=slide))
    return _request(fed, feeding=Feeding.POWER)


def _measured(shop: Shop) -> Shop:
    records = tuple(
        Measured(
            assumption=assumption,
            value=1.5,
            plus_minus=0.25,
            level=0.95,
            readings=3,
            date="2026-11-25",
        )
        for assumption in Assumption
    )
    chuck = replace(shop.lathe.chuck, key_torque=38.5)
    motor = replace(shop.lathe.motor, power_is=PowerIs.INPUT)
    lathe = replace(shop.lathe, chuck=chuck, tool_stiffness=14300.0, motor=motor)
    return replace(shop, measured=records, lathe=lathe)


VARIANTS: dict[str, Callable[[Shop], Shop]] = {
    "inches": lambda shop: _request(shop, units=LengthUnits.INCH),
    "power feed": _power_fed,
    "collet": lambda shop: _chuck(shop, kind=ChuckKind.COLLET),
    "unmarked chuck": lambda shop: _chuck(shop, marked_speed=None),
    "serrated jaws": lambda shop: _chuck(shop, jaws=JawFace.SERRATED),
    "diamond jaws": lambda shop: _chuck(shop, jaws=JawFace.DIAMOND),
    "odd chuck": lambda shop: _chuck(shop, size=103.5),
    "large chuck": lambda shop: _chuck(shop, size=250.0),
    "black bar behind": lambda shop: replace(
        shop, work=replace(shop.work, surface=BarSurface.BLACK, bar_behind=250.0)
    ),
    "ground bar": lambda shop: replace(shop, work=replace(shop.work, surface=BarSurface.GROUND)),
    "worn blades": lambda shop: replace(
        shop, blades=tuple(replace(blade, worn=True) for blade in shop.blades)
    ),
    "measured": _measured,
    **{
        kind.value: lambda shop, kind=kind: _motor(shop, replace(shop.lathe.motor, kind=kind))
        for kind in MotorKind
        if kind is not MotorKind.MEASURED
    },
}


@pytest.mark.parametrize("variant", VARIANTS)
@pytest.mark.parametrize("keys", [("mild-steel",), ("mild-steel", "ptfe"), ("ptfe",)])
def test_what_a_card_assumes_is_german_whatever_the_lathe(
    example: Shop, variant: str, keys: tuple[str, ...]
) -> None:
    shop = VARIANTS[variant](example)
    materials = [load_material(key) for key in keys]

    def lines() -> list[str]:
        assumed = assumption_lines(shop, materials=materials, blades=shop.blades)
        return [*assumed, *(caution.text for caution in card_cautions(shop, materials))]

    english = lines()
    with speaking("de"):
        said = lines()
    assert len(said) == len(english)
    for line in said:
        assert left_over(line, shop) == [], line
    numbers = [sorted(re.findall(r"\d+", line)) for line in english]
    # "1/min" is a unit.
    without = [line.replace("1/min", "") for line in said]
    assert [sorted(re.findall(r"\d+", line)) for line in without] == numbers


def test_a_german_caution_is_no_longer_than_an_english_one_may_be() -> None:
    lengths = {}
    with speaking("de"):
        for caution in load_cautions():
            lengths[caution.key] = len(tr(caution.text))
    assert {key: n for key, n in lengths.items() if n > LONGEST_TEXT} == {}


def test_signal_words_and_deference_are_german_and_a_notice_keeps_off_the_triangle(
    example: Shop,
) -> None:
    materials = [load_material(key) for key in ("grey-iron-250", "mild-steel")]
    whipping = VARIANTS["black bar behind"](example)
    with speaking("de"):
        cautions = card_cautions(whipping, materials)
        assert "gehen dieser Karte vor" in deference()
    # Common practice in German manuals, no source.
    assert [*dict.fromkeys(caution.signal for caution in cautions)] == [
        "GEFAHR",
        "WARNUNG",
        "VORSICHT",
        "HINWEIS",
    ]
    assert {caution.signal for caution in cautions if not caution.is_injury} == {"HINWEIS"}
