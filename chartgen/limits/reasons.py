"""Why a window ends where it ends: data until it is worded."""

from enum import Enum
from typing import Self


class Reason(Enum):
    """A limit: the mark it prints, and what the legend says of it.

    The order is the order in which ties are broken, so it is part of the output.
    """

    TORQUE_ONE_CUT = "T", "motor torque, one cut"
    TORQUE_CONTINUOUS = "T", "motor torque, long cut"
    STALL = "S", "the spindle stalls"
    GRIP = "G", "the work slips in the jaws"
    BLADE_BENDING = "B", "the blade bends too hard"
    TIP_DROP = "D", "the tip drops too far"
    BLADE_BUCKLING = "L", "the blade tips over sideways"
    WORK_DEFLECTION = "W", "the bar bends away"
    WORK_STRESS = "J", "the bar bends at the jaws"
    INSERT_FEED = "F", "largest feed of this width"
    HAND_PACE = "P", "hand on the handle"
    REACH = "R", "blade too short"
    EDGE_SPEED = "V", "surface speed of the edge"
    FASTEST_SPINDLE = "N", "fastest spindle speed"
    CHUCK_SPEED = "C", "chuck speed"
    BAR_WHIP = "Q", "bar behind the spindle whips"
    EDGE_FLOOR = "E", "edge rubs instead of cutting"
    SKIN_FLOOR = "K", "work-hardened skin"
    SLOWEST_SPINDLE = "Z", "slowest spindle speed too fast"
    GEARBOX_FEED = "X", "no gearbox feed inside"

    def __init__(self, mark: str, legend: str) -> None:
        self.mark = mark
        self.legend = legend

    def __new__(cls, mark: str, legend: str) -> Self:
        """Give each member a value of its own: two reasons may share a mark."""
        member = object.__new__(cls)
        member._value_ = f"{mark}: {legend}"
        return member


REASONS: tuple[Reason, ...] = tuple(Reason)
CODES: dict[Reason, int] = {reason: code for code, reason in enumerate(REASONS)}
