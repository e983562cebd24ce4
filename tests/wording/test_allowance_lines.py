"""The allowances shown with a cell are those that bear on it: all of them, and no other."""

import math
from collections.abc import Callable, Iterator
from dataclasses import fields, replace
from typing import Any

import numpy as np
import pytest

from chartgen.limits.cut import Cut, recommended
from chartgen.limits.cut_force import Force
from chartgen.limits.dig_in import DigIn
from chartgen.limits.window import Windows
from chartgen.model.lathe import ChuckKind
from chartgen.model.shop import Shop
from chartgen.reference.allowances import load_allowances
from chartgen.reference.tables import load_material
from chartgen.wording.allowances import allowance_lines

ShopOf = Callable[..., Shop]
UNMARKED = {'marked_speed = "4000 rpm"\n': ""}
BY_POWER = {"[print]": '[print]\nfeeding = "power"'}
INPUT = {'power_is = "shaft"': 'power_is = "input"'}
CASES = {
    "inverter, carbide in steel": ("750 W inverter", {}, "mild-steel", 0),
    "inverter of input power, unmarked chuck": ("750 W inverter", UNMARKED | INPUT, "c45", 0),
    "brushed motor, HSS in stainless": ("250 W brushed DC", {}, "stainless-304", 2),
    "brushed motor of input power": ("250 W brushed DC", INPUT, "mild-steel", 2),
    "belts, polished in aluminium": ("550 W belts", {}, "aluminium-6082", 3),
    "gears by power, carbide in brass": ("2.2 kW geared", BY_POWER, "free-cutting-brass", 0),
    "brushless, polished in a plastic": ("1.1 kW brushless", UNMARKED, "nylon", 3),
    "brushless, HSS in a plastic": ("1.1 kW brushless", {}, "nylon", 2),
    "measured, carbide in titanium": ("measured", {}, "titanium-pure", 0),
}


def cell(shop: Shop, material: str, blade: int, diameter: float) -> tuple[Windows, Cut]:
    return recommended(
        shop, material=load_material(material), blade=shop.blades[blade], diameter=diameter
    )


def shown(shop: Shop, material: str, blade: int, diameter: float = 20.0) -> list[str]:
    _, cut = cell(shop, material, blade, diameter)
    return [line.split(" = ")[0] for line in allowance_lines(shop, cut)]


def at_cell(record: Windows | DigIn, blade: int) -> Iterator[float]:
    """Yield what the arrays of a record hold for the one cell."""
    for field in fields(record):
        value = getattr(record, field.name)
        if isinstance(value, np.ndarray):
            yield float(value[0, blade, 0])


def all_numbers(found: Windows, cut: Cut, blade: int) -> Iterator[float]:
    """Yield every number of one cell, for comparison."""
    yield from at_cell(found, blade)
    # Without a force nothing is told of a dig-in, whatever stands in its arrays.
    if cut.force is not None:
        yield from at_cell(found.dig_in, blade)
    for field in fields(Cut):
        value = getattr(cut, field.name)
        if isinstance(value, bool | float):
            yield float(value)
    if cut.force is not None:
        for field in fields(Force):
            yield float(getattr(cut.force, field.name) or 0.0)
    for limit in (*cut.floors, *cut.ceilings):
        yield limit.feed
    for cap in cut.speed_limits:
        yield cap.speed


def differs(first: list[float], second: list[float]) -> bool:
    return any(
        not (a == b or (math.isnan(a) and math.isnan(b)) or math.isclose(a, b, rel_tol=1e-9))
        for a, b in zip(first, second, strict=True)
    )


def moves(shop: Shop, name: str, material: str, blade: int) -> bool:
    """Whether an allowance, anywhere in its bounds, changes a number of the blade's cells."""
    entry = load_allowances()[name]
    for diameter in (8.0, 20.0, 40.0):
        before = list(all_numbers(*cell(shop, material, blade, diameter), blade))
        for value in (entry.least, entry.most):
            changed = replace(shop, allowances={**shop.allowances, name: value})
            after = list(all_numbers(*cell(changed, material, blade, diameter), blade))
            if differs(before, after):
                return True
    return False


# What only another blade's window turns on (the way out) is left out by keeping one blade.
@pytest.mark.parametrize("case", CASES)
def test_an_allowance_that_is_not_shown_changes_nothing(shop_of: ShopOf, case: str) -> None:
    lathe, exchange, material, blade = CASES[case]
    shop = shop_of(lathe, exchange)
    alone = replace(shop, blades=(shop.blades[blade],))
    hidden = set(load_allowances()) - set(shown(alone, material, 0))
    assert [name for name in sorted(hidden) if moves(alone, name, material, 0)] == []


# Of a chuck's grip the larger of share and light pull stands: on a small chuck the share moves no
# number, on a large one the pull does not. Half the backlash only sets a sign beside a cell.
# `worn_edge_force` is a printed what-if and `centre_height` a tolerance to set up by;
# thresholds may lie out of these cells' reach, and a dig-in is told only where there is a window.
THRESHOLDS = {
    "worn_edge_force",
    "centre_height",
    "grip_share",
    "key_pull",
    "backlash_share",
    "room_by_hand",
    "grip_tight",
    "blade_yield_carrier",
    "blade_yield_hss",
    "edge_overload",
    "stopping_turns",
    "rotor_inertia",
    "feed_give",
    "tight_feed",
    "poor_speed",
    "speed_over_start",
    "handle_turns_least",
    "handle_turns_most",
    "chuck_rim_speed",
    "reach_clearance",
    "thin_chip",
    "one_cut_minutes",
    "pull_out_share",
    "dc_no_load",
    "depth_over_width",
}


@pytest.mark.parametrize("case", CASES)
def test_an_allowance_that_is_shown_bears_on_a_number(shop_of: ShopOf, case: str) -> None:
    lathe, exchange, material, blade = CASES[case]
    shop = shop_of(lathe, exchange)
    alone = replace(shop, blades=(shop.blades[blade],))
    named = [name for name in shown(alone, material, 0) if name not in THRESHOLDS]
    assert [name for name in named if not moves(alone, name, material, 0)] == []


def with_chuck(shop: Shop, **changes: object) -> Shop:
    chuck = replace(shop.lathe.chuck, **changes)  # type: ignore[arg-type]
    return replace(shop, lathe=replace(shop.lathe, chuck=chuck))


# A body as frail as this, a collet, a slow spindle: the cells that those thresholds are for.
@pytest.mark.parametrize(
    ("name", "blade", "changes", "chuck"),
    [
        ("blade_yield_hss", 2, {"thickness": 0.8, "height": 6.0}, {}),
        ("blade_yield_carrier", 0, {"thickness": 0.8, "height": 10.0, "projection": 22.0}, {}),
        ("edge_overload", 0, {}, {"kind": ChuckKind.COLLET}),
        ("stopping_turns", 0, {}, {}),
        ("rotor_inertia", 0, {}, {}),
        ("grip_tight", 2, {}, {}),
        ("room_by_hand", 1, {}, {}),
        ("grip_share", 2, {}, {"size": 400.0}),
        ("grip_share", 2, {}, {}),
        ("key_pull", 2, {}, {"size": 80.0}),
        ("key_pull", 2, {}, {"size": 50.0}),
    ],
)
def test_a_threshold_of_holding_bears_on_a_cell_within_its_reach(
    example: Shop, name: str, blade: int, changes: dict[str, float], chuck: dict[str, object]
) -> None:
    frail = replace(example.blades[blade], **changes)  # type: ignore[arg-type]
    shop = replace(with_chuck(example, **chuck), blades=(frail,))
    assert name in shown(shop, "mild-steel", 0)
    assert moves(shop, name, "mild-steel", 0) or moves(shop, name, "c45", 0)


@pytest.mark.parametrize(
    ("chuck", "work", "gone"),
    [
        ({"key_torque": 40.0}, {}, {"grip_share", "key_pull"}),
        (
            {"kind": ChuckKind.COLLET},
            {},
            {"grip_share", "key_pull", "grip_safety", "cut_safety", "grip_tight"},
        ),
        ({}, {"jaw_distance": 8.0}, {"jaw_distance"}),
    ],
)
def test_what_is_known_of_chuck_and_bar_silences_its_allowance(
    example: Shop, chuck: dict[str, object], work: dict[str, Any], gone: set[str]
) -> None:
    known = replace(with_chuck(example, **chuck), work=replace(example.work, **work))
    assumed = set(shown(example, "mild-steel", 0))
    assert assumed - set(shown(known, "mild-steel", 0)) == gone
    hidden = set(load_allowances()) - set(shown(known, "mild-steel", 0))
    alone = replace(known, blades=known.blades[:1])
    assert [name for name in sorted(hidden) if moves(alone, name, "mild-steel", 0)] == []


def test_bar_behind_the_spindle_shows_its_share_of_the_critical_speed(example: Shop) -> None:
    behind = replace(example, work=replace(example.work, bar_behind=500.0))
    assert set(shown(behind, "mild-steel", 0)) - set(shown(example, "mild-steel", 0)) == {
        "whip_share"
    }
    assert moves(behind, "whip_share", "mild-steel", 0)


def test_a_blade_shows_the_stresses_of_its_own_kind(example: Shop) -> None:
    def stresses(blade: int) -> list[str]:
        names = shown(example, "mild-steel", blade)
        return [n for n in names if n.startswith(("blade_stress", "blade_yield"))]

    assert stresses(0) == ["blade_stress_carrier", "blade_yield_carrier"]
    assert stresses(2) == ["blade_stress_hss", "blade_yield_hss"]
