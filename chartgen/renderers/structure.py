"""The structure of a document: marked content on the pages, and the tree that orders it.

ISO 32000-1, 14.7 and 14.8: each stretch of a page is the content of an element of the tree or
an artifact, and the tree is walked by whoever reads a card aloud. The elements are written as
finished bytes: a card has two hundred of them, and building each from parts doubled its time.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field

from reportlab.pdfbase.pdfdoc import PDFName, PDFObject
from reportlab.pdfgen.canvas import Canvas

from chartgen.layout.legibility import POINT
from chartgen.layout.placed import Align, Drawing, Item, Panel, Plot, Rule, Text
from chartgen.layout.roles import Role, Tag, Tags
from chartgen.quantities import Millimetres
from chartgen.renderers.compact_file import Written
from chartgen.renderers.fonts import measure

Box = tuple[float, float, float, float]
Axes = tuple[float, float, float, float, float, float]
UPRIGHT: Axes = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)
"""Of a page that stands on no other: x and y of a card are those of the sheet."""


@dataclass(slots=True)
class _Element:
    """An element of the tree: its own object, its parent's, and the numbers of its content."""

    tag: Tag
    written: Written
    reference: str
    parent: str
    page: str
    kids: list[str] = field(default_factory=list)
    has_content: bool = False
    box: Box | None = None


class Structure:
    """Marks what is drawn on a canvas, page by page, and writes the tree at the end."""

    def __init__(self, canvas: Canvas) -> None:
        self._canvas = canvas
        self._root = Written()
        self._root_reference = self._reference(self._root)
        self._tops: list[str] = []
        self._elements: list[_Element] = []
        self._of_pages: list[list[str]] = []
        self._open: list[_Element] = []
        self._path: Tags | None = None
        self._owners: list[str] = []
        self._page_height = 0.0
        self._of_this_page: list[_Element] = []

    def begin_page(self, height: Millimetres[float]) -> None:
        """Begin a page: no element goes on from the one before."""
        self._page_height = height
        self._open = []
        self._path = None
        self._owners = []
        self._of_this_page = []

    def lead_to(self, item: Item, axes: Axes = UPRIGHT) -> None:
        """Mark what is drawn from here on as content of what the item is part of."""
        if item.tags != self._path:
            if self._path is not None:
                self._emit("EMC")
            self._path = item.tags
            if not item.tags:
                self._emit("/Artifact BMC")
            else:
                self._descend(item.tags)
                leaf = self._open[-1]
                number = len(self._owners)
                self._owners.append(leaf.reference)
                leaf.kids.append(str(number))
                leaf.has_content = True
                self._emit(f"/{leaf.tag.role.value} <</MCID {number}>> BDC")
        if item.tags and item.tags[-1].role is Role.FIGURE:
            leaf = self._open[-1]
            leaf.box = _joined(leaf.box, _box_of(item, self._page_height, axes))

    def end_stretch(self) -> None:
        """End the last stretch of a card; what follows is part of nothing before it."""
        if self._path is not None:
            self._emit("EMC")
        self._path = None
        self._open = []

    def close_page(self) -> None:
        """Tie the page just shown to its elements."""
        document = self._canvas._doc  # noqa: SLF001 - reportlab gives no other way
        page = document.Pages.pages[-1]
        page.StructParents = len(self._of_pages)
        page.Tabs = PDFName("S")
        page.__NoDefault__ = [*page.__NoDefault__, "StructParents", "Tabs"]
        reference = self._reference(page)
        for element in self._of_this_page:
            element.page = reference
        self._of_pages.append(self._owners)

    def write(self) -> None:
        """Write the tree into the document's catalog."""
        for element in self._elements:
            element.written.content = _bytes_of(element)
        numbers = " ".join(
            f"{page} [{' '.join(owners)}]" for page, owners in enumerate(self._of_pages)
        )
        kids = " ".join(self._tops)
        self._root.content = (
            f"<</Type/StructTreeRoot/K[{kids}]/ParentTree<</Nums[{numbers}]>>"
            f"/ParentTreeNextKey {len(self._of_pages)}>>"
        ).encode()
        catalog = self._canvas._doc.Catalog  # noqa: SLF001
        catalog.StructTreeRoot = self._root
        catalog.MarkInfo = Written(b"<</Marked true>>")

    def _descend(self, tags: Tags) -> None:
        """Open the elements of a path, keeping those it shares with the path before."""
        shared = 0
        for element, tag in zip(self._open, tags, strict=False):
            if element.tag != tag:
                break
            shared += 1
        del self._open[shared:]
        for tag in tags[shared:]:
            self._add(tag)

    def _add(self, tag: Tag) -> None:
        parent = self._open[-1] if self._open else None
        written = Written()
        element = _Element(
            tag=tag,
            written=written,
            reference=self._reference(written),
            parent=parent.reference if parent else self._root_reference,
            page="",
        )
        (parent.kids if parent else self._tops).append(element.reference)
        self._open.append(element)
        self._elements.append(element)
        self._of_this_page.append(element)

    def _reference(self, written: PDFObject) -> str:
        document = self._canvas._doc  # noqa: SLF001
        name = document.Reference(written).name
        number, generation = document.idToObjectNumberAndVersion[name]
        return f"{number} {generation} R"

    def _emit(self, code: str) -> None:
        self._canvas._code.append(code)  # noqa: SLF001


def _bytes_of(element: _Element) -> bytes:
    tag = element.tag
    parts = [f"<</S/{tag.role.value}/P {element.parent}"]
    if element.has_content:
        parts.append(f"/Pg {element.page}")
    if tag.alternative:
        parts.append(f"/Alt<{tag.alternative.encode('utf-16-be').hex()}>".replace("<", "<FEFF", 1))
    if attributes := _attributes(element):
        parts.append(f"/A {attributes}")
    if element.kids:
        kids = " ".join(element.kids)
        parts.append(f"/K {kids}" if len(element.kids) == 1 else f"/K[{kids}]")
    return "".join([*parts, ">>"]).encode()


def _attributes(element: _Element) -> str:
    tag = element.tag
    if element.box is not None:
        edges = " ".join(f"{edge:.2f}" for edge in element.box)
        return f"<</O/Layout/Placement/Block/BBox[{edges}]>>"
    if tag.role not in {Role.HEADER, Role.CELL}:
        return ""
    parts = [f"/Scope/{tag.scope}"] if tag.scope else []
    parts += [f"/ColSpan {tag.columns}"] if tag.columns > 1 else []
    parts += [f"/RowSpan {tag.rows}"] if tag.rows > 1 else []
    return f"<</O/Table{''.join(parts)}>>" if parts else ""


def _joined(box: Box | None, other: Box) -> Box:
    if box is None:
        return other
    return (
        min(box[0], other[0]),
        min(box[1], other[1]),
        max(box[2], other[2]),
        max(box[3], other[3]),
    )


def _box_of(item: Item, page_height: Millimetres[float], axes: Axes) -> Box:
    """Return left, bottom, right and top of an item [pt], from the page's lower left corner."""
    match item:
        case Rule():
            xs, ys = (item.x1, item.x2), (item.y1, item.y2)
        case Panel() | Plot():
            xs, ys = (item.x, item.x + item.width), (item.y, item.y + item.height)
        case Drawing():
            xs, ys = (item.x, item.x + item.size), (item.y, item.y + item.size)
        case Text():
            width = measure(item.text, item.face, item.size)
            share = {Align.LEFT: 0.0, Align.RIGHT: 1.0, Align.CENTRE: 0.5}[item.align]
            left = item.x - share * width
            xs, ys = (left, left + width), (item.y - item.size * POINT, item.y)
    a, b, c, d, e, f = axes
    corners = [(x, y) for x in xs for y in ys]
    return _points(
        [a * x + c * y + e for x, y in corners],
        [b * x + d * y + f for x, y in corners],
        page_height,
    )


def _points(xs: Sequence[float], ys: Sequence[float], page_height: float) -> Box:
    return (
        min(xs) / POINT,
        (page_height - max(ys)) / POINT,
        max(xs) / POINT,
        (page_height - min(ys)) / POINT,
    )
