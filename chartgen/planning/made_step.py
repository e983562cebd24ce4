"""A cut, or what refuses it, as a step with its allowance of time."""

from chartgen.planning.machine import Machine
from chartgen.planning.operations import Operation
from chartgen.planning.plan import MachineCut, Refusal, Step
from chartgen.quantities import Millimetres, Minutes


def made_step(
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
