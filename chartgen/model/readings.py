"""What the owner read off his own lathe: records of one reading each, as he took them."""

from dataclasses import dataclass
from typing import TypeAlias

from chartgen.quantities import (
    Fraction,
    Millimetres,
    MillimetresPerRev,
    NewtonMetres,
    Newtons,
    RevsPerMinute,
    Watts,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownCut:
    """The cut during which something was read; `speed` is the spindle's while it cuts.

    `diameter` is where the blade stood at the moment of the reading, not the bar's.
    `feed_error` is how far off the feed may be, as a share; None leaves the default.
    """

    material: str
    blade: str
    diameter: Millimetres[float]
    speed: RevsPerMinute[float]
    feed: MillimetresPerRev[float]
    feed_error: Fraction[float] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class WattsReading:
    """Watts from the socket, spindle running idle and in a cut at the same setting."""

    date: str
    cut: KnownCut
    idle_power: Watts[float]
    cut_power: Watts[float]
    meter_error: Watts[float] | None = None

    def __post_init__(self) -> None:
        if self.cut_power <= self.idle_power:
            raise ValueError(
                f"cut_power ({self.cut_power:g} W) is not above idle_power ({self.idle_power:g} W)"
                "; read both at the same setting, idle before the blade touches"
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class DroopReading:
    """Spindle speed idle and in a cut at the same setting, by tachometer."""

    date: str
    cut: KnownCut
    idle_speed: RevsPerMinute[float]
    position: str = ""
    tachometer_error: RevsPerMinute[float] | None = None

    def __post_init__(self) -> None:
        if self.cut.speed >= self.idle_speed:
            raise ValueError(
                f"idle_speed ({self.idle_speed:g} rpm) is not above the speed in the cut "
                f"({self.cut.speed:g} rpm); a drive that holds its speed shows no droop, read "
                "watts instead"
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class StallReading:
    """A cut whose feed was raised until the spindle stopped; its feed is that at the stall."""

    date: str
    cut: KnownCut
    position: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class DeflectionReading:
    """A pull down on the blade and how far a dial gauge on its holder moved."""

    date: str
    pull: Newtons[float]
    movement: Millimetres[float]


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyTorqueReading:
    """One pull of a torque wrench in the place of the chuck key, as hard as is usual."""

    date: str
    torque: NewtonMetres[float]


CutReading: TypeAlias = WattsReading | DroopReading | StallReading
ShopReading: TypeAlias = CutReading | DeflectionReading | KeyTorqueReading
