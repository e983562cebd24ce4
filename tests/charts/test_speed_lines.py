"""Speeds over diameter: the numbers of the lathe chart, the machine and the edge."""

from collections.abc import Callable

import pytest

from chartgen.charts.speed_lines import speed_lines
from chartgen.limits.run import windows
from chartgen.model.blade import ToolMaterial
from chartgen.model.material import Material
from chartgen.model.shop import Shop

SIZES = (12.0, 25.0, 50.0)


def test_the_dots_are_the_speeds_of_the_lathe_chart(example: Shop, mild_steel: Material) -> None:
    found = windows(example, materials=[mild_steel], diameters=SIZES)
    chart = speed_lines(example, found, mild_steel)
    assert len(chart.recommended) == found.has_window.sum()
    for dot in chart.recommended:
        b, d = example.blades.index(dot.blade), SIZES.index(dot.diameter)
        assert dot.speed == found.spindle_speed[0, b, d]
    assert (chart.smallest, chart.largest) == (12.0, 50.0)


def test_the_edges_are_those_owned_with_the_speeds_of_the_material(
    example: Shop, mild_steel: Material
) -> None:
    found = windows(example, materials=[mild_steel], diameters=SIZES)
    edges = {e.tool_material: e for e in speed_lines(example, found, mild_steel).edges}
    assert set(edges) == set(ToolMaterial)
    for kind, edge in edges.items():
        assert edge.start == mild_steel.speeds[kind].start.value
        assert edge.start < edge.ceiling


@pytest.mark.parametrize(
    ("machine", "fastest"), [("550 W belts", 1620.0), ("750 W inverter", 2500.0)]
)
def test_the_fastest_spindle_is_the_machines(
    shop_of: Callable[..., Shop], mild_steel: Material, machine: str, fastest: float
) -> None:
    shop = shop_of(machine)
    found = windows(shop, materials=[mild_steel], diameters=SIZES)
    assert speed_lines(shop, found, mild_steel).fastest_spindle == fastest
