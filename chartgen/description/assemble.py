"""From tables to the shop, with the rules that hold between one table and another.

Each table is taken up by itself, so that a fault in one does not hide those in the rest.
"""

import math
from collections.abc import Mapping
from functools import partial
from typing import Any, TypeVar

from pydantic import ValidationError
from pydantic_core import PydanticCustomError

from chartgen.description.fields import LARGEST_NUMBER, nearest, quantity
from chartgen.description.known import Known
from chartgen.description.locate import KeyPath
from chartgen.description.machine import chuck_of, cross_slide_of, drive_of, motor_of
from chartgen.description.problems import Problems
from chartgen.description.schema import (
    BladeTable,
    ChuckTable,
    CrossSlideTable,
    DriveTable,
    MotorTable,
    PrintTable,
    ShopTable,
    Table,
)
from chartgen.model.blade import Blade
from chartgen.model.lathe import Lathe
from chartgen.model.shop import Feeding, PrintRequest, Shop
from chartgen.quantities import FRACTION, Unit

SomeTable = TypeVar("SomeTable", bound=Table)


def shop_of(raw: Mapping[str, Any], known: Known, problems: Problems) -> Shop | None:
    """Return the shop, or None with what its tables have wrong between them noted."""
    title = _sound(ShopTable, raw, ("shop",), known)
    slide = _sound(CrossSlideTable, raw, ("lathe", "cross_slide"), known)
    printing = _sound(PrintTable, raw, ("print",), known)
    lathe = _lathe(raw, known, problems)
    blades = _blades(raw, known, problems)
    allowances = _allowances(raw.get("allowances"), known, problems)

    if printing and slide and printing.feeding is Feeding.POWER and not slide.power_feeds:
        problems.add(
            ("print", "feeding"),
            "is 'power', but no power feeds are listed.",
            'Add power_feeds = ["0.03 mm/rev", "0.05 mm/rev"] under [lathe.cross_slide], '
            'or write feeding = "hand".',
        )
    if problems.found or title is None or printing is None or lathe is None:
        return None
    request = PrintRequest(
        materials=tuple(printing.materials),
        diameters=tuple(printing.diameters),
        layouts=tuple(printing.layouts),
        units=printing.units,
        feeding=printing.feeding,
    )
    make = partial(
        Shop,
        name=title.name,
        revision=title.revision,
        date=title.date,
        lathe=lathe,
        blades=blades,
        request=request,
        allowances=allowances,
    )
    return problems.attempt((), make, mend="Compare the file with the example.")


def _sound(
    kind: type[SomeTable], raw: Mapping[str, Any], path: KeyPath, known: Known
) -> SomeTable | None:
    """Return the table at `path`, or None if it has a fault, which is noted elsewhere."""
    try:
        return kind.model_validate(_at(raw, path), context=known)
    except ValidationError:
        return None


def _at(raw: Mapping[str, Any], path: KeyPath) -> object:
    """Return what the file has at `path`, or None."""
    value: Any = raw
    for part in path:
        if isinstance(part, int):
            value = value[part]  # the caller counted the items
        else:
            value = value.get(part) if isinstance(value, dict) else None
    return value


def _lathe(raw: Mapping[str, Any], known: Known, problems: Problems) -> Lathe | None:
    motor_table = _sound(MotorTable, raw, ("lathe", "motor"), known)
    drive_table = _sound(DriveTable, raw, ("lathe", "drive"), known)
    chuck = _sound(ChuckTable, raw, ("lathe", "chuck"), known)
    slide = _sound(CrossSlideTable, raw, ("lathe", "cross_slide"), known)

    positions: KeyPath = ("lathe", "drive", "position")
    _refuse_same_names(_at(raw, positions), positions, problems)
    motor = motor_of(motor_table, drive_table, problems) if motor_table else None
    drive = None
    if motor_table and drive_table:
        drive = drive_of(drive_table, motor_table, known, problems)
    if problems.found or not (motor and drive and chuck and slide):
        return None
    make = partial(
        Lathe,
        name=raw["lathe"]["name"].strip(),
        motor=motor,
        drive=drive,
        chuck=chuck_of(chuck),
        cross_slide=cross_slide_of(slide),
    )
    return problems.attempt(("lathe",), make, mend="Compare it with the example.")


def _blades(raw: Mapping[str, Any], known: Known, problems: Problems) -> tuple[Blade, ...]:
    tables = raw.get("blade")
    _refuse_same_names(tables, ("blade",), problems)
    blades = []
    for index in range(len(tables) if isinstance(tables, list) else 0):
        table = _sound(BladeTable, raw, ("blade", index), known)
        if table is not None:
            make = partial(
                Blade,
                name=table.name,
                tool_material=table.tool,
                edge=table.edge,
                edge_radius=table.edge_radius,
                worn=table.worn,
                insert_width=table.insert_width,
                thickness=table.thickness,
                height=table.height,
                projection=table.projection,
            )
            keys, mend = BladeTable.model_fields, "Measure both again."
            blade = problems.attempt(("blade", index), make, keys=keys, mend=mend)
            blades += [blade] if blade else []
    return tuple(blades)


def _refuse_same_names(tables: object, path: KeyPath, problems: Problems) -> None:
    """Note each name that an earlier table of the list has; the cards print these names."""
    seen: set[str] = set()
    for index, table in enumerate(tables if isinstance(tables, list) else ()):
        name = table.get("name") if isinstance(table, dict) else None
        if isinstance(name, str) and name.strip() in seen:
            problem = f"is '{name.strip()}' a second time."
            problems.add((*path, index, "name"), problem, "Give each its own name.")
        elif isinstance(name, str):
            seen.add(name.strip())


def _allowances(raw: object, known: Known, problems: Problems) -> dict[str, float]:
    values: dict[str, float] = {}
    for name, value in raw.items() if isinstance(raw, dict) else ():
        path = ("allowances", name)
        if name not in known.allowances:
            problems.add(path, "is not a known allowance.", nearest(name, list(known.allowances)))
            continue
        least, most, unit = known.allowances[name]
        try:
            values[name] = number = _allowance(value, unit)
        except PydanticCustomError as error:
            words = error.context or {}
            problems.add(path, words["problem"], words["mend"])
            continue
        if not least <= number <= most:
            label = "" if unit is FRACTION else f" {unit.name}"
            mend = f"Choose from {least:g}{label} to {most:g}{label}."
            problems.add(path, f"is {number:g}{label}, which is out of bounds.", mend)
    return values


def _allowance(value: object, unit: Unit) -> float:
    """Return an allowance; a ratio may be a plain number, as 1.2 for 120 %."""
    if unit is FRACTION and isinstance(value, int | float) and not isinstance(value, bool):
        # TOML's whole numbers have no largest; a float does.
        return float(value) if abs(value) <= LARGEST_NUMBER else math.inf
    return quantity(value, unit, above=None, least=None)
