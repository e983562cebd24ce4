"""The drawn signs: shapes and proportions of ISO 3864, legible 10 mm high in mono."""

import math
from collections.abc import Iterator

import pytest

from chartgen.layout.pictograms import (
    PICTOGRAMS,
    Disc,
    Pictogram,
    Primitive,
    Ring,
    Shape,
    Stroke,
)
from chartgen.layout.primitives import arc, placed, rounded

MANDATORY = ("eyes", "manual", "guard")
PROHIBITION = ("no-gloves", "no-reaching")
EVERY = pytest.mark.parametrize("pictogram", PICTOGRAMS.values(), ids=lambda p: p.key)
ROUNDING = 0.0001


def ink_of(primitive: Primitive) -> str:
    match primitive:
        case Disc(fill=ink) | Shape(fill=ink) | Ring(ink=ink) | Stroke(ink=ink):
            return ink


def outline(primitive: Primitive) -> Iterator[tuple[float, float, float]]:
    """Points that bound a primitive, each with the radius of ink round it."""
    match primitive:
        case Disc(x, y, r, _) | Ring(x, y, r, _, _):
            yield x, y, r
        case Stroke(points, width, _):
            yield from ((x, y, width / 2) for x, y in points)
        case Shape(points, _):
            yield from ((x, y, 0.0) for x, y in points)


def reach(primitive: Primitive) -> float:
    """Greatest distance of a primitive from the middle of the sign."""
    return max(math.hypot(x - 0.5, y - 0.5) + r for x, y, r in outline(primitive))


def symbol_of(pictogram: Pictogram) -> list[Primitive]:
    """Return what stands on the disc or behind the bar."""
    ink = "paper" if pictogram.key in MANDATORY else "ink"
    return [p for p in pictogram.primitives if ink_of(p) == ink and p.__class__ is not Ring]


def test_the_signs_of_a_lathe_card_are_drawn() -> None:
    assert list(PICTOGRAMS) == ["eyes", "manual", "guard", "no-gloves", "no-reaching", "general"]
    assert all(key == pictogram.key for key, pictogram in PICTOGRAMS.items())


@EVERY
def test_everything_lies_inside_the_unit_square(pictogram: Pictogram) -> None:
    for primitive in pictogram.primitives:
        for x, y, r in outline(primitive):
            assert r <= x <= 1 - r, primitive
            assert r <= y <= 1 - r, primitive


@EVERY
def test_the_sign_fills_the_square_from_side_to_side(pictogram: Pictogram) -> None:
    bounds = [(x - r, x + r) for p in pictogram.primitives for x, y, r in outline(p)]
    # The triangle loses its tips to corners of radius 0.05: 0.05 (cos 30 / sin 30 - 1) a side.
    short = 0.05 * (math.sqrt(3) - 1) if pictogram.key == "general" else 0.0
    assert min(low for low, _ in bounds) == pytest.approx(short, abs=ROUNDING)
    assert max(high for _, high in bounds) == pytest.approx(1 - short, abs=ROUNDING)


@EVERY
def test_no_stroke_is_thinner_than_a_mono_printer_shows_at_10_mm(pictogram: Pictogram) -> None:
    widths = [p.width for p in pictogram.primitives if isinstance(p, Stroke | Ring)]
    assert all(width >= 0.02 for width in widths)


@pytest.mark.parametrize("key", MANDATORY)
def test_a_mandatory_symbol_keeps_clear_of_the_rim(key: str) -> None:
    # Template of ISO 3864 proportions: the symbol keeps 0.077 d from the rim.
    disc, *_ = PICTOGRAMS[key].primitives
    assert disc == Disc(0.5, 0.5, 0.5, "mandatory")
    assert max(map(reach, symbol_of(PICTOGRAMS[key]))) <= 0.5 - 0.077 + ROUNDING


@pytest.mark.parametrize("key", PROHIBITION)
def test_a_prohibited_thing_keeps_clear_of_the_ring(key: str) -> None:
    # Template of ISO 3864 proportions: ring 0.10 d, clear band inside it 0.033 d.
    assert max(map(reach, symbol_of(PICTOGRAMS[key]))) <= 0.5 - 0.10 - 0.033 + ROUNDING


@pytest.mark.parametrize("key", PROHIBITION)
def test_the_bar_runs_from_upper_left_to_lower_right_over_the_symbol(key: str) -> None:
    *under, halo, bar, ring = PICTOGRAMS[key].primitives
    assert ring == Ring(0.5, 0.5, 0.5, 0.10, "prohibition")
    assert isinstance(bar, Stroke)
    (left, top), (right, bottom) = bar.points
    assert bar.width == 0.08
    assert left < 0.5 < top
    assert (right, bottom) == pytest.approx((top, left), abs=ROUNDING)
    assert isinstance(halo, Stroke)
    assert halo.ink == "paper"
    assert halo.width > bar.width
    assert {ink_of(p) for p in under} == {"paper", "ink"}


@pytest.mark.parametrize("key", PROHIBITION)
def test_nothing_of_a_prohibition_shows_outside_its_ring(key: str) -> None:
    assert all(reach(p) <= 0.5 + ROUNDING for p in PICTOGRAMS[key].primitives)


def test_the_warning_triangle_is_yellow_within_a_black_band() -> None:
    border, ground, *mark = PICTOGRAMS["general"].primitives
    assert (ink_of(border), ink_of(ground)) == ("ink", "warning")
    bases = [min(y for _, y, _ in outline(p)) for p in (border, ground)]
    # Template of ISO 3864 proportions: the black band is 0.07 of the height.
    assert bases[1] - bases[0] == pytest.approx(0.07 * math.sqrt(3) / 2, abs=ROUNDING)
    assert {ink_of(p) for p in mark} == {"ink"}


@pytest.mark.parametrize("key", MANDATORY)
def test_a_mandatory_sign_needs_no_second_colour(key: str) -> None:
    assert {ink_of(p) for p in PICTOGRAMS[key].primitives} == {"mandatory", "paper"}


@EVERY
def test_coordinates_are_cut_so_that_every_machine_writes_the_same_bytes(
    pictogram: Pictogram,
) -> None:
    assert tuple(map(rounded, pictogram.primitives)) == pictogram.primitives


def test_an_arc_starts_and_ends_where_it_is_told_in_chords_of_six_degrees() -> None:
    points = arc(1.0, 2.0, 0.5, 0, 90)
    assert len(points) == 16
    assert points[0] == pytest.approx((1.5, 2.0))
    assert points[-1] == pytest.approx((1.0, 2.5))


@pytest.mark.parametrize(("flip", "tip"), [(False, (0.5, 0.7)), (True, (0.5, 0.3))])
def test_a_part_is_flipped_scaled_turned_and_then_moved(
    flip: bool,  # noqa: FBT001
    tip: tuple[float, float],
) -> None:
    disc, ring, stroke, shape = placed(
        (
            Disc(1, 0, 0.5, "ink"),
            Ring(1, 0, 0.5, 0.1, "ink"),
            Stroke(((0, 0), (1, 0)), 0.1, "ink"),
            Shape(((0, 0), (1, 0), (0, 1)), "ink"),
        ),
        x=0.5,
        y=0.5,
        scale=0.2,
        turn=90,
        flip=flip,
    )
    assert isinstance(disc, Disc)
    assert isinstance(ring, Ring)
    assert isinstance(stroke, Stroke)
    assert isinstance(shape, Shape)
    assert (disc.x, disc.y, disc.r) == pytest.approx((*tip, 0.1))
    assert (ring.x, ring.y, ring.r, ring.width) == pytest.approx((*tip, 0.1, 0.02))
    assert stroke.points[1] == pytest.approx(tip)
    assert stroke.width == pytest.approx(0.02)
    assert shape.points[2] == pytest.approx((0.3, 0.5))
