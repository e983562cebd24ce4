"""One step of an explanation."""

from dataclasses import dataclass

from chartgen.reference.allowances import load_allowances


@dataclass(frozen=True, slots=True)
class Step:
    """What is worked out, by which formula, from which values, to what, on whose word."""

    title: str
    formula: str
    values: str
    result: str
    source: str


def allowance_source(name: str) -> str:
    """Return how an allowance is cited: by name, with its source if it has one, and mark."""
    entry = load_allowances()[name]
    source = "" if entry.source == "none" else f", [{entry.source}]"
    return f"allowance {name}{source} ({entry.mark.word})"
