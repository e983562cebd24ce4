"""What two shop files say otherwise: every fact under a key that a shop file may have."""

from collections.abc import Callable, Iterator
from dataclasses import fields, is_dataclass, replace
from typing import get_args, get_type_hints

import pytest

from chartgen.charts.described import (
    KEYS,
    NOT_COMPARED,
    DescribedChange,
    Speeds,
    Topic,
    described_changes,
    tables_of,
)
from chartgen.description.schema import ShopFile
from chartgen.description.tables import Table, table_read_by
from chartgen.model.lathe import Reading
from chartgen.model.readings import ShopReading
from chartgen.model.shop import Shop
from chartgen.model.tooling import Tools
from chartgen.quantities import MM, RPM, WATT

ShopOf = Callable[..., Shop]


def keys_of(table: type[Table], prefix: str = "") -> Iterator[str]:
    """Yield every key that a shop file may hold, as a path."""
    for name, key in table.keys.items():
        inner = table_read_by(key.read)
        if inner is None:
            yield f"{prefix}{name}"
        else:
            yield from keys_of(inner, f"{prefix}{name}.")


def fields_of(kind: type, prefix: str = "") -> Iterator[str]:
    """Yield every field of the model that holds a value, under the name of its key."""
    for field in fields(kind):
        if (kind, field.name) in NOT_COMPARED:
            continue
        hint = get_type_hints(kind, localns={"ShopReading": ShopReading})[field.name]
        key = KEYS.get((kind, field.name), field.name)
        path = f"{prefix}{key}"
        inner = [part for part in (hint, *get_args(hint)) if is_dataclass(part)]
        if inner and inner[0] is not Reading:
            assert isinstance(inner[0], type)
            yield from fields_of(inner[0], f"{path}." if key else prefix)
        else:
            yield path


FIELDS = list(fields_of(Shop))


@pytest.mark.parametrize("path", FIELDS)
def test_every_field_of_the_model_is_told_under_a_key_of_the_shop_file(path: str) -> None:
    assert path in set(keys_of(ShopFile))


def test_every_key_of_the_shop_file_is_compared() -> None:
    # Readings and what came of them are compared by the values they gave.
    keys = {k for k in keys_of(ShopFile) if not k.startswith(("reading.", "measured."))}
    assert keys <= set(FIELDS)


def change(before: Shop, after: Shop) -> DescribedChange:
    (found,) = described_changes(before, after)
    return found


def test_a_shop_compared_with_itself_says_nothing_otherwise(example: Shop) -> None:
    assert described_changes(example, example) == ()


def test_a_number_is_told_with_its_key_and_unit(shop_of: ShopOf) -> None:
    before = shop_of("550 W belts")
    after = shop_of("550 W belts", {'power = "550 W"': 'power = "600 W"'})
    found = change(before, after)
    assert (found.key, found.before, found.after) == ("lathe.motor.power", 550.0, 600.0)
    assert found.unit == WATT
    assert found.topic is Topic.ASSUMPTION


def test_both_ends_of_a_range_are_one_key(shop_of: ShopOf) -> None:
    before = shop_of("750 W inverter")
    after = shop_of("750 W inverter", {"60..1000 rpm": "80..1000 rpm"})
    found = change(before, after)
    assert found.key == 'lathe.drive.position "low".speeds'
    assert (found.before, found.after) == (Speeds(60.0, 1000.0), Speeds(80.0, 1000.0))
    assert found.unit == RPM


def test_a_blade_of_one_shop_alone_is_one_change_and_names_it(example: Shop) -> None:
    fewer = replace(example, blades=example.blades[1:])
    lost, won = change(example, fewer), change(fewer, example)
    assert lost.key == won.key == 'blade "2.0 carbide"'
    assert (lost.is_gone, lost.is_new, won.is_gone, won.is_new) == (True, False, False, True)
    assert lost.before == won.after == example.blades[0]


def test_blades_are_matched_by_name_and_not_by_place(example: Shop) -> None:
    turned = replace(example, blades=example.blades[::-1])
    assert described_changes(example, turned) == ()


def tools_with(shop: Shop, **tools: object) -> Shop:
    return replace(shop, tools=replace(shop.tools, **tools))  # type: ignore[arg-type]


def test_tools_are_told_under_the_keys_of_their_own_tables(example: Shop) -> None:
    first, *rest = example.tools.turning
    dulled = tools_with(example, turning=(replace(first, nose_radius=0.8), *rest))
    found = change(example, dulled)
    assert (found.key, found.before, found.after) == (
        'turning_tool "0.4 carbide".nose_radius',
        0.4,
        0.8,
    )
    assert found.unit == MM

    fewer = tools_with(example, boring=example.tools.boring[1:])
    lost = change(example, fewer)
    assert (lost.key, lost.is_gone, lost.before) == (
        'boring_bar "8 mm bar"',
        True,
        example.tools.boring[0],
    )


@pytest.mark.parametrize("key", ["drills", "tailstock"])
def test_a_table_that_one_file_leaves_out_is_one_change(example: Shop, key: str) -> None:
    table = getattr(example.tools, key)
    without = tools_with(example, **{key: None})
    lost, won = change(example, without), change(without, example)
    assert lost.key == won.key == key
    assert (lost.is_gone, lost.before, won.is_new, won.after) == (True, table, True, table)


def test_the_carriage_is_told_by_its_keys_and_as_a_whole(example: Shop) -> None:
    carriage = example.lathe.carriage
    assert carriage is not None
    coarser = replace(carriage, travel_per_turn=20.0)
    after = replace(example, lathe=replace(example.lathe, carriage=coarser))
    found = change(example, after)
    assert (found.key, found.before, found.after) == (
        "lathe.carriage.travel_per_turn",
        18.0,
        20.0,
    )
    without = replace(example, lathe=replace(example.lathe, carriage=None))
    assert change(example, without).key == "lathe.carriage"


def test_a_shop_without_any_tool_is_compared_with_one_that_has_them(example: Shop) -> None:
    found = described_changes(replace(example, tools=Tools()), example)
    assert [one.key for one in found] == [
        'turning_tool "0.4 carbide"',
        'turning_tool "HSS knife"',
        'boring_bar "8 mm bar"',
        'boring_bar "12 mm bar"',
        "drills",
        "tailstock",
    ]
    assert all(one.is_new for one in found)


def test_an_allowance_set_in_the_file_is_told_against_the_default(example: Shop) -> None:
    after = replace(example, allowances={"confined_chip": 1.2})
    found = change(example, after)
    assert (found.key, found.before, found.after) == ("allowances.confined_chip", 1.3, 1.2)


def test_an_allowance_set_to_its_default_changes_nothing(example: Shop) -> None:
    assert described_changes(example, replace(example, allowances={"confined_chip": 1.3})) == ()


@pytest.mark.parametrize(
    ("field", "value", "topic"),
    [
        ("name", "Another", Topic.LABEL),
        ("revision", "B", Topic.LABEL),
        ("date", "2027-01-01", Topic.LABEL),
    ],
)
def test_name_revision_and_date_are_no_assumptions(
    example: Shop, field: str, value: str, topic: Topic
) -> None:
    found = change(example, replace(example, **{field: value}))  # type: ignore[arg-type]
    assert (found.key, found.topic) == (f"shop.{field}", topic)


def test_what_is_printed_is_no_assumption_but_how_the_slide_is_fed_is(example: Shop) -> None:
    topics = {
        key: fact.topic for _, (_, facts) in tables_of(example) for key, fact in facts.items()
    }
    printed = {key for key, topic in topics.items() if topic is Topic.PRINT}
    assert {key for key in printed if key.startswith("print.")} == {
        "print.materials",
        "print.diameters",
        "print.language",
        "print.layouts",
        "print.units",
    }
    assert topics["print.feeding"] is Topic.ASSUMPTION
