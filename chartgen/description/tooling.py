"""From the tables of tools to the tools beside the blades."""

from collections.abc import Mapping
from functools import partial
from typing import TypeVar

from chartgen.description.problems import KeyPath, Problems
from chartgen.description.tables import Table
from chartgen.description.tool_tables import (
    BoringBarTable,
    DrillsTable,
    TailstockTable,
    TurningToolTable,
)
from chartgen.model.tooling import BoringBar, Drills, Tailstock, Tools, TurningTool

SomeTable = TypeVar("SomeTable", bound=Table)

# Common practice, no source: 4 diameters for a steel shank, up to 8 for one of carbide; far
# beyond, a bar only sings. A slip of the hand gives more.
LONGEST_IN_DIAMETERS = 16.0


def tools_of(whole: Mapping[KeyPath, Table], problems: Problems) -> Tools | None:
    """Return the tools, or None with everything noted that no tool can be."""
    before = len(problems.found)
    _refuse_same_names(whole, problems)
    turning = tuple(
        TurningTool(
            name=table.name,
            tool_material=table.tool,
            nose_radius=table.nose_radius,
            largest_depth=table.largest_depth,
        )
        for _, table in _each("turning_tool", TurningToolTable, whole)
    )
    bars = [
        _boring_bar(table, path, problems)
        for path, table in _each("boring_bar", BoringBarTable, whole)
    ]
    drills, tailstock = whole.get(("drills",)), whole.get(("tailstock",))
    if len(problems.found) > before:
        return None
    return Tools(
        turning=turning,
        boring=tuple(bar for bar in bars if bar),
        drills=_drills(drills) if isinstance(drills, DrillsTable) else None,
        tailstock=_tailstock(tailstock) if isinstance(tailstock, TailstockTable) else None,
    )


def _each(
    name: str, kind: type[SomeTable], whole: Mapping[KeyPath, Table]
) -> list[tuple[KeyPath, SomeTable]]:
    """Return the sound tables of a list, in the order of the file."""
    return [
        (path, table)
        for path, table in whole.items()
        if path[:1] == (name,) and isinstance(table, kind)
    ]


def _refuse_same_names(whole: Mapping[KeyPath, Table], problems: Problems) -> None:
    seen: set[str] = set()
    for path, table in whole.items():
        if not isinstance(table, TurningToolTable | BoringBarTable):
            continue
        if table.name in seen:
            problem = f"is '{table.name}' a second time."
            problems.add((*path, "name"), problem, "Give each tool its own name.")
        seen.add(table.name)


def _boring_bar(table: BoringBarTable, path: KeyPath, problems: Problems) -> BoringBar | None:
    # Rounded, so that a bar of exactly this length passes in inches too.
    if round(table.reach / table.diameter, 9) > LONGEST_IN_DIAMETERS:
        problems.add(
            (*path, "reach"),
            f"reach ({table.reach:g} mm) is over {LONGEST_IN_DIAMETERS:g} times diameter "
            f"({table.diameter:g} mm): a bar that long has no meaning.",
            "Check reach and diameter.",
        )
    make = partial(
        BoringBar,
        name=table.name,
        tool_material=table.tool,
        shank=table.shank,
        diameter=table.diameter,
        reach=table.reach,
        smallest_bore=table.smallest_bore,
        nose_radius=table.nose_radius,
    )
    mend = "Measure the shank, and the bore that shank and edge just enter together."
    return problems.attempt(path, make, keys=BoringBarTable.keys, mend=mend)


def _drills(table: DrillsTable) -> Drills:
    return Drills(diameters=table.diameters, point=table.point, centre_drill=table.centre_drill)


def _tailstock(table: TailstockTable) -> Tailstock:
    return Tailstock(
        travel_per_turn=table.travel_per_turn,
        largest_drill=table.largest_drill,
        live_centre=table.live_centre,
    )
