"""A card's pages two by two: each pair is one piece of paper."""

from collections.abc import Iterator
from dataclasses import dataclass

from chartgen.layout.placed import Document, Page


@dataclass(frozen=True, slots=True, kw_only=True)
class Leaf:
    """Front and back of one piece of paper; a front without a page to follow has a blank back."""

    name: str
    front: Page
    back: Page


def leaves(name: str, document: Document) -> Iterator[Leaf]:
    """Yield the leaves of a card: its pages 1 and 2, 3 and 4, and so on."""
    pages = document.pages
    for first in range(0, len(pages), 2):
        front = pages[first]
        back = pages[first + 1] if first + 1 < len(pages) else blank(front)
        yield Leaf(name=name, front=front, back=back)


def blank(like: Page) -> Page:
    """Return an empty page of another's size."""
    return Page(width=like.width, height=like.height, items=())
