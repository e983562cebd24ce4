"""The tables of a shop file: the keys of each, and what reads the value of each."""

from chartgen.description.choices import LayoutName, NameIn, OneOf
from chartgen.description.fields import (
    Allowances,
    Count,
    DateText,
    InUnit,
    JawDistance,
    Number,
    ReadingPair,
    Strip,
    Words,
    YesNo,
)
from chartgen.description.lists import Diameters, Distinct, Speeds, Strips
from chartgen.description.reading_tables import MeasuredTable, ReadingTable
from chartgen.description.tables import (
    ListOf,
    Table,
    TableOf,
    only_beside,
    optional,
    required,
    required_unless,
    when_missing,
)
from chartgen.description.tool_tables import (
    BoringBarTable,
    DrillsTable,
    TailstockTable,
    TurningToolTable,
)
from chartgen.model.blade import Edge, ToolMaterial
from chartgen.model.lathe import BarSurface, ChuckKind, DialReads, JawFace
from chartgen.model.motor import AboveBase, MotorKind, PowerIs, SelfCooling
from chartgen.model.shop import Feeding, Language, LengthUnits
from chartgen.quantities import FRACTION, MM, MM_REV, N_M, N_PER_MM, RPM, UM, WATT

SPEED = InUnit(RPM)
SHARE = InUnit(FRACTION)
TEXT = Words()
SWITCH = YesNo()

# Bounds that nothing on or about a small lathe passes; a slip of the hand or another unit does.
# A power this far out is mostly a slip of its unit: "mW" for "kW", or "kW" for "W".
POWER = InUnit(WATT, bounds=(20.0, 50e3), mend="Check the unit.")
BASE_SPEED = InUnit(RPM, bounds=(200.0, 60e3))
FASTEST_SPINDLE = InUnit(RPM, bounds=(50.0, 20e3))
CHUCK_SIZE = InUnit(MM, bounds=(25.0, 800.0))
TRAVEL = InUnit(MM, bounds=(0.2, 12.0))
DIVISIONS = Count(bounds=(4, 1000))
BACKLASH = InUnit(MM, or_zero=True, bounds=(0.0, 5.0))
POWER_FEED = InUnit(MM_REV, bounds=(0.001, 2.0))
CARRIAGE_TRAVEL = InUnit(
    MM, bounds=(2.0, 150.0), mend="Turn its wheel once and measure how far the carriage went."
)
SWING = InUnit(
    MM, bounds=(15.0, 1000.0), mend="Give the largest diameter that turns over the cross-slide."
)
SPINDLE_BORE = InUnit(MM, bounds=(3.0, 250.0))
TOOL_STIFFNESS = InUnit(N_PER_MM, bounds=(100.0, 1e6))
BLADE_WIDTH = InUnit(MM, bounds=(0.3, 12.0))
BLADE_HEIGHT = InUnit(MM, bounds=(3.0, 80.0))
PROJECTION = InUnit(MM, bounds=(2.0, 200.0))
DIAMETER = InUnit(MM, bounds=(0.5, 500.0))

# Which kinds of motor make use of which key; `limits.spindle` has the curves.
LINE_MOTORS = {MotorKind.THREE_PHASE, MotorKind.SINGLE_PHASE}
DRIVEN = {MotorKind.INVERTER, MotorKind.BRUSHED_DC, MotorKind.BRUSHLESS}
JAWED = {ChuckKind.SCROLL, ChuckKind.FOUR_JAW}

LINE_SPEED = 'Add a line such as base_speed = "1400 rpm".'
HOW_TO_ADD_BASE_SPEED: dict[object, str] = {
    MotorKind.THREE_PHASE: LINE_SPEED,
    MotorKind.SINGLE_PHASE: LINE_SPEED,
    MotorKind.INVERTER: LINE_SPEED,
    MotorKind.BRUSHED_DC: (
        'Add a line such as base_speed = "4000 rpm"; without a plate, '
        "the no-load speed divided by {known.dc_no_load:g} serves."
    ),
    MotorKind.BRUSHLESS: 'Add a line such as base_speed = "3000 rpm".',
}


class ShopTable(Table):
    """[shop]: what the cards are called."""

    __slots__ = ()
    name = required(TEXT)
    revision = optional(TEXT, default="")
    date = optional(DateText(longest=20), default="")


class MotorTable(Table):
    """[lathe.motor]: what the plates of motor and controller state."""

    __slots__ = ()
    kind = required(OneOf(MotorKind))
    power = required_unless("kind", MotorKind.MEASURED, POWER)
    power_is = required_unless("kind", MotorKind.MEASURED, OneOf(PowerIs))
    base_speed = when_missing(
        "kind",
        HOW_TO_ADD_BASE_SPEED,
        required_unless("kind", MotorKind.MEASURED, BASE_SPEED),
    )
    fastest = optional(SPEED, default=None)
    breakdown = only_beside(
        "kind", LINE_MOTORS | {MotorKind.INVERTER}, optional(SHARE, default=None)
    )
    overload = only_beside("kind", LINE_MOTORS | DRIVEN, optional(SHARE, default=None))
    current_limit = only_beside("kind", DRIVEN, optional(SHARE, default=None))
    forced_cooling = only_beside("kind", {MotorKind.INVERTER}, optional(SWITCH, default=False))
    self_cooling = only_beside(
        "kind",
        {MotorKind.INVERTER},
        optional(OneOf(SelfCooling), default=SelfCooling.CAUTIOUS),
    )
    above_base = only_beside(
        "kind",
        {MotorKind.BRUSHLESS},
        optional(OneOf(AboveBase), default=AboveBase.CONSTANT_POWER),
    )
    efficiency = optional(SHARE, default=None)


class PositionTable(Table):
    """[[lathe.drive.position]]: one belt or gear position, or one open range."""

    __slots__ = ()
    name = required(TEXT)
    mark = optional(Words(longest=3, or_blank=True), default="")
    speeds = required(Speeds(ListOf(SPEED)))
    dial_step = optional(SPEED, default=10.0)
    motor_ratio = optional(Number(), default=None)
    readings = optional(ListOf(ReadingPair()), default=())


class DriveTable(Table):
    """[lathe.drive]: from the motor to the spindle."""

    __slots__ = ()
    fastest_spindle = required(FASTEST_SPINDLE)
    elements = optional(ListOf(NameIn("transmission", listed=True)), default=())
    efficiency = optional(SHARE, default=None)
    position = required(ListOf(TableOf(PositionTable)))


class ChuckTable(Table):
    """[lathe.chuck]: the chuck in use."""

    __slots__ = ()
    size = required(CHUCK_SIZE)
    marked_speed = optional(SPEED, default=None)
    kind = optional(OneOf(ChuckKind), default=ChuckKind.SCROLL)
    jaws = only_beside("kind", JAWED, optional(OneOf(JawFace), default=JawFace.SMOOTH))
    key_torque = only_beside("kind", JAWED, optional(InUnit(N_M), default=None))


class CrossSlideTable(Table):
    """[lathe.cross_slide]: the screw, the dial and the feeds behind the parting tool."""

    __slots__ = ()
    travel_per_turn = required(TRAVEL)
    divisions = required(DIVISIONS)
    dial_reads = required(OneOf(DialReads))
    backlash = optional(BACKLASH, default=None)
    power_feeds = optional(Distinct(ListOf(POWER_FEED)), default=())


class CarriageTable(Table):
    """[lathe.carriage]: what moves the tool along the bar."""

    __slots__ = ()
    travel_per_turn = required(CARRIAGE_TRAVEL)
    power_feeds = optional(Distinct(ListOf(POWER_FEED)), default=())


class LatheTable(Table):
    """[lathe]: one particular machine."""

    __slots__ = ()
    name = required(TEXT)
    motor = required(TableOf(MotorTable))
    drive = required(TableOf(DriveTable))
    chuck = required(TableOf(ChuckTable))
    cross_slide = required(TableOf(CrossSlideTable))
    tool_stiffness = optional(TOOL_STIFFNESS, default=None)
    swing = optional(SWING, default=None)
    spindle_bore = optional(SPINDLE_BORE, default=None)
    carriage = optional(TableOf(CarriageTable), default=None)


class WorkTable(Table):
    """[work]: how the bar is set."""

    __slots__ = ()
    surface = optional(OneOf(BarSurface), default=BarSurface.BRIGHT)
    jaw_distance = optional(JawDistance(MM), default=None)
    bar_behind = optional(InUnit(MM, or_zero=True), default=0.0)


class BladeTable(Table):
    """[[blade]]: one parting blade in its holder."""

    __slots__ = ()
    name = required(TEXT)
    tool = required(OneOf(ToolMaterial))
    edge = required(OneOf(Edge))
    edge_radius = optional(InUnit(UM), default=None)
    worn = optional(SWITCH, default=False)
    insert_width = required(BLADE_WIDTH)
    thickness = required(BLADE_WIDTH)
    height = required(BLADE_HEIGHT)
    projection = required(PROJECTION)
    strips = optional(Strips(ListOf(Strip())), default=())


class PrintTable(Table):
    """[print]: what to print."""

    __slots__ = ()
    materials = required(Distinct(ListOf(NameIn("materials"))))
    diameters = required(Diameters(DIAMETER))
    layouts = required(Distinct(ListOf(LayoutName("layouts"))))
    units = optional(OneOf(LengthUnits), default=LengthUnits.METRIC)
    feeding = optional(OneOf(Feeding), default=Feeding.HAND)
    language = optional(OneOf(Language), default=Language.ENGLISH)


class ShopFile(Table):
    """The whole file."""

    __slots__ = ()
    shop = required(TableOf(ShopTable))
    lathe = required(TableOf(LatheTable))
    blade = required(ListOf(TableOf(BladeTable)))
    turning_tool = optional(ListOf(TableOf(TurningToolTable)), default=())
    boring_bar = optional(ListOf(TableOf(BoringBarTable)), default=())
    drills = optional(TableOf(DrillsTable), default=None)
    tailstock = optional(TableOf(TailstockTable), default=None)
    work = optional(TableOf(WorkTable), default=None)
    print = required(TableOf(PrintTable))
    allowances = optional(Allowances(), default=None)
    measured = optional(ListOf(TableOf(MeasuredTable)), default=())
    reading = optional(ListOf(TableOf(ReadingTable)), default=())
