"""The invented lathes against an earlier trial of the same rules.

The values are a band and not expected values: another program on other invented plates gave
them, and its defaults were fitted to shop practice. A quarter of speed or feed either way says
that nothing has slipped; it proves nothing.
"""

from collections.abc import Callable

import pytest

from chartgen.limits.cut import Side, recommended
from chartgen.model.shop import Shop
from chartgen.reference.tables import load_material

ShopOf = Callable[..., Shop]
QUARTER = 0.25
# 0.030 is a quarter off 0.040, but not in binary fractions.
ROUNDING = 1e-12

BAND = [
    ("750 W inverter", "mild-steel", "2 coated", 12.0, 2420.0, 0.047),
    ("750 W inverter", "mild-steel", "2 coated", 25.0, 1270.0, 0.050),
    ("750 W inverter", "mild-steel", "2 coated", 40.0, 790.0, 0.041),
    ("750 W inverter", "mild-steel", "2 coated", 57.0, 560.0, 0.050),
    ("550 W belts", "mild-steel", "2 coated", 12.0, 1620.0, 0.050),
    ("550 W belts", "mild-steel", "2 coated", 25.0, 954.0, 0.050),
    ("550 W belts", "mild-steel", "2 coated", 57.0, 562.0, 0.046),
    ("2.2 kW geared", "mild-steel", "3 coated", 25.0, 1180.0, 0.060),
    ("2.2 kW geared", "mild-steel", "3 coated", 57.0, 503.0, 0.060),
    ("250 W brushed DC", "mild-steel", "1.6 HSS", 12.0, 660.0, 0.040),
    ("250 W brushed DC", "mild-steel", "1.6 HSS", 25.0, 320.0, 0.023),
    ("250 W brushed DC", "aluminium-6082", "2 polished", 25.0, 1250.0, 0.035),
]


@pytest.mark.parametrize(("lathe", "material", "blade", "diameter", "speed", "feed"), BAND)
def test_a_recommended_cut_lies_within_a_quarter_of_the_band(
    shop_of: ShopOf,
    lathe: str,
    material: str,
    blade: str,
    diameter: float,
    speed: float,
    feed: float,
) -> None:
    shop = shop_of(lathe)
    (tool,) = (b for b in shop.blades if b.name == blade)
    _, cut = recommended(shop, material=load_material(material), blade=tool, diameter=diameter)
    assert cut.side is Side.INSIDE
    assert cut.spindle_speed == pytest.approx(speed, rel=QUARTER)
    assert cut.feed == pytest.approx(feed, abs=QUARTER * feed + ROUNDING)


def test_a_small_lathe_parts_steel_with_2_mm_carbide_only_up_to_about_16_mm(
    shop_of: ShopOf,
) -> None:
    shop, steel = shop_of("250 W brushed DC"), load_material("mild-steel")
    (tool,) = (b for b in shop.blades if b.name == "2 coated")

    def parts(diameter: float) -> bool:
        _, cut = recommended(shop, material=steel, blade=tool, diameter=diameter)
        return cut.side is Side.INSIDE

    assert parts(16.0 * (1.0 - QUARTER))
    assert not parts(16.0 * (1.0 + QUARTER))
