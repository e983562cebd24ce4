"""From tables to the shop, with the rules that hold between one table and another.

Each table is taken up by itself, so that a fault in one does not hide those in the rest.
"""

from collections.abc import Mapping
from functools import partial
from typing import TYPE_CHECKING, Any, TypeVar

from chartgen.description.blade_and_bar import blade_of, work_of
from chartgen.description.known import Known
from chartgen.description.machine import carriage_of, chuck_of, cross_slide_of, drive_of, motor_of
from chartgen.description.problems import KeyPath, Problems
from chartgen.description.schema import (
    BladeTable,
    CrossSlideTable,
    DriveTable,
    LatheTable,
    MotorTable,
    PrintTable,
    ShopFile,
)
from chartgen.description.tables import Place, Table, TableOf, read_at
from chartgen.description.tooling import tools_of
from chartgen.model.blade import Blade
from chartgen.model.lathe import Lathe
from chartgen.model.shop import Feeding, PrintRequest, Shop

if TYPE_CHECKING:
    from chartgen.model.measured import Measured
    from chartgen.model.readings import ShopReading

SomeTable = TypeVar("SomeTable", bound=Table)


def shop_of(raw: Mapping[str, Any], known: Known, problems: Problems) -> Shop | None:
    """Return the shop, or None with everything that the file has wrong noted."""
    whole: dict[KeyPath, Table] = {}
    file = read_at(Place((), known, problems, whole), TableOf(ShopFile), raw)
    # The file may override what the gearing of a brushed motor is worked out from.
    overridden = (file.allowances or {}).get("dc_no_load") if file else None
    known = known if overridden is None else known._replace(dc_no_load=overridden)
    lathe = _lathe(raw, whole, known, problems)
    blades = _blades(raw, whole, problems)
    tools = tools_of(whole, problems)
    slide = _sound(CrossSlideTable, whole, ("lathe", "cross_slide"))
    printing = _sound(PrintTable, whole, ("print",))

    if printing and slide and printing.feeding is Feeding.POWER and not slide.power_feeds:
        problems.add(
            ("print", "feeding"),
            "is 'power', but no power feeds are listed.",
            'Add power_feeds = ["0.03 mm/rev", "0.05 mm/rev"] under [lathe.cross_slide], '
            'or write feeding = "hand".',
        )
    if problems.found or file is None or lathe is None or tools is None:
        return None
    allowances = file.allowances or {}
    readings: tuple[ShopReading, ...] = ()
    measured: tuple[Measured, ...] = ()
    if file.reading or file.measured:
        # Most shop files hold neither, and need none of it.
        from chartgen.description.readings import measured_of, readings_of

        readings = readings_of(
            whole, blades=blades, positions=lathe.drive.positions, problems=problems
        )
        measured = measured_of(file.measured, lathe=lathe, allowances=allowances, problems=problems)
    if problems.found:
        return None
    request = PrintRequest(
        materials=file.print.materials,
        diameters=file.print.diameters,
        layouts=file.print.layouts,
        units=file.print.units,
        feeding=file.print.feeding,
        language=file.print.language,
    )
    make = partial(
        Shop,
        name=file.shop.name,
        revision=file.shop.revision,
        date=file.shop.date,
        lathe=lathe,
        blades=blades,
        work=work_of(file.work),
        tools=tools,
        request=request,
        allowances=allowances,
        measured=measured,
        readings=readings,
    )
    return problems.attempt((), make, mend="Compare the file with the example.")


def _sound(
    kind: type[SomeTable], whole: Mapping[KeyPath, Table], path: KeyPath
) -> SomeTable | None:
    """Return the table at `path`, or None if it has a fault, which is noted already."""
    table = whole.get(path)
    return table if isinstance(table, kind) else None


def _lathe(
    raw: Mapping[str, Any], whole: Mapping[KeyPath, Table], known: Known, problems: Problems
) -> Lathe | None:
    motor_table = _sound(MotorTable, whole, ("lathe", "motor"))
    drive_table = _sound(DriveTable, whole, ("lathe", "drive"))
    lathe_table = _sound(LatheTable, whole, ("lathe",))

    positions: KeyPath = ("lathe", "drive", "position")
    _refuse_same_names(_at(raw, positions), positions, problems)
    motor = motor_of(motor_table, drive_table, problems) if motor_table else None
    drive = None
    if motor_table and drive_table:
        drive = drive_of(drive_table, motor_table, known, problems)
    if not (lathe_table and motor and drive):
        return None
    along = lathe_table.carriage
    make = partial(
        Lathe,
        name=lathe_table.name,
        motor=motor,
        drive=drive,
        chuck=chuck_of(lathe_table.chuck),
        cross_slide=cross_slide_of(lathe_table.cross_slide),
        tool_stiffness=lathe_table.tool_stiffness,
        swing=lathe_table.swing,
        spindle_bore=lathe_table.spindle_bore,
        carriage=None if along is None else carriage_of(along),
    )
    return problems.attempt(("lathe",), make, mend="Compare it with the example.")


def _at(raw: Mapping[str, Any], path: KeyPath) -> object:
    """Return what the file has at `path`, or None."""
    value: Any = raw
    for part in path:
        value = value.get(part) if isinstance(value, dict) else None
    return value


def _blades(
    raw: Mapping[str, Any], whole: Mapping[KeyPath, Table], problems: Problems
) -> tuple[Blade, ...]:
    tables = raw.get("blade")
    _refuse_same_names(tables, ("blade",), problems)
    blades = []
    for index in range(len(tables) if isinstance(tables, list) else 0):
        table = _sound(BladeTable, whole, ("blade", index))
        if table is not None:
            blade = blade_of(table, ("blade", index), problems)
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
