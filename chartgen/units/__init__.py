"""Text in, floats out; the only package that imports pint, and only for rare units.

A revolution is a dimension of its own here. Counted as 2π radians, as pint does by
default, a feed of "0.25 mm" with its "/rev" forgotten would pass as 1.57 mm per turn.

The number in front of a unit is read as an exact ratio, so that "1/16 in" and
"1.5875 mm" are the same float; nothing else in the text is ever evaluated.
"""

import re
from functools import cache
from typing import TYPE_CHECKING

from chartgen.quantities import RPM, Unit
from chartgen.units.factors import CASE_MATTERS, FACTORS, Kind, Ratio, exact, product

if TYPE_CHECKING:
    import pint

__all__ = [
    "FACTORS",
    "SHOP_UNITS",
    "Kind",
    "UnreadableError",
    "between",
    "looks_like_range",
    "magnitude",
    "speed_range",
]

SHOP_UNITS = (
    "rev = [turn] = revolution = turn",
    "rpm = rev / minute",
    "ipr = inch / rev",
    "sfm = foot / minute",
    "PS = metric_horsepower",
)
LONGEST_TEXT = 60

# A motor's plate prints its speed as "1400 min-1", and a handle's pace is turns too.
_EITHER_TURNS_OR_TIMES = frozenset(
    spelling
    for spelling, (kind, factor) in FACTORS.items()
    if kind in {Kind.SPINDLE_SPEED, Kind.RATE} and factor == (1, 1)
)

_SIGN_VARIANTS = str.maketrans(
    {"µ": "u", "μ": "u", "²": "2", "³": "3", "·": ".", "⋅": ".", "″": '"'}
)
_NUMBER = re.compile(
    r"(?P<sign>[+-]?)"
    r"(?:(?:(?P<whole>[0-9]+)[ -])?(?P<top>[0-9]+)/(?P<bottom>[0-9]+)"
    r"|(?P<decimal>[0-9]*\.?[0-9]+|[0-9]+\.(?!\.))(?P<exponent>[eE][+-]?[0-9]{1,2})?)"
    r"(?![0-9,/])[ \t]*"
)
# This is compiled when a text first needs it; most never does.
_UNIT_EXPRESSION = r"(?:1?/)?[A-Za-zΩ°]+(?:-?[1-3])?(?:[./][A-Za-zΩ°]+(?:-?[1-3])?)*"
# A hyphen without blanks is no sign of a range: "1-1/2 in" is one length.
_SIGN = r"\s*(?:\.\.\.?|…|–|—)\s*|\s+(?:to|-)\s+"
_APPARENT = frozenset({"va", "kva", "v.a", "v*a", "v·a"})
_HYPHENED = (
    r"\s*(?P<low>[0-9][0-9.]*)\s*(?P<low_unit>[A-Za-z/]*)\s*-"
    r"\s*(?P<high>[0-9][0-9.]*)\s*(?P<high_unit>[A-Za-z][A-Za-z/]*|)\s*"
)


class UnreadableError(ValueError):
    """Text that is not the quantity wanted: what is wrong, and the mend."""

    def __init__(self, problem: str, mend: str) -> None:
        self.problem = problem
        self.mend = mend
        super().__init__(f"{problem}: {mend}")


def magnitude(
    text: str, unit: Unit, *, above: float | None = None, least: float | None = None
) -> float:
    """Return the number in `text` ("3 hp", "1-1/2 in") converted to `unit`.

    A percentage gives a fraction: "90 %" is 0.9.

    Parameters
    ----------
    text, unit
        A number with its unit, and the unit to convert to.
    above, least
        The result must be greater than `above`, and not less than `least`, in `unit`.

    Raises
    ------
    UnreadableError
        If `text` is not a finite number with a unit of that kind, within the bounds.
    """
    number, spelling = _split(text, unit)
    if spelling.lower() in _APPARENT:
        raise UnreadableError(
            f"{_shown(text)} is apparent power, volts times amps, which says little of a motor",
            "write real watts, off a meter that shows W",
        )
    kind, factor = _factor(spelling, text, unit)
    wanted, own_factor = FACTORS[unit.name]
    turns_or_times = {Kind.SPINDLE_SPEED, Kind.RATE}
    alike = wanted in turns_or_times and spelling in _EITHER_TURNS_OR_TIMES
    if kind is not wanted and not alike:
        is_what = f"is not {wanted.words}"
        if kind is not Kind.OTHER:
            is_what = f"is {kind.words}, not {wanted.words}"
        if (kind, wanted) == (Kind.MASS, Kind.FORCE):
            weight = float(product(product(number, factor), FACTORS["kgf"][1]))
            raise UnreadableError(
                f"{_shown(text)} {is_what}",
                f"it weighs {weight:.0f} N, write that",
            )
        raise UnreadableError(
            f"{_shown(text)} {is_what}", f"{wanted.advice} as in '{unit.example}'"
        )
    ratio = product(number, factor)
    if wanted is not Kind.SHARE:
        ratio = product(ratio, Ratio(own_factor.bottom, own_factor.top))
    value = float(ratio)
    if above is not None and value <= above:
        raise _badly_written(text, f"must be more than {above:g}", unit)
    if least is not None and value < least:
        raise _badly_written(text, f"must not be less than {least:g}", unit)
    return value


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
            f"{_shown(text)} is not a range", f"write it as in '1..10 {unit_name}'"
        )
    low_text, high_text = text[: sign.start()].strip(), text[sign.end() :].strip()
    is_mixed_number = low_text.isdigit() and re.match(r"[0-9]+/", high_text)
    if is_mixed_number and "." not in sign[0] and "to" not in sign[0]:
        # "1 - 1/2 in" may be one and a half.
        raise _unclear(text, f"'1/2..1 {unit_name}'")
    high = magnitude(high_text, unit, above=0.0)
    if low_text and not low_text.strip("0123456789./ -"):
        low_text = f"{low_text} {_split(high_text, unit)[1]}"
    low = magnitude(low_text, unit, above=0.0)
    if sign[0].strip() == "..." and low < magnitude(f".{high_text}", unit):
        # "0.1...5 in" may end at 5 or at .5.
        raise _unclear(text, f"'{text[: sign.start()].strip()}..{high_text}'")
    if low > high:
        raise UnreadableError(f"{_shown(text)} runs backwards", "write the smaller end first")
    if low == high:
        raise UnreadableError(f"{_shown(text)} is no range", "write just the one value")
    return low, high


def speed_range(text: str) -> tuple[float, float]:
    """Return both ends of a range of spindle speeds, "60..2500 rpm" [rev/min]; see `between`."""
    return between(text, RPM)


def _split(text: str, unit: Unit) -> tuple[Ratio, str]:
    """Return the exact number in `text` and its unit in the spelling of the table."""
    plain = text.strip().replace("\N{MINUS SIGN}", "-")
    if len(plain) > LONGEST_TEXT:
        raise _badly_written(text, "is too long", unit)
    if "," in plain:
        from chartgen.units.commas import without_comma  # noqa: PLC0415 - words for a fault

        if told := without_comma(plain):
            problem, mend = told
            raise UnreadableError(f"{_shown(text)} {problem}", mend)
    match = _NUMBER.match(plain)
    if match is None:
        raise _badly_written(text, "does not begin with a number", unit)
    rest = plain[match.end() :]
    if not rest:
        raise _badly_written(text, "needs a unit", unit)
    if rest[0] in "0123456789" and re.match(r"[0-9](?!/[A-Za-z])", rest):
        problem = f"{_shown(text)} has a gap in its number"
        raise UnreadableError(problem, "write the number without a space")
    if match["bottom"] and not match["bottom"].strip("0"):
        raise _badly_written(text, "divides by 0", unit)
    if match["decimal"]:
        top, bottom = exact(match["decimal"])
        power = int((match["exponent"] or "e0")[1:])
        top, bottom = top * 10 ** max(0, power), bottom * 10 ** max(0, -power)
    else:
        top, bottom = int(match["top"]), int(match["bottom"])
        top += int(match["whole"] or 0) * bottom
    return Ratio(-top if match["sign"] == "-" else top, bottom), _spelling(rest)


def _spelling(unit_text: str) -> str:
    """Return a unit as the table spells it: "ft lb", "ft·lb" and "ft-lb" are all "ft.lb"."""
    if unit_text in FACTORS:
        return unit_text
    plain = unit_text.strip().translate(_SIGN_VARIANTS).replace("⁻¹", "-1").replace("^", "")
    plain = re.sub(r"\s*([/.*])\s*", r"\1", plain).replace("*", ".")
    plain = re.sub(r"(?<=[A-Za-z])(?:\s+|-)(?=[A-Za-z])", ".", plain)
    plain = plain.rstrip(". ")
    if plain in FACTORS:
        return plain
    all_capitals = len(plain) > 1 and plain.isupper()
    if plain.lower() in CASE_MATTERS and not all_capitals:
        return plain
    return _without_case().get(plain.lower(), plain)


@cache
def _without_case() -> dict[str, str]:
    """Return the table's spelling for each spelling without capitals."""
    return {word.lower(): word for word in FACTORS}


def _factor(spelling: str, text: str, unit: Unit) -> tuple[Kind, Ratio]:
    known = FACTORS.get(spelling)
    if known is None and re.fullmatch(_UNIT_EXPRESSION, spelling):
        known = _factor_by_pint(spelling)
    if known is None:
        raise _badly_written(text, f"has a unit that is not known here, {_shown(spelling)}", unit)
    return known


@cache
def _registry() -> "pint.UnitRegistry[float]":
    import pint  # noqa: PLC0415 - a quarter of a second, for units few shops write

    registry: pint.UnitRegistry[float] = pint.UnitRegistry(on_redefinition="ignore")
    for definition in SHOP_UNITS:
        registry.define(definition)
    return registry


def _factor_by_pint(spelling: str) -> tuple[Kind, Ratio] | None:
    """Return kind and factor of a unit the table lacks, or None if pint does not know it either."""
    expression = re.sub(r"(?<=[A-Za-zΩ°])(-?[1-3])", r"**\1", spelling.replace(".", "*"))
    registry = _registry()
    try:
        given = registry.Quantity(1.0, expression if expression[0] != "/" else f"1{expression}")
        # Pint counts an angle as no dimension; only its root unit tells it from a share.
        is_angle = given.dimensionless and not given.to_root_units().unitless
        for kind in Kind:
            if kind is Kind.OTHER or (kind is Kind.ANGLE) != is_angle:
                continue
            if given.is_compatible_with(kind.held_in):
                return kind, Ratio(*float(given.m_as(kind.held_in)).as_integer_ratio())
    except Exception:  # noqa: BLE001 - its parser fails in many ways, all meaning "not a unit"
        return None
    return Kind.OTHER, Ratio(1, 1)


def _badly_written(text: str, problem: str, unit: Unit) -> UnreadableError:
    return UnreadableError(f"{_shown(text)} {problem}", f"write it as in '{unit.example}'")


def _hyphened(text: str) -> re.Match[str] | None:
    """Return the parts of "60-1000 rpm"; "1400 min-1" and "1-1/2 in" are single quantities."""
    match = re.fullmatch(_HYPHENED, text)
    is_range = match and (match["high_unit"] or not match["low_unit"])
    return match if is_range else None


def _unclear(text: str, example: str) -> UnreadableError:
    return UnreadableError(
        f"{_shown(text)} may be a range or a single number",
        f"write a range with two points, as in {example}",
    )


def _shown(text: str) -> str:
    return repr(text if len(text) <= LONGEST_TEXT else f"{text[: LONGEST_TEXT - 1]}…")
