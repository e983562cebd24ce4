"""A reading in a cut as one line of a linear system: what it says of the unknowns' logarithms.

    watts   F v / 60         =  marginal . drive . (watts in the cut - watts idle)
    droop   F D / 2000       =  rated torque . ratio . drive . droop / (n0 - nN)
    stall   F D / 2000       =  rated torque . ratio . drive . stall ratio

F is the published force times the reserve times what the material's data are off; the rated
torque holds the motor's efficiency where the plate states input power.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from chartgen.learning.refusals import UnusableReadingError
from chartgen.learning.unknowns import (
    DRIVE,
    LINE,
    MARGINAL,
    MOTOR,
    RESERVE,
    SPAN_OVER_SPREAD,
    STALL,
    Unknown,
    material_name,
)
from chartgen.limits.allowances import Allowances, allowances_for
from chartgen.limits.grid import force_allowance
from chartgen.limits.spindle import make_spindle
from chartgen.model.lathe import DrivePosition
from chartgen.model.material import Material
from chartgen.model.motor import MotorKind
from chartgen.model.readings import CutReading, DroopReading, KnownCut, StallReading, WattsReading
from chartgen.model.shop import Feeding, Shop
from chartgen.physics.cutting import cutting_force, cutting_power, cutting_torque
from chartgen.physics.kinematics import cutting_speed
from chartgen.physics.motor import (
    measured_torque,
    synchronous_speed,
    torque_ratio_from_droop,
)
from chartgen.quantities import NewtonMetres, Newtons, RevsPerMinute
from chartgen.reference.reading_errors import load_reading_errors
from chartgen.reference.tables import load_material

# How far a speed read may be from that of the position it belongs to.
_NEAR = 0.15
_FULL_UP = 0.9
_LINE_MOTORS = {MotorKind.THREE_PHASE, MotorKind.SINGLE_PHASE}


@dataclass(frozen=True, slots=True, kw_only=True)
class Equation:
    """`says` = sum of `weights` times unknown logarithms, give or take `spread`."""

    weights: Mapping[str, float]
    says: float
    spread: float


def equation_of(reading: CutReading, shop: Shop, unknowns: Mapping[str, Unknown]) -> Equation:
    """Return what a reading says of the unknowns of a shop without learned values.

    Raises
    ------
    UnusableReadingError
        If it can say nothing there.
    """
    material = load_material(reading.cut.material)
    force = expected_force(reading.cut, material, shop, allowances_for(shop))
    feed_share = reading.cut.feed_error or _error(
        "feed_by_hand" if shop.request.feeding is Feeding.HAND else "feed_by_power"
    )
    exponent = material.force.thickness_exponent.value if material.force else 0.0
    feed_spread = (1.0 - exponent) * _spread(feed_share)
    if isinstance(reading, WattsReading):
        return _watts(reading, force, feed_spread, unknowns)
    torque = float(cutting_torque(force=force, diameter=reading.cut.diameter))
    if isinstance(reading, DroopReading):
        return _droop(reading, torque, feed_spread, shop, unknowns)
    return _stall(reading, torque, feed_spread, shop, unknowns)


def expected_force(
    cut: KnownCut, material: Material, shop: Shop, allowances: Allowances
) -> Newtons[float]:
    """Return the force assumed of a cut [N].

    Raises
    ------
    UnusableReadingError
        If no force of the material is published.
    """
    if material.force is None:
        raise UnusableReadingError(
            f"no force of {material.key} is published, so the cut is not a known one; "
            "take the reading in a metal of `chartgen materials` that has force data"
        )
    blade = next(one for one in shop.blades if one.name == cut.blade)
    sharp = cutting_force(
        width=blade.insert_width,
        feed=cut.feed,
        specific_force=material.force.specific_force.value,
        thickness_exponent=material.force.thickness_exponent.value,
    )
    return float(sharp) * force_allowance(material, blade, allowances)


def _watts(
    reading: WattsReading, force: float, feed_spread: float, unknowns: Mapping[str, Unknown]
) -> Equation:
    cut = reading.cut
    speed = cutting_speed(diameter=cut.diameter, spindle_speed=cut.speed)
    expected = float(cutting_power(force=force, cutting_speed=speed))
    expected /= unknowns[MARGINAL].assumed * unknowns[DRIVE].assumed
    more = reading.cut_power - reading.idle_power
    errors = [
        reading.meter_error or math.hypot(_error("meter_share") * power, _error("meter_watt"))
        for power in (reading.idle_power, reading.cut_power)
    ]
    if math.hypot(*errors) >= more:
        raise UnusableReadingError(
            f"the cut draws {more:.3g} W more than idling, no more than the meter may be off "
            f"({math.hypot(*errors):.2g} W); take it in a heavier cut"
        )
    return Equation(
        weights={RESERVE: 1.0, material_name(cut.material): 1.0, DRIVE: -1.0, MARGINAL: -1.0},
        says=math.log(more / expected),
        spread=math.hypot(feed_spread, _spread(math.hypot(*errors) / more)),
    )


def _droop(
    reading: DroopReading,
    torque: NewtonMetres[float],
    feed_spread: float,
    shop: Shop,
    unknowns: Mapping[str, Unknown],
) -> Equation:
    lathe, allowances = shop.lathe, allowances_for(shop)
    motor = lathe.motor
    if motor.kind not in _LINE_MOTORS | {MotorKind.BRUSHED_DC}:
        raise UnusableReadingError(
            f"the speed of a motor of kind '{motor.kind.value}' does not fall with its load by a "
            "known law; read watts instead"
        )
    position = position_of(reading, shop)
    if motor.kind is MotorKind.BRUSHED_DC:
        if reading.idle_speed < _FULL_UP * position.fastest:
            raise UnusableReadingError(
                f"at {reading.idle_speed:g} rpm the knob is not fully up (position "
                f"'{position.name}' ends at {position.fastest:g} rpm), and below that the "
                "controller holds the speed; turn it fully up, or read watts instead"
            )
        no_load = max(motor.fastest or 0.0, motor.base_speed)
        if no_load <= motor.base_speed:
            no_load = motor.base_speed * allowances.dc_no_load
    else:
        no_load = _synchronous(motor.base_speed)
    ratio = position.motor_ratio
    droop = reading.idle_speed - reading.cut.speed
    share = float(
        torque_ratio_from_droop(
            droop=droop * ratio, no_load_speed=no_load, rated_speed=motor.base_speed
        )
    )
    error = math.hypot(*[reading.tachometer_error or _error("tachometer_rpm")] * 2)
    if error >= droop:
        raise UnusableReadingError(
            f"a droop of {droop:g} rpm is no more than the tachometer may be off ({error:.2g} "
            "rpm); take it in a heavier cut, or read watts instead"
        )
    spindle = make_spindle(lathe, allowances)
    read = share * spindle.rated_torque * ratio * unknowns[DRIVE].assumed
    return Equation(
        weights=_of_torque(reading.cut, unknowns) | {LINE: -1.0},
        says=math.log(read / torque),
        spread=math.hypot(feed_spread, _spread(error / droop)),
    )


def _synchronous(base_speed: RevsPerMinute[float]) -> RevsPerMinute[float]:
    try:
        return synchronous_speed(rated_speed=base_speed)
    except ValueError as error:
        raise UnusableReadingError(f"{error}; check base_speed, or read watts instead") from error


def _stall(
    reading: StallReading,
    torque: NewtonMetres[float],
    feed_spread: float,
    shop: Shop,
    unknowns: Mapping[str, Unknown],
) -> Equation:
    lathe, allowances = shop.lathe, allowances_for(shop)
    motor, position = lathe.motor, position_of(reading, shop)
    spread = math.hypot(feed_spread, _spread(_error("stall_scatter")))
    if position.readings:
        measured = measured_torque(
            speed=reading.cut.speed,
            measured_speeds=[one.speed for one in position.readings],  # type: ignore[arg-type]
            measured_torques=[one.torque for one in position.readings],  # type: ignore[arg-type]
        )
        weights = {RESERVE: 1.0, material_name(reading.cut.material): 1.0}
        return Equation(weights=weights, says=math.log(float(measured) / torque), spread=spread)
    limit = unknowns[STALL].assumed
    if motor.kind in _LINE_MOTORS:
        limit *= allowances.line_voltage**2
    elif reading.cut.speed * position.motor_ratio > motor.base_speed:
        raise UnusableReadingError(
            f"at {reading.cut.speed:g} rpm in position '{position.name}' the motor runs above its "
            "base speed, where more than the current limit decides; a stall tells of it below "
            f"{motor.base_speed / position.motor_ratio:.0f} rpm"
        )
    elif motor.kind is MotorKind.INVERTER:
        breakdown = motor.breakdown or allowances.three_phase_breakdown
        if breakdown < limit:
            raise UnusableReadingError(
                "the motor's breakdown torque lies below the drive's current limit, so that a "
                "stall does not tell of the limit; read watts instead"
            )
    rated = make_spindle(lathe, allowances).rated_torque
    available = rated * position.motor_ratio * unknowns[DRIVE].assumed * limit
    return Equation(
        weights=_of_torque(reading.cut, unknowns) | {STALL: -1.0},
        says=math.log(available / torque),
        spread=spread,
    )


def _of_torque(cut: KnownCut, unknowns: Mapping[str, Unknown]) -> dict[str, float]:
    weights = {RESERVE: 1.0, material_name(cut.material): 1.0, DRIVE: -1.0}
    return weights | ({MOTOR: -1.0} if MOTOR in unknowns else {})


def position_of(reading: DroopReading | StallReading, shop: Shop) -> DrivePosition:
    """Return the drive position that a reading was taken in.

    Raises
    ------
    UnusableReadingError
        If none, or more than one, could be meant.
    """
    speed = reading.idle_speed if isinstance(reading, DroopReading) else reading.cut.speed
    fitting = [
        one
        for one in shop.lathe.drive.positions
        if reading.position in {"", one.name, one.name.rpartition(", ")[0]}
        and one.slowest / (1.0 + _NEAR) <= speed <= one.fastest * (1.0 + _NEAR)
    ]
    if fitting and all(one.is_single_speed for one in fitting):
        fitting = [min(fitting, key=lambda one: abs(math.log(one.slowest / speed)))]
    if not fitting:
        raise UnusableReadingError(
            f"no drive position of that name runs {speed:g} rpm; check speed and position"
        )
    if len({one.motor_ratio for one in fitting}) > 1:
        names = ", ".join(f"'{one.name}'" for one in fitting)
        raise UnusableReadingError(
            f"{speed:g} rpm can be had in more than one drive position; add position = one of "
            f"{names}"
        )
    return fitting[0]


def _error(name: str) -> float:
    return load_reading_errors()[name].most


def _spread(limit: float) -> float:
    """Return the spread of an error that 19 of 20 times keeps to a limit either way."""
    return limit / (SPAN_OVER_SPREAD / 2.0)
