"""Tools that one shop file has and another has not, in a few words; no chart rests on them."""

from dataclasses import replace

import pytest

from chartgen.model.shop import LengthUnits, Shop
from chartgen.model.tooling import Tools
from chartgen.wording.described_facts import fact_groups


def told(before: Shop, after: Shop) -> dict[str, tuple[str, str]]:
    return {
        fact.name: (fact.before, fact.after)
        for group in fact_groups(before, after)
        for fact in group.facts
    }


def test_tools_that_are_new_are_told_in_a_few_words(example: Shop) -> None:
    bare = replace(example, tools=Tools(), lathe=replace(example.lathe, carriage=None))
    assert told(bare, example) == {
        "lathe.carriage": ("–", "18 mm a turn"),
        'turning_tool "0.4 carbide"': ("–", "carbide, nose radius 0.4 mm"),
        'turning_tool "HSS knife"': ("–", "hss, nose radius 0.2 mm"),
        'boring_bar "8 mm bar"': ("–", "8 mm steel, bores from 10 mm"),
        'boring_bar "12 mm bar"': ("–", "12 mm steel, bores from 14 mm"),
        "drills": ("–", "18, 2 mm to 16 mm, standard"),
        "tailstock": ("–", "2 mm a turn, drills to 16 mm"),
    }
    assert told(example, bare)["drills"] == ("18, 2 mm to 16 mm, standard", "–")


def test_a_drill_that_came_is_told_among_all(example: Shop) -> None:
    drills = example.tools.drills
    assert drills is not None
    fewer = replace(drills, diameters=(2.0, 3.3))
    after = replace(drills, diameters=(2.0, 2.5, 3.3))
    before, now = (
        replace(example, tools=replace(example.tools, drills=one)) for one in (fewer, after)
    )
    assert told(before, now) == {"drills.diameters": ("2 mm, 3.3 mm", "2 mm, 2.5 mm, 3.3 mm")}


@pytest.mark.parametrize(
    ("units", "words"), [(LengthUnits.METRIC, "150 mm"), (LengthUnits.INCH, "5.906 in")]
)
def test_the_swing_is_told_in_the_units_of_the_card(
    example: Shop, units: LengthUnits, words: str
) -> None:
    shop = replace(example, request=replace(example.request, units=units))
    unsaid = replace(shop, lathe=replace(shop.lathe, swing=None))
    assert told(unsaid, shop) == {"lathe.swing": ("not stated", words)}
