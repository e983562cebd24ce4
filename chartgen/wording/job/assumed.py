"""What a job's card takes for granted, with the sources of its numbers."""

from chartgen.model.blade import Blade
from chartgen.planning.operations import Operation
from chartgen.planning.plan import JobPlan
from chartgen.reference.drilling import load_drilling
from chartgen.wording.assumptions import assumption_lines
from chartgen.wording.job import amounts
from chartgen.wording.language import decimal, tr
from chartgen.wording.numbers import feed_label, write_feed


def assumed(plan: JobPlan) -> tuple[str, ...]:
    """Return the assumptions behind a job's card: those of parting off, and of each other step."""
    blades = tuple(
        blade
        for blade in plan.shop.blades
        if any(step.cut and step.cut.tool == blade.name for step in plan.steps)
    )
    return (
        *assumption_lines(plan.shop, materials=[plan.material], blades=_or_all(plan, blades)),
        *_turning(plan),
        *_drilling(plan),
        *_boring(plan),
        *_handling(plan),
    )


def _or_all(plan: JobPlan, blades: tuple[Blade, ...]) -> tuple[Blade, ...]:
    return blades or plan.shop.blades


def _has(plan: JobPlan, *operations: Operation) -> bool:
    return any(step.cut is not None and step.operation in operations for step in plan.steps)


def _turning(plan: JobPlan) -> list[str]:
    if not _has(plan, Operation.FACE, Operation.TURN):
        return []
    units, allowances = plan.shop.request.units, plan.allowances
    return [
        tr(
            "Turning: feed {feed}, last pass {finish} {unit}, at most {depth} deep; start speed "
            "midway between parting and its ceiling; force times {force} for a part-worn edge "
            "[GROO5]; feed force half of it (a rule of thumb).",
            feed=write_feed(allowances.turning_feed, units),
            finish=write_feed(allowances.finish_feed, units),
            unit=feed_label(units),
            depth=amounts.length(allowances.rough_depth, units),
            force=decimal(f"{allowances.turning_force:g}"),
        )
    ]


def _drilling(plan: JobPlan) -> list[str]:
    if not _has(plan, Operation.DRILL):
        return []
    data = load_drilling()
    low, high = data.band_low.value, data.band_high.value
    units, allowances = plan.shop.request.units, plan.allowances
    return [
        tr(
            "Drilling: HSS, sharp; torque [TBM] and push [CH-A] -{low} +{high} %; speeds from "
            "about two thirds of print, feeds from its low end [NAVY]; tailstock pushes {push} N, "
            "drill chuck holds {torque} (from memory); a pilot from {diameter} on.",
            low=f"{100 * low:.0f}",
            high=f"{100 * high:.0f}",
            push=amounts.newtons_down(allowances.tailstock_push),
            torque=amounts.torque_down(allowances.drill_chuck_torque),
            diameter=amounts.across(allowances.pilot_from, units),
        )
    ]


def _boring(plan: JobPlan) -> list[str]:
    if not _has(plan, Operation.BORE):
        return []
    units, allowances = plan.shop.request.units, plan.allowances
    return [
        tr(
            "Boring: {share} of the turning speed; the bar may bend {length} (practice).",
            share=decimal(f"{allowances.boring_speed:g}"),
            length=amounts.length(allowances.boring_deflection, units),
        )
    ]


def _handling(plan: JobPlan) -> list[str]:
    allowances = plan.allowances
    return [
        tr(
            "Times beside the cut are allowances (practice): {set_up} min to set up, {tool} a "
            "tool, {cut} a pass, {peck} a peck, {measure} a measurement.",
            set_up=decimal(f"{allowances.set_up_minutes:g}"),
            tool=decimal(f"{allowances.tool_minutes:g}"),
            cut=decimal(f"{allowances.pass_minutes:g}"),
            peck=decimal(f"{allowances.peck_minutes:g}"),
            measure=decimal(f"{allowances.measure_minutes:g}"),
        ),
        tr("Not computed either: tilting out of the jaws, the tailstock's own stiffness, warming."),
    ]
