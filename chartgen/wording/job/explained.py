"""Each cut of a job step by step: formula, values, result and source, as `explain` gives a cell.

Parting and grooving are cells of the blade's own window: `chartgen explain` shows all their limits.
"""

import math
from dataclasses import dataclass

from chartgen.model.material import ForceData
from chartgen.planning.operations import FedBy, Operation
from chartgen.planning.plan import JobPlan, Load, MachineCut
from chartgen.planning.plan import Step as JobStep
from chartgen.reference.boring import load_boring
from chartgen.reference.chucks import load_holding
from chartgen.reference.drilling import drilling_feed, drilling_speed, load_drilling
from chartgen.wording.job.cells import step_title
from chartgen.wording.steps.step import Step, allowance_source

_DRILLS = {Operation.DRILL, Operation.CENTRE_DRILL}
_BLADE = {Operation.PART, Operation.GROOVE}


@dataclass(frozen=True, slots=True, kw_only=True)
class ExplainedCut:
    """One step of the job with the way to its numbers."""

    heading: str
    steps: tuple[Step, ...]


def explained_job(plan: JobPlan) -> tuple[ExplainedCut, ...]:
    """Return every step that cuts with the way to its numbers."""
    return tuple(
        ExplainedCut(
            heading=f"{number}. {step_title(plan, step)}",
            steps=tuple(_steps(plan, step, step.cut)),
        )
        for number, step in enumerate(plan.steps, 1)
        if step.cut is not None
    )


def _steps(plan: JobPlan, step: JobStep, cut: MachineCut) -> list[Step]:
    if step.operation in _BLADE:
        return [_of_blade(plan, step, cut), *_motor(cut, cut.load), *_grip(plan, cut.load)]
    is_drill = step.operation in _DRILLS
    return [
        _drill_speed(plan, step, cut) if is_drill else _turning_speed(plan, step, cut),
        _drill_feed(plan, step, cut) if is_drill else _turning_feed(plan, cut),
        *(_drill_force(plan, step, cut) if is_drill else _turning_force(plan, step, cut)),
        *_motor(cut, cut.load),
        *_grip(plan, cut.load),
        _time(cut, is_drill=is_drill),
    ]


def _of_blade(plan: JobPlan, step: JobStep, cut: MachineCut) -> Step:
    bore = step.end if step.operation is Operation.GROOVE else plan.job.piece.bore
    through = f' --bore "{bore:g} mm"' if bore else ""
    return Step(
        "Speed, feed and force of the blade",
        "its window, as on a lathe chart",
        f'chartgen explain --material {plan.material.key} --tool "{cut.tool}" '
        f'--diameter "{step.start:g} mm"{through}',
        f"{cut.spindle_speed:g} rev/min, {cut.feed:g} mm/rev",
        "every limit with its source in that answer, there at the shop file's own jaw distance",
    )


def _turning_speed(plan: JobPlan, step: JobStep, cut: MachineCut) -> Step:
    data = plan.material.speeds[cut.tool_material]
    start = math.sqrt(data.start.value * data.ceiling.value)
    slower = plan.allowances.boring_speed if step.operation is Operation.BORE else 1.0
    note = f" x {slower:g} in a bore" if slower < 1.0 else ""
    if step.operation is Operation.CHAMFER:
        note = " x 0.5 for a broad edge"
    diameter = step.end if step.operation is Operation.BORE else step.start
    return Step(
        "Spindle speed",
        "n = 1000 v / (π D); v from midway, in ratio, between parting and its ceiling",
        f"start {data.start.value:g}, ceiling {data.ceiling.value:g}: v = {start:.0f} m/min{note}; "
        f"D = {diameter:g} mm",
        f"{cut.spindle_speed:g} rev/min, the soonest done of those the lathe has "
        f"({cut.cutting_speed:.1f} m/min)",
        f"{data.start.citation}; {data.ceiling.citation}",
    )


def _turning_feed(plan: JobPlan, cut: MachineCut) -> Step:
    allowances = plan.allowances
    by = "listed by the gearbox" if cut.fed_by is FedBy.POWER else "a steady hand's pace"
    return Step(
        "Feed",
        f"the start feed, or less: {by}; fine where it finishes",
        f"start {allowances.turning_feed:g}, last pass {allowances.finish_feed:g} mm/rev; a "
        "quarter of the nose radius in a bore and in a last pass",
        f"{cut.feed:g} mm/rev",
        f"{allowance_source('turning_feed')}; {allowance_source('finish_feed')}; "
        f"{allowance_source('handle_turns_steady')}",
    )


def _turning_force(plan: JobPlan, step: JobStep, cut: MachineCut) -> list[Step]:
    force, load = plan.material.force, cut.load
    if force is None or load is None:
        return [_no_force()]
    depth = max(cut.depth, cut.finish_depth)
    run_out = plan.set_up.run_out / 2.0 if step.operation is Operation.TURN else 0.0
    if step.operation is Operation.CHAMFER:
        depth *= math.sqrt(2.0)
    more = f" + {run_out:g} of run-out" if run_out else ""
    return [
        _law(force, f"b = {depth:.3g}{more} mm, h = {cut.feed:g} mm", load, plan),
        _band(force, load),
    ]


def _law(force: ForceData, values: str, load: Load, plan: JobPlan) -> Step:
    kc, mc = force.specific_force, force.thickness_exponent
    return Step(
        "Main force expected",
        "F = kc1.1 b h^(1-mc) x a part-worn edge",
        f"kc1.1 = {kc.value:g} N/mm², mc = {mc.value:g}, {values}, "
        f"x {plan.allowances.turning_force:g}",
        f"{load.force:.0f} N",
        f"{kc.citation}; {allowance_source('turning_force')}",
    )


def _band(force: ForceData, load: Load) -> Step:
    return Step(
        "Force band",
        "low and high side; wider for chips thinner than the constants were taken at",
        f"{load.force_low / load.force:.2f} and {load.force_high / load.force:.2f} of it",
        f"{load.force_low:.0f} to {load.force_high:.0f} N",
        f"{force.band_high.citation}; {allowance_source('thin_chip_band')}",
    )


def _drill_speed(plan: JobPlan, step: JobStep, cut: MachineCut) -> Step:
    speeds = drilling_speed(plan.material.key)
    return Step(
        "Spindle speed",
        "n = 1000 v / (π D), less in a deep hole",
        f"start {speeds.start.value:g}, ceiling {speeds.ceiling.value:g} m/min, "
        f"D = {step.end:g} mm",
        f"{cut.spindle_speed:g} rev/min ({cut.cutting_speed:.1f} m/min)",
        f"{speeds.start.citation}; {speeds.ceiling.citation}",
    )


def _drill_feed(plan: JobPlan, step: JobStep, cut: MachineCut) -> Step:
    feed = drilling_feed(diameter=step.end, feed_class=plan.material.feeds.key)
    return Step(
        "Feed",
        "the start feed for this diameter, less in a deep hole, or what motor, grip, drill chuck "
        "and hand bear",
        f"{feed.start.value:.3f} mm/rev",
        f"{cut.feed:g} mm/rev: {cut.binds.value}",
        f"{feed.start.citation}; {allowance_source('handle_turns_steady')}",
    )


def _drill_force(plan: JobPlan, step: JobStep, cut: MachineCut) -> list[Step]:
    force, load = plan.material.force, cut.load
    if force is None or load is None:
        return [_no_force()]
    data = load_drilling()
    pilot = step.start if step.operation is Operation.DRILL else 0.0
    sizes = f"D = {step.end:g}, pilot {pilot:g} mm, f = {cut.feed:g} mm/rev"
    high = f"x {1.0 + data.band_high.value:g} for the high side"
    constants = (
        f"kc at h = f/2 sin(point/2) from kc1.1 = {force.specific_force.value:g} N/mm², "
        f"mc = {force.thickness_exponent.value:g}, x {plan.allowances.turning_force:g}"
    )
    cited = f"{force.specific_force.citation}; {data.band_high.citation}"
    return [
        Step(
            "Torque of the drill",
            "M = kc f (D² - d²) / 8000",
            f"{sizes}; {constants}; {high}",
            f"up to {load.torque:.2f} N·m",
            f"[TBM]; {cited}",
        ),
        Step(
            "Push of the drill",
            "T = 0.45 kc f (D - d)",
            f"{sizes}; {high}",
            f"up to {load.thrust_high:.0f} N; the tailstock may push "
            f"{plan.allowances.tailstock_push:g} N",
            f"[CH-A]; {cited}; {allowance_source('tailstock_push')}",
        ),
    ]


def _motor(cut: MachineCut, load: Load | None) -> list[Step]:
    if load is None:
        return []
    return [
        Step(
            "Torque and power, high side",
            "T = F D / 2000, P = T n / 9550",
            f"{load.torque:.2f} N·m at {cut.spindle_speed:g} rev/min in position "
            f"{cut.position.name}",
            f"{load.torque:.1f} of {load.torque_available:.1f} N·m, {load.power:.0f} of "
            f"{load.power_available:.0f} W",
            "definition; the drive as in `chartgen explain`",
        )
    ]


def _grip(plan: JobPlan, load: Load | None) -> list[Step]:
    if load is None or math.isinf(load.grip):
        return []
    per_torque = load_holding().grip.grip_per_key_torque
    allowances = plan.allowances
    return [
        Step(
            "Grip needed at standstill",
            "reserve x (all forces at the jaws / friction + what speed takes off)",
            f"reserves {allowances.grip_safety:g} and {allowances.cut_safety:g}; along the axis "
            f"{load.thrust_high:.0f} N" + (", taken by the stop" if plan.job.holding.stop else ""),
            f"{load.grip_needed / 1000.0:.2f} of {load.grip / 1000.0:.2f} kN; "
            f"{load.grip_needed / per_torque.value:.1f} N·m on the key",
            f"[RN-1391] p. 48; {per_torque.citation}",
        )
    ]


def _time(cut: MachineCut, *, is_drill: bool) -> Step:
    ways = "" if is_drill else f", {cut.passes} passes"
    return Step(
        "Time in the cut",
        "t = L / (f n)",
        f"L = {cut.travel:.4g} mm{ways}",
        f"{cut.time:.2f} min",
        "[GROO5] ch. 22; [TG-6] p. 1069 for facing",
    )


def _no_force() -> Step:
    return Step(
        "Force",
        "none",
        "no published constants for this material",
        "torque, grip and bending are not checked",
        "none",
    )


def side_force_sentence() -> str:
    """Return which forces beside the main one are taken, and on whose word."""
    data = load_boring()
    turning, boring = data.turning, data.boring
    return (
        f"Feed force {turning.feed.value:g} of the main one in turning ({turning.feed.citation}), "
        f"{boring.feed.value:g} in boring ({boring.feed.citation})."
    )
