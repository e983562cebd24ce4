"""What two shop files say otherwise: every fact of a shop under the key its owner wrote.

A shop is laid out flat, key by key, by walking its dataclasses; what differs between two
such lists is what changed. Blades and drive positions are matched by their names.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass
from enum import Enum
from functools import cache
from itertools import chain
from typing import Any, Final, NamedTuple, get_args, get_type_hints

from chartgen.model.blade import Blade
from chartgen.model.lathe import Carriage, Drive, DrivePosition
from chartgen.model.motor import Motor
from chartgen.model.readings import ShopReading
from chartgen.model.shop import PrintRequest, Shop
from chartgen.model.tooling import BoringBar, Drills, Tailstock, Tools, TurningTool
from chartgen.quantities import RevsPerMinute, Unit
from chartgen.reference.allowances import load_allowances


class Topic(Enum):
    """What a fact bears on."""

    ASSUMPTION = "assumption"
    PRINT = "print"
    LABEL = "label"


class Speeds(NamedTuple):
    """The speeds of a drive position, as one entry of the file gives them [rev/min]."""

    slowest: RevsPerMinute[float]
    fastest: RevsPerMinute[float]


class Fact(NamedTuple):
    """One thing a shop file says, or leaves out (None)."""

    value: object
    unit: Unit | None
    topic: Topic


@dataclass(frozen=True, slots=True, kw_only=True)
class DescribedChange:
    """One key and what stood there; a value is None where the file is silent.

    `is_new` and `is_gone`: the whole table is only in one of the files.
    """

    key: str
    before: object
    after: object
    unit: Unit | None
    topic: Topic
    is_new: bool = False
    is_gone: bool = False


# Where a field of the model is not called what the key in the file is called.
KEYS: Mapping[tuple[type, str], str] = {
    (Shop, "name"): "shop.name",
    (Shop, "revision"): "shop.revision",
    (Shop, "date"): "shop.date",
    (Shop, "blades"): "blade",
    (Shop, "request"): "print",
    # No table of the file holds all tools: they stand beside the blades.
    (Shop, "tools"): "",
    (Tools, "turning"): "turning_tool",
    (Tools, "boring"): "boring_bar",
    (Motor, "plate_power"): "power",
    (Drive, "positions"): "position",
    (DrivePosition, "slowest"): "speeds",
    (DrivePosition, "fastest"): "speeds",
    (Blade, "tool_material"): "tool",
    (TurningTool, "tool_material"): "tool",
    (BoringBar, "tool_material"): "tool",
}
# Tables of which a file has several, told apart by their names, and those it may leave out.
NAMED: Final = (Blade, DrivePosition, TurningTool, BoringBar)
LEFT_OUT: Final = (Carriage, Drills, Tailstock)
# A measured value is compared under its own key; the readings behind it are records, not claims.
# An owner's layout tells how a card looks; one that changed makes its cards stale by their code.
NOT_COMPARED = frozenset({(Shop, "measured"), (Shop, "readings"), (PrintRequest, "own_layouts")})
_LABELS = frozenset({"shop.name", "shop.revision", "shop.date", "lathe.name"})
_PRINTED = {"materials", "diameters", "layouts", "units", "language"}

Facts = dict[str, Fact]


def described_changes(before: Shop, after: Shop) -> tuple[DescribedChange, ...]:
    """Return every key that two shops fill otherwise, in the order of the file."""
    old_tables, new_tables = dict(tables_of(before)), dict(tables_of(after))
    return tuple(
        chain.from_iterable(
            _of_table(name, old_tables.get(name), new_tables.get(name))
            for name in dict.fromkeys((*old_tables, *new_tables))
        )
    )


def _of_table(
    name: str, old: tuple[object, Facts] | None, new: tuple[object, Facts] | None
) -> Iterator[DescribedChange]:
    if old is None or new is None:
        yield DescribedChange(
            key=name,
            before=old[0] if old else None,
            after=new[0] if new else None,
            unit=None,
            topic=Topic.ASSUMPTION,
            is_new=old is None,
            is_gone=new is None,
        )
        return
    for key, was in old[1].items():
        now = new[1][key]
        if was.value != now.value:
            yield DescribedChange(
                key=key, before=was.value, after=now.value, unit=was.unit, topic=was.topic
            )


def tables_of(shop: Shop) -> Iterator[tuple[str, tuple[object, Facts]]]:
    """Yield the shop by tables: its name, what it holds, its facts by key.

    All that stands once in every file is one table, named by nothing; each blade, drive
    position and tool is one, and so is each table that a file may leave out.
    """
    once: Facts = {}
    several: list[tuple[str, tuple[object, Facts]]] = []
    _walk(shop, "", once, several)
    for name, entry in load_allowances().items():
        value = shop.allowances.get(name, entry.value)
        once[f"allowances.{name}"] = Fact(value, entry.unit, Topic.ASSUMPTION)
    yield "", (shop, once)
    yield from several


def _walk(
    part: Any,  # noqa: ANN401 - any dataclass of the model
    prefix: str,
    facts: Facts,
    several: list[tuple[str, tuple[object, Facts]]],
) -> None:
    kind: type = type(part)
    for name, key, unit, table in _fields_of(kind):
        value = getattr(part, name)
        path = f"{prefix}{key}"
        if table in NAMED:
            for one in value:
                _walk_table(one, f'{path} "{one.name}"', several)
        elif table in LEFT_OUT:
            if value is not None:
                _walk_table(value, path, several)
        elif is_dataclass(value):
            _walk(value, f"{path}." if key else prefix, facts, several)
        elif path in facts:
            # Two fields under one key are the ends of a range.
            facts[path] = Fact(_range(facts[path].value, value), unit, facts[path].topic)
        elif not isinstance(value, dict):
            facts[path] = Fact(value, unit, _topic(part, path, name))


def _walk_table(part: object, path: str, several: list[tuple[str, tuple[object, Facts]]]) -> None:
    own: Facts = {}
    _walk(part, f"{path}.", own, several)
    several.append((path, (part, own)))


def _range(slowest: object, fastest: object) -> Speeds:
    if not isinstance(slowest, int | float) or not isinstance(fastest, int | float):
        raise TypeError("only two numbers can be the ends of a range")
    return Speeds(slowest, fastest)


def _topic(part: object, path: str, name: str) -> Topic:
    if path in _LABELS:
        return Topic.LABEL
    of_print = isinstance(part, PrintRequest) and name in _PRINTED
    of_sign = isinstance(part, DrivePosition) and name == "mark"
    return Topic.PRINT if of_print or of_sign else Topic.ASSUMPTION


@cache
def _fields_of(kind: type) -> tuple[tuple[str, str, Unit | None, type | None], ...]:
    """Return name, key, unit and kind of table of each field of a dataclass."""
    hints = get_type_hints(kind, localns={"ShopReading": ShopReading}, include_extras=True)
    return tuple(
        (
            field.name,
            KEYS.get((kind, field.name), field.name),
            _unit_in(hints[field.name]),
            _table_in(hints[field.name]),
        )
        for field in fields(kind)
        if (kind, field.name) not in NOT_COMPARED
    )


def _table_in(hint: object) -> type | None:
    """Return the table that an annotation names, itself or as an item or a choice."""
    named = (part for part in (hint, *get_args(hint)) if is_dataclass(part))
    return next((part for part in named if isinstance(part, type)), None)


def _unit_in(hint: object) -> Unit | None:
    """Return the unit that an annotation names anywhere inside it."""
    for part in (*getattr(hint, "__metadata__", ()), *get_args(hint)):
        found = part if isinstance(part, Unit) else _unit_in(part)
        if found is not None:
            return found
    return None
