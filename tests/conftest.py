"""Invented lathes as shop files, read the way an owner's file is read."""

from collections.abc import Callable
from dataclasses import replace
from functools import cache
from pathlib import Path
from runpy import run_path
from typing import Any

import pytest

from chartgen.model.lathe import ChuckKind
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.pipeline import describe
from chartgen.reference.tables import load_material
from chartgen.wording.card import PrintedCard, make_card
from chartgen.wording.printed_job import PrintedJob

_FRAME = """
[shop]
name = "Test shop"
revision = "1"
[lathe]
name = "Test lathe"
{machine}
[lathe.cross_slide]
travel_per_turn = "2 mm"
divisions = 40
dial_reads = "radius"
power_feeds = ["0.02 mm/rev", "0.03 mm/rev", "0.045 mm/rev", "0.06 mm/rev", "0.09 mm/rev"]
[[blade]]
name = "2 coated"
tool = "carbide"
edge = "thin-coated"
insert_width = "2 mm"
thickness = "1.6 mm"
height = "26 mm"
projection = "36 mm"
[[blade]]
name = "3 coated"
tool = "carbide"
edge = "thin-coated"
insert_width = "3 mm"
thickness = "2.4 mm"
height = "26 mm"
projection = "36 mm"
[[blade]]
name = "1.6 HSS"
tool = "hss"
edge = "ground"
insert_width = "1.6 mm"
thickness = "1.4 mm"
height = "12 mm"
projection = "30 mm"
[[blade]]
name = "2 polished"
tool = "carbide"
edge = "polished"
insert_width = "2 mm"
thickness = "1.6 mm"
height = "26 mm"
projection = "36 mm"
[print]
materials = ["mild-steel"]
diameters = ["12 mm", "25 mm"]
layouts = ["lathe-chart-a5"]
"""

_MACHINES = {
    # The plate says what reaches the spindle: efficiency 100 %. One open range.
    "250 W brushed DC": """
[lathe.motor]
kind = "brushed-dc"
power = "250 W"
power_is = "shaft"
base_speed = "2000 rpm"
[lathe.drive]
fastest_spindle = "1500 rpm"
efficiency = "100 %"
[[lathe.drive.position]]
name = "open range"
speeds = "50..1500 rpm"
[lathe.chuck]
size = "80 mm"
marked_speed = "4000 rpm"
""",
    "550 W belts": """
[lathe.motor]
kind = "single-phase"
power = "550 W"
power_is = "shaft"
base_speed = "1400 rpm"
[lathe.drive]
fastest_spindle = "1620 rpm"
elements = ["v-belt"]
[[lathe.drive.position]]
name = "belts"
speeds = ["115 rpm", "195 rpm", "331 rpm", "562 rpm", "954 rpm", "1620 rpm"]
[lathe.chuck]
size = "125 mm"
marked_speed = "3000 rpm"
""",
    "750 W inverter": """
[lathe.motor]
kind = "inverter"
power = "750 W"
power_is = "shaft"
base_speed = "1400 rpm"
fastest = "2800 rpm"
overload = "150 %"
[lathe.drive]
fastest_spindle = "2500 rpm"
elements = ["v-belt"]
[[lathe.drive.position]]
name = "low"
mark = "L"
speeds = "60..1000 rpm"
[[lathe.drive.position]]
name = "high"
mark = "H"
speeds = "150..2500 rpm"
[lathe.chuck]
size = "125 mm"
marked_speed = "4000 rpm"
""",
    "1.1 kW brushless": """
[lathe.motor]
kind = "brushless"
power = "1.1 kW"
power_is = "shaft"
base_speed = "2000 rpm"
fastest = "4000 rpm"
[lathe.drive]
fastest_spindle = "2500 rpm"
elements = ["poly-v"]
[[lathe.drive.position]]
name = "only"
speeds = "50..2500 rpm"
[lathe.chuck]
size = "125 mm"
marked_speed = "4000 rpm"
""",
    "measured": """
[lathe.motor]
kind = "measured"
[lathe.drive]
fastest_spindle = "2500 rpm"
[[lathe.drive.position]]
name = "only"
speeds = "100..2000 rpm"
readings = [["100 rpm", "14 N.m"], ["600 rpm", "10 N.m"], ["2000 rpm", "500 W"]]
[lathe.chuck]
size = "125 mm"
marked_speed = "4000 rpm"
""",
    "2.2 kW geared": """
[lathe.motor]
kind = "three-phase"
power = "2.2 kW"
power_is = "shaft"
base_speed = "1420 rpm"
[lathe.drive]
fastest_spindle = "2000 rpm"
elements = ["v-belt", "gear-stage", "gear-stage"]
[[lathe.drive.position]]
name = "gears"
speeds = ["70 rpm", "115 rpm", "190 rpm", "300 rpm", "503 rpm", "755 rpm", "1180 rpm", "2000 rpm"]
[lathe.chuck]
size = "160 mm"
marked_speed = "3500 rpm"
""",
}

ShopText = Callable[[str], str]
ShopOf = Callable[..., Shop]
Held = Callable[[Shop], Shop]


@pytest.fixture(scope="session")
def shop_text() -> ShopText:
    """Return the shop file of one of the invented lathes."""
    return lambda lathe: _FRAME.format(machine=_MACHINES[lathe])


@pytest.fixture(scope="session")
def shop_of(shop_text: ShopText) -> ShopOf:
    """Return one of the invented shops, with pieces of its text exchanged."""

    def read(lathe: str, exchange: dict[str, str] | None = None) -> Shop:
        text = shop_text(lathe)
        for old, new in (exchange or {}).items():
            assert old in text, f"{old!r} does not stand in the shop file"
            text = text.replace(old, new)
        return describe(text.encode(), "test.toml")

    return read


@pytest.fixture(scope="session")
def example() -> Shop:
    """Return the built-in example shop."""
    return describe(None, "")


@pytest.fixture(scope="session")
def motor_swap() -> tuple[Shop, Shop]:
    """Return the invented lathe of the README before and after its new motor."""
    folder = Path(__file__).parents[1] / "output_examples" / "motor-swap"
    before, after = (
        describe((folder / name).read_bytes(), name) for name in ("before.toml", "after.toml")
    )
    return before, after


@pytest.fixture(scope="session")
def in_a_collet() -> Held:
    """Return a shop with its work in a collet, for tests in which the grip must not decide."""

    def held(shop: Shop) -> Shop:
        chuck = replace(shop.lathe.chuck, kind=ChuckKind.COLLET)
        return replace(shop, lathe=replace(shop.lathe, chuck=chuck))

    return held


@pytest.fixture(scope="session")
def mild_steel() -> Material:
    return load_material("mild-steel")


@pytest.fixture(scope="session")
def stainless() -> Material:
    return load_material("stainless-304")


@pytest.fixture(scope="session")
def aluminium() -> Material:
    return load_material("aluminium-6082")


@pytest.fixture(scope="session")
def job_card(example: Shop) -> Callable[..., PrintedCard[PrintedJob]]:
    """Return a function: a layout, and what of the invented ring is otherwise -> its card.

    A batch card has twenty pieces unless `pieces` says how many.
    """
    # Tests are no package to import from.
    given = run_path(str(Path(__file__).with_name("job_card_example.py")))

    def of(layout: str, *, pieces: int = 20, **changes: object) -> PrintedCard[PrintedJob]:
        is_batch = layout.startswith("batch-card")
        job: PrintedJob = given["batch_of"](pieces) if is_batch else given["RING"]
        job = replace(job, **changes)  # type: ignore[arg-type]
        material = load_material("mild-steel")
        return make_card(example, job, (material,), example.blades[:1], layout, job.title)

    return of


@pytest.fixture(scope="session")
def of_a_class() -> dict[str, Any]:
    """Return what tests of classes share: an invented one, its papers and cards, its marks."""
    return run_path(str(Path(__file__).with_name("class_example.py")))


@pytest.fixture(scope="session")
def room_of(of_a_class: dict[str, Any], shop_of: ShopOf, example: Shop) -> Callable[..., Any]:
    """Return a function: level, units, language -> twelve students at two invented lathes."""
    lathes = example, shop_of("550 W belts")
    return cache(lambda *asked: of_a_class["room"](lathes, *asked))


@pytest.fixture(scope="session")
def class_card(
    of_a_class: dict[str, Any], room_of: Callable[..., Any]
) -> Callable[[str], PrintedCard]:
    """Return a function: a layout -> the paper of the invented class that stands on it."""
    cards: list[PrintedCard] = of_a_class["cards_of"](room_of())
    return {card.layout: card for card in cards}.__getitem__
