"""Plans held against published formulas and examples, written out here in their own units."""

import math
from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen.limits.window import Verdict
from chartgen.model.blade import ToolMaterial
from chartgen.model.job import Bar, Holding, Job, Piece
from chartgen.model.shop import Shop
from chartgen.planning.machine import machine_for
from chartgen.planning.operations import FedBy, Operation
from chartgen.planning.plan import JobPlan, MachineCut
from chartgen.planning.run import plan_job
from chartgen.planning.turning import faced
from chartgen.reference.tables import load_material

JobOf = Callable[..., Job]
Equipped = Callable[[str], Shop]
INCH = 25.4


def one(plan: JobPlan, operation: Operation) -> MachineCut:
    """Return the cut of the last step with an operation."""
    return [step.cut for step in plan.steps if step.operation is operation and step.cut][-1]


@pytest.mark.parametrize("lathe", ["built-in", "750 W inverter", "2.2 kW geared"])
@pytest.mark.parametrize(
    ("diameter", "bore"), [pytest.param(25.0, 0.0, id="25"), pytest.param(57.0, 35.0, id="57 ring")]
)
def test_mild_steel_is_parted_by_2_mm_of_carbide_at_about_100_metres(
    equipped: Equipped, job_of: JobOf, lathe: str, diameter: float, bore: float
) -> None:
    # Common practice, no source: a 2 mm carbide blade parts mild steel of 25 mm, and a ring of
    # 57 mm, straight through at about 100 m/min on a small lathe of 750 W or more.
    shop = equipped(lathe)
    blade = shop.blades[0]
    assert (blade.insert_width, blade.tool_material) == (2.0, ToolMaterial.CARBIDE)
    job = job_of(
        Bar(diameter=diameter, length=200.0), Piece(diameter=diameter, length=15.0, bore=bore)
    )
    job = replace(job, choice=replace(job.choice, blade=blade.name))
    plan = plan_job(shop, job, load_material("mild-steel"))
    cut = one(plan, Operation.PART)
    (parting,) = (step.parting for step in plan.steps if step.parting)
    assert parting.verdict in {Verdict.INSIDE, Verdict.TIGHT}
    assert 75.0 <= cut.cutting_speed <= 130.0
    assert 0.03 <= cut.feed <= 0.06
    assert cut.travel == (diameter - bore) / 2.0
    assert not any(step.refused for step in plan.steps)


@pytest.mark.parametrize(
    ("outer", "inner", "speed", "feed", "minutes", "half_a_unit"),
    [
        # GROOS 22.3: 6 in to the centre, 180 rev/min, 0.008 in/rev: 2.083 min.
        pytest.param(6.0, 0.0, 180.0, 0.008, 2.083, 0.0005, id="22.3"),
        # GROOS 22.8: 38 in to 24 in, 40 rev/min, 0.015 in/rev: 11.67 min.
        pytest.param(38.0, 24.0, 40.0, 0.015, 11.67, 0.005, id="22.8"),
    ],
)
def test_facing_takes_the_time_of_printed_examples(
    shop_of: Callable[..., Shop],
    example: Shop,
    job_of: JobOf,
    outer: float,
    inner: float,
    speed: float,
    feed: float,
    minutes: float,
    half_a_unit: float,
) -> None:
    shop = shop_of("2.2 kW geared")
    only = replace(
        shop.lathe.drive.positions[0],
        slowest=speed,
        fastest=speed,
        motor_ratio=1420.0 / speed,
    )
    # A cross-slide of 50 mm a turn: the example knows no hand that holds the feed back.
    lathe = replace(
        shop.lathe,
        drive=replace(shop.lathe.drive, positions=(only,)),
        cross_slide=replace(shop.lathe.cross_slide, travel_per_turn=50.0),
    )
    # Its feed is no multiple of our dial steps of 0.005 mm: next to it, and the time in ratio.
    shop = replace(
        shop,
        lathe=lathe,
        tools=example.tools,
        allowances=dict(shop.allowances) | {"turning_feed": feed * INCH, "grip_safety": 1.0},
    )
    bar = Bar(diameter=outer * INCH, length=900.0)
    job = job_of(bar, Piece(diameter=outer * INCH, length=100.0), holding=Holding(stop=True))
    machine = machine_for(shop, job, load_material("free-cutting-brass"))
    cut = faced(
        machine,
        example.tools.turning[0],
        diameter=outer * INCH,
        bore=inner * INCH,
        stock=0.01,
        overhang=100.0,
    )
    assert isinstance(cut, MachineCut)
    assert (cut.spindle_speed, cut.passes) == (speed, 1)
    assert cut.feed == pytest.approx(feed * INCH, abs=0.005)
    assert cut.time * cut.feed / (feed * INCH) == pytest.approx(minutes, abs=half_a_unit)


def test_facing_is_timed_by_the_formula_for_constant_speed(example: Shop, job_of: JobOf) -> None:
    # TG-6 p. 1069, in seconds: T = 60 (D1 - D2) / (2 f n).
    job = job_of(Bar(diameter=30.0, length=200.0), Piece(diameter=28.0, length=20.0))
    cut = one(plan_job(example, job, load_material("c45")), Operation.FACE)
    seconds = 60.0 * (30.0 - 0.0) / (2.0 * cut.feed * cut.spindle_speed)
    assert 60.0 * cut.time == pytest.approx(cut.passes * seconds)


@pytest.mark.parametrize("material", ["mild-steel", "c45", "grey-iron-250", "aluminium-6082"])
def test_a_drill_asks_what_printed_formulas_ask(
    example: Shop, job_of: JobOf, material: str
) -> None:
    # TBM: Fc = d f / 4 kc an edge, Pc = z Fc vc / 2, Md = Pc / (2 pi n); kc at h = f / 2 sin(59).
    # CH-A: Ff = 0.45 d f kc. Both for the solid: a drill of 6 mm, the way to a hole of 6 mm.
    job = job_of(
        Bar(diameter=20.0, length=200.0),
        Piece(diameter=20.0, length=12.0, bore=6.0),
        holding=Holding(stop=True),
    )
    plan = plan_job(example, job, load_material(material))
    (cut,) = (s.cut for s in plan.steps if s.operation is Operation.DRILL and s.cut)
    force = plan.material.force
    assert force is not None
    assert cut.load is not None
    kc1, mc = force.specific_force.value, force.thickness_exponent.value
    chip = cut.feed / 2.0 * math.sin(math.radians(59.0))
    # 1.2 for a part-worn edge; the band ends 55 % above.
    kc = kc1 * chip**-mc * 1.2 * 1.55
    edge = 6.0 * cut.feed / 4.0 * kc
    speed = math.pi * 6.0 * cut.spindle_speed / 1000.0
    power = 2.0 * edge * speed / 2.0 / 60.0
    assert cut.load.power == pytest.approx(power)
    assert cut.load.torque == pytest.approx(60.0 * power / (2.0 * math.pi * cut.spindle_speed))
    assert cut.load.thrust_high == pytest.approx(0.45 * 6.0 * cut.feed * kc)


@pytest.mark.parametrize(
    ("material", "density"),
    [
        # CALL, table B.1, g/cm3: A36, 304, 6061, C36000.
        ("mild-steel", 7.85),
        ("stainless-304", 8.00),
        ("aluminium-6082", 2.70),
        ("free-cutting-brass", 8.50),
    ],
)
def test_a_piece_weighs_its_volume_times_the_printed_density(
    example: Shop, job_of: JobOf, material: str, density: float
) -> None:
    # 30 mm by 20 mm with a bore of 10 mm: pi / 4 (3^2 - 1^2) 2 = 4 pi cm3.
    job = job_of(Bar(diameter=32.0, length=200.0), Piece(diameter=30.0, length=20.0, bore=10.0))
    use = plan_job(example, job, load_material(material)).bar_use
    assert 1000.0 * use.piece_mass == pytest.approx(4.0 * math.pi * density)
    # With 2 mm or 1/16 in of kerf and 0.5 mm of facing: pi / 4 3.2^2 of bar a centimetre.
    bar = math.pi / 4.0 * 3.2**2 * use.pitch / 10.0
    assert 1000.0 * use.chips_mass == pytest.approx((bar - 4.0 * math.pi) * density)


def test_a_carriage_feed_is_one_of_the_gearbox(example: Shop, job_of: JobOf) -> None:
    job = job_of(Bar(diameter=32.0, length=200.0), Piece(diameter=30.0, length=20.0))
    cut = one(plan_job(example, job, load_material("mild-steel")), Operation.TURN)
    assert cut.fed_by is FedBy.POWER
    # GROOS 22.1 and 22.2: Tm = L / (f n), pass by pass.
    fine = 22.0 / (0.05 * cut.spindle_speed)
    rough = (cut.passes - 1) * 22.0 / (0.1 * cut.spindle_speed)
    assert cut.travel in {22.0, 21.5875}
    assert cut.time == pytest.approx((rough + fine) * cut.travel / 22.0)
