"""The same card as HTML for WeasyPrint: every text and rule placed, every sign as SVG."""

from html import escape
from pathlib import Path

from chartgen.layout.legibility import POINT
from chartgen.layout.placed import Align, Document, Drawing, Face, Item, Panel, Rule, Text
from chartgen.layout.primitives import Disc, Primitive, Ring, Shape, Stroke

_COLOURS = {
    "ink": "black",
    "paper": "white",
    "mandatory": "#005387",
    "prohibition": "#9B2423",
    "warning": "#F9A800",
}


def weasyprint_markup(document: Document, family: str, fonts: Path) -> str:
    """Return a document's pages as HTML that draws the same things at the same places."""
    first = document.pages[0]
    faces = "".join(
        f"@font-face {{ font-family: '{family}'; font-weight: {weight}; src: "
        f"url('{(fonts / f'IBMPlexSansCondensed-{face.value}.ttf').as_uri()}') }}"
        for face, weight in ((Face.REGULAR, 400), (Face.BOLD, 700))
    )
    style = (
        f"{faces} @page {{ size: {first.width}mm {first.height}mm; margin: 0 }}"
        f"body {{ margin: 0; font-family: '{family}' }}"
        f"section {{ position: relative; width: {first.width}mm; height: {first.height}mm;"
        "break-after: page; overflow: hidden } section > * { position: absolute;"
        "white-space: pre; line-height: 1 }"
    )
    pages = "".join(
        f"<section>{''.join(_item(item) for item in page.items)}</section>"
        for page in document.pages
    )
    return f"<html><head><style>{style}</style></head><body>{pages}</body></html>"


def _item(item: Item) -> str:
    match item:
        case Text():
            weight = 700 if item.face is Face.BOLD else 400
            side = "right: calc(100% - {x}mm)" if item.align is Align.RIGHT else "left: {x}mm"
            top = item.y - 0.9 * item.size * POINT
            colour = "color: white;" if item.paper else ""
            return (
                f'<span style="{side.format(x=f"{item.x:.3f}")}; top: {top:.3f}mm; {colour}'
                f'font: {weight} {item.size:.2f}pt/1 inherit">{escape(item.text)}</span>'
            )
        case Rule():
            width, height = item.x2 - item.x1, item.y2 - item.y1
            thick = item.weight * POINT
            return _box(item.x1, item.y1, max(width, thick), max(height, thick), "black")
        case Panel():
            return _box(item.x, item.y, item.width, item.height, "black")
        case Drawing():
            parts = "".join(_primitive(primitive) for primitive in item.primitives)
            return (
                f'<svg style="left: {item.x:.3f}mm; top: {item.y:.3f}mm" width="{item.size}mm" '
                f'height="{item.size}mm" viewBox="0 0 1 1">{parts}</svg>'
            )


def _box(x: float, y: float, width: float, height: float, colour: str) -> str:
    return (
        f'<i style="left: {x:.3f}mm; top: {y:.3f}mm; width: {width:.3f}mm; '
        f'height: {height:.3f}mm; background: {colour}"></i>'
    )


def _primitive(primitive: Primitive) -> str:
    def points(corners: tuple[tuple[float, float], ...]) -> str:
        return " ".join(f"{x:.4f},{1 - y:.4f}" for x, y in corners)

    match primitive:
        case Disc(x, y, r, fill):
            return f'<circle cx="{x}" cy="{1 - y}" r="{r}" fill="{_COLOURS[fill]}"/>'
        case Ring(x, y, r, width, ink):
            return (
                f'<circle cx="{x}" cy="{1 - y}" r="{r - width / 2}" fill="none" '
                f'stroke="{_COLOURS[ink]}" stroke-width="{width}"/>'
            )
        case Shape(corners, fill):
            return f'<polygon points="{points(corners)}" fill="{_COLOURS[fill]}"/>'
        case Stroke(corners, width, ink):
            return (
                f'<polyline points="{points(corners)}" fill="none" stroke="{_COLOURS[ink]}" '
                f'stroke-width="{width}"/>'
            )
