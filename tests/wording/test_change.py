"""The change card in words: the very lines for an invented motor swap, and what they rest on."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen import pipeline
from chartgen.charts.change import Move, cell_changes
from chartgen.errors import RequestError
from chartgen.model.blade import Blade
from chartgen.model.shop import LengthUnits, Shop
from chartgen.wording.beyond import BEYOND
from chartgen.wording.change_answer import change_answer
from chartgen.wording.printed_change import PrintedChange, PrintedFact

ShopOf = Callable[..., Shop]


def change_of(before: Shop, after: Shop) -> PrintedChange:
    return pipeline.changed_card(before, after).chart


def facts(change: PrintedChange, title: str) -> dict[str, tuple[str, str]]:
    """Return the facts of the group whose title begins so."""
    return {
        fact.name: (fact.before, fact.after)
        for group in change.facts
        if group.title.startswith(title)
        for fact in group.facts
    }


def only_fact(before: Shop, after: Shop, title: str = "Assumptions") -> PrintedFact:
    (group,) = [g for g in change_of(before, after).facts if g.title.startswith(title)]
    (fact,) = group.facts
    return fact


@pytest.fixture(scope="module")
def swapped(motor_swap: tuple[Shop, Shop]) -> PrintedChange:
    return change_of(*motor_swap)


def test_the_motor_is_told_under_the_owners_keys(swapped: PrintedChange) -> None:
    told = facts(swapped, "Assumptions that changed")
    assert told["lathe.motor.kind"] == ("single-phase", "inverter")
    assert told["lathe.motor.power"] == ("550 W", "750 W")
    assert told["lathe.motor.fastest"] == ("not stated", "2100 rev/min")
    assert told["lathe.motor.overload"] == ("not stated", "150 %")
    assert told['lathe.drive.position "belt 1".speeds'] == ("160 rev/min", "64 to 240 rev/min")
    assert swapped.subtitle == "revision 3, 2026-03-14 → revision 4, 2026-11-25"


def test_what_it_makes_at_the_spindle_is_told_by_position(swapped: PrintedChange) -> None:
    told = facts(swapped, "At the spindle")
    assert told["power at the shaft"] == ("550 W", "750 W")
    before, after = told["belt 3, 450 rev/min"]
    # By the handbook's 9550 P / n: 11.7 and 15.9 N·m, of which belt and bearings pass 0.91;
    # allowances 1.3 and 1.62 before, plate overload 1.5 for one cut and at the stall now.
    assert before == "10.6 / 13.8 / 17.2, 652 W"
    assert after == "14.5 / 21.8 / 21.8, 1025 W"


def test_revision_and_date_stand_apart_from_the_assumptions(swapped: PrintedChange) -> None:
    told = facts(swapped, "Name, revision, date")
    assert told == {
        "shop.revision": ("3", "4"),
        "shop.date": ("2026-03-14", "2026-11-25"),
    }


def test_the_summary_counts_what_is_listed(
    swapped: PrintedChange, motor_swap: tuple[Shop, Shop]
) -> None:
    rows = sum(len(group.rows) for group in swapped.groups)
    assert rows == len(cell_changes(*motor_swap).moved)
    assert swapped.summary[0] == (
        "Compared: 3 materials, 2 blades and 8 diameters that both files have."
    )
    assert swapped.summary[1].startswith(f"{rows} of 48 cells moved by more than the rounding; ")


def test_a_moved_cell_shows_the_strings_of_both_cards(
    swapped: PrintedChange, motor_swap: tuple[Shop, Shop]
) -> None:
    charts = [pipeline.table_card(shop, "mild-steel").chart for shop in motor_swap]
    group = next(g for g in swapped.groups if g.title == "Mild steel, B 2 carbide")
    assert group.rows
    for row in group.rows:
        index = charts[0].stub.index(row.diameter)
        for side, chart in zip((row.before, row.after), charts, strict=True):
            cell = chart.rows[index][1]
            assert (side.speed, side.position, side.feed, side.pace, side.sign, side.way_out) == (
                cell.speed,
                cell.position,
                cell.feed,
                cell.pace,
                cell.sign,
                cell.way_out,
            )


def test_a_moved_cell_names_what_it_is_limited_by_now(
    swapped: PrintedChange, motor_swap: tuple[Shop, Shop]
) -> None:
    moved = cell_changes(*motor_swap).moved
    told = [row for group in swapped.groups for row in group.rows]
    for pair, row in zip(moved, told, strict=True):
        assert row.limit == BEYOND[pair.after.telling_reason]
        assert set(row.moved.split(", ")) == {move.value for move in pair.moves}
    assert {Move.SPEED, Move.POSITION, Move.LIMIT, Move.SIGNS} <= set().union(
        *(pair.moves for pair in moved)
    )


def test_every_sign_of_a_moved_cell_is_in_the_legend_once(swapped: PrintedChange) -> None:
    signs = [entry.sign for entry in swapped.legend]
    assert len(signs) == len(set(signs))
    used = {
        sign
        for group in swapped.groups
        for row in group.rows
        for side in (row.before, row.after)
        for sign in (*side.sign, *side.way_out.split()[:1])
    }
    assert used == set(signs)


def test_nothing_moved_is_said_plainly(example: Shop) -> None:
    change = change_of(example, replace(example, revision="B"))
    assert change.summary[-1] == "Nothing on the cards has moved."
    assert (change.groups, change.legend) == ((), ())


def test_cards_that_come_and_go_are_no_silence(example: Shop) -> None:
    request = replace(example.request, layouts=("lathe-chart-a5",))
    change = change_of(example, replace(example, request=request))
    assert change.summary[-1] == (
        "0 of 216 cells moved by more than the rounding; 0 of 6 cards that both print are stale."
    )


def test_no_material_in_common_is_refused_in_one_message(example: Shop) -> None:
    one, two = (
        pipeline.with_materials(example, [key]) for key in ("mild-steel", "free-cutting-brass")
    )
    with pytest.raises(RequestError) as caught:
        pipeline.changed_card(one, two)
    assert str(caught.value) == (
        "BEFORE and AFTER print no material in common (mild-steel and free-cutting-brass), so no "
        "cell can be compared; list one of them in both files under [print] materials."
    )


def test_no_blade_in_common_is_told_and_the_rest_still_compared(example: Shop) -> None:
    blades = tuple(replace(blade, name=f"new {blade.name}") for blade in example.blades)
    change = change_of(example, replace(example, blades=blades))
    assert "0 blades" in change.summary[0]
    assert change.summary[-1] == "No cell can be compared."
    told = facts(change, "Assumptions")
    assert told['blade "3.0 carbide"'] == ("3 mm carbide, thin-coated", "–")
    assert told['blade "new 3.0 carbide"'] == ("–", "3 mm carbide, thin-coated")


def test_lists_tell_only_what_one_of_them_has(example: Shop) -> None:
    request = replace(example.request, materials=("c45", "ptfe"))
    fact = only_fact(
        pipeline.with_materials(example, ["mild-steel", "c45"]),
        replace(example, request=request),
        "What is printed",
    )
    assert fact == PrintedFact(
        name="print.materials", before="only before: mild-steel", after="only now: ptfe"
    )


def test_another_letter_of_a_blade_is_told(example: Shop) -> None:
    turned = replace(example, blades=example.blades[::-1])
    assert facts(change_of(example, turned), "What is printed") == {
        'letter of blade "1.6 HSS"': ("C", "A"),
        'letter of blade "2.0 carbide"': ("A", "C"),
    }


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        (
            'projection = "36 mm"',
            'projection = "30 mm"',
            ('blade "2 coated".projection', "36 mm", "30 mm"),
        ),
        (
            'power_feeds = ["0.02 mm/rev", ',
            "power_feeds = [",
            (
                "lathe.cross_slide.power_feeds",
                "0.02 mm/rev, 0.03 mm/rev, 0.045 mm/rev, 0.06 mm/rev, 0.09 mm/rev",
                "0.03 mm/rev, 0.045 mm/rev, 0.06 mm/rev, 0.09 mm/rev",
            ),
        ),
        ("divisions = 40", "divisions = 80", ("lathe.cross_slide.divisions", "40", "80")),
        (
            'size = "125 mm"',
            'size = "125 mm"\nkey_torque = "30 N.m"',
            ("lathe.chuck.key_torque", "not stated", "30 N·m"),
        ),
        (
            'overload = "150 %"',
            'overload = "150 %"\nforced_cooling = true',
            ("lathe.motor.forced_cooling", "no", "yes"),
        ),
        (
            'overload = "150 %"',
            'overload = "150 %"\nself_cooling = "full-at-base-speed"',
            ("lathe.motor.self_cooling", "cautious", "full-at-base-speed"),
        ),
        (
            'power = "750 W"',
            'power = "750.0001 W"',
            ("lathe.motor.power", "750 W", "750.0001 W"),
        ),
        (
            "[print]",
            '[allowances]\ntip_drop = "0.12 mm"\n[print]',
            ("allowances.tip_drop", "0.1 mm", "0.12 mm"),
        ),
        (
            "[print]",
            "[allowances]\nconfined_chip = 1.2\n[print]",
            ("allowances.confined_chip", "1.3", "1.2"),
        ),
    ],
)
def test_a_fact_is_written_with_its_unit(
    shop_of: ShopOf, old: str, new: str, told: tuple[str, str, str]
) -> None:
    before = shop_of("750 W inverter")
    text = {old: new}
    if old.startswith("projection"):
        # Three blades of the test shop stand out as far: change the first alone.
        blade = before.blades[0]
        after = replace(before, blades=(replace(blade, projection=30.0), *before.blades[1:]))
        assert isinstance(blade, Blade)
    else:
        after = shop_of("750 W inverter", text)
    fact = only_fact(before, after)
    assert (fact.name, fact.before, fact.after) == told


def test_readings_are_told_as_pairs(shop_of: ShopOf) -> None:
    after = shop_of("measured", {'["600 rpm", "10 N.m"]': '["600 rpm", "11 N.m"]'})
    told = facts(change_of(shop_of("measured"), after), "Assumptions")
    before, now = told['lathe.drive.position "only".readings']
    assert before.startswith("14 N·m at 100 rev/min, 10 N·m at 600 rev/min, 2.387")
    assert "11 N·m at 600 rev/min" in now


def test_cards_in_inches_are_told_in_inches(shop_of: ShopOf) -> None:
    before, after = (
        replace(shop, request=replace(shop.request, units=LengthUnits.INCH, diameters=(25.4,)))
        for shop in (shop_of("550 W belts"), shop_of("750 W inverter"))
    )
    change = change_of(before, after)
    assert (change.headings.diameter, change.headings.feed) == ("Ø in", "in/rev")
    assert {row.diameter for group in change.groups for row in group.rows} == {"1"}
    thinner = replace(after.blades[0], insert_width=25.4 / 16, thickness=1.2)
    told = facts(
        change_of(after, replace(after, blades=(thinner, *after.blades[1:]))), "Assumptions"
    )
    assert told['blade "2 coated".insert_width'] == ("0.079 in", "1/16 in")


def test_the_code_of_a_change_card_knows_both_shops(motor_swap: tuple[Shop, Shop]) -> None:
    before, after = motor_swap
    codes = {
        pipeline.changed_card(one, two).check_code
        for one, two in (
            (before, after),
            (after, before),
            (replace(before, revision="2"), after),
            (before, replace(after, revision="5")),
        )
    }
    assert len(codes) == 4
    assert pipeline.changed_card(before, after).file_stem == "change-card-a5-shed-at-number-nine"


def test_a_machine_is_told_the_same(motor_swap: tuple[Shop, Shop]) -> None:
    card = pipeline.changed_card(*motor_swap)
    told = change_answer(card)
    rows = [row for group in card.chart.groups for row in group.rows]
    assert [cell["limit"] for cell in told["moved"]] == [row.limit for row in rows]
    assert [cell["after"]["feed"] for cell in told["moved"]] == [row.after.feed for row in rows]
    assert {line["state"] for line in told["cards"]} == {"stale", "holds"}
    assert told["check"] == card.check_code
