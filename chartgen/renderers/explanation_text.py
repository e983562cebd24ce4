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
    lines += ["", "Allowances in force (a shop file may change each):"]
    lines += [f"  {line}" for line in explanation.allowances]
    return "\n".join(lines) + "\n"
