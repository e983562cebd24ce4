"""The edge of long and of large work, and feeds as an inch gearbox lists them."""

from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise

import pytest

from chartgen.model.job import Bar, Job, Piece
from chartgen.model.lathe import BarSurface
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.planning.feeding import finishing_feed, gentler_feeds, given_feed
from chartgen.planning.machine import machine_for
from chartgen.planning.operations import Bound, FedBy, Operation
from chartgen.planning.plan import JobPlan, Step
from chartgen.planning.run import plan_job

JobOf = Callable[..., Job]


def the(plan: JobPlan, operation: Operation) -> Step:
    """Return the one step with an operation."""
    (step,) = (step for step in plan.steps if step.operation is operation)
    return step


def test_a_long_pin_is_chamfered_while_its_centre_is_up(
    example: Shop, job_of: JobOf, mild_steel: Material
) -> None:
    bar = Bar(diameter=12.0, length=300.0)
    piece = Piece(diameter=10.0, length=90.0, chamfer=0.5)
    on_centre = plan_job(example, job_of(bar, piece), mild_steel)
    assert the(on_centre, Operation.SUPPORT).refused is None
    assert the(on_centre, Operation.CHAMFER).cut is not None
    # Without one the same edge, 97 mm out of the jaws, bends away.
    tools = replace(example.tools, tailstock=None)
    free = plan_job(replace(example, tools=tools), job_of(bar, piece), mild_steel)
    refused = the(free, Operation.CHAMFER).refused
    assert refused is not None
    assert refused.bound is Bound.BAR_BENDS


def test_a_broad_chamfer_is_fed_more_finely_before_it_is_refused(
    example: Shop, job_of: JobOf, mild_steel: Material
) -> None:
    bar = Bar(diameter=85.0, length=200.0, surface=BarSurface.BLACK)
    job = job_of(bar, Piece(diameter=80.0, length=15.0, bore=55.0, chamfer=1.0), quantity=4)
    cut = the(plan_job(example, job, mild_steel), Operation.CHAMFER).cut
    assert cut is not None
    assert cut.load is not None
    assert cut.load.torque <= cut.load.torque_available
    # 0.05 mm is its start feed; the motor holds it under that, and the card says so.
    assert 0.025 <= cut.feed < 0.05
    assert cut.binds is Bound.TORQUE


@pytest.fixture
def inch_gearbox(example: Shop) -> Shop:
    """Return the built-in lathe with a gearbox that lists round feeds in inches."""
    carriage = example.lathe.carriage
    assert carriage is not None
    listed = tuple(25.4 * feed for feed in (0.002, 0.004, 0.008))
    lathe = replace(example.lathe, carriage=replace(carriage, power_feeds=listed))
    return replace(example, lathe=lathe)


def test_an_inch_gearbox_is_not_held_to_half_a_feed_for_a_hair(
    inch_gearbox: Shop, job_of: JobOf, mild_steel: Material
) -> None:
    # 0.004 in = 0.1016 mm for 0.1 mm; 0.002 in = 0.0508 mm for 0.05 mm.
    job = job_of(Bar(diameter=30.0, length=120.0), Piece(diameter=26.0, length=20.0))
    cut = the(plan_job(inch_gearbox, job, mild_steel), Operation.TURN).cut
    assert cut is not None
    assert cut.fed_by is FedBy.POWER
    assert cut.feed == pytest.approx(0.1016)
    assert cut.finish_feed == pytest.approx(0.0508)


def test_a_gearbox_that_roughs_finishes_at_its_finest(
    example: Shop, job_of: JobOf, mild_steel: Material
) -> None:
    carriage = example.lathe.carriage
    assert carriage is not None
    coarse = replace(carriage, power_feeds=(0.08, 0.1, 0.2))
    shop = replace(example, lathe=replace(example.lathe, carriage=coarse))
    job = job_of(Bar(diameter=30.0, length=120.0), Piece(diameter=26.0, length=20.0))
    machine = machine_for(shop, job, mild_steel)
    rough = given_feed(machine, wanted=0.1, speed=1000.0, slide=FedBy.CARRIAGE)
    fine = finishing_feed(machine, rough, wanted=0.05, speed=1000.0, slide=FedBy.CARRIAGE)
    assert (fine.feed, fine.fed_by) == (0.08, FedBy.POWER)


@pytest.mark.parametrize("slide", [FedBy.CARRIAGE, FedBy.CROSS_SLIDE])
def test_gentler_feeds_fall_and_never_under_half(
    inch_gearbox: Shop, job_of: JobOf, mild_steel: Material, slide: FedBy
) -> None:
    job = job_of(Bar(diameter=30.0, length=120.0), Piece(diameter=26.0, length=20.0))
    machine = machine_for(inch_gearbox, job, mild_steel)
    feeds = [given.feed for given in gentler_feeds(machine, wanted=0.1, speed=300.0, slide=slide)]
    assert len(feeds) >= 2
    assert all(more > less for more, less in pairwise(feeds))
    assert min(feeds) >= 0.05
