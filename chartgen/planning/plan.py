"""The plan of a job: one whole, frozen record, numbers only. Wording makes the card of it."""

from dataclasses import dataclass

from chartgen.limits.allowances import Allowances
from chartgen.limits.reasons import Reason
from chartgen.limits.way_in import WayIn
from chartgen.limits.ways_out import WayOut
from chartgen.limits.window import Verdict
from chartgen.model.blade import Blade, ToolMaterial
from chartgen.model.job import Job
from chartgen.model.lathe import DrivePosition
from chartgen.model.material import Material
from chartgen.model.shop import Shop
from chartgen.physics.dig_in import Gives
from chartgen.planning.operations import Bound, FedBy, Operation
from chartgen.quantities import (
    CubicMm,
    Kilograms,
    MetresPerMinute,
    Millimetres,
    MillimetresPerRev,
    Minutes,
    NewtonMetres,
    Newtons,
    RevsPerMinute,
    Seconds,
    Watts,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Load:
    """What a cut asks at the high side of its band, and what there is.

    `force` is the main cutting force, of a drill the force of both lips together at their
    middle; `thrust` what it pushes along the axis. `grip_needed` is static, every reserve in;
    `grip` is inf for a collet.
    """

    force_low: Newtons[float]
    force: Newtons[float]
    force_high: Newtons[float]
    thrust_high: Newtons[float]
    torque: NewtonMetres[float]
    torque_available: NewtonMetres[float]
    power: Watts[float]
    power_available: Watts[float]
    grip_needed: Newtons[float]
    grip: Newtons[float]

    @property
    def share(self) -> float:
        """The torque used over the torque there is: of both alike the power."""
        return self.torque / self.torque_available


@dataclass(frozen=True, slots=True, kw_only=True)
class MachineCut:
    """The numbers of one step that cuts: all passes alike but the last, which finishes.

    `depth` is taken off the radius in each rough pass, `finish_depth` in the last one (0 where
    there is none); 0 for a drill and a blade, which cut their own width. `travel` is the way
    of one pass. `pecks` are the depths at which a drill is drawn back, from the face.
    `load` is None without published force data. `time` is in the cut only.
    """

    tool: str
    tool_material: ToolMaterial
    position: DrivePosition
    spindle_speed: RevsPerMinute[float]
    cutting_speed: MetresPerMinute[float]
    feed: MillimetresPerRev[float]
    finish_feed: MillimetresPerRev[float] | None
    fed_by: FedBy
    travel_per_turn: Millimetres[float] | None
    seconds_per_turn: Seconds[float] | None
    depth: Millimetres[float]
    finish_depth: Millimetres[float]
    passes: int
    travel: Millimetres[float]
    pecks: tuple[Millimetres[float], ...]
    load: Load | None
    binds: Bound
    time: Minutes[float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Parting:
    """What only a parting step has: the blade, its verdict, the way in of a solid bar.

    `floor` and `ceiling` are the window of feed at the chosen speed; `slack` the largest sudden
    extra bite it swallows, inf where nothing is known to give, and `gives` what does.
    """

    blade: Blade
    verdict: Verdict
    floor: MillimetresPerRev[float]
    ceiling: MillimetresPerRev[float]
    way_in: WayIn | None
    slack: Millimetres[float]
    gives: Gives


@dataclass(frozen=True, slots=True, kw_only=True)
class Refusal:
    """Why a step cannot be made as asked.

    `reasons` are the ends of a blade's empty window: what needs more feed, what allows less.
    """

    operation: Operation
    tool: str
    bound: Bound
    reasons: tuple[Reason, ...] = ()
    ways: tuple[WayOut, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One step. `is_per_piece`: made again for each piece, or else once a bar.

    `start` and `end` are the diameters before and after; `length` what is faced off, turned,
    drilled or sawn along the axis. `refused` says what this step stands in for. `handling` is
    the allowance of time beside the cut.
    """

    operation: Operation
    is_per_piece: bool
    handling: Minutes[float]
    cut: MachineCut | None = None
    start: Millimetres[float] = 0.0
    end: Millimetres[float] = 0.0
    length: Millimetres[float] = 0.0
    parting: Parting | None = None
    refused: Refusal | None = None

    @property
    def time(self) -> Minutes[float]:
        """The time in the cut and the allowance beside it."""
        return self.handling + (self.cut.time if self.cut else 0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class SetUp:
    """How the bar stands: from the jaws outward, all along the axis.

    `overhang` = `jaw_distance` + `kerf` + the piece + `facing`. `key_torque` is what the chuck
    key needs for `grip_needed`, the largest of all steps, and never less than a light pull; 0
    for a collet and without force data.
    `largest_speed` and its bound hold for every step. `stock` is what there is to take off the
    radius, `run_out` what of it the bar may run out by, measured or assumed.
    """

    jaw_distance: Millimetres[float]
    kerf: Millimetres[float]
    facing: Millimetres[float]
    overhang: Millimetres[float]
    grip_length: Millimetres[float]
    behind: Millimetres[float]
    goes_through_spindle: bool | None
    needs_centre: bool
    grip_needed: Newtons[float]
    grip: Newtons[float]
    key_torque: NewtonMetres[float]
    largest_speed: RevsPerMinute[float]
    speed_bound: Bound
    stock: Millimetres[float]
    run_out: Millimetres[float]
    run_out_is_measured: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class BarUse:
    """What one bar gives: `pitch` is the bar one piece uses up.

    `remnant` is what one blank loses in the jaws and to its last, too short piece.

    A bar too thick for the spindle is sawn into `blanks` of a length, `pieces_a_blank` each,
    all of which stand out of the jaws at once; else it is one blank of its whole length.
    `bars` are needed for the whole quantity, `pieces_of_last` come from the last of them.
    """

    pieces: int
    pitch: Millimetres[float]
    remnant: Millimetres[float]
    blanks: int
    blank_length: Millimetres[float]
    pieces_a_blank: int
    bars: int
    pieces_of_last: int
    piece_mass: Kilograms[float]
    chips: CubicMm[float]
    chips_mass: Kilograms[float]


@dataclass(frozen=True, slots=True, kw_only=True)
class BladeOption:
    """One owned blade for the parting step: its window, and the pieces a bar gives with it.

    `room` is the ceiling of feed over its floor.
    """

    blade: Blade
    verdict: Verdict
    room: float
    is_slow: bool
    pieces: int


@dataclass(frozen=True, slots=True, kw_only=True)
class WearCheck:
    """After how many pieces to look at an edge; the life is a wide band.

    `short` and `long` are minutes in the cut, None where no constants were found. `size` is the
    diameter the tool leaves, which tells drills apart.
    """

    tool: str
    size: Millimetres[float]
    operation: Operation
    short: Minutes[float] | None
    long: Minutes[float] | None
    pieces: int


@dataclass(frozen=True, slots=True, kw_only=True)
class JobPlan:
    """A job worked out for one shop, whole."""

    shop: Shop
    job: Job
    material: Material
    allowances: Allowances
    set_up: SetUp
    steps: tuple[Step, ...]
    bar_use: BarUse
    blade_options: tuple[BladeOption, ...]
    wear_checks: tuple[WearCheck, ...]

    @property
    def is_on_centre(self) -> bool:
        """Whether a live centre is brought up."""
        return any(step.operation is Operation.SUPPORT and not step.refused for step in self.steps)

    @property
    def is_drawn_out(self) -> bool:
        """Whether the bar is faced and centred short, and only then drawn out to its centre.

        One too thick for the spindle cannot stand deeper in the chuck than it is held.
        """
        goes_in = self.set_up.goes_through_spindle is not False
        return self.set_up.needs_centre and self.is_on_centre and goes_in

    @property
    def first_overhang(self) -> Millimetres[float]:
        """How far the bar stands out when a piece is begun."""
        if not self.is_drawn_out:
            return self.set_up.overhang
        return self.allowances.overhang_most * self.job.bar.diameter

    @property
    def once(self) -> Minutes[float]:
        """Time of what is done once a bar."""
        return sum(step.time for step in self.steps if not step.is_per_piece)

    @property
    def per_piece(self) -> Minutes[float]:
        """Time of what is done for each piece."""
        return sum(step.time for step in self.steps if step.is_per_piece)

    @property
    def whole(self) -> Minutes[float]:
        """Time of the whole quantity."""
        return self.bar_use.bars * self.once + self.job.quantity * self.per_piece
