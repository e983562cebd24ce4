"""A card as words: what stands on it, and under which file name."""

import re
from dataclasses import replace

import pytest

from chartgen.limits.run import windows
from chartgen.model.material import Material
from chartgen.model.shop import Feeding, LengthUnits, Shop
from chartgen.pipeline import printed_cards
from chartgen.reference.tables import load_material
from chartgen.wording.blade_letters import blade_letter
from chartgen.wording.card import AnyCard, ChartCard, file_name_part, lathe_card, overview_card
from chartgen.wording.cautions import card_cautions

SIZES = (12.0, 25.0, 50.0, 100.0)


def chart_card(shop: Shop, material: Material) -> ChartCard:
    found = windows(shop, materials=[material], diameters=SIZES)
    return lathe_card(shop, found, material, "lathe-chart-a5")


def test_a_lathe_card_carries_title_columns_and_rows(example: Shop, mild_steel: Material) -> None:
    chart = chart_card(example, mild_steel).chart
    assert chart.title == "Mild steel"
    assert chart.subtitle.endswith("ISO P")
    assert chart.stub == ("12", "25", "50", "100")
    assert [column.heading for column in chart.columns] == [
        "A  2.0 carbide",
        "B  3.0 carbide",
        "C  1.6 HSS",
    ]
    assert (chart.corner, chart.speed_heading, chart.feed_heading, chart.pace_heading) == (
        "Ø mm",
        "rev/min",
        "mm/rev",
        "s/turn",
    )


def test_a_cell_is_written_once_for_every_renderer(example: Shop, mild_steel: Material) -> None:
    cell = chart_card(example, mild_steel).chart.rows[1][0]
    assert (cell.speed, cell.position, cell.feed, cell.pace) == ("1270", "H", "0.050", "1.9")
    assert (cell.floor, cell.floor_reason) == ("0.027", "edge rubs instead of cutting")
    assert cell.verdict == "inside"
    assert cell.way_out == ""


def test_a_cell_without_window_has_no_numbers_but_a_way_out(
    example: Shop, mild_steel: Material
) -> None:
    rows = chart_card(example, mild_steel).chart.rows
    other, none = rows[2][2], rows[3][2]
    assert (other.speed, other.position, other.feed, other.pace) == ("", "", "", "")
    assert re.fullmatch(r"use [AB]", other.way_out)
    assert none.way_out == "saw"
    assert none.verdict == "no window"


def test_an_overview_has_the_materials_for_columns_without_the_one_letter_they_share(
    example: Shop, mild_steel: Material, stainless: Material
) -> None:
    found = windows(example, materials=[mild_steel, stainless], diameters=SIZES)
    card = overview_card(example, found, example.blades[1], "overview-a5")
    assert card.chart.title == "Blade 3.0 carbide"
    assert [column.heading for column in card.chart.columns] == [
        "Mild steel",
        "Stainless steel 304",
    ]
    assert {column.letter for column in card.chart.columns} == {"B"}


def test_a_lathe_card_tells_of_a_dig_in_and_an_overview_does_not(
    example: Shop, mild_steel: Material
) -> None:
    def told(card: AnyCard) -> list[str]:
        return [line for line in card.assumptions if line.startswith("Dig-in: A swallows ")]

    found = windows(example, materials=[mild_steel], diameters=SIZES)
    assert len(told(lathe_card(example, found, mild_steel, "lathe-chart-a5"))) == 1
    assert not told(overview_card(example, found, example.blades[0], "overview-a5"))


def test_a_card_in_inches_has_inch_sizes_and_feeds(example: Shop, mild_steel: Material) -> None:
    shop = replace(example, request=replace(example.request, units=LengthUnits.INCH))
    found = windows(shop, materials=[mild_steel], diameters=[12.7, 25.4])
    chart = lathe_card(shop, found, mild_steel, "lathe-chart-a5").chart
    assert chart.stub == ("1/2", "1")
    assert (chart.corner, chart.feed_heading) == ("Ø in", "in/rev")
    assert re.fullmatch(r"0\.\d{4}", chart.rows[0][0].feed)


def test_a_card_says_whose_it_is_and_defers_to_the_manual(
    example: Shop, mild_steel: Material
) -> None:
    card = chart_card(example, mild_steel)
    assert card.identity == (
        "Invented training shop · Invented bench lathe 125 · revision A · 2026-11-25"
    )
    assert "machine's manual, local codes and qualified instruction" in card.deference
    assert "machine's manual, local codes and qualified instruction" in card.short_deference
    undated = replace(example, date="")
    assert chart_card(undated, mild_steel).identity.endswith("· undated")


def test_every_card_of_a_shop_has_a_file_name_of_its_own_without_odd_signs(example: Shop) -> None:
    stems = [card.file_stem for card in printed_cards(example)]
    assert len(stems) == len(set(stems))
    assert all(re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", stem) for stem in stems)


@pytest.mark.parametrize(
    ("names"),
    [("Ножка", "Резец"), ("2 mm", "2-mm"), ("2.0", "2 0")],
)
def test_blades_with_unlike_names_get_unlike_file_names(
    example: Shop, names: tuple[str, str]
) -> None:
    blades = tuple(replace(example.blades[0], name=name) for name in names)
    stems = [card.file_stem for card in printed_cards(replace(example, blades=blades))]
    assert len(stems) == len(set(stems))


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("2.0 carbide", "2-0-carbide"),
        ("../../etc/passwd", "etc-passwd"),
        ("CON: a/b\\c", "con-a-b-c"),
        ("Stahl Größe 2", "stahl-gr-e-2"),
        ("***", "card"),
    ],
)
def test_a_file_name_holds_only_letters_digits_and_hyphens(text: str, expected: str) -> None:
    assert file_name_part(text) == expected


def test_blades_are_lettered_in_the_order_of_the_shop_file(example: Shop) -> None:
    assert [blade_letter(example, blade.name) for blade in example.blades] == ["A", "B", "C"]


def said(shop: Shop, *materials: str) -> list[str]:
    return [c.text for c in card_cautions(shop, [load_material(key) for key in materials])]


def signals(shop: Shop, *materials: str) -> set[str]:
    return set(said(shop, *materials))


def test_cautions_follow_materials_chuck_and_feeding(example: Shop) -> None:
    plain = signals(example, "grey-iron-250")
    both = signals(example, "grey-iron-250", "titanium-pure")
    alone = signals(example, "titanium-pure")
    named = {text if text in alone else f"Grey cast iron 250: {text}" for text in plain}
    assert both == named | {text if text in plain else f"Titanium, pure: {text}" for text in alone}
    assert len(both) > len(plain)
    chuck = replace(example.lathe.chuck, marked_speed=None)
    unmarked = replace(example, lathe=replace(example.lathe, chuck=chuck))
    assert plain < signals(unmarked, "grey-iron-250")
    slide = replace(example.lathe.cross_slide, power_feeds=(0.05,))
    powered = replace(
        example,
        lathe=replace(example.lathe, cross_slide=slide),
        request=replace(example.request, feeding=Feeding.POWER),
    )
    assert plain < signals(powered, "grey-iron-250")


def test_a_caution_for_one_or_two_of_several_materials_names_them(example: Shop) -> None:
    three = said(example, "mild-steel", "free-cutting-brass", "aluminium-6082")
    assert (
        "Free-cutting brass: This alloy holds lead. Wash your hands before you eat, drink or "
        "smoke. No dry sanding." in three
    )
    assert (
        "Mild steel, Aluminium 6082: Oil and coolant harm skin. Wash it off. Keep oily rags out "
        "of pockets." in three
    )
    assert "Grip the bar deep and tight. Badly held work is thrown." in three


def test_a_caution_for_all_or_for_more_than_two_of_the_materials_names_none(
    example: Shop,
) -> None:
    oil = "Oil and coolant harm skin. Wash it off. Keep oily rags out of pockets."
    for keys in (["mild-steel"], ["mild-steel", "c45"], ["mild-steel", "c45", "c60", "nylon"]):
        assert oil in said(example, *keys)
    assert f"Mild steel, C45 steel: {oil}" in said(example, "mild-steel", "c45", "nylon")


def test_oil_is_warned_of_except_where_the_material_is_cut_dry(example: Shop) -> None:
    oil = signals(example, "mild-steel") - signals(example, "grey-iron-250")
    assert any("oil" in text.lower() for text in oil)
    assert not any("oil mist" in text.lower() for text in signals(example, "nylon"))


def test_a_caution_is_printed_with_its_signal_word_in_capitals(
    example: Shop, mild_steel: Material
) -> None:
    cautions = card_cautions(example, [mild_steel])
    words = [c.signal for c in cautions]
    ranks = ["DANGER", "WARNING", "CAUTION", "NOTICE"]
    assert set(words) <= set(ranks)
    assert words == sorted(words, key=ranks.index)
