import pytest

from chartgen import quantities
from chartgen.quantities import FRACTION, MM, MM_REV, N_M, N_MM2, N_PER_MM, RPM, WATT, Unit
from chartgen.units import (
    FACTORS,
    UnreadableError,
    between,
    looks_like_range,
    magnitude,
    speed_range,
)


@pytest.mark.parametrize(
    ("text", "ends"),
    [
        ("60..2500 rpm", (60.0, 2500.0)),
        ("60 rpm .. 2500 rpm", (60.0, 2500.0)),
        ("1 rev/s…2500 rpm", (60.0, 2500.0)),
        ("60 to 1000 rpm", (60.0, 1000.0)),
        ("60 rpm to 1000 rpm", (60.0, 1000.0)),
        ("60 - 1000 rpm", (60.0, 1000.0)),
        ("60...1000 rpm", (60.0, 1000.0)),
        ("60–1000 rpm", (60.0, 1000.0)),
        ("60 – 1000 rpm", (60.0, 1000.0)),
    ],
)
def test_a_speed_range_is_read(text: str, ends: tuple[float, float]) -> None:
    assert speed_range(text) == ends


@pytest.mark.parametrize("text", ["1/4..1-1/2 in", "1/4 to 1 1/2 in", "1/4 - 1-1/2 in"])
def test_a_range_of_inch_fractions_is_read(text: str) -> None:
    assert between(text, MM) == (6.35, 38.1)


@pytest.mark.parametrize(
    ("text", "unit", "message"),
    [
        (
            "60-1000 rpm",
            RPM,
            (
                "'60-1000 rpm' may be a range or a single number: "
                "write a range with two points, as in '60..1000 rpm'"
            ),
        ),
        (
            "60 rpm-1000 rpm",
            RPM,
            (
                "'60 rpm-1000 rpm' may be a range or a single number: "
                "write a range with two points, as in '60..1000 rpm'"
            ),
        ),
        (
            "1 - 1/2 in",
            MM,
            (
                "'1 - 1/2 in' may be a range or a single number: "
                "write a range with two points, as in '1/2..1 mm'"
            ),
        ),
        (
            "0.1...5 in",
            MM,
            (
                "'0.1...5 in' may be a range or a single number: "
                "write a range with two points, as in '0.1..5 in'"
            ),
        ),
    ],
)
def test_a_range_that_can_be_read_in_two_ways_is_refused(
    text: str, unit: Unit, message: str
) -> None:
    with pytest.raises(UnreadableError) as caught:
        between(text, unit)

    assert str(caught.value) == message


@pytest.mark.parametrize("text", ["1400 min-1", "1-1/2 in", "250 rpm", "1/2 in", "1 1/2 in"])
def test_a_single_quantity_does_not_look_like_a_range(text: str) -> None:
    assert not looks_like_range(text)


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("2500..60 rpm", "'2500..60 rpm' runs backwards: write the smaller end first"),
        ("60..60 rpm", "'60..60 rpm' is no range: write just the one value"),
        ("60 rpm", "'60 rpm' is not a range: write it as in '1..10 rpm'"),
        ("0..60 rpm", "'0 rpm' must be more than 0: write it as in '1400 rpm'"),
        ("60..2500", "'2500' needs a unit: write it as in '1400 rpm'"),
        ("..60 rpm", "'' does not begin with a number: write it as in '1400 rpm'"),
    ],
)
def test_a_wrong_range_is_refused_with_its_mend(text: str, message: str) -> None:
    with pytest.raises(UnreadableError) as caught:
        speed_range(text)

    assert str(caught.value) == message


@pytest.mark.parametrize(
    ("text", "unit", "mend"),
    [
        ("1,400 rpm", RPM, "write 1400 for fourteen hundred, 1.4 for one and four tenths"),
        ("1,000 rpm", RPM, "write 1000 for one thousand, 1 for one"),
        (
            "2,050 rpm",
            RPM,
            "write 2050 for two thousand and fifty, 2.05 for two and five hundredths",
        ),
        (
            "2,875 rpm",
            RPM,
            (
                "write 2875 for twenty-eight hundred and seventy-five, "
                "2.875 for two and eight hundred and seventy-five thousandths"
            ),
        ),
        (
            "12,100 N/mm",
            N_PER_MM,
            "write 12100 for twelve thousand one hundred, 12.1 for twelve and one tenth",
        ),
    ],
)
def test_a_comma_that_may_part_thousands_is_told_in_words(text: str, unit: Unit, mend: str) -> None:
    with pytest.raises(UnreadableError) as caught:
        magnitude(text, unit)

    assert str(caught.value) == f"{text!r} has a comma, which is not understood: {mend}"


@pytest.mark.parametrize(
    ("text", "mend"),
    [
        ("1,400,000 W", "write 1400000 without a comma"),
        ("1,400.5 W", "write 1400.5 without a comma"),
        ("1400,125 W", "write 1400.125 with a point"),
        ("0,750 W", "write 0.750 with a point"),
    ],
)
def test_a_comma_of_one_meaning_is_mended_in_one_way(text: str, mend: str) -> None:
    with pytest.raises(UnreadableError) as caught:
        magnitude(text, WATT)

    assert str(caught.value) == f"{text!r} has a comma in its number: {mend}"


@pytest.mark.parametrize(
    ("text", "unit", "as_usual"),
    [
        ("0.75 kw", WATT, "0.75 kW"),
        ("0.75 Kw", WATT, "0.75 kW"),
        ("1 Hp", WATT, "1 hp"),
        ("550 w", WATT, "550 W"),
        ("1400 RPM", RPM, "1400 rpm"),
        ("1400 Rpm", RPM, "1400 rpm"),
        ("1400 Rev/Min", RPM, "1400 rev/min"),
        ("1400 MIN-1", RPM, "1400 min-1"),
        ("2 MM", MM, "2 mm"),
        ("2 Mm", MM, "2 mm"),
        ("1 IN", MM, "1 in"),
        ("1 Inch", MM, "1 inch"),
        ("0.05 MM/REV", MM_REV, "0.05 mm/rev"),
        ("12 NM", N_M, "12 Nm"),
        ("10 Ft-Lb", N_M, "10 ft-lb"),
        ("600 MPA", N_MM2, "600 MPa"),
        ("90 Percent", FRACTION, "90 percent"),
    ],
)
def test_capitals_do_not_matter_where_they_mean_nothing(
    text: str, unit: Unit, as_usual: str
) -> None:
    assert magnitude(text, unit) == magnitude(as_usual, unit)


def test_milliwatt_and_megawatt_are_told_apart() -> None:
    assert magnitude("750 mW", WATT) == pytest.approx(0.75)
    assert magnitude("0.75 MW", WATT) == pytest.approx(750e3)


@pytest.mark.parametrize(
    ("text", "unit", "message"),
    [
        ("1 mw", WATT, "'1 mw' has a unit that is not known here, 'mw': write it as in '550 W'"),
        ("1 Mw", WATT, "'1 Mw' has a unit that is not known here, 'Mw': write it as in '550 W'"),
        (
            "12 nm",
            N_M,
            "'12 nm' is a length, not a torque: write a force times an arm, as in '12 N.m'",
        ),
        (
            "600 mpa",
            N_MM2,
            "'600 mpa' has a unit that is not known here, 'mpa': write it as in '1780 N/mm2'",
        ),
    ],
)
def test_capitals_are_not_guessed_where_they_have_a_meaning(
    text: str, unit: Unit, message: str
) -> None:
    with pytest.raises(UnreadableError) as caught:
        magnitude(text, unit)

    assert str(caught.value) == message


@pytest.mark.parametrize("spelling", [word for word in FACTORS if word.lower() not in FACTORS])
def test_small_letters_mean_the_same_unless_listed(spelling: str) -> None:
    # Milli for mega, the nanometre, the knot, the picosecond; a lone N would be a prefix.
    ambiguous = {"MPa", "Nm", "kN", "PS", "N"}
    unit = next(
        one
        for one in vars(quantities).values()
        if isinstance(one, Unit) and FACTORS[one.name][0] is FACTORS[spelling][0]
    )
    if spelling in ambiguous:
        with pytest.raises(UnreadableError):
            magnitude(f"3 {spelling.lower()}", unit)
    else:
        assert magnitude(f"3 {spelling.lower()}", unit) == magnitude(f"3 {spelling}", unit)
