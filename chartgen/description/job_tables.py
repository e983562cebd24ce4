"""The tables of a job file: the bar that is there, the piece that is wanted."""

from chartgen.description.choices import NameIn, OneOf
from chartgen.description.fields import Count, DateText, InUnit, Words, YesNo
from chartgen.description.problems import ComplaintError
from chartgen.description.tables import Place, Table, TableOf, optional, required
from chartgen.model.job import Coolant
from chartgen.model.lathe import BarSurface
from chartgen.quantities import MM

# Bounds that no work on a small lathe passes; a slip of the hand or another unit does.
DIAMETER = InUnit(MM, bounds=(0.5, 500.0))
BAR_LENGTH = InUnit(MM, bounds=(5.0, 6000.0))
RUN_OUT = InUnit(
    MM,
    or_zero=True,
    bounds=(0.0, 5.0),
    mend="Give how far the dial gauge moves in one turn, as in '0.05 mm'.",
)
BEHIND = InUnit(MM, or_zero=True, bounds=(0.0, 6000.0))
PIECE_LENGTH = InUnit(MM, bounds=(0.3, 3000.0))
BORE = InUnit(MM, or_zero=True, bounds=(0.0, 500.0))
CHAMFER = InUnit(MM, or_zero=True, bounds=(0.0, 20.0))
GROOVE_WIDTH = InUnit(MM, bounds=(0.3, 200.0))
GROOVE_DEPTH = InUnit(MM, bounds=(0.02, 100.0))
FROM_FACE = InUnit(MM, or_zero=True, bounds=(0.0, 3000.0))
GRIP_LENGTH = InUnit(MM, bounds=(2.0, 500.0))
LONGEST_TOLERANCE = 60


class Quantity(Count):
    """How many pieces are wanted."""

    def __call__(self, value: object, place: Place) -> int:
        """Return the number."""
        if value == 0 and not isinstance(value, bool):
            problem = "is 0, which makes nothing."
            raise ComplaintError(problem, "Give the number of pieces wanted, 1 or more.")
        return super().__call__(value, place)


QUANTITY = Quantity(bounds=(1, 10_000))


class JobTable(Table):
    """[job]: what the piece is called, what it is made of, how many are wanted."""

    __slots__ = ()
    name = required(Words())
    revision = optional(Words(), default="")
    date = optional(DateText(longest=20), default="")
    material = required(NameIn("materials"))
    quantity = optional(QUANTITY, default=1)
    coolant = optional(OneOf(Coolant), default=Coolant.DRY)


class BarTable(Table):
    """[bar]: the stock in the chuck."""

    __slots__ = ()
    diameter = required(DIAMETER)
    length = required(BAR_LENGTH)
    surface = optional(OneOf(BarSurface), default=BarSurface.BRIGHT)
    run_out = optional(RUN_OUT, default=None)
    behind = optional(BEHIND, default=0.0)


class GrooveTable(Table):
    """[piece.groove]: one groove in the outside."""

    __slots__ = ()
    width = required(GROOVE_WIDTH)
    depth = required(GROOVE_DEPTH)
    from_face = required(FROM_FACE)


class PieceTable(Table):
    """[piece]: what is wanted."""

    __slots__ = ()
    diameter = required(DIAMETER)
    length = required(PIECE_LENGTH)
    bore = optional(BORE, default=0.0)
    chamfer = optional(CHAMFER, default=0.0)
    tolerance = optional(Words(longest=LONGEST_TOLERANCE, or_blank=True), default="")
    groove = optional(TableOf(GrooveTable), default=None)


class HoldingTable(Table):
    """[holding]: how the work is held."""

    __slots__ = ()
    grip_length = optional(GRIP_LENGTH, default=None)
    stop = optional(YesNo(), default=False)
    live_centre = optional(YesNo(), default=False)


class ChoiceTable(Table):
    """[tools]: the tools asked for by name; without a name the plan chooses."""

    __slots__ = ()
    blade = optional(Words(), default=None)
    turning_tool = optional(Words(), default=None)
    boring_bar = optional(Words(), default=None)


class JobFile(Table):
    """The whole file."""

    __slots__ = ()
    job = required(TableOf(JobTable))
    bar = required(TableOf(BarTable))
    piece = required(TableOf(PieceTable))
    holding = optional(TableOf(HoldingTable), default=None)
    tools = optional(TableOf(ChoiceTable), default=None)
