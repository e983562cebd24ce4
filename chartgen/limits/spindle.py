"""What the drive can give at a spindle speed: for ever, for one cut, and at the stall."""

from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum

import numpy as np

from chartgen.limits.allowances import Allowances
from chartgen.model.lathe import DrivePosition, Lathe
from chartgen.model.motor import AboveBase, Motor, MotorKind, PowerIs, SelfCooling
from chartgen.physics.motor import (
    brushless_torque_ratio,
    direct_current_torque_ratio,
    inverter_torque_ratio,
    measured_torque,
    torque_from_power,
)
from chartgen.physics.self_cooling import (
    cautious_share,
    full_at_base_speed,
    full_from_half_speed,
    none_under_half_speed,
)
from chartgen.quantities import FloatArray, Fraction, NewtonMetres, Numeric, RevsPerMinute, Watts
from chartgen.reference.tables import load_transmission

_COOLED_SHARE: dict[SelfCooling, Callable[..., Numeric]] = {
    SelfCooling.CAUTIOUS: cautious_share,
    SelfCooling.FULL_FROM_HALF_SPEED: full_from_half_speed,
    SelfCooling.NONE_UNDER_HALF_SPEED: none_under_half_speed,
    SelfCooling.FULL_AT_BASE_SPEED: full_at_base_speed,
}


class Duration(Enum):
    """How long a torque has to be held."""

    CONTINUOUS = "continuous"
    ONE_CUT = "one cut"
    STALL = "stall"


@dataclass(frozen=True, slots=True, kw_only=True)
class Spindle:
    """A lathe's drive with every allowance resolved."""

    lathe: Lathe
    allowances: Allowances
    shaft_power: Watts[float]
    efficiency: Fraction[float]

    @property
    def rated_torque(self) -> NewtonMetres[float]:
        """Rated torque of the motor shaft [N·m]."""
        return float(torque_from_power(power=self.shaft_power, speed=self.lathe.motor.base_speed))

    def torque(
        self, position: DrivePosition, speed: RevsPerMinute[FloatArray], duration: Duration
    ) -> NewtonMetres[FloatArray]:
        """Return the torque at the spindle [N·m] in a drive position at a spindle speed."""
        if position.readings:
            # The owner's readings stand as measured, for every duration.
            return np.asarray(
                measured_torque(
                    speed=speed,
                    measured_speeds=np.array([r.speed for r in position.readings]),
                    measured_torques=np.array([r.torque for r in position.readings]),
                )
            )
        motor = self.lathe.motor
        speed_ratio = np.asarray(speed) * position.motor_ratio / motor.base_speed
        share = _torque_ratio(motor, speed_ratio, duration, self.allowances)
        return self.rated_torque * position.motor_ratio * self.efficiency * share


def make_spindle(lathe: Lathe, allowances: Allowances) -> Spindle:
    """Resolve a lathe's drive: shaft power from the plate, efficiency down to the spindle."""
    motor = lathe.motor
    shaft_power = motor.plate_power
    if motor.power_is is PowerIs.INPUT:
        shaft_power *= motor.efficiency or input_efficiency(motor.kind, allowances)
    return Spindle(
        lathe=lathe,
        allowances=allowances,
        shaft_power=shaft_power,
        efficiency=transmission_efficiency(lathe, allowances),
    )


def transmission_efficiency(lathe: Lathe, allowances: Allowances) -> Fraction[float]:
    """Return shaft-to-spindle efficiency: stated, from the named elements, or the allowance."""
    drive = lathe.drive
    if drive.efficiency is not None:
        return drive.efficiency
    if not drive.elements:
        return allowances.transmission_efficiency
    table = load_transmission()
    product = allowances.spindle_bearing_efficiency
    for element in drive.elements:
        product *= table[element].value
    return product


def input_efficiency(kind: MotorKind, allowances: Allowances) -> Fraction[float]:
    """Return the allowance for shaft power over input power of a kind of motor."""
    by_kind = {
        MotorKind.THREE_PHASE: allowances.three_phase_efficiency,
        MotorKind.SINGLE_PHASE: allowances.single_phase_efficiency,
        MotorKind.INVERTER: allowances.inverter_efficiency,
        MotorKind.BRUSHED_DC: allowances.dc_efficiency,
        MotorKind.BRUSHLESS: allowances.brushless_efficiency,
        MotorKind.MEASURED: 1.0,
    }
    return by_kind[kind]


def corner_speed(motor: Motor, allowances: Allowances) -> RevsPerMinute[float]:
    """Return the motor speed below which no more torque for one cut is to be had.

    Base speed, but for a brushed motor: there the line that full volts allow still rises
    below base speed, up to what the controller lets through.
    """
    if motor.kind is not MotorKind.BRUSHED_DC:
        return motor.base_speed
    no_load = _no_load_ratio(motor, allowances)
    return motor.base_speed * (no_load - _dc_one_cut(motor, allowances) * (no_load - 1.0))


def _no_load_ratio(motor: Motor, allowances: Allowances) -> float:
    """Return no-load over base speed; a plate with one speed for both leaves the allowance."""
    if motor.fastest is not None and motor.fastest > motor.base_speed:
        return motor.fastest / motor.base_speed
    return allowances.dc_no_load


def _dc_one_cut(motor: Motor, allowances: Allowances) -> float:
    return motor.overload or allowances.dc_one_cut


def _torque_ratio(
    motor: Motor, speed_ratio: FloatArray, duration: Duration, allowances: Allowances
) -> FloatArray:
    kind = motor.kind
    if kind in {MotorKind.THREE_PHASE, MotorKind.SINGLE_PHASE}:
        return np.full_like(speed_ratio, _line_motor_ratio(motor, duration, allowances))
    if kind is MotorKind.INVERTER:
        return np.asarray(_inverter_ratio(motor, speed_ratio, duration, allowances))
    if kind is MotorKind.BRUSHED_DC:
        no_load = _no_load_ratio(motor, allowances)
        hold = {
            Duration.CONTINUOUS: 1.0,
            Duration.ONE_CUT: _dc_one_cut(motor, allowances),
            Duration.STALL: motor.current_limit or allowances.dc_stall,
        }[duration]
        return np.asarray(
            direct_current_torque_ratio(
                speed_ratio=speed_ratio, hold_ratio=hold, no_load_ratio=no_load
            )
        )
    hold = {
        Duration.CONTINUOUS: 1.0,
        Duration.ONE_CUT: motor.overload or allowances.brushless_one_cut,
        Duration.STALL: motor.current_limit or allowances.brushless_stall,
    }[duration]
    return np.asarray(
        brushless_torque_ratio(
            speed_ratio=speed_ratio,
            hold_ratio=hold,
            top_ratio=(motor.fastest or motor.base_speed) / motor.base_speed,
            straight_fall=motor.above_base is AboveBase.STRAIGHT_FALL,
        )
    )


def _line_motor_ratio(motor: Motor, duration: Duration, allowances: Allowances) -> float:
    three_phase = motor.kind is MotorKind.THREE_PHASE
    breakdown = motor.breakdown or (
        allowances.three_phase_breakdown if three_phase else allowances.single_phase_breakdown
    )
    one_cut = motor.overload or (
        allowances.three_phase_one_cut if three_phase else allowances.single_phase_one_cut
    )
    return {
        Duration.CONTINUOUS: 1.0,
        Duration.ONE_CUT: one_cut,
        Duration.STALL: breakdown * allowances.line_voltage**2,
    }[duration]


def _inverter_ratio(
    motor: Motor, speed_ratio: FloatArray, duration: Duration, allowances: Allowances
) -> FloatArray:
    breakdown = motor.breakdown or allowances.three_phase_breakdown
    one_cut = motor.overload or allowances.inverter_one_cut
    hold, share = {
        Duration.CONTINUOUS: (1.0, allowances.pull_out_share),
        Duration.ONE_CUT: (one_cut, allowances.pull_out_share),
        Duration.STALL: (max(motor.current_limit or allowances.inverter_stall, one_cut), 1.0),
    }[duration]
    ratio = np.asarray(
        inverter_torque_ratio(
            speed_ratio=speed_ratio,
            hold_ratio=hold,
            breakdown_ratio=breakdown,
            pull_out_share=share,
        )
    )
    if duration is Duration.CONTINUOUS and not motor.forced_cooling:
        ratio = ratio * _COOLED_SHARE[motor.self_cooling](speed_ratio=speed_ratio)
    return ratio
