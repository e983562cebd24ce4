"""The tables of a shop file: the keys of each, and what reads the value of each."""

from chartgen.description.fields import (
    Allowances,
    Count,
    DateText,
    InUnit,
    JawDistance,
    NameIn,
    Number,
    OneOf,
    ReadingPair,
    Strip,
    Words,
    YesNo,
)
from chartgen.description.lists import Diameters, Distinct, Speeds, Strips
from chartgen.description.tables import (
    ListOf,
    Table,
    TableOf,
    optional,
    required,
    required_unless,
)
from chartgen.model.blade import Edge, ToolMaterial
from chartgen.model.lathe import BarSurface, ChuckKind, DialReads, JawFace
from chartgen.model.motor import AboveBase, MotorKind, PowerIs
from chartgen.model.shop import Feeding, LengthUnits
from chartgen.quantities import FRACTION, MM, MM_REV, N_M, N_PER_MM, RPM, UM, WATT

LENGTH = InUnit(MM)
SPEED = InUnit(RPM)
POWER = InUnit(WATT)
SHARE = InUnit(FRACTION)
TEXT = Words()
SWITCH = YesNo()


class ShopTable(Table):
    """[shop]: what the cards are called."""

    __slots__ = ()
    name = required(TEXT)
    revision = optional(TEXT, default="")
    date = optional(DateText(), default="")


class MotorTable(Table):
    """[lathe.motor]: what the plates of motor and controller state."""

    __slots__ = ()
    kind = required(OneOf(MotorKind))
    power = required_unless("kind", MotorKind.MEASURED, POWER)
    power_is = required_unless("kind", MotorKind.MEASURED, OneOf(PowerIs))
    base_speed = required_unless("kind", MotorKind.MEASURED, SPEED)
    fastest = optional(SPEED, default=None)
    breakdown = optional(SHARE, default=None)
    overload = optional(SHARE, default=None)
    current_limit = optional(SHARE, default=None)
    forced_cooling = optional(SWITCH, default=False)
    above_base = optional(OneOf(AboveBase), default=AboveBase.CONSTANT_POWER)
    efficiency = optional(SHARE, default=None)


class PositionTable(Table):
    """[[lathe.drive.position]]: one belt or gear position, or one open range."""

    __slots__ = ()
    name = required(TEXT)
    mark = optional(Words(longest=3), default="")
    speeds = required(Speeds(ListOf(SPEED)))
    dial_step = optional(SPEED, default=10.0)
    motor_ratio = optional(Number(), default=None)
    readings = optional(ListOf(ReadingPair()), default=())


class DriveTable(Table):
    """[lathe.drive]: from the motor to the spindle."""

    __slots__ = ()
    fastest_spindle = required(SPEED)
    elements = optional(ListOf(NameIn("transmission")), default=())
    efficiency = optional(SHARE, default=None)
    position = required(ListOf(TableOf(PositionTable)))


class ChuckTable(Table):
    """[lathe.chuck]: the chuck in use."""

    __slots__ = ()
    size = required(LENGTH)
    marked_speed = optional(SPEED, default=None)
    kind = optional(OneOf(ChuckKind), default=ChuckKind.SCROLL)
    jaws = optional(OneOf(JawFace), default=JawFace.SMOOTH)
    key_torque = optional(InUnit(N_M), default=None)


class CrossSlideTable(Table):
    """[lathe.cross_slide]: the screw, the dial and the feeds behind the parting tool."""

    __slots__ = ()
    travel_per_turn = required(LENGTH)
    divisions = required(Count())
    dial_reads = required(OneOf(DialReads))
    backlash = optional(InUnit(MM, or_zero=True), default=None)
    power_feeds = optional(Distinct(ListOf(InUnit(MM_REV))), default=())


class LatheTable(Table):
    """[lathe]: one particular machine."""

    __slots__ = ()
    name = required(TEXT)
    motor = required(TableOf(MotorTable))
    drive = required(TableOf(DriveTable))
    chuck = required(TableOf(ChuckTable))
    cross_slide = required(TableOf(CrossSlideTable))
    tool_stiffness = optional(InUnit(N_PER_MM), default=None)


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
    insert_width = required(LENGTH)
    thickness = required(LENGTH)
    height = required(LENGTH)
    projection = required(LENGTH)
    strips = optional(Strips(ListOf(Strip())), default=())


class PrintTable(Table):
    """[print]: what to print."""

    __slots__ = ()
    materials = required(Distinct(ListOf(NameIn("materials"))))
    diameters = required(Diameters(ListOf(LENGTH)))
    layouts = required(Distinct(ListOf(NameIn("layouts"))))
    units = optional(OneOf(LengthUnits), default=LengthUnits.METRIC)
    feeding = optional(OneOf(Feeding), default=Feeding.HAND)


class ShopFile(Table):
    """The whole file."""

    __slots__ = ()
    shop = required(TableOf(ShopTable))
    lathe = required(TableOf(LatheTable))
    blade = required(ListOf(TableOf(BladeTable)))
    work = optional(TableOf(WorkTable), default=None)
    print = required(TableOf(PrintTable))
    allowances = optional(Allowances(), default=None)
