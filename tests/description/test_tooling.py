"""The tools beside the blades: what the example lists, and how little a file may say."""

from collections.abc import Callable
from itertools import pairwise

import pytest

from chartgen.description.shop_file import example_text
from chartgen.model.blade import ToolMaterial
from chartgen.model.lathe import Carriage
from chartgen.model.shop import Shop
from chartgen.model.tooling import BarMaterial, BoringBar, Drills, Tailstock, Tools, TurningTool

Read = Callable[[str | bytes], Shop]
EXAMPLE = example_text().decode()
DRILLS = EXAMPLE[EXAMPLE.index("[drills]") : EXAMPLE.index("point = ")]


def test_the_example_lists_the_tools_of_its_lathe(read: Read) -> None:
    shop = read(EXAMPLE)
    assert (shop.lathe.swing, shop.lathe.spindle_bore) == (150.0, 26.0)
    assert shop.lathe.carriage == Carriage(travel_per_turn=18.0, power_feeds=(0.05, 0.1, 0.2))
    assert shop.tools.turning == (
        TurningTool(name="0.4 carbide", tool_material=ToolMaterial.CARBIDE, nose_radius=0.4),
        TurningTool(name="HSS knife", tool_material=ToolMaterial.HSS, nose_radius=0.2),
    )
    assert shop.tools.boring[0] == BoringBar(
        name="8 mm bar",
        tool_material=ToolMaterial.CARBIDE,
        shank=BarMaterial.STEEL,
        diameter=8.0,
        reach=35.0,
        smallest_bore=10.0,
        nose_radius=0.2,
    )
    assert shop.tools.tailstock == Tailstock(
        travel_per_turn=2.0, largest_drill=16.0, live_centre=True
    )


# A bar that no drill makes room for would be of no use in its own example.
def test_a_drill_of_the_example_makes_room_for_each_of_its_boring_bars(read: Read) -> None:
    tools = read(EXAMPLE).tools
    assert tools.drills is not None
    assert tools.tailstock is not None
    held = [drill for drill in tools.drills.diameters if drill <= tools.tailstock.largest_drill]
    assert held == list(tools.drills.diameters)
    for bar in tools.boring:
        assert any(bar.smallest_bore <= drill for drill in held)


def test_a_file_without_any_tool_is_whole(read: Read) -> None:
    start = EXAMPLE.index(
        "# ---------------------------------------------------------------------- the"
    )
    assert read(EXAMPLE[:start]).tools == Tools()


@pytest.mark.parametrize(
    ("written", "diameters"),
    [
        ('["8 mm", "3 mm", "1/4 in"]', (3.0, 6.35, 8.0)),
        ('"2..4 mm step 0.5 mm"', (2.0, 2.5, 3.0, 3.5, 4.0)),
        ('["5 mm"]', (5.0,)),
    ],
)
def test_drills_may_be_listed_in_any_order_or_as_a_range(
    read: Read, written: str, diameters: tuple[float, ...]
) -> None:
    shop = read(EXAMPLE.replace(DRILLS, f"[drills]\ndiameters = {written}\n"))
    assert shop.tools.drills is not None
    assert shop.tools.drills.diameters == pytest.approx(diameters)
    assert all(one < other for one, other in pairwise(shop.tools.drills.diameters))


def test_what_a_table_of_tools_leaves_out_is_not_stated(read: Read) -> None:
    start = EXAMPLE.index("[[turning_tool]]")
    text = EXAMPLE[:start].replace('power_feeds = ["0.05 mm/rev", "0.1 mm/rev", "0.2 mm/rev"]', "")
    tables = '[drills]\ndiameters = ["3 mm"]\n[tailstock]\ntravel_per_turn = "0.1 in"\n'
    shop = read(text + tables + 'largest_drill = "1/2 in"\n')
    assert shop.tools.drills == Drills(diameters=(3.0,))
    assert shop.tools.tailstock == Tailstock(travel_per_turn=2.54, largest_drill=12.7)
    assert shop.lathe.carriage == Carriage(travel_per_turn=18.0)


def test_power_feeds_of_the_carriage_are_sorted(read: Read) -> None:
    feeds = '["0.05 mm/rev", "0.1 mm/rev", "0.2 mm/rev"]'
    shop = read(EXAMPLE.replace(feeds, '["0.2 mm/rev", "0.05 mm/rev"]'))
    assert shop.lathe.carriage is not None
    assert shop.lathe.carriage.power_feeds == (0.05, 0.2)
