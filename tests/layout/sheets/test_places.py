"""How many cards a sheet holds, and the room between and around them."""

import math
from collections.abc import Callable, Iterator
from itertools import combinations

import pytest
from hypothesis import given, reject
from hypothesis import strategies as st

from chartgen.errors import RequestError
from chartgen.layout.pages import film_edge, page_name, page_size
from chartgen.layout.placed import Page
from chartgen.layout.sheets.impose import Imposition
from chartgen.layout.sheets.leaves import Leaf
from chartgen.layout.sheets.papers import PAPERS, Paper
from chartgen.layout.sheets.places import Places
from chartgen.layout.sheets.plan import plan_sheets

Imposed = Callable[..., Imposition]
Box = tuple[float, float, float, float]
ID_1 = (85.60, 53.98)  # ISO/IEC 7810
LASER_MARGIN = 4.3  # printers' manuals state 4 to 4.23 mm for laser printers
sizes = st.tuples(st.floats(40.0, 300.0), st.floats(40.0, 300.0))
plans = st.fixed_dictionaries(
    {
        "paper": st.sampled_from(list(PAPERS)),
        "flip": st.sampled_from(["long", "short"]),
        "margin": st.sampled_from(["cautious", "wide"]),
    }
)


def boxes(places: Places) -> list[Box]:
    width, height = places.footprint
    return [(x, y, x + width, y + height) for x, y in places.positions]


def fitting(imposed: Imposed, size: tuple[float, float], **words: str | bool) -> Imposition:
    try:
        return imposed(size, **words)
    except RequestError:
        reject()


@pytest.mark.parametrize("name", ["A3", "A4"])
def test_paper_has_the_sizes_of_iso_216(name: str) -> None:
    # A(n) is 2^(1/4 - n/2) by 2^(-1/4 - n/2) metres, in whole millimetres (ISO 216).
    n = int(name[1])
    wanted = [math.floor(1000 * 2 ** (s * 0.25 - n / 2) + 0.2) for s in (-1, 1)]
    assert PAPERS[name].size == page_size(name) == tuple(wanted)


def test_american_paper_has_its_sizes_in_inches() -> None:
    # Letter is 8 1/2 x 11 in, tabloid 11 x 17 in (ANSI/ASME Y14.1: sizes A and B); 1 in = 25.4 mm.
    assert PAPERS["letter"].size == pytest.approx((8.5 * 25.4, 11 * 25.4))
    assert PAPERS["tabloid"].size == pytest.approx((11 * 25.4, 17 * 25.4))


@pytest.mark.parametrize(
    ("paper", "card", "halvings"),
    [("A4", "A5", 1), ("A4", "A6", 2), ("A4", "A7", 3), ("A3", "A4", 1), ("A3", "A6", 3)],
)
@pytest.mark.parametrize("turn", ["portrait", "landscape"])
def test_edge_to_edge_a_sheet_holds_what_halving_it_gives(
    imposed: Imposed, paper: str, card: str, halvings: int, turn: str
) -> None:
    # ISO 216: each size is the one above, halved.
    size = page_size(f"{card} {turn}")
    places = imposed(size, paper=paper, edge_to_edge=True).places
    assert places.count == 2**halvings
    assert places.foot is None


@pytest.mark.parametrize(
    ("size", "paper", "count"),
    [
        # By hand, with 10.5 mm of margin and mark, 6 mm gaps, and some 20 mm for the foot.
        (page_size("A6 landscape"), "A4", 2),
        (page_size("A6 landscape"), "letter", 2),
        (page_size("A6 landscape"), "A3", 4),
        (page_size("A5 landscape"), "A4", 1),
        (page_size("A5 landscape"), "A3", 2),
        (ID_1, "A4", 8),
    ],
)
def test_apart_a_sheet_holds_as_many_as_counted_by_hand(
    imposed: Imposed, size: tuple[float, float], paper: str, count: int
) -> None:
    places = imposed(size, paper=paper).places
    assert places.count == count
    assert places.foot is not None


@given(size=sizes, words=plans)
def test_cards_lie_apart_by_twice_the_sealed_edge_within_the_printers_reach(
    imposed: Imposed, size: tuple[float, float], words: dict[str, str]
) -> None:
    places = fitting(imposed, size, **words).places
    width, height = places.plan.size
    end = {"cautious": 6.5, "wide": 13.0}[words["margin"]]
    for left, top, right, bottom in boxes(places):
        assert left >= 6.5
        assert right <= width - 6.5
        # Both ends: flipped on the short edge, the head of one side is the foot of the other.
        assert top >= end
        assert bottom <= height - end
    for (l1, t1, r1, b1), (l2, t2, r2, b2) in combinations(boxes(places), 2):
        assert max(l2 - r1, l1 - r2, t2 - b1, t1 - b2) >= 6.0 - 1e-6


@given(size=sizes, words=plans)
def test_edge_to_edge_cards_touch_and_their_content_stays_within_the_printers_reach(
    imposed: Imposed, size: tuple[float, float], words: dict[str, str]
) -> None:
    places = fitting(imposed, size, edge_to_edge=True, **words).places
    width, height = places.plan.size
    end = {"cautious": 6.5, "wide": 13.0}[words["margin"]]
    content = 6.5  # the least margin that a layout may have
    for left, top, right, bottom in boxes(places):
        assert min(left, width - right) >= -1e-6
        assert min(top, height - bottom) + content >= end - 1e-6
    for (l1, t1, r1, b1), (l2, t2, r2, b2) in combinations(boxes(places), 2):
        assert max(l2 - r1, l1 - r2, t2 - b1, t1 - b2) >= -1e-6


@given(size=sizes, words=plans, edge_to_edge=st.booleans())
def test_no_further_row_or_column_would_fit(
    imposed: Imposed, size: tuple[float, float], words: dict[str, str], *, edge_to_edge: bool
) -> None:
    places = fitting(imposed, size, edge_to_edge=edge_to_edge, **words).places
    left, top, right, bottom = places.plan.card_room
    if places.foot is not None:
        bottom = places.foot - 4.0
    wide, high = places.footprint
    gap = places.plan.gap
    assert places.columns * (wide + gap) + wide > right - left - 1e-3
    assert places.rows * (high + gap) + high > bottom - top - 1e-3


@given(size=sizes, words=plans)
def test_laminated_together_all_cards_keep_a_sealed_edge_in_the_sheets_pouch(
    imposed: Imposed, size: tuple[float, float], words: dict[str, str]
) -> None:
    places = fitting(imposed, size, laminate="together", **words).places
    film = PAPERS[words["paper"]].film
    every = boxes(places)
    across = max(box[2] for box in every) - min(box[0] for box in every)
    down = max(box[3] for box in every) - min(box[1] for box in every)
    # Makers of film: about 3 mm a side, and 2 to 3 mm where the film is trimmed.
    assert across + 2 * 3.0 <= film[0] + 1e-6
    assert down + 2 * 3.0 <= film[1] + 1e-6


def test_a_pouch_that_would_not_seal_round_its_paper_is_refused() -> None:
    with pytest.raises(ValueError, match="does not seal round"):
        Paper(size=(210.0, 297.0), film=(216.0, 302.0))


def test_the_film_round_a_card_is_that_of_its_narrower_side() -> None:
    assert film_edge(page_size("A6 landscape"), "A6") == 3.0  # a size guide of pouches
    assert film_edge((85.6, 53.98), "A7") == pytest.approx((111.0 - 85.6) / 2)


@given(size=st.tuples(st.floats(40.0, 440.0), st.floats(40.0, 440.0)), words=plans)
def test_a_card_too_large_is_told_which_sheet_holds_it(
    imposed: Imposed, size: tuple[float, float], words: dict[str, str]
) -> None:
    try:
        imposed(size, **words)
    except RequestError as error:
        message = str(error)
    else:
        reject()
    assert f"does not fit on {words['paper']}" in message
    mend = message.rpartition("; ")[2].rstrip(".")
    if mend.startswith("use "):
        paper, _, more = mend.removeprefix("use ").partition(" ")
        other = {**words, "paper": paper}
        assert imposed(size, edge_to_edge=more == "--edge-to-edge", **other).places.count >= 1
    else:
        assert mend == "print it as a single card, without --sheet"
        for paper in PAPERS:
            with pytest.raises(RequestError):
                imposed(size, **{**words, "paper": paper}, edge_to_edge=True)


def test_an_a4_card_is_sent_to_a3(imposed: Imposed) -> None:
    with pytest.raises(RequestError) as told:
        imposed(page_size("A4"))
    assert str(told.value) == (
        "a card of A4 portrait (210 x 297 mm) does not fit on A4 with its marks and margins; "
        "use A3."
    )


def test_a_plan_refuses_what_there_is_not_and_what_cannot_be() -> None:
    with pytest.raises(ValueError, match="'A9' is no sheet; use one of A4, letter, A3, tabloid"):
        plan_sheets(paper="A9")
    with pytest.raises(ValueError, match="need film between them"):
        plan_sheets(paper="A4", laminate="together", edge_to_edge=True)


def test_a_page_is_called_by_its_name_or_its_size() -> None:
    assert page_name((148.0, 105.0)) == "A6 landscape"
    assert page_name((105.0, 148.0)) == "A6 portrait"
    assert page_name((85.6, 54.0)) == "85.6 x 54 mm"


def test_only_the_leaves_of_one_sheet_are_taken_at_a_time(imposed: Imposed) -> None:
    size = page_size("A6 landscape")
    taken = []

    def endless() -> Iterator[Leaf]:
        page = Page(width=size[0], height=size[1], items=())
        while True:
            taken.append(1)
            yield Leaf(name="card", front=page, back=page)

    sheets = imposed(size).sheets(endless())
    for number in range(1, 6):
        next(sheets)
        next(sheets)
        assert len(taken) == 2 * number
