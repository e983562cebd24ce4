"""What two shop files say otherwise, as words: the owner's key, before, after."""

from collections.abc import Callable, Iterable, Iterator
from enum import Enum
from typing import Final

from chartgen.charts.described import DescribedChange, Speeds, Topic, described_changes
from chartgen.charts.spindle_torque import SpindleTorque, shaft_power, spindle_torques
from chartgen.model.blade import Blade
from chartgen.model.lathe import Carriage, DrivePosition, Reading
from chartgen.model.shop import LengthUnits, Shop
from chartgen.model.tooling import BoringBar, Drills, Tailstock, TurningTool
from chartgen.quantities import FRACTION, MM, MM_REV, RPM, TURNS_MIN, Unit
from chartgen.wording.blade_letters import blade_letter
from chartgen.wording.language import decimal, tr
from chartgen.wording.numbers import (
    feed_label,
    length_label,
    write_feed,
    write_length,
    write_speed,
)
from chartgen.wording.printed_change import FactGroup, PrintedFact

ABSENT: Final = "–"
_DIGITS = 5
_ALL_DIGITS = 12


def fact_groups(before: Shop, after: Shop) -> tuple[FactGroup, ...]:
    """Return all that the files say otherwise, the assumptions first, and what that makes."""
    changes = described_changes(before, after)
    units = after.request.units
    written: dict[Topic, list[PrintedFact]] = {topic: [] for topic in Topic}
    for change in changes:
        written[change.topic].append(_printed(change, units))
    written[Topic.PRINT] += _letters(before, after)
    groups = [
        FactGroup(title=tr("Assumptions that changed"), facts=tuple(written[Topic.ASSUMPTION])),
        FactGroup(
            title=tr("At the spindle: N·m continuous / one cut / stall, W in one cut"),
            facts=tuple(_spindle_facts(before, after)),
        ),
        FactGroup(title=tr("What is printed"), facts=tuple(written[Topic.PRINT])),
        FactGroup(title=tr("Name, revision, date"), facts=tuple(written[Topic.LABEL])),
    ]
    return tuple(group for group in groups if group.facts)


def _printed(change: DescribedChange, units: LengthUnits) -> PrintedFact:
    before, after = change.before, change.after
    if change.is_new or change.is_gone:
        return PrintedFact(
            name=change.key,
            before=ABSENT if change.is_new else _whole(before, units),
            after=ABSENT if change.is_gone else _whole(after, units),
        )

    def write(value: object, digits: int) -> str:
        return _value(value, change.key, change.unit, units, digits)

    if isinstance(before, tuple) and isinstance(after, tuple) and change.topic is Topic.PRINT:
        return _lists(change.key, before, after, lambda value: write(value, _DIGITS))
    words = [write(value, _DIGITS) for value in (before, after)]
    if words[0] == words[1]:
        words = [write(value, _ALL_DIGITS) for value in (before, after)]
    return PrintedFact(name=change.key, before=words[0], after=words[1])


def _lists(
    key: str, before: tuple[object, ...], after: tuple[object, ...], write: Callable[[object], str]
) -> PrintedFact:
    """Return what only one of two lists holds; a long list in full would hide it."""
    lost = tuple(item for item in before if item not in after)
    won = tuple(item for item in after if item not in before)
    if not lost and not won:
        return PrintedFact(name=key, before=tr("one order"), after=tr("another order"))
    return PrintedFact(
        name=key,
        before=tr("only before: {items}", items=write(lost)) if lost else ABSENT,
        after=tr("only now: {items}", items=write(won)) if won else ABSENT,
    )


def _letters(before: Shop, after: Shop) -> Iterator[PrintedFact]:
    """Yield the blades that cards name by another letter than before."""
    old_names = {blade.name for blade in before.blades}
    for blade in after.blades:
        if blade.name not in old_names:
            continue
        letters = blade_letter(before, blade.name), blade_letter(after, blade.name)
        if letters[0] != letters[1]:
            yield PrintedFact(
                name=tr('letter of blade "{blade}"', blade=blade.name),
                before=letters[0],
                after=letters[1],
            )


def _spindle_facts(before: Shop, after: Shop) -> Iterator[PrintedFact]:
    old, new = ({s.position.name: s for s in spindle_torques(shop)} for shop in (before, after))
    powers = [f"{shaft_power(shop):.0f} W" for shop in (before, after)]
    if powers[0] != powers[1]:
        yield PrintedFact(name=tr("power at the shaft"), before=powers[0], after=powers[1])
    for name in {**old, **new}:
        fact = _spindle_fact(name, old.get(name), new.get(name))
        if fact.before != fact.after:
            yield fact


def _spindle_fact(name: str, old: SpindleTorque | None, new: SpindleTorque | None) -> PrintedFact:
    """Return a position's torques; a speed that both share stands in the name, once."""
    speeds = list(dict.fromkeys(write_speed(one.speed) for one in (old, new) if one))
    if len(speeds) == 1:
        at = tr("{position}, {speed} rev/min", position=name, speed=speeds[0])
        # A position with a speed in its name need not tell it twice.
        shown = name if name.endswith(f"{speeds[0]} rpm") else at
        return PrintedFact(name=shown, before=_torques(old), after=_torques(new))
    before, after = (
        tr("{torques} at {speed} rev/min", torques=_torques(one), speed=write_speed(one.speed))
        if one
        else ABSENT
        for one in (old, new)
    )
    return PrintedFact(name=name, before=before, after=after)


def _torques(spindle: SpindleTorque | None) -> str:
    if spindle is None:
        return ABSENT
    torques = (spindle.continuous, spindle.one_cut, spindle.stall)
    numbers = " / ".join(decimal(f"{torque:.1f}") for torque in torques)
    return f"{numbers}, {spindle.power_of_one_cut:.0f} W"


def _whole(table: object, units: LengthUnits) -> str:
    """Return a blade, a tool or a drive position in a few words."""

    def length(value: float) -> str:
        return f"{write_length(value, units)} {length_label(units)}"

    match table:
        case Blade():
            tool, edge = tr(table.tool_material.value), tr(table.edge.value)
            words = f"{length(table.insert_width)} {tool}, {edge}"
        case TurningTool():
            words = tr(
                "{tool}, nose radius {radius}",
                tool=tr(table.tool_material.value),
                radius=length(table.nose_radius),
            )
        case BoringBar():
            words = tr(
                "{diameter} {shank}, bores from {bore}",
                diameter=length(table.diameter),
                shank=tr(table.shank.value),
                bore=length(table.smallest_bore),
            )
        case Drills():
            words = tr(
                "{count}, {smallest} to {largest}, {point}",
                count=len(table.diameters),
                smallest=length(table.diameters[0]),
                largest=length(table.diameters[-1]),
                point=tr(table.point.value),
            )
        case Tailstock():
            words = tr(
                "{travel} a turn, drills to {largest}",
                travel=length(table.travel_per_turn),
                largest=length(table.largest_drill),
            )
        case Carriage():
            words = tr("{travel} a turn", travel=length(table.travel_per_turn))
        case DrivePosition():
            words = _value(Speeds(table.slowest, table.fastest), "", None, units, _DIGITS)
        case _:
            raise TypeError(
                f"a {type(table).__name__} is no table that one file has and another has not"
            )
    return words


def _value(value: object, key: str, unit: Unit | None, units: LengthUnits, digits: int) -> str:
    match value:
        case None:
            words = tr("not stated")
        case bool():
            words = tr("yes") if value else tr("no")
        case Enum():
            words = str(value.value)
        case str():
            words = value or tr("not stated")
        case Speeds():
            words = _speeds(value, digits)
        case Reading():
            speed, torque = _number(value.speed, digits), _number(value.torque, digits)
            words = tr("{torque} N·m at {speed} rev/min", torque=torque, speed=speed)
        case tuple():
            words = _listed(value, key, unit, units, digits)
        case int() | float():
            words = _amount(float(value), key, unit, units, digits)
        case _:
            raise TypeError(f"{key} holds a {type(value).__name__}, which has no words")
    return words


def _listed(
    values: Iterable[object], key: str, unit: Unit | None, units: LengthUnits, digits: int
) -> str:
    written = [
        " x ".join(_value(part, key, unit, units, digits) for part in value)
        if isinstance(value, tuple)
        else _value(value, key, unit, units, digits)
        for value in values
    ]
    return ", ".join(written) or tr("not stated")


def _amount(value: float, key: str, unit: Unit | None, units: LengthUnits, digits: int) -> str:
    in_inches = units is LengthUnits.INCH and digits == _DIGITS
    if unit is MM and in_inches:
        return f"{write_length(value, units)} {length_label(units)}"
    if unit is MM_REV and in_inches:
        return f"{write_feed(value, units)} {feed_label(units)}"
    if unit is FRACTION and not key.startswith("allowances."):
        return f"{_number(100.0 * value, digits)} %"
    return f"{_number(value, digits)} {_label(unit) if unit else ''}".rstrip()


def _speeds(speeds: Speeds, digits: int) -> str:
    ends = list(dict.fromkeys(_number(speed, digits) for speed in speeds))
    if len(ends) == 1:
        return tr("{speed} rev/min", speed=ends[0])
    return tr("{slowest} to {fastest} rev/min", slowest=ends[0], fastest=ends[1])


def _label(unit: Unit) -> str:
    """Return a unit's label; those that hold a word of English are said anew."""
    said = {
        MM_REV: tr("mm/rev"),
        RPM: tr("rev/min"),
        TURNS_MIN: tr("turns/min"),
    }
    return said.get(unit, unit.label)


def _number(value: float, digits: int) -> str:
    """Return a number to some digits, never with an exponent."""
    return decimal(f"{float(f'{value:.{digits}g}'):.15g}")
