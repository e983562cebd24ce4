"""The steps to the bore: centre, drills by rising size, the boring bar."""

from chartgen.model.tooling import BoringBar
from chartgen.planning.boring import OUT_OF_BORE, bored, boring_bars, hole_for
from chartgen.planning.drilling import drilled
from chartgen.planning.machine import Machine
from chartgen.planning.made_step import made_step
from chartgen.planning.operations import Bound, Operation
from chartgen.planning.outside import NO_STOCK, centre
from chartgen.planning.plan import Refusal, Step
from chartgen.quantities import Millimetres


def inside(
    machine: Machine,
    *,
    overhang: Millimetres[float],
    kerf: Millimetres[float],
    has_centre: bool,
) -> list[Step]:
    """Return the way to the bore: centre, drills by rising size, the boring bar.

    `has_centre`: the centre hole is there already, for a live centre ran in it.
    """
    bore = machine.job.piece.bore
    if bore == 0.0:
        return []
    # Through the piece and the cut that parts it, so that the blade breaks into the bore.
    through = machine.job.piece.length + kerf + machine.allowances.facing_stock
    hole = hole_for(machine, bore=bore)
    if hole is None:
        refusal = Refusal(operation=Operation.DRILL, tool="", bound=Bound.NO_TOOL)
        return [made_step(machine, Operation.DRILL, refusal, end=bore, length=through)]
    bars = boring_bars(machine, hole=hole) if bore - hole > NO_STOCK else ()
    depth = through + OUT_OF_BORE if bars else through
    steps = [] if has_centre else centre(machine)
    way = drilled(machine, final=hole, depth=depth)
    if isinstance(way, Refusal):
        return [*steps, made_step(machine, Operation.DRILL, way, end=hole, length=depth)]
    before = 0.0
    for diameter, cut in way:
        steps.append(
            made_step(machine, Operation.DRILL, cut, start=before, end=diameter, length=depth)
        )
        before = diameter
    if bars:
        steps.append(_bored(machine, bars, hole=hole, length=through, overhang=overhang))
    return steps


def _bored(
    machine: Machine,
    bars: tuple[BoringBar, ...],
    *,
    hole: Millimetres[float],
    length: Millimetres[float],
    overhang: Millimetres[float],
) -> Step:
    """Return the step of the stoutest bar that can make it; of none, why the stoutest cannot."""
    bore = machine.job.piece.bore
    made = [
        bored(machine, bar, hole=hole, bore=bore, length=length, overhang=overhang) for bar in bars
    ]
    best = next((one for one in made if not isinstance(one, Refusal)), made[0])
    return made_step(
        machine, Operation.BORE, best, start=hole, end=bore, length=length, measured=True
    )
