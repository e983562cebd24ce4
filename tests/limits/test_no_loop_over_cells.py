"""The choice works on whole arrays: a larger grid costs no more calls, only larger arrays."""

import sys
from collections import Counter
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from types import FrameType

import pytest

import chartgen
from chartgen.limits.case import Case
from chartgen.limits.choice import choose
from chartgen.limits.force import feed_for_high_force
from chartgen.limits.run import make_case
from chartgen.model.shop import LengthUnits, Shop
from chartgen.reference.tables import load_material, material_keys

ShopOf = Callable[..., Shop]
PACKAGE = str(Path(chartgen.__file__).parent)
# A best trial without a settable feed is struck out and the next one taken: that goes by rounds
# of the whole grid, as many as the worst cell needs.
ROUNDS = {"rounded_feed", "_up", "_down"}


def case_of(shop: Shop, materials: int, widths: int, diameters: int) -> Case:
    blade = shop.blades[0]
    blades = [
        replace(blade, name=f"{number}", insert_width=width, thickness=0.8 * width)
        for number, width in enumerate((1.6, 2.0, 2.5, 3.0, 4.0, 5.0)[:widths])
    ]
    return make_case(
        shop,
        materials=[load_material(key) for key in material_keys()[:materials]],
        blades=blades,
        diameters=[8.0 + 2.0 * number for number in range(diameters)],
    )


def calls(case: Case) -> Counter[str]:
    """Count the calls of the package's own functions while the windows are chosen."""
    counted: Counter[str] = Counter()

    def note(frame: FrameType, event: str, _argument: object) -> None:
        code = frame.f_code
        if event == "call" and code.co_filename.startswith(PACKAGE):
            counted[code.co_qualname] += 1

    sys.setprofile(note)
    try:
        choose(case, LengthUnits.METRIC)
    finally:
        sys.setprofile(None)
    return counted


@pytest.mark.parametrize("lathe", ["550 W belts", "750 W inverter"])
@pytest.mark.parametrize("feeding", ["hand", "power"])
def test_a_larger_grid_takes_no_more_calls_of_any_function(
    shop_of: ShopOf, lathe: str, feeding: str
) -> None:
    shop = shop_of(lathe, {"[print]": f'[print]\nfeeding = "{feeding}"'})
    small, large = calls(case_of(shop, 2, 2, 2)), calls(case_of(shop, 6, 6, 20))
    assert {name: n for name, n in small.items() if name not in ROUNDS} == {
        name: n for name, n in large.items() if name not in ROUNDS
    }
    assert small.total() > 40
    assert large["rounded_feed"] <= 12


def test_the_power_law_is_turned_round_once_for_each_set_of_parts_and_not_for_each_cell(
    shop_of: ShopOf, monkeypatch: pytest.MonkeyPatch
) -> None:
    sizes: list[int] = []

    def counting(*arguments: object) -> object:
        feed = feed_for_high_force(*arguments)  # type: ignore[arg-type]
        sizes.append(feed.size)
        return feed

    monkeypatch.setattr("chartgen.limits.regimes.feed_for_high_force", counting)
    counts = []
    for grid in ((2, 2, 2), (6, 6, 20)):
        sizes.clear()
        choose(case_of(shop_of("550 W belts"), *grid), LengthUnits.METRIC)
        counts.append(len(sizes))
    # What holds the blade and the work; the drive in one cut; the drive for ever.
    assert counts == [3, 3]
