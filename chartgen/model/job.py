"""A job: the bar that is there and the piece that is wanted, one or many of it."""

from dataclasses import dataclass
from enum import Enum

from chartgen.model.lathe import BarSurface
from chartgen.quantities import Millimetres


class Coolant(Enum):
    """What is put on the cut."""

    OIL = "oil"
    EMULSION = "emulsion"
    DRY = "dry"


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """The stock in the chuck.

    `run_out` is by how much a dial gauge on the bar moves in one turn, where the piece will
    be; None where nobody measured it. `behind` is how far bar may stand out behind the
    spindle at any time, held by nothing.
    """

    diameter: Millimetres[float]
    length: Millimetres[float]
    surface: BarSurface = BarSurface.BRIGHT
    run_out: Millimetres[float] | None = None
    behind: Millimetres[float] = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Groove:
    """A groove in the outside; `from_face` runs from the finished face to its near side."""

    width: Millimetres[float]
    depth: Millimetres[float]
    from_face: Millimetres[float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """What is wanted. `bore` goes right through, 0 for none; `tolerance` stands in words."""

    diameter: Millimetres[float]
    length: Millimetres[float]
    bore: Millimetres[float] = 0.0
    chamfer: Millimetres[float] = 0.0
    groove: Groove | None = None
    tolerance: str = ""

    def __post_init__(self) -> None:
        if self.bore >= self.diameter:
            raise ValueError(
                f"the bore ({self.bore:g} mm) is not smaller than the piece "
                f"({self.diameter:g} mm): nothing would be left"
            )
        if 2.0 * self.chamfer >= min(self.diameter - self.bore, self.length):
            raise ValueError(
                f"a chamfer of {self.chamfer:g} mm leaves nothing of an edge of the piece"
            )
        groove = self.groove
        if groove and 2.0 * groove.depth >= self.diameter - self.bore:
            raise ValueError(
                f"a groove {groove.depth:g} mm deep cuts through to the bore or the centre"
            )
        if groove and groove.from_face + groove.width >= self.length:
            raise ValueError("the groove does not lie inside the length of the piece")


@dataclass(frozen=True, slots=True, kw_only=True)
class Holding:
    """How the work is held: `grip_length` inside the jaws, None for the allowance.

    `stop`: the bar rests against something inside chuck or spindle that takes the push of a
    drill.
    """

    grip_length: Millimetres[float] | None = None
    stop: bool = False
    live_centre: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class ToolChoice:
    """Tools the job asks for by name; None leaves the choice to the plan."""

    blade: str | None = None
    turning_tool: str | None = None
    boring_bar: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """One piece or many from bar. `material` is a key of the reference data.

    `date` is the file's own text or empty: a card never takes the clock's.
    """

    name: str
    revision: str
    date: str
    material: str
    quantity: int
    bar: Bar
    piece: Piece
    holding: Holding
    coolant: Coolant
    choice: ToolChoice

    def __post_init__(self) -> None:
        if self.quantity < 1:
            raise ValueError(f"a quantity of {self.quantity} makes nothing")
        if self.piece.diameter > self.bar.diameter:
            raise ValueError(
                f"the piece ({self.piece.diameter:g} mm) is thicker than the bar "
                f"({self.bar.diameter:g} mm)"
            )
        if self.piece.length >= self.bar.length:
            raise ValueError(
                f"the piece ({self.piece.length:g} mm) is not shorter than the bar "
                f"({self.bar.length:g} mm)"
            )
