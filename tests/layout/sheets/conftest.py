from collections.abc import Callable

import pytest

from chartgen.layout.placed import Mounted, Page
from chartgen.layout.sheets.impose import Imposition
from chartgen.layout.sheets.leaves import Leaf
from chartgen.layout.sheets.plan import SheetPlan, plan_sheets
from chartgen.renderers.fonts import measure

Size = tuple[float, float]


def _numbered(size: Size, number: int) -> Leaf:
    width, height = size
    return Leaf(
        name=f"card-{number}",
        front=Page(width=width, height=height, items=()),
        back=Page(width=width, height=height, items=()),
    )


@pytest.fixture(scope="session")
def imposed() -> Callable[..., Imposition]:
    """Return a function: the size of a card and the words of a plan -> how cards of it stand."""

    def of(size: Size, pouch: str = "A6", **words: str | bool) -> Imposition:
        plan: SheetPlan = plan_sheets(**{"paper": "A4", **words})  # type: ignore[arg-type]
        return Imposition(plan, card=size, pouch=pouch, measure=measure)

    return of


@pytest.fixture(scope="session")
def blank_leaves() -> Callable[[Size, int], list[Leaf]]:
    """Return a function: a size and a number -> so many leaves without content."""
    return lambda size, count: [_numbered(size, number) for number in range(count)]


@pytest.fixture(scope="session")
def through() -> Callable[[Mounted, float, float], tuple[float, float]]:
    """Return a function: a mounted page and a point of it -> where that lies on the sheet.

    Worked out by turning about the middle of the footprint, another way than the program's.
    """

    def at(mounted: Mounted, u: float, v: float) -> tuple[float, float]:
        across, down = u - mounted.page.width / 2.0, v - mounted.page.height / 2.0
        for _ in range(mounted.turn // 90):
            # A quarter clockwise with y down: what pointed right points down.
            across, down = -down, across
        wide, high = mounted.footprint
        return mounted.x + wide / 2.0 + across, mounted.y + high / 2.0 + down

    return at
