"""The check code: another code for whatever moves a card, the same for what does not."""

import re
from collections.abc import Callable
from dataclasses import fields, replace

import pytest

from chartgen.model.job import Bar, Coolant, Holding, Job, Piece, ToolChoice
from chartgen.model.lathe import DialReads, Lathe
from chartgen.model.material import Material
from chartgen.model.shop import Feeding, LengthUnits, Shop
from chartgen.model.tooling import Tailstock, Tools
from chartgen.pipeline import printed_cards
from chartgen.reference.tables import load_material
from chartgen.wording.card import AnyCard
from chartgen.wording.check_code import ONLY_FOR_JOBS, check_code, job_check_code

Change = Callable[[Shop], Shop]


def lathe(**values: object) -> Change:
    return lambda shop: replace(shop, lathe=replace(shop.lathe, **values))  # type: ignore[arg-type]


def part(name: str, **values: object) -> Change:
    def change(shop: Shop) -> Shop:
        return lathe(**{name: replace(getattr(shop.lathe, name), **values)})(shop)

    return change


def request(**values: object) -> Change:
    return lambda shop: replace(shop, request=replace(shop.request, **values))  # type: ignore[arg-type]


def first_blade(**values: object) -> Change:
    def change(shop: Shop) -> Shop:
        blade = replace(shop.blades[0], **values)  # type: ignore[arg-type]
        return replace(shop, blades=(blade, *shop.blades[1:]))

    return change


def code(shop: Shop, *, material: str = "mild-steel", layout: str = "lathe-chart-a5") -> str:
    return check_code(shop, materials=[load_material(material)], layout=layout, subject=material)


CHANGES: dict[str, Change] = {
    "revision": lambda shop: replace(shop, revision="B"),
    "date": lambda shop: replace(shop, date="2030-01-01"),
    "name of the lathe": lathe(name="Another"),
    "power of the motor": part("motor", plate_power=751.0),
    "overload of the drive": part("motor", overload=1.4),
    "efficiency": part("drive", efficiency=0.9),
    "fastest spindle": part("drive", fastest_spindle=2400.0),
    "chuck": part("chuck", marked_speed=None),
    "pull on the chuck key": part("chuck", key_torque=40.0),
    "backlash": part("cross_slide", backlash=0.2),
    "stiffness of the tool post": lathe(tool_stiffness=8000.0),
    "distance from the jaws": lambda shop: replace(shop, work=replace(shop.work, jaw_distance=9.0)),
    "bar behind the spindle": lambda shop: replace(shop, work=replace(shop.work, bar_behind=300.0)),
    "travel of the handle": part("cross_slide", travel_per_turn=2.54),
    "dial": part("cross_slide", dial_reads=DialReads.DIAMETER),
    "units": request(units=LengthUnits.INCH),
    "diameters": request(diameters=(10.0,)),
    "width of a blade": first_blade(insert_width=2.2),
    "projection of a blade": first_blade(projection=30.0),
    "wear of a blade": first_blade(worn=True),
    "an allowance": lambda shop: replace(shop, allowances={"confined_chip": 1.2}),
}


def test_a_code_is_two_groups_of_four_signs_that_cannot_be_misread(example: Shop) -> None:
    assert re.fullmatch(r"[0-9A-HJKMNP-TV-Z]{4}-[0-9A-HJKMNP-TV-Z]{4}", code(example))


def test_the_same_inputs_give_the_same_code(example: Shop) -> None:
    assert code(example) == code(replace(example))


@pytest.mark.parametrize("change", CHANGES.values(), ids=CHANGES.keys())
def test_a_code_changes_with_any_input_that_matters(example: Shop, change: Change) -> None:
    assert code(change(example)) != code(example)


def test_a_code_changes_with_the_way_of_feeding(example: Shop) -> None:
    slide = part("cross_slide", power_feeds=(0.05,))(example)
    assert code(request(feeding=Feeding.POWER)(slide)) != code(slide)


def test_a_code_changes_with_the_material_its_data_and_the_layout(
    example: Shop, mild_steel: Material
) -> None:
    harder = replace(mild_steel, work_hardens=True)
    codes = {
        code(example),
        code(example, material="c45"),
        code(example, layout="another"),
        check_code(example, materials=[harder], layout="lathe-chart-a5", subject="mild-steel"),
    }
    assert len(codes) == 4


def test_a_code_keeps_still_when_other_materials_or_layouts_join_the_list(example: Shop) -> None:
    assert code(request(materials=("mild-steel", "nylon"))(example)) == code(example)
    assert code(request(layouts=("lathe-chart-a5",))(example)) == code(example)


NOT_ON_CHARTS: dict[str, Change] = {
    "swing": lathe(swing=140.0),
    "bore of the spindle": lathe(spindle_bore=None),
    "carriage": lathe(carriage=None),
    "tools": lambda shop: replace(shop, tools=Tools()),
}


@pytest.mark.parametrize("change", NOT_ON_CHARTS.values(), ids=NOT_ON_CHARTS.keys())
def test_a_code_of_a_chart_keeps_still_when_only_jobs_are_touched(
    example: Shop, change: Change
) -> None:
    assert change(example) != example
    assert code(change(example)) == code(example)


# Every field of the lathe moves the code but those that are named: a new one is not forgotten.
def test_what_a_code_leaves_out_of_the_lathe_are_fields_of_it() -> None:
    names = {field.name for field in fields(Lathe)}
    assert names >= ONLY_FOR_JOBS
    assert names - ONLY_FOR_JOBS == {
        "name",
        "motor",
        "drive",
        "chuck",
        "cross_slide",
        "tool_stiffness",
    }


def by_stem(shop: Shop) -> dict[str, AnyCard]:
    return {card.file_stem: card for card in printed_cards(shop)}


# The cell of one blade may say "use A": then it rests on blade A too.
def test_two_cards_with_the_same_code_have_the_same_chart(example: Shop) -> None:
    short = first_blade(projection=20.0)(example)
    before, after = by_stem(example), by_stem(short)
    assert before.keys() == after.keys()
    stale = [
        stem
        for stem in before
        if before[stem].check_code == after[stem].check_code
        and before[stem].chart != after[stem].chart
    ]
    assert stale == []


JOB = Job(
    name="Invented collar",
    revision="A",
    date="2026-11-25",
    material="mild-steel",
    quantity=3,
    bar=Bar(diameter=30.0, length=250.0),
    piece=Piece(diameter=28.0, length=20.0, bore=10.0),
    holding=Holding(),
    coolant=Coolant.OIL,
    choice=ToolChoice(),
)


def code_of_job(shop: Shop, job: Job = JOB, *, layout: str = "set-up-card-a5") -> str:
    return job_check_code(shop, job, materials=[load_material(job.material)], layout=layout)


OF_A_JOB: dict[str, Callable[[Job], Job]] = {
    "name": lambda job: replace(job, name="Another"),
    "revision": lambda job: replace(job, revision="B"),
    "date": lambda job: replace(job, date=""),
    "material": lambda job: replace(job, material="c45"),
    "quantity": lambda job: replace(job, quantity=4),
    "bar": lambda job: replace(job, bar=replace(job.bar, run_out=0.05)),
    "piece": lambda job: replace(job, piece=replace(job.piece, bore=11.0)),
    "holding": lambda job: replace(job, holding=Holding(grip_length=30.0)),
    "coolant": lambda job: replace(job, coolant=Coolant.DRY),
    "tools asked for": lambda job: replace(job, choice=ToolChoice(blade="A")),
}


@pytest.mark.parametrize("change", OF_A_JOB.values(), ids=OF_A_JOB.keys())
def test_the_code_of_a_jobs_card_changes_with_the_job(
    example: Shop, change: Callable[[Job], Job]
) -> None:
    assert code_of_job(example, change(JOB)) != code_of_job(example)


@pytest.mark.parametrize(
    "change",
    [change for name, change in CHANGES.items() if name != "diameters"],
    ids=[name for name in CHANGES if name != "diameters"],
)
def test_the_code_of_a_jobs_card_changes_with_the_shop(example: Shop, change: Change) -> None:
    assert code_of_job(change(example)) != code_of_job(example)


def test_a_job_asks_for_every_tool_and_a_chart_for_none(example: Shop) -> None:
    tailstock = Tailstock(travel_per_turn=2.5, largest_drill=10.0)
    other = replace(example, tools=replace(example.tools, tailstock=tailstock))
    assert code_of_job(other) != code_of_job(example)
    assert code(other) == code(example)


def test_what_else_is_printed_leaves_the_code_of_a_jobs_card(example: Shop) -> None:
    others = request(diameters=(10.0,), materials=("ptfe",), layouts=("overview-a5",))
    assert code_of_job(others(example)) == code_of_job(example)


def test_the_set_up_card_and_the_batch_card_have_codes_of_their_own(example: Shop) -> None:
    assert code_of_job(example, layout="batch-card-a5") != code_of_job(example)
