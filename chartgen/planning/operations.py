"""What a step of a job can be, what feeds its tool, and what binds its numbers."""

from enum import Enum


class Operation(Enum):
    """A step; the value names it, wording says it with its sizes."""

    CHECK = "check, mark out"
    SAW = "saw off"
    HOLD = "hold"
    FACE = "face"
    CENTRE_DRILL = "centre drill"
    SUPPORT = "bring up the centre"
    TURN = "turn"
    DRILL = "drill"
    BORE = "bore"
    GROOVE = "groove"
    CHAMFER = "chamfer"
    PART = "part off"
    DEBURR = "deburr, measure"
    ADVANCE = "advance the bar"


class FedBy(Enum):
    """What moves the tool in a cut."""

    CROSS_SLIDE = "cross-slide"
    CARRIAGE = "carriage"
    TAILSTOCK = "tailstock"
    POWER = "power feed"


class Bound(Enum):
    """What keeps a step's numbers from being larger; the value is what the card says."""

    NOTHING = "start values"
    TORQUE = "motor torque"
    STALL = "stall"
    GRIP = "grip"
    BAR_BENDS = "the bar bends"
    BAR_AT_JAWS = "the bar at the jaws"
    TOOL_BENDS = "the boring bar bends"
    TOOL_DEPTH = "depth of the tool"
    HAND_PACE = "hand on the handle"
    TAILSTOCK_PUSH = "push of the tailstock"
    DRILL_CHUCK = "hold of the drill chuck"
    DEEP_HOLE = "deep hole"
    EDGE_SPEED = "surface speed of the edge"
    FASTEST_SPINDLE = "fastest spindle speed"
    SLOWEST_SPINDLE = "slowest spindle speed"
    CHUCK_SPEED = "chuck speed"
    BAR_WHIP = "bar behind the spindle"
    BLADE = "the blade's window"
    BAR_LENGTH = "length of the bar"
    NO_TOOL = "no tool of this shop"
