"""A shop: one lathe, its blades, and what to print for them."""

from dataclasses import dataclass, field
from enum import Enum
from typing import TYPE_CHECKING

from chartgen.model.blade import Blade
from chartgen.model.lathe import Lathe, Work
from chartgen.model.measured import Assumption, Measured
from chartgen.model.tooling import Tools
from chartgen.quantities import Millimetres

if TYPE_CHECKING:
    # A run that only prints has no use for the records themselves.
    from chartgen.model.readings import ShopReading


class LengthUnits(Enum):
    """Units of the printed card."""

    METRIC = "metric"
    INCH = "inch"


class Language(Enum):
    """Language of the printed card."""

    ENGLISH = "en"
    GERMAN = "de"


class Feeding(Enum):
    """How the cross-slide is moved in the cut."""

    HAND = "hand"
    POWER = "power"


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintRequest:
    """What to print: material keys, diameters, layouts, units.

    `own_layouts` are layouts that did not come with the program: name and text of each file.
    """

    materials: tuple[str, ...]
    diameters: tuple[Millimetres[float], ...]
    layouts: tuple[str, ...]
    units: LengthUnits
    feeding: Feeding
    language: Language = Language.ENGLISH
    own_layouts: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Shop:
    """Everything one shop file says.

    `allowances` holds only what the file overrides. `measured` tells which of its values were
    measured on this lathe, `readings` from what. `date` is the file's own date text, or
    empty: a card never takes the clock's, so that the same file gives the same bytes.
    """

    name: str
    revision: str
    date: str
    lathe: Lathe
    blades: tuple[Blade, ...]
    work: Work = field(default_factory=Work)
    tools: Tools = field(default_factory=Tools)
    request: PrintRequest
    allowances: dict[str, float] = field(default_factory=dict)
    measured: tuple[Measured, ...] = ()
    readings: "tuple[ShopReading, ...]" = ()

    def __post_init__(self) -> None:
        names = [blade.name for blade in self.blades]
        if len(names) != len(set(names)):
            raise ValueError("two blades have the same name")
        if self.request.feeding is Feeding.POWER and not self.lathe.cross_slide.power_feeds:
            raise ValueError(
                "feeding = 'power' needs power_feeds in the cross-slide; list them or feed by hand"
            )

    def measured_of(self, assumption: Assumption) -> Measured | None:
        """Return how an assumption was measured, or None where it was not."""
        return next((one for one in self.measured if one.assumption is assumption), None)
