"""The tables of a shop file and the keys each takes, also as a JSON Schema for editors."""

from typing import Annotated, Any

from pydantic import (
    AfterValidator,
    BaseModel,
    ConfigDict,
    Field,
    ValidationInfo,
    WrapValidator,
    field_validator,
)
from pydantic_core import PydanticCustomError

from chartgen.description.fields import (
    DateText,
    InUnit,
    NameIn,
    Number,
    OneOf,
    ReadingPair,
    Words,
    YesNo,
)
from chartgen.description.lists import (
    SingleSpeeds,
    SpeedRange,
    distinct,
    read_diameters,
    read_speeds,
)
from chartgen.model.blade import Edge, ToolMaterial
from chartgen.model.lathe import DialReads, Reading
from chartgen.model.motor import AboveBase, MotorKind, PowerIs
from chartgen.model.shop import Feeding, LengthUnits
from chartgen.quantities import FRACTION, MM, MM_REV, RPM, UM, WATT

Length = Annotated[float, InUnit(MM)]
Radius = Annotated[float, InUnit(UM)]
Feed = Annotated[float, InUnit(MM_REV)]
Speed = Annotated[float, InUnit(RPM)]
Power = Annotated[float, InUnit(WATT)]
Share = Annotated[float, InUnit(FRACTION)]
Text = Annotated[str, Words()]
Switch = Annotated[bool, YesNo()]
Names = AfterValidator(distinct)
AT_LEAST_ONE = Field(min_length=1)


class Table(BaseModel):
    """A table of the file; a key it does not know is a fault."""

    model_config = ConfigDict(extra="forbid", frozen=True)


class ShopTable(Table):
    """[shop]: what the cards are called."""

    name: Text
    revision: Text = ""
    date: Annotated[str, DateText()] = ""


class MotorTable(Table):
    """[lathe.motor]: what the plates of motor and controller state."""

    kind: Annotated[MotorKind, OneOf(MotorKind)]
    power: Power | None = Field(default=None, validate_default=True)
    power_is: Annotated[PowerIs, OneOf(PowerIs)] | None = Field(default=None, validate_default=True)
    base_speed: Speed | None = Field(default=None, validate_default=True)
    fastest: Speed | None = None
    breakdown: Share | None = None
    overload: Share | None = None
    current_limit: Share | None = None
    forced_cooling: Switch = False
    above_base: Annotated[AboveBase, OneOf(AboveBase)] = AboveBase.CONSTANT_POWER
    efficiency: Share | None = None

    @field_validator("power", "power_is", "base_speed")
    @classmethod
    def _stated_unless_measured(cls, value: object, info: ValidationInfo) -> object:
        if value is None and info.data.get("kind") is not MotorKind.MEASURED:
            raise PydanticCustomError("missing_plate_value", "is missing")
        return value


class PositionTable(Table):
    """[[lathe.drive.position]]: one belt or gear position, or one open range."""

    name: Text
    mark: Annotated[str, Words(longest=3)] = ""
    speeds: Annotated[list[Speed], AT_LEAST_ONE, WrapValidator(read_speeds)]
    dial_step: Speed = 10.0
    motor_ratio: Annotated[float, Number()] | None = None
    readings: Annotated[list[Annotated[Reading, ReadingPair()]], AT_LEAST_ONE] | None = None

    @property
    def speeds_given(self) -> SpeedRange | SingleSpeeds:
        """What `speeds` was read as."""
        given: Any = self.speeds
        assert isinstance(given, SpeedRange | SingleSpeeds)  # noqa: S101 - read_speeds made it
        return given


class DriveTable(Table):
    """[lathe.drive]: from the motor to the spindle."""

    fastest_spindle: Speed
    elements: Annotated[list[Annotated[str, NameIn("transmission")]], AT_LEAST_ONE] | None = None
    efficiency: Share | None = None
    position: Annotated[list[PositionTable], AT_LEAST_ONE]


class ChuckTable(Table):
    """[lathe.chuck]: the chuck in use."""

    size: Length
    marked_speed: Speed | None = None


class CrossSlideTable(Table):
    """[lathe.cross_slide]: the screw, the dial and the feeds behind the parting tool."""

    travel_per_turn: Length
    divisions: Annotated[int, Number(whole=True)]
    dial_reads: Annotated[DialReads, OneOf(DialReads)]
    backlash: Annotated[float, InUnit(MM, or_zero=True)] | None = None
    power_feeds: Annotated[list[Feed], AT_LEAST_ONE, Names] | None = None


class LatheTable(Table):
    """[lathe]: one particular machine."""

    name: Text
    motor: MotorTable
    drive: DriveTable
    chuck: ChuckTable
    cross_slide: CrossSlideTable


class BladeTable(Table):
    """[[blade]]: one parting blade in its holder."""

    name: Text
    tool: Annotated[ToolMaterial, OneOf(ToolMaterial)]
    edge: Annotated[Edge, OneOf(Edge)]
    edge_radius: Radius | None = None
    worn: Switch = False
    insert_width: Length
    thickness: Length
    height: Length
    projection: Length


class PrintTable(Table):
    """[print]: what to print."""

    materials: Annotated[list[Annotated[str, NameIn("materials")]], AT_LEAST_ONE, Names]
    diameters: Annotated[list[Length], AT_LEAST_ONE, WrapValidator(read_diameters)]
    layouts: Annotated[list[Annotated[str, NameIn("layouts")]], AT_LEAST_ONE, Names]
    units: Annotated[LengthUnits, OneOf(LengthUnits)] = LengthUnits.METRIC
    feeding: Annotated[Feeding, OneOf(Feeding)] = Feeding.HAND


class ShopFile(Table):
    """The whole file. `allowances` are checked by name in `assemble`."""

    shop: ShopTable
    lathe: LatheTable
    blade: Annotated[list[BladeTable], AT_LEAST_ONE]
    print: PrintTable
    allowances: dict[str, Any] = {}
