"""What readings gave -> terminal text."""

from collections.abc import Sequence

from chartgen.wording.learned import LearnedLine


def render_learned(lines: Sequence[LearnedLine]) -> str:
    """Return the findings as text, a heading each."""
    text = []
    for line in lines:
        text += [line.heading, f"  {line.said}"]
        text += [f"  {line.done}"] if line.done else []
    return "\n".join(text) + "\n"
