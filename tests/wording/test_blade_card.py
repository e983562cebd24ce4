"""The blade card as words: what a person reads of a blade before taking a bar."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen.charts.blade_use import Stretch, blade_use
from chartgen.limits.reasons import Reason
from chartgen.model.material import Material
from chartgen.model.shop import LengthUnits, Shop
from chartgen.wording.beyond import BEYOND
from chartgen.wording.blade_card import blade_card, print_blade_use

ShopOf = Callable[..., Shop]


def test_a_card_is_about_one_blade_and_has_a_row_for_each_material(
    example: Shop, mild_steel: Material, stainless: Material
) -> None:
    card = blade_card(example, [mild_steel, stainless], example.blades[1], "blade-card-a6")
    assert card.chart.title == "Blade B  3.0 carbide"
    assert card.file_stem == "blade-card-a6-3-0-carbide"
    assert [row[0] for row in card.chart.rows] == ["Mild steel", "Stainless steel 304"]
    assert all(len(row) == len(card.chart.headings) for row in card.chart.rows)
    assert card.cautions
    assert card.assumptions


def test_a_row_says_where_how_fast_and_how_firmly(example: Shop, aluminium: Material) -> None:
    use = blade_use(example, [aluminium], example.blades[0])
    row = replace(
        use.rows[0],
        good=Stretch(5.0, 61.0),
        usable=(Stretch(5.0, 62.0),),
        beyond=Reason.REACH,
        start_speed=200.0,
        start_feed=0.05,
        least_feed=0.0266,
    )
    table = print_blade_use(replace(use, rows=(row,)))
    assert table.rows == (("Aluminium 6082", "5–61", "5–62", "reach", "200", "0.050", "0.027"),)


@pytest.mark.parametrize(
    ("good", "usable", "words"),
    [
        (None, (), ("–", "–")),
        (None, ((20.0, 20.0),), ("–", "20")),
        ((50.0, 54.0), ((20.0, 23.0), (50.0, 57.0)), ("50–54", "20–23, 50–57")),
        # More than two stretches: the two longest, in their order.
        (None, ((3.0, 9.0), (11.0, 11.0), (20.0, 60.0)), ("–", "3–9, 20–60")),
    ],
)
def test_gaps_are_shown_and_nothing_is_a_dash(
    example: Shop,
    mild_steel: Material,
    good: tuple[float, float] | None,
    usable: tuple[tuple[float, float], ...],
    words: tuple[str, str],
) -> None:
    use = blade_use(example, [mild_steel], example.blades[0])
    row = replace(
        use.rows[0],
        good=Stretch(*good) if good else None,
        usable=tuple(Stretch(*ends) for ends in usable),
    )
    (printed,) = print_blade_use(replace(use, rows=(row,))).rows
    assert printed[1:3] == words


def test_what_reaches_to_the_chuck_is_ended_by_its_size(
    example: Shop, mild_steel: Material
) -> None:
    use = blade_use(example, [mild_steel], example.blades[0])
    (printed,) = print_blade_use(replace(use, rows=(replace(use.rows[0], beyond=None),))).rows
    assert printed[3] == "chuck size"


def test_every_reason_has_a_few_words_of_its_own() -> None:
    assert set(BEYOND) == set(Reason)
    assert all(1 <= len(words.split()) <= 3 for words in BEYOND.values())


def test_slow_speeds_are_written_without_a_dangling_nought(
    example: Shop, mild_steel: Material
) -> None:
    use = blade_use(example, [mild_steel], example.blades[0])
    rows = tuple(replace(use.rows[0], start_speed=speed) for speed in (12.0, 7.5, 100.0))
    assert [row[4] for row in print_blade_use(replace(use, rows=rows)).rows] == ["12", "7.5", "100"]


# 1000 / pi = 318; 12 / pi = 3.82.
def test_the_notes_send_to_the_lathe_chart_for_the_speed_and_say_what_was_looked_at(
    example: Shop, mild_steel: Material
) -> None:
    notes = " ".join(
        blade_card(example, [mild_steel], example.blades[0], "blade-card-a6").chart.notes
    )
    assert "set the lathe by the lathe chart, here at most 2500 rev/min." in notes
    assert "every 1 mm from 3 to 125, the chuck's size." in notes


def test_in_inches_sizes_are_fractions_and_speeds_feet(example: Shop, aluminium: Material) -> None:
    shop = replace(example, request=replace(example.request, units=LengthUnits.INCH))
    table = blade_card(shop, [aluminium], shop.blades[0], "blade-card-a6").chart
    assert table.headings[1:3] == ("good\nØ in", "usable\nØ in")
    assert table.headings[4:] == ("start\nft/min", "start\nin/rev", "least\nin/rev")
    # Reach 62 mm of diameter: 39 sixteenths are 61.9 mm.
    assert table.rows[0][2].endswith("–2 7/16")
    # 200 m/min.
    assert table.rows[0][4] == "656"
    notes = " ".join(table.notes)
    assert "every 1/16 in from 1/8 to 4 7/8" in notes
