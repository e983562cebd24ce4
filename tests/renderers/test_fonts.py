"""The card's font, the fallback behind it, and the refusal behind that."""

import io
from collections.abc import Callable
from itertools import pairwise

import pdfplumber
import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen import pipeline
from chartgen.errors import ChartgenError
from chartgen.layout.placed import Face
from chartgen.model.shop import Shop
from chartgen.renderers.fonts import fallback_name, font_name, measure, runs

FALLBACK = "DejaVuSans"
SIGNS_OF_A_CARD = "ABCXYZabcxyz0123456789.,:;!~*()%–·×±°²³µØ/'\"[]="


@pytest.mark.parametrize("face", Face)
def test_every_sign_a_card_uses_is_in_its_own_font(face: Face) -> None:
    assert list(runs(SIGNS_OF_A_CARD, face)) == [(font_name(face), SIGNS_OF_A_CARD)]


@pytest.mark.parametrize("character", "Ω⌀→≤")
def test_a_character_the_font_lacks_is_taken_from_the_fallback(character: str) -> None:
    main = font_name(Face.REGULAR)
    parts = runs(f"a{character}b", Face.REGULAR)
    assert [name for name, _ in parts] in ([main], [main, fallback_name(), main])
    assert "".join(part for _, part in parts) == f"a{character}b"


def test_the_diameter_sign_comes_from_the_fallback() -> None:
    main = font_name(Face.REGULAR)
    assert list(runs("⌀ 5 mm", Face.REGULAR)) == [(FALLBACK, "⌀"), (main, " 5 mm")]


def test_a_character_no_font_has_is_refused_by_name_and_code_point() -> None:
    with pytest.raises(ChartgenError) as caught:
        runs("Werkstatt 店", Face.BOLD)
    assert str(caught.value) == (
        "no font here has the character '店' (U+5E97) of 'Werkstatt 店'; write it another way"
    )


@given(text=st.text("ab Ωω⌀12.", max_size=30), face=st.sampled_from(Face))
def test_cutting_into_runs_loses_nothing_and_never_doubles_a_font(text: str, face: Face) -> None:
    parts = runs(text, face)
    assert "".join(part for _, part in parts) == text
    names = [name for name, _ in parts]
    assert all(one != other for one, other in pairwise(names))


@given(
    left=st.text(SIGNS_OF_A_CARD + "Ω", max_size=20),
    right=st.text(SIGNS_OF_A_CARD + "Ω", max_size=20),
    size=st.floats(4.0, 40.0),
)
def test_widths_add_up_and_grow_with_the_size(left: str, right: str, size: float) -> None:
    width = measure(left + right, Face.REGULAR, size)
    parts = measure(left, Face.REGULAR, size) + measure(right, Face.REGULAR, size)
    assert width == pytest.approx(parts, abs=1e-9)
    assert measure(left, Face.REGULAR, 2 * size) == pytest.approx(
        2 * measure(left, Face.REGULAR, size), abs=1e-9
    )


@pytest.mark.parametrize("name", ["Εργαστήριο 5", "Werkstatt ⌀ 5"])
def test_a_shop_with_a_greek_name_or_a_diameter_sign_is_printed(
    shop_with: Callable[..., Shop], name: str
) -> None:
    shop = shop_with(('"Invented training shop"', f'"{name}"'))
    card = pipeline.lay_out(pipeline.printed_cards(shop)[:1])[0]
    with pdfplumber.open(io.BytesIO(pipeline.render(card))) as pdf:
        chars = [char for page in pdf.pages for char in page.chars]
        assert name in pdf.pages[0].extract_text()
    foreign = {
        c["fontname"].partition("+")[2] for c in chars if c["text"] in name and c["text"] > "Ͱ"
    }
    assert foreign == {FALLBACK}
    assert all(FALLBACK not in char["fontname"] for char in chars if char["text"] < "Ͱ")


def test_a_shop_name_in_no_font_is_refused_before_a_file_is_made(
    shop_with: Callable[..., Shop],
) -> None:
    shop = shop_with(('"Invented training shop"', '"店 5"'))
    with pytest.raises(ChartgenError) as caught:
        pipeline.lay_out(pipeline.printed_cards(shop))
    assert "the character '店' (U+5E97)" in str(caught.value)
