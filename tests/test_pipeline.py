"""The whole run: describe -> limit -> tabulate -> word -> lay out -> render."""

from collections.abc import Callable
from dataclasses import replace
from math import ceil

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen.errors import DescriptionError, DoesNotFitError, RequestError
from chartgen.layout.capacity import in_groups
from chartgen.limits.allowances import allowances_for
from chartgen.limits.spindle import Duration, make_spindle
from chartgen.model.shop import LengthUnits, Shop
from chartgen.pipeline import (
    EXAMPLE_NAME,
    describe,
    lay_out,
    printed_cards,
    render,
    table_card,
    with_materials,
)
from chartgen.reference.tables import material_keys
from chartgen.wording.printed import PrintedChart

ShopText = Callable[[str], str]
ShopOf = Callable[..., Shop]


def test_without_a_file_the_built_in_example_is_described() -> None:
    assert describe(None, EXAMPLE_NAME).name == "Invented training shop"


def test_a_file_is_described_with_its_own_allowances(shop_text: ShopText) -> None:
    text = shop_text("550 W belts") + "\n[allowances]\nconfined_chip = 1.2\n"
    assert describe(text.encode(), "mine.toml").allowances == {"confined_chip": 1.2}


def test_a_faulty_file_is_refused_under_its_own_name(shop_text: ShopText) -> None:
    text = shop_text("550 W belts").replace('kind = "single-phase"', 'kind = "steam"')
    with pytest.raises(DescriptionError, match=r"^mine\.toml:\d+: ") as caught:
        describe(text.encode(), "mine.toml")
    assert "steam" in str(caught.value)


# Up there the motor runs at its no-load speed, whatever that is over base speed.
@pytest.mark.parametrize("override", ["", "\n[allowances]\ndc_no_load = 1.5\n"])
def test_a_brushed_motor_gives_nothing_at_the_top_of_its_range(
    shop_text: ShopText, override: str
) -> None:
    shop = describe((shop_text("250 W brushed DC") + override).encode(), "mine.toml")
    spindle = make_spindle(shop.lathe, allowances_for(shop))
    (position,) = shop.lathe.drive.positions
    torque = spindle.torque(position, np.array([position.fastest]), Duration.STALL)
    assert torque[0] == pytest.approx(0.0, abs=1e-9)


def test_other_materials_may_be_asked_for_each_once(example: Shop) -> None:
    shop = with_materials(example, ["nylon", "c45", "nylon"])
    assert shop.request.materials == ("nylon", "c45")


def test_no_materials_asked_for_leaves_those_of_the_file(example: Shop) -> None:
    assert with_materials(example, []) == example


def test_an_unknown_material_is_refused_with_the_nearest(example: Shop) -> None:
    with pytest.raises(RequestError) as caught:
        with_materials(example, ["c45", "nilon"])
    assert str(caught.value) == "material 'nilon' is unknown. Did you mean 'nylon'?"


def test_a_shop_prints_charts_by_material_and_cards_by_blade_layout_after_layout(
    example: Shop,
) -> None:
    stems = [card.file_stem for card in printed_cards(example)]
    charts = [f"lathe-chart-a5-{key}" for key in example.request.materials]
    overviews = ["overview-a5-2-0-carbide", "overview-a5-3-0-carbide", "overview-a5-1-6-hss"]
    uses = ["blade-card-a6-2-0-carbide", "blade-card-a6-3-0-carbide", "blade-card-a6-1-6-hss"]
    ways_in = [f"centre-card-a6-{key}" for key in example.request.materials]
    assert stems == charts + overviews + uses + ways_in


def test_a_table_is_the_card_that_would_be_printed(example: Shop) -> None:
    table = table_card(example, "c45")
    (card,) = (c for c in printed_cards(example) if c.file_stem == "lathe-chart-a5-c45")
    assert table == card


def test_a_shop_that_prints_no_lathe_chart_still_has_a_table(example: Shop) -> None:
    shop = replace(example, request=replace(example.request, layouts=("overview-a5",)))
    assert table_card(shop, "nylon").file_stem == "lathe-chart-a5-nylon"


def test_the_table_of_an_unknown_material_is_refused(example: Shop) -> None:
    with pytest.raises(RequestError, match="is unknown"):
        table_card(example, "unobtainium")


def test_cards_are_laid_out_under_the_name_of_their_file(example: Shop) -> None:
    finished = lay_out(printed_cards(with_materials(example, ["c45"])))
    assert finished[0].file_name == "lathe-chart-a5-c45.pdf"
    assert all(card.file_name.endswith(".pdf") for card in finished)


def test_the_same_shop_gives_the_same_bytes(example: Shop) -> None:
    shop = with_materials(example, ["c45"])
    first, second = (render(lay_out(printed_cards(shop))[0]) for _ in range(2))
    assert first.startswith(b"%PDF-")
    assert first == second


def test_more_blades_than_a_card_holds_run_on_to_a_second_one(example: Shop) -> None:
    more = tuple(replace(example.blades[0], name=f"blade {n}") for n in range(5))
    shop = replace(
        with_materials(example, ["c45"]),
        blades=more,
    )
    shop = replace(shop, request=replace(shop.request, layouts=("lathe-chart-a5",)))
    first, second = printed_cards(shop)
    assert (first.file_stem, second.file_stem) == ("lathe-chart-a5-c45", "lathe-chart-a5-c45-2")
    charts = [card.chart for card in (first, second)]
    names = [
        [c.letter for c in chart.columns] for chart in charts if isinstance(chart, PrintedChart)
    ]
    assert [letter for card in names for letter in card] == ["A", "B", "C", "D", "E"]
    assert sorted(len(card) for card in names) == [2, 3]
    # Speeds and feeds in inches are wider.
    inches = replace(shop, request=replace(shop.request, units=LengthUnits.INCH))
    columns = [c.chart.columns for c in printed_cards(inches) if isinstance(c.chart, PrintedChart)]
    assert sorted(len(card) for card in columns) == [1, 2, 2]


def test_more_materials_than_a_card_holds_run_on_to_a_second_one(example: Shop) -> None:
    keys = material_keys()[:12]
    shop = replace(with_materials(example, keys), blades=example.blades[:1])
    for layout in ("overview-a5", "blade-card-a6"):
        one = replace(shop, request=replace(shop.request, layouts=(layout,)))
        stem = f"{layout}-2-0-carbide"
        assert [card.file_stem for card in printed_cards(one)] == [stem, f"{stem}-2"]
    # A card of its own for each material needs no second.
    charts = replace(shop, request=replace(shop.request, layouts=("lathe-chart-a5",)))
    assert [card.file_stem for card in printed_cards(charts)] == [
        f"lathe-chart-a5-{key}" for key in keys
    ]


@given(items=st.lists(st.integers(), max_size=60), most=st.integers(1, 9))
def test_groups_keep_every_item_in_order_and_are_few_full_and_even(
    items: list[int], most: int
) -> None:
    groups = in_groups(items, most)
    assert [item for group in groups for item in group] == items
    sizes = [len(group) for group in groups]
    assert max(sizes) <= most
    assert max(sizes) - min(sizes) <= 1
    assert len(groups) == max(1, ceil(len(items) / most))


def test_every_different_reason_why_cards_do_not_fit_is_told_once(example: Shop) -> None:
    request = replace(
        example.request,
        diameters=tuple(float(size) for size in range(3, 63)),
        materials=("mild-steel", "c45"),
        layouts=("lathe-chart-a5", "overview-a5", "centre-card-a6"),
    )
    cards = printed_cards(replace(example, request=request))
    reasons = []
    for card in cards:
        try:
            lay_out([card])
        except DoesNotFitError as error:
            reasons.append(str(error))
    assert 1 < len(set(reasons)) <= len(reasons) < len(cards)
    with pytest.raises(DoesNotFitError) as caught:
        lay_out([*cards, *cards])
    assert str(caught.value).splitlines() == list(dict.fromkeys(reasons))
