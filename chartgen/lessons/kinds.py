"""What an exercise asks, at which level, and the mistakes that are known to be made."""

from enum import Enum


class Kind(Enum):
    """What is asked; the value is its key in an answer file and in a key."""

    SPINDLE_SPEED = "spindle-speed"
    NEAREST_STEP = "nearest-step"
    TRUE_SURFACE_SPEED = "true-surface-speed"
    HANDLE_PACE = "handle-pace"
    CUTTING_FORCE = "cutting-force"
    CUTTING_POWER = "cutting-power"
    MOTOR_PULLS = "motor-pulls"
    WHAT_BINDS = "what-binds"
    TOO_TIMID = "too-timid"
    TIME_TO_CENTRE = "time-to-centre"
    PIECES_PER_BAR = "pieces-per-bar"
    READ_NOMOGRAM = "read-nomogram"
    READ_CURVE = "read-curve"


class Slip(Enum):
    """A mistake; the value is its key."""

    DIAMETER_FOR_RADIUS = "diameter-for-radius"
    RADIUS_FOR_DIAMETER = "radius-for-diameter"
    PER_MINUTE_FOR_PER_REV = "per-minute-for-per-rev"
    INCH_FOR_MILLIMETRE = "inch-for-millimetre"
    FACTOR_TEN = "factor-ten"
    FACTOR_SIXTY = "factor-sixty"
    NO_PI = "no-pi"
    STEP_ABOVE = "step-above"
    STEP_BELOW = "step-below"
    WITHOUT_KERF = "without-kerf"
    WITHOUT_REMNANT = "without-remnant"
    ROUNDED_UP = "rounded-up"
    HIGH_FOR_EXPECTED = "high-for-expected"
    TORQUE_AT_CENTRE = "torque-at-centre"
    OTHER_LIMIT = "other-limit"
    OTHER_SIDE = "other-side"
    MISREAD_SCALE = "misread-scale"
