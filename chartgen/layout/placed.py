"""What a page holds, in mm from its top left corner, y down. A renderer only draws it.

The order of a page's items is the order in which it is read; `tags` say what each is part of.
"""

from dataclasses import dataclass
from enum import Enum

from chartgen.layout.primitives import Blocks, Primitive
from chartgen.layout.roles import Tags
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
    tags: Tags = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """A straight line; `weight` in points, and so are the strokes and gaps of its `dash`."""

    x1: Millimetres[float]
    y1: Millimetres[float]
    x2: Millimetres[float]
    y2: Millimetres[float]
    weight: float
    dash: tuple[float, ...] = ()
    tags: Tags = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Panel:
    """A filled rectangle in ink, or in paper, to keep lines off a text."""

    x: Millimetres[float]
    y: Millimetres[float]
    width: Millimetres[float]
    height: Millimetres[float]
    paper: bool = False
    tags: Tags = ()


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
    tags: Tags = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """Primitives of a unit square, drawn into a square of `size` mm."""

    x: Millimetres[float]
    y: Millimetres[float]
    size: Millimetres[float]
    primitives: tuple[Primitive | Blocks, ...]
    meaning: str
    tags: Tags = ()


Item = Text | Rule | Panel | Plot | Drawing


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """One side of a card, or of a sheet with cards mounted on it.

    `side` is which side of its layout a page is, from 0.
    """

    width: Millimetres[float]
    height: Millimetres[float]
    items: tuple[Item, ...]
    side: int = 0
    mounted: tuple["Mounted", ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Mounted:
    """A page standing on a larger one.

    `turn` is in degrees, clockwise, by quarters; `x` and `y` are the top left corner of where
    the page stands when it has been turned.
    """

    x: Millimetres[float]
    y: Millimetres[float]
    turn: int
    page: Page

    @property
    def footprint(self) -> tuple[Millimetres[float], Millimetres[float]]:
        """Width and height of where the page stands."""
        width, height = self.page.width, self.page.height
        return (height, width) if self.turn % 180 else (width, height)

    @property
    def axes(self) -> tuple[float, float, float, float, float, float]:
        """a, b, c, d, e, f: a point (u, v) of the page lies at (a u + c v + e, b u + d v + f)."""
        width, height = self.footprint
        return {
            0: (1.0, 0.0, 0.0, 1.0, self.x, self.y),
            90: (0.0, 1.0, -1.0, 0.0, self.x + width, self.y),
            180: (-1.0, 0.0, 0.0, -1.0, self.x + width, self.y + height),
            270: (0.0, -1.0, 1.0, 0.0, self.x, self.y + height),
        }[self.turn % 360]


@dataclass(frozen=True, slots=True, kw_only=True)
class OutlineEntry:
    """A heading by which a reader finds a page; `level` 0 is the card's title."""

    title: str
    level: int
    page: int


@dataclass(frozen=True, slots=True)
class Attachment:
    """A file that a document carries."""

    name: str
    description: str
    media_type: str
    content: bytes


@dataclass(frozen=True, slots=True, kw_only=True)
class Document:
    """A card's pages with what its file says of itself and what it carries."""

    title: str
    subject: str
    pages: tuple[Page, ...]
    keywords: str = ""
    outline: tuple[OutlineEntry, ...] = ()
    language: str = "en-GB"
    attachments: tuple[Attachment, ...] = ()
