"""Every back lies on its front, whichever edge the printer flips the sheet about."""

from collections.abc import Callable

import pytest
from hypothesis import given, reject
from hypothesis import strategies as st

from chartgen.errors import RequestError
from chartgen.layout.layout_file import layout_names
from chartgen.layout.pages import page_size
from chartgen.layout.placed import Document, Drawing, Item, Mounted, Page
from chartgen.layout.sheets.impose import Imposition
from chartgen.layout.sheets.leaves import Leaf, leaves
from chartgen.layout.sheets.marks import corner_radius
from chartgen.layout.sheets.papers import PAPERS
from chartgen.wording.card import PrintedCard

Bounds = tuple[float, float, float, float]
Imposed = Callable[..., Imposition]
A6 = page_size("A6 landscape")


@given(
    size=st.tuples(st.floats(40.0, 250.0), st.floats(40.0, 250.0)),
    paper=st.sampled_from(list(PAPERS)),
    flip=st.sampled_from(["long", "short"]),
    edge_to_edge=st.booleans(),
    at=st.tuples(st.floats(0.0, 1.0), st.floats(0.0, 1.0)),
    cards=st.integers(1, 20),
)
def test_folded_in_the_mind_every_point_of_a_back_lies_behind_its_point_of_the_front(
    imposed: Imposed,
    blank_leaves: Callable[[tuple[float, float], int], list[Leaf]],
    through: Callable[[Mounted, float, float], tuple[float, float]],
    size: tuple[float, float],
    paper: str,
    flip: str,
    at: tuple[float, float],
    cards: int,
    *,
    edge_to_edge: bool,
) -> None:
    try:
        imposition = imposed(size, paper=paper, flip=flip, edge_to_edge=edge_to_edge)
    except RequestError:
        reject()
    pages = list(imposition.sheets(blank_leaves(size, cards)))
    width, height = PAPERS[paper].size
    seen = 0
    for front, back in zip(pages[::2], pages[1::2], strict=True):
        for obverse, reverse in zip(front.mounted, back.mounted, strict=True):
            u, v = at[0] * size[0], at[1] * size[1]
            x, y = through(obverse, u, v)
            # A card turned in the hand like a page of a book: its left is behind its right.
            x_back, y_back = through(reverse, size[0] - u, v)
            # ISO 32000-1, table 150: the sheet is flipped on its long, or its short, edge.
            behind = (width - x_back, y_back) if flip == "long" else (x_back, height - y_back)
            assert behind == pytest.approx((x, y), abs=1e-6)
            seen += 1
    assert seen == cards


@given(
    turn=st.sampled_from([0, 90, 180, 270]),
    at=st.tuples(st.floats(0.0, 148.0), st.floats(0.0, 105.0)),
)
def test_the_axes_of_a_mounted_page_turn_it_within_its_footprint(
    through: Callable[[Mounted, float, float], tuple[float, float]],
    turn: int,
    at: tuple[float, float],
) -> None:
    mounted = Mounted(x=20.0, y=30.0, turn=turn, page=Page(width=148.0, height=105.0, items=()))
    a, b, c, d, e, f = mounted.axes
    x, y = a * at[0] + c * at[1] + e, b * at[0] + d * at[1] + f
    assert (x, y) == pytest.approx(through(mounted, *at))
    assert a * d - b * c == 1.0  # turned, never mirrored: text stays readable


def test_a_page_without_another_to_follow_has_a_blank_back() -> None:
    pages = tuple(Page(width=100.0 + n, height=50.0, items=()) for n in range(3))
    found = list(leaves("card", Document(title="", subject="", pages=pages)))
    assert [leaf.front for leaf in found] == [pages[0], pages[2]]
    assert found[0].back is pages[1]
    assert (found[1].back.width, found[1].back.items) == (102.0, ())


@pytest.mark.parametrize("flip", ["long", "short"])
def test_marks_are_on_the_front_alone(
    imposed: Imposed, blank_leaves: Callable[..., list[Leaf]], flip: str
) -> None:
    front, back = imposed(A6, flip=flip).sheets(blank_leaves(A6, 2))
    assert len(front.items) > 40
    texts = [item.text for item in back.items]  # type: ignore[union-attr]
    assert texts == (["sheet 1, back"] if flip == "long" else [])


@pytest.mark.parametrize("name", layout_names())
@pytest.mark.parametrize("shift", [(2.0, 2.0), (-2.0, 2.0), (2.0, -2.0), (-2.0, -2.0)])
def test_a_back_printed_2_mm_off_loses_nothing_to_the_cut(
    card_of_layout: Callable[[str], tuple[PrintedCard, Document]],
    bounds: Callable[[Item], Bounds],
    name: str,
    shift: tuple[float, float],
) -> None:
    # Desktop printers register to 1 to 3 mm (from memory); a copier's service manual wants 1 mm.
    _, document = card_of_layout(name)
    checked = 0
    for page in document.pages:
        radius = corner_radius((page.width, page.height))
        for item in page.items:
            left, top, right, bottom = bounds(item)
            box = left + shift[0], top + shift[1], right + shift[0], bottom + shift[1]
            for x in (box[0], box[2]):
                for y in (box[1], box[3]):
                    # Inside the rounded outline: from the edges, and from the corner's centre.
                    across = max(radius - x, x - (page.width - radius), 0.0)
                    down = max(radius - y, y - (page.height - radius), 0.0)
                    assert across <= radius
                    assert down <= radius
                    assert across**2 + down**2 <= radius**2
                    checked += 1
    assert checked > 100


def test_a_card_of_three_pages_takes_two_places(
    imposed: Imposed, card_of_layout: Callable[[str], tuple[PrintedCard, Document]]
) -> None:
    _, document = card_of_layout("blade-card-a6")
    assert len(document.pages) == 3
    front, back = imposed(A6).sheets(leaves("blade", document))
    assert [card.page for card in front.mounted] == [document.pages[0], document.pages[2]]
    assert back.mounted[0].page is document.pages[1]
    assert back.mounted[1].page.items == ()
    assert any(isinstance(item, Drawing) for item in back.mounted[0].page.items)
