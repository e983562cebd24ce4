"""A card of a job for a machine to read: its strings under names."""

from typing import Any

from chartgen.wording.card import PrintedCard
from chartgen.wording.printed_job import PrintedJob, PrintedStep


def job_answer(card: PrintedCard[PrintedJob]) -> dict[str, Any]:
    """Return a card of a job as a dictionary; a step's cells stand under their headings."""
    job = card.chart
    # Number and name of the step have the first two columns.
    headings = [" ".join(heading.split()) for heading in job.headings[2:]]
    return {
        "card": card.file_stem,
        "title": job.title,
        "subtitle": job.subtitle,
        "lathe": card.lathe,
        "set_up": job.sketch.description,
        "steps": [_step(step, headings) for step in job.steps],
        "facts": dict(job.facts),
        "checklist": list(job.checklist),
        "dig_in": list(job.dig_in),
        "notes": list(job.notes),
        "wear": list(job.wear),
        "boxes": list(job.boxes),
        "legend": {entry.sign: entry.sentence for entry in job.legend},
        "cautions": [
            {"signal": one.signal, "text": one.text, "pictogram": one.pictogram}
            for one in card.cautions
        ],
        "assumptions": list(card.assumptions),
        "force_band": card.force_band,
        "deference": card.deference,
        "identity": card.identity,
        "check": card.check_code,
    }


def _step(step: PrintedStep, headings: list[str]) -> dict[str, Any]:
    return {
        "number": step.number,
        "step": step.what,
        "numbers": dict(zip(headings, step.cells, strict=True)),
        "lines": list(step.lines),
        "watch": step.watch,
    }
