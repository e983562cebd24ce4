"""The steps to the bore: centre, drills by rising size, the boring bar."""

from chartgen.planning.boring import OUT_OF_BORE, bored, boring_bar, hole_for
from chartgen.planning.drilling import drilled
from chartgen.planning.machine import Machine
from chartgen.planning.made_step import made_step
from chartgen.planning.operations import Bound, Operation
from chartgen.planning.outside import NO_STOCK, centre
from chartgen.planning.plan import Refusal, Step
from chartgen.quantities import Millimetres


def inside(
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
        return [made_step(machine, Operation.DRILL, refusal, end=bore, length=depth)]
    steps = centre(machine)
    way = drilled(machine, final=hole, depth=depth)
    if isinstance(way, Refusal):
        return [*steps, made_step(machine, Operation.DRILL, way, end=hole, length=depth)]
    before = 0.0
    for diameter, cut in way:
        steps.append(
            made_step(machine, Operation.DRILL, cut, start=before, end=diameter, length=depth)
        )
        before = diameter
    bar = boring_bar(machine, hole=hole)
    if bore - hole > NO_STOCK and bar is not None:
        cut_or_not = bored(
            machine,
            bar,
            hole=hole,
            bore=bore,
            length=machine.job.piece.length + kerf / 2.0 + OUT_OF_BORE,
            overhang=overhang,
        )
        steps.append(
            made_step(
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
