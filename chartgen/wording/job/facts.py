"""What is told of the whole job: how it is held, what the bar gives, how long it takes."""

from chartgen.limits.window import Verdict
from chartgen.planning.operations import Operation
from chartgen.planning.plan import JobPlan, WearCheck
from chartgen.quantities import Minutes
from chartgen.wording.blade_letters import blade_letter
from chartgen.wording.job import amounts
from chartgen.wording.job.amounts import across, length, length_up, size
from chartgen.wording.language import decimal, tr, trn

_LONG_LIFE: Minutes[float] = 6000.0
_LIFE_STEPS = ((1000.0, 100.0), (100.0, 10.0), (10.0, 1.0), (1.0, 0.5), (0.0, 0.1))


def job_facts(plan: JobPlan) -> tuple[tuple[str, str], ...]:
    """Return the facts of a job, each with its name."""
    return (
        (tr("Hold"), _hold(plan)),
        (tr("Bar"), _bar(plan)),
        (tr("Blades"), _blades(plan)),
        (tr("Time"), _time(plan)),
        (tr("Chips"), _chips(plan)),
    )


def _hold(plan: JobPlan) -> str:
    units, up = plan.shop.request.units, plan.set_up
    held = [
        tr("{length} out", length=length_up(up.overhang, units)),
        tr("{length} in the jaws", length=length(up.grip_length, units)),
    ]
    if up.key_torque:
        held.append(tr("key {torque} N·m or more", torque=amounts.whole_up(up.key_torque)))
    text = ", ".join(held)
    if not up.behind:
        return text
    behind = tr("{length} of bar behind the spindle", length=length(up.behind, units))
    return f"{text}; {behind}"


def _bar(plan: JobPlan) -> str:
    units, use, job = plan.shop.request.units, plan.bar_use, plan.job
    bar, pitch = size(job.bar.diameter, job.bar.length, units), length_up(use.pitch, units)
    if use.pieces == 0:
        return tr(
            "{bar} is too short: one piece uses {pitch}, and what stays in the jaws comes on top",
            bar=bar,
            pitch=pitch,
        )
    bars = trn("{number} bar", "{number} bars", use.bars)
    remnant, wanted = length(use.remnant, units), amounts.pieces(job.quantity)
    if plan.set_up.goes_through_spindle is False:
        return tr(
            "{bar}, sawn into {blanks} of {length} for {pieces}, {remnant} of each stay in the "
            "jaws; {pitch} a piece, {bars} for {wanted}",
            bar=bar,
            blanks=trn("{number} blank", "{number} blanks", use.blanks),
            length=length_up(use.blank_length, units),
            pieces=amounts.pieces(use.pieces_a_blank),
            remnant=remnant,
            pitch=pitch,
            bars=bars,
            wanted=wanted,
        )
    return tr(
        "{bar} gives {pieces}, {pitch} a piece, {remnant} left over; {bars} for {wanted}",
        bar=bar,
        pieces=amounts.pieces(use.pieces),
        pitch=pitch,
        remnant=remnant,
        bars=bars,
        wanted=wanted,
    )


def _blades(plan: JobPlan) -> str:
    taken = next((step.parting.blade.name for step in plan.steps if step.parting), "")
    told = []
    for option in plan.blade_options:
        name = f"{blade_letter(plan.shop, option.blade.name)} {option.blade.name}"
        of_it = [_verdict(option.verdict), tr("{number} a bar", number=option.pieces)]
        if option.blade.name == taken:
            of_it.append(tr("taken"))
        told.append(f"{name}: {', '.join(of_it)}")
    return "; ".join(told)


def _verdict(verdict: Verdict) -> str:
    return {
        Verdict.INSIDE: tr("inside its window"),
        Verdict.TIGHT: tr("tight"),
        Verdict.NO_WINDOW: tr("no window"),
    }[verdict]


def _time(plan: JobPlan) -> str:
    cutting = sum(step.cut.time for step in plan.steps if step.cut and step.is_per_piece)
    first = amounts.minutes_in_words(plan.once + plan.per_piece)
    text = tr(
        "first piece {first}, of it {cutting} min in the cut; the rest is allowed for handling",
        first=first,
        cutting=amounts.minutes(cutting),
    )
    if plan.job.quantity == 1:
        return text
    others = tr(
        "each further piece {time}; all {number}: {whole}",
        time=amounts.minutes_in_words(plan.per_piece),
        number=plan.job.quantity,
        whole=amounts.minutes_in_words(plan.whole),
    )
    return f"{text}; {others}"


def _chips(plan: JobPlan) -> str:
    units, use = plan.shop.request.units, plan.bar_use
    return tr(
        "{volume} ({mass}) a piece; the piece weighs {weight}",
        volume=amounts.volume(use.chips, units),
        mass=amounts.mass(use.chips_mass, units),
        weight=amounts.mass(use.piece_mass, units),
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
    wanted = [(tr("outside"), across(piece.diameter, units))]
    if piece.bore:
        wanted.append((tr("bore"), across(piece.bore, units)))
    wanted.append((tr("length"), length(piece.length, units)))
    if piece.groove is not None:
        inside = piece.diameter - 2.0 * piece.groove.depth
        slot = f"{across(inside, units)}, {length(piece.groove.width, units)}"
        wanted.append((tr("groove"), slot))
    return tuple(wanted)


def _wear(plan: JobPlan, check: WearCheck) -> str:
    tool = check.tool
    if check.operation is Operation.PART:
        tool = tr("blade {name}", name=check.tool)
    elif check.operation is Operation.DRILL:
        tool = tr("Drill {diameter}", diameter=across(check.size, plan.shop.request.units))
    tool = amounts.sentence(tool)[:-1]
    look = trn(
        "{tool}: look at its edge after each piece",
        "{tool}: look at its edge after every {number} pieces",
        check.pieces,
        tool=tool,
    )
    if check.short is None or check.long is None:
        return tr("{look}; no life is known.", look=look)
    if check.short >= _LONG_LIFE:
        # So far under the speeds the law was taken at, its hours would only look exact.
        return tr("{look}. At this speed a chip or a knock ends it before wear does.", look=look)
    short, long = (_life(minutes) for minutes in (check.short, check.long))
    return tr(
        "{look}. It may last {short} to {long} in the cut: a wide band.",
        look=look,
        short=short,
        long=long,
    )


def _life(minutes: Minutes[float]) -> str:
    """Return a life in the cut, rounded down: two figures say enough of so wide a band."""
    if minutes >= _LONG_LIFE:
        return tr("over {hours} h", hours=f"{_LONG_LIFE / 60.0:g}")
    step = next(step for least, step in _LIFE_STEPS if minutes >= least)
    return decimal(f"{minutes // step * step:g} min")
