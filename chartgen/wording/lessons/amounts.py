"""Numbers of exercises as they are printed, with their units."""

import math
from typing import Final

from chartgen.lessons.exercise import Given, NumericAnswer
from chartgen.quantities import Unit
from chartgen.wording.language import decimal, tr

_FIGURES: Final = 3
_SPAN_FIGURES: Final = 4
_PARTS: Final = 64
_SLIP: Final = 1e-9


def unit_label(unit: Unit) -> str:
    """Return a unit's label in the language being spoken."""
    label = unit.label
    return {
        "rev/min": tr("rev/min"),
        "mm/rev": tr("mm/rev"),
        "in/rev": tr("in/rev"),
    }.get(label, label)


def stated(given: Given) -> str:
    """Return a given number with its unit, as exact as it was drawn."""
    return with_unit(_exact(given.value, given.unit), given.unit)


def stated_for_work(given: Given) -> str:
    """Return a number that goes into a formula: as given, or to four figures if worked out."""
    exact = _exact(given.value, given.unit)
    whole = f"{given.value:.6g}"
    if len(whole.replace(".", "").strip("0")) <= _SPAN_FIGURES:
        return with_unit(exact, given.unit)
    return with_unit(figures(given.value, _SPAN_FIGURES), given.unit)


def result(value: float, unit: Unit) -> str:
    """Return a number that was worked out, to three figures, with its unit."""
    return with_unit(figures(value, _FIGURES), unit)


def with_unit(number: str, unit: Unit) -> str:
    """Return a written number with its unit, joined so that no line breaks between them."""
    label = unit_label(unit)
    return f"{number}\N{NO-BREAK SPACE}{label}" if label else number


def figures(value: float, count: int) -> str:
    """Return a number to so many figures, whole ones in full and none in powers of ten."""
    if value == 0.0:
        return "0"
    places = max(0, count - 1 - math.floor(math.log10(abs(value)) + _SLIP))
    return decimal(f"{value:.{places}f}")


def span(answer: NumericAnswer) -> tuple[str, str]:
    """Return the ends of what passes for right, each rounded into it."""
    if answer.high - answer.low <= abs(answer.value) * _SLIP:
        exact = figures(answer.value, _FIGURES)
        return exact, exact
    places = max(0, _SPAN_FIGURES - 1 - math.floor(math.log10(abs(answer.high))))
    scale = 10.0**places
    low = math.ceil(answer.low * scale - _SLIP) / scale
    high = math.floor(answer.high * scale + _SLIP) / scale
    return decimal(f"{low:.{places}f}"), decimal(f"{high:.{places}f}")


def _exact(value: float, unit: Unit) -> str:
    """Return a number as it stands; inches as a fraction where they are one."""
    parts = value * _PARTS
    is_fraction = unit.label == "in" and abs(parts - round(parts)) < _SLIP and parts >= 1.0
    if not is_fraction or round(parts) % _PARTS == 0:
        return decimal(f"{value:.6g}")
    whole, rest = divmod(round(parts), _PARTS)
    common = math.gcd(rest, _PARTS)
    text = f"{rest // common}/{_PARTS // common}"
    return f"{whole}\N{NO-BREAK SPACE}{text}" if whole else text
