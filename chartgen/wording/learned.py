"""What readings gave, in words: each assumption, what is done, and which reading would help."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from chartgen.learning.decisions import Decision, Deed
from chartgen.learning.findings import NARROWED, Finding, Verdict
from chartgen.learning.next_reading import TRIED, Further, Help
from chartgen.model.measured import Assumption
from chartgen.model.readings import DeflectionReading, KeyTorqueReading, ShopReading
from chartgen.reference.tables import load_material
from chartgen.wording.measured import name_of, write_amount

_MORE = {
    Assumption.KEY_TORQUE: "a pull of a torque wrench in the chuck key's place",
    Assumption.TOOL_STIFFNESS: "a weight on the blade, with a dial gauge on its holder",
    Assumption.BREAKDOWN: "a cut to the stall, if the manual allows it",
    Assumption.CURRENT_LIMIT: "a cut to the stall, if the manual allows it",
    Assumption.FORCE_RESERVE: "a cut with a wattmeter, idle and cutting",
    Assumption.DRIVE_EFFICIENCY: "a cut with a wattmeter, idle and cutting",
    Assumption.MOTOR_EFFICIENCY: "a cut with a tachometer, idle and cutting",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class LearnedLine:
    """What became of one assumption: heading, what the readings say, what is done or wanted."""

    heading: str
    said: str
    done: str


def learned_lines(decisions: Sequence[Decision]) -> tuple[LearnedLine, ...]:
    """Return the words on each finding."""
    return tuple(
        LearnedLine(
            heading=f"{name_of(f.assumption).capitalize()} ({f.assumption.key})",
            said=_said(f),
            done=_done(one),
        )
        for one in decisions
        for f in [one.finding]
    )


def _said(finding: Finding) -> str:
    one, assumption = finding.measured, finding.assumption
    count = f"{finding.readings} reading{'s' if finding.readings > 1 else ''}"
    if one is not None:
        before = (
            "" if finding.assumed is None else f"; assumed: {_amount(finding.assumed, finding)}"
        )
        return (
            f"measured {one.date}: {write_amount(one.value, assumption)} ± "
            f"{write_amount(one.plus_minus, assumption)} ({100.0 * one.level:g} % sure), "
            f"from {count}{before}."
        )
    if finding.verdict is Verdict.TOO_FEW:
        needed = finding.readings + finding.missing
        return f"not concluded: {count}, and {needed} are needed."
    if finding.verdict is Verdict.CONTRADICTED and finding.odd is not None:
        return (
            f"not concluded: {_named(finding.odd)} contradicts the others. "
            "Take it again, or take it out if you know what went wrong."
        )
    if finding.verdict is Verdict.OUT_OF_BOUNDS:
        return (
            f"not concluded: {count} point past {write_amount(finding.value, finding.assumption)}, "
            "the bound of what may be assumed. Check the readings, the plate and the positions."
        )
    if finding.narrowing is None:
        return f"not concluded: {count} that scatter too much to tell."
    return (
        f"not concluded: after {count} its doubt is {100.0 * finding.narrowing:.0f} % of what "
        f"it was; {100.0 * NARROWED:.0f} % or less counts as measured."
    )


def _done(decision: Decision) -> str:
    finding = decision.finding
    if decision.deed is Deed.WRITE:
        return "Goes into the shop file."
    if decision.deed is Deed.LEAVE and finding.stated is not None:
        return (
            f"Left alone: the file says {_amount(finding.stated, finding)}, and not from readings. "
            "--replace puts the measured value in its place."
        )
    wanted = _wanted(finding)
    if decision.deed is Deed.WITHDRAW:
        return f"What earlier readings gave is taken out of the shop file. {wanted}".rstrip()
    return wanted


def _wanted(finding: Finding) -> str:
    if finding.verdict is Verdict.CONTRADICTED:
        return ""
    if finding.missing or finding.help is None:
        count = finding.missing or TRIED
        return f"Would help most, {count} more of it: {_MORE[finding.assumption]}."
    return _further(finding.help)


def _further(helped: Help) -> str:
    if helped.further is None:
        return (
            "No kind of reading here tells it apart: each holds it only together with the cutting "
            "force. It stays as assumed."
        )
    metal = load_material(helped.material).name
    words = {
        Further.WATTS: f"a cut in {metal} with a wattmeter, idle and cutting",
        Further.WATTS_IN_ANOTHER_MATERIAL: f"a cut in {metal} with a wattmeter, idle and cutting",
        Further.DROOP: f"a cut in {metal} with a tachometer, idle and cutting",
        Further.STALL: f"a cut in {metal} to the stall, if the manual allows it",
    }[helped.further]
    enough = "" if helped.narrowing <= NARROWED else ", though not enough by themselves"
    return f"Would help most, {TRIED} more of it: {words}{enough}."


def _amount(value: float, finding: Finding) -> str:
    return write_amount(value, finding.assumption)


def _named(reading: ShopReading) -> str:
    if isinstance(reading, KeyTorqueReading):
        return f"the pull of {reading.torque:g} N·m on {reading.date}"
    if isinstance(reading, DeflectionReading):
        return f"the movement of {reading.movement:g} mm under {reading.pull:g} N on {reading.date}"
    kind = type(reading).__name__.removesuffix("Reading").lower()
    cut = reading.cut
    return (
        f"the {kind} reading of {reading.date} ({cut.material}, {cut.blade}, {cut.diameter:g} mm, "
        f"{cut.speed:g} rpm, {cut.feed:g} mm/rev)"
    )


def learned_answer(decisions: Sequence[Decision]) -> dict[str, Any]:
    """Return the findings as a dictionary, ready for JSON."""
    return {"findings": [_answer(one) for one in decisions]}


def _answer(decision: Decision) -> dict[str, Any]:
    finding, one = decision.finding, decision.finding.measured
    helped = finding.help
    return {
        "key": finding.assumption.key,
        "unit": finding.assumption.unit.label or None,
        "verdict": finding.verdict.value,
        "deed": decision.deed.value,
        "readings": finding.readings,
        "readings_missing": finding.missing,
        "date": finding.date,
        "value": one.value if one else None,
        "plus_minus": one.plus_minus if one else None,
        "level": one.level if one else None,
        "assumed": _rounded(finding.assumed),
        "stated_by_owner": finding.stated,
        "doubt_left": _rounded(finding.narrowing),
        "contradicting": _named(finding.odd) if finding.odd else None,
        "would_help": helped.further.value if helped and helped.further else None,
    }


def _rounded(value: float | None) -> float | None:
    return None if value is None else round(value, 4)
