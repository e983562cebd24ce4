"""An explanation -> terminal text: each step with formula, values, result and source."""

from collections.abc import Sequence

from chartgen.wording.explanation import Explanation
from chartgen.wording.job.explained import ExplainedCut, side_force_sentence
from chartgen.wording.steps.step import Step


def render_explanation(explanation: Explanation) -> str:
    """Return the explanation as text."""
    lines = [explanation.heading, "=" * len(explanation.heading), explanation.outcome, ""]
    for number, step in enumerate(explanation.steps, 1):
        lines += _step_lines(f"{number:2}. ", step)
    lines += ["", "What would give more room, best first:"]
    lines += [f"  {line}" for line in explanation.ways]
    lines += ["", "What moves this answer most, and so is worth measuring first:"]
    lines += [f"  {line}" for line in explanation.sensitivity]
    lines += ["", "Allowances in force (a shop file may change each):"]
    lines += [f"  {line}" for line in explanation.allowances]
    return "\n".join(lines) + "\n"


def render_explained_job(cuts: Sequence[ExplainedCut]) -> str:
    """Return the way to the numbers of a job's cuts as text."""
    lines = ["How each step comes by its numbers", "=" * 34, side_force_sentence()]
    for cut in cuts:
        lines += ["", cut.heading]
        for step in cut.steps:
            lines += _step_lines("    ", step)
    return "\n".join(lines) + "\n"


def _step_lines(lead: str, step: Step) -> list[str]:
    return [
        f"{lead}{step.title}",
        f"      {step.formula}",
        f"      {step.values}",
        f"      = {step.result}",
        f"      source: {step.source}",
    ]
