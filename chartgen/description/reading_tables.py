"""The tables of readings and of measured values: their keys, and what reads each."""

import datetime as dt
from enum import Enum

from chartgen.description.choices import NameIn, OneOf
from chartgen.description.fields import (
    Count,
    InUnit,
    Words,
    amount,
)
from chartgen.description.problems import ComplaintError
from chartgen.description.tables import (
    Place,
    Table,
    only_beside,
    optional,
    required,
    required_beside,
)
from chartgen.model.measured import Assumption
from chartgen.quantities import FRACTION, MM, MM_REV, N_M, NEWTON, RPM, WATT


class ReadingKind(Enum):
    """What was read, as a file names it."""

    WATTS = "watts"
    DROOP = "droop"
    STALL = "stall"
    DEFLECTION = "deflection"
    KEY_TORQUE = "key-torque"


WATTS, DROOP, STALL = ReadingKind.WATTS, ReadingKind.DROOP, ReadingKind.STALL
IN_A_CUT = {WATTS, DROOP, STALL}
IN_A_POSITION = {DROOP, STALL}

# Beyond these a reading is a slip of the hand or of its unit.
POWER = InUnit(WATT, bounds=(1.0, 50e3), mend="Check the unit, and that the meter shows watts.")
SPEED = InUnit(RPM, bounds=(5.0, 20e3))
FEED = InUnit(MM_REV, bounds=(0.001, 2.0), mend="Give the feed of one turn of the spindle.")
DIAMETER = InUnit(MM, bounds=(0.5, 500.0))
PULL = InUnit(NEWTON, bounds=(2.0, 5000.0), mend="10 kg hung on the blade pull with 98 N.")
MOVEMENT = InUnit(MM, bounds=(0.0005, 5.0), mend="Check the unit: most post move by hundredths.")
KEY = InUnit(N_M, bounds=(1.0, 1000.0), mend="Check the unit of the wrench.")
FEED_ERROR = InUnit(FRACTION, bounds=(0.001, 1.0))


class Day:
    """A day, as a TOML date or as text; kept as text that sorts by time."""

    def __call__(self, value: object, _place: Place) -> str:
        """Return the day as in 2026-11-25."""
        if isinstance(value, dt.date) and not isinstance(value, dt.datetime):
            return value.isoformat()
        try:
            return dt.date.fromisoformat(str(value).strip()).isoformat()
        except ValueError:
            shown = str(value)[:60]
            raise ComplaintError(f"{shown!r} is no day.", "Write it as in 2026-11-25.") from None


class ReadingTable(Table):
    """[[reading]]: one reading of the lathe, as `chartgen learn` keeps it."""

    __slots__ = ()
    kind = required(OneOf(ReadingKind))
    date = required(Day())
    material = required_beside("kind", IN_A_CUT, NameIn("materials"))
    blade = required_beside("kind", IN_A_CUT, Words())
    diameter = required_beside("kind", IN_A_CUT, DIAMETER)
    speed = required_beside("kind", IN_A_CUT, SPEED)
    feed = required_beside("kind", IN_A_CUT, FEED)
    feed_error = only_beside("kind", IN_A_CUT, optional(FEED_ERROR, default=None))
    idle_power = required_beside("kind", {WATTS}, POWER)
    cut_power = required_beside("kind", {WATTS}, POWER)
    meter_error = only_beside("kind", {WATTS}, optional(InUnit(WATT), default=None))
    idle_speed = required_beside("kind", {DROOP}, SPEED)
    tachometer_error = only_beside("kind", {DROOP}, optional(InUnit(RPM), default=None))
    position = only_beside("kind", IN_A_POSITION, optional(Words(), default=None))
    pull = required_beside("kind", {ReadingKind.DEFLECTION}, PULL)
    movement = required_beside("kind", {ReadingKind.DEFLECTION}, MOVEMENT)
    torque = required_beside("kind", {ReadingKind.KEY_TORQUE}, KEY)


class KeyName:
    """The key of a value that can be measured."""

    def __call__(self, value: object, _place: Place) -> Assumption:
        """Return the assumption of the key."""
        found = [one for one in Assumption if one.key == value]
        if not found:
            keys = ", ".join(one.key for one in Assumption)
            raise ComplaintError(f"{str(value)[:60]!r} cannot be measured.", f"Use one of: {keys}.")
        return found[0]


class AnyAmount:
    """A value in the unit of a key that stands beside it; text, or a plain number for a ratio."""

    def __call__(self, value: object, _place: Place) -> object:
        """Return it as it stands; `amount_of` reads it by the unit."""
        if isinstance(value, str | int | float) and not isinstance(value, bool):
            return value
        raise ComplaintError("must be text in quotes.", "Write it as `chartgen learn` does.")


def amount_of(value: object, assumption: Assumption) -> float:
    """Return a value in its assumption's unit, or complain."""
    number = amount(value, assumption.unit)
    if number <= 0.0:
        raise ComplaintError("must be more than 0.", "Write it as `chartgen learn` does.")
    return number


class MeasuredTable(Table):
    """[[measured]]: one value of this file that readings gave, written by `chartgen learn`."""

    __slots__ = ()
    key = required(KeyName())
    value = required(AnyAmount())
    plus_minus = required(AnyAmount())
    level = required(InUnit(FRACTION, bounds=(0.5, 0.999)))
    readings = required(Count(bounds=(1, 10_000)))
    date = required(Day())
