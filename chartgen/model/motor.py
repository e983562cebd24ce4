"""The motor and its controller, as plate and manual state them."""

from dataclasses import dataclass
from enum import Enum

from chartgen.quantities import Fraction, RevsPerMinute, Watts


class MotorKind(Enum):
    """What turns the spindle; decides the shape of torque over speed."""

    THREE_PHASE = "three-phase"
    SINGLE_PHASE = "single-phase"
    INVERTER = "inverter"
    BRUSHED_DC = "brushed-dc"
    BRUSHLESS = "brushless"
    MEASURED = "measured"

    @property
    def stepless(self) -> bool:
        """Whether the controller can set any speed in a range."""
        return self not in {MotorKind.THREE_PHASE, MotorKind.SINGLE_PHASE}


class PowerIs(Enum):
    """Which power the plate states."""

    SHAFT = "shaft"
    INPUT = "input"


class AboveBase(Enum):
    """What a brushless drive does above base speed."""

    CONSTANT_POWER = "constant-power"
    STRAIGHT_FALL = "straight-fall"


class SelfCooling(Enum):
    """Which published rule holds for a motor cooled by its own fan, turning slowly for long."""

    CAUTIOUS = "cautious"
    FULL_FROM_HALF_SPEED = "full-from-half-speed"
    NONE_UNDER_HALF_SPEED = "none-under-half-speed"
    FULL_AT_BASE_SPEED = "full-at-base-speed"


@dataclass(frozen=True, slots=True, kw_only=True)
class Motor:
    """The motor. A ratio is a multiple of the rated torque; None means the plate is silent.

    `fastest` is the motor's speed at the top of the control range (for a brushed DC motor
    its no-load speed); None means base speed for line motors, and an allowance otherwise.
    """

    kind: MotorKind
    plate_power: Watts[float]
    power_is: PowerIs
    base_speed: RevsPerMinute[float]
    fastest: RevsPerMinute[float] | None = None
    breakdown: Fraction[float] | None = None
    overload: Fraction[float] | None = None
    current_limit: Fraction[float] | None = None
    forced_cooling: bool = False
    self_cooling: SelfCooling = SelfCooling.CAUTIOUS
    above_base: AboveBase = AboveBase.CONSTANT_POWER
    efficiency: Fraction[float] | None = None

    def __post_init__(self) -> None:
        if self.fastest is not None and self.fastest < self.base_speed:
            raise ValueError(
                f"fastest ({self.fastest:g} rpm) is below base_speed ({self.base_speed:g} rpm); "
                "give the motor's speed at the top of its control range, or leave it out"
            )
        if self.efficiency is not None and self.power_is is PowerIs.SHAFT:
            raise ValueError(
                "efficiency only matters when power_is = 'input'; leave it out, "
                "or say that the plate states input power"
            )
        if self.above_base is AboveBase.STRAIGHT_FALL and not (
            self.fastest is not None and self.fastest > self.base_speed
        ):
            raise ValueError(
                "above_base = 'straight-fall' needs fastest, the speed where torque reaches "
                "nothing, above base_speed"
            )
        if self.forced_cooling and self.self_cooling is not SelfCooling.CAUTIOUS:
            raise ValueError(
                "self_cooling has no effect beside forced_cooling = true; leave it out"
            )
        for name in ("breakdown", "overload", "current_limit"):
            ratio = getattr(self, name)
            if ratio is not None and ratio < 1.0:
                raise ValueError(f"{name} is under 100 %; it is a multiple of the rated torque")
