"""Wrapping: no word lost, none broken, no line too wide, none shorter than need be."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen.errors import DoesNotFitError
from chartgen.layout.placed import Face
from chartgen.layout.typesetting import wrapped
from chartgen.renderers.fonts import measure

WORDS = st.lists(st.text("abcdefghij ,.0123456789Øµ²", min_size=1, max_size=12), max_size=40)


def count(text: str, _face: Face, _size: float) -> float:
    """Measure a text as if every letter were 1 mm wide."""
    return float(len(text))


def lines_of(text: str, width: float) -> list[str]:
    return wrapped(text, width=width, face=Face.REGULAR, size=10.0, measure=count)


@pytest.mark.parametrize(
    ("text", "width", "lines"),
    [
        ("one two three", 13, ["one two three"]),
        ("one two three", 12, ["one two", "three"]),
        ("one two three", 5, ["one", "two", "three"]),
        ("  one \n two\t", 7, ["one two"]),
        ("", 5, []),
        ("   ", 5, []),
    ],
)
def test_lines_break_between_words(text: str, width: float, lines: list[str]) -> None:
    assert lines_of(text, width) == lines


def test_a_word_wider_than_the_line_is_refused_with_both_widths() -> None:
    with pytest.raises(DoesNotFitError) as caught:
        lines_of("a longword", 5)
    assert str(caught.value) == (
        "the word 'longword' is 8 mm wide and its column only 5 mm; "
        "shorten it or use a larger layout"
    )


@given(words=WORDS, width=st.floats(60.0, 200.0), face=st.sampled_from(Face))
def test_wrapping_keeps_every_word_and_no_line_is_too_wide(
    words: list[str], width: float, face: Face
) -> None:
    text = " ".join(words)
    lines = wrapped(text, width=width, face=face, size=9.0, measure=measure)
    assert " ".join(lines).split() == text.split()
    # A thousandth of a millimetre for adding words one by one instead of measuring the line.
    assert all(measure(line, face, 9.0) <= width + 1e-3 for line in lines)
    for line, following in pairwise(lines):
        longer = f"{line} {following.split()[0]}"
        assert measure(longer, face, 9.0) > width - 1e-3, "the word had room on the line before"
