"""How high capitals must be: an angle seen from a distance."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen.layout.layout_file import every_layout_name, load_layout
from chartgen.layout.legibility import CAP_HEIGHT, POINT, cap_height, size_for_cap
from chartgen.layout.piece import setting_for
from chartgen.layout.placed import Face
from chartgen.renderers.fonts import font_name, measure

DISTANCES = st.floats(100.0, 3000.0)


@pytest.mark.parametrize(
    ("distance", "arc_minutes", "height"),
    [
        # h = 2 D tan(a / 2): 4.07, 3.26, 2.62, 2.33 and 1.86 mm, rounded up to 0.1 mm.
        (700.0, 20.0, 4.1),
        (700.0, 16.0, 3.3),
        (450.0, 20.0, 2.7),
        (400.0, 20.0, 2.4),
        (400.0, 16.0, 1.9),
    ],
)
def test_capitals_are_as_high_as_their_distance_asks(
    distance: float, arc_minutes: float, height: float
) -> None:
    assert cap_height(distance=distance, arc_minutes=arc_minutes) == pytest.approx(height)


@given(distance=DISTANCES, arc_minutes=st.floats(5.0, 60.0))
def test_rounding_never_makes_text_smaller_and_never_by_a_tenth_larger(
    distance: float, arc_minutes: float
) -> None:
    exact = 2 * distance * math.tan(math.radians(arc_minutes / 60) / 2)
    height = cap_height(distance=distance, arc_minutes=arc_minutes)
    assert exact - 1e-6 <= height < exact + 0.1 + 1e-6
    assert height == pytest.approx(round(height, 1))


@given(distance=DISTANCES)
def test_a_setting_keeps_numbers_larger_than_words_larger_than_the_foot(distance: float) -> None:
    setting = setting_for(distance=distance, width=100.0, measure=measure)
    assert setting.numbers >= setting.words
    assert setting.numbers * CAP_HEIGHT * POINT == pytest.approx(
        cap_height(distance=distance, arc_minutes=20.0)
    )
    assert setting.words * CAP_HEIGHT * POINT == pytest.approx(
        cap_height(distance=distance, arc_minutes=16.0)
    )
    assert setting.foot * CAP_HEIGHT * POINT == pytest.approx(1.7)


def test_a_size_in_points_has_the_capitals_it_was_asked_for() -> None:
    # A capital 0.698 of the size, 72 points to 25.4 mm.
    assert size_for_cap(4.1) == pytest.approx(4.1 / 0.698 * 72 / 25.4)


@pytest.mark.parametrize("face", Face)
def test_the_font_has_the_capitals_that_legibility_reckons_with(face: Face) -> None:
    from reportlab.pdfbase import pdfmetrics  # noqa: PLC0415 - only this test asks the font

    drawn = pdfmetrics.getFont(font_name(face)).face
    assert drawn.capHeight / drawn.unitsPerEm == pytest.approx(CAP_HEIGHT, abs=0.0005)


@pytest.mark.parametrize("face", Face)
def test_every_digit_is_as_wide_as_the_other_so_that_columns_stand(face: Face) -> None:
    assert len({measure(digit, face, 10.0) for digit in "0123456789"}) == 1


@pytest.mark.parametrize("name", every_layout_name())
def test_a_layout_is_read_from_no_nearer_than_a_hand_holds_it(name: str) -> None:
    # Common practice, no source: 0.4 m in the hand; a card from a pocket is lifted nearer.
    nearest = 350.0 if name == "pocket-card" else 400.0
    assert all(side.reading_distance >= nearest for side in load_layout(name).sides)
