"""The change card as strings: what PDF, terminal, CSV and JSON all show."""

from dataclasses import dataclass
from enum import Enum

from chartgen.wording.figure import PrintedCurves
from chartgen.wording.signs import LegendEntry


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedFact:
    """One thing that is otherwise: its key in the shop file or its name, before, after."""

    name: str
    before: str
    after: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FactGroup:
    """Facts under a title."""

    title: str
    facts: tuple[PrintedFact, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedSide:
    """A cell as one of the two shops prints it; the parts are those of a chart's cell."""

    speed: str
    position: str
    feed: str
    pace: str
    sign: str
    way_out: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MovedCell:
    """A cell that moved; `moved` says in what, `limit` what is met first now."""

    diameter: str
    before: PrintedSide
    after: PrintedSide
    limit: str
    moved: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MovedGroup:
    """The moved cells of one material and blade."""

    title: str
    material: str
    blade: str
    rows: tuple[MovedCell, ...]


class CardState(Enum):
    """What a change does to a printed card, and the title it is listed under."""

    STALE = "Stale: take down and print again"
    NEW = "New: print"
    GONE = "No longer printed: take down"
    HOLDS = "Numbers hold; the card still tells the old assumptions"
    CURRENT = "Current: same check code"


@dataclass(frozen=True, slots=True, kw_only=True)
class CardLine:
    """A printed card: the name of its file, what it is about, what is to be said of it."""

    file_stem: str
    title: str
    state: CardState
    remark: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CellHeadings:
    """What stands over the moved cells."""

    diameter: str
    before: str
    after: str
    limit: str
    speed: str
    feed: str
    pace: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedChange:
    """Two shops compared, all text made."""

    title: str
    subtitle: str
    summary: tuple[str, ...]
    facts: tuple[FactGroup, ...]
    cards: tuple[CardLine, ...]
    headings: CellHeadings
    groups: tuple[MovedGroup, ...]
    figures: tuple[PrintedCurves, ...]
    legend: tuple[LegendEntry, ...]
