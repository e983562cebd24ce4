"""The widest blade: no wider one of those tried has a window, and this one has."""

from dataclasses import replace

import numpy as np
import pytest

from chartgen.charts.widest_blade import WidestBlades, widest_blades
from chartgen.limits.run import windows
from chartgen.model.blade import ToolMaterial
from chartgen.model.material import Material
from chartgen.model.shop import Shop


@pytest.fixture
def chart(example: Shop, mild_steel: Material) -> WidestBlades:
    return widest_blades(example, mild_steel)


def test_a_width_on_the_curve_has_a_window_and_none_wider(
    chart: WidestBlades, example: Shop, mild_steel: Material
) -> None:
    """Tried again one by one, each as a blade of its own."""
    for kind in chart.kinds:
        template = kind.template
        for d in (0, 7, 13, 19):
            widest = float(kind.usable[d])
            tried = np.arange(max(widest, 1.0), chart.most + 0.01, chart.step)
            blades = [
                replace(
                    template,
                    name=f"{width:.2f}",
                    insert_width=float(width),
                    thickness=template.thickness * float(width) / template.insert_width,
                )
                for width in tried
            ]
            found = windows(
                example,
                materials=[mild_steel],
                blades=blades,
                diameters=[float(chart.diameters[d])],
            )
            expected = [widest > 0.0] + [False] * (len(blades) - 1)
            assert found.has_window[0, :, 0].tolist() == expected


def test_good_is_never_wider_than_usable(chart: WidestBlades) -> None:
    for kind in chart.kinds:
        assert np.all(kind.good <= kind.usable)
        assert kind.good.max() > 0.0


def test_a_kind_of_tool_is_shown_once_and_only_if_owned(
    example: Shop, mild_steel: Material
) -> None:
    kinds = [k.template.tool_material for k in widest_blades(example, mild_steel).kinds]
    assert sorted(kind.value for kind in kinds) == ["carbide", "hss"]
    carbide = tuple(b for b in example.blades if b.tool_material is ToolMaterial.CARBIDE)
    alone = widest_blades(replace(example, blades=carbide), mild_steel)
    assert [k.template.tool_material for k in alone.kinds] == [ToolMaterial.CARBIDE]


def test_a_weak_motor_parts_no_wide_blade_well(example: Shop, mild_steel: Material) -> None:
    """A lathe of 100 W has no good carbide blade at all for bars over 20 mm, one of 750 W has."""
    motor = replace(example.lathe.motor, plate_power=100.0)
    weak = replace(example, lathe=replace(example.lathe, motor=motor))
    before, after = widest_blades(example, mild_steel), widest_blades(weak, mild_steel)
    carbide = [k.template.tool_material for k in before.kinds].index(ToolMaterial.CARBIDE)
    thick = before.diameters > 20.0
    assert before.kinds[carbide].good[thick].max() > 2.0
    assert after.kinds[carbide].good[thick].max() == 0.0


def test_a_low_blade_is_never_made_thicker_than_high(example: Shop, mild_steel: Material) -> None:
    low = replace(example.blades[0], height=2.0, thickness=1.6)
    chart = widest_blades(replace(example, blades=(low,)), mild_steel)
    assert chart.kinds[0].template == low
