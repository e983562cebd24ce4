"""What is told of the whole job: how it is held, what the bar gives, how long it takes."""

from chartgen.limits.window import Verdict
from chartgen.model.job import Coolant
from chartgen.planning.operations import Operation
from chartgen.planning.plan import JobPlan, WearCheck
from chartgen.quantities import Minutes
from chartgen.wording.blade_letters import blade_letter
from chartgen.wording.job import amounts
from chartgen.wording.job.amounts import across, counted, length, length_up

_VERDICT = {
    Verdict.INSIDE: "inside its window",
    Verdict.TIGHT: "tight",
    Verdict.NO_WINDOW: "no window",
}

_LONG_LIFE: Minutes[float] = 6000.0
_LIFE_STEPS = ((1000.0, 100.0), (100.0, 10.0), (10.0, 1.0), (1.0, 0.5), (0.0, 0.1))


def job_facts(plan: JobPlan) -> tuple[tuple[str, str], ...]:
    """Return the facts of a job, each with its name."""
    return (
        ("Hold", _hold(plan)),
        ("Bar", _bar(plan)),
        ("Blades", _blades(plan)),
        ("Time", _time(plan)),
        ("Chips", _chips(plan)),
    )


def _hold(plan: JobPlan) -> str:
    units, up = plan.shop.request.units, plan.set_up
    key = f", key {amounts.whole_up(up.key_torque)} N·m or more" if up.key_torque else ""
    behind = f"; {length(up.behind, units)} of bar behind the spindle" if up.behind else ""
    return (
        f"{length_up(up.overhang, units)} out, {length(up.grip_length, units)} in the jaws{key}"
        f"{behind}"
    )


def _bar(plan: JobPlan) -> str:
    units, use, job = plan.shop.request.units, plan.bar_use, plan.job
    bar = f"{across(job.bar.diameter, units)} by {length(job.bar.length, units)}"
    if use.pieces == 0:
        return (
            f"{bar} is too short: one piece uses {length_up(use.pitch, units)}, and what stays in "
            "the jaws comes on top"
        )
    each = f"{length_up(use.pitch, units)} a piece"
    needed = f"{counted(use.bars, 'bar')} for {counted(job.quantity, 'piece')}"
    remnant = length(use.remnant, units)
    if plan.set_up.goes_through_spindle is False:
        blanks = (
            f"sawn into {counted(use.blanks, 'blank')} of {length_up(use.blank_length, units)} for "
            f"{counted(use.pieces_a_blank, 'piece')}, {remnant} of each stay in the jaws"
        )
        return f"{bar}, {blanks}; {each}, {needed}"
    return f"{bar} gives {counted(use.pieces, 'piece')}, {each}, {remnant} left over; {needed}"


def _blades(plan: JobPlan) -> str:
    taken = next((step.parting.blade.name for step in plan.steps if step.parting), "")
    told = []
    for option in plan.blade_options:
        name = f"{blade_letter(plan.shop, option.blade.name)} {option.blade.name}"
        mark = ", taken" if option.blade.name == taken else ""
        told.append(f"{name}: {_VERDICT[option.verdict]}, {option.pieces} a bar{mark}")
    return "; ".join(told)


def _time(plan: JobPlan) -> str:
    cutting = sum(step.cut.time for step in plan.steps if step.cut and step.is_per_piece)
    first = amounts.minutes_in_words(plan.once + plan.per_piece)
    text = (
        f"first piece {first}, of it {amounts.minutes(cutting)} min in the cut; the rest is "
        "allowed for handling"
    )
    if plan.job.quantity == 1:
        return text
    return (
        f"{text}; each further piece {amounts.minutes_in_words(plan.per_piece)}; all "
        f"{plan.job.quantity} {amounts.minutes_in_words(plan.whole)}"
    )


def _chips(plan: JobPlan) -> str:
    units, use = plan.shop.request.units, plan.bar_use
    return (
        f"{amounts.volume(use.chips, units)} ({amounts.mass(use.chips_mass, units)}) a piece; the "
        f"piece weighs {amounts.mass(use.piece_mass, units)}"
    )


# Small letters: capitals are the blades.
_SIGNS = "abcdefgh"


def wear_lines(plan: JobPlan) -> tuple[str, ...]:
    """Return when to look at which edge, each after its sign; nothing for a single piece."""
    if plan.job.quantity == 1:
        return ()
    return tuple(
        f"{sign}: {_wear(plan, check)}"
        for sign, check in zip(_SIGNS, plan.wear_checks, strict=False)
    )


def wear_marks(plan: JobPlan) -> tuple[tuple[int, str], ...]:
    """Return after which piece which edges are looked at, never after the last."""
    marks = []
    for piece in range(1, plan.job.quantity):
        due = [
            sign
            for sign, check in zip(_SIGNS, plan.wear_checks, strict=False)
            if piece % check.pieces == 0
        ]
        if due:
            marks.append((piece, "".join(due)))
    return tuple(marks)


def measures(plan: JobPlan) -> tuple[tuple[str, str], ...]:
    """Return what is measured on the first piece, and what is wanted."""
    units, piece = plan.shop.request.units, plan.job.piece
    wanted = [("outside", across(piece.diameter, units))]
    if piece.bore:
        wanted.append(("bore", across(piece.bore, units)))
    wanted.append(("length", length(piece.length, units)))
    if piece.groove is not None:
        inside = piece.diameter - 2.0 * piece.groove.depth
        wanted.append(("groove", f"{across(inside, units)}, {length(piece.groove.width, units)}"))
    return tuple(wanted)


def _wear(plan: JobPlan, check: WearCheck) -> str:
    tool = f"blade {check.tool}" if check.operation is Operation.PART else check.tool
    if check.operation is Operation.DRILL:
        tool = f"drill {across(check.size, plan.shop.request.units)}"
    every = "each piece" if check.pieces == 1 else f"every {check.pieces} pieces"
    if check.short is None or check.long is None:
        return f"{amounts.sentence(tool)[:-1]}: look at its edge after {every}; no life is known."
    short, long = (_life(minutes) for minutes in (check.short, check.long))
    return (
        f"{amounts.sentence(tool)[:-1]}: look at its edge after {every}. It may last {short} to "
        f"{long} in the cut: a wide band."
    )


def _life(minutes: Minutes[float]) -> str:
    """Return a life in the cut, rounded down: two figures say enough of so wide a band."""
    if minutes >= _LONG_LIFE:
        return f"over {_LONG_LIFE / 60.0:g} h"
    step = next(step for least, step in _LIFE_STEPS if minutes >= least)
    return f"{minutes // step * step:g} min"


COOLANT_CHECK = {
    Coolant.OIL: "Oil and a long brush within reach, no rag",
    Coolant.EMULSION: "Emulsion on, aimed at the cut, splash guard down",
    Coolant.DRY: "Chip hook and brush within reach, no rag",
}
