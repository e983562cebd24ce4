"""What a page holds, in mm from its top left corner, y down. A renderer only draws it."""

from dataclasses import dataclass
from enum import Enum

from chartgen.layout.primitives import Primitive
from chartgen.quantities import Millimetres
from chartgen.wording.figure import PrintedPanel


class Face(Enum):
    """A cut of the card's one font family."""

    REGULAR = "Regular"
    BOLD = "Bold"


class Align(Enum):
    """What `x` of a text means."""

    LEFT = "left"
    RIGHT = "right"
    CENTRE = "centre"


@dataclass(frozen=True, slots=True, kw_only=True)
class Text:
    """One line of text; `y` is its base line, `size` in points."""

    x: Millimetres[float]
    y: Millimetres[float]
    text: str
    size: float
    face: Face = Face.REGULAR
    align: Align = Align.LEFT
    paper: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """A straight line; `weight` in points."""

    x1: Millimetres[float]
    y1: Millimetres[float]
    x2: Millimetres[float]
    y2: Millimetres[float]
    weight: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Panel:
    """A filled rectangle in ink, or in paper, to keep lines off a text."""

    x: Millimetres[float]
    y: Millimetres[float]
    width: Millimetres[float]
    height: Millimetres[float]
    paper: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Plot:
    """The box of a pair of axes with its frame, grid and curves, but none of its texts."""

    x: Millimetres[float]
    y: Millimetres[float]
    width: Millimetres[float]
    height: Millimetres[float]
    panel: PrintedPanel
    x_grid: tuple[float, ...]
    y_grid: tuple[float, ...]
    meaning: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """Primitives of a unit square, drawn into a square of `size` mm."""

    x: Millimetres[float]
    y: Millimetres[float]
    size: Millimetres[float]
    primitives: tuple[Primitive, ...]
    meaning: str


Item = Text | Rule | Panel | Plot | Drawing


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """A page of a card; `side` is which side of its layout it is, from 0."""

    width: Millimetres[float]
    height: Millimetres[float]
    items: tuple[Item, ...]
    side: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Document:
    """A card's pages with what its file says of itself."""

    title: str
    subject: str
    pages: tuple[Page, ...]
