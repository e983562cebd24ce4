"""A written answer -> what it may mean: a number with the unit behind it, or an option.

A point and a comma are both a decimal sign where there is one of them once. With three figures
behind it, it may part thousands as well ("1.018" rev/min): then it is taken for what is right
or, where neither is, for the decimal sign. Blanks and thin spaces between groups of three part
thousands. Nothing else in the text is ever evaluated.
"""

import re
from collections.abc import Sequence
from typing import Final

from chartgen.lessons.class_units import COUNT
from chartgen.quantities import MIN, RPM, SECOND, Unit
from chartgen.units import UnreadableError, magnitude

LONGEST: Final = 60
_GROUPED: Final = re.compile(r"[0-9]{1,3}(?:[ '’][0-9]{3})+(?![0-9])")
_SPACES: Final = dict.fromkeys(map(ord, "\u00a0\u2007\u2009\u200a\u202f\t"), " ")
_NUMBER: Final = re.compile(r"[+-]?(?:[0-9]+(?:[.,][0-9]+)*|[.,][0-9]+)(?:[eE][+-]?[0-9]{1,2})?")
_THOUSANDS: Final = re.compile(r"[1-9][0-9]{0,2}[.,][0-9]{3}")
_LEADING: Final = re.compile(r"^(?:≈|~|=|ca\.?|about|approx\.?)\s*")
# As students write them, where a shop file does not.
_SPELLINGS: Final = {
    RPM: ("1/min", "min-1", "min^-1", "min⁻¹", "umdr/min", "umdrehungen/min", "rpm", "u/min"),
    SECOND: ("sec", "sek", "seconds", "sekunden", "s/turn", "s/u", "s/umdr", "sec/turn"),
    MIN: ("minutes", "minuten"),
    COUNT: ("pieces", "piece", "pcs", "pc", "stück", "stk", "st", "teile", "parts"),
}
_YES_NO: Final = {
    "yes": ("yes", "y", "ja", "j"),
    "no": ("no", "n", "nein"),
}


def numbers_of(text: str, unit: Unit) -> tuple[float, ...]:
    """Return the numbers that a text may mean, in a unit, the likeliest first; none: unreadable."""
    plain = text.translate(_SPACES).replace("\N{MINUS SIGN}", "-").strip()
    if len(plain) > LONGEST:
        return ()
    plain = _LEADING.sub("", plain.lower() if plain[:1].isalpha() else plain)
    plain = _GROUPED.sub(lambda found: re.sub(r"[ '’]", "", found[0]), plain)
    match = _NUMBER.match(plain)
    if match is None:
        return ()
    factor = _factor(plain[match.end() :].strip(), unit)
    if factor is None:
        return ()
    return tuple(factor * number for number in _meanings(match[0]))


def _meanings(number: str) -> tuple[float, ...]:
    """Return what a number's signs may mean, the decimal sign first."""
    mantissa, exponent, power = number.lower().partition("e")
    signs = re.findall(r"[.,]", mantissa)
    tail = f"{exponent}{power}"
    if len(signs) > 1:
        last = signs[-1]
        if signs.count(last) > 1:
            # Only thousands are parted more than once, and always alike.
            grouped = re.fullmatch(r"[+-]?[0-9]{1,3}(?:[.,][0-9]{3})+", mantissa)
            parted = re.sub(r"[.,]", "", mantissa)
            return (float(parted + tail),) if grouped and len(set(signs)) == 1 else ()
        whole, _, decimals = mantissa.rpartition(last)
        grouped = re.fullmatch(r"[+-]?[0-9]{1,3}(?:[.,][0-9]{3})+", whole)
        return (float(re.sub(r"[.,]", "", whole) + "." + decimals + tail),) if grouped else ()
    found = [float(mantissa.replace(",", ".") + tail)]
    if _THOUSANDS.fullmatch(mantissa.lstrip("+-")) and not exponent:
        found.append(float(re.sub(r"[.,]", "", mantissa)))
    return tuple(found)


def _factor(spelling: str, unit: Unit) -> float | None:
    """Return what to multiply by to come to a unit; None where the unit is another kind's."""
    own = (unit.name, unit.label, *_SPELLINGS.get(unit, ()))
    if not spelling or spelling.lower().rstrip(".") in {name.lower() for name in own}:
        return 1.0
    for other, spellings in _SPELLINGS.items():
        if spelling.lower().rstrip(".") in spellings:
            spelling = other.name
    if unit is COUNT:
        return None
    try:
        return magnitude(f"1 {spelling}", unit)
    except (UnreadableError, KeyError):
        return None


def option_of(text: str, options: Sequence[str]) -> int | None:
    """Return which option a text ticks: by its letter, its key, or yes and no; None: unreadable."""
    word = text.translate(_SPACES).strip().strip("().:").strip().lower()
    for place, option in enumerate(options):
        if word == option or word in _YES_NO.get(option, ()):
            return place
    if len(word) == 1 and "a" <= word <= "z":
        place = ord(word) - ord("a")
        return place if place < len(options) else None
    return None
