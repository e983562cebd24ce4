"""Sizes of ISO 216 and of the US, and the film of a pouch round them."""

import math

import pytest

from chartgen.layout.pages import (
    NO_POUCH,
    PAGES,
    POUCHES,
    SEALED_EDGE,
    fits_pouch,
    page_size,
    pouches_for,
)


@pytest.mark.parametrize(
    ("page", "size"),
    [
        # ISO 216, table 1.
        ("A3", (297, 420)),
        ("A4", (210, 297)),
        ("A5", (148, 210)),
        ("A6", (105, 148)),
        ("A7", (74, 105)),
        # An inch is 25.4 mm.
        ("letter", (8.5 * 25.4, 11 * 25.4)),
        ("half-letter", (5.5 * 25.4, 8.5 * 25.4)),
        ("4x6", (4 * 25.4, 6 * 25.4)),
        ("3x5", (3 * 25.4, 5 * 25.4)),
    ],
)
def test_a_page_has_its_standard_size_either_way_up(page: str, size: tuple[float, float]) -> None:
    assert page_size(page) == pytest.approx(size)
    assert page_size(f"{page} portrait") == pytest.approx(size)
    assert page_size(f"{page} landscape") == pytest.approx(size[::-1])


@pytest.mark.parametrize("series", ["A3", "A4", "A5", "A6"])
def test_half_an_a_size_is_the_next_to_the_millimetre_below(series: str) -> None:
    short, long = page_size(series)
    assert page_size(f"A{int(series[1]) + 1}") == (math.floor(long / 2), short)


@pytest.mark.parametrize("text", ["A5 sideways", "a5", "", "A8", "A5 landscape ", "A5  landscape"])
def test_an_unknown_page_is_answered_with_all_there_are(text: str) -> None:
    with pytest.raises(ValueError, match="no page") as caught:
        page_size(text)
    assert str(caught.value) == (
        f"{text!r} is no page; use one of A3, A4, A5, A6, A7, tabloid, letter, "
        "half-letter, 4x6, 3x5, badge, badge-67x99, "
        "followed by 'portrait' or 'landscape'"
    )


@pytest.mark.parametrize("name", [name for name in POUCHES if name in PAGES])
def test_a_pouch_holds_the_page_it_is_named_for_with_a_sealed_edge(name: str) -> None:
    assert fits_pouch(page_size(name), name)


@pytest.mark.parametrize("name", POUCHES)
@pytest.mark.parametrize("more", [(0.1, 0.0), (0.0, 0.1)])
def test_a_page_a_hair_larger_leaves_no_sealed_edge(name: str, more: tuple[float, float]) -> None:
    width, height = (edge - 2 * SEALED_EDGE for edge in POUCHES[name])
    assert fits_pouch((width, height), name)
    assert not fits_pouch((width + more[0], height + more[1]), name)


@pytest.mark.parametrize("page", PAGES)
def test_every_pouch_offered_for_a_page_fits_it_and_no_pouch_always_does(page: str) -> None:
    offered = pouches_for(page_size(page))
    assert offered == tuple(name for name in offered if fits_pouch(page_size(page), name))
    assert not any(fits_pouch(page_size(page), name) for name in set(POUCHES) - set(offered))
    assert fits_pouch(page_size(page), NO_POUCH)


def test_a_pouch_may_be_turned() -> None:
    assert fits_pouch(page_size("A5 landscape"), "A5")
    assert fits_pouch(page_size("A6 landscape"), "A5")
    assert not fits_pouch(page_size("A5 landscape"), "A6")


def test_a_long_narrow_page_is_not_saved_by_its_area() -> None:
    assert not fits_pouch((50.0, 211.0), "A5")
