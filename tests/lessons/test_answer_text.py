"""Answers as students write them: signs of decimals and thousands, units, letters."""

import pytest

from chartgen.lessons.answer_text import numbers_of, option_of
from chartgen.lessons.class_units import COUNT, FEET_MIN
from chartgen.quantities import M_MIN, MIN, N_M, NEWTON, RPM, SECOND, WATT, Unit


@pytest.mark.parametrize(
    ("text", "unit", "number"),
    [
        ("1018", RPM, 1018.0),
        ("1018.6", RPM, 1018.6),
        ("1018,6", RPM, 1018.6),
        (" 1 018,6 ", RPM, 1018.6),
        ("1\u202f018.6", RPM, 1018.6),
        ("1\u2009018", RPM, 1018.0),
        ("1’018", RPM, 1018.0),
        ("1.018,6", RPM, 1018.6),
        ("1,018.6", RPM, 1018.6),
        ("1.234.567", WATT, 1234567.0),
        ("1018 rev/min", RPM, 1018.0),
        ("1018 rpm", RPM, 1018.0),
        ("1018 U/min", RPM, 1018.0),
        ("1018 1/min", RPM, 1018.0),
        ("1018 min⁻¹", RPM, 1018.0),
        ("= 1018 rpm", RPM, 1018.0),
        ("ca. 1018", RPM, 1018.0),
        ("0,0614 min", SECOND, 3.684),
        ("3,7 Sek.", SECOND, 3.7),
        ("3.7s", SECOND, 3.7),
        ("2 min", MIN, 2.0),
        ("0.32 kW", WATT, 320.0),
        ("1,5 m/s", M_MIN, 90.0),
        ("100 ft/min", FEET_MIN, 100.0),
        ("30.48 m/min", FEET_MIN, 100.0),
        ("0,32 kN", NEWTON, 320.0),
        ("7.5 N·m", N_M, 7.5),
        ("7.5 Nm", N_M, 7.5),
        ("16 Stück", COUNT, 16.0),
        ("16 pcs", COUNT, 16.0),
        (".5", SECOND, 0.5),
        ("\N{MINUS SIGN}3", SECOND, -3.0),
        ("1e3", RPM, 1000.0),
    ],
)
def test_a_number_is_read_as_it_was_meant(text: str, unit: Unit, number: float) -> None:
    assert numbers_of(text, unit)[0] == pytest.approx(number, rel=1e-9)


@pytest.mark.parametrize("text", ["1.018", "1,018", "0,500"])
def test_three_figures_behind_a_sign_may_be_thousands(text: str) -> None:
    numbers = numbers_of(text, RPM)
    assert numbers[0] == pytest.approx(float(text.replace(",", ".")))
    assert len(numbers) == (1 if text.startswith("0") else 2)


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        ("", RPM),
        ("fast", RPM),
        ("12 mm", RPM),
        ("12 apples", COUNT),
        ("5 W", NEWTON),
        ("1,2,3", RPM),
        ("1.2,3.4", RPM),
        ("12 34", RPM),
        ("=2+2", COUNT),
        ("=HYPERLINK(1)", RPM),
        ("__import__('os')", RPM),
        ("nan", RPM),
        ("inf", RPM),
        ("9" * 61, RPM),
    ],
)
def test_what_is_no_such_number_is_unreadable(text: str, unit: Unit) -> None:
    assert numbers_of(text, unit) == ()


@pytest.mark.parametrize(
    ("text", "place"),
    [
        *(("a", 0), ("A", 0), ("b)", 1), ("(C)", 2), (" d. ", 3), ("grip", 1), ("e", None)),
        *(("", None), ("?", None), ("ab", None), ("1", None)),
    ],
)
def test_an_option_is_ticked_by_letter_or_key(text: str, place: int | None) -> None:
    assert option_of(text, ("stall", "grip", "reach", "hand-pace")) == place


@pytest.mark.parametrize("text", ["yes", "Yes", "ja", "JA", "y", "a"])
def test_yes_is_understood_in_both_languages(text: str) -> None:
    assert option_of(text, ("yes", "no")) == 0


@pytest.mark.parametrize("text", ["no", "Nein", "n", "b)"])
def test_no_is_understood_in_both_languages(text: str) -> None:
    assert option_of(text, ("yes", "no")) == 1
