"""The lathe: spindle positions, chuck, cross-slide."""

from dataclasses import dataclass
from enum import Enum

from chartgen.model.motor import Motor, MotorKind
from chartgen.quantities import (
    Fraction,
    Millimetres,
    MillimetresPerRev,
    NewtonMetres,
    NewtonsPerMm,
    RevsPerMinute,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One measured point of what the spindle can give."""

    speed: RevsPerMinute[float]
    torque: NewtonMetres[float]


@dataclass(frozen=True, slots=True, kw_only=True)
class DrivePosition:
    """One belt or gear position: a single listed speed, or a range the controller covers.

    `motor_ratio` is motor turns for one spindle turn; it is 1 and unused when `readings`
    give the torque at the spindle itself. `dial_step` is the fineness the speed can be
    set to. `mark` is the short sign that stands behind a speed on a card, or empty.
    """

    name: str
    mark: str
    slowest: RevsPerMinute[float]
    fastest: RevsPerMinute[float]
    motor_ratio: float
    dial_step: RevsPerMinute[float]
    readings: tuple[Reading, ...] = ()

    def __post_init__(self) -> None:
        if not 0 < self.slowest <= self.fastest:
            raise ValueError(
                f"the range {self.slowest:g}..{self.fastest:g} rpm must rise and be above 0"
            )
        if self.readings:
            speeds = [reading.speed for reading in self.readings]
            if speeds != sorted(set(speeds)):
                raise ValueError("the readings must rise in speed, each speed once")
            if speeds[0] > self.slowest or speeds[-1] < self.fastest:
                raise ValueError(
                    f"the readings cover {speeds[0]:g}..{speeds[-1]:g} rpm but the position runs "
                    f"{self.slowest:g}..{self.fastest:g} rpm; measure at both ends or narrow it"
                )

    @property
    def is_single_speed(self) -> bool:
        """Whether this position has just one speed."""
        return self.slowest == self.fastest


@dataclass(frozen=True, slots=True, kw_only=True)
class Drive:
    """From the motor to the spindle.

    `elements` names what lies between them ("v-belt", "gear-stage"...), for a default
    efficiency where `efficiency` is not stated. `fastest_spindle` is the machine's limit.
    """

    positions: tuple[DrivePosition, ...]
    elements: tuple[str, ...] = ()
    efficiency: Fraction[float] | None = None
    fastest_spindle: RevsPerMinute[float]

    def __post_init__(self) -> None:
        if not self.positions:
            raise ValueError("a drive needs at least one position")
        if all(position.slowest > self.fastest_spindle for position in self.positions):
            raise ValueError(
                f"fastest_spindle ({self.fastest_spindle:g} rpm) is below every speed the "
                "positions can give; one of them is wrong"
            )


class ChuckKind(Enum):
    """How the work is held."""

    SCROLL = "scroll"
    FOUR_JAW = "four-jaw"
    COLLET = "collet"


class JawFace(Enum):
    """What the faces of the jaws are like."""

    SMOOTH = "smooth"
    DIAMOND = "diamond"
    SERRATED = "serrated"


class BarSurface(Enum):
    """What the jaws close on."""

    GROUND = "ground"
    BRIGHT = "bright"
    BLACK = "black"


@dataclass(frozen=True, slots=True, kw_only=True)
class Chuck:
    """The chuck in use; an unmarked one gets a cautious speed, said on the card.

    `key_torque` is None where nobody measured how hard the key is pulled.
    """

    size: Millimetres[float]
    marked_speed: RevsPerMinute[float] | None = None
    kind: ChuckKind = ChuckKind.SCROLL
    jaws: JawFace = JawFace.SMOOTH
    key_torque: NewtonMetres[float] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Work:
    """How the bar is set: its surface, how far from the jaws it is cut, what sticks out behind.

    `jaw_distance` runs from the jaws to the near side of the cut; None leaves the allowance.
    `bar_behind` is how far bar stands out of the far end of the spindle, unsupported.
    """

    surface: BarSurface = BarSurface.BRIGHT
    jaw_distance: Millimetres[float] | None = None
    bar_behind: Millimetres[float] = 0.0


class DialReads(Enum):
    """What the numbers on the cross-slide dial count."""

    RADIUS = "radius"
    DIAMETER = "diameter"


@dataclass(frozen=True, slots=True, kw_only=True)
class CrossSlide:
    """The cross-slide: `travel_per_turn` is how far the tool really moves in one turn."""

    travel_per_turn: Millimetres[float]
    divisions: int
    dial_reads: DialReads
    backlash: Millimetres[float] | None = None
    power_feeds: tuple[MillimetresPerRev[float], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Carriage:
    """What moves the tool along the bar: its hand wheel, and the feeds of the gearbox."""

    travel_per_turn: Millimetres[float]
    power_feeds: tuple[MillimetresPerRev[float], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Lathe:
    """One particular machine.

    `tool_stiffness` is what tool post and slides give way under the blade, None unmeasured.
    `swing` is the largest diameter that turns over the cross-slide, `spindle_bore` what goes
    through the spindle; both None, like `carriage`, where the owner did not say.
    """

    name: str
    motor: Motor
    drive: Drive
    chuck: Chuck
    cross_slide: CrossSlide
    tool_stiffness: NewtonsPerMm[float] | None = None
    swing: Millimetres[float] | None = None
    spindle_bore: Millimetres[float] | None = None
    carriage: Carriage | None = None

    def __post_init__(self) -> None:
        has_readings = all(position.readings for position in self.drive.positions)
        if self.motor.kind is MotorKind.MEASURED and not has_readings:
            raise ValueError("a measured motor needs readings in every drive position")
