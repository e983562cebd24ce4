"""An explanation -> terminal text: each step with formula, values, result and source."""

from chartgen.wording.explanation import Explanation


def render_explanation(explanation: Explanation) -> str:
    """Return the explanation as text."""
    lines = [explanation.heading, "=" * len(explanation.heading), explanation.outcome, ""]
    for number, step in enumerate(explanation.steps, 1):
        lines += [
            f"{number:2}. {step.title}",
            f"      {step.formula}",
            f"      {step.values}",
            f"      = {step.result}",
            f"      source: {step.source}",
        ]
    lines += ["", "What would give more room, best first:"]
    lines += [f"  {line}" for line in explanation.ways]
    lines += ["", "What moves this answer most, and so is worth measuring first:"]
    lines += [f"  {line}" for line in explanation.sensitivity]
    lines += ["", "Allowances in force (a shop file may change each):"]
    lines += [f"  {line}" for line in explanation.allowances]
    return "\n".join(lines) + "\n"
