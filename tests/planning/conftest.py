"""Jobs built in memory, and the invented lathes with something to turn with."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from chartgen.model.job import Bar, Coolant, Holding, Job, Piece, ToolChoice
from chartgen.model.shop import Shop

Equipped = Callable[[str], Shop]
JobOf = Callable[..., Job]


@pytest.fixture(scope="session")
def job_of() -> JobOf:
    """Return a job of a bar and a piece."""

    def of(
        bar: Bar,
        piece: Piece,
        *,
        material: str = "mild-steel",
        quantity: int = 1,
        holding: Holding | None = None,
        choice: ToolChoice | None = None,
    ) -> Job:
        return Job(
            name="test",
            revision="1",
            date="",
            material=material,
            quantity=quantity,
            bar=bar,
            piece=piece,
            holding=holding or Holding(),
            coolant=Coolant.OIL,
            choice=choice or ToolChoice(),
        )

    return of


@pytest.fixture(scope="session")
def equipped(shop_of: Callable[[str], Shop], example: Shop) -> Equipped:
    """Return an invented lathe with the tools of the built-in one."""
    cache: dict[str, Shop] = {"built-in": example}

    def of(lathe: str) -> Shop:
        if lathe not in cache:
            shop = shop_of(lathe)
            wheels = replace(
                shop.lathe, spindle_bore=example.lathe.spindle_bore, carriage=example.lathe.carriage
            )
            cache[lathe] = replace(shop, lathe=wheels, tools=example.tools)
        return cache[lathe]

    return of
