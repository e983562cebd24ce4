"""From tables of readings and measured values to the model's records."""

from collections.abc import Mapping, Sequence
from functools import partial

from chartgen.description.problems import ComplaintError, KeyPath, Problems
from chartgen.description.reading_tables import (
    MeasuredTable,
    ReadingKind,
    ReadingTable,
    amount_of,
)
from chartgen.description.tables import Table
from chartgen.model.blade import Blade
from chartgen.model.lathe import DrivePosition, Lathe
from chartgen.model.measured import Measured
from chartgen.model.readings import (
    DeflectionReading,
    DroopReading,
    KeyTorqueReading,
    KnownCut,
    ShopReading,
    StallReading,
    WattsReading,
)

# A value counts as measured while the file still says what was measured, to a hair.
_SAME = 1e-6


def readings_of(
    whole: Mapping[KeyPath, Table],
    *,
    blades: Sequence[Blade],
    positions: Sequence[DrivePosition],
    problems: Problems,
) -> tuple[ShopReading, ...]:
    """Return the readings among the tables of a file, the faults of the others noted."""
    records = [
        _reading_of(table, path, blades=blades, positions=positions, problems=problems)
        for path, table in whole.items()
        if isinstance(table, ReadingTable)
    ]
    return tuple(record for record in records if record is not None)


def _reading_of(
    table: ReadingTable,
    path: KeyPath,
    *,
    blades: Sequence[Blade],
    positions: Sequence[DrivePosition],
    problems: Problems,
) -> ShopReading | None:
    """Return a reading, or None with what does not fit the shop noted."""
    before = len(problems.found)
    if table.blade is not None:
        _refuse_strange(table.blade, [b.name for b in blades], (*path, "blade"), problems)
    if table.position is not None:
        names = {p.name for p in positions} | {p.name.rpartition(", ")[0] for p in positions}
        _refuse_strange(table.position, sorted(names - {""}), (*path, "position"), problems)
    if len(problems.found) > before:
        return None
    mend = "Compare it with what you noted at the lathe."
    return problems.attempt(path, partial(_record, table), keys=ReadingTable.keys, mend=mend)


def _refuse_strange(word: str, names: Sequence[str], path: KeyPath, problems: Problems) -> None:
    if word not in names:
        mend = f"Use one of: {', '.join(names)}; or take out a reading of what is no more."
        problems.add(path, f"{word[:60]!r} is not in the shop file.", mend)


def _record(table: ReadingTable) -> ShopReading:
    match table.kind:
        case ReadingKind.WATTS:
            return WattsReading(
                date=table.date,
                cut=_cut(table),
                idle_power=_there(table.idle_power),
                cut_power=_there(table.cut_power),
                meter_error=table.meter_error,
            )
        case ReadingKind.DROOP:
            return DroopReading(
                date=table.date,
                cut=_cut(table),
                idle_speed=_there(table.idle_speed),
                position=table.position or "",
                tachometer_error=table.tachometer_error,
            )
        case ReadingKind.STALL:
            return StallReading(date=table.date, cut=_cut(table), position=table.position or "")
        case ReadingKind.DEFLECTION:
            return DeflectionReading(
                date=table.date, pull=_there(table.pull), movement=_there(table.movement)
            )
        case ReadingKind.KEY_TORQUE:
            return KeyTorqueReading(date=table.date, torque=_there(table.torque))


def _cut(table: ReadingTable) -> KnownCut:
    if table.material is None or table.blade is None:
        raise ValueError("a cut has a material and a blade")
    return KnownCut(
        material=table.material,
        blade=table.blade,
        diameter=_there(table.diameter),
        speed=_there(table.speed),
        feed=_there(table.feed),
        feed_error=table.feed_error,
    )


def _there(value: float | None) -> float:
    """Return a value that the table of its kind requires."""
    if value is None:
        raise ValueError("a reading lacks a value that its kind requires")
    return value


def measured_of(
    tables: Sequence[MeasuredTable],
    *,
    lathe: Lathe,
    allowances: dict[str, float],
    problems: Problems,
) -> tuple[Measured, ...]:
    """Return the measured values that the file still holds; one changed by hand counts no more."""
    found: dict[str, Measured] = {}
    for index, table in enumerate(tables):
        path: KeyPath = ("measured", index)
        numbers = {}
        for name in ("value", "plus_minus"):
            try:
                numbers[name] = amount_of(getattr(table, name), table.key)
            except ComplaintError as complaint:
                problems.add((*path, name), complaint.problem, complaint.mend)
        if table.key.key in found:
            problems.add((*path, "key"), "is measured a second time.", "Keep one of the two.")
        if len(numbers) < len(("value", "plus_minus")):
            continue
        stated = table.key.stated(lathe, allowances)
        if stated is None or abs(stated / numbers["value"] - 1.0) > _SAME:
            continue
        found[table.key.key] = Measured(
            assumption=table.key,
            value=numbers["value"],
            plus_minus=numbers["plus_minus"],
            level=table.level,
            readings=table.readings,
            date=table.date,
        )
    return tuple(found.values())
