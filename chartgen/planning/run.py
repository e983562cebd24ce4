"""A job -> its plan: which blade, which steps, in the order a careful machinist takes them."""

from chartgen.limits.window import Verdict
from chartgen.model.job import Job
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.planning.bar_use import bar_use, goes_through, pitch_of
from chartgen.planning.boring import OUT_OF_BORE, bored, boring_bar, hole_for
from chartgen.planning.drilling import centre_drilled, drilled
from chartgen.planning.machine import Machine, machine_for
from chartgen.planning.operations import Bound, Operation
from chartgen.planning.parting import blade_options, chosen_blade, grooved, parted
from chartgen.planning.plan import BladeOption, JobPlan, MachineCut, Refusal, Step
from chartgen.planning.set_up import needs_centre, overhang_of, run_out_of, set_up
from chartgen.planning.turning import chamfered, faced, turned, turning_tool
from chartgen.planning.wear import wear_checks
from chartgen.quantities import Millimetres, Minutes

_NO_STOCK = 1e-6


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
    steps = (
        *_before(machine, kerf=kerf),
        *_outside(machine, overhang=overhang, kerf=kerf),
        *_inside(machine, overhang=overhang, kerf=kerf),
        *_edges(machine, overhang=overhang),
        _part(machine, option),
        *_after(machine, kerf=kerf),
    )
    return JobPlan(
        shop=machine.shop,
        job=job,
        material=material,
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
    steps = [
        Step(operation=Operation.CHECK, is_per_piece=False, handling=allowances.set_up_minutes)
    ]
    if goes_through(machine) is False:
        length = bar_use(machine, kerf=kerf).blank_length
        steps.append(
            Step(
                operation=Operation.SAW,
                is_per_piece=False,
                handling=allowances.saw_minutes,
                length=length,
                start=machine.job.bar.diameter,
            )
        )
    steps.append(
        Step(operation=Operation.HOLD, is_per_piece=False, handling=allowances.hold_minutes)
    )
    return steps


def _outside(
    machine: Machine, *, overhang: Millimetres[float], kerf: Millimetres[float]
) -> list[Step]:
    """Return facing, the centre where it is needed, and the passes down to size."""
    job, allowances = machine.job, machine.allowances
    tool = turning_tool(machine)
    steps: list[Step] = []
    if tool is not None:
        cut = faced(
            machine,
            tool,
            diameter=job.bar.diameter,
            bore=0.0,
            stock=allowances.facing_stock,
            overhang=overhang,
        )
        steps.append(
            _step(
                machine, Operation.FACE, cut, start=job.bar.diameter, length=allowances.facing_stock
            )
        )
    long = needs_centre(machine, overhang=overhang)
    on_centre = job.holding.live_centre or (long and _has_centre(machine))
    stock = (job.bar.diameter - job.piece.diameter) / 2.0
    if on_centre:
        steps += _centre(machine)
        steps.append(
            Step(operation=Operation.SUPPORT, is_per_piece=True, handling=allowances.tool_minutes)
        )
    if tool is not None and stock > _NO_STOCK:
        turn = turned(
            machine,
            tool,
            start=job.bar.diameter,
            end=job.piece.diameter,
            travel=job.piece.length + kerf,
            overhang=overhang,
            run_out=run_out_of(machine),
            on_centre=on_centre,
        )
        steps.append(
            _step(
                machine,
                Operation.TURN,
                turn,
                start=job.bar.diameter,
                end=job.piece.diameter,
                length=job.piece.length + kerf,
                measured=True,
            )
        )
    return steps


def _has_centre(machine: Machine) -> bool:
    tailstock = machine.shop.tools.tailstock
    return tailstock is not None and tailstock.live_centre


def _centre(machine: Machine) -> list[Step]:
    drills = machine.shop.tools.drills
    if drills is None or drills.centre_drill is None:
        return []
    cut = centre_drilled(machine, diameter=drills.centre_drill)
    return [_step(machine, Operation.CENTRE_DRILL, cut, end=drills.centre_drill, length=cut.travel)]


def _inside(
    machine: Machine, *, overhang: Millimetres[float], kerf: Millimetres[float]
) -> list[Step]:
    """Return the way to the bore: centre, drills by rising size, the boring bar."""
    bore = machine.job.piece.bore
    if bore == 0.0:
        return []
    # Through the piece and the cut that parts it, so that the blade breaks into the bore.
    depth = machine.job.piece.length + kerf + machine.allowances.facing_stock
    hole = hole_for(machine, bore=bore)
    if hole is None:
        refusal = Refusal(operation=Operation.DRILL, tool="", bound=Bound.NO_TOOL)
        return [_step(machine, Operation.DRILL, refusal, end=bore, length=depth)]
    steps = _centre(machine)
    way = drilled(machine, final=hole, depth=depth)
    if isinstance(way, Refusal):
        return [*steps, _step(machine, Operation.DRILL, way, end=hole, length=depth)]
    before = 0.0
    for diameter, cut in way:
        steps.append(_step(machine, Operation.DRILL, cut, start=before, end=diameter, length=depth))
        before = diameter
    bar = boring_bar(machine, hole=hole)
    if bore - hole > _NO_STOCK and bar is not None:
        cut_or_not = bored(
            machine,
            bar,
            hole=hole,
            bore=bore,
            length=machine.job.piece.length + kerf / 2.0 + OUT_OF_BORE,
            overhang=overhang,
        )
        steps.append(
            _step(
                machine,
                Operation.BORE,
                cut_or_not,
                start=hole,
                end=bore,
                length=depth,
                measured=True,
            )
        )
    return steps


def _edges(machine: Machine, *, overhang: Millimetres[float]) -> list[Step]:
    job, steps = machine.job, list[Step]()
    if job.piece.groove is not None:
        cut = grooved(machine, job.piece.groove, diameter=job.piece.diameter)
        steps.append(
            _step(
                machine,
                Operation.GROOVE,
                cut,
                start=job.piece.diameter,
                end=job.piece.diameter - 2.0 * job.piece.groove.depth,
                length=job.piece.groove.width,
                measured=True,
            )
        )
    tool = turning_tool(machine)
    if job.piece.chamfer > 0.0 and tool is not None:
        edge = chamfered(
            machine,
            tool,
            diameter=job.piece.diameter,
            width=job.piece.chamfer,
            overhang=overhang,
        )
        steps.append(
            _step(
                machine,
                Operation.CHAMFER,
                edge,
                start=job.piece.diameter,
                length=job.piece.chamfer,
            )
        )
    return steps


def _part(machine: Machine, option: BladeOption) -> Step:
    """Return the parting step, or the saw in its place."""
    piece, allowances = machine.job.piece, machine.allowances
    made = parted(machine, option.blade, diameter=piece.diameter, bore=piece.bore)
    if isinstance(made, Refusal):
        return Step(
            operation=Operation.SAW,
            is_per_piece=True,
            handling=allowances.saw_minutes + allowances.hold_minutes,
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


def _step(
    machine: Machine,
    operation: Operation,
    made: MachineCut | Refusal,
    *,
    start: Millimetres[float] = 0.0,
    end: Millimetres[float] = 0.0,
    length: Millimetres[float] = 0.0,
    measured: bool = False,
) -> Step:
    """Return a step of a cut with its allowance of time, or of what refuses it."""
    allowances = machine.allowances
    if isinstance(made, Refusal):
        return Step(
            operation=operation,
            is_per_piece=True,
            handling=allowances.tool_minutes,
            start=start,
            end=end,
            length=length,
            refused=made,
        )
    handling: Minutes[float] = allowances.tool_minutes
    handling += (made.passes - 1) * allowances.pass_minutes
    handling += max(0, len(made.pecks) - 1) * allowances.peck_minutes
    handling += allowances.measure_minutes if measured else 0.0
    return Step(
        operation=operation,
        is_per_piece=True,
        handling=handling,
        cut=made,
        start=start,
        end=end,
        length=length,
    )
