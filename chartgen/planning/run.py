"""A job -> its plan: which blade, which steps, in the order a careful machinist takes them."""

from collections.abc import Iterable

from chartgen.limits.window import Verdict
from chartgen.model.job import Job
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.planning.bar_use import bar_use, blanks_of, is_sawn, pieces_from, pitch_of
from chartgen.planning.inside import inside
from chartgen.planning.machine import Machine, machine_for
from chartgen.planning.operations import Bound, Operation
from chartgen.planning.outside import edges, is_on_centre, outside
from chartgen.planning.parting import blade_options, chosen_blade, parted
from chartgen.planning.plan import BladeOption, JobPlan, Refusal, Step
from chartgen.planning.set_up import overhang_of, set_up
from chartgen.planning.wear import wear_checks
from chartgen.quantities import Millimetres


def plan_job(shop: Shop, job: Job, material: Material) -> JobPlan:
    """Return the plan of a job on a lathe.

    A step that no setting of this lathe bears is not left out: the step that stands in for it
    is in its place, with what was asked and why it cannot be had.
    """
    machine = machine_for(shop, job, material)
    options = blade_options(machine, diameter=job.piece.diameter, bore=job.piece.bore)
    option = chosen_blade(machine, options)
    saws = option.verdict is Verdict.NO_WINDOW
    kerf = _sawn_kerf(machine) if saws else option.blade.insert_width
    overhang = overhang_of(machine, kerf=kerf)
    turned = outside(machine, overhang=overhang, kerf=kerf)
    has_centre = any(step.operation is Operation.CENTRE_DRILL and step.cut for step in turned)
    steps = (
        *_before(machine, kerf=kerf),
        *turned,
        *edges(machine, overhang=overhang, on_centre=is_on_centre(turned)),
        *inside(machine, overhang=overhang, kerf=kerf, has_centre=has_centre),
        _part(machine, option, turned),
        *_after(machine, kerf=kerf),
    )
    return JobPlan(
        shop=machine.shop,
        job=job,
        material=material,
        allowances=machine.allowances,
        set_up=set_up(machine, kerf=kerf, steps=steps),
        steps=steps,
        bar_use=bar_use(machine, kerf=kerf),
        blade_options=options,
        wear_checks=wear_checks(machine, steps),
    )


def _sawn_kerf(machine: Machine) -> Millimetres[float]:
    """Return the width that a saw takes, with what is faced off the piece's sawn end."""
    return machine.allowances.saw_kerf + machine.allowances.saw_stock


def _before(machine: Machine, *, kerf: Millimetres[float]) -> list[Step]:
    allowances = machine.allowances
    short = None
    if pieces_from(machine, kerf=kerf) == 0:
        short = Refusal(operation=Operation.CHECK, tool="", bound=Bound.BAR_LENGTH)
    steps = [
        Step(
            operation=Operation.CHECK,
            is_per_piece=False,
            handling=allowances.set_up_minutes,
            refused=short,
        )
    ]
    if is_sawn(machine, kerf=kerf):
        use = bar_use(machine, kerf=kerf)
        cuts = blanks_of(machine, kerf=kerf, pieces=min(use.pieces, machine.job.quantity))
        steps.append(
            Step(
                operation=Operation.SAW,
                is_per_piece=False,
                handling=allowances.saw_minutes * max(1, cuts),
                length=use.blank_length,
                start=machine.job.bar.diameter,
            )
        )
    steps.append(
        Step(operation=Operation.HOLD, is_per_piece=False, handling=allowances.hold_minutes)
    )
    return steps


def _part(machine: Machine, option: BladeOption, turned: Iterable[Step]) -> Step:
    """Return the parting step, or the saw in its place with facing the sawn end."""
    piece, allowances = machine.job.piece, machine.allowances
    made = parted(machine, option.blade, diameter=piece.diameter, bore=piece.bore)
    if isinstance(made, Refusal):
        return Step(
            operation=Operation.SAW,
            is_per_piece=True,
            # Sawn, clamped the other way round and faced: about as long as its front took.
            handling=allowances.saw_minutes
            + allowances.hold_minutes
            + sum(step.time for step in turned if step.operation is Operation.FACE and step.cut),
            start=piece.diameter,
            end=piece.bore,
            length=piece.length + allowances.saw_stock,
            refused=made,
        )
    cut, parting = made
    return Step(
        operation=Operation.PART,
        is_per_piece=True,
        handling=allowances.tool_minutes,
        cut=cut,
        start=piece.diameter,
        end=piece.bore,
        length=piece.length,
        parting=parting,
    )


def _after(machine: Machine, *, kerf: Millimetres[float]) -> list[Step]:
    allowances = machine.allowances
    steps = [
        Step(
            operation=Operation.DEBURR,
            is_per_piece=True,
            handling=allowances.deburr_minutes + allowances.measure_minutes,
        )
    ]
    if machine.job.quantity > 1:
        steps.append(
            Step(
                operation=Operation.ADVANCE,
                is_per_piece=True,
                handling=allowances.hold_minutes,
                length=pitch_of(machine, kerf=kerf),
            )
        )
    return steps
