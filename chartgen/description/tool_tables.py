"""The tables of a shop file for the tools beside the blades; all of them may be left out."""

from chartgen.description.choices import OneOf
from chartgen.description.fields import InUnit, Words, YesNo
from chartgen.description.lists import Diameters
from chartgen.description.tables import Table, optional, required
from chartgen.model.blade import ToolMaterial
from chartgen.model.tooling import BarMaterial, DrillPoint
from chartgen.quantities import MM

# Bounds that no tool of a small lathe passes; a slip of the hand or another unit does.
# ISO 1832 writes the nose radius of an insert in tenths of a millimetre.
NOSE_RADIUS = InUnit(
    MM,
    bounds=(0.02, 5.0),
    mend="Check the unit: an insert named ...04 has a radius of '0.4 mm'.",
)
LARGEST_DEPTH = InUnit(
    MM, bounds=(0.02, 10.0), mend="Give the depth off the radius in one pass; check the unit."
)
SHANK = InUnit(MM, bounds=(1.5, 63.0))
REACH = InUnit(MM, bounds=(3.0, 600.0))
SMALLEST_BORE = InUnit(MM, bounds=(2.0, 300.0))
DRILL = InUnit(MM, bounds=(0.3, 80.0))
CENTRE_DRILL = InUnit(
    MM, bounds=(0.3, 12.0), mend="Give the diameter of its pilot, as in '2.5 mm'."
)
TAILSTOCK_TRAVEL = InUnit(
    MM, bounds=(0.2, 15.0), mend="Turn its wheel once and measure how far the centre came out."
)
LARGEST_DRILL = InUnit(MM, bounds=(1.0, 80.0))


class TurningToolTable(Table):
    """[[turning_tool]]: one tool for facing and outside turning."""

    __slots__ = ()
    name = required(Words())
    tool = required(OneOf(ToolMaterial))
    nose_radius = required(NOSE_RADIUS)
    largest_depth = optional(LARGEST_DEPTH, default=None)


class BoringBarTable(Table):
    """[[boring_bar]]: one boring bar with its edge."""

    __slots__ = ()
    name = required(Words())
    tool = required(OneOf(ToolMaterial))
    shank = required(OneOf(BarMaterial))
    diameter = required(SHANK)
    reach = required(REACH)
    smallest_bore = required(SMALLEST_BORE)
    nose_radius = required(NOSE_RADIUS)


class DrillsTable(Table):
    """[drills]: the twist drills that are there."""

    __slots__ = ()
    diameters = required(Diameters(DRILL, in_any_order=True))
    point = optional(OneOf(DrillPoint), default=DrillPoint.STANDARD)
    centre_drill = optional(CENTRE_DRILL, default=None)


class TailstockTable(Table):
    """[tailstock]: its wheel, its drill chuck, its centre."""

    __slots__ = ()
    travel_per_turn = required(TAILSTOCK_TRAVEL)
    largest_drill = required(LARGEST_DRILL)
    live_centre = optional(YesNo(), default=False)
