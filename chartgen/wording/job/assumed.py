"""What a job's card takes for granted, with the sources of its numbers."""

from chartgen.model.blade import Blade
from chartgen.planning.operations import Operation
from chartgen.planning.plan import JobPlan
from chartgen.reference.drilling import load_drilling
from chartgen.wording.assumptions import assumption_lines
from chartgen.wording.job import amounts
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
        (
            f"Turning: feed {write_feed(allowances.turning_feed, units)}, last pass "
            f"{write_feed(allowances.finish_feed, units)} {feed_label(units)}, at most "
            f"{amounts.length(allowances.rough_depth, units)} deep; start speed midway "
            f"between parting and its ceiling; force times {allowances.turning_force:g} for a "
            "part-worn edge [GROO5]; feed force half of it (a rule of thumb)."
        )
    ]


def _drilling(plan: JobPlan) -> list[str]:
    if not _has(plan, Operation.DRILL):
        return []
    data = load_drilling()
    low, high = data.band_low.value, data.band_high.value
    units, allowances = plan.shop.request.units, plan.allowances
    return [
        (
            f"Drilling: HSS, sharp; torque [TBM] and push [CH-A] -{100 * low:.0f} "
            f"+{100 * high:.0f} %; speeds from about two thirds of print, feeds from its low end "
            f"[NAVY]; tailstock pushes {amounts.newtons_down(allowances.tailstock_push)} N, drill "
            f"chuck holds {amounts.torque_down(allowances.drill_chuck_torque)} (from memory); a "
            f"pilot from {amounts.across(allowances.pilot_from, units)} on."
        )
    ]


def _boring(plan: JobPlan) -> list[str]:
    if not _has(plan, Operation.BORE):
        return []
    units, allowances = plan.shop.request.units, plan.allowances
    return [
        (
            f"Boring: {allowances.boring_speed:g} of the turning speed; the bar may bend "
            f"{amounts.length(allowances.boring_deflection, units)} (practice)."
        )
    ]


def _handling(plan: JobPlan) -> list[str]:
    allowances = plan.allowances
    return [
        (
            f"Times beside the cut are allowances (practice): {allowances.set_up_minutes:g} min to "
            f"set up, {allowances.tool_minutes:g} a tool, {allowances.pass_minutes:g} a pass, "
            f"{allowances.peck_minutes:g} a peck, {allowances.measure_minutes:g} a measurement."
        ),
        "Not computed either: tilting out of the jaws, the tailstock's own stiffness, warming.",
    ]
