"""What a printed card is worth -> terminal text."""

from chartgen.renderers.change_text import cells_text, facts_text
from chartgen.wording.staleness import PrintedStaleness


def render_staleness(found: PrintedStaleness, file: str) -> str:
    """Return the state of a card, what changed since, and the cells or steps that moved on it."""
    parts = [
        f"{file}: {found.headline}\n{found.codes}\n",
        *(facts_text(group) for group in found.facts),
        *(facts_text(group) for group in found.steps),
        *(cells_text(group, found.headings) for group in found.groups),
    ]
    return "\n".join(parts)
