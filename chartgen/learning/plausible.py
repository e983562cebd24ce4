"""Readings that no lathe of this kind gives: a slipped decimal, another position, another meter.

They are refused before anything follows from them, because a slip can point to the bold side:
a pull of 380 N·m written for 38 would double the grip that every card counts on.
"""

from typing import Final

from chartgen.learning.refusals import UnusableReadingError
from chartgen.limits.allowances import allowances_for
from chartgen.limits.holding import nearest_chuck
from chartgen.limits.spindle import input_efficiency
from chartgen.model.lathe import ChuckKind
from chartgen.model.motor import MotorKind, PowerIs
from chartgen.model.readings import KeyTorqueReading, ShopReading, WattsReading
from chartgen.model.shop import Shop

# A key is pulled by hand: twice the maker's full torque bends key or man.
_MOST_PULL: Final = 2.0
# What a motor draws in a cut, over its plate: an induction motor near breakdown about 2.5.
_MOST_DRAWN: Final = 3.0
# A tachometer and a plate agree within so much; an unloaded motor is faster than its plate.
_NEAR: Final = 0.12


def refuse_implausible(reading: ShopReading, shop: Shop) -> None:
    """Refuse a reading that this lathe cannot have given.

    Raises
    ------
    UnusableReadingError
        Saying what is implausible, and after a semicolon what to check.
    """
    match reading:
        case KeyTorqueReading():
            _refuse_pull(reading, shop)
        case WattsReading():
            _refuse_watts(reading, shop)
        case _:
            # A droop and a stall look for their drive position themselves.
            return


def _refuse_pull(reading: KeyTorqueReading, shop: Shop) -> None:
    chuck = shop.lathe.chuck
    if chuck.kind is ChuckKind.COLLET:
        return
    row, in_table = nearest_chuck(chuck.size)
    if not in_table and chuck.size > row.size:
        # Nothing is known of a key larger than the table's largest.
        return
    full = row.key_torque.value
    if reading.torque > _MOST_PULL * full:
        raise UnusableReadingError(
            f"a pull of {reading.torque:.4g} N.m is more than a key of a {chuck.size:g} mm chuck "
            f"takes (full torque about {full:.0f} N.m); check the number and its unit"
        )


def _refuse_watts(reading: WattsReading, shop: Shop) -> None:
    motor = shop.lathe.motor
    speeds = [(p.slowest, p.fastest) for p in shop.lathe.drive.positions]
    if not any(
        low * (1.0 - _NEAR) <= reading.cut.speed <= high * (1.0 + _NEAR) for low, high in speeds
    ):
        raise UnusableReadingError(
            f"no drive position of this lathe turns {reading.cut.speed:g} rpm; read the speed in "
            "the cut, or check the positions in the shop file"
        )
    if motor.kind is MotorKind.MEASURED:
        return
    drawn = motor.plate_power
    if motor.power_is is PowerIs.SHAFT:
        drawn /= input_efficiency(motor.kind, allowances_for(shop))
    if reading.cut_power > _MOST_DRAWN * drawn:
        raise UnusableReadingError(
            f"{reading.cut_power:.4g} W in the cut is {reading.cut_power / drawn:.1f} times what "
            f"this motor draws at full load ({drawn:.0f} W); check the number, the meter and the "
            "motor's plate"
        )
