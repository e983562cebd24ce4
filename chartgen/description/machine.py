"""From the tables under [lathe] to the model's lathe."""

from functools import partial
from itertools import chain, count

from chartgen.description.known import Known
from chartgen.description.lists import SingleSpeeds, SpeedRange
from chartgen.description.problems import KeyPath, Problems
from chartgen.description.schema import (
    CarriageTable,
    ChuckTable,
    CrossSlideTable,
    DriveTable,
    MotorTable,
    PositionTable,
)
from chartgen.model.lathe import Carriage, Chuck, CrossSlide, Drive, DrivePosition
from chartgen.model.motor import Motor, MotorKind, PowerIs
from chartgen.physics.motor import power_from_torque

MOTOR: KeyPath = ("lathe", "motor")
DRIVE: KeyPath = ("lathe", "drive")
LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


def motor_of(table: MotorTable, drive: DriveTable | None, problems: Problems) -> Motor | None:
    """Return the motor, or None with its problems noted.

    A measured motor that states no power gets that of its most powerful reading.
    """
    power, power_is, base_speed = table.power, table.power_is, table.base_speed
    if table.kind is MotorKind.MEASURED:
        readings = [
            (float(power_from_torque(torque=reading.torque, speed=reading.speed)), reading.speed)
            for position in (drive.position if drive else ())
            for reading in position.readings
        ]
        if not readings:
            return None
        best_power, its_speed = max(readings)
        power = power or best_power
        power_is = power_is or PowerIs.SHAFT
        base_speed = base_speed or its_speed
    if power is None or power_is is None or base_speed is None:
        return None
    make = partial(
        Motor,
        kind=table.kind,
        plate_power=power,
        power_is=power_is,
        base_speed=base_speed,
        fastest=table.fastest,
        breakdown=table.breakdown,
        overload=table.overload,
        current_limit=table.current_limit,
        forced_cooling=table.forced_cooling,
        self_cooling=table.self_cooling,
        above_base=table.above_base,
        efficiency=table.efficiency,
    )
    keys = MotorTable.keys
    return problems.attempt(MOTOR, make, keys=keys, mend="Compare it with the motor's plate.")


def drive_of(
    table: DriveTable, motor: MotorTable, known: Known, problems: Problems
) -> Drive | None:
    """Return the drive for this motor, or None with its problems noted."""
    before = len(problems.found)
    positions: list[DrivePosition] = []
    for index, (position, mark) in enumerate(zip(table.position, _marks(table), strict=True)):
        path = (*DRIVE, "position", index)
        if _suits(position, motor, path, problems):
            make_all = partial(_positions, position, mark, motor, known)
            mend = "Compare them with what was measured."
            positions += problems.attempt((*path, "readings"), make_all, mend=mend) or []
    if len(problems.found) > before:
        return None
    make = partial(
        Drive,
        positions=tuple(positions),
        elements=table.elements,
        efficiency=table.efficiency,
        fastest_spindle=table.fastest_spindle,
    )
    mend = "Compare it with the machine's manual."
    return problems.attempt(DRIVE, make, keys=DriveTable.keys, mend=mend)


def chuck_of(table: ChuckTable) -> Chuck:
    """Return the chuck."""
    return Chuck(
        size=table.size,
        marked_speed=table.marked_speed,
        kind=table.kind,
        jaws=table.jaws,
        key_torque=table.key_torque,
    )


def cross_slide_of(table: CrossSlideTable) -> CrossSlide:
    """Return the cross-slide, its power feeds from fine to coarse."""
    return CrossSlide(
        travel_per_turn=table.travel_per_turn,
        divisions=table.divisions,
        dial_reads=table.dial_reads,
        backlash=table.backlash,
        power_feeds=tuple(sorted(table.power_feeds)),
    )


def carriage_of(table: CarriageTable) -> Carriage:
    """Return what moves the tool along the bar, its power feeds from fine to coarse."""
    return Carriage(
        travel_per_turn=table.travel_per_turn, power_feeds=tuple(sorted(table.power_feeds))
    )


def _suits(position: PositionTable, motor: MotorTable, path: KeyPath, problems: Problems) -> bool:
    """Whether a position can belong to this motor; notes what cannot."""
    before = len(problems.found)
    is_range = isinstance(position.speeds, SpeedRange)
    measured = motor.kind is MotorKind.MEASURED
    if is_range and not motor.kind.stepless:
        problems.add(
            (*path, "speeds"),
            f"is a range, but a {motor.kind.value} motor on the line has fixed speeds.",
            'List them, as in speeds = ["160 rpm", "250 rpm"].',
        )
    if not is_range and motor.kind.stepless and not measured:
        problems.add(
            (*path, "speeds"),
            f"lists single speeds, but with kind '{motor.kind.value}' a position covers a range.",
            'Write both ends, as in speeds = "60..1000 rpm".',
        )
    if measured and not position.readings:
        problems.add(
            (*path, "readings"),
            "is missing for a measured motor.",
            'Add readings = [["200 rpm", "12 N.m"], ["900 rpm", "400 W"]].',
        )
    if position.readings and not measured:
        problems.add(
            (*path, "readings"),
            f"cannot stand beside kind = '{motor.kind.value}'.",
            'Write kind = "measured" under [lathe.motor], or leave readings out.',
        )
    if position.motor_ratio is not None and len(_runs(position)) > 1:
        problems.add(
            (*path, "motor_ratio"),
            "cannot hold for several speeds.",
            "Leave it out; each speed then gets its own from base_speed.",
        )
    return len(problems.found) == before


def _runs(position: PositionTable) -> list[tuple[str, float, float]]:
    """Return name, slowest and fastest of what the model holds as one position each."""
    given = position.speeds
    if isinstance(given, SpeedRange):
        return [(position.name, given.slowest, given.fastest)]
    if len(given.speeds) == 1:
        return [(position.name, *given.speeds, *given.speeds)]
    return [(f"{position.name}, {speed:g} rpm", speed, speed) for speed in given.speeds]


def _positions(
    position: PositionTable, mark: str, motor: MotorTable, known: Known
) -> list[DrivePosition]:
    readings = sorted(position.readings, key=lambda reading: reading.speed)
    return [
        DrivePosition(
            name=name,
            mark=mark,
            slowest=slowest,
            fastest=fastest,
            motor_ratio=position.motor_ratio or _motor_top_speed(motor, fastest, known) / fastest,
            dial_step=position.dial_step,
            readings=tuple(readings),
        )
        for name, slowest, fastest in _runs(position)
    ]


def _motor_top_speed(motor: MotorTable, spindle_speed: float, known: Known) -> float:
    """Return the motor's speed while the spindle runs the fastest of a position [rev/min]."""
    if motor.kind is MotorKind.MEASURED or motor.base_speed is None:
        return spindle_speed
    if not motor.kind.stepless:
        return motor.base_speed
    if motor.fastest is not None:
        return motor.fastest
    no_load = known.dc_no_load if motor.kind is MotorKind.BRUSHED_DC else 1.0
    return motor.base_speed * no_load


def _marks(drive: DriveTable) -> list[str]:
    """Return a mark for each position of the file, where speeds alone do not tell them apart."""
    marks = [position.mark for position in drive.position]
    given = [position.speeds for position in drive.position]
    speeds = [speed for one in given if isinstance(one, SingleSpeeds) for speed in one.speeds]
    all_single = all(isinstance(one, SingleSpeeds) for one in given)
    if len(marks) == 1 or (all_single and len(set(speeds)) == len(speeds)):
        return marks
    unlike = {mark for mark in marks if mark and marks.count(mark) == 1}
    signs = chain(LETTERS, map(str, count(1)))
    free = (sign for sign in signs if sign not in unlike)
    return [mark if mark in unlike else next(free) for mark in marks]
