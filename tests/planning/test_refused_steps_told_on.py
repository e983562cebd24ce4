"""What a refused step means for those after it, and what the set-up of long work says of itself."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen.limits.window import Verdict
from chartgen.model.job import Bar, Groove, Holding, Job, Piece
from chartgen.model.material import Material
from chartgen.model.shop import LengthUnits, Shop
from chartgen.planning.operations import Operation
from chartgen.planning.plan import JobPlan, Step
from chartgen.planning.run import plan_job
from chartgen.reference.tables import load_material
from chartgen.wording.job import amounts
from chartgen.wording.job.cells import step_title
from chartgen.wording.job.checks import checklist
from chartgen.wording.job.step_lines import step_lines
from chartgen.wording.job.watching import watch_line

JobOf = Callable[..., Job]
Equipped = Callable[[str], Shop]


def the(plan: JobPlan, operation: Operation) -> Step:
    """Return the one step with an operation."""
    (step,) = (step for step in plan.steps if step.operation is operation)
    return step


def said(plan: JobPlan, operation: Operation) -> str:
    """Return all that a card says of the one step with an operation."""
    step = the(plan, operation)
    return " ".join((*step_lines(plan, step), watch_line(plan, step)))


@pytest.fixture
def hard_flange(example: Shop, job_of: JobOf) -> JobPlan:
    """Return a plan whose drill is too much for the lathe, of three pieces from three blanks."""
    job = job_of(
        Bar(diameter=70.0, length=90.0),
        Piece(diameter=66.0, length=30.0, bore=30.0, chamfer=1.0),
        quantity=3,
    )
    return plan_job(example, job, load_material("tool-steel-d2"))


def test_a_bore_is_told_though_its_drill_is_refused(hard_flange: JobPlan) -> None:
    refused = [step for step in hard_flange.steps if step.operation is Operation.DRILL]
    assert [step.refused is not None for step in refused] == [True]
    number = hard_flange.steps.index(refused[0]) + 1
    assert the(hard_flange, Operation.BORE).cut is not None
    assert f"take step {number} as done" in said(hard_flange, Operation.BORE)


def test_a_groove_that_is_refused_has_a_way_out(
    equipped: Equipped, job_of: JobOf, stainless: Material
) -> None:
    groove = Groove(width=3.0, depth=1.5, from_face=8.0)
    job = job_of(Bar(diameter=25.0, length=120.0), Piece(diameter=25.0, length=40.0, groove=groove))
    plan = plan_job(equipped("250 W brushed DC"), job, stainless)
    assert the(plan, Operation.GROOVE).refused is not None
    assert "Way out: a narrower blade" in said(plan, Operation.GROOVE)


def test_a_tube_is_not_parted_before_its_refused_bore_is_made(
    example: Shop, job_of: JobOf, mild_steel: Material
) -> None:
    # Every bar of the shop too slender for this bore: parted as a tube, it is solid until then.
    bars = tuple(replace(bar, reach=8.0) for bar in example.tools.boring)
    shop = replace(example, tools=replace(example.tools, boring=bars))
    job = job_of(Bar(diameter=30.0, length=120.0), Piece(diameter=30.0, length=20.0, bore=18.0))
    plan = plan_job(shop, job, mild_steel)
    bore = the(plan, Operation.BORE)
    assert bore.refused is not None
    number = plan.steps.index(bore) + 1
    assert f"take step {number} as done" in said(plan, Operation.PART)
    made = plan_job(example, job, mild_steel)
    assert the(made, Operation.BORE).cut is not None
    assert "as done" not in said(made, Operation.PART)


def test_a_smaller_drill_leads_to_the_bore_where_the_largest_is_too_much(
    example: Shop, job_of: JobOf, mild_steel: Material
) -> None:
    job = job_of(Bar(diameter=40.0, length=120.0), Piece(diameter=40.0, length=12.0, bore=20.0))
    usual = plan_job(example, job, mild_steel)
    assert the(usual, Operation.BORE).start == 16.0
    # The torque at which the built-in shop's chuck would hold drills up to 14.5 mm only.
    loads = {
        step.end: step.cut.load.torque
        for step in usual.steps
        if step.operation is Operation.DRILL and step.cut and step.cut.load
    }
    weak = replace(example, allowances={"drill_chuck_torque": 0.6 * loads[16.0]})
    plan = plan_job(weak, job, mild_steel)
    bore = the(plan, Operation.BORE)
    assert bore.cut is not None
    assert 10.0 <= bore.start < 16.0
    assert all(step.refused is None for step in plan.steps)


def test_facing_the_sawn_end_takes_its_time(
    equipped: Equipped, job_of: JobOf, mild_steel: Material
) -> None:
    job = job_of(Bar(diameter=40.0, length=100.0), Piece(diameter=40.0, length=15.0))
    plan = plan_job(equipped("250 W brushed DC"), job, mild_steel)
    (saw,) = (s for s in plan.steps if s.operation is Operation.SAW and s.is_per_piece)
    assert saw.time == pytest.approx(
        plan.allowances.saw_minutes + plan.allowances.hold_minutes + the(plan, Operation.FACE).time
    )


def test_a_window_too_thin_for_a_hand_goes_to_the_saw(
    equipped: Equipped, job_of: JobOf, stainless: Material
) -> None:
    shop = equipped("250 W brushed DC")
    gaps = []
    for diameter in (10.0, 12.0, 13.0, 14.0, 15.0, 16.0, 17.0, 18.0):
        job = job_of(Bar(diameter=diameter, length=100.0), Piece(diameter=diameter, length=15.0))
        plan = plan_job(shop, job, stainless)
        gaps += [step.parting.ceiling / step.parting.floor for step in plan.steps if step.parting]
        for option in plan.blade_options:
            is_told_none = option.verdict is Verdict.NO_WINDOW
            assert is_told_none == (option.room < 1.1)
            assert (
                not is_told_none
                or any(step.operation is Operation.SAW and step.is_per_piece for step in plan.steps)
                or any(other.room >= 1.1 for other in plan.blade_options)
            )
    assert all(gap >= 1.1 for gap in gaps)


def test_a_blank_for_one_piece_has_no_next_one_standing_out(hard_flange: JobPlan) -> None:
    assert hard_flange.bar_use.pieces_a_blank == 1
    assert "stands out" not in said(hard_flange, Operation.ADVANCE)
    assert step_title(hard_flange, the(hard_flange, Operation.ADVANCE)) == "next piece"


def test_a_long_pin_is_begun_short_and_sawn_through_at_its_core(
    example: Shop, job_of: JobOf, mild_steel: Material
) -> None:
    job = job_of(Bar(diameter=12.0, length=300.0), Piece(diameter=10.0, length=90.0), quantity=2)
    plan = plan_job(example, job, mild_steel)
    assert plan.first_overhang == pytest.approx(36.0)
    assert step_title(plan, the(plan, Operation.HOLD)) == "hold, 36 mm out"
    assert "Bar 36 mm out" in " ".join(checklist(plan))
    assert "pull the bar out to 36 mm" in said(plan, Operation.ADVANCE)
    assert "draw it out to 97" in said(plan, Operation.SUPPORT)
    assert "saw through" in said(plan, Operation.PART)
    short = job_of(Bar(diameter=12.0, length=300.0), Piece(diameter=10.0, length=20.0))
    assert "saw through" not in said(plan_job(example, short, mild_steel), Operation.PART)


def test_a_bar_too_thick_for_the_spindle_is_not_told_to_stand_shorter(
    example: Shop, job_of: JobOf, mild_steel: Material
) -> None:
    job = job_of(
        Bar(diameter=30.0, length=300.0),
        Piece(diameter=28.0, length=110.0),
        holding=Holding(live_centre=True),
    )
    plan = plan_job(example, job, mild_steel)
    assert plan.set_up.goes_through_spindle is False
    assert plan.set_up.needs_centre
    assert plan.first_overhang == plan.set_up.overhang
    assert "steady rest" in said(plan, Operation.SUPPORT)
    assert "at first" not in said(plan, Operation.HOLD)


def test_a_small_brushed_motor_slows_down_for_its_centre_drill(
    equipped: Equipped, job_of: JobOf, mild_steel: Material
) -> None:
    shop = equipped("250 W brushed DC")
    job = job_of(Bar(diameter=18.0, length=100.0), Piece(diameter=18.0, length=15.0, bore=10.0))
    for pilot in (1.0, 1.6, 2.5):
        drills = shop.tools.drills
        assert drills is not None
        tools = replace(shop.tools, drills=replace(drills, centre_drill=pilot))
        plan = plan_job(replace(shop, tools=tools), job, mild_steel)
        assert the(plan, Operation.CENTRE_DRILL).refused is None


@pytest.mark.parametrize(
    ("kilograms", "written"),
    [
        (0.4512, "450 g"),
        (0.00512, "5.1 g"),
        (0.9961, "1000 g"),
        (12.34, "12 kg"),
        (123.4, "120 kg"),
    ],
)
def test_a_mass_has_two_figures_and_no_power_of_ten(kilograms: float, written: str) -> None:
    assert amounts.mass(kilograms, LengthUnits.METRIC) == written


def test_all_there_is_reads_as_no_more() -> None:
    assert amounts.torque_up(1.7501, there=1.7503) == "1.75"
    assert amounts.torque_up(1.7401, there=1.7503) == "1.75"
    assert amounts.torque_up(1.7301, there=1.7503) == "1.74"
    # Too much stays too much.
    assert amounts.torque_up(1.7601, there=1.7503) == "1.77"
    assert amounts.kilonewtons_up(6243.0, there=6248.0) == "6.2 kN"
    assert amounts.kilonewtons_up(6143.0, there=6248.0) == "6.2 kN"
    assert amounts.kilonewtons_up(6343.0, there=6248.0) == "6.4 kN"
