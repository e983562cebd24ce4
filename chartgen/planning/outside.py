"""The steps on the outside of the bar, up to the cut that parts it."""

from collections.abc import Iterable

from chartgen.planning.bar_use import goes_through
from chartgen.planning.drilling import centre_drilled
from chartgen.planning.machine import Machine
from chartgen.planning.made_step import made_step
from chartgen.planning.operations import Bound, Operation
from chartgen.planning.parting import grooved
from chartgen.planning.plan import MachineCut, Refusal, Step
from chartgen.planning.set_up import needs_centre, run_out_of
from chartgen.planning.turning import chamfered, faced, turned, turning_tool
from chartgen.quantities import Millimetres

NO_STOCK: Millimetres[float] = 1e-6
"""Less than this to take off is nothing to take off."""


def outside(
    machine: Machine, *, overhang: Millimetres[float], kerf: Millimetres[float]
) -> list[Step]:
    """Return facing, the centre where it is needed, and the passes down to size."""
    job, allowances = machine.job, machine.allowances
    tool = turning_tool(machine)
    steps: list[Step] = []
    long = needs_centre(machine, overhang=overhang)
    centred = _centred(machine) if job.holding.live_centre or long else []
    on_centre = is_on_centre(centred)
    # Faced and centred while it stands out short, and only then drawn out to the centre: but
    # what does not go into the spindle stands out all the time.
    short = min(overhang, allowances.overhang_most * job.bar.diameter)
    if goes_through(machine) is False:
        short = overhang
    if tool is None:
        steps.append(_without_tool(machine, Operation.FACE, job.bar.diameter))
    else:
        cut = faced(
            machine,
            tool,
            diameter=job.bar.diameter,
            bore=0.0,
            stock=allowances.facing_stock,
            overhang=short if on_centre else overhang,
        )
        steps.append(
            made_step(
                machine, Operation.FACE, cut, start=job.bar.diameter, length=allowances.facing_stock
            )
        )
    steps += centred
    stock = (job.bar.diameter - job.piece.diameter) / 2.0
    if tool is None and stock > NO_STOCK:
        steps.append(_without_tool(machine, Operation.TURN, job.bar.diameter, job.piece.diameter))
    elif tool is not None and stock > NO_STOCK:
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
            made_step(
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


def is_on_centre(steps: Iterable[Step]) -> bool:
    """Return whether a live centre is brought up in one of these steps."""
    return any(step.operation is Operation.SUPPORT and not step.refused for step in steps)


def _without_tool(
    machine: Machine,
    operation: Operation,
    start: Millimetres[float],
    end: Millimetres[float] = 0.0,
) -> Step:
    refused = Refusal(operation=operation, tool="", bound=Bound.NO_TOOL)
    return made_step(machine, operation, refused, start=start, end=end)


def _centred(machine: Machine) -> list[Step]:
    """Return centre drill and live centre; of a long bar without one nothing, for it is told so.

    A centre that the job asks for and the shop does not have is refused.
    """
    allowances, tailstock = machine.allowances, machine.shop.tools.tailstock
    if tailstock is None or not tailstock.live_centre:
        if not machine.job.holding.live_centre:
            return []
        return [_without_tool(machine, Operation.SUPPORT, machine.job.bar.diameter)]
    steps = centre(machine)
    if any(step.refused for step in steps):
        return steps
    up = Step(
        operation=Operation.SUPPORT,
        is_per_piece=True,
        handling=allowances.tool_minutes + allowances.hold_minutes,
    )
    return [*steps, up]


def centre(machine: Machine) -> list[Step]:
    """Return the centre drill's step, refused where none is owned."""
    drills = machine.shop.tools.drills
    if drills is None or drills.centre_drill is None:
        refused = Refusal(operation=Operation.CENTRE_DRILL, tool="", bound=Bound.NO_TOOL)
        return [made_step(machine, Operation.CENTRE_DRILL, refused)]
    cut = centre_drilled(machine, diameter=drills.centre_drill)
    length = cut.travel if isinstance(cut, MachineCut) else 0.0
    return [made_step(machine, Operation.CENTRE_DRILL, cut, end=drills.centre_drill, length=length)]


def edges(machine: Machine, *, overhang: Millimetres[float], on_centre: bool) -> list[Step]:
    """Return groove and chamfer; the centre of a long bar is still up."""
    job, steps = machine.job, list[Step]()
    if job.piece.groove is not None:
        groove = job.piece.groove
        distance = overhang - machine.allowances.facing_stock - groove.from_face - groove.width
        cut = grooved(machine, groove, diameter=job.piece.diameter, distance=distance)
        steps.append(
            made_step(
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
    if job.piece.chamfer > 0.0 and tool is None:
        steps.append(_without_tool(machine, Operation.CHAMFER, job.piece.diameter))
    elif job.piece.chamfer > 0.0 and tool is not None:
        edge = chamfered(
            machine,
            tool,
            diameter=job.piece.diameter,
            width=job.piece.chamfer,
            overhang=overhang,
            on_centre=on_centre,
        )
        steps.append(
            made_step(
                machine,
                Operation.CHAMFER,
                edge,
                start=job.piece.diameter,
                length=job.piece.chamfer,
            )
        )
    return steps
