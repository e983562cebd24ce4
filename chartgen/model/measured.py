"""A value of a shop file that was measured on this lathe: how well, from how much, and when."""

from dataclasses import dataclass
from enum import Enum
from typing import TYPE_CHECKING

from chartgen.quantities import FRACTION, N_M, N_PER_MM, Fraction, Unit

if TYPE_CHECKING:
    from chartgen.model.lathe import Lathe


class Assumption(Enum):
    """What readings can put a measured value to: its key in a shop file, and its unit."""

    FORCE_RESERVE = "allowances.confined_chip", FRACTION
    DRIVE_EFFICIENCY = "lathe.drive.efficiency", FRACTION
    MOTOR_EFFICIENCY = "lathe.motor.efficiency", FRACTION
    BREAKDOWN = "lathe.motor.breakdown", FRACTION
    CURRENT_LIMIT = "lathe.motor.current_limit", FRACTION
    KEY_TORQUE = "lathe.chuck.key_torque", N_M
    TOOL_STIFFNESS = "lathe.tool_stiffness", N_PER_MM

    def __init__(self, key: str, unit: Unit) -> None:
        self.key = key
        self.unit = unit

    @property
    def path(self) -> tuple[str, ...]:
        """Tables and key in a shop file, the outermost first."""
        return tuple(self.key.split("."))

    def stated(self, lathe: "Lathe", allowances: dict[str, float]) -> float | None:
        """Return what a shop file says of it, or None where it is silent."""
        return {
            Assumption.FORCE_RESERVE: allowances.get("confined_chip"),
            Assumption.DRIVE_EFFICIENCY: lathe.drive.efficiency,
            Assumption.MOTOR_EFFICIENCY: lathe.motor.efficiency,
            Assumption.BREAKDOWN: lathe.motor.breakdown,
            Assumption.CURRENT_LIMIT: lathe.motor.current_limit,
            Assumption.KEY_TORQUE: lathe.chuck.key_torque,
            Assumption.TOOL_STIFFNESS: lathe.tool_stiffness,
        }[self]


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """One measured value, in the unit of its assumption; `date` is that of the last reading.

    The true value lies within `plus_minus` of `value` with a probability of `level`.
    """

    assumption: Assumption
    value: float
    plus_minus: float
    level: Fraction[float]
    readings: int
    date: str
