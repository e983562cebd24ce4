"""The step table: what each step is called and the few numbers that are set for it."""

import math

from chartgen.model.shop import LengthUnits
from chartgen.planning.operations import Operation
from chartgen.planning.plan import JobPlan, MachineCut, Step
from chartgen.wording.job.amounts import across, bare, length, length_up, minutes, pace, speed
from chartgen.wording.language import decimal, tr
from chartgen.wording.numbers import feed_label, write_feed

NONE = "–"


def headings(units: LengthUnits) -> tuple[str, ...]:
    """Return the headings of the table, number and step first."""
    return (
        "",
        tr("step"),
        tr("tool"),
        tr("rev/min"),
        feed_label(units),
        tr("s/turn"),
        tr("cuts"),
        tr("load"),
        "min",
    )


RIGHT = frozenset({3, 4, 5, 7, 8})


def step_title(plan: JobPlan, step: Step) -> str:
    """Return what a step does, with its sizes."""
    units = plan.shop.request.units
    long, up = length(step.length, units), length_up(step.length, units)
    if step.operation is Operation.SAW:
        if step.is_per_piece:
            return tr("saw off instead of parting")
        return tr("saw off a blank, {length}", length=up)
    if step.operation is Operation.ADVANCE and plan.set_up.goes_through_spindle is False:
        return tr("next piece")
    start, end, bare_end = across(step.start, units), across(step.end, units), bare(step.end, units)
    out = length_up(plan.first_overhang, units)
    return {
        Operation.CHECK: tr("check, mark out"),
        Operation.HOLD: tr("hold, {length} out", length=out),
        Operation.FACE: tr("face off {length}", length=long),
        Operation.CENTRE_DRILL: tr("centre drill {diameter}", diameter=end),
        Operation.SUPPORT: tr("bring up the centre"),
        Operation.TURN: tr("turn {start} to {end}", start=start, end=bare_end),
        Operation.DRILL: tr("drill {diameter}", diameter=end),
        Operation.BORE: tr("bore {start} to {end}", start=start, end=bare_end),
        Operation.GROOVE: tr("groove {length} wide", length=long),
        Operation.CHAMFER: tr("chamfer {length}", length=long),
        Operation.PART: tr("part off, {length} long", length=long),
        Operation.DEBURR: tr("deburr, measure"),
        Operation.ADVANCE: tr("advance the bar, {length}", length=up),
    }[step.operation]


def step_cells(plan: JobPlan, step: Step) -> tuple[str, ...]:
    """Return tool, speed, feed, pace, cuts, load and time of a step."""
    time = minutes(step.time)
    cut = step.cut
    if cut is None:
        middle = tr("see step") if step.refused else NONE
        return (_tool(step), NONE, NONE, NONE, middle, NONE, time)
    units = plan.shop.request.units
    return (
        _tool(step),
        speed(cut),
        write_feed(cut.feed, units),
        pace(cut, step.parting),
        cuts(cut, units),
        load_share(cut),
        time,
    )


def _tool(step: Step) -> str:
    if step.cut is None:
        return tr("saw|tool") if step.operation is Operation.SAW else NONE
    if step.operation in {Operation.PART, Operation.GROOVE}:
        return tr("blade {name}", name=step.cut.tool)
    if step.operation in {Operation.DRILL, Operation.CENTRE_DRILL}:
        return "HSS"
    return step.cut.tool


def cuts(cut: MachineCut, units: LengthUnits) -> str:
    """Return passes and depths, or the pecks of a drill."""
    if cut.pecks:
        number = len(cut.pecks)
        return tr("{number} pecks", number=number) if number > 1 else tr("no pecks")
    if cut.depth == 0.0 and cut.finish_depth == 0.0:
        return f"{cut.passes} x" if cut.passes > 1 else tr("1 cut")
    rough = cut.passes - (1 if cut.finish_depth else 0)
    parts = [f"{rough} x {_depth(cut.depth, units)}"] if rough else []
    if cut.finish_depth:
        parts.append(f"1 x {_depth(cut.finish_depth, units)}")
    return " + ".join(parts)


def _depth(depth: float, units: LengthUnits) -> str:
    if units is LengthUnits.METRIC:
        return decimal(f"{depth:.2f}".rstrip("0").rstrip("."))
    return decimal(f"{depth / 25.4:.3f}")


def load_share(cut: MachineCut) -> str:
    """Return the share of the motor's torque that a cut uses at the high side of its band."""
    if cut.load is None:
        return NONE
    return f"{math.ceil(100.0 * cut.load.share - 1e-6)} %"
