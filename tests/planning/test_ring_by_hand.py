"""Every number of one planned job, worked out beside it with a pocket calculator.

The job is the ring of the examples on the built-in lathe: aluminium bronze, bar 42 mm, piece 40
by 12 mm with a bore of 25 mm, three from one blank. Nothing here calls a formula of the project:
the numbers of the data files stand here as they are printed there.
"""

import math
from pathlib import Path

import pytest

from chartgen.model.shop import Shop
from chartgen.pipeline import describe_job
from chartgen.planning.operations import Bound, FedBy, Operation
from chartgen.planning.plan import JobPlan, Load, MachineCut
from chartgen.planning.run import plan_job
from chartgen.reference.tables import load_material

# Aluminium bronze: kc1.1 1065 N/mm2, mc 0.27, band -35 +60 %; turning force times 1.2 for a
# part-worn edge, parting and grooving times 1.3.
KC, MC, LOW, HIGH = 1065.0, 0.27, 0.65, 1.60
# Motor 750 W at 1400 rev/min: 60 * 750 / (2 pi 1400) = 5.116 N.m. Low position 2800 / 1000 = 2.8
# motor turns for one, high 2800 / 2500 = 1.12. V-belt 0.93, bearings 0.98.
RATED = 60.0 * 750.0 / (2.0 * math.pi * 1400.0)
AT_SPINDLE_LOW = RATED * 2.8 * 0.93 * 0.98  # 13.06 N.m
AT_SPINDLE_HIGH = RATED * 1.12 * 0.93 * 0.98  # 5.22 N.m
# Chuck 125 mm: half of the table's 24 kN; its jaws lose half of the table's grip at 5500 rev/min.
GRIP = 12000.0
LOST_AT_5500 = 12000.0
# Bright bar in smooth jaws 0.10, a copper alloy times 0.90.
FRICTION = 0.09


def lost(speed: float) -> float:
    """Return the grip that the jaws lose at a speed: with its square."""
    return LOST_AT_5500 * (speed / 5500.0) ** 2


def grip_for(torque: float, speed: float) -> float:
    """Return the static grip for a torque at the bar's 42 mm; the stop takes every push."""
    return 1.5 * (1.2 * 2000.0 * torque / 42.0 / FRICTION + lost(speed))


@pytest.fixture(scope="module")
def plan(example: Shop) -> JobPlan:
    folder = Path(__file__).parents[2] / "output_examples" / "jobs"
    job = describe_job((folder / "ring.toml").read_bytes(), "ring.toml", example)
    return plan_job(example, job, load_material(job.material))


def cut_of(plan: JobPlan, operation: Operation, size: float | None = None) -> MachineCut:
    """Return the cut of the one step with an operation, of drills the one of a size."""
    (cut,) = (
        step.cut
        for step in plan.steps
        if step.operation is operation and step.cut and size in {None, step.end}
    )
    return cut


def check(
    load: Load | None, *, force: float, torque: float, available: float, speed: float
) -> None:
    """Hold a load to a force (expected), a torque (high side) and what there is."""
    assert load is not None
    assert load.torque == pytest.approx(torque, rel=1e-9)
    assert load.torque_available == pytest.approx(available, rel=1e-9)
    # P = 2 pi n T / 60.
    assert load.power == pytest.approx(2.0 * math.pi * speed * torque / 60.0, rel=1e-9)
    assert load.power_available == pytest.approx(2.0 * math.pi * speed * available / 60.0, rel=1e-9)
    assert load.force == pytest.approx(force, rel=1e-9)
    assert load.grip_needed == pytest.approx(grip_for(torque, speed), rel=1e-9)
    assert load.grip == GRIP


def test_the_steps_stand_in_the_order_of_work(plan: JobPlan) -> None:
    order = "check saw hold face turn groove chamfer centre_drill drill drill bore part deburr"
    names = [step.operation.name.lower() for step in plan.steps]
    assert names == [*order.split(), "advance"]


def test_facing(plan: JobPlan) -> None:
    # Start speed sqrt(42 * 63) = 51.4 m/min: 51 440 / (pi 42) = 389.9, dial 390.
    # Hand on the cross-slide, 30 turns of 2 mm a minute: 60 / 390 = 0.154 mm/rev, so 0.1 stands.
    cut = cut_of(plan, Operation.FACE)
    assert (cut.spindle_speed, cut.position.mark) == (390.0, "L")
    assert cut.cutting_speed == pytest.approx(math.pi * 42.0 * 390.0 / 1000.0)  # 51.46
    assert (cut.feed, cut.fed_by) == (pytest.approx(0.1), FedBy.CROSS_SLIDE)
    assert cut.seconds_per_turn == pytest.approx(2.0 / (0.1 * 390.0) * 60.0)  # 3.08
    # 0.5 mm in one pass: F = 1065 * 0.5 * 0.1^0.73 * 1.2 = 119 N, 77 to 190 N.
    assert (cut.passes, cut.depth) == (1, pytest.approx(0.5))
    force = KC * 0.5 * 0.1 ** (1.0 - MC) * 1.2
    assert force == pytest.approx(119.0, abs=0.05)
    # M = 190.4 * 42 / 2000 = 4.00 N.m. Motor at 390 * 2.8 = 1092 of 1400 rev/min: its own fan
    # leaves 0.9 + 0.1 * (0.78 - 0.33) / 0.67 = 0.967 of 13.06: 12.63 N.m.
    available = AT_SPINDLE_LOW * (0.9 + 0.1 * (0.78 - 0.33) / 0.67)
    check(cut.load, force=force, torque=force * HIGH * 0.021, available=available, speed=390.0)
    assert cut.load is not None
    assert cut.load.force_low == pytest.approx(force * LOW)
    assert cut.load.force_high == pytest.approx(force * HIGH)
    # 21 mm at 39 mm/min.
    assert cut.time == pytest.approx(21.0 / 39.0)
    assert cut.binds is Bound.NOTHING


def test_turning(plan: JobPlan) -> None:
    # 42 to 40: 1 mm off the radius, 0.8 + 0.2; feeds 0.1 and 0.05 stand on the gearbox.
    cut = cut_of(plan, Operation.TURN)
    assert cut.spindle_speed == 390.0
    assert (cut.passes, cut.depth, cut.finish_depth) == (2, pytest.approx(0.8), 0.2)
    assert (cut.feed, cut.finish_feed, cut.fed_by) == (0.1, 0.05, FedBy.POWER)
    # The bar may run out by 0.1: its high side is 0.85 deep.
    force = KC * 0.85 * 0.1 ** (1.0 - MC) * 1.2  # 202 N
    available = AT_SPINDLE_LOW * (0.9 + 0.1 * (0.78 - 0.33) / 0.67)
    check(cut.load, force=force, torque=force * HIGH * 0.021, available=available, speed=390.0)
    assert cut.load is not None
    assert cut.load.thrust_high == pytest.approx(0.5 * force * HIGH)
    # 12 mm and the cut of 1/16 in behind it: 13.5875 mm at 39 and at 19.5 mm/min.
    assert cut.travel == pytest.approx(13.5875)
    assert cut.time == pytest.approx(13.5875 / 39.0 + 13.5875 / 19.5)


def test_groove(plan: JobPlan) -> None:
    # Blade 3 mm, 42 m/min at 40 mm: 334, dial 330. Start feed 0.060, held down to 0.035.
    cut = cut_of(plan, Operation.GROOVE)
    assert (cut.spindle_speed, cut.feed) == (330.0, pytest.approx(0.035))
    assert cut.passes == 1

    def high(feed: float) -> float:
        return float(KC * 3.0 * feed ** (1.0 - MC) * 1.3 * HIGH)

    force = high(0.035) / HIGH
    assert force == pytest.approx(359.4, abs=0.05)
    # Motor at 924 rev/min, 0.66 of its speed: 0.9 + 0.1 * 0.33 / 0.67 = 0.949: 12.39 N.m.
    available = AT_SPINDLE_LOW * (0.9 + 0.1 * 0.33 / 0.67)
    check(cut.load, force=force, torque=high(0.035) * 0.020, available=available, speed=330.0)
    # One step more of feed is too much for the grip: 1.5 (1.2 * 634 * 40 / 42 / 0.09 + 43).
    assert grip_for(high(0.040) * 0.020, 330.0) > GRIP
    assert cut.time == pytest.approx(1.2 / (0.035 * 330.0))


def test_chamfer(plan: JobPlan) -> None:
    # Half of 51.4 m/min at 40 mm: 204.7, dial 200; flank 0.5 * sqrt 2 = 0.707 mm at 0.05.
    cut = cut_of(plan, Operation.CHAMFER)
    assert (cut.spindle_speed, cut.feed) == (200.0, pytest.approx(0.05))
    force = KC * 0.5 * math.sqrt(2.0) * 0.05 ** (1.0 - MC) * 1.2  # 101 N
    # 560 rev/min at the motor, 0.4 of its speed: 0.5 + 0.5 * 0.8 = 0.9 and
    # 0.9 + 0.1 * 0.07 / 0.67 = 0.910: the lower.
    check(
        cut.load,
        force=force,
        torque=force * HIGH * 0.020,
        available=AT_SPINDLE_LOW * 0.9,
        speed=200.0,
    )
    assert cut.time == pytest.approx(0.5 / (0.05 * 200.0))


def test_centre_drill(plan: JobPlan) -> None:
    # 14.5 m/min at 2.5 mm: 1846, dial 1850, only in the high position. Half of 0.025 mm/rev: 0.012.
    cut = cut_of(plan, Operation.CENTRE_DRILL)
    assert (cut.spindle_speed, cut.position.mark) == (1850.0, "H")
    assert cut.feed == pytest.approx(0.012)
    # Two diameters deep at 22.2 mm/min; the wheel moves 2 mm a turn.
    assert cut.time == pytest.approx(5.0 / (0.012 * 1850.0))
    assert cut.seconds_per_turn == pytest.approx(60.0 * 2.0 / (0.012 * 1850.0))
    chip = 0.006 * math.sin(math.radians(59.0))
    torque = KC * chip**-MC * 1.2 * 0.012 * 2.5**2 / 8000.0 * 1.55  # 0.077 N.m
    # 2072 rev/min at the motor, 1.48 of its speed: constant power.
    assert cut.load is not None
    assert cut.load.torque == pytest.approx(torque)
    assert cut.load.torque_available == pytest.approx(AT_SPINDLE_HIGH / 1.48)
    assert cut.load.grip_needed == pytest.approx(grip_for(torque, 1850.0))


@pytest.mark.parametrize(
    ("size", "pilot", "speed", "feed", "share"),
    [
        # 17.09 mm deep is 2.51 diameters: 0.949 of 14.5 m/min, 643.9, dial 640. Feed between
        # 0.05 at 6.35 and 0.1 at 12.7: 0.0535, times 0.949: 0.0508, so 0.050.
        # 1792 rev/min at the motor: above its speed, 1 / 1.28.
        pytest.param(6.8, 0.0, 640.0, 0.05, 1.0 / 1.28, id="6.8"),
        # 14.5 m/min: 288.5, dial 290. Feed 0.1 + 0.075 * 3.3 / 12.7 = 0.1195, so 0.115; there
        # 13.4 N.m are asked of 12.24, at 0.105 12.6, at 0.100 12.16.
        # 812 rev/min at the motor, 0.58: 0.9 + 0.1 * 0.25 / 0.67 = 0.937.
        pytest.param(16.0, 6.8, 290.0, 0.10, 0.9 + 0.1 * 0.25 / 0.67, id="16"),
    ],
)
def test_drills(
    plan: JobPlan, size: float, pilot: float, speed: float, feed: float, share: float
) -> None:
    cut = cut_of(plan, Operation.DRILL, size)
    assert (cut.spindle_speed, cut.feed) == (speed, pytest.approx(feed))
    # Through piece, cut and facing, 3 mm more for the end of the boring bar, and the point.
    depth = 12.0 + 1.5875 + 0.5 + 3.0 + size / 2.0 / math.tan(math.radians(59.0))
    assert cut.travel == pytest.approx(depth)
    # Less than three diameters: in one go.
    assert cut.pecks == (pytest.approx(depth),)
    assert cut.time == pytest.approx(depth / (feed * speed))
    assert cut.seconds_per_turn == pytest.approx(60.0 * 2.0 / (feed * speed))
    # [TBM] M = kc f (D2 - d2) / 8000, kc at the chip of half the feed; [CH-A] 0.45 f kc (D - d).
    specific = KC * (feed / 2.0 * math.sin(math.radians(59.0))) ** -MC * 1.2
    torque = specific * feed * (size**2 - pilot**2) / 8000.0
    load = cut.load
    assert load is not None
    assert load.torque == pytest.approx(1.55 * torque)
    assert load.thrust_high == pytest.approx(1.55 * 0.45 * feed * specific * (size - pilot))
    assert load.torque_available == pytest.approx(AT_SPINDLE_LOW * share)
    assert load.grip_needed == pytest.approx(grip_for(1.55 * torque, speed))
    assert load.thrust_high < 2500.0  # what the tailstock bears
    assert load.torque < 15.0  # and the drill chuck


def test_boring(plan: JobPlan) -> None:
    # 0.8 * 51.4 m/min at 25 mm: 524, dial 520. Feed a quarter of the nose: 0.1, on the gearbox.
    cut = cut_of(plan, Operation.BORE)
    assert cut.tool == "12 mm bar"  # it wants a hole of 14 mm
    assert (cut.spindle_speed, cut.feed, cut.finish_feed) == (520.0, 0.10, 0.05)
    # 16 to 25: 4.5 mm off the radius: 4.3 in five passes of no more than 1 mm, and 0.2.
    assert (cut.passes, cut.finish_depth) == (6, 0.2)
    assert cut.depth == pytest.approx(4.3 / 5.0)
    force = KC * 4.3 / 5.0 * 0.10 ** (1.0 - MC) * 1.2  # 205 N
    # 1456 rev/min at the motor: 1 / 1.04.
    check(
        cut.load,
        force=force,
        torque=force * HIGH * 0.0125,
        available=AT_SPINDLE_LOW / 1.04,
        speed=520.0,
    )
    # Through the cut and half a millimetre more, 3 mm less deep than the drill.
    assert cut.travel == pytest.approx(14.0875)
    assert cut.time == pytest.approx(5.0 * 14.0875 / 52.0 + 14.0875 / 26.0)
    # Bar 12 mm, 17.09 mm out: I = pi 12^4 / 64 = 1018 mm4; at 327 N and 0.3 of it sideways
    # 327 * 1.044 * 17.09^3 / (3 * 206000 * 1018) = 0.0027 mm of the 0.03 allowed.
    bends = force * HIGH * math.hypot(1.0, 0.3) * 17.0875**3 / (3.0 * 206000.0 * 1017.9)
    assert bends == pytest.approx(0.0027, abs=0.0001)


def test_parting(plan: JobPlan) -> None:
    # High-speed steel, 14 m/min at 40 mm: 111, dial 110. Start feed 0.05 * 1.5875 / 2 = 0.0397.
    cut = cut_of(plan, Operation.PART)
    assert (cut.tool, cut.spindle_speed) == ("1.6 HSS", 110.0)
    assert cut.feed == pytest.approx(0.040)
    force = KC * 1.5875 * 0.04 ** (1.0 - MC) * 1.3  # 210 N
    # A ring is a long cut: the motor for ever, at 308 rev/min, 0.22 of its speed:
    # 0.5 + 0.5 * 0.44 = 0.72, below 0.5 + 0.4 * 0.17 / 0.28 = 0.743.
    check(
        cut.load,
        force=force,
        torque=force * HIGH * 0.020,
        available=AT_SPINDLE_LOW * 0.72,
        speed=110.0,
    )
    assert cut.travel == 7.5
    assert cut.time == pytest.approx(7.5 / (0.04 * 110.0))
    assert cut.seconds_per_turn == pytest.approx(2.0 / 4.4 * 60.0)


def test_how_the_blank_stands(plan: JobPlan) -> None:
    # Each piece uses 12 + 1.5875 + 0.5 = 14.0875 mm. Parted no further than 42 mm from the jaws:
    # 5 + 1.5875 + 2 * 14.0875 = 34.8 (three), with a fourth 48.9: three. Out: 5 + 3 * 14.0875.
    up, use = plan.set_up, plan.bar_use
    assert use.pitch == pytest.approx(14.0875)
    assert use.pieces_a_blank == 3
    assert up.overhang == pytest.approx(47.2625)
    # 25 mm in the jaws: a blank of 72.26 of the bar's 110; the rest of 36.2 mm less the saw's
    # 1.5 holds 30 and not another 14.09.
    assert use.blank_length == pytest.approx(72.2625)
    assert (use.pieces, use.bars, use.blanks, use.pieces_of_last) == (3, 1, 1, 3)
    assert use.remnant == pytest.approx(30.0)
    # The wide drill asks most of the grip: 12.157 N.m at 290 rev/min, 579 N at 42 mm; a reserve
    # of 1.2, friction 0.09, 33 N lost, a reserve of 1.5. 250 N for each N.m on the key.
    needed = 1.5 * (1.2 * 2000.0 * 12.157 / 42.0 / 0.09 + 12000.0 * (290.0 / 5500.0) ** 2)
    assert up.grip_needed == pytest.approx(needed, rel=2e-4)
    assert up.key_torque == pytest.approx(needed / 250.0, rel=2e-4)


def test_mass_and_chips(plan: JobPlan) -> None:
    # pi / 4 (40^2 - 25^2) 12 = 9189 mm3 less the groove pi / 4 (40^2 - 37.6^2) 3 = 439: 8750 mm3,
    # times 7.6 g/cm3. The bar gives pi / 4 42^2 14.0875 = 19 517 mm3.
    piece = math.pi / 4.0 * ((40.0**2 - 25.0**2) * 12.0 - (40.0**2 - 37.6**2) * 3.0)
    bar = math.pi / 4.0 * 42.0**2 * 14.0875
    use = plan.bar_use
    assert use.piece_mass == pytest.approx(piece * 7.6e-6)  # 66.5 g
    assert use.chips == pytest.approx(bar - piece)
    assert use.chips_mass == pytest.approx((bar - piece) * 7.6e-6)


def test_times(plan: JobPlan) -> None:
    # Once: 10 to set up, 5 to saw, 2 to hold. Each piece beside the cut: eight tools (face, turn,
    # groove, chamfer, three drills, bar) and the blade 9; a pass more at the turning 0.2, five at
    # the boring 1.0; three measurements 3; deburr and measure 2.5; advance 2.
    assert plan.once == pytest.approx(17.0)
    beside = 9.0 + 0.2 + 1.0 + 3.0 + 2.5 + 2.0
    cutting = sum(step.cut.time for step in plan.steps if step.cut)
    assert plan.per_piece == pytest.approx(beside + cutting)
    assert plan.whole == pytest.approx(17.0 + 3.0 * (beside + cutting))
