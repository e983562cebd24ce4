"""Each limit in the few words of the thing that gives way, for a narrow column."""

from typing import Final

from chartgen.limits.reasons import Reason
from chartgen.wording.language import tr

BEYOND: Final = {
    Reason.TORQUE_ONE_CUT: "motor torque",
    Reason.TORQUE_CONTINUOUS: "motor torque",
    Reason.STALL: "stall",
    Reason.GRIP: "grip",
    Reason.BLADE_BENDING: "blade bends",
    Reason.TIP_DROP: "tip drops",
    Reason.BLADE_BUCKLING: "blade tips over",
    Reason.WORK_DEFLECTION: "bar bends",
    Reason.WORK_STRESS: "bar at jaws",
    Reason.INSERT_FEED: "feed of width",
    Reason.HAND_PACE: "hand pace",
    Reason.REACH: "reach",
    Reason.EDGE_SPEED: "edge speed",
    Reason.FASTEST_SPINDLE: "top speed",
    Reason.CHUCK_SPEED: "chuck speed",
    Reason.BAR_WHIP: "bar whips",
    Reason.EDGE_FLOOR: "edge rubs",
    Reason.SKIN_FLOOR: "hard skin",
    Reason.SLOWEST_SPINDLE: "slowest speed",
    Reason.GEARBOX_FEED: "gearbox feed",
}


def beyond(reason: Reason) -> str:
    """Return what gives way, in the language being spoken."""
    return tr(BEYOND[reason])
