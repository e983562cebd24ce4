"""Ranges as people write them: "60..1000 rpm", "60 to 1000 rpm", "60 – 1000 rpm"."""

import re

from chartgen.quantities import RPM, Unit
from chartgen.units.reading import UnreadableError, magnitude, shown, with_unit_of

# A hyphen without blanks is no sign of a range: "1-1/2 in" is one length.
_SIGN = r"\s*(?:\.\.\.?|…|–|—)\s*|\s+(?:to|-)\s+"
_HYPHENED = (
    r"\s*(?P<low>[0-9][0-9.]*)\s*(?P<low_unit>[A-Za-z/]*)\s*-"
    r"\s*(?P<high>[0-9][0-9.]*)\s*(?P<high_unit>[A-Za-z][A-Za-z/]*|)\s*"
)


def looks_like_range(text: str) -> bool:
    """Whether a text was meant as a range, rightly written or not."""
    return re.search(_SIGN, text) is not None or _hyphened(text) is not None


def between(text: str, unit: Unit) -> tuple[float, float]:
    """Return the two ends of a range such as "10..60 mm", converted to `unit`.

    Raises
    ------
    UnreadableError
        If `text` is not two quantities above 0 that rise, the unit at least after the second.
    """
    unit_name = unit.example.split(maxsplit=1)[1]
    sign = re.search(_SIGN, text)
    if sign is None and (parts := _hyphened(text)) is not None:
        name = parts["high_unit"] or unit_name
        raise _unclear(text, f"'{parts['low']}..{parts['high']} {name}'")
    if sign is None:
        raise UnreadableError(
            f"{shown(text)} is not a range", f"write it as in '1..10 {unit_name}'"
        )
    low_text, high_text = text[: sign.start()].strip(), text[sign.end() :].strip()
    is_mixed_number = low_text.isdigit() and re.match(r"[0-9]+/", high_text)
    if is_mixed_number and "." not in sign[0] and "to" not in sign[0]:
        # "1 - 1/2 in" may be one and a half.
        raise _unclear(text, f"'1/2..1 {unit_name}'")
    high = magnitude(high_text, unit, above=0.0)
    if low_text and not low_text.strip("0123456789./ -"):
        low_text = with_unit_of(low_text, high_text, unit)
    low = magnitude(low_text, unit, above=0.0)
    if sign[0].strip() == "..." and low < magnitude(f".{high_text}", unit):
        # "0.1...5 in" may end at 5 or at .5.
        raise _unclear(text, f"'{text[: sign.start()].strip()}..{high_text}'")
    if low > high:
        raise UnreadableError(f"{shown(text)} runs backwards", "write the smaller end first")
    if low == high:
        raise UnreadableError(f"{shown(text)} is no range", "write just the one value")
    return low, high


def speed_range(text: str) -> tuple[float, float]:
    """Return both ends of a range of spindle speeds, "60..2500 rpm" [rev/min]; see `between`."""
    return between(text, RPM)


def _hyphened(text: str) -> re.Match[str] | None:
    """Return the parts of "60-1000 rpm"; "1400 min-1" and "1-1/2 in" are single quantities."""
    match = re.fullmatch(_HYPHENED, text)
    is_range = match and (match["high_unit"] or not match["low_unit"])
    return match if is_range else None


def _unclear(text: str, example: str) -> UnreadableError:
    return UnreadableError(
        f"{shown(text)} may be a range or a single number",
        f"write a range with two points, as in {example}",
    )
