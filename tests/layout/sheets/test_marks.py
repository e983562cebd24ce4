"""Where to cut, how to round, where to hang: on the cut or outside, never near content."""

import math
from collections.abc import Callable
from contextlib import suppress

import pytest
from hypothesis import given, reject
from hypothesis import strategies as st

from chartgen.errors import RequestError
from chartgen.layout.layout_file import layout_names
from chartgen.layout.pages import page_size
from chartgen.layout.placed import Document, Drawing, Item, Mounted, Page, Panel, Rule, Text
from chartgen.layout.primitives import Stroke
from chartgen.layout.sheets.hole import FROM_EDGE, HOLE, hole_mark, hole_place
from chartgen.layout.sheets.impose import Imposition
from chartgen.layout.sheets.leaves import Leaf, leaves
from chartgen.layout.sheets.marks import corner_radius
from chartgen.layout.sheets.papers import PAPERS
from chartgen.renderers.fonts import measure
from chartgen.wording.card import PrintedCard

Bounds = tuple[float, float, float, float]
Imposed = Callable[..., Imposition]
Leaves = Callable[[tuple[float, float], int], list[Leaf]]
A6 = page_size("A6 landscape")
CUT_WEIGHT = 0.25


def ticks(page: Page) -> list[Rule]:
    return [i for i in page.items if isinstance(i, Rule) and i.weight == CUT_WEIGHT]


def box(card: Mounted) -> Bounds:
    width, height = card.footprint
    return card.x, card.y, card.x + width, card.y + height


def distance(rule: Rule, card: Mounted) -> float:
    left, top, right, bottom = box(card)
    across = max(left - rule.x2, rule.x1 - right, 0.0)
    down = max(top - rule.y2, rule.y1 - bottom, 0.0)
    return math.hypot(across, down)


@given(
    size=st.tuples(st.floats(40.0, 200.0), st.floats(40.0, 200.0)),
    paper=st.sampled_from(list(PAPERS)),
    margin=st.sampled_from(["cautious", "wide"]),
    cards=st.integers(1, 12),
)
def test_apart_every_cut_has_a_mark_at_both_ends_and_none_comes_near_a_card(
    imposed: Imposed,
    blank_leaves: Leaves,
    size: tuple[float, float],
    paper: str,
    margin: str,
    cards: int,
) -> None:
    try:
        imposition = imposed(size, paper=paper, margin=margin)
    except RequestError:
        reject()
    front = next(imposition.sheets(blank_leaves(size, cards)))
    left, top, right, bottom = imposition.plan.printable
    found = ticks(front)
    for tick in found:
        assert min(distance(tick, card) for card in front.mounted) >= 2.0 - 1e-3
        assert left - 1e-3 <= tick.x1 <= tick.x2 <= right + 1e-3
        assert top - 1e-3 <= tick.y1 <= tick.y2 <= bottom + 1e-3
    ends = [(tick.x1, tick.y1) for tick in found] + [(tick.x2, tick.y2) for tick in found]
    for card in front.mounted:
        x1, y1, x2, y2 = box(card)
        for x, out in ((x1, -2.0), (x2, 2.0)):
            for y, up in ((y1, -2.0), (y2, 2.0)):
                # From each corner both cuts go on, 2 mm away from it.
                for wanted in ((x + out, y), (x, y + up)):
                    assert min(math.dist(wanted, end) for end in ends) < 1e-3


@given(
    size=st.tuples(st.floats(40.0, 200.0), st.floats(40.0, 200.0)),
    paper=st.sampled_from(list(PAPERS)),
)
def test_edge_to_edge_a_mark_lies_on_a_cut_or_outside_the_cards(
    imposed: Imposed, blank_leaves: Leaves, size: tuple[float, float], paper: str
) -> None:
    try:
        imposition = imposed(size, paper=paper, edge_to_edge=True)
    except RequestError:
        reject()
    places = imposition.places
    front = next(imposition.sheets(blank_leaves(size, places.count)))
    for tick in ticks(front):
        for card in front.mounted:
            x1, y1, x2, y2 = box(card)
            inside_x = max(tick.x1, x1) < min(tick.x2, x2) or x1 + 1e-3 < tick.x1 < x2 - 1e-3
            inside_y = max(tick.y1, y1) < min(tick.y2, y2) or y1 + 1e-3 < tick.y1 < y2 - 1e-3
            on_cut = min(abs(tick.x1 - x1), abs(tick.x1 - x2)) < 1e-3 and tick.x1 == tick.x2
            on_cut |= min(abs(tick.y1 - y1), abs(tick.y1 - y2)) < 1e-3 and tick.y1 == tick.y2
            assert on_cut or not (inside_x and inside_y)


def test_halved_sheets_show_where_to_halve_them(imposed: Imposed, blank_leaves: Leaves) -> None:
    front = next(imposed(A6, edge_to_edge=True).sheets(blank_leaves(A6, 4)))
    upright = {tick.x1 for tick in ticks(front) if tick.x1 == tick.x2}
    level = {tick.y1 for tick in ticks(front) if tick.y1 == tick.y2}
    # ISO 216: half of A4's 210 mm is the short side of A6, half of its 297 mm nearly the long.
    assert upright == {105.0}
    assert level == {148.5}


@pytest.mark.parametrize(
    ("size", "radius"), [((85.60, 53.98), 3.0), (A6, 5.0), (page_size("A4"), 5.0)]
)
def test_each_corner_is_rounded_by_a_quarter_circle_that_touches_both_cuts(
    imposed: Imposed, blank_leaves: Leaves, size: tuple[float, float], radius: float
) -> None:
    paper = "A4" if max(size) < 290 else "A3"
    front = next(imposed(size, paper=paper).sheets(blank_leaves(size, 1)))
    (card,) = front.mounted
    x1, y1, x2, y2 = box(card)
    arcs = [item for item in front.items if isinstance(item, Drawing)]
    assert len(arcs) == 4
    for arc, (corner, inward) in zip(
        arcs,
        [((x1, y1), (1, 1)), ((x2, y1), (-1, 1)), ((x2, y2), (-1, -1)), ((x1, y2), (1, -1))],
        strict=True,
    ):
        centre = corner[0] + inward[0] * radius, corner[1] + inward[1] * radius
        (stroke,) = arc.primitives
        assert isinstance(stroke, Stroke)
        points = [(arc.x + x * arc.size, arc.y + (1 - y) * arc.size) for x, y in stroke.points]
        assert all(math.dist(point, centre) == pytest.approx(radius) for point in points)
        assert min(abs(x - corner[0]) for x, _ in points) < 1e-6
        assert min(abs(y - corner[1]) for _, y in points) < 1e-6
        assert all(x1 - 1e-6 <= x <= x2 + 1e-6 and y1 - 1e-6 <= y <= y2 + 1e-6 for x, y in points)


def test_a_bank_card_is_rounded_as_its_standard_says() -> None:
    assert 2.88 <= corner_radius((85.60, 53.98)) <= 3.48  # ISO/IEC 7810, ID-1


def reversed_bounds(bounds: Bounds, width: float) -> Bounds:
    return width - bounds[2], bounds[1], width - bounds[0], bounds[3]


@pytest.mark.parametrize("name", layout_names())
def test_a_hole_touches_nothing_printed_or_is_refused(
    card_of_layout: Callable[[str], tuple[PrintedCard, Document]],
    bounds: Callable[[Item], Bounds],
    name: str,
) -> None:
    card, document = card_of_layout(name)

    def gap(x: float, box: Bounds) -> float:
        across = max(box[0] - x, x - box[2], 0.0)
        down = max(box[1] - FROM_EDGE, FROM_EDGE - box[3], 0.0)
        return math.hypot(across, down) - HOLE / 2.0

    for leaf in leaves(card.file_stem, document):
        width = leaf.front.width
        front = [bounds(item) for item in leaf.front.items]
        back = [reversed_bounds(bounds(item), width) for item in leaf.back.items]
        place = None
        with suppress(RequestError):
            place = hole_place(leaf, measure)
        if place is None:
            for x in (width / 2, 5.0, width - 5.0):
                # A quarter of a millimetre is kept clear, and tails are left out of the bounds.
                assert any(gap(x, b) < 1.0 for b in front) or any(gap(x, b) < 3.0 for b in back)
        else:
            # Judgement, no source: 3 mm of film and at least 1 mm of card hold the hole.
            assert place[1] - HOLE / 2 + 3.0 >= 4.0
            assert all(gap(place[0], b) > 0.0 for b in front)
            assert all(gap(place[0], b) > 2.0 for b in back)


def leaf_with(front: tuple[Item, ...] = (), back: tuple[Item, ...] = ()) -> Leaf:
    width, height = A6
    return Leaf(
        name="trial",
        front=Page(width=width, height=height, items=front),
        back=Page(width=width, height=height, items=back),
    )


def across(x1: float, x2: float) -> Panel:
    return Panel(x=x1, y=5.0, width=x2 - x1, height=3.0)


def test_a_hole_goes_to_the_middle_or_else_to_a_corner_free_on_both_sides() -> None:
    middle = across(60.0, 90.0)
    assert hole_place(leaf_with(), measure) == (74.0, FROM_EDGE)
    assert hole_place(leaf_with((middle,)), measure) == (5.0, FROM_EDGE)
    assert hole_place(leaf_with((), (middle,)), measure) == (5.0, FROM_EDGE)
    # The left of the front is the right of the back.
    assert hole_place(leaf_with((middle,), (across(120.0, 141.5),)), measure) == (143.0, FROM_EDGE)
    assert hole_place(leaf_with((middle,), (across(6.5, 30.0),)), measure) == (5.0, FROM_EDGE)
    with pytest.raises(RequestError, match="trial: content stands wherever a hole could be"):
        hole_place(leaf_with((across(6.5, 141.5),)), measure)


def test_a_text_or_rule_keeps_a_hole_away_as_a_panel_does() -> None:
    words = Text(x=60.0, y=7.5, text="words in the middle of it", size=10.0)
    rule = Rule(x1=60.0, y1=5.0, x2=90.0, y2=5.0, weight=0.5)
    sign = Drawing(x=70.0, y=5.0, size=10.0, primitives=(), meaning="")
    for item in (words, rule, sign):
        assert hole_place(leaf_with((item,)), measure) == (5.0, FROM_EDGE)


@pytest.mark.parametrize("edge_to_edge", [False, True])
def test_a_hole_mark_stands_on_its_card_however_that_is_turned(
    imposed: Imposed,
    blank_leaves: Leaves,
    through: Callable[[Mounted, float, float], tuple[float, float]],
    *,
    edge_to_edge: bool,
) -> None:
    imposition = imposed(A6, hole=True, edge_to_edge=edge_to_edge)
    front = next(imposition.sheets(blank_leaves(A6, imposition.places.count)))
    found = [i for i in front.items if isinstance(i, Drawing) and i.meaning == "hole 5 mm"]
    assert len(found) == len(front.mounted) == (4 if edge_to_edge else 2)
    for card, mark in zip(front.mounted, found, strict=True):
        assert mark == hole_mark(card, 74.0, FROM_EDGE)
        middle = mark.x + mark.size / 2, mark.y + mark.size / 2
        assert middle == pytest.approx(through(card, 74.0, FROM_EDGE))
