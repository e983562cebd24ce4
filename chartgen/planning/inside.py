"""The steps to the bore: centre, drills by rising size, the boring bar."""

from chartgen.model.tooling import BoringBar
from chartgen.planning.boring import OUT_OF_BORE, bored, boring_bars, holes_for
from chartgen.planning.drilling import drilled
from chartgen.planning.machine import Machine
from chartgen.planning.made_step import made_step
from chartgen.planning.operations import Bound, Operation
from chartgen.planning.outside import NO_STOCK, centre
from chartgen.planning.plan import MachineCut, Refusal, Step
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
    holes = holes_for(machine, bore=bore)
    if not holes:
        refusal = Refusal(operation=Operation.DRILL, tool="", bound=Bound.NO_TOOL)
        return [made_step(machine, Operation.DRILL, refusal, end=bore, length=through)]
    depth = through + OUT_OF_BORE if bore - holes[0] > NO_STOCK else through
    steps = [] if has_centre else centre(machine)
    # Where a drill is too much, the boring bar gets more: the next smaller one that it enters.
    ways = (
        _way(machine, hole=hole, depth=depth, through=through, overhang=overhang) for hole in holes
    )
    tried: list[list[Step]] = []
    for way in ways:
        if not any(step.refused for step in way):
            return [*steps, *way]
        tried.append(way)
    return [*steps, *tried[0]]


def _way(
    machine: Machine,
    *,
    hole: Millimetres[float],
    depth: Millimetres[float],
    through: Millimetres[float],
    overhang: Millimetres[float],
) -> list[Step]:
    """Return the drills to a hole and the boring bar that goes on from there.

    A boring bar's step follows a refused drill too: its way out leads there.
    """
    way = drilled(machine, final=hole, depth=depth)
    steps = _drilled(machine, way, hole=hole, depth=depth)
    if machine.job.piece.bore - hole > NO_STOCK:
        bars = boring_bars(machine, hole=hole)
        steps.append(_bored(machine, bars, hole=hole, length=through, overhang=overhang))
    return steps


def _drilled(
    machine: Machine,
    way: tuple[tuple[Millimetres[float], MachineCut], ...] | Refusal,
    *,
    hole: Millimetres[float],
    depth: Millimetres[float],
) -> list[Step]:
    if isinstance(way, Refusal):
        return [made_step(machine, Operation.DRILL, way, end=hole, length=depth)]
    sizes = (0.0, *(diameter for diameter, _ in way))
    return [
        made_step(machine, Operation.DRILL, cut, start=before, end=diameter, length=depth)
        for before, (diameter, cut) in zip(sizes, way, strict=False)
    ]


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
