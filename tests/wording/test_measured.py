"""What was measured is told on cards with its date, and changes the check code."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen import inquiry, pipeline
from chartgen.layout.layout_file import layout_names
from chartgen.limits.cut import recommended
from chartgen.model.measured import Assumption, Measured
from chartgen.model.motor import PowerIs
from chartgen.model.shop import Shop
from chartgen.reference.tables import load_material
from chartgen.wording.allowances import allowance_lines
from chartgen.wording.assumptions import assumption_lines
from chartgen.wording.check_code import check_code
from chartgen.wording.measured import measured_lines, name_of, write_amount

DATE = "2026-11-25"
VALUES = {
    Assumption.FORCE_RESERVE: 1.37,
    Assumption.DRIVE_EFFICIENCY: 0.91,
    Assumption.MOTOR_EFFICIENCY: 0.68,
    Assumption.CURRENT_LIMIT: 1.62,
    Assumption.KEY_TORQUE: 38.5,
    Assumption.TOOL_STIFFNESS: 14300.0,
}
SAID = {
    Assumption.FORCE_RESERVE: "times 1.37 for a squeezed chip or part-worn edge, measured " + DATE,
    Assumption.DRIVE_EFFICIENCY: "91 % of it at the spindle, measured " + DATE,
    Assumption.MOTOR_EFFICIENCY: "(750 W input, measured " + DATE + ")",
    Assumption.CURRENT_LIMIT: "current limit over rated torque 162 % measured " + DATE,
    Assumption.KEY_TORQUE: "from 38.5 N·m on the key, measured " + DATE,
    Assumption.TOOL_STIFFNESS: "tool post 14300 N/mm measured " + DATE,
}


@pytest.fixture
def stated(example: Shop) -> Shop:
    """Return the example with all of it in its file, on the owner's word alone."""
    lathe = example.lathe
    motor = replace(lathe.motor, power_is=PowerIs.INPUT, efficiency=0.68, current_limit=1.62)
    return replace(
        example,
        lathe=replace(
            lathe,
            motor=motor,
            drive=replace(lathe.drive, efficiency=0.91),
            chuck=replace(lathe.chuck, key_torque=38.5),
            tool_stiffness=14300.0,
        ),
        allowances={"confined_chip": 1.37},
    )


def measured(shop: Shop, *assumptions: Assumption) -> Shop:
    records = tuple(
        Measured(
            assumption=a,
            value=VALUES[a],
            plus_minus=VALUES[a] / 10.0,
            level=0.95,
            readings=4,
            date=DATE,
        )
        for a in assumptions
    )
    return replace(shop, measured=records)


def lines(shop: Shop, *materials: str) -> str:
    found = [load_material(key) for key in materials or ("mild-steel",)]
    return "\n".join(assumption_lines(shop, materials=found, blades=shop.blades))


@pytest.mark.parametrize("assumption", VALUES)
def test_a_card_says_measured_and_when_of_just_what_was(
    stated: Shop, assumption: Assumption
) -> None:
    plain, told = lines(stated), lines(measured(stated, assumption))
    assert DATE not in plain
    assert SAID[assumption] in told
    assert told.count(DATE) == 1


def test_a_breakdown_that_was_measured_is_told_of_a_line_motor(
    shop_of: Callable[..., Shop],
) -> None:
    shop = shop_of("550 W belts")
    motor = replace(shop.lathe.motor, breakdown=2.4)
    record = Measured(
        assumption=Assumption.BREAKDOWN,
        value=2.4,
        plus_minus=0.3,
        level=0.95,
        readings=3,
        date=DATE,
    )
    shop = replace(shop, lathe=replace(shop.lathe, motor=motor), measured=(record,))
    assert "breakdown torque over rated torque 240 % measured " + DATE in lines(shop)


def test_a_card_of_several_materials_tells_of_the_reserve_too(stated: Shop) -> None:
    told = lines(measured(stated, Assumption.FORCE_RESERVE), "mild-steel", "c45")
    assert "Force reserve 1.37 measured " + DATE in told
    assert DATE not in lines(stated, "mild-steel", "c45")


def test_check_and_explain_list_each_measured_value_with_its_doubt(stated: Shop) -> None:
    shop = measured(stated, *VALUES)
    line = "Measured: pull on the chuck key 38.5 N·m ± 3.85 N·m (95 % sure), from 4 readings up to"
    assert any(one.startswith(line) for one in inquiry.understood(shop))
    _, cut = recommended(
        shop, material=load_material("mild-steel"), blade=shop.blades[0], diameter=20.0
    )
    listed = allowance_lines(shop, cut)
    assert listed[0].startswith("confined_chip = 1.37 (measured 2026-11-25): ")
    assert listed[-len(VALUES) :] == list(measured_lines(shop))
    assert not [one for one in allowance_lines(stated, cut) if "easured:" in one]


def test_the_check_code_changes_with_what_was_measured_and_how_well(stated: Shop) -> None:
    def code(shop: Shop) -> str:
        steel = [load_material("mild-steel")]
        return check_code(shop, materials=steel, layout="lathe-chart-a5", subject="mild-steel")

    one = measured(stated, Assumption.KEY_TORQUE)
    later = replace(one, measured=(replace(one.measured[0], date="2027-01-01"),))
    better = replace(one, measured=(replace(one.measured[0], plus_minus=1.0),))
    assert len({code(shop) for shop in (stated, one, later, better)}) == 4
    assert code(replace(stated, readings=("a reading",))) == code(stated)  # type: ignore[arg-type]


@pytest.mark.parametrize("name", layout_names())
def test_every_layout_holds_a_lathe_with_everything_measured(stated: Shop, name: str) -> None:
    shop = measured(stated, *VALUES)
    shop = replace(shop, request=replace(shop.request, layouts=(name,)))
    cards = pipeline.lay_out(pipeline.printed_cards(shop))
    assert cards
    words = [
        item.text
        for card in cards
        for page in card.document.pages
        for item in page.items
        if hasattr(item, "text")
    ]
    # A nomogram is arithmetic only: it assumes nothing of the lathe.
    assert ("measured" in " ".join(words)) is ("nomogram" not in name)


@pytest.mark.parametrize("assumption", Assumption)
def test_every_assumption_has_a_name_and_its_amount_a_unit(assumption: Assumption) -> None:
    assert len(name_of(assumption)) > 5
    assert write_amount(1.5, assumption) in {"1.50", "150 %", "1.5 N·m", "1.5 N/mm"}
