"""The outline of a document: its headings, with the page each stands on."""

from collections.abc import Sequence
from itertools import groupby

from chartgen.layout.placed import OutlineEntry, Page, Text
from chartgen.layout.roles import Role, Tag

_LEVELS = {Role.TITLE: 0, Role.SECTION: 1}


def outline_of(pages: Sequence[Page]) -> tuple[OutlineEntry, ...]:
    """Return the headings of all pages; the words of one over several lines are one entry."""
    entries = []
    for number, page in enumerate(pages):
        texts = [item for item in page.items if isinstance(item, Text) and item.tags]
        for head, lines in groupby(texts, key=lambda text: text.tags[0]):
            if head.role in _LEVELS:
                title = " ".join(line.text for line in lines)
                entries.append(_entry(head, title, number))
    return tuple(entries)


def _entry(head: Tag, title: str, page: int) -> OutlineEntry:
    return OutlineEntry(title=title, level=_LEVELS[head.role], page=page)
