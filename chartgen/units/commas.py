"""How to write a number that came with a comma. Loaded for the first such number."""

import re

_ONES = (
    *("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"),
    *("eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen"),
    *("eighteen", "nineteen"),
)
_TENS = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
_PARTS = ("tenth", "hundredth", "thousandth")
_NUMBER = re.compile(
    r"[+-]?(?P<before>[0-9]*),(?P<after>[0-9]+)(?P<more>(?:,[0-9]+)*(?:\.[0-9]+)?)"
)


def without_comma(text: str) -> tuple[str, str] | None:
    """Return what is wrong with the comma at the head of `text`, and the mend; None if no comma.

    One comma before three digits may part thousands or be the decimal sign. "1.400 with a
    point" would be no way out there: who meant fourteen hundred would get 1.4.
    """
    match = _NUMBER.match(text)
    if match is None:
        return None
    before, after, more = match["before"], match["after"], match["more"]
    if more:
        plain = (before + after + more).replace(",", "")
        return "has a comma in its number", f"write {plain} without a comma"
    if len(after) != len("000") or not before.strip("0") or len(before) > len("000"):
        return "has a comma in its number", f"write {before or '0'}.{after} with a point"
    whole, decimals = int(before), after.rstrip("0")
    thousands = int(before + after)
    fraction = f"{whole}.{decimals}" if decimals else str(whole)
    mend = (
        f"write {thousands} for {_in_words(thousands)}, "
        f"{fraction} for {_in_words(whole)}{_and_parts(decimals)}"
    )
    return "has a comma, which is not understood", mend


def _and_parts(decimals: str) -> str:
    if not decimals:
        return ""
    count = int(decimals)
    return f" and {_in_words(count)} {_PARTS[len(decimals) - 1]}{'s' if count > 1 else ''}"


def _in_words(number: int) -> str:
    """Return a number from 0 to 999 999 as it is said."""
    twenty, hundred, thousand = 20, 100, 1000
    if number < twenty:
        return _ONES[number]
    if number < hundred:
        ten, one = divmod(number, 10)
        return _TENS[ten - 2] + (f"-{_ONES[one]}" if one else "")
    hundreds, below = divmod(number, hundred)
    # 1400 is said "fourteen hundred", but 2050 "two thousand and fifty".
    if hundreds < hundred and hundreds % 10:
        words = f"{_in_words(hundreds)} hundred"
    else:
        thousands, below = divmod(number, thousand)
        words = f"{_in_words(thousands)} thousand"
    if not below:
        return words
    return f"{words} and {_in_words(below)}" if below < hundred else f"{words} {_in_words(below)}"
