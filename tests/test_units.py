import contextlib
import math
import re
import subprocess
import sys

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen import quantities
from chartgen.quantities import (
    DEGREE,
    FRACTION,
    M_MIN,
    M_S,
    MM,
    MM_REV,
    N_M,
    NEWTON,
    RPM,
    TURNS_MIN,
    UM,
    WATT,
    Unit,
)
from chartgen.units import (
    FACTORS,
    SHOP_UNITS,
    Kind,
    UnreadableError,
    magnitude,
)

EVERY_UNIT = [value for value in vars(quantities).values() if isinstance(value, Unit)]


@pytest.mark.parametrize(
    ("text", "unit", "value"),
    [
        ("550 W", WATT, 550.0),
        ("1/16 in", MM, 1.5875),
        ("1-1/2 in", MM, 38.1),
        ("1 1/2 in", MM, 38.1),
        ("13in", MM, 330.2),
        ('2"', MM, 50.8),
        ("2 in.", MM, 50.8),
        ("18 m/s", M_S, 18.0),
        ("90 %", FRACTION, 0.9),
        ("150 percent", FRACTION, 1.5),
        ("60 1/min", TURNS_MIN, 60.0),
        ("60 turns/min", TURNS_MIN, 60.0),
        ("4 PS", WATT, 4 * 75 * 9.80665),
        ("0.75 hp", WATT, 0.75 * 550 * 0.3048 * 4.4482216152605),
        ("300 sfm", M_MIN, 91.44),
        ("0.002 ipr", MM_REV, 0.0508),
        ("0.002 in/rev", MM_REV, 0.0508),
        ("1400 rpm", RPM, 1400.0),
        ("1400 rev/min", RPM, 1400.0),
        ("1400 min-1", RPM, 1400.0),
        ("1400 min⁻¹", RPM, 1400.0),
        ("12 N.m", N_M, 12.0),
        ("12 N m", N_M, 12.0),
        ("12 N·m", N_M, 12.0),
        ("12 Nm", N_M, 12.0),
        ("10 ft-lb", N_M, 10 * 0.3048 * 4.4482216152605),
        ("25 \N{MICRO SIGN}m", UM, 25.0),
        ("25 \N{GREEK SMALL LETTER MU}m", UM, 25.0),
        ("1.5e3 W", WATT, 1500.0),
        ("5 deg", DEGREE, 5.0),
    ],
)
def test_usual_spellings_are_read(text: str, unit: Unit, value: float) -> None:
    assert magnitude(text, unit) == pytest.approx(value, rel=1e-15)


@pytest.mark.parametrize(
    ("text", "unit", "value"),
    [
        ("2 furlongs", MM, 402336.0),
        ("30 arcmin", DEGREE, 0.5),
        ("1 dam", MM, 10000.0),
        ("0.5 MW", WATT, 5e5),
    ],
)
def test_rare_units_are_left_to_pint(text: str, unit: Unit, value: float) -> None:
    assert magnitude(text, unit) == pytest.approx(value, rel=1e-5)


@pytest.mark.parametrize("unit", EVERY_UNIT, ids=lambda unit: unit.name)
def test_every_unit_reads_its_own_name_and_example(unit: Unit) -> None:
    assert magnitude(unit.example, unit, above=0.0) > 0.0
    assert magnitude(f"50 {unit.name}", unit) == (0.5 if unit is FRACTION else 50.0)


def _as_pint_spells_it(spelling: str) -> str:
    spelling = {'"': "inch", "mm/U": "mm/rev", "U/min": "rev/min"}.get(spelling, spelling)
    words = {"revs": "rev", "turns": "turn", "r": "rev", "lbs": "lb", "IPR": "ipr", "SFM": "sfm"}
    words |= {"sfpm": "sfm", "fpm": "sfm", "ipm": "inch/min", "MM": "mm", "IN": "inch"}
    words |= {"RPM": "rpm", "rps": "rev/s", "HP": "hp", "KW": "kW", "Nm": "N*m", "Nmm": "N*mm"}
    words |= {"Ncm": "N*cm", "thou": "thou", "kp": "kgf", "%": "percent", "sec": "s"}
    if re.search(r"(ft|in)\.lb|lb\.(ft|in)", spelling):
        words |= {"lb": "lbf"}
    spelling = spelling if spelling[0] != "/" else f"1{spelling}"
    parts = re.split(r"([./])", spelling)
    spelled = "".join(words.get(part, part).replace(".", "*") for part in parts)
    return re.sub(r"([a-z])(-?[1-3])", r"\1**\2", spelled)


@pytest.fixture(scope="module")
def registry() -> "pint.UnitRegistry[float]":
    made: pint.UnitRegistry[float] = pint.UnitRegistry(on_redefinition="ignore")
    for definition in SHOP_UNITS:
        made.define(definition)
    return made


@pytest.mark.parametrize("spelling", FACTORS)
def test_pint_gives_every_factor_of_the_table(
    spelling: str, registry: "pint.UnitRegistry[float]"
) -> None:
    kind, factor = FACTORS[spelling]
    given_unit = registry.Quantity(1.0, _as_pint_spells_it(spelling))

    assert float(factor) == pytest.approx(given_unit.m_as(kind.held_in), rel=1e-14)


@pytest.mark.parametrize(
    ("text", "unit", "message"),
    [
        (
            "0.05 mm",
            MM_REV,
            "'0.05 mm' is a length, not a feed: write it per turn, as in '0.05 mm/rev'",
        ),
        ("0.05 mm/rev", MM, "'0.05 mm/rev' is a feed, not a length: write it as in '2 mm'"),
        (
            "100 m/min",
            RPM,
            (
                "'100 m/min' is a speed along the surface, not a spindle speed: "
                "write turns per minute, as in '1400 rpm'"
            ),
        ),
        (
            "1400 rpm",
            M_MIN,
            (
                "'1400 rpm' is a spindle speed, not a speed along the surface: "
                "write a length per minute, as in '100 m/min'"
            ),
        ),
        (
            "30 Hz",
            RPM,
            (
                "'30 Hz' is a number of times per minute, not a spindle speed: "
                "write turns per minute, as in '1400 rpm'"
            ),
        ),
        ("12 N.m", WATT, "'12 N.m' is a torque, not a power: write it as in '550 W'"),
        (
            "550 W",
            N_M,
            "'550 W' is a power, not a torque: write a force times an arm, as in '12 N.m'",
        ),
        ("3 kg", MM, "'3 kg' is a mass, not a length: write it as in '2 mm'"),
        ("10 kg", NEWTON, "'10 kg' is a mass, not a force: it weighs 98 N, write that"),
        (
            "120 VA",
            WATT,
            (
                "'120 VA' is apparent power, volts times amps, which says little of a motor: write "
                "real watts, off a meter that shows W"
            ),
        ),
        ("3 kN", MM, "'3 kN' is a force, not a length: write it as in '2 mm'"),
        ("3 s", MM, "'3 s' is a time, not a length: write it as in '2 mm'"),
        ("20 degC", MM, "'20 degC' is not a length: write it as in '2 mm'"),
        ("5 %", DEGREE, "'5 %' is a share, not an angle: write it in degrees, as in '5 deg'"),
        ("5 ppm", DEGREE, "'5 ppm' is a share, not an angle: write it in degrees, as in '5 deg'"),
        (
            "1 arcmin",
            FRACTION,
            "'1 arcmin' is an angle, not a share: write it in percent, as in '90 %'",
        ),
        ("2", MM, "'2' needs a unit: write it as in '2 mm'"),
        ("1/2", MM, "'1/2' needs a unit: write it as in '2 mm'"),
        ("0,05 mm", MM, "'0,05 mm' has a comma in its number: write 0.05 with a point"),
        (",05 mm", MM, "',05 mm' has a comma in its number: write 0.05 with a point"),
        (
            "1 400 rpm",
            RPM,
            "'1 400 rpm' has a gap in its number: write the number without a space",
        ),
        ("", MM, "'' does not begin with a number: write it as in '2 mm'"),
        ("nan mm", MM, "'nan mm' does not begin with a number: write it as in '2 mm'"),
        ("inf mm", MM, "'inf mm' does not begin with a number: write it as in '2 mm'"),
        ("1/0 in", MM, "'1/0 in' divides by 0: write it as in '2 mm'"),
        (
            "4 wobble",
            MM,
            "'4 wobble' has a unit that is not known here, 'wobble': write it as in '2 mm'",
        ),
        (
            "2 mm**9**9**9",
            MM,
            (
                "'2 mm**9**9**9' has a unit that is not known here, 'mm..9..9..9': "
                "write it as in '2 mm'"
            ),
        ),
        (
            "2*3 mm",
            MM,
            "'2*3 mm' has a unit that is not known here, '.3 mm': write it as in '2 mm'",
        ),
        ("9" * 70, MM, f"'{'9' * 59}…' is too long: write it as in '2 mm'"),
    ],
)
def test_a_wrong_text_is_refused_with_its_mend(text: str, unit: Unit, message: str) -> None:
    with pytest.raises(UnreadableError) as caught:
        magnitude(text, unit)

    assert str(caught.value) == message


def test_bounds_are_refused_in_words() -> None:
    with pytest.raises(UnreadableError, match=r"^'0 mm' must be more than 0: write it as in"):
        magnitude("0 mm", MM, above=0.0)
    with pytest.raises(UnreadableError, match=r"^'−1 mm' must not be less than 0: write it as"):
        magnitude("\N{MINUS SIGN}1 mm", MM, least=0.0)
    assert magnitude("0 mm", MM, least=0.0) == 0.0
    assert magnitude("-1 mm", MM) == -1.0


def test_usual_spellings_do_not_import_pint() -> None:
    script = (
        "import sys; from chartgen.units import magnitude; from chartgen.quantities import MM;"
        "magnitude('1/16 in', MM); sys.exit('pint' in sys.modules)"
    )
    assert subprocess.run([sys.executable, "-c", script], check=False).returncode == 0


@given(st.text(max_size=70), st.sampled_from(EVERY_UNIT))
def test_any_text_gives_a_finite_number_or_is_refused(text: str, unit: Unit) -> None:
    value = 0.0
    with contextlib.suppress(UnreadableError):
        value = magnitude(text, unit)

    assert math.isfinite(value)


@given(st.integers(1, 4096))
def test_an_inch_fraction_and_its_millimetres_are_the_same_float(count: int) -> None:
    millimetres = f"{396875 * count}e-6"  # 25.4 / 64 = 0.396875, exact in decimals

    assert magnitude(f"{count}/64 in", MM) == magnitude(f"{millimetres} mm", MM)


def test_a_mil_is_refused_because_shops_differ_on_its_size() -> None:
    with pytest.raises(UnreadableError):
        magnitude("2 mil", MM)


def test_kinds_that_can_be_confused_are_told_apart() -> None:
    assert FACTORS["lb"][0] is Kind.MASS
    assert FACTORS["lbf"][0] is Kind.FORCE
