"""The set-up drawn: to its scale, inside its room, no text on another; whatever the set-up."""

import itertools
from collections.abc import Callable
from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from chartgen.errors import TooSmallError
from chartgen.layout.blocks.sketch import sketch
from chartgen.layout.drawn_to_scale import SCALES
from chartgen.layout.layout_file import load_layout
from chartgen.layout.piece import setting_for
from chartgen.layout.placed import Drawing, Item, Rule, Text
from chartgen.renderers.fonts import measure
from chartgen.wording.card import AnyCard
from chartgen.wording.printed_job import PrintedJob, PrintedSketch, SketchBox, SketchDimension

JobCard = Callable[..., AnyCard]
Bounds = Callable[[Item], tuple[float, float, float, float]]
LAYOUT = load_layout("batch-card-a5")
SETTING = setting_for(distance=400.0, width=197.0, measure=measure, height=66.0)
patient = settings(
    max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)


def placed(card: AnyCard, height: float = 66.0) -> tuple[list[Item], float]:
    (piece,) = sketch(card, LAYOUT, replace(SETTING, height=height))
    return list(piece.items), piece.height


def scale_of(items: list[Item]) -> float:
    (text,) = (i.text for i in items if isinstance(i, Text) and i.text.startswith("Scale "))
    paper, _, real = text.removeprefix("Scale ").partition(":")
    return float(paper) / float(real)


def lines(items: list[Item], *, upright: bool, dashed: bool = False) -> list[Rule]:
    return [
        i
        for i in items
        if isinstance(i, Rule)
        and bool(i.dash) is dashed
        and (abs(i.x1 - i.x2) < 1e-9 if upright else abs(i.y1 - i.y2) < 1e-9)
    ]


def set_up(
    *,
    bar: float,
    turned: float,
    length: float,
    jaw_distance: float,
    kerf: float,
    facing: float,
    names: tuple[str, ...] = ("bar", "slot", "piece"),
) -> PrintedSketch:
    """Return an invented set-up as boxes, each with its dimension."""
    radius, piece = bar / 2.0, turned / 2.0
    cut = jaw_distance + kerf
    end = cut + length + facing
    across = {f"Ø {turned:g}": piece, f"Ø {bar:g} bar": radius}
    return PrintedSketch(
        boxes=(
            SketchBox(part="chuck", x1=-70.0, x2=-30.0, low=-62.0, high=62.0),
            SketchBox(part="jaws", x1=-30.0, x2=0.0, low=radius, high=radius + 30.0),
            SketchBox(part="jaws", x1=-30.0, x2=0.0, low=-radius - 30.0, high=-radius),
            SketchBox(part="bar", x1=-40.0, x2=end, low=-radius, high=radius),
            SketchBox(part="piece", x1=cut, x2=cut + length, low=-piece, high=piece),
            SketchBox(part="cut", x1=jaw_distance, x2=cut, low=-radius, high=radius),
            SketchBox(part="blade", x1=jaw_distance, x2=cut, low=-radius - 30.0, high=-radius),
        ),
        dimensions=(
            SketchDimension(axis="along", start=0.0, end=jaw_distance, text=f"{jaw_distance:g}"),
            SketchDimension(axis="along", start=jaw_distance, end=cut, text=f"{kerf:g}"),
            SketchDimension(axis="along", start=cut, end=cut + length, text=f"{length:g}"),
            SketchDimension(axis="along", start=0.0, end=end, text=f"{end:g} overhang"),
            *(
                SketchDimension(axis="across", start=-r, end=r, text=text)
                for text, r in across.items()
            ),
        ),
        labels=tuple(
            (place, radius * share, name)
            for name, (place, share) in zip(
                names,
                itertools.cycle(((jaw_distance / 2, 0.6), (cut - kerf / 2, 0.4), (cut + 1, 0.5))),
                strict=False,
            )
        ),
        description="An invented set-up.",
    )


sizes = st.fixed_dictionaries(
    {
        "bar": st.floats(5.0, 80.0),
        "share": st.floats(0.5, 1.0),
        "length": st.floats(1.0, 150.0),
        "jaw_distance": st.floats(2.0, 20.0),
        "kerf": st.floats(1.0, 4.0),
        "facing": st.floats(0.2, 2.0),
        "names": st.lists(
            st.text("abcdefgh ", min_size=1, max_size=22).map(str.strip).filter(bool),
            max_size=8,
            unique=True,
        ).map(tuple),
    }
)


def drawn_by(found: dict[str, float], **more: object) -> PrintedSketch:
    rounded = {key: round(v, 1) for key, v in found.items() if key not in {"share", "names"}}
    turned = round(rounded["bar"] * found["share"], 1)
    return set_up(turned=turned, **rounded, **more)  # type: ignore[arg-type]


class TestScale:
    def test_the_scales_are_one_two_and_five_by_tens_the_largest_first(self) -> None:
        assert all(
            1 in scale and str(max(scale)).rstrip("0") in {"1", "2", "5"} for scale in SCALES
        )
        ratios = [paper / real for paper, real in SCALES]
        assert ratios == sorted(ratios, reverse=True)

    @patient
    @given(found=sizes)
    def test_every_length_on_paper_is_its_own_length_at_the_printed_scale(
        self, job_card: JobCard, found: dict[str, float]
    ) -> None:
        body = drawn_by(found)
        card = job_card("set-up-card-a5", sketch=body)
        try:
            items, _ = placed(card)
        except TooSmallError:
            return
        scale = scale_of(items)
        for one in body.dimensions:
            span = (one.end - one.start) * scale
            is_along = one.axis == "along"
            ends = [
                (rule.x1 if is_along else rule.y1)
                for rule in lines(items, upright=is_along)
                if rule.weight == pytest.approx(0.7)
            ]
            pairs = [abs(a - b) for a, b in itertools.combinations(ends, 2)]
            assert any(pair == pytest.approx(span, abs=1e-6) for pair in pairs), one
        # The finished piece: two wide edges as far apart as it is long, as high as it is thick.
        (piece,) = (box for box in body.boxes if box.part == "piece")
        wide = [rule for rule in lines(items, upright=True) if rule.weight == pytest.approx(1.4)]
        high = (piece.high - piece.low) * scale
        sides = [r.x1 for r in wide if abs(r.y2 - r.y1) == pytest.approx(high, abs=1e-6)]
        apart = [abs(a - b) for a, b in itertools.combinations(sides, 2)]
        assert any(a == pytest.approx((piece.x2 - piece.x1) * scale, abs=1e-6) for a in apart)

    def test_the_largest_scale_that_fits_is_taken(self, job_card: JobCard) -> None:
        card = job_card("set-up-card-a5")
        height, seen = 125.0, []
        while True:
            try:
                items, needed = placed(card, height)
            except TooSmallError:
                break
            assert needed <= height
            seen.append(scale_of(items))
            # With just the room it takes it is drawn alike, with a hair less it is smaller.
            again, _ = placed(card, needed)
            assert scale_of(again) == seen[-1]
            height = needed - 0.01
        assert seen[0] == 2.0
        assert seen == sorted(set(seen), reverse=True)
        assert 0.5 in seen

    def test_a_sketch_without_room_is_refused_with_what_it_takes(self, job_card: JobCard) -> None:
        with pytest.raises(
            TooSmallError,
            match=r"^layout batch-card-a5: 197 x 20 mm are left for the sketch of 'Bored ring' "
            r"and at 1:50 it takes \d+ x \d+; use a larger layout$",
        ):
            placed(job_card("set-up-card-a5"), 20.0)


def boxes_of_text(items: list[Item], bounds: Bounds) -> list[tuple[str, tuple[float, ...]]]:
    return [(i.text, bounds(i)) for i in items if isinstance(i, Text)]


def overlap(one: tuple[float, ...], other: tuple[float, ...]) -> bool:
    return (
        one[0] < other[2] - 1e-6
        and other[0] < one[2] - 1e-6
        and one[1] < other[3] - 1e-6
        and other[1] < one[3] - 1e-6
    )


class TestTexts:
    @patient
    @given(found=sizes, height=st.floats(55.0, 120.0))
    def test_no_text_lies_on_another_and_all_stands_inside_its_room(
        self, job_card: JobCard, bounds: Bounds, found: dict[str, float], height: float
    ) -> None:
        names = found["names"]
        card = job_card("set-up-card-a5", sketch=drawn_by(found, names=names))
        try:
            items, needed = placed(card, height)
        except TooSmallError:
            return
        texts = boxes_of_text(items, bounds)
        for (one, box), (other, another) in itertools.combinations(texts, 2):
            assert not overlap(box, another), (one, other)
        for item in items:
            left, top, right, bottom = bounds(item)
            assert left >= -1e-6, item
            assert top >= -1e-6, item
            assert right <= SETTING.width + 1e-6, item
            assert bottom <= needed + 1e-6, item

    def test_every_name_and_dimension_is_there_once(self, job_card: JobCard) -> None:
        card = job_card("set-up-card-a5")
        items, _ = placed(card)
        body = card.chart
        assert isinstance(body, PrintedJob)
        said = sorted(i.text for i in items if isinstance(i, Text))
        wanted = [d.text for d in body.sketch.dimensions]
        wanted += [text for _, _, text in body.sketch.labels]
        assert said == sorted([*wanted, "Scale 1:1"])

    def test_numbers_and_names_have_the_size_their_distance_asks(self, job_card: JobCard) -> None:
        card = job_card("set-up-card-a5")
        items, _ = placed(card)
        assert isinstance(card.chart, PrintedJob)
        numbers = {d.text for d in card.chart.sketch.dimensions}
        for item in items:
            if isinstance(item, Text):
                wanted = SETTING.numbers if item.text in numbers else SETTING.words
                assert item.size == pytest.approx(wanted)

    def test_no_line_of_a_name_crosses_that_of_another(self, job_card: JobCard) -> None:
        items, _ = placed(job_card("set-up-card-a5"))
        dots = {
            (round(i.x + i.size / 2, 6), round(i.y + i.size / 2, 6))
            for i in items
            if isinstance(i, Drawing) and i.meaning == "end of a pointing line"
        }
        rules = [
            i for i in items if isinstance(i, Rule) and (round(i.x2, 6), round(i.y2, 6)) in dots
        ]
        assert len(rules) == len(dots) == 8
        for one, other in itertools.combinations(rules, 2):
            assert not cross(one, other)


def cross(one: Rule, other: Rule) -> bool:
    def side(rule: Rule, x: float, y: float) -> float:
        return (rule.x2 - rule.x1) * (y - rule.y1) - (rule.y2 - rule.y1) * (x - rule.x1)

    return (
        side(one, other.x1, other.y1) * side(one, other.x2, other.y2) < 0.0
        and side(other, one.x1, one.y1) * side(other, one.x2, one.y2) < 0.0
    )
