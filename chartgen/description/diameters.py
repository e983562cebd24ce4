"""Diameters as a shop file may give them: a range with a step, or preferred numbers."""

import re

from chartgen.quantities import MM
from chartgen.units import UnreadableError, between, looks_like_range, magnitude

MOST_DIAMETERS = 200

# The rounded values of ISO 3 over one decade; R10 contains R5, and R20 contains R10.
_R5 = ("1", "1.6", "2.5", "4", "6.3")
_R10 = (*_R5, "1.25", "2", "3.15", "5", "8")
_R20 = (*_R10, "1.12", "1.4", "1.8", "2.24", "2.8", "3.55", "4.5", "5.6", "7.1", "9")
PREFERRED = {
    name: sorted(values, key=float) for name, values in (("R5", _R5), ("R10", _R10), ("R20", _R20))
}

EXAMPLES = "'10..60 mm step 5 mm' or 'R10 6..63 mm'"


def diameters_of(text: str) -> tuple[float, ...]:
    """Return the diameters [mm] that `text` stands for; the last one is included when hit.

    Raises
    ------
    UnreadableError
        If `text` is neither "10..60 mm step 5 mm" nor "R10 6..63 mm", or gives no
        diameter, or more than a card could ever hold.
    """
    series, _, rest = text.strip().partition(" ")
    if series in PREFERRED:
        return _preferred(series, *between(rest, MM), text=text)
    if re.fullmatch(r"[Rr][0-9]+", series):
        raise UnreadableError(
            f"'{series}' is not a series known here", f"use {', '.join(PREFERRED)}"
        )

    ends, has_step, step_text = text.partition("step")
    if not has_step or not looks_like_range(ends):
        raise UnreadableError(
            f"{text[:60]!r} is neither a list nor a range with a step", f"write it as in {EXAMPLES}"
        )
    low, high = between(ends.strip(), MM)
    step = magnitude(step_text, MM, above=0.0)
    ratio = (high - low) / step
    _refuse_too_many(ratio + 1, text)
    # A step of 0.1 mm must not miss its end by the last bit of a float.
    count = int(ratio + 1e-9) + 1
    return tuple(round(low + number * step, 9) for number in range(count))


def _preferred(series: str, low: float, high: float, *, text: str) -> tuple[float, ...]:
    found = []
    for exponent in range(-3, 7):
        decade = [float(f"{value}e{exponent}") for value in PREFERRED[series]]
        found += [value for value in decade if low <= value <= high]
    if not found:
        raise UnreadableError(f"{text[:60]!r} holds no number of {series}", "widen the range")
    _refuse_too_many(len(found), text)
    return tuple(found)


def _refuse_too_many(count: float, text: str) -> None:
    if count >= MOST_DIAMETERS + 1:
        raise UnreadableError(
            f"{text[:60]!r} gives more than {MOST_DIAMETERS} diameters", "take a larger step"
        )
