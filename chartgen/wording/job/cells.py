"""The step table: what each step is called and the few numbers that are set for it."""

import math

from chartgen.model.shop import LengthUnits
from chartgen.planning.operations import Operation
from chartgen.planning.plan import JobPlan, MachineCut, Step
from chartgen.wording.job.amounts import across, bare, length, length_up, minutes, pace, speed
from chartgen.wording.numbers import feed_label, write_feed

NONE = "–"
REFUSED = "see step"


def headings(units: LengthUnits) -> tuple[str, ...]:
    """Return the headings of the table, number and step first."""
    return ("", "step", "tool", "rev/min", feed_label(units), "s/turn", "cuts", "load", "min")


RIGHT = frozenset({3, 4, 5, 7, 8})


def step_title(plan: JobPlan, step: Step) -> str:
    """Return what a step does, with its sizes."""
    return f"{step.operation.value}{_sizes(plan, step)}"


def _sizes(plan: JobPlan, step: Step) -> str:
    """Return what follows the name of a step in the table."""
    units = plan.shop.request.units
    long = length(step.length, units)
    if step.operation is Operation.SAW:
        return " instead of parting" if step.is_per_piece else f" a blank, {_up(step, units)}"
    sizes = {
        Operation.HOLD: f", {length_up(plan.set_up.overhang, units)} out",
        Operation.FACE: f" off {long}",
        Operation.TURN: f" {across(step.start, units)} to {bare(step.end, units)}",
        Operation.CENTRE_DRILL: f" {across(step.end, units)}",
        Operation.DRILL: f" {across(step.end, units)}",
        Operation.BORE: f" {across(step.start, units)} to {bare(step.end, units)}",
        Operation.GROOVE: f" {long} wide",
        Operation.CHAMFER: f" {long}",
        Operation.PART: f", {long} long",
        Operation.ADVANCE: f", {long}",
    }
    return sizes.get(step.operation, "")


def _up(step: Step, units: LengthUnits) -> str:
    return length_up(step.length, units)


def step_cells(plan: JobPlan, step: Step) -> tuple[str, ...]:
    """Return tool, speed, feed, pace, cuts, load and time of a step."""
    time = minutes(step.time)
    cut = step.cut
    if cut is None:
        middle = REFUSED if step.refused else NONE
        return (_tool(step), NONE, NONE, NONE, middle, NONE, time)
    units = plan.shop.request.units
    return (
        _tool(step),
        speed(cut),
        write_feed(cut.feed, units),
        pace(cut),
        cuts(cut, units),
        load_share(cut),
        time,
    )


def _tool(step: Step) -> str:
    if step.cut is None:
        return "saw" if step.operation is Operation.SAW else NONE
    if step.operation in {Operation.PART, Operation.GROOVE}:
        return f"blade {step.cut.tool}"
    if step.operation in {Operation.DRILL, Operation.CENTRE_DRILL}:
        return "HSS"
    return step.cut.tool


def cuts(cut: MachineCut, units: LengthUnits) -> str:
    """Return passes and depths, or the pecks of a drill."""
    if cut.pecks:
        return f"{len(cut.pecks)} pecks" if len(cut.pecks) > 1 else "no pecks"
    if cut.depth == 0.0 and cut.finish_depth == 0.0:
        return f"{cut.passes} x" if cut.passes > 1 else "1 cut"
    rough = cut.passes - (1 if cut.finish_depth else 0)
    parts = [f"{rough} x {_depth(cut.depth, units)}"] if rough else []
    if cut.finish_depth:
        parts.append(f"1 x {_depth(cut.finish_depth, units)}")
    return " + ".join(parts)


def _depth(depth: float, units: LengthUnits) -> str:
    if units is LengthUnits.METRIC:
        return f"{depth:.2f}".rstrip("0").rstrip(".")
    return f"{depth / 25.4:.3f}"


def load_share(cut: MachineCut) -> str:
    """Return the share of the motor's torque that a cut uses at the high side of its band."""
    if cut.load is None:
        return NONE
    return f"{math.ceil(100.0 * cut.load.share - 1e-6)} %"
