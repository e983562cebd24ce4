"""What cannot be made is told, with its reasons, and never planned without a word."""

import math
from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen.limits.reasons import Reason
from chartgen.model.job import Bar, Groove, Holding, Job, Piece
from chartgen.model.lathe import BarSurface
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.model.tooling import Drills, Tools
from chartgen.planning.machine import Setting, machine_for, settings
from chartgen.planning.operations import Bound, Operation
from chartgen.planning.passes import driving_caps
from chartgen.planning.plan import JobPlan, Refusal, Step
from chartgen.planning.run import plan_job
from chartgen.wording.job.step_lines import step_lines

JobOf = Callable[..., Job]
Equipped = Callable[[str], Shop]


def the(plan: JobPlan, operation: Operation) -> Step:
    """Return the one step with an operation."""
    (step,) = (step for step in plan.steps if step.operation is operation)
    return step


def refused(plan: JobPlan, operation: Operation) -> Refusal:
    """Return why the one step with an operation is refused; its card has words for it."""
    step = the(plan, operation)
    assert step.refused is not None
    assert step.cut is None
    assert any("out:" in line or "part it after all" in line for line in step_lines(plan, step))
    return step.refused


def test_a_motor_too_small_leaves_the_saw_with_both_reasons(
    equipped: Equipped, job_of: JobOf, mild_steel: Material
) -> None:
    job = job_of(Bar(diameter=40.0, length=100.0), Piece(diameter=40.0, length=15.0))
    plan = plan_job(equipped("250 W brushed DC"), job, mild_steel)
    assert not any(step.operation is Operation.PART for step in plan.steps)
    (saw,) = (s for s in plan.steps if s.operation is Operation.SAW and s.is_per_piece)
    assert saw.refused is not None
    floor, ceiling = saw.refused.reasons
    assert floor in {Reason.EDGE_FLOOR, Reason.SKIN_FLOOR}
    assert isinstance(ceiling, Reason)
    assert ceiling is not floor
    words = " ".join(step_lines(plan, saw))
    assert floor.legend in words
    assert ceiling.legend in words
    # 1.5 mm of the saw and 1 mm to be faced off the sawn end.
    assert plan.set_up.kerf == 2.5
    assert saw.length == 16.0


def test_a_shop_without_tools_leaves_no_step_out(
    example: Shop, job_of: JobOf, mild_steel: Material
) -> None:
    job = job_of(
        Bar(diameter=32.0, length=100.0),
        Piece(diameter=30.0, length=15.0, bore=10.0, chamfer=0.5),
        holding=Holding(live_centre=True),
    )
    plan = plan_job(replace(example, tools=Tools()), job, mild_steel)
    for operation in (
        Operation.FACE,
        Operation.TURN,
        Operation.CHAMFER,
        Operation.DRILL,
        Operation.SUPPORT,
    ):
        assert refused(plan, operation).bound is Bound.NO_TOOL


def test_no_hole_is_drilled_without_a_centre_and_a_word(
    example: Shop, job_of: JobOf, mild_steel: Material
) -> None:
    drills = Drills(diameters=(6.0, 10.0))
    shop = replace(example, tools=replace(example.tools, drills=drills))
    job = job_of(Bar(diameter=32.0, length=100.0), Piece(diameter=32.0, length=15.0, bore=10.0))
    plan = plan_job(shop, job, mild_steel)
    assert refused(plan, Operation.CENTRE_DRILL).bound is Bound.NO_TOOL


def test_a_bore_no_drill_leads_to(example: Shop, job_of: JobOf, mild_steel: Material) -> None:
    shop = replace(example, tools=replace(example.tools, boring=()))
    job = job_of(Bar(diameter=32.0, length=100.0), Piece(diameter=32.0, length=15.0, bore=10.4))
    plan = plan_job(shop, job, mild_steel)
    assert refused(plan, Operation.DRILL).bound is Bound.NO_TOOL


def test_a_boring_bar_too_slender(example: Shop, job_of: JobOf, mild_steel: Material) -> None:
    # 8 mm of steel stand out 4 diameters, 32 mm (BBD): 40 mm of bore are too deep for it.
    job = job_of(Bar(diameter=32.0, length=200.0), Piece(diameter=32.0, length=40.0, bore=13.0))
    plan = plan_job(example, job, mild_steel)
    assert refused(plan, Operation.BORE).bound is Bound.TOOL_BENDS


def test_a_boring_bar_that_reaches_but_stands_out_too_far_for_its_thickness(
    example: Shop, job_of: JobOf, mild_steel: Material
) -> None:
    # Long enough, and in mild steel its own bending would still allow a thin chip: only the rule
    # of 4 diameters (BBD) speaks against it.
    slender = replace(example.tools.boring[0], reach=200.0)
    shop = replace(example, tools=replace(example.tools, boring=(slender,)))
    job = job_of(Bar(diameter=32.0, length=200.0), Piece(diameter=32.0, length=40.0, bore=13.0))
    assert refused(plan_job(shop, job, mild_steel), Operation.BORE).bound is Bound.TOOL_BENDS
    shallow = job_of(Bar(diameter=32.0, length=200.0), Piece(diameter=32.0, length=22.0, bore=13.0))
    assert the(plan_job(shop, shallow, mild_steel), Operation.BORE).refused is None


def test_a_stout_bar_too_short_makes_room_for_a_longer_one(
    example: Shop, job_of: JobOf, mild_steel: Material
) -> None:
    slender, stout = example.tools.boring
    short = replace(stout, reach=12.0, smallest_bore=12.5)
    shop = replace(example, tools=replace(example.tools, boring=(slender, short)))
    job = job_of(Bar(diameter=32.0, length=200.0), Piece(diameter=32.0, length=15.0, bore=20.0))
    cut = the(plan_job(shop, job, mild_steel), Operation.BORE).cut
    assert cut is not None
    assert cut.tool == slender.name


def test_a_bar_too_short_for_one_piece(example: Shop, job_of: JobOf, mild_steel: Material) -> None:
    # 25 mm in the jaws, 5 clear, 20 of piece, at least 1.6 of cut, 0.5 to face: 52.1.
    job = job_of(Bar(diameter=20.0, length=50.0), Piece(diameter=20.0, length=20.0))
    plan = plan_job(example, job, mild_steel)
    assert refused(plan, Operation.CHECK).bound is Bound.BAR_LENGTH
    assert plan.bar_use.bars == 0
    longer = replace(job, bar=Bar(diameter=20.0, length=53.0))
    assert the(plan_job(example, longer, mild_steel), Operation.CHECK).refused is None


def test_a_groove_narrower_than_every_blade(
    example: Shop, job_of: JobOf, mild_steel: Material
) -> None:
    groove = Groove(width=1.0, depth=0.5, from_face=4.0)
    piece = Piece(diameter=20.0, length=12.0, groove=groove)
    plan = plan_job(example, job_of(Bar(diameter=20.0, length=90.0), piece), mild_steel)
    assert refused(plan, Operation.GROOVE).bound is Bound.BLADE


def test_a_long_bar_without_a_centre_is_told(
    example: Shop, job_of: JobOf, mild_steel: Material
) -> None:
    tailstock = example.tools.tailstock
    assert tailstock is not None
    bare = replace(example.tools, tailstock=replace(tailstock, live_centre=False))
    # 5 + 1.6 + 50 + 0.5 out of the jaws: more than three times 16 mm.
    job = job_of(Bar(diameter=16.0, length=300.0), Piece(diameter=15.0, length=50.0))
    plan = plan_job(replace(example, tools=bare), job, mild_steel)
    assert plan.set_up.needs_centre
    words = " ".join(step_lines(plan, the(plan, Operation.HOLD)))
    assert "no centre" in words


def test_a_long_bar_is_faced_short_and_then_drawn_out(
    example: Shop, job_of: JobOf, mild_steel: Material
) -> None:
    job = job_of(Bar(diameter=10.0, length=300.0), Piece(diameter=9.0, length=60.0))
    plan = plan_job(example, job, mild_steel)
    order = [step.operation for step in plan.steps]
    assert order.index(Operation.CENTRE_DRILL) < order.index(Operation.SUPPORT)
    assert order.index(Operation.SUPPORT) < order.index(Operation.TURN)
    assert all(step.refused is None for step in plan.steps)
    # 3 times 10 mm.
    assert "30 mm" in " ".join(step_lines(plan, the(plan, Operation.HOLD)))
    assert "30 mm" in " ".join(step_lines(plan, the(plan, Operation.SUPPORT)))


def test_a_live_centre_and_a_bore_share_one_centre_hole(
    example: Shop, job_of: JobOf, mild_steel: Material
) -> None:
    job = job_of(
        Bar(diameter=32.0, length=100.0),
        Piece(diameter=30.0, length=15.0, bore=10.0),
        holding=Holding(live_centre=True),
    )
    plan = plan_job(example, job, mild_steel)
    order = [step.operation for step in plan.steps]
    assert order.count(Operation.CENTRE_DRILL) == 1
    assert order.index(Operation.SUPPORT) < order.index(Operation.DRILL)
    assert "never part between centres" in " ".join(step_lines(plan, the(plan, Operation.SUPPORT)))


def test_no_speed_over_what_the_bar_behind_bears(
    example: Shop, job_of: JobOf, mild_steel: Material
) -> None:
    # 2.5 m of 20 mm bar: 1.875^2 sqrt(E I / (rho A)) / L^2, with I / A = D^2 / 16, is 14.4 rad/s,
    # 138 rev/min; half of it is allowed, and this lathe turns no slower than 100.
    length, speed_of_sound = 2.5, math.sqrt(206e9 / 7850.0)
    critical = 1.8751**2 * speed_of_sound * 0.020 / 4.0 / length**2 * 60.0 / (2.0 * math.pi)
    assert 0.5 * critical < 75.0
    drive = example.lathe.drive
    low = replace(drive.positions[0], slowest=100.0)
    lathe = replace(example.lathe, drive=replace(drive, positions=(low, drive.positions[1])))
    bar = Bar(diameter=20.0, length=2900.0, behind=2500.0)
    job = job_of(bar, Piece(diameter=18.0, length=15.0, bore=10.0, chamfer=0.5))
    plan = plan_job(replace(example, lathe=lathe), job, mild_steel)
    assert plan.set_up.largest_speed == pytest.approx(0.5 * critical, rel=0.001)
    assert plan.set_up.speed_bound is Bound.BAR_WHIP
    for operation in (Operation.FACE, Operation.TURN, Operation.CHAMFER, Operation.CENTRE_DRILL):
        assert refused(plan, operation).bound is Bound.SLOWEST_SPINDLE
    assert not any(step.cut for step in plan.steps)


def test_the_whole_bar_whips_however_the_piece_is_bored(
    example: Shop, job_of: JobOf, mild_steel: Material
) -> None:
    bar = Bar(diameter=20.0, length=1500.0, behind=900.0)
    for piece in (
        Piece(diameter=20.0, length=15.0, bore=12.0),
        Piece(diameter=12.0, length=15.0),
    ):
        plan = plan_job(example, job_of(bar, piece), mild_steel)
        assert plan.set_up.speed_bound is Bound.BAR_WHIP
        for step in plan.steps:
            if step.cut:
                assert step.cut.spindle_speed <= plan.set_up.largest_speed


@pytest.mark.parametrize("axial", [0.0, 0.25, 0.5, 2.0])
@pytest.mark.parametrize("stall_share", [0.3, 0.7, 0.95, 1.0, 1.05, 3.0])
def test_around_and_along_together_stay_under_the_grip(
    example: Shop, job_of: JobOf, mild_steel: Material, axial: float, stall_share: float
) -> None:
    """Near the torque at which the drive stalls before the work slips, too."""
    bar = Bar(diameter=40.0, length=200.0, surface=BarSurface.BRIGHT)
    machine = machine_for(example, job_of(bar, Piece(diameter=38.0, length=15.0)), mild_steel)
    offered = settings(machine, diameter=40.0, start=100.0, ceiling=171.0)[0]
    # The friction there is: 0.1 (12 000 / 1.5 less what speed takes).
    lost = 12000.0 * (offered.speed / 5500.0) ** 2
    slip = 0.1 * (8000.0 - lost)
    stall = stall_share * slip
    setting = Setting(
        position=offered.position,
        speed=offered.speed,
        torque=offered.torque,
        stall_torque=stall * 40.0 / 2000.0,
        bound=Bound.NOTHING,
    )
    caps = driving_caps(machine, setting, diameter=40.0, axial_share=axial)
    force = caps.get(Bound.GRIP, math.inf)
    if math.isinf(force):
        assert axial == 0.0
        assert stall < slip
        return
    held = math.hypot(min(1.2 * force, stall), 1.2 * axial * force)
    assert held == pytest.approx(slip)
