"""The same card as typst markup: every text, rule, panel and sign of our pages, placed."""

from chartgen.layout.legibility import POINT
from chartgen.layout.placed import Align, Document, Drawing, Face, Item, Panel, Rule, Text
from chartgen.layout.primitives import Blocks, Disc, Primitive, Ring, Shape, Stroke

_COLOURS = {
    "ink": "black",
    "paper": "white",
    "mandatory": 'rgb("#005387")',
    "prohibition": 'rgb("#9B2423")',
    "warning": 'rgb("#F9A800")',
}


def typst_markup(document: Document, family: str) -> str:
    """Return a document's pages as markup that draws the same things at the same places."""
    pages = []
    for page in document.pages:
        items = "\n".join(line for item in page.items for line in _item(item))
        pages.append(
            f"#page(width: {page.width}mm, height: {page.height}mm, margin: 0mm)[\n{items}\n]"
        )
    return f'#set text(font: "{family}", top-edge: "baseline")\n' + "\n".join(pages)


def _place(x: float, y: float, body: str) -> str:
    return f"#place(top + left, dx: {x:.3f}mm, dy: {y:.3f}mm, {body})"


def _item(item: Item) -> list[str]:
    match item:
        case Text():
            quoted = item.text.replace("\\", "\\\\").replace('"', '\\"')
            weight = "bold" if item.face is Face.BOLD else "regular"
            fill = "white" if item.paper else "black"
            text = f'text(size: {item.size:.2f}pt, weight: "{weight}", fill: {fill}, "{quoted}")'
            if item.align is Align.RIGHT:
                text = f"box(width: 0mm, align(right, box({text})))"
            return [_place(item.x, item.y, text)]
        case Rule():
            end = f"({item.x2 - item.x1:.3f}mm, {item.y2 - item.y1:.3f}mm)"
            return [_place(item.x1, item.y1, f"line(end: {end}, stroke: {item.weight}pt)")]
        case Panel():
            size = f"width: {item.width:.3f}mm, height: {item.height:.3f}mm"
            return [_place(item.x, item.y, f"rect({size}, fill: black)")]
        case Drawing():
            return [
                _blocks(part, item) if isinstance(part, Blocks) else _primitive(part, item)
                for part in item.primitives
            ]


def _blocks(blocks: Blocks, at: Drawing) -> str:
    side = at.size / blocks.count
    return "\n".join(
        _place(
            at.x + column * side,
            at.y + (blocks.count - 1 - row) * side,
            f"rect(width: {length * side:.3f}mm, height: {side:.3f}mm, fill: black)",
        )
        for column, row, length in blocks.runs
    )


def _primitive(primitive: Primitive, at: Drawing) -> str:
    def points(corners: tuple[tuple[float, float], ...]) -> str:
        return ", ".join(f"({x * at.size:.3f}mm, {(1 - y) * at.size:.3f}mm)" for x, y in corners)

    match primitive:
        case Disc(x, y, r, fill):
            circle = f"circle(radius: {r * at.size:.3f}mm, fill: {_COLOURS[fill]})"
            return _place(at.x + (x - r) * at.size, at.y + (1 - y - r) * at.size, circle)
        case Ring(x, y, r, width, ink):
            half = r - width / 2.0
            stroke = f"{width * at.size / POINT:.3f}pt + {_COLOURS[ink]}"
            circle = f"circle(radius: {half * at.size:.3f}mm, stroke: {stroke})"
            return _place(at.x + (x - half) * at.size, at.y + (1 - y - half) * at.size, circle)
        case Shape(corners, fill):
            return _place(at.x, at.y, f"polygon(fill: {_COLOURS[fill]}, {points(corners)})")
        case Stroke(corners, width, ink):
            stroke = f"{width * at.size / POINT:.3f}pt + {_COLOURS[ink]}"
            first, *others = points(corners).split("), ")
            rest = "".join(f", curve.line({other.rstrip(')')}))" for other in others)
            start = f"curve.move({first.rstrip(')')}))"
            return _place(at.x, at.y, f"curve(stroke: {stroke}, {start}{rest})")
