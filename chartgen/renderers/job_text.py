"""The cards of a job -> terminal text: their strings, only placed; the sketch in words."""

from collections.abc import Iterable

from chartgen.renderers.columns import in_columns
from chartgen.wording.card import PrintedCard
from chartgen.wording.language import speaking, tr
from chartgen.wording.printed_job import PrintedJob, PrintedStep
from chartgen.wording.section_titles import SectionTitle

_INDENT = "    "
_BOXES_A_LINE = 10


def render_job(card: PrintedCard[PrintedJob]) -> str:
    """Return the set-up card as text: set-up, step table, step by step, checks, foot."""
    with speaking(card.language):
        return _set_up_card(card)


def render_batch(card: PrintedCard[PrintedJob], beside: PrintedCard[PrintedJob]) -> str:
    """Return of the batch card what the set-up card beside it does not say already."""
    with speaking(card.language):
        return _batch_card(card, beside)


def _set_up_card(card: PrintedCard[PrintedJob]) -> str:
    job = card.chart
    table = [[" ".join(heading.split()) for heading in job.headings], *job.rows]
    parts = (
        _heading(card),
        f"{job.sketch.description}\n",
        in_columns(table, right=job.right),
        _listed("", (f"{entry.sign:>6}  {entry.sentence}" for entry in job.legend)),
        "\n".join(_step(step) for step in job.steps),
        _facts(job.facts),
        _listed(SectionTitle.CHECKS.words, (f"[ ] {line}" for line in job.checklist)),
        _listed(SectionTitle.DIG_IN.words, job.dig_in),
        _listed(SectionTitle.MIND.words, job.notes),
        _listed(SectionTitle.EDGES.words, job.wear),
        _boxes(job),
        _listed(
            SectionTitle.CAUTIONS.words, (f"{each.signal}: {each.text}" for each in card.cautions)
        ),
        _listed(SectionTitle.ASSUMED.words, (f"- {line}" for line in card.assumptions)),
        _foot(card),
    )
    return "\n".join(part for part in parts if part)


def _batch_card(card: PrintedCard[PrintedJob], beside: PrintedCard[PrintedJob]) -> str:
    job, said = card.chart, beside.chart
    parts = (
        _heading(card),
        _facts(tuple(fact for fact in job.facts if fact not in said.facts)),
        _listed(
            SectionTitle.CHECKS.words,
            (f"[ ] {line}" for line in job.checklist if line not in said.checklist),
        ),
        _listed(SectionTitle.MIND.words, (line for line in job.notes if line not in said.notes)),
        _listed(SectionTitle.EDGES.words, (line for line in job.wear if line not in said.wear)),
        _boxes(job),
        _identity(card),
    )
    return "\n".join(part for part in parts if part)


def _heading(card: PrintedCard[PrintedJob]) -> str:
    job = card.chart
    about = f"{job.title} ({job.subtitle})" if job.subtitle else job.title
    return f"{tr('{job} on {lathe}', job=about, lathe=card.lathe)}\n"


def _step(step: PrintedStep) -> str:
    lines = [f"{step.number:>2}  {step.what}\n", *(f"{_INDENT}{line}\n" for line in step.lines)]
    if step.watch:
        lines.append(f"{_INDENT}{tr('Watch:')} {step.watch}\n")
    return "".join(lines)


def _facts(facts: tuple[tuple[str, str], ...]) -> str:
    width = max((len(name) for name, _ in facts), default=0)
    return "".join(f"{name.ljust(width)}  {text}\n" for name, text in facts)


def _listed(title: str, lines: Iterable[str]) -> str:
    """Return lines under a title; nothing where there are none."""
    found = list(lines)
    above = [title] if title and found else []
    return "".join(f"{line}\n" for line in (*above, *found))


def _boxes(job: PrintedJob) -> str:
    ticks = [f"[ ] {box}" for box in job.boxes]
    if not ticks:
        return ""
    width = max(len(tick) for tick in ticks)
    rows = (ticks[i : i + _BOXES_A_LINE] for i in range(0, len(ticks), _BOXES_A_LINE))
    return "".join("  ".join(tick.ljust(width) for tick in row).rstrip() + "\n" for row in rows)


def _foot(card: PrintedCard[PrintedJob]) -> str:
    band = f"{card.force_band}\n" if card.force_band else ""
    return f"{band}{card.deference}\n{_identity(card)}"


def _identity(card: PrintedCard[PrintedJob]) -> str:
    return f"{card.identity} · {tr('check {code}', code=card.check_code)}\n"
