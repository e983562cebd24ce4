"""What holds for every plan, over random jobs, lathes and materials."""

import math
from collections.abc import Callable, Sequence
from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from chartgen.model.job import Bar, Groove, Holding, Job, Piece
from chartgen.model.lathe import BarSurface
from chartgen.model.shop import Shop
from chartgen.planning.operations import FedBy, Operation
from chartgen.planning.plan import JobPlan, MachineCut, Step
from chartgen.planning.run import plan_job
from chartgen.reference.drilling import drilling_speed
from chartgen.reference.tables import load_material

Equipped = Callable[[str], Shop]
JobOf = Callable[..., Job]

LATHES = (
    *("built-in", "250 W brushed DC", "550 W belts"),
    *("750 W inverter", "1.1 kW brushless", "2.2 kW geared"),
)
MATERIALS = (
    *("mild-steel", "c45", "stainless-304", "grey-iron-250", "aluminium-6082"),
    *("free-cutting-brass", "aluminium-bronze", "titanium-6al-4v", "acetal"),
)
SLIP = 1.0 + 1e-9
SLOW = [HealthCheck.too_slow]
FEW = settings(max_examples=12, deadline=None, derandomize=True, suppress_health_check=SLOW)
MORE = settings(FEW, max_examples=28)


@st.composite
def some_jobs(draw: st.DrawFn) -> tuple[str, dict[str, object]]:
    """Draw a lathe and what a job on it is made of; sizes in whole or half millimetres.

    Every other one is a short ring, so that boring is not too rare among them.
    """
    is_ring = draw(st.booleans())
    bar = draw(st.integers(25, 60) if is_ring else st.integers(8, 60))
    off = draw(st.sampled_from([0.0, 0.25, 0.5, 1.0, 2.0, 4.0]))
    diameter = max(bar - 2.0 * off, bar / 2.0)
    length = float(draw(st.integers(3, 16 if is_ring else 80)))
    sizes = (14.5, 16.0, 20.0, 25.0) if is_ring else (0.0, 6.0, 10.0, 12.5, 35.0)
    bores = [size for size in sizes if size < diameter - 3.0] or [0.0]
    bore = draw(st.sampled_from(bores))
    room = (diameter - bore) / 2.0
    groove = None
    if length >= 8.0 and draw(st.booleans()):
        width = draw(st.sampled_from([1.6, 2.0, 3.0, 4.5]))
        groove = Groove(width=width, depth=min(1.0, room / 3.0), from_face=1.5)
    piece = Piece(
        diameter=diameter,
        length=length,
        bore=bore,
        chamfer=draw(st.sampled_from([0.0, 0.3, 1.0])) if room > 2.5 and length > 3 else 0.0,
        groove=groove,
    )
    stock = Bar(
        diameter=float(bar),
        length=length + draw(st.integers(20, 900)),
        surface=draw(st.sampled_from(list(BarSurface))),
        run_out=draw(st.sampled_from([None, 0.0, 0.3])),
        behind=float(draw(st.sampled_from([0, 0, 100, 400, 1200]))) if bar <= 26 else 0.0,
    )
    parts = {
        "bar": stock,
        "piece": piece,
        "material": draw(st.sampled_from(MATERIALS)),
        "quantity": draw(st.sampled_from([1, 2, 3, 7, 20])),
        "holding": Holding(
            grip_length=draw(st.sampled_from([None, 15.0, 40.0])),
            stop=draw(st.booleans()),
            live_centre=draw(st.booleans()) and bore == 0.0,
        ),
    }
    return draw(st.sampled_from(LATHES)), parts


@pytest.fixture(scope="session")
def planned(equipped: Equipped, job_of: JobOf) -> Callable[..., JobPlan]:
    """Return the plan of a lathe and what a job is made of."""

    def of(lathe: str, parts: dict[str, object], **other: object) -> JobPlan:
        job = job_of(**(parts | other))
        return plan_job(equipped(lathe), job, load_material(job.material))

    return of


def cuts(plan: JobPlan, *operations: Operation) -> list[tuple[Step, MachineCut]]:
    """Return the steps that cut, of some operations or of all."""
    return [
        (step, step.cut)
        for step in plan.steps
        if step.cut and (not operations or step.operation in operations)
    ]


@given(drawn=some_jobs())
@MORE
def test_no_cut_is_over_what_motor_grip_speed_and_hand_bear(
    drawn: tuple[str, dict[str, object]], planned: Callable[..., JobPlan]
) -> None:
    plan = planned(*drawn)
    drive, chuck = plan.shop.lathe.drive, plan.shop.lathe.chuck
    for step, cut in cuts(plan):
        load = cut.load
        if load is not None:
            assert load.torque <= load.torque_available * SLIP
            assert load.grip_needed <= load.grip * SLIP
            assert load.force_low < load.force < load.force_high
        assert cut.spindle_speed <= drive.fastest_spindle
        assert cut.spindle_speed <= (chuck.marked_speed or math.inf)
        assert cut.spindle_speed <= plan.set_up.largest_speed * SLIP
        assert cut.position.slowest <= cut.spindle_speed <= cut.position.fastest
        assert cut.cutting_speed <= ceiling_of(plan, step, cut) * SLIP
        if cut.seconds_per_turn is not None:
            by_blade = step.operation in {Operation.PART, Operation.GROOVE}
            most = plan.allowances.handle_turns_most if by_blade else 30.0
            assert 60.0 / cut.seconds_per_turn <= most * SLIP
            rate = cut.feed * cut.spindle_speed
            assert cut.travel_per_turn == pytest.approx(rate * cut.seconds_per_turn / 60.0)
        elif cut.fed_by is FedBy.POWER:
            carriage = plan.shop.lathe.carriage
            assert carriage is not None
            assert cut.feed in carriage.power_feeds


def ceiling_of(plan: JobPlan, step: Step, cut: MachineCut) -> float:
    """Return the surface speed that the edge of a step bears."""
    if step.operation in {Operation.DRILL, Operation.CENTRE_DRILL}:
        return drilling_speed(plan.material.key).ceiling.value
    return plan.material.speeds[cut.tool_material].ceiling.value


@given(drawn=some_jobs())
@MORE
def test_work_tailstock_and_boring_bar_bear_the_high_side(
    drawn: tuple[str, dict[str, object]], planned: Callable[..., JobPlan]
) -> None:
    plan = planned(*drawn)
    allowances, out = plan.allowances, plan.set_up.overhang
    on_centre = any(step.operation is Operation.SUPPORT for step in plan.steps)
    for _, cut in cuts(plan, Operation.DRILL):
        if cut.load is not None:
            assert cut.load.thrust_high <= allowances.tailstock_push * SLIP
            assert cut.load.torque <= allowances.drill_chuck_torque * SLIP
    for _, cut in cuts(plan, Operation.BORE):
        bar = next(one for one in plan.shop.tools.boring if one.name == cut.tool)
        reach = cut.travel + 3.0
        assert reach <= min(bar.reach, 4.0 * bar.diameter) * SLIP
        if cut.load is not None:
            # F L3 / (3 E I) of a steel bar, EIS: radial 0.3 of the main force.
            inertia = math.pi * bar.diameter**4 / 64.0
            bends = cut.load.force_high * math.hypot(1.0, 0.3) * reach**3
            assert bends / (3.0 * 206000.0 * inertia) <= allowances.boring_deflection * SLIP
    for step, cut in cuts(plan, Operation.FACE, Operation.TURN, Operation.BORE):
        if cut.load is None or (on_centre and step.operation is Operation.TURN):
            continue
        # A long bar is faced before it is drawn out to its centre.
        far = min(out, 3.0 * plan.job.bar.diameter) if on_centre else out
        far = far if step.operation is Operation.FACE else out
        # ISAK: radial 0.25 and feed 0.5 of the main force outside; in facing they change places.
        side = {Operation.FACE: 0.5, Operation.TURN: 0.25, Operation.BORE: 0.3}[step.operation]
        force = cut.load.force_high * math.hypot(1.0, side)
        outer = step.start if step.operation is Operation.FACE else plan.job.piece.diameter
        inner = step.end if step.operation is Operation.BORE else 0.0
        inertia = math.pi / 64.0 * (outer**4 - inner**4)
        modulus = plan.material.youngs_modulus.value
        assert force * far**3 / (3.0 * modulus * inertia) <= allowances.work_deflection * SLIP
        stress = force * far * outer / 2.0 / inertia
        assert stress <= 0.5 * plan.material.tensile_strength.value * SLIP


@given(drawn=some_jobs())
@MORE
def test_passes_take_the_stock_and_drills_go_to_the_end(
    drawn: tuple[str, dict[str, object]], planned: Callable[..., JobPlan]
) -> None:
    plan = planned(*drawn)
    for step, cut in cuts(plan, Operation.FACE, Operation.TURN, Operation.BORE):
        finishes = 1 if cut.finish_depth else 0
        taken = (cut.passes - finishes) * cut.depth + cut.finish_depth
        stock = (
            step.length if step.operation is Operation.FACE else abs(step.start - step.end) / 2.0
        )
        assert taken == pytest.approx(stock, rel=1e-9)
    drills = cuts(plan, Operation.DRILL)
    hole = 0.0
    for step, cut in drills:
        assert step.start == hole < step.end
        hole = step.end
        assert step.end in (plan.shop.tools.drills.diameters if plan.shop.tools.drills else ())
        assert list(cut.pecks) == sorted(set(cut.pecks))
        assert cut.pecks[-1] == cut.travel
        goes = [late - early for early, late in zip((0.0, *cut.pecks), cut.pecks, strict=False)]
        assert goes[0] <= 3.0 * step.end * SLIP
        assert all(go <= step.end * SLIP for go in goes[1:])
    bored = cuts(plan, Operation.BORE)
    missed = [s for s in plan.steps if s.operation is Operation.DRILL and s.refused]
    is_bored = not any(s.refused for s in plan.steps if s.operation is Operation.BORE)
    if plan.job.piece.bore and is_bored and not missed:
        ends = [step.end for step, _ in bored] or [hole]
        assert ends == [pytest.approx(plan.job.piece.bore, abs=0.05)]
    for step, cut in bored:
        assert step.start == (missed[0].end if missed else hole)
        # The bar's end never meets the cone at the bottom of the hole.
        assert cut.travel < (missed[0] if missed else drills[-1][0]).length
        assert cut.travel >= plan.job.piece.length + plan.set_up.kerf


@given(drawn=some_jobs())
@MORE
def test_what_goes_in_comes_out_and_time_adds_up(
    drawn: tuple[str, dict[str, object]], planned: Callable[..., JobPlan]
) -> None:
    plan = planned(*drawn)
    use, job = plan.bar_use, plan.job
    density = plan.material.density.value * 1e-6
    used = math.pi / 4.0 * job.bar.diameter**2 * use.pitch
    assert use.piece_mass / density + use.chips == pytest.approx(used)
    assert use.chips_mass == pytest.approx(use.chips * density)
    assert use.chips > 0.0
    per_piece = sum(step.time for step in plan.steps if step.is_per_piece)
    once = sum(step.time for step in plan.steps if not step.is_per_piece)
    assert plan.whole == pytest.approx(use.bars * once + job.quantity * per_piece)
    for _, cut in cuts(plan, Operation.TURN, Operation.BORE):
        rough = cut.passes - (1 if cut.finish_depth else 0)
        fine = cut.finish_feed if cut.finish_feed and cut.finish_depth else cut.feed
        last = cut.travel / fine if cut.finish_depth else 0.0
        minutes = (rough * cut.travel / cut.feed + last) / cut.spindle_speed
        assert cut.time == pytest.approx(minutes)
    assert planned(*drawn) == plan


@given(drawn=some_jobs())
@FEW
def test_a_stop_never_makes_a_thing_worse(
    drawn: tuple[str, dict[str, object]], planned: Callable[..., JobPlan]
) -> None:
    lathe, parts = drawn
    holding = parts["holding"]
    assert isinstance(holding, Holding)
    without, with_stop = (
        planned(lathe, parts, holding=replace(holding, stop=stop)) for stop in (False, True)
    )
    assert len(refusals(with_stop)) <= len(refusals(without))
    if refusals(with_stop) == refusals(without):
        assert with_stop.whole <= without.whole * 1.02
    for step, cut in cuts(with_stop):
        if cut.load is not None and not math.isinf(cut.load.grip):
            assert step.cut is cut
            assert cut.load.grip_needed <= cut.load.grip * SLIP


def refusals(plan: JobPlan) -> list[Operation]:
    """Return the steps that a plan refuses."""
    return [step.operation for step in plan.steps if step.refused is not None]


@given(drawn=some_jobs(), stronger=st.sampled_from([1.3, 2.0, 3.0]))
@MORE
def test_a_bigger_motor_never_takes_longer_nor_more_passes_at_a_speed(
    drawn: tuple[str, dict[str, object]],
    stronger: float,
    equipped: Equipped,
    job_of: JobOf,
) -> None:
    lathe, parts = drawn
    shop, job = equipped(lathe), job_of(**parts)
    motor = replace(shop.lathe.motor, plate_power=shop.lathe.motor.plate_power * stronger)
    big = replace(shop, lathe=replace(shop.lathe, motor=motor))
    material = load_material(job.material)
    weak, strong = (plan_job(one, job, material) for one in (shop, big))
    assert passes(strong, weak) == []


def passes(strong: JobPlan, weak: JobPlan) -> Sequence[tuple[int, int]]:
    """Return the passes of the steps for which the stronger plan takes longer.

    It may take a pass more where it turns faster, and is sooner done with them all.
    """
    if strong.set_up.overhang != weak.set_up.overhang:
        return []
    outside_and_in = (Operation.FACE, Operation.TURN, Operation.BORE)
    pairs = zip(cuts(weak, *outside_and_in), cuts(strong, *outside_and_in), strict=False)
    return [
        (cut.passes, other.passes)
        for (one, cut), (two, other) in pairs
        if (one.operation, one.start, one.end) == (two.operation, two.start, two.end)
        and (
            two.time > one.time * 1.03
            or (other.passes > cut.passes and other.spindle_speed <= cut.spindle_speed)
        )
    ]
