"""What there is to say of the steps that cut nothing, or of what is done beside a cut."""

from chartgen.planning.operations import Operation
from chartgen.planning.plan import JobPlan, Step
from chartgen.wording.holding_lines import BARS
from chartgen.wording.job import amounts
from chartgen.wording.job.amounts import across, bare, length, length_up, size
from chartgen.wording.language import decimal, tr
from chartgen.wording.material_names import material_name
from chartgen.wording.numbers import length_label, write_speed_ceiling


def set_up_lines(plan: JobPlan, step: Step) -> list[str]:
    """Return what a step without numbers of a cut, or beside them, is about."""
    if step.operation is Operation.SAW and step.is_per_piece:
        return [_sawn_end(plan, step)]
    say = {
        Operation.CHECK: _check,
        Operation.SAW: _blank,
        Operation.HOLD: _hold,
        Operation.SUPPORT: _support,
        Operation.CHAMFER: _front_edge,
        Operation.DEBURR: _measure,
        Operation.ADVANCE: _advance,
    }.get(step.operation)
    return say(plan) if say else []


def _check(plan: JobPlan) -> list[str]:
    units, job = plan.shop.request.units, plan.job
    bar = size(job.bar.diameter, job.bar.length, units)
    lines = [tr("bar {bar}, {material}", bar=bar, material=material_name(plan.material))]
    if job.piece.tolerance:
        lines.append(tr("wanted: {tolerance}", tolerance=job.piece.tolerance))
    return [*lines, _clean_up(plan)]


def _blank(plan: JobPlan) -> list[str]:
    units, use = plan.shop.request.units, plan.bar_use
    return [
        tr(
            "the bar does not go through the spindle ({hole}): saw off {length} for {pieces}",
            hole=length(plan.shop.lathe.spindle_bore or 0.0, units),
            length=length_up(use.blank_length, units),
            pieces=amounts.pieces(use.pieces_a_blank),
        )
    ]


def _sawn_end(plan: JobPlan, step: Step) -> str:
    units = plan.shop.request.units
    return tr(
        "saw it {sawn} long: faced on the sawn end as well it has its {length}",
        sawn=length(step.length, units),
        length=length(plan.job.piece.length, units),
    )


def _support(plan: JobPlan) -> list[str]:
    units, up = plan.shop.request.units, plan.set_up
    out = length_up(up.overhang, units)
    how = tr("the bar stands out {length}: it turns on a centre", length=out)
    if up.needs_centre and not plan.is_drawn_out:
        how = tr(
            "it does not go into the spindle, so it is faced and centred standing out all of its "
            "{length}: in a steady rest, or not at all",
            length=out,
        )
    elif up.needs_centre:
        how = tr(
            "face and centre it while it stands out {short} or less; then draw it out to {length}, "
            "tighten, and bring up the centre",
            short=length(plan.first_overhang, units),
            length=out,
        )
    return [
        how,
        tr("take the centre away before drilling and before parting: never part between centres"),
    ]


def _front_edge(_plan: JobPlan) -> list[str]:
    return [tr("the front edge; break the far one when you deburr the parted piece")]


def _measure(plan: JobPlan) -> list[str]:
    units, piece = plan.shop.request.units, plan.job.piece
    sizes = [across(piece.diameter, units)]
    if piece.bore:
        sizes.append(tr("bore {diameter}", diameter=across(piece.bore, units)))
    sizes.append(tr("length {length}", length=bare(piece.length, units)))
    line = tr("measure {sizes} {unit}", sizes=", ".join(sizes), unit=length_label(units))
    return [f"{line}; {piece.tolerance}" if piece.tolerance else line]


def _advance(plan: JobPlan) -> list[str]:
    out = length_up(plan.first_overhang, plan.shop.request.units)
    is_sawn = any(step.operation is Operation.SAW and step.is_per_piece for step in plan.steps)
    if plan.set_up.goes_through_spindle is False:
        return _next_of_blank(plan, is_sawn=is_sawn)
    if is_sawn:
        return [
            tr(
                "hold the bar again, {length} out, tighten with the same pull on the key",
                length=out,
            )
        ]
    return [
        tr(
            "loosen, pull the bar out to {length}, tighten with the same pull on the key",
            length=out,
        )
    ]


def _next_of_blank(plan: JobPlan, *, is_sawn: bool) -> list[str]:
    if plan.bar_use.pieces_a_blank <= 1:
        return [tr("take the rest out of the jaws and hold the next blank like the first")]
    if is_sawn:
        return [tr("hold the rest of the blank again, and a new one when it is used up")]
    return [
        tr("the next piece already stands out; a new blank when this one is used up"),
        tr(
            "its face lies {pitch} nearer to the chuck: set each tool by it anew",
            pitch=length_up(plan.bar_use.pitch, plan.shop.request.units),
        ),
    ]


def _clean_up(plan: JobPlan) -> str:
    units, up = plan.shop.request.units, plan.set_up
    run_out, stock = length(up.run_out, units), length(up.stock, units)
    if up.run_out_is_measured:
        out = tr("it may run out by {run_out} (measured)", run_out=run_out)
    else:
        out = tr("it may run out by {run_out} (assumed; measure it)", run_out=run_out)
    if up.stock <= 0.0:
        return tr("{it}; nothing is turned off, so the piece runs out as the bar does", it=out)
    if up.stock * 2.0 < up.run_out:
        return tr(
            "{it} and only {stock} comes off the radius: it will not clean up all round. Set it "
            "truer, or take a thicker bar",
            it=out,
            stock=stock,
        )
    return tr("{it}; {stock} comes off the radius, so it cleans up all round", it=out, stock=stock)


def _hold(plan: JobPlan) -> list[str]:
    units, up = plan.shop.request.units, plan.set_up
    lines = [
        tr(
            "{grip} in the jaws on {bar}, {overhang} out",
            grip=length(up.grip_length, units),
            bar=tr(BARS[plan.job.bar.surface]),
            overhang=length_up(plan.first_overhang, units),
        )
    ]
    if up.grip_length < plan.job.bar.diameter:
        lines.append(
            tr(
                "held on less than its own thickness it tilts out of the jaws more easily: hold it "
                "longer if you can"
            )
        )
    if plan.material.force is None:
        lines.append(tr("no published force data: torque and grip are not checked, in any step"))
    if up.grip == float("inf"):
        lines.append(tr("collet: no limit of grip is worked out for it"))
    elif up.grip_needed > 0.0:
        lines.append(
            tr(
                "the heaviest cut needs {needed} of grip, reserves in: {key} N·m or more on the "
                "key; {grip} is taken to be there",
                needed=amounts.kilonewtons_up(up.grip_needed, there=up.grip),
                key=amounts.whole_up(up.key_torque),
                grip=amounts.kilonewtons_down(up.grip),
            )
        )
    if plan.is_drawn_out:
        lines.append(
            tr(
                "at first no more than {short} out, for facing and the centre drill",
                short=length(plan.first_overhang, units),
            )
        )
    elif up.needs_centre and not plan.is_on_centre:
        lines.append(
            tr(
                "it stands out more than {times} times its thickness and runs on no centre: the "
                "numbers hold only for a straight, truly running bar; a live centre is safer",
                times=decimal(f"{plan.allowances.overhang_most:g}"),
            )
        )
    if plan.job.holding.stop:
        lines.append(tr("the bar rests against its stop: it takes the push of the drills"))
    lines.append(
        tr(
            "never over {speed} rev/min ({bound})",
            speed=write_speed_ceiling(up.largest_speed),
            bound=tr(up.speed_bound.value),
        )
    )
    return lines
