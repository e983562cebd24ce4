"""After how many pieces to look at each edge: Taylor's law with its wide band."""

import math
from collections.abc import Iterable

from chartgen.physics.tool_life import tool_life
from chartgen.planning.machine import Machine
from chartgen.planning.operations import Operation
from chartgen.planning.plan import Step, WearCheck
from chartgen.reference.tool_life import PLASTIC, taylor_for

# A tool that only looks at the piece for a moment needs no check of its own.
_CUTTING = (Operation.TURN, Operation.DRILL, Operation.BORE, Operation.PART)


def wear_checks(machine: Machine, steps: Iterable[Step]) -> tuple[WearCheck, ...]:
    """Return a check for the edge that wears most in each kind of step."""
    found: dict[Operation, WearCheck] = {}
    for step in steps:
        if step.cut is None or step.operation not in _CUTTING or not step.is_per_piece:
            continue
        check = _check(machine, step)
        before = found.get(step.operation)
        if before is None or check.pieces <= before.pieces:
            found[step.operation] = check
    return tuple(found.values())


def _check(machine: Machine, step: Step) -> WearCheck:
    cut = step.cut
    if cut is None:
        raise ValueError("only a step that cuts wears an edge")
    most = int(machine.allowances.wear_pieces)
    law = taylor_for(tool_material=cut.tool_material, material=machine.material)
    if law is None:
        return WearCheck(
            tool=cut.tool,
            size=step.end,
            operation=step.operation,
            short=None,
            long=None,
            # Nothing is known of its life: every other piece until the owner knows. Plain plastic
            # hardly wears an edge.
            pieces=most if PLASTIC in machine.material.tags else min(most, 2),
        )
    short, long = (
        float(
            tool_life(
                cutting_speed=cut.cutting_speed,
                constant=law.constant.value * share,
                exponent=law.exponent.value,
            )
        )
        for share in (1.0 - law.spread.value, 1.0 + law.spread.value)
    )
    pieces = max(1, min(most, math.floor(short / cut.time)))
    return WearCheck(
        tool=cut.tool,
        size=step.end,
        operation=step.operation,
        short=short,
        long=long,
        pieces=pieces,
    )
