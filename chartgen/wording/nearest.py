"""The nearest name to one that is unknown."""

from collections.abc import Sequence
from difflib import get_close_matches


def nearest_name(name: str, known: Sequence[str]) -> str:
    """Return a sentence that offers the nearest known names, or all of them if few."""
    near = get_close_matches(name, known, n=3, cutoff=0.5)
    if near:
        return f" Did you mean {' or '.join(repr(n) for n in near)}?"
    few = 12
    if len(known) <= few:
        return f" Known are: {', '.join(known)}."
    return ""
