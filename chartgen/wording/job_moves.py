"""What moved between two printings of one job's card: by step, in the card's own strings."""

from collections.abc import Iterator
from difflib import SequenceMatcher
from typing import Final

from chartgen.wording.printed_change import FactGroup, PrintedFact
from chartgen.wording.printed_job import PrintedJob, PrintedStep

_NONE: Final = "–"
_STEP: Final = "step"
_IN_WORDS: Final = "in words"
_Pair = tuple[PrintedStep | None, PrintedStep | None]


def job_moves(was: PrintedJob, now: PrintedJob) -> tuple[FactGroup, ...]:
    """Return what the card says otherwise: the set-up, each moved step, then all beside them."""
    groups = [
        FactGroup(title="Set-up", facts=tuple(_set_up(was, now))),
        *_moved_steps(was, now),
        FactGroup(title="Beside the steps", facts=tuple(_beside(was, now))),
    ]
    return tuple(group for group in groups if group.facts)


def job_remark(was: PrintedJob, now: PrintedJob) -> str:
    """Return what moved in one line; empty where nothing did."""
    if was.headings != now.headings:
        return "other columns"
    remarks = []
    if any(_set_up(was, now)):
        remarks.append("another set-up")
    moved = len(_moved_steps(was, now))
    if moved:
        # Of a step that is gone the card now printed has none.
        remarks.append(f"{moved} of {max(len(was.steps), len(now.steps))} steps")
    beside = [fact.name for fact in _beside(was, now)]
    if beside:
        remarks.append(f"otherwise: {', '.join(beside)}")
    return "; ".join(remarks)


def _set_up(was: PrintedJob, now: PrintedJob) -> Iterator[PrintedFact]:
    old, new = was.sketch, now.sketch
    if old.description != new.description:
        yield PrintedFact(name="sketch", before=old.description, after=new.description)
    elif old != new:
        # Moved by less than is written: the drawing is no longer to scale.
        yield PrintedFact(name="sketch", before="as drawn", after="drawn otherwise")


def _moved_steps(was: PrintedJob, now: PrintedJob) -> list[FactGroup]:
    headings = [" ".join(heading.split()) for heading in now.headings]
    groups = []
    for old, new in _pairs(was.steps, now.steps):
        named = new or old
        facts = tuple(_moved_parts(headings, old, new))
        if facts and named is not None:
            groups.append(FactGroup(title=f"Step {named.number}, {named.what}", facts=facts))
    return groups


def _pairs(was: tuple[PrintedStep, ...], now: tuple[PrintedStep, ...]) -> Iterator[_Pair]:
    """Yield each step with itself of the other printing; None where the other has no such step."""
    names = [step.what for step in was], [step.what for step in now]
    for _, a, b, c, d in SequenceMatcher(None, *names, autojunk=False).get_opcodes():
        for index in range(max(b - a, d - c)):
            yield (
                was[a + index] if a + index < b else None,
                now[c + index] if c + index < d else None,
            )


def _moved_parts(
    headings: list[str], old: PrintedStep | None, new: PrintedStep | None
) -> Iterator[PrintedFact]:
    if old is None or new is None:
        yield PrintedFact(
            name=_STEP, before=old.what if old else _NONE, after=new.what if new else _NONE
        )
        return
    if old.what != new.what:
        yield PrintedFact(name=_STEP, before=old.what, after=new.what)
    # Number and name of the step have the first two columns.
    cells = [
        PrintedFact(name=name, before=before or _NONE, after=after or _NONE)
        for name, before, after in zip(headings[2:], old.cells, new.cells, strict=False)
        if before != after
    ]
    yield from cells
    # The lines say the numbers again: beside moved ones only what to watch is news.
    was, now = ((() if cells else step.lines) + (step.watch,) for step in (old, new))
    before, after = _otherwise(was, now)
    if before != after:
        yield PrintedFact(name=_IN_WORDS, before=before or _NONE, after=after or _NONE)


def _beside(was: PrintedJob, now: PrintedJob) -> Iterator[PrintedFact]:
    """Yield what else stands on a card of a job and moved."""
    facts = dict(was.facts), dict(now.facts)
    sides = [
        *((name, facts[0].get(name, ""), facts[1].get(name, "")) for name in facts[0] | facts[1]),
        ("title", was.title, now.title),
        ("subtitle", was.subtitle, now.subtitle),
        ("checklist", *_otherwise(was.checklist, now.checklist)),
        ("dig-in", *_otherwise(was.dig_in, now.dig_in)),
        ("note", *_otherwise(was.notes, now.notes)),
        ("look at an edge", *_otherwise(was.wear, now.wear)),
        ("boxes", str(len(was.boxes)), str(len(now.boxes))),
    ]
    for name, before, after in sides:
        if before != after:
            yield PrintedFact(name=name, before=before or _NONE, after=after or _NONE)


def _otherwise(was: tuple[str, ...], now: tuple[str, ...]) -> tuple[str, str]:
    """Return the lines of either that the other has not."""
    return (
        " ".join(line for line in was if line and line not in now),
        " ".join(line for line in now if line and line not in was),
    )
