"""Which printed cards are stale: the list for each way in which two shops may differ."""

from dataclasses import replace

from chartgen import pipeline
from chartgen.charts.change import cell_changes
from chartgen.model.lathe import Chuck
from chartgen.model.shop import LengthUnits, Shop
from chartgen.wording.card_states import card_states
from chartgen.wording.printed_change import CardLine, CardState

INCHES = LengthUnits.INCH


def states(before: Shop, after: Shop) -> tuple[CardLine, ...]:
    cards = [pipeline.printed_cards(shop) for shop in (before, after)]
    return card_states(cards[0], cards[1], cell_changes(before, after))


def by_state(before: Shop, after: Shop) -> dict[CardState, list[str]]:
    found: dict[CardState, list[str]] = {}
    for line in states(before, after):
        found.setdefault(line.state, []).append(line.file_stem)
    return found


def remarks(before: Shop, after: Shop) -> dict[str, str]:
    return {line.file_stem: line.remark for line in states(before, after)}


def printing(shop: Shop, **request: object) -> Shop:
    return replace(shop, request=replace(shop.request, **request))  # type: ignore[arg-type]


def stems(shop: Shop) -> list[str]:
    return [card.file_stem for card in pipeline.printed_cards(shop)]


def test_every_card_of_the_same_file_is_current(example: Shop) -> None:
    assert by_state(example, example) == {CardState.CURRENT: stems(example)}


def test_a_new_revision_alone_leaves_all_numbers_and_makes_no_card_current(example: Shop) -> None:
    after = replace(example, revision="B")
    assert by_state(example, after) == {CardState.HOLDS: stems(example)}
    assert set(remarks(example, after).values()) == {""}


def test_a_new_motor_makes_cards_stale_by_the_number_of_their_moved_cells(
    motor_swap: tuple[Shop, Shop],
) -> None:
    before, after = motor_swap
    changes = cell_changes(before, after)
    told = remarks(before, after)
    for material in changes.materials:
        moved = sum(bool(c.moves) for c in changes.cells if c.material is material)
        assert moved
        assert told[f"lathe-chart-a5-{material.key}"] == f"{moved} of 16 cells"
    stale = by_state(before, after)[CardState.STALE]
    assert {stem for stem in stale if stem.startswith("lathe-chart")} == {
        f"lathe-chart-a5-{material.key}" for material in changes.materials
    }


def test_an_overview_counts_the_cells_of_its_blade(motor_swap: tuple[Shop, Shop]) -> None:
    before, after = (printing(shop, layouts=("overview-a5",)) for shop in motor_swap)
    changes = cell_changes(before, after)
    for name, stem in (("1.5 HSS", "overview-a5-1-5-hss"), ("2 carbide", "overview-a5-2-carbide")):
        moved = sum(bool(c.moves) for c in changes.cells if c.blade.name == name)
        assert remarks(before, after)[stem] == f"{moved} of 24 cells"


def test_a_difference_within_rounding_holds_though_the_code_differs(example: Shop) -> None:
    chuck = replace(example.lathe.chuck, marked_speed=4001.0)
    assert isinstance(chuck, Chuck)
    after = replace(example, lathe=replace(example.lathe, chuck=chuck))
    assert by_state(example, after) == {CardState.HOLDS: stems(example)}


def test_a_blade_more_makes_its_own_cards_new_and_charts_with_its_column_stale(
    example: Shop,
) -> None:
    fewer = replace(example, blades=example.blades[:2])
    found, told = by_state(fewer, example), remarks(fewer, example)
    assert found[CardState.NEW] == ["overview-a5-1-6-hss", "blade-card-a6-1-6-hss"]
    charts = [stem for stem in stems(fewer) if stem.startswith("lathe-chart")]
    assert set(charts) <= set(found[CardState.STALE])
    assert {told[stem] for stem in charts} == {"other columns"}
    turned = by_state(example, fewer)
    assert turned[CardState.GONE] == found[CardState.NEW]
    assert set(turned[CardState.STALE]) == set(found[CardState.STALE])


def test_a_renamed_blade_is_one_gone_and_one_new(example: Shop) -> None:
    renamed = replace(
        example, blades=(*example.blades[:2], replace(example.blades[2], name="thin HSS"))
    )
    found = by_state(example, renamed)
    assert found[CardState.GONE] == ["overview-a5-1-6-hss", "blade-card-a6-1-6-hss"]
    assert found[CardState.NEW] == ["overview-a5-thin-hss", "blade-card-a6-thin-hss"]
    assert {stem for stem in found[CardState.STALE] if "lathe-chart" in stem}


def test_blades_in_another_order_have_other_letters_on_every_card(example: Shop) -> None:
    turned = replace(example, blades=example.blades[::-1])
    told = remarks(example, turned)
    charts = [stem for stem in told if stem.startswith(("lathe-chart", "overview", "blade-card"))]
    # The blade in the middle keeps its letter, but not the ways out to the others.
    ends = [stem for stem in charts if "3-0-carbide" not in stem]
    assert {told[stem] for stem in ends} == {"other columns"}


def test_a_material_more_is_new_and_leaves_the_lathe_charts_current(example: Shop) -> None:
    fewer = printing(example, materials=example.request.materials[:3])
    more = printing(example, materials=example.request.materials[:4])
    found = by_state(fewer, more)
    assert found[CardState.NEW] == [
        "lathe-chart-a5-grey-iron-250",
        "centre-card-a6-grey-iron-250",
    ]
    kept = [stem for stem in stems(fewer) if stem.startswith(("lathe-chart", "centre-card"))]
    assert found[CardState.CURRENT] == kept
    assert remarks(fewer, more)["overview-a5-2-0-carbide"] == "other columns; other cautions"


def test_another_layout_is_new_and_the_one_left_out_is_gone(example: Shop) -> None:
    charts = printing(example, layouts=("lathe-chart-a5",))
    blades = printing(example, layouts=("blade-card-a6",))
    found = by_state(charts, blades)
    assert set(found) == {CardState.NEW, CardState.GONE}
    assert found[CardState.NEW] == stems(blades)
    assert found[CardState.GONE] == stems(charts)


def test_other_diameters_and_other_units_are_told_as_such(example: Shop) -> None:
    charts = printing(example, layouts=("lathe-chart-a5",))
    fewer = printing(charts, diameters=charts.request.diameters[:5])
    assert set(remarks(charts, fewer).values()) == {"other diameters"}
    inches = replace(charts, request=replace(charts.request, units=INCHES))
    assert set(remarks(charts, inches).values()) <= {"other units", ""}
    assert "other units" in remarks(charts, inches).values()


def test_a_card_whose_cautions_changed_is_stale_though_its_numbers_hold(example: Shop) -> None:
    charts = printing(example, layouts=("lathe-chart-a5",))
    behind = replace(charts, work=replace(charts.work, bar_behind=1.0))
    found = states(charts, behind)
    assert {line.state for line in found} == {CardState.STALE}
    assert all(line.remark.endswith("other cautions") for line in found)


def test_the_most_urgent_state_stands_first(motor_swap: tuple[Shop, Shop]) -> None:
    order = list(CardState)
    places = [order.index(line.state) for line in states(*motor_swap)]
    assert places == sorted(places)
    assert len(set(places)) > 1


def test_a_diameter_that_differs_by_less_than_is_printed_is_printed_again(example: Shop) -> None:
    before = printing(example, layouts=("lathe-chart-a5",), diameters=(10.0, 25.121))
    after = printing(before, diameters=(10.0, 25.122))
    assert set(remarks(before, after).values()) == {"3 of 6 cells"}
