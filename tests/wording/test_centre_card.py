"""The centre card as words: one cut from the outside to the centre."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen.charts.way_in import CentreChart, centre_chart
from chartgen.limits.run import windows
from chartgen.limits.way_in import Change
from chartgen.model.material import Material
from chartgen.model.shop import LengthUnits, Shop
from chartgen.reference.tables import load_material
from chartgen.wording.centre_card import centre_card, print_centre_chart
from chartgen.wording.printed import PrintedTable

ShopOf = Callable[..., Shop]
SIZES = (6.0, 25.0, 60.0)


def chart_of(shop: Shop, material: Material, sizes: tuple[float, ...] = SIZES) -> CentreChart:
    return centre_chart(shop, windows(shop, materials=[material], diameters=sizes), material)


def row(table: PrintedTable, label: str) -> tuple[str, ...]:
    (found,) = (cells for first, *cells in table.rows if first == label)
    return tuple(found)


def labels(table: PrintedTable) -> list[str]:
    return [cells[0] for cells in table.rows]


def test_a_card_is_about_one_material_and_names_its_blade(
    example: Shop, mild_steel: Material
) -> None:
    found = windows(example, materials=[mild_steel], diameters=SIZES)
    card = centre_card(example, found, mild_steel, "centre-card-a6")
    assert card.file_stem == "centre-card-a6-mild-steel"
    assert card.chart.title == "Mild steel to the centre"
    assert card.chart.subtitle == "blade A 2.0 carbide"
    assert card.chart.headings == ("solid bar", "Ø 6 mm", "Ø 25 mm", "Ø 60 mm")
    assert card.cautions


def test_rows_follow_the_cut_from_the_outside_in(example: Shop, mild_steel: Material) -> None:
    table = print_centre_chart(chart_of(example, mild_steel))
    assert labels(table) == [
        "start, rev/min",
        "start, mm/rev",
        "change up",
        "rougher inside, one speed",
        "rougher inside, changed up",
        "feed inside Ø 2",
        "core may let go from",
        "time, one speed",
        "time, changed up",
    ]
    assert all(len(cells) == 4 for cells in table.rows)
    assert all(cell for cells in table.rows for cell in cells)


def test_changes_are_written_place_and_speed_and_numbered_where_several(
    example: Shop, mild_steel: Material
) -> None:
    chart = chart_of(example, mild_steel)
    small, middle, large = chart.ways
    ways = (
        replace(small, changes=()),
        replace(middle, changes=(Change(15.5, 1770.0),)),
        replace(large, changes=(Change(36.0, 720.0), Change(21.0, 1000.0))),
    )
    table = print_centre_chart(replace(chart, ways=ways))
    assert row(table, "change up, 1st") == ("–", "Ø 15.5 → 1770", "Ø 36 → 720")
    assert row(table, "change up, 2nd") == ("–", "–", "Ø 21 → 1000")


# 15.04 mm is rough from 15.5 on, seen to half a millimetre; never inside of where it begins.
@pytest.mark.parametrize(
    ("below", "words"), [(15.04, "Ø 15.5"), (15.5, "Ø 15.5"), (25.0, "all of it")]
)
def test_where_it_gets_rougher_is_rounded_outwards(
    example: Shop, mild_steel: Material, below: float, words: str
) -> None:
    chart = chart_of(example, mild_steel, (25.0,))
    (way,) = chart.ways
    changed = replace(way, rough_below=below, changes=())
    table = print_centre_chart(replace(chart, ways=(changed,)))
    assert row(table, "rougher inside") == (words,)


@pytest.mark.parametrize(
    ("minutes", "words"),
    [(0.004, "1 s"), (0.5, "30 s"), (1.99, "119 s"), (2.0, "2.0 min"), (3.26, "3.3 min")],
)
def test_times_are_seconds_up_to_two_minutes(
    example: Shop, mild_steel: Material, minutes: float, words: str
) -> None:
    chart = chart_of(example, mild_steel, (25.0,))
    way = replace(chart.ways[0], time=minutes, changes=())
    assert row(print_centre_chart(replace(chart, ways=(way,))), "time") == (words,)


def test_the_pip_is_rounded_outwards_to_a_tenth(example: Shop, mild_steel: Material) -> None:
    chart = chart_of(example, mild_steel, (25.0,))
    way = replace(chart.ways[0], pip=1.62)
    table = print_centre_chart(replace(chart, ways=(way,)))
    assert row(table, "core may let go from") == ("Ø 1.7",)


def test_a_material_without_a_soft_floor_says_so_instead_of_empty_cells(example: Shop) -> None:
    table = print_centre_chart(chart_of(example, load_material("grey-iron-250")))
    assert not [label for label in labels(table) if "rougher" in label]
    assert (
        "No least surface speed is known for this pair, so none is given inside which it cuts "
        "rougher." in table.notes
    )


def test_a_material_without_force_data_says_so_and_has_no_pip(example: Shop) -> None:
    table = print_centre_chart(chart_of(example, load_material("nylon")))
    assert "core may let go from" not in labels(table)
    assert "No published force data: where the core lets go is not known." in table.notes


def test_belts_are_said_not_to_be_changed(shop_of: ShopOf, mild_steel: Material) -> None:
    table = print_centre_chart(chart_of(shop_of("550 W belts"), mild_steel, (12.0, 25.0)))
    assert not [label for label in labels(table) if "chang" in label]
    assert "One speed all the way: belts and gears are not changed in a cut." in table.notes
    assert row(table, "time")


def test_the_rule_near_the_centre_is_named_with_the_sources_that_differ(
    example: Shop, mild_steel: Material
) -> None:
    notes = " ".join(print_centre_chart(chart_of(example, mild_steel)).notes)
    assert "Near the centre: half feed, but not under the least feed of this edge" in notes
    assert (
        "Sources differ (feed less 30 % [TG-5], half feed [TG-6], a third of the feed [TG-6]); "
        "where to begin is practice." in notes
    )


# asin(0.1 / 2) = 2.9 deg at 4 mm, asin(0.1 / 0.5) = 11.5 deg at 1 mm.
def test_the_height_of_the_edge_is_held_and_its_price_named(
    example: Shop, mild_steel: Material
) -> None:
    notes = print_centre_chart(chart_of(example, mild_steel)).notes
    assert (
        "Edge within 0.1 mm of centre height. So much too high takes 3° at Ø 4 and 12° at Ø 1 off "
        "the clearance; too low takes it off the rake and leaves a pip of Ø 0.2." in notes
    )
    assert any(note.startswith("Bored work has no centre") for note in notes)


def test_without_a_window_the_card_says_saw(shop_of: ShopOf, stainless: Material) -> None:
    table = print_centre_chart(chart_of(shop_of("750 W inverter", {"750 W": "20 W"}), stainless))
    assert table.rows == (("No window with any blade of this shop: saw it off and face the end.",),)
    assert len(table.headings) == 1


def test_in_inches_places_are_fractions(example: Shop, mild_steel: Material) -> None:
    shop = replace(example, request=replace(example.request, units=LengthUnits.INCH))
    table = print_centre_chart(chart_of(shop, mild_steel, (25.4,)))
    assert table.headings[1] == "Ø 1 in"
    (change,) = row(table, "change up, 1st")
    place = change.partition(" → ")[0].removeprefix("Ø ")
    assert place.rpartition("/")[2] in {"2", "4", "8", "16", "32"}
    # 2 mm are 5.04 sixty-fourths.
    assert "feed inside Ø 5/64" in labels(table)
